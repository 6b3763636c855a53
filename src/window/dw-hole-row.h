/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-hole-row.h
 * One group of equal holes: count, diameter, open or covered.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-damper-editor.h"

G_BEGIN_DECLS

#define DW_TYPE_HOLE_ROW (dw_hole_row_get_type ())
G_DECLARE_FINAL_TYPE (DwHoleRow, dw_hole_row, DW, HOLE_ROW, GtkWidget)

/** @param editor  referenced; @param index  of the group, which must be there */
GtkWidget *dw_hole_row_new (DwDamperEditor *editor, int index);

G_END_DECLS
