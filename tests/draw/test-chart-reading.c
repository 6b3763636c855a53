/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw-samples.h"
#include "draw/dw-chart-reading.h"

static const double tried[] = { 0.0, 0.013, 0.05, 0.2, 0.777, 1.0 };

START_TEST (a_reading_is_the_model)
{
  dw_chart chart = sample_chart (3, false);
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  const double v = tried[_i];
  const dw_chart_reading r = dw_chart_read (&chart, layout, v);
  ck_assert_int_eq (r.n_series, 3);
  ck_assert (r.x == dw_chart_layout_x (layout, v));
  for (int i = 0; i < 3; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      {
        dw_force_point p;
        dw_force_point first;
        const dw_reading_value *value = &r.values[i][s];
        ck_assert_int_eq (dw_force_at (&chart.series[i]->model, (dw_stroke)s, v, &p, NULL), DW_OK);
        ck_assert_int_eq (dw_force_at (&chart.series[0]->model, (dw_stroke)s, v, &first, NULL),
                          DW_OK);
        ck_assert (value->is_known && value->force == p.force);
        ck_assert (v == 0.0 ? isnan (value->c) : value->c == p.force / v);
        ck_assert (value->is_void == p.is_void && value->lost_travel == p.lost_travel);
        ck_assert (value->has_change == (i > 0));
        if (i > 0)
          assert_close (value->change_percent, 100.0 * (p.force / first.force - 1.0), 1e-9, 1e-9,
                        "against the first");
        assert_close (value->spot.y, dw_chart_layout_y (layout, (dw_stroke)s, p.force), 0.0, 1e-9,
                      "on its curve");
        ck_assert (value->is_visible);
        const dw_flow_shares shares = dw_flow_shares_of (&p);
        ck_assert (value->shares.open == shares.open && value->shares.leak == shares.leak);
      }
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (at_the_wheel_everything_is_the_wheels)
{
  dw_chart chart = sample_chart (1, false);
  chart.place = DW_AT_WHEEL;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  const dw_chart_reading r = dw_chart_read (&chart, layout, 1.0);
  dw_force_point p;
  ck_assert_int_eq (dw_force_at (&chart.series[0]->model, DW_COMPRESSION, 0.6, &p, NULL), DW_OK);
  const dw_reading_value *v = &r.values[0][DW_COMPRESSION];
  assert_close (v->force, 0.6 * p.force, 1e-12, 0.0, "F MR");
  assert_close (v->c, 0.36 * p.force / 0.6, 1e-12, 0.0, "c MR^2");
  assert_close (v->lost_travel, p.lost_travel / 0.6, 1e-12, 0.0, "travel as speed");
  ck_assert (v->is_void);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (without_a_model_points_are_joined_and_gaps_kept)
{
  const dw_series_point points[] = { { .speed = 0.0, .force = 0.0 },
                                     { .speed = 0.4, .force = 8.0 },
                                     { .speed = 0.6, .force = (double)NAN },
                                     { .speed = 0.8, .force = 20.0 },
                                     { .speed = 1.0, .force = 30.0 } };
  dw_series *series = dw_series_new ("measured");
  dw_series_set_points (series, DW_REBOUND, points, 5);
  dw_chart chart = dw_chart_defaults ();
  chart.series[0] = series;
  chart.n_series = 1;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  ck_assert (dw_chart_read (&chart, layout, 0.1).values[0][DW_REBOUND].force == 2.0);
  ck_assert (!dw_chart_read (&chart, layout, 0.5).values[0][DW_REBOUND].is_known);
  ck_assert (dw_chart_read (&chart, layout, 0.9).values[0][DW_REBOUND].force == 25.0);
  ck_assert (!dw_chart_read (&chart, layout, 1.1).values[0][DW_REBOUND].is_known);
  ck_assert (!dw_chart_read (&chart, layout, 0.1).values[0][DW_COMPRESSION].is_known);
  dw_chart_layout_free (layout);
  dw_series_free (series);
}
END_TEST

START_TEST (a_speed_beyond_the_model_is_not_known)
{
  dw_chart chart = sample_chart (1, false);
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  ck_assert (!dw_chart_read (&chart, layout, 11.0).values[0][0].is_known);
  ck_assert (!dw_chart_read (&chart, layout, -1.0).values[0][0].is_known);
  ck_assert (!dw_chart_read (&chart, layout, 5.0).values[0][0].is_visible);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-reading");
  TCase *tcase = tcase_create ("chart-reading");
  tcase_add_loop_test (tcase, a_reading_is_the_model, 0, N_ENTRIES (tried));
  tcase_add_test (tcase, at_the_wheel_everything_is_the_wheels);
  tcase_add_test (tcase, without_a_model_points_are_joined_and_gaps_kept);
  tcase_add_test (tcase, a_speed_beyond_the_model_is_not_known);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
