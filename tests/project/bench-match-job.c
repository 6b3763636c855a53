/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-match-job.c
 * How long it takes to lay out a match with a full box and to search it, by one and by two threads;
 * prints "name value unit" lines. Aim on two free cores: under 2 s, 500,000 builds a second.
 */
#include <stdio.h>
#include <stdlib.h>

#include "project/dw-match-job.h"
#include "test-support.h"

#define N_RUNS 5

/* 20 drills, 12 bottles, 6 thicknesses of shims four times each; four leaves, one damper. */
static dw_project *
make_project (void)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  damper.piston.n_holes = 2;
  damper.valve.hub_diameter = 6e-3;
  damper.valve.outer_diameter = 10.6e-3;
  damper.valve.hole_circle = 8.2e-3;
  damper.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  damper.valve.n_shims = 1;
  dw_project *project = dw_project_new_empty ();
  dw_project_add_setup (project, "now", "", &damper, &damper);
  dw_parts *parts = dw_project_edit_parts (project);
  for (int i = 0; i < 20; i++)
    {
      const dw_drill drill = { 1.15e-3 + 0.05e-3 * i };
      g_array_append_val (parts->drills, drill);
    }
  for (int i = 0; i < 12; i++)
    {
      const dw_bottle bottle = { .oil = { .kind = DW_OIL_NOMINAL,
                                          .viscosity = (255.0 + 50.0 * i) * 1e-6 } };
      g_array_append_val (parts->oils, bottle);
    }
  for (int i = 0; i < 6; i++)
    {
      const dw_shim shim = { (0.05 + 0.04 * i) * 1e-3, 4, 4e9, 0.38, 100e6 };
      g_array_append_val (parts->shims, shim);
    }
  return project;
}

static double
median (double *times)
{
  test_sort (times, N_RUNS);
  return times[N_RUNS / 2];
}

static dw_match_job *
lay_out (const dw_project *project)
{
  double times[N_RUNS];
  dw_match_job *job = NULL;
  dw_match_question q = dw_match_question_defaults (project, dw_project_get_setup (project, 0),
                                                    DW_REAR);
  q.most_leaves = 4;
  q.dampers = 1;
  for (int v = 0; v < DW_N_SPEEDS; v++)
    q.wish.target[DW_REBOUND][v].force *= 0.85;
  for (int i = 0; i < N_RUNS; i++)
    {
      const double start = test_now ();
      dw_match_job_free (job);
      job = dw_match_job_new (dw_project_get_parts (project), &q, NULL);
      if (job == NULL)
        abort ();
      times[i] = test_now () - start;
    }
  printf ("match_job_lay_out %.3f s\n", median (times));
  return job;
}

static void
search (dw_match_job *job, int n_threads)
{
  double times[N_RUNS];
  dw_match_found found;
  for (int i = 0; i < N_RUNS; i++)
    {
      const double start = test_now ();
      if (!dw_match_job_run (job, n_threads, NULL, &found, NULL))
        abort ();
      times[i] = test_now () - start;
    }
  const double time = median (times);
  printf ("match_job_%d_threads %.3f s\n", n_threads, time);
  printf ("match_job_%d_threads_rate %.0f 1/s\n", n_threads, found.n_judged / time);
  printf ("match_job_%d_threads_computed %.0f 1\n", n_threads, found.n_computed);
}

int
main (void)
{
  dw_project *project = make_project ();
  dw_match_job *job = lay_out (project);
  search (job, 1);
  search (job, 2);
  dw_match_job_free (job);
  dw_project_free (project);
  return 0;
}
