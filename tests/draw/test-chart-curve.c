/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>

#include "draw-samples.h"

static const dw_rect plot = { 40.0, 30.0, 500.0, 300.0 };

static dw_chart_frame
frame_of (const dw_view *v, bool is_log)
{
  return (dw_chart_frame){ plot,
                           { is_log, v->x_low, v->x_high, plot.x, plot.x + plot.width },
                           { false, v->y_low, v->y_high, plot.y + plot.height, plot.y } };
}

static void
make (const dw_chart *chart, int series, dw_stroke stroke, dw_chart_curve *curve)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_view view = dw_chart_current_view (chart);
  const dw_chart_frame frame = frame_of (&view, chart->is_log);
  dw_chart_curve_make (chart, series, stroke, &style, &frame, curve);
}

static bool
is_inside (const dw_polyline *line)
{
  const dw_rect wide = dw_rect_inset (&plot, -1e-6);
  for (size_t i = 0; i < line->n; i++)
    if (!dw_spot_is_gap (line->spots[i])
        && !dw_rect_holds (&wide, line->spots[i].x, line->spots[i].y))
      return false;
  return true;
}

START_TEST (compression_is_above_rebound)
{
  dw_chart chart = sample_chart (1, false);
  dw_chart_curve up = { 0 };
  dw_chart_curve down = { 0 };
  make (&chart, 0, DW_COMPRESSION, &up);
  make (&chart, 0, DW_REBOUND, &down);
  const dw_view view = dw_chart_current_view (&chart);
  const dw_chart_frame frame = frame_of (&view, false);
  const double zero = dw_scale_place (&frame.y, 0.0);
  for (double x = plot.x + 20.0; x < plot.x + plot.width; x += 20.0)
    {
      double a, b;
      ck_assert (dw_polyline_at (&up.before, x, &a) || dw_polyline_at (&up.past, x, &a));
      ck_assert (dw_polyline_at (&down.before, x, &b));
      ck_assert (a < zero && b > zero);
    }
  ck_assert_uint_eq (down.past.n, 0);
  ck_assert (!down.has_onset);
  dw_chart_curve_clear (&up);
  dw_chart_curve_clear (&down);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_onset_joins_three_lines)
{
  dw_chart chart = sample_chart (1, _i == 1);
  dw_chart_curve curve = { 0 };
  make (&chart, 0, DW_COMPRESSION, &curve);
  ck_assert (curve.has_onset);
  const dw_spot end = curve.before.spots[curve.before.n - 1];
  assert_close (dw_spot_distance (end, curve.onset), 0.0, 0.0, 1e-6, "before ends in the mark");
  assert_close (dw_spot_distance (curve.past.spots[0], curve.onset), 0.0, 0.0, 1e-6,
                "past begins there");
  assert_close (dw_spot_distance (curve.cap.spots[0], curve.onset), 0.0, 0.0, 1e-6,
                "the cap as well");
  const dw_spot last = curve.cap.spots[curve.cap.n - 1];
  assert_close (last.y, curve.onset.y, 0.0, 1e-6, "a force that stays is level");
  assert_close (last.x, plot.x + plot.width, 0.0, 1e-6, "up to the end");
  assert_close (curve.onset_speed, chart.series[0]->onset_speed, 1e-12, 0.0, "as shown");
  dw_chart_curve_clear (&curve);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_vented_curve_is_its_own_cap)
{
  dw_chart chart = sample_chart (1, false);
  dw_series *s = (dw_series *)(guintptr)chart.series[0];
  const dw_series_range range = { 0.0, 1.0, false };
  dw_damper d = sample_damper ();
  d.gas.kind = DW_GAS_VENTED;
  ck_assert_int_eq (dw_series_fill (s, &d, 25.0, &range, NULL), DW_OK);
  dw_chart_curve curve = { 0 };
  make (&chart, 0, DW_COMPRESSION, &curve);
  ck_assert_uint_eq (curve.cap.n, 0);
  for (size_t i = 0; i < curve.past.n; i++)
    assert_close (curve.past.spots[i].y, curve.onset.y, 0.0, 1e-6, "capped");
  dw_chart_curve_clear (&curve);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (zoomed_in_everything_stays_in_the_plot)
{
  dw_chart chart = sample_chart (2, _i == 1);
  test_random random = test_random_new ((uint64_t)_i);
  const dw_view whole = dw_chart_whole_view (&chart);
  for (int i = 0; i < 100; i++)
    {
      dw_chart_curve curve = { 0 };
      chart.has_view = true;
      chart.view = dw_view_zoom (&whole, &whole, chart.is_log, test_random_uniform (&random, 0, 1),
                                 test_random_uniform (&random, 0, 1),
                                 test_random_log_uniform (&random, 1.0, 400.0));
      make (&chart, i % 2, (dw_stroke)(i / 2 % 2), &curve);
      ck_assert (is_inside (&curve.before) && is_inside (&curve.past) && is_inside (&curve.cap));
      for (int k = 0; k < curve.n_markers; k++)
        ck_assert (dw_rect_holds (&plot, curve.markers[k].x, curve.markers[k].y));
      dw_chart_curve_clear (&curve);
    }
  sample_chart_clear (&chart);
}
END_TEST

/* A measurement of 50 000 points with a hole in it. */
START_TEST (a_long_series_is_thinned_and_keeps_its_gap)
{
  const size_t n = 50000;
  dw_series_point *points = g_new0 (dw_series_point, n);
  for (size_t i = 0; i < n; i++)
    points[i] = (dw_series_point){ .speed = (double)i / n, .force = 10.0 + 5.0 * sin (0.05 * i) };
  for (size_t i = 20000; i < 25000; i++)
    points[i].force = (double)NAN;
  dw_series *series = dw_series_new ("measured");
  dw_series_set_points (series, DW_REBOUND, points, n);
  dw_chart chart = dw_chart_defaults ();
  chart.series[0] = series;
  chart.n_series = 1;
  dw_chart_curve curve = { 0 };
  make (&chart, 0, DW_REBOUND, &curve);
  int gaps = 0;
  for (size_t i = 0; i < curve.before.n; i++)
    gaps += dw_spot_is_gap (curve.before.spots[i]);
  double y;
  const double in_gap = plot.x + 0.45 * plot.width;
  ck_assert_uint_lt (curve.before.n, 4 * 2 * 501);
  ck_assert_int_eq (gaps, 1);
  ck_assert (!dw_polyline_at (&curve.before, in_gap, &y));
  dw_chart_curve_clear (&curve);
  dw_series_free (series);
  g_free (points);
}
END_TEST

START_TEST (markers_of_two_series_are_apart_and_off_the_onset)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_chart chart = sample_chart (4, false);
  dw_chart_curve curves[4] = { 0 };
  for (int i = 0; i < 4; i++)
    {
      make (&chart, i, DW_COMPRESSION, &curves[i]);
      ck_assert_int_ge (curves[i].n_markers, 2);
      for (int k = 0; k < curves[i].n_markers; k++)
        ck_assert (dw_spot_distance (curves[i].markers[k], curves[i].onset)
                   > style.onset_radius + style.marker_radius);
      for (int j = 0; j < i; j++)
        for (int k = 0; k < curves[i].n_markers; k++)
          for (int l = 0; l < curves[j].n_markers; l++)
            ck_assert (dw_spot_distance (curves[i].markers[k], curves[j].markers[l])
                       > 2.0 * style.marker_radius);
    }
  for (int i = 0; i < 4; i++)
    dw_chart_curve_clear (&curves[i]);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (band_edges_have_as_many_pieces)
{
  dw_chart chart = sample_chart (1, false);
  dw_series *s = (dw_series *)(guintptr)chart.series[0];
  const size_t n = s->stroke[DW_REBOUND].n;
  double *low = g_new (double, n);
  double *high = g_new (double, n);
  for (size_t i = 0; i < n; i++)
    {
      low[i] = i == 7 ? (double)NAN : 0.9 * s->stroke[DW_REBOUND].points[i].force;
      high[i] = i == 20 ? (double)NAN : 1.1 * s->stroke[DW_REBOUND].points[i].force;
    }
  dw_series_set_band (s, DW_REBOUND, low, high);
  dw_chart_curve curve = { 0 };
  make (&chart, 0, DW_REBOUND, &curve);
  int gaps[2] = { 0, 0 };
  for (size_t i = 0; i < curve.band_low.n; i++)
    gaps[0] += dw_spot_is_gap (curve.band_low.spots[i]);
  for (size_t i = 0; i < curve.band_high.n; i++)
    gaps[1] += dw_spot_is_gap (curve.band_high.spots[i]);
  ck_assert_int_eq (gaps[0], 2);
  ck_assert_int_eq (gaps[1], 2);
  chart.shows_band = false;
  make (&chart, 0, DW_REBOUND, &curve);
  ck_assert_uint_eq (curve.band_low.n, 0);
  dw_chart_curve_clear (&curve);
  g_free (low);
  g_free (high);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (nearest_and_meeting_see_both_parts)
{
  dw_chart chart = sample_chart (1, false);
  dw_chart_curve curve = { 0 };
  dw_spot near;
  make (&chart, 0, DW_COMPRESSION, &curve);
  const dw_spot on_past = curve.past.spots[curve.past.n - 1];
  ck_assert (dw_chart_curve_nearest (&curve, on_past, &near) < 1e-9);
  const dw_spot on_before = curve.before.spots[curve.before.n / 2];
  ck_assert (dw_chart_curve_nearest (&curve, on_before, &near) < 1e-9);
  const dw_rect on_mark = { curve.onset.x + 2.0, curve.onset.y - 3.0, 0.5, 0.5 };
  const dw_rect far = { plot.x + 5.0, plot.y + 5.0, 20.0, 10.0 };
  ck_assert (dw_chart_curve_meets (&curve, 3.5, &on_mark));
  ck_assert (!dw_chart_curve_meets (&curve, 3.5, &far));
  dw_chart_curve_clear (&curve);
  sample_chart_clear (&chart);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-curve");
  TCase *tcase = tcase_create ("chart-curve");
  tcase_add_test (tcase, compression_is_above_rebound);
  tcase_add_loop_test (tcase, the_onset_joins_three_lines, 0, 2);
  tcase_add_test (tcase, a_vented_curve_is_its_own_cap);
  tcase_add_loop_test (tcase, zoomed_in_everything_stays_in_the_plot, 0, 2);
  tcase_add_test (tcase, a_long_series_is_thinned_and_keeps_its_gap);
  tcase_add_test (tcase, markers_of_two_series_are_apart_and_off_the_onset);
  tcase_add_test (tcase, band_edges_have_as_many_pieces);
  tcase_add_test (tcase, nearest_and_meeting_see_both_parts);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
