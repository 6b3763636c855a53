/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-hole-row.h"

static GtkWidget *
shown_row (DwDamperEditor *editor, int index)
{
  GtkWidget *row = dw_hole_row_new (editor, index);
  panel_show (row);
  return row;
}

START_TEST (shows_its_group)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *row = shown_row (editor, 1);

  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (row, "count"))), "3");
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (row, "diameter"))), "1");
  ck_assert_uint_eq (gtk_drop_down_get_selected (GTK_DROP_DOWN (panel_find (row, "kind"))), 1);
}
END_TEST

START_TEST (the_kind_is_one_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkDropDown *kind = GTK_DROP_DOWN (panel_find (shown_row (editor, 1), "kind"));

  gtk_drop_down_set_selected (kind, 0);
  ck_assert (!panel_damper (document, DW_FRONT)->piston.holes[1].covered);
  ck_assert (panel_damper (document, DW_REAR)->piston.holes[1].covered);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Open front holes");
  dw_document_undo (document);
  ck_assert_uint_eq (gtk_drop_down_get_selected (kind), 1);
}
END_TEST

START_TEST (the_diameter_goes_through_the_drills)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  DwNumberField *diameter = DW_NUMBER_FIELD (panel_find (shown_row (editor, 1), "diameter"));

  dw_number_field_step (diameter, 1);
  ck_assert (panel_damper (document, DW_FRONT)->piston.holes[1].diameter == 1.05e-3);
}
END_TEST

START_TEST (a_row_on_its_way_out_is_quiet)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *row = shown_row (editor, 1);

  dw_damper_editor_set_setup (editor, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (panel_find (row, "kind")), 0);
  ck_assert (panel_damper (document, DW_FRONT)->piston.holes[1].covered);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/hole-row");
  TCase *tc = tcase_create ("hole-row");
  panel_case (s, tc);
  tcase_add_test (tc, shows_its_group);
  tcase_add_test (tc, the_kind_is_one_step);
  tcase_add_test (tc, the_diameter_goes_through_the_drills);
  tcase_add_test (tc, a_row_on_its_way_out_is_quiet);
  return run_suite (s);
}
