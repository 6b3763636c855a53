/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-plan.h"

#include <string.h>

#include "window-fixture.h"

static DwDrillPlan *plan;
static int n_drilled;

static void
on_drilled (void)
{
  n_drilled++;
}

static void
set_up (void)
{
  static const double drills[] = { 1.4e-3, 1.5e-3 };
  static const double speeds[] = { 0.05, 0.2, 1.0 };
  static const double size[] = { 1.4e-3, 1.5e-3 };
  const dw_drill_box box = { .drills = drills, .n_drills = 2, .limits = { .hole_grade = 12 } };
  const dw_damper damper = dw_damper_defaults ();
  dw_drill_sets sets;
  dw_drilling study;
  dw_drill_row row;
  fixture_start ();
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, NULL), DW_OK);
  plan = DW_DRILL_PLAN (dw_drill_plan_new (&study, &box, &row, DW_REAR, DW_UNITS_METRIC));
  n_drilled = 0;
  g_signal_connect (plan, "drilled", G_CALLBACK (on_drilled), NULL);
  gtk_window_present (GTK_WINDOW (plan));
  fixture_settle ();
}

static bool
is_question (void *data)
{
  (void)data;
  GListModel *all = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      if (GTK_IS_MESSAGE_DIALOG (window))
        return true;
    }
  return false;
}

static GtkDialog *
question (void)
{
  GListModel *all = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      if (GTK_IS_MESSAGE_DIALOG (window))
        return GTK_DIALOG (window);
    }
  return NULL;
}

static bool
is_gone (void *data)
{
  return *(void **)data == NULL;
}

START_TEST (the_plan_is_shown)
{
  ck_assert_ptr_nonnull (strstr (dw_drill_plan_get_text (plan), "Both rear pistons"));
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (plan)), "Drilling plan, rear");
  gtk_window_destroy (GTK_WINDOW (plan));
}
END_TEST

START_TEST (it_asks_before_it_says_drilled)
{
  g_object_add_weak_pointer (G_OBJECT (plan), (gpointer *)&plan);
  ck_assert (gtk_widget_activate_action (GTK_WIDGET (plan), "plan.drilled", NULL));
  ck_assert (fixture_until (is_question, NULL, 3000));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (question ()), "cannot be undone"));
  gtk_dialog_response (question (), GTK_RESPONSE_CANCEL);
  fixture_settle ();
  ck_assert_int_eq (n_drilled, 0);
  ck_assert_ptr_nonnull (plan);

  gtk_widget_activate_action (GTK_WIDGET (plan), "plan.drilled", NULL);
  ck_assert (fixture_until (is_question, NULL, 3000));
  gtk_dialog_response (question (), GTK_RESPONSE_ACCEPT);
  ck_assert (fixture_until (is_gone, &plan, 3000));
  ck_assert_int_eq (n_drilled, 1);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-plan");
  TCase *tc = tcase_create ("drill-plan");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, set_up, fixture_stop);
  tcase_add_test (tc, the_plan_is_shown);
  tcase_add_test (tc, it_asks_before_it_says_drilled);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
