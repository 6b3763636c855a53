/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-application.h"

#include <glib/gi18n.h>

#include "project/dw-document.h"
#include "project/dw-project-file.h"
#include "project/dw-recovery.h"
#include "window/dw-window-resources.h"
#include "window/dw-quit.h"
#include "window/dw-window.h"

struct _DwApplication
{
  GtkApplication parent_instance;

  /* Owned */
  DwSettings *settings;
  GtkCssProvider *css;
  char *recovery_folder;
  gboolean system_prefers_dark;
  char *system_theme;
};

G_DEFINE_FINAL_TYPE (DwApplication, dw_application, GTK_TYPE_APPLICATION)

DwApplication *
dw_application_new (GApplicationFlags flags)
{
  return g_object_new (DW_TYPE_APPLICATION, "application-id", DW_APPLICATION_ID, "flags",
                       flags | G_APPLICATION_HANDLES_OPEN, "resource-base-path",
                       "/org/dampwright/Dampwright", NULL);
}

DwSettings *
dw_application_get_settings (DwApplication *self)
{
  g_return_val_if_fail (DW_IS_APPLICATION (self), NULL);
  return self->settings;
}

const char *
dw_application_get_recovery_folder (DwApplication *self)
{
  g_return_val_if_fail (DW_IS_APPLICATION (self), NULL);
  return self->recovery_folder;
}

/* ---- opening ---- */

static void
on_open_file (GtkWindow *window, GFile *file, DwApplication *self)
{
  dw_application_open_file (self, file, window);
}

static GtkWindow *
show_document (DwApplication *self, DwDocument *document)
{
  GtkWindow *window = GTK_WINDOW (dw_window_new (GTK_APPLICATION (self), self->settings, document));

  dw_document_keep_recovery (document, self->recovery_folder);
  g_signal_connect_object (window, "open-file", G_CALLBACK (on_open_file), self, 0);
  gtk_window_present (window);
  return window;
}

static void
show_error (DwApplication *self, GtkWindow *parent, const char *what, const char *why)
{
  GtkWidget *dialog = gtk_message_dialog_new (parent, GTK_DIALOG_MODAL, GTK_MESSAGE_ERROR,
                                              GTK_BUTTONS_CLOSE, "%s", what);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", why);
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_set_application (GTK_WINDOW (dialog), GTK_APPLICATION (self));
  gtk_window_present (GTK_WINDOW (dialog));
}

static DwWindow *
window_of (DwApplication *self, GFile *file)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (DW_IS_WINDOW (l->data))
      {
        GFile *open = dw_document_get_file (dw_window_get_document (l->data));
        if (open != NULL && g_file_equal (open, file))
          return l->data;
      }
  return NULL;
}

static void
remember_file (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = { .mime_type = (char[]){ "application/x-dampwright+xml" },
                         .app_name = (char[]){ "Dampwright" },
                         .app_exec = (char[]){ "dampwright %u" } };
  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

gboolean
dw_application_open_file (DwApplication *self, GFile *file, GtkWindow *parent)
{
  g_return_val_if_fail (DW_IS_APPLICATION (self) && G_IS_FILE (file), FALSE);

  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_file_get_parse_name (file);
  DwWindow *open = window_of (self, file);

  if (open != NULL)
    {
      gtk_window_present (GTK_WINDOW (open));
      return TRUE;
    }
  g_autoptr (DwDocument) document = dw_document_open (file, findings, &error);
  if (document == NULL)
    {
      g_autofree char *what = g_strdup_printf (_ ("“%s” cannot be opened"), name);
      g_autofree char *base = g_file_get_basename (file);
      g_autofree char *why = error != NULL ? g_strdup (error->message)
                                           : dw_findings_to_text (findings, base);
      show_error (self, parent, what, why);
      return FALSE;
    }
  GtkWindow *window = show_document (self, document);
  if (dw_findings_get_n (findings) > 0)
    dw_window_show_findings (DW_WINDOW (window), findings);
  remember_file (file);
  return TRUE;
}

void
dw_application_open_new (DwApplication *self)
{
  g_return_if_fail (DW_IS_APPLICATION (self));

  g_autoptr (dw_project) project = dw_project_new ();
  g_autoptr (DwDocument) document = dw_document_new (project);
  show_document (self, document);
}

/* ---- after a crash ---- */

static void
open_recovered (DwApplication *self, const dw_recovered *left)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (GFile) origin = left->origin != NULL ? g_file_new_for_uri (left->origin) : NULL;
  g_autoptr (dw_project) project = dw_project_load (left->copy, findings, NULL);

  if (project == NULL)
    return;
  g_autoptr (DwDocument) document = dw_document_new_recovered (project, origin);
  show_document (self, document);
  /* the new document keeps a copy of its own from now on */
  dw_document_flush_recovery (document);
  dw_recovered_remove (left);
}

static void
on_recovery_response (GtkDialog *dialog, int response, gpointer data)
{
  DwApplication *self = data;
  GPtrArray *left = g_object_get_data (G_OBJECT (dialog), "left");

  for (guint i = 0; i < left->len; i++)
    {
      const dw_recovered *one = g_ptr_array_index (left, i);
      if (response == GTK_RESPONSE_ACCEPT)
        open_recovered (self, one);
      else if (response == GTK_RESPONSE_REJECT)
        dw_recovered_remove (one);
    }
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* Escape or closing the dialog keeps the copies for the next start. */
static void
offer_recovery (DwApplication *self)
{
  g_autoptr (GPtrArray) left = dw_recovery_find (self->recovery_folder);
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (left->len == 0)
    return;
  GtkWidget *dialog = gtk_message_dialog_new (
      parent, GTK_DIALOG_MODAL, GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s",
      ngettext ("Unsaved work was found", "Unsaved projects were found", left->len));
  g_autoptr (GString) names = g_string_new (NULL);
  for (guint i = 0; i < left->len; i++)
    {
      const dw_recovered *one = g_ptr_array_index (left, i);
      g_autofree char *path = one->origin != NULL ? g_uri_unescape_string (one->origin, NULL)
                                                  : NULL;
      g_string_append_printf (names, "\n%s", path != NULL ? path : _ ("A project never saved"));
    }
  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog), "%s\n%s",
      _ ("The program ended before these changes were saved:"), names->str);
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _ ("_Discard"), GTK_RESPONSE_REJECT, _ ("_Recover"),
                          GTK_RESPONSE_ACCEPT, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  g_object_set_data_full (G_OBJECT (dialog), "left", g_steal_pointer (&left),
                          (GDestroyNotify)g_ptr_array_unref);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_recovery_response), self, 0);
  gtk_window_set_application (GTK_WINDOW (dialog), GTK_APPLICATION (self));
  gtk_window_present (GTK_WINDOW (dialog));
}

/* ---- theme ---- */

/* GTK reads its style sheets again whenever one of these is set, also to what it is already. */
static void
set_theme (gboolean dark, const char *name)
{
  GtkSettings *settings = gtk_settings_get_default ();
  g_autofree char *name_now = NULL;
  gboolean dark_now;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &dark_now, "gtk-theme-name",
                &name_now, NULL);
  if (dark != dark_now)
    g_object_set (settings, "gtk-application-prefer-dark-theme", dark, NULL);
  if (g_strcmp0 (name, name_now) != 0)
    g_object_set (settings, "gtk-theme-name", name, NULL);
}

static void
apply_theme (DwApplication *self)
{
  const dw_theme theme = dw_settings_get_theme (self->settings);
  const gboolean dark = theme == DW_THEME_DARK
                        || (theme == DW_THEME_SYSTEM && self->system_prefers_dark);
  const gboolean contrast = theme == DW_THEME_CONTRAST || theme == DW_THEME_SUN;

  set_theme (dark, contrast ? "Default-hc" : self->system_theme);
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (DW_IS_WINDOW (l->data))
      dw_window_settings_changed (l->data);
}

static void
load_css (DwApplication *self)
{
  self->css = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (self->css, "/org/dampwright/Dampwright/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (self->css),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

/* ---- actions ---- */

static void
on_new (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  dw_application_open_new (DW_APPLICATION (data));
}

static void
on_quit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  dw_quit (GTK_APPLICATION (data));
}

static void
on_about (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  gtk_show_about_dialog (
      gtk_application_get_active_window (GTK_APPLICATION (data)), "program-name", "Dampwright",
      "version", DW_VERSION, "logo-icon-name", DW_APPLICATION_ID, "license-type",
      GTK_LICENSE_GPL_3_0, "comments",
      _ ("Estimates for scale-model dampers; not for vehicles that carry people or go on roads. "
         "Wear eye protection and hold small bits in a pin vice or bench drill; deburr and wash "
         "out "
         "swarf. Release gas pressure before opening a damper. Keep silicone oil off floors, tyres "
         "and brakes. Check on the car, one change at a time. The event’s and local rules and the "
         "maker’s limits come first."),
      NULL);
}

static void
on_theme (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  static const char *const names[DW_N_THEMES] = { "system", "light", "dark", "contrast", "sun" };
  DwApplication *self = data;
  const char *name = g_variant_get_string (parameter, NULL);

  for (int i = 0; i < DW_N_THEMES; i++)
    if (strcmp (names[i], name) == 0)
      {
        dw_settings_set_theme (self->settings, (dw_theme)i);
        g_simple_action_set_state (action, parameter);
      }
}

/* One switch a unit: app.unit-inch and so on. */
static void
on_unit (GSimpleAction *action, GVariant *state, gpointer data)
{
  static const struct
  {
    const char *name;
    dw_units bit;
  } switches[] = { { "unit-inch", DW_UNITS_INCH },
                   { "unit-lbf", DW_UNITS_LBF },
                   { "unit-fahrenheit", DW_UNITS_FAHRENHEIT },
                   { "unit-lbf-per-inch", DW_UNITS_LBF_PER_INCH } };
  DwApplication *self = data;
  const char *name = g_action_get_name (G_ACTION (action));
  dw_units units = dw_settings_get_units (self->settings);

  for (size_t i = 0; i < G_N_ELEMENTS (switches); i++)
    if (strcmp (switches[i].name, name) == 0)
      units = g_variant_get_boolean (state) ? units | switches[i].bit : units & ~switches[i].bit;
  dw_settings_set_units (self->settings, units);
  g_simple_action_set_state (action, state);
}

static void
add_actions (DwApplication *self)
{
  static const GActionEntry entries[] = {
    { .name = "new", .activate = on_new },
    { .name = "quit", .activate = on_quit },
    { .name = "about", .activate = on_about },
    { .name = "theme", .activate = on_theme, .parameter_type = "s", .state = "'system'" },
    { .name = "unit-inch", .state = "false", .change_state = on_unit },
    { .name = "unit-lbf", .state = "false", .change_state = on_unit },
    { .name = "unit-fahrenheit", .state = "false", .change_state = on_unit },
    { .name = "unit-lbf-per-inch", .state = "false", .change_state = on_unit },
  };
  static const struct
  {
    const char *action;
    const char *accels[3];
  } keys[] = {
    { "app.new", { "<Control>n" } },
    { "app.quit", { "<Control>q" } },
    { "win.open", { "<Control>o" } },
    { "win.save", { "<Control>s" } },
    { "win.save-as", { "<Control><Shift>s" } },
    { "win.undo", { "<Control>z" } },
    { "win.redo", { "<Control><Shift>z", "<Control>y" } },
    { "win.close", { "<Control>w" } },
    { "win.setup-duplicate", { "<Control>d" } },
    { "win.setup-rename", { "F2" } },
    { "win.setup-fit", { "<Control>f" } },
    { "win.page::curves", { "<Alt>1" } },
    { "win.page::drilling", { "<Alt>2" } },
    { "win.page::sheet", { "<Alt>3" } },
    { "win.print", { "<Control>p" } },
    { "win.chart-whole", { "<Control>0" } },
    { "win.show-help-overlay", { "<Control>question", "F1" } },
  };
  GtkApplication *app = GTK_APPLICATION (self);

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  for (size_t i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_application_set_accels_for_action (app, keys[i].action, keys[i].accels);
}

/* The menu shows what is set. */
static void
show_choices (DwApplication *self)
{
  static const char *const themes[DW_N_THEMES] = { "system", "light", "dark", "contrast", "sun" };
  static const char *const units[] = { "unit-inch", "unit-lbf", "unit-fahrenheit",
                                       "unit-lbf-per-inch" };
  const dw_units chosen = dw_settings_get_units (self->settings);
  GAction *theme = g_action_map_lookup_action (G_ACTION_MAP (self), "theme");

  g_simple_action_set_state (G_SIMPLE_ACTION (theme),
                             g_variant_new_string (themes[dw_settings_get_theme (self->settings)]));
  for (size_t i = 0; i < G_N_ELEMENTS (units); i++)
    g_simple_action_set_state (
        G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), units[i])),
        g_variant_new_boolean ((chosen & (1u << i)) != 0));
}

/* ---- life of the program ---- */

static void
dw_application_startup (GApplication *app)
{
  DwApplication *self = DW_APPLICATION (app);
  GtkSettings *settings;

  /* names the resources, without which a static library would leave them out */
  g_resources_register (dw_window_get_resource ());
  G_APPLICATION_CLASS (dw_application_parent_class)->startup (app);
  settings = gtk_settings_get_default ();
  g_object_get (settings, "gtk-application-prefer-dark-theme", &self->system_prefers_dark,
                "gtk-theme-name", &self->system_theme, NULL);
  self->settings = dw_settings_new ();
  self->recovery_folder = dw_recovery_default_folder ();
  gtk_window_set_default_icon_name (DW_APPLICATION_ID);
  load_css (self);
  add_actions (self);
  show_choices (self);
  apply_theme (self);
  g_signal_connect_object (self->settings, "changed", G_CALLBACK (apply_theme), self,
                           G_CONNECT_SWAPPED);
}

static gboolean
has_window (DwApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (DW_IS_WINDOW (l->data))
      return TRUE;
  return FALSE;
}

static void
dw_application_activate (GApplication *app)
{
  DwApplication *self = DW_APPLICATION (app);
  const gboolean first = !has_window (self);

  dw_application_open_new (self);
  if (first)
    offer_recovery (self);
}

static void
dw_application_open (GApplication *app, GFile **files, int n_files, const char *hint)
{
  DwApplication *self = DW_APPLICATION (app);
  const gboolean first = !has_window (self);

  (void)hint;
  for (int i = 0; i < n_files; i++)
    dw_application_open_file (self, files[i], NULL);
  /* a file that cannot be opened still leaves a window to go on from */
  if (!has_window (self))
    dw_application_open_new (self);
  if (first)
    offer_recovery (self);
}

static void
dw_application_finalize (GObject *object)
{
  DwApplication *self = DW_APPLICATION (object);

  g_clear_object (&self->settings);
  g_clear_object (&self->css);
  g_free (self->recovery_folder);
  g_free (self->system_theme);
  G_OBJECT_CLASS (dw_application_parent_class)->finalize (object);
}

static void
dw_application_class_init (DwApplicationClass *klass)
{
  GApplicationClass *app_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = dw_application_finalize;
  app_class->startup = dw_application_startup;
  app_class->activate = dw_application_activate;
  app_class->open = dw_application_open;
}

static void
dw_application_init (DwApplication *self)
{
  (void)self;
}
