/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-sheet.c
 * How long it takes from a project to the bytes of a PDF; prints "name value unit" lines.
 *
 * The first sheet of a process looks for its fonts; the aim, 150 ms after the program has started, is
 * for that one. The others are told as medians, and in parts: what is computed and laid out, what is
 * written, and how much longer each is than the plain setup sheet.
 */
#include <stdio.h>
#include <stdlib.h>

#include "project/dw-project-file.h"
#include "sheet/dw-sheet.h"
#include "test-support.h"

enum
{
  N_RUNS = 15
};

typedef struct
{
  double made;    /* [ms] until it is laid out */
  double written; /* [ms] from there to the bytes */
} times;

/* Asserts of Check work in tests only. */
static void
stop (const char *what)
{
  fprintf (stderr, "bench-sheet: %s\n", what);
  exit (EXIT_FAILURE);
}

static dw_project *
load (void)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  char *path = test_source_path ("demo/club-final.dampwright");
  dw_project *project = dw_project_load (path, findings, NULL);
  free (path);
  if (project == NULL)
    stop ("the demo does not load");
  return project;
}

static dw_project *
load_many (guint n)
{
  dw_project *project = load ();
  const dw_setup *first = dw_project_get_setup (project, 0);
  const dw_damper front = first->damper[DW_FRONT];
  while (dw_project_get_n_setups (project) < n)
    {
      const int at = dw_project_add_setup (project, NULL, "Trial", &front, &front);
      if (at < 0)
        stop ("a setup is not taken");
      dw_project_edit_setup (project, (guint)at)->damper[DW_REAR].oil.viscosity = (300 + at) * 1e-6;
    }
  return project;
}

static times
run (const dw_project *project, dw_sheet_kind kind)
{
  const dw_sheet_options options = { .project = project,
                                     .setup = dw_project_get_setup (project, 1),
                                     .against = dw_project_get_setup (project, 0),
                                     .file_name = "club-final.dampwright",
                                     .date = "2026-05-03" };
  const double start = test_now ();
  g_autoptr (dw_sheet) sheet = dw_sheet_new (kind, &options, NULL);
  const double made = test_now ();
  if (sheet == NULL)
    stop ("a sheet cannot be made");
  const dw_drawing drawing = dw_sheet_drawing (sheet, 0, dw_sheet_get_n_pages (sheet));
  g_autoptr (GBytes) bytes = dw_export_render (&drawing, DW_EXPORT_PDF, NULL);
  if (bytes == NULL)
    stop ("a sheet cannot be written");
  return (times){ (made - start) * 1e3, (test_now () - made) * 1e3 };
}

/* [ms] in all */
static double
print_medians (const char *name, const dw_project *project, dw_sheet_kind kind)
{
  double made[N_RUNS];
  double written[N_RUNS];
  double all[N_RUNS];
  for (int i = 0; i < N_RUNS; i++)
    {
      const times t = run (project, kind);
      made[i] = t.made;
      written[i] = t.written;
      all[i] = t.made + t.written;
    }
  test_sort (made, N_RUNS);
  test_sort (written, N_RUNS);
  test_sort (all, N_RUNS);
  printf ("%s-layout %.2f ms\n", name, made[N_RUNS / 2]);
  printf ("%s-write %.2f ms\n", name, written[N_RUNS / 2]);
  printf ("%s %.2f ms\n", name, all[N_RUNS / 2]);
  return all[N_RUNS / 2];
}

int
main (void)
{
  g_autoptr (dw_project) project = load ();
  g_autoptr (dw_project) many = load_many (100);
  const times first = run (project, DW_SHEET_SETUP);
  printf ("sheet-setup-first %.2f ms\n", first.made + first.written);
  const double setup = print_medians ("sheet-setup", project, DW_SHEET_SETUP);
  const double both = print_medians ("sheet-both", project, DW_SHEET_BOTH);
  const double all = print_medians ("sheet-all-3", project, DW_SHEET_SUMMARY);
  const double most = print_medians ("sheet-all-100", many, DW_SHEET_SUMMARY);
  printf ("sheet-both-to-setup %.2f times\n", both / setup);
  printf ("sheet-all-3-to-setup %.2f times\n", all / setup);
  printf ("sheet-all-100-to-setup %.2f times\n", most / setup);
  return 0;
}
