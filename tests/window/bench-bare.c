/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-bare.c
 * A window of nothing but GTK's own widgets, with which bench-start compares the program's start:
 * as many labels, entries, buttons, drop-downs, menus and drawing areas as were counted, hidden ones
 * hidden, shared out evenly over as many boxes, which stand in a grid that scrolls. They have a
 * short text each and do nothing; drawing areas draw nothing.
 *
 * bench-bare COUNTS shows it and tells of its first frame, bench-bare without an argument only says
 * by its status whether there is a display.
 */
#include <stdio.h>
#include <stdlib.h>

#include "start-probe.h"

enum
{
  /* as the program's window */
  WIDTH = 1280,
  HEIGHT = 800,
  COLUMNS = 12, /* of boxes */
  NO_DISPLAY = 77
};

static GtkWidget *
new_drop_down (void)
{
  const char *const items[] = { "One", "Other", NULL };
  return gtk_drop_down_new_from_strings (items);
}

static GtkWidget *
new_menu_button (int n_items)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  for (int i = 0; i < n_items; i++)
    g_menu_append (menu, "Do something", "win.nothing");
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "open-menu-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  return button;
}

static GtkWidget *
new_entry (void)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), "1.3");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 7);
  return entry;
}

/* @param n_items  of a menu */
static GtkWidget *
new_widget (probe_kind kind, int n_items)
{
  switch (kind)
    {
    case PROBE_LABEL:
      return gtk_label_new ("Diameter");
    case PROBE_ENTRY:
      return new_entry ();
    case PROBE_BUTTON:
      return gtk_button_new_with_label ("Button");
    case PROBE_ICON_BUTTON:
      return gtk_button_new_from_icon_name ("edit-undo-symbolic");
    case PROBE_TOGGLE:
      return gtk_toggle_button_new_with_label ("Toggle");
    case PROBE_CHECK:
      return gtk_check_button_new ();
    case PROBE_DROP_DOWN:
      return new_drop_down ();
    case PROBE_MENU_BUTTON:
      return new_menu_button (n_items);
    case PROBE_IMAGE:
      return gtk_image_new_from_icon_name ("open-menu-symbolic");
    case PROBE_SEPARATOR:
      return gtk_separator_new (GTK_ORIENTATION_HORIZONTAL);
    case PROBE_DRAWING_AREA:
      return gtk_drawing_area_new ();
    case PROBE_BOX:
    case N_PROBE_KINDS:
      break;
    }
  return gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
}

/* Into boxes that are shown, in turn. */
static void
fill_boxes (const GPtrArray *boxes, const probe_counts *counts)
{
  const int menus = counts->n[PROBE_MENU_BUTTON][0] + counts->n[PROBE_MENU_BUTTON][1];
  guint to = 0;
  int items_left = counts->menu_items;
  int menus_left = menus;

  for (int kind = 0; kind < PROBE_BOX; kind++)
    for (int shown = 0; shown < 2; shown++)
      for (int i = 0; i < counts->n[kind][shown]; i++)
        {
          const int n_items = menus_left > 0 ? items_left / menus_left : 0;
          GtkWidget *widget = new_widget ((probe_kind)kind, n_items);
          if (kind == PROBE_MENU_BUTTON)
            {
              items_left -= n_items;
              menus_left--;
            }
          gtk_widget_set_visible (widget, shown == 1);
          gtk_box_append (g_ptr_array_index (boxes, to++ % boxes->len), widget);
        }
}

static GtkWidget *
new_content (const probe_counts *counts)
{
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  g_autoptr (GPtrArray) boxes = g_ptr_array_new ();
  int n = 0;

  for (int shown = 0; shown < 2; shown++)
    for (int i = 0; i < counts->n[PROBE_BOX][shown]; i++, n++)
      {
        GtkWidget *box = new_widget (PROBE_BOX, 0);
        gtk_widget_set_visible (box, shown == 1);
        gtk_grid_attach (GTK_GRID (grid), box, n % COLUMNS, n / COLUMNS, 1, 1);
        if (shown == 1)
          g_ptr_array_add (boxes, box);
      }
  if (boxes->len > 0)
    fill_boxes (boxes, counts);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), grid);
  return scrolled;
}

static void
on_activate (GtkApplication *app, gpointer data)
{
  GtkWidget *window = gtk_application_window_new (app);

  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_set_child (GTK_WINDOW (window), new_content (data));
  start_probe_watch (GTK_WINDOW (window));
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  probe_counts counts;

  if (argc == 1)
    return gtk_init_check () ? EXIT_SUCCESS : NO_DISPLAY;
  if (argc != 2 || !start_probe_read (argv[1], &counts))
    {
      fprintf (stderr, "usage: bench-bare [COUNTS]\n");
      return 2;
    }
  g_autoptr (GtkApplication) app = gtk_application_new ("org.dampwright.Bare",
                                                        G_APPLICATION_NON_UNIQUE);
  g_signal_connect (app, "activate", G_CALLBACK (on_activate), &counts);
  return g_application_run (G_APPLICATION (app), 0, NULL);
}
