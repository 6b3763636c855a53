/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "window-fixture.h"
#include "window/dw-curves-page.h"

static DwCurvesPage *
page_of (DwWindow *window)
{
  return DW_CURVES_PAGE (fixture_find_type (GTK_WIDGET (window), DW_TYPE_CURVES_PAGE));
}

START_TEST (both_axles_show_the_fitted_setup_first)
{
  DwCurvesPage *page = page_of (fixture_open ("club-final.dampwright"));
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      const dw_chart *chart = dw_chart_view_get_chart (dw_curves_page_get_chart (page, (dw_axle)a));
      ck_assert_int_eq (chart->n_series, 2);
      ck_assert (chart->series[0]->is_fitted);
      ck_assert_str_eq (chart->series[0]->name, "As qualified");
      ck_assert_int_eq (chart->series[1]->slot, DW_SLOT_TRIAL_1);
    }
}
END_TEST

static gboolean
warm_up (dw_project *project, gpointer data)
{
  (void)data;
  project->conditions.oil_temperature += 20.0;
  return TRUE;
}

START_TEST (an_edit_moves_the_curves_at_once)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  DwChartView *view = dw_curves_page_get_chart (page_of (window), DW_FRONT);
  const dw_chart *chart = dw_chart_view_get_chart (view);
  const size_t last = chart->series[0]->stroke[DW_REBOUND].n - 1;
  const double before = chart->series[0]->stroke[DW_REBOUND].points[last].force;
  dw_document_edit (dw_window_get_document (window), "Warm up", NULL, warm_up, NULL);
  const size_t now = chart->series[0]->stroke[DW_REBOUND].n - 1;
  ck_assert (chart->series[0]->stroke[DW_REBOUND].points[now].force < before);
}
END_TEST

START_TEST (units_reach_the_charts)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_action_group_change_action_state (G_ACTION_GROUP (fixture_app ()), "unit-inch",
                                      g_variant_new_boolean (TRUE));
  g_action_group_change_action_state (G_ACTION_GROUP (fixture_app ()), "unit-lbf",
                                      g_variant_new_boolean (TRUE));
  const dw_chart *chart = dw_chart_view_get_chart (
      dw_curves_page_get_chart (page_of (window), DW_REAR));
  ck_assert_str_eq (chart->units.speed.symbol, "in/s");
  ck_assert_str_eq (chart->units.force.symbol, "lbf");
}
END_TEST

START_TEST (sun_and_dark_change_the_style)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  DwCurvesPage *page = page_of (window);
  const dw_color light = dw_curves_page_get_style (page)->plot;
  g_action_group_activate_action (G_ACTION_GROUP (fixture_app ()), "theme",
                                  g_variant_new_string ("dark"));
  ck_assert (dw_curves_page_get_style (page)->plot.red < light.red);
  g_action_group_activate_action (G_ACTION_GROUP (fixture_app ()), "theme",
                                  g_variant_new_string ("sun"));
  ck_assert (dw_curves_page_get_style (page)->line[0].width
             > dw_chart_style_make (DW_STYLE_LIGHT).line[0].width);
  g_action_group_activate_action (G_ACTION_GROUP (fixture_app ()), "theme",
                                  g_variant_new_string ("light"));
  ck_assert (dw_curves_page_get_style (page)->plot.red == light.red);
}
END_TEST

START_TEST (a_project_without_drawn_setups_is_empty_not_broken)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  dw_window_draw_setup (window, "baseline", FALSE);
  dw_window_draw_setup (window, "trial-1", FALSE);
  fixture_settle ();
  ck_assert_int_eq (
      dw_chart_view_get_chart (dw_curves_page_get_chart (page_of (window), DW_FRONT))->n_series, 0);
}
END_TEST

static GtkToggleButton *
button_named (GtkWidget *widget, const char *label)
{
  if (GTK_IS_TOGGLE_BUTTON (widget)
      && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0)
    return GTK_TOGGLE_BUTTON (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkToggleButton *found = button_named (child, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

START_TEST (one_axle_can_have_all_the_room)
{
  DwCurvesPage *page = page_of (fixture_open ("club-final.dampwright"));
  GtkWidget *front = GTK_WIDGET (dw_curves_page_get_chart (page, DW_FRONT));
  GtkWidget *rear = GTK_WIDGET (dw_curves_page_get_chart (page, DW_REAR));
  const int half = gtk_widget_get_width (rear);
  ck_assert (gtk_widget_get_mapped (front) && gtk_widget_get_mapped (rear));
  gtk_toggle_button_set_active (button_named (GTK_WIDGET (page), "Front"), FALSE);
  fixture_settle ();
  ck_assert (!gtk_widget_get_mapped (front) && gtk_widget_get_mapped (rear));
  ck_assert_int_gt (gtk_widget_get_width (rear), 2 * half);
  /* never none */
  gtk_toggle_button_set_active (button_named (GTK_WIDGET (page), "Rear"), FALSE);
  fixture_settle ();
  ck_assert (gtk_widget_get_mapped (front) && !gtk_widget_get_mapped (rear));
  ck_assert (gtk_toggle_button_get_active (button_named (GTK_WIDGET (page), "Front")));
}
END_TEST

START_TEST (charts_beside_each_other_are_laid_out_alike)
{
  DwCurvesPage *page = page_of (fixture_open ("club-final.dampwright"));
  GtkWidget *front = GTK_WIDGET (dw_curves_page_get_chart (page, DW_FRONT));
  GtkWidget *rear = GTK_WIDGET (dw_curves_page_get_chart (page, DW_REAR));
  ck_assert_int_eq (gtk_widget_get_width (front), gtk_widget_get_width (rear));
  ck_assert_int_eq (gtk_widget_get_height (front), gtk_widget_get_height (rear));
  const dw_view a = dw_chart_whole_view (dw_chart_view_get_chart (DW_CHART_VIEW (front)));
  const dw_view b = dw_chart_whole_view (dw_chart_view_get_chart (DW_CHART_VIEW (rear)));
  ck_assert (dw_view_equal (&a, &b));
}
END_TEST

START_TEST (the_menu_decides_what_else_is_shown)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  DwCurvesPage *page = page_of (window);
  const dw_chart *chart = dw_chart_view_get_chart (dw_curves_page_get_chart (page, DW_REAR));
  GtkWidget *widget = GTK_WIDGET (page);
  ck_assert (!chart->is_log && chart->shows_cap && chart->strip_series < 0);
  ck_assert (gtk_widget_activate_action (widget, "curves.logarithmic", NULL));
  ck_assert (gtk_widget_activate_action (widget, "curves.cap", NULL));
  ck_assert (gtk_widget_activate_action (widget, "curves.flow", "s", "rebound"));
  ck_assert (chart->is_log && !chart->shows_cap);
  ck_assert_int_eq (chart->strip_stroke, DW_REBOUND);
  ck_assert_str_eq (chart->series[chart->strip_series]->name, "Rear quicker on rebound");
  dw_window_select (window, "baseline");
  ck_assert_str_eq (chart->series[chart->strip_series]->name, "As qualified");
  ck_assert (gtk_widget_activate_action (widget, "curves.flow", "s", "none"));
  ck_assert_int_lt (chart->strip_series, 0);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/curves-page");
  TCase *tc = tcase_create ("curves-page");
  fixture_case (s, tc);
  tcase_add_test (tc, both_axles_show_the_fitted_setup_first);
  tcase_add_test (tc, an_edit_moves_the_curves_at_once);
  tcase_add_test (tc, units_reach_the_charts);
  tcase_add_test (tc, sun_and_dark_change_the_style);
  tcase_add_test (tc, a_project_without_drawn_setups_is_empty_not_broken);
  tcase_add_test (tc, one_axle_can_have_all_the_room);
  tcase_add_test (tc, charts_beside_each_other_are_laid_out_alike);
  tcase_add_test (tc, the_menu_decides_what_else_is_shown);
  return run_suite (s);
}
