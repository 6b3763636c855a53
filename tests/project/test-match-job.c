/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-match-job.h"

#include <math.h>
#include <string.h>

#include "project-samples.h"
#include "random-damper.h"

/* Six open holes of 1.3 mm and four covered ones of 1.1 mm under a leaf of 0.15 mm. */
static dw_damper
covered_damper (void)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.n_holes = 2;
  d.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  d.valve.n_shims = 1;
  d.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  d.oil.viscosity = 400e-6;
  return d;
}

/* One setup "now", fitted; an empty box. */
static dw_project *
project_of (const dw_damper *damper)
{
  dw_project *project = dw_project_new_empty ();
  ck_assert_int_eq (dw_project_add_setup (project, "now", "", damper, damper), 0);
  ck_assert (dw_project_set_fitted (project, "now"));
  return project;
}

static void
add_bottle (dw_parts *parts, double viscosity)
{
  const dw_bottle bottle = { .oil = { .kind = DW_OIL_NOMINAL, .viscosity = viscosity } };
  g_array_append_val (parts->oils, bottle);
}

static void
add_drill (dw_parts *parts, double diameter)
{
  const dw_drill drill = { diameter };
  g_array_append_val (parts->drills, drill);
}

static void
add_shim (dw_parts *parts, double thickness, int count)
{
  const dw_shim shim = { thickness, count, 4e9, 0.38, 100e6 };
  g_array_append_val (parts->shims, shim);
}

/* A box that a team has: ten drills, six bottles, four thicknesses, a spare piston. */
static dw_project *
usual_project (void)
{
  const dw_damper damper = covered_damper ();
  dw_project *project = project_of (&damper);
  dw_parts *parts = dw_project_edit_parts (project);
  dw_piston spare = damper.piston;
  for (int i = 0; i < 10; i++)
    add_drill (parts, 1.1e-3 + 0.05e-3 * i);
  for (int i = 0; i < 6; i++)
    add_bottle (parts, (260.0 + 60.0 * i) * 1e-6);
  for (int i = 0; i < 4; i++)
    add_shim (parts, 0.08e-3 + 0.04e-3 * i, 4);
  spare.holes[0].diameter = 1.15e-3;
  dw_parts_add_piston (parts, "spare", &spare);
  return project;
}

static dw_match_question
usual_question (const dw_project *project)
{
  dw_match_question q = dw_match_question_defaults (project, dw_project_get_setup (project, 0),
                                                    DW_REAR);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    q.wish.target[DW_REBOUND][v].force *= 0.85;
  return q;
}

static dw_match_job *
job_of (const dw_project *project, const dw_match_question *q)
{
  dw_error err = { .text = "" };
  dw_match_job *job = dw_match_job_new (dw_project_get_parts (project), q, &err);
  ck_assert_msg (job != NULL, "%s", err.text);
  return job;
}

static void
assert_same_candidate (const dw_match_candidate *a, const dw_match_candidate *b)
{
  ck_assert_int_eq (dw_match_compare (a, b), 0);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (a->force[s][v] == b->force[s][v]);
}

static void
assert_same (const dw_match_found *a, const dw_match_found *b)
{
  ck_assert_int_eq (a->n, b->n);
  for (int i = 0; i < a->n; i++)
    assert_same_candidate (&a->best[i], &b->best[i]);
  for (int i = 0; i <= DW_N_LEVERS; i++)
    {
      ck_assert (a->has_with[i] == b->has_with[i]);
      if (a->has_with[i])
        assert_same_candidate (&a->with[i], &b->with[i]);
    }
  ck_assert (a->n_judged == b->n_judged && a->n_computed == b->n_computed);
}

START_TEST (any_number_of_threads_finds_what_one_finds)
{
  g_autoptr (dw_project) project = usual_project ();
  dw_match_question q = usual_question (project);
  q.allowed[DW_LEVER_BLEND] = q.allowed[DW_LEVER_PISTON] = _i == 1;
  g_autoptr (dw_match_job) job = job_of (project, &q);
  dw_match_found alone;
  ck_assert_int_eq (dw_match_all (dw_match_job_get_grids (job), &q.wish, NULL, NULL, &alone, NULL),
                    DW_OK);
  ck_assert_int_eq (alone.n, DW_MATCH_MOST);
  for (int n = 0; n <= 3; n++)
    {
      dw_match_found found;
      ck_assert (dw_match_job_run (job, n, NULL, &found, NULL));
      assert_same (&found, &alone);
    }
}
END_TEST

/* ---- stopping, progress ---- */

START_TEST (a_cancelled_search_ends_with_that)
{
  g_autoptr (dw_project) project = usual_project ();
  const dw_match_question q = usual_question (project);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  dw_match_found found = { .n = -1 };
  g_cancellable_cancel (cancellable);
  ck_assert (!dw_match_job_run (job, 2, cancellable, &found, &error));
  ck_assert (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  ck_assert_int_eq (found.n, -1);

  /* and can be run again */
  g_cancellable_reset (cancellable);
  ck_assert (dw_match_job_run (job, 2, cancellable, &found, NULL));
  ck_assert_int_eq (found.n, DW_MATCH_MOST);
}
END_TEST

/* Cancels as soon as something is done. */
static gpointer
cancel_soon (gpointer data)
{
  const gpointer *pair = data;
  while (!(dw_match_job_get_progress (pair[0]) > 0.0))
    g_usleep (100);
  g_cancellable_cancel (pair[1]);
  return NULL;
}

START_TEST (it_can_be_cancelled_on_its_way)
{
  g_autoptr (dw_project) project = usual_project ();
  dw_parts *parts = dw_project_edit_parts (project);
  for (int i = 0; i < 12; i++)
    add_drill (parts, 1.605e-3 + 0.01e-3 * i);
  for (int i = 0; i < 30; i++)
    add_bottle (parts, (255.0 + 11.0 * i) * 1e-6);
  dw_match_question q = usual_question (project);
  q.most_leaves = 5;
  q.allowed[DW_LEVER_BLEND] = true;
  g_autoptr (dw_match_job) job = job_of (project, &q);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  dw_match_found found;
  gpointer pair[] = { job, cancellable };
  GThread *thread = g_thread_new ("cancel", cancel_soon, pair);
  ck_assert (!dw_match_job_run (job, 2, cancellable, &found, &error));
  g_thread_join (thread);
  ck_assert (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  ck_assert (dw_match_job_get_progress (job) < 1.0);
}
END_TEST

START_TEST (progress_goes_from_nothing_to_one)
{
  g_autoptr (dw_project) project = usual_project ();
  const dw_match_question q = usual_question (project);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  dw_match_found found;
  ck_assert (dw_match_job_get_progress (job) == 0.0);
  for (int n = 1; n <= 3; n++)
    {
      ck_assert (dw_match_job_run (job, n, NULL, &found, NULL));
      ck_assert (dw_match_job_get_progress (job) == 1.0);
    }
}
END_TEST

/* ---- what is copied ---- */

START_TEST (the_project_may_go_on_while_it_runs)
{
  dw_project *project = usual_project ();
  const dw_match_question q = usual_question (project);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  dw_match_found before, after;
  ck_assert (dw_match_job_run (job, 1, NULL, &before, NULL));
  dw_parts *parts = dw_project_edit_parts (project);
  for (guint i = 0; i < parts->oils->len; i++)
    g_array_index (parts->oils, dw_bottle, i).oil.viscosity *= 2.0;
  g_array_set_size (parts->drills, 0);
  g_array_set_size (parts->shims, 0);
  g_array_set_size (parts->pistons, 0);
  dw_project_free (project);
  ck_assert (dw_match_job_run (job, 2, NULL, &after, NULL));
  assert_same (&before, &after);
  ck_assert_int_eq (dw_match_job_get_box (job)->n_drills, 10);
  ck_assert (dw_match_job_get_box (job)->bottles[0].viscosity == 260e-6);
}
END_TEST

/* ---- presets ---- */

START_TEST (the_usual_question_holds_all_six_forces)
{
  g_autoptr (dw_project) project = usual_project ();
  const dw_setup *setup = dw_project_get_setup (project, 0);
  const dw_match_question q = dw_match_question_defaults (project, setup, DW_FRONT);
  dw_match_found found;
  ck_assert (dw_damper_equal (&q.damper, &setup->damper[DW_FRONT]));
  ck_assert (q.temperature == project->conditions.oil_temperature);
  for (int i = 0; i < DW_N_LEVERS; i++)
    ck_assert (q.allowed[i] == (i <= DW_LEVER_OIL) && !q.needed[i]);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (!q.wish.target[s][v].is_free && q.wish.target[s][v].force > 0.0);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  ck_assert (dw_match_job_run (job, 1, NULL, &found, NULL));
  ck_assert (found.best[0].worst == 0.0 && found.best[0].levers == 0);
}
END_TEST

START_TEST (a_fair_question_asks_for_another_piston)
{
  g_autoptr (dw_project) project = usual_project ();
  const dw_match_question q = dw_match_question_fair (project, dw_project_get_setup (project, 0),
                                                      DW_FRONT);
  for (int i = 0; i < DW_N_LEVERS; i++)
    ck_assert (q.needed[i] == (i == DW_LEVER_PISTON));
  ck_assert (q.allowed[DW_LEVER_PISTON] && !q.allowed[DW_LEVER_TEMPERATURE]);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    ck_assert (!q.wish.target[DW_COMPRESSION][v].is_free && q.wish.target[DW_REBOUND][v].is_free);
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_is_refused)
{
  g_autoptr (dw_project) project = usual_project ();
  dw_match_question q = usual_question (project);
  dw_error err;
  q.damper.piston.holes[0].diameter = -1.0;
  ck_assert_ptr_null (dw_match_job_new (dw_project_get_parts (project), &q, &err));
  ck_assert_str_eq (err.field, "piston.holes.diameter");
}
END_TEST

/* ---- levers ---- */

START_TEST (warmer_oil_is_found_by_whole_degrees)
{
  const dw_damper damper = covered_damper ();
  g_autoptr (dw_project) project = project_of (&damper);
  project->conditions.oil_temperature = 24.5;
  dw_match_question q = dw_match_question_defaults (project, dw_project_get_setup (project, 0),
                                                    DW_REAR);
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (&damper, 31.0, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, q.wish.speeds, &figures, NULL), DW_OK);
  q.wish = dw_match_wish_hold (&figures, q.wish.speeds);
  q.allowed[DW_LEVER_TEMPERATURE] = true;
  q.lowest_temperature = 19.3;
  q.highest_temperature = 35.0;
  g_autoptr (dw_match_job) job = job_of (project, &q);
  const dw_match_box *box = dw_match_job_get_box (job);
  dw_match_found found;
  ck_assert_int_eq (box->n_temperatures, 16);
  ck_assert (box->temperatures[0] == 20.0 && box->temperatures[15] == 35.0);
  ck_assert (dw_match_job_run (job, 2, NULL, &found, NULL));
  const dw_match_grid *grid = dw_match_grids_get (dw_match_job_get_grids (job),
                                                  found.best[0].build.grid);
  ck_assert (grid->temperature >= 0 && box->temperatures[grid->temperature] == 31.0);
  ck_assert (found.best[0].worst < 1e-9);
  ck_assert_int_eq (found.best[0].levers, 1);
}
END_TEST

/* A trial's own leaf is neither in the car nor in the box: it stays as it is or is not there. */
START_TEST (only_leaves_at_hand_are_stacked)
{
  const dw_damper in_car = covered_damper ();
  g_autoptr (dw_project) project = project_of (&in_car);
  dw_damper trial = in_car;
  trial.valve.shims[0].thickness = 0.3e-3;
  trial.valve.shims[0].count = 2;
  const int index = dw_project_add_setup (project, "trial", "", &trial, &trial);
  add_shim (dw_project_edit_parts (project), 0.1e-3, 2);
  const dw_match_question q = dw_match_question_defaults (
      project, dw_project_get_setup (project, (guint)index), DW_REAR);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  const dw_match_box *box = dw_match_job_get_box (job);
  ck_assert_uint_eq (box->n_stacks, 3); /* 0.10, 0.15, both */
  for (size_t i = 0; i < box->n_stacks; i++)
    for (int k = 0; k < box->stacks[i].n_shims; k++)
      ck_assert (box->stacks[i].shims[k].thickness < 0.2e-3);
}
END_TEST

/* A plain piston now, one with covered holes in the box: its stacks are there. */
START_TEST (stacks_for_a_piston_of_the_box)
{
  dw_damper damper = covered_damper ();
  const dw_piston spare = damper.piston;
  damper.piston.n_holes = 1;
  g_autoptr (dw_project) project = project_of (&damper);
  dw_parts *parts = dw_project_edit_parts (project);
  dw_parts_add_piston (parts, "blank", &(dw_piston){ .thickness = 2.6e-3, .clearance = 3e-5 });
  dw_parts_add_piston (parts, "covered", &spare);
  add_shim (parts, 0.1e-3, 2);
  const dw_match_question q = dw_match_question_fair (project, dw_project_get_setup (project, 0),
                                                      DW_REAR);
  g_autoptr (dw_match_job) job = job_of (project, &q);
  const dw_match_grids *grids = dw_match_job_get_grids (job);
  bool stacks = false;
  ck_assert_uint_ge (dw_match_job_get_box (job)->n_stacks, 2);
  for (int i = 0; i < dw_match_grids_get_n (grids); i++)
    {
      ck_assert_int_eq (dw_match_grids_get (grids, i)->piston, 1);
      stacks = stacks || dw_match_grids_get (grids, i)->uses[DW_LEVER_STACK];
    }
  ck_assert (stacks);
}
END_TEST

/* ---- fair comparisons ---- */

static dw_project *
random_project (test_random *random)
{
  dw_damper damper = test_random_int (random, 0, 1) == 0 ? covered_damper ()
                                                         : random_damper (random);
  dw_project *project = project_of (&damper);
  dw_parts *parts = dw_project_edit_parts (project);
  const int n_pistons = test_random_int (random, 1, 3);
  for (int i = test_random_int (random, 0, 5); i > 0; i--)
    add_drill (parts, test_random_uniform (random, 0.9e-3, 2.0e-3));
  /* now and then the very drill that makes the holes of now */
  if (test_random_int (random, 0, 2) == 0)
    add_drill (parts, damper.piston.holes[0].diameter);
  for (int i = test_random_int (random, 0, 4); i > 0; i--)
    add_bottle (parts, test_random_log_uniform (random, 100e-6, 1500e-6));
  for (int i = test_random_int (random, 0, 2); i > 0; i--)
    add_shim (parts, test_random_uniform (random, 0.05e-3, 0.3e-3), 2);
  for (int i = 0; i < n_pistons; i++)
    {
      dw_piston piston = i == 0 ? covered_damper ().piston : damper.piston;
      for (int g = 0; g < piston.n_holes; g++)
        piston.holes[g].diameter *= test_random_uniform (random, 0.7, 1.05);
      dw_parts_add_piston (parts, "p", &piston);
    }
  return project;
}

/* The largest miss of compression, from the damper that is to be built, and not by what was found. */
static double
compression_miss (const dw_project *project, const dw_damper *damper, double temperature)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  const dw_damper *now = &dw_project_get_setup (project, 0)->damper[DW_REAR];
  dw_force_model model;
  dw_figures a, b;
  double worst = 0.0;
  ck_assert_int_eq (dw_force_model_make (now, project->conditions.oil_temperature, &model, NULL),
                    DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &a, NULL), DW_OK);
  ck_assert_int_eq (dw_force_model_make (damper, temperature, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &b, NULL), DW_OK);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    worst = fmax (worst,
                  fabs (b.point[DW_COMPRESSION][v].force / a.point[DW_COMPRESSION][v].force - 1.0));
  return worst;
}

/* Another piston, good, drilled as the land allows. */
static void
expect_fair (const dw_project *project, dw_match_job *job, const dw_match_candidate *c)
{
  const dw_match_grids *grids = dw_match_job_get_grids (job);
  const dw_match_grid *grid = dw_match_grids_get (grids, c->build.grid);
  dw_damper damper, spare;
  dw_drill_sets sets;
  double temperature;
  double size[DW_DRILL_SETS];
  ck_assert (grid->uses[DW_LEVER_PISTON] && grid->piston >= 0);
  ck_assert (dw_match_grids_build (grids, &c->build, &damper, &temperature));
  ck_assert_uint_eq (dw_damper_check (&damper, NULL, 0), 0);
  spare = dw_project_get_setup (project, 0)->damper[DW_REAR];
  spare.piston = g_array_index (dw_project_get_parts (project)->pistons, dw_spare_piston,
                                grid->piston)
                     .piston;
  dw_drill_sets_init (&sets, &spare, DW_DRILL_KINDS);
  dw_match_grids_sizes (grids, &c->build, size);
  ck_assert_int_eq (dw_drill_sets_apply (&sets, size, &spare, NULL), DW_OK);
  ck_assert_int_eq (spare.piston.n_holes, damper.piston.n_holes);
  assert_close (compression_miss (project, &damper, temperature), c->worst, 1e-9, 1e-12,
                "what is said is what the damper does");
}

START_TEST (a_fair_comparison_holds_compression_or_says_that_it_can_not)
{
  enum
  {
    N_BOXES = 50
  };
  test_random random = test_random_new (8800 + (uint64_t)_i);
  int n_held = 0;
  int n_not = 0;
  for (int k = 0; k < N_BOXES; k++)
    {
      g_autoptr (dw_project) project = random_project (&random);
      const dw_match_question q = dw_match_question_fair (
          project, dw_project_get_setup (project, 0), DW_REAR);
      /* gas that sucks the shaft in leaves nothing to be held */
      bool can_hold = true;
      for (int v = 0; v < DW_N_SPEEDS; v++)
        can_hold = can_hold && !q.wish.target[DW_COMPRESSION][v].is_free;
      if (!can_hold)
        continue;
      g_autoptr (dw_match_job) job = job_of (project, &q);
      dw_match_found found;
      ck_assert (dw_match_job_run (job, 1 + k % 3, NULL, &found, NULL));
      for (int i = 0; i < found.n; i++)
        expect_fair (project, job, &found.best[i]);
      if (found.n > 0 && found.best[0].worst <= DW_MATCH_HELD)
        n_held++;
      else
        n_not++;
      /* nothing of all that can be built holds it where it is said that nothing does */
      for (int g = 0; found.n > 0 && g < dw_match_grids_get_n (dw_match_job_get_grids (job)); g++)
        {
          dw_match_candidate c;
          const dw_match_build build = { .grid = g };
          if (dw_match_judge (dw_match_job_get_grids (job), &build, &q.wish, &c))
            ck_assert (c.worst > found.best[0].worst - DW_MATCH_EQUAL);
        }
    }
  ck_assert_int_gt (n_held, 3);
  ck_assert_int_gt (n_not, 3);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/match-job");
  TCase *tcase = tcase_create ("match-job");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, any_number_of_threads_finds_what_one_finds, 0, 2);
  tcase_add_test (tcase, a_cancelled_search_ends_with_that);
  tcase_add_test (tcase, it_can_be_cancelled_on_its_way);
  tcase_add_test (tcase, progress_goes_from_nothing_to_one);
  tcase_add_test (tcase, the_project_may_go_on_while_it_runs);
  tcase_add_test (tcase, the_usual_question_holds_all_six_forces);
  tcase_add_test (tcase, a_fair_question_asks_for_another_piston);
  tcase_add_test (tcase, a_damper_that_cannot_be_computed_is_refused);
  tcase_add_test (tcase, warmer_oil_is_found_by_whole_degrees);
  tcase_add_test (tcase, only_leaves_at_hand_are_stacked);
  tcase_add_test (tcase, stacks_for_a_piston_of_the_box);
  tcase_add_loop_test (tcase, a_fair_comparison_holds_compression_or_says_that_it_can_not, 0, 4);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
