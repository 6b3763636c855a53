/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "project/dw-project-file.h"
#include "project/dw-project-writer.h"
#include "window-fixture.h"

static void
act (DwWindow *window, const char *action)
{
  ck_assert_msg (gtk_widget_activate_action (GTK_WIDGET (window), action, NULL), "%s", action);
}

static const dw_project *
project_of (DwWindow *window)
{
  return dw_document_get_project (dw_window_get_document (window));
}

static bool
is_saved (void *data)
{
  return !dw_document_is_modified (dw_window_get_document (data));
}

static bool
has_dialog (void *data)
{
  (void)data;
  return fixture_dialog () != NULL;
}

START_TEST (a_trial_is_a_copy_that_is_drawn_and_edited)
{
  DwWindow *window = fixture_open ("smooth-indoor.dampwright");
  act (window, "win.setup-duplicate");
  const dw_project *project = project_of (window);
  ck_assert_uint_eq (dw_project_get_n_setups (project), 4);
  const dw_setup *made = dw_project_find_setup (project, dw_window_get_selected (window));
  ck_assert_str_eq (made->name, "Three smaller holes in front, a trial");
  ck_assert (dw_damper_equal (&made->damper[DW_FRONT],
                              &dw_project_find_setup (project, "three-holes")->damper[DW_FRONT]));
  ck_assert_str_ne (dw_project_find_setup (project, "three-holes")->notes, "");
  ck_assert_msg (*made->notes == '\0', "what was noted is about the other setup");
  ck_assert (dw_window_is_drawn (window, made->id));
  ck_assert_int_eq (dw_project_find_index (project, made->id), 2);
}
END_TEST

START_TEST (fitting_keeps_the_old_setup)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  act (window, "win.setup-fit");
  ck_assert_str_eq (project_of (window)->fitted, "trial-1");
  ck_assert_ptr_nonnull (dw_project_find_setup (project_of (window), "baseline"));
  ck_assert_str_eq (dw_document_get_undo_label (dw_window_get_document (window)), "Fit this setup");
  /* nothing to fit any more */
  act (window, "win.setup-fit");
  act (window, "win.undo");
  ck_assert_str_eq (project_of (window)->fitted, "baseline");
}
END_TEST

START_TEST (setups_move_up_and_down_and_stop_at_the_ends)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  act (window, "win.setup-up");
  ck_assert_int_eq (dw_project_find_index (project_of (window), "trial-1"), 0);
  act (window, "win.setup-down");
  act (window, "win.setup-down");
  act (window, "win.setup-down");
  ck_assert_int_eq (dw_project_find_index (project_of (window), "trial-1"), 2);
}
END_TEST

START_TEST (the_last_setup_cannot_be_deleted)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  for (int i = 0; i < 5; i++)
    gtk_widget_activate_action (GTK_WIDGET (window), "win.setup-delete", NULL);
  ck_assert_uint_eq (dw_project_get_n_setups (project_of (window)), 1);
}
END_TEST

START_TEST (renaming_goes_through_a_dialog)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  act (window, "win.setup-rename");
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  GtkWindow *dialog = fixture_dialog ();
  GtkEditable *entry = g_object_get_data (G_OBJECT (dialog), "entry");
  ck_assert_str_eq (gtk_editable_get_text (entry), "Rear quicker on rebound");
  gtk_editable_set_text (entry, "Other name");
  gtk_dialog_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  ck_assert_str_eq (dw_project_find_setup (project_of (window), "trial-1")->name, "Other name");
}
END_TEST

START_TEST (the_keys_are_listed_when_asked_for)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  ck_assert_ptr_null (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)));
  for (int i = 0; i < 2; i++)
    {
      act (window, "win.show-help-overlay");
      ck_assert (fixture_until (has_dialog, NULL, 3000));
      GtkWindow *overlay = fixture_dialog ();
      ck_assert (GTK_IS_SHORTCUTS_WINDOW (overlay));
      ck_assert_ptr_eq (gtk_window_get_transient_for (overlay), window);
      ck_assert_ptr_eq (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)),
                        overlay);
      gtk_window_close (overlay);
      fixture_settle ();
      ck_assert_ptr_null (fixture_dialog ());
    }
}
END_TEST

START_TEST (saving_writes_the_file)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  act (window, "win.setup-fit");
  act (window, "win.save");
  ck_assert (fixture_until (is_saved, window, 5000));
  char *text = test_file_read (path, NULL);
  ck_assert_ptr_nonnull (strstr (text, "fitted=\"trial-1\""));
  free (text);
}
END_TEST

/* ---- saves that fail ---- */

static bool
tells_failure (void *data)
{
  return fixture_find_text (data, "Not saved:") != NULL;
}

static bool
says_changed (void *data)
{
  return fixture_find_text (data, "Another program has changed the file") != NULL;
}

/* The reason is shown, the changes are still there and still marked. */
static void
assert_failure_is_told (DwWindow *window, const char *reason)
{
  ck_assert (fixture_until (tells_failure, window, 20000));
  GtkWidget *label = fixture_find_text (GTK_WIDGET (window), "Not saved:");
  fixture_settle ();
  ck_assert_msg (strstr (gtk_label_get_text (GTK_LABEL (label)), reason) != NULL, "%s",
                 gtk_label_get_text (GTK_LABEL (label)));
  ck_assert (gtk_widget_get_mapped (label));
  ck_assert (dw_document_is_modified (dw_window_get_document (window)));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "• "));
  ck_assert_str_eq (project_of (window)->fitted, "trial-1");
}

/* Files whose names begin with the project's: itself, and what a save left beside it. */
static guint
count_files (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *base = g_path_get_basename (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n += strstr (name, base) != NULL;
  return n;
}

/* A folder in the file's place cannot be replaced by anybody, not even by root. */
START_TEST (a_save_that_fails_is_told_and_nothing_is_lost)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  act (window, "win.setup-fit");
  ck_assert_int_eq (remove (path), 0);
  ck_assert_int_eq (g_mkdir_with_parents (path, 0700), 0);
  act (window, "win.save");
  assert_failure_is_told (window, g_strerror (EISDIR));
  /* that the file was changed may be told before or after: both stay to be read */
  ck_assert (fixture_until (says_changed, window, 20000));
  assert_failure_is_told (window, g_strerror (EISDIR));
}
END_TEST

/* The kernel cuts every file off at 1000 bytes: writing fails part-way, as on a full disk, for root
 * as well. Each test is a process of its own, so that nothing else is cut off. */
START_TEST (a_disk_that_runs_full_keeps_the_old_file)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  char *before = test_file_read (path, NULL);
  struct rlimit old;

  act (window, "win.setup-fit");
  fixture_settle ();
  signal (SIGXFSZ, SIG_IGN);
  ck_assert_int_eq (getrlimit (RLIMIT_FSIZE, &old), 0);
  const struct rlimit limit = { 1000, old.rlim_max };
  ck_assert_int_eq (setrlimit (RLIMIT_FSIZE, &limit), 0);
  act (window, "win.save");
  const bool told = fixture_until (tells_failure, window, 20000);
  ck_assert_int_eq (setrlimit (RLIMIT_FSIZE, &old), 0);
  ck_assert (told);
  assert_failure_is_told (window, g_strerror (EFBIG));
  char *after = test_file_read (path, NULL);
  ck_assert_str_eq (before, after);
  ck_assert_msg (count_files (path) == 1, "half a file was left behind");
  free (before);
  free (after);

  /* once there is room it is saved, and the line above the pages goes */
  act (window, "win.save");
  ck_assert (fixture_until (is_saved, window, 5000));
}
END_TEST

/* The demo in a folder of its own below the test's, with a change that is not saved. */
static DwWindow *
open_in_folder (const char *folder, const char *path)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *first = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  g_autoptr (GFile) file = g_file_new_for_path (path);

  ck_assert_int_eq (g_mkdir (folder, 0700), 0);
  ck_assert_int_eq (g_rename (first, path), 0);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  ck_assert (dw_application_open_file (fixture_app (), file, NULL));
  fixture_settle ();
  window = fixture_window ();
  act (window, "win.setup-fit");
  return window;
}

/* A folder that went away takes no file, whoever asks; one that may not be written would take
 * root's. What lies in its place is a file, below which there can be none. */
START_TEST (a_folder_that_takes_no_file_is_told)
{
  g_autofree char *folder = g_build_filename (fixture_folder (), "stick", NULL);
  g_autofree char *path = g_build_filename (folder, "a.dampwright", NULL);
  DwWindow *window = open_in_folder (folder, path);

  ck_assert_int_eq (g_remove (path), 0);
  ck_assert_int_eq (g_rmdir (folder), 0);
  ck_assert (g_file_set_contents (folder, "old", -1, NULL));
  act (window, "win.save");
  assert_failure_is_told (window, g_strerror (ENOTDIR));
  char *text = test_file_read (folder, NULL);
  ck_assert_str_eq (text, "old");
  free (text);
}
END_TEST

/* As a user meets it. Root may write everywhere: then it is saved, and the test above stands alone. */
START_TEST (a_folder_that_may_not_be_written_is_told)
{
  g_autofree char *folder = g_build_filename (fixture_folder (), "stick", NULL);
  g_autofree char *path = g_build_filename (folder, "a.dampwright", NULL);
  DwWindow *window = open_in_folder (folder, path);
  char *before = test_file_read (path, NULL);

  ck_assert_int_eq (g_chmod (folder, 0500), 0);
  const bool may_write = g_access (folder, W_OK) == 0;
  act (window, "win.save");
  if (may_write)
    ck_assert (fixture_until (is_saved, window, 5000));
  else
    assert_failure_is_told (window, g_strerror (EACCES));
  ck_assert_int_eq (g_chmod (folder, 0700), 0);
  char *after = test_file_read (path, NULL);
  ck_assert ((strcmp (before, after) == 0) == !may_write);
  ck_assert_uint_eq (count_files (path), 1);
  free (before);
  free (after);
}
END_TEST

static bool
is_told (void *data)
{
  return fixture_find_text (data, "Another program has changed the file") != NULL;
}

START_TEST (a_file_changed_elsewhere_can_be_loaded_again)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  g_autoptr (dw_project) other = dw_project_copy (project_of (window));
  dw_project_set_title (other, "By somebody else");
  ck_assert (dw_project_save (other, path, NULL));
  ck_assert (fixture_until (is_told, window, 8000));
  act (window, "win.reload");
  ck_assert_str_eq (project_of (window)->title, "By somebody else");
}
END_TEST

/* Any 2,000 actions, then undo to the start: the bytes are those of the start. */
START_TEST (a_random_walk_comes_back_to_the_first_byte)
{
  static const char *const actions[]
      = { "win.setup-duplicate", "win.setup-delete", "win.setup-up", "win.setup-down",
          "win.setup-fit",       "win.undo",         "win.redo",     "win.chart-whole" };
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autoptr (GBytes) before = dw_project_write_text (project_of (window));
  test_random r = test_random_new (1);

  for (int i = 0; i < 2000; i++)
    {
      const dw_project *project = project_of (window);
      const int n = (int)dw_project_get_n_setups (project);
      const dw_setup *any = dw_project_get_setup (project, (guint)test_random_int (&r, 0, n - 1));
      g_autofree char *id = g_strdup (any->id);
      dw_window_select (window, id);
      if (i % 7 == 0)
        dw_window_draw_setup (window, id, !dw_window_is_drawn (window, id));
      /* not so many setups that undo's memory of 500 steps is what is tested */
      const int last = n > 12 ? 1 : 0;
      gtk_widget_activate_action (
          GTK_WIDGET (window), actions[test_random_int (&r, last, N_ENTRIES (actions) - 1)], NULL);
      if (i % 400 == 399)
        while (dw_document_undo (dw_window_get_document (window)))
          ;
    }
  while (dw_document_undo (dw_window_get_document (window)))
    ;
  g_autoptr (GBytes) after = dw_project_write_text (project_of (window));
  ck_assert (g_bytes_equal (before, after));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/window-actions");
  TCase *tc = tcase_create ("actions");
  fixture_case (s, tc);
  tcase_add_test (tc, a_trial_is_a_copy_that_is_drawn_and_edited);
  tcase_add_test (tc, fitting_keeps_the_old_setup);
  tcase_add_test (tc, setups_move_up_and_down_and_stop_at_the_ends);
  tcase_add_test (tc, the_last_setup_cannot_be_deleted);
  tcase_add_test (tc, renaming_goes_through_a_dialog);
  tcase_add_test (tc, the_keys_are_listed_when_asked_for);
  tcase_add_test (tc, saving_writes_the_file);
  tcase_add_test (tc, a_save_that_fails_is_told_and_nothing_is_lost);
  tcase_add_test (tc, a_disk_that_runs_full_keeps_the_old_file);
  tcase_add_test (tc, a_folder_that_takes_no_file_is_told);
  tcase_add_test (tc, a_folder_that_may_not_be_written_is_told);
  tcase_add_test (tc, a_file_changed_elsewhere_can_be_loaded_again);
  tcase_add_test (tc, a_random_walk_comes_back_to_the_first_byte);
  return run_suite (s);
}
