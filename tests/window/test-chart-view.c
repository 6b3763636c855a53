/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "model/dw-force.h"
#include "window-fixture.h"
#include "window/dw-chart-view.h"

static GtkWindow *holder;
static DwChartView *view;
static char *told;
static int n_told;

static void
on_reading (DwChartView *chart, const char *text, gpointer data)
{
  (void)chart;
  (void)data;
  g_free (told);
  told = g_strdup (text);
  n_told++;
}

static dw_series *
series_named (const char *name, double hole)
{
  dw_damper damper = dw_damper_defaults ();
  const dw_series_range range = { .from = 0.0, .to = 1.2 };
  dw_series *series = dw_series_new (name);
  damper.piston.holes[0].diameter = hole;
  ck_assert_int_eq (dw_series_fill (series, &damper, 25.0, &range, NULL), DW_OK);
  return series;
}

static void
show_two (void)
{
  const dw_chart chart = dw_chart_defaults ();
  dw_series *series[] = { series_named ("One", 1.3e-3), series_named ("Other", 1.4e-3) };
  series[0]->is_fitted = true;
  dw_chart_view_take (view, series, 2, &chart);
}

static void
make_view (void)
{
  fixture_start ();
  view = DW_CHART_VIEW (dw_chart_view_new ());
  holder = GTK_WINDOW (gtk_window_new ());
  gtk_window_set_default_size (holder, 600, 500);
  gtk_window_set_child (holder, GTK_WIDGET (view));
  gtk_window_set_application (holder, GTK_APPLICATION (fixture_app ()));
  g_signal_connect (view, "reading", G_CALLBACK (on_reading), NULL);
  show_two ();
  gtk_window_present (holder);
  fixture_settle ();
}

static void
drop_view (void)
{
  g_clear_pointer (&told, g_free);
  fixture_stop ();
}

static bool
press (guint key, GdkModifierType state)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (view));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) c = g_list_model_get_item (controllers, i);
      gboolean taken = FALSE;
      if (!GTK_IS_EVENT_CONTROLLER_KEY (c))
        continue;
      g_signal_emit_by_name (c, "key-pressed", key, 0, state, &taken);
      return taken;
    }
  ck_abort_msg ("no key controller");
  return false;
}

START_TEST (reading_tells_both_strokes_and_the_change)
{
  dw_damper damper = dw_damper_defaults ();
  dw_force_model model;
  dw_force_point point;
  char number[32];
  ck_assert_int_eq (dw_force_model_make (&damper, 25.0, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_force_at (&model, DW_REBOUND, 0.1, &point, NULL), DW_OK);
  g_snprintf (number, sizeof number, "One %.1f N", point.force);
  dw_chart_view_read_at (view, 0.1);
  ck_assert_ptr_nonnull (told);
  ck_assert_ptr_nonnull (strstr (told, "0.100 m/s"));
  ck_assert_msg (strstr (told, number) != NULL, "%s in %s", number, told);
  ck_assert_ptr_nonnull (strstr (told, "rebound:"));
  ck_assert_ptr_nonnull (strstr (told, "%)"));
}
END_TEST

START_TEST (past_the_onset_lost_travel_is_told)
{
  dw_chart_view_read_at (view, 1.0);
  ck_assert_ptr_nonnull (strstr (told, "travel lost to the void"));
}
END_TEST

START_TEST (arrow_keys_walk_round_speeds)
{
  ck_assert (press (GDK_KEY_Right, 0));
  g_autofree char *first = g_strdup (told);
  ck_assert_ptr_nonnull (first);
  ck_assert (press (GDK_KEY_Right, GDK_SHIFT_MASK));
  ck_assert_str_ne (first, told);
  ck_assert (press (GDK_KEY_Escape, 0));
  ck_assert_ptr_null (told);
  ck_assert (!press (GDK_KEY_a, 0));
}
END_TEST

START_TEST (zoom_keys_change_the_view_and_zero_undoes_it)
{
  ck_assert (!dw_chart_view_get_chart (view)->has_view);
  ck_assert (press (GDK_KEY_plus, 0));
  ck_assert (dw_chart_view_get_chart (view)->has_view);
  const dw_view zoomed = dw_chart_view_get_chart (view)->view;
  const dw_view whole = dw_chart_whole_view (dw_chart_view_get_chart (view));
  ck_assert (zoomed.x_high - zoomed.x_low < whole.x_high - whole.x_low);
  ck_assert (press (GDK_KEY_0, 0));
  ck_assert (!dw_chart_view_get_chart (view)->has_view);
}
END_TEST

START_TEST (zoom_holds_over_an_edit_and_not_over_other_axes)
{
  press (GDK_KEY_plus, 0);
  show_two ();
  ck_assert (dw_chart_view_get_chart (view)->has_view);
  dw_chart chart = dw_chart_defaults ();
  dw_series *series[] = { series_named ("One", 1.3e-3) };
  chart.quantity = DW_SHOW_DAMPING;
  dw_chart_view_take (view, series, 1, &chart);
  ck_assert (!dw_chart_view_get_chart (view)->has_view);
}
END_TEST

START_TEST (the_same_reading_is_told_once)
{
  n_told = 0;
  dw_chart_view_read_at (view, 0.3);
  dw_chart_view_read_at (view, 0.3);
  ck_assert_int_eq (n_told, 1);
  dw_chart_view_read_at (view, NAN);
  dw_chart_view_read_at (view, NAN);
  ck_assert_int_eq (n_told, 2);
}
END_TEST

START_TEST (a_stale_chart_says_why)
{
  dw_chart_view_set_stale (view, "no flow balance");
  GtkWidget *label = fixture_find_text (GTK_WIDGET (view), "no flow balance");
  ck_assert (label != NULL && gtk_widget_get_visible (label));
  dw_chart_view_set_stale (view, NULL);
  ck_assert (!gtk_widget_get_visible (label));
}
END_TEST

START_TEST (the_chart_is_told_in_words)
{
  ck_assert_ptr_null (gtk_test_accessible_check_property (
      GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, "Force chart"));
  gtk_test_accessible_assert_role (view, GTK_ACCESSIBLE_ROLE_IMG);
  ck_assert (gtk_test_accessible_has_property (GTK_ACCESSIBLE (view),
                                               GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
}
END_TEST

START_TEST (the_view_is_finalised)
{
  g_object_add_weak_pointer (G_OBJECT (view), (gpointer *)&view);
  gtk_window_destroy (holder);
  fixture_settle ();
  ck_assert_ptr_null (view);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/chart-view");
  TCase *tc = tcase_create ("chart-view");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, make_view, drop_view);
  tcase_add_test (tc, reading_tells_both_strokes_and_the_change);
  tcase_add_test (tc, past_the_onset_lost_travel_is_told);
  tcase_add_test (tc, arrow_keys_walk_round_speeds);
  tcase_add_test (tc, zoom_keys_change_the_view_and_zero_undoes_it);
  tcase_add_test (tc, zoom_holds_over_an_edit_and_not_over_other_axes);
  tcase_add_test (tc, the_same_reading_is_told_once);
  tcase_add_test (tc, a_stale_chart_says_why);
  tcase_add_test (tc, the_chart_is_told_in_words);
  tcase_add_test (tc, the_view_is_finalised);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
