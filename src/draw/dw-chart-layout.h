/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-layout.h
 * A chart as numbers: where everything is, without painting anything.
 *
 * From top to bottom: title, legend (or at the right), caption of the upright axis, plot, speed
 * labels, caption of the speed axis, flow strip. Above a legend that is a table the title, the
 * caption and the heads of the figures share a row where they can. What a small area has no room
 * for is left out in this order: title, strip; the legend is squeezed. A layout keeps nothing of
 * the chart or the style; it may be painted, hit and asked as long as it lives. For one thread.
 */
#pragma once

#include "draw/dw-chart-curve.h"
#include "draw/dw-chart-label.h"
#include "draw/dw-chart.h"
#include "draw/dw-flow-strip.h"
#include "draw/dw-legend.h"
#include "draw/dw-readout-columns.h"
#include "draw/dw-ticks.h"

/** All that a chart's painting needs but the style. Free with dw_chart_layout_free(). */
typedef struct
{
  dw_rect area;
  dw_chart_frame frame; /**< plot and both scales */
  dw_view view;         /**< as shown */
  dw_view whole;        /**< what it can be at most */
  double zero;          /**< [pt] line between the strokes; may lie outside the plot */
  bool shows_zero;      /**< it lies in the plot */
  dw_ticks x_ticks;
  dw_ticks y_ticks;
  double x_tick_top;   /**< [pt] upper edge of the speed labels */
  double y_tick_right; /**< [pt] right edge of the value labels */
  double tick_ascent;  /**< [pt] */
  double tick_height;  /**< [pt] */
  dw_chart_label_list texts;
  dw_legend legend;
  dw_readout_columns readout; /**< of a legend that is a table */
  int n_series;
  dw_chart_curve curves[DW_MAX_SERIES][DW_N_STROKES];
  bool has_strip;
  dw_flow_strip strip;
  dw_rect swatch[DW_N_SHARES]; /**< samples in the strip's heading; no width when left out */
  double speed_factor;         /**< [m/s] in one of the user's units, for steps of the keys */
} dw_chart_layout;

/**
 * Lay a chart out.
 *
 * @param area  of the page; every text and line lies in it
 * @return      caller frees
 */
dw_chart_layout *dw_chart_layout_new (const dw_chart *chart, const dw_chart_style *style,
                                      const dw_text_metrics *metrics, const dw_rect *area);

/** NULL is allowed. */
void dw_chart_layout_free (dw_chart_layout *layout);

/** What the label of a tick covers; without width for a minor tick. */
dw_rect dw_chart_layout_x_label_box (const dw_chart_layout *layout, int tick);
dw_rect dw_chart_layout_y_label_box (const dw_chart_layout *layout, int tick);

/** A spot of a curve. */
typedef struct
{
  int series;
  dw_stroke stroke;
  dw_spot spot;    /**< on the curve */
  double speed;    /**< [m/s] as shown */
  double distance; /**< [pt] from what was asked */
} dw_chart_hit;

/**
 * Nearest spot of any curve within a radius.
 *
 * @param x,y     [pt]
 * @param radius  [pt]
 * @return        false, and nothing set, when there is none
 */
bool dw_chart_layout_hit (const dw_chart_layout *layout, double x, double y, double radius,
                          dw_chart_hit *out);

/** [pt] of a speed as shown [m/s]. */
double dw_chart_layout_x (const dw_chart_layout *layout, double speed);

/** [pt] of a magnitude as shown of a stroke. */
double dw_chart_layout_y (const dw_chart_layout *layout, dw_stroke stroke, double magnitude);

/** Speed as shown [m/s] at a place [pt]. */
double dw_chart_layout_speed (const dw_chart_layout *layout, double x);

/** Value as shown at a place [pt], compression positive. */
double dw_chart_layout_value (const dw_chart_layout *layout, double y);

/** View after a turn of the wheel at a place [pt]; factor [1] > 1 shows less, larger. */
dw_view dw_chart_layout_zoom (const dw_chart_layout *layout, double x, double y, double factor);

/** View of a rectangle dragged between two places [pt]; parts outside the plot do not count. */
dw_view dw_chart_layout_drag (const dw_chart_layout *layout, double x0, double y0, double x1,
                              double y1);

/** View after the content was pulled by a distance [pt], to the right and down. */
dw_view dw_chart_layout_pan (const dw_chart_layout *layout, double dx, double dy);

/**
 * The next sensible speed for the arrow keys: a round number in the user's unit.
 *
 * @param speed      [m/s] as shown; outside the view the nearest end is taken
 * @param direction  -1 or 1
 * @param is_large   a step ten times as far, or along 1, 2, 5 on a logarithmic axis
 * @return           [m/s] as shown, inside the view
 */
double dw_chart_layout_step (const dw_chart_layout *layout, double speed, int direction,
                             bool is_large);
