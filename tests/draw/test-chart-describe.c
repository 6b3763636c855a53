/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-chart-describe.h"

static const double speeds[] = { 0.05, 0.2, 1.0 };

START_TEST (the_words_name_setups_forces_and_onset)
{
  dw_chart chart = sample_chart (2, false);
  g_autofree char *text = dw_chart_describe (&chart, speeds, 3);
  char force[DW_NUMBER_ROOM];
  dw_force_point p;
  ck_assert_int_eq (dw_force_at (&chart.series[1]->model, DW_REBOUND, 0.2, &p, NULL), DW_OK);
  dw_number_digits (&chart.numbers, p.force, 3, force, sizeof force);
  g_autofree char *value = g_strconcat (force, " N at 0.2 m/s", NULL);
  ck_assert (g_str_has_prefix (text, "Sample. Force. Shaft speed from 0 to 1 m/s."));
  ck_assert (strstr (text, "As qualified (fitted): compression ") != NULL);
  ck_assert (strstr (text, "Rear quicker on rebound: compression ") != NULL);
  ck_assert_msg (strstr (text, value) != NULL, "%s in %s", value, text);
  ck_assert (strstr (text, "A void opens in compression from 0.") != NULL);
  ck_assert (g_str_has_suffix (text, " m/s."));
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (units_place_and_decimal_sign_are_the_charts)
{
  dw_chart chart = sample_chart (1, false);
  chart.place = DW_AT_WHEEL;
  chart.quantity = DW_SHOW_DAMPING;
  chart.units = dw_chart_units_inch ();
  g_strlcpy (chart.numbers.decimal, ",", sizeof chart.numbers.decimal);
  g_autofree char *text = dw_chart_describe (&chart, speeds, 3);
  ck_assert (strstr (text, "Damping c at the wheel. Wheel speed from") != NULL);
  ck_assert (strstr (text, "lbf s/in at 3,28 in/s") != NULL); /* 0.05/0.6/0.0254 */
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (speeds_without_a_value_are_left_out)
{
  const dw_series_point points[] = { { .speed = 0.1, .force = 2.0 },
                                     { .speed = 0.5, .force = 10.0 } };
  dw_series *series = dw_series_new ("measured");
  dw_series_set_points (series, DW_REBOUND, points, 2);
  dw_chart chart = dw_chart_defaults ();
  chart.series[0] = series;
  chart.n_series = 1;
  g_autofree char *text = dw_chart_describe (&chart, speeds, 3);
  ck_assert_ptr_nonnull (strstr (text, "measured: compression -; rebound 4 N at 0.2 m/s."));
  ck_assert (strstr (text, "void") == NULL);
  dw_series_free (series);
}
END_TEST

START_TEST (an_empty_chart_says_so)
{
  const dw_chart chart = dw_chart_defaults ();
  g_autofree char *text = dw_chart_describe (&chart, speeds, 3);
  ck_assert_str_eq (text, "No setup is drawn.");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-describe");
  TCase *tcase = tcase_create ("chart-describe");
  tcase_add_test (tcase, the_words_name_setups_forces_and_onset);
  tcase_add_test (tcase, units_place_and_decimal_sign_are_the_charts);
  tcase_add_test (tcase, speeds_without_a_value_are_left_out);
  tcase_add_test (tcase, an_empty_chart_says_so);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
