/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-plate.h"
#include "model/dw-stack.h"

#define SIZES "shim --hub 6 --outer 10.6 --modulus-gpa 4 --poisson 0.38 --ring 7.1:9.3 "

static const struct
{
  const char *arguments;
  int n_leaves;
  double thickness[3];
  double coupling;
  int n_pressures;
  double pressure[3];
} rows[] = {
  { "--thickness 0.15 --pressure-kpa 50", 1, { 0.15e-3 }, 0.0, 1, { 50e3 } },
  { "--thickness 0.1 --pressure-kpa 0,200,100", 1, { 0.1e-3 }, 0.0, 3, { 0.0, 200e3, 100e3 } },
  { "--thickness 0.15 --pressure-kpa 50:100:25", 1, { 0.15e-3 }, 0.0, 3, { 50e3, 75e3, 100e3 } },
  { "--thickness 0.15,0.1,0.1 --pressure-kpa 75",
    3,
    { 0.15e-3, 0.1e-3, 0.1e-3 },
    0.0,
    1,
    { 75e3 } },
  { "--thickness 0.15,0.1 --pressure-kpa 75 --stuck", 2, { 0.15e-3, 0.1e-3 }, 1.0, 1, { 75e3 } },
};

START_TEST (csv_is_what_the_model_says)
{
  dw_valve valve = { .leaf_coupling = rows[_i].coupling, .n_shims = rows[_i].n_leaves };
  for (int i = 0; i < rows[_i].n_leaves; i++)
    valve.shims[i] = (dw_shim){ rows[_i].thickness[i], 1, 4e9, 0.38, 100e6 };
  const dw_stack stack = dw_stack_make (&valve);
  const dw_plate plate = { 3e-3, 5.3e-3, stack.stiffness, stack.poisson };

  test_table *table = calc_table (SIZES "%s --format csv", rows[_i].arguments);
  ck_assert_uint_eq (test_table_n_rows (table), (size_t)rows[_i].n_pressures);
  for (int i = 0; i < rows[_i].n_pressures; i++)
    {
      dw_shim_lift lift;
      const size_t row = (size_t)i;
      ck_assert_int_eq (dw_plate_lift (&plate, stack.membrane, 3.55e-3, 4.65e-3,
                                       rows[_i].pressure[i], &lift, NULL),
                        DW_OK);
      /* the program halves what was read as a diameter: the same but for the last bit */
      assert_close (test_table_number (table, row, "edge_lift_m"), lift.rim, 1e-9, 0.0, "rounding");
      assert_close (test_table_number (table, row, "edge_lift_linear_m"), lift.rim_linear, 1e-9,
                    0.0, "rounding");
      assert_close (test_table_number (table, row, "pitch_lift_m"), lift.ring, 1e-9, 0.0,
                    "rounding");
    }
  test_table_free (table);
}
END_TEST

START_TEST (the_columns_are_those_of_the_contract)
{
  g_autofree char *text = calc_output (SIZES "--thickness 0.15 --pressure-kpa 0 --format csv");
  ck_assert_str_eq (text, "edge_lift_m,edge_lift_linear_m,pitch_lift_m\n0,0,0\n");
}
END_TEST

/* Two equal leaves: twice as stiff when they slide, eight times when they stick. Linear, so the
 * lift is a half and an eighth of that of one. */
START_TEST (two_leaves_have_two_bounds)
{
  static const char *const arguments[] = { "0.1", "0.1,0.1", "0.1,0.1 --stuck" };
  double lift[3];
  for (int i = 0; i < 3; i++)
    {
      test_table *table = calc_table (SIZES "--pressure-kpa 20 --format csv --thickness %s",
                                      arguments[i]);
      lift[i] = test_table_number (table, 0, "edge_lift_linear_m");
      test_table_free (table);
    }
  assert_close (lift[1], lift[0] / 2.0, 1e-12, 0.0, "rigidities add");
  assert_close (lift[2], lift[0] / 8.0, 1e-12, 0.0, "thickness cubed");
}
END_TEST

START_TEST (the_table_shows_both_bounds_of_a_stack)
{
  g_autofree char *one = calc_output (SIZES "--thickness 0.15 --pressure-kpa 50");
  g_autofree char *two = calc_output (SIZES "--thickness 0.1,0.1 --pressure-kpa 50");
  g_autofree char *far = calc_output (SIZES "--thickness 0.02 --pressure-kpa 500");
  ck_assert (g_str_has_prefix (one, "One shim of 0.150 mm\n"));
  ck_assert_ptr_null (strstr (one, "stick together"));
  /* 0.1 mm times the cube root of 2 */
  ck_assert_ptr_nonnull (strstr (two, "2 leaves that slide on each other: as stiff as one shim of "
                                      "0.126 mm\n"));
  ck_assert_ptr_nonnull (strstr (two, "2 leaves that stick together: as stiff as one shim of "
                                      "0.200 mm\n"));
  ck_assert_ptr_null (strstr (one, "Note: "));
  ck_assert_ptr_nonnull (strstr (far, "more than 10 thicknesses"));
}
END_TEST

START_TEST (there_are_at_most_sixteen_leaves)
{
  g_autoptr (GString) leaves = g_string_new ("0.1");
  for (int i = 1; i < DW_MAX_SHIMS; i++)
    g_string_append (leaves, ",0.1");
  g_autofree char *most = calc_output (SIZES "--pressure-kpa 20 --thickness %s", leaves->str);
  ck_assert (g_str_has_prefix (most, "16 leaves"));
  calc_result r = calc_run (SIZES "--pressure-kpa 20 --thickness %s,0.1", leaves->str);
  ck_assert_int_eq (r.status, 2);
  ck_assert_ptr_nonnull (strstr (r.err, "17 leaves, at most 16"));
  calc_result_clear (&r);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-shim");
  TCase *tc = tcase_create ("shim");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_model_says, 0, N_ENTRIES (rows));
  tcase_add_test (tc, the_columns_are_those_of_the_contract);
  tcase_add_test (tc, two_leaves_have_two_bounds);
  tcase_add_test (tc, the_table_shows_both_bounds_of_a_stack);
  tcase_add_test (tc, there_are_at_most_sixteen_leaves);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
