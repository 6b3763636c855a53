/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart.h
 * What a chart of force against shaft speed shows: series, options, units and words.
 *
 * Compression is drawn up, rebound down; an axis of magnitudes is mirrored at the line between.
 * A chart borrows everything; the caller keeps series and texts while it is in use. "As shown"
 * means: in SI, force or c, at the shaft or at the wheel. Pure functions.
 */
#pragma once

#include "draw/dw-chart-style.h"
#include "draw/dw-number-format.h"
#include "draw/dw-series.h"
#include "draw/dw-view.h"

/** A unit that the user reads. */
typedef struct
{
  const char *symbol; /**< "N" */
  double factor;      /**< [SI] in one of it */
} dw_unit;

typedef struct
{
  dw_unit speed;   /**< of [m/s] */
  dw_unit force;   /**< of [N] */
  dw_unit damping; /**< of [N s/m] */
  dw_unit length;  /**< of [m], for lost travel */
} dw_chart_units;

/** m/s, N, N s/m, mm. */
dw_chart_units dw_chart_units_metric (void);

/** in/s, lbf, lbf s/in, in. */
dw_chart_units dw_chart_units_inch (void);

typedef enum
{
  DW_SHOW_FORCE,
  DW_SHOW_DAMPING, /**< c = F/v */
  DW_N_QUANTITIES
} dw_chart_quantity;

typedef enum
{
  DW_AT_SHAFT,
  DW_AT_WHEEL, /**< speeds by 1/MR, forces by MR, c by MR^2 */
  DW_N_PLACES
} dw_chart_place;

/**
 * Where the legend goes; always a strip of its own, never over data. As a table it has a row for
 * each setup, with columns for the figures of a reading line.
 */
typedef enum
{
  DW_LEGEND_AUTO,
  DW_LEGEND_ABOVE,
  DW_LEGEND_RIGHT,
  DW_LEGEND_TABLE,
  DW_LEGEND_NONE
} dw_legend_place;

/** Words, already translated; names in braces are filled in. Borrowed. */
typedef struct
{
  const char *title;        /**< NULL = none */
  const char *title_beside; /**< of the chart beside this one, which is to be laid out alike */
  const char *stroke[DW_N_STROKES];                   /**< "compression", "rebound" */
  const char *quantity[DW_N_QUANTITIES][DW_N_PLACES]; /**< "Force", "Damping c at the wheel" */
  const char *speed[DW_N_PLACES];                     /**< "Shaft speed" */
  const char *caption;            /**< "{what} in {unit}"; NULL = no axis says what it shows */
  const char *onset;              /**< "void from {speed} {unit}" */
  const char *strip;              /**< "Where the oil flows: {setup}, {stroke}" */
  const char *share[DW_N_SHARES]; /**< "open holes", "covered holes", "leak" */
  const char *fitted;             /**< "{setup} (fitted)", in the legend */
  const char *lost;               /**< "lost {unit}", over the travel lost to the void */
  const char *lost_all;           /**< "all", when there is no end to it: a vented damper */
  /* the chart in words, for those who do not see it */
  const char *about;        /**< "{quantity}. {speed} from {from} to {to} {unit}." */
  const char *about_one;    /**< "{setup}: {compression}; {rebound}." */
  const char *about_stroke; /**< "{stroke} {values}" */
  const char *about_value;  /**< "{value} {unit} at {speed} {speed_unit}" */
  const char *about_onset;  /**< "A void opens in compression from {speed} {unit}." */
  const char *about_none;   /**< "No setup is drawn." */
} dw_chart_labels;

/** English. */
dw_chart_labels dw_chart_labels_defaults (void);

/** Everything that a chart shows. Plain value. */
typedef struct
{
  const dw_series *series[DW_MAX_SERIES]; /**< borrowed; the first is the reference */
  int n_series;
  dw_chart_labels labels;
  dw_chart_units units;
  dw_number_format numbers;
  dw_chart_quantity quantity;
  dw_chart_place place;
  dw_legend_place legend;
  bool is_log;     /**< speed by its logarithm */
  bool shows_band; /**< spread bands of series that have one */
  bool shows_cap;  /**< line of the early cap, when gas is sealed */
  bool has_view;   /**< @p view holds; else all is shown */
  dw_view view;
  bool has_range;   /**< @p range holds */
  dw_view range;    /**< all of it is shown as well, so that two charts have the same axes */
  int strip_series; /**< whose flow shares are shown below the chart; -1 = none */
  dw_stroke strip_stroke;
} dw_chart;

/** Without series: force at the shaft, even speed, metric, no strip, everything on. */
dw_chart dw_chart_defaults (void);

/**
 * Whether two charts look the same. Words count by where they lie, all options by their bytes: charts
 * that look the same may be told apart, others never.
 */
bool dw_chart_same (const dw_chart *a, const dw_chart *b);

/** Line of a series: its own slot, or the one that is left for it. */
int dw_chart_slot (const dw_chart *chart, int series);

/** Speed as shown [m/s] of a shaft speed [m/s]. */
double dw_chart_shown_speed (const dw_chart *chart, const dw_series *series, double shaft_speed);

/** Shaft speed [m/s] of a speed as shown [m/s]. */
double dw_chart_shaft_speed (const dw_chart *chart, const dw_series *series, double shown_speed);

/**
 * Force or c as shown, a magnitude; NaN for c at rest.
 *
 * @param shaft_speed  [m/s]
 * @param force        [N] at the shaft
 */
double dw_chart_shown_value (const dw_chart *chart, const dw_series *series, double shaft_speed,
                             double force);

/** Unit of the upright axis. Borrowed from the chart. */
const dw_unit *dw_chart_value_unit (const dw_chart *chart);

/** All of the data, widened to round numbers in the user's units. */
dw_view dw_chart_whole_view (const dw_chart *chart);

/** The view that is shown: its own, made to lie in the whole, or the whole. */
dw_view dw_chart_current_view (const dw_chart *chart);
