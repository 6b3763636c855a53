/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-reading.h
 * What all curves of a chart say at one speed: the reading line that follows pointer or keys.
 *
 * A reading is painted on its own (dw-chart-paint.h), so that moving it does not draw the curves
 * again. Pure functions.
 */
#pragma once

#include "draw/dw-chart-layout.h"

/** One stroke of one series. */
typedef struct
{
  bool is_known;         /**< the curve has a value there; else nothing below is set */
  bool is_visible;       /**< the spot lies in the plot */
  dw_spot spot;          /**< on the curve */
  double force;          /**< [N] as shown, at shaft or wheel */
  double c;              /**< [N s/m] as shown; NaN at rest */
  bool has_change;       /**< not the first series, and that one is known */
  double change_percent; /**< [%] of the force against the first series */
  double lost_travel;    /**< [m] as shown; infinity when vented, 0 before the onset */
  bool is_void;
  dw_flow_shares shares;
} dw_reading_value;

/** All series at one speed. Plain value. */
typedef struct
{
  double speed; /**< [m/s] as shown */
  double x;     /**< [pt] of the line */
  dw_rect plot;
  int n_series;
  int slot[DW_MAX_SERIES];
  dw_reading_value values[DW_MAX_SERIES][DW_N_STROKES];
} dw_chart_reading;

/**
 * Read the curves. Series with a model are computed there, not interpolated.
 *
 * @param speed  [m/s] as shown
 */
dw_chart_reading dw_chart_read (const dw_chart *chart, const dw_chart_layout *layout, double speed);
