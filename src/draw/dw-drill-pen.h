/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-pen.h
 * Pens, patterns and marks of a map of drill sizes: the same in the plot and in its legend.
 *
 * Lines, areas and marks differ by width, dash, pattern and shape, never by colour alone.
 */
#pragma once

#include "draw/dw-drill-map-legend.h"
#include "draw/dw-pen.h"

/** Line of one value. */
dw_line_style dw_drill_pen_contour (const dw_chart_style *style);

/** Line of an oil at hand: the dashes of a trial. */
dw_line_style dw_drill_pen_oil (const dw_chart_style *style);

/** Line of low-speed compression of now, and the curve of a strip: that of the fitted setup. */
dw_line_style dw_drill_pen_equal (const dw_chart_style *style);

/** Border of the land. */
dw_line_style dw_drill_pen_land (const dw_chart_style *style);

/** Stroke lines of one pen with a rim that cuts none of them. */
void dw_drill_pen_lines (cairo_t *cr, const dw_drill_line *lines, int n, const dw_line_style *pen,
                         const dw_chart_style *style);

/** Hatch what is already gone; the tone below stays to be seen. */
void dw_drill_pen_hatch (cairo_t *cr, const dw_rect *box, const dw_chart_style *style);

/** Speckle what has too little land. @p outline NULL = all of the box. */
void dw_drill_pen_speckles (cairo_t *cr, const dw_rect *box, const dw_polyline *outline,
                            const dw_chart_style *style);

/** A thin frame. */
void dw_drill_pen_frame (cairo_t *cr, const dw_rect *box, const dw_chart_style *style);

/** What a hole may become. @param is_plain  without a rim, which would cover words in a strip */
void dw_drill_pen_tolerance (cairo_t *cr, const dw_rect *box, bool is_plain,
                             const dw_chart_style *style);

/** What a mark is. */
typedef enum
{
  DW_DRILL_MARK_NOW,     /**< cross */
  DW_DRILL_MARK_CHOSEN,  /**< diamond */
  DW_DRILL_MARK_POINTED, /**< ring */
  DW_N_DRILL_MARKS
} dw_drill_mark;

/** A mark in the plot, or smaller beside a sample or on the bar of the tones. */
void dw_drill_pen_mark (cairo_t *cr, dw_drill_mark mark, dw_spot at, bool is_small,
                        const dw_chart_style *style);

/** A sample of the legend. */
void dw_drill_pen_sample (cairo_t *cr, const dw_drill_sample *sample, const dw_chart_style *style);
