/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/dw-scale.h"
#include "test-support.h"

START_TEST (place_and_value_are_inverse)
{
  test_random random = test_random_new ((uint64_t)_i);
  for (int i = 0; i < 500; i++)
    {
      const double low = test_random_log_uniform (&random, 1e-4, 1.0);
      const dw_scale s = { _i == 1, low, low * test_random_log_uniform (&random, 1.01, 1e4),
                           test_random_uniform (&random, 0.0, 50.0),
                           test_random_uniform (&random, 60.0, 3000.0) };
      const double value = dw_scale_at_share (&s, test_random_uniform (&random, -0.5, 1.5));
      assert_close (dw_scale_value (&s, dw_scale_place (&s, value)), value, 1e-9, 1e-12,
                    "there and back; rounding only");
      assert_close (dw_scale_place (&s, s.low), s.start, 0.0, 1e-9, "low end");
      assert_close (dw_scale_place (&s, s.high), s.end, 0.0, 1e-9, "high end");
    }
}
END_TEST

START_TEST (rest_has_no_place_on_a_logarithmic_scale)
{
  const dw_scale s = { true, 0.01, 1.0, 0.0, 100.0 };
  ck_assert (isinf (dw_scale_place (&s, 0.0)));
  assert_close (dw_scale_place (&s, 0.1), 50.0, 0.0, 1e-9, "one of two decades");
}
END_TEST

static const struct
{
  double least;
  int mantissa, exponent;
} steps[] = {
  { 1.0, 1, 0 }, { 1.01, 2, 0 }, { 0.1, 1, -1 }, { 0.3, 5, -1 }, { 7.0, 1, 1 }, { 2000.0, 2, 3 },
};

START_TEST (steps_are_1_2_5)
{
  const dw_step s = dw_step_at_least (steps[_i].least);
  ck_assert_int_eq (s.mantissa, steps[_i].mantissa);
  ck_assert_int_eq (s.exponent, steps[_i].exponent);
  const dw_step next = dw_step_next (s);
  ck_assert (dw_step_times (next, 1.0) > dw_step_times (s, 1.0));
  ck_assert (next.mantissa == 1 || next.mantissa == 2 || next.mantissa == 5);
}
END_TEST

START_TEST (multiples_are_exact)
{
  const dw_step tenth = { 1, -1 };
  ck_assert (dw_step_times (tenth, 3.0) == 0.3);
  ck_assert (dw_step_times (tenth, 7.0) == 0.7);
  ck_assert (dw_step_times ((dw_step){ 5, 2 }, 3.0) == 1500.0);
  ck_assert_int_eq (dw_step_decimals (tenth), 1);
  ck_assert_int_eq (dw_step_decimals ((dw_step){ 5, 2 }), 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/scale");
  TCase *tcase = tcase_create ("scale");
  tcase_add_loop_test (tcase, place_and_value_are_inverse, 0, 2);
  tcase_add_test (tcase, rest_has_no_place_on_a_logarithmic_scale);
  tcase_add_loop_test (tcase, steps_are_1_2_5, 0, N_ENTRIES (steps));
  tcase_add_test (tcase, multiples_are_exact);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
