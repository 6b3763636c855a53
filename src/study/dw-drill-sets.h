/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-sets.h
 * Which holes of a piston are drilled together: two sets of holes, each to one size.
 *
 * A hole belongs to set 1, to set 2 or to neither. Holes are those of the piston's face
 * (dw-piston-face.h), which also says how much land a larger drill would leave.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-piston-face.h"

/** How many sets there are. */
#define DW_DRILL_SETS 2

/** A damper's face and the set of each hole. Plain value. */
typedef struct
{
  dw_damper damper; /**< as it is now */
  dw_piston_face face;
  int set_of[DW_MAX_FACE_HOLES]; /**< per hole of the face: 0, 1, or -1 = neither */

  /* Worked out by dw_drill_sets_update() */
  int n_holes[DW_DRILL_SETS];                   /**< holes of each set */
  int count[DW_DRILL_SETS][DW_MAX_HOLE_GROUPS]; /**< of each group of the piston */
  double present[DW_DRILL_SETS]; /**< [m] largest present diameter; 0 = the set is empty */
  double largest[DW_DRILL_SETS]; /**< [m] largest that the land allows, the other set as it is */
  double apart;                  /**< [m] least distance of holes of set 1 from those of set 2 */
  bool is_alike; /**< the sets are the same holes but for their place: sizes may be exchanged */
} dw_drill_sets;

/** How the holes are divided at first. */
typedef enum
{
  DW_DRILL_HALVES, /**< open holes, every other one in set 2 */
  DW_DRILL_KINDS,  /**< open holes in set 1, covered ones in set 2 */
  DW_N_DRILL_DIVISIONS
} dw_drill_division;

/**
 * Divide a damper's holes.
 *
 * Of a piston with one open hole, set 2 is empty in halves; without covered holes, set 2 is empty
 * in kinds.
 */
void dw_drill_sets_init (dw_drill_sets *sets, const dw_damper *damper, dw_drill_division division);

/** After set_of was changed: work out the rest. */
void dw_drill_sets_update (dw_drill_sets *sets);

/**
 * Whether the land allows two sizes together.
 *
 * Land is that of dw_piston_face_make(): a fifth of the larger diameter between holes; no hole
 * cuts the edge, the shaft or the shim's hub. What is already too close now counts only where it
 * would be drilled.
 *
 * @param size  [m] of each set; 0 = left as it is
 */
bool dw_drill_sets_have_room (const dw_drill_sets *sets, const double size[DW_DRILL_SETS]);

/**
 * The damper with its sets drilled.
 *
 * Groups of the same size and kind are one.
 *
 * @param size  [m] of each set; 0 = left as it is
 * @param out   set on success only
 * @return DW_OK; DW_ERR_RANGE ("drill.size", index = set) when a size is not larger than every hole
 *         of its set; DW_ERR_GEOMETRY ("drill.size") when the land does not allow it, or
 *         ("piston.holes") when the piston would have too many groups
 */
dw_status dw_drill_sets_apply (const dw_drill_sets *sets, const double size[DW_DRILL_SETS],
                               dw_damper *out, dw_error *err);

/**
 * The damper with all holes of each set at a diameter, larger or smaller, whatever the land.
 *
 * @param diameter  [m] of each set; 0 = left as it is
 * @param out       set on success only
 * @return DW_OK, or DW_ERR_GEOMETRY ("piston.holes") when the piston would have too many groups
 */
dw_status dw_drill_sets_resize (const dw_drill_sets *sets, const double diameter[DW_DRILL_SETS],
                                dw_damper *out, dw_error *err);

/**
 * Whether a drill is larger than every hole of a set, by more than DW_DRILL_SAME.
 *
 * @param size  [m]
 */
bool dw_drill_sets_can_reach (const dw_drill_sets *sets, int set, double size);
