/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-flow-strip.h"

#include <math.h>

/* [pt] as for curves */
static const double COLUMN = 0.5;

void
dw_flow_strip_clear (dw_flow_strip *strip)
{
  for (int i = 0; i < DW_N_SHARES; i++)
    dw_polyline_clear (&strip->edge[i]);
  *strip = (dw_flow_strip){ 0 };
}

static double
share_up_to (const dw_flow_shares *shares, int part)
{
  switch (part)
    {
    case DW_SHARE_OPEN:
      return shares->open;
    case DW_SHARE_COVERED:
      return shares->open + shares->covered;
    default:
      return 1.0;
    }
}

/* At rest nothing flows and there are no shares. */
static bool
is_known (const dw_series_point *p)
{
  return p->shares.open + p->shares.covered + p->shares.leak > 0.0;
}

static void
add_point (dw_polyline raw[DW_N_SHARES], const dw_rect *plot, double x,
           const dw_flow_shares *shares)
{
  for (int i = 0; i < DW_N_SHARES; i++)
    dw_polyline_add (&raw[i], x,
                     plot->y + (1.0 - fmin (1.0, share_up_to (shares, i))) * plot->height);
}

void
dw_flow_strip_make (const dw_chart *chart, const dw_rect *plot, const dw_scale *x,
                    dw_flow_strip *strip)
{
  const dw_series *series = chart->series[chart->strip_series];
  const dw_series_stroke *stroke = &series->stroke[chart->strip_stroke];
  dw_polyline raw[DW_N_SHARES] = { 0 };

  dw_flow_strip_clear (strip);
  strip->plot = *plot;
  for (size_t i = 0; i < stroke->n; i++)
    {
      const dw_series_point *p = &stroke->points[i];
      const double speed = dw_chart_shown_speed (chart, series, p->speed);
      if (!is_known (p))
        continue;
      /* towards rest the shares hardly change: the first that is known reaches to the axis */
      if (raw[0].n == 0 && !x->is_log && x->low <= 0.0 && i > 0 && !is_known (&stroke->points[0]))
        add_point (raw, plot, dw_scale_place (x, 0.0), &p->shares);
      add_point (raw, plot, dw_scale_place (x, speed), &p->shares);
    }
  for (int i = 0; i < DW_N_SHARES; i++)
    {
      dw_polyline thin = { 0 };
      dw_polyline_thin (&raw[i], COLUMN, &thin);
      dw_polyline_clip (&thin, plot, &strip->edge[i]);
      dw_polyline_clear (&thin);
      dw_polyline_clear (&raw[i]);
    }
  const dw_polyline *top = &strip->edge[DW_SHARE_LEAK];
  if (top->n > 1)
    {
      strip->from = top->spots[0].x;
      strip->to = top->spots[top->n - 1].x;
    }
}
