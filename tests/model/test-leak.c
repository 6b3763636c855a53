/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-leak.h"
#include "test-support.h"

START_TEST (no_clearance_is_no_leak_and_no_drag)
{
  const dw_leak leak = dw_leak_make (16e-3, 0.0, 0.5, 2.5e-3, 0.44);
  ck_assert (leak.conductance == 0.0 && leak.dragged == 0.0 && leak.drag == 0.0
             && leak.unloaded == 0.0);
}
END_TEST

/* Merritt, Blackburn (from memory): a piston against the bore leaks 2.5 times the centred one. */
START_TEST (touching_piston_leaks_two_and_a_half_times)
{
  const dw_leak centred = dw_leak_make (16e-3, 0.04e-3, 0.0, 2.5e-3, 0.44);
  const dw_leak touching = dw_leak_make (16e-3, 0.04e-3, 1.0, 2.5e-3, 0.44);
  assert_close (touching.conductance / centred.conductance, 2.5, 1e-12, 0.0, "1 + 1.5 eps^2");
  ck_assert (touching.drag == centred.drag);
}
END_TEST

/* The film's integral of h^3 round the piston, h = c (1 + eps cos t), gives the factor exactly. */
START_TEST (eccentric_factor_is_the_film_integral)
{
  const double eps = 0.7;
  const int n = 360;
  double sum = 0.0;
  for (int i = 0; i < n; i++)
    sum += pow (1.0 + eps * cos (2.0 * M_PI * i / n), 3) / n;
  const double factor = dw_annulus_flow (16e-3, 0.04e-3, eps, 2.5e-3, 0.44, 1e5)
                        / dw_annulus_flow (16e-3, 0.04e-3, 0.0, 2.5e-3, 0.44, 1e5);
  assert_close (factor, sum, 1e-12, 0.0, "trapezoid rule is exact for a cubic in cos");
}
END_TEST

/* Plane Couette-Poiseuille flow integrated across the gap: flow seen from the moving piston and
 * shear on it, on a fine grid. */
START_TEST (drag_and_flow_are_those_of_the_velocity_profile)
{
  const double bore = 16e-3, c = 0.05e-3, length = 2.5e-3, mu = 0.44, v = 0.3, dp = 2e5;
  const dw_leak leak = dw_leak_make (bore, c, 0.0, length, mu);
  const double round = M_PI * (bore - c);
  const int n = 2000;
  double flow = 0.0;

  /* y from the piston, moving at v towards the high pressure; u seen from the bore */
  for (int i = 0; i < n; i++)
    {
      const double y = (i + 0.5) * c / n;
      const double u = v * (1.0 - y / c) - dp / (2.0 * mu * length) * y * (c - y);
      flow += round * (v - u) * c / n; /* towards the low pressure, seen from the piston */
    }
  assert_close (leak.conductance * dp + leak.dragged * v, flow, 1e-6, 0.0, "flow past the piston");

  const double slope = -v / c - dp / (2.0 * mu * length) * c; /* du/dy at the piston */
  const double shear = -mu * slope * round * length;          /* holds the piston back */
  const double gap_area = round * c;
  /* dp acts on the piston, not on the gap that the ring area includes */
  assert_close (leak.drag * v - leak.unloaded * dp, shear - gap_area * dp, 1e-9, 0.0, "force");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/leak");
  TCase *tc = tcase_create ("leak");
  tcase_add_test (tc, no_clearance_is_no_leak_and_no_drag);
  tcase_add_test (tc, touching_piston_leaks_two_and_a_half_times);
  tcase_add_test (tc, eccentric_factor_is_the_film_integral);
  tcase_add_test (tc, drag_and_flow_are_those_of_the_velocity_profile);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
