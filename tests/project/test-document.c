/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "project/dw-document.h"
#include "project/dw-project-file.h"
#include "project/dw-project-writer.h"
#include "project/dw-recovery.h"
#include "test-support.h"

static char *folder;
static int n_changed, n_state, n_file;

static void
make_folder (void)
{
  folder = g_dir_make_tmp ("dw-document-XXXXXX", NULL);
  ck_assert_ptr_nonnull (folder);
  n_changed = n_state = n_file = 0;
}

static void
drop_folder (void)
{
  g_autofree char *command = g_strdup_printf ("rm -rf '%s'", folder);
  ck_assert (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL));
  g_free (folder);
}

static void
count (DwDocument *doc, gpointer counter)
{
  (void)doc;
  ++*(int *)counter;
}

static void
listen (DwDocument *doc)
{
  g_signal_connect (doc, "changed", G_CALLBACK (count), &n_changed);
  g_signal_connect (doc, "state-changed", G_CALLBACK (count), &n_state);
  g_signal_connect (doc, "file-changed", G_CALLBACK (count), &n_file);
}

static DwDocument *
new_doc (void)
{
  g_autoptr (dw_project) project = dw_project_new ();
  DwDocument *doc = dw_document_new (project);
  listen (doc);
  return doc;
}

static gboolean
set_title (dw_project *project, gpointer data)
{
  dw_project_set_title (project, data);
  return TRUE;
}

static gboolean
refuse (dw_project *project, gpointer data)
{
  dw_project_set_title (project, data);
  return FALSE;
}

static gboolean
retitle (DwDocument *doc, const char *title, const char *merge)
{
  g_autofree char *text = g_strdup (title);
  return dw_document_edit (doc, "Change title", merge, set_title, text);
}

static GFile *
file_named (const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  return g_file_new_for_path (path);
}

typedef struct
{
  gboolean done, saved;
  GError *error;
} save_result;

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  save_result *r = data;
  r->saved = dw_document_save_finish (DW_DOCUMENT (source), result, &r->error);
  r->done = TRUE;
}

static gboolean
save_to (DwDocument *doc, GFile *file, GError **error)
{
  save_result r = { 0 };
  dw_document_save_async (doc, file, NULL, on_saved, &r);
  while (!r.done)
    g_main_context_iteration (NULL, TRUE);
  if (r.error != NULL)
    g_propagate_error (error, r.error);
  return r.saved;
}

static void
run_for (guint ms)
{
  const gint64 end = g_get_monotonic_time () + (gint64)ms * 1000;
  while (g_get_monotonic_time () < end)
    {
      while (g_main_context_iteration (NULL, FALSE))
        ;
      g_usleep (2000);
    }
}

START_TEST (edits_are_recorded_and_announced)
{
  g_autoptr (DwDocument) doc = new_doc ();
  const guint64 before = dw_document_get_state (doc);
  ck_assert (!dw_document_is_modified (doc));
  ck_assert (retitle (doc, "Other", NULL));
  ck_assert_str_eq (dw_document_get_project (doc)->title, "Other");
  ck_assert (dw_document_is_modified (doc));
  ck_assert (dw_document_get_state (doc) != before);
  ck_assert_str_eq (dw_document_get_undo_label (doc), "Change title");
  ck_assert_int_eq (n_changed, 1);
  ck_assert_int_eq (n_state, 1);
}
END_TEST

START_TEST (edits_that_change_nothing_are_silent)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autofree char *same = g_strdup (dw_document_get_project (doc)->title);
  char refused[] = "Refused";
  ck_assert (!retitle (doc, same, NULL));
  ck_assert (!dw_document_edit (doc, "No", NULL, refuse, refused));
  ck_assert_int_eq (n_changed, 0);
  ck_assert_str_eq (dw_document_get_project (doc)->title, same);
  ck_assert (!dw_document_is_modified (doc));
}
END_TEST

START_TEST (undo_and_redo_walk_the_states)
{
  g_autoptr (DwDocument) doc = new_doc ();
  ck_assert (!dw_document_undo (doc) && !dw_document_redo (doc));
  retitle (doc, "A", NULL);
  retitle (doc, "B", NULL);
  ck_assert (dw_document_undo (doc));
  ck_assert_str_eq (dw_document_get_project (doc)->title, "A");
  ck_assert_str_eq (dw_document_get_redo_label (doc), "Change title");
  ck_assert (dw_document_undo (doc));
  ck_assert (!dw_document_is_modified (doc));
  ck_assert (dw_document_redo (doc) && dw_document_redo (doc));
  ck_assert_str_eq (dw_document_get_project (doc)->title, "B");
  ck_assert_int_eq (n_changed, 6);
}
END_TEST

START_TEST (saving_clears_the_mark_and_takes_the_file)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autoptr (GFile) file = file_named ("car.dampwright");
  g_autoptr (dw_findings) findings = dw_findings_new ();
  retitle (doc, "Saved", NULL);
  ck_assert (save_to (doc, file, NULL));
  ck_assert (!dw_document_is_modified (doc));
  ck_assert (g_file_equal (dw_document_get_file (doc), file));
  g_autofree char *name = dw_document_dup_name (doc);
  ck_assert_str_eq (name, "car.dampwright");
  g_autoptr (DwDocument) again = dw_document_open (file, findings, NULL);
  ck_assert_ptr_nonnull (again);
  ck_assert (dw_project_equal (dw_document_get_project (again), dw_document_get_project (doc)));
  dw_document_undo (doc);
  ck_assert (dw_document_is_modified (doc));
  dw_document_redo (doc);
  ck_assert (!dw_document_is_modified (doc));
}
END_TEST

START_TEST (what_is_edited_during_a_save_stays_modified)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autoptr (GFile) file = file_named ("car.dampwright");
  save_result r = { 0 };
  retitle (doc, "In the file", NULL);
  dw_document_save_async (doc, file, NULL, on_saved, &r);
  retitle (doc, "After", NULL);
  while (!r.done)
    g_main_context_iteration (NULL, TRUE);
  ck_assert (r.saved);
  ck_assert (dw_document_is_modified (doc));
  dw_document_undo (doc);
  ck_assert (!dw_document_is_modified (doc));
}
END_TEST

START_TEST (a_failed_save_changes_nothing)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autoptr (GFile) good = file_named ("car.dampwright");
  g_autoptr (GFile) bad = g_file_new_for_path ("/dev/null/car.dampwright");
  g_autoptr (GFile) remote = g_file_new_for_uri ("nowhere://host/car.dampwright");
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) no_path = NULL;
  retitle (doc, "One", NULL);
  ck_assert (save_to (doc, good, NULL));
  retitle (doc, "Two", NULL);
  ck_assert (!save_to (doc, bad, &error));
  ck_assert_ptr_nonnull (error);
  ck_assert (!save_to (doc, remote, &no_path));
  ck_assert (dw_document_is_modified (doc));
  ck_assert (g_file_equal (dw_document_get_file (doc), good));
}
END_TEST

START_TEST (a_change_from_outside_is_noticed_our_own_save_is_not)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autoptr (GFile) file = file_named ("car.dampwright");
  g_autoptr (dw_findings) findings = dw_findings_new ();
  retitle (doc, "Mine", NULL);
  ck_assert (save_to (doc, file, NULL));
  run_for (300);
  ck_assert_int_eq (n_file, 0);

  g_autoptr (dw_project) other = dw_project_copy (dw_document_get_project (doc));
  g_autofree char *path = g_file_get_path (file);
  dw_project_set_title (other, "Somebody else's");
  ck_assert (dw_project_save (other, path, NULL));
  for (int i = 0; i < 100 && n_file == 0; i++)
    run_for (50);
  ck_assert_int_eq (n_file, 1);

  ck_assert (dw_document_reload (doc, "Load again", findings, NULL));
  ck_assert_str_eq (dw_document_get_project (doc)->title, "Somebody else's");
  ck_assert (!dw_document_is_modified (doc));
  ck_assert_str_eq (dw_document_get_undo_label (doc), "Load again");
}
END_TEST

START_TEST (a_bad_file_is_not_opened)
{
  g_autoptr (GFile) file = file_named ("bad.dampwright");
  g_autoptr (GFile) missing = file_named ("missing.dampwright");
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (GError) error = NULL;
  ck_assert (g_file_set_contents (path, "<nonsense/>", -1, NULL));
  ck_assert_ptr_null (dw_document_open (file, findings, &error));
  ck_assert_ptr_null (error);
  ck_assert_uint_gt (dw_findings_get_n_errors (findings), 0);
  ck_assert_ptr_null (dw_document_open (missing, findings, &error));
  ck_assert_ptr_nonnull (error);
}
END_TEST

/* ---- recovery ---- */

static guint
n_files_in (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  guint n = 0;
  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

START_TEST (recovery_copy_comes_with_an_edit_and_goes_with_a_save)
{
  g_autoptr (DwDocument) doc = new_doc ();
  g_autoptr (GFile) file = file_named ("car.dampwright");
  g_autofree char *state = g_build_filename (folder, "state", NULL);
  dw_document_keep_recovery (doc, state);
  dw_document_flush_recovery (doc);
  ck_assert_uint_eq (n_files_in (state), 0);
  retitle (doc, "Precious", NULL);
  dw_document_flush_recovery (doc);
  ck_assert_uint_eq (n_files_in (state), 2);
  ck_assert (save_to (doc, file, NULL));
  ck_assert_uint_eq (n_files_in (state), 0);
  retitle (doc, "Again", NULL);
  dw_document_flush_recovery (doc);
  ck_assert_uint_eq (n_files_in (state), 2);
  dw_document_undo (doc);
  ck_assert_uint_eq (n_files_in (state), 0);
}
END_TEST

/* Whether a copy is there whole: it gets its name when all of it is written. */
static bool
has_copy (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".dampwright"))
      return true;
  return false;
}

/* kill -9 within seconds of an edit: the copy holds it, bit for bit. */
START_TEST (a_killed_program_loses_no_more_than_seconds)
{
  g_autofree char *state = g_build_filename (folder, "state", NULL);
  const pid_t child = fork ();
  if (child == 0)
    {
      DwDocument *doc = new_doc ();
      dw_document_keep_recovery (doc, state);
      retitle (doc, "Unsaved work", NULL);
      run_for (60000);
      _exit (0);
    }
  bool copied = false;
  for (int i = 0; i < 100 && !copied; i++)
    {
      g_usleep (100000);
      copied = has_copy (state);
    }
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  ck_assert (copied);

  g_autoptr (GPtrArray) left = dw_recovery_find (state);
  ck_assert_uint_eq (left->len, 1);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_load (
      ((dw_recovered *)g_ptr_array_index (left, 0))->copy, findings, NULL);
  ck_assert_ptr_nonnull (project);
  ck_assert_str_eq (project->title, "Unsaved work");
  g_autoptr (DwDocument) again = dw_document_new_recovered (project, NULL);
  ck_assert (dw_document_is_modified (again));
}
END_TEST

START_TEST (no_room_for_a_copy_does_not_stop_the_work)
{
  g_autoptr (DwDocument) doc = new_doc ();
  dw_document_keep_recovery (doc, "/dev/null/state");
  ck_assert (retitle (doc, "Goes on", NULL));
  dw_document_flush_recovery (doc);
  ck_assert_str_eq (dw_document_get_project (doc)->title, "Goes on");
}
END_TEST

START_TEST (a_document_is_finalised)
{
  DwDocument *doc = new_doc ();
  retitle (doc, "x", NULL);
  g_object_add_weak_pointer (G_OBJECT (doc), (gpointer *)&doc);
  g_object_unref (doc);
  ck_assert_ptr_null (doc);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("project/document");
  TCase *tc = tcase_create ("document");
  tcase_set_timeout (tc, 30);
  tcase_add_checked_fixture (tc, make_folder, drop_folder);
  tcase_add_test (tc, edits_are_recorded_and_announced);
  tcase_add_test (tc, edits_that_change_nothing_are_silent);
  tcase_add_test (tc, undo_and_redo_walk_the_states);
  tcase_add_test (tc, saving_clears_the_mark_and_takes_the_file);
  tcase_add_test (tc, what_is_edited_during_a_save_stays_modified);
  tcase_add_test (tc, a_failed_save_changes_nothing);
  tcase_add_test (tc, a_change_from_outside_is_noticed_our_own_save_is_not);
  tcase_add_test (tc, a_bad_file_is_not_opened);
  tcase_add_test (tc, recovery_copy_comes_with_an_edit_and_goes_with_a_save);
  tcase_add_test (tc, a_killed_program_loses_no_more_than_seconds);
  tcase_add_test (tc, no_room_for_a_copy_does_not_stop_the_work);
  tcase_add_test (tc, a_document_is_finalised);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
