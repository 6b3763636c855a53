/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match-grid.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "match-boxes.h"
#include "random-damper.h"

static dw_match_grids *
grids_of (const match_box *m, const char *levers)
{
  bool allowed[DW_N_LEVERS];
  dw_match_grids *grids = NULL;
  match_levers (levers, allowed);
  ck_assert_int_eq (
      dw_match_grids_new (&m->now, m->temperature, &m->box, allowed, NULL, &grids, NULL), DW_OK);
  return grids;
}

static int
count (const dw_match_grids *grids)
{
  dw_match_build build = { .grid = -1 };
  int n = 0;
  while (match_next (grids, &build))
    n++;
  return n;
}

/* With n parts of a kind there are n + 1 ways: as it is, or one of them. */
START_TEST (builds_are_all_combinations_of_what_is_allowed)
{
  static const struct
  {
    const char *levers;
    int n;
    const char *why;
  } rows[] = {
    { "", 1, "nothing may be changed: as it is" },
    { "b", 5, "four bottles" },
    { "o", 5, "drills above 1.30 mm: 1.35 to 1.50" },
    { "c", 9, "drills above 1.10 mm: 1.15 to 1.50" },
    { "ob", 25, "both" },
    { "ocb", 225, "all three" },
  };
  match_box m;
  match_box_init (&m, 8, 4, 0, 1);
  dw_match_grids *grids = grids_of (&m, rows[_i].levers);
  ck_assert_msg (count (grids) == rows[_i].n, "%s: %d, not %d", rows[_i].why, count (grids),
                 rows[_i].n);
  assert_close (dw_match_grids_count (grids), rows[_i].n, 0.0, 0.0, rows[_i].why);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (stacks_are_those_of_the_ladder_but_the_own_one)
{
  match_box m;
  match_box_init (&m, 0, 0, 3, 2);
  dw_match_grids *grids = grids_of (&m, "s");
  dw_match_build build = { .grid = -1 };
  bool seen[64] = { false };
  int n = 0;
  double before = HUGE_VAL;
  while (match_next (grids, &build))
    {
      const int stack = dw_match_grids_stack (grids, &build);
      n++;
      if (stack < 0)
        continue;
      ck_assert (!seen[stack]);
      seen[stack] = true;
      ck_assert (!m.box.stacks[stack].is_own);
      ck_assert_msg (m.box.stacks[stack].stiffness <= before, "from the stiffest down");
      before = m.box.stacks[stack].stiffness;
      dw_damper damper;
      double temperature;
      ck_assert (dw_match_grids_build (grids, &build, &damper, &temperature));
      ck_assert_int_eq (damper.valve.n_shims, m.box.stacks[stack].n_shims);
    }
  int own = 0;
  for (size_t i = 0; i < m.box.n_stacks; i++)
    own += m.box.stacks[i].is_own ? 1 : 0;
  ck_assert_int_eq (n, 1 + (int)m.box.n_stacks - own);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

/* A damper, a temperature; what two builds must not share. */
typedef struct
{
  dw_damper damper;
  double temperature;
  int piston;
} built;

START_TEST (no_build_lies_in_two_grids)
{
  match_box m;
  match_box_init (&m, 3, 3, 2, 2);
  m.pistons[0] = m.now.piston;
  m.pistons[0].holes[0].diameter = 1.2e-3;
  m.box.n_pistons = 1;
  m.temperatures[0] = 40.0;
  m.box.n_temperatures = 1;
  dw_match_grids *grids = grids_of (&m, "ocsbpt");
  const int most = count (grids);
  built *all = calloc ((size_t)most, sizeof *all);
  dw_match_build build = { .grid = -1 };
  int n = 0;
  while (match_next (grids, &build))
    {
      built *one = &all[n++];
      ck_assert (dw_match_grids_build (grids, &build, &one->damper, &one->temperature));
      one->piston = dw_match_grids_get (grids, build.grid)->piston;
      for (int i = 0; i + 1 < n; i++)
        ck_assert (one->piston != all[i].piston || one->temperature != all[i].temperature
                   || !dw_damper_equal (&one->damper, &all[i].damper));
    }
  ck_assert_int_eq (n, most);
  free (all);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (levers_and_what_is_for_good_are_counted)
{
  match_box m;
  match_box_init (&m, 3, 3, 2, 2);
  m.temperatures[0] = 40.0;
  m.box.n_temperatures = 1;
  dw_match_grids *grids = grids_of (&m, "ocsbmt");
  dw_match_build build = { .grid = -1 };
  while (match_next (grids, &build))
    {
      double size[DW_DRILL_SETS];
      int for_good;
      const int levers = dw_match_grids_levers (grids, &build, &for_good);
      const dw_match_oil *oil = dw_match_grids_oil (grids, &build);
      dw_match_grids_sizes (grids, &build, size);
      const int drilled = (size[0] > 0.0 ? 1 : 0) + (size[1] > 0.0 ? 1 : 0);
      const int stacked = dw_match_grids_stack (grids, &build) >= 0 ? 1 : 0;
      const int poured = oil == NULL ? 0 : oil->other >= 0 ? 2 : 1;
      const int warmed = dw_match_grids_get (grids, build.grid)->temperature >= 0 ? 1 : 0;
      ck_assert_int_eq (for_good, drilled);
      ck_assert_int_eq (levers, drilled + stacked + poured + warmed);
    }
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (a_bottle_of_the_oil_that_is_in_it_is_no_other_oil)
{
  match_box m;
  match_box_init (&m, 0, 3, 0, 1);
  m.bottles[1] = m.now.oil;
  dw_match_grids *grids = grids_of (&m, "b");
  ck_assert_int_eq (count (grids), 3);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (oils_that_are_no_plain_silicone_stand_alone)
{
  match_box m;
  match_box_init (&m, 0, 4, 0, 1);
  m.bottles[1].has_thinning = true;
  m.bottles[1].thinning_rate = 1e4;
  m.bottles[1].thinning_exponent = 0.8;
  m.bottles[2] = (dw_oil){ .kind = DW_OIL_MEASURED,
                           .point_temperature = { 20.0, 40.0 },
                           .point_viscosity = { 410e-6, 290e-6 },
                           .density = 960.0 };
  dw_match_grids *grids = grids_of (&m, "bm");
  int alone = 0;
  for (int i = 0; i < dw_match_grids_get_n (grids); i++)
    {
      const dw_match_grid *grid = dw_match_grids_get (grids, i);
      alone += grid->family >= 0 && grid->n[DW_AXIS_OIL] == 1 ? 1 : 0;
    }
  ck_assert_int_eq (alone, 2);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

/* Close enough for every wish, no two that nobody could mix apart, no bottle lost. */
START_TEST (blends_fill_the_gaps_between_bottles)
{
  match_box m;
  match_box_init (&m, 0, 6, 0, 1);
  dw_match_grids *grids = grids_of (&m, "bm");
  dw_match_build build = { .grid = -1 };
  const dw_match_oil *before = NULL;
  int bottles = 0;
  while (match_next (grids, &build))
    {
      const dw_match_oil *oil = dw_match_grids_oil (grids, &build);
      if (oil == NULL)
        continue;
      bottles += oil->other < 0 ? 1 : 0;
      if (before != NULL)
        {
          const double step = before->viscosity / oil->viscosity - 1.0;
          ck_assert (step > 0.0099 || (oil->other < 0 && before->other < 0));
          ck_assert_msg (step < 0.04, "%.3g %%", 100.0 * step);
        }
      if (oil->other >= 0)
        assert_close (log (oil->viscosity),
                      (1.0 - oil->share) * log (m.bottles[oil->bottle].viscosity)
                          + oil->share * log (m.bottles[oil->other].viscosity),
                      1e-12, 0.0, "log rule");
      before = oil;
    }
  ck_assert_int_eq (bottles, 6);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (pistons_that_do_not_fit_or_are_blank_are_left_out)
{
  match_box m;
  match_box_init (&m, 0, 0, 0, 1);
  m.pistons[0] = m.now.piston;
  m.pistons[0].n_holes = 0;
  m.pistons[1] = m.now.piston;
  m.pistons[1].holes[0].diameter = 9e-3;
  m.pistons[2] = m.now.piston;
  m.pistons[2].holes[0].diameter = 1.5e-3;
  m.box.n_pistons = 3;
  dw_match_grids *grids = grids_of (&m, "p");
  ck_assert_int_eq (count (grids), 2);
  ck_assert_int_eq (dw_match_grids_get (grids, 1)->piston, 2);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

/* ---- the law ---- */

/* [N] rounding of a solved force, where the margin is none */
static const double TINY = 1e-6;

/* False where it can not be computed. A vented damper past its onset is NaN: it bounds nothing. */
static bool
points_of (const match_box *m, const dw_match_grids *grids, const dw_match_build *build,
           dw_force_point out[DW_N_STROKES][DW_N_SPEEDS])
{
  dw_damper damper;
  dw_force_model model;
  double temperature;
  if (!dw_match_grids_build (grids, build, &damper, &temperature)
      || dw_force_model_make (&damper, temperature, &model, NULL) != DW_OK)
    return false;
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      if (dw_force_curve (&model, (dw_stroke)s, m->speeds, DW_N_SPEEDS, out[s], NULL) != DW_OK)
        return false;
      for (int v = 0; v < DW_N_SPEEDS; v++)
        if (damper.gas.kind == DW_GAS_VENTED && out[s][v].is_void)
          out[s][v].force = (double)NAN;
    }
  return true;
}

/* Nothing between two corners of any box of a grid is beyond both of them by more than the margin. */
static void
check_between (const match_box *m, const dw_match_grids *grids, test_random *random, int *n)
{
  dw_match_build firm = { .grid = test_random_int (random, 0, dw_match_grids_get_n (grids) - 1) };
  const dw_match_grid *grid = dw_match_grids_get (grids, firm.grid);
  dw_match_build soft = firm;
  dw_match_build between = firm;
  bool spans[DW_N_AXES_MATCH];
  for (int a = 0; a < DW_N_AXES_MATCH; a++)
    {
      firm.at[a] = test_random_int (random, 0, grid->n[a] - 1);
      soft.at[a] = test_random_int (random, firm.at[a], grid->n[a] - 1);
      between.at[a] = test_random_int (random, firm.at[a], soft.at[a]);
      spans[a] = soft.at[a] > firm.at[a];
    }
  dw_force_point high[DW_N_STROKES][DW_N_SPEEDS];
  dw_force_point low[DW_N_STROKES][DW_N_SPEEDS];
  dw_force_point f[DW_N_STROKES][DW_N_SPEEDS];
  if (!points_of (m, grids, &firm, high) || !points_of (m, grids, &soft, low)
      || !points_of (m, grids, &between, f))
    return;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        const double margin = dw_match_margin (spans, low[s][v].reynolds);
        if (isnan (low[s][v].force) || isnan (high[s][v].force) || isnan (f[s][v].force))
          continue;
        (*n)++;
        ck_assert_msg (f[s][v].force <= high[s][v].force + margin * high[s][v].hydraulic + TINY,
                       "stroke %d speed %d: %.9g above %.9g", s, v, f[s][v].force,
                       high[s][v].force);
        ck_assert_msg (f[s][v].force >= low[s][v].force - margin * low[s][v].hydraulic - TINY,
                       "stroke %d speed %d: %.9g below %.9g", s, v, f[s][v].force, low[s][v].force);
      }
}

START_TEST (every_axis_makes_a_damper_only_softer)
{
  enum
  {
    N_BOXES = 400,
    N_TRIES = 60
  };
  test_random random = test_random_new (8100 + (uint64_t)_i);
  int n = 0;
  for (int k = 0; k < N_BOXES; k++)
    {
      match_box m;
      match_box_init_random (&m, &random);
      dw_match_grids *grids = grids_of (&m, "ocsbmpt");
      for (int i = 0; i < N_TRIES; i++)
        check_between (&m, grids, &random, &n);
      dw_match_grids_free (grids);
      match_box_clear (&m);
    }
  ck_assert_int_gt (n, N_BOXES * N_TRIES);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/match-grid");
  TCase *tcase = tcase_create ("match-grid");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, builds_are_all_combinations_of_what_is_allowed, 0, 6);
  tcase_add_test (tcase, stacks_are_those_of_the_ladder_but_the_own_one);
  tcase_add_test (tcase, no_build_lies_in_two_grids);
  tcase_add_test (tcase, levers_and_what_is_for_good_are_counted);
  tcase_add_test (tcase, a_bottle_of_the_oil_that_is_in_it_is_no_other_oil);
  tcase_add_test (tcase, oils_that_are_no_plain_silicone_stand_alone);
  tcase_add_test (tcase, blends_fill_the_gaps_between_bottles);
  tcase_add_test (tcase, pistons_that_do_not_fit_or_are_blank_are_left_out);
  tcase_add_loop_test (tcase, every_axis_makes_a_damper_only_softer, 0, 4);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
