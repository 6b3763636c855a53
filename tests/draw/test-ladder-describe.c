/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-describe.h"

#include <glib.h>
#include <string.h>

#include "draw-samples.h"

static void
expect (const char *text, const char *const *parts, int n)
{
  for (int i = 0; i < n; i++)
    ck_assert_msg (strstr (text, parts[i]) != NULL, "no \"%s\" in: %s", parts[i], text);
  ck_assert_msg (strchr (text, '{') == NULL, "%s", text);
}

START_TEST (a_ladder_is_told_with_its_ends)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  s->chart.chosen = 0;
  g_autofree char *text = dw_ladder_describe (&s->chart);
  static const char *const parts[] = {
    "18 stacks in order of stiffness, force in rebound at 1 m/s: from ",
    " N with 0.05 mm to ",
    " N with 0.25 + 0.2 mm.",
    " of them differ by more than 2 %.",
    "Up to 2 × 0.1 mm the holes alone decide.",
    "From 0.25 + 0.2 mm on the piston is as good as plain.",
    "Fitted: 0.15 mm, ",
    "This setup: 2 × 0.1 mm, ",
    "Chosen: 0.05 mm, ",
  };
  expect (text, parts, N_ENTRIES (parts));
  sample_ladder_free (s);
}
END_TEST

/* At the low speed more of it is as good as plain. */
START_TEST (ends_are_those_at_the_speed_that_is_shown)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  sample_ladder_set_speed (s, DW_LOW);
  g_autofree char *text = dw_ladder_describe (&s->chart);
  static const char *const parts[] = {
    " at 0.05 m/s: ", "From 0.1 mm on the piston is as good as plain.", "No stack is chosen."
  };
  expect (text, parts, N_ENTRIES (parts));
  sample_ladder_free (s);
}
END_TEST

START_TEST (a_stack_is_told_with_bounds_and_habit)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  int own = 0;
  while (!s->ladder->rungs[own].is_own)
    own++;
  g_autofree char *text = dw_ladder_describe_rung (&s->chart, own);
  static const char *const parts[] = {
    "2 × 0.1 mm, ",
    " N while leaves slide, ",
    " N when they stick.",
    "As stiff as one leaf of 0.126 to 0.2 mm.",
    "Adding thicknesses makes it 0.2 mm, ",
    "At the high speed it opens to its stop.",
  };
  expect (text, parts, N_ENTRIES (parts));
  g_autofree char *single = dw_ladder_describe_rung (&s->chart, own + 1);
  ck_assert_msg (strstr (single, "slide") == NULL && strstr (single, "Adding") == NULL, "%s",
                 single);
  static const char *const alone[] = { "0.15 mm, ", "One of 2 that do the same." };
  expect (single, alone, N_ENTRIES (alone));
  sample_ladder_free (s);
}
END_TEST

START_TEST (what_is_not_fitted_is_not_told)
{
  sample_ladder *s = sample_ladder_new (1, 0.0, false);
  s->chart.has_fitted = false;
  g_autofree char *text = dw_ladder_describe (&s->chart);
  ck_assert_ptr_null (strstr (text, "Fitted"));
  sample_ladder_free (s);
}
END_TEST

START_TEST (an_empty_ladder_says_so)
{
  const dw_ladder_chart chart = dw_ladder_chart_defaults ();
  g_autofree char *text = dw_ladder_describe (&chart);
  ck_assert_str_eq (text, "There is no stack.");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ladder-describe");
  TCase *tcase = tcase_create ("ladder-describe");
  tcase_add_test (tcase, a_ladder_is_told_with_its_ends);
  tcase_add_test (tcase, ends_are_those_at_the_speed_that_is_shown);
  tcase_add_test (tcase, a_stack_is_told_with_bounds_and_habit);
  tcase_add_test (tcase, what_is_not_fitted_is_not_told);
  tcase_add_test (tcase, an_empty_ladder_says_so);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
