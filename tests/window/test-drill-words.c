/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-words.h"

#include <string.h>

#include "test-support.h"

static const double drills[] = { 1.4e-3, 1.45e-3, 1.5e-3, 1.6e-3 };
static const double bottles[] = { 450e-6, 600e-6, 800e-6 };
static const dw_drill_box box = { .drills = drills,
                                  .n_drills = 4,
                                  .bottles = bottles,
                                  .n_bottles = 3,
                                  .limits = { .hole_grade = 12 } };
static const double speeds[] = { 0.05, 0.2, 1.0 };
static dw_drilling study;

static void
set_up (void)
{
  const dw_damper damper = dw_damper_defaults ();
  dw_drill_sets sets;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
}

static dw_drill_row
row_of (double first, double second)
{
  const double size[] = { first, second };
  dw_drill_row row;
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, NULL), DW_OK);
  return row;
}

static const struct
{
  double size[2];
  const char *text;
} sizes[] = {
  { { 0.0, 0.0 }, "as it is now" },
  { { 1.4e-3, 0.0 }, "set 1 1.40\u00a0mm, set 2 as it is" },
  { { 0.0, 1.5e-3 }, "set 1 as it is, set 2 1.50\u00a0mm" },
  { { 1.4e-3, 1.5e-3 }, "set 1 1.40\u00a0mm, set 2 1.50\u00a0mm" },
};

START_TEST (sizes_are_told)
{
  g_autofree char *text = dw_drill_words_sizes (&study.sets, sizes[_i].size, DW_UNITS_METRIC);
  ck_assert_str_eq (text, sizes[_i].text);
}
END_TEST

START_TEST (figures_are_those_of_the_row)
{
  const dw_drill_row row = row_of (1.4e-3, 1.5e-3);
  g_autofree char *text = dw_drill_words_figures (&study, &box, &row, DW_UNITS_METRIC);
  g_autofree char *low = dw_quantity_format_change (row.result.change[DW_COMPRESSION][DW_LOW]);
  ck_assert_ptr_nonnull (strstr (text, low));
  ck_assert_ptr_nonnull (strstr (text, "6 holes to drill, 9 passes"));
  ck_assert_msg (strstr (text, "600 + ") != NULL, "%s", text);
  ck_assert_ptr_nonnull (strstr (text, "% of 800"));
  ck_assert_ptr_nonnull (strstr (text, "nearest drill 1.45\u00a0mm"));
  ck_assert_ptr_nonnull (strstr (text, "left to right"));
}
END_TEST

START_TEST (the_plan_says_what_to_do_and_warns)
{
  const dw_drill_row row = row_of (0.0, 1.5e-3);
  g_autofree char *text = dw_drill_words_plan (&study, &box, &row, DW_REAR, DW_UNITS_METRIC);
  ck_assert_ptr_nonnull (strstr (text, "Both rear pistons"));
  ck_assert_ptr_nonnull (strstr (text, "Set 1: leave as it is."));
  ck_assert_ptr_nonnull (
      strstr (text, "Set 2: 3 holes of 1.30\u00a0mm: drill 1.40, then 1.50\u00a0mm."));
  ck_assert_ptr_nonnull (strstr (text, "1.50\u00a0mm goes in, 1.60\u00a0mm does not"));
  ck_assert_ptr_nonnull (strstr (text, "Drilling cannot be undone"));
  ck_assert_ptr_nonnull (strstr (text, "eye protection"));
  ck_assert_ptr_nonnull (strstr (text, "local rules"));
}
END_TEST

START_TEST (a_large_pass_is_told)
{
  const dw_drill_box few = { .drills = &drills[3], .n_drills = 1, .limits = { .hole_grade = 12 } };
  const double size[] = { 1.6e-3, 0.0 };
  dw_drill_row row;
  ck_assert_int_eq (dw_drill_row_make (&study, &few, size, &row, NULL), DW_OK);
  g_autofree char *text = dw_drill_words_plan (&study, &few, &row, DW_FRONT, DW_UNITS_METRIC);
  ck_assert_ptr_nonnull (strstr (text, "large pass"));
}
END_TEST

START_TEST (a_trial_is_named_by_what_was_done)
{
  const double size[] = { 1.4e-3, 0.0 };
  g_autofree char *text = dw_drill_words_trial (&study.sets, size, DW_FRONT, DW_UNITS_METRIC);
  ck_assert_str_eq (text, "Front drilled: set 1 1.40\u00a0mm, set 2 as it is");
  ck_assert (dw_project_text_is_valid (text));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-words");
  TCase *tc = tcase_create ("drill-words");
  tcase_add_checked_fixture (tc, set_up, NULL);
  tcase_add_loop_test (tc, sizes_are_told, 0, N_ENTRIES (sizes));
  tcase_add_test (tc, figures_are_those_of_the_row);
  tcase_add_test (tc, the_plan_says_what_to_do_and_warns);
  tcase_add_test (tc, a_large_pass_is_told);
  tcase_add_test (tc, a_trial_is_named_by_what_was_done);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
