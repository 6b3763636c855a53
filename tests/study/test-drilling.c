/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drilling.h"

#include <math.h>
#include <string.h>

#include "model/dw-drill.h"
#include "model/dw-oil.h"
#include "study-dampers.h"
#include "test-support.h"

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

static dw_drilling
study_of (const dw_damper *damper, dw_drill_division division, double temperature)
{
  dw_drill_sets sets;
  dw_drilling study;
  dw_error err = { .text = "" };
  dw_drill_sets_init (&sets, damper, division);
  ck_assert_msg (dw_drilling_init (&study, &sets, temperature, speeds, &err) == DW_OK, "%s: %s",
                 err.field, err.text);
  return study;
}

static dw_figures
figures_of (const dw_damper *damper, double temperature)
{
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (damper, temperature, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &figures, NULL), DW_OK);
  return figures;
}

START_TEST (a_choice_is_the_model_of_the_drilled_damper)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 28.0);
  const double size[] = { 1.5e-3, 1.4e-3 };
  dw_drill_result r;
  ck_assert_int_eq (dw_drilling_at (&study, size, &r, NULL), DW_OK);
  dw_damper drilled = damper;
  drilled.piston.holes[0] = (dw_holes){ 3, 1.5e-3, false };
  drilled.piston.holes[2] = (dw_holes){ 3, 1.4e-3, false };
  drilled.piston.n_holes = 3;
  const dw_figures expected = figures_of (&drilled, 28.0);
  const dw_figures now = figures_of (&damper, 28.0);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        assert_close (r.figures.point[s][v].force, expected.point[s][v].force, 1e-9, 0.0,
                      "groups in another order: rounding only");
        assert_close (r.change[s][v],
                      100.0 * (expected.point[s][v].force / now.point[s][v].force - 1.0), 1e-7,
                      1e-7, "against now");
        ck_assert (r.change[s][v] < 0.0);
      }
  ck_assert_int_eq (dw_drill_count (&study.sets, size), 6);
}
END_TEST

START_TEST (nothing_drilled_changes_nothing)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_KINDS, 25.0);
  const double size[] = { 0.0, 0.0 };
  dw_drill_result r;
  dw_drill_hold hold;
  ck_assert_int_eq (dw_drilling_at (&study, size, &r, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (r.change[s][v] == 0.0);
  ck_assert_int_eq (dw_drilling_hold (&study, size, &hold, NULL), DW_OK);
  ck_assert (hold.viscosity == damper.oil.viscosity);
  ck_assert_int_eq (dw_drill_count (&study.sets, size), 0);
}
END_TEST

/* Covered holes are shut in compression: drilling them leaves it as it is. */
START_TEST (covered_holes_act_in_their_stroke_only)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_KINDS, 25.0);
  const double size[] = { 0.0, 1.2e-3 };
  dw_drill_result r;
  ck_assert_int_eq (dw_drilling_at (&study, size, &r, NULL), DW_OK);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    assert_close (r.change[DW_COMPRESSION][v], 0.0, 0.0, 1e-6, "shut");
  ck_assert (r.change[DW_REBOUND][DW_HIGH] < -0.5);
}
END_TEST

/* Every reachable pair of the drill table, at several temperatures and oils. */
START_TEST (the_oil_that_holds_really_holds)
{
  static const double temperatures[] = { 5.0, 25.0, 45.0 };
  dw_damper damper = study_covered_damper ();
  size_t n;
  const dw_drill_size *drills = dw_drill_table (&n);
  int tried = 0;
  if (_i == 1)
    damper.oil = (dw_oil){ .kind = DW_OIL_BLEND,
                           .n_parts = 2,
                           .parts = { { 300e-6, 0.5 }, { 600e-6, 0.5 } } };
  for (int t = 0; t < N_ENTRIES (temperatures); t++)
    {
      const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, temperatures[t]);
      for (size_t i = 0; i < n; i += 3)
        for (size_t k = i; k < n; k += 5)
          {
            const double size[] = { drills[i].diameter, drills[k].diameter };
            dw_drill_hold hold;
            dw_error err = { .text = "" };
            if (!dw_drill_sets_can_reach (&study.sets, 0, size[0])
                || !dw_drill_sets_have_room (&study.sets, size))
              continue;
            ck_assert_msg (dw_drilling_hold (&study, size, &hold, &err) == DW_OK, "%s", err.text);
            dw_damper held;
            ck_assert_int_eq (dw_drill_sets_apply (&study.sets, size, &held, NULL), DW_OK);
            held.oil = (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = hold.viscosity };
            const dw_figures figures = figures_of (&held, temperatures[t]);
            assert_close (figures.point[DW_COMPRESSION][DW_LOW].force,
                          study.now.point[DW_COMPRESSION][DW_LOW].force, 1e-3, 0.0,
                          "asked: within 0.1 %");
            assert_close (hold.figures.point[DW_REBOUND][DW_HIGH].force,
                          figures.point[DW_REBOUND][DW_HIGH].force, 1e-9, 0.0, "the same damper");
            assert_close (hold.change[DW_COMPRESSION][DW_LOW], 0.0, 0.0, 0.1, "held");
            /* thicker oil in larger holes: less of the force is inertia */
            ck_assert (hold.viscosity > study.sets.damper.oil.viscosity * 0.99 || _i == 1);
            ck_assert (hold.figures.pack[DW_COMPRESSION] <= study.now.pack[DW_COMPRESSION]);
            tried++;
          }
    }
  ck_assert_int_gt (tried, 60);
}
END_TEST

START_TEST (an_oil_that_cannot_be_is_refused)
{
  dw_damper damper = study_covered_damper ();
  damper.oil.viscosity = 90000e-6;
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 25.0);
  const double size[] = { 1.7e-3, 1.7e-3 };
  dw_drill_hold hold;
  dw_error err;
  ck_assert_int_eq (dw_drilling_hold (&study, size, &hold, &err), DW_ERR_NO_CONVERGENCE);
  ck_assert_str_eq (err.field, "oil.viscosity");
}
END_TEST

/* Hagen-Poiseuille: in long holes at small Re the flow at a pressure goes with n d^4 alone. The
 * limit is shown with holes of 16 diameters in thick oil, without leak: n d^4 must decide, and the
 * single size that stands for two is the mean of their fourth powers. */
START_TEST (at_low_speed_n_d4_counts)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.thickness = 20e-3;
  damper.piston.clearance = 0.0;
  damper.piston.holes[0] = (dw_holes){ 6, 1.0e-3, false };
  damper.oil.viscosity = 20000e-6;
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 25.0);
  const double size[] = { 1.05e-3, 1.25e-3 };
  double single;
  ck_assert_int_eq (dw_drilling_single (&study, size, &single, NULL), DW_OK);
  const double expected = pow (0.5 * (pow (size[0], 4.0) + pow (size[1], 4.0)), 0.25);
  assert_close (single, expected, 0.003, 0.0, "ends take a part of the drop: 6 pi of 32 L/d");

  dw_drill_result r;
  ck_assert_int_eq (dw_drilling_at (&study, size, &r, NULL), DW_OK);
  const double flow = (pow (size[0], 4.0) + pow (size[1], 4.0)) / (2.0 * pow (1.0e-3, 4.0));
  const double hydraulic = r.figures.point[DW_REBOUND][DW_LOW].hydraulic
                           / study.now.point[DW_REBOUND][DW_LOW].hydraulic;
  assert_close (hydraulic, 1.0 / flow, 0.03, 0.0, "dp ~ 1/(n d^4)");
}
END_TEST

/* Inertia: in thin oil at high speed the pressure goes with (Q/(n d^2))^2. */
START_TEST (at_high_speed_n_d2_counts)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.thickness = 0.5e-3;
  damper.piston.clearance = 0.0;
  damper.piston.holes[0] = (dw_holes){ 6, 1.0e-3, false };
  damper.oil.viscosity = 1e-6;
  damper.gas = (dw_gas){ DW_GAS_BLADDER, 2000e3, 1e-6 };
  const double fast[DW_N_SPEEDS] = { 1.0, 2.0, 4.0 };
  dw_drill_sets sets;
  dw_drilling study;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, fast, NULL), DW_OK);
  const double size[] = { 1.05e-3, 1.15e-3 };
  dw_drill_result r;
  ck_assert_int_eq (dw_drilling_at (&study, size, &r, NULL), DW_OK);
  const double area = (pow (size[0], 2.0) + pow (size[1], 2.0)) / (2.0 * pow (1.0e-3, 2.0));
  const double hydraulic = r.figures.point[DW_REBOUND][DW_HIGH].hydraulic
                           / study.now.point[DW_REBOUND][DW_HIGH].hydraulic;
  assert_close (hydraulic, 1.0 / (area * area), 0.03, 0.0, "dp ~ 1/(n d^2)^2");
}
END_TEST

/* The field goes on where no drill can: below what is there, and past the land. */
START_TEST (the_field_is_the_model_everywhere)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_KINDS, 25.0);
  static const double tried[][2] = { { 1.0e-3, 1.1e-3 }, { 1.5e-3, 0.8e-3 }, { 1.3e-3, 1.1e-3 } };
  for (int i = 0; i < N_ENTRIES (tried); i++)
    {
      dw_damper other = damper;
      dw_figures figures;
      double viscosity;
      other.piston.holes[0].diameter = tried[i][0];
      other.piston.holes[1].diameter = tried[i][1];
      const dw_figures expected = figures_of (&other, 25.0);
      ck_assert_int_eq (dw_drilling_field (&study, tried[i], &figures, NULL), DW_OK);
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int v = 0; v < DW_N_SPEEDS; v++)
          ck_assert (figures.point[s][v].force == expected.point[s][v].force);
      ck_assert_int_eq (dw_drilling_field_oil (&study, tried[i], &viscosity, NULL), DW_OK);
      other.oil.viscosity = viscosity;
      assert_close (figures_of (&other, 25.0).point[DW_COMPRESSION][DW_LOW].force,
                    study.now.point[DW_COMPRESSION][DW_LOW].force, 1e-6, 0.0, "held");
    }
}
END_TEST

START_TEST (one_size_for_two_does_the_same)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 25.0);
  const double size[] = { 1.4e-3, 1.6e-3 };
  double single;
  dw_drill_result two;
  dw_drill_result one;
  ck_assert_int_eq (dw_drilling_single (&study, size, &single, NULL), DW_OK);
  ck_assert (single > 1.5e-3 && single < 1.6e-3);
  const double both[] = { single, single };
  ck_assert_int_eq (dw_drilling_at (&study, size, &two, NULL), DW_OK);
  ck_assert_int_eq (dw_drilling_at (&study, both, &one, NULL), DW_OK);
  assert_close (one.figures.point[DW_COMPRESSION][DW_LOW].force,
                two.figures.point[DW_COMPRESSION][DW_LOW].force, 1e-6, 0.0, "what was asked for");
  const double same[] = { 1.5e-3, 1.5e-3 };
  ck_assert_int_eq (dw_drilling_single (&study, same, &single, NULL), DW_OK);
  assert_close (single, 1.5e-3, 1e-7, 0.0, "itself");
  const double none[] = { 0.0, 0.0 };
  ck_assert_int_eq (dw_drilling_single (&study, none, &single, NULL), DW_OK);
  assert_close (single, 1.3e-3, 1e-12, 0.0, "as it is");
}
END_TEST

START_TEST (open_and_covered_holes_have_no_one_size)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_KINDS, 25.0);
  const double size[] = { 1.4e-3, 1.2e-3 };
  double single;
  dw_error err;
  ck_assert_int_eq (dw_drilling_single (&study, size, &single, &err), DW_ERR_GEOMETRY);
}
END_TEST

START_TEST (only_drilled_holes_scatter)
{
  const dw_damper damper = study_covered_damper ();
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 25.0);
  const dw_spread_limits limits = { .hole_grade = 12 };
  const double none[] = { 0.0, 0.0 };
  const double half[] = { 1.5e-3, 0.0 };
  const double all[] = { 1.5e-3, 1.5e-3 };
  dw_spread_point a[DW_N_STROKES][DW_N_SPEEDS];
  dw_spread_point b[DW_N_STROKES][DW_N_SPEEDS];
  ck_assert_int_eq (dw_drilling_spread (&study, none, &limits, a, NULL), DW_OK);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    ck_assert (a[DW_REBOUND][v].deviation == 0.0);
  ck_assert_int_eq (dw_drilling_spread (&study, half, &limits, a, NULL), DW_OK);
  ck_assert_int_eq (dw_drilling_spread (&study, all, &limits, b, NULL), DW_OK);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      ck_assert (a[DW_REBOUND][v].deviation > 0.0);
      assert_close (a[DW_REBOUND][v].pair_deviation, sqrt (2.0) * a[DW_REBOUND][v].deviation, 1e-9,
                    0.0, "left and right are drilled by the same hand, hole by hole");
      ck_assert (a[DW_REBOUND][v].mean - a[DW_REBOUND][v].nominal
                 > b[DW_REBOUND][v].mean - b[DW_REBOUND][v].nominal);
    }
}
END_TEST

/* Drilled to a size that other holes have had before: those still do not scatter. The judge is the
 * spread of the same damper with the other holes a hair larger, so that they are a group apart. */
static void
expect_same_spread (const dw_drilling *study, const double size[DW_DRILL_SETS],
                    const dw_damper *apart, unsigned exact)
{
  const dw_spread_limits limits = { .hole_grade = 12 };
  const dw_spread_limits told = { .hole_grade = 12, .exact_groups = exact };
  dw_spread_point out[DW_N_STROKES][DW_N_SPEEDS];
  ck_assert_int_eq (dw_drilling_spread (study, size, &limits, out, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      dw_spread_point expected[DW_N_SPEEDS];
      ck_assert_int_eq (dw_spread_make (apart, study->temperature, &told, (dw_stroke)s, speeds,
                                        DW_N_SPEEDS, expected, NULL),
                        DW_OK);
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          assert_close (out[s][v].mean, expected[v].mean, 1e-4, 0.0, "a hair of 2 nm");
          assert_close (out[s][v].deviation, expected[v].deviation, 1e-3, 0.0, "as above");
        }
    }
}

START_TEST (covered_holes_of_the_drilled_size_do_not_scatter)
{
  dw_damper damper = study_covered_damper ();
  damper.piston.holes[0].diameter = 1.0e-3;
  const dw_drilling study = study_of (&damper, DW_DRILL_HALVES, 25.0);
  const double size[] = { 1.1e-3, 1.1e-3 };
  damper.piston.holes[0].diameter = 1.1e-3;
  expect_same_spread (&study, size, &damper, 1U << 1);
}
END_TEST

START_TEST (holes_that_had_the_drilled_size_do_not_scatter)
{
  dw_damper damper = study_covered_damper ();
  damper.piston.holes[2] = (dw_holes){ 2, 1.2e-3, false };
  damper.piston.n_holes = 3;
  dw_drill_sets sets;
  dw_drilling study;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  for (int i = 0; i < sets.face.n_holes; i++)
    sets.set_of[i] = sets.face.holes[i].group == 2 ? 0 : -1;
  dw_drill_sets_update (&sets);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
  const double size[] = { 1.3e-3, 0.0 };
  damper.piston.holes[0].diameter = 1.3e-3 + 2e-9;
  damper.piston.holes[2].diameter = 1.3e-3;
  expect_same_spread (&study, size, &damper, 1U << 0 | 1U << 1);
}
END_TEST

START_TEST (a_bottle_or_two_mixed_give_the_oil)
{
  const double bottles[] = { 600e-6, 200e-6, 400e-6 };
  dw_drill_mix mix = dw_drill_mix_find (402e-6, bottles, 3);
  ck_assert_int_eq (mix.bottle, 2);
  ck_assert_int_eq (mix.other, -1);
  mix = dw_drill_mix_find (500e-6, bottles, 3);
  ck_assert_int_eq (mix.bottle, 2);
  ck_assert_int_eq (mix.other, 0);
  assert_close (dw_blend_log (bottles[mix.bottle], bottles[mix.other], 1.0 - mix.share), 500e-6,
                1e-9, 0.0, "by the log rule");
  ck_assert_int_eq (dw_drill_mix_find (700e-6, bottles, 3).bottle, -1);
  ck_assert_int_eq (dw_drill_mix_find (100e-6, bottles, 3).bottle, -1);
  ck_assert_int_eq (dw_drill_mix_find (100e-6, bottles, 0).bottle, -1);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/drilling");
  TCase *tcase = tcase_create ("drilling");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, a_choice_is_the_model_of_the_drilled_damper);
  tcase_add_test (tcase, nothing_drilled_changes_nothing);
  tcase_add_test (tcase, covered_holes_act_in_their_stroke_only);
  tcase_add_loop_test (tcase, the_oil_that_holds_really_holds, 0, 2);
  tcase_add_test (tcase, an_oil_that_cannot_be_is_refused);
  tcase_add_test (tcase, at_low_speed_n_d4_counts);
  tcase_add_test (tcase, at_high_speed_n_d2_counts);
  tcase_add_test (tcase, the_field_is_the_model_everywhere);
  tcase_add_test (tcase, one_size_for_two_does_the_same);
  tcase_add_test (tcase, open_and_covered_holes_have_no_one_size);
  tcase_add_test (tcase, only_drilled_holes_scatter);
  tcase_add_test (tcase, covered_holes_of_the_drilled_size_do_not_scatter);
  tcase_add_test (tcase, holes_that_had_the_drilled_size_do_not_scatter);
  tcase_add_test (tcase, a_bottle_or_two_mixed_give_the_oil);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
