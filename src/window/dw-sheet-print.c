/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-print.h"

static const char SETTINGS_GROUP[] = "Print Settings";
static const char PAGE_GROUP[] = "Page Setup";

struct _DwSheetPrint
{
  GObject parent_instance;

  /* Owned */
  char *path;
  GtkPageSetup *page;
  GtkPrintSettings *settings;
};

G_DEFINE_FINAL_TYPE (DwSheetPrint, dw_sheet_print, G_TYPE_OBJECT)

/* ---- kept from one time to the next ---- */

static GtkPaperSize *
paper_size (dw_paper paper)
{
  return gtk_paper_size_new (paper == DW_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
}

/* What is not there, or can not be read, is as if nothing had been chosen yet. */
static void
load (DwSheetPrint *self)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();

  g_key_file_load_from_file (file, self->path, G_KEY_FILE_NONE, NULL);
  self->settings = gtk_print_settings_new_from_key_file (file, SETTINGS_GROUP, NULL);
  self->page = gtk_page_setup_new_from_key_file (file, PAGE_GROUP, NULL);
  if (self->settings == NULL)
    self->settings = gtk_print_settings_new ();
  if (self->page == NULL)
    self->page = gtk_page_setup_new ();
  gtk_page_setup_set_orientation (self->page, GTK_PAGE_ORIENTATION_PORTRAIT);
}

/* What can not be kept is asked again the next time: no more than that is lost. */
static void
keep (DwSheetPrint *self)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *folder = g_path_get_dirname (self->path);

  gtk_print_settings_to_key_file (self->settings, file, SETTINGS_GROUP);
  gtk_page_setup_to_key_file (self->page, file, PAGE_GROUP);
  g_mkdir_with_parents (folder, 0700);
  g_key_file_save_to_file (file, self->path, NULL);
}

dw_paper
dw_sheet_print_get_paper (DwSheetPrint *self)
{
  g_return_val_if_fail (DW_IS_SHEET_PRINT (self), DW_PAPER_A4);
  return dw_paper_nearest (gtk_page_setup_get_paper_width (self->page, GTK_UNIT_POINTS),
                           gtk_page_setup_get_paper_height (self->page, GTK_UNIT_POINTS));
}

void
dw_sheet_print_set_paper (DwSheetPrint *self, dw_paper paper)
{
  g_return_if_fail (DW_IS_SHEET_PRINT (self));
  GtkPaperSize *size = paper_size (paper);
  gtk_page_setup_set_paper_size_and_default_margins (self->page, size);
  gtk_print_settings_set_paper_size (self->settings, size);
  gtk_paper_size_free (size);
  keep (self);
}

/* ---- printing ---- */

typedef struct
{
  DwSheetMaker maker;
  gpointer data;
  dw_sheet *sheet; /* owned */
} job;

static void
on_begin (GtkPrintOperation *operation, GtkPrintContext *context, job *j)
{
  const double width = gtk_print_context_get_width (context);
  const double height = gtk_print_context_get_height (context);

  dw_sheet_free (j->sheet);
  j->sheet = j->maker (dw_paper_nearest (MIN (width, height), MAX (width, height)), j->data);
  gtk_print_operation_set_n_pages (operation,
                                   j->sheet != NULL ? dw_sheet_get_n_pages (j->sheet) : 1);
  if (j->sheet == NULL)
    gtk_print_operation_cancel (operation);
}

/* A sheet is as large as its paper, so it is not scaled there. */
static void
on_draw (GtkPrintOperation *operation, GtkPrintContext *context, int page, job *j)
{
  const double width = gtk_print_context_get_width (context);
  const double height = gtk_print_context_get_height (context);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);

  (void)operation;
  if (j->sheet == NULL)
    return;
  /* a tenth of a point is no other paper: sizes come in millimetres and inches, rounded */
  static const double SAME = 0.1;
  const double across = width / dw_sheet_get_width (j->sheet);
  const double down = height / dw_sheet_get_height (j->sheet);
  const double scale = MIN (across, down);
  if (ABS (width - dw_sheet_get_width (j->sheet)) > SAME
      || ABS (height - dw_sheet_get_height (j->sheet)) > SAME)
    {
      cairo_translate (cr, (width - scale * dw_sheet_get_width (j->sheet)) / 2.0,
                       (height - scale * dw_sheet_get_height (j->sheet)) / 2.0);
      cairo_scale (cr, scale, scale);
    }
  dw_sheet_paint (j->sheet, page, cr);
}

static GtkPrintOperation *
new_operation (DwSheetPrint *self, const char *title, const char *export_to, job *j)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_job_name (operation, title);
  gtk_print_operation_set_default_page_setup (operation, self->page);
  gtk_print_operation_set_print_settings (operation, self->settings);
  if (export_to != NULL)
    gtk_print_operation_set_export_filename (operation, export_to);
  g_signal_connect (operation, "begin-print", G_CALLBACK (on_begin), j);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw), j);
  return operation;
}

gboolean
dw_sheet_print_run (DwSheetPrint *self, GtkWindow *parent, const char *title, DwSheetMaker maker,
                    gpointer data, const char *export_to, GError **error)
{
  g_return_val_if_fail (DW_IS_SHEET_PRINT (self), FALSE);

  job j = { maker, data, NULL };
  g_autoptr (GtkPrintOperation) operation = new_operation (self, title, export_to, &j);
  const GtkPrintOperationResult result = gtk_print_operation_run (
      operation,
      export_to != NULL ? GTK_PRINT_OPERATION_ACTION_EXPORT
                        : GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
      parent, error);
  if (result == GTK_PRINT_OPERATION_RESULT_APPLY && export_to == NULL)
    {
      g_set_object (&self->settings, gtk_print_operation_get_print_settings (operation));
      g_set_object (&self->page, gtk_print_operation_get_default_page_setup (operation));
      keep (self);
    }
  dw_sheet_free (j.sheet);
  return result == GTK_PRINT_OPERATION_RESULT_APPLY;
}

/* ---- object ---- */

static void
dw_sheet_print_finalize (GObject *object)
{
  DwSheetPrint *self = DW_SHEET_PRINT (object);

  g_free (self->path);
  g_clear_object (&self->page);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (dw_sheet_print_parent_class)->finalize (object);
}

static void
dw_sheet_print_class_init (DwSheetPrintClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = dw_sheet_print_finalize;
}

static void
dw_sheet_print_init (DwSheetPrint *self)
{
  (void)self;
}

DwSheetPrint *
dw_sheet_print_new (const char *path)
{
  DwSheetPrint *self = g_object_new (DW_TYPE_SHEET_PRINT, NULL);
  self->path = path != NULL
                   ? g_strdup (path)
                   : g_build_filename (g_get_user_config_dir (), "dampwright", "print.ini", NULL);
  load (self);
  return self;
}
