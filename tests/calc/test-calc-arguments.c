/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-arguments.h"

#include "calc/dw-calc-error.h"
#include "test-support.h"

static const dw_calc_option options[] = {
  { "--setup", "ID", "a setup" },       { "--stuck", NULL, "a flag" },
  { "--format", "table|csv", "which" }, { "-o", "FILE", "where" },
  { "--help", NULL, "help" },           { NULL, NULL, NULL },
};

/* @p line is split at blanks; "''" is an empty word. The words must outlive the arguments. */
static dw_calc_arguments *
parse (char **words, GError **error)
{
  for (char **word = words; *word != NULL; word++)
    if (g_strcmp0 (*word, "''") == 0)
      **word = '\0';
  return dw_calc_arguments_new (options, (int)g_strv_length (words), words, error);
}

static const struct
{
  const char *line;
  const char *operands; /* with blanks between them; NULL = refused */
  const char *setup;
  const char *target;
  bool stuck;
} lines[] = {
  { "a b", "a b", NULL, NULL, false },
  { "--setup x a", "a", "x", NULL, false },
  { "a --setup x b", "a b", "x", NULL, false },
  { "a --setup=x", "a", "x", NULL, false },
  { "a --setup=", "a", "", NULL, false },
  { "a --setup=x=y", "a", "x=y", NULL, false },
  { "a --setup ''", "a", "", NULL, false },
  { "a --setup -x", "a", "-x", NULL, false },
  { "a -o f", "a", NULL, "f", false },
  { "--stuck a", "a", NULL, NULL, true },
  { "-- --setup x", "--setup x", NULL, NULL, false },
  { "a -- -o", "a -o", NULL, NULL, false },
  { "-", "-", NULL, NULL, false },
  { "a --setup", NULL, NULL, NULL, false },
  { "a --setup --stuck", NULL, NULL, NULL, false },
  { "a -o", NULL, NULL, NULL, false },
  { "a -of", NULL, NULL, NULL, false },
  { "a --set x", NULL, NULL, NULL, false },
  { "a --stuck=yes", NULL, NULL, NULL, false },
  { "a --stuck --stuck", NULL, NULL, NULL, false },
  { "a --setup x --setup=x", NULL, NULL, NULL, false },
  { "a -x", NULL, NULL, NULL, false },
};

START_TEST (words_are_options_or_operands)
{
  g_auto (GStrv) words = g_strsplit (lines[_i].line, " ", 0);
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_calc_arguments) arguments = parse (words, &error);
  if (lines[_i].operands == NULL)
    {
      ck_assert_msg (arguments == NULL, "taken: %s", lines[_i].line);
      ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_WRONG_USAGE);
      return;
    }
  ck_assert_msg (arguments != NULL, "%s: %s", lines[_i].line, error != NULL ? error->message : "");
  g_autoptr (GString) operands = g_string_new (NULL);
  for (guint i = 0; i < dw_calc_arguments_get_n_operands (arguments); i++)
    g_string_append_printf (operands, "%s%s", i > 0 ? " " : "",
                            dw_calc_arguments_get_operand (arguments, i));
  ck_assert_str_eq (operands->str, lines[_i].operands);
  ck_assert_pstr_eq (dw_calc_arguments_get (arguments, "--setup"), lines[_i].setup);
  ck_assert_pstr_eq (dw_calc_arguments_get (arguments, "-o"), lines[_i].target);
  ck_assert (dw_calc_arguments_has (arguments, "--stuck") == lines[_i].stuck);
}
END_TEST

START_TEST (behind_help_nothing_is_read)
{
  g_auto (GStrv) words = g_strsplit ("a --help --what", " ", 0);
  g_autoptr (dw_calc_arguments) arguments = parse (words, NULL);
  ck_assert_ptr_nonnull (arguments);
  ck_assert (dw_calc_arguments_has (arguments, "--help"));
}
END_TEST

START_TEST (what_is_required_is_missed_by_name)
{
  g_auto (GStrv) words = g_strsplit ("--setup x", " ", 0);
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_calc_arguments) arguments = parse (words, NULL);
  ck_assert_str_eq (dw_calc_arguments_require (arguments, "--setup", &error), "x");
  ck_assert_ptr_null (error);
  ck_assert_ptr_null (dw_calc_arguments_require (arguments, "-o", &error));
  ck_assert_str_eq (error->message, "-o is missing");
}
END_TEST

START_TEST (one_of_some_words_is_chosen)
{
  static const char *const choices[] = { "one", "other", NULL };
  static const struct
  {
    const char *line;
    int value;           /* 7 = as it was */
    const char *message; /* NULL = fine */
  } rows[] = {
    { "--setup other", 1, NULL },
    { "--setup one", 0, NULL },
    { "a", 7, NULL },
    { "--setup on", 7, "--setup needs one or other, not \"on\"" },
    { "--setup=", 7, "--setup needs one or other, not \"\"" },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_auto (GStrv) words = g_strsplit (rows[i].line, " ", 0);
      g_autoptr (GError) error = NULL;
      g_autoptr (dw_calc_arguments) arguments = parse (words, NULL);
      int value = 7;
      ck_assert_ptr_nonnull (arguments);
      ck_assert (dw_calc_arguments_choose (arguments, "--setup", choices, &value, &error)
                 == (rows[i].message == NULL));
      ck_assert_int_eq (value, rows[i].value);
      ck_assert_pstr_eq (error != NULL ? error->message : NULL, rows[i].message);
    }
}
END_TEST

START_TEST (csv_is_asked_for)
{
  static const char *const texts[] = { "a", "a --format table", "a --format csv" };
  for (int i = 0; i < N_ENTRIES (texts); i++)
    {
      g_auto (GStrv) words = g_strsplit (texts[i], " ", 0);
      g_autoptr (dw_calc_arguments) arguments = parse (words, NULL);
      ck_assert (dw_calc_arguments_wants_csv (arguments) == (i == 2));
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-arguments");
  TCase *tc = tcase_create ("arguments");
  tcase_add_loop_test (tc, words_are_options_or_operands, 0, N_ENTRIES (lines));
  tcase_add_test (tc, behind_help_nothing_is_read);
  tcase_add_test (tc, what_is_required_is_missed_by_name);
  tcase_add_test (tc, one_of_some_words_is_chosen);
  tcase_add_test (tc, csv_is_asked_for);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
