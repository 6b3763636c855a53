/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-flow-layout.h
 * Equal columns, as many as fit, and not much wider than asked for; children fill them row by row.
 *
 * Layouts of one column width under each other have their columns in line. Unlike a flow box it
 * takes no part in moving the focus, so that Tab walks past fields that are insensitive.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define DW_TYPE_FLOW_LAYOUT (dw_flow_layout_get_type ())
G_DECLARE_FINAL_TYPE (DwFlowLayout, dw_flow_layout, DW, FLOW_LAYOUT, GtkLayoutManager)

/** @param column_width  least width of a column in pixels, > 0 */
GtkLayoutManager *dw_flow_layout_new (int column_width);

/** How many columns a width has. @param width  in pixels */
int dw_flow_layout_get_n_columns (DwFlowLayout *self, int width);

G_END_DECLS
