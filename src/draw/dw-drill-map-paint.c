/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-paint.h"

#include <math.h>

#include "draw/dw-drill-pen.h"
#include "draw/dw-ramp.h"

/* Edges in sixteen steps instead of hundreds: no eye sees it, and painting takes a quarter less. */
static const cairo_antialias_t EDGES = CAIRO_ANTIALIAS_FAST;

static const double TURN = 6.283185307179586; /* [rad] */

/* Between two tones: width in those of the frame [1], and alpha [1]. */
static const double EDGE_WIDTH = 0.5;
static const double EDGE_ALPHA = 0.28;

/* Radius of a faint dot, and of a rim, in those of a dot. [1] */
static const double FAINT = 0.62;
static const double DOT_RIM = 1.3;
static const double FAINT_ALPHA = 0.6; /* [1] */

/* [pt] Smaller dots are squares: no eye tells them apart, and they are painted much quicker. */
static const double SQUARE = 1.3;

static void
clip_to (cairo_t *cr, const dw_rect *rect)
{
  cairo_rectangle (cr, rect->x, rect->y, rect->width, rect->height);
  cairo_clip (cr);
}

static dw_color
tone (const dw_drill_map_layout *layout, const dw_ramp *ramp, int i)
{
  return dw_ramp_at (ramp, dw_drill_lines_share (&layout->lines, i));
}

/* ---- tones ---- */

/* Each tone lies on the one below it: no seams, and few areas. */
static void
paint_tones (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_ramp ramp = dw_ramp_make (style);
  const dw_line_style edge = { .color = dw_color_with_alpha (style->ink, EDGE_ALPHA),
                               .width = EDGE_WIDTH * style->frame_width };
  cairo_save (cr);
  clip_to (cr, &layout->plot);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  for (int i = 0; i < dw_drill_lines_n_tones (&layout->lines); i++)
    {
      dw_pen_add (cr, &layout->lines.tone[i]);
      dw_pen_color (cr, tone (layout, &ramp, i));
      cairo_fill (cr);
      if (i > 0)
        dw_pen_stroke (cr, &layout->lines.tone[i], &edge);
    }
  cairo_restore (cr);
}

static void
paint_gone (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  for (int i = 0; i < layout->regions.n_gone; i++)
    dw_drill_pen_hatch (cr, &layout->regions.gone[i], style);
}

static void
paint_no_room (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_line_style border = dw_drill_pen_land (style);
  if (layout->regions.no_room.n == 0)
    return;
  cairo_save (cr);
  clip_to (cr, &layout->plot);
  dw_pen_add (cr, &layout->regions.no_room);
  dw_pen_color (cr, style->plot);
  cairo_fill (cr);
  dw_drill_pen_speckles (cr, &layout->plot, &layout->regions.no_room, style);
  dw_pen_stroke (cr, &layout->regions.land, &border);
  cairo_restore (cr);
}

/* ---- lines ---- */

static void
paint_grid (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *plot = &layout->plot;
  for (int i = 0; i < layout->x_ticks.n; i++)
    if (layout->x_ticks.ticks[i].is_major)
      {
        cairo_move_to (cr, layout->x_ticks.ticks[i].place, plot->y);
        cairo_line_to (cr, layout->x_ticks.ticks[i].place, plot->y + plot->height);
      }
  for (int i = 0; i < layout->y_ticks.n; i++)
    if (layout->y_ticks.ticks[i].is_major)
      {
        cairo_move_to (cr, plot->x, layout->y_ticks.ticks[i].place);
        cairo_line_to (cr, plot->x + plot->width, layout->y_ticks.ticks[i].place);
      }
  dw_pen_color (cr, style->grid);
  cairo_set_line_width (cr, style->grid_width);
  cairo_stroke (cr);
}

static void
paint_lines (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_drill_lines *lines = &layout->lines;
  const dw_line_style contour = dw_drill_pen_contour (style);
  const dw_line_style oil = dw_drill_pen_oil (style);
  const dw_line_style heavy = dw_drill_pen_equal (style);
  cairo_save (cr);
  clip_to (cr, &layout->plot);
  dw_drill_pen_lines (cr, lines->contour, lines->n_contours, &contour, style);
  dw_drill_pen_lines (cr, lines->oil, lines->n_oils, &oil, style);
  dw_drill_pen_lines (cr, &lines->equal, 1, &heavy, style);
  dw_drill_pen_lines (cr, &lines->curve, 1, &heavy, style);
  cairo_restore (cr);
}

/* ---- dots ---- */

/* There may be thousands: a small circle is seen as round with few corners, and is painted in half the
 * time. */
enum
{
  FEW_CORNERS = 8,
  MANY_CORNERS = 16
};

/* [pt] Circles of this radius and more have many. */
static const double LARGE_DOT = 2.0;

static void
add_dot (cairo_t *cr, dw_spot at, double radius, const dw_spot *corner, int n)
{
  if (radius < SQUARE)
    {
      /* of the same area */
      const double side = sqrt (0.5 * TURN) * radius;
      cairo_rectangle (cr, at.x - 0.5 * side, at.y - 0.5 * side, side, side);
      return;
    }
  cairo_move_to (cr, at.x + radius * corner[0].x, at.y + radius * corner[0].y);
  for (int k = 1; k < n; k++)
    cairo_line_to (cr, at.x + radius * corner[k].x, at.y + radius * corner[k].y);
}

static void
fill_dots (const dw_drill_map_layout *layout, bool is_wanted, double radius, dw_color color,
           cairo_t *cr)
{
  const int n = radius < LARGE_DOT ? FEW_CORNERS : MANY_CORNERS;
  dw_spot corner[MANY_CORNERS];
  for (int k = 0; k < n; k++)
    corner[k] = (dw_spot){ cos (TURN * (k + 0.5) / n), sin (TURN * (k + 0.5) / n) };
  for (int i = 0; i < layout->dots.n; i++)
    {
      const dw_drill_place *p = &layout->dots.places[i];
      if (p->is_shown && p->is_wanted == is_wanted)
        add_dot (cr, p->at, radius, corner, n);
    }
  dw_pen_color (cr, color);
  cairo_fill (cr);
}

static void
paint_dots (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double radius = layout->dots.radius;
  /* on the heavy curve of a strip a faint dot is only seen by its rim */
  if (layout->is_strip)
    fill_dots (layout, false, radius, style->plot, cr);
  fill_dots (layout, false, FAINT * radius, dw_color_with_alpha (style->ink, FAINT_ALPHA), cr);
  fill_dots (layout, true, DOT_RIM * radius, style->plot, cr);
  fill_dots (layout, true, radius, style->ink, cr);
}

/* ---- words ---- */

static void
paint_tick_labels (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  dw_pen_color (cr, style->ink);
  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      const dw_rect box = dw_drill_map_layout_x_label_box (layout, i);
      if (layout->x_ticks.ticks[i].is_major)
        dw_text_paint (cr, style, DW_TEXT_TICK, layout->x_ticks.ticks[i].label,
                       (dw_spot){ box.x, box.y + layout->tick_ascent }, 0.0);
    }
  for (int i = 0; i < layout->y_ticks.n; i++)
    {
      const dw_rect box = dw_drill_map_layout_y_label_box (layout, i);
      if (layout->y_ticks.ticks[i].is_major)
        dw_text_paint (cr, style, DW_TEXT_TICK, layout->y_ticks.ticks[i].label,
                       (dw_spot){ box.x, box.y + layout->tick_ascent }, 0.0);
    }
}

static void
paint_text (const dw_chart_label *label, const dw_chart_style *style, cairo_t *cr)
{
  const bool in_plot = label->kind == DW_LABEL_LEVEL || label->kind == DW_LABEL_OIL
                       || label->kind == DW_LABEL_NOW;
  if (in_plot)
    {
      const dw_color ink = label->kind == DW_LABEL_OIL ? style->line[DW_SLOT_TRIAL_1].color
                                                       : style->ink;
      cairo_save (cr);
      cairo_translate (cr, label->at.x, label->at.y);
      cairo_rotate (cr, label->angle);
      dw_text_paint_rimmed (cr, style, label->role, label->text, (dw_spot){ 0.0, 0.0 }, ink,
                            style->plot);
      cairo_restore (cr);
      return;
    }
  dw_pen_color (cr, label->kind == DW_LABEL_AXIS ? style->muted : style->ink);
  dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
}

/* ---- legend ---- */

static void
paint_bar (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_drill_map_legend *legend = &layout->legend;
  const dw_rect *bar = &legend->bar;
  const dw_ramp ramp = dw_ramp_make (style);
  if (bar->width <= 0.0)
    return;
  for (int i = dw_drill_lines_n_tones (&layout->lines) - 1; i >= 0; i--)
    {
      /* from the highest down, each over the rest: no seams */
      const double end = dw_drill_map_legend_tone_end (legend, &layout->lines, i);
      const dw_rect box = legend->is_upright
                              ? (dw_rect){ bar->x, end, bar->width, bar->y + bar->height - end }
                              : (dw_rect){ bar->x, bar->y, end - bar->x, bar->height };
      dw_pen_fill_rect (cr, &box, tone (layout, &ramp, i));
    }
  dw_drill_pen_frame (cr, bar, style);
}

/* ---- all ---- */

void
dw_drill_map_paint_ground (const dw_drill_map_layout *layout, const dw_chart_style *style,
                           cairo_t *cr)
{
  cairo_save (cr);
  cairo_set_antialias (cr, EDGES);
  dw_pen_fill_rect (cr, &layout->area, style->background);
  if (layout->has_data)
    {
      dw_pen_fill_rect (cr, &layout->plot, style->plot);
      if (layout->is_strip)
        paint_grid (layout, style, cr);
      else
        paint_tones (layout, style, cr);
      paint_gone (layout, style, cr);
      paint_lines (layout, style, cr);
      paint_no_room (layout, style, cr);
      dw_drill_pen_frame (cr, &layout->plot, style);
      paint_dots (layout, style, cr);
      paint_tick_labels (layout, style, cr);
      paint_bar (layout, style, cr);
      for (int i = 0; i < layout->legend.n_samples; i++)
        dw_drill_pen_sample (cr, &layout->legend.samples[i], style);
      for (int i = 0; i < layout->texts.n; i++)
        paint_text (&layout->texts.labels[i], style, cr);
    }
  cairo_restore (cr);
}

/* Down and to the left, to where the sizes can be read. */
static void
paint_guides (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_spot at = layout->dots.places[layout->chosen].at;
  const dw_spot left = { layout->plot.x, at.y };
  const dw_spot below = { at.x, layout->plot.y + layout->plot.height };
  dw_pen_line (cr, at, left, style->ink, style->reading_width);
  dw_pen_line (cr, at, below, style->ink, style->reading_width);
}

static void
paint_chosen (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_spot at = layout->dots.places[layout->chosen].at;
  paint_guides (layout, style, cr);
  dw_drill_pen_mark (cr, DW_DRILL_MARK_CHOSEN, at, false, style);
  dw_drill_pen_tolerance (cr, &layout->tolerance, layout->is_strip, style);
  if (!dw_spot_is_gap (layout->chosen_tone))
    dw_drill_pen_mark (cr, DW_DRILL_MARK_CHOSEN, layout->chosen_tone, true, style);
}

static void
paint_pointed (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_spot at = layout->dots.places[layout->pointed].at;
  dw_drill_pen_mark (cr, DW_DRILL_MARK_POINTED, at, false, style);
  if (!dw_spot_is_gap (layout->pointed_tone))
    dw_drill_pen_mark (cr, DW_DRILL_MARK_POINTED, layout->pointed_tone, true, style);
}

void
dw_drill_map_paint_marks (const dw_drill_map_layout *layout, const dw_chart_style *style,
                          cairo_t *cr)
{
  const dw_spot now = layout->regions.now;
  if (!layout->has_data)
    return;
  cairo_save (cr);
  if (dw_rect_holds (&layout->plot, now.x, now.y))
    dw_drill_pen_mark (cr, DW_DRILL_MARK_NOW, now, false, style);
  if (layout->chosen >= 0)
    paint_chosen (layout, style, cr);
  if (layout->pointed >= 0)
    paint_pointed (layout, style, cr);
  cairo_restore (cr);
}

void
dw_drill_map_paint (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  dw_drill_map_paint_ground (layout, style, cr);
  dw_drill_map_paint_marks (layout, style, cr);
}
