/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "start-probe.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

/* ---- widgets ---- */

static int
count_all (GtkWidget *widget)
{
  int n = 1;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_all (child);
  return n;
}

static int
count_type (GtkWidget *widget, const char *name)
{
  int n = g_str_equal (G_OBJECT_TYPE_NAME (widget), name);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_type (child, name);
  return n;
}

static probe_kind
kind_of (GtkWidget *widget)
{
  static const struct
  {
    const char *type;
    probe_kind kind;
  } kinds[] = {
    { "GtkLabel", PROBE_LABEL },
    { "GtkEntry", PROBE_ENTRY },
    { "GtkButton", PROBE_BUTTON },
    { "GtkToggleButton", PROBE_TOGGLE },
    { "GtkCheckButton", PROBE_CHECK },
    { "GtkDropDown", PROBE_DROP_DOWN },
    { "GtkMenuButton", PROBE_MENU_BUTTON },
    { "GtkImage", PROBE_IMAGE },
    { "GtkSeparator", PROBE_SEPARATOR },
    { "GtkDrawingArea", PROBE_DRAWING_AREA },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (G_OBJECT_TYPE_NAME (widget), kinds[i].type))
      return kinds[i].kind == PROBE_BUTTON && gtk_button_get_icon_name (GTK_BUTTON (widget)) != NULL
                 ? PROBE_ICON_BUTTON
                 : kinds[i].kind;
  return PROBE_BOX;
}

static void
count (GtkWidget *widget, probe_counts *counts)
{
  const probe_kind kind = kind_of (widget);

  counts->n[kind][gtk_widget_get_mapped (widget) ? 1 : 0]++;
  if (kind == PROBE_MENU_BUTTON)
    counts->menu_items += count_type (widget, "GtkModelButton");
  if (kind != PROBE_BOX)
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    count (child, counts);
}

static void
write_counts (GtkWidget *window, const char *path)
{
  probe_counts counts = { .menu_items = 0 };
  FILE *file = fopen (path, "w");

  if (file == NULL)
    return;
  count (window, &counts);
  for (int i = 0; i < N_PROBE_KINDS; i++)
    fprintf (file, "%d %d\n", counts.n[i][0], counts.n[i][1]);
  fprintf (file, "%d\n", counts.menu_items);
  fclose (file);
}

gboolean
start_probe_read (const char *path, probe_counts *counts)
{
  FILE *file = fopen (path, "r");

  if (file == NULL)
    return FALSE;
  gboolean good = TRUE;
  for (int i = 0; i < N_PROBE_KINDS && good; i++)
    good = fscanf (file, "%d %d", &counts->n[i][0], &counts->n[i][1]) == 2;
  good = good && fscanf (file, "%d", &counts->menu_items) == 1;
  fclose (file);
  return good;
}

/* ---- the first frame ---- */

/* Of this process [MB]; 0 when the kernel does not tell. */
static double
memory_now (const char *what)
{
  g_autofree char *text = NULL;

  if (!g_file_get_contents ("/proc/self/smaps_rollup", &text, NULL, NULL))
    return 0.0;
  const char *line = strstr (text, what);
  return line != NULL ? g_ascii_strtod (line + strlen (what), NULL) * 1024.0 / 1e6 : 0.0;
}

static void
on_after_paint (GtkWidget *window)
{
  const gint64 now = g_get_monotonic_time ();
  const char *path = g_getenv (START_PROBE_COUNTS);

  printf ("%" G_GINT64_FORMAT " %.3f %.3f %d\n", now, memory_now ("\nPss:"), memory_now ("\nRss:"),
          count_all (window));
  fflush (stdout);
  if (path != NULL)
    write_counts (window, path);
  _exit (EXIT_SUCCESS);
}

/* The clock has handlers of GTK's own by then, so that these come after them. */
static void
on_map (GtkWidget *window)
{
  g_signal_connect_swapped (gtk_widget_get_frame_clock (window), "after-paint",
                            G_CALLBACK (on_after_paint), window);
}

void
start_probe_watch (GtkWindow *window)
{
  g_signal_connect_after (window, "map", G_CALLBACK (on_map), NULL);
}
