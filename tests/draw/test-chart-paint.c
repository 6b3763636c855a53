/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A few whole pictures against stored ones, with letters of DejaVu Sans. DW_UPDATE_IMAGES=1 in the
 * environment stores what is painted now: look at it before you commit it. */
#include <glib.h>

#include "draw-pictures.h"
#include "draw-samples.h"
#include "draw/dw-chart-paint.h"
#include "draw/dw-readout.h"

static const struct
{
  const char *name;
  dw_style_id style;
  int n_series;
  bool is_log;
  dw_chart_quantity quantity;
  int strip;
  double width, height;
  bool is_table; /* legend with a reading, bands around the curves */
} pictures[] = {
  { "chart-light.png", DW_STYLE_LIGHT, 3, false, DW_SHOW_FORCE, 0, 420.0, 320.0, false },
  { "chart-dark-log-c.png", DW_STYLE_DARK, 2, true, DW_SHOW_DAMPING, -1, 320.0, 220.0, false },
  { "chart-print.png", DW_STYLE_PRINT, 4, false, DW_SHOW_FORCE, -1, 320.0, 220.0, false },
  { "chart-sun-reading.png", DW_STYLE_SUN, 2, false, DW_SHOW_FORCE, -1, 420.0, 260.0, true },
};

typedef struct
{
  dw_chart chart;
  dw_chart_style style;
  dw_text_pango *pango;
  dw_chart_layout *layout;
  cairo_surface_t *surface;
  bool is_table;
} picture;

static void
add_bands (dw_chart *chart)
{
  const dw_damper damper = sample_damper ();
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  for (int i = 0; i < chart->n_series; i++)
    dw_series_fill_band ((dw_series *)(guintptr)chart->series[i], &damper, 25.0, &limits, NULL);
}

static void
open_picture (picture *p, int i)
{
  const dw_rect area = { 0.0, 0.0, pictures[i].width, pictures[i].height };
  p->chart = sample_chart (pictures[i].n_series, pictures[i].is_log);
  p->chart.quantity = pictures[i].quantity;
  p->chart.strip_series = pictures[i].strip;
  p->chart.strip_stroke = DW_REBOUND;
  if (pictures[i].is_table)
    {
      p->chart.legend = DW_LEGEND_TABLE;
      add_bands (&p->chart);
    }
  p->is_table = pictures[i].is_table;
  p->style = dw_chart_style_make (pictures[i].style);
  p->style.font_family = "DejaVu Sans";
  p->pango = dw_text_pango_new (&p->style);
  const dw_text_metrics metrics = dw_text_pango_metrics (p->pango);
  p->layout = dw_chart_layout_new (&p->chart, &p->style, &metrics, &area);
  p->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)area.width, (int)area.height);
}

static void
close_picture (picture *p)
{
  cairo_surface_destroy (p->surface);
  dw_chart_layout_free (p->layout);
  dw_text_pango_free (p->pango);
  sample_chart_clear (&p->chart);
}

static void
paint (picture *p)
{
  cairo_t *cr = cairo_create (p->surface);
  dw_chart_paint (p->layout, &p->style, cr);
  if (p->is_table)
    {
      const dw_text_metrics metrics = dw_text_pango_metrics (p->pango);
      const dw_chart_reading reading = dw_chart_read (&p->chart, p->layout, 0.7);
      dw_chart_label_list list = { .n = 0 };
      dw_readout_make (&p->chart, p->layout, &reading, &metrics, &list);
      dw_chart_reading_paint (&reading, &p->style, cr);
      dw_readout_paint (&list, p->layout, &p->style, cr);
      dw_chart_label_list_clear (&list);
    }
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (p->surface);
}

START_TEST (a_picture_is_the_stored_one)
{
  picture p;
  open_picture (&p, _i);
  paint (&p);
  picture_assert_stored (p.surface, pictures[_i].name);
  close_picture (&p);
}
END_TEST

START_TEST (painting_is_the_same_twice)
{
  picture p;
  picture q;
  double clearly;
  open_picture (&p, 0);
  open_picture (&q, 0);
  paint (&p);
  paint (&q);
  ck_assert (picture_difference (p.surface, q.surface, &clearly) == 0.0);
  close_picture (&p);
  close_picture (&q);
}
END_TEST

/* The widget paints the line in a node of its own: it must change little, and only in the plot. */
START_TEST (a_reading_line_is_painted_over_the_plot_only)
{
  picture p;
  picture q;
  double clearly;
  open_picture (&p, 0);
  open_picture (&q, 0);
  paint (&p);
  paint (&q);
  cairo_t *cr = cairo_create (q.surface);
  const dw_chart_reading r = dw_chart_read (&q.chart, q.layout, 0.6);
  dw_chart_reading_paint (&r, &q.style, cr);
  cairo_surface_flush (q.surface);
  const double one = picture_difference (p.surface, q.surface, &clearly);
  ck_assert (one > 0.1 && clearly < 0.02);

  /* outside the view nothing is painted */
  const dw_chart_reading far = dw_chart_read (&q.chart, q.layout, 7.0);
  dw_chart_reading_paint (&far, &q.style, cr);
  cairo_surface_flush (q.surface);
  ck_assert (picture_difference (p.surface, q.surface, &clearly) == one);
  cairo_destroy (cr);
  close_picture (&p);
  close_picture (&q);
}
END_TEST

START_TEST (a_dragged_rectangle_is_cut_to_the_plot)
{
  picture p;
  picture q;
  double clearly;
  open_picture (&p, 1);
  open_picture (&q, 1);
  paint (&p);
  paint (&q);
  const dw_rect plot = q.layout->frame.plot;
  cairo_t *cr = cairo_create (q.surface);
  dw_chart_drag_paint (q.layout, &q.style, plot.x + 10.0, plot.y + 10.0, 1e5, 1e5, cr);
  cairo_surface_flush (q.surface);
  ck_assert (picture_difference (p.surface, q.surface, &clearly) > 1.0);
  const int x = (int)(plot.x + plot.width + 4.0);
  const int y = (int)(plot.y + plot.height / 2.0);
  const unsigned char *a = cairo_image_surface_get_data (p.surface);
  const unsigned char *b = cairo_image_surface_get_data (q.surface);
  const int at = y * cairo_image_surface_get_stride (p.surface) + 4 * x;
  ck_assert (a[at] == b[at]);
  cairo_destroy (cr);
  close_picture (&p);
  close_picture (&q);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-paint");
  TCase *tcase = tcase_create ("chart-paint");
  tcase_add_loop_test (tcase, a_picture_is_the_stored_one, 0, N_ENTRIES (pictures));
  tcase_add_test (tcase, painting_is_the_same_twice);
  tcase_add_test (tcase, a_reading_line_is_painted_over_the_plot_only);
  tcase_add_test (tcase, a_dragged_rectangle_is_cut_to_the_plot);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
