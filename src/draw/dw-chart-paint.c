/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-paint.h"

#include <math.h>

#include "draw/dw-pen.h"

/* [1] of the reading line's spots, in radii of a marker */
static const double READING_RADIUS = 1.25;

/* Distance of the strip's pattern, in ems of the notes' letters. */
static const double PATTERN_SIZE = 0.62;

static void
clip_to (cairo_t *cr, const dw_rect *rect, double beyond)
{
  const dw_rect wide = dw_rect_inset (rect, -beyond);
  cairo_rectangle (cr, wide.x, wide.y, wide.width, wide.height);
  cairo_clip (cr);
}

/* ---- below the data ---- */

static void
paint_grid (const dw_chart_layout *layout, const dw_chart_style *style, bool major, cairo_t *cr)
{
  const dw_rect *plot = &layout->frame.plot;
  const dw_color color = major ? style->grid : style->minor_grid;
  const double width = major ? style->grid_width : style->minor_grid_width;
  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      const dw_tick *t = &layout->x_ticks.ticks[i];
      if (t->is_major == major)
        {
          cairo_move_to (cr, t->place, plot->y);
          cairo_line_to (cr, t->place, plot->y + plot->height);
          if (layout->has_strip && major)
            {
              const dw_rect *strip = &layout->strip.plot;
              cairo_move_to (cr, t->place, strip->y);
              cairo_line_to (cr, t->place, strip->y + strip->height);
            }
        }
    }
  for (int i = 0; i < layout->y_ticks.n; i++)
    {
      const dw_tick *t = &layout->y_ticks.ticks[i];
      if (t->is_major == major)
        {
          cairo_move_to (cr, plot->x, t->place);
          cairo_line_to (cr, plot->x + plot->width, t->place);
        }
    }
  dw_pen_color (cr, color);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

static void
paint_frame (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *plot = &layout->frame.plot;
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, style->frame_width);
  cairo_rectangle (cr, plot->x, plot->y, plot->width, plot->height);
  cairo_stroke (cr);
  if (layout->shows_zero)
    dw_pen_line (cr, (dw_spot){ plot->x, layout->zero },
                 (dw_spot){ plot->x + plot->width, layout->zero }, style->ink, style->zero_width);
}

/* ---- the data ---- */

static void
paint_band (const dw_chart_curve *curve, const dw_chart_style *style, cairo_t *cr)
{
  if (curve->band_high.n == 0)
    return;
  dw_pen_add_between (cr, &curve->band_high, &curve->band_low, 0.0);
  dw_pen_color (cr, dw_color_with_alpha (style->line[curve->slot].color, style->band_alpha));
  cairo_fill (cr);
}

static void
paint_curve (const dw_chart_curve *curve, const dw_chart_style *style, cairo_t *cr)
{
  const dw_line_style *line = &style->line[curve->slot];
  const dw_line_style cap = { .color = line->color, .width = style->cap_width };
  dw_pen_stroke (cr, &curve->cap, &cap);
  dw_pen_stroke_past (cr, &curve->past, line, style->past_width);
  dw_pen_stroke (cr, &curve->before, line);
  for (int i = 0; i < curve->n_markers; i++)
    dw_pen_marker (cr, line->marker, curve->markers[i], style->marker_radius, line->color,
                   style->plot);
}

/* The heavy solid line of the fitted setup comes first: through the dashes of a trial that lies
 * on it, both are seen. */
static void
paint_curves (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  clip_to (cr, &layout->frame.plot, 0.0);
  for (int i = 0; i < layout->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      paint_band (&layout->curves[i][s], style, cr);
  cairo_restore (cr);

  cairo_save (cr);
  clip_to (cr, &layout->frame.plot, style->marker_radius);
  for (int slot = 0; slot < DW_N_SLOTS; slot++)
    for (int i = 0; i < layout->n_series; i++)
      for (int s = 0; s < DW_N_STROKES; s++)
        if (layout->curves[i][s].slot == slot)
          paint_curve (&layout->curves[i][s], style, cr);
  for (int i = 0; i < layout->n_series; i++)
    {
      const dw_chart_curve *curve = &layout->curves[i][DW_COMPRESSION];
      const dw_line_style *line = &style->line[curve->slot];
      if (curve->has_onset)
        dw_pen_open_mark (cr, curve->onset, style->onset_radius, 0.8 * line->width, line->color,
                          style->plot);
    }
  cairo_restore (cr);
}

/* ---- the strip ---- */

static void
paint_strip (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_flow_strip *strip = &layout->strip;
  const double size = PATTERN_SIZE * style->font[DW_TEXT_NOTE].size;
  const double bottom = strip->plot.y + strip->plot.height;
  for (int i = 0; i < DW_N_SHARES; i++)
    {
      const dw_polyline *lower = i > 0 ? &strip->edge[i - 1] : NULL;
      dw_pen_add_between (cr, &strip->edge[i], lower, bottom);
      dw_pen_fill_pattern (cr, &strip->plot, style->share[i], dw_pen_share_pattern (i), style->ink,
                           size);
    }
  const dw_line_style edge = { .color = style->ink, .width = style->frame_width };
  dw_pen_stroke (cr, &strip->edge[DW_SHARE_OPEN], &edge);
  dw_pen_stroke (cr, &strip->edge[DW_SHARE_COVERED], &edge);
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, style->frame_width);
  cairo_rectangle (cr, strip->plot.x, strip->plot.y, strip->plot.width, strip->plot.height);
  cairo_stroke (cr);
}

static void
paint_swatches (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double size = PATTERN_SIZE * style->font[DW_TEXT_NOTE].size;
  for (int i = 0; i < DW_N_SHARES; i++)
    {
      const dw_rect *box = &layout->swatch[i];
      if (box->width <= 0.0)
        continue;
      cairo_rectangle (cr, box->x, box->y, box->width, box->height);
      dw_pen_fill_pattern (cr, box, style->share[i], dw_pen_share_pattern (i), style->ink, size);
      dw_pen_color (cr, style->ink);
      cairo_set_line_width (cr, style->frame_width);
      cairo_rectangle (cr, box->x, box->y, box->width, box->height);
      cairo_stroke (cr);
    }
}

/* ---- words ---- */

static void
paint_tick_labels (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  dw_pen_color (cr, style->ink);
  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      const dw_rect box = dw_chart_layout_x_label_box (layout, i);
      if (layout->x_ticks.ticks[i].is_major)
        dw_text_paint (cr, style, DW_TEXT_TICK, layout->x_ticks.ticks[i].label,
                       (dw_spot){ box.x, box.y + layout->tick_ascent }, 0.0);
    }
  for (int i = 0; i < layout->y_ticks.n; i++)
    {
      const dw_rect box = dw_chart_layout_y_label_box (layout, i);
      if (layout->y_ticks.ticks[i].is_major)
        dw_text_paint (cr, style, DW_TEXT_TICK, layout->y_ticks.ticks[i].label,
                       (dw_spot){ box.x, box.y + layout->tick_ascent }, 0.0);
    }
}

static void
paint_text (const dw_chart_label *label, const dw_chart_style *style, cairo_t *cr)
{
  const bool in_plot = label->kind == DW_LABEL_STROKE || label->kind == DW_LABEL_ONSET;
  const bool is_muted = label->kind == DW_LABEL_VALUE_CAPTION
                        || label->kind == DW_LABEL_SPEED_CAPTION || label->kind == DW_LABEL_STROKE;
  const dw_color ink = label->slot >= 0 ? style->line[label->slot].color
                       : is_muted       ? style->muted
                                        : style->ink;
  if (in_plot)
    {
      dw_text_paint_rimmed (cr, style, label->role, label->text, label->at, ink, style->plot);
      return;
    }
  dw_pen_color (cr, ink);
  dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
}

void
dw_chart_paint (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  dw_pen_fill_rect (cr, &layout->area, style->background);
  dw_pen_fill_rect (cr, &layout->frame.plot, style->plot);
  paint_grid (layout, style, false, cr);
  if (layout->has_strip)
    paint_strip (layout, style, cr);
  paint_grid (layout, style, true, cr);
  paint_frame (layout, style, cr);
  paint_curves (layout, style, cr);
  paint_tick_labels (layout, style, cr);
  paint_swatches (layout, style, cr);
  dw_legend_paint (&layout->legend, style, cr);
  for (int i = 0; i < layout->texts.n; i++)
    paint_text (&layout->texts.labels[i], style, cr);
  cairo_restore (cr);
}

void
dw_chart_reading_paint (const dw_chart_reading *reading, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect *plot = &reading->plot;
  if (!(reading->x >= plot->x && reading->x <= plot->x + plot->width))
    return;
  cairo_save (cr);
  dw_pen_line (cr, (dw_spot){ reading->x, plot->y },
               (dw_spot){ reading->x, plot->y + plot->height }, style->ink, style->reading_width);
  for (int i = 0; i < reading->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      {
        const dw_reading_value *v = &reading->values[i][s];
        const dw_line_style *line = &style->line[reading->slot[i]];
        if (v->is_known && v->is_visible)
          dw_pen_marker (cr, line->marker, v->spot, READING_RADIUS * style->marker_radius,
                         line->color, style->plot);
      }
  cairo_restore (cr);
}

void
dw_chart_drag_paint (const dw_chart_layout *layout, const dw_chart_style *style, double x0,
                     double y0, double x1, double y1, cairo_t *cr)
{
  const dw_rect *plot = &layout->frame.plot;
  const double left = fmax (plot->x, fmin (x0, x1));
  const double right = fmin (plot->x + plot->width, fmax (x0, x1));
  const double top = fmax (plot->y, fmin (y0, y1));
  const double bottom = fmin (plot->y + plot->height, fmax (y0, y1));
  if (!(right > left && bottom > top))
    return;
  cairo_save (cr);
  const dw_rect box = { left, top, right - left, bottom - top };
  dw_pen_fill_rect (cr, &box, dw_color_with_alpha (style->ink, 0.12));
  dw_pen_color (cr, style->ink);
  cairo_set_line_width (cr, style->reading_width);
  cairo_rectangle (cr, box.x, box.y, box.width, box.height);
  cairo_stroke (cr);
  cairo_restore (cr);
}
