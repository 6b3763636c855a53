/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "model/dw-gas.h"
#include "model/dw-units.h"
#include "test-support.h"

START_TEST (gas_at_air_pressure_does_not_push)
{
  const dw_gas bladder = { DW_GAS_BLADDER, 101.325e3, 1e-6 };
  const dw_gas pressed = { DW_GAS_BLADDER, 201.325e3, 1e-6 };
  const dw_gas vented = { DW_GAS_VENTED, 90e3, 1e-6 };
  ck_assert (dw_gas_push (&bladder, 1e-5) == 0.0);
  assert_close (dw_gas_push (&pressed, 1e-5), 1.0, 1e-12, 0.0, "100 kPa on 10 mm2");
  ck_assert (dw_gas_push (&vented, 1e-5) == 0.0);
}
END_TEST

START_TEST (lost_travel_is_none_before_the_void)
{
  const dw_gas gas = { DW_GAS_BLADDER, 101.325e3, 1e-6 };
  ck_assert (dw_gas_lost_travel (&gas, 101.325e3, 2e-4) == 0.0);
  ck_assert (dw_gas_lost_travel (&gas, 50e3, 2e-4) == 0.0);
  ck_assert (dw_gas_lost_travel (&gas, 102e3, 2e-4) > 0.0);
  /* all of the gas space at most */
  ck_assert (dw_gas_lost_travel (&gas, 1e9, 2e-4) < 1e-6 / 2e-4);
}
END_TEST

/* Ideal gas: volume at pressure p from p V^n = const. */
START_TEST (lost_travel_is_the_polytropic_squeeze)
{
  const dw_gas gas = { DW_GAS_EMULSION, 120e3, 0.8e-6 };
  const double area = 1.8e-4, p = 9e5;
  const double travel = dw_gas_lost_travel (&gas, p, area);
  const double left = 0.8e-6 - travel * area;
  assert_close (p * pow (left, DW_GAS_EXPONENT), 120e3 * pow (0.8e-6, DW_GAS_EXPONENT), 1e-12, 0.0,
                "p V^1.4");
}
END_TEST

/* E = -V dp/dV of the mixture, by a central difference of V = V_l (1 + al (pa/p)^(1/n)). */
START_TEST (bulk_modulus_is_the_slope_of_the_volume)
{
  const double El = 1e9, al = 0.03, pa = 101325.0, n = 1.4;
  for (double p = 50e3; p < 1e6; p *= 1.5)
    {
      const double h = 1e-4 * p;
      /* the source gives the liquid's own compression to the whole: V_l' = -V_l/El, gas apart */
#define VOLUME(x) (1.0 - ((x)-p) / El + al * pow (pa / (x), 1.0 / n))
      const double slope = (VOLUME (p + h) - VOLUME (p - h)) / (2.0 * h);
      assert_close (dw_emulsion_bulk_modulus (El, al, pa, p, n), -VOLUME (p) / slope, 1e-6, 0.0,
                    "central difference");
#undef VOLUME
    }
}
END_TEST

START_TEST (only_an_emulsion_changes_the_oil)
{
  const dw_fluid oil = { .viscosity = 450e-6, .density = 970.0, .dynamic = 450e-6 * 970.0 };
  dw_damper d = dw_damper_defaults ();
  d.gas.kind = DW_GAS_BLADDER;
  ck_assert (dw_gas_mixed_fluid (&d, &oil).density == 970.0);
  d.gas.kind = DW_GAS_EMULSION;
  const dw_fluid mixed = dw_gas_mixed_fluid (&d, &oil);
  const double al = dw_emulsion_fraction (&d);
  assert_close (mixed.density, (970.0 + al * 1.204) / (1.0 + al), 1e-9, 0.0, "by volume");
  assert_close (mixed.viscosity * mixed.density, oil.dynamic, 1e-12, 0.0, "mu is the oil's");
}
END_TEST

START_TEST (more_gas_than_cylinder_stays_finite)
{
  dw_damper d = dw_damper_defaults ();
  d.gas.volume = 100e-6;
  assert_close (dw_emulsion_fraction (&d), 1.0, 1e-12, 0.0, "foam of equal parts at most");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/gas");
  TCase *tc = tcase_create ("gas");
  tcase_add_test (tc, gas_at_air_pressure_does_not_push);
  tcase_add_test (tc, lost_travel_is_none_before_the_void);
  tcase_add_test (tc, lost_travel_is_the_polytropic_squeeze);
  tcase_add_test (tc, bulk_modulus_is_the_slope_of_the_volume);
  tcase_add_test (tc, only_an_emulsion_changes_the_oil);
  tcase_add_test (tc, more_gas_than_cylinder_stays_finite);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
