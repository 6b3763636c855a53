/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-command.h"

#include <stdlib.h>
#include <string.h>

#include "calc-run.h"
#include "calc/dw-calc-error.h"

/* A command of this test: writes its operand, then ends as the operand says. */
static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *word = dw_calc_arguments_get_operand (arguments, 0);
  fprintf (file, "%s%s\n", word, dw_calc_arguments_wants_csv (arguments) ? " as csv" : "");
  if (strcmp (word, "misuse") == 0)
    dw_calc_misused (error, "no");
  else if (strcmp (word, "refuse") == 0)
    dw_calc_refused (error, "f: no");
  return strcmp (word, "found") == 0 ? DW_CALC_BAD_INPUT : DW_CALC_GOOD;
}

static const char *const paragraphs[] = { "First.", "Second.", NULL };
static const char *const examples[] = { "try x", NULL };
static const dw_calc_option own[] = { { "--much", "N", "how much." }, { NULL, NULL, NULL } };

static const dw_calc_command command = {
  .name = "try",
  .summary = "What it is",
  .operands = "WORD",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = own,
  .run = run,
};

static const struct
{
  const char *words;
  int status;
  const char *written; /* NULL = the old content stays */
} rows[] = {
  { "good", 0, "good\n" },
  { "good --format csv", 0, "good as csv\n" },
  { "found", 1, "found\n" },
  { "refuse", 1, NULL },
  { "misuse", 2, NULL },
  { "good more", 2, NULL },
  { "", 2, NULL },
  { "good --format xml", 2, NULL },
  { "good --what", 2, NULL },
};

/* What is said on standard error is that of test-calc-error.c; it goes nowhere here. */
START_TEST (status_and_file_follow_what_the_command_says)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "result", NULL);
  g_autofree char *line = g_strdup_printf ("-o %s %s", path, rows[_i].words);
  g_auto (GStrv) words = g_strsplit (g_strchomp (line), " ", 0);
  g_autofree char *text = NULL;
  ck_assert (g_file_set_contents (path, "old\n", -1, NULL));
  ck_assert_ptr_nonnull (freopen ("/dev/null", "w", stderr));
  ck_assert_int_eq (dw_calc_command_run (&command, (int)g_strv_length (words), words),
                    rows[_i].status);
  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  ck_assert_str_eq (text, rows[_i].written != NULL ? rows[_i].written : "old\n");
  calc_expect_files (folder, 1);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (help_is_made_of_the_table)
{
  char *text = NULL;
  size_t n = 0;
  FILE *file = open_memstream (&text, &n);
  dw_calc_command_print_help (&command, file);
  fclose (file);
  ck_assert (g_str_has_prefix (text, "Usage: dampcalc try WORD [OPTION]...\n\nWhat it is.\n\n"
                                     "First.\n\nSecond.\n\nOptions, before or after the rest:\n"
                                     "  --much N\n      how much.\n  --format table|csv\n"));
  ck_assert (g_str_has_suffix (text, "  --help\n      Show this text.\n\nExample:\n"
                                     "  dampcalc try x\n"));
  free (text);
}
END_TEST

START_TEST (shared_options_stand_behind_the_own_ones)
{
  dw_calc_command plain = command;
  plain.has_format = false;
  g_autofree dw_calc_option *with = dw_calc_command_make_options (&command);
  g_autofree dw_calc_option *without = dw_calc_command_make_options (&plain);
  static const char *const names[] = { "--much", "--format", "-o", "--help" };
  for (int i = 0; i < N_ENTRIES (names); i++)
    ck_assert_str_eq (with[i].name, names[i]);
  ck_assert_ptr_null (with[4].name);
  ck_assert_str_eq (without[1].name, "-o");
  ck_assert_ptr_null (without[3].name);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-command");
  TCase *tc = tcase_create ("command");
  tcase_add_loop_test (tc, status_and_file_follow_what_the_command_says, 0, N_ENTRIES (rows));
  tcase_add_test (tc, help_is_made_of_the_table);
  tcase_add_test (tc, shared_options_stand_behind_the_own_ones);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
