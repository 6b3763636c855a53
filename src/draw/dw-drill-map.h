/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map.h
 * What a map of drill sizes shows: a field of one measure in tones, contours of another, the choices
 * that drills make, and what is already gone.
 *
 * Set 1 across, set 2 upwards, diameters in metres. With one set only the map is a strip: the measure
 * upwards against the size. A map borrows everything; the caller keeps lists and texts while it is in
 * use. Pure functions.
 */
#pragma once

#include "draw/dw-chart-style.h"
#include "draw/dw-number-format.h"
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

/** A choice on the map. */
typedef struct
{
  double x;       /**< [m] diameter of set 1; that of now when it is left as it is */
  double y;       /**< [m] diameter of set 2 */
  bool is_wanted; /**< the filters let it pass; else it is shown faint */
} dw_drill_dot;

/** Words, already translated; names in braces are filled in. Borrowed. */
typedef struct
{
  const char *axis[DW_DRILL_SETS];    /**< "Set 1, 3 open holes" */
  const char *caption;                /**< "{what} in {unit}" */
  const char *measure[DW_N_MEASURES]; /**< "compression at low speed, change" */
  const char *shaded;                 /**< "Shaded: {what}" */
  const char *contours;               /**< "Lines: {what}" */
  const char *now;                    /**< "now", beside the mark */
  const char *gone;                   /**< "already drilled away" */
  const char *no_room;                /**< "too little land" */
  const char *equal;                  /**< "as low-speed compression now" */
  const char *about; /**< the map in words: "{shaded} over sizes of {x} and {y}. ..." */
} dw_drill_map_labels;

/** English. */
dw_drill_map_labels dw_drill_map_labels_defaults (void);

/** Everything that a map shows. Plain value. */
typedef struct
{
  const dw_drill_sets *sets;     /**< for land and what there is now */
  const dw_drill_field *shade;   /**< tones */
  const dw_drill_field *contour; /**< lines with labels; NULL = none */
  const dw_drill_field *equal; /**< low-speed compression, whose line through 0 % is drawn; NULL */
  dw_drill_measure shade_measure;
  dw_drill_measure contour_measure;
  const dw_drill_dot *dots;
  int n_dots;
  int chosen;         /**< index of a dot; -1 = none */
  int pointed;        /**< dot under the pointer; -1 = none */
  double tolerance;   /**< [m] how much larger a hole may come out: the box at the chosen dot */
  const double *oils; /**< [m2/s] lines where this oil would hold, with @p oil; may be NULL */
  int n_oils;
  const dw_drill_field *oil; /**< DW_MEASURE_OIL; NULL = no such lines */
  dw_drill_map_labels labels;
  dw_number_format numbers;
  double length_factor;    /**< [m] in the unit that is shown */
  const char *length_unit; /**< "mm" */
} dw_drill_map;

/** Nothing but words, metric; no dot chosen. */
dw_drill_map dw_drill_map_defaults (void);
