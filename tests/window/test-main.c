/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program itself, as a user starts it. */
#include <signal.h>
#include <string.h>

#include "project/dw-recovery.h"
#include "window-fixture.h"

/* [ms] a start may take here, under the sanitizers too. */
#define START_MS 30000

typedef struct
{
  GSubprocess *process;
  char *folder; /* home and all */
} program;

static program
start (const char *argument)
{
  program p = { .folder = g_dir_make_tmp ("dw-main-XXXXXX", NULL) };
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (
      G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE);

  ck_assert_ptr_nonnull (g_getenv ("DAMPWRIGHT_PROGRAM"));
  g_subprocess_launcher_setenv (launcher, "HOME", p.folder, TRUE);
  g_subprocess_launcher_setenv (launcher, "XDG_STATE_HOME", p.folder, TRUE);
  g_subprocess_launcher_setenv (launcher, "XDG_DATA_HOME", p.folder, TRUE);
  /* nobody else's program of the same name may answer */
  g_subprocess_launcher_unsetenv (launcher, "DBUS_SESSION_BUS_ADDRESS");
  p.process = g_subprocess_launcher_spawn (launcher, &error, g_getenv ("DAMPWRIGHT_PROGRAM"),
                                           argument, NULL);
  ck_assert_msg (p.process != NULL, "%s", error != NULL ? error->message : "");
  return p;
}

static void
drop (program *p)
{
  const char *argv[] = { "rm", "-rf", p->folder, NULL };
  g_spawn_sync (NULL, (char **)(gpointer)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                NULL, NULL);
  g_object_unref (p->process);
  g_free (p->folder);
}

START_TEST (help_names_the_files)
{
  program p = start ("--help");
  g_autofree char *out = NULL;
  g_autofree char *err = NULL;

  ck_assert (g_subprocess_communicate_utf8 (p.process, NULL, NULL, &out, &err, NULL));
  ck_assert (g_subprocess_get_if_exited (p.process));
  ck_assert_int_eq (g_subprocess_get_exit_status (p.process), 0);
  ck_assert_ptr_nonnull (strstr (out, "dampwright"));
  ck_assert_str_eq (err, "");
  drop (&p);
}
END_TEST

START_TEST (an_unknown_option_is_refused)
{
  program p = start ("--no-such-option");
  g_autofree char *err = NULL;

  ck_assert (g_subprocess_communicate_utf8 (p.process, NULL, NULL, NULL, &err, NULL));
  ck_assert (g_subprocess_get_if_exited (p.process));
  ck_assert_int_ne (g_subprocess_get_exit_status (p.process), 0);
  ck_assert_ptr_nonnull (strstr (err, "no-such-option"));
  drop (&p);
}
END_TEST

/* Whether a recently used file was noted: the last thing that opening a file does. */
static bool
is_noted (void *folder)
{
  g_autofree char *path = g_build_filename (folder, "recently-used.xbel", NULL);
  return g_file_test (path, G_FILE_TEST_EXISTS);
}

START_TEST (a_project_is_opened_without_a_word)
{
  g_autofree char *demo = test_source_path ("demo/club-final.dampwright");
  program p = start (demo);
  g_autofree char *err = NULL;

  const bool opened = fixture_until (is_noted, p.folder, START_MS);
  g_subprocess_send_signal (p.process, SIGKILL);
  ck_assert (g_subprocess_communicate_utf8 (p.process, NULL, NULL, NULL, &err, NULL));
  ck_assert_msg (opened, "it did not open: %s", err);
  ck_assert_str_eq (err, "");
  ck_assert_int_eq (g_subprocess_get_term_sig (p.process), SIGKILL);
  drop (&p);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/main");
  TCase *tc = tcase_create ("main");
  fixture_case (s, tc);
  tcase_add_test (tc, help_names_the_files);
  tcase_add_test (tc, an_unknown_option_is_refused);
  tcase_add_test (tc, a_project_is_opened_without_a_word);
  return run_suite (s);
}
