/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-match-grid.h
 * Everything that could be built from the parts box, as grids whose every axis makes a damper only
 * firmer, or only softer.
 *
 * One grid holds a piston, the drills for its holes, a temperature, a family of oils and a choice of
 * levers that are used; its axes are the stack and the oil. A softer stack and a thinner oil give less
 * force in either stroke, so two opposite corners of a box of a grid bound all that lies between them.
 * The model keeps to that but for the seams of its fitted closed forms and for oils so thin that inertia
 * decides: see dw_match_margin(). Drills are no axes: what a hole does under a shim turns too easily.
 *
 * A lever that is used never leaves the part as it is, so that no build lies in two grids.
 *
 * Plain memory, filled once and then only read: any number of threads may use it.
 */
#pragma once

#include "model/dw-figures.h"
#include "study/dw-drill-sets.h"
#include "study/dw-ladder.h"

/** What may be changed. */
typedef enum
{
  DW_LEVER_OPEN,        /**< open holes are drilled to one size: for good */
  DW_LEVER_COVERED,     /**< covered holes are drilled to one size: for good */
  DW_LEVER_STACK,       /**< other shims */
  DW_LEVER_OIL,         /**< another bottle */
  DW_LEVER_BLEND,       /**< two bottles mixed; counts as oil where it is used */
  DW_LEVER_PISTON,      /**< another piston of the box */
  DW_LEVER_TEMPERATURE, /**< the oil is warmer or colder; no work */
  DW_N_LEVERS
} dw_lever;

/** What there is. Borrowed by the grids. */
typedef struct
{
  const double *drills; /**< [m] in any order */
  int n_drills;
  const dw_oil *bottles;
  int n_bottles;
  const dw_piston *pistons; /**< those without holes are left out */
  int n_pistons;
  const dw_ladder_rung *stacks; /**< from the softest up, of a dw_ladder; NULL = none */
  size_t n_stacks;
  const double *temperatures; /**< [degC] besides the present one */
  int n_temperatures;
} dw_match_box;

/** An oil of the box. */
typedef struct
{
  dw_oil oil;
  double viscosity; /**< [m2/s] nominal, of a silicone oil or a blend; NaN for another */
  int bottle;       /**< of the box; -1 = the present oil */
  int other;        /**< mixed in; -1 = none */
  double share;     /**< [1] of the other one */
} dw_match_oil;

/** Opaque. Free with dw_match_grids_free(). */
typedef struct dw_match_grids dw_match_grids;

enum
{
  DW_AXIS_STACK,
  DW_AXIS_OIL,
  DW_N_AXES_MATCH
};

/**
 * How far a force may lie beyond both corners of a box [1], in parts of its hydraulic one: more than the largest that 60,000 random
 * dampers with random boxes showed (tests try some of them). A vented damper past its void onset is not
 * bounded at all.
 *
 * @param spans     which axes of the box have more than one point and act on the force
 * @param reynolds  [1] at the softest corner
 */
double dw_match_margin (const bool spans[DW_N_AXES_MATCH], double reynolds);

/** One grid. */
typedef struct
{
  int piston; /**< of the box; -1 = the present one */
  int drill
      [DW_DRILL_SETS]; /**< for open and for covered holes, of the piston; -1 = left as they are */
  int temperature;     /**< of the box; -1 = the present one */
  int family;          /**< of oils; -1 = the present oil */
  bool uses[DW_N_LEVERS]; /**< which levers all of its builds use; BLEND is told by the oil */
  bool has_blends;        /**< some of its oils are mixed */
  int n[DW_N_AXES_MATCH]; /**< points of each axis, from the firmest to the softest; 1 = not used */
} dw_match_grid;

/** A build: a grid and a place on each of its axes. */
typedef struct
{
  int grid;
  int at[DW_N_AXES_MATCH];
} dw_match_build;

/**
 * Lay out all grids.
 *
 * @param now          the damper as it is built
 * @param temperature  [degC] of the oil now
 * @param allowed      which levers may be used
 * @param needed       which levers every build must use; NULL = none
 * @param out          set on success only; caller frees
 * @return DW_OK or DW_ERR_NO_MEMORY
 */
dw_status dw_match_grids_new (const dw_damper *now, double temperature, const dw_match_box *box,
                              const bool allowed[DW_N_LEVERS], const bool needed[DW_N_LEVERS],
                              dw_match_grids **out, dw_error *err);

/** NULL is allowed. */
void dw_match_grids_free (dw_match_grids *grids);

int dw_match_grids_get_n (const dw_match_grids *grids);

/** Borrowed. */
const dw_match_grid *dw_match_grids_get (const dw_match_grids *grids, int grid);

/** How many builds all grids hold together, those that the land forbids among them [1]. */
double dw_match_grids_count (const dw_match_grids *grids);

/**
 * The damper of a build, whatever the land.
 *
 * @param temperature  [degC] of its oil, set on success
 * @return false when the piston would have too many sizes of holes
 */
bool dw_match_grids_build (const dw_match_grids *grids, const dw_match_build *build,
                           dw_damper *damper, double *temperature);

/** Whether the land allows its drilling. */
bool dw_match_grids_has_room (const dw_match_grids *grids, const dw_match_build *build);

/** Sizes [m] that open and covered holes are drilled to; 0 = left as they are. */
void dw_match_grids_sizes (const dw_match_grids *grids, const dw_match_build *build,
                           double size[DW_DRILL_SETS]);

/** Index of its stack in the box, -1 = the present one. */
int dw_match_grids_stack (const dw_match_grids *grids, const dw_match_build *build);

/** Its oil, borrowed; NULL = the present one. */
const dw_match_oil *dw_match_grids_oil (const dw_match_grids *grids, const dw_match_build *build);

/** How many levers a build uses, of them how many cannot be taken back. */
int dw_match_grids_levers (const dw_match_grids *grids, const dw_match_build *build, int *for_good);
