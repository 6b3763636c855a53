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

/**
 * [m] Thinnest drill to begin a hole in solid material with: thinner ones bend and run off, or break
 * (common practice, no source).
 */
#define DW_DRILL_LEAST_PILOT 0.8e-3

/**
 * [1] Thinnest drill to begin with, of the size asked for: half of it leads the next ones and leaves
 * them little enough to cut (common practice, no source).
 */
#define DW_DRILL_PILOT_SHARE 0.5

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

/**
 * The same where there is no hole yet: the smallest drill at hand that is stiff enough leads, no
 * smaller than half the size asked for. The first drill is never called a large pass: it is led by
 * its own point and has nothing to catch on.
 *
 * @param to      [m] the size asked for
 * @param drills  [m] at hand, in any order
 */
dw_drill_passes dw_drill_passes_from_solid (double to, const double *drills, int n);

/**
 * The shank that must not go into a hole that came out well: the smallest drill at hand or in the
 * table that is larger than the largest hole the grade allows.
 *
 * @param size    [m] the hole that was asked for
 * @param grade   standard tolerance grade of a drilled hole, as for dw_tolerance_it(); where that
 *                knows no tolerance, any drill larger than the size
 * @param drills  [m] at hand, in any order
 * @return        [m] diameter; NaN = there is none so large
 */
double dw_drill_passes_check (double size, int grade, const double *drills, int n);
