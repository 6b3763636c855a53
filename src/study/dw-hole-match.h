/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-hole-match.h
 * Which holes of a piston become which holes of another one by drilling alone.
 *
 * A drill only makes a hole larger, and no hole goes away; new ones can be drilled from solid.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"

/** Each step uses up a group of one side; the solid counts as a group of either kind. */
#define DW_HOLE_MATCH_MAX_STEPS (2 * DW_MAX_HOLE_GROUPS + 2)

/** Holes of one group that become holes of one group. */
typedef struct
{
  int from; /**< group of the piston that there is; -1 = there is no hole yet */
  int to;   /**< group of the piston that is wanted */
  int count;
} dw_hole_step;

/** Plain value. */
typedef struct
{
  int n;
  dw_hole_step steps[DW_HOLE_MATCH_MAX_STEPS]; /**< those that stay as they are, too */
} dw_hole_match;

/** Whether two diameters are one size, to a nanometre. @param a,b  [m] */
bool dw_hole_match_is_same (double a, double b);

/**
 * Match holes so that as many as can be stay as they are, and of the ways to do that the one whose
 * largest step of any hole is smallest. One is found whenever there is any.
 *
 * @param from,to       with counts as dw_damper_check() accepts them, or no holes at all
 * @param keeps_kinds   a covered hole stays covered, an open one open
 * @param out           set on success only
 * @return              false: @p to cannot be drilled out of @p from
 */
bool dw_hole_match_find (const dw_piston *from, const dw_piston *to, bool keeps_kinds,
                         dw_hole_match *out);
