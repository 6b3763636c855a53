/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw-samples.h"

/* The stacked edges are the model's shares. */
START_TEST (edges_are_the_shares_of_the_flow)
{
  dw_chart chart = sample_chart (1, _i == 1);
  chart.strip_series = 0;
  chart.strip_stroke = DW_REBOUND;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 500.0);
  const dw_flow_strip *strip = &layout->strip;
  ck_assert (layout->has_strip);
  for (double v = 0.02; v < 1.0; v *= 1.3)
    {
      dw_force_point p;
      double open, covered, top;
      const double x = dw_chart_layout_x (layout, v);
      ck_assert_int_eq (dw_force_at (&chart.series[0]->model, DW_REBOUND, v, &p, NULL), DW_OK);
      const dw_flow_shares shares = dw_flow_shares_of (&p);
      ck_assert (dw_polyline_at (&strip->edge[DW_SHARE_OPEN], x, &open));
      ck_assert (dw_polyline_at (&strip->edge[DW_SHARE_COVERED], x, &covered));
      ck_assert (dw_polyline_at (&strip->edge[DW_SHARE_LEAK], x, &top));
      const double bottom = strip->plot.y + strip->plot.height;
      assert_close ((bottom - open) / strip->plot.height, shares.open, 0.0, 0.004, "open holes");
      assert_close ((open - covered) / strip->plot.height, shares.covered, 0.0, 0.004, "covered");
      assert_close (top, strip->plot.y, 0.0, 1e-6, "all of it");
    }
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_strip_reaches_from_rest_to_the_end)
{
  dw_chart chart = sample_chart (1, false);
  chart.strip_series = 0;
  chart.strip_stroke = DW_COMPRESSION;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 500.0);
  assert_close (layout->strip.from, layout->frame.plot.x, 0.0, 1e-6, "from the axis");
  assert_close (layout->strip.to, layout->frame.plot.x + layout->frame.plot.width, 0.0, 1e-6,
                "to 1 m/s");
  for (int i = 0; i < DW_N_SHARES; i++)
    ck_assert (layout->swatch[i].width > 0.0);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (unknown_shares_leave_it_empty)
{
  const dw_series_point points[] = { { .speed = 0.1, .force = 1.0 },
                                     { .speed = 0.9, .force = 9.0 } };
  dw_series *series = dw_series_new ("measured");
  dw_series_set_points (series, DW_REBOUND, points, 2);
  dw_chart chart = dw_chart_defaults ();
  chart.series[0] = series;
  chart.n_series = 1;
  chart.strip_series = 0;
  chart.strip_stroke = DW_REBOUND;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 500.0);
  ck_assert (layout->has_strip);
  ck_assert (!(layout->strip.to > layout->strip.from));
  dw_chart_layout_free (layout);
  dw_series_free (series);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/flow-strip");
  TCase *tcase = tcase_create ("flow-strip");
  tcase_add_loop_test (tcase, edges_are_the_shares_of_the_flow, 0, 2);
  tcase_add_test (tcase, the_strip_reaches_from_rest_to_the_end);
  tcase_add_test (tcase, unknown_shares_leave_it_empty);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
