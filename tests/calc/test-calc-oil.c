/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "calc-run.h"
#include "model/dw-oil.h"

static const struct
{
  const char *arguments;
  dw_oil oil;
  int n;
  double temperatures[5];
} rows[] = {
  { "--viscosity-cst 450 --at-c 25", { .kind = DW_OIL_NOMINAL, .viscosity = 450e-6 }, 1, { 25.0 } },
  { "--viscosity-cst 1 --at-c -25,150",
    { .kind = DW_OIL_NOMINAL, .viscosity = 1e-6 },
    2,
    { -25.0, 150.0 } },
  { "--viscosity-cst 100000 --at-c 60,0",
    { .kind = DW_OIL_NOMINAL, .viscosity = 0.1 },
    2,
    { 60.0, 0.0 } },
  { "--viscosity-cst 352.5 --at-c 0:60:15",
    { .kind = DW_OIL_NOMINAL, .viscosity = 352.5e-6 },
    5,
    { 0.0, 15.0, 30.0, 45.0, 60.0 } },
  { "--viscosity-cst 450 --at-c 0.1:0.45:0.1,20",
    { .kind = DW_OIL_NOMINAL, .viscosity = 450e-6 },
    5,
    { 0.1, 0.2, 0.3, 0.4, 20.0 } },
  { "--blend 350:0.25,500:0.75 --at-c 20,40",
    { .kind = DW_OIL_BLEND, .n_parts = 2, .parts = { { 350e-6, 0.25 }, { 500e-6, 0.75 } } },
    2,
    { 20.0, 40.0 } },
};

START_TEST (csv_is_what_the_model_says)
{
  test_table *table = calc_table ("oil %s --format csv", rows[_i].arguments);
  ck_assert_uint_eq (test_table_n_rows (table), (size_t)rows[_i].n);
  for (int i = 0; i < rows[_i].n; i++)
    {
      dw_fluid fluid;
      const size_t row = (size_t)i;
      ck_assert_int_eq (dw_oil_fluid (&rows[_i].oil, rows[_i].temperatures[i], &fluid, NULL),
                        DW_OK);
      ck_assert_msg (calc_field_is (table, row, "temperature_c", 0, rows[_i].temperatures[i])
                         && calc_field_is (table, row, "viscosity_cst", -6, fluid.viscosity)
                         && calc_field_is (table, row, "density_kg_m3", 0, fluid.density),
                     "%s, row %d", rows[_i].arguments, i);
    }
  test_table_free (table);
}
END_TEST

START_TEST (the_columns_are_those_of_the_contract)
{
  g_autofree char *text = calc_output ("oil --viscosity-cst 450 --at-c 25 --format csv");
  ck_assert (g_str_has_prefix (text, "temperature_c,viscosity_cst,density_kg_m3\n25,450,"));
}
END_TEST

START_TEST (the_table_of_a_blend_shows_the_spread)
{
  g_autofree char *blend = calc_output ("oil --blend 100:0.5,1000:0.5 --at-c 25,145");
  g_autofree char *one = calc_output ("oil --viscosity-cst 450 --at-c 25");
  /* 316.2 by the logarithmic rule, sqrt (100 * 1000) */
  ck_assert_msg (strstr (blend, " 316 ") != NULL, "%s", blend);
  ck_assert_ptr_nonnull (strstr (blend, "lowest  highest"));
  ck_assert_ptr_null (strstr (one, "lowest"));
  ck_assert_ptr_nonnull (strstr (one, "10 degC more"));
  /* 155 degC is past the range: nothing to tell */
  ck_assert (g_str_has_suffix (blend, " -\n"));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-oil");
  TCase *tc = tcase_create ("oil");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_model_says, 0, N_ENTRIES (rows));
  tcase_add_test (tc, the_columns_are_those_of_the_contract);
  tcase_add_test (tc, the_table_of_a_blend_shows_the_spread);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
