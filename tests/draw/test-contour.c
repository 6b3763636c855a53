/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-contour.h"

#include <math.h>

#include "test-support.h"

#define N 61

static double values[N * N];

static void
fill (double (*f) (double x, double y))
{
  for (int y = 0; y < N; y++)
    for (int x = 0; x < N; x++)
      values[y * N + x] = f (x / (N - 1.0), y / (N - 1.0));
}

static double
plane (double x, double y)
{
  return 2.0 * x + y;
}

static double
cone (double x, double y)
{
  return hypot (x - 0.5, y - 0.5);
}

static double
fourth (double x, double y)
{
  return pow (1.0 + x, 4.0) + pow (1.0 + y, 4.0);
}

static double
saddle (double x, double y)
{
  return (x - 0.5) * (y - 0.5);
}

static const struct
{
  double (*f) (double x, double y);
  double level;
  double within; /* of the value on the line */
  int n_lines;
  bool is_closed;
  const char *why;
} rows[] = {
  { plane, 1.3, 1e-12, 1, false, "straight lines are met exactly" },
  { plane, 0.0, 1e-12, 0, false, "the corner is on the level: nothing lies below" },
  { cone, 0.3, 2e-4, 1, true, "a circle, closed" },
  { fourth, 9.0, 2e-3, 1, false, "equal sums of fourth powers" },
  { saddle, 0.05, 1e-4, 2, false, "two branches" },
  { saddle, 0.0, 1e-12, 2, false, "two lines that cross, or turn, in the middle" },
};

START_TEST (lines_lie_on_their_level)
{
  dw_polyline line = { 0 };
  int n_lines = 0;
  fill (rows[_i].f);
  dw_contour_make (values, N, N, rows[_i].level, &line);
  size_t start = 0;
  for (size_t i = 0; i < line.n; i++)
    {
      if (!dw_spot_is_gap (line.spots[i]))
        {
          const double v = rows[_i].f (line.spots[i].x / (N - 1.0), line.spots[i].y / (N - 1.0));
          assert_close (v, rows[_i].level, 0.0, rows[_i].within, rows[_i].why);
        }
      const bool ends = dw_spot_is_gap (line.spots[i]) || i + 1 == line.n;
      if (!ends)
        continue;
      const size_t last = dw_spot_is_gap (line.spots[i]) ? i - 1 : i;
      const double apart = dw_spot_distance (line.spots[start], line.spots[last]);
      ck_assert_msg ((apart < 1e-9) == rows[_i].is_closed, "%s", rows[_i].why);
      ck_assert_int_gt ((int)(last - start), 3);
      start = i + 1;
      n_lines++;
    }
  ck_assert_msg (n_lines == rows[_i].n_lines, "%s: %d lines", rows[_i].why, n_lines);
  dw_polyline_clear (&line);
}
END_TEST

/* Spots follow each other from cell to cell, none is told twice. */
START_TEST (lines_are_joined)
{
  dw_polyline line = { 0 };
  fill (cone);
  dw_contour_make (values, N, N, 0.4, &line);
  double length = 0.0;
  for (size_t i = 0; i + 1 < line.n; i++)
    if (!dw_spot_is_gap (line.spots[i]) && !dw_spot_is_gap (line.spots[i + 1]))
      {
        const double step = dw_spot_distance (line.spots[i], line.spots[i + 1]);
        ck_assert (step <= sqrt (2.0) + 1e-9);
        length += step;
      }
  assert_close (length, 2.0 * 3.14159265358979 * 0.4 * (N - 1), 2e-3, 0.0, "round the circle once");
  dw_polyline_clear (&line);
}
END_TEST

START_TEST (what_is_not_known_has_no_line)
{
  dw_polyline line = { 0 };
  fill (plane);
  for (int y = 0; y < N; y++)
    for (int x = 30; x < N; x++)
      values[y * N + x] = (double)NAN;
  dw_contour_make (values, N, N, 1.0, &line);
  ck_assert_uint_gt (line.n, 10);
  for (size_t i = 0; i < line.n; i++)
    ck_assert (dw_spot_is_gap (line.spots[i]) || line.spots[i].x <= 29.0);
  dw_polyline_clear (&line);
}
END_TEST

START_TEST (a_level_outside_has_no_line)
{
  dw_polyline line = { 0 };
  fill (plane);
  dw_contour_make (values, N, N, 17.0, &line);
  ck_assert_uint_eq (line.n, 0);
  dw_contour_make (values, 2, 2, 1e-3, &line);
  ck_assert_uint_ge (line.n, 2);
  dw_polyline_clear (&line);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/contour");
  TCase *tcase = tcase_create ("contour");
  tcase_add_loop_test (tcase, lines_lie_on_their_level, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, lines_are_joined);
  tcase_add_test (tcase, what_is_not_known_has_no_line);
  tcase_add_test (tcase, a_level_outside_has_no_line);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
