/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"

#include <locale.h>

#include "window/dw-filling.h"

/* Made by glib-compile-resources; its header is not where tests look. */
extern GResource *dw_window_get_resource (void);

void
panel_start (void)
{
  ck_assert_msg (gtk_init_check (), "no display: run the tests through tests/with-display.sh");
  /* GTK takes the user's; tests that are about the decimal sign say which one they want */
  setlocale (LC_NUMERIC, "C");
  g_resources_register (dw_window_get_resource ());

  GtkCssProvider *css = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (css, "/org/dampwright/Dampwright/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (css),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_object_unref (css);
}

void
panel_stop (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  while (g_list_model_get_n_items (windows) > 0)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, 0);
      gtk_window_destroy (window);
    }
}

static dw_damper
damper_of_everything (dw_oil_kind kind)
{
  dw_damper damper = dw_damper_defaults ();

  damper.piston.n_holes = 2;
  damper.piston.holes[1] = (dw_holes){ .count = 3, .diameter = 1e-3, .covered = true };
  damper.piston.eccentricity = 0.5;
  damper.valve.n_shims = 2;
  damper.valve.shims[0] = (dw_shim){
    .thickness = 0.1e-3, .count = 2, .modulus = 4.2e9, .poisson = 0.35, .strength = 90e6
  };
  damper.valve.shims[1] = (dw_shim){
    .thickness = 0.2e-3, .count = 1, .modulus = 3.5e9, .poisson = 0.4, .strength = 80e6
  };
  damper.body.has_filling = true;
  damper.body.filling = 6e-6;
  damper.stance = (dw_stance){
    .has_ride_height = true, .ride_height = 24e-3, .has_droop = true, .droop = 18e-3
  };
  dw_filling_set_oil_kind (&damper.oil, kind);
  dw_filling_set_thinning (&damper.oil, true);
  return damper;
}

DwDocument *
panel_document (dw_oil_kind kind)
{
  g_autoptr (dw_project) project = dw_project_new_empty ();
  const dw_damper front = damper_of_everything (kind);
  dw_damper rear = front;

  rear.body.stroke = 35e-3;
  rear.spring.rate = 450.0;
  rear.stance.ride_height = 26e-3;
  rear.stance.has_droop = false;
  rear.stance.droop = 0.0;
  ck_assert_uint_eq (dw_damper_check (&front, NULL, 0), 0);
  ck_assert_uint_eq (dw_damper_check (&rear, NULL, 0), 0);
  ck_assert_int_eq (dw_project_add_setup (project, "a", "A", &front, &rear), 0);
  return dw_document_new (project);
}

const dw_damper *
panel_damper (DwDocument *document, dw_axle axle)
{
  return &dw_project_find_setup (dw_document_get_project (document), "a")->damper[axle];
}

DwDamperEditor *
panel_editor (DwDocument *document)
{
  DwDamperEditor *editor = dw_damper_editor_new ();
  dw_damper_editor_set_document (editor, document);
  dw_damper_editor_set_setup (editor, "a");
  return editor;
}

GtkWidget *
panel_show (GtkWidget *widget)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), widget);
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  gtk_window_set_default_size (GTK_WINDOW (window), 640, 700);
  gtk_window_present (GTK_WINDOW (window));
  /* however slow the machine is */
  for (int i = 0; i < 500 && gtk_widget_get_width (scrolled) == 0; i++)
    panel_settle ();
  panel_settle ();
  return window;
}

static gboolean
set_true (gpointer data)
{
  *(gboolean *)data = TRUE;
  return G_SOURCE_REMOVE;
}

void
panel_settle (void)
{
  gboolean done = FALSE;

  g_timeout_add (60, set_true, &done);
  while (!done)
    g_main_context_iteration (NULL, TRUE);
}

static GtkWidget *
find (GtkWidget *root, const char *id)
{
  const char *its = gtk_buildable_get_buildable_id (GTK_BUILDABLE (root));

  if (g_strcmp0 (its, id) == 0)
    return root;
  /* what GTK's own widgets are made of is much, and none of it is meant */
  if (GTK_IS_DROP_DOWN (root) || GTK_IS_ENTRY (root) || GTK_IS_BUTTON (root)
      || GTK_IS_MENU_BUTTON (root))
    return NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, id);
      if (found != NULL)
        return found;
    }
  return NULL;
}

GtkWidget *
panel_find (GtkWidget *root, const char *id)
{
  GtkWidget *found = find (root, id);
  ck_assert_msg (found != NULL, "no widget %s", id);
  return found;
}

GtkWidget *
panel_entry (DwNumberField *field)
{
  return panel_find (GTK_WIDGET (field), "entry");
}

const char *
panel_text (DwNumberField *field)
{
  return gtk_editable_get_text (GTK_EDITABLE (panel_entry (field)));
}

void
panel_type (DwNumberField *field, const char *text)
{
  GtkEditable *entry = GTK_EDITABLE (panel_entry (field));

  gtk_editable_delete_text (entry, 0, -1);
  for (const char *p = text, *next; *p != '\0'; p = next)
    {
      next = g_utf8_find_next_char (p, NULL);
      gtk_editable_set_position (entry, -1);
      int end = gtk_editable_get_position (entry);
      gtk_editable_insert_text (entry, p, (int)(next - p), &end);
    }
}

void
panel_enter (DwNumberField *field)
{
  g_signal_emit_by_name (panel_entry (field), "activate");
}

gboolean
panel_key (DwNumberField *field, guint keyval)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (panel_entry (field));
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_KEY (controller)
          && gtk_event_controller_get_propagation_phase (controller) == GTK_PHASE_CAPTURE)
        g_signal_emit_by_name (controller, "key-pressed", keyval, 0, 0, &taken);
    }
  return taken;
}

GtkWidget *
panel_row (GtkWidget *table, int index)
{
  GtkWidget *row = gtk_widget_get_first_child (panel_find (table, "rows"));

  for (; index > 0 && row != NULL; index--)
    row = gtk_widget_get_next_sibling (row);
  ck_assert_ptr_nonnull (row);
  return row;
}

int
panel_count_rows (GtkWidget *table)
{
  int n = 0;
  for (GtkWidget *row = gtk_widget_get_first_child (panel_find (table, "rows")); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    n++;
  return n;
}
