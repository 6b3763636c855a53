/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-error.h"

#include "test-support.h"

START_TEST (wrong_usage_tells_where_to_look)
{
  g_autoptr (GError) error = NULL;
  ck_assert (!dw_calc_misused (&error, "--axle needs %s", "front"));
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_WRONG_USAGE);
  g_autofree char *of_command = dw_calc_error_to_text (error, "force");
  g_autofree char *of_program = dw_calc_error_to_text (error, NULL);
  ck_assert_str_eq (of_command, "dampcalc force: --axle needs front; see dampcalc force --help\n");
  ck_assert_str_eq (of_program, "dampcalc: --axle needs front; see dampcalc --help\n");
}
END_TEST

START_TEST (bad_input_is_printed_as_it_is)
{
  g_autoptr (GError) error = NULL;
  ck_assert (!dw_calc_refused (&error, "a.dampwright:%d: wrong\na.dampwright:9: worse", 5));
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_BAD_INPUT);
  g_autofree char *text = dw_calc_error_to_text (error, "force");
  ck_assert_str_eq (text, "a.dampwright:5: wrong\na.dampwright:9: worse\n");
}
END_TEST

START_TEST (any_other_error_is_one_of_reading_or_writing)
{
  g_autoptr (GError) error = g_error_new_literal (G_FILE_ERROR, G_FILE_ERROR_NOENT,
                                                  "cannot open x\ny");
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_IO);
  g_autofree char *text = dw_calc_error_to_text (error, "force");
  ck_assert_str_eq (text, "dampcalc force: cannot open x\xEF\xBF\xBDy\n");
}
END_TEST

static const struct
{
  const char *text;
  const char *shown;
} printable[] = {
  { "plain", "plain" },
  { "Gr\xC3\xBC\xC3\x9F"
    "e",
    "Gr\xC3\xBC\xC3\x9F"
    "e" },
  { "a\nb\tc", "a\xEF\xBF\xBD"
               "b\xEF\xBF\xBD"
               "c" },
  { "\033[1m", "\xEF\xBF\xBD[1m" },
  { "\xFF", "\xEF\xBF\xBD" },
  { "", "" },
};

START_TEST (what_a_terminal_would_obey_is_replaced)
{
  g_autofree char *shown = dw_calc_printable (printable[_i].text);
  ck_assert_str_eq (shown, printable[_i].shown);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-error");
  TCase *tc = tcase_create ("error");
  tcase_add_test (tc, wrong_usage_tells_where_to_look);
  tcase_add_test (tc, bad_input_is_printed_as_it_is);
  tcase_add_test (tc, any_other_error_is_one_of_reading_or_writing);
  tcase_add_loop_test (tc, what_a_terminal_would_obey_is_replaced, 0, N_ENTRIES (printable));
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
