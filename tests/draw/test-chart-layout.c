/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>

#include "draw-samples.h"

#define MOST_BOXES 400

static void
assert_tidy (const dw_chart_layout *layout, const char *what)
{
  static dw_rect boxes[MOST_BOXES];
  const int n = sample_text_boxes (layout, boxes, MOST_BOXES);
  for (int i = 0; i < n; i++)
    {
      ck_assert_msg (dw_rect_holds_rect (&layout->area, &boxes[i]), "%s: a text is outside", what);
      for (int k = 0; k < i; k++)
        ck_assert_msg (!dw_rect_overlaps (&boxes[i], &boxes[k]),
                       "%s: texts at %.1f,%.1f and %.1f,%.1f overlap", what, boxes[i].x, boxes[i].y,
                       boxes[k].x, boxes[k].y);
    }
  ck_assert_msg (dw_rect_holds_rect (&layout->area, &layout->frame.plot), "%s: plot", what);
  ck_assert_msg (layout->frame.plot.height > 25.0 && layout->frame.plot.width > 60.0,
                 "%s: a plot of %.0f by %.0f", what, layout->frame.plot.width,
                 layout->frame.plot.height);
  if (layout->legend.n > 0)
    ck_assert_msg (!dw_rect_overlaps (&layout->legend.box, &layout->frame.plot),
                   "%s: the legend covers the plot", what);
  if (layout->has_strip)
    ck_assert_msg (!dw_rect_overlaps (&layout->strip.plot, &layout->frame.plot), "%s: strip", what);
}

/* 200 x 150 to 3000 x 2000 points; zoomed in at random; units; strip and legend places. */
START_TEST (nothing_overlaps_at_any_size)
{
  dw_chart chart = sample_chart (1 + _i % 4, _i % 2 == 1);
  test_random random = test_random_new ((uint64_t)_i);
  const dw_view whole = dw_chart_whole_view (&chart);
  chart.quantity = _i % 3 == 0 ? DW_SHOW_DAMPING : DW_SHOW_FORCE;
  chart.legend = (dw_legend_place)(_i % 4);
  for (double width = 200.0; width <= 3000.0; width *= 1.31)
    for (double height = 150.0; height <= 2000.0; height *= 1.37)
      {
        char what[80];
        snprintf (what, sizeof what, "%.0f x %.0f, chart %d", width, height, _i);
        chart.units = test_random_int (&random, 0, 1) ? dw_chart_units_inch ()
                                                      : dw_chart_units_metric ();
        chart.strip_series = test_random_int (&random, -1, 0);
        chart.strip_stroke = DW_REBOUND;
        chart.has_view = test_random_int (&random, 0, 1);
        if (test_random_int (&random, 0, 3) == 0)
          chart.labels.caption = NULL;
        else
          chart.labels.caption = dw_chart_labels_defaults ().caption;
        chart.view = dw_view_zoom (
            &whole, &whole, chart.is_log, test_random_uniform (&random, 0.0, 1.0),
            test_random_uniform (&random, 0.0, 1.0), test_random_log_uniform (&random, 1.0, 400.0));
        dw_chart_layout *layout = sample_layout (&chart, width, height);
        assert_tidy (layout, what);
        dw_chart_layout_free (layout);
      }
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (axes_without_captions_leave_their_room_to_the_plot)
{
  dw_chart chart = sample_chart (2, false);
  dw_chart_layout *told = sample_layout (&chart, 600.0, 400.0);
  chart.labels.caption = NULL;
  dw_chart_layout *bare = sample_layout (&chart, 600.0, 400.0);
  assert_tidy (bare, "without captions");
  ck_assert_msg (bare->frame.plot.height > told->frame.plot.height + 10.0, "%g, %g",
                 bare->frame.plot.height, told->frame.plot.height);
  ck_assert_int_eq (bare->texts.n, told->texts.n - 2);
  dw_chart_layout_free (told);
  dw_chart_layout_free (bare);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_zero_line_divides_the_strokes)
{
  dw_chart chart = sample_chart (2, false);
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  const dw_rect *plot = &layout->frame.plot;
  ck_assert (layout->shows_zero);
  assert_close (
      layout->zero,
      plot->y + plot->height * layout->view.y_high / (layout->view.y_high - layout->view.y_low),
      0.0, 1e-9, "where the scale has 0");
  ck_assert (dw_chart_layout_y (layout, DW_COMPRESSION, 10.0) < layout->zero);
  ck_assert (dw_chart_layout_y (layout, DW_REBOUND, 10.0) > layout->zero);
  assert_close (dw_chart_layout_y (layout, DW_REBOUND, 10.0) - layout->zero,
                layout->zero - dw_chart_layout_y (layout, DW_COMPRESSION, 10.0), 0.0, 1e-9,
                "a mirrored axis");
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (pixels_and_data_are_inverse)
{
  dw_chart chart = sample_chart (1, _i == 1);
  test_random random = test_random_new ((uint64_t)_i);
  dw_chart_layout *layout = sample_layout (&chart, 640.0, 480.0);
  for (int i = 0; i < 200; i++)
    {
      const double x = test_random_uniform (&random, 0.0, 640.0);
      const double y = test_random_uniform (&random, 0.0, 480.0);
      assert_close (dw_chart_layout_x (layout, dw_chart_layout_speed (layout, x)), x, 0.0, 1e-6,
                    "across");
      const double value = dw_chart_layout_value (layout, y);
      const double back = value >= 0.0 ? dw_chart_layout_y (layout, DW_COMPRESSION, value)
                                       : dw_chart_layout_y (layout, DW_REBOUND, -value);
      assert_close (back, y, 0.0, 1e-6, "upwards");
    }
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_hit_names_the_curve_under_the_pointer)
{
  dw_chart chart = sample_chart (3, false);
  dw_chart_layout *layout = sample_layout (&chart, 800.0, 600.0);
  for (int i = 0; i < 3; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      {
        dw_chart_hit hit;
        dw_force_point p;
        ck_assert_int_eq (dw_force_at (&chart.series[i]->model, (dw_stroke)s, 0.8, &p, NULL),
                          DW_OK);
        const double x = dw_chart_layout_x (layout, 0.8);
        const double y = dw_chart_layout_y (layout, (dw_stroke)s, p.force);
        ck_assert (dw_chart_layout_hit (layout, x + 0.3, y, 6.0, &hit));
        ck_assert_int_eq (hit.series, i);
        ck_assert_int_eq ((int)hit.stroke, s);
        ck_assert (hit.distance < 1.0);
        assert_close (hit.speed, 0.8, 0.01, 0.0, "near where it was asked");
      }
  dw_chart_hit none = { .series = 7 };
  ck_assert (!dw_chart_layout_hit (layout, layout->frame.plot.x + 30.0, layout->frame.plot.y + 20.0,
                                   10.0, &none));
  ck_assert_int_eq (none.series, 7);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (wheel_drag_and_pull_show_what_was_meant)
{
  dw_chart chart = sample_chart (1, false);
  dw_chart_layout *layout = sample_layout (&chart, 800.0, 600.0);
  const double x = dw_chart_layout_x (layout, 0.2);
  const double y = dw_chart_layout_y (layout, DW_COMPRESSION, 20.0);
  chart.has_view = true;
  chart.view = dw_chart_layout_zoom (layout, x, y, 3.0);
  dw_chart_layout *in = sample_layout (&chart, 800.0, 600.0);
  assert_close (dw_scale_share (&in->frame.x, 0.2), dw_scale_share (&layout->frame.x, 0.2), 0.0,
                1e-9, "stays under the pointer");
  const dw_view pulled = dw_chart_layout_pan (in, -40.0, 0.0);
  ck_assert (pulled.x_low > in->view.x_low);
  const dw_view up = dw_chart_layout_pan (in, 0.0, 40.0);
  ck_assert (up.y_high > in->view.y_high);
  const dw_view box = dw_chart_layout_drag (layout, x, y, 1e6, -1e6);
  assert_close (box.x_low, 0.2, 1e-9, 0.0, "left side");
  ck_assert (box.x_high == layout->whole.x_high && box.y_high == layout->whole.y_high);
  assert_close (box.y_low, 20.0, 1e-9, 0.0, "lower side");
  dw_chart_layout_free (in);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (keys_step_along_round_speeds)
{
  dw_chart chart = sample_chart (1, _i == 1);
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  if (_i == 0)
    {
      assert_close (dw_chart_layout_step (layout, 0.2, 1, false), 0.21, 1e-12, 0.0, "a hundredth");
      assert_close (dw_chart_layout_step (layout, 0.2134, -1, false), 0.21, 1e-12, 0.0,
                    "back to the grid");
      assert_close (dw_chart_layout_step (layout, 0.2, -1, true), 0.1, 1e-12, 0.0, "a tenth");
    }
  else
    {
      assert_close (dw_chart_layout_step (layout, 0.1, 1, false), 0.12, 1e-12, 0.0, "next");
      assert_close (dw_chart_layout_step (layout, 0.1, -1, false), 0.08, 1e-12, 0.0, "before");
      assert_close (dw_chart_layout_step (layout, 0.13, 1, true), 0.2, 1e-12, 0.0, "1, 2, 5");
    }
  double v = layout->view.x_low;
  int n = 0;
  for (; v < layout->view.x_high && n < 1000; n++)
    {
      const double next = dw_chart_layout_step (layout, v, 1, false);
      ck_assert (next > v);
      v = next;
    }
  ck_assert (v == layout->view.x_high);
  ck_assert (dw_chart_layout_step (layout, 99.0, 1, false) == layout->view.x_high);
  ck_assert (dw_chart_layout_step (layout, -1.0, -1, true) == layout->view.x_low);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_small_area_drops_title_and_strip)
{
  dw_chart chart = sample_chart (4, false);
  chart.strip_series = 0;
  dw_chart_layout *small = sample_layout (&chart, 200.0, 150.0);
  dw_chart_layout *large = sample_layout (&chart, 700.0, 500.0);
  ck_assert (dw_chart_label_list_find (&small->texts, DW_LABEL_TITLE) == NULL);
  ck_assert (!small->has_strip);
  ck_assert (dw_chart_label_list_find (&large->texts, DW_LABEL_TITLE) != NULL);
  ck_assert (large->has_strip);
  ck_assert (large->strip.plot.x == large->frame.plot.x);
  ck_assert (large->strip.plot.width == large->frame.plot.width);
  dw_chart_layout_free (small);
  dw_chart_layout_free (large);
  dw_chart_layout_free (NULL);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_chart_without_series_is_laid_out)
{
  dw_chart chart = dw_chart_defaults ();
  dw_chart_layout *layout = sample_layout (&chart, 300.0, 200.0);
  dw_chart_hit hit;
  assert_tidy (layout, "empty");
  ck_assert (!dw_chart_layout_hit (layout, 100.0, 100.0, 1e6, &hit));
  dw_chart_layout_free (layout);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-layout");
  TCase *tcase = tcase_create ("chart-layout");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, nothing_overlaps_at_any_size, 0, 12);
  tcase_add_test (tcase, axes_without_captions_leave_their_room_to_the_plot);
  tcase_add_test (tcase, the_zero_line_divides_the_strokes);
  tcase_add_loop_test (tcase, pixels_and_data_are_inverse, 0, 2);
  tcase_add_test (tcase, a_hit_names_the_curve_under_the_pointer);
  tcase_add_test (tcase, wheel_drag_and_pull_show_what_was_meant);
  tcase_add_loop_test (tcase, keys_step_along_round_speeds, 0, 2);
  tcase_add_test (tcase, a_small_area_drops_title_and_strip);
  tcase_add_test (tcase, a_chart_without_series_is_laid_out);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
