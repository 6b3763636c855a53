/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-holes-table.h
 * The groups of holes of a piston, a row each; actions "holes.add" and "holes.remove" (index).
 *
 * Rows are kept as they are when their numbers change, so that the cursor stays; a list view would
 * make them anew.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-damper-editor.h"

G_BEGIN_DECLS

#define DW_TYPE_HOLES_TABLE (dw_holes_table_get_type ())
G_DECLARE_FINAL_TYPE (DwHolesTable, dw_holes_table, DW, HOLES_TABLE, GtkWidget)

/** Once. @param editor  referenced */
void dw_holes_table_set_editor (DwHolesTable *self, DwDamperEditor *editor);

G_END_DECLS
