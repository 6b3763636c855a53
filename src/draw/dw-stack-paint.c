/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-stack-paint.h"

#include <math.h>

#include "draw/dw-pen.h"

/* [pt] */
static const double THINNEST_LINE = 0.5;

/* Distance of the piston's hatching [1 of an em] and the least that makes its lines thick enough. */
static const double HATCH_SIZE = 0.55;
static const double HATCH_LEAST = 4.6; /* [pt] */

/* [1] How far an entry's tone goes from the ground to the shim's; every other one has none. */
static const double LEAF_TONE = 0.45;

/* Line round an entry [1 of other lines], and the most of its height. */
static const double ENTRY_WIDTH = 1.8;
static const double ENTRY_SHARE = 0.25;

/* [pt] */
static const double WAVE = 1.6;   /* of the piston's cut edge */
static const double HEAD = 3.0;   /* of an arrow */
static const double INSIDE = 4.0; /* the lift's arrow from the rim */

static double
line_width (const dw_chart_style *style)
{
  return fmax (THINNEST_LINE, style->frame_width);
}

static void
outline (cairo_t *cr, const dw_rect *rect, const dw_chart_style *style, double width)
{
  cairo_new_path (cr);
  cairo_rectangle (cr, rect->x, rect->y, rect->width, rect->height);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width (cr, width);
  dw_pen_color (cr, style->ink);
  cairo_stroke (cr);
}

/* From one x to another below the piston: cut off by a wave. */
static void
add_wave (cairo_t *cr, double from, double to, double y)
{
  const double half = 0.5 * (from + to);
  const double third = (half - from) / 3.0;
  cairo_curve_to (cr, from + third, y - 2.0 * WAVE, half - third, y, half, y - WAVE);
  cairo_curve_to (cr, half + third, y - 2.0 * WAVE, to - third, y, to, y - WAVE);
}

/* A piece of the piston between two x, hatched, with lines but for its cut edge, which is thinner. */
static void
paint_piece (const dw_stack_layout *layout, const dw_chart_style *style, double left, double right,
             cairo_t *cr)
{
  const dw_rect *piston = &layout->piston;
  const dw_rect box = { left, piston->y, right - left, piston->height };
  const double bottom = piston->y + piston->height;
  const double hatch = fmax (HATCH_LEAST, HATCH_SIZE * style->font[DW_TEXT_NOTE].size);
  if (right - left <= 0.0)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, left, bottom - WAVE);
  add_wave (cr, left, right, bottom);
  cairo_line_to (cr, right, piston->y);
  cairo_line_to (cr, left, piston->y);
  cairo_close_path (cr);
  dw_pen_fill_pattern (cr, &box, style->metal, DW_PATTERN_LINES, style->ink, hatch);

  cairo_move_to (cr, left, bottom - WAVE);
  cairo_line_to (cr, left, piston->y);
  cairo_line_to (cr, right, piston->y);
  cairo_line_to (cr, right, bottom - WAVE);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, line_width (style));
  cairo_stroke (cr);
  cairo_move_to (cr, left, bottom - WAVE);
  add_wave (cr, left, right, bottom);
  cairo_set_line_width (cr, THINNEST_LINE);
  cairo_stroke (cr);
}

static void
paint_arrow (cairo_t *cr, dw_spot from, dw_spot to, dw_color color, double width)
{
  const double length = dw_spot_distance (from, to);
  const double dx = (to.x - from.x) / length;
  const double dy = (to.y - from.y) / length;
  const dw_spot neck = { to.x - HEAD * dx, to.y - HEAD * dy };
  dw_pen_line (cr, from, neck, color, width);
  cairo_move_to (cr, to.x, to.y);
  cairo_line_to (cr, neck.x - 0.4 * HEAD * dy, neck.y + 0.4 * HEAD * dx);
  cairo_line_to (cr, neck.x + 0.4 * HEAD * dy, neck.y - 0.4 * HEAD * dx);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
paint_piston (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *piston = &layout->piston;
  const dw_rect *channel = &layout->channel;
  const double right = piston->x + piston->width;
  if (channel->width <= 0.0)
    {
      paint_piece (layout, style, piston->x, right, cr);
      return;
    }
  paint_piece (layout, style, piston->x, channel->x, cr);
  paint_piece (layout, style, channel->x + channel->width, right, cr);
  if (layout->n_bars == 0 || channel->width < 1.5 * HEAD || channel->height < 3.0 * HEAD)
    return;
  /* the only way that the oil goes here */
  const double x = channel->x + 0.5 * channel->width;
  paint_arrow (cr, (dw_spot){ x, piston->y + channel->height - 0.5 * HEAD },
               (dw_spot){ x, piston->y + 0.5 * HEAD }, style->ink, line_width (style));
}

static void
paint_bar (const dw_stack_bar *bar, bool is_toned, const dw_chart_style *style, cairo_t *cr)
{
  const dw_color tone = is_toned ? dw_color_mix (style->plot, style->shim, LEAF_TONE) : style->plot;
  dw_pen_fill_rect (cr, &bar->bar, tone);
  for (int i = 1; i < bar->n_drawn; i++)
    {
      const double y = bar->bar.y + bar->bar.height * i / bar->n_drawn;
      dw_pen_line (cr, (dw_spot){ bar->bar.x, y }, (dw_spot){ bar->bar.x + bar->bar.width, y },
                   style->ink, THINNEST_LINE);
    }
  /* heavier than between leaves, for a copier keeps no tones; but no thin leaf is all line */
  const double heavy = fmin (ENTRY_WIDTH * line_width (style), ENTRY_SHARE * bar->bar.height);
  outline (cr, &bar->bar, style, fmax (line_width (style), heavy));
}

static void
paint_washer (cairo_t *cr, const dw_rect *washer, const dw_chart_style *style)
{
  if (washer->height <= 0.0)
    return;
  dw_pen_fill_rect (cr, washer, style->metal);
  outline (cr, washer, style, line_width (style));
}

/* Between the last leaf and the stop washer, near the rim. */
static void
paint_lift (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *hub = &layout->hub;
  const double x = layout->stop.x + layout->stop.width - INSIDE;
  const double middle = hub->y + 0.5 * hub->height;
  if (hub->height < 3.0 * HEAD || x < hub->x + hub->width + INSIDE)
    return;
  paint_arrow (cr, (dw_spot){ x, middle }, (dw_spot){ x, hub->y }, style->ink, THINNEST_LINE);
  paint_arrow (cr, (dw_spot){ x, middle }, (dw_spot){ x, hub->y + hub->height }, style->ink,
               THINNEST_LINE);
  if (!layout->lift_is_cut)
    return;
  /* two strokes across the washer: a piece of it is left out */
  for (int i = -1; i <= 1; i += 2)
    dw_pen_line (cr, (dw_spot){ hub->x + 0.25 * hub->width, middle + (2.0 * i + 1.5) },
                 (dw_spot){ hub->x + 0.75 * hub->width, middle + (2.0 * i - 1.5) }, style->ink,
                 line_width (style));
}

static void
paint_stack (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  if (layout->n_bars == 0)
    return;
  for (int i = 0; i < layout->n_bars; i++)
    paint_bar (&layout->bars[i], i % 2 == 0, style, cr);
  paint_washer (cr, &layout->hub, style);
  paint_washer (cr, &layout->stop, style);
  paint_lift (layout, style, cr);
}

/* A shaft is not hatched; its axis is a chain line. */
static void
paint_shaft (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double dash[] = { 7.0, 2.0, 1.5, 2.0 };
  const dw_rect *shaft = &layout->shaft;
  const double right = shaft->x + shaft->width;
  const double bottom = shaft->y + shaft->height - WAVE;
  dw_pen_fill_rect (cr, &(dw_rect){ shaft->x, shaft->y, shaft->width, bottom - shaft->y },
                    style->plot);
  cairo_move_to (cr, shaft->x, shaft->y);
  cairo_line_to (cr, right, shaft->y);
  cairo_line_to (cr, right, bottom);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, line_width (style));
  cairo_stroke (cr);
  cairo_save (cr);
  cairo_set_dash (cr, dash, 4, 0.0);
  dw_pen_line (cr, (dw_spot){ shaft->x, shaft->y - WAVE }, (dw_spot){ shaft->x, bottom + WAVE },
               style->ink, THINNEST_LINE);
  cairo_restore (cr);
}

static void
paint_leader (const dw_stack_leader *leader, const dw_chart_style *style, cairo_t *cr)
{
  cairo_new_path (cr);
  for (int i = 0; i < 3; i++)
    cairo_line_to (cr, leader->spots[i].x, leader->spots[i].y);
  dw_pen_color (cr, style->ink);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, THINNEST_LINE);
  cairo_stroke (cr);
}

void
dw_stack_paint (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  dw_pen_fill_rect (cr, &layout->area, style->background);
  paint_piston (layout, style, cr);
  paint_stack (layout, style, cr);
  paint_shaft (layout, style, cr);
  for (int i = 0; i < layout->n_leaders; i++)
    paint_leader (&layout->leaders[i], style, cr);
  dw_pen_color (cr, style->ink);
  for (int i = 0; i < layout->texts.n; i++)
    dw_text_paint (cr, style, layout->texts.labels[i].role, layout->texts.labels[i].text,
                   layout->texts.labels[i].at, 0.0);
  cairo_restore (cr);
}
