/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-holes-table.h"

#include <glib/gi18n.h>

#include "window/dw-hole-row.h"
#include "window/dw-row-box.h"
#include "window/dw-widget.h"

struct _DwHolesTable
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkBox *rows;
  GtkButton *add;

  /* Owned */
  DwDamperEditor *editor;
};

G_DEFINE_FINAL_TYPE (DwHolesTable, dw_holes_table, GTK_TYPE_WIDGET)

/* A hole that any piston has room for, when there is none to take after. */
static const dw_holes FIRST_HOLES = { .count = 1, .diameter = 1e-3 };

static GtkWidget *
new_row (gpointer editor, int index)
{
  return dw_hole_row_new (editor, index);
}

static void
refresh (DwHolesTable *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const int n = damper != NULL ? damper->piston.n_holes : 0;

  dw_row_box_sync (self->rows, n, new_row, self->editor, GTK_WIDGET (self->add));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "holes.add",
                                 damper != NULL && n < DW_MAX_HOLE_GROUPS);
}

static void
append (dw_damper *damper, gconstpointer data)
{
  dw_piston *piston = &damper->piston;
  dw_holes holes = FIRST_HOLES;

  (void)data;
  if (piston->n_holes > 0)
    holes.diameter = piston->holes[piston->n_holes - 1].diameter;
  piston->holes[piston->n_holes++] = holes;
}

static void
on_add (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwHolesTable *self = DW_HOLES_TABLE (widget);

  (void)name;
  (void)parameter;
  if (dw_damper_editor_change (
          self->editor,
          dw_damper_editor_label (self->editor, _ ("Add front holes"), _ ("Add rear holes")), NULL,
          append, NULL))
    dw_row_box_focus (self->rows, -1);
}

static void
take_out (dw_damper *damper, gconstpointer data)
{
  dw_piston *piston = &damper->piston;
  const int index = *(const int *)data;

  piston->n_holes--;
  for (int i = index; i < piston->n_holes; i++)
    piston->holes[i] = piston->holes[i + 1];
}

static void
on_remove (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwHolesTable *self = DW_HOLES_TABLE (widget);
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const int index = g_variant_get_int32 (parameter);

  (void)name;
  if (damper == NULL || index < 0 || index >= damper->piston.n_holes)
    return;
  dw_damper_editor_change (
      self->editor,
      dw_damper_editor_label (self->editor, _ ("Remove front holes"), _ ("Remove rear holes")),
      NULL, take_out, &index);
}

static void
dw_holes_table_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_HOLES_TABLE);
  dw_widget_drop_children (GTK_WIDGET (object));
  g_clear_object (&DW_HOLES_TABLE (object)->editor);
  G_OBJECT_CLASS (dw_holes_table_parent_class)->dispose (object);
}

static void
dw_holes_table_class_init (DwHolesTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_holes_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/holes-table.ui");
  gtk_widget_class_bind_template_child (widget_class, DwHolesTable, rows);
  gtk_widget_class_bind_template_child (widget_class, DwHolesTable, add);
  gtk_widget_class_install_action (widget_class, "holes.add", NULL, on_add);
  gtk_widget_class_install_action (widget_class, "holes.remove", "i", on_remove);
}

static void
dw_holes_table_init (DwHolesTable *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
dw_holes_table_set_editor (DwHolesTable *self, DwDamperEditor *editor)
{
  g_return_if_fail (DW_IS_HOLES_TABLE (self) && self->editor == NULL);

  self->editor = g_object_ref (editor);
  g_signal_connect_object (editor, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
