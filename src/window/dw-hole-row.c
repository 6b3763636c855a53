/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-hole-row.h"

#include <glib/gi18n.h>

#include "window/dw-damper-entry.h"
#include "window/dw-widget.h"

struct _DwHoleRow
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  DwNumberField *count;
  DwNumberField *diameter;
  GtkDropDown *kind;
  GtkButton *remove;

  /* Owned */
  DwDamperEditor *editor;

  int index;
};

G_DEFINE_FINAL_TYPE (DwHoleRow, dw_hole_row, GTK_TYPE_WIDGET)

/* The group, NULL while the row is on its way out. */
static const dw_holes *
holes_of (DwHoleRow *self)
{
  const dw_damper *damper = self->editor != NULL ? dw_damper_editor_get_damper (self->editor)
                                                 : NULL;

  if (damper == NULL || self->index >= damper->piston.n_holes)
    return NULL;
  return &damper->piston.holes[self->index];
}

static void
refresh (DwHoleRow *self)
{
  const dw_holes *holes = holes_of (self);

  if (holes != NULL)
    gtk_drop_down_set_selected (self->kind, holes->covered ? 1 : 0);
}

static void
toggle_covered (dw_damper *damper, gconstpointer data)
{
  const DwHoleRow *self = data;
  dw_holes *holes = &damper->piston.holes[self->index];

  holes->covered = !holes->covered;
}

static void
on_kind_selected (DwHoleRow *self)
{
  const dw_holes *holes = holes_of (self);
  const gboolean covered = gtk_drop_down_get_selected (self->kind) == 1;

  if (holes == NULL || holes->covered == covered)
    return;
  dw_damper_editor_change (
      self->editor,
      covered
          ? dw_damper_editor_label (self->editor, _ ("Cover front holes"), _ ("Cover rear holes"))
          : dw_damper_editor_label (self->editor, _ ("Open front holes"), _ ("Open rear holes")),
      NULL, toggle_covered, self);
  refresh (self);
}

static void
name_children (DwHoleRow *self)
{
  const int number = self->index + 1;
  /* Translators: said by screen readers; %d is the group of equal holes, from 1. */
  g_autofree char *count = g_strdup_printf (_ ("Number of holes in group %d"), number);
  g_autofree char *diameter = g_strdup_printf (_ ("Diameter of holes in group %d"), number);
  g_autofree char *kind = g_strdup_printf (_ ("Open or covered, group %d"), number);
  g_autofree char *remove = g_strdup_printf (_ ("Remove group %d"), number);

  dw_number_field_set_label (self->count, count);
  dw_number_field_set_label (self->diameter, diameter);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->kind), GTK_ACCESSIBLE_PROPERTY_LABEL, kind,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  remove, -1);
}

static gboolean
dw_hole_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (DW_HOLE_ROW (widget)->count));
}

static void
dw_hole_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_HOLE_ROW);
  dw_widget_drop_children (GTK_WIDGET (object));
  g_clear_object (&DW_HOLE_ROW (object)->editor);
  G_OBJECT_CLASS (dw_hole_row_parent_class)->dispose (object);
}

static void
dw_hole_row_class_init (DwHoleRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_hole_row_dispose;
  widget_class->grab_focus = dw_hole_row_grab_focus;
  g_type_ensure (DW_TYPE_NUMBER_FIELD);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/hole-row.ui");
  gtk_widget_class_bind_template_child (widget_class, DwHoleRow, count);
  gtk_widget_class_bind_template_child (widget_class, DwHoleRow, diameter);
  gtk_widget_class_bind_template_child (widget_class, DwHoleRow, kind);
  gtk_widget_class_bind_template_child (widget_class, DwHoleRow, remove);
  gtk_widget_class_bind_template_callback (widget_class, on_kind_selected);
}

static void
dw_hole_row_init (DwHoleRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
dw_hole_row_new (DwDamperEditor *editor, int index)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (editor) && index >= 0, NULL);

  DwHoleRow *self = g_object_new (DW_TYPE_HOLE_ROW, NULL);
  self->editor = g_object_ref (editor);
  self->index = index;
  name_children (self);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->remove), "i", index);
  dw_damper_entry_bind (self->count, editor, dw_damper_place_find (DW_FORM_HOLES, "count"), index);
  dw_damper_entry_bind (self->diameter, editor, dw_damper_place_find (DW_FORM_HOLES, "diameter-mm"),
                        index);
  g_signal_connect_object (editor, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
  return GTK_WIDGET (self);
}
