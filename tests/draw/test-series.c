/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>

#include "draw-samples.h"
#include "draw/dw-series.h"

static dw_series *
fill (const dw_damper *damper, double from, double to, bool is_log)
{
  const dw_series_range range = { from, to, is_log };
  dw_series *series = dw_series_new ("x");
  ck_assert_int_eq (dw_series_fill (series, damper, 25.0, &range, NULL), DW_OK);
  return series;
}

START_TEST (points_are_the_models)
{
  const dw_damper d = sample_damper ();
  dw_series *series = fill (&d, 0.0, 2.0, false);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      const dw_series_stroke *stroke = &series->stroke[s];
      ck_assert (stroke->points[0].speed == 0.0);
      ck_assert (stroke->points[stroke->n - 1].speed == 2.0);
      for (size_t i = 0; i < stroke->n; i++)
        {
          dw_force_point p;
          ck_assert (i == 0 || stroke->points[i].speed > stroke->points[i - 1].speed);
          ck_assert_int_eq (
              dw_force_at (&series->model, (dw_stroke)s, stroke->points[i].speed, &p, NULL), DW_OK);
          assert_close (stroke->points[i].force, p.force, 1e-9, 1e-9, "the same model");
          ck_assert (stroke->points[i].is_void == p.is_void || series->onset_speed == p.speed);
        }
    }
  ck_assert (series->motion_ratio == 0.6);
  dw_series_free (series);
}
END_TEST

/* Between the points the drawn line must not be visibly off, force and c, linear and logarithmic:
 * half a percent of the largest force is 0.75 pt in a plot 150 pt high. */
START_TEST (straight_pieces_follow_the_curve)
{
  const bool is_log = _i % 2 == 1;
  test_random random = test_random_new ((uint64_t)_i);
  dw_damper d = sample_damper ();
  d.oil.viscosity = test_random_uniform (&random, 100.0, 1000.0) * 1e-6;
  d.valve.lift_limit = _i < 4 ? 0.1e-3 : 0.6e-3;
  d.gas.kind = _i < 6 ? DW_GAS_BLADDER : DW_GAS_VENTED;
  dw_series *series = fill (&d, is_log ? 0.01 : 0.0, 1.0, is_log);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      const dw_series_stroke *stroke = &series->stroke[s];
      ck_assert_uint_lt (stroke->n, 400);
      double largest = 0.0;
      for (size_t i = 0; i < stroke->n; i++)
        largest = fmax (largest, stroke->points[i].force);
      for (size_t i = 0; i + 1 < stroke->n; i++)
        {
          const dw_series_point *a = &stroke->points[i];
          const dw_series_point *b = &stroke->points[i + 1];
          const double v = is_log ? sqrt (a->speed * b->speed) : 0.5 * (a->speed + b->speed);
          dw_force_point p;
          ck_assert_int_eq (dw_force_at (&series->model, (dw_stroke)s, v, &p, NULL), DW_OK);
          assert_close (0.5 * (a->force + b->force), p.force, 0.0, 0.003 * largest,
                        "force between two points");
          if (a->speed > 0.01)
            assert_close (0.5 * (a->force / a->speed + b->force / b->speed), p.force / v, 0.015,
                          0.0, "c between two points");
        }
    }
  dw_series_free (series);
}
END_TEST

START_TEST (the_onset_is_a_point)
{
  const dw_damper d = sample_damper ();
  dw_series *series = fill (&d, 0.0, 1.0, false);
  bool found = false;
  for (size_t i = 0; i < series->stroke[DW_COMPRESSION].n; i++)
    found = found || series->stroke[DW_COMPRESSION].points[i].speed == series->onset_speed;
  ck_assert (series->onset_speed < 1.0);
  ck_assert (found);
  assert_close (series->onset_force, d.gas.pressure * dw_damper_ring_area (&d) + d.seal_friction,
                0.02, 0.0, "p_gas A and the seal; the film is small");
  dw_series_free (series);
}
END_TEST

START_TEST (high_gas_pressure_has_no_onset)
{
  dw_damper d = sample_damper ();
  d.gas.pressure = 2000e3;
  d.oil.viscosity = 50e-6;
  d.piston.holes[0].diameter = 2.0e-3;
  dw_series *series = fill (&d, 0.0, 0.2, false);
  ck_assert (series->onset_speed > 0.2);
  ck_assert (!series->is_vented);
  dw_series_free (series);
}
END_TEST

START_TEST (a_failure_leaves_what_was_there)
{
  dw_damper d = sample_damper ();
  dw_error err;
  dw_series *series = fill (&d, 0.0, 1.0, false);
  const size_t n = series->stroke[DW_REBOUND].n;
  const double force = series->stroke[DW_REBOUND].points[n - 1].force;
  const dw_series_range range = { 0.0, 1.0, false };
  d.body.bore = -1.0;
  ck_assert_int_ne (dw_series_fill (series, &d, 25.0, &range, &err), DW_OK);
  ck_assert_str_eq (err.field, "body.bore");
  ck_assert (series->stroke[DW_REBOUND].n == n);
  ck_assert (series->stroke[DW_REBOUND].points[n - 1].force == force);
  dw_series_free (series);
}
END_TEST

START_TEST (points_and_bands_are_copied)
{
  dw_series_point points[] = { { .speed = 0.1, .force = 1.0 }, { .speed = 0.2, .force = 2.0 } };
  double low[] = { 0.9, 1.8 };
  double high[] = { 1.1, 2.2 };
  dw_series *series = dw_series_new ("measured");
  dw_series_set_points (series, DW_REBOUND, points, 2);
  dw_series_set_band (series, DW_REBOUND, low, high);
  points[0].force = low[0] = high[0] = 99.0;
  ck_assert (series->stroke[DW_REBOUND].points[0].force == 1.0);
  ck_assert (series->stroke[DW_REBOUND].low[0] == 0.9 && series->stroke[DW_REBOUND].high[0] == 1.1);
  dw_series_set_points (series, DW_REBOUND, points, 1);
  ck_assert (series->stroke[DW_REBOUND].low == NULL);
  dw_series_set_band (series, DW_REBOUND, NULL, NULL);
  ck_assert (isinf (series->onset_speed) && isnan (series->onset_force));
  dw_series_free (series);
  dw_series_free (NULL);
}
END_TEST

/* Inside the band everywhere, and as wide as the study says at the ends. */
START_TEST (the_band_is_that_of_the_study)
{
  const dw_damper damper = sample_damper ();
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  const dw_series_range range = { _i == 1 ? 0.01 : 0.0, 1.0, _i == 1 };
  dw_series *series = dw_series_new ("with a band");
  ck_assert_int_eq (dw_series_fill (series, &damper, 25.0, &range, NULL), DW_OK);
  ck_assert_int_eq (dw_series_fill_band (series, &damper, 25.0, &limits, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      const dw_series_stroke *stroke = &series->stroke[s];
      for (size_t i = 0; i < stroke->n; i++)
        {
          dw_spread_point exact;
          const double v = stroke->points[i].speed;
          ck_assert_int_eq (
              dw_spread_make (&damper, 25.0, &limits, (dw_stroke)s, &v, 1, &exact, NULL), DW_OK);
          ck_assert (stroke->low[i] <= stroke->points[i].force);
          ck_assert (stroke->high[i] >= stroke->points[i].force);
          const double largest = stroke->points[stroke->n - 1].force;
          assert_close (stroke->low[i], dw_spread_low (&exact), 0.0, 0.005 * largest,
                        "less than a line's width beside it");
          assert_close (stroke->high[i], dw_spread_high (&exact), 0.0, 0.005 * largest,
                        "less than a line's width beside it");
        }
    }
  dw_series_free (series);
}
END_TEST

START_TEST (a_band_that_cannot_be_is_left_out)
{
  dw_damper damper = sample_damper ();
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  dw_series *series = sample_series ("without", 450e-6, false);
  damper.body.bore = 1.0;
  ck_assert_int_eq (dw_series_fill_band (series, &damper, 25.0, &limits, NULL), DW_ERR_RANGE);
  ck_assert_ptr_null (series->stroke[DW_REBOUND].low);
  dw_series_free (series);
}
END_TEST

/* Each change of a series that is seen in a chart. */
static void
change (dw_series *series, int what)
{
  dw_series_stroke *stroke = &series->stroke[DW_COMPRESSION];
  switch (what)
    {
    case 0:
      series->name[0] = 'X';
      break;
    case 1:
      series->is_fitted = !series->is_fitted;
      break;
    case 2:
      series->slot++;
      break;
    case 3:
      series->motion_ratio *= 0.5;
      break;
    case 4:
      series->onset_speed = 0.123;
      break;
    case 5:
      series->onset_force = 1.0;
      break;
    case 6:
      series->is_vented = !series->is_vented;
      break;
    case 7:
      stroke->points[stroke->n - 1].force = nextafter (stroke->points[stroke->n - 1].force, 0.0);
      break;
    case 8:
      stroke->points[0].speed = -1.0;
      break;
    case 9:
      stroke->points[1].lost_travel += 1e-3;
      break;
    case 10:
      stroke->points[1].is_void = !stroke->points[1].is_void;
      break;
    case 11:
      stroke->points[1].shares.leak += 0.1;
      break;
    case 12:
      stroke->n--;
      break;
    case 13:
      stroke->low[2] += 1.0;
      break;
    case 14:
      stroke->high[2] = (double)NAN;
      break;
    case 15:
      dw_series_set_band (series, DW_COMPRESSION, NULL, NULL);
      break;
    default:
      ck_abort_msg ("nothing to change %d", what);
    }
}

static dw_series *
with_band (void)
{
  dw_damper d = sample_damper ();
  dw_series *series = fill (&d, 0.0, 1.0, false);
  g_autofree double *edge = g_new0 (double, series->stroke[DW_COMPRESSION].n);
  edge[1] = (double)NAN; /* a gap is the same as a gap */
  dw_series_set_band (series, DW_COMPRESSION, edge, edge);
  return series;
}

START_TEST (whatever_is_seen_tells_series_apart)
{
  dw_series *a = with_band ();
  dw_series *b = with_band ();
  ck_assert (dw_series_same (a, b));
  change (b, _i);
  ck_assert (!dw_series_same (a, b));
  ck_assert (!dw_series_same (b, a));
  dw_series_free (a);
  dw_series_free (b);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/series");
  TCase *tcase = tcase_create ("series");
  tcase_add_test (tcase, points_are_the_models);
  tcase_add_loop_test (tcase, straight_pieces_follow_the_curve, 0, 8);
  tcase_add_test (tcase, the_onset_is_a_point);
  tcase_add_test (tcase, high_gas_pressure_has_no_onset);
  tcase_add_test (tcase, a_failure_leaves_what_was_there);
  tcase_add_test (tcase, points_and_bands_are_copied);
  tcase_add_loop_test (tcase, the_band_is_that_of_the_study, 0, 2);
  tcase_add_test (tcase, a_band_that_cannot_be_is_left_out);
  tcase_add_loop_test (tcase, whatever_is_seen_tells_series_apart, 0, 16);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
