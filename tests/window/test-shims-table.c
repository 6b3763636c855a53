/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-shims-table.h"

static GtkWidget *
new_table (DwDamperEditor *editor)
{
  GtkWidget *table = g_object_ref_sink (g_object_new (DW_TYPE_SHIMS_TABLE, NULL));
  dw_shims_table_set_editor (DW_SHIMS_TABLE (table), editor);
  return table;
}

static const dw_valve *
valve (DwDocument *document)
{
  return &panel_damper (document, DW_FRONT)->valve;
}

START_TEST (shims_are_added_and_removed)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  g_autoptr (GtkWidget) table = new_table (editor);

  panel_show (table);
  ck_assert (gtk_widget_activate_action (table, "shims.add", NULL));
  ck_assert_int_eq (valve (document)->n_shims, 3);
  ck_assert (valve (document)->shims[2].thickness == 0.2e-3);
  ck_assert (gtk_widget_is_ancestor (gtk_root_get_focus (gtk_widget_get_root (table)),
                                     panel_row (table, 2)));
  g_signal_emit_by_name (panel_find (panel_row (table, 0), "remove"), "clicked");
  ck_assert_int_eq (valve (document)->n_shims, 2);
  ck_assert (valve (document)->shims[0].thickness == 0.2e-3);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Remove front shim");
  for (int i = 0; i < 4; i++)
    gtk_widget_activate_action (table, "shims.remove", "i", 0);
  ck_assert_int_eq (valve (document)->n_shims, 0);
  gtk_widget_activate_action (table, "shims.add", NULL);
  ck_assert (valve (document)->shims[0].thickness == 0.15e-3);
  for (int i = 0; i < DW_MAX_SHIMS + 3; i++)
    gtk_widget_activate_action (table, "shims.add", NULL);
  ck_assert_int_eq (panel_count_rows (table), DW_MAX_SHIMS);
  ck_assert (!gtk_widget_get_sensitive (panel_find (table, "add")));
}
END_TEST

START_TEST (shims_are_moved)
{
  static const struct
  {
    const char *action;
    int index;
    int after; /* places in the old order, as digits */
    int focus; /* row; -1 = nothing happens */
  } rows[] = {
    { "shims.up", 0, 12, -1 },   { "shims.up", 1, 21, 0 },  { "shims.down", 0, 21, 1 },
    { "shims.down", 1, 12, -1 }, { "shims.up", 7, 12, -1 },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
      g_autoptr (DwDamperEditor) editor = panel_editor (document);
      g_autoptr (GtkWidget) table = new_table (editor);
      const gboolean moved = rows[i].after == 21;

      panel_show (table);
      gtk_widget_activate_action (table, rows[i].action, "i", rows[i].index);
      ck_assert (valve (document)->shims[0].thickness == (moved ? 0.2e-3 : 0.1e-3));
      ck_assert (valve (document)->shims[1].thickness == (moved ? 0.1e-3 : 0.2e-3));
      ck_assert (valve (document)->shims[moved ? 1 : 0].modulus == 4.2e9);
      ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel_row (table, 0), "count"))),
                        moved ? "1" : "2");
      if (rows[i].focus >= 0)
        ck_assert (gtk_widget_is_ancestor (gtk_root_get_focus (gtk_widget_get_root (table)),
                                           panel_row (table, rows[i].focus)));
      ck_assert_int_eq (dw_document_undo (document), moved);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/shims-table");
  TCase *tc = tcase_create ("shims-table");
  tcase_add_test (tc, shims_are_added_and_removed);
  tcase_add_test (tc, shims_are_moved);
  panel_case (s, tc);
  return run_suite (s);
}
