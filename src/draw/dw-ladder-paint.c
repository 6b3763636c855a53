/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-paint.h"

#include <math.h>

#include "draw/dw-pen.h"

/* [1] How far the tone of every other group goes from the ground to the grid's. */
static const double BAND_TONE = 0.3;

/* [1] How far the patterns of zones go from the grid's colour to ink: to be seen in the sun. */
static const double PATTERN_INK = 0.3;

/* Widths in those of the frame. [1] */
static const double BAR_LINE = 1.1;
static const double FITTED_LINE = 2.2;
static const double HABIT_LINE = 1.7;
static const double BRACKET_LINE = 1.4;
static const double EDGE_LINE = 1.2;
static const double CHOSEN_LINE = 2.4;
static const double CHOSEN_RIM = 4.4;
static const double POINTED_LINE = 1.2;

static const double CHOSEN_ALPHA = 0.2; /* [1] */

/* Radii in those of a marker. [1] */
static const double MARK = 1.15;
static const double FITTED_MARK = 1.5;
static const double HABIT = 1.75;

/* [1] of a row's height. */
static const double POINTER = 0.26;
static const double BRACKET_INSET = 0.22;
static const double FRAME_INSET = 0.05;

/* Distances of patterns, in ems of the tick letters; side of a dot, in distances. */
static const double HATCH_STEP = 0.75;
static const double DOT_STEP = 0.7;
static const double DOT = 0.24;

static const double EDGE_DASH[] = { 4.0, 3.0 }; /* [pt] */

/* ---- what can be seen ---- */

/* Rows from the one to the other, the lowest first. */
typedef struct
{
  int first;
  int last;
} span;

static span
visible_rows (const dw_ladder_layout *layout, cairo_t *cr)
{
  double left, top, right, bottom;
  cairo_clip_extents (cr, &left, &top, &right, &bottom);
  const double n = layout->n_rows;
  const double above = floor ((top - layout->plot.y) / layout->row_height);
  const double below = floor ((bottom - layout->plot.y) / layout->row_height);
  return (span){ (int)fmax (0.0, n - 1.0 - below), (int)fmin (n - 1.0, n - 1.0 - above) };
}

/* ---- zones ---- */

static dw_color
pattern_color (const dw_chart_style *style)
{
  return dw_color_mix (style->grid, style->ink, PATTERN_INK);
}

/* Diagonals from a fixed origin: those of neighbouring boxes continue each other. */
static void
hatch (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  const double step = HATCH_STEP * style->font[DW_TEXT_TICK].size;
  const double bottom = box->y + box->height;
  for (double sum = ceil ((box->x + box->y) / step) * step; sum < box->x + box->width + bottom;
       sum += step)
    {
      dw_spot a = { sum - box->y, box->y };
      dw_spot b = { sum - bottom, bottom };
      if (!dw_segment_clip (box, &a, &b))
        continue;
      cairo_move_to (cr, a.x, a.y);
      cairo_line_to (cr, b.x, b.y);
    }
  dw_pen_color (cr, pattern_color (style));
  cairo_set_line_width (cr, style->frame_width);
  cairo_stroke (cr);
}

/* Squares, which are painted quicker than round dots. */
static void
dots (cairo_t *cr, const dw_rect *box, const dw_chart_style *style)
{
  const double step = DOT_STEP * style->font[DW_TEXT_TICK].size;
  const double side = DOT * step;
  const double right = box->x + box->width - side;
  const double bottom = box->y + box->height - side;
  const long first = lrint (ceil (box->y / step));
  for (long row = first; (double)row * step <= bottom; row++)
    for (double x = box->x + (row % 2 == 0 ? 0.3 : 0.8) * step; x <= right; x += step)
      cairo_rectangle (cr, x, (double)row * step, side, side);
  dw_pen_color (cr, pattern_color (style));
  cairo_fill (cr);
}

/* Part of a zone that lies beside some rows. */
static dw_rect
cut (const dw_ladder_layout *layout, const dw_rect *zone, span rows)
{
  const double top = layout->rows[rows.last].box.y;
  const dw_rect *lowest = &layout->rows[rows.first].box;
  return (dw_rect){ zone->x, top, zone->width, lowest->y + lowest->height - top };
}

static void
edge (cairo_t *cr, double x, const dw_rect *box, const dw_chart_style *style)
{
  cairo_save (cr);
  cairo_set_dash (cr, EDGE_DASH, 2, box->y);
  dw_pen_line (cr, (dw_spot){ x, box->y }, (dw_spot){ x, box->y + box->height }, style->muted,
               EDGE_LINE * style->frame_width);
  cairo_restore (cr);
}

static void
paint_zones (const dw_ladder_layout *layout, const dw_chart_style *style, span rows, cairo_t *cr)
{
  const dw_rect holes = cut (layout, &layout->holes, rows);
  const dw_rect plain = cut (layout, &layout->plain, rows);
  if (holes.width > 0.0)
    {
      dots (cr, &holes, style);
      edge (cr, holes.x + holes.width, &holes, style);
    }
  if (plain.width > 0.0)
    {
      hatch (cr, &plain, style);
      edge (cr, plain.x, &plain, style);
    }
}

/* ---- ground ---- */

static void
paint_bands (const dw_ladder_layout *layout, const dw_chart_style *style, span rows, cairo_t *cr)
{
  const dw_rect seen = cut (layout, &layout->plot, rows);
  const dw_color tone = dw_color_mix (style->background, style->grid, BAND_TONE);
  for (int i = 0; i < layout->n_bands; i++)
    if (layout->bands[i].is_toned
        && dw_rect_overlaps (&layout->bands[i].box,
                             &(dw_rect){ layout->area.x, seen.y, layout->area.width, seen.height }))
      dw_pen_fill_rect (cr, &layout->bands[i].box, tone);
}

static void
paint_grid (const dw_ladder_layout *layout, const dw_chart_style *style, span rows, cairo_t *cr)
{
  const dw_rect seen = cut (layout, &layout->plot, rows);
  for (int i = 0; i < layout->ticks.n; i++)
    {
      const dw_tick *tick = &layout->ticks.ticks[i];
      if (tick->is_major)
        dw_pen_line (cr, (dw_spot){ tick->place, seen.y },
                     (dw_spot){ tick->place, seen.y + seen.height }, style->grid,
                     style->grid_width);
    }
  for (int i = 0; i < 2; i++)
    {
      const double x = layout->plot.x + (i == 0 ? 0.0 : layout->plot.width);
      dw_pen_line (cr, (dw_spot){ x, seen.y }, (dw_spot){ x, seen.y + seen.height }, style->ink,
                   style->frame_width);
    }
}

/* ---- rows ---- */

static void
paint_bar (cairo_t *cr, const dw_rect *bar, bool is_fitted, const dw_chart_style *style)
{
  const double width = (is_fitted ? FITTED_LINE : BAR_LINE) * style->frame_width;
  dw_pen_fill_rect (cr, bar, style->shim);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_rectangle (cr, bar->x, bar->y, bar->width, bar->height);
  cairo_stroke (cr);
}

static void
paint_mark (cairo_t *cr, dw_spot at, bool is_fitted, const dw_chart_style *style)
{
  const double radius = (is_fitted ? FITTED_MARK : MARK) * style->marker_radius;
  dw_pen_marker (cr, DW_MARKER_CIRCLE, at, radius, style->ink, style->plot);
}

/* An open diamond. */
static void
paint_habit (cairo_t *cr, dw_spot at, const dw_chart_style *style)
{
  const double radius = HABIT * style->marker_radius;
  cairo_move_to (cr, at.x - radius, at.y);
  cairo_line_to (cr, at.x, at.y - radius);
  cairo_line_to (cr, at.x + radius, at.y);
  cairo_line_to (cr, at.x, at.y + radius);
  cairo_close_path (cr);
  dw_pen_color (cr, style->plot);
  cairo_fill_preserve (cr);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, HABIT_LINE * style->frame_width);
  cairo_stroke (cr);
}

/* Filled for what is fitted, open for the setup's own. */
static void
paint_pointer (const dw_ladder_layout *layout, const dw_ladder_row *row,
               const dw_chart_style *style, cairo_t *cr)
{
  const double half = POINTER * layout->row_height;
  const double x = layout->pointer_x;
  const double y = row->box.y + 0.5 * row->box.height;
  cairo_move_to (cr, x - 0.8 * half, y - half);
  cairo_line_to (cr, x + 0.8 * half, y);
  cairo_line_to (cr, x - 0.8 * half, y + half);
  cairo_close_path (cr);
  dw_pen_color (cr, row->is_fitted ? style->ink : style->plot);
  cairo_fill_preserve (cr);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, HABIT_LINE * style->frame_width);
  cairo_stroke (cr);
}

static void
paint_row (const dw_ladder_layout *layout, const dw_ladder_row *row, const dw_chart_style *style,
           cairo_t *cr)
{
  if (row->is_fitted || row->is_own)
    paint_pointer (layout, row, style, cr);
  if (row->bar.width > 0.0)
    paint_bar (cr, &row->bar, row->is_fitted, style);
  if (row->has_habit)
    paint_habit (cr, row->habit, style);
  paint_mark (cr, row->mark, row->is_fitted, style);
  dw_pen_color (cr, style->ink);
  dw_text_paint (cr, style, DW_TEXT_TICK, row->stack, row->stack_at, 0.0);
  if (layout->shows_values)
    dw_text_paint (cr, style, DW_TEXT_TICK, row->value, row->value_at, 0.0);
}

static void
bracket (cairo_t *cr, double x, double hook, double top, double bottom, const dw_chart_style *style)
{
  cairo_move_to (cr, x - hook, top);
  cairo_line_to (cr, x, top);
  cairo_line_to (cr, x, bottom);
  cairo_line_to (cr, x - hook, bottom);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, BRACKET_LINE * style->frame_width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
}

static void
paint_brackets (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double inset = BRACKET_INSET * layout->row_height;
  for (int i = 0; i < layout->n_bands; i++)
    {
      const dw_ladder_band *band = &layout->bands[i];
      if (band->n < 2)
        continue;
      bracket (cr, layout->bracket_x, layout->bracket_width, band->box.y + inset,
               band->box.y + band->box.height - inset, style);
      if (band->word == NULL)
        continue;
      dw_pen_color (cr, style->muted);
      dw_text_paint (cr, style, DW_TEXT_NOTE, band->word, band->word_at, 0.0);
    }
}

void
dw_ladder_paint_rows (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const span rows = visible_rows (layout, cr);
  const dw_rect below = { layout->area.x, layout->head.y + layout->head.height, layout->area.width,
                          layout->area.height - layout->head.height };
  cairo_save (cr);
  cairo_new_path (cr);
  dw_pen_fill_rect (cr, &below, style->background);
  if (rows.first <= rows.last)
    {
      paint_bands (layout, style, rows, cr);
      paint_zones (layout, style, rows, cr);
      paint_grid (layout, style, rows, cr);
    }
  for (int i = rows.first; i <= rows.last; i++)
    paint_row (layout, &layout->rows[i], style, cr);
  if (rows.first <= rows.last)
    paint_brackets (layout, style, cr);
  cairo_restore (cr);
}

/* ---- head ---- */

static void
paint_sample (const dw_ladder_layout *layout, const dw_ladder_sample *sample,
              const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *box = &sample->box;
  const dw_rect inner = dw_rect_inset (box, style->frame_width);
  const dw_spot middle = { box->x + 0.5 * box->width, box->y + 0.5 * box->height };
  const dw_rect bar = { inner.x, box->y + 0.15 * box->height, inner.width, 0.7 * box->height };
  switch (sample->key)
    {
    case DW_LADDER_KEY_BOUNDS:
      paint_bar (cr, &bar, false, style);
      break;
    case DW_LADDER_KEY_VALUE:
      paint_mark (cr, middle, false, style);
      break;
    case DW_LADDER_KEY_HABIT:
      paint_habit (cr, middle, style);
      break;
    case DW_LADDER_KEY_GROUP:
      bracket (cr, middle.x + 0.5 * layout->bracket_width, layout->bracket_width, inner.y,
               inner.y + inner.height, style);
      break;
    case DW_LADDER_KEY_HOLES:
      dots (cr, &inner, style);
      edge (cr, inner.x + inner.width, &inner, style);
      break;
    case DW_LADDER_KEY_PLAIN:
      hatch (cr, &inner, style);
      edge (cr, inner.x, &inner, style);
      break;
    case DW_N_LADDER_KEYS:
      break;
    }
}

void
dw_ladder_paint_head (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  cairo_new_path (cr);
  dw_pen_fill_rect (cr, &layout->head, style->background);
  for (int i = 0; i < layout->n_samples; i++)
    paint_sample (layout, &layout->samples[i], style, cr);
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_chart_label *label = &layout->texts.labels[i];
      dw_pen_color (cr, label->kind == DW_LABEL_TITLE ? style->ink : style->muted);
      dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
    }
  dw_pen_color (cr, style->ink);
  for (int i = 0; i < layout->ticks.n; i++)
    {
      const dw_rect box = dw_ladder_layout_tick_box (layout, i);
      if (box.width > 0.0)
        dw_text_paint (cr, style, DW_TEXT_TICK, layout->ticks.ticks[i].label,
                       (dw_spot){ box.x, box.y + layout->tick_ascent }, 0.0);
    }
  cairo_restore (cr);
}

/* ---- marks ---- */

static void
frame (cairo_t *cr, const dw_ladder_layout *layout, int row, double width, double rim,
       const dw_chart_style *style)
{
  const dw_rect box = dw_rect_inset (&layout->rows[row].box, FRAME_INSET * layout->row_height);
  cairo_rectangle (cr, box.x, box.y, box.width, box.height);
  if (rim > 0.0)
    {
      dw_pen_color (cr, style->background);
      cairo_set_line_width (cr, rim * style->frame_width);
      cairo_stroke_preserve (cr);
    }
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, width * style->frame_width);
  cairo_stroke (cr);
}

void
dw_ladder_paint_marks (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  cairo_new_path (cr);
  if (layout->chosen >= 0)
    {
      dw_pen_fill_rect (cr, &layout->rows[layout->chosen].box,
                        dw_color_with_alpha (style->line[DW_SLOT_TRIAL_2].color, CHOSEN_ALPHA));
      frame (cr, layout, layout->chosen, CHOSEN_LINE, CHOSEN_RIM, style);
    }
  if (layout->pointed >= 0 && layout->pointed != layout->chosen)
    frame (cr, layout, layout->pointed, POINTED_LINE, 0.0, style);
  cairo_restore (cr);
}

void
dw_ladder_paint (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  /* one ground below both: edges of two would let something through */
  dw_pen_fill_rect (cr, &layout->area, style->background);
  dw_ladder_paint_rows (layout, style, cr);
  dw_ladder_paint_head (layout, style, cr);
  dw_ladder_paint_marks (layout, style, cr);
}
