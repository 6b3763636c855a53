/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-pen.h"

#include <math.h>

static const double TURN = 6.283185307179586; /* [rad] */

/* Widths in those of the frame, or of the line that is named. [1] */
static const double CONTOUR_WIDTH = 1.1;
static const double OIL_WIDTH = 0.9; /* of a trial's line */
static const double RIM = 2.4;       /* around a line, in its widths */
static const double RIM_ALPHA = 0.7; /* [1] */
static const double BOX_WIDTH = 1.6;
static const double BOX_RIM = 3.0;
static const double RING_WIDTH = 2.0;
static const double RING_RIM = 4.0;
static const double BOX_ALPHA = 0.18; /* [1] */

/* Distances of patterns, in ems of the notes' letters; side of a speckle, in distances. */
static const double HATCH_STEP = 1.2;
static const double HATCH_ALPHA = 0.6; /* [1] */
static const double SPECKLE_STEP = 0.9;
static const double SPECKLE = 0.16;

/* Radii of marks in the plot and of small ones, in those of a marker. [1] */
static const double RADIUS[DW_N_DRILL_MARKS][2] = { [DW_DRILL_MARK_NOW] = { 1.7, 1.25 },
                                                    [DW_DRILL_MARK_CHOSEN] = { 1.7, 1.25 },
                                                    [DW_DRILL_MARK_POINTED] = { 2.3, 1.25 } };

/* ---- lines ---- */

static dw_line_style
solid (dw_color color, double width)
{
  return (dw_line_style){ .color = color, .width = width };
}

dw_line_style
dw_drill_pen_contour (const dw_chart_style *style)
{
  return solid (style->ink, CONTOUR_WIDTH * style->frame_width);
}

dw_line_style
dw_drill_pen_oil (const dw_chart_style *style)
{
  dw_line_style pen = style->line[DW_SLOT_TRIAL_1];
  pen.width *= OIL_WIDTH;
  return pen;
}

dw_line_style
dw_drill_pen_equal (const dw_chart_style *style)
{
  return style->line[DW_SLOT_FITTED];
}

dw_line_style
dw_drill_pen_land (const dw_chart_style *style)
{
  return solid (style->warning, style->line[DW_SLOT_TRIAL_1].width);
}

/* One path for all of them: a rim is below every line. */
void
dw_drill_pen_lines (cairo_t *cr, const dw_drill_line *lines, int n, const dw_line_style *pen,
                    const dw_chart_style *style)
{
  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  for (int i = 0; i < n; i++)
    dw_pen_add (cr, &lines[i].line);
  dw_pen_color (cr, dw_color_with_alpha (style->plot, RIM_ALPHA));
  cairo_set_line_width (cr, RIM * pen->width);
  cairo_stroke_preserve (cr);
  dw_pen_color (cr, pen->color);
  cairo_set_line_width (cr, pen->width);
  cairo_set_dash (cr, pen->dash, pen->n_dash, 0.0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* ---- areas ---- */

/* Diagonals cut to a box: a clip would cost more than the lines. */
void
dw_drill_pen_hatch (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  const double step = HATCH_STEP * style->font[DW_TEXT_NOTE].size;
  const double bottom = box->y + box->height;
  /* from a fixed origin, so that neighbouring boxes continue each other: x + y is a whole step */
  const double first = ceil ((box->x + box->y) / step) * step;
  for (double sum = first; sum < box->x + box->width + bottom; sum += step)
    {
      dw_spot a = { sum - box->y, box->y };
      dw_spot b = { sum - bottom, bottom };
      if (!dw_segment_clip (box, &a, &b))
        continue;
      cairo_move_to (cr, a.x, a.y);
      cairo_line_to (cr, b.x, b.y);
    }
  dw_pen_color (cr, dw_color_with_alpha (style->ink, HATCH_ALPHA));
  cairo_set_line_width (cr, style->frame_width);
  cairo_stroke (cr);
}

/* Small squares, which are painted much quicker than round dots, in every other place of the next
 * row. */
void
dw_drill_pen_speckles (cairo_t *cr, const dw_rect *box, const dw_polyline *outline,
                       const dw_chart_style *style)
{
  const double step = SPECKLE_STEP * style->font[DW_TEXT_NOTE].size;
  const double side = SPECKLE * step;
  const double right = box->x + box->width;
  int row = 0;
  for (double y = box->y + 0.5 * step; y < box->y + box->height; y += 0.5 * step, row++)
    for (double x = box->x + (row % 2 == 0 ? 0.5 : 1.0) * step; x < right; x += step)
      if (outline == NULL || dw_polyline_holds (outline, (dw_spot){ x, y }))
        cairo_rectangle (cr, x - 0.5 * side, y - 0.5 * side, side, side);
  dw_pen_color (cr, style->muted);
  cairo_fill (cr);
}

void
dw_drill_pen_frame (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, style->frame_width);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_stroke (cr);
}

/* ---- marks ---- */

/* The present path in a colour on a wider rim. */
static void
stroke_on_rim (cairo_t *cr, dw_color color, double width, double rim, const dw_chart_style *style)
{
  dw_pen_color (cr, style->plot);
  cairo_set_line_width (cr, rim * style->frame_width);
  cairo_stroke_preserve (cr);
  dw_pen_color (cr, color);
  cairo_set_line_width (cr, width * style->frame_width);
  cairo_stroke (cr);
}

void
dw_drill_pen_tolerance (cairo_t *cr, const dw_rect *box, bool is_plain, const dw_chart_style *style)
{
  const double right = box->x + box->width;
  const double bottom = box->y + box->height;
  dw_pen_fill_rect (cr, box, dw_color_with_alpha (style->warning, BOX_ALPHA));
  if (is_plain)
    {
      dw_pen_line (cr, (dw_spot){ box->x, box->y }, (dw_spot){ box->x, bottom }, style->warning,
                   style->frame_width);
      dw_pen_line (cr, (dw_spot){ right, box->y }, (dw_spot){ right, bottom }, style->warning,
                   style->frame_width);
      return;
    }
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  stroke_on_rim (cr, style->warning, BOX_WIDTH, BOX_RIM, style);
}

void
dw_drill_pen_mark (cairo_t *cr, dw_drill_mark mark, dw_spot at, bool is_small,
                   const dw_chart_style *style)
{
  const double radius = RADIUS[mark][is_small ? 1 : 0] * style->marker_radius;
  if (mark != DW_DRILL_MARK_POINTED)
    {
      dw_pen_marker (cr, mark == DW_DRILL_MARK_NOW ? DW_MARKER_CROSS : DW_MARKER_DIAMOND, at,
                     radius, style->ink, style->plot);
      return;
    }
  cairo_new_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0.0, TURN);
  stroke_on_rim (cr, style->ink, RING_WIDTH, RING_RIM, style);
}

/* ---- samples ---- */

static void
paint_line (cairo_t *cr, const dw_rect *box, dw_line_style pen)
{
  dw_polyline line = { 0 };
  dw_polyline_add (&line, box->x, box->y + 0.5 * box->height);
  dw_polyline_add (&line, box->x + box->width, box->y + 0.5 * box->height);
  dw_pen_stroke (cr, &line, &pen);
  dw_polyline_clear (&line);
}

static void
paint_chosen (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  const dw_spot at = { box->x + 0.3 * box->width, box->y + 0.75 * box->height };
  const double top = box->y + style->frame_width;
  const dw_rect tolerance = { at.x, top, 0.45 * box->width, at.y - top };
  dw_drill_pen_mark (cr, DW_DRILL_MARK_CHOSEN, at, true, style);
  dw_drill_pen_tolerance (cr, &tolerance, false, style);
}

static void
paint_no_room (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  const dw_line_style pen = dw_drill_pen_land (style);
  dw_pen_fill_rect (cr, box, style->plot);
  dw_drill_pen_speckles (cr, box, NULL, style);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  dw_pen_color (cr, pen.color);
  cairo_set_line_width (cr, pen.width);
  cairo_stroke (cr);
}

void
dw_drill_pen_sample (cairo_t *cr, const dw_drill_sample *sample, const dw_chart_style *style)
{
  const dw_rect *box = &sample->box;
  const dw_spot middle = { box->x + 0.5 * box->width, box->y + 0.5 * box->height };
  const dw_rect inner = dw_rect_inset (box, 0.5 * style->frame_width);
  switch (sample->key)
    {
    case DW_KEY_CONTOUR:
      paint_line (cr, box, dw_drill_pen_contour (style));
      break;
    case DW_KEY_OIL:
      paint_line (cr, box, dw_drill_pen_oil (style));
      break;
    case DW_KEY_EQUAL:
      paint_line (cr, box, dw_drill_pen_equal (style));
      break;
    case DW_KEY_NO_ROOM:
      paint_no_room (cr, &inner, style);
      break;
    case DW_KEY_GONE:
      dw_pen_fill_rect (cr, &inner, style->plot);
      dw_drill_pen_hatch (cr, &inner, style);
      dw_drill_pen_frame (cr, &inner, style);
      break;
    case DW_KEY_DOT:
      dw_pen_marker (cr, DW_MARKER_CIRCLE, middle, style->marker_radius, style->ink, style->plot);
      break;
    case DW_KEY_TOLERANCE:
      paint_chosen (cr, box, style);
      break;
    case DW_N_KEYS:
      break;
    }
}
