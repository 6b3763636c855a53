/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>

#include "draw-samples.h"
#include "model/dw-units.h"

START_TEST (slots_differ_and_the_fitted_one_is_first)
{
  dw_chart chart = sample_chart (4, false);
  ck_assert_int_eq (dw_chart_slot (&chart, 0), DW_SLOT_FITTED);
  for (int i = 0; i < 4; i++)
    for (int k = 0; k < i; k++)
      ck_assert_int_ne (dw_chart_slot (&chart, i), dw_chart_slot (&chart, k));
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_series_keeps_its_own_slot)
{
  dw_chart chart = sample_chart (4, false);
  dw_series *third = (dw_series *)(guintptr)chart.series[2];
  dw_series *first = (dw_series *)(guintptr)chart.series[0];
  third->slot = DW_SLOT_TRIAL_1;
  first->is_fitted = false;
  ck_assert_int_eq (dw_chart_slot (&chart, 2), DW_SLOT_TRIAL_1);
  ck_assert_int_eq (dw_chart_slot (&chart, 0), DW_SLOT_TRIAL_2);
  ck_assert_int_eq (dw_chart_slot (&chart, 1), DW_SLOT_TRIAL_3);
  ck_assert_int_eq (dw_chart_slot (&chart, 3), DW_SLOT_TRIAL_4);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (at_the_wheel_speeds_and_forces_change)
{
  dw_chart chart = sample_chart (1, false);
  const dw_series *s = chart.series[0];
  chart.place = DW_AT_WHEEL;
  assert_close (dw_chart_shown_speed (&chart, s, 0.3), 0.5, 1e-12, 0.0, "0.3/0.6");
  assert_close (dw_chart_shaft_speed (&chart, s, 0.5), 0.3, 1e-12, 0.0, "back");
  assert_close (dw_chart_shown_value (&chart, s, 0.3, 10.0), 6.0, 1e-12, 0.0, "F MR");
  chart.quantity = DW_SHOW_DAMPING;
  assert_close (dw_chart_shown_value (&chart, s, 0.5, 10.0), 20.0 * 0.36, 1e-12, 0.0, "c MR^2");
  ck_assert (isnan (dw_chart_shown_value (&chart, s, 0.0, 10.0)));
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_whole_view_holds_all_and_is_round)
{
  dw_chart chart = sample_chart (3, _i == 1);
  chart.units = _i == 2 ? dw_chart_units_inch () : dw_chart_units_metric ();
  const dw_view v = dw_chart_whole_view (&chart);
  for (int i = 0; i < chart.n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      for (size_t k = 0; k < chart.series[i]->stroke[s].n; k++)
        {
          const dw_series_point *p = &chart.series[i]->stroke[s].points[k];
          const double y = s == DW_COMPRESSION ? p->force : -p->force;
          ck_assert (p->speed >= v.x_low && p->speed <= v.x_high * (1.0 + 1e-9));
          ck_assert (y > v.y_low && y < v.y_high);
        }
  ck_assert (v.y_low < 0.0 && v.y_high > 0.0);
  if (_i == 0)
    ck_assert (v.x_low == 0.0 && v.x_high == 1.0 && fmod (v.y_high, 10.0) == 0.0);
  if (_i == 1)
    ck_assert (v.x_low == 0.01 && v.x_high == 1.0);
  if (_i == 2)
    assert_close (fmod (v.x_high / DW_INCH + 1e-6, 1.0), 0.0, 0.0, 1e-5, "whole inches");
  sample_chart_clear (&chart);
}
END_TEST

/* The seal makes F/v infinite at rest: the curve must still be seen. */
START_TEST (rest_does_not_flatten_the_c_axis)
{
  dw_chart chart = sample_chart (1, false);
  chart.quantity = DW_SHOW_DAMPING;
  const dw_view v = dw_chart_whole_view (&chart);
  dw_force_point p;
  ck_assert_int_eq (dw_force_at (&chart.series[0]->model, DW_COMPRESSION, 1.0, &p, NULL), DW_OK);
  ck_assert (v.y_high > p.force && v.y_high < 3.0 * p.force);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (an_empty_chart_has_a_view)
{
  const dw_chart chart = dw_chart_defaults ();
  const dw_view v = dw_chart_whole_view (&chart);
  ck_assert (v.x_high > v.x_low && v.y_high > v.y_low);
}
END_TEST

START_TEST (a_view_is_made_to_lie_in_the_whole)
{
  dw_chart chart = sample_chart (1, false);
  chart.has_view = true;
  chart.view = (dw_view){ 0.5, 5.0, -1e9, 10.0 };
  const dw_view whole = dw_chart_whole_view (&chart);
  const dw_view v = dw_chart_current_view (&chart);
  ck_assert (v.x_high <= whole.x_high && v.y_low >= whole.y_low);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_range_widens_the_view)
{
  dw_chart chart = sample_chart (1, false);
  chart.has_range = true;
  chart.range = (dw_view){ 0.0, 0.5, -500.0, 1.0 };
  const dw_view v = dw_chart_whole_view (&chart);
  ck_assert (v.y_low == -500.0 && v.x_high == 1.0 && v.y_high > 1.0);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_band_is_part_of_the_data)
{
  dw_chart chart = sample_chart (1, false);
  dw_series *s = (dw_series *)(guintptr)chart.series[0];
  const size_t n = s->stroke[DW_COMPRESSION].n;
  double *high = g_new (double, n);
  for (size_t i = 0; i < n; i++)
    high[i] = 1000.0;
  dw_series_set_band (s, DW_COMPRESSION, high, high);
  ck_assert (dw_chart_whole_view (&chart).y_high >= 1000.0);
  chart.shows_band = false;
  ck_assert (dw_chart_whole_view (&chart).y_high < 1000.0);
  g_free (high);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (charts_are_the_same_while_nothing_of_them_differs)
{
  dw_chart a = sample_chart (2, false);
  dw_chart other = sample_chart (2, false);
  dw_chart b = a;
  b.series[0] = other.series[0];
  b.series[1] = other.series[1];
  ck_assert (dw_chart_same (&a, &b));
  b.strip_series = 0;
  ck_assert (!dw_chart_same (&a, &b));
  b = a;
  b.labels.speed[DW_AT_SHAFT] = "Speed";
  ck_assert (!dw_chart_same (&a, &b));
  b = a;
  b.n_series = 1;
  ck_assert (!dw_chart_same (&a, &b));
  b = a;
  b.series[1] = other.series[0];
  ck_assert (!dw_chart_same (&a, &b));
  sample_chart_clear (&other);
  sample_chart_clear (&a);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart");
  TCase *tcase = tcase_create ("chart");
  tcase_add_test (tcase, slots_differ_and_the_fitted_one_is_first);
  tcase_add_test (tcase, a_series_keeps_its_own_slot);
  tcase_add_test (tcase, at_the_wheel_speeds_and_forces_change);
  tcase_add_loop_test (tcase, the_whole_view_holds_all_and_is_round, 0, 3);
  tcase_add_test (tcase, rest_does_not_flatten_the_c_axis);
  tcase_add_test (tcase, an_empty_chart_has_a_view);
  tcase_add_test (tcase, a_view_is_made_to_lie_in_the_whole);
  tcase_add_test (tcase, a_range_widens_the_view);
  tcase_add_test (tcase, a_band_is_part_of_the_data);
  tcase_add_test (tcase, charts_are_the_same_while_nothing_of_them_differs);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
