/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-setup-list.h
 * The setups of a project, on the left of every page: which is in the car, which are drawn with
 * which line, and what differs between the selected one and the fitted one, in words.
 *
 * Signals: "setup-selected" (id), "setup-drawn" (id, gboolean).
 */
#pragma once

#include <gtk/gtk.h>

#include "sheet/dw-quantity.h"
#include "draw/dw-chart-style.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

#define DW_TYPE_SETUP_LIST (dw_setup_list_get_type ())
G_DECLARE_FINAL_TYPE (DwSetupList, dw_setup_list, DW, SETUP_LIST, GtkWidget)

/**
 * Show a project.
 *
 * @param drawn     of char *, ids whose curves are shown
 * @param selected  id of the setup that is edited
 */
void dw_setup_list_update (DwSetupList *self, const dw_project *project, const GPtrArray *drawn,
                           const char *selected, dw_units units);

/** Style of the line samples. */
void dw_setup_list_set_style (DwSetupList *self, const dw_chart_style *style);

/**
 * Line of a drawn setup: DW_SLOT_FITTED for the fitted one, then one after the other; -1 when it
 * is not drawn. List, chart and legend all ask here, so that they agree.
 */
int dw_setup_slot (const dw_project *project, const GPtrArray *drawn, const char *id);

/**
 * What differs between two setups on one axle, as text with one line a difference and, when more
 * than one acts on the force, a line that says what that means. Caller frees.
 */
char *dw_setup_differences (const dw_setup *fitted, const dw_setup *setup, dw_axle axle,
                            dw_units units);

G_END_DECLS
