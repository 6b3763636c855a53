/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-children.h
 * What a widget of ours does with its children when it goes.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * Take every child out of a widget, as its dispose must before it chains up.
 *
 * GTK 4.8 lets go of a template's bound children, but leaves the child at the template's root in its parent.
 */
void dw_widget_drop_children (GtkWidget *widget);

G_END_DECLS
