/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-shim-material.h"
#include "window/dw-shim-row.h"

static DwNumberField *
field (GtkWidget *row, const char *id)
{
  return DW_NUMBER_FIELD (panel_find (row, id));
}

START_TEST (a_row_shows_and_changes_its_shim)
{
  static const struct
  {
    const char *id;
    const char *shown;
    const char *typed;
  } rows[] = { { "count", "2", "3" },
               { "thickness", "0.1", "0.15" },
               { "modulus", "4.2", "5" },
               { "poisson", "0.35", "0.3" },
               { "strength", "90", "95" } };
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_shim_row_new (editor, 0));

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      ck_assert_str_eq (panel_text (field (row, rows[i].id)), rows[i].shown);
      panel_type (field (row, rows[i].id), rows[i].typed);
      panel_enter (field (row, rows[i].id));
    }
  const dw_shim *shim = &panel_damper (document, DW_FRONT)->valve.shims[0];
  ck_assert (shim->count == 3 && shim->thickness == 0.15e-3 && shim->modulus == 5e9);
  ck_assert (shim->poisson == 0.3 && shim->strength == 95e6);
  ck_assert (panel_damper (document, DW_FRONT)->valve.shims[1].modulus == 3.5e9);
}
END_TEST

START_TEST (a_material_sets_three_numbers_in_one_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_shim_row_new (editor, 0));
  GtkDropDown *material = GTK_DROP_DOWN (panel_find (row, "material"));
  GtkWidget *numbers = panel_find (row, "properties");

  ck_assert_uint_eq (gtk_drop_down_get_selected (material), DW_MATERIAL_OWN);
  ck_assert (gtk_widget_get_visible (numbers));
  gtk_drop_down_set_selected (material, DW_MATERIAL_STEEL);
  ck_assert_int_eq (dw_shim_material_of (&panel_damper (document, DW_FRONT)->valve.shims[0]),
                    DW_MATERIAL_STEEL);
  ck_assert (!gtk_widget_get_visible (numbers));
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change front shim material");
  dw_document_undo (document);
  ck_assert (!dw_document_undo (document));
  ck_assert_uint_eq (gtk_drop_down_get_selected (material), DW_MATERIAL_OWN);
  ck_assert (gtk_widget_get_visible (numbers));
}
END_TEST

START_TEST (asking_for_the_numbers_changes_nothing)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_shim_row_new (editor, 0));
  GtkDropDown *material = GTK_DROP_DOWN (panel_find (row, "material"));
  GtkWidget *numbers = panel_find (row, "properties");

  gtk_drop_down_set_selected (material, DW_MATERIAL_POLYESTER);
  const guint64 state = dw_document_get_state (document);
  gtk_drop_down_set_selected (material, DW_MATERIAL_OWN);
  ck_assert (gtk_widget_get_visible (numbers));
  ck_assert_str_eq (panel_text (field (row, "modulus")), "4");
  ck_assert_uint_eq (dw_document_get_state (document), state);
  /* it stays open while the numbers are worked on */
  panel_type (field (row, "count"), "4");
  ck_assert (gtk_widget_get_visible (numbers));
  gtk_drop_down_set_selected (material, DW_MATERIAL_POLYESTER);
  ck_assert (!gtk_widget_get_visible (numbers));
}
END_TEST

START_TEST (its_widgets_have_names)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) row = g_object_ref_sink (dw_shim_row_new (editor, 1));

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_entry (field (row, "thickness"))),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Thickness of shims at place 2, mm");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_find (row, "up")),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Move shims at place 2 up");
  ck_assert (gtk_widget_get_sensitive (panel_find (row, "up")));
  ck_assert (!gtk_widget_get_sensitive (panel_find (row, "down")));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/shim-row");
  TCase *tc = tcase_create ("shim-row");
  tcase_add_test (tc, a_row_shows_and_changes_its_shim);
  tcase_add_test (tc, a_material_sets_three_numbers_in_one_step);
  tcase_add_test (tc, asking_for_the_numbers_changes_nothing);
  tcase_add_test (tc, its_widgets_have_names);
  panel_case (s, tc);
  return run_suite (s);
}
