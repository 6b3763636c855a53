/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-damper-entry.h"

typedef struct
{
  DwDocument *document;
  DwDamperEditor *editor;
  DwNumberField *hub;
  DwNumberField *outer;
} bench;

static bench
make_bench (void)
{
  bench b = { .document = panel_document (DW_OIL_NOMINAL) };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  b.editor = panel_editor (b.document);
  b.hub = DW_NUMBER_FIELD (dw_number_field_new ());
  b.outer = DW_NUMBER_FIELD (dw_number_field_new ());
  dw_damper_entry_bind (b.hub, b.editor, dw_damper_place_find (DW_FORM_VALVE, "hub-diameter-mm"),
                        0);
  dw_damper_entry_bind (b.outer, b.editor,
                        dw_damper_place_find (DW_FORM_VALVE, "outer-diameter-mm"), 0);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (b.hub));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (b.outer));
  panel_show (box);
  gtk_widget_grab_focus (GTK_WIDGET (b.hub));
  panel_settle ();
  return b;
}

static void
drop_bench (bench *b)
{
  g_object_unref (b->editor);
  g_object_unref (b->document);
}

static void
type_at_once (DwNumberField *field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), text);
}

static void
write_gas (dw_damper *damper, gconstpointer data)
{
  damper->gas = *(const dw_gas *)data;
}

START_TEST (shows_and_changes_its_number)
{
  bench b = make_bench ();
  const dw_damper *damper = panel_damper (b.document, DW_FRONT);

  ck_assert (dw_number_field_get_value (b.hub) == damper->valve.hub_diameter);
  type_at_once (b.hub, "6.3");
  ck_assert (fabs (panel_damper (b.document, DW_FRONT)->valve.hub_diameter - 6.3e-3) < 1e-12);
  ck_assert (panel_damper (b.document, DW_REAR)->valve.hub_diameter != 6.3e-3);
  dw_document_undo (b.document);
  ck_assert (dw_number_field_get_value (b.hub)
             == panel_damper (b.document, DW_FRONT)->valve.hub_diameter);
  drop_bench (&b);
}
END_TEST

START_TEST (typing_is_one_step_to_undo)
{
  bench b = make_bench ();
  const dw_damper before = *panel_damper (b.document, DW_FRONT);

  type_at_once (b.hub, "6");
  type_at_once (b.hub, "6.1");
  type_at_once (b.hub, "6.15");
  panel_enter (b.hub);
  ck_assert (dw_document_undo (b.document));
  ck_assert (dw_damper_equal (panel_damper (b.document, DW_FRONT), &before));
  ck_assert (!dw_document_undo (b.document));
  drop_bench (&b);
}
END_TEST

START_TEST (what_does_not_fit_is_told_at_the_field)
{
  bench b = make_bench ();
  const dw_damper before = *panel_damper (b.document, DW_FRONT);

  /* a hub larger than its shim */
  type_at_once (b.hub, "11");
  ck_assert_ptr_nonnull (dw_number_field_get_error (b.hub));
  ck_assert (dw_damper_equal (panel_damper (b.document, DW_FRONT), &before));
  ck_assert_str_eq (panel_text (b.hub), "11");
  type_at_once (b.hub, "6");
  ck_assert_ptr_null (dw_number_field_get_error (b.hub));
  ck_assert_ptr_null (dw_number_field_get_error (b.outer));
  drop_bench (&b);
}
END_TEST

START_TEST (another_axle_shows_its_own)
{
  bench b = make_bench ();

  type_at_once (b.hub, "6.3");
  dw_damper_editor_set_axle (b.editor, DW_REAR);
  ck_assert (dw_number_field_get_value (b.hub)
             == panel_damper (b.document, DW_REAR)->valve.hub_diameter);
  dw_damper_editor_set_setup (b.editor, NULL);
  ck_assert_str_eq (panel_text (b.hub), "");
  drop_bench (&b);
}
END_TEST

START_TEST (air_outside_has_a_range_of_its_own)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  DwDamperEditor *editor = panel_editor (document);
  DwNumberField *pressure = DW_NUMBER_FIELD (dw_number_field_new ());
  const dw_damper_place *place = dw_damper_place_find (DW_FORM_GAS_SEALED, "pressure-kpa");
  const dw_gas vented = { .kind = DW_GAS_VENTED, .pressure = 101.325e3 };

  dw_damper_entry_bind (pressure, editor, place, 0);
  ck_assert_ptr_eq (dw_damper_entry_get_place (pressure), place);
  ck_assert (dw_damper_editor_change (editor, "Vent", NULL, write_gas, &vented));
  /* the field keeps its editor */
  g_object_unref (editor);
  panel_show (GTK_WIDGET (pressure));
  ck_assert (dw_number_field_get_value (pressure) == vented.pressure);
  type_at_once (pressure, "250");
  ck_assert_ptr_nonnull (dw_number_field_get_error (pressure));
  type_at_once (pressure, "95");
  ck_assert_ptr_null (dw_number_field_get_error (pressure));
  ck_assert (fabs (panel_damper (document, DW_FRONT)->gas.pressure - 95e3) < 1e-6);
}
END_TEST

START_TEST (no_effect_is_told_and_taken_back)
{
  GtkWidget *widget = g_object_ref_sink (gtk_label_new ("x"));

  gtk_widget_set_tooltip_text (widget, "Usual.");
  dw_damper_entry_set_idle (widget, "Because.");
  ck_assert (!gtk_widget_get_sensitive (widget));
  ck_assert_str_eq (gtk_widget_get_tooltip_text (widget), "Because.\n\nUsual.");
  dw_damper_entry_set_idle (widget, "Otherwise.");
  ck_assert_str_eq (gtk_widget_get_tooltip_text (widget), "Otherwise.\n\nUsual.");
  dw_damper_entry_set_idle (widget, NULL);
  ck_assert (gtk_widget_get_sensitive (widget));
  ck_assert_str_eq (gtk_widget_get_tooltip_text (widget), "Usual.");
  g_object_unref (widget);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-entry");
  TCase *tc = tcase_create ("damper-entry");
  panel_case (s, tc);
  tcase_add_test (tc, shows_and_changes_its_number);
  tcase_add_test (tc, typing_is_one_step_to_undo);
  tcase_add_test (tc, what_does_not_fit_is_told_at_the_field);
  tcase_add_test (tc, another_axle_shows_its_own);
  tcase_add_test (tc, air_outside_has_a_range_of_its_own);
  tcase_add_test (tc, no_effect_is_told_and_taken_back);
  return run_suite (s);
}
