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

#include "draw/dw-drill-field.h"
#include "draw/dw-number-format.h"

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
  const char *oil;                    /**< "an oil at hand would hold" */
  const char *dot;                    /**< "drills at hand" */
  const char *tolerance;              /**< "how large it may come out" */
  /* the map in words, for those who do not see it; numbers of a measure come with their unit */
  const char *about;        /**< "{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to}
                               {unit} and {y} from {y_from} to {y_to} {unit}." */
  const char *about_strip;  /**< "{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to}
                               {unit}." */
  const char *about_dots;   /**< "Choices: {n}, of which {faint} are shown faint." */
  const char *about_now;    /**< "Now {size} {unit}." */
  const char *about_chosen; /**< "Chosen: {size} {unit}, {value}." */
  const char *about_none;   /**< "No choice is marked." */
  const char *sizes;        /**< "{x} and {y}", as {size} of two sets */
} dw_drill_map_labels;

/** English. */
dw_drill_map_labels dw_drill_map_labels_defaults (void);

/** What stands behind a number of the measure: "%", "cSt" or "". Static. */
const char *dw_drill_measure_unit (dw_drill_measure measure);

/** [unit of the measure] in one that is shown. */
double dw_drill_measure_factor (dw_drill_measure measure);

/** Its name with its unit: "compression at low speed, change in %"; caller frees with g_free(). */
char *dw_drill_map_measure_caption (const dw_drill_map_labels *labels, dw_drill_measure measure);

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
