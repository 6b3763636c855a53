/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-row-box.h"

static int
count_rows (GtkBox *rows)
{
  int n = 0;
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (rows)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    n++;
  return n;
}

/* The keyboard must not fall out of the table when its row goes. */
static void
remove_last (GtkBox *rows, GtkWidget *fallback)
{
  GtkWidget *row = gtk_widget_get_last_child (GTK_WIDGET (rows));
  GtkWidget *heir = gtk_widget_get_prev_sibling (row);

  if (gtk_widget_get_focus_child (GTK_WIDGET (rows)) == row)
    gtk_widget_grab_focus (heir != NULL ? heir : fallback);
  gtk_box_remove (rows, row);
}

void
dw_row_box_sync (GtkBox *rows, int n, DwRowNew make, gpointer data, GtkWidget *fallback)
{
  int shown = count_rows (rows);

  for (; shown > n; shown--)
    remove_last (rows, fallback);
  for (; shown < n; shown++)
    gtk_box_append (rows, make (data, shown));
  gtk_widget_set_visible (GTK_WIDGET (rows), n > 0);
}

void
dw_row_box_focus (GtkBox *rows, int index)
{
  GtkWidget *row = index < 0 ? gtk_widget_get_last_child (GTK_WIDGET (rows))
                             : gtk_widget_get_first_child (GTK_WIDGET (rows));

  for (; index > 0 && row != NULL; index--)
    row = gtk_widget_get_next_sibling (row);
  if (row != NULL)
    gtk_widget_grab_focus (row);
}
