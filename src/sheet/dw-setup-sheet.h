/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-setup-sheet.h
 * The setup sheet: everything that a team mate needs to build four dampers, on one page.
 *
 * Head and fields, faces and stacks, parts in words, charts, figures, what differs from the setup it
 * is compared with, notes. The charts are as high as the rest leaves room for; where that is less
 * than they need, what differs and the notes go on to another page. What is left of the last page is
 * lines to write on. In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-part.h"

G_BEGIN_DECLS

/**
 * Of the setup that the tools name; a blank sheet when they name none.
 *
 * @param failure  filled on failure; may be NULL
 * @return         caller frees; NULL when a damper can not be computed
 */
dw_sheet_part *dw_setup_sheet_new (const dw_sheet_tools *tools, dw_sheet_failure *failure);

G_END_DECLS
