/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-figures-table.h
 * The figures of one axle as a table: force or c at three speeds in both strokes with the change in
 * percent, rebound share, damping ratio, pack.
 *
 * In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-tools.h"
#include "study/dw-compare.h"

G_BEGIN_DECLS

/**
 * The table in a column.
 *
 * @param comparison  b is the setup that is told, a the one it is compared with; NULL = cells to
 *                    write in
 * @param b           its damper; NULL without one
 */
dw_block *dw_figures_table_make (const dw_sheet_tools *tools, const dw_comparison *comparison,
                                 const dw_damper *b, dw_axle axle);

G_END_DECLS
