/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-widget.h
 * Small things that widgets of ours share.
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

/**
 * Set a tooltip that is another one. GTK asks the display where the pointer is whenever one is set,
 * and waits for the answer; what is set at every edit must not.
 */
void dw_widget_set_tooltip (GtkWidget *widget, const char *text);

/** What it says, also of a widget that keeps the text itself; caller frees. NULL without one. */
char *dw_widget_dup_tooltip (GtkWidget *widget);

/**
 * An empty picture for the drawing of a widget, in pixels of its screen: lengths on it are those of
 * the widget. What GTK hands out to draw on keeps the strokes and draws them again in every frame
 * that touches them; a picture is copied. Caller destroys it.
 */
cairo_surface_t *dw_widget_new_picture (GtkWidget *widget, int width, int height);

G_END_DECLS
