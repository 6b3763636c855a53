/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-table.h"

#include <math.h>

#include "test-support.h"

#define MM 1e-3

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
static const double drills[] = { 1.5 * MM, 1.2 * MM, 1.3 * MM, 1.4 * MM,
                                 1.4 * MM, 1.6 * MM, 9.0 * MM };
static const double bottles[] = { 300e-6, 450e-6, 600e-6, 800e-6, 1000e-6 };
static const dw_drill_box box = { .drills = drills,
                                  .n_drills = N_ENTRIES (drills),
                                  .bottles = bottles,
                                  .n_bottles = N_ENTRIES (bottles),
                                  .limits = { .hole_grade = 12 } };

static dw_drill_sets sets;
static dw_drilling study;

/* Six open holes of 1.3 mm outside a shim that covers four of 1.1 mm. */
static void
set_up (dw_drill_division division)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  d.piston.n_holes = 2;
  d.valve.opens_on = DW_REBOUND;
  d.valve.hub_diameter = 6e-3;
  d.valve.outer_diameter = 10.6e-3;
  d.valve.hole_circle = 8.2e-3;
  d.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  d.valve.n_shims = 1;
  dw_drill_sets_init (&sets, &d, division);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
}

START_TEST (sizes_are_larger_drills_in_order)
{
  double out[N_ENTRIES (drills) + 1];
  set_up (DW_DRILL_HALVES);
  const int n = dw_drill_sizes (&sets, 0, drills, N_ENTRIES (drills), out);
  ck_assert_int_eq (n, 4);
  ck_assert (out[0] == 0.0 && out[1] == 1.4 * MM && out[2] == 1.5 * MM && out[3] == 1.6 * MM);
}
END_TEST

START_TEST (an_empty_set_stays_as_it_is)
{
  dw_damper d = dw_damper_defaults ();
  double out[N_ENTRIES (drills) + 1];
  dw_drill_sets_init (&sets, &d, DW_DRILL_KINDS);
  ck_assert_int_eq (dw_drill_sizes (&sets, 1, drills, N_ENTRIES (drills), out), 1);
}
END_TEST

START_TEST (halves_that_are_alike_are_not_told_twice)
{
  set_up (DW_DRILL_HALVES);
  ck_assert (dw_drill_is_choice (&sets, (const double[]){ 1.4 * MM, 1.5 * MM }));
  ck_assert (!dw_drill_is_choice (&sets, (const double[]){ 1.5 * MM, 1.4 * MM }));
  ck_assert (dw_drill_is_choice (&sets, (const double[]){ 0.0, 1.4 * MM }));
  ck_assert (!dw_drill_is_choice (&sets, (const double[]){ 1.4 * MM, 0.0 }));
  set_up (DW_DRILL_KINDS);
  ck_assert (dw_drill_is_choice (&sets, (const double[]){ 1.4 * MM, 0.0 }));
  ck_assert (!dw_drill_is_choice (&sets, (const double[]){ 6.0 * MM, 0.0 }));
}
END_TEST

START_TEST (a_row_says_what_the_study_says)
{
  const double size[] = { 1.4 * MM, 1.5 * MM };
  dw_drill_row row;
  dw_drill_result result;
  dw_drill_hold hold;
  set_up (DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, NULL), DW_OK);
  ck_assert_int_eq (dw_drilling_at (&study, size, &result, NULL), DW_OK);
  ck_assert_int_eq (dw_drilling_hold (&study, size, &hold, NULL), DW_OK);
  ck_assert (row.result.figures.c[DW_REBOUND][DW_HIGH] == result.figures.c[DW_REBOUND][DW_HIGH]);
  ck_assert (row.has_hold && row.hold.viscosity == hold.viscosity);
  ck_assert_int_eq (row.n_holes, 6);
  /* 1.3 to 1.4 in one pass, 1.3 to 1.5 by way of 1.4 */
  ck_assert_int_eq (row.n_passes, 3 * 1 + 3 * 2);
  ck_assert (row.mix.bottle >= 0);
  ck_assert (row.has_single && row.single > 1.45 * MM && row.single < 1.5 * MM);
  ck_assert (row.single_drill == 1.5 * MM);
  ck_assert (dw_drill_row_scatter (&row) > 0.01 && dw_drill_row_scatter (&row) < 0.2);
}
END_TEST

START_TEST (covered_and_open_sets_have_no_single_size)
{
  const double size[] = { 1.4 * MM, 1.2 * MM };
  dw_drill_row row;
  set_up (DW_DRILL_KINDS);
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, NULL), DW_OK);
  ck_assert (!row.has_single);
  ck_assert_int_eq (row.n_holes, 10);
}
END_TEST

START_TEST (without_bottles_the_oil_is_told_and_no_mix)
{
  const double size[] = { 1.4 * MM, 0.0 };
  dw_drill_box no_bottles = box;
  dw_drill_row row;
  set_up (DW_DRILL_HALVES);
  no_bottles.n_bottles = 0;
  ck_assert_int_eq (dw_drill_row_make (&study, &no_bottles, size, &row, NULL), DW_OK);
  ck_assert (row.has_hold);
  ck_assert_int_eq (row.mix.bottle, -1);
}
END_TEST

START_TEST (what_cannot_be_drilled_is_no_row)
{
  const double size[] = { 1.2 * MM, 0.0 };
  dw_drill_row row;
  dw_error err;
  set_up (DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, &err), DW_ERR_RANGE);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/drill-table");
  TCase *tcase = tcase_create ("drill-table");
  tcase_add_test (tcase, sizes_are_larger_drills_in_order);
  tcase_add_test (tcase, an_empty_set_stays_as_it_is);
  tcase_add_test (tcase, halves_that_are_alike_are_not_told_twice);
  tcase_add_test (tcase, a_row_says_what_the_study_says);
  tcase_add_test (tcase, covered_and_open_sets_have_no_single_size);
  tcase_add_test (tcase, without_bottles_the_oil_is_told_and_no_mix);
  tcase_add_test (tcase, what_cannot_be_drilled_is_no_row);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
