/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-curves-page.h
 * Front and rear side by side: chart, reading, figures; below them the dampers to edit.
 *
 * Signal "restyled" after the charts took other colours.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/dw-chart-style.h"
#include "project/dw-document.h"
#include "window/dw-chart-view.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_CURVES_PAGE (dw_curves_page_get_type ())
G_DECLARE_FINAL_TYPE (DwCurvesPage, dw_curves_page, DW, CURVES_PAGE, GtkWidget)

/**
 * Show a document.
 *
 * @param drawn     of char *, ids whose curves are shown
 * @param selected  id of the setup that is edited
 */
void dw_curves_page_update (DwCurvesPage *self, DwDocument *document, const GPtrArray *drawn,
                            const char *selected, dw_units units);

/** Bright-sun colours, whatever the desktop's theme. */
void dw_curves_page_set_sun (DwCurvesPage *self, gboolean sun);

/** Undo all zoom. */
void dw_curves_page_show_whole (DwCurvesPage *self);

/** Style of the charts; borrowed. */
const dw_chart_style *dw_curves_page_get_style (DwCurvesPage *self);

/** Chart of an axle, borrowed. */
DwChartView *dw_curves_page_get_chart (DwCurvesPage *self, dw_axle axle);

G_END_DECLS
