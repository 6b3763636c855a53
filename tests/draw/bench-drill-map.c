/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-drill-map.c
 * How long a map of drill sizes takes at 600 x 450: fields, layout, painting, and what follows a click
 * on another dot; prints "name value unit" lines. With every drill of the table there are many dots,
 * with every fourth one few.
 */
#include <glib.h>
#include <stdio.h>
#include <stdlib.h>

#include "draw-samples.h"
#include "draw/dw-drill-map-paint.h"
#include "test-support.h"

enum
{
  N_RUNS = 40,
  WIDTH = 600,
  HEIGHT = 450
};

typedef struct
{
  const char *name;
  double ms[N_RUNS];
} series;

static double
ms_since (gint64 start)
{
  return (double)(g_get_monotonic_time () - start) / 1000.0;
}

static void
print_median (const char *map, series *s)
{
  test_sort (s->ms, N_RUNS);
  printf ("drill-map-%s-%s %.3f ms\n", map, s->name, s->ms[N_RUNS / 2]);
}

/* Four measures, of which one is the oil. */
static void
measure_fill (const char *name, sample_map *sample)
{
  series fill = { .name = "fill-61x61" };
  for (int i = 0; i < N_RUNS; i++)
    {
      const gint64 start = g_get_monotonic_time ();
      sample_map_fill (sample);
      fill.ms[i] = ms_since (start);
    }
  print_median (name, &fill);
}

static void
measure_drawing (const char *name, sample_map *sample, const dw_chart_style *style, cairo_t *cr)
{
  series all[] = { { .name = "layout-600x450" },
                   { .name = "paint-600x450" },
                   { .name = "mark" },
                   { .name = "paint-marks" },
                   { .name = "choose" } };
  dw_text_pango *pango = dw_text_pango_new (style);
  const dw_text_metrics metrics = dw_text_pango_metrics (pango);
  const dw_rect area = { 0.0, 0.0, WIDTH, HEIGHT };
  for (int i = 0; i < N_RUNS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      dw_drill_map_layout *layout = dw_drill_map_layout_new (&sample->map, style, &metrics, &area);
      all[0].ms[i] = ms_since (start);
      start = g_get_monotonic_time ();
      dw_drill_map_paint (layout, style, cr);
      cairo_surface_flush (cairo_get_target (cr));
      all[1].ms[i] = ms_since (start);

      sample->map.chosen = i % sample->map.n_dots;
      start = g_get_monotonic_time ();
      dw_drill_map_layout_mark (layout, &sample->map);
      all[2].ms[i] = ms_since (start);
      start = g_get_monotonic_time ();
      dw_drill_map_paint_marks (layout, style, cr);
      cairo_surface_flush (cairo_get_target (cr));
      all[3].ms[i] = ms_since (start);
      start = g_get_monotonic_time ();
      dw_drill_map_layout_mark (layout, &sample->map);
      dw_drill_map_paint (layout, style, cr);
      cairo_surface_flush (cairo_get_target (cr));
      all[4].ms[i] = ms_since (start);
      dw_drill_map_layout_free (layout);
    }
  for (unsigned k = 0; k < G_N_ELEMENTS (all); k++)
    print_median (name, &all[k]);
  dw_text_pango_free (pango);
}

int
main (void)
{
  static const struct
  {
    const char *name;
    sample_map_kind kind;
    int nth;
  } maps[] = { { "halves", SAMPLE_HALVES, 4 },
               { "kinds", SAMPLE_KINDS, 4 },
               { "kinds-all", SAMPLE_KINDS, 1 },
               { "strip", SAMPLE_STRIP, 1 } };
  dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  for (unsigned i = 0; i < G_N_ELEMENTS (maps); i++)
    {
      sample_map *sample = sample_map_new (maps[i].kind, maps[i].nth, 2.6e-3);
      printf ("drill-map-%s-dots %d dots\n", maps[i].name, sample->map.n_dots);
      measure_fill (maps[i].name, sample);
      measure_drawing (maps[i].name, sample, &style, cr);
      sample_map_free (sample);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return 0;
}
