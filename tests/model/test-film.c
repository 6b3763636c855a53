/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>

#include "model/dw-film.h"
#include "test-support.h"

static const dw_fluid oil = { .viscosity = 400e-6, .density = 970.0, .dynamic = 400e-6 * 970.0 };

typedef struct
{
  double square, worst;
  int n;
} deviation;

static void
deviate (deviation *d, double value, double truth)
{
  const double e = value / truth - 1.0;
  d->square += e * e;
  d->worst = fmax (d->worst, fabs (e));
  d->n++;
}

static double
rms (const deviation *d)
{
  return sqrt (d->square / d->n);
}

/* Axisymmetric Navier-Stokes in a slot and an even gap, made for this project with a general
 * finite-element program; total pressure, dp* = dp h/(mu V), V at the rim, Re = V h/nu. */
START_TEST (resolved_gap_flow_is_met_within_8_percent_rms)
{
  test_table *table = test_table_read ("gap_flow.csv");
  deviation d = { 0 };

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const double h = test_table_number (table, i, "h_mm") * 1e-3;
      const double slot = test_table_number (table, i, "slot_width_mm") * 1e-3;
      const double outer_edge = test_table_number (table, i, "r_slot_out_mm") * 1e-3;
      const double circle = outer_edge - slot / 2.0;
      const dw_film_ring ring = { test_table_number (table, i, "r_hub_mm") * 1e-3,
                                  test_table_number (table, i, "r_out_mm") * 1e-3, circle };
      const double rim = 2.0 * M_PI * ring.rim;
      const dw_film film = dw_film_make (&oil, &ring, log (ring.rim / outer_edge), 1.0, 1.0,
                                         2.0 * M_PI * circle * slot);
      const double v = test_table_number (table, i, "re_gap") * oil.viscosity / h;
      const double p = dw_film_pressure (&film, v * h * rim, h);
      deviate (&d, p * h / (oil.dynamic * v), test_table_number (table, i, "dp_star_total"));
    }
  printf ("film against %d resolved gap flows: rms %.1f %%, worst %.1f %%\n", d.n, 100.0 * rms (&d),
          100.0 * d.worst);
  ck_assert_int_eq (d.n, 39);
  ck_assert (rms (&d) < 0.08);
  ck_assert (d.worst < 0.10);
  test_table_free (table);
}
END_TEST

/* Reynolds' equation with discrete holes in an even gap, made with a general finite-element
 * program. The holes of the 4.35 mm row end 0.1 mm from the rim: outside the closed form. */
START_TEST (even_gap_around_holes_is_met)
{
  test_table *table = test_table_read ("heleshaw.csv");
  deviation d = { 0 };

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const dw_film_ring ring = { test_table_number (table, i, "r_hub_mm"),
                                  test_table_number (table, i, "r_out_mm"),
                                  test_table_number (table, i, "r_pitch_mm") };
      const double hole = test_table_number (table, i, "d_hole_mm");
      if (test_table_number (table, i, "h_exponent") != 0.0 || ring.rim < 4.4)
        continue;
      deviate (&d,
               dw_film_even_resistance (&ring, hole, (int)test_table_number (table, i, "n_holes")),
               test_table_number (table, i, "R_2pi"));
    }
  printf ("even gap against %d solutions: rms %.1f %%, worst %.1f %%\n", d.n, 100.0 * rms (&d),
          100.0 * d.worst);
  ck_assert_int_ge (d.n, 15);
  ck_assert (rms (&d) < 0.08);
  ck_assert (d.worst < 0.17);
  test_table_free (table);
}
END_TEST

/* tests/data/film_coupled.csv, see its head and film-coupled.py. */
START_TEST (shim_bent_by_its_own_pressure_is_met)
{
  test_table *table = test_table_read ("film_coupled.csv");
  deviation lobe = { 0 }, area = { 0 }, resistance = { 0 }, flow = { 0 };

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const dw_film_ring ring = { test_table_number (table, i, "r_hub_mm"),
                                  test_table_number (table, i, "r_out_mm"),
                                  test_table_number (table, i, "r_pitch_mm") };
      const double hole = test_table_number (table, i, "d_hole_mm");
      const int n = (int)test_table_number (table, i, "n_holes");
      const double crowding = n * hole / (2.0 * M_PI * ring.hole_circle);
      const double true_lobe = test_table_number (table, i, "hole");
      const double true_area = test_table_number (table, i, "load_area_mm2");
      const double true_r = test_table_number (table, i, "r2") * pow (true_lobe, 3);
      const double l = dw_film_lobe (&ring, hole, n);
      const double a = dw_film_load_area (&ring, hole, crowding);
      const double r = dw_film_bent_resistance (&ring, hole, crowding) / n;
      deviate (&lobe, l, true_lobe);
      deviate (&area, a, true_area);
      deviate (&resistance, r, true_r);
      /* viscous flow at a pressure: lift cubed over R */
      deviate (&flow, pow (a * l, 3) / r, pow (true_area * true_lobe, 3) / true_r);
    }
  printf ("bent shim against %d coupled solutions (rms, worst): lobe %.1f %.1f %%, load area "
          "%.1f %.1f %%, resistance %.1f %.1f %%, flow %.1f %.1f %%\n",
          lobe.n, 100.0 * rms (&lobe), 100.0 * lobe.worst, 100.0 * rms (&area), 100.0 * area.worst,
          100.0 * rms (&resistance), 100.0 * resistance.worst, 100.0 * rms (&flow),
          100.0 * flow.worst);
  ck_assert_int_eq (lobe.n, 50);
  ck_assert (rms (&lobe) < 0.015 && lobe.worst < 0.04);
  ck_assert (rms (&area) < 0.03 && area.worst < 0.06);
  ck_assert (rms (&resistance) < 0.02 && resistance.worst < 0.04);
  ck_assert (rms (&flow) < 0.08);
  test_table_free (table);
}
END_TEST

static const dw_film_ring usual = { 3.0e-3, 4.7e-3, 3.8e-3 };

static dw_film
usual_film (const dw_fluid *fluid)
{
  return dw_film_make (fluid, &usual, 1.5, 0.4, 2.0, M_PI * 1e-6);
}

START_TEST (flow_is_the_inverse_of_pressure)
{
  test_random r = test_random_new (21);
  int held = 0;

  for (int k = 0; k < 5000; k++)
    {
      const double nu = test_random_log_uniform (&r, 1e-6, 1e-2);
      const dw_fluid fluid = { .viscosity = nu, .density = 970.0, .dynamic = nu * 970.0 };
      const dw_film film = usual_film (&fluid);
      const double w = test_random_log_uniform (&r, 1e-6, 5e-3);
      const double p = test_random_log_uniform (&r, 1.0, 1e7);
      const double q = dw_film_flow_at (&film, p, w, 0.0, 0.0).flow;
      const double back = dw_film_pressure (&film, q, w);
      /* held at the flow of a smaller lift, it is more than this lift alone would pass */
      if (back > p * (1.0 + 1e-10))
        held++;
      else
        assert_close (back, p, 1e-10, 0.0, "round trip");
      /* a guess changes the way, not the answer */
      assert_close (dw_film_flow_at (&film, p, w, 0.0, 0.9 * q).flow, q, 1e-10, 0.0, "guessed low");
      assert_close (dw_film_flow_at (&film, p, w, 0.0, 1.05 * q).flow, q, 1e-10, 0.0,
                    "guessed high");
    }
  ck_assert_int_lt (held, 500);
}
END_TEST

START_TEST (slope_follows_the_lift)
{
  test_random r = test_random_new (22);

  for (int k = 0; k < 3000; k++)
    {
      const dw_film film = usual_film (&oil);
      const double rate = test_random_log_uniform (&r, 1e-11, 1e-7);
      const double p = test_random_log_uniform (&r, 1e3, 1e6);
      const double h = 1e-5;
      const double w = rate * p;
      if (fabs (w * film.ratio / DW_FILM_RESOLVED_RATIO - 1.0) < 1e-3)
        continue; /* the corner at the end of the resolved range */
      const dw_film_flow at = dw_film_flow_at (&film, p, w, rate, 0.0);
      const double lo = dw_film_flow_at (&film, p * (1.0 - h), w * (1.0 - h), rate, 0.0).flow;
      const double hi = dw_film_flow_at (&film, p * (1.0 + h), w * (1.0 + h), rate, 0.0).flow;
      assert_close (at.by_pressure, (hi - lo) / (2.0 * h * p), 1e-4, 0.0, "central difference");
    }
}
END_TEST

START_TEST (more_lift_lets_more_oil_through)
{
  const dw_film film = usual_film (&oil);
  double last = 0.0;

  for (double w = 1e-7; w < 10e-3; w *= 1.05)
    {
      const double q = dw_film_flow_at (&film, 2e5, w, 0.0, 0.0).flow;
      ck_assert_msg (q > last, "lift %g m", w);
      last = q;
    }
  ck_assert (dw_film_flow_at (&film, 2e5, 0.0, 0.0, 0.0).flow == 0.0);
  ck_assert (dw_film_flow_at (&film, 0.0, 1e-4, 0.0, 0.0).flow == 0.0);
}
END_TEST

/* Where the fit alone would have a wide gap pass less than a narrower one. */
START_TEST (more_lift_never_lets_less_oil_through)
{
  test_random r = test_random_new (24);
  int held = 0;

  for (int k = 0; k < 300; k++)
    {
      const double nu = test_random_log_uniform (&r, 1e-6, 1e-3);
      const dw_fluid fluid = { .viscosity = nu, .density = 970.0, .dynamic = nu * 970.0 };
      const double area = test_random_log_uniform (&r, 1e-6, 4e-5);
      const dw_film film = dw_film_make (&fluid, &usual, test_random_log_uniform (&r, 0.01, 2.0),
                                         test_random_uniform (&r, 0.2, 0.7),
                                         test_random_uniform (&r, 1.0, 3.0), area);
      const double p = test_random_log_uniform (&r, 1e4, 1e7);
      double last = 0.0;
      for (double w = 1e-6; w < 20e-3; w *= 1.1)
        {
          const double q = dw_film_flow_at (&film, p, w, 0.0, 0.0).flow;
          ck_assert_msg (q >= last * (1.0 - 1e-9), "film %d, lift %g m: %g after %g", k, w, q,
                         last);
          held += q <= last * (1.0 + 1e-9);
          last = q;
        }
    }
  ck_assert_int_gt (held, 100);
}
END_TEST

START_TEST (closed_forms_stay_sound_far_outside_their_range)
{
  test_random r = test_random_new (23);

  for (int k = 0; k < 20000; k++)
    {
      const double rim = test_random_log_uniform (&r, 2e-3, 15e-3);
      const double hub = rim * test_random_uniform (&r, 0.1, 0.9);
      const double d = (rim - hub) * test_random_uniform (&r, 0.02, 0.95);
      const dw_film_ring ring = { hub, rim,
                                  test_random_uniform (&r, hub + d / 2.0, rim - d / 2.0) };
      const int n = test_random_int (&r, 1, 64);
      const double crowding = test_random_uniform (&r, 0.0, 1.0);
      const double bent = dw_film_bent_resistance (&ring, d, crowding);
      const double area = dw_film_load_area (&ring, d, crowding);
      ck_assert (isfinite (bent) && bent > 0.0);
      ck_assert (isfinite (area) && area >= M_PI / 4.0 * d * d);
      ck_assert (dw_film_lobe (&ring, d, n) >= 1.0);
      ck_assert (dw_film_even_resistance (&ring, d, n) > 0.0);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/film");
  TCase *tc = tcase_create ("film");
  tcase_set_timeout (tc, 60);
  tcase_add_test (tc, resolved_gap_flow_is_met_within_8_percent_rms);
  tcase_add_test (tc, even_gap_around_holes_is_met);
  tcase_add_test (tc, shim_bent_by_its_own_pressure_is_met);
  tcase_add_test (tc, flow_is_the_inverse_of_pressure);
  tcase_add_test (tc, slope_follows_the_lift);
  tcase_add_test (tc, more_lift_lets_more_oil_through);
  tcase_add_test (tc, more_lift_never_lets_less_oil_through);
  tcase_add_test (tc, closed_forms_stay_sound_far_outside_their_range);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
