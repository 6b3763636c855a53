/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-compare.h
 * Two dampers side by side: what differs in parts, and what that does to the figures.
 *
 * The parts are dw-difference.h; here are the figures. Changes are in percent of damper a, per
 * stroke and speed, because compression and rebound are to be judged apart.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "model/dw-figures.h"
#include "study/dw-difference-text.h"
#include "study/dw-difference.h"

/**
 * Changes up to this [%] are called the same: far below what the drill, the bottle's label and
 * the hand that fills it scatter, and below what a hand feels.
 */
#define DW_COMPARE_SAME 0.5

/** The figures of two dampers, or of one at two temperatures, at the same speeds. */
typedef struct
{
  dw_figures a;
  dw_figures b;
  /* Change from a to b, see dw_compare_change(). First index: stroke; second: speed. */
  double force[DW_N_STROKES][DW_N_SPEEDS]; /**< [%] */
  double c[DW_N_STROKES][DW_N_SPEEDS];     /**< [%] */
  double pack[DW_N_STROKES];               /**< [%] */
  double rebound_share[DW_N_SPEEDS];       /**< [%] */
} dw_comparison;

/** What a change amounts to. */
typedef enum
{
  DW_CHANGE_SAME,   /**< within DW_COMPARE_SAME */
  DW_CHANGE_LESS,   /**< softer, if it is a force */
  DW_CHANGE_MORE,   /**< firmer, if it is a force */
  DW_CHANGE_UNKNOWN /**< from nothing to something: no percentage */
} dw_change;

/**
 * Read the figures of both dampers.
 *
 * @param oil_temperature  [degC] in both
 * @param speeds           [m/s] as for dw_figures_read()
 * @param out              set on success only
 * @return DW_OK, or what dw_force_model_make() or dw_figures_read() found
 */
dw_status dw_compare_figures (const dw_damper *a, const dw_damper *b, double oil_temperature,
                              const double speeds[DW_N_SPEEDS], dw_comparison *out, dw_error *err);

/** The changes between two sets of figures, wherever each was read. */
void dw_compare_read (const dw_figures *a, const dw_figures *b, dw_comparison *out);

/**
 * Change [%] of the size of @p before; 0 when both are 0, NaN when only @p before is.
 *
 * @param before  [any unit]
 * @param after   [any unit] the same
 */
double dw_compare_change (double before, double after);

/** @param percent  [%] from dw_compare_change() */
dw_change dw_compare_judge (double percent);
