/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-number.h"

#include <math.h>

#include "calc/dw-calc-error.h"
#include "test-support.h"

static const dw_calc_range mm = { 1e-3, 40e-3, -3, "mm" };
static const dw_calc_range pure = { -10.0, 10.0, 0, "" };

static const struct
{
  const char *text;
  double value; /* [m] NaN = refused */
} numbers[] = {
  { "1", 1e-3 },    { "40", 40e-3 },   { "7.6", 7.6e-3 },   { "1e1", 10e-3 }, { ".5e1", 5e-3 },
  { "0.999", NAN }, { "40.001", NAN }, { "", NAN },         { "x", NAN },     { "7,6", NAN },
  { "7.6mm", NAN }, { "0x10", NAN },   { "nan", NAN },      { "inf", NAN },   { "-5", NAN },
  { "1e999", NAN }, { "5 6", NAN },    { "infinity", NAN }, { "1e", NAN },
};

START_TEST (a_number_is_decimal_and_in_range)
{
  double value = -1.0;
  g_autoptr (GError) error = NULL;
  const gboolean good = dw_calc_number_parse ("--x", numbers[_i].text, &mm, &value, &error);
  if (!isnan (numbers[_i].value))
    ck_assert_msg (good && value == numbers[_i].value, "\"%s\": %.17g", numbers[_i].text, value);
  else
    {
      ck_assert_msg (!good && value == -1.0, "\"%s\" was taken", numbers[_i].text);
      ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_WRONG_USAGE);
      g_autofree char *message = g_strdup_printf ("--x needs a number from 1 to 40 mm, not \"%s\"",
                                                  numbers[_i].text);
      ck_assert_str_eq (error->message, message);
    }
}
END_TEST

START_TEST (a_range_without_unit_has_no_blank)
{
  double value = 0.0;
  g_autoptr (GError) error = NULL;
  ck_assert (!dw_calc_number_parse ("--x", "11", &pure, &value, &error));
  ck_assert_str_eq (error->message, "--x needs a number from -10 to 10, not \"11\"");
}
END_TEST

START_TEST (a_count_is_whole)
{
  static const char *const wrong[] = { "0", "6", "1.0", "1e0", "", "x", "-1", "99999999999" };
  int value = 0;
  ck_assert (dw_calc_count_parse ("--n", "1", 1, 5, &value, NULL) && value == 1);
  ck_assert (dw_calc_count_parse ("--n", "5", 1, 5, &value, NULL) && value == 5);
  for (int i = 0; i < N_ENTRIES (wrong); i++)
    ck_assert_msg (!dw_calc_count_parse ("--n", wrong[i], 1, 5, &value, NULL) && value == 5,
                   "\"%s\" was taken", wrong[i]);
}
END_TEST

static const struct
{
  const char *text;
  int n; /* -1 = refused */
  double values[6];
} lists[] = {
  { "1", 1, { 1.0 } },
  { "3,1,2", 3, { 3.0, 1.0, 2.0 } },
  { "0:1:0.25", 5, { 0.0, 0.25, 0.5, 0.75, 1.0 } },
  { "0.1:0.6:0.1", 6, { 0.1, 0.2, 0.3, 0.4, 0.5, 0.6 } },
  { "0:1:0.3", 4, { 0.0, 0.3, 0.6, 0.9 } },
  { "2:2:1", 1, { 2.0 } },
  { "-1:1:1,5", 4, { -1.0, 0.0, 1.0, 5.0 } },
  { "0:1:5", 1, { 0.0 } },
  { "", -1, { 0.0 } },
  { ",", -1, { 0.0 } },
  { "1,", -1, { 0.0 } },
  { ",1", -1, { 0.0 } },
  { "1,,2", -1, { 0.0 } },
  { "1;2", -1, { 0.0 } },
  { "0:1", -1, { 0.0 } },
  { "0:1:2:3", -1, { 0.0 } },
  { "0:1:0", -1, { 0.0 } },
  { "0:1:-1", -1, { 0.0 } },
  { "1:0:1", -1, { 0.0 } },
  { "0:11:1", -1, { 0.0 } },
  { "0:1:nan", -1, { 0.0 } },
  { "0:1:1e-300", -1, { 0.0 } },
  { "0:10:0.0001", -1, { 0.0 } },
};

START_TEST (a_list_is_commas_and_steps)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) values = dw_calc_numbers_parse ("--x", lists[_i].text, &pure, &error);
  if (lists[_i].n < 0)
    {
      ck_assert_msg (values == NULL && error != NULL, "\"%s\" was taken", lists[_i].text);
      return;
    }
  ck_assert_msg (values != NULL && values->len == (guint)lists[_i].n, "\"%s\"", lists[_i].text);
  for (guint i = 0; i < values->len; i++)
    ck_assert_msg (g_array_index (values, double, i) == lists[_i].values[i], "\"%s\", %u: %.17g",
                   lists[_i].text, i, g_array_index (values, double, i));
}
END_TEST

START_TEST (the_longest_list_has_as_many_as_allowed)
{
  g_autoptr (GArray) most = dw_calc_numbers_parse ("--x", "0.0001:10:0.0001", &pure, NULL);
  ck_assert (most != NULL && most->len == DW_CALC_MOST_NUMBERS);
  g_autoptr (GArray) more = dw_calc_numbers_parse ("--x", "0.0001:10:0.0001,1", &pure, NULL);
  ck_assert_ptr_null (more);
}
END_TEST

START_TEST (a_range_is_that_of_the_model)
{
  const dw_calc_range hub = dw_calc_range_of (DW_LIMIT_HUB, -3, "mm");
  ck_assert (hub.low == dw_limit_get (DW_LIMIT_HUB)->low);
  ck_assert (hub.high == dw_limit_get (DW_LIMIT_HUB)->high);
  ck_assert_int_eq (hub.power, -3);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-number");
  TCase *tc = tcase_create ("number");
  tcase_add_loop_test (tc, a_number_is_decimal_and_in_range, 0, N_ENTRIES (numbers));
  tcase_add_test (tc, a_range_without_unit_has_no_blank);
  tcase_add_test (tc, a_count_is_whole);
  tcase_add_loop_test (tc, a_list_is_commas_and_steps, 0, N_ENTRIES (lists));
  tcase_add_test (tc, the_longest_list_has_as_many_as_allowed);
  tcase_add_test (tc, a_range_is_that_of_the_model);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
