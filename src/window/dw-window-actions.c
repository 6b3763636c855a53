/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What menu, buttons, keys and tests make the window do. */
#include <glib/gi18n.h>

#include "window/dw-chart-export.h"
#include "window/dw-window-private.h"
#include "window/dw-widget.h"

/* ---- files ---- */

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (DwWindow) self = data;
  g_autoptr (GError) error = NULL;

  if (!dw_document_save_finish (DW_DOCUMENT (source), result, &error))
    {
      g_autofree char *text = g_strdup_printf (_ ("Not saved: %s"), error->message);
      self->close_after_save = FALSE;
      dw_window_tell (self, GTK_MESSAGE_ERROR, text, FALSE);
      return;
    }
  dw_window_tell_nothing (self);
  if (self->close_after_save && !dw_document_is_modified (self->document))
    gtk_window_close (GTK_WINDOW (self));
  self->close_after_save = FALSE;
}

static void
save_to (DwWindow *self, GFile *file)
{
  /* the file is written even when the window goes away meanwhile */
  dw_document_save_async (self->document, file, NULL, on_saved, g_object_ref (self));
}

static GtkFileFilter *
project_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();
  gtk_file_filter_set_name (filter, _ ("Dampwright projects"));
  gtk_file_filter_add_pattern (filter, "*.dampwright");
  return filter;
}

static GtkFileChooserNative *
new_chooser (DwWindow *self, const char *title, GtkFileChooserAction action, const char *accept)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action,
                                                               accept, _ ("_Cancel"));
  g_autoptr (GtkFileFilter) filter = project_filter ();

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  return chooser;
}

static void
on_save_name (GtkNativeDialog *dialog, int response, gpointer data)
{
  DwWindow *self = data;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      save_to (self, file);
    }
  else
    self->close_after_save = FALSE;
  g_object_unref (dialog);
}

static void
save_as (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  GFile *file = dw_document_get_file (self->document);
  GtkFileChooserNative *chooser = new_chooser (self, _ ("Save project"),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"));

  (void)name;
  (void)parameter;
  if (file != NULL)
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (chooser), file, NULL);
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), _ ("project.dampwright"));
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_save_name), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
dw_window_save (DwWindow *self)
{
  GFile *file = dw_document_get_file (self->document);

  if (file != NULL)
    save_to (self, file);
  else
    save_as (GTK_WIDGET (self), "win.save-as", NULL);
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  (void)parameter;
  dw_window_save (DW_WINDOW (widget));
}

static void
on_open_name (GtkNativeDialog *dialog, int response, gpointer data)
{
  DwWindow *self = data;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      dw_window_open (self, file);
    }
  g_object_unref (dialog);
}

static void
open_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  GtkFileChooserNative *chooser = new_chooser (self, _ ("Open project"),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"));

  (void)name;
  (void)parameter;
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_open_name), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
open_uri (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  (void)name;
  dw_window_open (self, file);
}

static void
reload (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (GError) error = NULL;

  (void)name;
  (void)parameter;
  if (dw_document_reload (self->document, _ ("Load the file again"), findings, &error))
    {
      dw_window_tell_nothing (self);
      return;
    }
  g_autofree char *shown = dw_document_dup_name (self->document);
  g_autofree char *why = error != NULL ? g_strdup (error->message)
                                       : dw_findings_to_text (findings, shown);
  g_autofree char *text = g_strdup_printf (_ ("Not loaded: %s"), why);
  dw_window_tell (self, GTK_MESSAGE_ERROR, text, TRUE);
}

static void
close_window (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  (void)parameter;
  gtk_window_close (GTK_WINDOW (widget));
}

/* ---- undo ---- */

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  (void)parameter;
  dw_document_undo (DW_WINDOW (widget)->document);
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  (void)parameter;
  dw_document_redo (DW_WINDOW (widget)->document);
}

/* ---- setups ---- */

static int
selected_index (DwWindow *self)
{
  return dw_project_find_index (dw_document_get_project (self->document), self->selected);
}

/* What an edit of the setups needs and gives back. */
typedef struct
{
  int index;
  int to;
  char *text; /* owned: a name to give, or the id that was made */
} setup_edit;

static gboolean
edit_duplicate (dw_project *project, gpointer data)
{
  setup_edit *edit = data;
  const dw_setup *setup = dw_project_get_setup (project, (guint)edit->index);
  /* a copy keeps its figures while the list it lies in moves */
  const dw_damper front = setup->damper[DW_FRONT];
  const dw_damper rear = setup->damper[DW_REAR];
  const int made = dw_project_add_setup (project, NULL, edit->text, &front, &rear);

  if (made < 0)
    return FALSE;
  dw_project_move_setup (project, (guint)made, (guint)edit->index + 1);
  g_free (edit->text);
  edit->text = g_strdup (dw_project_get_setup (project, (guint)edit->index + 1)->id);
  return TRUE;
}

static void
duplicate_setup (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  const dw_project *project = dw_document_get_project (self->document);
  const dw_setup *setup = dw_project_find_setup (project, self->selected);
  setup_edit edit = { .index = selected_index (self) };

  (void)name;
  (void)parameter;
  if (setup == NULL)
    return;
  /* translators: name of a copied setup */
  edit.text = g_strdup_printf (_ ("%s, a trial"), setup->name);
  if (!dw_project_text_is_valid (edit.text))
    {
      g_free (edit.text);
      edit.text = g_strdup (_ ("Trial"));
    }
  if (dw_document_edit (self->document, _ ("Add a trial"), NULL, edit_duplicate, &edit))
    {
      if (self->drawn->len < DW_MAX_SERIES)
        g_ptr_array_add (self->drawn, g_strdup (edit.text));
      dw_window_select (self, edit.text);
    }
  g_free (edit.text);
}

static gboolean
edit_delete (dw_project *project, gpointer data)
{
  dw_project_remove_setup (project, (guint)((setup_edit *)data)->index);
  return TRUE;
}

static void
delete_setup (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  setup_edit edit = { .index = selected_index (self) };

  (void)name;
  (void)parameter;
  if (edit.index >= 0)
    dw_document_edit (self->document, _ ("Delete setup"), NULL, edit_delete, &edit);
}

static gboolean
edit_move (dw_project *project, gpointer data)
{
  const setup_edit *edit = data;
  dw_project_move_setup (project, (guint)edit->index, (guint)edit->to);
  return TRUE;
}

static void
move_setup (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  const int n = (int)dw_project_get_n_setups (dw_document_get_project (self->document));
  setup_edit edit = { .index = selected_index (self) };

  (void)parameter;
  edit.to = edit.index + (g_str_has_suffix (name, "-up") ? -1 : 1);
  if (edit.index >= 0 && edit.to >= 0 && edit.to < n)
    dw_document_edit (self->document, _ ("Move setup"), NULL, edit_move, &edit);
}

static gboolean
edit_fit (dw_project *project, gpointer data)
{
  return dw_project_set_fitted (project, ((setup_edit *)data)->text);
}

static void
fit_setup (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  setup_edit edit = { .text = self->selected };

  (void)name;
  (void)parameter;
  dw_document_edit (self->document, _ ("Fit this setup"), NULL, edit_fit, &edit);
}

static gboolean
edit_rename (dw_project *project, gpointer data)
{
  const setup_edit *edit = data;
  return dw_project_rename_setup (project, (guint)edit->index, edit->text);
}

static void
on_rename_response (GtkDialog *dialog, int response, gpointer data)
{
  DwWindow *self = data;
  GtkEditable *entry = g_object_get_data (G_OBJECT (dialog), "entry");
  setup_edit edit = { .index = selected_index (self) };

  if (response == GTK_RESPONSE_ACCEPT && edit.index >= 0)
    {
      edit.text = g_strdup (gtk_editable_get_text (entry));
      if (!dw_document_edit (self->document, _ ("Rename setup"), NULL, edit_rename, &edit)
          && !dw_project_text_is_valid (edit.text))
        dw_window_tell (
            self, GTK_MESSAGE_ERROR,
            _ ("A name may have up to 200 characters, none of them a control character."), FALSE);
      g_free (edit.text);
    }
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
rename_setup (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  const dw_setup *setup = dw_project_find_setup (dw_document_get_project (self->document),
                                                 self->selected);

  (void)name;
  (void)parameter;
  if (setup == NULL)
    return;
  GtkWidget *dialog = gtk_dialog_new_with_buttons (
      _ ("Rename setup"), GTK_WINDOW (self), GTK_DIALOG_MODAL | GTK_DIALOG_USE_HEADER_BAR,
      _ ("_Cancel"), GTK_RESPONSE_CANCEL, _ ("_Rename"), GTK_RESPONSE_ACCEPT, NULL);
  GtkWidget *entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (entry), setup->name);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 36);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the setup"), -1);
  gtk_widget_set_margin_top (entry, 12);
  gtk_widget_set_margin_bottom (entry, 12);
  gtk_widget_set_margin_start (entry, 12);
  gtk_widget_set_margin_end (entry, 12);
  gtk_box_append (GTK_BOX (gtk_dialog_get_content_area (GTK_DIALOG (dialog))), entry);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  g_object_set_data (G_OBJECT (dialog), "entry", entry);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_rename_response), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Made when it is first asked for, not at each start as GTK would. */
static void
show_help_overlay (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkApplicationWindow *window = GTK_APPLICATION_WINDOW (widget);

  (void)name;
  (void)parameter;
  if (gtk_application_window_get_help_overlay (window) == NULL)
    {
      g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource (
          "/org/dampwright/Dampwright/help-overlay.ui");
      gtk_application_window_set_help_overlay (
          window, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "help_overlay")));
    }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (window)));
}

static void
show_page (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  gtk_stack_set_visible_child_name (DW_WINDOW (widget)->pages,
                                    g_variant_get_string (parameter, NULL));
}

/* From any page: what will be printed is shown first. */
static void
print_sheet (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);

  (void)name;
  (void)parameter;
  gtk_stack_set_visible_child_name (self->pages, "sheet");
  gtk_widget_activate_action (GTK_WIDGET (self->sheet), "sheet.print", NULL);
}

static void
chart_whole (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  (void)parameter;
  dw_curves_page_show_whole (DW_WINDOW (widget)->curves);
}

/* ---- charts as files ---- */

static GBytes *
render_charts (DwWindow *self, dw_export_kind kind, GError **error)
{
  const dw_chart *look = dw_chart_view_get_chart (
      dw_curves_page_get_chart (self->curves, DW_FRONT));
  return dw_chart_export_render (dw_document_get_project (self->document), self->drawn, look, kind,
                                 error);
}

static void
export_to (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  const char *path = g_variant_get_bytestring (parameter);
  g_autoptr (GError) error = NULL;
  dw_export_kind kind;

  (void)name;
  if (!dw_export_kind_of (path, &kind))
    {
      dw_window_tell (self, GTK_MESSAGE_ERROR,
                      _ ("Not exported: the name must end in .svg, .png, .pdf or .csv."), FALSE);
      return;
    }
  g_autoptr (GBytes) bytes = render_charts (self, kind, &error);
  if (bytes == NULL || !dw_export_save (path, bytes, &error))
    {
      g_autofree char *text = g_strdup_printf (_ ("Not exported: %s"), error->message);
      dw_window_tell (self, GTK_MESSAGE_ERROR, text, FALSE);
    }
}

static void
on_export_name (GtkNativeDialog *dialog, int response, gpointer data)
{
  DwWindow *self = data;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *path = g_file_get_path (file);
      if (path != NULL)
        gtk_widget_activate_action (GTK_WIDGET (self), "win.chart-export-to", "^ay", path);
    }
  g_object_unref (dialog);
}

static void
export_charts (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      _ ("Export the charts as SVG, PNG, PDF or CSV"), GTK_WINDOW (self),
      GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"), _ ("_Cancel"));

  (void)name;
  (void)parameter;
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), _ ("curves.pdf"));
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_export_name), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
copy_charts (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwWindow *self = DW_WINDOW (widget);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = render_charts (self, DW_EXPORT_PNG, &error);
  g_autoptr (GdkTexture) texture = bytes != NULL ? gdk_texture_new_from_bytes (bytes, &error)
                                                 : NULL;

  (void)name;
  (void)parameter;
  if (texture == NULL)
    {
      dw_window_tell (self, GTK_MESSAGE_ERROR, error->message, FALSE);
      return;
    }
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (widget), texture);
}

/* ---- recent projects and examples ---- */

enum
{
  MOST_RECENT = 8
};

static void
add_file (GMenu *menu, const char *label, const char *uri)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);
  g_menu_item_set_action_and_target (item, "win.open-uri", "s", uri);
  g_menu_append_item (menu, item);
}

/* Installed examples, or those beside the program in its source tree. */
static void
add_examples (GMenu *menu)
{
  const char *const folders[] = { g_getenv ("DAMPWRIGHT_DEMO_DIR"), DW_DEMO_DIR };

  for (size_t i = 0; i < G_N_ELEMENTS (folders); i++)
    {
      g_autoptr (GDir) dir = folders[i] != NULL ? g_dir_open (folders[i], 0, NULL) : NULL;
      const char *entry;
      if (dir == NULL)
        continue;
      while ((entry = g_dir_read_name (dir)) != NULL)
        if (g_str_has_suffix (entry, ".dampwright"))
          {
            g_autofree char *path = g_build_filename (folders[i], entry, NULL);
            g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
            add_file (menu, entry, uri);
          }
      return;
    }
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  /* GtkRecentInfo is opaque: GList hands the items themselves */
  GDateTime *x = gtk_recent_info_get_modified ((GtkRecentInfo *)(guintptr)a);
  GDateTime *y = gtk_recent_info_get_modified ((GtkRecentInfo *)(guintptr)b);
  return g_date_time_compare (y, x);
}

void
dw_window_show_recent (DwWindow *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autoptr (GMenu) recent = g_menu_new ();
  g_autoptr (GMenu) examples = g_menu_new ();
  GList *items = g_list_sort (gtk_recent_manager_get_items (gtk_recent_manager_get_default ()),
                              newest_first);
  int n = 0;

  for (GList *l = items; l != NULL && n < MOST_RECENT; l = l->next)
    if (gtk_recent_info_has_application (l->data, "Dampwright") && gtk_recent_info_exists (l->data))
      {
        add_file (recent, gtk_recent_info_get_display_name (l->data),
                  gtk_recent_info_get_uri (l->data));
        n++;
      }
  g_list_free_full (items, (GDestroyNotify)gtk_recent_info_unref);
  add_examples (examples);
  g_menu_append_section (menu, _ ("Recent projects"), G_MENU_MODEL (recent));
  g_menu_append_section (menu, _ ("Examples, all figures invented"), G_MENU_MODEL (examples));
  gtk_menu_button_set_menu_model (self->recent, G_MENU_MODEL (menu));
}

/* ---- which are possible now ---- */

static void
name_step (GtkWidget *button, const char *verb, const char *label)
{
  /* Translators: undo or redo, and the step: "Undo: Change front bore". */
  g_autofree char *text = label != NULL ? g_strdup_printf (_ ("%s: %s"), verb, label)
                                        : g_strdup (verb);
  dw_widget_set_tooltip (button, text);
}

void
dw_window_update_actions (DwWindow *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const dw_project *project = dw_document_get_project (self->document);
  const int index = selected_index (self);
  const int n = (int)dw_project_get_n_setups (project);

  gtk_widget_action_set_enabled (widget, "win.undo",
                                 dw_document_get_undo_label (self->document) != NULL);
  gtk_widget_action_set_enabled (widget, "win.redo",
                                 dw_document_get_redo_label (self->document) != NULL);
  name_step (self->undo_button, _ ("Undo"), dw_document_get_undo_label (self->document));
  name_step (self->redo_button, _ ("Redo"), dw_document_get_redo_label (self->document));
  gtk_widget_action_set_enabled (widget, "win.save",
                                 dw_document_is_modified (self->document)
                                     || dw_document_get_file (self->document) == NULL);
  gtk_widget_action_set_enabled (widget, "win.reload",
                                 dw_document_get_file (self->document) != NULL);
  gtk_widget_action_set_enabled (widget, "win.setup-duplicate",
                                 index >= 0 && n < DW_PROJECT_MAX_SETUPS);
  gtk_widget_action_set_enabled (widget, "win.setup-rename", index >= 0);
  gtk_widget_action_set_enabled (widget, "win.setup-delete", index >= 0 && n > 1);
  gtk_widget_action_set_enabled (widget, "win.setup-fit",
                                 index >= 0 && strcmp (project->fitted, self->selected) != 0);
  gtk_widget_action_set_enabled (widget, "win.setup-up", index > 0);
  gtk_widget_action_set_enabled (widget, "win.setup-down", index >= 0 && index < n - 1);
}

void
dw_window_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_file);
  gtk_widget_class_install_action (widget_class, "win.open-uri", "s", open_uri);
  gtk_widget_class_install_action (widget_class, "win.save", NULL, save);
  gtk_widget_class_install_action (widget_class, "win.save-as", NULL, save_as);
  gtk_widget_class_install_action (widget_class, "win.reload", NULL, reload);
  gtk_widget_class_install_action (widget_class, "win.close", NULL, close_window);
  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, redo);
  gtk_widget_class_install_action (widget_class, "win.setup-duplicate", NULL, duplicate_setup);
  gtk_widget_class_install_action (widget_class, "win.setup-delete", NULL, delete_setup);
  gtk_widget_class_install_action (widget_class, "win.setup-rename", NULL, rename_setup);
  gtk_widget_class_install_action (widget_class, "win.setup-fit", NULL, fit_setup);
  gtk_widget_class_install_action (widget_class, "win.setup-up", NULL, move_setup);
  gtk_widget_class_install_action (widget_class, "win.setup-down", NULL, move_setup);
  gtk_widget_class_install_action (widget_class, "win.show-help-overlay", NULL, show_help_overlay);
  gtk_widget_class_install_action (widget_class, "win.page", "s", show_page);
  gtk_widget_class_install_action (widget_class, "win.print", NULL, print_sheet);
  gtk_widget_class_install_action (widget_class, "win.chart-whole", NULL, chart_whole);
  gtk_widget_class_install_action (widget_class, "win.chart-export", NULL, export_charts);
  gtk_widget_class_install_action (widget_class, "win.chart-export-to", "ay", export_to);
  gtk_widget_class_install_action (widget_class, "win.chart-copy", NULL, copy_charts);
}
