/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-bench-card.h
 * The bench card: the work that makes one setup of another, in the order in which it is done, with
 * boxes to tick for left and right, cautions first and a table for what is measured afterwards.
 *
 * In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-part.h"

G_BEGIN_DECLS

/**
 * From the setup that is compared with to the one that is told; from new parts when there is none to
 * compare with. The tools must name a setup. Caller frees.
 */
dw_sheet_part *dw_bench_card_new (const dw_sheet_tools *tools);

G_END_DECLS
