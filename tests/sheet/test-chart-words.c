/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-chart-words.h"

#include <string.h>

#include "test-support.h"

/* The defaults of the drawing are English, and so is the program without a translation. */
START_TEST (every_phrase_has_words)
{
  const dw_chart_labels labels = dw_chart_words ();
  const dw_chart_labels english = dw_chart_labels_defaults ();
  const char *const *ours = (const char *const *)(const void *)&labels;
  const char *const *theirs = (const char *const *)(const void *)&english;
  for (size_t i = 0; i < sizeof labels / sizeof (char *); i++)
    ck_assert_msg ((ours[i] == NULL) == (theirs[i] == NULL), "phrase %zu", i);
  ck_assert_str_eq (labels.stroke[DW_REBOUND], "rebound");
}
END_TEST

START_TEST (units_are_those_that_the_user_chose)
{
  ck_assert_str_eq (dw_chart_words_units (DW_UNITS_METRIC).force.symbol, "N");
  ck_assert_str_eq (dw_chart_words_units (DW_UNITS_INCH).speed.symbol, "in/s");
  ck_assert_str_eq (dw_chart_words_units (DW_UNITS_INCH).force.symbol, "N");
  ck_assert_str_eq (dw_chart_words_units (DW_UNITS_LBF).force.symbol, "lbf");
  ck_assert_str_eq (dw_chart_words_units (DW_UNITS_LBF).length.symbol, "mm");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/chart-words");
  TCase *tc = tcase_create ("chart-words");
  tcase_add_test (tc, every_phrase_has_words);
  tcase_add_test (tc, units_are_those_that_the_user_chose);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
