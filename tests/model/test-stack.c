/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-stack.h"
#include "test-support.h"

static dw_valve
stack_of (int n, const dw_shim *shims, double coupling)
{
  dw_valve v = { .n_shims = n, .leaf_coupling = coupling };
  for (int i = 0; i < n; i++)
    v.shims[i] = shims[i];
  return v;
}

static const dw_shim film = { 0.1e-3, 1, 4e9, 0.38, 100e6 };
static const dw_shim steel = { 0.05e-3, 1, 200e9, 0.3, 1000e6 };

/* Elementary plate theory: two equal leaves bend like 2 or like 8 of one. */
START_TEST (two_equal_leaves_are_twice_or_eight_times_one)
{
  const dw_shim two = { 0.1e-3, 2, 4e9, 0.38, 100e6 };
  const dw_valve v1 = stack_of (1, &film, 0.0);
  const dw_valve v2 = stack_of (1, &two, 0.0);
  const dw_stack one = dw_stack_make (&v1);
  const dw_stack pair = dw_stack_make (&v2);
  assert_close (pair.loose / one.loose, 2.0, 1e-12, 0.0, "rigidities add");
  assert_close (pair.stuck / one.loose, 8.0, 1e-12, 0.0, "thickness doubles");
  ck_assert (pair.stiffness == pair.loose);
  ck_assert (one.stuck == one.loose);
  assert_close (one.loose, 4e9 * 1e-12 / (12.0 * (1.0 - 0.38 * 0.38)), 1e-12, 0.0,
                "D = E t^3/(12 (1 - nu^2))");
}
END_TEST

START_TEST (coupling_goes_from_one_bound_to_the_other)
{
  const dw_shim shims[] = { film, { 0.15e-3, 2, 4e9, 0.38, 100e6 } };
  double last = 0.0;
  for (double k = 0.0; k <= 1.0; k += 0.25)
    {
      const dw_valve v = stack_of (2, shims, k);
      const dw_stack s = dw_stack_make (&v);
      assert_close (s.stiffness, s.loose + k * (s.stuck - s.loose), 1e-12, 0.0, "straight between");
      ck_assert (s.stiffness > last);
      last = s.stiffness;
    }
}
END_TEST

START_TEST (order_of_leaves_does_not_matter_in_one_material)
{
  const dw_shim a[] = { film, { 0.2e-3, 1, 4e9, 0.38, 100e6 } };
  const dw_shim b[] = { a[1], a[0] };
  const dw_valve va = stack_of (2, a, 1.0);
  const dw_valve vb = stack_of (2, b, 1.0);
  assert_close (dw_stack_make (&va).stuck, dw_stack_make (&vb).stuck, 1e-12, 0.0, "same plate");
  assert_close (dw_stack_equivalent_thickness (dw_stack_make (&va).stuck, 4e9, 0.38), 0.3e-3, 1e-12,
                0.0, "0.1 + 0.2 stuck is 0.3 mm");
}
END_TEST

/* A bonded plate of two materials: D about the neutral plane by the parallel-axis rule. */
START_TEST (stuck_leaves_of_two_materials_are_a_laminate)
{
  const dw_shim shims[] = { film, steel };
  const dw_valve v = stack_of (2, shims, 1.0);
  const double E1 = 4e9 / (1.0 - 0.38 * 0.38), E2 = 200e9 / (1.0 - 0.09);
  const double t1 = 0.1e-3, t2 = 0.05e-3;
  const double z = (E1 * t1 * t1 / 2.0 + E2 * t2 * (t1 + t2 / 2.0)) / (E1 * t1 + E2 * t2);
  const double D = E1 * (t1 * t1 * t1 / 12.0 + t1 * pow (z - t1 / 2.0, 2))
                   + E2 * (t2 * t2 * t2 / 12.0 + t2 * pow (t1 + t2 / 2.0 - z, 2));
  assert_close (dw_stack_make (&v).stuck, D, 1e-12, 0.0, "parallel axes");
  ck_assert (dw_stack_make (&v).stuck > dw_stack_make (&v).loose);
}
END_TEST

START_TEST (no_shims_are_nothing)
{
  const dw_valve v = stack_of (0, NULL, 0.0);
  const dw_stack s = dw_stack_make (&v);
  ck_assert (s.leaves == 0 && s.stiffness == 0.0 && s.thickness == 0.0);
  ck_assert (dw_stack_stress_ratio (&v, 1.0) == 0.0);
}
END_TEST

/* One leaf: sigma = 6 M/t^2. Loose leaves share the moment by rigidity. */
START_TEST (stress_is_that_of_the_leaf_bent_most)
{
  const dw_valve one = stack_of (1, &film, 0.0);
  assert_close (dw_stack_stress_ratio (&one, 0.1), 6.0 * 0.1 / 1e-8 / 100e6, 1e-12, 0.0, "6 M/t^2");
  const dw_shim two = { 0.1e-3, 2, 4e9, 0.38, 100e6 };
  const dw_valve loose = stack_of (1, &two, 0.0);
  const dw_valve stuck = stack_of (1, &two, 1.0);
  assert_close (dw_stack_stress_ratio (&loose, 0.1), 0.5 * 6.0 * 0.1 / 1e-8 / 100e6, 1e-12, 0.0,
                "half the moment each");
  assert_close (dw_stack_stress_ratio (&stuck, 0.1), 6.0 * 0.1 / 4e-8 / 100e6, 1e-12, 0.0,
                "one leaf of 0.2 mm");
  const dw_shim mixed[] = { film, steel };
  const dw_valve v = stack_of (2, mixed, 0.0);
  const dw_stack s = dw_stack_make (&v);
  const double curvature = 0.1 / s.stiffness;
  assert_close (dw_stack_stress_ratio (&v, 0.1),
                fmax (4e9 / (1.0 - 0.38 * 0.38) * curvature * 0.05e-3 / 100e6,
                      200e9 / 0.91 * curvature * 0.025e-3 / 1000e6),
                1e-12, 0.0, "the worse of the two");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/stack");
  TCase *tc = tcase_create ("stack");
  tcase_add_test (tc, two_equal_leaves_are_twice_or_eight_times_one);
  tcase_add_test (tc, coupling_goes_from_one_bound_to_the_other);
  tcase_add_test (tc, order_of_leaves_does_not_matter_in_one_material);
  tcase_add_test (tc, stuck_leaves_of_two_materials_are_a_laminate);
  tcase_add_test (tc, no_shims_are_nothing);
  tcase_add_test (tc, stress_is_that_of_the_leaf_bent_most);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
