/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-shims-table.h
 * The stack over the covered holes, from the piston outwards; actions "shims.add", and with an
 * index "shims.remove", "shims.up" (towards the piston) and "shims.down".
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-damper-editor.h"

G_BEGIN_DECLS

#define DW_TYPE_SHIMS_TABLE (dw_shims_table_get_type ())
G_DECLARE_FINAL_TYPE (DwShimsTable, dw_shims_table, DW, SHIMS_TABLE, GtkWidget)

/** Once. @param editor  referenced */
void dw_shims_table_set_editor (DwShimsTable *self, DwDamperEditor *editor);

G_END_DECLS
