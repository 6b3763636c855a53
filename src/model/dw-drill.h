/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill.h
 * The drills there are, and how far a drilled hole may be from its drill.
 *
 * The table is data/drills.csv: metric drills 0.50 to 3.00 mm (series rule of
 * BS 328 / ISO 235) and number drills #80 to #30 (ANSI/ASME B94.11M), smallest
 * first, no two of one diameter. Constant data: any thread may use it.
 */
#pragma once

#include <stddef.h>

typedef enum
{
  DW_DRILL_METRIC, /**< BS 328 / ISO 235 */
  DW_DRILL_NUMBER, /**< ANSI/ASME B94.11M, #80 to #30 */
  DW_N_DRILL_SERIES
} dw_drill_series;

/** One drill. */
typedef struct
{
  double diameter; /**< [m] nominal; the double nearest to the standard's millimetres */
  dw_drill_series series;
  const char *name; /**< "1.30" (millimetres) or "#55" */
} dw_drill_size;

/**
 * Two diameters closer than this [m] are one size: far above the rounding of a
 * unit conversion (1e-18 m), far below the closest two drills (1.8e-6 m).
 */
#define DW_DRILL_SAME 1e-9

/** All drills by rising diameter; static storage. @p n is set to their number. */
const dw_drill_size *dw_drill_table (size_t *n);

/** "metric" or "number". */
const char *dw_drill_series_name (dw_drill_series series);

/**
 * The smallest drill strictly larger (by more than DW_DRILL_SAME) than a hole.
 *
 * @param diameter  [m] any finite value
 * @return          static storage; NULL when even the largest is not larger
 */
const dw_drill_size *dw_drill_next (double diameter);

/**
 * The drill nearest to a diameter; of two equally near the smaller, which
 * leaves the choice to drill on.
 *
 * @param diameter  [m] any finite value
 * @return          never NULL; static storage
 */
const dw_drill_size *dw_drill_nearest (double diameter);

/**
 * Standard tolerance, ISO 286-1, Table 1.
 *
 * @param grade  6 to 13 for sizes up to 3 mm; 8, 11, 12 or 13 above
 * @param size   [m] nominal, > 0 and up to 6 mm; 3 mm belongs to the smaller band
 * @return       [m] width of the tolerance zone; NaN for any other grade or size
 */
double dw_tolerance_it (int grade, double size);

/**
 * Largest hole that a drill may leave at a grade of tolerance: nominal + IT, zone H.
 *
 * @param grade  as for dw_tolerance_it(); 11 to 13 are usual for drilled holes
 * @return       [m] diameter; NaN where dw_tolerance_it() is
 */
double dw_drill_hole_max (const dw_drill_size *drill, int grade);

/**
 * Smallest diameter of a drill made to zone h8, and so of a true hole: nominal - IT8.
 *
 * @return  [m] diameter
 */
double dw_drill_min (const dw_drill_size *drill);
