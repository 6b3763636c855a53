/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-sets.h"

#include <math.h>
#include <string.h>

#include "model/dw-drill.h"
#include "random-damper.h"
#include "study-dampers.h"
#include "test-support.h"

static dw_drill_sets
divide (dw_drill_division division)
{
  const dw_damper d = study_covered_damper ();
  dw_drill_sets sets;
  dw_drill_sets_init (&sets, &d, division);
  return sets;
}

START_TEST (halves_take_every_other_open_hole)
{
  const dw_drill_sets sets = divide (DW_DRILL_HALVES);
  ck_assert_int_eq (sets.n_holes[0], 3);
  ck_assert_int_eq (sets.n_holes[1], 3);
  ck_assert (sets.is_alike);
  ck_assert (sets.present[0] == 1.3e-3 && sets.present[1] == 1.3e-3);
  int last = -1;
  for (int i = 0; i < sets.face.n_holes; i++)
    {
      if (sets.face.holes[i].covered)
        {
          ck_assert_int_eq (sets.set_of[i], -1);
          continue;
        }
      ck_assert_int_ne (sets.set_of[i], last);
      last = sets.set_of[i];
    }
}
END_TEST

START_TEST (kinds_are_open_and_covered)
{
  const dw_drill_sets sets = divide (DW_DRILL_KINDS);
  ck_assert_int_eq (sets.n_holes[0], 6);
  ck_assert_int_eq (sets.n_holes[1], 4);
  ck_assert (!sets.is_alike);
  ck_assert (sets.present[1] == 1.1e-3);
}
END_TEST

START_TEST (holes_can_be_moved_between_sets)
{
  dw_drill_sets sets = divide (DW_DRILL_HALVES);
  for (int i = 0; i < sets.face.n_holes; i++)
    sets.set_of[i] = i == 5 ? 0 : -1;
  dw_drill_sets_update (&sets);
  ck_assert_int_eq (sets.n_holes[0], 1);
  ck_assert_int_eq (sets.n_holes[1], 0);
  ck_assert (sets.largest[1] == 0.0);
  const double size[] = { 1.5e-3, 0.0 };
  dw_damper d;
  ck_assert_int_eq (dw_drill_sets_apply (&sets, size, &d, NULL), DW_OK);
  ck_assert_int_eq (d.piston.n_holes, 3);
}
END_TEST

START_TEST (drilled_groups_are_split_and_joined)
{
  const dw_drill_sets sets = divide (DW_DRILL_HALVES);
  const double size[] = { 1.5e-3, 1.4e-3 };
  const double same[] = { 1.5e-3, 1.5e-3 };
  const double none[] = { 0.0, 0.0 };
  dw_damper d;
  ck_assert_int_eq (dw_drill_sets_apply (&sets, size, &d, NULL), DW_OK);
  ck_assert_int_eq (d.piston.n_holes, 3);
  ck_assert_int_eq (d.piston.holes[0].count, 3);
  ck_assert (d.piston.holes[0].diameter == 1.5e-3 && d.piston.holes[1].diameter == 1.4e-3);
  ck_assert (d.piston.holes[2].covered && d.piston.holes[2].diameter == 1.1e-3);
  ck_assert_int_eq (dw_drill_sets_apply (&sets, same, &d, NULL), DW_OK);
  ck_assert_int_eq (d.piston.n_holes, 2);
  ck_assert_int_eq (d.piston.holes[0].count, 6);
  ck_assert_int_eq (dw_drill_sets_apply (&sets, none, &d, NULL), DW_OK);
  ck_assert (dw_damper_equal (&d, &sets.damper));
}
END_TEST

/* Drilling goes one way. Every drill of the table, both sets. */
START_TEST (never_a_smaller_hole)
{
  size_t n;
  const dw_drill_size *drills = dw_drill_table (&n);
  for (int division = 0; division < DW_N_DRILL_DIVISIONS; division++)
    {
      const dw_drill_sets sets = divide ((dw_drill_division)division);
      for (size_t i = 0; i < n; i++)
        for (int s = 0; s < DW_DRILL_SETS; s++)
          {
            double size[DW_DRILL_SETS] = { 0.0, 0.0 };
            dw_damper d;
            dw_error err;
            size[s] = drills[i].diameter;
            const bool larger = drills[i].diameter > sets.present[s] + DW_DRILL_SAME;
            ck_assert (dw_drill_sets_can_reach (&sets, s, size[s]) == larger);
            const dw_status status = dw_drill_sets_apply (&sets, size, &d, &err);
            if (!larger)
              {
                ck_assert_int_eq (status, DW_ERR_RANGE);
                ck_assert_str_eq (err.field, "drill.size");
                ck_assert_int_eq (err.index, s);
              }
          }
    }
}
END_TEST

/* The face of the drilled damper, hole by hole where it is now, has nothing to find. */
static bool
face_allows (const dw_drill_sets *sets, const double size[DW_DRILL_SETS])
{
  const dw_piston_face *face = &sets->face;
  for (int i = 0; i < face->n_holes; i++)
    {
      const dw_face_hole *a = &face->holes[i];
      const int s = sets->set_of[i];
      const double da = s >= 0 && size[s] > 0.0 ? size[s] : a->diameter;
      const double at = hypot (a->x, a->y);
      if (at + 0.5 * da > face->piston_radius + 1e-9 || at - 0.5 * da < face->shaft_radius - 1e-9
          || at - 0.5 * da < face->hub_radius - 1e-9
          || (a->covered && at + 0.5 * da > face->shim_radius + 1e-9))
        return false;
      for (int k = i + 1; k < face->n_holes; k++)
        {
          const dw_face_hole *b = &face->holes[k];
          const int t = sets->set_of[k];
          const double db = t >= 0 && size[t] > 0.0 ? size[t] : b->diameter;
          const double land = hypot (a->x - b->x, a->y - b->y) - 0.5 * (da + db);
          if (land < 0.2 * fmax (da, db) - 1e-9)
            return false;
        }
    }
  return true;
}

START_TEST (never_outside_the_geometry)
{
  test_random random = test_random_new ((uint64_t)_i);
  int allowed = 0;
  int refused = 0;
  dw_drill_sets sets = divide ((dw_drill_division)(_i % DW_N_DRILL_DIVISIONS));
  if (_i >= 2)
    for (int i = 0; i < sets.face.n_holes; i++)
      sets.set_of[i] = test_random_int (&random, -1, 1);
  dw_drill_sets_update (&sets);
  for (int i = 0; i < 4000; i++)
    {
      double size[DW_DRILL_SETS];
      for (int s = 0; s < DW_DRILL_SETS; s++)
        size[s] = sets.n_holes[s] == 0 || test_random_int (&random, 0, 5) == 0
                      ? 0.0
                      : sets.present[s] + test_random_uniform (&random, 2e-9, 3e-3);
      const bool room = dw_drill_sets_have_room (&sets, size);
      ck_assert_msg (room == face_allows (&sets, size), "%.4f %.4f mm", size[0] * 1e3,
                     size[1] * 1e3);
      allowed += room;
      refused += !room;
    }
  ck_assert_int_gt (allowed, 50);
  ck_assert_int_gt (refused, 50);
}
END_TEST

START_TEST (the_largest_size_is_the_last_that_fits)
{
  const dw_drill_sets sets = divide ((dw_drill_division)_i);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    {
      double size[DW_DRILL_SETS] = { 0.0, 0.0 };
      size[s] = sets.largest[s];
      ck_assert (dw_drill_sets_have_room (&sets, size));
      size[s] += 1e-6;
      ck_assert (!dw_drill_sets_have_room (&sets, size));
    }
}
END_TEST

START_TEST (too_little_land_is_told)
{
  const dw_drill_sets sets = divide (DW_DRILL_HALVES);
  const double size[] = { 6e-3, 0.0 };
  dw_damper d;
  dw_error err;
  ck_assert_int_eq (dw_drill_sets_apply (&sets, size, &d, &err), DW_ERR_GEOMETRY);
  ck_assert_str_eq (err.field, "drill.size");
  ck_assert_ptr_nonnull (strstr (err.text, "land"));
}
END_TEST

START_TEST (counts_never_pass_what_a_group_may_hold)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.holes[0] = (dw_holes){ 35, 0.3e-3, false };
  d.piston.holes[1] = (dw_holes){ 35, 0.31e-3, false };
  d.piston.n_holes = 2;
  dw_drill_sets sets;
  dw_drill_sets_init (&sets, &d, DW_DRILL_HALVES);
  const double size[] = { 0.32e-3, 0.32e-3 };
  dw_damper drilled;
  ck_assert_int_eq (dw_drill_sets_apply (&sets, size, &drilled, NULL), DW_OK);
  int n = 0;
  for (int i = 0; i < drilled.piston.n_holes; i++)
    {
      ck_assert_int_le (drilled.piston.holes[i].count, 64);
      n += drilled.piston.holes[i].count;
    }
  ck_assert_int_eq (n, 70);
}
END_TEST

/* Holes that nearly touch, or more than the face has room for: not drilled, they need no land. */
START_TEST (what_is_left_as_it_is_needs_no_room)
{
  static const double as_it_is[DW_DRILL_SETS] = { 0.0, 0.0 };
  test_random random = test_random_new (8700);
  int n_crowded = 0;
  for (int k = 0; k < 500; k++)
    {
      const dw_damper damper = random_damper (&random);
      dw_drill_sets sets;
      dw_drill_sets_init (&sets, &damper, DW_DRILL_KINDS);
      n_crowded += sets.largest[0] < 0.0 || sets.largest[1] < 0.0;
      ck_assert_msg (dw_drill_sets_have_room (&sets, as_it_is), "damper %d", k);
    }
  ck_assert_int_gt (n_crowded, 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/drill-sets");
  TCase *tcase = tcase_create ("drill-sets");
  tcase_add_test (tcase, halves_take_every_other_open_hole);
  tcase_add_test (tcase, kinds_are_open_and_covered);
  tcase_add_test (tcase, holes_can_be_moved_between_sets);
  tcase_add_test (tcase, drilled_groups_are_split_and_joined);
  tcase_add_test (tcase, never_a_smaller_hole);
  tcase_add_loop_test (tcase, never_outside_the_geometry, 0, 12);
  tcase_add_loop_test (tcase, the_largest_size_is_the_last_that_fits, 0, DW_N_DRILL_DIVISIONS);
  tcase_add_test (tcase, too_little_land_is_told);
  tcase_add_test (tcase, counts_never_pass_what_a_group_may_hold);
  tcase_add_test (tcase, what_is_left_as_it_is_needs_no_room);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
