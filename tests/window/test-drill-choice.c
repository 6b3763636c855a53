/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-choice.h"

#include "test-support.h"

static int n_whole;

static void
on_whole (void)
{
  n_whole++;
}

START_TEST (a_choice_becomes_whole_and_says_so)
{
  const dw_drill_result result = { .size = { 1.4e-3, 0.0 } };
  g_autoptr (DwDrillChoice) choice = dw_drill_choice_new (&result, 3);
  ck_assert (dw_drill_choice_get_size (choice, 0) == 1.4e-3);
  ck_assert (dw_drill_choice_get_size (choice, 1) == 0.0);
  ck_assert_int_eq (dw_drill_choice_get_row (choice)->n_holes, 3);
  ck_assert_int_eq (dw_drill_choice_get_row (choice)->mix.bottle, -1);
  ck_assert (!dw_drill_choice_is_whole (choice));
  g_signal_connect (choice, "notify::whole", G_CALLBACK (on_whole), NULL);
  dw_drill_row row = *dw_drill_choice_get_row (choice);
  row.n_passes = 6;
  dw_drill_choice_take_row (choice, &row);
  gboolean is_whole;
  g_object_get (choice, "whole", &is_whole, NULL);
  ck_assert (is_whole && dw_drill_choice_is_whole (choice));
  ck_assert_int_eq (n_whole, 1);
  ck_assert_int_eq (dw_drill_choice_get_row (choice)->n_passes, 6);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-choice");
  TCase *tc = tcase_create ("drill-choice");
  tcase_add_test (tc, a_choice_becomes_whole_and_says_so);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
