/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-bench-steps.h
 * The steps of the work on one axle's dampers in words, in the order in which they are done.
 *
 * In the language of the process.
 */
#pragma once

#include <glib.h>

#include "project/dw-parts.h"
#include "sheet/dw-quantity.h"
#include "study/dw-work.h"

G_BEGIN_DECLS

typedef enum
{
  DW_STEP_ACTION, /**< numbered, ticked off for left and right */
  DW_STEP_ITEM,   /**< of the action before, ticked off as well */
  DW_STEP_REMARK  /**< to the step before */
} dw_bench_step_kind;

typedef struct
{
  dw_bench_step_kind kind;
  char *text; /**< owned */
} dw_bench_step;

/**
 * The steps, DW_STEP_REMARK alone when there is nothing to do.
 *
 * @param a    as it is built; NULL = from new parts
 * @param b    as it shall be
 * @return     of dw_bench_step; caller frees with g_array_unref()
 */
GArray *dw_bench_steps_make (const dw_damper *a, const dw_damper *b, const dw_parts *parts,
                             dw_units units);

G_END_DECLS
