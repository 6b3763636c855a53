/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-stack-words.h"

#include <glib.h>

#include "draw-samples.h"

static dw_valve
valve_of_three (void)
{
  dw_valve valve = sample_damper ().valve;
  valve.n_shims = 3;
  valve.shims[1] = valve.shims[2] = valve.shims[0];
  valve.shims[1].thickness = 0.1e-3;
  valve.shims[1].count = 4;
  return valve;
}

static void
assert_text (char *text, const char *expected)
{
  ck_assert_str_eq (text, expected);
  g_free (text);
}

START_TEST (words_are_made_in_millimetres)
{
  const dw_stack_labels labels = dw_stack_labels_defaults ();
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_valve valve = valve_of_three ();
  assert_text (dw_stack_words_entry (&labels, &numbers, &valve, 0), "1: 1 × 0.15 mm");
  assert_text (dw_stack_words_entry (&labels, &numbers, &valve, 1), "2: 4 × 0.1 mm");
  assert_text (dw_stack_words_more (&labels, &numbers, &valve, 1), "2–3: 5 leaves");
  assert_text (dw_stack_words_lift (&labels, &numbers, &valve, false), "lift 0.6 mm");
  assert_text (dw_stack_words_lift (&labels, &numbers, &valve, true), "lift 0.6 mm, cut");
  assert_text (dw_stack_words_scale (&labels, &numbers, 4.0, 25.0),
               "4\u00a0:\u00a01 across, thickness 25\u00a0:\u00a01");
  assert_text (dw_stack_words_scale (&labels, &numbers, 4.0, 0.0), "4\u00a0:\u00a01 across");
}
END_TEST

START_TEST (words_are_made_in_inches_with_a_comma)
{
  dw_stack_labels labels = dw_stack_labels_defaults ();
  dw_number_format numbers = dw_number_format_defaults ();
  const dw_valve valve = valve_of_three ();
  labels.length = dw_chart_units_inch ().length;
  numbers.decimal[0] = ',';
  assert_text (dw_stack_words_entry (&labels, &numbers, &valve, 0), "1: 1 × 0,005906 in");
  assert_text (dw_stack_words_lift (&labels, &numbers, &valve, false), "lift 0,02362 in");
}
END_TEST

START_TEST (words_that_are_left_out_are_none)
{
  dw_stack_labels labels = dw_stack_labels_defaults ();
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_valve valve = valve_of_three ();
  labels.entry = "";
  labels.more = labels.lift = labels.scale = NULL;
  ck_assert_ptr_null (dw_stack_words_entry (&labels, &numbers, &valve, 0));
  ck_assert_ptr_null (dw_stack_words_more (&labels, &numbers, &valve, 1));
  ck_assert_ptr_null (dw_stack_words_lift (&labels, &numbers, &valve, false));
  ck_assert_ptr_null (dw_stack_words_scale (&labels, &numbers, 4.0, 25.0));
  assert_text (dw_stack_words_scale (&labels, &numbers, 4.0, 0.0), "4\u00a0:\u00a01 across");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/stack-words");
  TCase *tcase = tcase_create ("stack-words");
  tcase_add_test (tcase, words_are_made_in_millimetres);
  tcase_add_test (tcase, words_are_made_in_inches_with_a_comma);
  tcase_add_test (tcase, words_that_are_left_out_are_none);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
