/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-step.h
 * How far one press of an arrow key moves a number.
 *
 * Steps land on round numbers of the shown unit, on drills that exist or on grades that oil is
 * bottled in. Pure functions: any thread.
 */
#pragma once

#include "model/dw-limits.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

typedef enum
{
  DW_STEP_EVEN,  /**< multiples of one size */
  DW_STEP_DRILL, /**< metric drills, number drills where inches are shown */
  DW_STEP_GRADE  /**< bottled oil: by 1, 10, 50, 500, 5000 cSt from 1, 10, 100, 1000, 10000 on */
} dw_step_kind;

typedef struct
{
  dw_step_kind kind;
  double size; /**< [SI or degC] DW_STEP_EVEN only; 1, 2 or 5 times a power of ten when shown */
} dw_step;

/**
 * Move a number up or down.
 *
 * @param value  [SI or degC] finite; when it lies between two steps the first move reaches one
 * @param n      how many steps, negative = down
 * @return       [SI or degC] inside @p limit; @p value where there is no further step
 */
double dw_step_move (dw_step step, dw_quantity quantity, dw_units units, dw_limit_id limit,
                     double value, int n);

G_END_DECLS
