/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <math.h>
#include <string.h>

#include "test-support.h"
#include "sheet/dw-quantity.h"

static const struct
{
  dw_quantity quantity;
  dw_units units;
  const char *text;
  double value;
} good[] = {
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "1.3", 1.3e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "1,3", 1.3e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, " 1.3 mm ", 1.3e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "1.3mm", 1.3e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, ",5", 0.5e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "0.051 in", 0.051 * 0.0254 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "4 thou", 4.0 * 0.0000254 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "250 µm", 250e-6 },
  { DW_QUANTITY_LENGTH, DW_UNITS_INCH, "0.051", 0.051 * 0.0254 },
  { DW_QUANTITY_LENGTH, DW_UNITS_INCH, "1.3 mm", 1.3e-3 },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, "1.3 MM", 1.3e-3 },
  { DW_QUANTITY_TEMPERATURE, DW_UNITS_METRIC, "-5", -5.0 },
  { DW_QUANTITY_TEMPERATURE, DW_UNITS_METRIC, "77 F", 25.0 },
  { DW_QUANTITY_TEMPERATURE, DW_UNITS_FAHRENHEIT, "77", 25.0 },
  { DW_QUANTITY_RATE, DW_UNITS_METRIC, "0.58", 580.0 },
  { DW_QUANTITY_RATE, DW_UNITS_LBF_PER_INCH, "3.5", 3.5 * 175.12683524647636 },
  { DW_QUANTITY_PRESSURE, DW_UNITS_METRIC, "1 bar", 1e5 },
  { DW_QUANTITY_PRESSURE, DW_UNITS_METRIC, "14.7 psi", 14.7 * 6894.757293168361 },
  { DW_QUANTITY_VISCOSITY, DW_UNITS_METRIC, "475", 475e-6 },
  { DW_QUANTITY_MODULUS, DW_UNITS_METRIC, "4", 4e9 },
  { DW_QUANTITY_MASS, DW_UNITS_METRIC, "550 g", 0.55 },
  { DW_QUANTITY_NUMBER, DW_UNITS_METRIC, "62 %", 0.62 },
  { DW_QUANTITY_NUMBER, DW_UNITS_METRIC, "1e-2", 0.01 },
};

static const struct
{
  dw_quantity quantity;
  const char *text;
} bad[] = {
  { DW_QUANTITY_LENGTH, "" },          { DW_QUANTITY_LENGTH, "mm" },
  { DW_QUANTITY_LENGTH, "1.3 kg" },    { DW_QUANTITY_LENGTH, "1.3.4" },
  { DW_QUANTITY_LENGTH, "1,3,4" },     { DW_QUANTITY_LENGTH, "nan" },
  { DW_QUANTITY_LENGTH, "inf" },       { DW_QUANTITY_LENGTH, "0x10" },
  { DW_QUANTITY_LENGTH, "1.3 mm mm" }, { DW_QUANTITY_LENGTH, "--1" },
  { DW_QUANTITY_LENGTH, "." },         { DW_QUANTITY_FORCE, "3 mm" },
  { DW_QUANTITY_LENGTH, "1e400" },     { DW_QUANTITY_NUMBER, "3 mm" },
};

START_TEST (what_is_typed_is_read)
{
  double value = NAN;
  ck_assert_msg (dw_quantity_parse (good[_i].quantity, good[_i].units, good[_i].text, &value), "%s",
                 good[_i].text);
  assert_close (value, good[_i].value, 1e-14, 0.0, good[_i].text);
}
END_TEST

START_TEST (inches_become_plain_millimetres)
{
  static const struct
  {
    const char *text;
    const char *shown;
  } rows[] = { { "0.5 in", "12.7" },
               { "0.001 in", "0.0254" },
               { "500 thou", "12.7" },
               { "0.102 in", "2.5908" },
               { "1.7 in", "43.18" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      double value = NAN;
      ck_assert (dw_quantity_parse (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, rows[i].text, &value));
      g_autofree char *shown = dw_quantity_format (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, value);
      ck_assert_str_eq (shown, rows[i].shown);
    }
}
END_TEST

START_TEST (what_is_no_number_with_a_unit_is_refused)
{
  double value = 7.0;
  ck_assert_msg (!dw_quantity_parse (bad[_i].quantity, DW_UNITS_METRIC, bad[_i].text, &value), "%s",
                 bad[_i].text);
  ck_assert (value == 7.0);
}
END_TEST

/* What is shown reads back to the very same number: looking at a field must not change it. */
START_TEST (metric_values_survive_being_shown)
{
  test_random r = test_random_new (1);
  for (int q = 0; q < DW_N_QUANTITY_KINDS; q++)
    for (int k = 0; k < 200; k++)
      {
        const double x = test_random_log_uniform (&r, 1e-6, 1e6);
        g_autofree char *text = dw_quantity_format ((dw_quantity)q, DW_UNITS_METRIC, x);
        double back = NAN;
        ck_assert (dw_quantity_parse ((dw_quantity)q, DW_UNITS_METRIC, text, &back));
        ck_assert_msg (back == x, "%s", text);
      }
}
END_TEST

START_TEST (other_units_come_back_to_six_digits)
{
  const dw_units all = DW_UNITS_INCH | DW_UNITS_LBF | DW_UNITS_FAHRENHEIT | DW_UNITS_LBF_PER_INCH;
  for (int q = 0; q < DW_N_QUANTITY_KINDS; q++)
    {
      g_autofree char *text = dw_quantity_format ((dw_quantity)q, all, 0.0123456789);
      double back = NAN;
      ck_assert (dw_quantity_parse ((dw_quantity)q, all, text, &back));
      assert_close (back, 0.0123456789, 2e-5, 2e-4, text);
    }
}
END_TEST

START_TEST (numbers_are_written_plainly)
{
  g_autofree char *length = dw_quantity_format (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, 1.25e-3);
  g_autofree char *modulus = dw_quantity_format (DW_QUANTITY_MODULUS, DW_UNITS_METRIC, 200e9);
  g_autofree char *inch = dw_quantity_format (DW_QUANTITY_LENGTH, DW_UNITS_INCH, 0.0254);
  g_autofree char *force = dw_quantity_format_digits (DW_QUANTITY_FORCE, DW_UNITS_METRIC, 164.77,
                                                      3);
  g_autofree char *large = dw_quantity_format_digits (DW_QUANTITY_FORCE, DW_UNITS_METRIC, 12345.6,
                                                      3);
  ck_assert_str_eq (length, "1.25");
  ck_assert_str_eq (modulus, "200");
  ck_assert_str_eq (inch, "1");
  ck_assert_str_eq (force, "165");
  ck_assert_str_eq (large, "12346");
  g_autofree char *zeros = dw_quantity_format_digits (DW_QUANTITY_NUMBER, DW_UNITS_METRIC, 1.4, 3);
  ck_assert_str_eq (zeros, "1.40");
}
END_TEST

START_TEST (short_texts_have_no_end_of_digits)
{
  static const struct
  {
    dw_quantity quantity;
    dw_units units;
    double value;
    const char *text;
  } rows[] = { { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, 1.2345e-3, "1.2345" },
               { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, 16e-3, "16" },
               { DW_QUANTITY_LENGTH, DW_UNITS_INCH, 16e-3, "0.6299" },
               { DW_QUANTITY_LENGTH, DW_UNITS_INCH, 12.7e-3, "0.5" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autofree char *text = dw_quantity_format_short (rows[i].quantity, rows[i].units,
                                                        rows[i].value);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

START_TEST (the_locale_decides_the_decimal_sign)
{
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  g_autofree char *text = dw_quantity_format (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, 1.25e-3);
  double back = NAN;
  ck_assert_str_eq (text, "1,25");
  ck_assert (dw_quantity_parse (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, text, &back));
  ck_assert (back == 1.25e-3);
}
END_TEST

START_TEST (every_quantity_shows_a_unit)
{
  for (int q = DW_QUANTITY_LENGTH; q < DW_N_QUANTITY_KINDS; q++)
    ck_assert_uint_gt (strlen (dw_quantity_unit ((dw_quantity)q, DW_UNITS_METRIC)), 0);
  ck_assert_str_eq (dw_quantity_unit (DW_QUANTITY_LENGTH, DW_UNITS_INCH), "in");
  ck_assert_str_eq (dw_quantity_unit (DW_QUANTITY_LENGTH, DW_UNITS_LBF), "mm");
  ck_assert_str_eq (dw_quantity_unit (DW_QUANTITY_TEMPERATURE, DW_UNITS_FAHRENHEIT), "°F");
}
END_TEST

START_TEST (a_change_has_its_sign_and_sensible_digits)
{
  static const struct
  {
    double percent;
    const char *text;
  } rows[] = { { 1.23, "+1.2\u202f%" }, { -2.6, "\u22122.6\u202f%" }, { 9.94, "+9.9\u202f%" },
               { 9.96, "+10\u202f%" },  { -11.4, "\u221211\u202f%" }, { 0.04, "0.0\u202f%" },
               { -0.04, "0.0\u202f%" }, { 1234.5, "+1234\u202f%" },   { NAN, "" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autofree char *text = dw_quantity_format_change (rows[i].percent);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/quantity");
  TCase *tc = tcase_create ("quantity");
  tcase_add_loop_test (tc, what_is_typed_is_read, 0, N_ENTRIES (good));
  tcase_add_test (tc, inches_become_plain_millimetres);
  tcase_add_loop_test (tc, what_is_no_number_with_a_unit_is_refused, 0, N_ENTRIES (bad));
  tcase_add_test (tc, metric_values_survive_being_shown);
  tcase_add_test (tc, other_units_come_back_to_six_digits);
  tcase_add_test (tc, numbers_are_written_plainly);
  tcase_add_test (tc, short_texts_have_no_end_of_digits);
  tcase_add_test (tc, the_locale_decides_the_decimal_sign);
  tcase_add_test (tc, every_quantity_shows_a_unit);
  tcase_add_test (tc, a_change_has_its_sign_and_sensible_digits);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
