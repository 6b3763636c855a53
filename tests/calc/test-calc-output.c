/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-output.h"

#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "calc-run.h"

static char *folder;
static char *path;

static void
set_up (void)
{
  folder = calc_make_folder ();
  path = g_build_filename (folder, "result", NULL);
}

static void
tear_down (void)
{
  g_clear_pointer (&path, g_free);
  calc_remove_folder (folder);
}

static void
expect_content (const char *file, const char *expected)
{
  g_autofree char *text = NULL;
  ck_assert (g_file_get_contents (file, &text, NULL, NULL));
  ck_assert_str_eq (text, expected);
}

static mode_t
mode_of (const char *file)
{
  struct stat status;
  ck_assert_int_eq (stat (file, &status), 0);
  return status.st_mode & 07777;
}

static void
write_new (const char *file)
{
  g_autoptr (GError) error = NULL;
  dw_calc_output *output = dw_calc_output_open (file, &error);
  ck_assert_msg (output != NULL, "%s", error != NULL ? error->message : "");
  fputs ("new", dw_calc_output_get_file (output));
  ck_assert (!dw_calc_output_has_failed (output));
  ck_assert_msg (dw_calc_output_close (output, &error), "%s", error != NULL ? error->message : "");
}

START_TEST (a_new_file_is_made_under_the_mask)
{
  umask (027);
  write_new (path);
  expect_content (path, "new");
  ck_assert_int_eq ((int)mode_of (path), 0640);
  calc_expect_files (folder, 1);
}
END_TEST

START_TEST (an_old_file_is_replaced_and_keeps_its_mode)
{
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  ck_assert_int_eq (g_chmod (path, 0604), 0);
  write_new (path);
  expect_content (path, "new");
  ck_assert_int_eq ((int)mode_of (path), 0604);
  calc_expect_files (folder, 1);
}
END_TEST

/* A reader that has the old file open goes on reading that: it is never half new. */
START_TEST (the_old_file_is_there_until_the_end)
{
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  dw_calc_output *output = dw_calc_output_open (path, NULL);
  ck_assert_ptr_nonnull (output);
  fputs ("new", dw_calc_output_get_file (output));
  fflush (dw_calc_output_get_file (output));
  expect_content (path, "old");
  ck_assert (dw_calc_output_close (output, NULL));
  expect_content (path, "new");
}
END_TEST

START_TEST (what_is_discarded_leaves_nothing)
{
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  dw_calc_output *output = dw_calc_output_open (path, NULL);
  ck_assert_ptr_nonnull (output);
  fputs ("new", dw_calc_output_get_file (output));
  dw_calc_output_discard (output);
  dw_calc_output_discard (NULL);
  expect_content (path, "old");
  calc_expect_files (folder, 1);
}
END_TEST

START_TEST (a_link_is_followed_not_replaced)
{
  g_autofree char *link = g_build_filename (folder, "link", NULL);
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  ck_assert_int_eq (symlink ("result", link), 0);
  write_new (link);
  expect_content (path, "new");
  ck_assert (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
}
END_TEST

START_TEST (links_in_a_circle_are_refused)
{
  g_autofree char *link = g_build_filename (folder, "link", NULL);
  g_autoptr (GError) error = NULL;
  ck_assert_int_eq (symlink ("link", link), 0);
  ck_assert_ptr_null (dw_calc_output_open (link, &error));
  ck_assert (g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_LOOP));
}
END_TEST

START_TEST (a_folder_is_refused)
{
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (dw_calc_output_open (folder, &error));
  ck_assert (g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_ISDIR));
}
END_TEST

START_TEST (a_missing_folder_is_refused)
{
  g_autofree char *deep = g_build_filename (folder, "none", "result", NULL);
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (dw_calc_output_open (deep, &error));
  ck_assert (g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOENT));
}
END_TEST

START_TEST (a_device_is_written_to_directly)
{
  write_new ("/dev/null");
  struct stat status;
  ck_assert_int_eq (stat ("/dev/null", &status), 0);
  ck_assert (S_ISCHR (status.st_mode));
}
END_TEST

START_TEST (a_full_device_is_told_with_its_reason)
{
  g_autoptr (GError) error = NULL;
  dw_calc_output *output = dw_calc_output_open ("/dev/full", &error);
  ck_assert_ptr_nonnull (output);
  for (int i = 0; i < 100000; i++)
    fputs ("more than a buffer", dw_calc_output_get_file (output));
  ck_assert (dw_calc_output_has_failed (output));
  ck_assert (!dw_calc_output_close (output, &error));
  ck_assert_msg (g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOSPC), "%s", error->message);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-output");
  TCase *tc = tcase_create ("output");
  tcase_add_checked_fixture (tc, set_up, tear_down);
  tcase_add_test (tc, a_new_file_is_made_under_the_mask);
  tcase_add_test (tc, an_old_file_is_replaced_and_keeps_its_mode);
  tcase_add_test (tc, the_old_file_is_there_until_the_end);
  tcase_add_test (tc, what_is_discarded_leaves_nothing);
  tcase_add_test (tc, a_link_is_followed_not_replaced);
  tcase_add_test (tc, links_in_a_circle_are_refused);
  tcase_add_test (tc, a_folder_is_refused);
  tcase_add_test (tc, a_missing_folder_is_refused);
  tcase_add_test (tc, a_device_is_written_to_directly);
  tcase_add_test (tc, a_full_device_is_told_with_its_reason);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
