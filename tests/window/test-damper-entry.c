/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-damper-entry.h"

static DwNumberField *
new_entry (DwDamperEditor *editor, dw_form_id form, const char *attribute, int row)
{
  DwNumberField *field = DW_NUMBER_FIELD (g_object_ref_sink (dw_number_field_new ()));
  dw_damper_entry_bind (field, editor, dw_damper_place_find (form, attribute), row);
  return field;
}

START_TEST (a_field_shows_and_changes_its_number)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);

  ck_assert_str_eq (dw_damper_entry_get_place (bore)->id, "bore");
  ck_assert_str_eq (panel_text (bore), "16");
  panel_type (bore, "17.25");
  ck_assert (panel_damper (document, DW_FRONT)->body.bore == 17.25e-3);
  panel_enter (bore);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change front bore");
  ck_assert (dw_document_undo (document));
  ck_assert_str_eq (panel_text (bore), "16");
  ck_assert (!dw_document_undo (document));
}
END_TEST

START_TEST (an_empty_field_is_a_number_that_is_not_given)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) droop = new_entry (editor, DW_FORM_STANCE, "droop-mm", 0);

  ck_assert_str_eq (panel_text (droop), "18");
  panel_type (droop, "");
  panel_enter (droop);
  ck_assert (!panel_damper (document, DW_FRONT)->stance.has_droop);
  ck_assert (panel_damper (document, DW_FRONT)->stance.droop == 0.0);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change front droop");
  panel_type (droop, "0");
  panel_enter (droop);
  ck_assert (panel_damper (document, DW_FRONT)->stance.has_droop);
  panel_type (droop, "101");
  ck_assert_str_eq (dw_number_field_get_error (droop), "allowed 0 to 100 mm");
  panel_key (droop, GDK_KEY_Escape);
  ck_assert_str_eq (panel_text (droop), "0");

  dw_document_undo (document);
  ck_assert_str_eq (panel_text (droop), "");
  dw_document_undo (document);
  ck_assert_str_eq (panel_text (droop), "18");
  ck_assert (!dw_document_undo (document));
  dw_damper_editor_set_axle (editor, DW_REAR);
  ck_assert_str_eq (panel_text (droop), "");
}
END_TEST

START_TEST (each_run_is_a_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);

  panel_type (bore, "17.25");
  panel_key (bore, GDK_KEY_Up);
  panel_key (bore, GDK_KEY_Up);
  panel_enter (bore);
  panel_type (bore, "19");
  panel_enter (bore);
  dw_document_undo (document);
  ck_assert_str_eq (panel_text (bore), "18");
  dw_document_undo (document);
  ck_assert_str_eq (panel_text (bore), "16");
  ck_assert (!dw_document_undo (document));
}
END_TEST

START_TEST (what_is_given_back_leaves_no_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);

  panel_type (bore, "17.25");
  panel_key (bore, GDK_KEY_Escape);
  ck_assert (panel_damper (document, DW_FRONT)->body.bore == 16e-3);
  ck_assert_ptr_null (dw_document_get_undo_label (document));
}
END_TEST

/* A hub of 6.8 mm cuts the covered holes of 1 mm on the 7.6 mm circle. */
START_TEST (what_does_not_fit_is_told_at_both_ends)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) hub = new_entry (editor, DW_FORM_VALVE, "hub-diameter-mm", 0);
  g_autoptr (DwNumberField) open = new_entry (editor, DW_FORM_HOLES, "diameter-mm", 0);
  g_autoptr (DwNumberField) covered = new_entry (editor, DW_FORM_HOLES, "diameter-mm", 1);
  g_autoptr (DwNumberField) bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);
  const guint64 state = dw_document_get_state (document);

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (hub)), "6.8");
  panel_enter (hub);
  ck_assert_uint_eq (dw_document_get_state (document), state);
  ck_assert_str_eq (panel_text (hub), "6.8");
  ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (hub), "leaves the shim's ring"));
  ck_assert_str_eq (dw_number_field_get_error (covered), dw_number_field_get_error (hub));
  ck_assert_ptr_null (dw_number_field_get_error (open));

  /* another change goes through: only what is still typed stays marked */
  panel_type (bore, "17");
  panel_enter (bore);
  ck_assert_ptr_null (dw_number_field_get_error (covered));
  ck_assert_ptr_nonnull (dw_number_field_get_error (hub));
  ck_assert_str_eq (panel_text (hub), "6.8");

  panel_type (hub, "6");
  ck_assert_ptr_null (dw_number_field_get_error (hub));
  ck_assert (panel_damper (document, DW_FRONT)->valve.hub_diameter == 6e-3);
}
END_TEST

START_TEST (an_error_of_its_own_is_not_written_over)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) hub = new_entry (editor, DW_FORM_VALVE, "hub-diameter-mm", 0);
  g_autoptr (DwNumberField) covered = new_entry (editor, DW_FORM_HOLES, "diameter-mm", 1);

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (covered)), "x");
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (hub)), "6.8");
  ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (covered), "not a number"));
  panel_type (hub, "6");
  ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (covered), "not a number"));
}
END_TEST

START_TEST (another_damper_drops_what_is_typed)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);

  panel_type (bore, "x");
  dw_damper_editor_set_axle (editor, DW_REAR);
  ck_assert_str_eq (panel_text (bore), "16");
  ck_assert_ptr_null (dw_number_field_get_error (bore));
  dw_damper_editor_set_units (editor, DW_UNITS_INCH);
  ck_assert_str_eq (panel_text (bore), "0.6299");
  dw_damper_editor_set_setup (editor, NULL);
  ck_assert_str_eq (panel_text (bore), "");
}
END_TEST

static void
vent (dw_damper *damper, gconstpointer data)
{
  (void)data;
  damper->gas.kind = DW_GAS_VENTED;
}

START_TEST (outside_air_has_its_own_range)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (DwNumberField) pressure = new_entry (editor, DW_FORM_GAS_SEALED, "pressure-kpa", 0);

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (pressure)), "3000");
  ck_assert_str_eq (dw_number_field_get_error (pressure), "allowed 20 to 2000 kPa");
  panel_key (pressure, GDK_KEY_Escape);
  dw_damper_editor_change (editor, "Vent", NULL, vent, NULL);
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (pressure)), "3000");
  ck_assert_str_eq (dw_number_field_get_error (pressure), "allowed 50 to 110 kPa");
}
END_TEST

START_TEST (an_idle_widget_says_why)
{
  g_autoptr (GtkWidget) entry = g_object_ref_sink (gtk_entry_new ());

  gtk_widget_set_tooltip_text (entry, "What it is");
  dw_damper_entry_set_idle (entry, "No holes.");
  dw_damper_entry_set_idle (entry, "No shims.");
  ck_assert (!gtk_widget_get_sensitive (entry));
  ck_assert_str_eq (gtk_widget_get_tooltip_text (entry), "No shims.\n\nWhat it is");
  dw_damper_entry_set_idle (entry, NULL);
  ck_assert (gtk_widget_get_sensitive (entry));
  ck_assert_str_eq (gtk_widget_get_tooltip_text (entry), "What it is");
}
END_TEST

START_TEST (a_field_lets_go_of_the_editor)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  DwDamperEditor *editor = panel_editor (document);
  DwNumberField *bore = new_entry (editor, DW_FORM_BODY, "bore-mm", 0);
  gpointer weak = editor;

  g_object_add_weak_pointer (G_OBJECT (editor), &weak);
  g_object_unref (editor);
  ck_assert_ptr_nonnull (weak);
  g_object_unref (bore);
  ck_assert_ptr_null (weak);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-entry");
  TCase *tc = tcase_create ("damper-entry");
  tcase_add_test (tc, a_field_shows_and_changes_its_number);
  tcase_add_test (tc, an_empty_field_is_a_number_that_is_not_given);
  tcase_add_test (tc, each_run_is_a_step);
  tcase_add_test (tc, what_is_given_back_leaves_no_step);
  tcase_add_test (tc, what_does_not_fit_is_told_at_both_ends);
  tcase_add_test (tc, an_error_of_its_own_is_not_written_over);
  tcase_add_test (tc, another_damper_drops_what_is_typed);
  tcase_add_test (tc, outside_air_has_its_own_range);
  tcase_add_test (tc, an_idle_widget_says_why);
  tcase_add_test (tc, a_field_lets_go_of_the_editor);
  panel_case (s, tc);
  return run_suite (s);
}
