/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-small-chart.h
 * The curves of one damper as small as a stamp: no words, compression up and rebound down, a line at
 * no force. For tables, where many are held against each other: all have the same axes.
 */
#pragma once

#include "draw/dw-series.h"
#include "sheet/dw-block.h"

G_BEGIN_DECLS

/** [N] largest force of a series in either stroke, 0 when it has none. */
double dw_small_chart_reach (const dw_series *series);

/**
 * Draw into a box of a block.
 *
 * @param series   borrowed until the block is freed
 * @param beside   thin and dashed behind it, borrowed as well; NULL = none
 * @param to       [m/s] at the right end, > 0
 * @param reach    [N] at the upper end, and at the lower; > 0
 */
void dw_small_chart_add (dw_block *block, dw_rect box, const dw_series *series,
                         const dw_series *beside, double to, double reach);

G_END_DECLS
