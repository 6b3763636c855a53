/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-match-job.h
 * Matching forces with the parts box of a project, by several threads.
 *
 * A job copies what it needs: the project may go on while it runs. The result is the same for any
 * number of threads. Everything but dw_match_job_run() is for the thread that made the job;
 * dw_match_job_get_progress() for any.
 */
#pragma once

#include <gio/gio.h>

#include "project/dw-project.h"
#include "study/dw-match.h"

G_BEGIN_DECLS

/** What is asked. Plain value; copied. */
typedef struct
{
  dw_damper damper; /**< as it is built now */
  /** The stack in the car: its leaves are at hand beside those of the box; without shims, only these.
   * The damper's own may be a trial's, which nobody has. */
  dw_valve in_car;
  double temperature; /**< [degC] of its oil now */
  dw_match_wish wish;
  bool allowed[DW_N_LEVERS];
  bool needed[DW_N_LEVERS];   /**< levers that every build must use */
  int most_leaves;            /**< in a stack */
  int dampers;                /**< built alike: 2 = left and right */
  double lowest_temperature;  /**< [degC] with DW_LEVER_TEMPERATURE, in steps of 1 */
  double highest_temperature; /**< [degC] */
} dw_match_question;

/** Hold all forces of one damper of a setup by drills, stack and bottles. */
dw_match_question dw_match_question_defaults (const dw_project *project, const dw_setup *setup,
                                              dw_axle axle);

/**
 * A fair comparison: another piston of the box, drilled, and an oil that leave compression what it is,
 * so that the valve is the only difference; rebound may be what it likes.
 */
dw_match_question dw_match_question_fair (const dw_project *project, const dw_setup *setup,
                                          dw_axle axle);

/** [1] Compression counts as held up to this miss. */
#define DW_MATCH_HELD 0.01

/** Opaque. Free with dw_match_job_free(). */
typedef struct dw_match_job dw_match_job;

/**
 * Lay out what there is to search.
 *
 * @param parts  copied
 * @param err    filled on failure
 * @return       caller frees; NULL on failure
 */
dw_match_job *dw_match_job_new (const dw_parts *parts, const dw_match_question *question,
                                dw_error *err);

/** NULL is allowed. Not while it runs. */
void dw_match_job_free (dw_match_job *job);

/**
 * Search everything. May run in a thread of its own.
 *
 * @param n_threads    1 or more; 0 = as many as the machine has
 * @param cancellable  may be NULL
 * @return             FALSE with G_IO_ERROR_CANCELLED
 */
gboolean dw_match_job_run (dw_match_job *job, int n_threads, GCancellable *cancellable,
                           dw_match_found *out, GError **error);

/** [1] How much is done. */
double dw_match_job_get_progress (dw_match_job *job);

/** Borrowed. */
const dw_match_grids *dw_match_job_get_grids (const dw_match_job *job);

/** Borrowed. */
const dw_match_box *dw_match_job_get_box (const dw_match_job *job);

/** Borrowed. */
const dw_match_question *dw_match_job_get_question (const dw_match_job *job);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_match_job, dw_match_job_free)

G_END_DECLS
