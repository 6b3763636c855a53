/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-polyline.h
 * Lines through many spots, with gaps: made thinner, cut to a rectangle, asked for their nearest.
 */
#pragma once

#include <stddef.h>

#include "draw/dw-geometry.h"

/** Spots in a row; one whose x is NaN is a gap. Start with all zero, end with _clear(). */
typedef struct
{
  dw_spot *spots; /**< owned */
  size_t n;       /**< in use */
  size_t room;    /**< allocated */
} dw_polyline;

/** Free what it owns; it may be used again. */
void dw_polyline_clear (dw_polyline *line);

/** Put a spot at the end. One with a NaN or an infinity is a gap. */
void dw_polyline_add (dw_polyline *line, double x, double y);

/** Lift the pen: no two gaps stand in a row, and none at the start. */
void dw_polyline_add_gap (dw_polyline *line);

bool dw_spot_is_gap (dw_spot spot);

/**
 * Leave out what no eye can see: of all spots in one column only the first, the lowest, the
 * highest and the last stay, in their order. Gaps stay gaps.
 *
 * @param column  [pt] width of a column, > 0
 * @param out     cleared, then filled; not @p line
 */
void dw_polyline_thin (const dw_polyline *line, double column, dw_polyline *out);

/**
 * Leave out, in place, what lies on a straight line between its neighbours. Ends stay.
 *
 * @param within  [pt] how far a spot that is left out may be from the line
 */
void dw_polyline_straighten (dw_polyline *line, double within);

/**
 * Take out what lies in a rectangle that is turned about its middle: there is a gap.
 *
 * @param angle  [rad] clockwise
 * @param out    cleared, then filled; not @p line
 */
void dw_polyline_cut (const dw_polyline *line, const dw_rect *rect, double angle, dw_polyline *out);

/** Keep what is inside a rectangle; where the line leaves it there is a gap. As above. */
void dw_polyline_clip (const dw_polyline *line, const dw_rect *rect, dw_polyline *out);

/**
 * Nearest spot of the line.
 *
 * @param out  set unless the line is empty; may be NULL
 * @return     [pt] its distance; infinity when the line is empty
 */
double dw_polyline_nearest (const dw_polyline *line, dw_spot to, dw_spot *out);

/** Height of the line at @p x, between its spots; false where it has none. */
bool dw_polyline_at (const dw_polyline *line, double x, double *y);

/** Whether any part of the line is in the rectangle. */
bool dw_polyline_meets (const dw_polyline *line, const dw_rect *rect);

/** Whether a spot lies inside closed outlines, by the even-odd rule; the border is either. */
bool dw_polyline_holds (const dw_polyline *outline, dw_spot spot);
