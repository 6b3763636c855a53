/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-short-names.h"

/* Letters that are always seen. */
static const int LEAST_CHARS = 3;

static void
on_setup (GtkListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_label_new ("");
  (void)factory;
  (void)data;
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkListItemFactory *factory, GtkListItem *item, gpointer data)
{
  (void)factory;
  (void)data;
  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (item)),
                       gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

void
dw_short_names_apply (GtkDropDown *names)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (names));

  GtkListItemFactory *whole = gtk_drop_down_get_factory (names);
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  if (whole != NULL)
    gtk_drop_down_set_list_factory (names, whole);
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  gtk_drop_down_set_factory (names, factory);
}
