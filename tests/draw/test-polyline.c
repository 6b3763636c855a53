/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/dw-polyline.h"
#include "test-support.h"

static const dw_rect plot = { 0.0, 0.0, 100.0, 100.0 };

static int
count_gaps (const dw_polyline *line)
{
  int n = 0;
  for (size_t i = 0; i < line->n; i++)
    n += dw_spot_is_gap (line->spots[i]);
  return n;
}

START_TEST (what_is_not_finite_is_one_gap)
{
  dw_polyline line = { 0 };
  dw_polyline_add (&line, (double)NAN, 0.0);
  ck_assert_uint_eq (line.n, 0);
  dw_polyline_add (&line, 1.0, 2.0);
  dw_polyline_add (&line, 2.0, HUGE_VAL);
  dw_polyline_add (&line, -HUGE_VAL, 1.0);
  dw_polyline_add (&line, 3.0, 2.0);
  ck_assert_uint_eq (line.n, 3);
  ck_assert (dw_spot_is_gap (line.spots[1]));
  dw_polyline_clear (&line);
  ck_assert (line.spots == NULL);
}
END_TEST

/* A spike in one of 100 000 spots must be seen. */
START_TEST (thinning_keeps_extremes_ends_and_gaps)
{
  dw_polyline line = { 0 };
  dw_polyline thin = { 0 };
  test_random random = test_random_new (2);
  const int n = 100000;
  double highest[100];
  double lowest[100];
  for (int i = 0; i < 100; i++)
    {
      highest[i] = -HUGE_VAL;
      lowest[i] = HUGE_VAL;
    }
  for (int i = 0; i < n; i++)
    {
      const double x = 100.0 * i / n;
      const double y = i == 54321 ? -50.0 : test_random_uniform (&random, 20.0, 80.0);
      const int column = (int)x;
      highest[column] = fmax (highest[column], y);
      lowest[column] = fmin (lowest[column], y);
      if (i == 30000 || i == 70500)
        dw_polyline_add_gap (&line);
      dw_polyline_add (&line, x, y);
    }
  dw_polyline_thin (&line, 1.0, &thin);
  ck_assert_uint_lt (thin.n, 420);
  ck_assert_int_eq (count_gaps (&thin), 2);
  ck_assert (thin.spots[0].x == line.spots[0].x && thin.spots[0].y == line.spots[0].y);
  ck_assert (thin.spots[thin.n - 1].x == line.spots[line.n - 1].x);
  for (size_t i = 0; i < thin.n; i++)
    if (!dw_spot_is_gap (thin.spots[i]))
      {
        const int column = (int)thin.spots[i].x;
        highest[column] = thin.spots[i].y == highest[column] ? -HUGE_VAL : highest[column];
        lowest[column] = thin.spots[i].y == lowest[column] ? HUGE_VAL : lowest[column];
      }
  for (int i = 0; i < 100; i++)
    ck_assert_msg (isinf (highest[i]) && isinf (lowest[i]), "column %d lost an extreme", i);
  dw_polyline_clear (&line);
  dw_polyline_clear (&thin);
}
END_TEST

START_TEST (a_line_that_leaves_and_returns_has_a_gap)
{
  dw_polyline line = { 0 };
  dw_polyline cut = { 0 };
  const double y[] = { 50.0, 150.0, 150.0, 50.0, 50.0 };
  for (int i = 0; i < 5; i++)
    dw_polyline_add (&line, 20.0 * i, y[i]);
  dw_polyline_clip (&line, &plot, &cut);
  ck_assert_int_eq (count_gaps (&cut), 1);
  for (size_t i = 0; i < cut.n; i++)
    ck_assert (dw_spot_is_gap (cut.spots[i])
               || dw_rect_holds (&plot, cut.spots[i].x, cut.spots[i].y));
  ck_assert (cut.spots[1].x == 10.0 && cut.spots[1].y == 100.0);
  dw_polyline_clear (&line);
  dw_polyline_clear (&cut);
}
END_TEST

START_TEST (a_line_outside_is_empty)
{
  dw_polyline line = { 0 };
  dw_polyline cut = { 0 };
  dw_polyline_add (&line, 0.0, 101.0);
  dw_polyline_add (&line, 50.0, 200.0);
  dw_polyline_add (&line, 100.0, 101.0);
  dw_polyline_clip (&line, &plot, &cut);
  ck_assert_uint_eq (cut.n, 0);
  dw_polyline_clear (&line);
}
END_TEST

START_TEST (nearest_height_and_meeting_stop_at_gaps)
{
  dw_polyline line = { 0 };
  dw_spot near;
  double y = 0.0;
  ck_assert (isinf (dw_polyline_nearest (&line, (dw_spot){ 0.0, 0.0 }, &near)));
  dw_polyline_add (&line, 0.0, 0.0);
  dw_polyline_add (&line, 10.0, 10.0);
  dw_polyline_add_gap (&line);
  dw_polyline_add (&line, 20.0, 20.0);
  dw_polyline_add (&line, 30.0, 20.0);
  ck_assert (dw_polyline_nearest (&line, (dw_spot){ 15.0, 15.0 }, &near) == hypot (5.0, 5.0));
  ck_assert (dw_polyline_nearest (&line, (dw_spot){ 25.0, 23.0 }, &near) == 3.0 && near.x == 25.0);
  ck_assert (dw_polyline_at (&line, 4.0, &y) && y == 4.0);
  ck_assert (!dw_polyline_at (&line, 15.0, &y));
  const dw_rect in_gap = { 12.0, 12.0, 6.0, 6.0 };
  const dw_rect on_line = { 22.0, 19.0, 2.0, 2.0 };
  ck_assert (!dw_polyline_meets (&line, &in_gap));
  ck_assert (dw_polyline_meets (&line, &on_line));
  dw_polyline_clear (&line);
}
END_TEST

/* Every spot that was left out lies near the line that is left; a straight line keeps its ends. */
START_TEST (straightening_moves_no_line)
{
  dw_polyline line = { 0 };
  dw_polyline before = { 0 };
  test_random random = test_random_new (3);
  for (int i = 0; i < 400; i++)
    {
      const double angle = 0.02 * i;
      const double radius = 100.0 + (i > 200 ? 0.0 : test_random_uniform (&random, -0.02, 0.02));
      const dw_spot spot = { radius * cos (angle), radius * sin (angle) };
      dw_polyline_add (&line, i == 250 ? (double)NAN : spot.x, spot.y);
      dw_polyline_add (&before, i == 250 ? (double)NAN : spot.x, spot.y);
    }
  dw_polyline_straighten (&line, 0.1);
  ck_assert_uint_lt (line.n, before.n / 3);
  ck_assert_int_eq (count_gaps (&line), 1);
  for (size_t i = 0; i < before.n; i++)
    if (!dw_spot_is_gap (before.spots[i]))
      ck_assert (dw_polyline_nearest (&line, before.spots[i], NULL) <= 0.1 + 1e-9);
  ck_assert (line.spots[0].x == before.spots[0].x && line.spots[0].y == before.spots[0].y);
  ck_assert (line.spots[line.n - 1].x == before.spots[before.n - 1].x);
  dw_polyline_clear (&line);
  dw_polyline_clear (&before);

  for (int i = 0; i <= 20; i++)
    dw_polyline_add (&line, 5.0 * i, 3.0 * i);
  dw_polyline_straighten (&line, 1e-9);
  ck_assert_uint_eq (line.n, 2);
  ck_assert (line.spots[1].x == 100.0);
  dw_polyline_clear (&line);
  dw_polyline_straighten (&line, 1.0);
  ck_assert_uint_eq (line.n, 0);
}
END_TEST

/* Nothing is left inside, nothing is lost outside. */
START_TEST (cutting_takes_out_a_turned_rectangle)
{
  const dw_rect box = { 40.0, 45.0, 20.0, 10.0 };
  const double angle = 0.3 * _i;
  dw_polyline line = { 0 };
  dw_polyline cut = { 0 };
  double inside = 0.0;
  double outside = 0.0;
  for (int i = 0; i <= 50; i++)
    dw_polyline_add (&line, 2.0 * i, 50.0 + 4.0 * sin (0.2 * i));
  dw_polyline_cut (&line, &box, angle, &cut);
  ck_assert_int_ge (count_gaps (&cut), 1);
  for (size_t i = 0; i + 1 < cut.n; i++)
    {
      if (dw_spot_is_gap (cut.spots[i]) || dw_spot_is_gap (cut.spots[i + 1]))
        continue;
      const double x = 0.5 * (cut.spots[i].x + cut.spots[i + 1].x) - 50.0;
      const double y = 0.5 * (cut.spots[i].y + cut.spots[i + 1].y) - 50.0;
      const double along = x * cos (angle) + y * sin (angle);
      const double across = y * cos (angle) - x * sin (angle);
      const double length = dw_spot_distance (cut.spots[i], cut.spots[i + 1]);
      if (fabs (along) < 9.999 && fabs (across) < 4.999)
        inside += length;
      else
        outside += length;
    }
  ck_assert (inside < 1e-6);
  ck_assert_msg (outside > 78.0 && outside < 106.0, "%g", outside);
  dw_polyline_clear (&line);
  dw_polyline_clear (&cut);
}
END_TEST

START_TEST (an_outline_holds_what_is_inside)
{
  dw_polyline ring = { 0 };
  const double corners[][2] = { { 10.0, 10.0 }, { 90.0, 10.0 }, { 90.0, 90.0 }, { 10.0, 90.0 } };
  for (int i = 0; i < 4; i++)
    dw_polyline_add (&ring, corners[i][0], corners[i][1]);
  dw_polyline_add_gap (&ring);
  /* a hole in it, closed by its first spot once more */
  for (int i = 0; i < 5; i++)
    dw_polyline_add (&ring, 0.25 * corners[i % 4][0] + 30.0, 0.25 * corners[i % 4][1] + 30.0);
  ck_assert (dw_polyline_holds (&ring, (dw_spot){ 20.0, 20.0 }));
  ck_assert (dw_polyline_holds (&ring, (dw_spot){ 70.0, 40.0 }));
  ck_assert (!dw_polyline_holds (&ring, (dw_spot){ 40.0, 40.0 }));
  ck_assert (!dw_polyline_holds (&ring, (dw_spot){ 5.0, 50.0 }));
  ck_assert (!dw_polyline_holds (&ring, (dw_spot){ 95.0, 50.0 }));
  ck_assert (!dw_polyline_holds (&ring, (dw_spot){ 50.0, 95.0 }));
  dw_polyline_clear (&ring);
  ck_assert (!dw_polyline_holds (&ring, (dw_spot){ 0.0, 0.0 }));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/polyline");
  TCase *tcase = tcase_create ("polyline");
  tcase_add_test (tcase, what_is_not_finite_is_one_gap);
  tcase_add_test (tcase, thinning_keeps_extremes_ends_and_gaps);
  tcase_add_test (tcase, a_line_that_leaves_and_returns_has_a_gap);
  tcase_add_test (tcase, a_line_outside_is_empty);
  tcase_add_test (tcase, nearest_height_and_meeting_stop_at_gaps);
  tcase_add_test (tcase, straightening_moves_no_line);
  tcase_add_loop_test (tcase, cutting_takes_out_a_turned_rectangle, 0, 10);
  tcase_add_test (tcase, an_outline_holds_what_is_inside);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
