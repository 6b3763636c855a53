/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-shims-table.h"

static GtkWidget *
shown_table (DwDamperEditor *editor)
{
  GtkWidget *table = g_object_new (DW_TYPE_SHIMS_TABLE, NULL);
  dw_shims_table_set_editor (DW_SHIMS_TABLE (table), editor);
  panel_show (table);
  return table;
}

static double
thickness (DwDocument *document, int index)
{
  return panel_damper (document, DW_FRONT)->valve.shims[index].thickness;
}

START_TEST (a_shim_more_is_as_the_last_one)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);

  ck_assert_int_eq (panel_count_rows (table), 2);
  ck_assert (gtk_widget_activate_action (table, "shims.add", NULL));
  ck_assert_int_eq (panel_count_rows (table), 3);
  ck_assert (thickness (document, 2) == 0.2e-3);
  for (int i = 0; i < DW_MAX_SHIMS + 3; i++)
    gtk_widget_activate_action (table, "shims.add", NULL);
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->valve.n_shims, DW_MAX_SHIMS);
}
END_TEST

START_TEST (shims_change_places)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);

  ck_assert (gtk_widget_activate_action (table, "shims.up", "i", 1));
  ck_assert (thickness (document, 0) == 0.2e-3 && thickness (document, 1) == 0.1e-3);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Move front shim");
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel_row (table, 0), "thickness"))),
                    "0.2");
  ck_assert (gtk_widget_activate_action (table, "shims.down", "i", 0));
  ck_assert (thickness (document, 0) == 0.1e-3);
  /* past the ends nothing moves */
  gtk_widget_activate_action (table, "shims.up", "i", 0);
  gtk_widget_activate_action (table, "shims.down", "i", 1);
  ck_assert (thickness (document, 0) == 0.1e-3 && thickness (document, 1) == 0.2e-3);
}
END_TEST

START_TEST (the_shim_that_is_meant_goes)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  GtkWidget *table = shown_table (editor);

  ck_assert (gtk_widget_activate_action (table, "shims.remove", "i", 0));
  ck_assert_int_eq (panel_count_rows (table), 1);
  ck_assert (thickness (document, 0) == 0.2e-3);
  ck_assert (gtk_widget_activate_action (table, "shims.remove", "i", 0));
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->valve.n_shims, 0);
  gtk_widget_activate_action (table, "shims.remove", "i", 0);
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->valve.n_shims, 0);
  /* the first shim of a stack has a material of its own to start from */
  ck_assert (gtk_widget_activate_action (table, "shims.add", NULL));
  ck_assert (thickness (document, 0) > 0.0);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/shims-table");
  TCase *tc = tcase_create ("shims-table");
  panel_case (s, tc);
  tcase_add_test (tc, a_shim_more_is_as_the_last_one);
  tcase_add_test (tc, shims_change_places);
  tcase_add_test (tc, the_shim_that_is_meant_goes);
  return run_suite (s);
}
