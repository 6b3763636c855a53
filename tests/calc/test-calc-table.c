/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-table.h"

#include <math.h>
#include <stdlib.h>

#include "test-support.h"

static const dw_calc_column columns[] = {
  { "name", "", true }, { "force", "N", false }, { "c", "N s/m", false }, { NULL, NULL, false }
};

static char *
printed (const dw_calc_table *table, int indent)
{
  char *bytes = NULL;
  size_t n = 0;
  FILE *file = open_memstream (&bytes, &n);
  ck_assert_ptr_nonnull (file);
  dw_calc_table_print (table, file, indent);
  fclose (file);
  return bytes;
}

START_TEST (points_stand_under_each_other)
{
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  dw_calc_table_add (table, "low");
  dw_calc_table_add_figure (table, 4.369);
  dw_calc_table_add_figure (table, 87.4);
  dw_calc_table_add (table, "middle");
  dw_calc_table_add_figure (table, 211.4);
  dw_calc_table_add_figure (table, (double)NAN);
  dw_calc_table_add (table, "gr\xC3\xB6\xC3\x9F"
                            "er");
  dw_calc_table_add_plain (table, -0.5);
  dw_calc_table_add_figure (table, 1e-9);
  ck_assert_uint_eq (dw_calc_table_get_n_rows (table), 3);
  char *text = printed (table, 2);
  ck_assert_str_eq (text, "  name     force        c\n"
                          "               N    N s/m\n"
                          "  low       4.37     87.4\n"
                          "  middle  211         -\n"
                          "  gr\xC3\xB6\xC3\x9F"
                          "er   -0.5   1e-09\n");
  free (text);
}
END_TEST

START_TEST (a_table_without_rows_is_its_head)
{
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  char *text = printed (table, 0);
  ck_assert_str_eq (text, "name  force      c\n          N  N s/m\n");
  ck_assert_uint_eq (dw_calc_table_get_n_rows (table), 0);
  free (text);
}
END_TEST

START_TEST (a_row_that_is_begun_is_printed)
{
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  dw_calc_table_add (table, "low");
  ck_assert_uint_eq (dw_calc_table_get_n_rows (table), 1);
  char *text = printed (table, 0);
  ck_assert_str_eq (text, "name  force      c\n          N  N s/m\nlow\n");
  free (text);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-table");
  TCase *tc = tcase_create ("table");
  tcase_add_test (tc, points_stand_under_each_other);
  tcase_add_test (tc, a_table_without_rows_is_its_head);
  tcase_add_test (tc, a_row_that_is_begun_is_printed);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
