/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "test-support.h"

static const struct
{
  double value;
  int digits;
  const char *text;
} figures[] = {
  { 4.3656, 3, "4.37" },
  { 13.46, 3, "13.5" },
  { 211.4, 3, "211" },
  { 1234.6, 3, "1235" },
  { 0.0, 3, "0" },
  { -0.0, 3, "0" },
  { 9.996, 3, "10.0" },
  { 0.9996, 3, "1.00" },
  { 0.08, 3, "0.0800" },
  { -4.3656, 3, "-4.37" },
  { NAN, 3, "-" },
  { INFINITY, 3, "inf" },
  { 0.000123456, 3, "0.000123" },
  { 1.23456e-7, 3, "1.23e-07" },
  { 7654321.0, 3, "7.65e+06" },
  { 999999.0, 3, "999999" },
  { 0.5, 1, "0.5" },
  { 123.456, 5, "123.46" },
};

START_TEST (a_figure_has_the_digits_that_it_deserves)
{
  g_autofree char *text = dw_calc_figure (figures[_i].value, figures[_i].digits);
  ck_assert_str_eq (text, figures[_i].text);
}
END_TEST

START_TEST (a_plain_number_is_as_it_was_typed)
{
  static const struct
  {
    double value;
    const char *text;
  } rows[] = { { 0.05, "0.05" }, { 1.0, "1" }, { 1.3208, "1.3208" }, { -0.0, "0" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autofree char *text = dw_calc_plain (rows[i].value);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

/* The paragraph as it is printed; caller frees. */
static char *
wrapped (int indent, gboolean hang, const char *text)
{
  char *bytes = NULL;
  size_t n = 0;
  FILE *file = open_memstream (&bytes, &n);
  ck_assert_ptr_nonnull (file);
  dw_calc_wrap (file, indent, hang, text);
  fclose (file);
  return bytes;
}

START_TEST (a_change_has_a_sign_but_not_nothing)
{
  static const struct
  {
    double percent;
    const char *text;
  } rows[] = { { 3.14, "+3.1" }, { -12.0, "-12.0" }, { -0.04, "0.0" },
               { 0.0, "0.0" },   { 0.06, "+0.1" },   { NAN, "-" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autofree char *text = dw_calc_change (rows[i].percent);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

static const struct
{
  int n;
  bool tells_material, is_csv;
  const char *text;
  const char *why;
} stacks[] = {
  { 2, false, false, "0.15+2x0.125", "for people" },
  { 2, false, true, "1x0.15+2x0.125", "for programs" },
  { 2, true, false, "0.15(4 GPa)+2x0.125(200 GPa)", "two materials" },
  { 1, true, true, "1x0.15(4GPa)", "without a blank" },
  { 0, false, false, "", "no shim" },
};

START_TEST (a_stack_is_told_from_the_piston_outwards)
{
  static const dw_shim shims[] = { { 0.15e-3, 1, 4e9, 0.38, 100e6 },
                                   { 0.125e-3, 2, 200e9, 0.3, 500e6 } };
  g_autofree char *text = dw_calc_stack (shims, stacks[_i].n, stacks[_i].tells_material,
                                         stacks[_i].is_csv);
  g_autofree char *whole = dw_calc_size (2e-3);
  ck_assert_msg (strcmp (text, stacks[_i].text) == 0, "%s: %s", stacks[_i].why, text);
  ck_assert_str_eq (whole, "2.00");
}
END_TEST

START_TEST (a_paragraph_is_broken_at_blanks)
{
  g_autoptr (GString) long_text = g_string_new ("begin");
  for (int i = 0; i < 60; i++)
    g_string_append_printf (long_text, " w%02d", i);
  char *text = wrapped (3, TRUE, long_text->str);
  g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
  const guint n = g_strv_length (lines);
  ck_assert_uint_gt (n, 3);
  g_autoptr (GString) joined = g_string_new (NULL);
  for (guint i = 0; i + 1 < n; i++)
    {
      const int margin = i == 0 ? 3 : 5;
      ck_assert_uint_le (strlen (lines[i]), DW_CALC_WIDTH);
      ck_assert_int_eq ((int)strspn (lines[i], " "), margin);
      ck_assert_msg (!g_str_has_suffix (lines[i], " "), "%s", lines[i]);
      g_string_append_printf (joined, "%s%s", i > 0 ? " " : "", lines[i] + margin);
    }
  ck_assert_str_eq (joined->str, long_text->str);
  free (text);
}
END_TEST

/* A name of 200 characters without a blank, two bytes each. */
START_TEST (a_word_longer_than_a_line_is_broken)
{
  g_autoptr (GString) name = g_string_new (NULL);
  for (int i = 0; i < 200; i++)
    g_string_append (name, "\xC3\xBC");
  char *text = wrapped (0, FALSE, name->str);
  g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
  ck_assert_uint_eq (g_strv_length (lines), 4);
  ck_assert_int_eq (g_utf8_strlen (lines[0], -1), DW_CALC_WIDTH);
  ck_assert (g_utf8_validate (text, -1, NULL));
  free (text);
}
END_TEST

START_TEST (short_and_broken_texts_are_lines_too)
{
  static const struct
  {
    const char *text;
    const char *printed;
  } rows[] = { { "a b", "  a b\n" }, { "", "  \n" }, { "\xFFx", "  \xEF\xBF\xBDx\n" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      char *text = wrapped (2, FALSE, rows[i].text);
      ck_assert_str_eq (text, rows[i].printed);
      free (text);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-text");
  TCase *tc = tcase_create ("text");
  tcase_add_loop_test (tc, a_figure_has_the_digits_that_it_deserves, 0, N_ENTRIES (figures));
  tcase_add_test (tc, a_plain_number_is_as_it_was_typed);
  tcase_add_test (tc, a_change_has_a_sign_but_not_nothing);
  tcase_add_loop_test (tc, a_stack_is_told_from_the_piston_outwards, 0, N_ENTRIES (stacks));
  tcase_add_test (tc, a_paragraph_is_broken_at_blanks);
  tcase_add_test (tc, a_word_longer_than_a_line_is_broken);
  tcase_add_test (tc, short_and_broken_texts_are_lines_too);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
