/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-reading.h"

#include <math.h>

/* A point between two of a series. False in a gap and outside. */
static bool
interpolate (const dw_series_stroke *stroke, double speed, dw_series_point *out)
{
  for (size_t i = 0; i + 1 < stroke->n; i++)
    {
      const dw_series_point *a = &stroke->points[i];
      const dw_series_point *b = &stroke->points[i + 1];
      if (!(a->speed <= speed && speed <= b->speed) || !isfinite (a->force) || !isfinite (b->force))
        continue;
      const double t = b->speed > a->speed ? (speed - a->speed) / (b->speed - a->speed) : 0.0;
      const dw_series_point *near = t < 0.5 ? a : b;
      *out = (dw_series_point){ speed, a->force + t * (b->force - a->force), near->lost_travel,
                                near->is_void, near->shares };
      return true;
    }
  return false;
}

/* At a shaft speed, computed or between points. */
static bool
point_at (const dw_series *series, dw_stroke stroke, double speed, dw_series_point *out)
{
  if (!series->has_model)
    return interpolate (&series->stroke[stroke], speed, out);
  dw_force_point p;
  if (dw_force_at (&series->model, stroke, speed, &p, NULL) != DW_OK)
    return false;
  *out = (dw_series_point){ speed, p.force, p.lost_travel, p.is_void, dw_flow_shares_of (&p) };
  return true;
}

static dw_reading_value
read_value (const dw_chart *chart, const dw_chart_layout *layout, const dw_series *series,
            dw_stroke stroke, double speed)
{
  dw_series_point p;
  const double shaft_speed = dw_chart_shaft_speed (chart, series, speed);
  if (!point_at (series, stroke, shaft_speed, &p))
    return (dw_reading_value){ 0 };

  dw_chart as_force = *chart;
  dw_chart as_damping = *chart;
  as_force.quantity = DW_SHOW_FORCE;
  as_damping.quantity = DW_SHOW_DAMPING;
  dw_reading_value v = {
    .is_known = true,
    .force = dw_chart_shown_value (&as_force, series, shaft_speed, p.force),
    .c = dw_chart_shown_value (&as_damping, series, shaft_speed, p.force),
    /* travel goes from shaft to wheel as speed does */
    .lost_travel = dw_chart_shown_speed (chart, series, p.lost_travel),
    .is_void = p.is_void,
    .shares = p.shares,
  };
  const double shown = chart->quantity == DW_SHOW_FORCE ? v.force : v.c;
  v.spot = (dw_spot){ dw_chart_layout_x (layout, speed),
                      dw_chart_layout_y (layout, stroke, shown) };
  v.is_visible = isfinite (v.spot.y) && dw_rect_holds (&layout->frame.plot, v.spot.x, v.spot.y);
  return v;
}

static void
compare (const dw_reading_value *first, dw_reading_value *v)
{
  if (!first->is_known || !v->is_known || first->force == 0.0)
    return;
  v->has_change = true;
  v->change_percent = 100.0 * (v->force - first->force) / fabs (first->force);
}

dw_chart_reading
dw_chart_read (const dw_chart *chart, const dw_chart_layout *layout, double speed)
{
  dw_chart_reading r = { .speed = speed,
                         .x = dw_chart_layout_x (layout, speed),
                         .plot = layout->frame.plot,
                         .n_series = chart->n_series };
  for (int i = 0; i < chart->n_series; i++)
    {
      r.slot[i] = dw_chart_slot (chart, i);
      for (int s = 0; s < DW_N_STROKES; s++)
        {
          r.values[i][s] = read_value (chart, layout, chart->series[i], (dw_stroke)s, speed);
          if (i > 0)
            compare (&r.values[0][s], &r.values[i][s]);
        }
    }
  return r;
}
