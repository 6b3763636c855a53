/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet.h
 * Sheets for print: setup sheet, bench card, blank sheet, all setups of a project.
 *
 * One painter serves the preview, the printer, the file and the picture. The same input gives the
 * same pages, whatever the day, but for the date that is asked for. In the language of the process;
 * one thread at a time.
 */
#pragma once

#include "sheet/dw-export.h"
#include "sheet/dw-sheet-part.h"

G_BEGIN_DECLS

typedef enum
{
  DW_SHEET_SETUP,   /**< one setup */
  DW_SHEET_CARD,    /**< the bench card alone */
  DW_SHEET_BOTH,    /**< setup sheet, then bench card */
  DW_SHEET_BLANK,   /**< a setup sheet to write on */
  DW_SHEET_SUMMARY, /**< all setups in a table */
  DW_N_SHEETS
} dw_sheet_kind;

/** Opaque. Free with dw_sheet_free(). */
typedef struct dw_sheet dw_sheet;

/**
 * Compute and lay out.
 *
 * @param options  setup and against are left alone where the kind does not need them; else a setup
 *                 must be named. A setup is never compared with itself.
 * @param failure  filled on failure; may be NULL
 * @return         caller frees; NULL when a damper can not be computed. Project and setups must
 *                 live as long, texts are copied.
 */
dw_sheet *dw_sheet_new (dw_sheet_kind kind, const dw_sheet_options *options,
                        dw_sheet_failure *failure);

/** NULL is allowed. */
void dw_sheet_free (dw_sheet *sheet);

int dw_sheet_get_n_pages (const dw_sheet *sheet);

/** Borrowed. @param page  from 0 */
const dw_block *dw_sheet_get_page (const dw_sheet *sheet, int page);

/** Whether what stands on a page goes on on the next one. */
bool dw_sheet_goes_on (const dw_sheet *sheet, int page);

/** [pt] of every page */
double dw_sheet_get_width (const dw_sheet *sheet);

/** [pt] of every page */
double dw_sheet_get_height (const dw_sheet *sheet);

/** Where everything on a page stands. */
dw_rect dw_sheet_get_frame (const dw_sheet *sheet);

/** In points, from the upper left corner, on white. */
void dw_sheet_paint (const dw_sheet *sheet, int page, cairo_t *cr);

/** Setup and project: for a file's own data and its name. Borrowed. */
const char *dw_sheet_get_title (const dw_sheet *sheet);

/**
 * Pages for dw_export_render().
 *
 * @param first    page to begin with
 * @param n_pages  how many; 1 unless they go into a PDF
 */
dw_drawing dw_sheet_drawing (dw_sheet *sheet, int first, int n_pages);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_sheet, dw_sheet_free)

G_END_DECLS
