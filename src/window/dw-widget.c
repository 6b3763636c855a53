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
  g_autofree char *before = dw_widget_dup_tooltip (widget);
  if (g_strcmp0 (text, before) != 0)
    g_object_set (widget, "tooltip-text", text, NULL);
}

char *
dw_widget_dup_tooltip (GtkWidget *widget)
{
  char *text;
  g_object_get (widget, "tooltip-text", &text, NULL);
  return text;
}

cairo_surface_t *
dw_widget_new_picture (GtkWidget *widget, int width, int height)
{
  const int scale = gtk_widget_get_scale_factor (widget);
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width * scale,
                                                         height * scale);

  cairo_surface_set_device_scale (picture, scale, scale);
  return picture;
}
