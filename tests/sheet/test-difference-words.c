/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "study-dampers.h"
#include "test-support.h"
#include "sheet/dw-difference-words.h"

/* As the window writes what the study writes in plain characters. Caller frees. */
static char *
in_print (const char *plain)
{
  static const char *const pairs[][2]
      = { { " x ", " × " }, { "->", "→" }, { "degC", "°C" }, { "kg/m3", "kg/m³" } };
  GString *text = g_string_new (plain);

  for (int i = 0; i < N_ENTRIES (pairs); i++)
    g_string_replace (text, pairs[i][0], pairs[i][1], 0);
  return g_string_free (text, FALSE);
}

/* Untranslated and in metric units, both layers say the same of every single change. */
START_TEST (says_what_the_study_says)
{
  int n_rows = 0;
  const study_change *row = &study_changes (&n_rows)[_i];
  const dw_damper a = study_damper ();
  dw_damper b = a;
  dw_difference found[1];

  row->change (&b);
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  g_autofree char *expected = in_print (row->text);
  g_autofree char *words = dw_difference_words (&found[0], &a, &b, DW_UNITS_METRIC);
  ck_assert_str_eq (words, expected);
}
END_TEST

START_TEST (the_users_units_are_used)
{
  const dw_damper a = study_damper ();
  dw_damper b = a;
  dw_difference found[1];

  b.body.stroke = 25.4e-3;
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  g_autofree char *words = dw_difference_words (&found[0], &a, &b, DW_UNITS_INCH);
  ck_assert_ptr_nonnull (strstr (words, " in → 1 in"));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/difference-words");
  TCase *tc = tcase_create ("difference-words");
  int n_rows = 0;
  study_changes (&n_rows);
  tcase_add_loop_test (tc, says_what_the_study_says, 0, n_rows);
  tcase_add_test (tc, the_users_units_are_used);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
