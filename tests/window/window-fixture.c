/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-fixture.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

static DwApplication *app;
static char *folder;

void
fixture_start (void)
{
  g_autoptr (GError) error = NULL;

  folder = g_dir_make_tmp ("dw-window-XXXXXX", NULL);
  ck_assert_ptr_nonnull (folder);
  g_setenv ("XDG_STATE_HOME", folder, TRUE);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_setenv ("XDG_CONFIG_HOME", folder, TRUE);
  ck_assert_msg (gtk_init_check (), "no display: run the tests through tests/with-display.sh");
  app = dw_application_new (G_APPLICATION_NON_UNIQUE);
  ck_assert_msg (g_application_register (G_APPLICATION (app), NULL, &error), "%s",
                 error != NULL ? error->message : "");
  /* GTK takes the user's; tests that are about the decimal sign say which one they want */
  setlocale (LC_NUMERIC, "C");
}

void
fixture_stop (void)
{
  g_autofree char *command = g_strdup_printf ("rm -rf '%s'", folder);
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (app)));

  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_destroy (l->data);
  g_list_free (windows);
  fixture_settle ();
  g_object_unref (app);
  ck_assert (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL));
  g_free (folder);
}

DwApplication *
fixture_app (void)
{
  return app;
}

const char *
fixture_folder (void)
{
  return folder;
}

static gboolean
set_true (gpointer data)
{
  *(bool *)data = true;
  return G_SOURCE_REMOVE;
}

static gboolean
keep_ticking (gpointer data)
{
  (void)data;
  return G_SOURCE_CONTINUE;
}

bool
fixture_until (bool (*done) (void *data), void *data, guint ms)
{
  bool late = false;
  const guint timer = g_timeout_add (ms, set_true, &late);
  /* what happens outside wakes nobody here */
  const guint clock = g_timeout_add (50, keep_ticking, NULL);

  while (!done (data) && !late)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (clock);
  if (!late)
    g_source_remove (timer);
  return !late;
}

void
fixture_settle (void)
{
  bool done = false;
  const guint timer = g_timeout_add (60, set_true, &done);

  while (!done)
    g_main_context_iteration (NULL, TRUE);
  (void)timer;
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static GtkWindow *
find_window (bool is_main)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (app)); l != NULL; l = l->next)
    if (DW_IS_WINDOW (l->data) == is_main)
      return l->data;
  return NULL;
}

DwWindow *
fixture_window (void)
{
  return (DwWindow *)find_window (true);
}

GtkWindow *
fixture_dialog (void)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      if (!DW_IS_WINDOW (window) && gtk_widget_get_visible (GTK_WIDGET (window)))
        return window;
    }
  return NULL;
}

static bool
is_mapped (void *data)
{
  return gtk_widget_get_mapped (data);
}

DwWindow *
fixture_open (const char *demo)
{
  g_autofree char *name = g_strdup_printf ("demo/%s", demo);
  char *source = test_source_path (name);
  g_autofree char *path = g_build_filename (folder, demo, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  size_t length;
  char *text = test_file_read (source, &length);

  ck_assert (g_file_set_contents (path, text, (gssize)length, NULL));
  free (text);
  free (source);
  ck_assert (dw_application_open_file (app, file, NULL));
  DwWindow *window = fixture_window ();
  ck_assert_ptr_nonnull (window);
  ck_assert (fixture_until (is_mapped, window, 5000));
  fixture_settle ();
  return window;
}

/* Of a label or an inscription; NULL for other widgets. */
static const char *
text_of (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    return gtk_label_get_text (GTK_LABEL (widget));
  return GTK_IS_INSCRIPTION (widget) ? gtk_inscription_get_text (GTK_INSCRIPTION (widget)) : NULL;
}

GtkWidget *
fixture_find_type (GtkWidget *widget, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = fixture_find_type (child, type);
      if (found != NULL)
        return found;
    }
  return NULL;
}

GtkWidget *
fixture_find_text (GtkWidget *widget, const char *piece)
{
  const char *text = text_of (widget);

  if (text != NULL && strstr (text, piece) != NULL)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = fixture_find_text (child, piece);
      if (found != NULL)
        return found;
    }
  return NULL;
}
