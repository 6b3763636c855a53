/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-quit.h"

#include <string.h>

#include "window-fixture.h"

static gboolean
rename_project (dw_project *project, gpointer data)
{
  (void)data;
  g_free (project->title);
  project->title = g_strdup ("Changed");
  return TRUE;
}

static void
change (DwWindow *window)
{
  dw_document_edit (dw_window_get_document (window), "Rename", NULL, rename_project, NULL);
}

static int
count_windows (void)
{
  int n = 0;
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (fixture_app ())); l != NULL;
       l = l->next)
    n += DW_IS_WINDOW (l->data);
  return n;
}

static int
count_dialogs (void)
{
  GListModel *all = gtk_window_get_toplevels ();
  int n = 0;
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      n += !DW_IS_WINDOW (window) && gtk_widget_get_visible (GTK_WIDGET (window));
    }
  return n;
}

static bool
no_window (void *data)
{
  (void)data;
  return count_windows () == 0;
}

static bool
one_window (void *data)
{
  (void)data;
  return count_windows () == 1;
}

static bool
has_dialog (void *data)
{
  (void)data;
  return fixture_dialog () != NULL;
}

static DwWindow *
window_of (const char *demo)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (fixture_app ())); l != NULL;
       l = l->next)
    if (DW_IS_WINDOW (l->data))
      {
        g_autofree char *name = dw_document_dup_name (dw_window_get_document (l->data));
        if (strstr (name, demo) != NULL)
          return l->data;
      }
  ck_abort_msg ("no window of %s", demo);
  return NULL;
}

static void
open_three (void)
{
  fixture_open ("club-final.dampwright");
  fixture_open ("smooth-indoor.dampwright");
  fixture_open ("early-void.dampwright");
  ck_assert_int_eq (count_windows (), 3);
}

static bool
file_is_changed (const char *demo)
{
  g_autofree char *path = g_build_filename (fixture_folder (), demo, NULL);
  char *text = test_file_read (path, NULL);
  const bool is_changed = strstr (text, "title=\"Changed\"") != NULL;
  free (text);
  return is_changed;
}

static void
quit_and_answer (int response)
{
  dw_quit (GTK_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  ck_assert_int_eq (count_dialogs (), 1);
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), response);
}

START_TEST (without_unsaved_work_everything_closes)
{
  open_three ();
  dw_quit (GTK_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (no_window, NULL, 3000));
}
END_TEST

START_TEST (one_question_is_asked_for_all)
{
  open_three ();
  change (window_of ("club-final"));
  change (window_of ("smooth-indoor"));
  dw_quit (GTK_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  GtkWidget *dialog = GTK_WIDGET (fixture_dialog ());
  ck_assert_int_eq (count_dialogs (), 1);
  ck_assert_ptr_nonnull (fixture_find_text (dialog, "2 projects"));
  ck_assert_ptr_nonnull (fixture_find_text (dialog, "club-final"));
  ck_assert_ptr_nonnull (fixture_find_text (dialog, "smooth-indoor"));
  ck_assert_ptr_null (fixture_find_text (dialog, "early-void"));
  gtk_dialog_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  fixture_settle ();
  ck_assert_int_eq (count_windows (), 3);
}
END_TEST

START_TEST (all_are_saved)
{
  open_three ();
  change (window_of ("club-final"));
  change (window_of ("smooth-indoor"));
  quit_and_answer (GTK_RESPONSE_ACCEPT);
  ck_assert (fixture_until (no_window, NULL, 5000));
  ck_assert (file_is_changed ("club-final.dampwright"));
  ck_assert (file_is_changed ("smooth-indoor.dampwright"));
  ck_assert (!file_is_changed ("early-void.dampwright"));
}
END_TEST

START_TEST (all_are_discarded)
{
  open_three ();
  change (window_of ("club-final"));
  change (window_of ("smooth-indoor"));
  quit_and_answer (GTK_RESPONSE_REJECT);
  ck_assert (fixture_until (no_window, NULL, 5000));
  ck_assert (!file_is_changed ("club-final.dampwright"));
  ck_assert (!file_is_changed ("smooth-indoor.dampwright"));
}
END_TEST

START_TEST (a_single_one_asks_itself)
{
  open_three ();
  change (window_of ("club-final"));
  dw_quit (GTK_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  ck_assert (fixture_until (one_window, NULL, 3000));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (fixture_dialog ()), "club-final"));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/quit");
  TCase *tc = tcase_create ("quit");
  fixture_case (s, tc);
  tcase_add_test (tc, without_unsaved_work_everything_closes);
  tcase_add_test (tc, one_question_is_asked_for_all);
  tcase_add_test (tc, all_are_saved);
  tcase_add_test (tc, all_are_discarded);
  tcase_add_test (tc, a_single_one_asks_itself);
  return run_suite (s);
}
