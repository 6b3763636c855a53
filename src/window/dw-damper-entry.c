/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-damper-entry.h"
#include "sheet/dw-finding-text.h"
#include "window/dw-widget.h"

#include <glib/gi18n.h>
#include <math.h>

#define BINDING "dw-damper-entry"
#define TOOLTIP "dw-damper-entry-tooltip"

typedef struct
{
  DwDamperEditor *editor; /* owned */
  const dw_damper_place *place;
  int row;
  gboolean changing; /* this field's own change is on its way */
  gboolean marked;   /* shows a finding that another field brought about */
} binding;

static void
binding_free (gpointer data)
{
  binding *b = data;
  g_object_unref (b->editor);
  g_free (b);
}

static binding *
binding_of (DwNumberField *field)
{
  return g_object_get_data (G_OBJECT (field), BINDING);
}

/* What may be typed depends on the gas space: outside air is not pumped up. */
static dw_limit_id
limit_now (const binding *b, const dw_damper *damper)
{
  const dw_limit_id limit = dw_damper_place_field (b->place)->limit;

  if (limit == DW_LIMIT_GAS_PRESSURE && damper->gas.kind == DW_GAS_VENTED)
    return DW_LIMIT_AIR_PRESSURE;
  return limit;
}

static void
on_changed (DwNumberField *field, gboolean another)
{
  const binding *b = binding_of (field);
  const dw_damper *damper = dw_damper_editor_get_damper (b->editor);

  dw_number_field_set_units (field, dw_damper_editor_get_units (b->editor));
  if (damper == NULL)
    dw_number_field_set_value (field, NAN);
  else
    {
      dw_number_field_set_limit (field, limit_now (b, damper));
      dw_number_field_set_value (field, dw_damper_place_read (b->place, damper, b->row));
    }
  if (another)
    dw_number_field_reset (field);
}

static void
on_finding_changed (DwNumberField *field)
{
  binding *b = binding_of (field);
  const dw_error *finding = dw_damper_editor_get_finding (b->editor);
  const gboolean meant = finding != NULL && dw_damper_place_is_meant (b->place, b->row, finding);

  if (b->changing)
    return;
  if (b->marked)
    dw_number_field_set_error (field, NULL);
  /* an error that is there already is about what is typed here, and goes first */
  b->marked = meant && dw_number_field_get_error (field) == NULL;
  if (b->marked)
    {
      g_autofree char *text = dw_finding_text (finding);
      dw_number_field_set_error (field, text);
    }
}

typedef struct
{
  const binding *to;
  double value;
} number;

static void
write_number (dw_damper *damper, gconstpointer data)
{
  const number *n = data;
  dw_damper_place_write (n->to->place, damper, n->to->row, n->value);
}

static void
on_committed (DwNumberField *field, double value, gboolean final)
{
  binding *b = binding_of (field);
  const number n = { b, value };
  const char *label = _ (b->place->labels[dw_damper_editor_get_axle (b->editor)]);
  g_autofree char *merge = g_strdup_printf ("%d.%s.%d:%u", (int)b->place->form, b->place->attribute,
                                            b->row, dw_number_field_get_run (field));
  const dw_error *finding;
  gboolean taken;

  /* a run of changes is one step by its number; the last one needs no other treatment */
  (void) final;
  b->changing = TRUE;
  b->marked = FALSE;
  taken = dw_damper_editor_change (b->editor, label, merge, write_number, &n);
  b->changing = FALSE;
  finding = dw_damper_editor_get_finding (b->editor);
  if (!taken && finding != NULL)
    {
      g_autofree char *text = dw_finding_text (finding);
      dw_number_field_set_error (field, text);
    }
}

void
dw_damper_entry_bind (DwNumberField *field, DwDamperEditor *editor, const dw_damper_place *place,
                      int row)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (field) && binding_of (field) == NULL);
  g_return_if_fail (DW_IS_DAMPER_EDITOR (editor) && place != NULL);

  const dw_field *entry = dw_damper_place_field (place);
  binding *b = g_new0 (binding, 1);
  b->editor = g_object_ref (editor);
  b->place = place;
  b->row = row;
  g_object_set_data_full (G_OBJECT (field), BINDING, b, binding_free);
  dw_number_field_set_kind (field, place->quantity, entry->limit, place->step,
                            entry->kind == DW_FIELD_COUNT);
  dw_number_field_set_optional (field, dw_damper_place_is_optional (place));
  g_signal_connect (field, "committed", G_CALLBACK (on_committed), NULL);
  g_signal_connect_object (editor, "changed", G_CALLBACK (on_changed), field, G_CONNECT_SWAPPED);
  g_signal_connect_object (editor, "finding-changed", G_CALLBACK (on_finding_changed), field,
                           G_CONNECT_SWAPPED);
  on_changed (field, TRUE);
}

const dw_damper_place *
dw_damper_entry_get_place (DwNumberField *field)
{
  g_return_val_if_fail (DW_IS_NUMBER_FIELD (field), NULL);

  const binding *b = binding_of (field);
  return b != NULL ? b->place : NULL;
}

void
dw_damper_entry_set_idle (GtkWidget *widget, const char *reason)
{
  const char *usual = g_object_get_data (G_OBJECT (widget), TOOLTIP);

  if (usual == NULL)
    {
      g_autofree char *text = dw_widget_dup_tooltip (widget);
      usual = text != NULL ? text : "";
      g_object_set_data_full (G_OBJECT (widget), TOOLTIP, g_strdup (usual), g_free);
      usual = g_object_get_data (G_OBJECT (widget), TOOLTIP);
    }
  g_autofree char *text = reason != NULL ? g_strdup_printf ("%s\n\n%s", reason, usual)
                                         : g_strdup (usual);
  gtk_widget_set_sensitive (widget, reason == NULL);
  dw_widget_set_tooltip (widget, text);
}
