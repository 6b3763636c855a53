/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-drill.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "test-support.h"

/* [m] Sums and differences of two numbers of 1e-3 m round at 4e-19 m; no gauge sees 1e-15 m. */
static const double rounding = 1e-15;

/* The drill of a name; the test ends when there is none. */
static const dw_drill_size *
drill_named (const char *name)
{
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  for (size_t i = 0; i < n; i++)
    if (strcmp (drills[i].name, name) == 0)
      return &drills[i];
  ck_abort_msg ("no drill %s", name);
  return NULL;
}

/* strtod rounds to the nearest double, as the C library promises: "1.30" -> 1.30e-3. */
static double
metres (const char *mm)
{
  char text[32];
  snprintf (text, sizeof text, "%se-3", mm);
  return strtod (text, NULL);
}

START_TEST (the_table_rises_and_names_are_unique)
{
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  ck_assert_uint_eq (n, 61 + 51);
  for (size_t i = 0; i < n; i++)
    {
      ck_assert (drills[i].series == DW_DRILL_METRIC || drills[i].series == DW_DRILL_NUMBER);
      ck_assert (i == 0 || drills[i].diameter > drills[i - 1].diameter + DW_DRILL_SAME);
      ck_assert_ptr_eq (drill_named (drills[i].name), &drills[i]);
    }
}
END_TEST

START_TEST (metric_drills_are_the_reference_tables)
{
  test_table *table = test_table_read ("drills_metric.csv");
  ck_assert_uint_eq (test_table_n_rows (table), 61);
  for (size_t row = 0; row < test_table_n_rows (table); row++)
    {
      const char *mm = test_table_text (table, row, "d_mm");
      const dw_drill_size *drill = drill_named (mm);
      ck_assert_int_eq (drill->series, DW_DRILL_METRIC);
      ck_assert_msg (drill->diameter == metres (mm), "%s mm is %.17g m", mm, drill->diameter);
      assert_close (dw_drill_min (drill),
                    drill->diameter + 1e-3 * test_table_number (table, row, "h8_lower_mm"), 0.0,
                    rounding, mm);
      assert_close (dw_drill_hole_max (drill, 11),
                    1e-3 * test_table_number (table, row, "H11_hole_max_mm"), 0.0, rounding, mm);
      assert_close (dw_drill_hole_max (drill, 12),
                    1e-3 * test_table_number (table, row, "H12_hole_max_mm"), 0.0, rounding, mm);
      assert_close (dw_drill_hole_max (drill, 13),
                    1e-3 * test_table_number (table, row, "H13_hole_max_mm"), 0.0, rounding, mm);
    }
  test_table_free (table);
}
END_TEST

START_TEST (number_drills_are_the_reference_tables)
{
  test_table *table = test_table_read ("drills_number.csv");
  ck_assert_uint_eq (test_table_n_rows (table), 51);
  for (size_t row = 0; row < test_table_n_rows (table); row++)
    {
      char name[16];
      snprintf (name, sizeof name, "#%s", test_table_text (table, row, "number"));
      const dw_drill_size *drill = drill_named (name);
      const char *mm = test_table_text (table, row, "d_mm");
      ck_assert_int_eq (drill->series, DW_DRILL_NUMBER);
      ck_assert_msg (drill->diameter == metres (mm), "%s is %.17g m", name, drill->diameter);
      assert_close (drill->diameter, 25.4e-3 * test_table_number (table, row, "d_inch"), 0.0,
                    0.0501e-6, "millimetres are printed to 0.1 um");
    }
  test_table_free (table);
}
END_TEST

/* The rule of the series, written down apart from the table. */
START_TEST (metric_drills_follow_the_series_rule)
{
  static const int steps_below_1mm[] = { 0, 2, 5, 8 };
  static const int steps_from_1mm[] = { 0, 5 };
  int n = 0;
  for (int tenths = 5; tenths < 30; tenths++)
    {
      const int *steps = tenths < 10 ? steps_below_1mm : steps_from_1mm;
      const int n_steps = tenths < 10 ? 4 : 2;
      for (int i = 0; i < n_steps; i++, n++)
        {
          const int hundredths = 10 * tenths + steps[i];
          char name[16];
          snprintf (name, sizeof name, "%d.%02d", hundredths / 100, hundredths % 100);
          assert_close (drill_named (name)->diameter, 1e-5 * hundredths, 0.0, rounding, name);
        }
    }
  ck_assert_int_eq (n + 1, 61);
  assert_close (drill_named ("3.00")->diameter, 3e-3, 0.0, rounding, "the last one");
}
END_TEST

START_TEST (tolerances_are_the_reference_tables)
{
  test_table *table = test_table_read ("tolerances.csv");
  int n = 0;
  for (size_t row = 0; row < test_table_n_rows (table); row++)
    {
      const char *item = test_table_text (table, row, "item");
      if (strncmp (item, "IT", 2) != 0)
        continue;
      const int grade = atoi (item + 2);
      const bool small = strcmp (test_table_text (table, row, "size_range"), "0<d<=3 mm") == 0;
      const double it = 1e-6 * test_table_number (table, row, "value");
      const double inside[] = { small ? 1e-9 : nextafter (3e-3, 1.0), small ? 3e-3 : 6e-3 };
      ck_assert_str_eq (test_table_text (table, row, "unit"), "um");
      for (int i = 0; i < N_ENTRIES (inside); i++)
        assert_close (dw_tolerance_it (grade, inside[i]), it, 1e-15, 0.0, item);
      n++;
    }
  ck_assert_int_eq (n, 12);
  test_table_free (table);
}
END_TEST

static const struct
{
  const char *why;
  int grade;
  double size;
} unknown_tolerances[] = {
  { "grade below the table", 5, 1e-3 },
  { "grade above the table", 14, 1e-3 },
  { "no size", 8, 0.0 },
  { "negative size", 8, -1e-3 },
  { "size above the bands", 8, 6.001e-3 },
  { "size is not a number", 8, NAN },
  { "infinite size", 8, INFINITY },
  { "grade not looked up above 3 mm", 6, 4e-3 },
  { "grade not looked up above 3 mm", 7, 4e-3 },
  { "grade not looked up above 3 mm", 9, 4e-3 },
  { "grade not looked up above 3 mm", 10, 4e-3 },
};

START_TEST (an_unknown_tolerance_is_nan)
{
  ck_assert_msg (
      isnan (dw_tolerance_it (unknown_tolerances[_i].grade, unknown_tolerances[_i].size)), "%s",
      unknown_tolerances[_i].why);
}
END_TEST

START_TEST (every_drill_has_its_limits)
{
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  for (size_t i = 0; i < n; i++)
    {
      ck_assert (dw_drill_min (&drills[i]) < drills[i].diameter);
      ck_assert (dw_drill_hole_max (&drills[i], 11) > drills[i].diameter);
      ck_assert (dw_drill_hole_max (&drills[i], 12) > dw_drill_hole_max (&drills[i], 11));
      ck_assert (dw_drill_hole_max (&drills[i], 13) > dw_drill_hole_max (&drills[i], 12));
    }
}
END_TEST

static const struct
{
  const char *why;
  double diameter;
  const char *next, *nearest; /* next NULL: none */
} searches[] = {
  { "below all", 0.0, "#80", "#80" },
  { "negative", -1.0, "#80", "#80" },
  { "on a drill the next is the one after it", 1.30e-3, "#55", "1.30" },
  { "a conversion's rounding does not give the drill again", 1.3 * 1e-3, "#55", "1.30" },
  { "nor does one that falls short", 1.30e-3 - 1e-15, "#55", "1.30" },
  { "between two drills", 1.33e-3, "1.35", "#55" },
  { "nearer to the larger", 1.34e-3, "1.35", "1.35" },
  { "half way the smaller", 1.225e-3, "1.25", "1.20" },
  { "just above a drill", 1.301e-3, "#55", "1.30" },
  { "metric list's end goes on in number drills", 3.00e-3, "#31", "3.00" },
  { "on the largest there is none", 3.2639e-3, NULL, "#30" },
  { "above all", 1.0, NULL, "#30" },
};

START_TEST (a_search_finds_the_drill)
{
  const dw_drill_size *next = dw_drill_next (searches[_i].diameter);
  ck_assert_pstr_eq (next == NULL ? NULL : next->name, searches[_i].next);
  ck_assert_str_eq (dw_drill_nearest (searches[_i].diameter)->name, searches[_i].nearest);
}
END_TEST

/* Against a search that looks at every drill, over random diameters. */
START_TEST (searches_agree_with_the_definition)
{
  test_random random = test_random_new (11);
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  for (int k = 0; k < 2000; k++)
    {
      const double d = test_random_uniform (&random, 0.2e-3, 3.5e-3);
      const dw_drill_size *next = dw_drill_next (d);
      const dw_drill_size *nearest = dw_drill_nearest (d);
      ck_assert (next == NULL || next->diameter > d);
      for (size_t i = 0; i < n; i++)
        {
          if (drills[i].diameter > d + DW_DRILL_SAME)
            ck_assert_msg (next != NULL && next->diameter <= drills[i].diameter,
                           "%.17g m (DW_SEED=%llu)", d, (unsigned long long)test_seed ());
          ck_assert_msg (fabs (nearest->diameter - d)
                             <= fabs (drills[i].diameter - d) + DW_DRILL_SAME,
                         "%.17g m (DW_SEED=%llu)", d, (unsigned long long)test_seed ());
        }
    }
}
END_TEST

START_TEST (series_have_names)
{
  ck_assert_str_eq (dw_drill_series_name (DW_DRILL_METRIC), "metric");
  ck_assert_str_eq (dw_drill_series_name (DW_DRILL_NUMBER), "number");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("model/drill");

  TCase *table = tcase_create ("table");
  tcase_add_test (table, the_table_rises_and_names_are_unique);
  tcase_add_test (table, metric_drills_are_the_reference_tables);
  tcase_add_test (table, number_drills_are_the_reference_tables);
  tcase_add_test (table, metric_drills_follow_the_series_rule);
  tcase_add_test (table, series_have_names);
  suite_add_tcase (suite, table);

  TCase *tolerance = tcase_create ("tolerance");
  tcase_add_test (tolerance, tolerances_are_the_reference_tables);
  tcase_add_loop_test (tolerance, an_unknown_tolerance_is_nan, 0, N_ENTRIES (unknown_tolerances));
  tcase_add_test (tolerance, every_drill_has_its_limits);
  suite_add_tcase (suite, tolerance);

  TCase *search = tcase_create ("search");
  tcase_add_loop_test (search, a_search_finds_the_drill, 0, N_ENTRIES (searches));
  tcase_add_test (search, searches_agree_with_the_definition);
  suite_add_tcase (suite, search);

  return run_suite (suite);
}
