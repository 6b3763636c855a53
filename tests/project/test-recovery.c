/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "project/dw-recovery.h"
#include "test-support.h"

static char *base;
static char *folder;

static void
make_folder (void)
{
  base = g_dir_make_tmp ("dw-recovery-XXXXXX", NULL);
  ck_assert_ptr_nonnull (base);
  folder = g_build_filename (base, "not", "there", "yet", NULL);
}

static void
drop_folder (void)
{
  g_autofree char *command = g_strdup_printf ("rm -rf '%s'", base);
  ck_assert (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL));
  g_free (folder);
  g_free (base);
}

static void
write_text (dw_recovery *recovery, const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  ck_assert (dw_recovery_write (recovery, bytes, NULL));
}

START_TEST (a_copy_in_use_is_not_offered)
{
  g_autoptr (dw_recovery) recovery = dw_recovery_new (folder, "file:///a", NULL);
  ck_assert_ptr_nonnull (recovery);
  write_text (recovery, "text");
  g_autoptr (GPtrArray) found = dw_recovery_find (folder);
  ck_assert_uint_eq (found->len, 0);
}
END_TEST

START_TEST (a_place_given_up_leaves_nothing)
{
  dw_recovery *recovery = dw_recovery_new (folder, NULL, NULL);
  write_text (recovery, "text");
  dw_recovery_free (recovery);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  ck_assert_ptr_null (g_dir_read_name (dir));
}
END_TEST

/* A child writes a copy and is killed outright. */
static void
leave_copy (const char *origin, const char *text)
{
  int ready[2];
  char byte;
  ck_assert_int_eq (pipe (ready), 0);
  const pid_t child = fork ();
  if (child == 0)
    {
      dw_recovery *recovery = dw_recovery_new (folder, origin, NULL);
      if (text != NULL)
        write_text (recovery, text);
      if (write (ready[1], "x", 1) != 1)
        _exit (1);
      pause ();
      _exit (0);
    }
  ck_assert_int_eq (read (ready[0], &byte, 1), 1);
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  close (ready[0]);
  close (ready[1]);
}

START_TEST (a_killed_program_leaves_its_copy)
{
  leave_copy ("file:///home/car.dampwright", "the project");
  g_autoptr (GPtrArray) found = dw_recovery_find (folder);
  ck_assert_uint_eq (found->len, 1);
  const dw_recovered *left = g_ptr_array_index (found, 0);
  ck_assert_str_eq (left->origin, "file:///home/car.dampwright");
  g_autofree char *text = NULL;
  ck_assert (g_file_get_contents (left->copy, &text, NULL, NULL));
  ck_assert_str_eq (text, "the project");
  dw_recovered_remove (left);
  g_autoptr (GPtrArray) again = dw_recovery_find (folder);
  ck_assert_uint_eq (again->len, 0);
}
END_TEST

START_TEST (a_project_never_saved_has_no_origin)
{
  leave_copy (NULL, "text");
  g_autoptr (GPtrArray) found = dw_recovery_find (folder);
  ck_assert_uint_eq (found->len, 1);
  ck_assert_ptr_null (((dw_recovered *)g_ptr_array_index (found, 0))->origin);
}
END_TEST

START_TEST (a_lock_without_a_copy_is_swept_away)
{
  leave_copy (NULL, NULL);
  g_autoptr (GPtrArray) found = dw_recovery_find (folder);
  ck_assert_uint_eq (found->len, 0);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  ck_assert_ptr_null (g_dir_read_name (dir));
}
END_TEST

START_TEST (a_folder_that_is_not_there_has_no_copies)
{
  g_autoptr (GPtrArray) found = dw_recovery_find ("/nowhere/at/all");
  ck_assert_uint_eq (found->len, 0);
}
END_TEST

START_TEST (a_folder_that_cannot_be_made_is_an_error)
{
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (dw_recovery_new ("/dev/null/recovery", NULL, &error));
  ck_assert_ptr_nonnull (error);
  ck_assert_ptr_nonnull (strstr (error->message, "/dev/null/recovery"));
}
END_TEST

START_TEST (copies_are_for_the_user_only)
{
  g_autoptr (dw_recovery) recovery = dw_recovery_new (folder, NULL, NULL);
  GStatBuf status;
  write_text (recovery, "text");
  ck_assert_int_eq (g_stat (folder, &status), 0);
  ck_assert_int_eq (status.st_mode & 077, 0);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("project/recovery");
  TCase *tc = tcase_create ("recovery");
  tcase_add_checked_fixture (tc, make_folder, drop_folder);
  tcase_add_test (tc, a_copy_in_use_is_not_offered);
  tcase_add_test (tc, a_place_given_up_leaves_nothing);
  tcase_add_test (tc, a_killed_program_leaves_its_copy);
  tcase_add_test (tc, a_project_never_saved_has_no_origin);
  tcase_add_test (tc, a_lock_without_a_copy_is_swept_away);
  tcase_add_test (tc, a_folder_that_is_not_there_has_no_copies);
  tcase_add_test (tc, a_folder_that_cannot_be_made_is_an_error);
  tcase_add_test (tc, copies_are_for_the_user_only);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
