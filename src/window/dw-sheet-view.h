/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-view.h
 * The pages of a sheet as they will be printed, one below the other, at any size.
 *
 * What is painted is what dw_sheet_paint() paints for a printer. For a scrolled window. The wheel
 * with Ctrl held, + and - change the size. Signal "zoomed" after the size has changed.
 */
#pragma once

#include <gtk/gtk.h>

#include "sheet/dw-sheet.h"

G_BEGIN_DECLS

#define DW_TYPE_SHEET_VIEW (dw_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (DwSheetView, dw_sheet_view, DW, SHEET_VIEW, GtkWidget)

/** Sizes that may be asked for [1] of the real size. */
#define DW_SHEET_VIEW_LEAST 0.25
#define DW_SHEET_VIEW_MOST  4.0

GtkWidget *dw_sheet_view_new (void);

/** Show a sheet, which is taken; NULL = none. */
void dw_sheet_view_take (DwSheetView *self, dw_sheet *sheet);

/** Borrowed until the next one is taken; NULL = none. */
dw_sheet *dw_sheet_view_get_sheet (DwSheetView *self);

/** [1] of the real size; 0 = as wide as there is room. Kept within what may be asked for. */
void dw_sheet_view_set_zoom (DwSheetView *self, double zoom);

/** [1] of the real size, as it is shown now. */
double dw_sheet_view_get_shown_zoom (DwSheetView *self);

/** Whether pages are as wide as there is room. */
gboolean dw_sheet_view_is_fitting (DwSheetView *self);

/** [1] of the real size at which one page is seen whole. @param height  [px] that there is */
double dw_sheet_view_zoom_for_height (DwSheetView *self, double height);

/** The next larger or smaller of round sizes. @param steps  negative = smaller */
void dw_sheet_view_step_zoom (DwSheetView *self, int steps);

/** The page at a height [px] of the widget, from 0. */
int dw_sheet_view_page_at (DwSheetView *self, double y);

/** Where a page's upper left corner is [px] in the widget, and its size. */
graphene_rect_t dw_sheet_view_page_box (DwSheetView *self, int page);

G_END_DECLS
