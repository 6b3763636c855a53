/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-quit.h"

#include <glib/gi18n.h>

#include "window/dw-window.h"

static gboolean
is_unsaved (gpointer window)
{
  return DW_IS_WINDOW (window)
         && dw_document_is_modified (dw_window_get_document (DW_WINDOW (window)));
}

/* A list of its own, for windows go while it is walked. */
static GList *
windows_of (GtkApplication *app, gboolean unsaved)
{
  GList *found = NULL;
  for (GList *l = gtk_application_get_windows (app); l != NULL; l = l->next)
    if (DW_IS_WINDOW (l->data) && is_unsaved (l->data) == unsaved)
      found = g_list_prepend (found, g_object_ref (l->data));
  return found;
}

static void
close_all (GtkApplication *app, gboolean unsaved)
{
  GList *windows = windows_of (app, unsaved);
  g_list_foreach (windows, (GFunc)(void (*) (void))gtk_window_close, NULL);
  g_list_free_full (windows, g_object_unref);
}

static void
leave (GtkApplication *app, void (*close_unsaved) (DwWindow *window))
{
  GList *windows = windows_of (app, TRUE);
  close_all (app, FALSE);
  for (GList *l = windows; l != NULL; l = l->next)
    close_unsaved (l->data);
  g_list_free_full (windows, g_object_unref);
}

static void
save_all (gpointer app)
{
  leave (app, dw_window_save_and_close);
  g_object_unref (app);
}

static void
discard_all (gpointer app)
{
  leave (app, dw_window_discard_and_close);
  g_object_unref (app);
}

/* From the main loop, once the dialog that asked is gone: it would lose its parent while it still
 * tells its answer. */
static void
on_response (GtkDialog *dialog, int response, gpointer app)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_ACCEPT)
    g_idle_add_once (save_all, g_object_ref (app));
  else if (response == GTK_RESPONSE_REJECT)
    g_idle_add_once (discard_all, g_object_ref (app));
}

static char *
names_of (GList *windows)
{
  GString *text = g_string_new (NULL);
  for (GList *l = windows; l != NULL; l = l->next)
    {
      g_autofree char *name = dw_document_dup_name (dw_window_get_document (l->data));
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "",
                              *name != '\0' ? name : _ ("New project"));
    }
  return g_string_free (text, FALSE);
}

static void
ask (GtkApplication *app, GList *windows)
{
  const guint n = g_list_length (windows);
  g_autofree char *names = names_of (windows);
  GtkWidget *dialog = gtk_message_dialog_new (
      gtk_application_get_active_window (app), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
      GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
      ngettext ("Save the changes to %u project?", "Save the changes to %u projects?", n), n);

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s\n\n%s", names,
                                            _ ("Changes that are not saved are lost."));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL,
                          _ ("_Discard all"), GTK_RESPONSE_REJECT, _ ("_Save all"),
                          GTK_RESPONSE_ACCEPT, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_response), app, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
dw_quit (GtkApplication *app)
{
  g_return_if_fail (GTK_IS_APPLICATION (app));

  GList *unsaved = windows_of (app, TRUE);
  if (g_list_length (unsaved) > 1)
    ask (app, unsaved);
  else
    {
      close_all (app, FALSE);
      /* the only one asks itself */
      close_all (app, TRUE);
    }
  g_list_free_full (unsaved, g_object_unref);
}
