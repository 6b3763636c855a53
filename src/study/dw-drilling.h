/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drilling.h
 * What drilling two sets of holes to two sizes does: forces at three speeds in both strokes, the
 * oil that would hold low-speed compression, the one size that does the same, the scatter.
 *
 * Fill a study once, then ask it: it is only read, so any number of threads may. No allocation but
 * where an oil or the one size is looked for, which uses GSL's root finder.
 */
#pragma once

#include "model/dw-figures.h"
#include "study/dw-drill-sets.h"
#include "study/dw-spread.h"

/** A damper with its sets, ready to be asked. */
typedef struct
{
  dw_drill_sets sets;
  double temperature;         /**< [degC] of the oil */
  double speeds[DW_N_SPEEDS]; /**< [m/s] */
  dw_figures now;             /**< of the damper as it is */
} dw_drilling;

/** What one pair of sizes does. First index: stroke; second: speed. */
typedef struct
{
  double size[DW_DRILL_SETS]; /**< [m] 0 = left as it is */
  dw_figures figures;
  double change[DW_N_STROKES][DW_N_SPEEDS]; /**< [%] of the force against now */
} dw_drill_result;

/** The oil that brings low-speed compression back, and what it makes of the rest. */
typedef struct
{
  double viscosity;                         /**< [m2/s] nominal of a silicone oil at 25 degC */
  dw_figures figures;                       /**< with it */
  double change[DW_N_STROKES][DW_N_SPEEDS]; /**< [%] of the force against now */
} dw_drill_hold;

/** A bottle, or two mixed. */
typedef struct
{
  int bottle;   /**< index of the first one; -1 = the box has nothing thick or thin enough */
  int other;    /**< index of the second one; -1 = none */
  double share; /**< [1] of the second one by volume, 0 without */
} dw_drill_mix;

/**
 * Prepare a study.
 *
 * @param temperature  [degC] of the oil
 * @param speeds       [m/s] as for dw_figures_read()
 * @param out          set on success only
 * @return DW_OK, or what dw_force_model_make() or dw_figures_read() found
 */
dw_status dw_drilling_init (dw_drilling *out, const dw_drill_sets *sets, double temperature,
                            const double speeds[DW_N_SPEEDS], dw_error *err);

/**
 * What two sizes do.
 *
 * @param size  [m] of each set; 0 = left as it is
 * @param out   set on success only
 * @return DW_OK, what dw_drill_sets_apply() says, or what the model finds of the drilled damper
 */
dw_status dw_drilling_at (const dw_drilling *study, const double size[DW_DRILL_SETS],
                          dw_drill_result *out, dw_error *err);

/**
 * The figures with all holes of each set at a diameter, whether a drill can reach it or not and
 * whatever the land: for the field that a map shades.
 *
 * @param diameter  [m] of each set; 0 = left as it is
 * @param out       set on success only
 * @return DW_OK, or what the model finds
 */
dw_status dw_drilling_field (const dw_drilling *study, const double diameter[DW_DRILL_SETS],
                             dw_figures *out, dw_error *err);

/**
 * The oil that holds with all holes of each set at a diameter, as dw_drilling_field().
 *
 * @param diameter   [m] of each set; 0 = left as it is
 * @param viscosity  [m2/s] nominal at 25 degC; set on success only
 * @return as dw_drilling_hold()
 */
dw_status dw_drilling_field_oil (const dw_drilling *study, const double diameter[DW_DRILL_SETS],
                                 double *viscosity, dw_error *err);

/**
 * The silicone oil with which the drilled damper has the low-speed compression force of now.
 *
 * @param size  [m] as above
 * @param out   set on success only
 * @return DW_OK; DW_ERR_NO_CONVERGENCE ("oil.viscosity") when no oil inside the accepted range
 *         does; else as dw_drilling_at()
 */
dw_status dw_drilling_hold (const dw_drilling *study, const double size[DW_DRILL_SETS],
                            dw_drill_hold *out, dw_error *err);

/**
 * The one diameter to which all holes of both sets could be drilled for the same low-speed
 * compression as two sizes give.
 *
 * @param size      [m] as above
 * @param diameter  [m] set on success only; between the two sizes, or the present one and a size
 * @return DW_OK; DW_ERR_GEOMETRY ("drill.size") when the sets hold open and covered holes, which no
 *         one size can stand for; DW_ERR_NO_CONVERGENCE; else as dw_drilling_at()
 */
dw_status dw_drilling_single (const dw_drilling *study, const double size[DW_DRILL_SETS],
                              double *diameter, dw_error *err);

/**
 * The drilled damper with its drilled holes in groups of their own, and limits of these alone, for
 * dw_spread_make().
 *
 * @param size    [m] as above
 * @param limits  of the drilled holes; the other inputs are left out
 * @param damper,holes  set on success only
 * @return as dw_drill_sets_apply()
 */
dw_status dw_drilling_scattering (const dw_drill_sets *sets, const double size[DW_DRILL_SETS],
                                  const dw_spread_limits *limits, dw_damper *damper,
                                  dw_spread_limits *holes, dw_error *err);

/**
 * How far the drilled damper may be off, by its drilled holes alone: what is not drilled is as it
 * is. At the study's speeds.
 *
 * @param size    [m] as above
 * @param limits  of the drilled holes; the other inputs are left out
 * @param out     [N] set on success only
 */
dw_status dw_drilling_spread (const dw_drilling *study, const double size[DW_DRILL_SETS],
                              const dw_spread_limits *limits,
                              dw_spread_point out[DW_N_STROKES][DW_N_SPEEDS], dw_error *err);

/**
 * The bottle nearest to an oil, or the two that are mixed to it.
 *
 * A bottle within 1 % of the oil is taken pure; else the nearest thinner and the nearest thicker
 * one are mixed by the log rule of dw_oil_blend_log().
 *
 * @param viscosity  [m2/s] nominal that is wanted
 * @param bottles    [m2/s] nominal of the bottles at hand, in any order
 */
dw_drill_mix dw_drill_mix_find (double viscosity, const double *bottles, int n);

/** How many holes two sizes drill. @param size  [m] as above */
int dw_drill_count (const dw_drill_sets *sets, const double size[DW_DRILL_SETS]);
