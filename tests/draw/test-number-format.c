/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw/dw-number-format.h"
#include "test-support.h"

typedef struct
{
  char how; /* f fixed, d digits, s steady */
  double value;
  int places;
  const char *expected;
  const char *why;
} row;

static const row rows[] = {
  { 'f', 0.05, 2, "0.05", "plain" },
  { 'f', -12.5, 1, "\u221212.5", "the typographic minus sign" },
  { 'f', -0.001, 2, "0.00", "what rounds to nothing has no sign" },
  { 'f', 3.0, 0, "3", "no point without decimals" },
  { 'f', 1e-9, 12, "0.000000001000", "most decimals" },
  { 'd', 0.21649, 2, "0.22", "rounded" },
  { 'd', 0.30004, 2, "0.3", "zeros that say nothing are left out" },
  { 'd', 1234.0, 3, "1234", "digits before the point are never cut" },
  { 'd', 9.996, 3, "10", "rounding makes one digit more" },
  { 'd', 0.0, 3, "0", "nothing" },
  { 's', 4.0, 3, "4.00", "zeros stay" },
  { 's', 9.996, 3, "10.0", "still three digits" },
  { 's', 153.4, 3, "153", "no decimals needed" },
};

START_TEST (numbers_are_written)
{
  const dw_number_format format = dw_number_format_defaults ();
  const row *r = &rows[_i];
  char text[DW_NUMBER_ROOM];
  if (r->how == 'f')
    dw_number_fixed (&format, r->value, r->places, text, sizeof text);
  else if (r->how == 'd')
    dw_number_digits (&format, r->value, r->places, text, sizeof text);
  else
    dw_number_steady (&format, r->value, r->places, text, sizeof text);
  ck_assert_msg (strcmp (text, r->expected) == 0, "%s, not %s: %s", text, r->expected, r->why);
}
END_TEST

START_TEST (what_is_no_number_is_said)
{
  const dw_number_format format = dw_number_format_defaults ();
  char text[DW_NUMBER_ROOM];
  dw_number_fixed (&format, (double)NAN, 2, text, sizeof text);
  ck_assert_str_eq (text, "-");
  dw_number_steady (&format, HUGE_VAL, 3, text, sizeof text);
  ck_assert_str_eq (text, "\u221e");
}
END_TEST

START_TEST (the_sign_is_the_formats_not_the_locales)
{
  const dw_number_format comma = { .decimal = ",", .minus = "-" };
  const dw_number_format point = dw_number_format_defaults ();
  char text[DW_NUMBER_ROOM];
  dw_number_fixed (&comma, -1234.5, 1, text, sizeof text);
  ck_assert_str_eq (text, "-1234,5");
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  dw_number_fixed (&point, 0.25, 2, text, sizeof text);
  ck_assert_str_eq (text, "0.25");
}
END_TEST

START_TEST (a_cut_text_is_whole_characters)
{
  const dw_number_format format = dw_number_format_defaults ();
  char text[3];
  dw_number_fixed (&format, -5.0, 0, text, sizeof text);
  ck_assert_str_eq (text, "");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/number-format");
  TCase *tcase = tcase_create ("number-format");
  tcase_add_loop_test (tcase, numbers_are_written, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, what_is_no_number_is_said);
  tcase_add_test (tcase, the_sign_is_the_formats_not_the_locales);
  tcase_add_test (tcase, a_cut_text_is_whole_characters);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
