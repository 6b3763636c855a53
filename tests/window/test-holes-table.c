/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-holes-table.h"

static GtkWidget *
shown_table (DwDamperEditor *editor)
{
  GtkWidget *table = g_object_new (DW_TYPE_HOLES_TABLE, NULL);
  dw_holes_table_set_editor (DW_HOLES_TABLE (table), editor);
  panel_show (table);
  return table;
}

START_TEST (a_row_for_each_group)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);

  ck_assert_int_eq (panel_count_rows (table), 2);
  dw_damper_editor_set_setup (editor, NULL);
  ck_assert_int_eq (panel_count_rows (table), 0);
}
END_TEST

START_TEST (more_holes_are_open_and_of_the_last_size)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);
  const dw_piston *piston;

  ck_assert (gtk_widget_activate_action (table, "holes.add", NULL));
  piston = &panel_damper (document, DW_FRONT)->piston;
  ck_assert_int_eq (piston->n_holes, 3);
  ck_assert (piston->holes[2].diameter == 1e-3 && !piston->holes[2].covered);
  ck_assert_int_eq (panel_count_rows (table), 3);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Add front holes");
  dw_document_undo (document);
  ck_assert_int_eq (panel_count_rows (table), 2);
}
END_TEST

START_TEST (there_is_an_end_to_it)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);

  for (int i = 0; i < DW_MAX_HOLE_GROUPS + 3; i++)
    gtk_widget_activate_action (table, "holes.add", NULL);
  ck_assert_int_le (panel_damper (document, DW_FRONT)->piston.n_holes, DW_MAX_HOLE_GROUPS);
  ck_assert_int_eq (panel_count_rows (table), panel_damper (document, DW_FRONT)->piston.n_holes);
}
END_TEST

START_TEST (the_group_that_is_meant_goes)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);
  const dw_piston before = panel_damper (document, DW_FRONT)->piston;
  const dw_piston *piston;

  ck_assert (gtk_widget_activate_action (table, "holes.remove", "i", 0));
  piston = &panel_damper (document, DW_FRONT)->piston;
  ck_assert_int_eq (piston->n_holes, 1);
  ck_assert_int_eq (piston->holes[0].count, before.holes[1].count);
  ck_assert (piston->holes[0].covered);
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel_row (table, 0), "count"))), "3");
  /* an index of a row that has gone meanwhile */
  gtk_widget_activate_action (table, "holes.remove", "i", 5);
  gtk_widget_activate_action (table, "holes.remove", "i", -1);
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->piston.n_holes, 1);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/holes-table");
  TCase *tc = tcase_create ("holes-table");
  panel_case (s, tc);
  tcase_add_test (tc, a_row_for_each_group);
  tcase_add_test (tc, more_holes_are_open_and_of_the_last_size);
  tcase_add_test (tc, there_is_an_end_to_it);
  tcase_add_test (tc, the_group_that_is_meant_goes);
  return run_suite (s);
}
