/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-paint.h
 * Painting what was laid out.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-chart-layout.h"
#include "draw/dw-chart-reading.h"

/**
 * Paint a chart. @p cr may be a screen, a printed page, a PDF or a test image.
 *
 * @param style  that it was laid out with
 */
void dw_chart_paint (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr);

/** Paint a reading line and its spots over a chart, outside the plot nothing. */
void dw_chart_reading_paint (const dw_chart_reading *reading, const dw_chart_style *style,
                             cairo_t *cr);

/** Paint a rectangle that is being dragged open, between two places [pt]. */
void dw_chart_drag_paint (const dw_chart_layout *layout, const dw_chart_style *style, double x0,
                          double y0, double x1, double y1, cairo_t *cr);
