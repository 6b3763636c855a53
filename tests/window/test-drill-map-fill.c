/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-fill.h"

#include "panel-fixture.h"
#include "project/dw-project-file.h"

static dw_project *project;
static DwDrillChoices *choices;
static DwDrillMapView *view;
static dw_drill_map_options options;

static void
set_up (void)
{
  const dw_spread_limits limits = { .hole_grade = 12 };
  char *path = test_source_path ("demo/club-final.dampwright");
  g_autoptr (dw_findings) findings = dw_findings_new ();
  panel_start ();
  project = dw_project_load (path, findings, NULL);
  free (path);
  choices = dw_drill_choices_new ();
  dw_drill_choices_ask (choices, project, &dw_project_get_fitted (project)->damper[DW_FRONT],
                        DW_DRILL_HALVES, FALSE, &limits);
  view = DW_DRILL_MAP_VIEW (dw_drill_map_view_new ());
  options = (dw_drill_map_options){ .shade = DW_MEASURE_REBOUND_HIGH,
                                    .filter = dw_drill_filter_defaults (),
                                    .chosen = 1 };
  panel_show (GTK_WIDGET (view));
}

static void
tear_down (void)
{
  panel_stop ();
  g_object_unref (choices);
  dw_project_free (project);
}

static const dw_drill_map *
fill (void)
{
  dw_drill_map_fill (view, choices, &options);
  panel_settle ();
  return dw_drill_map_view_get_map (view);
}

START_TEST (dots_are_the_choices)
{
  const dw_drill_map *map = fill ();
  GListModel *list = dw_drill_choices_get_list (choices);
  ck_assert_uint_eq ((guint)map->n_dots, g_list_model_get_n_items (list));
  for (int i = 0; i < map->n_dots; i++)
    {
      g_autoptr (DwDrillChoice) choice = g_list_model_get_item (list, (guint)i);
      const double x = dw_drill_choice_get_size (choice, 0);
      ck_assert (map->dots[i].x == (x > 0.0 ? x : 1.4e-3));
      ck_assert (map->dots[i].is_wanted);
    }
  ck_assert_int_eq (map->chosen, 1);
  ck_assert (map->tolerance == 0.1e-3);
  ck_assert_ptr_null (map->contour);
  ck_assert_ptr_null (map->oil);
}
END_TEST

START_TEST (the_field_is_the_measure_asked_for)
{
  const dw_drill_map *map = fill ();
  const dw_drilling *study = dw_drill_choices_get_study (choices);
  dw_drill_result result;
  const dw_drill_dot *dot = &map->dots[map->n_dots - 1];
  ck_assert_int_eq (dw_drilling_at (study, (const double[]){ dot->x, dot->y }, &result, NULL),
                    DW_OK);
  assert_close (dw_drill_field_at (map->shade, dot->x, dot->y), result.change[DW_REBOUND][DW_HIGH],
                0.02, 0.1, "between nodes");
}
END_TEST

START_TEST (lines_oils_and_filter_follow_the_options)
{
  options.has_contour = TRUE;
  options.contour = DW_MEASURE_PACK_REBOUND;
  options.oils = TRUE;
  options.filter.most_holes = 3;
  options.units = DW_UNITS_INCH;
  const dw_drill_map *map = fill ();
  int n_faint = 0;
  for (int i = 0; i < map->n_dots; i++)
    n_faint += !map->dots[i].is_wanted;
  ck_assert_int_gt (n_faint, 0);
  ck_assert_int_lt (n_faint, map->n_dots);
  ck_assert_ptr_nonnull (map->contour);
  ck_assert_ptr_nonnull (map->oil);
  ck_assert_int_gt (map->n_oils, 0);
  ck_assert_str_eq (map->length_unit, "inch");
}
END_TEST

START_TEST (without_holes_in_sets_there_is_no_map)
{
  const dw_drilling *study = dw_drill_choices_get_study (choices);
  for (int i = 0; i < study->sets.face.n_holes; i++)
    while (dw_drill_choices_get_study (choices)->sets.set_of[i] >= 0)
      dw_drill_choices_turn_hole (choices, i);
  ck_assert_ptr_null (fill ());
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-map-fill");
  TCase *tc = tcase_create ("drill-map-fill");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, set_up, tear_down);
  tcase_add_test (tc, dots_are_the_choices);
  tcase_add_test (tc, the_field_is_the_measure_asked_for);
  tcase_add_test (tc, lines_oils_and_filter_follow_the_options);
  tcase_add_test (tc, without_holes_in_sets_there_is_no_map);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
