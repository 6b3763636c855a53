/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-root.h"
#include "test-support.h"

static double
cubic (double x, void *data)
{
  (*(int *)data)++;
  return x * x * x - 2.0;
}

static double
step (double x, void *data)
{
  (*(int *)data)++;
  return x < 0.3 ? -1.0 : 1.0;
}

static double
flat (double x, void *data)
{
  (*(int *)data)++;
  return pow (x - 0.7, 9);
}

static double
line (double x, void *data)
{
  (*(int *)data)++;
  return x;
}

START_TEST (roots_are_found_to_the_last_digits)
{
  int calls = 0;
  assert_close (dw_root_bracketed (cubic, &calls, 0.0, 5.0), cbrt (2.0), 4e-16, 0.0, "x^3 = 2");
  ck_assert_int_lt (calls, 20);
  calls = 0;
  assert_close (dw_root_bracketed (cubic, &calls, 5.0, 0.0), cbrt (2.0), 4e-16, 0.0, "ends turned");
}
END_TEST

START_TEST (a_jump_is_bisected)
{
  int calls = 0;
  assert_close (dw_root_bracketed (step, &calls, 0.0, 1.0), 0.3, 1e-14, 0.0, "no slope to use");
  ck_assert_int_lt (calls, 130);
}
END_TEST

START_TEST (a_ninefold_root_does_not_hang)
{
  int calls = 0;
  assert_close (dw_root_bracketed (flat, &calls, 0.0, 1.0), 0.7, 1e-3, 0.0, "flat for 0.7 +- 1e-4");
  ck_assert_int_lt (calls, 310);
}
END_TEST

START_TEST (a_root_at_an_end_is_taken)
{
  int calls = 0;
  ck_assert (dw_root_bracketed (line, &calls, 0.0, 1.0) == 0.0);
  ck_assert (dw_root_bracketed (line, &calls, -1.0, 0.0) == 0.0);
}
END_TEST

START_TEST (without_a_change_of_sign_the_nearer_end_is_given)
{
  int calls = 0;
  ck_assert (dw_root_bracketed (line, &calls, 1.0, 2.0) == 1.0);
  ck_assert_int_eq (calls, 2);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/root");
  TCase *tc = tcase_create ("root");
  tcase_add_test (tc, roots_are_found_to_the_last_digits);
  tcase_add_test (tc, a_jump_is_bisected);
  tcase_add_test (tc, a_ninefold_root_does_not_hang);
  tcase_add_test (tc, a_root_at_an_end_is_taken);
  tcase_add_test (tc, without_a_change_of_sign_the_nearer_end_is_given);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
