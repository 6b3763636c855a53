/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-figures.h"
#include "test-support.h"

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

static dw_figures
read_figures (const dw_damper *d)
{
  dw_force_model m;
  dw_figures f;
  ck_assert_int_eq (dw_force_model_make (d, 25.0, &m, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&m, speeds, &f, NULL), DW_OK);
  return f;
}

START_TEST (figures_are_read_off_the_curve)
{
  const dw_damper d = dw_damper_defaults ();
  const dw_figures f = read_figures (&d);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      for (int i = 0; i < DW_N_SPEEDS; i++)
        {
          ck_assert (f.point[s][i].speed == speeds[i]);
          assert_close (f.c[s][i], f.point[s][i].force / speeds[i], 1e-15, 0.0, "c = F/v");
        }
      assert_close (f.pack[s], f.point[s][DW_HIGH].force / f.point[s][DW_LOW].force / (1.0 / 0.05),
                    1e-12, 0.0, "force ratio over speed ratio");
      ck_assert (f.pack[s] > 1.0);
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    assert_close (f.rebound_share[i], 1.0, 1e-12, 0.0, "plain piston, gas at air pressure");
}
END_TEST

/* Thick oil in long holes: nothing but viscosity. */
START_TEST (viscous_damper_does_not_pack)
{
  dw_damper d = dw_damper_defaults ();
  d.oil.viscosity = 100000e-6;
  d.piston.thickness = 10e-3;
  assert_close (read_figures (&d).pack[DW_REBOUND], 1.0, 0.001, 0.0, "Re below 0.5");
}
END_TEST

START_TEST (small_holes_pack_more)
{
  dw_damper small = dw_damper_defaults ();
  dw_damper large = small;
  small.piston.holes[0].diameter = 1.1e-3;
  large.piston.holes[0].diameter = 1.6e-3;
  ck_assert (read_figures (&small).pack[DW_REBOUND] > read_figures (&large).pack[DW_REBOUND]);
}
END_TEST

START_TEST (speeds_that_do_not_rise_are_refused)
{
  const dw_damper d = dw_damper_defaults ();
  const double bad[][DW_N_SPEEDS]
      = { { 0.0, 0.2, 1.0 }, { 0.2, 0.2, 1.0 }, { 0.05, 2.0, 1.0 }, { 0.05, 0.2, NAN } };
  const int at[] = { 0, 1, 2, 2 };
  dw_force_model m;
  dw_figures f;
  dw_error err;
  ck_assert_int_eq (dw_force_model_make (&d, 25.0, &m, NULL), DW_OK);
  for (int i = 0; i < N_ENTRIES (bad); i++)
    {
      ck_assert_int_eq (dw_figures_read (&m, bad[i], &f, &err), DW_ERR_RANGE);
      ck_assert_int_eq (err.index, at[i]);
      ck_assert_str_eq (err.field, "speed");
    }
}
END_TEST

START_TEST (shares_of_the_flow_add_to_one)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.n_holes = 2;
  d.piston.holes[1] = (dw_holes){ .count = 4, .diameter = 1e-3, .covered = true };
  d.valve.n_shims = 1;
  d.valve.shims[0] = (dw_shim){ 0.1e-3, 1, 4e9, 0.38, 100e6 };
  const dw_figures f = read_figures (&d);
  const dw_flow_shares r = dw_flow_shares_of (&f.point[DW_REBOUND][DW_HIGH]);
  const dw_flow_shares c = dw_flow_shares_of (&f.point[DW_COMPRESSION][DW_HIGH]);
  assert_close (r.open + r.covered + r.leak, 1.0, 1e-12, 0.0, "all of the oil");
  ck_assert (r.covered > 0.05 && c.covered == 0.0 && r.leak > 0.0);
  const dw_force_point rest = { 0 };
  const dw_flow_shares none = dw_flow_shares_of (&rest);
  ck_assert (none.open == 0.0 && none.covered == 0.0 && none.leak == 0.0);
}
END_TEST

/* Ogata, Rao: critical damping is 2 sqrt(k m). */
START_TEST (wheel_values_are_those_of_the_textbook)
{
  ck_assert (dw_wheel_rate (400.0, 0.6) == 400.0 * 0.36);
  ck_assert (dw_wheel_damping (20.0, 0.6) == 20.0 * 0.36);
  assert_close (dw_damping_ratio (2.0 * sqrt (220.0 * 0.6), 220.0, 0.6), 1.0, 1e-12, 0.0,
                "critical");
  assert_close (dw_ride_frequency (250.0, 0.45), 3.751318, 1e-6, 0.0, "sqrt(k/m)/(2 pi)");
}
END_TEST

/* By hand: c = (20 + 30)/2 at the shaft, MR 0.5, so 6.25 N s/m at the wheel; k = 400 MR^2 = 100 N/m,
 * m = 0.5 kg; 6.25 / (2 sqrt (50)) = 0.441942. */
START_TEST (the_damping_ratio_is_of_the_mean_of_both_strokes)
{
  dw_damper damper = dw_damper_defaults ();
  dw_figures figures = { .rebound_share = { 0.0 } };
  damper.motion_ratio = 0.5;
  damper.spring.rate = 400.0;
  figures.c[DW_COMPRESSION][DW_MIDDLE] = 20.0;
  figures.c[DW_REBOUND][DW_MIDDLE] = 30.0;
  assert_close (dw_figures_damping_ratio (&figures, &damper, DW_MIDDLE, 0.5), 0.4419417382, 1e-9,
                0.0, "by hand");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/figures");
  TCase *tc = tcase_create ("figures");
  tcase_add_test (tc, figures_are_read_off_the_curve);
  tcase_add_test (tc, viscous_damper_does_not_pack);
  tcase_add_test (tc, small_holes_pack_more);
  tcase_add_test (tc, speeds_that_do_not_rise_are_refused);
  tcase_add_test (tc, shares_of_the_flow_add_to_one);
  tcase_add_test (tc, wheel_values_are_those_of_the_textbook);
  tcase_add_test (tc, the_damping_ratio_is_of_the_mean_of_both_strokes);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
