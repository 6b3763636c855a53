/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-table.h"

#include <math.h>

#include "model/dw-drill.h"
#include "study-dampers.h"
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

static void
set_up_damper (const dw_damper *damper, dw_drill_division division)
{
  dw_drill_sets_init (&sets, damper, division);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
}

static void
set_up (dw_drill_division division)
{
  const dw_damper d = study_covered_damper ();
  set_up_damper (&d, division);
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

/* A narrow ring with many holes: it is half a face of holes before the land is gone. */
static dw_damper
crowded_damper (void)
{
  dw_damper d = dw_damper_defaults ();
  d.body.bore = 8e-3;
  d.body.rod = 5e-3;
  d.piston.holes[0] = (dw_holes){ 11, 1.0e-3, false };
  return d;
}

/* Every pair of the drill table: what is offered can be computed, and nothing else is kept back
 * but what the model refuses and the other one of two that are alike. */
START_TEST (every_choice_is_a_damper)
{
  const dw_damper dampers[] = { study_covered_damper (), crowded_damper (), dw_damper_defaults () };
  const dw_damper *damper = &dampers[_i / DW_N_DRILL_DIVISIONS];
  const dw_drill_division division = (dw_drill_division)(_i % DW_N_DRILL_DIVISIONS);
  double table[256];
  double size_of[DW_DRILL_SETS][257];
  int n_sizes[DW_DRILL_SETS];
  size_t n;
  const dw_drill_size *all = dw_drill_table (&n);
  int n_choices = 0;
  ck_assert_uint_le (n, N_ENTRIES (table));
  for (size_t i = 0; i < n; i++)
    table[i] = all[i].diameter;
  set_up_damper (damper, division);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    n_sizes[s] = dw_drill_sizes (&sets, s, table, (int)n, size_of[s]);
  for (int i = 0; i < n_sizes[0]; i++)
    for (int k = 0; k < n_sizes[1]; k++)
      {
        const double size[] = { size_of[0][i], size_of[1][k] };
        const bool is_choice = dw_drill_is_choice (&sets, size);
        dw_drill_result result;
        dw_error err = { .text = "" };
        const dw_status status = dw_drilling_at (&study, size, &result, &err);
        const bool is_twin = sets.is_alike && size[0] > size[1];
        ck_assert_msg (is_choice == (status == DW_OK && !is_twin), "%.4f and %.4f mm: %s",
                       size[0] / MM, size[1] / MM, err.text);
        n_choices += is_choice;
      }
  ck_assert_int_gt (n_choices, 5);
}
END_TEST

START_TEST (half_the_face_is_the_end_of_choice)
{
  const dw_damper d = crowded_damper ();
  const double size[] = { 1.4 * MM, 1.4 * MM };
  set_up_damper (&d, DW_DRILL_HALVES);
  ck_assert (dw_drill_sets_have_room (&sets, size));
  ck_assert (!dw_drill_is_choice (&sets, size));
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
  assert_close (dw_drill_row_pair (&row), sqrt (2.0) * dw_drill_row_scatter (&row), 1e-9, 0.0,
                "left and right are drilled hole by hole");
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

/* A row with what filters and orders look at. */
static dw_drill_row
plain_row (double size, double change, double pack, int n_holes)
{
  dw_drill_row row = { .n_holes = n_holes };
  row.result.size[1] = size;
  row.result.figures.pack[DW_COMPRESSION] = pack;
  for (int v = 0; v < DW_N_SPEEDS; v++)
    row.result.change[DW_COMPRESSION][v] = change;
  return row;
}

START_TEST (a_filter_asks_for_all_it_has)
{
  const dw_drill_filter all = dw_drill_filter_defaults ();
  const dw_drill_filter some = { 5.0, 1.0, 1.2, 6 };
  const struct
  {
    dw_drill_row row;
    bool passes;
    const char *why;
  } rows[] = {
    { plain_row (1.4 * MM, -5.0, 1.2, 6), true, "on every limit" },
    { plain_row (1.4 * MM, -5.1, 1.1, 6), false, "too soft" },
    { plain_row (1.4 * MM, 5.1, 1.1, 6), false, "too firm" },
    { plain_row (1.4 * MM, 0.0, 0.99, 6), false, "packs too little" },
    { plain_row (1.4 * MM, 0.0, 1.21, 6), false, "packs too much" },
    { plain_row (1.4 * MM, 0.0, 1.1, 7), false, "too many holes" },
    { plain_row (1.4 * MM, NAN, 1.1, 6), false, "a change from nothing" },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      ck_assert_msg (dw_drill_filter_passes (&some, &rows[i].row) == rows[i].passes, "%s",
                     rows[i].why);
      ck_assert_msg (dw_drill_filter_passes (&all, &rows[i].row), "%s", rows[i].why);
    }
  dw_drill_row one = plain_row (1.4 * MM, 0.0, 1.1, 6);
  one.result.change[DW_COMPRESSION][DW_HIGH] = -6.0;
  ck_assert (!dw_drill_filter_passes (&some, &one));
}
END_TEST

START_TEST (rows_have_an_order)
{
  dw_drill_row a = plain_row (1.4 * MM, -5.0, 1.2, 3);
  dw_drill_row b = plain_row (1.5 * MM, 4.0, 1.1, 6);
  ck_assert_int_lt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_SIZE), 0);
  ck_assert_int_gt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_COMPRESSION), 0);
  ck_assert_int_gt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_PACK), 0);
  ck_assert_int_lt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_HOLES), 0);
  /* nothing between them: by size */
  ck_assert_int_lt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_REBOUND), 0);
  ck_assert_int_lt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_SCATTER), 0);
  ck_assert_int_eq (dw_drill_row_compare (&a, &a, DW_DRILL_BY_PASSES), 0);
  /* no oil that holds comes last, and so does what is not a number */
  b.has_hold = true;
  b.hold.viscosity = 500e-6;
  ck_assert_int_gt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_OIL), 0);
  a.result.change[DW_REBOUND][DW_MIDDLE] = NAN;
  ck_assert_int_gt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_REBOUND), 0);
  ck_assert_int_lt (dw_drill_row_compare (&b, &a, DW_DRILL_BY_REBOUND), 0);
  b.n_passes = -1;
  ck_assert_int_gt (dw_drill_row_compare (&a, &b, DW_DRILL_BY_PASSES), 0);
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
  tcase_add_loop_test (tcase, every_choice_is_a_damper, 0, 3 * DW_N_DRILL_DIVISIONS);
  tcase_add_test (tcase, half_the_face_is_the_end_of_choice);
  tcase_add_test (tcase, a_row_says_what_the_study_says);
  tcase_add_test (tcase, covered_and_open_sets_have_no_single_size);
  tcase_add_test (tcase, a_filter_asks_for_all_it_has);
  tcase_add_test (tcase, rows_have_an_order);
  tcase_add_test (tcase, without_bottles_the_oil_is_told_and_no_mix);
  tcase_add_test (tcase, what_cannot_be_drilled_is_no_row);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
