/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-land.h"

#include <math.h>

#include "draw-samples.h"
#include "model/dw-drill.h"

/* Pistons whose land ends in different ways. */
static const struct
{
  dw_drill_division division;
  int n_open;
  double open, covered;
  const char *why;
} pistons[] = {
  { DW_DRILL_HALVES, 6, 1.3e-3, 1.1e-3, "each set for itself" },
  { DW_DRILL_KINDS, 6, 1.3e-3, 1.1e-3, "a corner is cut where both are large" },
  { DW_DRILL_HALVES, 12, 1.3e-3, 1.1e-3, "neighbours of the other set are near" },
  { DW_DRILL_HALVES, 16, 1.6e-3, 1.1e-3, "nearly too close now" },
  { DW_DRILL_HALVES, 20, 1.9e-3, 1.1e-3, "too close now" },
};

static dw_drill_sets
sets_of (int piston)
{
  dw_damper damper = sample_damper ();
  dw_drill_sets sets;
  damper.piston.holes[0] = (dw_holes){ pistons[piston].n_open, pistons[piston].open, false };
  damper.piston.holes[1].diameter = pistons[piston].covered;
  dw_drill_sets_init (&sets, &damper, pistons[piston].division);
  return sets;
}

static bool
has_room (const dw_drill_sets *sets, double x, double y)
{
  const double size[] = { x > sets->present[0] + 0.5 * DW_DRILL_SAME ? x : 0.0,
                          y > sets->present[1] + 0.5 * DW_DRILL_SAME ? y : 0.0 };
  return dw_drill_sets_have_room (sets, size);
}

/* Above the border, or right of its end. */
static bool
is_beyond (const dw_polyline *border, double x, double y)
{
  double edge;
  if (border->n == 0)
    return false;
  if (x > border->spots[border->n - 1].x)
    return true;
  return dw_polyline_at (border, x, &edge) && y > edge;
}

START_TEST (the_border_parts_what_has_room_from_what_has_not)
{
  const dw_drill_sets sets = sets_of (_i);
  const double x_high = 1.4 * fmax (sets.present[0], sets.largest[0]);
  const double y_high = 1.4 * fmax (sets.present[1], sets.largest[1]);
  test_random random = test_random_new ((uint64_t)_i);
  dw_polyline border = { 0 };
  int n[2] = { 0, 0 };
  dw_drill_land_make (&sets, x_high, y_high, &border);
  ck_assert_msg (border.n >= 1 && border.n < 10, "%s: %d spots", pistons[_i].why, (int)border.n);
  for (int i = 0; i < 4000; i++)
    {
      const double x = test_random_uniform (&random, sets.present[0] + 1e-6, x_high);
      const double y = test_random_uniform (&random, sets.present[1] + 1e-6, y_high);
      const bool room = has_room (&sets, x, y);
      /* what is exactly on the border may fall on either side */
      if (room != has_room (&sets, x + 3e-9, y + 3e-9))
        continue;
      ck_assert_msg (is_beyond (&border, x, y) != room, "%s: %.4f, %.4f mm", pistons[_i].why,
                     1e3 * x, 1e3 * y);
      n[room ? 1 : 0]++;
    }
  ck_assert_int_gt (n[0], 100);
  dw_polyline_clear (&border);
}
END_TEST

START_TEST (no_drill_that_has_room_lies_beyond)
{
  const dw_drill_sets sets = sets_of (_i);
  const double high = 4e-3;
  dw_polyline border = { 0 };
  size_t n;
  const dw_drill_size *drills = dw_drill_table (&n);
  dw_drill_land_make (&sets, high, high, &border);
  for (size_t i = 0; i < n; i++)
    for (size_t k = 0; k < n; k++)
      {
        const double x = fmax (sets.present[0], drills[i].diameter);
        const double y = fmax (sets.present[1], drills[k].diameter);
        if (has_room (&sets, x, y))
          ck_assert_msg (!is_beyond (&border, x - 2e-9, y - 2e-9), "%s: %.3f, %.3f mm",
                         pistons[_i].why, 1e3 * x, 1e3 * y);
      }
  dw_polyline_clear (&border);
}
END_TEST

START_TEST (where_all_has_land_there_is_no_border)
{
  const dw_drill_sets sets = sets_of (0);
  dw_polyline border = { 0 };
  dw_drill_land_make (&sets, 1.6e-3, 1.7e-3, &border);
  ck_assert_uint_eq (border.n, 0);
  dw_polyline_clear (&border);
}
END_TEST

START_TEST (one_set_ends_at_the_largest_size)
{
  const dw_drill_sets sets = sets_of (0);
  assert_close (dw_drill_land_end (&sets, 0, 5e-3), sets.largest[0], 0.0, 2e-9,
                "the study's own, to its slack");
  ck_assert (dw_drill_land_end (&sets, 1, 1.5e-3) == 1.5e-3);
  const dw_drill_sets close = sets_of (4);
  ck_assert (close.largest[0] < close.present[0]);
  assert_close (dw_drill_land_end (&close, 0, 5e-3), close.present[0], 1e-6, 0.0,
                "too close already: no larger than now");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-land");
  TCase *tcase = tcase_create ("drill-land");
  tcase_add_loop_test (tcase, the_border_parts_what_has_room_from_what_has_not, 0,
                       N_ENTRIES (pistons));
  tcase_add_loop_test (tcase, no_drill_that_has_room_lies_beyond, 0, N_ENTRIES (pistons));
  tcase_add_test (tcase, where_all_has_land_there_is_no_border);
  tcase_add_test (tcase, one_set_ends_at_the_largest_size);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
