/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-chart-csv.h"

#include <math.h>

#include "project/dw-decimal.h"

const char dw_chart_csv_header[]
    = "setup,axle,stroke,place,speed_m_s,force_n,c_n_s_m,open_share,covered_share,leak_share,void,"
      "lost_travel_m\n";

static const char *const places[DW_N_PLACES] = { "shaft", "wheel" };

/* What is not known is an empty field. */
static void
add_number (GString *out, double value)
{
  char text[DW_DECIMAL_SIZE];
  if (!isnan (value))
    g_string_append (out, dw_decimal_format (value, 0, text));
}

static void
add_point (const dw_chart *chart, const dw_series *series, const dw_series_point *p, GString *out)
{
  dw_chart force = *chart;
  dw_chart damping = *chart;
  force.quantity = DW_SHOW_FORCE;
  damping.quantity = DW_SHOW_DAMPING;
  const double values[] = {
    dw_chart_shown_speed (chart, series, p->speed),
    dw_chart_shown_value (&force, series, p->speed, p->force),
    dw_chart_shown_value (&damping, series, p->speed, p->force),
    p->shares.open,
    p->shares.covered,
    p->shares.leak,
    p->is_void ? 1.0 : 0.0,
    dw_chart_shown_speed (chart, series, p->lost_travel),
  };
  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_string_append_c (out, ',');
      add_number (out, values[i]);
    }
  g_string_append_c (out, '\n');
}

void
dw_chart_csv_add (const dw_chart *chart, int series, const char *setup, const char *axle,
                  GString *out)
{
  const dw_series *s = chart->series[series];
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    for (size_t i = 0; i < s->stroke[stroke].n; i++)
      {
        g_string_append_printf (out, "%s,%s,%s,%s", setup, axle, dw_stroke_name ((dw_stroke)stroke),
                                places[chart->place]);
        add_point (chart, s, &s->stroke[stroke].points[i], out);
      }
}
