/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-row-box.h
 * A box with as many rows as a list has entries.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** A row for the entry of this index, floating. */
typedef GtkWidget *(*DwRowNew) (gpointer data, int index);

/**
 * Add rows to the end, or take them away there, until there are @p n.
 *
 * @param fallback  gets the focus when a row that had it goes and no row is left
 */
void dw_row_box_sync (GtkBox *rows, int n, DwRowNew make, gpointer data, GtkWidget *fallback);

/** Put the focus into a row. @param index  -1 = the last one */
void dw_row_box_focus (GtkBox *rows, int index);

G_END_DECLS
