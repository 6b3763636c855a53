/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ladder.h
 * Every stack that can be built from the shims at hand, in order of bending stiffness, and what each
 * does to one damper.
 *
 * A stack is built twice, left and right alike: of a shim that the box has six of, three go into one
 * damper, beside those that are in the car's now. Thicker leaves lie nearer to the piston (common
 * practice, no source), but for stacks that are there already, which keep their order: the same
 * leaves in another order are no other stack.
 *
 * How leaves stick together is not known, so both bounds of dw-stack.h are told: leaves that slide,
 * leaves that stick. The habit of adding thicknesses ("two of 0.10 make one of 0.20") is the second
 * for leaves of one material; oil-wet loose leaves lie near the first.
 *
 * Pure functions on plain values but for the ladder itself, which is owned; safe from any thread.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "model/dw-figures.h"
#include "model/dw-stack.h"

/** [%] Forces that differ by no more, at all three speeds, are the same: a hand feels no less. */
#define DW_LADDER_SAME 2.0

#define DW_LADDER_MAX_LEAVES 8     /**< in one stack */
#define DW_LADDER_MAX_STACKS 20000 /**< in one ladder */

/** How leaves may stick together. */
typedef enum
{
  DW_LEAVES_SLIDE, /**< the lower bound of stiffness */
  DW_LEAVES_STICK, /**< the upper one */
  DW_N_LEAF_BOUNDS
} dw_leaf_bound;

/** What decides in the stroke that opens the stack. */
typedef enum
{
  DW_LADDER_SHIM,  /**< the stack */
  DW_LADDER_PLAIN, /**< it is so stiff that the piston is as good as plain */
  DW_LADDER_HOLES  /**< it is so soft that the holes alone decide, and the stop washer over them */
} dw_ladder_verdict;

/** One stack. */
typedef struct
{
  int n_shims;
  dw_shim shims[DW_MAX_SHIMS]; /**< from the piston outwards */
  int leaves;
  double stiffness; /**< [N m] by the valve's leaf coupling: the order of the ladder */
  double single[DW_N_LEAF_BOUNDS]; /**< [m] one leaf of the first shim's material as stiff */
  double added;                    /**< [m] all thicknesses added up */
  dw_figures figures;              /**< by the valve's leaf coupling, both strokes */
  double force[DW_N_LEAF_BOUNDS][DW_N_SPEEDS]; /**< [N] in the stroke that opens it */
  /** [N] where the habit of adding thicknesses expects it: one leaf of the first shim's material, as
   * thick as all together */
  double habit[DW_N_SPEEDS];
  bool at_stop;                              /**< the lift limit is reached at the high speed */
  dw_ladder_verdict verdict_at[DW_N_SPEEDS]; /**< by DW_LADDER_SAME */
  dw_ladder_verdict verdict; /**< when it is the same at all speeds, else the shim */
  int group;                 /**< from 0; stacks of one group do the same, see DW_LADDER_SAME */
  bool is_fitted;            /**< the one in the car */
  bool is_own;               /**< the one of the damper that was asked for */
} dw_ladder_rung;

/** All of them. Free with dw_ladder_free(). */
typedef struct
{
  size_t n;
  dw_ladder_rung *rungs; /**< from the softest up; owned */
  int n_groups;
  int most_leaves; /**< all stacks of up to so many leaves are here */
  bool is_cut;     /**< taller ones are not, although asked for: more than DW_LADDER_MAX_STACKS */
  double plain[DW_N_SPEEDS]; /**< [N] in that stroke with a shim that never lifts */
  double soft[DW_N_SPEEDS];  /**< [N] with the softest shim there can be, open to its stop */
  double holes[DW_N_SPEEDS]; /**< [N] with nothing over the holes */
} dw_ladder;

/** What is wanted. Plain value, borrows @p box, @p fitted and @p speeds. */
typedef struct
{
  const dw_shim *box; /**< count = how many are there; entries that are equal count together */
  int n_box;
  /** The stack in the car: its leaves are at hand as well, unless their hub or rim is another. NULL =
   * the damper's own. */
  const dw_valve *fitted;
  int most_leaves;      /**< in one stack, 1 to DW_LADDER_MAX_LEAVES */
  int dampers;          /**< that are built alike from the box: 2 = left and right */
  double temperature;   /**< [degC] of the oil */
  const double *speeds; /**< [m/s] three, as for dw_figures_read() */
} dw_ladder_options;

/**
 * At most three leaves, two dampers, the damper's own stack fitted.
 *
 * @param temperature  [degC] of the oil
 * @param speeds       [m/s] borrowed
 */
dw_ladder_options dw_ladder_options_defaults (const dw_shim *box, int n_box, double temperature,
                                              const double *speeds);

/**
 * Climb the ladder of a damper. The fitted stack and the damper's own, if it can be built, are on it
 * even when they have more leaves than asked for.
 *
 * @param keep_going  asked now and then with how much is done [1]; may be NULL
 * @param out         set on success only; the caller frees it
 * @return DW_OK; DW_ERR_GEOMETRY ("piston.holes") when no hole is covered; DW_ERR_RANGE
 *         ("valve.shim") when nothing can be stacked; DW_ERR_CANCELLED; DW_ERR_NO_MEMORY; else what
 *         dw_force_model_make() or dw_figures_read() found
 */
dw_status dw_ladder_make (const dw_damper *damper, const dw_ladder_options *options,
                          bool (*keep_going) (void *data, double progress), void *data,
                          dw_ladder **out, dw_error *err);

/** NULL is allowed. */
void dw_ladder_free (dw_ladder *ladder);

/** Put a rung's stack into a valve. */
void dw_ladder_apply (const dw_ladder_rung *rung, dw_valve *valve);
