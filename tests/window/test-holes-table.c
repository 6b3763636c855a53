/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-holes-table.h"

static GtkWidget *
new_table (DwDamperEditor *editor)
{
  GtkWidget *table = g_object_ref_sink (g_object_new (DW_TYPE_HOLES_TABLE, NULL));
  dw_holes_table_set_editor (DW_HOLES_TABLE (table), editor);
  return table;
}

START_TEST (groups_are_added_and_removed)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) table = new_table (editor);
  const dw_damper before = *panel_damper (document, DW_FRONT);

  panel_show (table);
  ck_assert_int_eq (panel_count_rows (table), 2);
  ck_assert (gtk_widget_activate_action (table, "holes.add", NULL));
  ck_assert_int_eq (panel_count_rows (table), 3);
  ck_assert (panel_damper (document, DW_FRONT)->piston.holes[2].diameter == 1e-3);
  ck_assert (!panel_damper (document, DW_FRONT)->piston.holes[2].covered);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Add front holes");
  ck_assert (gtk_widget_is_ancestor (gtk_root_get_focus (gtk_widget_get_root (table)),
                                     panel_row (table, 2)));
  g_signal_emit_by_name (panel_find (panel_row (table, 0), "remove"), "clicked");
  ck_assert_int_eq (panel_count_rows (table), 2);
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->piston.holes[0].count, 3);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Remove front holes");
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel_row (table, 0), "count"))), "3");
  dw_document_undo (document);
  dw_document_undo (document);
  ck_assert (dw_damper_equal (panel_damper (document, DW_FRONT), &before));
  ck_assert_int_eq (panel_count_rows (table), 2);
}
END_TEST

START_TEST (there_is_a_largest_number_of_groups)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) table = new_table (editor);

  panel_show (table);
  for (int i = 0; i < DW_MAX_HOLE_GROUPS + 3; i++)
    gtk_widget_activate_action (table, "holes.add", NULL);
  ck_assert_int_eq (panel_count_rows (table), DW_MAX_HOLE_GROUPS);
  ck_assert (!gtk_widget_get_sensitive (panel_find (table, "add")));
  for (int i = 0; i < DW_MAX_HOLE_GROUPS + 3; i++)
    gtk_widget_activate_action (table, "holes.remove", "i", 0);
  ck_assert_int_eq (panel_count_rows (table), 0);
  ck_assert (gtk_widget_get_sensitive (panel_find (table, "add")));
  gtk_widget_activate_action (table, "holes.add", NULL);
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->piston.holes[0].count, 1);
}
END_TEST

/* What stands in a row that is not taken must not move to another group. */
START_TEST (typed_text_does_not_change_rows)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) table = new_table (editor);
  DwNumberField *count = DW_NUMBER_FIELD (panel_find (panel_row (table, 0), "count"));

  panel_type (count, "100");
  ck_assert_ptr_nonnull (dw_number_field_get_error (count));
  gtk_widget_activate_action (table, "holes.remove", "i", 0);
  ck_assert_ptr_null (dw_number_field_get_error (count));
  ck_assert_str_eq (panel_text (count), "3");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/holes-table");
  TCase *tc = tcase_create ("holes-table");
  tcase_add_test (tc, groups_are_added_and_removed);
  tcase_add_test (tc, there_is_a_largest_number_of_groups);
  tcase_add_test (tc, typed_text_does_not_change_rows);
  panel_case (s, tc);
  return run_suite (s);
}
