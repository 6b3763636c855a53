/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-curve.h
 * One stroke of one series as lines on the page: cut to the plot, thinned, with its marks.
 */
#pragma once

#include "draw/dw-chart.h"
#include "draw/dw-polyline.h"
#include "draw/dw-scale.h"

#define DW_MAX_MARKERS 64

/** Lines and marks. Start with all zero, end with dw_chart_curve_clear(). */
typedef struct
{
  int slot;
  dw_polyline before;   /**< up to the void onset, or all of it */
  dw_polyline past;     /**< past the onset: drawn thinner and dotted */
  dw_polyline cap;      /**< the early cap, from the mark on; sealed gas only */
  dw_polyline band_low; /**< spread; not cut to the plot, as many pieces as band_high */
  dw_polyline band_high;
  dw_spot markers[DW_MAX_MARKERS]; /**< where the line carries its marker */
  int n_markers;
  bool has_onset;     /**< the mark lies in the plot */
  dw_spot onset;      /**< its middle */
  double onset_speed; /**< [m/s] as shown */
} dw_chart_curve;

/** The frame that curves are laid out in. */
typedef struct
{
  dw_rect plot;
  dw_scale x; /**< speed as shown */
  dw_scale y; /**< as shown, compression positive */
} dw_chart_frame;

/** Height on the page [pt] of a magnitude as shown of a stroke. */
double dw_chart_frame_y (const dw_chart_frame *frame, dw_stroke stroke, double magnitude);

/** Free the lines; it may be used again. */
void dw_chart_curve_clear (dw_chart_curve *curve);

/** Lay out one stroke of series number @p series. @param curve  cleared, then filled */
void dw_chart_curve_make (const dw_chart *chart, int series, dw_stroke stroke,
                          const dw_chart_style *style, const dw_chart_frame *frame,
                          dw_chart_curve *curve);

/** Whether its lines or its mark cross a box. */
bool dw_chart_curve_meets (const dw_chart_curve *curve, double mark_radius, const dw_rect *box);

/** As dw_polyline_nearest(), over all of the curve. */
double dw_chart_curve_nearest (const dw_chart_curve *curve, dw_spot to, dw_spot *out);
