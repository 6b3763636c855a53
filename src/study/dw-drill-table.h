/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-table.h
 * Every choice of two drill sizes, with all that is told of it.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-drill-passes.h"
#include "study/dw-drilling.h"

/** What there is to choose from. Borrows its lists. */
typedef struct
{
  const double *drills; /**< [m] in any order */
  int n_drills;
  const double *bottles; /**< [m2/s] nominal of silicone oils at 25 degC, in any order */
  int n_bottles;
  dw_spread_limits limits; /**< of the holes that are drilled */
} dw_drill_box;

/** One choice. Plain value. */
typedef struct
{
  dw_drill_result result;
  int n_holes;   /**< that are drilled, in one piston */
  int n_passes;  /**< of drills through all of them */
  bool has_hold; /**< an oil holds low-speed compression */
  dw_drill_hold hold;
  dw_drill_mix mix;    /**< of the bottles at hand */
  bool has_single;     /**< one size for both sets does the same at low speed */
  double single;       /**< [m] */
  double single_drill; /**< [m] nearest drill at hand that can be used for all; 0 = none */
  dw_spread_point spread[DW_N_STROKES][DW_N_SPEEDS];
} dw_drill_row;

/** Which rows are wanted. Plain value. */
typedef struct
{
  double keep_compression; /**< [%] most change of compression, at all three speeds */
  double least_pack;       /**< [1] of compression */
  double most_pack;        /**< [1] of compression */
  int most_holes;          /**< that are drilled, in one piston */
} dw_drill_filter;

/** What rows can be put in order by, least first. */
typedef enum
{
  DW_DRILL_BY_SIZE,        /**< of set 1, then of set 2 */
  DW_DRILL_BY_COMPRESSION, /**< change at the middle speed, up or down */
  DW_DRILL_BY_REBOUND,     /**< the same of rebound */
  DW_DRILL_BY_PACK,        /**< of compression */
  DW_DRILL_BY_OIL,         /**< viscosity of the oil that holds; without one last */
  DW_DRILL_BY_SCATTER,     /**< dw_drill_row_scatter() */
  DW_DRILL_BY_HOLES,
  DW_DRILL_BY_PASSES,
  DW_N_DRILL_ORDERS
} dw_drill_order;

/**
 * The sizes that a set can have: 0, as it is, and every drill that is larger than its holes and that
 * the land allows while the other set stays as it is; rising, without doubles.
 *
 * @param drills  [m] in any order
 * @param out     [m] room for n + 1
 * @return        how many; 1 for an empty set
 */
int dw_drill_sizes (const dw_drill_sets *sets, int set, const double *drills, int n, double *out);

/**
 * Whether two sizes are one of the choices: there is land, the model accepts the drilled damper
 * (holes take at most half the face), and it does not say the same as another one with the sizes
 * exchanged.
 *
 * @param size  [m] of each set, from dw_drill_sizes()
 */
bool dw_drill_is_choice (const dw_drill_sets *sets, const double size[DW_DRILL_SETS]);

/**
 * All about one choice.
 *
 * @param size  [m] of each set; 0 = left as it is
 * @param out   set on success only
 * @return as dw_drilling_at()
 */
dw_status dw_drill_row_make (const dw_drilling *study, const dw_drill_box *box,
                             const double size[DW_DRILL_SETS], dw_drill_row *out, dw_error *err);

/**
 * The largest part by which a force may be off, both ways, over both strokes and three speeds [1]:
 * two standard deviations over the mean.
 */
double dw_drill_row_scatter (const dw_drill_row *row);

/**
 * The largest part by which left and right may differ, both ways, over both strokes and three
 * speeds [1]: two standard deviations of the difference over the mean.
 */
double dw_drill_row_pair (const dw_drill_row *row);

/** The filter that every row passes. */
dw_drill_filter dw_drill_filter_defaults (void);

/** Whether a row is wanted. A change that is not known passes only without keep_compression. */
bool dw_drill_filter_passes (const dw_drill_filter *filter, const dw_drill_row *row);

/** < 0, 0 or > 0 as for qsort(): least first, equal ones by their sizes. */
int dw_drill_row_compare (const dw_drill_row *a, const dw_drill_row *b, dw_drill_order order);
