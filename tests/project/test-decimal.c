/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-decimal.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "test-support.h"

static const struct
{
  const char *text;
  int power;
  double value;
  const char *why;
} readings[] = {
  { "1.25", -3, 1.25e-3, "the usual case" },
  { "0.1", -3, 0.1e-3, "0.1 * 0.001 rounds to another double" },
  { "450", -6, 450e-6, "no point" },
  { "4.0", 9, 4.0e9, "up instead of down" },
  { "0.58", 3, 580.0, "a point that moves into the digits" },
  { "-25", 0, -25.0, "negative" },
  { "+3.5", -3, 3.5e-3, "a plus" },
  { ".5", -3, 0.5e-3, "nothing before the point" },
  { "5.", -3, 5e-3, "nothing after the point" },
  { "1.5e2", -3, 0.15, "an exponent of its own" },
  { "1.5E-2", -3, 1.5e-5, "and a negative one" },
  { " 2.5\n", -3, 2.5e-3, "blanks around, as the schema allows" },
  { "000.50", -3, 0.5e-3, "zeros that say nothing" },
  { "-0", -3, 0.0, "minus zero is zero" },
  { "1e999", 0, INFINITY, "too large" },
  { "1e999999999999999999999", -3, INFINITY, "an exponent that fits no int" },
  { "1e-999999999999999999999", 3, 0.0, "nor downwards" },
  { "40.00000000000000000000000000001", -3, 40e-3, "more digits than a double has" },
};

START_TEST (a_text_is_read_as_the_nearest_double)
{
  double value = -1.0;
  ck_assert_msg (dw_decimal_parse (readings[_i].text, readings[_i].power, &value)
                     && value == readings[_i].value,
                 "\"%s\" gives %.17g: %s", readings[_i].text, value, readings[_i].why);
  ck_assert_msg (value != 0.0 || !signbit (value), "\"%s\" gives minus zero", readings[_i].text);
}
END_TEST

static const char *const refused[] = { "",      " ",    "-",     "+",    ".",
                                       "e5",    "5e",   "5e+",   "1,5",  "1.5.0",
                                       "1 5",   "0x10", "inf",   "-inf", "nan",
                                       "NaN",   "INF",  "5mm",   "--5",  "5-",
                                       "5e1.5", "1_0",  "1'000", "1e 5", "\xC2\xA0\x35",
                                       "five",  "1.5f", "5%",    "1/2" };

START_TEST (anything_else_is_no_number)
{
  double value = 123.0;
  ck_assert_msg (!dw_decimal_parse (refused[_i], -3, &value), "\"%s\" was taken", refused[_i]);
  ck_assert_msg (value == 123.0, "\"%s\" changed the value", refused[_i]);
}
END_TEST

START_TEST (whole_numbers_are_digits_only)
{
  int value = 7;
  ck_assert (dw_decimal_parse_int ("64", &value) && value == 64);
  ck_assert (dw_decimal_parse_int (" -3 ", &value) && value == -3);
  ck_assert (dw_decimal_parse_int ("+007", &value) && value == 7);
  static const char *const wrong[] = {
    "", " ", "1.0", "1e3", "4x", "0x4", "-", "four", "2147483648", "1 2", "99999999999999999999"
  };
  for (int i = 0; i < N_ENTRIES (wrong); i++)
    ck_assert_msg (!dw_decimal_parse_int (wrong[i], &value) && value == 7, "\"%s\" was taken",
                   wrong[i]);
}
END_TEST

static const struct
{
  double value;
  int power;
  const char *text;
} writings[] = {
  { 1.25e-3, -3, "1.25" },
  { 0.1e-3, -3, "0.1" },
  { 450e-6, -6, "450" },
  { 4.0e9, 9, "4" },
  { 580.0, 3, "0.58" },
  { -25.0, 0, "-25" },
  { 0.0, -3, "0" },
  { -0.0, -3, "0" },
  { 101.325e3, 3, "101.325" },
  { 1e-10, -3, "0.0000001" },
  { 1e-11, -3, "1e-8" },
  { 1.5e-11, -3, "1.5e-8" },
  { 1e16, 0, "10000000000000000" },
  { 1e17, 0, "1e17" },
  { 0.1 + 0.2, 0, "0.30000000000000004" },
  { 12345.678, 0, "12345.678" },
  { 5e-324, 0, "5e-324" },
  { NAN, 0, "nan" },
  { INFINITY, 0, "inf" },
};

START_TEST (a_double_is_written_in_the_fewest_digits)
{
  char buffer[DW_DECIMAL_SIZE];
  ck_assert_str_eq (dw_decimal_format (writings[_i].value, writings[_i].power, buffer),
                    writings[_i].text);
}
END_TEST

static const int powers[] = { -6, -3, 0, 3, 6, 9 };

/* A finite double of any bit pattern. */
static double
any_double (test_random *random)
{
  for (;;)
    {
      const uint64_t bits = test_random_next (random);
      double value = 0.0;
      memcpy (&value, &bits, sizeof value);
      if (isfinite (value) && fabs (value) < 1e290)
        return value;
    }
}

START_TEST (every_double_comes_back_to_the_last_bit)
{
  const int power = powers[_i];
  test_random random = test_random_new ((uint64_t)_i);
  for (int n = 0; n < 5000; n++)
    {
      const double value = n % 2 == 0
                               ? any_double (&random)
                               : test_random_log_uniform (&random, 1e-7, 1e3) * pow (10.0, power);
      char buffer[DW_DECIMAL_SIZE];
      double again = -1.0;
      ck_assert (dw_decimal_parse (dw_decimal_format (value, power, buffer), power, &again));
      ck_assert_msg (value == again, "%.17g is written \"%s\" and read as %.17g (DW_SEED=%llu)",
                     value, buffer, again, (unsigned long long)test_seed ());
    }
}
END_TEST

START_TEST (a_short_text_comes_back_as_it_was)
{
  test_random random = test_random_new (77);
  for (int n = 0; n < 5000; n++)
    {
      char text[DW_DECIMAL_SIZE];
      char buffer[DW_DECIMAL_SIZE];
      const int thousandths = test_random_int (&random, 0, 999);
      snprintf (text, sizeof text, "%d.%03d", test_random_int (&random, 0, 99999), thousandths);
      for (size_t last = strlen (text) - 1; text[last] == '0' || text[last] == '.'; last--)
        {
          const bool point = text[last] == '.';
          text[last] = '\0';
          if (point)
            break;
        }
      for (int i = 0; i < N_ENTRIES (powers); i++)
        {
          double value = -1.0;
          ck_assert (dw_decimal_parse (text, powers[i], &value));
          ck_assert_str_eq (dw_decimal_format (value, powers[i], buffer), text);
        }
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-decimal");
  TCase *tc = tcase_create ("decimal");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, a_text_is_read_as_the_nearest_double, 0, N_ENTRIES (readings));
  tcase_add_loop_test (tc, anything_else_is_no_number, 0, N_ENTRIES (refused));
  tcase_add_test (tc, whole_numbers_are_digits_only);
  tcase_add_loop_test (tc, a_double_is_written_in_the_fewest_digits, 0, N_ENTRIES (writings));
  tcase_add_loop_test (tc, every_double_comes_back_to_the_last_bit, 0, N_ENTRIES (powers));
  tcase_add_test (tc, a_short_text_comes_back_as_it_was);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
