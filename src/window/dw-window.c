/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-window.h"

#include <glib/gi18n.h>

#include "draw/dw-chart-style.h"
#include "window/dw-window-private.h"

G_DEFINE_FINAL_TYPE (DwWindow, dw_window, GTK_TYPE_APPLICATION_WINDOW)

enum
{
  OPEN_FILE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

DwDocument *
dw_window_get_document (DwWindow *self)
{
  g_return_val_if_fail (DW_IS_WINDOW (self), NULL);
  return self->document;
}

const char *
dw_window_get_selected (DwWindow *self)
{
  g_return_val_if_fail (DW_IS_WINDOW (self), "");
  return self->selected;
}

/* ---- which setups are shown ---- */

static guint
drawn_index (DwWindow *self, const char *id)
{
  guint i;
  if (g_ptr_array_find_with_equal_func (self->drawn, id, g_str_equal, &i))
    return i;
  return G_MAXUINT;
}

gboolean
dw_window_is_drawn (DwWindow *self, const char *id)
{
  g_return_val_if_fail (DW_IS_WINDOW (self), FALSE);
  return drawn_index (self, id) != G_MAXUINT;
}

gboolean
dw_window_draw_setup (DwWindow *self, const char *id, gboolean drawn)
{
  g_return_val_if_fail (DW_IS_WINDOW (self), FALSE);

  const guint at = drawn_index (self, id);
  if (drawn && at == G_MAXUINT)
    {
      if (self->drawn->len >= DW_MAX_SERIES)
        {
          dw_window_tell (self, GTK_MESSAGE_INFO,
                          _ ("Four setups are drawn already. Take one off first."), FALSE);
          dw_window_refresh (self);
          return FALSE;
        }
      g_ptr_array_add (self->drawn, g_strdup (id));
    }
  else if (!drawn && at != G_MAXUINT)
    g_ptr_array_remove_index (self->drawn, at);
  dw_window_refresh (self);
  return TRUE;
}

/* Setups come and go by edits and undo; what is shown follows. */
static void
follow_setups (DwWindow *self)
{
  const dw_project *project = dw_document_get_project (self->document);

  for (guint i = self->drawn->len; i > 0; i--)
    if (dw_project_find_setup (project, g_ptr_array_index (self->drawn, i - 1)) == NULL)
      g_ptr_array_remove_index (self->drawn, i - 1);
  if (dw_project_find_setup (project, self->selected) == NULL)
    {
      const dw_setup *fitted = dw_project_get_fitted (project);
      if (fitted == NULL && dw_project_get_n_setups (project) > 0)
        fitted = dw_project_get_setup (project, 0);
      g_free (self->selected);
      self->selected = g_strdup (fitted != NULL ? fitted->id : "");
    }
}

/* At first the fitted setup and the first trial: the comparison that the chart is for. The trial is
 * the one that is edited, so that nobody changes what is in the car without meaning to. */
static void
choose_first_setups (DwWindow *self)
{
  const dw_project *project = dw_document_get_project (self->document);
  const dw_setup *fitted = dw_project_get_fitted (project);

  if (fitted != NULL)
    g_ptr_array_add (self->drawn, g_strdup (fitted->id));
  for (guint i = 0; i < dw_project_get_n_setups (project) && self->drawn->len < 2; i++)
    {
      const dw_setup *setup = dw_project_get_setup (project, i);
      if (setup == fitted)
        continue;
      g_ptr_array_add (self->drawn, g_strdup (setup->id));
      g_free (self->selected);
      self->selected = g_strdup (setup->id);
    }
}

void
dw_window_select (DwWindow *self, const char *id)
{
  g_return_if_fail (DW_IS_WINDOW (self) && id != NULL);

  if (strcmp (self->selected, id) == 0)
    return;
  g_free (self->selected);
  self->selected = g_strdup (id);
  dw_window_refresh (self);
}

/* ---- showing ---- */

static void
show_title (DwWindow *self)
{
  const dw_project *project = dw_document_get_project (self->document);
  g_autofree char *name = dw_document_dup_name (self->document);
  const char *shown = *name != '\0' ? name : _ ("New project");
  g_autofree char *marked = dw_document_is_modified (self->document)
                                ? g_strdup_printf ("• %s", shown)
                                : NULL;

  gtk_label_set_label (self->title, marked != NULL ? marked : shown);
  gtk_label_set_label (self->subtitle, project->title);
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle),
                          *project->title != '\0' && strcmp (project->title, shown) != 0);
  if (g_strcmp0 (marked != NULL ? marked : shown, gtk_window_get_title (GTK_WINDOW (self))) != 0)
    gtk_window_set_title (GTK_WINDOW (self), marked != NULL ? marked : shown);
}

void
dw_window_refresh (DwWindow *self)
{
  const dw_units units = dw_settings_get_units (self->settings);

  follow_setups (self);
  dw_setup_list_update (self->setups, dw_document_get_project (self->document), self->drawn,
                        self->selected, units);
  dw_curves_page_update (self->curves, self->document, self->drawn, self->selected, units);
  if (self->drill != NULL)
    dw_drill_page_update (self->drill, self->document, self->selected, units);
  if (self->sheet != NULL)
    dw_sheet_page_update (self->sheet, self->document, self->selected, units);
  show_title (self);
  dw_window_update_actions (self);
}

static void
on_restyled (DwWindow *self)
{
  const dw_chart_style *style = dw_curves_page_get_style (self->curves);
  dw_setup_list_set_style (self->setups, style);
  if (self->drill != NULL)
    dw_drill_page_set_style (self->drill, style);
}

void
dw_window_settings_changed (DwWindow *self)
{
  const dw_theme theme = dw_settings_get_theme (self->settings);

  dw_curves_page_set_sun (self->curves, theme == DW_THEME_SUN);
  on_restyled (self);
  dw_window_refresh (self);
}

/* From the most urgent down. */
static const GtkMessageType TOLD[] = { GTK_MESSAGE_ERROR, GTK_MESSAGE_WARNING, GTK_MESSAGE_INFO };

static void
show_told (DwWindow *self)
{
  GString *text = g_string_new (NULL);

  for (size_t i = G_N_ELEMENTS (TOLD); i > 0; i--)
    if (self->told[i - 1] != NULL)
      {
        gtk_info_bar_set_message_type (self->info, TOLD[i - 1]);
        g_string_prepend (text, text->len > 0 ? "\n" : "");
        g_string_prepend (text, self->told[i - 1]);
      }
  gtk_label_set_label (self->info_text, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->info_reload), self->offers_reload);
  gtk_info_bar_set_revealed (self->info, text->len > 0);
  g_string_free (text, TRUE);
}

void
dw_window_tell (DwWindow *self, GtkMessageType type, const char *text, gboolean offer_reload)
{
  for (size_t i = 0; i < G_N_ELEMENTS (TOLD); i++)
    if (TOLD[i] == type)
      {
        g_free (self->told[i]);
        self->told[i] = g_strdup (text);
      }
  self->offers_reload = self->offers_reload || offer_reload;
  show_told (self);
}

void
dw_window_tell_nothing (DwWindow *self)
{
  for (size_t i = 0; i < G_N_ELEMENTS (TOLD); i++)
    g_clear_pointer (&self->told[i], g_free);
  self->offers_reload = FALSE;
  /* the text stays while the line slides away */
  gtk_info_bar_set_revealed (self->info, FALSE);
}

void
dw_window_show_findings (DwWindow *self, const dw_findings *findings)
{
  g_autofree char *name = dw_document_dup_name (self->document);
  g_autofree char *list = dw_findings_to_text (findings, name);
  g_autofree char *text = g_strdup_printf ("%s\n%s", _ ("Some of the file was left out:"),
                                           g_strchomp (list));
  dw_window_tell (self, GTK_MESSAGE_WARNING, text, FALSE);
}

static void
on_file_changed (DwWindow *self)
{
  dw_window_tell (
      self, GTK_MESSAGE_WARNING,
      dw_document_is_modified (self->document)
          ? _ ("Another program has changed the file. Loading it puts your changes aside; "
               "undo brings them back.")
          : _ ("Another program has changed the file."),
      TRUE);
}

static void
on_info_response (DwWindow *self)
{
  dw_window_tell_nothing (self);
}

static void
on_setup_selected (DwWindow *self, const char *id)
{
  dw_window_select (self, id);
}

static void
on_setup_drawn (DwWindow *self, const char *id, gboolean drawn)
{
  dw_window_draw_setup (self, id, drawn);
}

/* An idea is there to be compared. */
static void
on_trial_made (DwWindow *self, const char *id)
{
  if (!dw_window_is_drawn (self, id) && self->drawn->len < DW_MAX_SERIES)
    dw_window_draw_setup (self, id, TRUE);
}

static void
make_drill_page (DwWindow *self)
{
  self->drill = g_object_new (DW_TYPE_DRILL_PAGE, "hexpand", TRUE, NULL);
  g_signal_connect_object (self->drill, "trial-made", G_CALLBACK (on_trial_made), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (self->drill_place, GTK_WIDGET (self->drill));
  dw_drill_page_set_style (self->drill, dw_curves_page_get_style (self->curves));
}

static void
on_sheet_failed (DwWindow *self, const char *why)
{
  dw_window_tell (self, GTK_MESSAGE_ERROR, why, FALSE);
}

static void
make_sheet_page (DwWindow *self)
{
  self->sheet = g_object_new (DW_TYPE_SHEET_PAGE, "hexpand", TRUE, NULL);
  g_signal_connect_object (self->sheet, "failed", G_CALLBACK (on_sheet_failed), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (self->sheet_place, GTK_WIDGET (self->sheet));
}

/* Pages that are not looked at at first need not be there when the window opens. */
static void
on_page_shown (DwWindow *self)
{
  const GtkWidget *shown = gtk_stack_get_visible_child (self->pages);

  if (self->drill == NULL && shown == GTK_WIDGET (self->drill_place))
    make_drill_page (self);
  else if (self->sheet == NULL && shown == GTK_WIDGET (self->sheet_place))
    make_sheet_page (self);
  else
    return;
  dw_window_refresh (self);
}

void
dw_window_open (DwWindow *self, GFile *file)
{
  g_signal_emit (self, signals[OPEN_FILE], 0, file);
}

static gboolean
on_drop (DwWindow *self, const GValue *value)
{
  GSList *files = g_value_get_boxed (value);

  for (GSList *l = files; l != NULL; l = l->next)
    dw_window_open (self, l->data);
  return files != NULL;
}

/* ---- closing ---- */

/* From the main loop, once the dialog that asked is gone: it would lose its parent while it still
 * tells its answer. */
static void
close_now (gpointer data)
{
  g_autoptr (DwWindow) self = data;

  self->closing = TRUE;
  dw_document_discard_recovery (self->document);
  gtk_window_close (GTK_WINDOW (self));
}

void
dw_window_discard_and_close (DwWindow *self)
{
  g_return_if_fail (DW_IS_WINDOW (self));
  g_idle_add_once (close_now, g_object_ref (self));
}

void
dw_window_save_and_close (DwWindow *self)
{
  g_return_if_fail (DW_IS_WINDOW (self));
  self->close_after_save = TRUE;
  dw_window_save (self);
}

static void
on_close_response (GtkDialog *dialog, int response, gpointer data)
{
  DwWindow *self = data;

  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_REJECT)
    dw_window_discard_and_close (self);
  else if (response == GTK_RESPONSE_ACCEPT)
    dw_window_save_and_close (self);
}

static gboolean
dw_window_close_request (GtkWindow *window)
{
  DwWindow *self = DW_WINDOW (window);
  g_autofree char *name = dw_document_dup_name (self->document);

  if (!self->closing && dw_document_is_modified (self->document))
    {
      GtkWidget *dialog = gtk_message_dialog_new (
          window, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION,
          GTK_BUTTONS_NONE, _ ("Save the changes to “%s”?"),
          *name != '\0' ? name : _ ("New project"));
      gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s",
                                                _ ("Changes that are not saved are lost."));
      gtk_dialog_add_buttons (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL,
                              _ ("_Discard"), GTK_RESPONSE_REJECT, _ ("_Save"), GTK_RESPONSE_ACCEPT,
                              NULL);
      gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
      g_signal_connect_object (dialog, "response", G_CALLBACK (on_close_response), self, 0);
      gtk_window_present (GTK_WINDOW (dialog));
      return TRUE;
    }
  int width, height;
  gtk_window_get_default_size (window, &width, &height);
  dw_settings_set_window (self->settings, width, height, gtk_window_is_maximized (window));
  g_cancellable_cancel (self->cancellable);
  dw_document_keep_recovery (self->document, NULL);
  return GTK_WINDOW_CLASS (dw_window_parent_class)->close_request (window);
}

/* ---- object ---- */

DwWindow *
dw_window_new (GtkApplication *app, DwSettings *settings, DwDocument *document)
{
  g_return_val_if_fail (GTK_IS_APPLICATION (app) && DW_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (DW_IS_SETTINGS (settings), NULL);

  DwWindow *self = g_object_new (DW_TYPE_WINDOW, "application", app, NULL);
  int width, height;
  gboolean maximized;

  self->settings = g_object_ref (settings);
  self->document = g_object_ref (document);
  choose_first_setups (self);
  dw_settings_get_window (settings, &width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  g_signal_connect_object (document, "changed", G_CALLBACK (dw_window_refresh), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "state-changed", G_CALLBACK (show_title), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "state-changed", G_CALLBACK (dw_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "file-changed", G_CALLBACK (on_file_changed), self,
                           G_CONNECT_SWAPPED);
  dw_window_settings_changed (self);
  dw_window_show_recent (self);
  return self;
}

static void
dw_window_dispose (GObject *object)
{
  DwWindow *self = DW_WINDOW (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  self->drill = NULL;
  gtk_widget_dispose_template (GTK_WIDGET (self), DW_TYPE_WINDOW);
  g_clear_object (&self->document);
  g_clear_object (&self->settings);
  g_clear_object (&self->cancellable);
  G_OBJECT_CLASS (dw_window_parent_class)->dispose (object);
}

static void
dw_window_finalize (GObject *object)
{
  DwWindow *self = DW_WINDOW (object);

  for (size_t i = 0; i < G_N_ELEMENTS (self->told); i++)
    g_free (self->told[i]);
  g_free (self->selected);
  g_ptr_array_unref (self->drawn);
  G_OBJECT_CLASS (dw_window_parent_class)->finalize (object);
}

static void
dw_window_class_init (DwWindowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = dw_window_dispose;
  object_class->finalize = dw_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = dw_window_close_request;

  signals[OPEN_FILE] = g_signal_new ("open-file", DW_TYPE_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                     NULL, G_TYPE_NONE, 1, G_TYPE_FILE);

  g_type_ensure (DW_TYPE_SETUP_LIST);
  g_type_ensure (DW_TYPE_CURVES_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/window.ui");
  gtk_widget_class_bind_template_child (widget_class, DwWindow, title);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, info);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, info_text);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, info_reload);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, recent);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, setups);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, curves);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, drill_place);
  gtk_widget_class_bind_template_child (widget_class, DwWindow, sheet_place);
  gtk_widget_class_bind_template_callback (widget_class, on_info_response);
  gtk_widget_class_bind_template_callback (widget_class, on_setup_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_setup_drawn);
  gtk_widget_class_bind_template_callback (widget_class, on_restyled);
  gtk_widget_class_bind_template_callback (widget_class, on_page_shown);
  dw_window_install_actions (widget_class);
}

static void
dw_window_init (DwWindow *self)
{
  self->cancellable = g_cancellable_new ();
  self->selected = g_strdup ("");
  self->drawn = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));

  GtkDropTarget *drop = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect_object (drop, "drop", G_CALLBACK (on_drop), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}
