/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-table.h
 * Every choice of two drill sizes, with all that is told of it.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-drill-passes.h"
#include "study/dw-drilling.h"

/** What there is to choose from. Borrows its lists. */
typedef struct
{
  const double *drills; /**< [m] in any order */
  int n_drills;
  const double *bottles; /**< [m2/s] nominal of silicone oils at 25 degC, in any order */
  int n_bottles;
  dw_spread_limits limits; /**< of the holes that are drilled */
} dw_drill_box;

/** One choice. Plain value. */
typedef struct
{
  dw_drill_result result;
  int n_holes;   /**< that are drilled, in one piston */
  int n_passes;  /**< of drills through all of them */
  bool has_hold; /**< an oil holds low-speed compression */
  dw_drill_hold hold;
  dw_drill_mix mix;    /**< of the bottles at hand */
  bool has_single;     /**< one size for both sets does the same at low speed */
  double single;       /**< [m] */
  double single_drill; /**< [m] nearest drill at hand that can be used for all; 0 = none */
  dw_spread_point spread[DW_N_STROKES][DW_N_SPEEDS];
} dw_drill_row;

/**
 * The sizes that a set can have: 0, as it is, and every drill that is larger than its holes and that
 * the land allows while the other set stays as it is; rising, without doubles.
 *
 * @param drills  [m] in any order
 * @param out     [m] room for n + 1
 * @return        how many; 1 for an empty set
 */
int dw_drill_sizes (const dw_drill_sets *sets, int set, const double *drills, int n, double *out);

/**
 * Whether two sizes are one of the choices: there is land, the model accepts the drilled damper
 * (holes take at most half the face), and it does not say the same as another one with the sizes
 * exchanged.
 *
 * @param size  [m] of each set, from dw_drill_sizes()
 */
bool dw_drill_is_choice (const dw_drill_sets *sets, const double size[DW_DRILL_SETS]);

/**
 * All about one choice.
 *
 * @param size  [m] of each set; 0 = left as it is
 * @param out   set on success only
 * @return as dw_drilling_at()
 */
dw_status dw_drill_row_make (const dw_drilling *study, const dw_drill_box *box,
                             const double size[DW_DRILL_SETS], dw_drill_row *out, dw_error *err);

/**
 * The largest part by which a force may be off, both ways, over both strokes and three speeds [1]:
 * two standard deviations over the mean.
 */
double dw_drill_row_scatter (const dw_drill_row *row);

/**
 * The largest part by which left and right may differ, both ways, over both strokes and three
 * speeds [1]: two standard deviations of the difference over the mean.
 */
double dw_drill_row_pair (const dw_drill_row *row);
