/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "sheet-samples.h"
#include "sheet/dw-chart-csv.h"

static test_table *
table_of (dw_chart_place place, GString *text)
{
  static const dw_series_point points[] = {
    { .speed = 0.0, .force = 0.5 },
    { .speed = 0.1, .force = 1.25, .shares = { 0.75, 0.125, 0.125 } },
    { .speed = 0.3, .force = 9.0, .lost_travel = 0.003, .is_void = true },
  };
  dw_series *series = dw_series_new ("x");
  dw_chart chart = dw_chart_defaults ();
  series->motion_ratio = 0.5;
  dw_series_set_points (series, DW_COMPRESSION, points, 3);
  chart.series[0] = series;
  chart.n_series = 1;
  chart.place = place;
  /* the axis that is drawn does not matter to the columns */
  chart.quantity = DW_SHOW_DAMPING;
  g_string_assign (text, dw_chart_csv_header);
  dw_chart_csv_add (&chart, 0, "trial-1", "rear", text);
  dw_series_free (series);
  return test_table_parse (text->str);
}

START_TEST (rows_have_force_c_and_shares)
{
  g_autoptr (GString) text = g_string_new (NULL);
  test_table *table = table_of (DW_AT_SHAFT, text);
  ck_assert_uint_eq (test_table_n_rows (table), 3);
  ck_assert_str_eq (test_table_text (table, 1, "setup"), "trial-1");
  ck_assert_str_eq (test_table_text (table, 1, "axle"), "rear");
  ck_assert_str_eq (test_table_text (table, 1, "stroke"), "compression");
  ck_assert_str_eq (test_table_text (table, 1, "place"), "shaft");
  ck_assert (test_table_number (table, 1, "speed_m_s") == 0.1);
  ck_assert (test_table_number (table, 1, "force_n") == 1.25);
  ck_assert (test_table_number (table, 1, "c_n_s_m") == 12.5);
  ck_assert (test_table_number (table, 1, "covered_share") == 0.125);
  ck_assert (test_table_number (table, 2, "void") == 1.0);
  ck_assert (test_table_number (table, 2, "lost_travel_m") == 0.003);
  ck_assert_str_eq (test_table_text (table, 0, "c_n_s_m"), "");
  test_table_free (table);
}
END_TEST

START_TEST (at_the_wheel_they_are_the_wheels)
{
  g_autoptr (GString) text = g_string_new (NULL);
  test_table *table = table_of (DW_AT_WHEEL, text);
  ck_assert_str_eq (test_table_text (table, 1, "place"), "wheel");
  ck_assert (test_table_number (table, 1, "speed_m_s") == 0.2);
  ck_assert (test_table_number (table, 1, "force_n") == 0.625);
  ck_assert (test_table_number (table, 2, "lost_travel_m") == 0.006);
  test_table_free (table);
}
END_TEST

START_TEST (a_comma_locale_changes_nothing)
{
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  g_autoptr (GString) text = g_string_new (NULL);
  test_table_free (table_of (DW_AT_SHAFT, text));
  ck_assert_ptr_nonnull (strstr (text->str, "\ntrial-1,rear,compression,shaft,0.1,1.25,12.5,"));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/chart-csv");
  TCase *tcase = tcase_create ("chart-csv");
  tcase_add_test (tcase, rows_have_force_c_and_shares);
  tcase_add_test (tcase, at_the_wheel_they_are_the_wheels);
  tcase_add_test (tcase, a_comma_locale_changes_nothing);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
