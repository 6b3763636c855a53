/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-samples.h"

#include <glib.h>
#include <math.h>

#include "model/dw-drill.h"
#include "model/dw-units.h"
#include "study/dw-drill-table.h"

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

static dw_drilling
sample_study (sample_map_kind kind)
{
  static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  dw_damper damper = sample_damper ();
  dw_drill_sets sets;
  dw_drilling study;
  if (kind == SAMPLE_STRIP)
    {
      damper.piston.n_holes = 1;
      damper.valve.n_shims = 0;
    }
  dw_drill_sets_init (&sets, &damper, kind == SAMPLE_HALVES ? DW_DRILL_HALVES : DW_DRILL_KINDS);
  g_assert_cmpint (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), ==, DW_OK);
  return study;
}

static void
add_dots (sample_map *sample, const double *drills, int n)
{
  const dw_drill_sets *sets = &sample->study.sets;
  g_autofree double *x = g_new (double, n + 1);
  g_autofree double *y = g_new (double, n + 1);
  const int n_x = dw_drill_sizes (sets, 0, drills, n, x);
  const int n_y = dw_drill_sizes (sets, 1, drills, n, y);
  sample->dots = g_new (dw_drill_dot, n_x * n_y);
  for (int i = 0; i < n_x; i++)
    for (int k = 0; k < n_y; k++)
      {
        const double size[DW_DRILL_SETS] = { x[i], y[k] };
        dw_drill_result result;
        if (!dw_drill_is_choice (sets, size)
            || dw_drilling_at (&sample->study, size, &result, NULL) != DW_OK)
          continue;
        sample->dots[sample->map.n_dots++] = (dw_drill_dot){ x[i] > 0.0 ? x[i] : sets->present[0],
                                                             y[k] > 0.0 ? y[k] : sets->present[1],
                                                             result.change[DW_COMPRESSION][DW_LOW]
                                                                 > -50.0 };
      }
}

void
sample_map_fill (sample_map *sample)
{
  const dw_drill_measure measures[] = { sample->map.shade_measure, sample->map.contour_measure,
                                        DW_MEASURE_COMPRESSION_LOW, DW_MEASURE_OIL };
  dw_drill_field *const fields[] = { &sample->shade, &sample->contour, &sample->equal,
                                     &sample->oil };
  dw_drill_field_fill (&sample->study, measures, fields, 4);
}

static void
link_map (sample_map *sample)
{
  static const double oils[] = { 450.0, 500.0, 700.0, 1000.0 };
  dw_drill_map *map = &sample->map;
  for (int i = 0; i < 4; i++)
    sample->oils[i] = oils[i] * DW_CST;
  map->sets = &sample->study.sets;
  map->shade = &sample->shade;
  map->contour = &sample->contour;
  map->equal = &sample->equal;
  map->oil = &sample->oil;
  map->oils = sample->oils;
  map->n_oils = 4;
  map->dots = sample->dots;
  map->tolerance = 0.03e-3;
}

sample_map *
sample_map_new (sample_map_kind kind, int nth, double largest)
{
  sample_map *sample = g_new0 (sample_map, 1);
  size_t n_table;
  const dw_drill_size *table = dw_drill_table (&n_table);
  g_autofree double *drills = g_new (double, n_table);
  int n = 0;
  for (size_t i = 0; i < n_table; i += (size_t)nth)
    if (table[i].diameter <= largest)
      drills[n++] = table[i].diameter;

  sample->study = sample_study (kind);
  sample->map = dw_drill_map_defaults ();
  add_dots (sample, drills, n);
  link_map (sample);
  g_assert_true (
      dw_drill_field_place (&sample->shade, &sample->study.sets, sample->dots, sample->map.n_dots));
  sample->contour = sample->shade;
  sample->equal = sample->shade;
  sample->oil = sample->shade;
  sample_map_fill (sample);
  return sample;
}

void
sample_map_free (sample_map *sample)
{
  if (sample == NULL)
    return;
  g_free (sample->dots);
  g_free (sample);
}

int
sample_map_dot (const sample_map *sample, double x, double y)
{
  int best = -1;
  for (int i = 0; i < sample->map.n_dots; i++)
    {
      const dw_drill_dot *a = &sample->dots[i];
      const dw_drill_dot *b = best >= 0 ? &sample->dots[best] : NULL;
      if (b == NULL || hypot (a->x - x, a->y - y) < hypot (b->x - x, b->y - y))
        best = i;
    }
  return best;
}

static const double ladder_speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

sample_ladder *
sample_ladder_new (int most_leaves, double coupling, bool has_steel)
{
  const dw_shim box[] = { { 0.1e-3, 6, 4e9, 0.38, 100e6 },
                          { 0.15e-3, 4, 4e9, 0.38, 100e6 },
                          { 0.2e-3, 4, 4e9, 0.38, 100e6 },
                          { 0.25e-3, 2, 4e9, 0.38, 100e6 },
                          { 0.05e-3, 2, has_steel ? 200e9 : 4e9, 0.38, 100e6 } };
  sample_ladder *s = g_new0 (sample_ladder, 1);
  s->damper = sample_damper ();
  s->damper.valve.leaf_coupling = coupling;
  s->fitted = s->damper.valve;
  s->damper.valve.shims[0].thickness = 0.1e-3;
  s->damper.valve.shims[0].count = 2;
  dw_ladder_options options = dw_ladder_options_defaults (box, G_N_ELEMENTS (box), 25.0,
                                                          ladder_speeds);
  options.most_leaves = most_leaves;
  options.fitted = &s->fitted;
  /* not a ck_assert: a benchmark may use it as well */
  g_assert_cmpint (dw_ladder_make (&s->damper, &options, NULL, NULL, &s->ladder, NULL), ==, DW_OK);
  s->chart = dw_ladder_chart_defaults ();
  s->chart.ladder = s->ladder;
  return s;
}

void
sample_ladder_free (sample_ladder *sample)
{
  dw_ladder_free (sample->ladder);
  g_free (sample);
}

void
sample_ladder_set_speed (sample_ladder *sample, int speed)
{
  sample->chart.speed = speed;
  sample->chart.at = ladder_speeds[speed];
}
