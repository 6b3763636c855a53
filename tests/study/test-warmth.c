/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-warmth.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "model/dw-limits.h"
#include "model/dw-units.h"
#include "random-damper.h"
#include "study-dampers.h"
#include "test-support.h"

static const double usual[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

static dw_warmth
ask (const dw_damper *damper, double now, double then)
{
  return (dw_warmth){ damper, now, then, { usual[0], usual[1], usual[2] } };
}

static dw_oil
nominal (double cst)
{
  return (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = cst * DW_CST };
}

static dw_oil
measured (double viscosity1, double viscosity2)
{
  return (dw_oil){ .kind = DW_OIL_MEASURED,
                   .point_temperature = { 10.0, 40.0 },
                   .point_viscosity = { viscosity1, viscosity2 },
                   .density = 940.0 };
}

/* Open holes alone, tight on the bore, no seal, no push: the force is dp A. */
static dw_damper
plain_damper (double cst)
{
  dw_damper d = study_damper ();
  d.piston.n_holes = 1;
  d.piston.holes[0] = (dw_holes){ 6, 1.3e-3, false };
  d.piston.clearance = 0.0;
  d.valve.n_shims = 0;
  d.seal_friction = 0.0;
  d.gas.pressure = 101325.0;
  d.oil = nominal (cst);
  return d;
}

static dw_figures
figures_of (const dw_damper *damper, double temperature, const double speeds[DW_N_SPEEDS])
{
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (damper, temperature, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &figures, NULL), DW_OK);
  return figures;
}

/* ---- two temperatures ---- */

START_TEST (the_figures_are_the_models_at_both_ends)
{
  const dw_damper d = study_covered_damper ();
  const dw_warmth asked = ask (&d, 21.0, 37.5);
  const dw_figures now = figures_of (&d, 21.0, usual);
  const dw_figures then = figures_of (&d, 37.5, usual);
  dw_comparison c;
  ck_assert_int_eq (dw_warmth_compare (&asked, &c, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          const double a = now.point[s][v].force;
          const double b = then.point[s][v].force;
          ck_assert (c.a.point[s][v].force == a && c.b.point[s][v].force == b);
          assert_close (c.force[s][v], 100.0 * (b / a - 1.0), 1e-9, 1e-9, "percent of now");
          assert_close (c.c[s][v], c.force[s][v], 1e-9, 1e-9, "the same speed");
          ck_assert (c.force[s][v] < 0.0);
        }
      assert_close (c.pack[s], 100.0 * (then.pack[s] / now.pack[s] - 1.0), 1e-9, 1e-9, "pack");
    }
  for (int v = 0; v < DW_N_SPEEDS; v++)
    assert_close (c.rebound_share[v], 100.0 * (then.rebound_share[v] / now.rebound_share[v] - 1.0),
                  1e-9, 1e-9, "rebound share");
}
END_TEST

START_TEST (per_ten_degrees_is_the_mean_over_the_way)
{
  const dw_damper d = plain_damper (400.0);
  const struct
  {
    double now, then, change, expected;
    const char *why;
  } rows[] = {
    { 20.0, 30.0, -14.0, -14.0, "ten degrees" },
    { 20.0, 45.0, -30.0, -12.0, "twenty-five" },
    { 20.0, 15.0, 8.0, -16.0, "colder is firmer: warmer is softer" },
    { 20.0, 40.0, 0.0, 0.0, "no change" },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      const dw_warmth asked = ask (&d, rows[i].now, rows[i].then);
      assert_close (dw_warmth_per_ten (&asked, rows[i].change), rows[i].expected, 1e-12, 0.0,
                    rows[i].why);
    }
  const dw_warmth same = ask (&d, 20.0, 20.0);
  ck_assert (isnan (dw_warmth_per_ten (&same, 0.0)));
}
END_TEST

/* dp = mu V ... + K(Re) rho V^2/2: at the same nu both parts go with the density alone. */
START_TEST (an_oil_equally_thick_then_gives_the_curve_but_for_density)
{
  static const double pairs[][2]
      = { { 20.0, 35.0 }, { 35.0, 20.0 }, { -5.0, 60.0 }, { 25.0, 26.0 } };
  for (int i = 0; i < N_ENTRIES (pairs); i++)
    for (double cst = 30.0; cst < 5000.0; cst *= 3.0)
      {
        const dw_damper d = plain_damper (cst);
        const dw_warmth asked = ask (&d, pairs[i][0], pairs[i][1]);
        const double other = dw_silicone_viscosity (d.oil.viscosity, asked.now)
                             / dw_silicone_viscosity (1.0, asked.then);
        const double lighter = dw_silicone_density (other, asked.then)
                               / dw_silicone_density (d.oil.viscosity, asked.now);
        const dw_oil oil = nominal (other / DW_CST);
        dw_warmth_bottle b;
        int nearest;
        ck_assert_int_eq (dw_warmth_bottles (&asked, &oil, 1, &b, &nearest, NULL), DW_OK);
        ck_assert_int_eq (b.status, DW_OK);
        for (int s = 0; s < DW_N_STROKES; s++)
          for (int v = 0; v < DW_N_SPEEDS; v++)
            assert_close (b.change.b.point[s][v].hydraulic / b.change.a.point[s][v].hydraulic,
                          lighter, 1e-7, 0.0, "solver's own tolerance");
      }
}
END_TEST

/* The published rule's table, through a damper in which creeping oil alone makes the force. */
START_TEST (a_creeping_damper_follows_the_published_table)
{
  static const struct
  {
    const char *column;
    double temperature;
  } columns[] = { { "nu_m10C_cSt", -10.0 },
                  { "nu_0C_cSt", 0.0 },
                  { "nu_40C_cSt", 40.0 },
                  { "nu_60C_cSt", 60.0 },
                  { "nu_100C_cSt", 100.0 } };
  test_table *table = test_table_read ("pdms.csv");
  int n = 0;
  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const double cst = test_table_number (table, i, "nominal_cSt_25C");
      if (cst > dw_limit_get (DW_LIMIT_VISCOSITY)->high / DW_CST)
        continue; /* no damper is accepted with it */
      for (int k = 0; k < N_ENTRIES (columns); k++, n++)
        {
          const dw_damper d = plain_damper (cst);
          dw_warmth asked = ask (&d, 25.0, columns[k].temperature);
          dw_comparison c;
          asked.speeds[DW_LOW] = 1e-4;
          ck_assert_int_eq (dw_warmth_compare (&asked, &c, NULL), DW_OK);
          const double thinner = test_table_number (table, i, columns[k].column)
                                 / test_table_number (table, i, "nu_25C_cSt");
          const double lighter = 1.0 / (1.0 + 9.6e-4 * (columns[k].temperature - 25.0));
          for (int s = 0; s < DW_N_STROKES; s++)
            assert_close (1.0 + c.force[s][DW_LOW] / 100.0, thinner * lighter, 2e-3, 0.0,
                          "kinetic part at Re below 0.1 and printed digits");
        }
    }
  ck_assert_int_ge (n, 60);
  test_table_free (table);
}
END_TEST

START_TEST (warmer_is_softer_while_flow_is_laminar)
{
  test_random r = test_random_new (9101);
  int n = 0;
  for (int k = 0; k < 1500; k++)
    {
      const dw_damper d = random_damper (&r);
      const double now = test_random_uniform (&r, -10.0, 50.0);
      const dw_warmth asked = ask (&d, now, now + test_random_uniform (&r, 1.0, 40.0));
      dw_comparison c;
      if (!dw_warmth_is_plain_silicone (&d.oil) || dw_warmth_compare (&asked, &c, NULL) != DW_OK)
        continue;
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int v = 0; v < DW_N_SPEEDS; v++)
          if (c.b.point[s][v].reynolds < 100.0)
            {
              ck_assert_msg (c.b.point[s][v].pressure < c.a.point[s][v].pressure,
                             "%d: %.17g Pa warm, %.17g Pa now, Re %g", k, c.b.point[s][v].pressure,
                             c.a.point[s][v].pressure, c.b.point[s][v].reynolds);
              n++;
            }
    }
  ck_assert_int_gt (n, 1500);
}
END_TEST

/* ---- the oil that holds ---- */

START_TEST (the_same_temperature_asks_for_the_same_oil)
{
  const dw_damper d = study_covered_damper ();
  const dw_warmth asked = ask (&d, 28.0, 28.0);
  dw_warmth_held held;
  ck_assert_int_eq (d.oil.kind, DW_OIL_NOMINAL);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      ck_assert_int_eq (dw_warmth_hold (&asked, (dw_stroke)s, &held, NULL), DW_OK);
      assert_close (held.viscosity, d.oil.viscosity, 1e-9, 0.0, "nothing to make up for");
      ck_assert (!held.is_other_kind);
    }
}
END_TEST

/* A damper in which a void does not cap the force, else the same but for the push of the gas. */
static dw_damper
sealed_twin (const dw_damper *damper)
{
  dw_damper twin = *damper;
  if (twin.gas.kind == DW_GAS_VENTED)
    twin.gas = (dw_gas){ .kind = DW_GAS_BLADDER, .pressure = twin.gas.pressure, .volume = 1e-6 };
  return twin;
}

/* The figures told are those with the oil, and hold where no void caps them. */
static void
expect_told (const dw_damper *filled, double temperature, dw_stroke stroke,
             const dw_warmth_held *held)
{
  const dw_figures then = figures_of (filled, temperature, usual);
  const dw_force_point *a = &held->change.a.point[stroke][DW_LOW];
  const dw_force_point *b = &held->change.b.point[stroke][DW_LOW];
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      assert_close (held->change.b.point[s][v].force, then.point[s][v].force, 1e-9, 1e-9,
                    "the oil's number written and read");
  if (!(a->is_void && filled->gas.kind == DW_GAS_VENTED))
    assert_close (b->force, a->force, 1e-4, 1e-4 * a->hydraulic, "0.01 %");
}

START_TEST (the_held_oil_holds)
{
  test_random r = test_random_new (9102);
  int n_held = 0;
  int n_none = 0;
  for (int k = 0; k < 600; k++)
    {
      const dw_damper d = random_damper (&r);
      const dw_warmth asked = ask (&d, random_temperature (&r), random_temperature (&r));
      const dw_stroke s = k % 2 == 0 ? DW_COMPRESSION : DW_REBOUND;
      dw_warmth_held held;
      dw_error err;
      const dw_status status = dw_warmth_hold (&asked, s, &held, &err);
      if (status != DW_OK)
        {
          n_none += status == DW_ERR_NO_CONVERGENCE;
          continue;
        }
      dw_damper filled = d;
      filled.oil = nominal (held.viscosity / DW_CST);
      expect_told (&filled, asked.then, s, &held);
      /* the same without a cap, which hides what holds */
      dw_damper sealed = sealed_twin (&d);
      const dw_figures now = figures_of (&sealed, asked.now, usual);
      sealed.oil = filled.oil;
      const dw_figures then = figures_of (&sealed, asked.then, usual);
      assert_close (then.point[s][DW_LOW].force, now.point[s][DW_LOW].force, 1e-6,
                    1e-6 * now.point[s][DW_LOW].hydraulic, "far below 0.01 %");
      ck_assert_int_eq (held.is_other_kind, !dw_warmth_is_plain_silicone (&d.oil));
      n_held++;
    }
  ck_assert_int_gt (n_held, 500);
  ck_assert_int_lt (n_none, 60);
}
END_TEST

/* In a creeping damper mu is to be the same: nu rho of both oils, by bisection on the two laws. */
START_TEST (a_creeping_damper_asks_for_the_same_mu)
{
  const dw_damper d = plain_damper (5000.0);
  dw_warmth asked = ask (&d, 20.0, 45.0);
  dw_warmth_held held;
  asked.speeds[DW_LOW] = 1e-4;
  const double wanted = dw_silicone_viscosity (5000e-6, 20.0) * dw_silicone_density (5000e-6, 20.0);
  double low = 1000e-6;
  double high = 20000e-6;
  for (int i = 0; i < 200; i++)
    {
      const double middle = 0.5 * (low + high);
      const double mu = dw_silicone_viscosity (middle, 45.0) * dw_silicone_density (middle, 45.0);
      *(mu < wanted ? &low : &high) = middle;
    }
  ck_assert_int_eq (dw_warmth_hold (&asked, DW_COMPRESSION, &held, NULL), DW_OK);
  assert_close (held.viscosity, low, 1e-4, 0.0, "kinetic part at Re below 0.01");
  ck_assert (held.viscosity > 1.4 * 5000e-6);
}
END_TEST

static const struct
{
  double cst, now, then;
  const char *why;
} beyond[] = {
  { 90000.0, 20.0, 60.0, "it would be thicker than any" },
  { 1.2, 30.0, -20.0, "it would be thinner than any" },
};

START_TEST (where_no_oil_holds_it_is_told)
{
  dw_damper d = plain_damper (beyond[_i].cst);
  if (beyond[_i].cst < 10.0)
    d.piston.holes[0].diameter = 0.3e-3; /* else nothing viscous is left */
  dw_warmth asked = ask (&d, beyond[_i].now, beyond[_i].then);
  dw_warmth_held held = { .viscosity = -1.0 };
  dw_error err = { 0 };
  asked.speeds[DW_LOW] = 1e-3;
  ck_assert_msg (dw_warmth_hold (&asked, DW_COMPRESSION, &held, &err) == DW_ERR_NO_CONVERGENCE,
                 "%s", beyond[_i].why);
  ck_assert_str_eq (err.field, "oil.viscosity");
  ck_assert_msg (strstr (err.text, "no oil from 1 to 100000 cSt") != NULL, "%s", err.text);
  ck_assert (held.viscosity == -1.0);
}
END_TEST

START_TEST (a_temperature_out_of_range_is_told)
{
  const dw_damper d = plain_damper (400.0);
  const dw_warmth asked = ask (&d, 25.0, 151.0);
  dw_warmth_held held;
  dw_comparison c;
  dw_warmth_band band;
  dw_error err;
  ck_assert_int_eq (dw_warmth_compare (&asked, &c, &err), DW_ERR_RANGE);
  ck_assert_str_eq (err.field, "conditions.oil");
  ck_assert_int_eq (dw_warmth_hold (&asked, DW_REBOUND, &held, &err), DW_ERR_RANGE);
  ck_assert_str_eq (err.field, "conditions.oil");
  ck_assert_int_eq (dw_warmth_drift (&d, 140.0, 11.0, DW_REBOUND, usual, 3, &band, &err),
                    DW_ERR_RANGE);
}
END_TEST

/* All three speeds past the onset: the force is flat over viscosity, and yet one oil is told. */
START_TEST (a_vented_damper_past_the_void_is_held_at_its_onset)
{
  static const double thens[] = { 10.0, 24.0, 40.0, 60.0 };
  dw_damper d = plain_damper (2000.0);
  d.gas = (dw_gas){ .kind = DW_GAS_VENTED, .pressure = 101325.0 };
  d.piston.clearance = 0.03e-3;
  for (int i = 0; i < N_ENTRIES (thens); i++)
    {
      dw_warmth asked = ask (&d, 25.0, thens[i]);
      dw_warmth_held held;
      asked.speeds[DW_LOW] = 0.6;
      asked.speeds[DW_MIDDLE] = 0.8;
      ck_assert_int_eq (dw_warmth_hold (&asked, DW_COMPRESSION, &held, NULL), DW_OK);
      const dw_force_point *a = &held.change.a.point[DW_COMPRESSION][DW_LOW];
      const dw_force_point *b = &held.change.b.point[DW_COMPRESSION][DW_LOW];
      ck_assert (a->is_void && b->is_void && a->pressure > 1.5 * 101325.0);
      assert_close (b->force, a->force, 1e-4, 0.0, "0.01 %");
      assert_close (b->pressure, a->pressure, 1e-3, 0.0, "where the onset is");
      ck_assert ((held.viscosity > d.oil.viscosity) == (thens[i] > 25.0));
    }
}
END_TEST

/* ---- bottles and blends ---- */

START_TEST (every_bottle_is_the_model_with_it)
{
  const dw_damper d = study_covered_damper ();
  const dw_warmth asked = ask (&d, 25.0, 40.0);
  dw_oil oils[6] = { nominal (300.0), measured (800e-6, 500e-6), nominal (700.0), nominal (500.0) };
  oils[4] = (dw_oil){ .kind = DW_OIL_BLEND,
                      .n_parts = 2,
                      .parts = { { 400e-6, 0.5 }, { 600e-6, 0.5 } } };
  oils[5] = nominal (450.0);
  oils[5].has_thinning = true;
  oils[5].thinning_rate = 1e4;
  oils[5].thinning_exponent = 0.6;
  const bool other[6] = { false, true, false, false, false, true };
  dw_warmth_bottle b[6];
  int nearest = -2;
  int expected = 0;
  double least = HUGE_VAL;
  ck_assert_int_eq (dw_warmth_bottles (&asked, oils, 6, b, &nearest, NULL), DW_OK);
  for (int i = 0; i < 6; i++)
    {
      dw_damper filled = d;
      filled.oil = oils[i];
      const dw_figures then = figures_of (&filled, 40.0, usual);
      ck_assert_int_eq (b[i].status, DW_OK);
      ck_assert_int_eq (b[i].is_other_kind, other[i]);
      ck_assert (memcmp (&b[i].change.b.c, &then.c, sizeof then.c) == 0);
      const double away = fabs (then.c[DW_COMPRESSION][DW_LOW]
                                - b[i].change.a.c[DW_COMPRESSION][DW_LOW]);
      if (away < least)
        expected = i;
      least = fmin (least, away);
    }
  ck_assert_int_eq (nearest, expected);
  ck_assert (b[4].fluid.viscosity_low < b[4].fluid.viscosity);
  ck_assert (b[0].change.force[DW_COMPRESSION][DW_LOW] < b[2].change.force[DW_COMPRESSION][DW_LOW]);
}
END_TEST

START_TEST (a_bottle_without_an_answer_does_not_stop_the_others)
{
  const dw_damper d = study_damper ();
  const dw_warmth asked = ask (&d, 25.0, 120.0);
  const dw_oil oils[2] = { measured (500e-6, 2e-6), nominal (500.0) };
  dw_warmth_bottle b[2];
  int nearest;
  ck_assert_int_eq (dw_warmth_bottles (&asked, oils, 2, b, &nearest, NULL), DW_OK);
  ck_assert_int_eq (b[0].status, DW_ERR_RANGE);
  ck_assert_str_eq (b[0].reason.field, "oil.point.temperature");
  ck_assert (b[0].is_other_kind);
  ck_assert_int_eq (b[1].status, DW_OK);
  ck_assert_int_eq (nearest, 1);
  ck_assert_int_eq (dw_warmth_bottles (&asked, oils, 1, b, &nearest, NULL), DW_OK);
  ck_assert_int_eq (nearest, -1);
  ck_assert_int_eq (dw_warmth_bottles (&asked, NULL, 0, NULL, &nearest, NULL), DW_OK);
  ck_assert_int_eq (nearest, -1);
}
END_TEST

static const struct
{
  double wanted; /* [cSt] */
  int bottle, other;
  const char *why;
} mixes[] = {
  { 430.0, 3, 1, "between the two that are plain" },
  { 501.0, 1, -1, "within a percent: pure" },
  { 340.0, 3, 1, "a blend's own viscosity is no bottle to mix" },
  { 250.0, -1, -1, "thinner than all" },
  { 700.0, -1, -1, "thicker than all plain ones" },
};

START_TEST (a_mix_follows_the_log_rule)
{
  dw_oil oils[5] = { measured (800e-6, 430e-6), nominal (500.0), nominal (430.0), nominal (300.0) };
  oils[2].has_thinning = true;
  oils[2].thinning_rate = 1e4;
  oils[2].thinning_exponent = 0.6;
  oils[4] = (dw_oil){ .kind = DW_OIL_BLEND,
                      .n_parts = 2,
                      .parts = { { 340e-6, 0.5 }, { 340e-6, 0.5 } } };
  const dw_damper d = study_damper ();
  const dw_warmth asked = ask (&d, 25.0, 45.0);
  const double factor = dw_silicone_viscosity (1.0, 45.0);
  const double wanted = mixes[_i].wanted * DW_CST;
  dw_warmth_blend mix;
  ck_assert_int_eq (dw_warmth_mix (&asked, wanted, oils, 5, &mix, NULL), DW_OK);
  ck_assert_msg (mix.bottle == mixes[_i].bottle && mix.other == mixes[_i].other, "%s: %d, %d",
                 mixes[_i].why, mix.bottle, mix.other);
  if (mix.bottle < 0)
    return;
  if (mix.other < 0)
    {
      ck_assert (mix.oil.kind == DW_OIL_NOMINAL && mix.oil.viscosity == 500e-6);
      ck_assert (mix.fluid.viscosity_low == mix.fluid.viscosity_high);
      return;
    }
  /* ln v = x ln v1 + (1 - x) ln v2 */
  const double first = log (wanted / 500e-6) / log (300.0 / 500.0);
  ck_assert (mix.oil.kind == DW_OIL_BLEND && mix.oil.parts[0].viscosity == 300e-6);
  assert_close (mix.oil.parts[0].share, first, 1e-9, 0.0, "closed form");
  assert_close (mix.oil.parts[1].share, 1.0 - first, 1e-9, 0.0, "the rest");
  assert_close (mix.fluid.viscosity, wanted * factor, 1e-9, 0.0, "at the other temperature");
  const double rho[2] = { dw_silicone_density (300e-6, 25.0), dw_silicone_density (500e-6, 25.0) };
  const double mass = first * rho[0] / (first * rho[0] + (1.0 - first) * rho[1]);
  const double walther = dw_blend_walther (300e-6, 500e-6, first);
  const double refutas = dw_blend_refutas (300e-6, 500e-6, mass);
  assert_close (mix.fluid.viscosity_low, fmin (wanted, fmin (walther, refutas)) * factor, 1e-9, 0.0,
                "least of the published rules");
  assert_close (mix.fluid.viscosity_high, fmax (wanted, fmax (walther, refutas)) * factor, 1e-9,
                0.0, "most of the published rules");
  ck_assert (mix.fluid.viscosity_low < mix.fluid.viscosity_high);
}
END_TEST

START_TEST (no_bottle_makes_no_mix)
{
  const dw_damper d = study_damper ();
  const dw_warmth asked = ask (&d, 25.0, 45.0);
  const dw_oil oil = measured (800e-6, 430e-6);
  dw_warmth_blend mix;
  ck_assert_int_eq (dw_warmth_mix (&asked, 400e-6, NULL, 0, &mix, NULL), DW_OK);
  ck_assert (mix.bottle == -1 && mix.other == -1);
  ck_assert_int_eq (dw_warmth_mix (&asked, 400e-6, &oil, 1, &mix, NULL), DW_OK);
  ck_assert (mix.bottle == -1 && mix.other == -1);
}
END_TEST

START_TEST (the_mix_for_a_held_oil_holds_as_well)
{
  const dw_damper d = study_covered_damper ();
  const dw_warmth asked = ask (&d, 25.0, 38.0);
  const dw_oil oils[3] = { nominal (350.0), nominal (450.0), nominal (1000.0) };
  dw_warmth_held held;
  dw_warmth_blend mix;
  dw_warmth_bottle b;
  int nearest;
  ck_assert_int_eq (dw_warmth_hold (&asked, DW_COMPRESSION, &held, NULL), DW_OK);
  ck_assert_int_eq (dw_warmth_mix (&asked, held.viscosity, oils, 3, &mix, NULL), DW_OK);
  ck_assert_int_ge (mix.other, 0);
  ck_assert_int_eq (dw_warmth_bottles (&asked, &mix.oil, 1, &b, &nearest, NULL), DW_OK);
  ck_assert_msg (fabs (b.change.force[DW_COMPRESSION][DW_LOW]) < 0.1, "%g %%: densities of a blend",
                 b.change.force[DW_COMPRESSION][DW_LOW]);
  ck_assert (!b.is_other_kind && !held.is_other_kind);
}
END_TEST

/* ---- kinds ---- */

START_TEST (kinds_of_oil_are_told_apart)
{
  dw_oil oils[6] = { nominal (400.0),           nominal (600.0), measured (800e-6, 430e-6),
                     measured (800e-6, 431e-6), nominal (400.0), nominal (600.0) };
  oils[1] = (dw_oil){ .kind = DW_OIL_BLEND,
                      .n_parts = 2,
                      .parts = { { 340e-6, 0.5 }, { 500e-6, 0.5 } } };
  oils[4].has_thinning = oils[5].has_thinning = true;
  oils[4].thinning_rate = oils[5].thinning_rate = 1e4;
  oils[4].thinning_exponent = oils[5].thinning_exponent = 0.6;
  for (int i = 0; i < 6; i++)
    for (int k = 0; k < 6; k++)
      {
        const bool alike = i == k || i + k == 1 || i + k == 9;
        ck_assert_msg (dw_warmth_mixes_kinds (&oils[i], &oils[k]) == !alike, "%d, %d", i, k);
      }
  oils[5].thinning_exponent = 0.7;
  ck_assert (dw_warmth_mixes_kinds (&oils[4], &oils[5]));
  ck_assert (dw_warmth_is_plain_silicone (&oils[1]) && !dw_warmth_is_plain_silicone (&oils[2])
             && !dw_warmth_is_plain_silicone (&oils[4]));
}
END_TEST

/* ---- drift ---- */

START_TEST (a_drift_is_the_curve_at_both_ends)
{
  enum
  {
    N = 150 /* more than are solved at once */
  };
  const dw_damper d = study_covered_damper ();
  dw_force_model cold;
  dw_force_model warm;
  double speeds[N];
  dw_warmth_band band[N];
  for (int i = 0; i < N; i++)
    speeds[i] = 2.0 * i / (N - 1);
  ck_assert_int_eq (dw_force_model_make (&d, 22.0, &cold, NULL), DW_OK);
  ck_assert_int_eq (dw_force_model_make (&d, 37.0, &warm, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      ck_assert_int_eq (dw_warmth_drift (&d, 22.0, 15.0, (dw_stroke)s, speeds, N, band, NULL),
                        DW_OK);
      for (int i = 0; i < N; i++)
        {
          dw_force_point a;
          dw_force_point b;
          ck_assert_int_eq (dw_force_at (&cold, (dw_stroke)s, speeds[i], &a, NULL), DW_OK);
          ck_assert_int_eq (dw_force_at (&warm, (dw_stroke)s, speeds[i], &b, NULL), DW_OK);
          ck_assert (band[i].speed == speeds[i]);
          assert_close (band[i].before, a.force, 1e-7, 1e-9, "solved from another start");
          assert_close (band[i].after, b.force, 1e-7, 1e-9, "solved from another start");
          ck_assert (i == 0 || band[i].change < 0.0);
          ck_assert (band[i].change == dw_compare_change (band[i].before, band[i].after));
        }
    }
}
END_TEST

START_TEST (a_bad_speed_is_named_by_its_row)
{
  const dw_damper d = study_damper ();
  double speeds[100];
  dw_warmth_band band[100];
  dw_error err;
  for (int i = 0; i < 100; i++)
    speeds[i] = 0.01 * i;
  speeds[90] = 11.0;
  ck_assert_int_eq (dw_warmth_drift (&d, 20.0, 10.0, DW_REBOUND, speeds, 100, band, &err),
                    DW_ERR_RANGE);
  ck_assert_str_eq (err.field, "speed");
  ck_assert_int_eq (err.index, 90);
  ck_assert_int_eq (dw_warmth_drift (&d, 20.0, 10.0, DW_REBOUND, NULL, 0, NULL, &err), DW_OK);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/warmth");
  TCase *tcase = tcase_create ("warmth");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, the_figures_are_the_models_at_both_ends);
  tcase_add_test (tcase, per_ten_degrees_is_the_mean_over_the_way);
  tcase_add_test (tcase, an_oil_equally_thick_then_gives_the_curve_but_for_density);
  tcase_add_test (tcase, a_creeping_damper_follows_the_published_table);
  tcase_add_test (tcase, warmer_is_softer_while_flow_is_laminar);
  tcase_add_test (tcase, the_same_temperature_asks_for_the_same_oil);
  tcase_add_test (tcase, the_held_oil_holds);
  tcase_add_test (tcase, a_creeping_damper_asks_for_the_same_mu);
  tcase_add_loop_test (tcase, where_no_oil_holds_it_is_told, 0, N_ENTRIES (beyond));
  tcase_add_test (tcase, a_temperature_out_of_range_is_told);
  tcase_add_test (tcase, a_vented_damper_past_the_void_is_held_at_its_onset);
  tcase_add_test (tcase, every_bottle_is_the_model_with_it);
  tcase_add_test (tcase, a_bottle_without_an_answer_does_not_stop_the_others);
  tcase_add_loop_test (tcase, a_mix_follows_the_log_rule, 0, N_ENTRIES (mixes));
  tcase_add_test (tcase, no_bottle_makes_no_mix);
  tcase_add_test (tcase, the_mix_for_a_held_oil_holds_as_well);
  tcase_add_test (tcase, kinds_of_oil_are_told_apart);
  tcase_add_test (tcase, a_drift_is_the_curve_at_both_ends);
  tcase_add_test (tcase, a_bad_speed_is_named_by_its_row);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
