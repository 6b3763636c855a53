/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-passes.h
 * Which drills go through a hole one after the other, from what it is to what it shall be.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include <stdbool.h>

/**
 * [m] Most that one pass takes off a hole's diameter: a drill that has little to cut wanders and
 * grabs less, and the hole comes out rounder (common practice, no source).
 */
#define DW_DRILL_MOST_PER_PASS 0.15e-3

#define DW_DRILL_MAX_PASSES 64

/** The drills in order; the last one is the size asked for. Plain value. */
typedef struct
{
  int n;                             /**< 0 = there is nothing to drill */
  double drill[DW_DRILL_MAX_PASSES]; /**< [m] rising */
  bool has_large_pass; /**< the drills at hand leave a pass above DW_DRILL_MOST_PER_PASS */
} dw_drill_passes;

/**
 * As few passes as the limit allows, each about as large as the others.
 *
 * @param from    [m] the hole now
 * @param to      [m] the size asked for; need not be among the drills
 * @param drills  [m] at hand, in any order
 */
dw_drill_passes dw_drill_passes_find (double from, double to, const double *drills, int n);
