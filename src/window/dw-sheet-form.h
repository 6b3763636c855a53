/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-form.h
 * What a sheet tells besides the dampers: the meeting's words, temperatures, masses, notes.
 *
 * Everything that is typed is in the document at once, a run of typing as one step to undo. What is
 * not allowed stays in its field, with the reason under it, and changes nothing.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-document.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_SHEET_FORM (dw_sheet_form_get_type ())
G_DECLARE_FINAL_TYPE (DwSheetForm, dw_sheet_form, DW, SHEET_FORM, GtkWidget)

GtkWidget *dw_sheet_form_new (void);

/**
 * Show what a document says.
 *
 * @param document  referenced
 * @param selected  id of the setup whose notes are shown; copied
 */
void dw_sheet_form_update (DwSheetForm *self, DwDocument *document, const char *selected,
                           dw_units units);

G_END_DECLS
