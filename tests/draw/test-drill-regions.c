/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-regions.h"

#include <math.h>

#include "draw-samples.h"

static const dw_rect plot = { 40.0, 30.0, 400.0, 300.0 };

static void
make (const sample_map *sample, dw_scale *x, dw_scale *y, dw_drill_regions *regions)
{
  const dw_drill_field *f = &sample->shade;
  const bool is_strip = f->n_y < 2;
  *x = (dw_scale){ false, f->x_low, f->x_high, plot.x, plot.x + plot.width };
  *y = (dw_scale){ false, is_strip ? -100.0 : f->y_low, is_strip ? 20.0 : f->y_high,
                   plot.y + plot.height, plot.y };
  dw_drill_regions_make (&sample->map, &plot, x, y, regions);
}

static dw_spot
spot_of (const sample_map *sample, const dw_scale *x, const dw_scale *y, int dot)
{
  const dw_drill_dot *d = &sample->dots[dot];
  const double up = sample->shade.n_y < 2 ? dw_drill_field_at (&sample->shade, d->x, 0.0) : d->y;
  return (dw_spot){ dw_scale_place (x, d->x), dw_scale_place (y, up) };
}

START_TEST (no_dot_is_where_nothing_can_be_drilled)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 1, 3e-3);
  dw_drill_regions regions = { .n_gone = 0 };
  dw_scale x;
  dw_scale y;
  make (sample, &x, &y, &regions);
  ck_assert_uint_gt (regions.no_room.n, 3);
  for (int i = 0; i < sample->map.n_dots; i++)
    {
      const dw_spot spot = spot_of (sample, &x, &y, i);
      for (int k = 0; k < regions.n_gone; k++)
        {
          const dw_rect inside = dw_rect_inset (&regions.gone[k], 1e-6);
          ck_assert (!dw_rect_holds (&inside, spot.x, spot.y));
        }
      /* on the border is not beyond it */
      const dw_spot before = { spot.x - 1e-4, spot.y + 1e-4 };
      ck_assert_msg (!dw_polyline_holds (&regions.no_room, before), "dot %d: %.3f, %.3f mm", i,
                     1e3 * sample->dots[i].x, 1e3 * sample->dots[i].y);
    }
  dw_drill_regions_clear (&regions);
  sample_map_free (sample);
}
END_TEST

START_TEST (what_is_smaller_than_now_is_gone)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 4, 2e-3);
  const dw_drill_sets *sets = &sample->study.sets;
  dw_drill_regions regions = { .n_gone = 0 };
  test_random random = test_random_new (1);
  dw_scale x;
  dw_scale y;
  make (sample, &x, &y, &regions);
  ck_assert_int_eq (regions.n_gone, 2);
  ck_assert (!dw_rect_overlaps (&regions.gone[0], &regions.gone[1]));
  for (int n = 0; n < 1000; n++)
    {
      const dw_spot spot = { test_random_uniform (&random, plot.x, plot.x + plot.width),
                             test_random_uniform (&random, plot.y, plot.y + plot.height) };
      const bool is_gone = dw_scale_value (&x, spot.x) < sets->present[0]
                           || dw_scale_value (&y, spot.y) < sets->present[1];
      ck_assert_int_eq (dw_rect_holds (&regions.gone[0], spot.x, spot.y)
                            || dw_rect_holds (&regions.gone[1], spot.x, spot.y),
                        is_gone);
    }
  assert_close (dw_scale_value (&x, regions.now.x), sets->present[0], 1e-9, 0.0, "across");
  assert_close (dw_scale_value (&y, regions.now.y), sets->present[1], 1e-9, 0.0, "upwards");
  dw_drill_regions_clear (&regions);
  sample_map_free (sample);
}
END_TEST

START_TEST (land_that_never_ends_has_no_border)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 1.6e-3);
  dw_drill_regions regions = { .n_gone = 0 };
  dw_scale x;
  dw_scale y;
  make (sample, &x, &y, &regions);
  ck_assert_uint_eq (regions.land.n, 0);
  ck_assert_uint_eq (regions.no_room.n, 0);
  dw_drill_regions_clear (&regions);
  sample_map_free (sample);
}
END_TEST

START_TEST (a_strip_ends_at_one_size)
{
  sample_map *sample = sample_map_new (SAMPLE_STRIP, 1, 3e-3);
  dw_drill_regions regions = { .n_gone = 0 };
  dw_scale x;
  dw_scale y;
  sample->shade.x_high = 1.2 * sample->study.sets.largest[0];
  make (sample, &x, &y, &regions);
  ck_assert_int_eq (regions.n_gone, 1);
  ck_assert (regions.gone[0].height == plot.height);
  ck_assert_uint_eq (regions.land.n, 2);
  assert_close (dw_scale_value (&x, regions.land.spots[0].x), sample->study.sets.largest[0], 1e-5,
                0.0, "the study's largest size");
  dw_drill_regions_clear (&regions);
  sample_map_free (sample);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-regions");
  TCase *tcase = tcase_create ("drill-regions");
  tcase_add_loop_test (tcase, no_dot_is_where_nothing_can_be_drilled, 0, SAMPLE_STRIP);
  tcase_add_test (tcase, what_is_smaller_than_now_is_gone);
  tcase_add_loop_test (tcase, land_that_never_ends_has_no_border, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, a_strip_ends_at_one_size);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
