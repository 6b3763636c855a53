/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-page.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "sheet/dw-finding-text.h"
#include "window/dw-short-names.h"
#include "window/dw-widget.h"

struct _DwSheetPage
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkDropDown *kind;
  GtkDropDown *against;
  GtkDropDown *quantity;
  GtkDropDown *paper;
  GtkButton *zoom;
  GtkLabel *pages;
  GtkLabel *stale;
  GtkScrolledWindow *scrolled;
  DwSheetView *view;
  DwSheetForm *form;

  /* Owned */
  DwDocument *document;
  char *selected;
  char *against_id;  /* of the setup compared with; NULL = the fitted one */
  gboolean is_alone; /* compared with none */
  char *names;       /* of the setups in @against; NULL = none yet */
  GPtrArray *ids;    /* of char *: of the rows of @against after the first two */
  dw_project *shown; /* that the sheet in the view borrows from */
  DwSheetPrint *print;

  dw_units units;
  gboolean is_stale; /* something changed while nobody looked */
  gboolean updating;
};

G_DEFINE_FINAL_TYPE (DwSheetPage, dw_sheet_page, GTK_TYPE_WIDGET)

static guint failed_signal;

/* Rows of the choice before the setups. */
enum
{
  AGAINST_FITTED,
  AGAINST_NONE,
  N_AGAINST
};

/* ---- the sheet ---- */

static dw_sheet_kind
kind_now (DwSheetPage *self)
{
  return (dw_sheet_kind)gtk_drop_down_get_selected (self->kind);
}

static bool
needs_setup (dw_sheet_kind kind)
{
  return kind != DW_SHEET_BLANK && kind != DW_SHEET_SUMMARY;
}

/* "2026-11-25": one way to write a day in all languages, and no doubt which is the month. */
static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  return g_date_time_format (now, "%Y-%m-%d");
}

/* What a sheet is made from. */
typedef struct
{
  DwSheetPage *page;
  const dw_project *project; /* borrowed by the sheet */
  char *date;
  char *file_name;
} source;

static void
source_clear (source *s)
{
  g_free (s->date);
  g_free (s->file_name);
}

static source
source_of (DwSheetPage *self, const dw_project *project)
{
  GFile *file = dw_document_get_file (self->document);
  return (source){ self, project, today (), file != NULL ? g_file_get_basename (file) : NULL };
}

static dw_sheet *
make (const source *s, dw_paper paper, dw_sheet_failure *failure)
{
  DwSheetPage *self = s->page;
  const dw_setup *fitted = dw_project_get_fitted (s->project);
  const dw_setup *against = self->against_id != NULL
                                ? dw_project_find_setup (s->project, self->against_id)
                                : fitted;
  const dw_sheet_options options = {
    .project = s->project,
    .setup = dw_project_find_setup (s->project, self->selected),
    .against = self->is_alone ? NULL : against,
    .paper = paper,
    .units = self->units,
    .shows_damping = gtk_drop_down_get_selected (self->quantity) == 1,
    .file_name = s->file_name,
    .date = s->date,
  };
  if (needs_setup (kind_now (self)) && options.setup == NULL)
    return NULL;
  return dw_sheet_new (kind_now (self), &options, failure);
}

/* ---- showing ---- */

static void
show_zoom (DwSheetPage *self)
{
  g_autofree char *percent = g_strdup_printf ("%.0f\u202f%%",
                                              100.0 * dw_sheet_view_get_shown_zoom (self->view));
  gtk_button_set_label (self->zoom, percent);
}

static void
show_pages (DwSheetPage *self)
{
  const dw_sheet *sheet = dw_sheet_view_get_sheet (self->view);
  const int n = sheet != NULL ? dw_sheet_get_n_pages (sheet) : 0;
  g_autofree char *text = n > 0 ? g_strdup_printf (ngettext ("%d page", "%d pages", (gulong)n), n)
                                : g_strdup ("");
  gtk_label_set_label (self->pages, text);
}

/* The last good sheet stays in view, marked, when the next one can not be made. */
static void
show_failure (DwSheetPage *self, const dw_sheet_failure *failure)
{
  g_autofree char *why = failure->setup != NULL ? dw_finding_text (&failure->finding)
                                                : g_strdup (_ ("There is no setup to tell."));
  gtk_label_set_label (self->stale, why);
  gtk_widget_set_visible (GTK_WIDGET (self->stale), TRUE);
}

static void
refresh (DwSheetPage *self)
{
  if (self->document == NULL)
    return;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      self->is_stale = TRUE;
      return;
    }
  self->is_stale = FALSE;
  dw_project *project = dw_project_copy (dw_document_get_project (self->document));
  source s = source_of (self, project);
  dw_sheet_failure failure = { .setup = NULL };
  dw_sheet *sheet = make (&s, (dw_paper)gtk_drop_down_get_selected (self->paper), &failure);
  source_clear (&s);
  if (sheet == NULL)
    {
      show_failure (self, &failure);
      dw_project_free (project);
      return;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->stale), FALSE);
  dw_sheet_view_take (self->view, sheet);
  g_clear_pointer (&self->shown, dw_project_free);
  self->shown = project;
  show_pages (self);
  show_zoom (self);
}

/* ---- what it is compared with ---- */

/* The names of all setups, in one string. */
static char *
names_of (const dw_project *project)
{
  GString *names = g_string_new (NULL);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    {
      const dw_setup *setup = dw_project_get_setup (project, i);
      g_string_append_printf (names, "%s\t%s\n", setup->id, setup->name);
    }
  return g_string_free (names, FALSE);
}

static void
fill_against (DwSheetPage *self)
{
  const dw_project *project = dw_document_get_project (self->document);
  g_autofree char *names = names_of (project);
  guint chosen = self->is_alone ? AGAINST_NONE : AGAINST_FITTED;

  if (g_strcmp0 (names, self->names) == 0)
    return;
  g_free (self->names);
  self->names = g_steal_pointer (&names);
  g_autoptr (GtkStringList) rows = gtk_string_list_new (NULL);
  gtk_string_list_append (rows, _ ("against the fitted setup"));
  gtk_string_list_append (rows, _ ("against nothing"));
  g_ptr_array_set_size (self->ids, 0);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    {
      const dw_setup *setup = dw_project_get_setup (project, i);
      /* Translators: name of a setup that is compared with */
      g_autofree char *name = g_strdup_printf (_ ("against “%s”"), dw_sheet_name (setup));
      gtk_string_list_append (rows, name);
      g_ptr_array_add (self->ids, g_strdup (setup->id));
      if (g_strcmp0 (setup->id, self->against_id) == 0)
        chosen = N_AGAINST + i;
    }
  if (chosen < N_AGAINST)
    g_clear_pointer (&self->against_id, g_free);
  gtk_drop_down_set_model (self->against, G_LIST_MODEL (rows));
  gtk_drop_down_set_selected (self->against, chosen);
}

static void
on_against_changed (DwSheetPage *self)
{
  const guint row = gtk_drop_down_get_selected (self->against);

  if (self->updating || row == GTK_INVALID_LIST_POSITION)
    return;
  self->is_alone = row == AGAINST_NONE;
  g_free (self->against_id);
  self->against_id = row >= N_AGAINST ? g_strdup (g_ptr_array_index (self->ids, row - N_AGAINST))
                                      : NULL;
  refresh (self);
}

static void
on_option_changed (DwSheetPage *self)
{
  if (self->updating)
    return;
  gtk_widget_set_sensitive (GTK_WIDGET (self->against), needs_setup (kind_now (self)));
  gtk_widget_set_sensitive (GTK_WIDGET (self->quantity),
                            kind_now (self) != DW_SHEET_CARD
                                && kind_now (self) != DW_SHEET_SUMMARY);
  refresh (self);
}

static void
on_paper_changed (DwSheetPage *self)
{
  if (self->updating)
    return;
  dw_sheet_print_set_paper (self->print, (dw_paper)gtk_drop_down_get_selected (self->paper));
  refresh (self);
}

void
dw_sheet_page_update (DwSheetPage *self, DwDocument *document, const char *selected, dw_units units)
{
  g_return_if_fail (DW_IS_SHEET_PAGE (self) && DW_IS_DOCUMENT (document));

  g_set_object (&self->document, document);
  if (g_strcmp0 (self->selected, selected) != 0)
    {
      g_free (self->selected);
      self->selected = g_strdup (selected);
    }
  self->units = units;
  self->updating = TRUE;
  fill_against (self);
  self->updating = FALSE;
  dw_sheet_form_update (self->form, document, selected, units);
  refresh (self);
}

void
dw_sheet_page_set_kind (DwSheetPage *self, dw_sheet_kind kind)
{
  g_return_if_fail (DW_IS_SHEET_PAGE (self));
  gtk_drop_down_set_selected (self->kind, (guint)kind);
}

DwSheetView *
dw_sheet_page_get_view (DwSheetPage *self)
{
  g_return_val_if_fail (DW_IS_SHEET_PAGE (self), NULL);
  return self->view;
}

DwSheetForm *
dw_sheet_page_get_form (DwSheetPage *self)
{
  g_return_val_if_fail (DW_IS_SHEET_PAGE (self), NULL);
  return self->form;
}

DwSheetPrint *
dw_sheet_page_get_print (DwSheetPage *self)
{
  g_return_val_if_fail (DW_IS_SHEET_PAGE (self), NULL);
  return self->print;
}

/* ---- handing it on ---- */

/* @p form  a sentence with room for the reason */
static void
fail (DwSheetPage *self, const char *form, const GError *error)
{
  const char *why = error != NULL ? error->message : _ ("There is no sheet.");
  g_autofree char *text = g_strdup_printf ("%s %s", form, why);
  g_signal_emit (self, failed_signal, 0, text);
}

static void
save_to (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwSheetPage *self = DW_SHEET_PAGE (widget);
  dw_sheet *sheet = dw_sheet_view_get_sheet (self->view);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;

  (void)name;
  if (sheet != NULL)
    {
      const dw_drawing drawing = dw_sheet_drawing (sheet, 0, dw_sheet_get_n_pages (sheet));
      bytes = dw_export_render (&drawing, DW_EXPORT_PDF, &error);
    }
  if (bytes == NULL || !dw_export_save (g_variant_get_bytestring (parameter), bytes, &error))
    fail (self, _ ("Not saved:"), error);
}

static void
on_save_name (GtkNativeDialog *dialog, int response, gpointer data)
{
  DwSheetPage *self = data;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *path = g_file_get_path (file);
      if (path != NULL)
        gtk_widget_activate_action (GTK_WIDGET (self), "sheet.save-to", "^ay", path);
    }
  g_object_unref (dialog);
}

/* A title as a file's name: nothing in it that a file system takes amiss. */
static char *
file_name_of (const dw_sheet *sheet)
{
  g_autofree char *title = g_strdup (dw_sheet_get_title (sheet));
  g_strdelimit (title, "/\\:*?\"<>|", '-');
  return g_strconcat (title, ".pdf", NULL);
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwSheetPage *self = DW_SHEET_PAGE (widget);
  const dw_sheet *sheet = dw_sheet_view_get_sheet (self->view);
  GtkFileChooserNative *chooser;

  (void)name;
  (void)parameter;
  if (sheet == NULL)
    return;
  g_autofree char *file_name = file_name_of (sheet);
  chooser = gtk_file_chooser_native_new (_ ("Save the sheet as PDF"),
                                         GTK_WINDOW (gtk_widget_get_root (widget)),
                                         GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), file_name);
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_save_name), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static dw_sheet *
make_for_paper (dw_paper paper, gpointer data)
{
  dw_sheet_failure failure;
  return make (data, paper, &failure);
}

static void
print_to (DwSheetPage *self, const char *path)
{
  const dw_sheet *sheet = dw_sheet_view_get_sheet (self->view);
  g_autoptr (GError) error = NULL;

  if (sheet == NULL)
    return;
  /* the dialog runs the main loop: the project may go on meanwhile, the sheet keeps its own */
  g_autoptr (dw_project) project = dw_project_copy (self->shown);
  g_autofree char *title = g_strdup (dw_sheet_get_title (sheet));
  source s = source_of (self, project);
  dw_sheet_print_run (self->print, GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), title,
                      make_for_paper, &s, path, &error);
  source_clear (&s);
  if (error != NULL)
    fail (self, _ ("Not printed:"), error);
  self->updating = TRUE;
  gtk_drop_down_set_selected (self->paper, dw_sheet_print_get_paper (self->print));
  self->updating = FALSE;
  refresh (self);
}

static void
print_sheet (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void)name;
  g_autoptr (DwSheetPage) self = g_object_ref (DW_SHEET_PAGE (widget));
  print_to (self, parameter != NULL ? g_variant_get_bytestring (parameter) : NULL);
}

static int
page_in_view (DwSheetPage *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scrolled);
  return dw_sheet_view_page_at (self->view, gtk_adjustment_get_value (adjustment)
                                                + gtk_adjustment_get_page_size (adjustment) / 2.0);
}

static void
copy_picture (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwSheetPage *self = DW_SHEET_PAGE (widget);
  dw_sheet *sheet = dw_sheet_view_get_sheet (self->view);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;

  (void)name;
  (void)parameter;
  if (sheet != NULL)
    {
      const dw_drawing drawing = dw_sheet_drawing (sheet, page_in_view (self), 1);
      bytes = dw_export_render (&drawing, DW_EXPORT_PNG, &error);
    }
  g_autoptr (GdkTexture) texture = bytes != NULL ? gdk_texture_new_from_bytes (bytes, &error)
                                                 : NULL;
  if (texture == NULL)
    fail (self, _ ("Not copied:"), error);
  else
    gdk_clipboard_set_texture (gtk_widget_get_clipboard (widget), texture);
}

static void
zoom (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwSheetPage *self = DW_SHEET_PAGE (widget);

  (void)parameter;
  if (g_str_has_suffix (name, "-fit") && dw_sheet_view_is_fitting (self->view))
    dw_sheet_view_set_zoom (
        self->view, dw_sheet_view_zoom_for_height (
                        self->view, gtk_adjustment_get_page_size (
                                        gtk_scrolled_window_get_vadjustment (self->scrolled))));
  else if (g_str_has_suffix (name, "-fit"))
    dw_sheet_view_set_zoom (self->view, 0.0);
  else
    dw_sheet_view_step_zoom (self->view, g_str_has_suffix (name, "-in") ? 1 : -1);
}

/* ---- widget ---- */

static void
dw_sheet_page_map (GtkWidget *widget)
{
  DwSheetPage *self = DW_SHEET_PAGE (widget);

  GTK_WIDGET_CLASS (dw_sheet_page_parent_class)->map (widget);
  if (self->is_stale)
    refresh (self);
}

static void
dw_sheet_page_dispose (GObject *object)
{
  DwSheetPage *self = DW_SHEET_PAGE (object);

  self->updating = TRUE;
  g_clear_object (&self->document);
  g_clear_object (&self->print);
  if (self->view != NULL)
    dw_sheet_view_take (self->view, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), DW_TYPE_SHEET_PAGE);
  dw_widget_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (dw_sheet_page_parent_class)->dispose (object);
}

static void
dw_sheet_page_finalize (GObject *object)
{
  DwSheetPage *self = DW_SHEET_PAGE (object);

  g_free (self->selected);
  g_free (self->against_id);
  g_free (self->names);
  g_ptr_array_unref (self->ids);
  dw_project_free (self->shown);
  G_OBJECT_CLASS (dw_sheet_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, kind);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, against);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, quantity);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, paper);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, zoom);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, pages);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, stale);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, scrolled);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, view);
  gtk_widget_class_bind_template_child (widget_class, DwSheetPage, form);
  gtk_widget_class_bind_template_callback (widget_class, on_option_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_against_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_paper_changed);
  gtk_widget_class_bind_template_callback (widget_class, show_zoom);
}

static void
dw_sheet_page_class_init (DwSheetPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = dw_sheet_page_dispose;
  object_class->finalize = dw_sheet_page_finalize;
  widget_class->map = dw_sheet_page_map;
  failed_signal = g_signal_new ("failed", DW_TYPE_SHEET_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_install_action (widget_class, "sheet.print", NULL, print_sheet);
  gtk_widget_class_install_action (widget_class, "sheet.print-to", "ay", print_sheet);
  gtk_widget_class_install_action (widget_class, "sheet.save", NULL, save);
  gtk_widget_class_install_action (widget_class, "sheet.save-to", "ay", save_to);
  gtk_widget_class_install_action (widget_class, "sheet.copy", NULL, copy_picture);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-in", NULL, zoom);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-out", NULL, zoom);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-fit", NULL, zoom);

  g_type_ensure (DW_TYPE_SHEET_VIEW);
  g_type_ensure (DW_TYPE_SHEET_FORM);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/sheet-page.ui");
  bind_children (widget_class);
}

static void
dw_sheet_page_init (DwSheetPage *self)
{
  self->selected = g_strdup ("");
  self->ids = g_ptr_array_new_with_free_func (g_free);
  self->print = dw_sheet_print_new (NULL);
  self->updating = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  dw_short_names_apply (self->against);
  gtk_drop_down_set_selected (self->paper, dw_sheet_print_get_paper (self->print));
  self->updating = FALSE;
}
