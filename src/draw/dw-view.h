/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-view.h
 * The part of the data that a chart shows, and how wheel, drag and keys change it.
 *
 * Places are shares of the plot, 0 at its left or lower border, 1 at the other: so the same
 * functions serve any size of it. Whatever is asked, the result stays inside the whole view and
 * is never turned inside out. Pure functions.
 */
#pragma once

#include <stdbool.h>

/**
 * A rectangle of the data, SI as the chart shows it: speed at shaft or wheel, force or c with
 * compression positive and rebound negative.
 */
typedef struct
{
  double x_low;  /**< [m/s] > 0 when the speed is logarithmic */
  double x_high; /**< [m/s] > x_low */
  double y_low;  /**< [N or N s/m] */
  double y_high; /**< [N or N s/m] > y_low */
} dw_view;

/** Largest magnification in each direction [1]. */
#define DW_VIEW_MOST_ZOOM 500.0

/**
 * Larger or smaller around a place that stays where it is, as far as the whole view lets it.
 *
 * @param is_log  the speed is logarithmic
 * @param x,y     [1] the place
 * @param factor  [1] > 1 shows less, larger
 */
dw_view dw_view_zoom (const dw_view *view, const dw_view *whole, bool is_log, double x, double y,
                      double factor);

/** What lies between two corners of a dragged rectangle, in any order. */
dw_view dw_view_drag (const dw_view *view, const dw_view *whole, bool is_log, double x0, double y0,
                      double x1, double y1);

/** Moved by shares of the plot [1]: x > 0 shows higher speeds, y > 0 what lies above. */
dw_view dw_view_pan (const dw_view *view, const dw_view *whole, bool is_log, double x, double y);

/** The same, or the nearest that is inside @p whole, not too small and not inside out. */
dw_view dw_view_clamp (const dw_view *view, const dw_view *whole, bool is_log);

bool dw_view_equal (const dw_view *a, const dw_view *b);
