/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-paint.h"

#include <math.h>

#include "draw/dw-pen.h"
#include "draw/dw-ramp.h"

/* Widths in those of the frame, or of the line that is named. [1] */
static const double CONTOUR_WIDTH = 1.1;
static const double RIM = 2.4;         /* around a line, in its widths */
static const double EDGE_WIDTH = 0.5;  /* between two tones */
static const double EDGE_ALPHA = 0.28; /* [1] */
static const double OIL_WIDTH = 0.9;   /* of a trial's line */

/* Distance of patterns, in ems of the notes' letters. */
static const double HATCH_SIZE = 0.85;
static const double DOTS_SIZE = 0.62;
static const double HATCH_ALPHA = 0.75; /* [1] */

/* Radii, in those of a marker, or of a dot. [1] */
static const double NOW_RADIUS = 1.7;
static const double CHOSEN_RADIUS = 2.0;
static const double POINTED_RADIUS = 2.3;
static const double FAINT = 0.62;
static const double TOLERANCE_ALPHA = 0.18; /* [1] */

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

static dw_line_style
solid (dw_color color, double width)
{
  return (dw_line_style){ .color = color, .width = width };
}

/* ---- tones ---- */

/* Each tone lies on the one below it: no seams, and few areas. */
static void
paint_tones (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_ramp ramp = dw_ramp_make (style);
  const dw_line_style edge = solid (dw_color_with_alpha (style->ink, EDGE_ALPHA),
                                    EDGE_WIDTH * style->frame_width);
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
  const double size = HATCH_SIZE * style->font[DW_TEXT_NOTE].size;
  for (int i = 0; i < layout->n_gone; i++)
    {
      const dw_rect *box = &layout->gone[i];
      if (box->width <= 0.0 || box->height <= 0.0)
        continue;
      cairo_rectangle (cr, box->x, box->y, box->width, box->height);
      dw_pen_fill_pattern (cr, box, dw_color_with_alpha (style->plot, 0.0), DW_PATTERN_LINES,
                           dw_color_with_alpha (style->ink, HATCH_ALPHA), size);
    }
}

static void
paint_no_room (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double size = DOTS_SIZE * style->font[DW_TEXT_NOTE].size;
  const dw_line_style border = solid (style->warning, style->line[DW_SLOT_TRIAL_1].width);
  if (layout->no_room.n == 0)
    return;
  cairo_save (cr);
  clip_to (cr, &layout->plot);
  dw_pen_add (cr, &layout->no_room);
  cairo_close_path (cr);
  dw_pen_fill_pattern (cr, &layout->plot, style->plot, DW_PATTERN_DOTS, style->muted, size);
  dw_pen_stroke (cr, &layout->land, &border);
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
stroke_rimmed (cairo_t *cr, const dw_polyline *line, const dw_line_style *pen, dw_color rim)
{
  const dw_line_style around = solid (rim, RIM * pen->width);
  dw_pen_stroke (cr, line, &around);
  dw_pen_stroke (cr, line, pen);
}

static void
paint_lines (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_drill_lines *lines = &layout->lines;
  const dw_color rim = dw_color_with_alpha (style->plot, 0.7);
  const dw_line_style contour = solid (style->ink, CONTOUR_WIDTH * style->frame_width);
  dw_line_style oil = style->line[DW_SLOT_TRIAL_1];
  oil.width *= OIL_WIDTH;
  cairo_save (cr);
  clip_to (cr, &layout->plot);
  for (int i = 0; i < lines->n_contours; i++)
    stroke_rimmed (cr, &lines->contour[i].line, &contour, rim);
  for (int i = 0; i < lines->n_oils; i++)
    stroke_rimmed (cr, &lines->oil[i].line, &oil, rim);
  stroke_rimmed (cr, &lines->equal, &style->line[DW_SLOT_FITTED], rim);
  stroke_rimmed (cr, &lines->curve, &style->line[DW_SLOT_FITTED], rim);
  cairo_restore (cr);
}

/* ---- dots ---- */

static void
add_dots (const dw_drill_map_layout *layout, bool is_wanted, double radius, cairo_t *cr)
{
  for (int i = 0; i < layout->dots.n; i++)
    {
      const dw_drill_place *p = &layout->dots.places[i];
      if (!p->is_shown || p->is_wanted != is_wanted)
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, p->at.x, p->at.y, radius, 0.0, 2.0 * M_PI);
    }
}

static void
paint_dots (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double radius = layout->dots.radius;
  add_dots (layout, false, FAINT * radius, cr);
  dw_pen_color (cr, dw_color_with_alpha (style->ink, 0.55));
  cairo_fill (cr);
  add_dots (layout, true, radius, cr);
  dw_pen_color (cr, style->plot);
  cairo_set_line_width (cr, 0.5 * radius);
  cairo_stroke_preserve (cr);
  dw_pen_color (cr, style->ink);
  cairo_fill (cr);
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
      dw_text_paint_rimmed (cr, style, label->role, label->text, label->at, ink, style->plot);
      return;
    }
  dw_pen_color (cr, label->kind == DW_LABEL_AXIS ? style->muted : style->ink);
  dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
}

static void
paint_frame (const dw_rect *box, const dw_chart_style *style, cairo_t *cr)
{
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, style->frame_width);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_stroke (cr);
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
  paint_frame (bar, style, cr);
}

static void
paint_line_sample (const dw_rect *box, const dw_line_style *pen, cairo_t *cr)
{
  dw_polyline line = { 0 };
  dw_polyline_add (&line, box->x, box->y + 0.5 * box->height);
  dw_polyline_add (&line, box->x + box->width, box->y + 0.5 * box->height);
  dw_pen_stroke (cr, &line, pen);
  dw_polyline_clear (&line);
}

static void
paint_tolerance (const dw_rect *box, const dw_chart_style *style, cairo_t *cr)
{
  dw_pen_fill_rect (cr, box, dw_color_with_alpha (style->warning, TOLERANCE_ALPHA));
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  dw_pen_color (cr, style->plot);
  cairo_set_line_width (cr, 3.0 * style->frame_width);
  cairo_stroke_preserve (cr);
  dw_pen_color (cr, style->warning);
  cairo_set_line_width (cr, 1.6 * style->frame_width);
  cairo_stroke (cr);
}

static void
paint_sample (const dw_drill_sample *sample, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *box = &sample->box;
  const double note = style->font[DW_TEXT_NOTE].size;
  const dw_spot middle = { box->x + 0.5 * box->width, box->y + 0.5 * box->height };
  const dw_line_style contour = solid (style->ink, CONTOUR_WIDTH * style->frame_width);
  dw_line_style oil = style->line[DW_SLOT_TRIAL_1];
  const dw_rect inner = dw_rect_inset (box, 0.5 * style->frame_width);
  oil.width *= OIL_WIDTH;
  switch (sample->key)
    {
    case DW_KEY_CONTOUR:
      paint_line_sample (box, &contour, cr);
      break;
    case DW_KEY_OIL:
      paint_line_sample (box, &oil, cr);
      break;
    case DW_KEY_EQUAL:
      paint_line_sample (box, &style->line[DW_SLOT_FITTED], cr);
      break;
    case DW_KEY_DOT:
      dw_pen_marker (cr, DW_MARKER_CIRCLE, middle, 0.95 * style->marker_radius, style->ink,
                     style->plot);
      break;
    case DW_KEY_TOLERANCE:
      paint_tolerance (
          &(dw_rect){ middle.x, box->y + 1.0, 0.4 * box->width, middle.y - box->y - 1.0 }, style,
          cr);
      dw_pen_marker (cr, DW_MARKER_DIAMOND, middle, 1.3 * style->marker_radius, style->ink,
                     style->plot);
      break;
    case DW_KEY_NO_ROOM:
      cairo_rectangle (cr, inner.x, inner.y, inner.width, inner.height);
      dw_pen_fill_pattern (cr, box, style->plot, DW_PATTERN_DOTS, style->muted, DOTS_SIZE * note);
      dw_pen_color (cr, style->warning);
      cairo_set_line_width (cr, style->line[DW_SLOT_TRIAL_1].width);
      cairo_rectangle (cr, inner.x, inner.y, inner.width, inner.height);
      cairo_stroke (cr);
      break;
    case DW_KEY_GONE:
      cairo_rectangle (cr, inner.x, inner.y, inner.width, inner.height);
      dw_pen_fill_pattern (cr, box, style->plot, DW_PATTERN_LINES,
                           dw_color_with_alpha (style->ink, HATCH_ALPHA), HATCH_SIZE * note);
      paint_frame (&inner, style, cr);
      break;
    case DW_N_KEYS:
      break;
    }
}

/* ---- all ---- */

void
dw_drill_map_paint_ground (const dw_drill_map_layout *layout, const dw_chart_style *style,
                           cairo_t *cr)
{
  cairo_save (cr);
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
      paint_frame (&layout->plot, style, cr);
      paint_dots (layout, style, cr);
      paint_tick_labels (layout, style, cr);
      paint_bar (layout, style, cr);
      for (int i = 0; i < layout->legend.n_samples; i++)
        paint_sample (&layout->legend.samples[i], style, cr);
      for (int i = 0; i < layout->texts.n; i++)
        paint_text (&layout->texts.labels[i], style, cr);
    }
  cairo_restore (cr);
}

void
dw_drill_map_paint_marks (const dw_drill_map_layout *layout, const dw_chart_style *style,
                          cairo_t *cr)
{
  const double radius = style->marker_radius;
  if (!layout->has_data)
    return;
  cairo_save (cr);
  if (layout->chosen >= 0)
    paint_tolerance (&layout->tolerance, style, cr);
  if (dw_rect_holds (&layout->plot, layout->now.x, layout->now.y))
    dw_pen_marker (cr, DW_MARKER_CROSS, layout->now, NOW_RADIUS * radius, style->ink, style->plot);
  if (layout->chosen >= 0)
    dw_pen_marker (cr, DW_MARKER_DIAMOND, layout->dots.places[layout->chosen].at,
                   CHOSEN_RADIUS * radius, style->ink, style->plot);
  if (layout->pointed >= 0)
    {
      const dw_spot at = layout->dots.places[layout->pointed].at;
      dw_pen_color (cr, style->plot);
      cairo_set_line_width (cr, 4.0 * style->frame_width);
      cairo_arc (cr, at.x, at.y, POINTED_RADIUS * radius, 0.0, 2.0 * M_PI);
      cairo_stroke_preserve (cr);
      dw_pen_color (cr, style->ink);
      cairo_set_line_width (cr, 2.0 * style->frame_width);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

void
dw_drill_map_paint (const dw_drill_map_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  dw_drill_map_paint_ground (layout, style, cr);
  dw_drill_map_paint_marks (layout, style, cr);
}
