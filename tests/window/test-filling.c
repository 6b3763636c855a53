/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-limits.h"
#include "model/dw-oil.h"
#include "random-damper.h"
#include "test-support.h"
#include "window/dw-filling.h"

static double
viscosity_at (const dw_oil *oil, double temperature)
{
  dw_fluid fluid;
  ck_assert_int_eq (dw_oil_fluid (oil, temperature, &fluid, NULL), DW_OK);
  return fluid.viscosity;
}

/* Whatever the oil was: the damper is good afterwards. */
START_TEST (every_change_of_kind_is_accepted)
{
  test_random r = test_random_new ((uint64_t)_i);
  for (int k = 0; k < 200; k++)
    {
      dw_damper damper = k % 2 == 0 ? random_damper (&r) : extreme_damper (&r);
      const int kind = test_random_int (&r, 0, 2);
      dw_error error = { 0 };
      dw_filling_set_oil_kind (&damper.oil, (dw_oil_kind)kind);
      dw_filling_set_thinning (&damper.oil, test_random_int (&r, 0, 1) == 1);
      dw_filling_set_gas_kind (&damper.gas, (dw_gas_kind)test_random_int (&r, 0, 2));
      ck_assert_int_eq (damper.oil.kind, kind);
      ck_assert_msg (dw_damper_check (&damper, &error, 1) == 0, "%s: %s", error.field, error.text);
    }
}
END_TEST

START_TEST (another_kind_is_the_same_oil)
{
  const double nominal[] = { 1e-6, 100e-6, 450e-6, 10000e-6, 100000e-6 };
  for (int i = 0; i < N_ENTRIES (nominal); i++)
    {
      dw_oil oil = { .kind = DW_OIL_NOMINAL, .viscosity = nominal[i] };
      dw_filling_set_oil_kind (&oil, DW_OIL_MEASURED);
      /* ASTM D341 turns its Z back into a viscosity by a series, good to 1e-4 at 1 cSt */
      assert_close (viscosity_at (&oil, 25.0), nominal[i], nominal[i] < 2e-6 ? 1e-4 : 1e-9, 0.0,
                    "one point is the nominal one");
      dw_filling_set_oil_kind (&oil, DW_OIL_BLEND);
      assert_close (viscosity_at (&oil, 25.0), nominal[i], 6e-3, 0.0, "to three digits");
      ck_assert_int_eq (oil.n_parts, 2);
      dw_filling_set_oil_kind (&oil, DW_OIL_NOMINAL);
      assert_close (oil.viscosity, nominal[i], 6e-3, 0.0, "to three digits");
      ck_assert_int_eq (oil.n_parts, 0);
    }
}
END_TEST

START_TEST (the_same_kind_is_left_alone)
{
  const dw_oil before = { .kind = DW_OIL_BLEND,
                          .n_parts = 2,
                          .parts = { { .viscosity = 300e-6, .share = 0.3 },
                                     { .viscosity = 700e-6, .share = 0.7 } } };
  dw_oil oil = before;
  dw_filling_set_oil_kind (&oil, DW_OIL_BLEND);
  ck_assert (oil.parts[0].viscosity == 300e-6 && oil.parts[1].share == 0.7);
  ck_assert_int_eq (oil.n_parts, 2);
}
END_TEST

START_TEST (thinning_keeps_what_was_known)
{
  dw_oil oil = { .thinning_rate = 3e4, .thinning_exponent = 0.6 };
  dw_filling_set_thinning (&oil, true);
  ck_assert (oil.has_thinning && oil.thinning_rate == 3e4 && oil.thinning_exponent == 0.6);
  dw_filling_set_thinning (&oil, false);
  ck_assert (!oil.has_thinning);
  oil.thinning_rate = 0.0;
  oil.thinning_exponent = 0.0;
  dw_filling_set_thinning (&oil, true);
  ck_assert (dw_limit_holds (DW_LIMIT_THINNING_RATE, oil.thinning_rate));
  ck_assert (dw_limit_holds (DW_LIMIT_THINNING_EXPONENT, oil.thinning_exponent));
}
END_TEST

START_TEST (the_air_outside_is_not_pumped_up)
{
  dw_gas gas = { .kind = DW_GAS_BLADDER, .pressure = 300e3, .volume = 2e-6 };
  dw_filling_set_gas_kind (&gas, DW_GAS_VENTED);
  ck_assert (gas.pressure == dw_limit_get (DW_LIMIT_AIR_PRESSURE)->fallback && gas.volume == 2e-6);
  gas.pressure = 95e3;
  gas.volume = 0.0;
  dw_filling_set_gas_kind (&gas, DW_GAS_EMULSION);
  ck_assert (gas.pressure == 95e3 && gas.volume == dw_limit_get (DW_LIMIT_GAS_VOLUME)->fallback);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/filling");
  TCase *tc = tcase_create ("filling");
  tcase_add_loop_test (tc, every_change_of_kind_is_accepted, 0, 4);
  tcase_add_test (tc, another_kind_is_the_same_oil);
  tcase_add_test (tc, the_same_kind_is_left_alone);
  tcase_add_test (tc, thinning_keeps_what_was_known);
  tcase_add_test (tc, the_air_outside_is_not_pumped_up);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
