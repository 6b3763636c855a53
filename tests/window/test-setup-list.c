/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "window-fixture.h"
#include "window/dw-setup-list.h"

START_TEST (lines_go_by_turns_and_the_fitted_one_is_its_own)
{
  DwWindow *window = fixture_open ("early-void.dampwright");
  const dw_project *project = dw_document_get_project (dw_window_get_document (window));
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  char ids[][8] = { "bladder", "vented", "opened" };
  for (int i = 0; i < N_ENTRIES (ids); i++)
    g_ptr_array_add (drawn, ids[i]);
  ck_assert_int_eq (dw_setup_slot (project, drawn, "vented"), DW_SLOT_FITTED);
  ck_assert_int_eq (dw_setup_slot (project, drawn, "bladder"), DW_SLOT_TRIAL_1);
  ck_assert_int_eq (dw_setup_slot (project, drawn, "opened"), DW_SLOT_TRIAL_2);
  ck_assert_int_eq (dw_setup_slot (project, drawn, "emulsion"), -1);
}
END_TEST

START_TEST (differences_are_told_in_words)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  const dw_project *project = dw_document_get_project (dw_window_get_document (window));
  const dw_setup *fitted = dw_project_find_setup (project, "baseline");
  g_autofree char *same = dw_setup_differences (fitted, dw_project_find_setup (project, "trial-1"),
                                                DW_FRONT, DW_UNITS_METRIC);
  g_autofree char *one = dw_setup_differences (fitted, dw_project_find_setup (project, "trial-1"),
                                               DW_REAR, DW_UNITS_METRIC);
  g_autofree char *two = dw_setup_differences (fitted, dw_project_find_setup (project, "trial-2"),
                                               DW_FRONT, DW_UNITS_METRIC);
  ck_assert_str_eq (same, "Front: as fitted");
  ck_assert_str_eq (one, "Rear: shim 1: thickness 0.15 mm → 0.1 mm");
  ck_assert_ptr_nonnull (strstr (two, "More than one thing differs"));
}
END_TEST

START_TEST (the_list_shows_what_the_selected_setup_changes)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "thickness 0.15 mm"));
  dw_window_select (window, "baseline");
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "This setup is in the car"));
}
END_TEST

static GtkWidget *
find_type (GtkWidget *widget, GType type, int *skip)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type) && (*skip)-- == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_type (child, type, skip);
      if (found != NULL)
        return found;
    }
  return NULL;
}

START_TEST (a_check_draws_and_takes_off)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  int third = 2;
  GtkWidget *check = find_type (GTK_WIDGET (window), GTK_TYPE_CHECK_BUTTON, &third);
  ck_assert_ptr_nonnull (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  ck_assert (dw_window_is_drawn (window, "trial-2"));
  int first = 0;
  check = find_type (GTK_WIDGET (window), GTK_TYPE_CHECK_BUTTON, &first);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  ck_assert (!dw_window_is_drawn (window, "baseline"));
}
END_TEST

START_TEST (a_row_selects_its_setup)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  int none = 0;
  GtkListBox *list = GTK_LIST_BOX (find_type (GTK_WIDGET (window), GTK_TYPE_LIST_BOX, &none));
  gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (list, 2));
  ck_assert_str_eq (dw_window_get_selected (window), "trial-2");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/setup-list");
  TCase *tc = tcase_create ("setup-list");
  fixture_case (s, tc);
  tcase_add_test (tc, lines_go_by_turns_and_the_fitted_one_is_its_own);
  tcase_add_test (tc, differences_are_told_in_words);
  tcase_add_test (tc, the_list_shows_what_the_selected_setup_changes);
  tcase_add_test (tc, a_check_draws_and_takes_off);
  tcase_add_test (tc, a_row_selects_its_setup);
  return run_suite (s);
}
