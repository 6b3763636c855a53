/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-page.h
 * Every hole size before the drill turns: the map of sizes, the list of choices, what the chosen one
 * does, its plan.
 *
 * The damper is that of the selected setup. Signal "trial-made" (id) after a choice was put into a
 * trial, so that it can be drawn.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-document.h"
#include "window/dw-drill-choices.h"
#include "window/dw-drill-list.h"
#include "window/dw-drill-map-view.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_PAGE (dw_drill_page_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillPage, dw_drill_page, DW, DRILL_PAGE, GtkWidget)

/**
 * The project, what is selected, or the units are other ones.
 *
 * While the page is not on the screen nothing is computed; it catches up when it is shown.
 *
 * @param document  kept with a reference
 * @param selected  id of the setup that is studied; may be ""
 */
void dw_drill_page_update (DwDrillPage *self, DwDocument *document, const char *selected,
                           dw_units units);

/** @param style  copied; its lengths are those of the screen already */
void dw_drill_page_set_style (DwDrillPage *self, const dw_chart_style *style);

/** Parts of the page, borrowed. */
DwDrillChoices *dw_drill_page_get_choices (DwDrillPage *self);
DwDrillMapView *dw_drill_page_get_map (DwDrillPage *self);
DwDrillList *dw_drill_page_get_list (DwDrillPage *self);

/** Choose a pair of sizes [m], 0 = as it is; false when it is none of the choices. */
gboolean dw_drill_page_choose (DwDrillPage *self, const double size[DW_DRILL_SETS]);

G_END_DECLS
