/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "sheet-samples.h"

START_TEST (front_and_rear_stand_side_by_side_with_the_same_axes)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_chart_page_options options = sample_options (project);
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_chart_layout *front = dw_chart_page_get_layout (page, DW_FRONT);
  const dw_chart_layout *rear = dw_chart_page_get_layout (page, DW_REAR);
  ck_assert (dw_view_equal (&front->view, &rear->view));
  ck_assert (front->frame.plot.y == rear->frame.plot.y);
  assert_close (front->frame.plot.width, rear->frame.plot.width, 1e-9, 0.0, "the same size");
  ck_assert (!dw_rect_overlaps (&front->area, &rear->area));
  ck_assert (rear->frame.plot.x > front->frame.plot.x + front->frame.plot.width);
}
END_TEST

START_TEST (on_a_tall_page_they_stand_below_each_other)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.width = 400.0;
  options.height = 700.0;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_chart_layout *front = dw_chart_page_get_layout (page, DW_FRONT);
  const dw_chart_layout *rear = dw_chart_page_get_layout (page, DW_REAR);
  ck_assert (front->frame.plot.x == rear->frame.plot.x);
  ck_assert (rear->area.y >= front->area.y + front->area.height - 1e-9);
  ck_assert (rear->area.y + rear->area.height < options.height);
}
END_TEST

START_TEST (one_axle_has_the_page_for_itself)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.has_axle[DW_FRONT] = false;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  ck_assert (dw_chart_page_get_chart (page, DW_FRONT) == NULL);
  ck_assert (dw_chart_page_get_layout (page, DW_FRONT) == NULL);
  ck_assert (dw_chart_page_get_layout (page, DW_REAR)->area.width > 0.9 * options.width);
  g_autofree char *csv = dw_chart_page_to_csv (page);
  ck_assert (strstr (csv, ",front,") == NULL && strstr (csv, "baseline,rear,") != NULL);
}
END_TEST

START_TEST (band_and_strip_are_those_asked_for)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.setups[0] = "baseline";
  options.setups[1] = "trial-1";
  options.n_setups = 2;
  g_autoptr (dw_chart_page) plain = dw_chart_page_new (&options, NULL);
  ck_assert_ptr_null (dw_chart_page_get_chart (plain, DW_REAR)->series[0]->stroke[DW_REBOUND].low);
  ck_assert_int_lt (dw_chart_page_get_chart (plain, DW_REAR)->strip_series, 0);
  options.has_band = true;
  options.has_strip = true;
  options.strip_setup = 1;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_chart *chart = dw_chart_page_get_chart (page, DW_REAR);
  for (int i = 0; i < 2; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      ck_assert_ptr_nonnull (chart->series[i]->stroke[s].low);
  ck_assert_int_eq (chart->strip_series, 1);
}
END_TEST

START_TEST (the_fitted_setup_is_the_heavy_line)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.setups[0] = "trial-1";
  options.setups[1] = "baseline";
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_chart *chart = dw_chart_page_get_chart (page, DW_REAR);
  ck_assert_int_eq (dw_chart_slot (chart, 1), DW_SLOT_FITTED);
  ck_assert_int_ne (dw_chart_slot (chart, 0), DW_SLOT_FITTED);
}
END_TEST

START_TEST (speeds_go_as_far_as_asked_at_the_place_shown)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.to = 0.5;
  options.look.place = _i == 0 ? DW_AT_SHAFT : DW_AT_WHEEL;
  options.look.is_log = true;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_chart *chart = dw_chart_page_get_chart (page, DW_FRONT);
  const dw_series_stroke *s = &chart->series[0]->stroke[DW_REBOUND];
  assert_close (dw_chart_shown_speed (chart, chart->series[0], s->points[s->n - 1].speed), 0.5,
                1e-12, 0.0, "fastest");
  assert_close (dw_chart_shown_speed (chart, chart->series[0], s->points[0].speed), 0.005, 1e-12,
                0.0, "two decades below");
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_is_named)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_chart_page_options options = sample_options (project);
  dw_chart_page_failure failure;
  const int index = dw_project_find_index (project, "trial-1");
  dw_project_edit_setup (project, (guint)index)->damper[DW_REAR].body.rod = 1.0;
  ck_assert (dw_chart_page_new (&options, &failure) == NULL);
  ck_assert_int_eq (failure.setup, 1);
  ck_assert_int_eq ((int)failure.axle, DW_REAR);
  ck_assert_str_eq (failure.finding.field, "body.rod");
  ck_assert (dw_chart_page_new (&options, NULL) == NULL);
}
END_TEST

START_TEST (the_words_tell_both_axles)
{
  static const double speeds[] = { 0.05, 0.2, 1.0 };
  g_autoptr (dw_project) project = sample_project ();
  const dw_chart_page_options options = sample_options (project);
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  g_autofree char *text = dw_chart_page_describe (page, speeds, 3);
  ck_assert (g_str_has_prefix (text, "Front. Force."));
  ck_assert_ptr_nonnull (strstr (text, " Rear. Force."));
  ck_assert_ptr_nonnull (strstr (text, "As qualified (fitted)"));
}
END_TEST

START_TEST (the_usual_page_is_the_fitted_setup)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (dw_project) empty = dw_project_new_empty ();
  const dw_chart_page_options options = dw_chart_page_options_defaults (project);
  ck_assert_int_eq (options.n_setups, 1);
  ck_assert_str_eq (options.setups[0], "baseline");
  ck_assert (options.to == project->speeds.high);
  ck_assert_int_eq (dw_chart_page_options_defaults (empty).n_setups, 0);
  dw_chart_page_free (NULL);
}
END_TEST

/* Ink in both halves, none outside. */
START_TEST (a_page_is_painted_whole)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_chart_page_options options = sample_options (project);
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;
  dw_chart_page_paint (page, cr);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  ck_assert (x >= -0.5 && y >= -0.5);
  ck_assert (width <= options.width + 1.0 && height <= options.height + 1.0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}
END_TEST

/* Of a larger page: no title, no foot, no margin, and what the axes show is told once. */
START_TEST (a_part_of_a_page_leaves_the_rest_to_it)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_chart_page_options options = sample_options (project);
  options.width = 520.0;
  options.height = 150.0;
  g_autoptr (dw_chart_page) whole = dw_chart_page_new (&options, NULL);
  options.is_part = true;
  g_autoptr (dw_chart_page) part = dw_chart_page_new (&options, NULL);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const dw_chart_layout *layout = dw_chart_page_get_layout (part, (dw_axle)axle);
      const dw_chart_layout *other = dw_chart_page_get_layout (whole, (dw_axle)axle);
      ck_assert_ptr_null (dw_chart_page_get_chart (part, (dw_axle)axle)->labels.caption);
      ck_assert (layout->frame.plot.height > other->frame.plot.height);
      ck_assert (layout->area.x >= 0.0 && layout->area.x + layout->area.width <= options.width);
      ck_assert (layout->area.y >= 0.0 && layout->area.y + layout->area.height <= options.height);
    }
  ck_assert (dw_view_equal (&dw_chart_page_get_layout (part, DW_FRONT)->view,
                            &dw_chart_page_get_layout (part, DW_REAR)->view));
}
END_TEST

/* Ink of a page, painted whole. */
static dw_rect
ink_of (const dw_chart_page *page)
{
  dw_rect ink;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  dw_chart_page_paint (page, cr);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

START_TEST (a_part_stays_in_its_box_whatever_its_words)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autofree char *name = g_strnfill (DW_PROJECT_MAX_TEXT, 'W');
  if (_i % 2 == 1)
    for (guint i = 0; i < 2; i++)
      ck_assert (dw_project_rename_setup (project, i, name));
  dw_chart_page_options options = sample_options (project);
  options.is_part = true;
  options.width = 520.0;
  options.height = _i < 2 ? 122.0 : 230.0;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, NULL);
  const dw_rect ink = ink_of (page);
  ck_assert (ink.x >= -1.0 && ink.y >= -1.0);
  ck_assert (ink.x + ink.width <= options.width + 1.0);
  ck_assert (ink.y + ink.height <= options.height + 1.0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/chart-page");
  TCase *tcase = tcase_create ("chart-page");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, front_and_rear_stand_side_by_side_with_the_same_axes);
  tcase_add_test (tcase, on_a_tall_page_they_stand_below_each_other);
  tcase_add_test (tcase, one_axle_has_the_page_for_itself);
  tcase_add_test (tcase, the_fitted_setup_is_the_heavy_line);
  tcase_add_loop_test (tcase, speeds_go_as_far_as_asked_at_the_place_shown, 0, 2);
  tcase_add_test (tcase, a_damper_that_cannot_be_computed_is_named);
  tcase_add_test (tcase, the_words_tell_both_axles);
  tcase_add_test (tcase, the_usual_page_is_the_fitted_setup);
  tcase_add_test (tcase, a_page_is_painted_whole);
  tcase_add_test (tcase, a_part_of_a_page_leaves_the_rest_to_it);
  tcase_add_loop_test (tcase, a_part_stays_in_its_box_whatever_its_words, 0, 4);
  tcase_add_test (tcase, band_and_strip_are_those_asked_for);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
