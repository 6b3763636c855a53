/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-samples.h"

#include <glib.h>

static dw_text_extent
measure (void *data, const char *text, dw_text_role role)
{
  const dw_chart_style *style = data;
  const double size = style->font[role].size;
  return (dw_text_extent){ 0.6 * size * (double)g_utf8_strlen (text, -1), 0.8 * size, 0.2 * size };
}

dw_text_metrics
sample_metrics (const dw_chart_style *style)
{
  return (dw_text_metrics){ measure, (void *)(guintptr)style };
}

dw_damper
sample_damper (void)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  d.piston.n_holes = 2;
  d.valve.opens_on = DW_REBOUND;
  d.valve.hub_diameter = 6e-3;
  d.valve.outer_diameter = 10.6e-3;
  d.valve.hole_circle = 8.2e-3;
  d.valve.lift_limit = 0.6e-3;
  d.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  d.valve.n_shims = 1;
  d.gas = (dw_gas){ DW_GAS_BLADDER, 101.325e3, 1.2e-6 };
  d.seal_friction = 0.4;
  d.motion_ratio = 0.6;
  return d;
}

dw_series *
sample_series (const char *name, double viscosity, bool is_log)
{
  const dw_series_range range = { is_log ? 0.01 : 0.0, 1.0, is_log };
  dw_damper d = sample_damper ();
  dw_series *series = dw_series_new (name);
  d.oil.viscosity = viscosity;
  /* not a ck_assert: the benchmark uses it as well */
  g_assert_cmpint (dw_series_fill (series, &d, 25.0, &range, NULL), ==, DW_OK);
  return series;
}

dw_chart
sample_chart (int n, bool is_log)
{
  static const char *const names[DW_MAX_SERIES]
      = { "As qualified", "Rear quicker on rebound", "Thicker oil",
          "A name that is much too long for any legend to hold" };
  dw_chart chart = dw_chart_defaults ();
  chart.is_log = is_log;
  chart.n_series = n;
  chart.labels.title = "Sample";
  for (int i = 0; i < n; i++)
    {
      dw_series *series = sample_series (names[i], (400.0 + 60.0 * i) * 1e-6, is_log);
      series->is_fitted = i == 0;
      chart.series[i] = series;
    }
  return chart;
}

void
sample_chart_clear (dw_chart *chart)
{
  for (int i = 0; i < chart->n_series; i++)
    dw_series_free ((dw_series *)(guintptr)chart->series[i]);
  chart->n_series = 0;
}

dw_chart_layout *
sample_layout (const dw_chart *chart, double width, double height)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect area = { 0.0, 0.0, width, height };
  return dw_chart_layout_new (chart, &style, &metrics, &area);
}

int
sample_text_boxes (const dw_chart_layout *layout, dw_rect *boxes, int room)
{
  int n = 0;
  for (int i = 0; i < layout->x_ticks.n && n < room; i++)
    if (layout->x_ticks.ticks[i].is_major)
      boxes[n++] = dw_chart_layout_x_label_box (layout, i);
  for (int i = 0; i < layout->y_ticks.n && n < room; i++)
    if (layout->y_ticks.ticks[i].is_major)
      boxes[n++] = dw_chart_layout_y_label_box (layout, i);
  for (int i = 0; i < layout->texts.n && n < room; i++)
    boxes[n++] = layout->texts.labels[i].box;
  for (int i = 0; i < layout->legend.n && n < room; i++)
    boxes[n++] = layout->legend.entries[i].box;
  ck_assert_int_lt (n, room);
  return n;
}
