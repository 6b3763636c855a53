/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-work.h
 * The work at the bench that turns a damper as it is built into another one.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-difference.h"
#include "study/dw-drill-passes.h"
#include "study/dw-hole-match.h"

/** Where the wanted piston comes from, in the order in which it is preferred. */
typedef enum
{
  DW_WORK_PISTON_KEEP,        /**< nothing to do on the piston that is in it */
  DW_WORK_PISTON_DRILL,       /**< the piston that is in it is drilled */
  DW_WORK_PISTON_SPARE,       /**< a piston from the box is as wanted */
  DW_WORK_PISTON_SPARE_DRILL, /**< a piston from the box is drilled; it may be a blank */
  DW_WORK_PISTON_NEW          /**< none at hand can become it: a blank as thick is needed */
} dw_work_piston;

/** Equal holes that get the same drills. */
typedef struct
{
  int count;
  bool covered;           /**< when the work is done */
  double from;            /**< [m] as they are; 0 = solid */
  double to;              /**< [m] the size that is wanted, the last drill of the passes */
  dw_drill_passes passes; /**< at least one */
  double check; /**< [m] shank that must not go in afterwards, see dw_drill_passes_check(); NaN =
                   none known */
} dw_work_holes;

/** The work on one damper; left and right alike. Plain value that points at static storage only. */
typedef struct
{
  dw_work_piston piston;
  int spare;    /**< of the box; -1 = none */
  int n_holes;  /**< sorts of holes to be drilled */
  int n_passes; /**< of drills, over all holes of one piston */
  /** In the order of drilling: first what is drilled from solid, where a piston is soonest spoilt;
   * then by rising size, open ones before covered ones. */
  dw_work_holes holes[DW_HOLE_MATCH_MAX_STEPS];
  bool opens;    /**< the damper is taken apart; else only spring or linkage change, if anything */
  bool restacks; /**< the shims are put together anew: others, or their piston comes off */
  bool refills;  /**< oil goes in: always when it is opened, for oil is lost then */
  bool changes_oil; /**< another oil than is in it */
  size_t n_others;
  /** All other differences: body, thickness and clearance of the piston, washers, gas, seal, spring,
   * linkage. Not all are work, see dw_work_is_assumption(). */
  dw_difference others[DW_MAX_DIFFERENCES];
} dw_work;

/**
 * Whether a difference is in what is assumed of a damper and not in its parts: how far off centre the
 * piston runs, how leaves stick together, the air outside, what b does not say of oil filling, ride
 * height and droop.
 *
 * @param a,b  the dampers that were compared
 */
bool dw_work_is_assumption (const dw_difference *difference, const dw_damper *a,
                            const dw_damper *b);

/**
 * The work from a damper that is built to one that is wanted.
 *
 * A piston can be used when its thickness and its outer diameter are as wanted; one of the box is
 * taken to have its clearance in the wanted bore. Covered is a place on the piston: covered holes
 * stay covered and on their circle, unless a damper without shims or shims of another hub or outer
 * diameter say that the same places are covered no more, or are now.
 *
 * @param a,b     built and wanted, both as dw_damper_check() accepts them
 * @param spares  of the box, without holes: blanks; may be NULL when there are none
 * @param drills  [m] at hand, in any order; may be NULL when there are none
 */
void dw_work_find (const dw_damper *a, const dw_damper *b, const dw_piston *spares, int n_spares,
                   const double *drills, int n_drills, dw_work *out);
