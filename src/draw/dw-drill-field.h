/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-field.h
 * A measure over the sizes of two sets of holes, for a map of them.
 *
 * Set 1 across, set 2 upwards, diameters in metres. When only one set has holes the field is a strip
 * of one row: the size of that set across. Pure functions.
 */
#pragma once

#include "study/dw-drilling.h"

/** What can be shaded or drawn as contours. */
typedef enum
{
  DW_MEASURE_COMPRESSION_LOW, /**< [%] change of the force against now */
  DW_MEASURE_COMPRESSION_MIDDLE,
  DW_MEASURE_COMPRESSION_HIGH,
  DW_MEASURE_REBOUND_LOW,
  DW_MEASURE_REBOUND_MIDDLE,
  DW_MEASURE_REBOUND_HIGH,
  DW_MEASURE_PACK_COMPRESSION, /**< [1] */
  DW_MEASURE_PACK_REBOUND,     /**< [1] */
  DW_MEASURE_SHARE_LOW,        /**< [1] rebound share */
  DW_MEASURE_SHARE_MIDDLE,     /**< [1] */
  DW_MEASURE_SHARE_HIGH,       /**< [1] */
  DW_MEASURE_OIL,              /**< [m2/s] nominal of the oil that holds low-speed compression */
  DW_N_MEASURES
} dw_drill_measure;

/** A measure of figures; not of DW_MEASURE_OIL. @return  [unit of the measure] */
double dw_drill_measure_of (dw_drill_measure measure, const dw_figures *figures,
                            const dw_figures *now);

/** Cells of a field in each direction, at most. */
#define DW_DRILL_FIELD_MOST 64

/** A measure over a rectangle of sizes, evenly spaced. Plain value. */
typedef struct
{
  int n_x;                                                 /**< 2..DW_DRILL_FIELD_MOST */
  int n_y;                                                 /**< as n_x; 1 for a strip */
  double x_low;                                            /**< [m] of the first column */
  double x_high;                                           /**< [m] of the last one */
  double y_low;                                            /**< [m] of the first row */
  double y_high;                                           /**< [m] of the last one */
  double value[DW_DRILL_FIELD_MOST * DW_DRILL_FIELD_MOST]; /**< [unit of the measure] row by row;
                                                              NaN = not known */
} dw_drill_field;

/** A choice on the map. */
typedef struct
{
  double x; /**< [m] diameter of set 1; that of now when it is left as it is; in a strip that of
                     the set that has holes */
  double y; /**< [m] diameter of set 2; not used in a strip */
  bool is_wanted; /**< the filters let it pass; else it is shown faint */
} dw_drill_dot;

/** Set whose size lies across: the first one that has holes, or the first one. */
int dw_drill_field_across (const dw_drill_sets *sets);

/** Whether one set at most has holes, so that a map of it is a strip. */
bool dw_drill_field_is_strip (const dw_drill_sets *sets);

/**
 * Choose nodes and ranges: from a fifth, at least 0.2 mm, below what there is now, up to the largest
 * dot and a little more, so that the land's end is seen when it is near. All dots lie inside; give
 * fewer to see less. Steps are about the same in both directions.
 *
 * @param dots   may be NULL when @p n_dots is 0: then up to the land's end, or half as large again
 * @param field  nodes and ranges are set, values are not
 * @return       false, and nothing set, when no set has holes
 */
bool dw_drill_field_place (dw_drill_field *field, const dw_drill_sets *sets,
                           const dw_drill_dot *dots, int n_dots);

/**
 * Compute fields.
 *
 * Figures are computed at every node, the oil at every third and interpolated between.
 *
 * @param fields    @p n of them, whose n_x, n_y and ranges are set; values are filled. All have the
 *                  same nodes.
 * @param measures  one for each field
 */
void dw_drill_field_fill (const dw_drilling *study, const dw_drill_measure *measures,
                          dw_drill_field *const *fields, int n);

/** Between nodes [unit of the measure], bilinear; NaN outside. @param x,y  [m] */
double dw_drill_field_at (const dw_drill_field *field, double x, double y);
