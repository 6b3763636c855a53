/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-shim-row.h"

#include <glib/gi18n.h>

#include "window/dw-damper-entry.h"
#include "window/dw-beside-layout.h"
#include "window/dw-flow-layout.h"
#include "window/dw-shim-material.h"
#include "window/dw-widget.h"

struct _DwShimRow
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  DwNumberField *count;
  DwNumberField *thickness;
  GtkDropDown *material;
  GtkButton *up;
  GtkButton *down;
  GtkButton *remove;
  GtkWidget *properties;
  DwNumberField *modulus;
  DwNumberField *poisson;
  DwNumberField *strength;

  /* Owned */
  DwDamperEditor *editor;

  int index;
  gboolean shows_own; /* the user wants to see the numbers of a material that has a name */
};

G_DEFINE_FINAL_TYPE (DwShimRow, dw_shim_row, GTK_TYPE_WIDGET)

/* The shim, NULL while the row is on its way out. */
static const dw_shim *
shim_of (DwShimRow *self)
{
  const dw_damper *damper = self->editor != NULL ? dw_damper_editor_get_damper (self->editor)
                                                 : NULL;

  if (damper == NULL || self->index >= damper->valve.n_shims)
    return NULL;
  return &damper->valve.shims[self->index];
}

static dw_shim_material
material_shown (DwShimRow *self, const dw_shim *shim)
{
  return self->shows_own ? DW_MATERIAL_OWN : dw_shim_material_of (shim);
}

static void
refresh (DwShimRow *self)
{
  const dw_shim *shim = shim_of (self);

  if (shim == NULL)
    return;
  const dw_shim_material material = material_shown (self, shim);
  const int last = dw_damper_editor_get_damper (self->editor)->valve.n_shims - 1;
  gtk_drop_down_set_selected (self->material, material);
  gtk_widget_set_visible (self->properties, material == DW_MATERIAL_OWN);
  gtk_widget_set_sensitive (GTK_WIDGET (self->up), self->index > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->down), self->index < last);
}

static void
on_changed (DwShimRow *self, gboolean another)
{
  if (another)
    self->shows_own = FALSE;
  refresh (self);
}

static void
apply_material (dw_damper *damper, gconstpointer data)
{
  DwShimRow *self = DW_SHIM_ROW ((gpointer)(guintptr)data);
  dw_shim_material_apply ((dw_shim_material)gtk_drop_down_get_selected (self->material),
                          &damper->valve.shims[self->index]);
}

static void
on_material_selected (DwShimRow *self)
{
  const dw_shim *shim = shim_of (self);
  const dw_shim_material material = (dw_shim_material)gtk_drop_down_get_selected (self->material);

  if (shim == NULL || material == material_shown (self, shim))
    return;
  self->shows_own = material == DW_MATERIAL_OWN;
  if (!self->shows_own)
    dw_damper_editor_change (self->editor,
                             dw_damper_editor_label (self->editor, _ ("Change front shim material"),
                                                     _ ("Change rear shim material")),
                             NULL, apply_material, self);
  refresh (self);
}

static void
set_name (GtkButton *button, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
name_children (DwShimRow *self)
{
  const int number = self->index + 1;
  /* Translators: said by screen readers; %d is the place in the stack, from 1. */
  g_autofree char *count = g_strdup_printf (_ ("Number of shims at place %d"), number);
  g_autofree char *thickness = g_strdup_printf (_ ("Thickness of shims at place %d"), number);
  g_autofree char *material = g_strdup_printf (_ ("Material of shims at place %d"), number);
  g_autofree char *up = g_strdup_printf (_ ("Move shims at place %d up"), number);
  g_autofree char *down = g_strdup_printf (_ ("Move shims at place %d down"), number);
  g_autofree char *remove = g_strdup_printf (_ ("Remove shims at place %d"), number);

  dw_number_field_set_label (self->count, count);
  dw_number_field_set_label (self->thickness, thickness);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->material), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  material, -1);
  set_name (self->up, up);
  set_name (self->down, down);
  set_name (self->remove, remove);
}

static void
bind_children (DwShimRow *self)
{
  const struct
  {
    DwNumberField *field;
    const char *attribute;
  } fields[] = {
    { self->count, "count" },           { self->thickness, "thickness-mm" },
    { self->modulus, "modulus-gpa" },   { self->poisson, "poisson" },
    { self->strength, "strength-mpa" },
  };
  GtkButton *const buttons[] = { self->up, self->down, self->remove };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    dw_damper_entry_bind (fields[i].field, self->editor,
                          dw_damper_place_find (DW_FORM_SHIM, fields[i].attribute), self->index);
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    gtk_actionable_set_action_target (GTK_ACTIONABLE (buttons[i]), "i", self->index);
}

static gboolean
dw_shim_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (DW_SHIM_ROW (widget)->count));
}

static void
dw_shim_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_SHIM_ROW);
  dw_widget_drop_children (GTK_WIDGET (object));
  g_clear_object (&DW_SHIM_ROW (object)->editor);
  G_OBJECT_CLASS (dw_shim_row_parent_class)->dispose (object);
}

static void
dw_shim_row_class_init (DwShimRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_shim_row_dispose;
  widget_class->grab_focus = dw_shim_row_grab_focus;
  g_type_ensure (DW_TYPE_NUMBER_FIELD);
  g_type_ensure (DW_TYPE_BESIDE_LAYOUT);
  g_type_ensure (DW_TYPE_FLOW_LAYOUT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/shim-row.ui");
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, count);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, thickness);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, material);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, up);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, down);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, remove);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, properties);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, modulus);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, poisson);
  gtk_widget_class_bind_template_child (widget_class, DwShimRow, strength);
  gtk_widget_class_bind_template_callback (widget_class, on_material_selected);
}

static void
dw_shim_row_init (DwShimRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
dw_shim_row_new (DwDamperEditor *editor, int index)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (editor) && index >= 0, NULL);

  DwShimRow *self = g_object_new (DW_TYPE_SHIM_ROW, NULL);
  self->editor = g_object_ref (editor);
  self->index = index;
  name_children (self);
  bind_children (self);
  g_signal_connect_object (editor, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  refresh (self);
  return GTK_WIDGET (self);
}
