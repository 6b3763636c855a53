/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-project.c
 * How long it takes to handle a project of 200 setups; prints "name value unit" lines.
 */
#include <stdio.h>
#include <stdlib.h>

#include "project/dw-history.h"
#include "project/dw-project-reader.h"
#include "project/dw-project-writer.h"
#include "test-support.h"

#define N_SETUPS 200
#define N_RUNS   20

static dw_project *
make_project (void)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.holes[1] = (dw_holes){ 4, 1.0e-3, true };
  damper.piston.n_holes = 2;
  damper.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  damper.valve.n_shims = 1;
  dw_project *project = dw_project_new ();
  while (dw_project_get_n_setups (project) < N_SETUPS)
    {
      damper.body.stroke = 30e-3 + 1e-5 * dw_project_get_n_setups (project);
      dw_project_add_setup (project, NULL, "A trial among many", &damper, &damper);
    }
  return project;
}

static void
print_median (const char *name, double *times)
{
  test_sort (times, N_RUNS);
  printf ("%s %.3f ms\n", name, times[N_RUNS / 2]);
}

typedef bool (*job) (dw_project *project, GBytes *text);

static bool
read_job (G_GNUC_UNUSED dw_project *project, GBytes *text)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) read = dw_project_read_text (g_bytes_get_data (text, NULL),
                                                      g_bytes_get_size (text), findings);
  return read != NULL && dw_project_get_n_setups (read) == N_SETUPS;
}

static bool
write_job (dw_project *project, G_GNUC_UNUSED GBytes *text)
{
  g_autoptr (GBytes) written = dw_project_write_text (project);
  return g_bytes_get_size (written) > 0;
}

/* A drag of 100 steps: what the window does on every movement of the pointer. */
static bool
edit_job (dw_project *project, G_GNUC_UNUSED GBytes *text)
{
  g_autoptr (DwHistory) history = dw_history_new (&dw_history_project_ops, project);
  for (int i = 0; i < 100; i++)
    {
      g_autoptr (dw_project) copy = dw_project_copy (dw_history_get_model (history));
      dw_project_edit_setup (copy, N_SETUPS / 2)->damper[DW_FRONT].seal_friction = 0.01 * (i + 1);
      dw_history_record (history, "Change friction", NULL, copy);
    }
  return dw_history_is_modified (history);
}

static bool
measure (const char *name, job run, dw_project *project, GBytes *text)
{
  double times[N_RUNS];
  for (int i = 0; i < N_RUNS; i++)
    {
      const gint64 start = g_get_monotonic_time ();
      if (!run (project, text))
        {
          fprintf (stderr, "%s went wrong\n", name);
          return false;
        }
      times[i] = (double)(g_get_monotonic_time () - start) / 1000.0;
    }
  print_median (name, times);
  return true;
}

int
main (void)
{
  g_autoptr (dw_project) project = make_project ();
  g_autoptr (GBytes) text = dw_project_write_text (project);
  printf ("project-size %.1f kB\n", (double)g_bytes_get_size (text) / 1000.0);
  const bool good = measure ("project-read-200", read_job, project, text)
                    && measure ("project-write-200", write_job, project, text)
                    && measure ("project-100-edits-200", edit_job, project, text);
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
