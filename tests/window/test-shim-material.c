/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-limits.h"
#include "test-support.h"
#include "window/dw-shim-material.h"

START_TEST (a_material_is_known_by_its_values)
{
  for (int m = 0; m < DW_MATERIAL_OWN; m++)
    {
      dw_shim shim = { .thickness = 0.1e-3, .count = 2 };
      dw_shim_material_apply ((dw_shim_material)m, &shim);
      ck_assert_int_eq (dw_shim_material_of (&shim), m);
      ck_assert (dw_limit_holds (DW_LIMIT_MODULUS, shim.modulus));
      ck_assert (dw_limit_holds (DW_LIMIT_POISSON, shim.poisson));
      ck_assert (dw_limit_holds (DW_LIMIT_STRENGTH, shim.strength));
      ck_assert (shim.thickness == 0.1e-3 && shim.count == 2);
      shim.strength *= 1.5;
      ck_assert_int_eq (dw_shim_material_of (&shim), DW_MATERIAL_OWN);
    }
}
END_TEST

START_TEST (own_values_are_left_alone)
{
  dw_shim shim
      = { .thickness = 0.1e-3, .count = 1, .modulus = 3e9, .poisson = 0.3, .strength = 7e7 };
  dw_shim_material_apply (DW_MATERIAL_OWN, &shim);
  ck_assert (shim.modulus == 3e9 && shim.poisson == 0.3 && shim.strength == 7e7);
  ck_assert_int_eq (dw_shim_material_of (&shim), DW_MATERIAL_OWN);
}
END_TEST

/* A project file says nothing of the material when it is polyester film. */
START_TEST (polyester_film_is_the_default_of_the_file)
{
  const dw_shim shim = dw_shim_material_first ();
  ck_assert_int_eq (dw_shim_material_of (&shim), DW_MATERIAL_POLYESTER);
  ck_assert (shim.modulus == dw_limit_get (DW_LIMIT_MODULUS)->fallback);
  ck_assert (shim.poisson == dw_limit_get (DW_LIMIT_POISSON)->fallback);
  ck_assert (shim.strength == dw_limit_get (DW_LIMIT_STRENGTH)->fallback);
  ck_assert_int_eq (shim.count, 1);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/shim-material");
  TCase *tc = tcase_create ("shim-material");
  tcase_add_test (tc, a_material_is_known_by_its_values);
  tcase_add_test (tc, own_values_are_left_alone);
  tcase_add_test (tc, polyester_film_is_the_default_of_the_file);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
