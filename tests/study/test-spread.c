/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-spread.h"

#include <gsl/gsl_qrng.h>
#include <math.h>
#include <string.h>

#include "model/dw-drill.h"
#include "study-dampers.h"
#include "test-support.h"

static const double speeds[] = { 0.05, 0.2, 1.0 };
#define N_SPEEDS 3

enum
{
  SOBOL_POINTS = 4096,
  MOST_VARIABLES = 40
};

static void
make (const dw_damper *damper, const dw_spread_limits *limits, dw_stroke stroke,
      dw_spread_point out[N_SPEEDS])
{
  dw_error err = { .text = "" };
  ck_assert_msg (dw_spread_make (damper, 25.0, limits, stroke, speeds, N_SPEEDS, out, &err)
                     == DW_OK,
                 "%s: %s", err.field, err.text);
}

/* A piston whose holes are all groups of their own, so that each may be off by itself. */
static dw_damper
with_single_holes (const dw_damper *damper)
{
  dw_damper d = *damper;
  d.piston.n_holes = 0;
  for (int i = 0; i < damper->piston.n_holes; i++)
    for (int k = 0; k < damper->piston.holes[i].count; k++)
      {
        ck_assert_int_lt (d.piston.n_holes, DW_MAX_HOLE_GROUPS);
        dw_holes *hole = &d.piston.holes[d.piston.n_holes++];
        *hole = damper->piston.holes[i];
        hole->count = 1;
      }
  return d;
}

/* One build at a point of the unit cube. @return  variables used */
static int
build_at (const dw_damper *single, const dw_spread_limits *limits, const double *u, dw_damper *d,
          double *temperature)
{
  int n = 0;
  *d = *single;
  for (int i = 0; i < d->piston.n_holes; i++)
    d->piston.holes[i].diameter
        += u[n++] * dw_tolerance_it (limits->hole_grade, single->piston.holes[i].diameter);
  d->piston.thickness += limits->piston_thickness * (2.0 * u[n++] - 1.0);
  d->piston.clearance += limits->clearance * (2.0 * u[n++] - 1.0);
  const double shims = 1.0 + limits->shim_thickness * (2.0 * u[n++] - 1.0);
  for (int i = 0; i < d->valve.n_shims; i++)
    d->valve.shims[i].thickness *= shims;
  d->oil.viscosity *= 1.0 + limits->oil * (2.0 * u[n++] - 1.0);
  *temperature = 25.0 + limits->temperature * (2.0 * u[n++] - 1.0);
  return n;
}

/* Mean and standard deviation over 4,096 points of a Sobol sequence (GSL). */
static void
sample (const dw_damper *damper, const dw_spread_limits *limits, dw_stroke stroke,
        double mean[N_SPEEDS], double deviation[N_SPEEDS])
{
  const dw_damper single = with_single_holes (damper);
  double u[MOST_VARIABLES] = { 0.5 };
  double sum[N_SPEEDS] = { 0.0 };
  double squares[N_SPEEDS] = { 0.0 };
  double temperature;
  dw_damper d;
  const int n = build_at (&single, limits, u, &d, &temperature);
  ck_assert_int_le (n, MOST_VARIABLES);
  gsl_qrng *sobol = gsl_qrng_alloc (gsl_qrng_sobol, (unsigned)n);
  for (int k = 0; k < SOBOL_POINTS; k++)
    {
      dw_force_model model;
      dw_force_point points[N_SPEEDS];
      gsl_qrng_get (sobol, u);
      build_at (&single, limits, u, &d, &temperature);
      ck_assert_int_eq (dw_force_model_make (&d, temperature, &model, NULL), DW_OK);
      ck_assert_int_eq (dw_force_curve (&model, stroke, speeds, N_SPEEDS, points, NULL), DW_OK);
      for (int i = 0; i < N_SPEEDS; i++)
        {
          sum[i] += points[i].force;
          squares[i] += points[i].force * points[i].force;
        }
    }
  gsl_qrng_free (sobol);
  for (int i = 0; i < N_SPEEDS; i++)
    {
      mean[i] = sum[i] / SOBOL_POINTS;
      deviation[i] = sqrt (squares[i] / SOBOL_POINTS - mean[i] * mean[i]);
    }
}

static dw_damper
shimmed_damper (void)
{
  dw_damper d = study_damper ();
  d.piston.clearance = 0.03e-3;
  return d;
}

START_TEST (first_order_agrees_with_sobol_points)
{
  const dw_damper damper = shimmed_damper ();
  for (int grade = 11; grade <= 12; grade++)
    {
      dw_spread_limits limits = dw_spread_limits_defaults ();
      limits.hole_grade = grade;
      dw_spread_point out[N_SPEEDS];
      double mean[N_SPEEDS];
      double deviation[N_SPEEDS];
      make (&damper, &limits, (dw_stroke)_i, out);
      sample (&damper, &limits, (dw_stroke)_i, mean, deviation);
      for (int k = 0; k < N_SPEEDS; k++)
        {
          assert_close (out[k].mean, mean[k], 0.01, 0.0, "curvature moves the mean a little");
          assert_close (out[k].deviation, deviation[k], 0.03, 0.0, "asked of the study: 3 %");
        }
    }
}
END_TEST

START_TEST (exact_parts_have_no_spread)
{
  const dw_damper damper = shimmed_damper ();
  const dw_spread_limits none = { 0 };
  dw_spread_point out[N_SPEEDS];
  make (&damper, &none, DW_REBOUND, out);
  for (int i = 0; i < N_SPEEDS; i++)
    {
      ck_assert (out[i].deviation == 0.0 && out[i].pair_deviation == 0.0);
      ck_assert (out[i].mean == out[i].nominal);
      ck_assert (dw_spread_low (&out[i]) == out[i].nominal);
      ck_assert (dw_spread_high (&out[i]) == out[i].nominal);
    }
}
END_TEST

/* Hagen-Poiseuille: at low speed in thick oil the force goes with the viscosity. */
START_TEST (at_low_speed_the_force_follows_the_bottle)
{
  dw_damper damper = dw_damper_defaults ();
  damper.oil.viscosity = 5000e-6;
  damper.piston.clearance = 0.0;
  damper.seal_friction = 0.0;
  damper.gas.kind = DW_GAS_BLADDER;
  const dw_spread_limits limits = { .oil = 0.05 };
  const double slow[] = { 0.001 };
  dw_spread_point out;
  ck_assert_int_eq (dw_spread_make (&damper, 25.0, &limits, DW_REBOUND, slow, 1, &out, NULL),
                    DW_OK);
  assert_close (out.deviation / out.nominal, 0.05 / sqrt (3.0), 1e-3, 0.0, "F ~ nu");
  ck_assert (out.pair_deviation == 0.0);
}
END_TEST

/* The left damper and the right one have the same oil, but not the same holes. */
START_TEST (left_and_right_differ_by_their_own_parts_only)
{
  const dw_damper damper = shimmed_damper ();
  const dw_spread_limits holes = { .hole_error = 0.02e-3 };
  dw_spread_point out[N_SPEEDS];
  make (&damper, &holes, DW_COMPRESSION, out);
  for (int i = 0; i < N_SPEEDS; i++)
    {
      assert_close (out[i].pair_deviation, sqrt (2.0) * out[i].deviation, 1e-12, 0.0,
                    "two independent ones");
      ck_assert (out[i].mean == out[i].nominal);
    }
}
END_TEST

/* As many holes again, at the same size: each counts half, and chance evens out. */
START_TEST (more_holes_scatter_less)
{
  dw_damper few = dw_damper_defaults ();
  few.piston.holes[0] = (dw_holes){ 4, 1.0e-3, false };
  few.piston.n_holes = 1;
  few.piston.clearance = 0.0;
  dw_damper many = few;
  many.piston.holes[0].count = 16;
  const dw_spread_limits holes = { .hole_grade = 11 };
  dw_spread_point a[N_SPEEDS];
  dw_spread_point b[N_SPEEDS];
  make (&few, &holes, DW_REBOUND, a);
  make (&many, &holes, DW_REBOUND, b);
  assert_close ((b[0].deviation / b[0].mean) / (a[0].deviation / a[0].mean), 0.5, 0.02, 0.0,
                "1/sqrt(n), the relative slope at low speed is that of d^-4 in both");
}
END_TEST

START_TEST (drilled_holes_are_never_smaller_than_the_drill)
{
  const dw_damper damper = shimmed_damper ();
  const dw_spread_limits holes = { .hole_grade = 12 };
  dw_spread_point out[N_SPEEDS];
  make (&damper, &holes, DW_REBOUND, out);
  for (int i = 0; i < N_SPEEDS; i++)
    {
      ck_assert (out[i].mean < out[i].nominal);
      ck_assert (dw_spread_high (&out[i]) == out[i].nominal);
      ck_assert (dw_spread_low (&out[i]) < out[i].mean);
    }
}
END_TEST

/* A covered hole that fills the shim's ring can only be made smaller. */
START_TEST (at_the_end_of_what_can_be_the_slope_is_one_sided)
{
  dw_damper damper = shimmed_damper ();
  dw_force_model model;
  dw_holes *covered = NULL;
  for (int i = 0; i < damper.piston.n_holes; i++)
    if (damper.piston.holes[i].covered)
      covered = &damper.piston.holes[i];
  ck_assert_ptr_nonnull (covered);
  while (dw_force_model_make (&damper, 25.0, &model, NULL) == DW_OK)
    covered->diameter += 0.001e-3;
  covered->diameter -= 0.002e-3;
  const dw_spread_limits holes = { .hole_grade = 12 };
  dw_spread_point out[N_SPEEDS];
  make (&damper, &holes, DW_COMPRESSION, out);
  for (int i = 0; i < N_SPEEDS; i++)
    ck_assert (out[i].deviation > 0.0 && isfinite (out[i].deviation));
}
END_TEST

START_TEST (a_damper_that_cannot_be_is_refused)
{
  dw_damper damper = dw_damper_defaults ();
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  dw_spread_point out[N_SPEEDS];
  dw_error err;
  damper.body.bore = 1.0;
  ck_assert_int_eq (
      dw_spread_make (&damper, 25.0, &limits, DW_REBOUND, speeds, N_SPEEDS, out, &err),
      DW_ERR_RANGE);
  ck_assert_str_eq (err.field, "body.bore");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/spread");
  TCase *tcase = tcase_create ("spread");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, first_order_agrees_with_sobol_points, 0, DW_N_STROKES);
  tcase_add_test (tcase, exact_parts_have_no_spread);
  tcase_add_test (tcase, at_low_speed_the_force_follows_the_bottle);
  tcase_add_test (tcase, left_and_right_differ_by_their_own_parts_only);
  tcase_add_test (tcase, more_holes_scatter_less);
  tcase_add_test (tcase, drilled_holes_are_never_smaller_than_the_drill);
  tcase_add_test (tcase, at_the_end_of_what_can_be_the_slope_is_one_sided);
  tcase_add_test (tcase, a_damper_that_cannot_be_is_refused);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
