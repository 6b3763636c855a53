/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-children.h"

void
dw_widget_drop_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}
