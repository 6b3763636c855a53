/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-curve.h"

#include <math.h>

/* [pt] Half a pixel of a usual screen: what falls into it can not be told apart. */
static const double COLUMN = 0.5;

/* Markers of the slots are shifted against each other, by these parts of their distance. [1] */
static const double PHASE[DW_N_SLOTS] = { 0.5, 0.72, 0.28, 0.9, 0.1 };

/* A narrow plot has at least so many markers on a curve. */
static const double LEAST_MARKERS = 2.0;

void
dw_chart_curve_clear (dw_chart_curve *curve)
{
  dw_polyline_clear (&curve->before);
  dw_polyline_clear (&curve->past);
  dw_polyline_clear (&curve->cap);
  dw_polyline_clear (&curve->band_low);
  dw_polyline_clear (&curve->band_high);
  *curve = (dw_chart_curve){ 0 };
}

double
dw_chart_frame_y (const dw_chart_frame *frame, dw_stroke stroke, double magnitude)
{
  return dw_scale_place (&frame->y, stroke == DW_COMPRESSION ? magnitude : -magnitude);
}

/* What a curve is made from. */
typedef struct
{
  const dw_chart *chart;
  const dw_series *series;
  dw_stroke stroke;
  const dw_chart_frame *frame;
} source;

static dw_spot
spot_of (const source *s, double shaft_speed, double force)
{
  const double speed = dw_chart_shown_speed (s->chart, s->series, shaft_speed);
  const double value = dw_chart_shown_value (s->chart, s->series, shaft_speed, force);
  return (dw_spot){ dw_scale_place (&s->frame->x, speed),
                    dw_chart_frame_y (s->frame, s->stroke, value) };
}

static void
add (dw_polyline *line, dw_spot spot)
{
  dw_polyline_add (line, spot.x, spot.y);
}

static double
onset_of (const source *s)
{
  return s->stroke == DW_COMPRESSION ? s->series->onset_speed : HUGE_VAL;
}

/* The point at the onset ends one line and starts the other. */
static void
collect (const source *s, dw_chart_curve *raw)
{
  const dw_series_stroke *stroke = &s->series->stroke[s->stroke];
  const double onset = onset_of (s);
  const double cap = s->series->onset_force;
  const bool has_cap = s->chart->shows_cap && !s->series->is_vented && isfinite (cap);
  for (size_t i = 0; i < stroke->n; i++)
    {
      const dw_series_point *p = &stroke->points[i];
      const dw_spot spot = spot_of (s, p->speed, p->force);
      if (p->speed <= onset)
        add (&raw->before, spot);
      if (p->speed >= onset)
        {
          add (&raw->past, spot);
          if (has_cap)
            add (&raw->cap, spot_of (s, p->speed, cap));
        }
    }
}

static void
collect_band (const source *s, dw_chart_curve *raw)
{
  const dw_series_stroke *stroke = &s->series->stroke[s->stroke];
  if (!s->chart->shows_band || stroke->low == NULL || stroke->high == NULL)
    return;
  for (size_t i = 0; i < stroke->n; i++)
    {
      const double speed = stroke->points[i].speed;
      const dw_spot low = spot_of (s, speed, stroke->low[i]);
      const dw_spot high = spot_of (s, speed, stroke->high[i]);
      /* both have a gap or neither, so that their pieces match */
      const bool both = isfinite (low.x) && isfinite (low.y) && isfinite (high.y);
      dw_polyline_add (&raw->band_low, low.x, both ? low.y : (double)NAN);
      dw_polyline_add (&raw->band_high, high.x, both ? high.y : (double)NAN);
    }
}

static void
thin_and_clip (const dw_polyline *raw, const dw_rect *plot, dw_polyline *out)
{
  dw_polyline thin = { 0 };
  dw_polyline_thin (raw, COLUMN, &thin);
  dw_polyline_clip (&thin, plot, out);
  dw_polyline_clear (&thin);
}

static void
add_markers (const dw_chart_style *style, const dw_rect *plot, dw_chart_curve *curve)
{
  const double spacing = fmax (fmin (style->marker_spacing, plot->width / LEAST_MARKERS),
                               plot->width / DW_MAX_MARKERS * 1.01);
  const double clear = 2.5 * style->onset_radius;
  for (double x = plot->x + PHASE[curve->slot] * spacing;
       x < plot->x + plot->width && curve->n_markers < DW_MAX_MARKERS; x += spacing)
    {
      dw_spot spot = { x, 0.0 };
      if (!dw_polyline_at (&curve->before, x, &spot.y)
          && !dw_polyline_at (&curve->past, x, &spot.y))
        continue;
      if (!curve->has_onset || dw_spot_distance (spot, curve->onset) >= clear)
        curve->markers[curve->n_markers++] = spot;
    }
}

void
dw_chart_curve_make (const dw_chart *chart, int series, dw_stroke stroke,
                     const dw_chart_style *style, const dw_chart_frame *frame,
                     dw_chart_curve *curve)
{
  const source s = { chart, chart->series[series], stroke, frame };
  dw_chart_curve raw = { 0 };

  dw_chart_curve_clear (curve);
  curve->slot = dw_chart_slot (chart, series);
  collect (&s, &raw);
  collect_band (&s, &raw);
  thin_and_clip (&raw.before, &frame->plot, &curve->before);
  thin_and_clip (&raw.past, &frame->plot, &curve->past);
  thin_and_clip (&raw.cap, &frame->plot, &curve->cap);
  dw_polyline_thin (&raw.band_low, COLUMN, &curve->band_low);
  dw_polyline_thin (&raw.band_high, COLUMN, &curve->band_high);
  dw_chart_curve_clear (&raw);

  const double onset = onset_of (&s);
  if (isfinite (onset) && isfinite (s.series->onset_force))
    {
      curve->onset = spot_of (&s, onset, s.series->onset_force);
      curve->onset_speed = dw_chart_shown_speed (chart, s.series, onset);
      curve->has_onset = dw_rect_holds (&frame->plot, curve->onset.x, curve->onset.y);
    }
  add_markers (style, &frame->plot, curve);
}

bool
dw_chart_curve_meets (const dw_chart_curve *curve, double mark_radius, const dw_rect *box)
{
  const dw_rect mark = { curve->onset.x - mark_radius, curve->onset.y - mark_radius,
                         2.0 * mark_radius, 2.0 * mark_radius };
  return (curve->has_onset && dw_rect_overlaps (&mark, box))
         || dw_polyline_meets (&curve->before, box) || dw_polyline_meets (&curve->past, box)
         || dw_polyline_meets (&curve->cap, box);
}

double
dw_chart_curve_nearest (const dw_chart_curve *curve, dw_spot to, dw_spot *out)
{
  dw_spot before = to;
  dw_spot past = to;
  const double a = dw_polyline_nearest (&curve->before, to, &before);
  const double b = dw_polyline_nearest (&curve->past, to, &past);
  *out = a <= b ? before : past;
  return fmin (a, b);
}
