/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-geometry.h
 * Spots, rectangles and straight pieces on a page.
 *
 * Lengths are points, x to the right and y down, as cairo has them. Pure functions.
 */
#pragma once

#include <stdbool.h>

/** A place on the page. */
typedef struct
{
  double x; /**< [pt] */
  double y; /**< [pt] */
} dw_spot;

/** An upright rectangle; without extent when width or height is 0. */
typedef struct
{
  double x;      /**< [pt] left */
  double y;      /**< [pt] top */
  double width;  /**< [pt] >= 0 */
  double height; /**< [pt] >= 0 */
} dw_rect;

/** Whether two rectangles share an area; touching ones do not. */
bool dw_rect_overlaps (const dw_rect *a, const dw_rect *b);

/** Whether a spot lies inside or on the border. */
bool dw_rect_holds (const dw_rect *rect, double x, double y);

/** Whether @p inner lies in @p outer, borders included, to a thousandth of a point. */
bool dw_rect_holds_rect (const dw_rect *outer, const dw_rect *inner);

/** Smaller by @p by [pt] on every side, larger when negative; never inside out. */
dw_rect dw_rect_inset (const dw_rect *rect, double by);

/**
 * Cut a straight piece to a rectangle (Liang and Barsky's parametric clipping).
 *
 * @return  false, and nothing changed, when no part of it is inside
 */
bool dw_segment_clip (const dw_rect *rect, dw_spot *a, dw_spot *b);

/** Spot of a straight piece that is nearest to another. */
dw_spot dw_segment_nearest (dw_spot a, dw_spot b, dw_spot to);

/** [pt] */
double dw_spot_distance (dw_spot a, dw_spot b);
