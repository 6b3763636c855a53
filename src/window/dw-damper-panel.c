/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-damper-panel.h"

#include <glib/gi18n.h>
#include <string.h>

#include "window/dw-damper-entry.h"
#include "window/dw-filling.h"
#include "sheet/dw-finding-text.h"
#include "window/dw-beside-layout.h"
#include "window/dw-flow-layout.h"
#include "window/dw-holes-table.h"
#include "window/dw-piston-view.h"
#include "window/dw-shims-table.h"
#include "window/dw-widget.h"

struct _DwDamperPanel
{
  GtkWidget parent_instance;

  /* Template children (borrowed); the number fields are found by the ids of their places */
  GtkWidget *content;
  DwHolesTable *holes;
  DwPistonView *face;
  DwShimsTable *shims;
  GtkLabel *valve_hint;
  GtkWidget *opens_on_cell;
  GtkDropDown *opens_on;
  GtkDropDown *oil_kind;
  GtkCheckButton *thinning;
  GtkDropDown *gas_kind;
  GtkLabel *messages[DW_N_SECTIONS];

  /* Owned */
  DwDamperEditor *editor;
};

G_DEFINE_FINAL_TYPE (DwDamperPanel, dw_damper_panel, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_DOCUMENT,
  PROP_SETUP,
  PROP_AXLE,
  PROP_UNITS,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

/* ---- the number fields ---- */

/* Whether the field of a place stands in the panel itself, not in a row of a table. */
static gboolean
is_here (const dw_damper_place *place)
{
  return place->form != DW_FORM_HOLES && place->form != DW_FORM_SHIM;
}

static int
count_rows (const dw_damper_place *place)
{
  return place->form == DW_FORM_OIL_PART ? DW_MAX_OIL_PARTS : 1;
}

/* Of the template; caller frees. The fields of the oils of a blend have their number behind. */
static char *
child_id (const dw_damper_place *place, int row)
{
  return place->form == DW_FORM_OIL_PART ? g_strdup_printf ("%s%d", place->id, row + 1)
                                         : g_strdup (place->id);
}

static DwNumberField *
field_named (DwDamperPanel *self, const char *id)
{
  return DW_NUMBER_FIELD (
      gtk_widget_get_template_child (GTK_WIDGET (self), DW_TYPE_DAMPER_PANEL, id));
}

static void
bind_fields (DwDamperPanel *self)
{
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    {
      const dw_damper_place *place = dw_damper_place_get (i);
      for (int row = 0; is_here (place) && row < count_rows (place); row++)
        {
          g_autofree char *id = child_id (place, row);
          dw_damper_entry_bind (field_named (self, id), self->editor, place, row);
        }
    }
}

/* ---- what has no effect, and why ---- */

static void
set_idle (DwDamperPanel *self, const char *id, const char *reason)
{
  dw_damper_entry_set_idle (GTK_WIDGET (field_named (self, id)), reason);
}

/* Hub, shim and hole circle count as soon as there is one of holes and shims: they decide whether
 * the other one would fit. */
static void
update_valve (DwDamperPanel *self, const dw_damper *damper)
{
  const gboolean covered = dw_piston_has_covered (&damper->piston);
  const gboolean shims = damper->valve.n_shims > 0;
  const char *no_holes = _ ("No effect: no holes are covered.");
  const char *no_shims = _ ("No effect: there are no shims.");
  const char *nothing = _ ("No effect: no holes are covered, and there are no shims.");
  const char *geometry = covered || shims ? NULL : nothing;
  const char *reason = !covered && !shims ? nothing
                       : !covered         ? no_holes
                       : !shims           ? no_shims
                                          : NULL;
  const char *hint = !covered && shims ? _ ("No holes are covered: the shims do nothing.")
                     : covered && !shims
                         ? _ ("There are no shims: covered holes are open in both strokes.")
                         : NULL;

  set_idle (self, "hub", geometry);
  set_idle (self, "outer", geometry);
  set_idle (self, "hole_circle", geometry);
  set_idle (self, "lift_limit", reason);
  set_idle (self, "valve_preload", reason);
  set_idle (self, "seat_gap", reason);
  set_idle (self, "coupling",
            reason != NULL                              ? reason
            : dw_valve_leaf_count (&damper->valve) == 1 ? _ ("No effect: a single shim.")
                                                        : NULL);
  dw_damper_entry_set_idle (self->opens_on_cell, reason);
  gtk_label_set_label (self->valve_hint, hint != NULL ? hint : "");
  gtk_widget_set_visible (GTK_WIDGET (self->valve_hint), hint != NULL);
}

static void
update_rest (DwDamperPanel *self, const dw_damper *damper)
{
  set_idle (self, "eccentricity",
            damper->piston.clearance > 0.0 ? NULL : _ ("No effect: there is no clearance."));
  set_idle (self, "volume",
            damper->gas.kind == DW_GAS_VENTED ? _ ("No effect: the space is open to the air.")
                                              : NULL);
}

/* ---- following the document ---- */

static void
show_choices (DwDamperPanel *self, const dw_damper *damper)
{
  gtk_drop_down_set_selected (self->opens_on, damper->valve.opens_on);
  gtk_drop_down_set_selected (self->oil_kind, damper->oil.kind);
  gtk_drop_down_set_selected (self->gas_kind, damper->gas.kind);
  gtk_check_button_set_active (self->thinning, damper->oil.has_thinning);
}

/* Whether a number is part of the oil as it is described; TRUE for all other numbers. */
static gboolean
is_described (const dw_damper_place *place, const dw_oil *oil)
{
  if (place->form == DW_FORM_OIL_NOMINAL)
    return dw_damper_place_field (place)->optional ? oil->has_thinning
                                                   : oil->kind == DW_OIL_NOMINAL;
  if (place->form == DW_FORM_OIL_MEASURED)
    return oil->kind == DW_OIL_MEASURED;
  if (place->form == DW_FORM_OIL_PART)
    return oil->kind == DW_OIL_BLEND;
  return TRUE;
}

static void
show_oil_fields (DwDamperPanel *self, const dw_oil *oil)
{
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    {
      const dw_damper_place *place = dw_damper_place_get (i);
      for (int row = 0; is_here (place) && row < count_rows (place); row++)
        {
          g_autofree char *id = child_id (place, row);
          gtk_widget_set_visible (GTK_WIDGET (field_named (self, id)), is_described (place, oil));
        }
    }
}

static void
refresh (DwDamperPanel *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);

  gtk_widget_set_sensitive (self->content, damper != NULL);
  dw_piston_view_set_damper (self->face, damper);
  if (damper == NULL)
    return;
  show_choices (self, damper);
  show_oil_fields (self, &damper->oil);
  update_valve (self, damper);
  update_rest (self, damper);
}

static void
show_message (DwDamperPanel *self, dw_section section, const char *text)
{
  for (int i = 0; i < DW_N_SECTIONS; i++)
    {
      const gboolean here = text != NULL && i == (int)section;
      gtk_label_set_label (self->messages[i], here ? text : "");
      gtk_widget_set_visible (GTK_WIDGET (self->messages[i]), here);
    }
}

static void
on_changed (DwDamperPanel *self)
{
  show_message (self, DW_N_SECTIONS, NULL);
  refresh (self);
}

static gboolean
has_field (const dw_error *finding)
{
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    if (dw_damper_place_is_meant (dw_damper_place_get (i), finding->index, finding))
      return TRUE;
  return FALSE;
}

/* What is wrong with a whole section stands under its heading; the rest at the fields. */
static void
on_finding_changed (DwDamperPanel *self)
{
  const dw_error *finding = dw_damper_editor_get_finding (self->editor);
  g_autofree char *name = finding != NULL
                              ? g_strndup (finding->field, strcspn (finding->field, "."))
                              : NULL;

  g_autofree char *text = finding != NULL ? dw_finding_text (finding) : NULL;
  if (finding == NULL || has_field (finding))
    show_message (self, DW_N_SECTIONS, NULL);
  else
    show_message (self, dw_section_find (name), text);
}

/* ---- choices ---- */

static void
write_opens_on (dw_damper *damper, gconstpointer data)
{
  damper->valve.opens_on = *(const dw_stroke *)data;
}

static void
on_opens_on_selected (DwDamperPanel *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const dw_stroke stroke = (dw_stroke)gtk_drop_down_get_selected (self->opens_on);

  if (damper == NULL || damper->valve.opens_on == stroke)
    return;
  dw_damper_editor_change (self->editor,
                           dw_damper_editor_label (self->editor, _ ("Change stroke of front shim"),
                                                   _ ("Change stroke of rear shim")),
                           NULL, write_opens_on, &stroke);
  refresh (self);
}

static void
write_oil_kind (dw_damper *damper, gconstpointer data)
{
  dw_filling_set_oil_kind (&damper->oil, *(const dw_oil_kind *)data);
}

static void
on_oil_kind_selected (DwDamperPanel *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const dw_oil_kind kind = (dw_oil_kind)gtk_drop_down_get_selected (self->oil_kind);

  if (damper == NULL || damper->oil.kind == kind)
    return;
  dw_damper_editor_change (self->editor,
                           dw_damper_editor_label (self->editor, _ ("Change kind of front oil"),
                                                   _ ("Change kind of rear oil")),
                           NULL, write_oil_kind, &kind);
  refresh (self);
}

static void
write_thinning (dw_damper *damper, gconstpointer data)
{
  dw_filling_set_thinning (&damper->oil, *(const gboolean *)data);
}

static void
on_thinning_toggled (DwDamperPanel *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const gboolean thins = gtk_check_button_get_active (self->thinning);

  if (damper == NULL || damper->oil.has_thinning == thins)
    return;
  dw_damper_editor_change (self->editor,
                           dw_damper_editor_label (self->editor, _ ("Change thinning of front oil"),
                                                   _ ("Change thinning of rear oil")),
                           NULL, write_thinning, &thins);
  refresh (self);
}

static void
write_gas_kind (dw_damper *damper, gconstpointer data)
{
  dw_filling_set_gas_kind (&damper->gas, *(const dw_gas_kind *)data);
}

static void
on_gas_kind_selected (DwDamperPanel *self)
{
  const dw_damper *damper = dw_damper_editor_get_damper (self->editor);
  const dw_gas_kind kind = (dw_gas_kind)gtk_drop_down_get_selected (self->gas_kind);

  if (damper == NULL || damper->gas.kind == kind)
    return;
  dw_damper_editor_change (self->editor,
                           dw_damper_editor_label (self->editor, _ ("Change kind of front gas"),
                                                   _ ("Change kind of rear gas")),
                           NULL, write_gas_kind, &kind);
  refresh (self);
}

static void
on_copy (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwDamperPanel *self = DW_DAMPER_PANEL (widget);
  const dw_section section = dw_section_find (g_variant_get_string (parameter, NULL));
  const gboolean to_other = g_str_equal (name, "section.copy-to");
  const gboolean front_written = (dw_damper_editor_get_axle (self->editor) == DW_FRONT) != to_other;
  dw_error finding;

  if (section == DW_N_SECTIONS || dw_damper_editor_get_damper (self->editor) == NULL)
    return;
  if (dw_damper_editor_copy_section (self->editor, section, to_other, &finding))
    return;
  g_autofree char *why = dw_finding_text (&finding);
  /* Translators: then follows what does not fit. */
  g_autofree char *text = g_strdup_printf (front_written
                                               ? _ ("Not copied, the front would not fit: %s")
                                               : _ ("Not copied, the rear would not fit: %s"),
                                           why);
  show_message (self, section, text);
}

/* ---- the object ---- */

static void
dw_damper_panel_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  DwDamperPanel *self = DW_DAMPER_PANEL (object);

  switch (id)
    {
    case PROP_DOCUMENT:
      g_value_set_object (value, dw_damper_editor_get_document (self->editor));
      break;
    case PROP_SETUP:
      g_value_set_string (value, dw_damper_editor_get_setup (self->editor));
      break;
    case PROP_AXLE:
      g_value_set_int (value, (int)dw_damper_editor_get_axle (self->editor));
      break;
    case PROP_UNITS:
      g_value_set_uint (value, dw_damper_editor_get_units (self->editor));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_damper_panel_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  DwDamperPanel *self = DW_DAMPER_PANEL (object);

  switch (id)
    {
    case PROP_DOCUMENT:
      dw_damper_panel_set_document (self, g_value_get_object (value));
      break;
    case PROP_SETUP:
      dw_damper_panel_set_setup (self, g_value_get_string (value));
      break;
    case PROP_AXLE:
      dw_damper_panel_set_axle (self, (dw_axle)g_value_get_int (value));
      break;
    case PROP_UNITS:
      dw_damper_panel_set_units (self, g_value_get_uint (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_damper_panel_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_DAMPER_PANEL);
  dw_widget_drop_children (GTK_WIDGET (object));
  g_clear_object (&DW_DAMPER_PANEL (object)->editor);
  G_OBJECT_CLASS (dw_damper_panel_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  properties[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, DW_TYPE_DOCUMENT, flags);
  properties[PROP_SETUP] = g_param_spec_string ("setup", NULL, NULL, NULL, flags);
  properties[PROP_AXLE] = g_param_spec_int ("axle", NULL, NULL, DW_FRONT, DW_REAR, DW_FRONT, flags);
  properties[PROP_UNITS] = g_param_spec_uint ("units", NULL, NULL, 0, G_MAXUINT, DW_UNITS_METRIC,
                                              flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, content);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, holes);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, face);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, shims);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, valve_hint);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, opens_on_cell);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, opens_on);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, oil_kind);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, thinning);
  gtk_widget_class_bind_template_child (widget_class, DwDamperPanel, gas_kind);
  gtk_widget_class_bind_template_callback (widget_class, on_opens_on_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_oil_kind_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_thinning_toggled);
  gtk_widget_class_bind_template_callback (widget_class, on_gas_kind_selected);
  for (int i = 0; i < DW_N_SECTIONS; i++)
    {
      g_autofree char *id = g_strdup_printf ("%s_message", dw_section_name ((dw_section)i));
      gtk_widget_class_bind_template_child_full (widget_class, id, FALSE, 0);
    }
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    {
      const dw_damper_place *place = dw_damper_place_get (i);
      for (int row = 0; is_here (place) && row < count_rows (place); row++)
        {
          g_autofree char *id = child_id (place, row);
          gtk_widget_class_bind_template_child_full (widget_class, id, FALSE, 0);
        }
    }
}

static void
dw_damper_panel_class_init (DwDamperPanelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = dw_damper_panel_get_property;
  object_class->set_property = dw_damper_panel_set_property;
  object_class->dispose = dw_damper_panel_dispose;
  install_properties (object_class);

  g_type_ensure (DW_TYPE_NUMBER_FIELD);
  g_type_ensure (DW_TYPE_BESIDE_LAYOUT);
  g_type_ensure (DW_TYPE_FLOW_LAYOUT);
  g_type_ensure (DW_TYPE_HOLES_TABLE);
  g_type_ensure (DW_TYPE_PISTON_VIEW);
  g_type_ensure (DW_TYPE_SHIMS_TABLE);
  gtk_widget_class_set_css_name (widget_class, "damperpanel");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/damper-panel.ui");
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "section.copy-to", "s", on_copy);
  gtk_widget_class_install_action (widget_class, "section.copy-from", "s", on_copy);
}

static void
dw_damper_panel_init (DwDamperPanel *self)
{
  self->editor = dw_damper_editor_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  for (int i = 0; i < DW_N_SECTIONS; i++)
    {
      g_autofree char *id = g_strdup_printf ("%s_message", dw_section_name ((dw_section)i));
      self->messages[i] = GTK_LABEL (
          gtk_widget_get_template_child (GTK_WIDGET (self), DW_TYPE_DAMPER_PANEL, id));
    }
  bind_fields (self);
  dw_holes_table_set_editor (self->holes, self->editor);
  dw_shims_table_set_editor (self->shims, self->editor);
  g_signal_connect_object (self->editor, "changed", G_CALLBACK (on_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->editor, "finding-changed", G_CALLBACK (on_finding_changed), self,
                           G_CONNECT_SWAPPED);
  refresh (self);
}

GtkWidget *
dw_damper_panel_new (void)
{
  return g_object_new (DW_TYPE_DAMPER_PANEL, NULL);
}

void
dw_damper_panel_set_document (DwDamperPanel *self, DwDocument *document)
{
  g_return_if_fail (DW_IS_DAMPER_PANEL (self));

  if (document == dw_damper_editor_get_document (self->editor))
    return;
  dw_damper_editor_set_document (self->editor, document);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_DOCUMENT]);
}

void
dw_damper_panel_set_setup (DwDamperPanel *self, const char *id)
{
  g_return_if_fail (DW_IS_DAMPER_PANEL (self));

  if (g_strcmp0 (id, dw_damper_editor_get_setup (self->editor)) == 0)
    return;
  dw_damper_editor_set_setup (self->editor, id);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SETUP]);
}

void
dw_damper_panel_set_axle (DwDamperPanel *self, dw_axle axle)
{
  g_return_if_fail (DW_IS_DAMPER_PANEL (self));

  if (axle == dw_damper_editor_get_axle (self->editor))
    return;
  dw_damper_editor_set_axle (self->editor, axle);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_AXLE]);
}

void
dw_damper_panel_set_units (DwDamperPanel *self, dw_units units)
{
  g_return_if_fail (DW_IS_DAMPER_PANEL (self));

  if (units == dw_damper_editor_get_units (self->editor))
    return;
  dw_piston_view_set_units (self->face, units);
  dw_damper_editor_set_units (self->editor, units);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_UNITS]);
}

void
dw_damper_panel_set_style (DwDamperPanel *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_DAMPER_PANEL (self));
  dw_piston_view_set_style (self->face, style);
}
