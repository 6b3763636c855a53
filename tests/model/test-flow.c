/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>

#include "model/dw-flow.h"
#include "random-damper.h"
#include "reference-damper.h"

static dw_flow_model
model_of (const dw_damper *damper, double temperature)
{
  dw_fluid fluid;
  dw_flow_model model;
  ck_assert_int_eq (dw_oil_fluid (&damper->oil, temperature, &fluid, NULL), DW_OK);
  dw_flow_model_init (&model, damper, &fluid);
  return model;
}

static double
sum_flow (const dw_hole_flow holes[], const double v[], int n)
{
  double q = 0.0;
  for (int i = 0; i < n; i++)
    q += holes[i].area * v[i];
  return q;
}

/* The same equations written anew and solved by GSL's Brent, one root finder inside the other. */
START_TEST (independent_solver_agrees_to_1e_9)
{
  test_random r = test_random_new (31 + (uint64_t)_i);
  double worst = 0.0;

  for (int k = 0; k < 60; k++)
    {
      const dw_damper damper = random_damper (&r);
      const double temperature = random_temperature (&r);
      const dw_stroke stroke = (dw_stroke)test_random_int (&r, 0, 1);
      const double speed = test_random_log_uniform (&r, 1e-3, 5.0);
      const dw_flow_model model = model_of (&damper, temperature);
      reference_point truth;
      dw_flow_state s;

      ck_assert (reference_solve (&damper, temperature, stroke, speed, &truth));
      ck_assert_int_eq (dw_flow_solve (&model, stroke, speed, false, &s, NULL), DW_OK);
      const double whole = speed * model.ring_area;
      assert_close (s.pressure, truth.pressure, 1e-9, 0.0, "dp");
      assert_close (sum_flow (model.open, s.open, model.n_open), truth.flow_open, 1e-9,
                    1e-9 * whole, "open holes");
      if (dw_flow_uses_covered (&model, stroke))
        assert_close (sum_flow (model.covered, s.covered, model.n_covered), truth.flow_covered,
                      1e-9, 1e-9 * whole, "covered holes");
      worst = fmax (worst, fabs (s.pressure / truth.pressure - 1.0));
    }
  if (_i == 0)
    printf ("dp against the independent solver: worst %.1e\n", worst);
}
END_TEST

START_TEST (flows_add_to_what_the_piston_displaces)
{
  test_random r = test_random_new (41);

  for (int k = 0; k < 10000; k++)
    {
      const dw_damper damper = random_damper (&r);
      const dw_flow_model model = model_of (&damper, random_temperature (&r));
      const dw_stroke stroke = (dw_stroke)test_random_int (&r, 0, 1);
      const double speed = test_random_log_uniform (&r, 1e-4, 10.0);
      dw_flow_state s;
      dw_error err = { 0 };

      ck_assert_msg (dw_flow_solve (&model, stroke, speed, false, &s, &err) == DW_OK,
                     "damper %d: %s", k, err.text);
      double q = sum_flow (model.open, s.open, model.n_open) + model.leak.conductance * s.pressure
                 + model.leak.dragged * speed;
      if (dw_flow_uses_covered (&model, stroke))
        q += sum_flow (model.covered, s.covered, model.n_covered);
      assert_close (q, speed * model.ring_area, 1e-10, 0.0, "conservation");
    }
}
END_TEST

/* Newton from any start, good or bad, and the brackets give one answer. */
START_TEST (start_does_not_change_the_answer)
{
  test_random r = test_random_new (42);

  for (int k = 0; k < 2000; k++)
    {
      const dw_damper damper = random_damper (&r);
      const dw_flow_model model = model_of (&damper, 25.0);
      const dw_stroke stroke = damper.valve.opens_on;
      const double speed = test_random_log_uniform (&r, 1e-3, 5.0);
      const double other = test_random_log_uniform (&r, 1e-3, 5.0);
      dw_flow_state a, b;

      ck_assert_int_eq (dw_flow_solve (&model, stroke, speed, false, &a, NULL), DW_OK);
      ck_assert_int_eq (dw_flow_solve (&model, stroke, other, false, &b, NULL), DW_OK);
      ck_assert_int_eq (dw_flow_solve (&model, stroke, speed, true, &b, NULL), DW_OK);
      assert_close (b.pressure, a.pressure, 1e-10, 0.0, "from another speed");

      dw_flow_state c;
      const double q = dw_flow_at_pressure (&model, stroke, a.pressure, &c);
      assert_close (q + model.leak.dragged * speed, speed * model.ring_area, 1e-9, 0.0,
                    "nested brackets at the same dp");
    }
}
END_TEST

START_TEST (equal_sizes_may_be_split_into_groups)
{
  dw_damper one = dw_damper_defaults ();
  dw_damper many = one;
  dw_flow_state a, b;

  one.piston.n_holes = 1;
  one.piston.holes[0] = (dw_holes){ .count = 6, .diameter = 1.3e-3 };
  many.piston.n_holes = 3;
  for (int i = 0; i < 3; i++)
    many.piston.holes[i] = (dw_holes){ .count = 2, .diameter = 1.3e-3 };
  const dw_flow_model m1 = model_of (&one, 25.0);
  const dw_flow_model m2 = model_of (&many, 25.0);
  ck_assert_int_eq (m2.n_open, 1);
  dw_flow_solve (&m1, DW_REBOUND, 0.3, false, &a, NULL);
  dw_flow_solve (&m2, DW_REBOUND, 0.3, false, &b, NULL);
  ck_assert (a.pressure == b.pressure);
}
END_TEST

START_TEST (preload_keeps_the_shim_down_until_it_is_reached)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.n_holes = 2;
  damper.piston.holes[1] = (dw_holes){ .count = 4, .diameter = 1e-3, .covered = true };
  damper.valve.n_shims = 1;
  damper.valve.shims[0] = (dw_shim){ 0.1e-3, 1, 4e9, 0.38, 100e6 };
  damper.valve.preload = 80e3;
  const dw_flow_model model = model_of (&damper, 25.0);
  double before = 0.0;

  for (double v = 0.01; v < 1.0; v *= 1.02)
    {
      dw_flow_state s;
      ck_assert_int_eq (dw_flow_solve (&model, DW_REBOUND, v, false, &s, NULL), DW_OK);
      const double q = sum_flow (model.covered, s.covered, model.n_covered);
      if (s.pressure <= 80e3)
        ck_assert (q == 0.0 && s.film_pressure == s.pressure);
      ck_assert (dw_flow_lift (&model, s.film_pressure) == 0.0 || s.film_pressure > 80e3);
      ck_assert (q >= before);
      before = q;
    }
  ck_assert (before > 0.0);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/flow");
  TCase *tc = tcase_create ("flow");
  tcase_set_timeout (tc, 240);
  tcase_add_loop_test (tc, independent_solver_agrees_to_1e_9, 0, 5);
  tcase_add_test (tc, flows_add_to_what_the_piston_displaces);
  tcase_add_test (tc, start_does_not_change_the_answer);
  tcase_add_test (tc, equal_sizes_may_be_split_into_groups);
  tcase_add_test (tc, preload_keeps_the_shim_down_until_it_is_reached);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
