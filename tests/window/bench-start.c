/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-start.c
 * From the start of the program to its first frame, and the memory it then has, against a bare GTK
 * window with as many widgets of the same kinds; prints "name value unit" lines.
 *
 * bench-start PROJECT BARE starts itself as "bench-start --real PROJECT", which does what the
 * program's main() does, and BARE in turns. Both tell the time of their first frame and their
 * memory on standard output and end. The first real one also counts its widgets for the bare ones.
 */
#include <stdio.h>
#include <stdlib.h>

#include "start-probe.h"
#include "test-support.h"
#include "window/dw-application.h"
#include "window/dw-window.h"

enum
{
  N_RUNS = 15,
  NO_DISPLAY = 77
};

/* What one start tells. */
typedef struct
{
  double first_frame; /* [ms] since before the process was made */
  double pss, rss;    /* [MB] */
  int n_widgets;
} start_figures;

/* ---- the program, in a process of its own ---- */

static void
on_window_added (GtkApplication *app, GtkWindow *window, gpointer data)
{
  (void)app;
  (void)data;
  if (DW_IS_WINDOW (window))
    start_probe_watch (window);
}

static int
run_real (const char *path)
{
  char *arguments[] = { (char[]){ "dampwright" }, g_strdup (path), NULL };

  g_set_application_name ("Dampwright");
  g_autoptr (DwApplication) app = dw_application_new (G_APPLICATION_NON_UNIQUE);
  g_signal_connect (app, "window-added", G_CALLBACK (on_window_added), NULL);
  const int status = g_application_run (G_APPLICATION (app), 2, arguments);
  g_free (arguments[1]);
  return status;
}

/* ---- the one that measures ---- */

static gboolean
start_once (const char *const *argv, start_figures *figures)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (
      G_SUBPROCESS_FLAGS_STDOUT_PIPE);
  g_autofree char *text = NULL;
  gint64 shown = 0;

  const gint64 began = g_get_monotonic_time ();
  g_autoptr (GSubprocess) process = g_subprocess_launcher_spawnv (launcher, argv, &error);
  if (process == NULL || !g_subprocess_communicate_utf8 (process, NULL, NULL, &text, NULL, &error))
    fprintf (stderr, "bench-start: %s\n", error->message);
  else if (sscanf (text, "%" G_GINT64_FORMAT " %lf %lf %d", &shown, &figures->pss, &figures->rss,
                   &figures->n_widgets)
           == 4)
    {
      figures->first_frame = (double)(shown - began) / 1000.0;
      return TRUE;
    }
  fprintf (stderr, "bench-start: %s did not show a frame\n", argv[0]);
  return FALSE;
}

static double
median (double *values)
{
  test_sort (values, N_RUNS);
  return values[N_RUNS / 2];
}

static void
print_start (start_figures (*runs)[2])
{
  double real[N_RUNS], bare[N_RUNS], ratio[N_RUNS], pss[N_RUNS], rss[N_RUNS];

  for (int i = 0; i < N_RUNS; i++)
    {
      real[i] = runs[i][0].first_frame;
      bare[i] = runs[i][1].first_frame;
      ratio[i] = real[i] / bare[i];
      pss[i] = runs[i][0].pss - runs[i][1].pss;
      rss[i] = runs[i][0].rss - runs[i][1].rss;
    }
  printf ("start-widgets %d widgets\n", runs[0][0].n_widgets);
  printf ("start-widgets-bare %d widgets\n", runs[0][1].n_widgets);
  printf ("start-first-frame %.1f ms\n", median (real));
  printf ("start-first-frame-bare %.1f ms\n", median (bare));
  printf ("start-ratio %.3f 1\n", median (ratio));
  printf ("start-pss %.1f MB\n", runs[N_RUNS / 2][0].pss);
  printf ("start-pss-bare %.1f MB\n", runs[N_RUNS / 2][1].pss);
  printf ("start-pss-more %.1f MB\n", median (pss));
  printf ("start-rss-more %.1f MB\n", median (rss));
}

static int
bench (const char *self, const char *path, const char *bare)
{
  static start_figures runs[N_RUNS][2];
  g_autofree char *counts = g_build_filename (g_getenv ("XDG_STATE_HOME"), "widgets", NULL);
  const char *const real_argv[] = { self, "--real", path, NULL };
  const char *const bare_argv[] = { bare, counts, NULL };

  /* once for the file of counts, and both to warm up */
  g_setenv (START_PROBE_COUNTS, counts, TRUE);
  if (!start_once (real_argv, &runs[0][0]))
    return EXIT_FAILURE;
  g_unsetenv (START_PROBE_COUNTS);
  if (!start_once (bare_argv, &runs[0][1]))
    return EXIT_FAILURE;
  for (int i = 0; i < N_RUNS; i++)
    if (!start_once (real_argv, &runs[i][0]) || !start_once (bare_argv, &runs[i][1]))
      return EXIT_FAILURE;
  print_start (runs);
  return EXIT_SUCCESS;
}

/* Asked of the other program: this one shall not fill its memory with pages that both share. */
static gboolean
has_display (const char *bare)
{
  const char *argv[] = { bare, NULL };
  int status = 0;

  return g_spawn_sync (NULL, (char **)(gpointer)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL,
                       &status, NULL)
         && g_spawn_check_wait_status (status, NULL);
}

int
main (int argc, char **argv)
{
  if (argc == 3 && g_str_equal (argv[1], "--real"))
    return run_real (argv[2]);
  if (argc != 3)
    {
      fprintf (stderr, "usage: bench-start PROJECT BARE\n");
      return 2;
    }
  if (!has_display (argv[2]))
    {
      printf ("bench-start: no display; run it through tests/with-display.sh\n");
      return NO_DISPLAY;
    }
  g_autofree char *folder = g_dir_make_tmp ("dw-bench-XXXXXX", NULL);
  const char *drop[] = { "rm", "-rf", folder, NULL };
  if (folder == NULL)
    return EXIT_FAILURE;
  g_setenv ("XDG_STATE_HOME", folder, TRUE);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  const int status = bench (argv[0], argv[1], argv[2]);
  g_spawn_sync (NULL, (char **)(gpointer)drop, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                NULL, NULL);
  return status;
}
