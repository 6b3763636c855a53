/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-match.h
 * Which builds from the parts box come nearest to forces that are wanted.
 *
 * Every build of every grid of dw-match-grid.h is judged, most of them without being computed: a box
 * of a grid is left aside when even the forces between its two corners, widened by dw_match_margin(),
 * cannot give one that would be kept. What is found is what judging each one gives (tests).
 *
 * The work is divided into the grids, which may be searched in any order, by any number of threads,
 * in two rounds: dw_match_sound() of all of them says how good the found ones are at least, with
 * that dw_match_search() of all of them finds the rest. The result does not depend on who searched
 * what. Compression and rebound are judged apart, speed by speed.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-match-grid.h"

#define DW_MATCH_MOST 20 /**< builds that are kept */

/** [1] Misses that differ by less count as equal: then less work goes first. */
#define DW_MATCH_EQUAL 1e-3

/** What is wanted of one force. */
typedef struct
{
  bool is_free; /**< anything will do */
  double force; /**< [N] > 0, unless is_free */
} dw_match_target;

/** All six. First index: stroke; second: DW_LOW, DW_MIDDLE, DW_HIGH. */
typedef struct
{
  dw_match_target target[DW_N_STROKES][DW_N_SPEEDS];
  double speeds[DW_N_SPEEDS]; /**< [m/s] rising */
} dw_match_wish;

/** A build that was judged. */
typedef struct
{
  dw_match_build build;
  double miss[DW_N_STROKES][DW_N_SPEEDS];  /**< [1] force over target less 1; NaN where free */
  double force[DW_N_STROKES][DW_N_SPEEDS]; /**< [N] */
  double worst;                            /**< [1] largest size of a miss */
  double rms;                              /**< [1] root of their mean square */
  int levers;                              /**< that it uses */
  int for_good;                            /**< of them, those that cannot be taken back */
} dw_match_candidate;

/** The best builds, best first, and what is the least miss with so many changes. Plain value. */
typedef struct
{
  int n;
  dw_match_candidate best[DW_MATCH_MOST];
  bool has_with[DW_N_LEVERS + 1];
  dw_match_candidate with[DW_N_LEVERS + 1]; /**< best with exactly so many levers */
  double n_judged;                          /**< [1] builds, those left aside among them */
  double n_computed;                        /**< [1] dampers that were computed for it */
} dw_match_found;

/** Nothing yet. */
dw_match_found dw_match_found_none (void);

/**
 * Put what was found elsewhere to it. The order in which this is done does not matter.
 *
 * @param grids  that both are of
 */
void dw_match_found_merge (const dw_match_grids *grids, dw_match_found *found,
                           const dw_match_found *other);

/**
 * Wish for the forces of now, all held but those that gas pushes to nothing or below: no miss can be
 * told of them, they are free.
 *
 * @param figures  of the damper that is to be matched
 * @param speeds   [m/s] three
 */
dw_match_wish dw_match_wish_hold (const dw_figures *figures, const double speeds[DW_N_SPEEDS]);

/** Whether any force is wanted. */
bool dw_match_wish_is_any (const dw_match_wish *wish);

/** Whether any force of one stroke is wanted. */
bool dw_match_wish_is_any_of (const dw_match_wish *wish, dw_stroke stroke);

/** First round: some good builds of a grid, soon. */
dw_match_found dw_match_sound (const dw_match_grids *grids, int grid, const dw_match_wish *wish);

/**
 * Second round: all of a grid that is better than what is known.
 *
 * @param known       from dw_match_sound() of all grids, merged
 * @param keep_going  asked now and then; may be NULL
 * @param out         what @p known lacks, and some of what it has
 * @return DW_OK or DW_ERR_CANCELLED
 */
dw_status dw_match_search (const dw_match_grids *grids, int grid, const dw_match_wish *wish,
                           const dw_match_found *known, bool (*keep_going) (void *data), void *data,
                           dw_match_found *out, dw_error *err);

/** Both rounds over all grids by one thread. */
dw_status dw_match_all (const dw_match_grids *grids, const dw_match_wish *wish,
                        bool (*keep_going) (void *data), void *data, dw_match_found *out,
                        dw_error *err);

/** Judge one build; false when it can not be built or computed. */
bool dw_match_judge (const dw_match_grids *grids, const dw_match_build *build,
                     const dw_match_wish *wish, dw_match_candidate *out);

/**
 * Which of two comes first: less worst miss, fewer levers, less for good, less rms, and where all that is
 * equal the one that comes first in the box; < 0, 0 = the same, > 0.
 */
int dw_match_compare (const dw_match_candidate *a, const dw_match_candidate *b);
