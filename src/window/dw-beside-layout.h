/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-beside-layout.h
 * Two children: the first is as wide as can be, the second as wide as it wants to be and beside it,
 * or below it, at the start of the line, where the width is too small for both.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define DW_TYPE_BESIDE_LAYOUT (dw_beside_layout_get_type ())
G_DECLARE_FINAL_TYPE (DwBesideLayout, dw_beside_layout, DW, BESIDE_LAYOUT, GtkLayoutManager)

GtkLayoutManager *dw_beside_layout_new (void);

G_END_DECLS
