/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-card.h
 * How front and rear are built: the piston's face to scale and the stack as a section, then all
 * parts in words, front and rear side by side.
 *
 * In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-tools.h"

G_BEGIN_DECLS

/**
 * Face and stack of both axles, with the axles' names over them.
 *
 * @param dampers  DW_N_AXLES of them; NULL = an empty bore to draw in
 */
dw_block *dw_damper_card_drawings (const dw_sheet_tools *tools, const dw_damper *dampers);

/**
 * The parts in words, a block a row. Rows with nothing to tell in front and rear are left out, or are
 * lines to write on.
 *
 * @param dampers  DW_N_AXLES of them; NULL = lines to write on
 * @param rows     added to
 */
void dw_damper_card_add_rows (const dw_sheet_tools *tools, const dw_damper *dampers,
                              GPtrArray *rows);

G_END_DECLS
