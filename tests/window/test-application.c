/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "project/dw-project-writer.h"
#include "project/dw-recovery.h"
#include "window-fixture.h"

static bool
has_window (void *data)
{
  (void)data;
  return fixture_window () != NULL;
}

static bool
has_dialog (void *data)
{
  (void)data;
  return fixture_dialog () != NULL;
}

START_TEST (with_no_file_there_is_a_project_ready_to_edit)
{
  g_application_activate (G_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_window, NULL, 3000));
  const dw_project *project = dw_document_get_project (dw_window_get_document (fixture_window ()));
  ck_assert_uint_ge (dw_project_get_n_setups (project), 1);
  ck_assert_ptr_nonnull (dw_project_get_fitted (project));
}
END_TEST

START_TEST (a_file_is_open_once)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  ck_assert (dw_application_open_file (
      fixture_app (), dw_document_get_file (dw_window_get_document (window)), NULL));
  int n = 0;
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (fixture_app ())); l != NULL;
       l = l->next)
    n += DW_IS_WINDOW (l->data);
  ck_assert_int_eq (n, 1);
}
END_TEST

START_TEST (a_bad_file_is_explained_line_by_line)
{
  g_autofree char *path = g_build_filename (fixture_folder (), "bad.dampwright", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  ck_assert (g_file_set_contents (path,
                                  "<project xmlns=\"urn:dampwright:project:1\" version=\"1\">\n"
                                  "<conditions oil-c=\"999\"/></project>",
                                  -1, NULL));
  ck_assert (!dw_application_open_file (fixture_app (), file, NULL));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  ck_assert_ptr_nonnull (
      fixture_find_text (GTK_WIDGET (fixture_dialog ()), "bad.dampwright:2: oil-c \"999\""));
}
END_TEST

START_TEST (a_missing_file_is_explained)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/car.dampwright");
  ck_assert (!dw_application_open_file (fixture_app (), file, NULL));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  ck_assert_ptr_nonnull (
      fixture_find_text (GTK_WIDGET (fixture_dialog ()), "No such file or directory"));
}
END_TEST

/* What a program killed outright left behind. */
static void
leave_copy (const char *title)
{
  const pid_t child = fork ();
  if (child == 0)
    {
      dw_project *project = dw_project_new ();
      GBytes *text;
      dw_project_set_title (project, title);
      text = dw_project_write_text (project);
      dw_recovery *recovery = dw_recovery_new (dw_application_get_recovery_folder (fixture_app ()),
                                               NULL, NULL);
      dw_recovery_write (recovery, text, NULL);
      kill (getpid (), SIGKILL);
    }
  waitpid (child, NULL, 0);
}

START_TEST (unsaved_work_is_offered_and_recovered)
{
  leave_copy ("Rescued");
  g_application_activate (G_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_ACCEPT);
  fixture_settle ();
  bool found = false;
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (fixture_app ())); l != NULL;
       l = l->next)
    if (DW_IS_WINDOW (l->data))
      {
        DwDocument *document = dw_window_get_document (l->data);
        if (strcmp (dw_document_get_project (document)->title, "Rescued") == 0)
          found = dw_document_is_modified (document);
      }
  ck_assert (found);
}
END_TEST

START_TEST (unsaved_work_that_is_not_wanted_goes_away)
{
  leave_copy ("Unwanted");
  g_application_activate (G_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_REJECT);
  g_autoptr (GPtrArray) left = dw_recovery_find (
      dw_application_get_recovery_folder (fixture_app ()));
  ck_assert_uint_eq (left->len, 0);
}
END_TEST

START_TEST (looking_away_keeps_it_for_the_next_start)
{
  leave_copy ("Later");
  g_application_activate (G_APPLICATION (fixture_app ()));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_DELETE_EVENT);
  g_autoptr (GPtrArray) left = dw_recovery_find (
      dw_application_get_recovery_folder (fixture_app ()));
  ck_assert_uint_eq (left->len, 1);
}
END_TEST

START_TEST (about_carries_the_cautions)
{
  fixture_open ("club-final.dampwright");
  g_action_group_activate_action (G_ACTION_GROUP (fixture_app ()), "about", NULL);
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  ck_assert_ptr_nonnull (
      fixture_find_text (GTK_WIDGET (fixture_dialog ()), "not for vehicles that carry people"));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/application");
  TCase *tc = tcase_create ("application");
  fixture_case (s, tc);
  tcase_add_test (tc, with_no_file_there_is_a_project_ready_to_edit);
  tcase_add_test (tc, a_file_is_open_once);
  tcase_add_test (tc, a_bad_file_is_explained_line_by_line);
  tcase_add_test (tc, a_missing_file_is_explained);
  tcase_add_test (tc, unsaved_work_is_offered_and_recovered);
  tcase_add_test (tc, unsaved_work_that_is_not_wanted_goes_away);
  tcase_add_test (tc, looking_away_keeps_it_for_the_next_start);
  tcase_add_test (tc, about_carries_the_cautions);
  return run_suite (s);
}
