/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-widget.h"

void
dw_widget_drop_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

void
dw_widget_set_tooltip (GtkWidget *widget, const char *text)
{
  if (g_strcmp0 (text, gtk_widget_get_tooltip_text (widget)) != 0)
    gtk_widget_set_tooltip_text (widget, text);
}
