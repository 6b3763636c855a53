/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-shims-table.h"

#include <glib/gi18n.h>

#include "window/dw-row-box.h"
#include "window/dw-shim-material.h"
#include "window/dw-shim-row.h"
#include "window/dw-widget.h"

struct _DwShimsTable
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkBox *rows;
  GtkButton *add;

  /* Owned */
  DwDamperEditor *editor;
};

G_DEFINE_FINAL_TYPE (DwShimsTable, dw_shims_table, GTK_TYPE_WIDGET)

static GtkWidget *
new_row (gpointer editor, int index)
{
  return dw_shim_row_new (editor, index);
}

static int
count_shims (DwShimsTable *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  return damper != NULL ? damper->valve.n_shims : 0;
}

static void
refresh (DwShimsTable *self)
{
  const int n = count_shims (self);

  dw_row_box_sync (self->rows, n, new_row, self->editor, GTK_WIDGET (self->add));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "shims.add",
                                 dw_damper_editor_get_damper (self->editor) != NULL
                                     && n < DW_MAX_SHIMS);
}

static void
append (dw_damper *damper, gconstpointer data)
{
  dw_valve *valve = &damper->valve;

  (void)data;
  valve->shims[valve->n_shims] = valve->n_shims > 0 ? valve->shims[valve->n_shims - 1]
                                                    : dw_shim_material_first ();
  valve->n_shims++;
}

static void
on_add (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwShimsTable *self = DW_SHIMS_TABLE (widget);

  (void)name;
  (void)parameter;
  if (dw_damper_editor_change (
          self->editor,
          dw_damper_editor_label (self->editor, _ ("Add front shim"), _ ("Add rear shim")), NULL,
          append, NULL))
    dw_row_box_focus (self->rows, -1);
}

static void
take_out (dw_damper *damper, gconstpointer data)
{
  dw_valve *valve = &damper->valve;
  const int index = *(const int *)data;

  valve->n_shims--;
  for (int i = index; i < valve->n_shims; i++)
    valve->shims[i] = valve->shims[i + 1];
}

static void
on_remove (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwShimsTable *self = DW_SHIMS_TABLE (widget);
  const int index = g_variant_get_int32 (parameter);

  (void)name;
  if (index < 0 || index >= count_shims (self))
    return;
  dw_damper_editor_change (
      self->editor,
      dw_damper_editor_label (self->editor, _ ("Remove front shim"), _ ("Remove rear shim")), NULL,
      take_out, &index);
}

/* Change places with the one above. */
static void
swap_up (dw_damper *damper, gconstpointer data)
{
  dw_shim *shims = damper->valve.shims;
  const int lower = *(const int *)data;
  const dw_shim shim = shims[lower];

  shims[lower] = shims[lower - 1];
  shims[lower - 1] = shim;
}

static void
on_move (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwShimsTable *self = DW_SHIMS_TABLE (widget);
  const gboolean up = g_str_equal (name, "shims.up");
  const int index = g_variant_get_int32 (parameter);
  const int lower = up ? index : index + 1;

  if (lower < 1 || lower >= count_shims (self))
    return;
  dw_damper_editor_change (
      self->editor,
      dw_damper_editor_label (self->editor, _ ("Move front shim"), _ ("Move rear shim")), NULL,
      swap_up, &lower);
  dw_damper_editor_reset (self->editor);
  dw_row_box_focus (self->rows, up ? index - 1 : index + 1);
}

static void
dw_shims_table_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_SHIMS_TABLE);
  dw_widget_drop_children (GTK_WIDGET (object));
  g_clear_object (&DW_SHIMS_TABLE (object)->editor);
  G_OBJECT_CLASS (dw_shims_table_parent_class)->dispose (object);
}

static void
dw_shims_table_class_init (DwShimsTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_shims_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/shims-table.ui");
  gtk_widget_class_bind_template_child (widget_class, DwShimsTable, rows);
  gtk_widget_class_bind_template_child (widget_class, DwShimsTable, add);
  gtk_widget_class_install_action (widget_class, "shims.add", NULL, on_add);
  gtk_widget_class_install_action (widget_class, "shims.remove", "i", on_remove);
  gtk_widget_class_install_action (widget_class, "shims.up", "i", on_move);
  gtk_widget_class_install_action (widget_class, "shims.down", "i", on_move);
}

static void
dw_shims_table_init (DwShimsTable *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
dw_shims_table_set_editor (DwShimsTable *self, DwDamperEditor *editor)
{
  g_return_if_fail (DW_IS_SHIMS_TABLE (self) && self->editor == NULL);

  self->editor = g_object_ref (editor);
  g_signal_connect_object (editor, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
