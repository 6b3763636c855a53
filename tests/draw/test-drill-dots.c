/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-dots.h"

#include <glib.h>
#include <math.h>

#include "draw-samples.h"

static const dw_rect plot = { 40.0, 30.0, 400.0, 300.0 };

static void
make (const sample_map *sample, dw_drill_dots *dots)
{
  const dw_drill_field *f = &sample->shade;
  const bool is_strip = f->n_y < 2;
  const dw_scale x = { false, f->x_low, f->x_high, plot.x, plot.x + plot.width };
  const dw_scale y = { false, is_strip ? -100.0 : f->y_low, is_strip ? 20.0 : f->y_high,
                       plot.y + plot.height, plot.y };
  dw_drill_dots_make (&sample->map, &plot, &x, &y, 3.0, dots);
}

START_TEST (a_dot_is_hit_where_it_is)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 3, 2.2e-3);
  dw_drill_dots dots = { .n = 0 };
  make (sample, &dots);
  ck_assert_int_eq (dots.n, sample->map.n_dots);
  for (int i = 0; i < dots.n; i++)
    {
      const dw_spot at = dots.places[i].at;
      ck_assert (dots.places[i].is_shown);
      const int hit = dw_drill_dots_hit (&dots, at.x + 0.2, at.y - 0.2, 0.6);
      ck_assert_int_ge (hit, 0);
      ck_assert (dw_spot_distance (dots.places[hit].at, at) < 1.0);
    }
  ck_assert_int_eq (dw_drill_dots_hit (&dots, plot.x + 3.0, plot.y + plot.height - 3.0, 8.0), -1);
  dw_drill_dots_clear (&dots);
  sample_map_free (sample);
}
END_TEST

START_TEST (a_wanted_dot_is_hit_first)
{
  dw_drill_place places[] = { { { 100.0, 100.0 }, false, true },
                              { { 106.0, 100.0 }, true, true },
                              { { 103.0, 100.0 }, true, false } };
  const dw_drill_dots dots = { places, 3, 3.0 };
  ck_assert_int_eq (dw_drill_dots_hit (&dots, 102.0, 100.0, 8.0), 1);
  ck_assert_int_eq (dw_drill_dots_hit (&dots, 100.5, 100.0, 8.0), 0);
  ck_assert_int_eq (dw_drill_dots_hit (&dots, 102.0, 100.0, 1.0), -1);
}
END_TEST

START_TEST (many_dots_are_small)
{
  sample_map *few = sample_map_new (SAMPLE_KINDS, 6, 2.2e-3);
  sample_map *many = sample_map_new (SAMPLE_KINDS, 1, 2.6e-3);
  dw_drill_dots a = { .n = 0 };
  dw_drill_dots b = { .n = 0 };
  make (few, &a);
  make (many, &b);
  ck_assert (a.radius == 3.0);
  ck_assert (b.radius < 2.5 && b.radius > 1.0);
  dw_drill_dots_clear (&a);
  dw_drill_dots_clear (&b);
  sample_map_free (few);
  sample_map_free (many);
}
END_TEST

/* ---- steps ---- */

/* Three by three at hundreds, upwards on the page, without one corner, and one far out. */
enum
{
  N_GRID = 9
};

static dw_drill_place grid[N_GRID] = {
  { { 100.0, 300.0 }, true, true },  { { 200.0, 300.0 }, true, true },
  { { 300.0, 300.0 }, false, true }, { { 100.0, 200.0 }, true, true },
  { { 200.0, 200.0 }, true, true },  { { 300.0, 200.0 }, true, true },
  { { 100.0, 100.0 }, true, true },  { { 200.0, 100.0 }, true, true },
  { { 600.0, 50.0 }, true, false },
};

static const struct
{
  int from, dx, dy, to;
  const char *why;
} steps[] = {
  { 0, 1, 0, 1, "right" },
  { 1, 1, 0, 2, "right, to a faint one" },
  { 2, 1, 0, -1, "nothing is shown there" },
  { 4, -1, 0, 3, "left" },
  { 4, 0, 1, 7, "up is a larger size" },
  { 4, 0, -1, 1, "down" },
  { 6, 0, 1, -1, "the uppermost row" },
  { 5, 0, 1, 7, "none above: the one that needs the least turn" },
  { 7, 1, 0, 5, "none in the row" },
};

START_TEST (keys_go_along_the_grid)
{
  const dw_drill_dots dots = { grid, N_GRID, 3.0 };
  ck_assert_msg (dw_drill_dots_next (&dots, grid[steps[_i].from].at, steps[_i].dx, steps[_i].dy)
                     == steps[_i].to,
                 "%s", steps[_i].why);
}
END_TEST

/* Whatever the drills are: a step goes nearer to the direction's end, and never stops before it. */
START_TEST (steps_never_stop_before_the_end)
{
  static const int directions[][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 2, 2.4e-3);
  dw_drill_dots dots = { .n = 0 };
  make (sample, &dots);
  for (unsigned d = 0; d < G_N_ELEMENTS (directions); d++)
    for (int i = 0; i < dots.n; i++)
      {
        const int dx = directions[d][0];
        const int dy = directions[d][1];
        const dw_spot from = dots.places[i].at;
        const int next = dw_drill_dots_next (&dots, from, dx, dy);
        double most = -HUGE_VAL;
        for (int k = 0; k < dots.n; k++)
          most = fmax (most,
                       dx * (dots.places[k].at.x - from.x) + dy * (from.y - dots.places[k].at.y));
        if (most > 0.1)
          ck_assert_int_ge (next, 0);
        if (next >= 0)
          ck_assert (dx * (dots.places[next].at.x - from.x) + dy * (from.y - dots.places[next].at.y)
                     > 0.0);
      }
  dw_drill_dots_clear (&dots);
  sample_map_free (sample);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-dots");
  TCase *tcase = tcase_create ("drill-dots");
  tcase_add_loop_test (tcase, a_dot_is_hit_where_it_is, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, a_wanted_dot_is_hit_first);
  tcase_add_test (tcase, many_dots_are_small);
  tcase_add_loop_test (tcase, keys_go_along_the_grid, 0, N_ENTRIES (steps));
  tcase_add_loop_test (tcase, steps_never_stop_before_the_end, 0, N_SAMPLE_MAPS);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
