/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-small-chart.h"

#include <math.h>

#include "sheet-laws.h"
#include "sheet-samples.h"

static const dw_rect BOX = { 5.0, 8.0, 60.0, 40.0 };

static dw_series *
series_of (guint setup, dw_axle axle)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_series_range range = { 0.0, 1.0, false };
  dw_series *series = dw_series_new ("x");
  dw_error err;
  ck_assert_int_eq (dw_series_fill (series, &dw_project_get_setup (project, setup)->damper[axle],
                                    project->conditions.oil_temperature, &range, &err),
                    DW_OK);
  return series;
}

/* Pixels darker than half, of the upper (0) or the lower (1) half of the box, but for its frame and
 * middle line. */
static int
count_ink (const dw_block *block, int half)
{
  enum
  {
    SCALE = 4
  };
  const int width = 80 * SCALE;
  const int height = 60 * SCALE;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, SCALE, SCALE);
  dw_block_paint (block, cr);
  cairo_surface_flush (surface);
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  int n = 0;
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        const double at_x = (double)x / SCALE - BOX.x;
        const double at_y = (double)y / SCALE - BOX.y;
        const bool is_upper = at_y > 1.0 && at_y < 0.5 * BOX.height - 1.0;
        const bool is_lower = at_y > 0.5 * BOX.height + 1.0 && at_y < BOX.height - 1.0;
        if (at_x > 1.0 && at_x < BOX.width - 1.0 && (half == 0 ? is_upper : is_lower))
          n += data[y * stride + 4 * x] < 128;
      }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return n;
}

START_TEST (the_reach_is_the_largest_force)
{
  dw_series *series = series_of (0, DW_FRONT);
  dw_series *empty = dw_series_new ("none");
  double largest = 0.0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (size_t i = 0; i < series->stroke[s].n; i++)
      if (series->stroke[s].points[i].force > largest)
        largest = series->stroke[s].points[i].force;
  ck_assert (dw_small_chart_reach (series) == largest && largest > 100.0);
  ck_assert (dw_small_chart_reach (empty) == 0.0);
  dw_series_free (series);
  dw_series_free (empty);
}
END_TEST

START_TEST (compression_is_up_and_rebound_is_down)
{
  dw_series *series = series_of (0, DW_FRONT);
  g_autoptr (dw_block) block = dw_block_new (80.0);
  dw_small_chart_add (block, BOX, series, NULL, 1.0, dw_small_chart_reach (series));
  expect_lawful_block (block, &BOX, "small chart");
  ck_assert_int_gt (count_ink (block, 0), 200);
  ck_assert_int_gt (count_ink (block, 1), 200);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert_str_eq (words, "");
  g_clear_pointer (&block, dw_block_free);
  dw_series_free (series);
}
END_TEST

START_TEST (a_curve_beside_it_is_more_ink)
{
  dw_series *series = series_of (1, DW_REAR);
  dw_series *beside = series_of (2, DW_FRONT);
  g_autoptr (dw_block) alone = dw_block_new (80.0);
  g_autoptr (dw_block) both = dw_block_new (80.0);
  const double reach = 1.5 * dw_small_chart_reach (series);
  dw_small_chart_add (alone, BOX, series, NULL, 1.0, reach);
  dw_small_chart_add (both, BOX, series, beside, 1.0, reach);
  ck_assert_int_gt (count_ink (both, 0), count_ink (alone, 0));
  g_clear_pointer (&alone, dw_block_free);
  g_clear_pointer (&both, dw_block_free);
  dw_series_free (series);
  dw_series_free (beside);
}
END_TEST

/* A curve that goes on past the axes is cut at them. */
START_TEST (nothing_is_drawn_outside)
{
  dw_series *series = series_of (0, DW_REAR);
  g_autoptr (dw_block) block = dw_block_new (80.0);
  dw_small_chart_add (block, BOX, series, series, 0.3, 0.2 * dw_small_chart_reach (series));
  expect_lawful_block (block, &BOX, "beyond the axes");
  g_clear_pointer (&block, dw_block_free);
  dw_series_free (series);
}
END_TEST

START_TEST (a_gap_is_no_force)
{
  dw_series *series = series_of (0, DW_FRONT);
  const double reach = dw_small_chart_reach (series);
  for (size_t i = 0; i < series->stroke[DW_REBOUND].n; i++)
    series->stroke[DW_REBOUND].points[i].force = NAN;
  g_autoptr (dw_block) block = dw_block_new (80.0);
  dw_small_chart_add (block, BOX, series, NULL, 1.0, reach);
  ck_assert (!isnan (dw_small_chart_reach (series)));
  expect_lawful_block (block, &BOX, "gap");
  ck_assert_int_gt (count_ink (block, 0), 200);
  ck_assert_int_eq (count_ink (block, 1), 0);
  g_clear_pointer (&block, dw_block_free);
  dw_series_free (series);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/small-chart");
  TCase *tcase = tcase_create ("small-chart");
  tcase_add_test (tcase, the_reach_is_the_largest_force);
  tcase_add_test (tcase, compression_is_up_and_rebound_is_down);
  tcase_add_test (tcase, a_curve_beside_it_is_more_ink);
  tcase_add_test (tcase, nothing_is_drawn_outside);
  tcase_add_test (tcase, a_gap_is_no_force);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
