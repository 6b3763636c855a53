/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-hole-row.h"

static DwNumberField *
field (GtkWidget *row, const char *id)
{
  return DW_NUMBER_FIELD (panel_find (row, id));
}

START_TEST (a_row_shows_and_changes_its_group)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_hole_row_new (editor, 1));
  GtkDropDown *kind = GTK_DROP_DOWN (panel_find (row, "kind"));
  const dw_holes *holes;

  ck_assert_str_eq (panel_text (field (row, "count")), "3");
  ck_assert_str_eq (panel_text (field (row, "diameter")), "1");
  ck_assert_uint_eq (gtk_drop_down_get_selected (kind), 1);
  panel_type (field (row, "count"), "4");
  panel_key (field (row, "diameter"), GDK_KEY_Up);
  gtk_drop_down_set_selected (kind, 0);
  holes = panel_damper (document, DW_FRONT)->piston.holes;
  ck_assert (holes[1].count == 4 && holes[1].diameter == 1.05e-3 && !holes[1].covered);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Open front holes");
  ck_assert (holes[0].count == 6 && holes[0].diameter == 1.3e-3);
  dw_document_undo (document);
  ck_assert_uint_eq (gtk_drop_down_get_selected (kind), 1);
}
END_TEST

/* A hole of 1.3 mm on the circle would reach past the rim of a shim of 8.8 mm. */
START_TEST (covering_a_hole_that_has_no_room_is_refused)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_hole_row_new (editor, 0));
  GtkDropDown *kind = GTK_DROP_DOWN (panel_find (row, "kind"));

  panel_type (field (row, "diameter"), "1.6");
  const guint64 state = dw_document_get_state (document);
  gtk_drop_down_set_selected (kind, 1);
  ck_assert_uint_eq (dw_document_get_state (document), state);
  ck_assert_uint_eq (gtk_drop_down_get_selected (kind), 0);
  ck_assert_ptr_nonnull (
      strstr (dw_number_field_get_error (field (row, "diameter")), "leaves the shim's ring"));
  panel_type (field (row, "diameter"), "1.5");
  ck_assert_ptr_null (dw_number_field_get_error (field (row, "diameter")));
}
END_TEST

START_TEST (a_row_on_its_way_out_is_quiet)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_hole_row_new (editor, 1));

  dw_damper_editor_set_setup (editor, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (panel_find (row, "kind")), 0);
  ck_assert (panel_damper (document, DW_FRONT)->piston.holes[1].covered);
}
END_TEST

START_TEST (its_widgets_have_names)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_hole_row_new (editor, 1));

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_entry (field (row, "diameter"))),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Diameter of holes in group 2, mm");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_find (row, "remove")),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Remove group 2");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_find (row, "kind")),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Open or covered, group 2");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/hole-row");
  TCase *tc = tcase_create ("hole-row");
  tcase_add_test (tc, a_row_shows_and_changes_its_group);
  tcase_add_test (tc, covering_a_hole_that_has_no_room_is_refused);
  tcase_add_test (tc, a_row_on_its_way_out_is_quiet);
  tcase_add_test (tc, its_widgets_have_names);
  panel_case (s, tc);
  return run_suite (s);
}
