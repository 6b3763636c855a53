/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-caution.h"

#include "study-dampers.h"
#include "test-support.h"

/* A damper with one shim, and one point at 1 m/s at which nothing is to be said. */
static dw_damper damper;
static dw_force_point quiet;

static void
set_up (void)
{
  damper = study_damper ();
  quiet = (dw_force_point){ .speed = 1.0, .reynolds = 50.0, .shear_rate = 5e3 };
}

/* Root moment at which the stack stands @p ratio of its stress. */
static double
moment_of (double ratio)
{
  return ratio / dw_stack_stress_ratio (&damper.valve, 1.0);
}

static const struct
{
  double reynolds;
  double shear_rate;
  double stress;
  bool at_stop;
  int n;
  dw_caution_kind kind[3];
  const char *why;
} rows[] = {
  { 50.0, 5e3, 0.5, false, 0, { 0 }, "nothing to say" },
  { 600.0, 1e4, 0.999, false, 0, { 0 }, "the limits themselves are good" },
  { 601.0, 5e3, 0.0, false, 1, { DW_CAUTION_RESOLVED }, "past what was resolved" },
  { 2001.0, 5e3, 0.0, false, 2, { DW_CAUTION_RESOLVED, DW_CAUTION_TURBULENT }, "not laminar" },
  { 50.0, 1.1e4, 0.0, false, 1, { DW_CAUTION_THINNING }, "silicone thins" },
  { 50.0, 5e3, 1.001, false, 1, { DW_CAUTION_STRESS }, "the shim stays bent" },
  { 50.0, 5e3, 1.2, true, 2, { DW_CAUTION_STRESS, DW_CAUTION_AT_STOP }, "at the stop washer" },
};

START_TEST (a_limit_that_is_passed_is_told)
{
  dw_force_point point = quiet;
  point.reynolds = rows[_i].reynolds;
  point.shear_rate = rows[_i].shear_rate;
  point.root_moment = moment_of (rows[_i].stress);
  point.at_stop = rows[_i].at_stop;
  dw_caution out[DW_N_CAUTIONS];
  const size_t n = dw_caution_find (&damper, DW_REBOUND, &point, 1, out);
  ck_assert_msg (n == (size_t)rows[_i].n, "%zu cautions: %s", n, rows[_i].why);
  for (size_t i = 0; i < n; i++)
    {
      ck_assert_msg (out[i].kind == rows[_i].kind[i], "%s", rows[_i].why);
      ck_assert (out[i].stroke == DW_REBOUND && out[i].speed == 1.0);
    }
}
END_TEST

START_TEST (the_first_speed_and_the_worst_value_are_kept)
{
  dw_force_point points[4] = { quiet, quiet, quiet, quiet };
  const double reynolds[] = { 100.0, 650.0, 900.0, 700.0 };
  for (int i = 0; i < 4; i++)
    {
      points[i].speed = 0.1 * (i + 1);
      points[i].reynolds = reynolds[i];
    }
  dw_caution out[DW_N_CAUTIONS];
  ck_assert_uint_eq (dw_caution_find (&damper, DW_COMPRESSION, points, 4, out), 1);
  ck_assert (out[0].speed == points[1].speed);
  ck_assert (out[0].worst == 900.0);
  ck_assert_int_eq (out[0].stroke, DW_COMPRESSION);
}
END_TEST

START_TEST (an_oil_that_is_known_to_thin_needs_no_caution)
{
  dw_force_point point = quiet;
  point.shear_rate = 1e6;
  dw_caution out[DW_N_CAUTIONS];
  ck_assert_uint_eq (dw_caution_find (&damper, DW_REBOUND, &point, 1, out), 1);
  damper.oil.has_thinning = true;
  damper.oil.thinning_rate = 1e4;
  damper.oil.thinning_exponent = 0.8;
  ck_assert_uint_eq (dw_caution_find (&damper, DW_REBOUND, &point, 1, out), 0);
  damper.oil.has_thinning = false;
  damper.oil.kind = DW_OIL_MEASURED;
  ck_assert_uint_eq (dw_caution_find (&damper, DW_REBOUND, &point, 1, out), 0);
}
END_TEST

START_TEST (no_points_no_caution)
{
  dw_caution out[DW_N_CAUTIONS];
  ck_assert_uint_eq (dw_caution_find (&damper, DW_REBOUND, NULL, 0, out), 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/dw-caution");
  TCase *tc = tcase_create ("caution");
  tcase_add_checked_fixture (tc, set_up, NULL);
  tcase_add_loop_test (tc, a_limit_that_is_passed_is_told, 0, N_ENTRIES (rows));
  tcase_add_test (tc, the_first_speed_and_the_worst_value_are_kept);
  tcase_add_test (tc, an_oil_that_is_known_to_thin_needs_no_caution);
  tcase_add_test (tc, no_points_no_caution);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
