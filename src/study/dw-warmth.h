/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-warmth.h
 * What warmth does to a damper, and which oil makes up for it.
 *
 * Pure functions on plain values: safe from any thread. Only dw_warmth_mix() allocates, and frees
 * before it returns.
 */
#pragma once

#include "model/dw-oil.h"
#include "study/dw-compare.h"
#include "study/dw-drilling.h"

/** One damper with its oil, and two temperatures of it. */
typedef struct
{
  const dw_damper *damper;    /**< borrowed */
  double now;                 /**< [degC] of the oil, inside DW_LIMIT_OIL_TEMPERATURE */
  double then;                /**< [degC] the other one, the same */
  double speeds[DW_N_SPEEDS]; /**< [m/s] as for dw_figures_read() */
} dw_warmth;

/** The silicone oil that gives a force of now at the other temperature. */
typedef struct
{
  double viscosity;     /**< [m2/s] nominal at 25 degC, does not thin */
  dw_comparison change; /**< a: the damper now; b: with this oil, then */
  bool is_other_kind;   /**< than the oil in the damper, see dw_warmth_mixes_kinds() */
} dw_warmth_held;

/** A bottle's oil in the damper at the other temperature. */
typedef struct
{
  dw_status status; /**< not DW_OK: the rest but is_other_kind has no meaning, reason says why */
  dw_error reason;  /**< only then */
  dw_fluid fluid;   /**< of the bottle, then */
  dw_comparison change; /**< a: the damper now, with its oil; b: with the bottle's, then */
  bool is_other_kind;   /**< than the oil in the damper, see dw_warmth_mixes_kinds() */
} dw_warmth_bottle;

/** A bottle, or two mixed, for a viscosity. */
typedef struct
{
  int bottle;     /**< index of the first; -1 = nothing at hand is thick or thin enough */
  int other;      /**< index of the second; -1 = the first one pure */
  dw_oil oil;     /**< what is filled in; has a meaning only when there is a bottle */
  dw_fluid fluid; /**< the same then; viscosity_low and _high: what the published rules say */
} dw_warmth_blend;

/** Force at one speed at both ends of a rise in temperature. */
typedef struct
{
  double speed;  /**< [m/s] */
  double before; /**< [N] */
  double after;  /**< [N] warmed up */
  double change; /**< [%] see dw_compare_change() */
} dw_warmth_band;

/**
 * The damper at both temperatures with the oil that is in it.
 *
 * @param out  a: now; b: then. Set on success only
 * @return DW_OK, or what dw_force_model_make() or dw_figures_read() found
 */
dw_status dw_warmth_compare (const dw_warmth *asked, dw_comparison *out, dw_error *err);

/**
 * A change told per 10 degC [%]: the mean over the way from now to then, so that far apart
 * temperatures give the chord and not the slope at either end. NaN when they are the same.
 *
 * @param change  [%] from now to then
 */
double dw_warmth_per_ten (const dw_warmth *asked, double change);

/**
 * The plain silicone oil with which the low-speed force of a stroke is then what it is now.
 *
 * Past the void onset of a vented damper the force does not tell one oil from another; then the oil
 * is the one that would hold without the void, so that the onset stays about where it is. The force
 * is then the same but for what the film's drag differs at the onset.
 *
 * @param out  set on success only
 * @return DW_OK; DW_ERR_NO_CONVERGENCE ("oil.viscosity") when no oil inside the accepted range
 *         does; else as dw_warmth_compare()
 */
dw_status dw_warmth_hold (const dw_warmth *asked, dw_stroke stroke, dw_warmth_held *out,
                          dw_error *err);

/**
 * What each bottle does in the damper then. One that the model refuses is told in its place and
 * does not stop the others.
 *
 * @param oils     n of any kind
 * @param out      n of them, set on success only
 * @param nearest  set to the one whose low-speed compression is nearest to now; -1 = none
 * @return DW_OK, or what the model found of the damper as it is now
 */
dw_status dw_warmth_bottles (const dw_warmth *asked, const dw_oil *oils, int n,
                             dw_warmth_bottle *out, int *nearest, dw_error *err);

/**
 * The bottle or the two bottles for a viscosity, by dw_drill_mix_find(). Only plain silicone
 * bottles are taken: what measured or thinning oils make of each other is not known.
 *
 * @param viscosity  [m2/s] nominal at 25 degC that is wanted
 * @param oils       n of any kind; the indices in @p out count all of them
 * @param out        set on success only, also when nothing fits
 * @return DW_OK, DW_ERR_NO_MEMORY, or what dw_oil_fluid() found
 */
dw_status dw_warmth_mix (const dw_warmth *asked, double viscosity, const dw_oil *oils, int n,
                         dw_warmth_blend *out, dw_error *err);

/**
 * How the curve of one stroke moves while the oil warms up.
 *
 * @param temperature  [degC] of the oil before
 * @param warm_up      [degC] by which it gets warmer; < 0 = colder
 * @param speeds       [m/s] n values, 0..10, best in rising order
 * @param out          n of them; on failure some may be set
 * @return as dw_force_curve()
 */
dw_status dw_warmth_drift (const dw_damper *damper, double temperature, double warm_up,
                           dw_stroke stroke, const double *speeds, size_t n, dw_warmth_band *out,
                           dw_error *err);

/** Whether an oil is silicone, from one bottle or blended, of which no thinning is known. */
bool dw_warmth_is_plain_silicone (const dw_oil *oil);

/**
 * Whether two oils in one damper would be a mix of which nothing is known: silicone with a measured
 * oil, thinning with one that does not or thins otherwise, two measured oils that differ.
 */
bool dw_warmth_mixes_kinds (const dw_oil *a, const dw_oil *b);
