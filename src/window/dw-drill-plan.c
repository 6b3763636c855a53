/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-plan.h"

#include <glib/gi18n.h>

#include "window/dw-drill-words.h"
#include "window/dw-piston-view.h"

/* [px] */
static const int FACE_EXTENT = 220;
static const int WIDTH = 720;
static const int HEIGHT = 560;

struct _DwDrillPlan
{
  GtkWindow parent_instance;
  GtkLabel *text; /* child, made here */
  DwPistonView *face;
};

G_DEFINE_FINAL_TYPE (DwDrillPlan, dw_drill_plan, GTK_TYPE_WINDOW)

static guint drilled_signal;

const char *
dw_drill_plan_get_text (DwDrillPlan *self)
{
  g_return_val_if_fail (DW_IS_DRILL_PLAN (self), NULL);
  return gtk_label_get_text (self->text);
}

/* ---- done ---- */

static void
finish (gpointer data)
{
  g_autoptr (DwDrillPlan) self = data;
  g_signal_emit (self, drilled_signal, 0);
  gtk_window_destroy (GTK_WINDOW (self));
}

/* From the main loop, once the dialog that asked is gone: it would lose its parent while it still
 * tells its answer. */
static void
on_response (GtkDialog *dialog, int response, gpointer data)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_ACCEPT)
    g_idle_add_once (finish, g_object_ref (data));
}

static void
ask_drilled (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWidget *dialog = gtk_message_dialog_new (
      GTK_WINDOW (widget), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION,
      GTK_BUTTONS_NONE, "%s", _ ("Are these pistons drilled now?"));

  (void)name;
  (void)parameter;
  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog), "%s",
      _ ("The setup gets the drilled pistons and becomes the fitted one; a spare piston of the "
         "parts "
         "box that was like them is changed as well. Undo takes that back in the program, but the "
         "holes of the real pistons cannot be undone."));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _ ("_Not yet"), GTK_RESPONSE_CANCEL,
                          _ ("They are _drilled"), GTK_RESPONSE_ACCEPT, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_response), widget, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* ---- widget ---- */

static void
dw_drill_plan_class_init (DwDrillPlanClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  drilled_signal = g_signal_new ("drilled", DW_TYPE_DRILL_PLAN, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "plan.drilled", NULL, ask_drilled);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static GtkWidget *
new_button (const char *label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

static void
dw_drill_plan_init (DwDrillPlan *self)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  GtkWidget *bottom = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *face = dw_piston_view_new ();
  GtkWidget *text = gtk_label_new ("");

  self->face = DW_PISTON_VIEW (face);
  self->text = GTK_LABEL (text);
  dw_piston_view_set_extent (self->face, FACE_EXTENT);
  gtk_widget_set_valign (face, GTK_ALIGN_START);
  gtk_label_set_wrap (self->text, TRUE);
  gtk_label_set_xalign (self->text, 0.0F);
  gtk_label_set_yalign (self->text, 0.0F);
  gtk_label_set_selectable (self->text, TRUE);
  gtk_widget_set_focusable (text, FALSE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), text);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_hexpand (scrolled, TRUE);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (top), face);
  gtk_box_append (GTK_BOX (top), scrolled);
  gtk_widget_set_halign (bottom, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (bottom),
                  new_button (_ ("These pistons are _drilled now…"), "plan.drilled"));
  gtk_box_append (GTK_BOX (bottom), new_button (_ ("_Close"), "window.close"));
  gtk_box_append (GTK_BOX (all), top);
  gtk_box_append (GTK_BOX (all), bottom);
  gtk_widget_set_margin_start (all, 14);
  gtk_widget_set_margin_end (all, 14);
  gtk_widget_set_margin_top (all, 14);
  gtk_widget_set_margin_bottom (all, 14);
  gtk_window_set_child (GTK_WINDOW (self), all);
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
}

GtkWidget *
dw_drill_plan_new (const dw_drilling *study, const dw_drill_box *box, const dw_drill_row *row,
                   dw_axle axle, dw_units units)
{
  DwDrillPlan *self = g_object_new (DW_TYPE_DRILL_PLAN, NULL);
  g_autofree char *text = dw_drill_words_plan (study, box, row, axle, units);

  gtk_window_set_title (GTK_WINDOW (self),
                        axle == DW_FRONT ? _ ("Drilling plan, front") : _ ("Drilling plan, rear"));
  gtk_label_set_label (self->text, text);
  dw_piston_view_set_units (self->face, units);
  dw_piston_view_set_damper (self->face, &study->sets.damper);
  dw_piston_view_set_sets (self->face, study->sets.set_of, study->sets.face.n_holes);
  return GTK_WIDGET (self);
}
