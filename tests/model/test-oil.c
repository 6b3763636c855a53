/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-oil.h"
#include "model/dw-units.h"
#include "test-support.h"

static dw_fluid
fluid_of (const dw_oil *oil, double temperature)
{
  dw_fluid fluid;
  dw_error err = { 0 };
  ck_assert_msg (dw_oil_fluid (oil, temperature, &fluid, &err) == DW_OK, "%s", err.text);
  return fluid;
}

/* Makers' data books: log10 nu = 763.1/(273 + T) - 2.559 + log10 nu25, tabled for 16 grades with
 * densities; the table's values are not normalised, 1.004 high. */
START_TEST (tabled_silicones_are_met)
{
  static const struct
  {
    const char *column;
    double temperature;
  } columns[] = { { "nu_m10C_cSt", -10.0 }, { "nu_0C_cSt", 0.0 },   { "nu_25C_cSt", 25.0 },
                  { "nu_40C_cSt", 40.0 },   { "nu_60C_cSt", 60.0 }, { "nu_100C_cSt", 100.0 } };
  const double printed = pow (10.0, 763.1 / 298.0 - 2.559);
  test_table *table = test_table_read ("pdms.csv");

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const double nominal = test_table_number (table, i, "nominal_cSt_25C");
      for (int k = 0; k < N_ENTRIES (columns); k++)
        assert_close (
            dw_silicone_viscosity (nominal * DW_CST, columns[k].temperature) / DW_CST * printed,
            test_table_number (table, i, columns[k].column), 2e-4, 0.0, "five printed digits");
      assert_close (dw_silicone_density (nominal * DW_CST, 25.0),
                    test_table_number (table, i, "rho25_kg_m3"), 1e-4, 0.0, "one decimal printed");
    }
  ck_assert_uint_eq (test_table_n_rows (table), 16);
  test_table_free (table);
}
END_TEST

START_TEST (nominal_holds_at_25_degrees)
{
  const dw_oil oil = { .kind = DW_OIL_NOMINAL, .viscosity = 475e-6 };
  const dw_fluid f = fluid_of (&oil, 25.0);
  assert_close (f.viscosity, 475e-6, 1e-15, 0.0, "exact by definition");
  assert_close (f.dynamic, f.viscosity * f.density, 1e-15, 0.0, "mu = nu rho");
  ck_assert (f.viscosity_low == f.viscosity && f.viscosity_high == f.viscosity);
  ck_assert (isinf (f.thinning_rate) && f.thinning_exponent == 1.0);
}
END_TEST

START_TEST (warm_oil_is_thinner_and_lighter)
{
  const dw_oil oil = { .kind = DW_OIL_NOMINAL, .viscosity = 475e-6 };
  dw_fluid last = fluid_of (&oil, -25.0);
  for (double t = -20.0; t <= 150.0; t += 5.0)
    {
      const dw_fluid f = fluid_of (&oil, t);
      ck_assert (f.viscosity < last.viscosity && f.density < last.density);
      last = f;
    }
}
END_TEST

START_TEST (own_oil_passes_its_two_points)
{
  const dw_oil oil = { .kind = DW_OIL_MEASURED,
                       .point_temperature = { 10.0, 40.0 },
                       .point_viscosity = { 610e-6, 330e-6 },
                       .density = 965.0 };
  /* the standard's inverse of Z is good to about 1e-6 at these viscosities */
  assert_close (fluid_of (&oil, 10.0).viscosity, 610e-6, 1e-6, 0.0, "first point");
  assert_close (fluid_of (&oil, 40.0).viscosity, 330e-6, 1e-6, 0.0, "second point");
  assert_close (fluid_of (&oil, 25.0).density, 965.0, 1e-12, 0.0, "given at 25 degC");
}
END_TEST

/* ASTM D341 through two silicone points stays near the silicone rule between them. */
START_TEST (two_points_of_a_silicone_give_back_the_silicone)
{
  const dw_oil oil = { .kind = DW_OIL_MEASURED,
                       .point_temperature = { 0.0, 60.0 },
                       .point_viscosity = { dw_silicone_viscosity (350e-6, 0.0),
                                            dw_silicone_viscosity (350e-6, 60.0) },
                       .density = 970.0 };
  for (double t = 0.0; t <= 60.0; t += 5.0)
    assert_close (fluid_of (&oil, t).viscosity, dw_silicone_viscosity (350e-6, t), 0.005, 0.0,
                  "two laws for one oil");
}
END_TEST

START_TEST (own_oil_is_refused_far_outside_its_points)
{
  const dw_oil oil = { .kind = DW_OIL_MEASURED,
                       .point_temperature = { 20.0, 40.0 },
                       .point_viscosity = { 500e-6, 1e-6 },
                       .density = 900.0 };
  dw_fluid fluid;
  dw_error err;
  ck_assert_int_eq (dw_oil_fluid (&oil, 100.0, &fluid, &err), DW_ERR_RANGE);
  ck_assert_str_eq (err.field, "oil.point.temperature");
}
END_TEST

START_TEST (temperature_out_of_range_is_refused)
{
  const dw_oil oil = { .kind = DW_OIL_NOMINAL, .viscosity = 475e-6 };
  const double bad[] = { -26.0, 151.0, NAN };
  dw_fluid fluid;
  dw_error err;
  for (int i = 0; i < N_ENTRIES (bad); i++)
    {
      ck_assert_int_eq (dw_oil_fluid (&oil, bad[i], &fluid, &err), DW_ERR_RANGE);
      ck_assert_str_eq (err.field, "conditions.oil");
    }
}
END_TEST

START_TEST (blend_lies_between_and_states_its_spread)
{
  dw_oil oil
      = { .kind = DW_OIL_BLEND, .n_parts = 2, .parts = { { 100e-6, 0.4 }, { 1000e-6, 0.6 } } };
  const dw_fluid f = fluid_of (&oil, 25.0);
  assert_close (f.viscosity, exp (0.4 * log (100e-6) + 0.6 * log (1000e-6)), 1e-12, 0.0,
                "log rule");
  ck_assert (f.viscosity_low < f.viscosity && f.viscosity_high >= f.viscosity);
  /* the published rules part by about 10.5 % here */
  assert_close (f.viscosity_low / f.viscosity, 0.895, 0.01, 0.0, "spread of the rules");
  oil.parts[0].share = 1.0;
  oil.parts[1].share = 0.0;
  const dw_fluid pure = fluid_of (&oil, 40.0);
  assert_close (pure.viscosity, dw_silicone_viscosity (100e-6, 40.0), 1e-9, 0.0, "all of one");
  assert_close (pure.viscosity_low, pure.viscosity, 1e-9, 0.0, "every rule keeps the pure oil");
}
END_TEST

/* Carreau: (1 + (rate/critical)^2)^((n - 1)/2). */
START_TEST (carreau_meets_its_limits)
{
  ck_assert (dw_carreau (1e6, 1e4, 1.0) == 1.0);
  ck_assert (dw_carreau (1e6, INFINITY, 1.0) == 1.0);
  assert_close (dw_carreau (1e4, 1e4, 0.5), pow (2.0, -0.25), 1e-12, 0.0, "at the critical rate");
  assert_close (dw_carreau (1e8, 1e4, 0.5), 1e-2, 1e-6, 0.0, "power law far above");
  assert_close (dw_carreau (1.0, 1e4, 0.5), 1.0, 1e-8, 0.0, "Newtonian far below");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/oil");
  TCase *tc = tcase_create ("oil");
  tcase_add_test (tc, tabled_silicones_are_met);
  tcase_add_test (tc, nominal_holds_at_25_degrees);
  tcase_add_test (tc, warm_oil_is_thinner_and_lighter);
  tcase_add_test (tc, own_oil_passes_its_two_points);
  tcase_add_test (tc, two_points_of_a_silicone_give_back_the_silicone);
  tcase_add_test (tc, own_oil_is_refused_far_outside_its_points);
  tcase_add_test (tc, temperature_out_of_range_is_refused);
  tcase_add_test (tc, blend_lies_between_and_states_its_spread);
  tcase_add_test (tc, carreau_meets_its_limits);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
