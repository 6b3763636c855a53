/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-pen.h"

#include <math.h>

static const double TURN = 6.283185307179586; /* [rad] */

/* Dots past the onset, in widths of the line. */
static const double DOT_GAP = 2.6;

/* Width of hatching and radius of dots, in distances of their pattern. */
static const double HATCH_WIDTH = 0.11;
static const double DOT_RADIUS = 0.15;

void
dw_pen_color (cairo_t *cr, dw_color color)
{
  cairo_set_source_rgba (cr, color.red, color.green, color.blue, color.alpha);
}

void
dw_pen_fill_rect (cairo_t *cr, const dw_rect *rect, dw_color color)
{
  dw_pen_color (cr, color);
  cairo_rectangle (cr, rect->x, rect->y, rect->width, rect->height);
  cairo_fill (cr);
}

void
dw_pen_line (cairo_t *cr, dw_spot from, dw_spot to, dw_color color, double width)
{
  dw_pen_color (cr, color);
  cairo_set_line_width (cr, width);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  cairo_stroke (cr);
}

void
dw_pen_add (cairo_t *cr, const dw_polyline *line)
{
  bool is_down = false;
  for (size_t i = 0; i < line->n; i++)
    {
      const dw_spot spot = line->spots[i];
      if (dw_spot_is_gap (spot))
        is_down = false;
      else if (is_down)
        cairo_line_to (cr, spot.x, spot.y);
      else
        {
          cairo_move_to (cr, spot.x, spot.y);
          is_down = true;
        }
    }
}

/* Piece from @p start on: its end, one behind the last spot. */
static size_t
piece_end (const dw_polyline *line, size_t start)
{
  size_t end = start;
  while (end < line->n && !dw_spot_is_gap (line->spots[end]))
    end++;
  return end;
}

void
dw_pen_add_between (cairo_t *cr, const dw_polyline *upper, const dw_polyline *lower, double bottom)
{
  size_t u = 0;
  size_t l = 0;
  while (u < upper->n && (lower == NULL || l < lower->n))
    {
      const size_t u_end = piece_end (upper, u);
      const size_t l_end = lower != NULL ? piece_end (lower, l) : 0;
      if (u_end > u)
        cairo_move_to (cr, upper->spots[u].x, upper->spots[u].y);
      for (size_t i = u + 1; i < u_end; i++)
        cairo_line_to (cr, upper->spots[i].x, upper->spots[i].y);
      if (lower == NULL && u_end > u)
        {
          cairo_line_to (cr, upper->spots[u_end - 1].x, bottom);
          cairo_line_to (cr, upper->spots[u].x, bottom);
        }
      for (size_t i = l_end; i > l; i--)
        cairo_line_to (cr, lower->spots[i - 1].x, lower->spots[i - 1].y);
      cairo_close_path (cr);
      u = u_end + 1;
      l = l_end + 1;
    }
}

static void
prepare_line (cairo_t *cr, const dw_line_style *style)
{
  dw_pen_color (cr, style->color);
  cairo_set_line_width (cr, style->width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, style->dash, style->n_dash, 0.0);
}

void
dw_pen_stroke (cairo_t *cr, const dw_polyline *line, const dw_line_style *style)
{
  cairo_save (cr);
  prepare_line (cr, style);
  dw_pen_add (cr, line);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
dw_pen_stroke_past (cairo_t *cr, const dw_polyline *line, const dw_line_style *style,
                    double width_share)
{
  const double width = width_share * style->width;
  const double dots[] = { 0.0, DOT_GAP * width };
  cairo_save (cr);
  prepare_line (cr, style);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, dots, 2, 0.0);
  dw_pen_add (cr, line);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
add_corners (cairo_t *cr, dw_spot at, const double (*corners)[2], int n, double radius)
{
  for (int i = 0; i < n; i++)
    cairo_line_to (cr, at.x + radius * corners[i][0], at.y + radius * corners[i][1]);
  cairo_close_path (cr);
}

/* Corners in radii; sizes chosen so that all markers have about the same area. */
static const double SQUARE[][2] = { { -0.9, -0.9 }, { 0.9, -0.9 }, { 0.9, 0.9 }, { -0.9, 0.9 } };
static const double TRIANGLE[][2] = { { 0.0, -1.25 }, { 1.15, 0.8 }, { -1.15, 0.8 } };
static const double DIAMOND[][2] = { { 0.0, -1.3 }, { 1.15, 0.0 }, { 0.0, 1.3 }, { -1.15, 0.0 } };
static const double CROSS[][2] = { { -0.4, -1.2 }, { 0.4, -1.2 }, { 0.4, -0.4 },  { 1.2, -0.4 },
                                   { 1.2, 0.4 },   { 0.4, 0.4 },  { 0.4, 1.2 },   { -0.4, 1.2 },
                                   { -0.4, 0.4 },  { -1.2, 0.4 }, { -1.2, -0.4 }, { -0.4, -0.4 } };

void
dw_pen_marker (cairo_t *cr, dw_marker marker, dw_spot at, double radius, dw_color color,
               dw_color rim)
{
  cairo_save (cr);
  cairo_new_path (cr);
  switch (marker)
    {
    case DW_MARKER_CIRCLE:
      cairo_arc (cr, at.x, at.y, radius, 0.0, TURN);
      break;
    case DW_MARKER_SQUARE:
      add_corners (cr, at, SQUARE, 4, radius);
      break;
    case DW_MARKER_TRIANGLE:
      add_corners (cr, at, TRIANGLE, 3, radius);
      break;
    case DW_MARKER_DIAMOND:
      add_corners (cr, at, DIAMOND, 4, radius);
      break;
    case DW_MARKER_CROSS:
      add_corners (cr, at, CROSS, 12, radius);
      break;
    }
  dw_pen_color (cr, rim);
  cairo_set_line_width (cr, 0.5 * radius);
  cairo_stroke_preserve (cr);
  dw_pen_color (cr, color);
  cairo_fill (cr);
  cairo_restore (cr);
}

void
dw_pen_open_mark (cairo_t *cr, dw_spot at, double radius, double width, dw_color color,
                  dw_color inside)
{
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0.0, TURN);
  dw_pen_color (cr, inside);
  cairo_fill_preserve (cr);
  dw_pen_color (cr, color);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
  cairo_restore (cr);
}

dw_pattern
dw_pen_share_pattern (int share)
{
  switch (share)
    {
    case DW_SHARE_OPEN:
      return DW_PATTERN_LINES;
    case DW_SHARE_COVERED:
      return DW_PATTERN_DOTS;
    default:
      return DW_PATTERN_PLAIN;
    }
}

static void
add_hatching (cairo_t *cr, const dw_rect *box, double size)
{
  const double bottom = box->y + box->height;
  /* from a fixed origin, so that neighbouring areas continue each other */
  const double step = size * 1.4142135623730951;
  for (double x = floor (box->x / step) * step; x < box->x + box->width + box->height; x += step)
    {
      cairo_move_to (cr, x, box->y);
      cairo_line_to (cr, x - box->height, bottom);
    }
}

static void
add_dots (cairo_t *cr, const dw_rect *box, double size)
{
  int row = 0;
  for (double y = box->y + 0.5 * size; y < box->y + box->height + size; y += 0.8 * size, row++)
    for (double x = floor (box->x / size) * size + (row % 2) * 0.5 * size;
         x < box->x + box->width + size; x += size)
      {
        cairo_new_sub_path (cr);
        cairo_arc (cr, x, y, DOT_RADIUS * size, 0.0, TURN);
      }
}

void
dw_pen_fill_pattern (cairo_t *cr, const dw_rect *box, dw_color tone, dw_pattern pattern,
                     dw_color ink, double size)
{
  cairo_save (cr);
  dw_pen_color (cr, tone);
  if (pattern == DW_PATTERN_PLAIN)
    cairo_fill (cr);
  else
    {
      cairo_fill_preserve (cr);
      cairo_clip (cr);
      dw_pen_color (cr, ink);
      if (pattern == DW_PATTERN_LINES)
        {
          add_hatching (cr, box, size);
          cairo_set_line_width (cr, HATCH_WIDTH * size);
          cairo_stroke (cr);
        }
      else
        {
          add_dots (cr, box, size);
          cairo_fill (cr);
        }
    }
  cairo_restore (cr);
}
