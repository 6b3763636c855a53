/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-shim-row.h
 * Equal leaves of the stack: count, thickness, material.
 *
 * The three numbers of a material are shown where it is none of those with a name, or where the
 * user has chosen to see them.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-damper-editor.h"

G_BEGIN_DECLS

#define DW_TYPE_SHIM_ROW (dw_shim_row_get_type ())
G_DECLARE_FINAL_TYPE (DwShimRow, dw_shim_row, DW, SHIM_ROW, GtkWidget)

/** @param editor  referenced; @param index  of the shim, which must be there */
GtkWidget *dw_shim_row_new (DwDamperEditor *editor, int index);

G_END_DECLS
