/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-chart.c
 * How long it takes to draw two setups at 600 x 400; prints "name value unit" lines.
 */
#include <glib.h>
#include <stdio.h>
#include <stdlib.h>

#include "draw-samples.h"
#include "draw/dw-chart-paint.h"
#include "test-support.h"

enum
{
  N_RUNS = 60,
  WIDTH = 600,
  HEIGHT = 400
};

static double
ms_since (gint64 start)
{
  return (double)(g_get_monotonic_time () - start) / 1000.0;
}

static void
print_median (const char *name, double *times)
{
  test_sort (times, N_RUNS);
  printf ("%s %.3f ms\n", name, times[N_RUNS / 2]);
}

int
main (void)
{
  static double fill[N_RUNS];
  static double layout_times[N_RUNS];
  static double paint[N_RUNS];
  static double reading[N_RUNS];
  dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  dw_text_pango *pango = dw_text_pango_new (&style);
  const dw_text_metrics metrics = dw_text_pango_metrics (pango);
  const dw_rect area = { 0.0, 0.0, WIDTH, HEIGHT };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);

  for (int i = 0; i < N_RUNS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      dw_chart chart = sample_chart (2, false);
      fill[i] = ms_since (start);

      start = g_get_monotonic_time ();
      dw_chart_layout *layout = dw_chart_layout_new (&chart, &style, &metrics, &area);
      layout_times[i] = ms_since (start);

      cairo_t *cr = cairo_create (surface);
      start = g_get_monotonic_time ();
      dw_chart_paint (layout, &style, cr);
      cairo_surface_flush (surface);
      paint[i] = ms_since (start);

      start = g_get_monotonic_time ();
      const dw_chart_reading r = dw_chart_read (&chart, layout, 0.6);
      dw_chart_reading_paint (&r, &style, cr);
      cairo_surface_flush (surface);
      reading[i] = ms_since (start);
      cairo_destroy (cr);
      dw_chart_layout_free (layout);
      sample_chart_clear (&chart);
    }
  print_median ("chart-fill-2-setups", fill);
  print_median ("chart-layout-600x400", layout_times);
  print_median ("chart-paint-600x400", paint);
  print_median ("chart-reading", reading);
  cairo_surface_destroy (surface);
  dw_text_pango_free (pango);
  return 0;
}
