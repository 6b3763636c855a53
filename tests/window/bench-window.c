/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file bench-window.c
 * How long the window takes to show an edit, and to move the reading line; prints "name value unit"
 * lines, medians and the value that 99 in 100 stay below.
 *
 * One demo project, two setups drawn in both charts. Edits are made by stepping number fields of
 * the damper panels as an arrow key does. "-call" is the edit itself until the main loop is free
 * again, "-frame" what the frame clock does then, from before-paint to after-paint, of it "-layout"
 * and "-paint", and
 * "-to-screen" all of it from the call on, waiting for the clock included. "-cpu" is the processor
 * time of that way, which hardly depends on what else the machine does.
 */
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "test-support.h"
#include "window/dw-application.h"
#include "window/dw-curves-page.h"
#include "window/dw-damper-entry.h"
#include "window/dw-drill-page.h"
#include "window/dw-sheet-page.h"
#include "window/dw-window.h"

enum
{
  N_EDITS = 300,
  N_READINGS = 300,
  N_WARM = 10,
  PAUSE_MS = 24, /* between two changes; keys repeat about every 33 ms */
  PATIENCE_MS = 20000,
  NO_DISPLAY = 77
};

/* Numbers that are edited in turn, a step up and a step down. */
static const struct
{
  dw_form_id form;
  const char *attribute;
} edited[] = {
  { DW_FORM_HOLES, "diameter-mm" },
  { DW_FORM_OIL_NOMINAL, "viscosity-cst" },
  { DW_FORM_SHIM, "thickness-mm" },
  { DW_FORM_SPRING, "rate-n-per-mm" },
};

/* What is measured of each change [ms]. */
typedef struct
{
  double call, frame, to_screen, cpu;
  double layout, paint; /* parts of the frame */
} change_times;

/* [us] */
typedef struct
{
  gint64 wall, cpu;
} moment;

/* Of the first frame since the change [us]; ended 0 = there was none yet. */
static gint64 paint_began, updated, laid_out, painted, paint_ended, cpu_ended;
static guint n_frames;

/* [us] */
static gint64
cpu_time (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return t.tv_sec * G_USEC_PER_SEC + t.tv_nsec / 1000;
}

static void
on_before_paint (void)
{
  if (paint_ended == 0)
    paint_began = g_get_monotonic_time ();
}

/* GTK's own handlers came first: each of these marks the end of a phase. */
static void
on_phase (gint64 *end)
{
  if (paint_ended == 0)
    *end = g_get_monotonic_time ();
}

static void
on_after_paint (void)
{
  n_frames++;
  if (paint_ended != 0)
    return;
  paint_ended = g_get_monotonic_time ();
  cpu_ended = cpu_time ();
}

static gboolean
set_true (gpointer data)
{
  *(gboolean *)data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
wait_ms (guint ms)
{
  gboolean over = FALSE;

  g_timeout_add (ms, set_true, &over);
  while (!over)
    g_main_context_iteration (NULL, TRUE);
}

/* ---- the window ---- */

static GtkWidget *
find_child (GtkWidget *widget, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_child (child, type);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* First field below a widget that is tied to this number and can be stepped. */
static DwNumberField *
find_field (GtkWidget *widget, dw_form_id form, const char *attribute)
{
  if (DW_IS_NUMBER_FIELD (widget) && gtk_widget_is_sensitive (widget))
    {
      const dw_damper_place *place = dw_damper_entry_get_place (DW_NUMBER_FIELD (widget));
      if (place != NULL && place->form == form && strcmp (place->attribute, attribute) == 0)
        return DW_NUMBER_FIELD (widget);
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      DwNumberField *found = find_field (child, form, attribute);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static DwWindow *
open_window (DwApplication *app, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  if (!dw_application_open_file (app, file, NULL))
    return NULL;
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (app));
  wait_ms (1000);
  if (!DW_IS_WINDOW (window) || !gtk_widget_get_mapped (GTK_WIDGET (window)))
    return NULL;
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (window));
  g_signal_connect (clock, "before-paint", on_before_paint, NULL);
  g_signal_connect_swapped (clock, "update", G_CALLBACK (on_phase), &updated);
  g_signal_connect_swapped (clock, "layout", G_CALLBACK (on_phase), &laid_out);
  g_signal_connect_swapped (clock, "paint", G_CALLBACK (on_phase), &painted);
  g_signal_connect (clock, "after-paint", on_after_paint, NULL);
  return DW_WINDOW (window);
}

/* ---- one change ---- */

static moment
begin (void)
{
  wait_ms (PAUSE_MS);
  paint_ended = updated = laid_out = painted = 0;
  return (moment){ g_get_monotonic_time (), cpu_time () };
}

/* @param start  when the change began */
static gboolean
finish (moment start, change_times *times)
{
  const gint64 called = g_get_monotonic_time ();
  gboolean late = FALSE;
  const guint timer = g_timeout_add (PATIENCE_MS, set_true, &late);

  while (paint_ended == 0 && !late)
    g_main_context_iteration (NULL, TRUE);
  if (late)
    return FALSE;
  g_source_remove (timer);
  times->call = (double)(called - start.wall) / 1000.0;
  times->frame = (double)(paint_ended - paint_began) / 1000.0;
  /* a phase that nobody asked for is left out */
  const gint64 layout_began = updated > 0 ? updated : paint_began;
  const gint64 layout_ended = laid_out > 0 ? laid_out : layout_began;
  times->layout = (double)(layout_ended - layout_began) / 1000.0;
  times->paint = (double)(painted - layout_ended) / 1000.0;
  times->to_screen = (double)(paint_ended - start.wall) / 1000.0;
  times->cpu = (double)(cpu_ended - start.cpu) / 1000.0;
  return TRUE;
}

static gboolean
measure_edit (DwNumberField *field, int direction, change_times *times)
{
  const double before = dw_number_field_get_value (field);
  const moment start = begin ();
  dw_number_field_step (field, direction);
  return finish (start, times) && dw_number_field_get_value (field) != before;
}

static gboolean
measure_reading (DwChartView *chart, double speed, change_times *times)
{
  const moment start = begin ();
  dw_chart_view_read_at (chart, speed);
  return finish (start, times);
}

/* ---- figures ---- */

/* @param offset  of the time in change_times */
static void
print_times (const char *name, const char *what, const change_times *times, int n, size_t offset)
{
  g_autofree double *sorted = g_new (double, n);

  for (int i = 0; i < n; i++)
    sorted[i] = *(const double *)((const char *)&times[i] + offset);
  test_sort (sorted, (size_t)n);
  printf ("window-%s-%s-median %.2f ms\n", name, what, sorted[n / 2]);
  printf ("window-%s-%s-p99 %.2f ms\n", name, what, sorted[(n * 99 - 1) / 100]);
}

static void
print_changes (const char *name, const change_times *times, int n)
{
  print_times (name, "call", times, n, offsetof (change_times, call));
  print_times (name, "frame", times, n, offsetof (change_times, frame));
  print_times (name, "layout", times, n, offsetof (change_times, layout));
  print_times (name, "paint", times, n, offsetof (change_times, paint));
  print_times (name, "to-screen", times, n, offsetof (change_times, to_screen));
  print_times (name, "cpu", times, n, offsetof (change_times, cpu));
  printf ("window-%s-frames %.2f frames\n", name, (double)n_frames / n);
}

static gboolean
bench_edits (GtkWidget *page)
{
  static change_times times[N_EDITS];
  DwNumberField *fields[G_N_ELEMENTS (edited)];

  for (size_t i = 0; i < G_N_ELEMENTS (edited); i++)
    {
      fields[i] = find_field (page, edited[i].form, edited[i].attribute);
      if (fields[i] == NULL)
        {
          fprintf (stderr, "bench-window: no field for %s\n", edited[i].attribute);
          return FALSE;
        }
    }
  /* the first edit after a save wakes buttons and marks the title: one that stays goes before */
  DwNumberField *stroke = find_field (page, DW_FORM_BODY, "stroke-mm");
  if (stroke != NULL)
    dw_number_field_step (stroke, 1);
  for (int i = -N_WARM; i < N_EDITS; i++)
    {
      change_times *one = &times[i < 0 ? 0 : i];
      const int n = i + N_WARM;
      const size_t which = (size_t)(n / 2) % G_N_ELEMENTS (edited);
      if (i == 0)
        n_frames = 0;
      /* there and back, so that the project stays what it is */
      if (!measure_edit (fields[which], n % 2 == 0 ? 1 : -1, one))
        {
          fprintf (stderr, "bench-window: %s was not edited or not shown\n",
                   edited[which].attribute);
          return FALSE;
        }
    }
  wait_ms (PAUSE_MS);
  print_changes ("edit", times, N_EDITS);
  return TRUE;
}

static gboolean
bench_readings (DwChartView *chart)
{
  static change_times times[N_READINGS];

  for (int i = -N_WARM; i < N_READINGS; i++)
    {
      if (i == 0)
        n_frames = 0;
      /* over the whole width, three digits of the reading change each time */
      if (!measure_reading (chart, 0.05 + 0.9 * ((i + N_WARM) * 37 % 100) / 100.0,
                            &times[i < 0 ? 0 : i]))
        {
          fprintf (stderr, "bench-window: the reading line was not shown\n");
          return FALSE;
        }
    }
  wait_ms (PAUSE_MS);
  print_changes ("reading", times, N_READINGS);
  dw_chart_view_read_at (chart, NAN);
  return TRUE;
}

/* ---- the map of drill sizes ---- */

static gboolean
measure_pointing (DwDrillMapView *map, GtkEventController *motion, int dot, change_times *times)
{
  double x, y;
  if (!dw_drill_map_view_place (map, dot, &x, &y))
    return FALSE;
  const moment began = begin ();
  g_signal_emit_by_name (motion, "motion", x, y);
  return finish (began, times);
}

/* The pointer goes from dot to dot: read-out, chart with its band, marks on the map. */
static gboolean
bench_pointing (GtkWidget *window)
{
  static change_times times[N_READINGS];

  gtk_widget_activate_action (window, "win.page", "s", "drilling");
  wait_ms (500);
  GtkWidget *page = find_child (window, DW_TYPE_DRILL_PAGE);
  DwDrillMapView *map = dw_drill_page_get_map (DW_DRILL_PAGE (page));
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (map));
  GtkEventController *motion = NULL;
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) c = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_MOTION (c))
        motion = c;
    }
  const int n = dw_drill_map_view_get_map (map) != NULL ? dw_drill_map_view_get_map (map)->n_dots
                                                        : 0;
  for (int i = -N_WARM; i < N_READINGS && n > 1 && motion != NULL; i++)
    {
      if (i == 0)
        n_frames = 0;
      if (!measure_pointing (map, motion, (i + N_WARM) % n, &times[i < 0 ? 0 : i]))
        {
          fprintf (stderr, "bench-window: the dot was not read\n");
          return FALSE;
        }
    }
  wait_ms (PAUSE_MS);
  print_changes ("drill-pointer", times, N_READINGS);
  return n > 1 && motion != NULL;
}

/* ---- the sheet ---- */

/* A letter after the other in the notes to the setup, each on the sheet in the preview at once. */
static gboolean
bench_typing (GtkWidget *window)
{
  static change_times times[N_EDITS];

  gtk_widget_activate_action (window, "win.page", "s", "sheet");
  wait_ms (500);
  GtkWidget *page = find_child (window, DW_TYPE_SHEET_PAGE);
  GtkWidget *notes = page != NULL ? find_child (page, GTK_TYPE_TEXT_VIEW) : NULL;
  for (int i = -N_WARM; i < N_EDITS && notes != NULL; i++)
    {
      if (i == 0)
        n_frames = 0;
      const moment began = begin ();
      gtk_text_buffer_insert_at_cursor (gtk_text_view_get_buffer (GTK_TEXT_VIEW (notes)),
                                        i % 6 == 0 ? " " : "x", -1);
      if (!finish (began, &times[i < 0 ? 0 : i]))
        {
          fprintf (stderr, "bench-window: the note was not shown\n");
          return FALSE;
        }
    }
  wait_ms (PAUSE_MS);
  print_changes ("sheet-typing", times, N_EDITS);
  return notes != NULL;
}

static int
bench (const char *path)
{
  g_autoptr (DwApplication) app = dw_application_new (G_APPLICATION_NON_UNIQUE);
  g_autoptr (GError) error = NULL;

  if (!g_application_register (G_APPLICATION (app), NULL, &error))
    {
      fprintf (stderr, "bench-window: %s\n", error->message);
      return EXIT_FAILURE;
    }
  setlocale (LC_NUMERIC, "C");
  DwWindow *window = open_window (app, path);
  GtkWidget *page = window != NULL ? find_child (GTK_WIDGET (window), DW_TYPE_CURVES_PAGE) : NULL;
  if (page == NULL)
    {
      fprintf (stderr, "bench-window: %s was not shown\n", path);
      return EXIT_FAILURE;
    }
  const gboolean good
      = bench_edits (page)
        && bench_readings (dw_curves_page_get_chart (DW_CURVES_PAGE (page), DW_FRONT))
        && bench_pointing (GTK_WIDGET (window)) && bench_typing (GTK_WIDGET (window));
  dw_document_discard_recovery (dw_window_get_document (window));
  gtk_window_destroy (GTK_WINDOW (window));
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("dw-bench-XXXXXX", NULL);
  const char *drop[] = { "rm", "-rf", folder, NULL };

  if (argc != 2 || folder == NULL)
    {
      fprintf (stderr, "usage: bench-window PROJECT\n");
      return 2;
    }
  g_setenv ("XDG_STATE_HOME", folder, TRUE);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  int status = NO_DISPLAY;
  if (gtk_init_check ())
    status = bench (argv[1]);
  else
    printf ("bench-window: no display; run it through tests/with-display.sh\n");
  g_spawn_sync (NULL, (char **)(gpointer)drop, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL,
                NULL, NULL);
  return status;
}
