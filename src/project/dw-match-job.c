/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-match-job.h"

#include <math.h>
#include <string.h>

/* Leaves of a stack that is looked for, unless more are asked for. */
static const int USUAL_LEAVES = 3;

/* Dampers that are built alike, left and right. */
static const int USUAL_DAMPERS = 2;

struct dw_match_job
{
  dw_match_question question;
  dw_parts *parts;      /* owned */
  GArray *drills;       /* of double [m] */
  GArray *oils;         /* of dw_oil */
  GArray *pistons;      /* of dw_piston */
  GArray *temperatures; /* of double [degC] */
  dw_ladder *ladder;    /* owned; NULL = nothing can be stacked */
  dw_match_box box;
  dw_match_grids *grids;
  int n_done; /* atomic: grids in both rounds */
};

dw_match_question
dw_match_question_defaults (const dw_project *project, const dw_setup *setup, dw_axle axle)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  const dw_setup *fitted = dw_project_get_fitted (project);
  dw_match_question q = {
    .damper = setup->damper[axle],
    .in_car = (fitted != NULL ? fitted : setup)->damper[axle].valve,
    .temperature = project->conditions.oil_temperature,
    .allowed = { [DW_LEVER_OPEN] = true,
                 [DW_LEVER_COVERED] = true,
                 [DW_LEVER_STACK] = true,
                 [DW_LEVER_OIL] = true },
    .most_leaves = USUAL_LEAVES,
    .dampers = USUAL_DAMPERS,
    .lowest_temperature = project->conditions.oil_temperature,
    .highest_temperature = project->conditions.oil_temperature,
  };
  dw_force_model model;
  dw_figures figures = { .rebound_share = { 0.0 } };
  if (dw_force_model_make (&q.damper, q.temperature, &model, NULL) == DW_OK)
    dw_figures_read (&model, speeds, &figures, NULL);
  q.wish = dw_match_wish_hold (&figures, speeds);
  return q;
}

dw_match_question
dw_match_question_fair (const dw_project *project, const dw_setup *setup, dw_axle axle)
{
  dw_match_question q = dw_match_question_defaults (project, setup, axle);
  q.allowed[DW_LEVER_PISTON] = q.needed[DW_LEVER_PISTON] = true;
  for (int i = 0; i < DW_N_SPEEDS; i++)
    q.wish.target[DW_REBOUND][i].is_free = true;
  return q;
}

/* ---- the box ---- */

static void
list_parts (dw_match_job *job)
{
  const dw_match_question *q = &job->question;
  for (guint i = 0; i < job->parts->drills->len; i++)
    g_array_append_val (job->drills, g_array_index (job->parts->drills, dw_drill, i).diameter);
  for (guint i = 0; i < job->parts->oils->len; i++)
    g_array_append_val (job->oils, g_array_index (job->parts->oils, dw_bottle, i).oil);
  for (guint i = 0; i < job->parts->pistons->len; i++)
    g_array_append_val (job->pistons,
                        g_array_index (job->parts->pistons, dw_spare_piston, i).piston);
  for (double t = ceil (q->lowest_temperature); t <= q->highest_temperature; t += 1.0)
    if (t != q->temperature)
      g_array_append_val (job->temperatures, t);
}

/* Without covered holes, or without shims, there is no ladder and no lever. A piston of the box may have
 * covered holes where the present one has none: what its stacks are is asked of a damper with it. */
static void
make_ladder (dw_match_job *job)
{
  const dw_match_question *q = &job->question;
  const GArray *shims = job->parts->shims;
  dw_ladder_options options = dw_ladder_options_defaults (
      (const dw_shim *)(const void *)shims->data, (int)shims->len, q->temperature, q->wish.speeds);
  options.fitted = &q->in_car;
  options.most_leaves = q->most_leaves;
  options.dampers = q->dampers;
  if (!q->allowed[DW_LEVER_STACK]
      || dw_ladder_make (&q->damper, &options, NULL, NULL, &job->ladder, NULL) == DW_OK)
    return;
  for (guint i = 0; q->allowed[DW_LEVER_PISTON] && i < job->pistons->len; i++)
    {
      dw_damper other = q->damper;
      other.piston = g_array_index (job->pistons, dw_piston, i);
      if (dw_ladder_make (&other, &options, NULL, NULL, &job->ladder, NULL) == DW_OK)
        return;
    }
}

static void
fill_box (dw_match_job *job)
{
  job->box = (dw_match_box){
    .drills = (const double *)(const void *)job->drills->data,
    .n_drills = (int)job->drills->len,
    .bottles = (const dw_oil *)(const void *)job->oils->data,
    .n_bottles = (int)job->oils->len,
    .pistons = (const dw_piston *)(const void *)job->pistons->data,
    .n_pistons = (int)job->pistons->len,
    .stacks = job->ladder != NULL ? job->ladder->rungs : NULL,
    .n_stacks = job->ladder != NULL ? job->ladder->n : 0,
    .temperatures = (const double *)(const void *)job->temperatures->data,
    .n_temperatures = (int)job->temperatures->len,
  };
}

dw_match_job *
dw_match_job_new (const dw_parts *parts, const dw_match_question *question, dw_error *err)
{
  g_return_val_if_fail (parts != NULL && question != NULL, NULL);

  g_autoptr (dw_match_job) job = g_new0 (dw_match_job, 1);
  dw_force_model model;
  job->question = *question;
  job->parts = dw_parts_copy (parts);
  job->drills = g_array_new (FALSE, FALSE, sizeof (double));
  job->oils = g_array_new (FALSE, FALSE, sizeof (dw_oil));
  job->pistons = g_array_new (FALSE, FALSE, sizeof (dw_piston));
  job->temperatures = g_array_new (FALSE, FALSE, sizeof (double));
  if (dw_force_model_make (&question->damper, question->temperature, &model, err) != DW_OK)
    return NULL;
  list_parts (job);
  make_ladder (job);
  fill_box (job);
  if (dw_match_grids_new (&job->question.damper, question->temperature, &job->box,
                          question->allowed, question->needed, &job->grids, err)
      != DW_OK)
    return NULL;
  return g_steal_pointer (&job);
}

void
dw_match_job_free (dw_match_job *job)
{
  if (job == NULL)
    return;
  dw_match_grids_free (job->grids);
  dw_ladder_free (job->ladder);
  dw_parts_unref (job->parts);
  g_array_unref (job->drills);
  g_array_unref (job->oils);
  g_array_unref (job->pistons);
  g_array_unref (job->temperatures);
  g_free (job);
}

/* ---- threads ---- */

/* One round, shared by all threads. */
typedef struct
{
  dw_match_job *job;
  GCancellable *cancellable;   /* or NULL */
  const dw_match_found *known; /* NULL = the first round */
  int next;                    /* atomic: grid that nobody has taken yet */
} work_round;

/* What one thread has found. */
typedef struct
{
  work_round *round;
  dw_match_found found;
} hand;

static bool
keep_going (void *data)
{
  return !g_cancellable_is_cancelled (data);
}

static void
search_grid (const work_round *r, int grid, dw_match_found *found)
{
  const dw_match_job *job = r->job;
  dw_match_found one = dw_match_found_none ();
  if (r->known == NULL)
    one = dw_match_sound (job->grids, grid, &job->question.wish);
  else
    dw_match_search (job->grids, grid, &job->question.wish, r->known,
                     r->cancellable != NULL ? keep_going : NULL, r->cancellable, &one, NULL);
  dw_match_found_merge (job->grids, found, &one);
}

static gpointer
work (gpointer data)
{
  hand *h = data;
  work_round *r = h->round;
  const int n = dw_match_grids_get_n (r->job->grids);
  for (int grid = g_atomic_int_add (&r->next, 1); grid < n; grid = g_atomic_int_add (&r->next, 1))
    {
      if (r->cancellable != NULL && g_cancellable_is_cancelled (r->cancellable))
        break;
      search_grid (r, grid, &h->found);
      g_atomic_int_inc (&r->job->n_done);
    }
  return NULL;
}

/* One round by so many threads, this one among them; what they found goes to @p found. */
static void
run_round (work_round *r, int n_threads, dw_match_found *found)
{
  g_autofree hand *hands = g_new0 (hand, n_threads);
  g_autofree GThread **threads = g_new0 (GThread *, n_threads);
  for (int i = 0; i < n_threads; i++)
    hands[i] = (hand){ r, dw_match_found_none () };
  for (int i = 1; i < n_threads; i++)
    threads[i] = g_thread_new ("match", work, &hands[i]);
  work (&hands[0]);
  for (int i = 1; i < n_threads; i++)
    g_thread_join (threads[i]);
  for (int i = 0; i < n_threads; i++)
    dw_match_found_merge (r->job->grids, found, &hands[i].found);
}

gboolean
dw_match_job_run (dw_match_job *job, int n_threads, GCancellable *cancellable, dw_match_found *out,
                  GError **error)
{
  g_return_val_if_fail (job != NULL && out != NULL && n_threads >= 0, FALSE);

  const int n = n_threads > 0 ? n_threads : (int)g_get_num_processors ();
  dw_match_found found = dw_match_found_none ();
  work_round first = { job, cancellable, NULL, 0 };
  g_atomic_int_set (&job->n_done, 0);
  run_round (&first, n, &found);
  const dw_match_found known = found;
  work_round second = { job, cancellable, &known, 0 };
  run_round (&second, n, &found);
  if (cancellable != NULL && g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  *out = found;
  return TRUE;
}

double
dw_match_job_get_progress (dw_match_job *job)
{
  const int n = 2 * dw_match_grids_get_n (job->grids);
  return n > 0 ? (double)g_atomic_int_get (&job->n_done) / n : 1.0;
}

const dw_match_grids *
dw_match_job_get_grids (const dw_match_job *job)
{
  return job->grids;
}

const dw_match_box *
dw_match_job_get_box (const dw_match_job *job)
{
  return &job->box;
}

const dw_match_question *
dw_match_job_get_question (const dw_match_job *job)
{
  return &job->question;
}
