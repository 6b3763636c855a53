/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>

#include "model/dw-plate.h"
#include "test-support.h"

/* Resolved axisymmetric bending with large deflection, made for this project with a general
 * finite-element program; also with finite rotation. */
START_TEST (resolved_bending_is_met)
{
  test_table *table = test_table_read ("shim_bending.csv");
  const size_t n = test_table_n_rows (table);
  double linear = 0.0, large = 0.0, ring = 0.0, rotated = 0.0, stress = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      const double t = test_table_number (table, i, "t_mm") * 1e-3;
      const double E = test_table_number (table, i, "e_gpa") * 1e9;
      const double nu = test_table_number (table, i, "nu");
      const dw_plate plate = { test_table_number (table, i, "b_mm") * 1e-3,
                               test_table_number (table, i, "a_mm") * 1e-3,
                               E * t * t * t / (12.0 * (1.0 - nu * nu)), nu };
      const double p = test_table_number (table, i, "p_mpa") * 1e6;
      dw_shim_lift lift;
      ck_assert_int_eq (dw_plate_lift (&plate, E * t, test_table_number (table, i, "r1_mm") * 1e-3,
                                       test_table_number (table, i, "r2_mm") * 1e-3, p, &lift,
                                       NULL),
                        DW_OK);
#define ERROR(value, column) fabs ((value) / (test_table_number (table, i, column) * 1e-3) - 1.0)
      linear = fmax (linear, ERROR (lift.rim_linear, "edge_deflection_linear_mm"));
      large = fmax (large, ERROR (lift.rim, "edge_deflection_nl_mm"));
      ring = fmax (ring, ERROR (lift.ring, "pitch_deflection_nl_mm"));
      rotated = fmax (rotated, ERROR (lift.rim, "edge_deflection_finrot_mm"));
#undef ERROR
      /* where the lift is linear so is the stress at the hub: 6 M/t^2 */
      const double moment = dw_plate_pressure_outside (&plate, 3.3e-3, p).root_moment
                            - dw_plate_pressure_outside (&plate, 4.3e-3, p).root_moment;
      if (lift.rim > 0.998 * lift.rim_linear)
        stress = fmax (stress, fabs (6.0 * moment / (t * t)
                                         / (test_table_number (table, i, "root_stress_mpa") * 1e6)
                                     - 1.0));
    }
  printf ("lift against %zu resolved plates: linear %.3f %%, large %.3f %%, at the ring %.3f %%, "
          "finite rotation %.2f %%, root stress %.2f %%\n",
          n, 100.0 * linear, 100.0 * large, 100.0 * ring, 100.0 * rotated, 100.0 * stress);
  ck_assert_uint_eq (n, 180);
  ck_assert (linear < 1e-3);
  ck_assert (large < 2e-3);
  ck_assert (ring < 2e-3);
  ck_assert (rotated < 0.05);
  ck_assert (stress < 0.03);
  test_table_free (table);
}
END_TEST

/* Three-dimensional shells under an even ring of pressure, linear rows: mean rim lift. */
START_TEST (resolved_shells_under_a_ring_are_met)
{
  test_table *table = test_table_read ("shim_3d.csv");
  int rows = 0;

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const char *mode = test_table_text (table, i, "mode");
      const char *kind = test_table_text (table, i, "kind");
      if (mode[0] != 'r' || kind[0] != 'l')
        continue;
      const double t = test_table_number (table, i, "t_mm") * 1e-3;
      const double nu = test_table_number (table, i, "nu");
      const double E = test_table_number (table, i, "e_mpa") * 1e6;
      const dw_plate plate = { test_table_number (table, i, "b_mm") * 1e-3, 4.75e-3,
                               E * t * t * t / (12.0 * (1.0 - nu * nu)), nu };
      const double p = test_table_number (table, i, "p_ring_equiv_mpa") * 1e6;
      const double lift = dw_plate_pressure_outside (&plate, 3.3e-3, p).rim
                          - dw_plate_pressure_outside (&plate, 4.3e-3, p).rim;
      assert_close (lift, test_table_number (table, i, "w_edge_mean") * 1e-3, 0.015, 0.0,
                    "linear shell, mean rim lift; shear and mesh 1.2 %");
      rows++;
    }
  ck_assert_int_ge (rows, 2);
  test_table_free (table);
}
END_TEST

static dw_plate
plate_of (double inner_ratio)
{
  return (dw_plate){ inner_ratio * 5e-3, 5e-3, 4e-4, 0.35 };
}

START_TEST (field_meets_the_rim_and_the_hub)
{
  for (double x = 0.15; x < 0.9; x += 0.1)
    {
      const dw_plate plate = plate_of (x);
      for (double y = x + 0.02; y <= 1.0; y += 0.07)
        {
          const double r0 = y * plate.outer;
          const dw_plate_answer a = dw_plate_ring_line (&plate, r0, 100.0);
          assert_close (dw_plate_deflection (&plate, r0, 100.0, plate.outer), a.rim, 1e-9, 1e-18,
                        "the field at the rim");
          ck_assert (dw_plate_deflection (&plate, r0, 100.0, plate.inner) == 0.0);
          double last = 0.0;
          for (int i = 1; i <= 20; i++)
            {
              const double r = plate.inner + (plate.outer - plate.inner) * i / 20.0;
              const double w = dw_plate_deflection (&plate, r0, 100.0, r);
              ck_assert_msg (w > last, "the field rises towards the rim");
              last = w;
            }
          ck_assert (a.slope > 0.0);
        }
    }
}
END_TEST

/* Superposition: pressure from r0 outwards is the sum of line loads on every circle. */
START_TEST (pressure_is_the_sum_of_its_circles)
{
  const dw_plate plate = plate_of (0.5);
  const double r0 = 3.2e-3, p = 1e4;
  const int n = 2000;
  const double step = (plate.outer - r0) / n;
  double rim = 0.0, moment = 0.0;

  for (int i = 0; i < n; i++)
    {
      const dw_plate_answer a = dw_plate_ring_line (&plate, r0 + (i + 0.5) * step, p * step);
      rim += a.rim;
      moment += a.root_moment;
    }
  const dw_plate_answer whole = dw_plate_pressure_outside (&plate, r0, p);
  assert_close (rim, whole.rim, 1e-6, 0.0, "midpoint rule, 2000 circles");
  assert_close (moment, whole.root_moment, 1e-6, 0.0, "midpoint rule, 2000 circles");
}
END_TEST

START_TEST (large_deflection_starts_linear_and_then_stiffens)
{
  const double t = 0.1e-3, nu = 0.38, E = 4e9;
  const dw_plate plate = { 3e-3, 4.7e-3, E * t * t * t / (12.0 * (1.0 - nu * nu)), nu };
  dw_shim_lift small, large, last = { 0 };

  ck_assert_int_eq (dw_plate_lift (&plate, E * t, 3.3e-3, 4.3e-3, 1.0, &small, NULL), DW_OK);
  assert_close (small.rim, small.rim_linear, 2e-4, 0.0, "1 Pa; grid error of the differences");
  for (double p = 10.0; p < 5e7; p *= 1.5)
    {
      ck_assert_int_eq (dw_plate_lift (&plate, E * t, 3.3e-3, 4.3e-3, p, &large, NULL), DW_OK);
      ck_assert (large.rim > last.rim && large.ring > last.ring && large.rim > large.ring);
      ck_assert (large.rim <= large.rim_linear * (1.0 + 2e-4));
      last = large;
    }
  ck_assert (last.rim < 0.05 * last.rim_linear);
}
END_TEST

START_TEST (no_pressure_lifts_nothing)
{
  const dw_plate plate = plate_of (0.4);
  dw_shim_lift lift;
  ck_assert_int_eq (dw_plate_lift (&plate, 4e5, 3e-3, 4e-3, 0.0, &lift, NULL), DW_OK);
  ck_assert (lift.rim == 0.0 && lift.ring == 0.0 && lift.rim_linear == 0.0);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/plate");
  TCase *tc = tcase_create ("plate");
  tcase_set_timeout (tc, 60);
  tcase_add_test (tc, resolved_bending_is_met);
  tcase_add_test (tc, resolved_shells_under_a_ring_are_met);
  tcase_add_test (tc, field_meets_the_rim_and_the_hub);
  tcase_add_test (tc, pressure_is_the_sum_of_its_circles);
  tcase_add_test (tc, large_deflection_starts_linear_and_then_stiffens);
  tcase_add_test (tc, no_pressure_lifts_nothing);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
