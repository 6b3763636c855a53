/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-view.h"

#include <string.h>

#include "panel-fixture.h"

static DwDrillMapView *view;
static int pointed;
static int chosen;
static int activated;

static void
keep (DwDrillMapView *self, int dot, int *into)
{
  (void)self;
  *into = dot;
}

static const double SIZES[] = { 1.3e-3, 1.4e-3, 1.5e-3, 1.6e-3 };
#define N_SIZES 4

static void
set_up (void)
{
  static const double speeds[] = { 0.05, 0.2, 1.0 };
  const dw_damper damper = dw_damper_defaults ();
  dw_drill_measure measure = DW_MEASURE_COMPRESSION_LOW;
  dw_drill_field field = { .n_x = 31, .n_y = 31 };
  dw_drill_field *fields[] = { &field };
  dw_drill_dot dots[N_SIZES * N_SIZES];
  dw_drill_sets sets;
  dw_drilling study;
  panel_start ();
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
  for (int i = 0; i < N_SIZES * N_SIZES; i++)
    dots[i] = (dw_drill_dot){ SIZES[i % N_SIZES], SIZES[i / N_SIZES], true };
  ck_assert (dw_drill_field_place (&field, &sets, dots, N_SIZES * N_SIZES));
  dw_drill_field_fill (&study, &measure, fields, 1);

  dw_drill_map map = dw_drill_map_defaults ();
  map.sets = &sets;
  map.shade = &field;
  map.shade_measure = measure;
  map.dots = dots;
  map.n_dots = N_SIZES * N_SIZES;
  map.tolerance = 0.1e-3;
  view = DW_DRILL_MAP_VIEW (dw_drill_map_view_new ());
  dw_drill_map_view_set_map (view, &map);
  pointed = chosen = activated = -2;
  g_signal_connect (view, "pointed", G_CALLBACK (keep), &pointed);
  g_signal_connect (view, "chosen", G_CALLBACK (keep), &chosen);
  g_signal_connect (view, "activated", G_CALLBACK (keep), &activated);
  panel_show (GTK_WIDGET (view));
}

static GtkEventController *
controller (GType type)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (GTK_WIDGET (view));
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) c = g_list_model_get_item (all, i);
      if (G_TYPE_CHECK_INSTANCE_TYPE (c, type))
        return c;
    }
  return NULL;
}

static bool
press (guint key)
{
  gboolean taken = FALSE;
  g_signal_emit_by_name (controller (GTK_TYPE_EVENT_CONTROLLER_KEY), "key-pressed", key, 0, 0,
                         &taken);
  return taken;
}

START_TEST (the_map_is_a_copy)
{
  const dw_drill_map *map = dw_drill_map_view_get_map (view);
  ck_assert_int_eq (map->n_dots, N_SIZES * N_SIZES);
  ck_assert (map->dots[5].x == 1.4e-3 && map->dots[5].y == 1.4e-3);
  ck_assert_int_gt (map->shade->n_x, 2);
  dw_drill_map_view_set_map (view, NULL);
  ck_assert_ptr_null (dw_drill_map_view_get_map (view));
  panel_settle ();
}
END_TEST

START_TEST (the_pointer_finds_dots)
{
  GtkEventController *motion = controller (GTK_TYPE_EVENT_CONTROLLER_MOTION);
  for (int dot = 0; dot < N_SIZES * N_SIZES; dot++)
    {
      double x, y;
      ck_assert (dw_drill_map_view_place (view, dot, &x, &y));
      g_signal_emit_by_name (motion, "motion", x + 2.0, y - 2.0);
      ck_assert_int_eq (pointed, dot);
    }
  g_signal_emit_by_name (motion, "leave");
  ck_assert_int_eq (pointed, -1);
}
END_TEST

START_TEST (a_click_chooses_and_a_second_one_acts)
{
  double x, y;
  GtkEventController *click = controller (GTK_TYPE_GESTURE_CLICK);
  ck_assert (dw_drill_map_view_place (view, 6, &x, &y));
  g_signal_emit_by_name (click, "pressed", 1, x, y);
  ck_assert_int_eq (chosen, 6);
  ck_assert_int_eq (dw_drill_map_view_get_map (view)->chosen, 6);
  ck_assert_int_eq (activated, -2);
  g_signal_emit_by_name (click, "pressed", 2, x, y);
  ck_assert_int_eq (activated, 6);
}
END_TEST

START_TEST (arrow_keys_walk_the_dots)
{
  dw_drill_map_view_choose (view, 0);
  ck_assert_int_eq (chosen, -2);
  ck_assert (press (GDK_KEY_Right));
  ck_assert_int_eq (chosen, 1);
  ck_assert (press (GDK_KEY_Up));
  ck_assert_int_eq (chosen, 1 + N_SIZES);
  ck_assert (press (GDK_KEY_Left));
  ck_assert (press (GDK_KEY_Down));
  ck_assert_int_eq (chosen, 0);
  /* at the edge it stays */
  ck_assert (press (GDK_KEY_Left));
  ck_assert_int_eq (dw_drill_map_view_get_map (view)->chosen, 0);
  ck_assert (press (GDK_KEY_Return));
  ck_assert_int_eq (activated, 0);
  ck_assert (!press (GDK_KEY_a));
}
END_TEST

START_TEST (the_map_is_told_in_words)
{
  gtk_test_accessible_assert_role (view, GTK_ACCESSIBLE_ROLE_IMG);
  ck_assert (gtk_test_accessible_has_property (GTK_ACCESSIBLE (view),
                                               GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-map-view");
  TCase *tc = tcase_create ("drill-map-view");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, set_up, panel_stop);
  tcase_add_test (tc, the_map_is_a_copy);
  tcase_add_test (tc, the_pointer_finds_dots);
  tcase_add_test (tc, a_click_chooses_and_a_second_one_acts);
  tcase_add_test (tc, arrow_keys_walk_the_dots);
  tcase_add_test (tc, the_map_is_told_in_words);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
