/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-wanted.h
 * What `dampcalc match` is asked for: which forces, and what may be done for them.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#include "calc/dw-calc-arguments.h"
#include "project/dw-project.h"
#include "study/dw-match.h"

G_BEGIN_DECLS

/** As it is typed. Plain value; borrows the words. */
typedef struct
{
  dw_axle axle;
  bool is_kept[DW_N_STROKES]; /**< held where nothing else is said; else free */
  bool is_changed[DW_N_STROKES][DW_N_SPEEDS];
  double change[DW_N_STROKES][DW_N_SPEEDS]; /**< [1] added to 1, a factor; 0 unless is_changed */
  const char *like;                         /**< setup whose forces are wanted; NULL = its own */
  bool has_use;
  bool use[DW_N_LEVERS]; /**< only if has_use */
  bool has_temperatures;
  double lowest;  /**< [degC] only if has_temperatures */
  double highest; /**< [degC] */
  int most_leaves;
  int dampers;
  bool is_fair; /**< a fair comparison: nothing else is said of forces */
  int threads;  /**< 0 = as many as there are */
} dw_calc_wanted;

/**
 * Read it from the command line.
 *
 * @param out    set on success only
 * @param error  DW_CALC_WRONG_USAGE
 */
gboolean dw_calc_wanted_read (const dw_calc_arguments *arguments, dw_calc_wanted *out,
                              GError **error);

/** "low", "middle" or "high". */
const char *dw_calc_speed_name (int speed);

/** What a lever is called, "open", "blend" and so on. */
const char *dw_calc_lever_name (int lever);

G_END_DECLS
