/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-file.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "project-samples.h"

static char *folder;

static void
enter (void)
{
  folder = sample_make_folder ();
}

static void
leave (void)
{
  sample_remove_folder (folder);
}

static char *
path_of (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static char *
read_all (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  ck_assert_msg (g_file_get_contents (path, &text, NULL, &error), "%s",
                 error != NULL ? error->message : "");
  return text;
}

static guint
count_files (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;
  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
save_good (const dw_project *project, const char *path)
{
  g_autoptr (GError) error = NULL;
  ck_assert_msg (dw_project_save (project, path, &error), "%s",
                 error != NULL ? error->message : "no reason");
  ck_assert_ptr_null (error);
}

/* Save to where it must fail; the message has this piece. */
static void
save_bad (const dw_project *project, const char *path, GQuark domain, int code, const char *piece)
{
  g_autoptr (GError) error = NULL;
  ck_assert (!dw_project_save (project, path, &error));
  ck_assert_ptr_nonnull (error);
  ck_assert_msg (strstr (error->message, piece) != NULL, "%s", error->message);
  ck_assert_msg (g_error_matches (error, domain, code), "%s", error->message);
}

static void
assert_holds (const char *path, const dw_project *project)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) loaded = dw_project_load (path, findings, &error);
  ck_assert_msg (loaded != NULL, "%s", error != NULL ? error->message : "findings");
  ck_assert (dw_project_equal (loaded, project));
}

START_TEST (what_was_saved_is_loaded)
{
  test_random random = test_random_new ((uint64_t)_i);
  g_autoptr (dw_project) project = sample_random_project (&random);
  g_autofree char *path = path_of ("club day ä.dampwright");
  save_good (project, path);
  assert_holds (path, project);
  ck_assert_uint_eq (count_files (), 1);
}
END_TEST

START_TEST (the_longest_texts_come_back)
{
  const dw_damper damper = dw_damper_defaults ();
  g_autoptr (dw_project) project = dw_project_new_empty ();
  GString *text = g_string_new (NULL);
  for (int i = 0; i < DW_PROJECT_MAX_ID; i++)
    g_string_append (text, "ä");
  ck_assert_int_eq (dw_project_add_setup (project, text->str, "", &damper, &damper), 0);
  for (int i = DW_PROJECT_MAX_ID; i < DW_PROJECT_MAX_TEXT; i++)
    g_string_append (text, "漢");
  dw_project_set_title (project, text->str);
  ck_assert (dw_project_rename_setup (project, 0, text->str));
  dw_parts_add_piston (dw_project_edit_parts (project), text->str, &damper.piston);
  ck_assert (dw_project_set_meeting (project, DW_MEETING_TRACK, text->str));
  for (int i = DW_PROJECT_MAX_TEXT; i < DW_PROJECT_MAX_NOTES; i++)
    g_string_append (text, i % 2 == 0 ? "\"" : "\n");
  ck_assert (dw_project_set_notes (project, text->str));
  ck_assert (dw_project_set_setup_notes (project, 0, text->str));
  g_autofree char *path = path_of ("a.dampwright");
  save_good (project, path);
  assert_holds (path, project);
  g_string_free (text, TRUE);
}
END_TEST

START_TEST (a_file_that_is_not_there_is_an_error_and_no_finding)
{
  g_autofree char *missing = path_of ("missing.dampwright");
  const char *const paths[] = { missing, folder };
  static const int codes[] = { G_FILE_ERROR_NOENT, G_FILE_ERROR_ISDIR };
  for (int i = 0; i < N_ENTRIES (codes); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (dw_findings) findings = dw_findings_new ();
      ck_assert_ptr_null (dw_project_load (paths[i], findings, &error));
      ck_assert (g_error_matches (error, G_FILE_ERROR, codes[i]));
      ck_assert_msg (strstr (error->message, paths[i]) != NULL, "%s", error->message);
      ck_assert_uint_eq (dw_findings_get_n (findings), 0);
    }
}
END_TEST

START_TEST (bad_content_is_a_finding_and_no_error_and_stays_as_it_is)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autofree char *path = path_of ("bad.dampwright");
  ck_assert (g_file_set_contents (path, "bore 16\n", -1, NULL));
  ck_assert_ptr_null (dw_project_load (path, findings, &error));
  ck_assert_ptr_null (error);
  ck_assert_uint_eq (dw_findings_get_n_errors (findings), 1);
  g_autofree char *text = read_all (path);
  ck_assert_str_eq (text, "bore 16\n");
}
END_TEST

START_TEST (an_endless_file_is_refused)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_findings) findings = dw_findings_new ();
  ck_assert_ptr_null (dw_project_load ("/dev/zero", findings, &error));
  ck_assert_ptr_null (error);
  ck_assert (sample_has_error (findings, "too large for a project"));
}
END_TEST

START_TEST (saving_replaces_the_old_content_and_keeps_its_permissions)
{
  static const int modes[] = { 0600, 0640, 0664, 0666, 0444 };
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("a.dampwright");
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  ck_assert_int_eq (chmod (path, (mode_t)modes[_i]), 0);
  const mode_t mask = umask (077);
  save_good (project, path);
  umask (mask);
  struct stat status;
  ck_assert_int_eq (stat (path, &status), 0);
  ck_assert_int_eq (status.st_mode & 07777, modes[_i]);
  assert_holds (path, project);
}
END_TEST

START_TEST (a_new_file_obeys_the_mask)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("a.dampwright");
  const mode_t mask = umask (027);
  save_good (project, path);
  umask (mask);
  struct stat status;
  ck_assert_int_eq (stat (path, &status), 0);
  ck_assert_int_eq (status.st_mode & 07777, 0640);
}
END_TEST

START_TEST (a_link_is_followed_and_stays_a_link)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("real.dampwright");
  g_autofree char *link = path_of ("link.dampwright");
  g_autofree char *second = path_of ("second.dampwright");
  ck_assert_int_eq (symlink ("real.dampwright", link), 0);
  ck_assert_int_eq (symlink (link, second), 0);
  save_good (project, second); /* the target is not there yet */
  assert_holds (path, project);
  dw_project_set_title (project, "again");
  save_good (project, second);
  assert_holds (path, project);
  ck_assert (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  ck_assert (g_file_test (second, G_FILE_TEST_IS_SYMLINK));
  ck_assert_uint_eq (count_files (), 3);
}
END_TEST

START_TEST (a_loop_of_links_is_an_error)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *a = path_of ("a.dampwright");
  g_autofree char *b = path_of ("b.dampwright");
  ck_assert_int_eq (symlink (a, b), 0);
  ck_assert_int_eq (symlink (b, a), 0);
  save_bad (project, a, G_FILE_ERROR, G_FILE_ERROR_LOOP, g_strerror (ELOOP));
}
END_TEST

START_TEST (what_is_no_regular_file_is_not_replaced)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *link = path_of ("full.dampwright");
  ck_assert_int_eq (symlink ("/dev/full", link), 0);
  save_bad (project, link, G_FILE_ERROR, G_FILE_ERROR_INVAL, "not a regular file");
  struct stat status;
  ck_assert_int_eq (stat ("/dev/full", &status), 0);
  ck_assert (S_ISCHR (status.st_mode));
  save_bad (project, folder, G_FILE_ERROR, G_FILE_ERROR_ISDIR, g_strerror (EISDIR));
  ck_assert (g_file_test (folder, G_FILE_TEST_IS_DIR));
}
END_TEST

START_TEST (a_place_that_can_not_be_is_an_error)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *file = path_of ("file");
  g_autofree char *below = path_of ("file/a.dampwright");
  g_autofree char *missing = path_of ("missing/a.dampwright");
  ck_assert (g_file_set_contents (file, "old", -1, NULL));
  save_bad (project, below, G_FILE_ERROR, G_FILE_ERROR_NOTDIR, g_strerror (ENOTDIR));
  save_bad (project, missing, G_FILE_ERROR, G_FILE_ERROR_NOENT, g_strerror (ENOENT));
  g_autofree char *text = read_all (file);
  ck_assert_str_eq (text, "old");
  ck_assert_uint_eq (count_files (), 1);
}
END_TEST

START_TEST (a_disk_that_runs_full_leaves_the_old_file)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("a.dampwright");
  save_good (project, path);
  g_autofree char *before = read_all (path);

  /* The kernel now cuts every file off at 1000 bytes, as a full disk would. */
  signal (SIGXFSZ, SIG_IGN);
  struct rlimit old;
  ck_assert_int_eq (getrlimit (RLIMIT_FSIZE, &old), 0);
  const struct rlimit limit = { 1000, old.rlim_max };
  ck_assert_int_eq (setrlimit (RLIMIT_FSIZE, &limit), 0);
  dw_project_set_title (project, "longer");
  g_autoptr (GError) error = NULL;
  const gboolean saved = dw_project_save (project, path, &error);
  setrlimit (RLIMIT_FSIZE, &old);
  g_autofree char *after = read_all (path);
  ck_assert (!saved);
  ck_assert (error->domain == G_FILE_ERROR);
  ck_assert_msg (strstr (error->message, g_strerror (EFBIG)) != NULL, "%s", error->message);
  ck_assert_str_eq (before, after);
  ck_assert_msg (count_files () == 1, "half a file was left behind");
}
END_TEST

/* Projects that no file may hold, as a program with a bug could make them. */
static void
spoil (dw_project *project, int what)
{
  dw_damper *damper = &dw_project_edit_setup (project, 0)->damper[DW_FRONT];
  switch (what)
    {
    case 0:
      damper->body.bore = NAN;
      break;
    case 1:
      damper->body.bore = INFINITY;
      break;
    case 2:
      damper->body.bore = 1.0;
      break;
    case 3:
      damper->body.rod = damper->body.bore;
      break;
    case 4:
      damper->piston.holes[0].count = 65;
      break;
    case 5:
      damper->gas.kind = DW_GAS_VENTED;
      damper->gas.volume = 0.0;
      break;
    case 6:
      project->speeds.middle = project->speeds.high;
      break;
    case 7:
      project->title[0] = '\x01';
      break;
    case 8:
      project->title[0] = '\xFF';
      break;
    case 9:
      project->fitted[0] = 'x';
      break;
    case 10:
      project->car.has_sprung_mass[DW_FRONT] = true;
      break;
    case 11:
      g_array_index (dw_project_edit_parts (project)->drills, dw_drill, 0).diameter = 0.0;
      break;
    case 12:
      damper->stance.has_droop = true;
      damper->stance.droop = -1.0;
      break;
    case 13:
      damper->body.has_filling = true;
      break;
    case 14:
      project->meeting[DW_MEETING_DRIVER][0] = '\n';
      break;
    case 15:
      project->notes[0] = '\r';
      break;
    case 16:
      dw_project_edit_setup (project, 0)->notes[0] = '\x7F';
      break;
    default:
      ck_abort_msg ("nothing to spoil %d", what);
    }
}

START_TEST (what_could_not_be_opened_again_is_not_saved)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("a.dampwright");
  dw_project_set_title (project, "title");
  dw_project_set_meeting (project, DW_MEETING_DRIVER, "driver");
  dw_project_set_notes (project, "notes");
  dw_project_set_setup_notes (project, 0, "notes");
  save_good (project, path);
  g_autofree char *before = read_all (path);
  spoil (project, _i);
  save_bad (project, path, DW_PROJECT_ERROR, DW_PROJECT_ERROR_CONTENT, "the project is not saved");
  g_autofree char *after = read_all (path);
  ck_assert_str_eq (before, after);
}
END_TEST

START_TEST (the_reason_names_value_and_range)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autofree char *path = path_of ("a.dampwright");
  spoil (project, 2);
  save_bad (project, path, DW_PROJECT_ERROR, DW_PROJECT_ERROR_CONTENT,
            "bore-mm \"1000\" is outside the allowed range 5 to 40 mm");
  ck_assert_uint_eq (count_files (), 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-project-file");
  TCase *tc = tcase_create ("file");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, enter, leave);
  tcase_add_loop_test (tc, what_was_saved_is_loaded, 0, 10);
  tcase_add_test (tc, the_longest_texts_come_back);
  tcase_add_test (tc, a_file_that_is_not_there_is_an_error_and_no_finding);
  tcase_add_test (tc, bad_content_is_a_finding_and_no_error_and_stays_as_it_is);
  tcase_add_test (tc, an_endless_file_is_refused);
  tcase_add_loop_test (tc, saving_replaces_the_old_content_and_keeps_its_permissions, 0, 5);
  tcase_add_test (tc, a_new_file_obeys_the_mask);
  tcase_add_test (tc, a_link_is_followed_and_stays_a_link);
  tcase_add_test (tc, a_loop_of_links_is_an_error);
  tcase_add_test (tc, what_is_no_regular_file_is_not_replaced);
  tcase_add_test (tc, a_place_that_can_not_be_is_an_error);
  tcase_add_test (tc, a_disk_that_runs_full_leaves_the_old_file);
  tcase_add_loop_test (tc, what_could_not_be_opened_again_is_not_saved, 0, 17);
  tcase_add_test (tc, the_reason_names_value_and_range);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
