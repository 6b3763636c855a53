/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-print.h
 * Sheets to a printer: the dialog, the paper, and both kept for the next time.
 *
 * Printer settings and page setup lie in the user's folder of settings. For the main thread.
 */
#pragma once

#include <gtk/gtk.h>

#include "sheet/dw-sheet.h"

G_BEGIN_DECLS

#define DW_TYPE_SHEET_PRINT (dw_sheet_print_get_type ())
G_DECLARE_FINAL_TYPE (DwSheetPrint, dw_sheet_print, DW, SHEET_PRINT, GObject)

/** Make the sheet that is to be printed, for a paper; NULL = it can not be made. Caller frees. */
typedef dw_sheet *(*DwSheetMaker) (dw_paper paper, gpointer data);

/**
 * With what was chosen the last time. Caller unrefs.
 *
 * @param path  of the file that keeps it, copied; NULL = the usual one
 */
DwSheetPrint *dw_sheet_print_new (const char *path);

/** The paper that is chosen; another one counts as the one of ours that is nearest in shape. */
dw_paper dw_sheet_print_get_paper (DwSheetPrint *self);

/** Choose a paper, and keep it. */
void dw_sheet_print_set_paper (DwSheetPrint *self, dw_paper paper);

/**
 * Print, after the user's dialog, or into a PDF without one.
 *
 * The sheet is made anew for the paper that is chosen in the dialog, so that drawings keep their
 * scales; on a paper that is none of ours pages are scaled to fit.
 *
 * @param export_to  name of a file; NULL = ask
 * @param error      what went wrong; not set when the user gave up
 * @return           FALSE when nothing was printed
 */
gboolean dw_sheet_print_run (DwSheetPrint *self, GtkWindow *parent, const char *title,
                             DwSheetMaker maker, gpointer data, const char *export_to,
                             GError **error);

G_END_DECLS
