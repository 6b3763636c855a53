/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc-run.h"

#include <glib/gstdio.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>

#include "project/dw-decimal.h"
#include "project/dw-project-file.h"

char *
calc_path (const char *text)
{
  char *demo = test_source_path ("demo");
  char *data = test_source_path ("tests/data");
  g_autoptr (GString) path = g_string_new (text);
  g_string_replace (path, "{demo}", demo, 0);
  g_string_replace (path, "{data}", data, 0);
  free (demo);
  free (data);
  return g_string_free (g_steal_pointer (&path), FALSE);
}

dw_project *
calc_load (const char *name)
{
  g_autofree char *path = calc_path (name);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  dw_project *project = dw_project_load (path, findings, NULL);
  ck_assert_msg (project != NULL, "%s", path);
  return project;
}

static calc_result
run (const char *locale, const char *target, const char *arguments)
{
  calc_result result = { .status = -1 };
  g_autofree char *words = calc_path (arguments);
  g_autofree char *program = g_shell_quote (TEST_CALC_PROGRAM);
  g_autofree char *line = target != NULL
                              ? g_strdup_printf ("exec %s %s > %s", program, words, target)
                              : g_strdup_printf ("exec %s %s", program, words);
  const char *argv[] = { "/bin/sh", "-c", line, NULL };
  g_auto (GStrv) environment = g_get_environ ();
  if (locale != NULL)
    environment = g_environ_setenv (environment, "LC_ALL", locale, TRUE);

  int wait_status = 0;
  g_autoptr (GError) error = NULL;
  ck_assert_msg (g_spawn_sync (NULL, (char **)(guintptr)argv, environment, G_SPAWN_DEFAULT, NULL,
                               NULL, &result.out, &result.err, &wait_status, &error),
                 "%s", error != NULL ? error->message : "");
  ck_assert_msg (WIFEXITED (wait_status), "%s: died, %s", line, result.err);
  result.status = WEXITSTATUS (wait_status);
  return result;
}

#define FORMAT(text)                                                                               \
  va_list args;                                                                                    \
  va_start (args, format);                                                                         \
  g_autofree char *text = g_strdup_vprintf (format, args);                                         \
  va_end (args)

calc_result
calc_run (const char *format, ...)
{
  FORMAT (arguments);
  return run (NULL, NULL, arguments);
}

calc_result
calc_run_in (const char *locale, const char *format, ...)
{
  FORMAT (arguments);
  return run (locale, NULL, arguments);
}

calc_result
calc_run_to (const char *path, const char *format, ...)
{
  FORMAT (arguments);
  return run (NULL, path, arguments);
}

void
calc_result_clear (calc_result *result)
{
  g_clear_pointer (&result->out, g_free);
  g_clear_pointer (&result->err, g_free);
}

static char *
good_output (const char *arguments)
{
  calc_result result = run (NULL, NULL, arguments);
  ck_assert_msg (result.status == 0 && *result.err == '\0', "%s: status %d, %s", arguments,
                 result.status, result.err);
  g_free (result.err);
  return result.out;
}

char *
calc_output (const char *format, ...)
{
  FORMAT (arguments);
  return good_output (arguments);
}

test_table *
calc_table (const char *format, ...)
{
  FORMAT (arguments);
  g_autofree char *text = good_output (arguments);
  return test_table_parse (text);
}

bool
calc_field_is (const test_table *table, size_t row, const char *column, int power, double value)
{
  const char *text = test_table_text (table, row, column);
  double number = 0.0;
  if (isinf (value) != 0)
    return strcmp (text, value < 0.0 ? "-inf" : "inf") == 0;
  return dw_decimal_parse (text, power, &number) && number == value;
}

bool
calc_says (const char *page, const char *piece)
{
  g_autoptr (GString) flow = g_string_new (NULL);
  for (const char *p = page; *p != '\0'; p++)
    {
      const bool blank = *p == ' ' || *p == '\n';
      if (!blank)
        g_string_append_c (flow, *p);
      else if (flow->len > 0 && flow->str[flow->len - 1] != ' ')
        g_string_append_c (flow, ' ');
    }
  return strstr (page, piece) != NULL || strstr (flow->str, piece) != NULL;
}

char *
calc_make_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("dampwright-calc-XXXXXX", &error);
  ck_assert_msg (folder != NULL, "%s", error != NULL ? error->message : "");
  return folder;
}

void
calc_expect_files (const char *folder, int n)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  int n_found = 0;
  ck_assert_ptr_nonnull (dir);
  while (g_dir_read_name (dir) != NULL)
    n_found++;
  ck_assert_int_eq (n_found, n);
}

void
calc_remove_folder (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
}
