/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-summary-sheet.h
 * All setups of a project in one table with small charts, for the archive.
 *
 * In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-part.h"

G_BEGIN_DECLS

/**
 * The table, on as many pages as it needs. What the setups are compared with in the charts is the
 * fitted one.
 *
 * @param failure  filled on failure; may be NULL
 * @return         caller frees; NULL when a damper can not be computed
 */
dw_sheet_part *dw_summary_sheet_new (const dw_sheet_tools *tools, dw_sheet_failure *failure);

G_END_DECLS
