/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-pen.h
 * What every drawing paints: colours, lines with gaps, markers, hatching.
 *
 * Nothing is painted through groups or images, so that vector files stay vectors.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-chart-style.h"
#include "draw/dw-polyline.h"

void dw_pen_color (cairo_t *cr, dw_color color);

/** Fill a rectangle. */
void dw_pen_fill_rect (cairo_t *cr, const dw_rect *rect, dw_color color);

/** A straight line. @param width  [pt] */
void dw_pen_line (cairo_t *cr, dw_spot from, dw_spot to, dw_color color, double width);

/** Add a line to the path, gaps lifted. */
void dw_pen_add (cairo_t *cr, const dw_polyline *line);

/** Add what lies between two lines of as many pieces; @p lower NULL = down to @p bottom [pt]. */
void dw_pen_add_between (cairo_t *cr, const dw_polyline *upper, const dw_polyline *lower,
                         double bottom);

/** Stroke a line as its style says. */
void dw_pen_stroke (cairo_t *cr, const dw_polyline *line, const dw_line_style *style);

/** Stroke it past the onset: thinner, dotted. @param width_share  [1] of the usual width */
void dw_pen_stroke_past (cairo_t *cr, const dw_polyline *line, const dw_line_style *style,
                         double width_share);

/** A filled marker with a rim. @param radius  [pt] */
void dw_pen_marker (cairo_t *cr, dw_marker marker, dw_spot at, double radius, dw_color color,
                    dw_color rim);

/** The open mark of a void onset. @param radius  [pt] @param width  [pt] */
void dw_pen_open_mark (cairo_t *cr, dw_spot at, double radius, double width, dw_color color,
                       dw_color inside);

/** How an area is filled besides its tone. */
typedef enum
{
  DW_PATTERN_LINES, /**< diagonal */
  DW_PATTERN_DOTS,
  DW_PATTERN_PLAIN
} dw_pattern;

/** Pattern of a part of the flow, DW_SHARE_... */
dw_pattern dw_pen_share_pattern (int share);

/**
 * Fill the current path with a tone and a pattern; the path is used up.
 *
 * @param box   around the path
 * @param size  [pt] between lines
 */
void dw_pen_fill_pattern (cairo_t *cr, const dw_rect *box, dw_color tone, dw_pattern pattern,
                          dw_color ink, double size);
