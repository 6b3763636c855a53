/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-panel.h
 * Everything that one damper is made of, to be edited.
 *
 * Shows the damper of one axle of one setup and follows the document; changes go through
 * dw_document_edit(). Taller than most places: put it into a scrolled window. From 480 pixels of
 * width on; wider ones get more columns.
 *
 * Actions, for whatever is inside: "section.copy-to" and "section.copy-from" (name of a section,
 * see dw_section_name()) make a section the same in front and rear.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/dw-chart-style.h"
#include "project/dw-document.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_DAMPER_PANEL (dw_damper_panel_get_type ())
G_DECLARE_FINAL_TYPE (DwDamperPanel, dw_damper_panel, DW, DAMPER_PANEL, GtkWidget)

/** Of the front axle, in metric units, without a document. */
GtkWidget *dw_damper_panel_new (void);

/** @param document  referenced; NULL = none: everything is empty and insensitive */
void dw_damper_panel_set_document (DwDamperPanel *self, DwDocument *document);

/** @param id  of a setup of the document, copied; NULL, or one that is not there = as without */
void dw_damper_panel_set_setup (DwDamperPanel *self, const char *id);

void dw_damper_panel_set_axle (DwDamperPanel *self, dw_axle axle);

/** @param units  bits of dw_units */
void dw_damper_panel_set_units (DwDamperPanel *self, dw_units units);

/** Of the piston's drawing. @param style  copied; as for the charts */
void dw_damper_panel_set_style (DwDamperPanel *self, const dw_chart_style *style);

G_END_DECLS
