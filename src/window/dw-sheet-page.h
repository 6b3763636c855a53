/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-page.h
 * The page that shows a sheet as it will be printed, what it tells, and hands it on: to a printer, a
 * PDF file or the clipboard.
 *
 * Actions: sheet.print, sheet.save, sheet.save-to with a path, sheet.print-to with a path (what the
 * printer would get, as PDF), sheet.copy, sheet.zoom-in, sheet.zoom-out, sheet.zoom-fit. Signal
 * "failed" (const char *why) when one of them could not.
 */
#pragma once

#include "window/dw-sheet-form.h"
#include "window/dw-sheet-print.h"
#include "window/dw-sheet-view.h"

G_BEGIN_DECLS

#define DW_TYPE_SHEET_PAGE (dw_sheet_page_get_type ())
G_DECLARE_FINAL_TYPE (DwSheetPage, dw_sheet_page, DW, SHEET_PAGE, GtkWidget)

/** Tell what the window shows. Nothing is made until somebody looks. */
void dw_sheet_page_update (DwSheetPage *self, DwDocument *document, const char *selected,
                           dw_units units);

/** Choose the pages. */
void dw_sheet_page_set_kind (DwSheetPage *self, dw_sheet_kind kind);

/** Borrowed. */
DwSheetView *dw_sheet_page_get_view (DwSheetPage *self);

/** Borrowed. */
DwSheetForm *dw_sheet_page_get_form (DwSheetPage *self);

/** Borrowed. */
DwSheetPrint *dw_sheet_page_get_print (DwSheetPage *self);

G_END_DECLS
