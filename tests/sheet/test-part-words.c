/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-part-words.h"

#include <math.h>

#include "sheet-samples.h"

static const struct
{
  dw_quantity quantity;
  dw_units units;
  double value;
  const char *words;
} quantities[] = {
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, 0.15e-3, "0.15 mm" },
  { DW_QUANTITY_LENGTH, DW_UNITS_INCH, 2.54e-3, "0.1 in" },
  { DW_QUANTITY_NUMBER, DW_UNITS_METRIC, 0.62, "0.62" },
  { DW_QUANTITY_TEMPERATURE, DW_UNITS_FAHRENHEIT, 25.0, "77 °F" },
  { DW_QUANTITY_LENGTH, DW_UNITS_METRIC, NAN, "not given" },
};

START_TEST (a_quantity_has_its_unit)
{
  g_autofree char *words = dw_part_words_quantity (quantities[_i].quantity, quantities[_i].units,
                                                   quantities[_i].value);
  ck_assert_str_eq (words, quantities[_i].words);
}
END_TEST

START_TEST (some_are_count_and_size)
{
  g_autofree char *metric = dw_part_words_some (6, 1.3e-3, DW_UNITS_METRIC);
  g_autofree char *inch = dw_part_words_some (1, 1.27e-3, DW_UNITS_INCH);
  ck_assert_str_eq (metric, "6 × 1.3 mm");
  ck_assert_str_eq (inch, "1 × 0.05 in");
}
END_TEST

START_TEST (holes_of_one_kind_are_told_together)
{
  const dw_piston piston = { .n_holes = 4,
                             .holes = { { 4, 1.4e-3, false },
                                        { 3, 1.1e-3, true },
                                        { 2, 1.5e-3, false },
                                        { 1, 1.2e-3, true } } };
  const dw_piston bare = { .n_holes = 0 };
  g_autofree char *open = dw_part_words_holes (&piston, false, DW_UNITS_METRIC);
  g_autofree char *covered = dw_part_words_holes (&piston, true, DW_UNITS_METRIC);
  g_autofree char *none = dw_part_words_holes (&bare, false, DW_UNITS_METRIC);
  ck_assert_str_eq (open, "4 × 1.4 mm, 2 × 1.5 mm");
  ck_assert_str_eq (covered, "3 × 1.1 mm, 1 × 1.2 mm");
  ck_assert_str_eq (none, "");
}
END_TEST

START_TEST (a_stack_is_told_from_the_piston_outwards)
{
  dw_valve valve = { .n_shims = 2,
                     .shims = { { .thickness = 0.15e-3, .count = 1 },
                                { .thickness = 0.1e-3, .count = 12 } } };
  g_autofree char *metric = dw_part_words_stack (&valve, DW_UNITS_METRIC);
  g_autofree char *inch = dw_part_words_stack (&valve, DW_UNITS_INCH);
  ck_assert_str_eq (metric, "1 × 0.15, 12 × 0.1 mm");
  ck_assert_str_eq (inch, "1 × 0.005906, 12 × 0.003937 in");
  valve.n_shims = 0;
  g_autofree char *none = dw_part_words_stack (&valve, DW_UNITS_METRIC);
  ck_assert_str_eq (none, "");
}
END_TEST

static const struct
{
  const char *why;
  dw_oil oil;
  const char *words;
} oils[] = {
  { "a bottle", { .kind = DW_OIL_NOMINAL, .viscosity = 450e-6 }, "450 cSt" },
  { "two bottles",
    { .kind = DW_OIL_BLEND, .n_parts = 2, .parts = { { 350e-6, 0.4 }, { 600e-6, 0.6 } } },
    "40 % of 350 cSt with 60 % of 600 cSt" },
  { "measured",
    { .kind = DW_OIL_MEASURED,
      .point_temperature = { 20.0, 40.0 },
      .point_viscosity = { 500e-6, 350e-6 },
      .density = 970.0 },
    "500 cSt at 20 °C and 350 cSt at 40 °C, 970 kg/m³" },
  { "thinning",
    { .kind = DW_OIL_NOMINAL,
      .viscosity = 10000e-6,
      .has_thinning = true,
      .thinning_rate = 2000.0,
      .thinning_exponent = 0.5 },
    "10000 cSt, thinning from 2000 1/s (exponent 0.5)" },
};

START_TEST (an_oil_is_told_as_it_is_known)
{
  g_autofree char *words = dw_part_words_oil (&oils[_i].oil, DW_UNITS_METRIC);
  ck_assert_msg (g_str_equal (words, oils[_i].words), "%s: %s", oils[_i].why, words);
}
END_TEST

START_TEST (of_a_vented_space_neither_pressure_nor_volume_is_told)
{
  dw_gas gas = { .kind = DW_GAS_BLADDER, .pressure = 101.3e3, .volume = 1.2e-6 };
  g_autofree char *bladder = dw_part_words_gas (&gas, DW_UNITS_METRIC);
  gas.kind = DW_GAS_EMULSION;
  g_autofree char *emulsion = dw_part_words_gas (&gas, DW_UNITS_METRIC);
  gas.kind = DW_GAS_VENTED;
  g_autofree char *vented = dw_part_words_gas (&gas, DW_UNITS_METRIC);
  ck_assert_str_eq (bladder, "bladder 101.3 kPa, 1.2 ml");
  ck_assert_str_eq (emulsion, "emulsion 101.3 kPa, 1.2 ml");
  ck_assert_str_eq (vented, "vented");
}
END_TEST

START_TEST (a_spring_has_rate_and_length)
{
  const dw_spring spring = { 720.0, 70e-3, 4e-3 };
  g_autofree char *words = dw_part_words_spring (&spring, DW_UNITS_METRIC);
  ck_assert_str_eq (words, "0.72 N/mm, 70 mm long");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/part-words");
  TCase *tcase = tcase_create ("part-words");
  tcase_add_loop_test (tcase, a_quantity_has_its_unit, 0, N_ENTRIES (quantities));
  tcase_add_test (tcase, some_are_count_and_size);
  tcase_add_test (tcase, holes_of_one_kind_are_told_together);
  tcase_add_test (tcase, a_stack_is_told_from_the_piston_outwards);
  tcase_add_loop_test (tcase, an_oil_is_told_as_it_is_known, 0, N_ENTRIES (oils));
  tcase_add_test (tcase, of_a_vented_space_neither_pressure_nor_volume_is_told);
  tcase_add_test (tcase, a_spring_has_rate_and_length);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
