/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match-closing.h"

#include <math.h>

#include "match-boxes.h"
#include "random-damper.h"
#include "study-dampers.h"

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

/* [degC] */
static const double TEMPERATURE = 27.0;

static const bool all_levers[DW_N_LEVERS] = { true, true, true, true, true, true, true };

static bool
try_wish (const dw_damper *damper, double temperature, dw_match_wish *wish)
{
  dw_force_model model;
  dw_figures figures;
  if (dw_force_model_make (damper, temperature, &model, NULL) != DW_OK
      || dw_figures_read (&model, speeds, &figures, NULL) != DW_OK)
    return false;
  *wish = dw_match_wish_hold (&figures, speeds);
  return true;
}

static dw_match_wish
wish_of (const dw_damper *damper)
{
  dw_match_wish wish;
  ck_assert (try_wish (damper, TEMPERATURE, &wish));
  return wish;
}

/* A part of such a size, and the same in another damper. */
static void
put (dw_damper *damper, dw_match_closing_part part, double size)
{
  if (part == DW_CLOSING_OIL)
    damper->oil.viscosity = size;
  else if (part == DW_CLOSING_SHIM)
    {
      damper->valve.n_shims = 1;
      damper->valve.shims[0].count = 1;
      damper->valve.shims[0].thickness = size;
    }
  else
    damper->piston.holes[part == DW_CLOSING_COVERED ? 1 : 0].diameter = size;
}

static const struct
{
  dw_match_closing_part part;
  double low, high; /* [SI unit of the part] */
  const char *why;
} plants[] = {
  { DW_CLOSING_OIL, 50e-6, 250e-6, "a thinner oil" },
  { DW_CLOSING_OIL, 600e-6, 3000e-6, "a thicker oil" },
  { DW_CLOSING_OPEN, 1.4e-3, 1.7e-3, "open holes" },
  { DW_CLOSING_COVERED, 1.2e-3, 1.5e-3, "covered holes" },
  { DW_CLOSING_SHIM, 0.06e-3, 0.12e-3, "a soft leaf" },
  { DW_CLOSING_SHIM, 0.2e-3, 0.3e-3, "a stiff leaf" },
};

START_TEST (a_part_taken_out_of_the_box_is_found_again)
{
  test_random random = test_random_new (8400 + (uint64_t)_i);
  for (int k = 0; k < 5; k++)
    {
      const double size = test_random_uniform (&random, plants[_i].low, plants[_i].high);
      const dw_damper now = study_covered_damper ();
      dw_damper other = now;
      put (&other, plants[_i].part, size);
      const dw_match_wish wish = wish_of (&other);
      const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, all_levers);
      ck_assert_msg (c.part == plants[_i].part, "%s of %g: part %d", plants[_i].why, size, c.part);
      assert_close (c.size, size, 5e-5, 0.0, "24 thirds of two steps of up to 7 %");
      ck_assert_msg (c.worst < 1e-3 / 3, "%s: misses by %g", plants[_i].why, c.worst);
    }
}
END_TEST

START_TEST (nothing_is_bought_that_comes_no_nearer)
{
  const dw_damper now = study_covered_damper ();
  dw_match_wish wish = wish_of (&now);
  dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, all_levers);
  ck_assert_int_eq (c.part, DW_CLOSING_NONE);
  ck_assert (c.worst < 1e-12);

  /* half of what is worth it, by the oil */
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      wish.target[s][v].force *= 1.0005;
  c = dw_match_closing_find (&now, TEMPERATURE, &wish, all_levers);
  ck_assert_int_eq (c.part, DW_CLOSING_NONE);
  assert_close (c.worst, 1.0 - 1.0 / 1.0005, 1e-9, 0.0, "what it misses by as it is");

  /* compression must grow by as much at the low speed as it must fall at the high one */
  wish = wish_of (&now);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    wish.target[DW_REBOUND][v].is_free = true;
  wish.target[DW_COMPRESSION][DW_LOW].force /= 0.9;
  wish.target[DW_COMPRESSION][DW_HIGH].force /= 1.1;
  static const bool oil_only[DW_N_LEVERS] = { [DW_LEVER_OIL] = true };
  c = dw_match_closing_find (&now, TEMPERATURE, &wish, oil_only);
  ck_assert (c.worst <= 0.1 + 1e-12 && c.worst > 0.08);
}
END_TEST

START_TEST (only_parts_that_may_be_changed_are_looked_for)
{
  static const struct
  {
    dw_lever lever;
    dw_match_closing_part part;
  } rows[]
      = { { DW_LEVER_OIL, DW_CLOSING_OIL },         { DW_LEVER_OPEN, DW_CLOSING_OPEN },
          { DW_LEVER_COVERED, DW_CLOSING_COVERED }, { DW_LEVER_STACK, DW_CLOSING_SHIM },
          { DW_LEVER_PISTON, DW_CLOSING_NONE },     { DW_LEVER_TEMPERATURE, DW_CLOSING_NONE } };
  const dw_damper now = study_covered_damper ();
  dw_match_wish wish = wish_of (&now);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        wish.target[s][v].is_free = s == DW_COMPRESSION || v != DW_HIGH;
        wish.target[s][v].force *= 0.97;
      }
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      bool allowed[DW_N_LEVERS] = { false };
      allowed[rows[i].lever] = true;
      const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, allowed);
      ck_assert_msg (c.part == rows[i].part, "row %d: part %d", i, c.part);
      ck_assert (c.part == DW_CLOSING_NONE ? c.worst > 0.02 : c.worst < 1e-4);
    }
}
END_TEST

/* The same as the program does, but sizes side by side and no narrowing. */
static double
miss_of (const dw_damper *now, const dw_match_wish *wish, dw_match_closing_part part, double size)
{
  dw_damper damper = *now;
  dw_match_wish got;
  double worst = 0.0;
  put (&damper, part, size);
  if (!try_wish (&damper, TEMPERATURE, &got))
    return HUGE_VAL;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      if (!wish->target[s][v].is_free)
        worst = fmax (worst, fabs (got.target[s][v].force / wish->target[s][v].force - 1.0));
  return worst;
}

/* Targets that pull apart, each force for itself. */
START_TEST (no_size_side_by_side_comes_nearer)
{
  enum
  {
    N_SIZES = 600
  };
  static const struct
  {
    dw_match_closing_part part;
    double from, to;
  } ranges[] = { { DW_CLOSING_OIL, 20e-6, 5000e-6 },
                 { DW_CLOSING_OPEN, 1.301e-3, 2.0e-3 },
                 { DW_CLOSING_COVERED, 1.101e-3, 1.6e-3 },
                 { DW_CLOSING_SHIM, 0.02e-3, 0.6e-3 } };
  static const dw_lever levers[] = { DW_LEVER_OIL, DW_LEVER_OPEN, DW_LEVER_COVERED,
                                     DW_LEVER_STACK };
  test_random random = test_random_new (8500 + (uint64_t)_i);
  const dw_damper now = study_covered_damper ();
  dw_match_wish wish = wish_of (&now);
  dw_drill_sets sets;
  dw_drill_sets_init (&sets, &now, DW_DRILL_KINDS);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        wish.target[s][v].force *= test_random_uniform (&random, 0.5, 1.4);
        wish.target[s][v].is_free = test_random_int (&random, 0, 2) == 0;
      }
  for (int p = 0; p < N_ENTRIES (ranges); p++)
    {
      bool allowed[DW_N_LEVERS] = { false };
      allowed[levers[p]] = true;
      const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, allowed);
      for (int i = 0; i <= N_SIZES; i++)
        {
          const double size = ranges[p].from
                              * pow (ranges[p].to / ranges[p].from, (double)i / N_SIZES);
          if ((p == 1 || p == 2) && size > sets.largest[p - 1])
            continue;
          const double miss = miss_of (&now, &wish, ranges[p].part, size);
          ck_assert_msg (c.worst < miss + (c.part == DW_CLOSING_NONE ? 1e-3 : 0.0) + 1e-9,
                         "part %d of %g: %g, found %g of part %d", p, size, miss, c.worst, c.part);
        }
    }
}
END_TEST

/* Random dampers whose miss has two valleys, the deeper one of which looks shallower from step to step:
 * found among 6,000. Fixed states, whatever the seed of the run. */
static const struct
{
  uint64_t state;
  dw_lever lever;
  double size;   /* [SI unit of the part] in the deeper valley */
  double worst;  /* [1] there, by the search of every valley */
  double beside; /* [1] in the other one */
} valleys[] = {
  { 0xffbff0cd3f74e18e, DW_LEVER_OIL, 116.76e-6, 0.332468, 0.338866 },
  { 0x2c0463784def6632, DW_LEVER_OPEN, 1.55494e-3, 0.320355, 0.321545 },
};

START_TEST (the_deepest_of_several_valleys_is_found)
{
  test_random random = { .state = valleys[_i].state };
  const dw_damper now = random_damper (&random);
  dw_match_wish wish = wish_of (&now);
  bool allowed[DW_N_LEVERS] = { false };
  allowed[valleys[_i].lever] = true;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        const bool is_left_out = test_random_int (&random, 0, 1) == 0;
        wish.target[s][v].is_free = wish.target[s][v].is_free || is_left_out;
        wish.target[s][v].force *= test_random_uniform (&random, 0.5, 1.4);
      }
  const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, allowed);
  assert_close (c.size, valleys[_i].size, 1e-4, 0.0, "the printed digits");
  assert_close (c.worst, valleys[_i].worst, 1e-4, 0.0, "the printed digits");
  ck_assert (c.worst < valleys[_i].beside - 1e-3);
}
END_TEST

/* Compression that calls for far larger holes than the piston has room for. */
START_TEST (the_land_is_kept)
{
  static const bool drills[DW_N_LEVERS] = { [DW_LEVER_OPEN] = true, [DW_LEVER_COVERED] = true };
  test_random random = test_random_new (8600);
  int n_found = 0;
  for (int k = 0; k < 200; k++)
    {
      const dw_damper now = random_damper (&random);
      dw_match_wish wish;
      dw_drill_sets sets;
      if (!try_wish (&now, TEMPERATURE, &wish) || !dw_match_wish_is_any (&wish))
        continue;
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int v = 0; v < DW_N_SPEEDS; v++)
          wish.target[s][v].force *= 0.1;
      const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, drills);
      const double size[DW_DRILL_SETS] = { c.part == DW_CLOSING_OPEN ? c.size : 0.0,
                                           c.part == DW_CLOSING_COVERED ? c.size : 0.0 };
      dw_drill_sets_init (&sets, &now, DW_DRILL_KINDS);
      n_found += c.part != DW_CLOSING_NONE;
      ck_assert (c.part != DW_CLOSING_OIL && c.part != DW_CLOSING_SHIM);
      ck_assert_msg (dw_drill_sets_have_room (&sets, size), "damper %d, part %d of %g: no land", k,
                     c.part, c.size);
      for (int set = 0; set < DW_DRILL_SETS; set++)
        ck_assert (size[set] == 0.0 || dw_drill_sets_can_reach (&sets, set, size[set]));
    }
  ck_assert_int_gt (n_found, 50);
}
END_TEST

/* No shim, no covered hole, and a target that no model can be asked for: no part, no crash. */
START_TEST (a_plain_piston_has_no_leaf_to_buy)
{
  static const bool stack[DW_N_LEVERS] = { [DW_LEVER_STACK] = true, [DW_LEVER_COVERED] = true };
  const dw_damper now = dw_damper_defaults ();
  dw_match_wish wish = wish_of (&now);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    wish.target[DW_REBOUND][v].force *= 0.8;
  const dw_match_closing c = dw_match_closing_find (&now, TEMPERATURE, &wish, stack);
  ck_assert_int_eq (c.part, DW_CLOSING_NONE);
  assert_close (c.worst, 0.25, 1e-9, 0.0, "1/0.8 less 1");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/match-closing");
  TCase *tcase = tcase_create ("closing");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, a_part_taken_out_of_the_box_is_found_again, 0, N_ENTRIES (plants));
  tcase_add_test (tcase, nothing_is_bought_that_comes_no_nearer);
  tcase_add_test (tcase, only_parts_that_may_be_changed_are_looked_for);
  tcase_add_loop_test (tcase, no_size_side_by_side_comes_nearer, 0, 12);
  tcase_add_loop_test (tcase, the_deepest_of_several_valleys_is_found, 0, N_ENTRIES (valleys));
  tcase_add_test (tcase, the_land_is_kept);
  tcase_add_test (tcase, a_plain_piston_has_no_leaf_to_buy);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
