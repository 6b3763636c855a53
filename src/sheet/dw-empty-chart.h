/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-empty-chart.h
 * Two grids to draw measured curves in, as the charts of a setup stand on its sheet.
 */
#pragma once

#include "sheet/dw-sheet-tools.h"

G_BEGIN_DECLS

/** Front and rear side by side in a box of a block, in the language of the process. */
void dw_empty_chart_add (const dw_sheet_tools *tools, dw_block *block, const dw_rect *box);

G_END_DECLS
