/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "calc-run.h"
#include "model/dw-drill.h"

START_TEST (csv_is_the_whole_table)
{
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  test_table *table = calc_table ("drills --format csv");
  ck_assert_uint_eq (test_table_n_rows (table), n);
  for (size_t i = 0; i < n; i++)
    {
      ck_assert_str_eq (test_table_text (table, i, "series"),
                        dw_drill_series_name (drills[i].series));
      ck_assert_str_eq (test_table_text (table, i, "name"), drills[i].name);
      ck_assert (calc_field_is (table, i, "diameter_mm", -3, drills[i].diameter));
      ck_assert (
          calc_field_is (table, i, "hole_max_h11_mm", -3, dw_drill_hole_max (&drills[i], 11)));
      ck_assert (
          calc_field_is (table, i, "hole_max_h12_mm", -3, dw_drill_hole_max (&drills[i], 12)));
    }
  test_table_free (table);
}
END_TEST

static const struct
{
  const char *arguments;
  int n;
  const char *first;
  const char *last;
  const char *why;
} rows[] = {
  { "--from 1.3 --to 1.3", 1, "1.30", "1.30", "both ends belong to it" },
  { "--from 1.25 --to 1.35", 4, "1.25", "1.35", "with a number drill between" },
  { "--to 0.5", 5, "#80", "0.50", "from the smallest" },
  { "--from 100", 0, NULL, NULL, "larger than any" },
};

START_TEST (from_and_to_choose)
{
  test_table *table = calc_table ("drills %s --format csv", rows[_i].arguments);
  const size_t n = test_table_n_rows (table);
  ck_assert_msg (n == (size_t)rows[_i].n, "%zu rows: %s", n, rows[_i].why);
  if (n > 0)
    {
      ck_assert_str_eq (test_table_text (table, 0, "name"), rows[_i].first);
      ck_assert_str_eq (test_table_text (table, n - 1, "name"), rows[_i].last);
    }
  test_table_free (table);
}
END_TEST

/* H11 of a hole up to 3 mm is 0.060 mm, H12 0.100 mm (ISO 286-1, Table 1). */
START_TEST (a_hole_is_larger_than_its_drill)
{
  g_autofree char *csv = calc_output ("drills --from 1.25 --to 1.25 --format csv");
  g_autofree char *table = calc_output ("drills --from 1.3 --to 1.3");
  ck_assert_str_eq (csv, "diameter_mm,series,name,hole_max_h11_mm,hole_max_h12_mm\n"
                         "1.25,metric,1.25,1.31,1.35\n");
  ck_assert_ptr_nonnull (strstr (table, "1.36"));
}
END_TEST

START_TEST (no_drill_is_said)
{
  g_autofree char *text = calc_output ("drills --from 50");
  ck_assert_str_eq (text, "No drill is that size.\n");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-drills");
  TCase *tc = tcase_create ("drills");
  tcase_set_timeout (tc, 60);
  tcase_add_test (tc, csv_is_the_whole_table);
  tcase_add_loop_test (tc, from_and_to_choose, 0, N_ENTRIES (rows));
  tcase_add_test (tc, a_hole_is_larger_than_its_drill);
  tcase_add_test (tc, no_drill_is_said);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
