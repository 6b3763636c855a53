/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A tolerance that never fails or a table read wrongly would make every other test worthless. */
#include "test-support.h"

#include <locale.h>
#include <math.h>
#include <stdlib.h>

static const struct
{
  const char *why;
  double actual, expected, rel, abs;
} close_pairs[] = {
  { "equal", 1.5, 1.5, 0.0, 0.0 },
  { "inside the relative tolerance", 101.0, 100.0, 0.01, 0.0 },
  { "inside the absolute tolerance", 1e-9, 0.0, 0.01, 1e-9 },
  { "the larger of the two counts", 100.5, 100.0, 1e-9, 0.5 },
  { "equal infinities", INFINITY, INFINITY, 0.0, 0.0 },
};

static const struct
{
  const char *why;
  double actual, expected, rel, abs;
} far_pairs[] = {
  { "outside both", 101.1, 100.0, 0.01, 1e-9 },
  { "nothing is close to zero relatively", 1e-12, 0.0, 0.5, 0.0 },
  { "NaN is not a number's neighbour", NAN, 1.0, 1.0, 1.0 },
  { "nor is a number NaN's", 1.0, NAN, 1.0, 1.0 },
  { "NaN is not NaN", NAN, NAN, 1.0, 1.0 },
  { "opposite infinities", INFINITY, -INFINITY, 0.5, 1.0 },
};

START_TEST (close_numbers_pass)
{
  assert_close (close_pairs[_i].actual, close_pairs[_i].expected, close_pairs[_i].rel,
                close_pairs[_i].abs, close_pairs[_i].why);
}
END_TEST

START_TEST (far_numbers_fail)
{
  assert_close (far_pairs[_i].actual, far_pairs[_i].expected, far_pairs[_i].rel, far_pairs[_i].abs,
                far_pairs[_i].why);
}
END_TEST

START_TEST (random_numbers_are_splitmix64)
{
  /* First outputs for state 0, as published with the generator. */
  test_random random = { 0 };
  ck_assert (test_random_next (&random) == UINT64_C (0xe220a8397b1dcdaf));
  ck_assert (test_random_next (&random) == UINT64_C (0x6e789e6aa1b965f4));
  ck_assert (test_random_next (&random) == UINT64_C (0x06c45d188009454f));
}
END_TEST

START_TEST (random_numbers_stay_in_range)
{
  test_random random = test_random_new (7);
  double sum = 0.0;
  for (int i = 0; i < 10000; i++)
    {
      const double x = test_random_uniform (&random, -2.0, 3.0);
      ck_assert (x >= -2.0 && x < 3.0);
      sum += x;
      const double y = test_random_log_uniform (&random, 1e-6, 1e3);
      ck_assert (y >= 1e-6 && y < 1e3);
      const int n = test_random_int (&random, -1, 1);
      ck_assert (n >= -1 && n <= 1);
    }
  assert_close (sum / 10000.0, 0.5, 0.0, 0.08, "mean of 10000; 5.5 sigma of 5/sqrt(12)/100");
}
END_TEST

START_TEST (a_seed_and_a_salt_choose_the_numbers)
{
  setenv ("DW_SEED", "42", 1);
  test_random a = test_random_new (1), b = test_random_new (1), c = test_random_new (2);
  setenv ("DW_SEED", "43", 1);
  test_random d = test_random_new (1);
  const uint64_t first = test_random_next (&a);
  ck_assert (first == test_random_next (&b));
  ck_assert (first != test_random_next (&c));
  ck_assert (first != test_random_next (&d));
}
END_TEST

START_TEST (a_table_keeps_quoted_fields)
{
  test_table *table = test_table_parse ("# where it is from\n"
                                        "name,\"size, mm\",note\r\n"
                                        "\"a \"\"b\"\"\",1.25,\n"
                                        "\n"
                                        "c,-3e-2,\"two\nlines\"");
  ck_assert_uint_eq (test_table_n_rows (table), 2);
  ck_assert_str_eq (test_table_text (table, 0, "name"), "a \"b\"");
  ck_assert_str_eq (test_table_text (table, 0, "note"), "");
  ck_assert_str_eq (test_table_text (table, 1, "note"), "two\nlines");
  ck_assert (test_table_number (table, 0, "size, mm") == 1.25);
  ck_assert (test_table_number (table, 1, "size, mm") == -3e-2);
  test_table_free (table);
}
END_TEST

START_TEST (a_number_has_a_point_in_every_locale)
{
  if (test_use_locale ("de_DE.UTF-8"))
    ck_assert_str_eq (localeconv ()->decimal_point, ",");
  test_table *table = test_table_parse ("x\n0.5\n");
  ck_assert (test_table_number (table, 0, "x") == 0.5);
  test_table_free (table);
}
END_TEST

static const char *const broken_tables[] = {
  "a,b\n1\n",    /* too few fields */
  "a\n\"1\n",    /* quote without end */
  "a\n\"1\"2\n", /* text behind the quote */
};

START_TEST (a_broken_table_ends_the_test)
{
  test_table_free (test_table_parse (broken_tables[_i]));
}
END_TEST

START_TEST (an_unknown_column_ends_the_test)
{
  test_table *table = test_table_parse ("a\n1\n");
  test_table_text (table, 0, "b");
}
END_TEST

START_TEST (text_is_no_number)
{
  test_table *table = test_table_parse ("a\n1,5\n");
  test_table_number (table, 0, "a");
}
END_TEST

START_TEST (a_missing_file_ends_the_test)
{
  test_table_read ("no-such-table.csv");
}
END_TEST

START_TEST (a_missing_locale_ends_the_test_where_it_is_required)
{
  setenv ("DW_REQUIRE_LOCALES", "1", 1);
  test_use_locale ("xx_XX.UTF-8");
}
END_TEST

static Suite *
make_suite (void)
{
  Suite *suite = suite_create ("support");

  TCase *good = tcase_create ("good");
  tcase_add_loop_test (good, close_numbers_pass, 0, N_ENTRIES (close_pairs));
  tcase_add_test (good, random_numbers_are_splitmix64);
  tcase_add_test (good, random_numbers_stay_in_range);
  tcase_add_test (good, a_seed_and_a_salt_choose_the_numbers);
  tcase_add_test (good, a_table_keeps_quoted_fields);
  tcase_add_test (good, a_number_has_a_point_in_every_locale);
  suite_add_tcase (suite, good);
  return suite;
}

/* Every one of these must fail. Run apart, silently, and counted. */
static int
count_failures (int *n_run)
{
  Suite *suite = suite_create ("support, tests that must fail");
  TCase *bad = tcase_create ("bad");
  tcase_add_loop_test (bad, far_numbers_fail, 0, N_ENTRIES (far_pairs));
  tcase_add_loop_test (bad, a_broken_table_ends_the_test, 0, N_ENTRIES (broken_tables));
  tcase_add_test (bad, an_unknown_column_ends_the_test);
  tcase_add_test (bad, text_is_no_number);
  tcase_add_test (bad, a_missing_file_ends_the_test);
  tcase_add_test (bad, a_missing_locale_ends_the_test_where_it_is_required);
  suite_add_tcase (suite, bad);

  SRunner *runner = srunner_create (suite);
  srunner_run_all (runner, CK_SILENT);
  const int n_failed = srunner_ntests_failed (runner);
  *n_run = srunner_ntests_run (runner);
  if (n_failed != *n_run)
    srunner_print (runner, CK_VERBOSE);
  srunner_free (runner);
  return n_failed;
}

int
main (void)
{
  int n_run = 0;
  const int n_failed = count_failures (&n_run);
  const int result = run_suite (make_suite ());
  return n_failed == n_run && n_run == 13 ? result : EXIT_FAILURE;
}
