/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-series.h
 * The curves of one setup in a chart: force against shaft speed, both strokes.
 *
 * Everything is SI and at the shaft; the chart converts to the wheel and to the user's units.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "model/dw-figures.h"
#include "model/dw-force.h"
#include "study/dw-spread.h"

/** One speed of one stroke. */
typedef struct
{
  double speed;       /**< [m/s] shaft, rising from point to point */
  double force;       /**< [N] magnitude; NaN = a gap in the curve */
  double lost_travel; /**< [m] to the void; infinity when vented */
  bool is_void;
  dw_flow_shares shares; /**< all 0 when not known */
} dw_series_point;

/** One stroke. */
typedef struct
{
  dw_series_point *points; /**< owned */
  size_t n;
  double *low;  /**< [N] of the spread band, n of them; owned; NULL = none */
  double *high; /**< [N] the same */
} dw_series_stroke;

/** The curves of one setup. Free with dw_series_free(). */
typedef struct
{
  char *name; /**< owned, UTF-8 */
  bool is_fitted;
  int slot;            /**< which line, DW_SLOT_...; -1 = the chart chooses */
  double motion_ratio; /**< [1] damper travel per wheel travel, > 0 */
  double onset_speed;  /**< [m/s] of the void in compression; infinity = none */
  double onset_force;  /**< [N] there, the early cap; NaN = not known */
  bool is_vented;      /**< the curve itself stays at the cap */
  bool has_model;      /**< @p model holds; readings are computed, not interpolated */
  dw_force_model model;
  dw_series_stroke stroke[DW_N_STROKES];
} dw_series;

/** At which speeds a series is computed. */
typedef struct
{
  double from; /**< [m/s] shaft, >= 0; > 0 when logarithmic */
  double to;   /**< [m/s] shaft, at most 10 */
  bool is_log; /**< spread for a logarithmic axis */
} dw_series_range;

/** Without points, motion ratio 1. @param name  copied. Caller frees. */
dw_series *dw_series_new (const char *name);

/** NULL is allowed. */
void dw_series_free (dw_series *series);

/**
 * Compute the curves of a damper.
 *
 * Speeds are chosen so that straight pieces between them miss the curve by less than a line's
 * width; the void onset is one of them. What was there before is replaced on success only.
 *
 * @param temperature  [degC] of the oil
 * @return DW_OK, or what dw_force_model_make() or dw_force_curve() found
 */
dw_status dw_series_fill (dw_series *series, const dw_damper *damper, double temperature,
                          const dw_series_range *range, dw_error *err);

/** Whether both look the same in every chart: names, lines, points and bands, bit for bit. */
bool dw_series_same (const dw_series *a, const dw_series *b);

/** Points of one stroke from elsewhere, a measurement say; copied. The band is dropped. */
void dw_series_set_points (dw_series *series, dw_stroke stroke, const dw_series_point *points,
                           size_t n);

/**
 * Spread of one stroke at the series' own speeds; copied.
 *
 * @param low,high  [N] as many as the stroke has points; NULL = no band
 */
void dw_series_set_band (dw_series *series, dw_stroke stroke, const double *low,
                         const double *high);

/**
 * The spread of a damper as the bands of both strokes of its series.
 *
 * The spread is computed at some of the series' speeds and interpolated between them.
 *
 * @param series       filled from the same damper at the same temperature
 * @param temperature  [degC] of the oil
 * @return DW_OK, or what dw_spread_make() found; then the bands are as before
 */
dw_status dw_series_fill_band (dw_series *series, const dw_damper *damper, double temperature,
                               const dw_spread_limits *limits, dw_error *err);
