/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/dw-view.h"
#include "test-support.h"

static const dw_view whole = { 0.01, 1.0, -140.0, 180.0 };

static void
assert_sound (const dw_view *v)
{
  ck_assert (v->x_low >= whole.x_low && v->x_high <= whole.x_high);
  ck_assert (v->y_low >= whole.y_low && v->y_high <= whole.y_high);
  ck_assert (v->x_high > v->x_low && v->y_high > v->y_low);
}

/* Anything a mouse can do, and what none can. */
START_TEST (no_view_turns_inside_out)
{
  const bool is_log = _i == 1;
  test_random random = test_random_new ((uint64_t)_i + 7);
  dw_view v = whole;
  for (int i = 0; i < 20000; i++)
    {
      const double a = test_random_uniform (&random, -1.0, 2.0);
      const double b = test_random_uniform (&random, -1.0, 2.0);
      const double c = test_random_uniform (&random, -1.0, 2.0);
      const double d = test_random_uniform (&random, -1.0, 2.0);
      switch (test_random_int (&random, 0, 3))
        {
        case 0:
          v = dw_view_zoom (&v, &whole, is_log, a, b,
                            test_random_log_uniform (&random, 0.01, 100.0));
          break;
        case 1:
          v = dw_view_drag (&v, &whole, is_log, a, b, c, d);
          break;
        case 2:
          v = dw_view_pan (&v, &whole, is_log, 10.0 * a, 10.0 * b);
          break;
        default:
          v = dw_view_drag (&v, &whole, is_log, a, b, a, b);
        }
      assert_sound (&v);
      if (i % 50 == 0)
        v = whole;
    }
}
END_TEST

START_TEST (zooming_keeps_its_place_and_goes_back)
{
  const dw_view in = dw_view_zoom (&whole, &whole, false, 0.25, 0.5, 4.0);
  assert_close (in.x_low + 0.25 * (in.x_high - in.x_low), 0.01 + 0.25 * 0.99, 1e-12, 0.0,
                "the place under the pointer stays");
  assert_close (in.y_high - in.y_low, 80.0, 1e-12, 0.0, "a quarter of 320");
  const dw_view out = dw_view_zoom (&in, &whole, false, 0.25, 0.5, 1e-3);
  ck_assert (dw_view_equal (&out, &whole));
}
END_TEST

START_TEST (a_dragged_rectangle_is_shown)
{
  const dw_view v = dw_view_drag (&whole, &whole, true, 1.0, 0.75, 0.5, 0.25);
  assert_close (v.x_low, 0.1, 1e-12, 0.0, "the middle of two decades");
  ck_assert (v.x_high == 1.0);
  assert_close (v.y_low, -60.0, 1e-12, 0.0, "a quarter up");
  assert_close (v.y_high, 100.0, 1e-12, 0.0, "three quarters up");
}
END_TEST

START_TEST (panning_stops_at_the_ends)
{
  const dw_view in = dw_view_zoom (&whole, &whole, false, 0.5, 0.5, 2.0);
  const dw_view right = dw_view_pan (&in, &whole, false, 100.0, 0.0);
  ck_assert (right.x_high == whole.x_high);
  assert_close (right.x_high - right.x_low, in.x_high - in.x_low, 1e-12, 0.0, "as large as before");
  ck_assert (right.y_low == in.y_low);
}
END_TEST

START_TEST (what_is_no_view_becomes_one)
{
  const dw_view bad[] = {
    { (double)NAN, 1.0, -1.0, 1.0 }, { 0.5, 0.2, 10.0, -10.0 },
    { 0.3, 0.3, 0.0, 0.0 },          { -HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL },
    { 5.0, 6.0, 1000.0, 2000.0 },
  };
  for (int i = 0; i < N_ENTRIES (bad); i++)
    {
      const dw_view v = dw_view_clamp (&bad[i], &whole, false);
      assert_sound (&v);
    }
  const dw_view stuck = dw_view_zoom (&whole, &whole, false, 0.5, 0.5, (double)NAN);
  ck_assert (dw_view_equal (&stuck, &whole));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/view");
  TCase *tcase = tcase_create ("view");
  tcase_add_loop_test (tcase, no_view_turns_inside_out, 0, 2);
  tcase_add_test (tcase, zooming_keeps_its_place_and_goes_back);
  tcase_add_test (tcase, a_dragged_rectangle_is_shown);
  tcase_add_test (tcase, panning_stops_at_the_ends);
  tcase_add_test (tcase, what_is_no_view_becomes_one);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
