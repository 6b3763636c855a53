/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-shim-material.h"
#include "window/dw-shim-row.h"

typedef struct
{
  DwDocument *document;
  DwDamperEditor *editor;
  GtkWidget *row;
} bench;

static bench
make_bench (int index)
{
  bench b = { .document = panel_document (DW_OIL_NOMINAL) };
  b.editor = panel_editor (b.document);
  b.row = dw_shim_row_new (b.editor, index);
  panel_show (b.row);
  return b;
}

static void
drop_bench (bench *b)
{
  g_object_unref (b->editor);
  g_object_unref (b->document);
}

static const dw_shim *
shim (const bench *b, int index)
{
  return &panel_damper (b->document, DW_FRONT)->valve.shims[index];
}

START_TEST (shows_its_leaves)
{
  bench b = make_bench (0);

  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (b.row, "count"))), "2");
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (b.row, "thickness"))), "0.1");
  /* of no material with a name: its numbers stand below */
  ck_assert (gtk_widget_get_visible (panel_find (b.row, "properties")));
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (b.row, "modulus"))), "4.2");
  drop_bench (&b);
}
END_TEST

START_TEST (a_material_brings_its_numbers)
{
  bench b = make_bench (0);
  GtkDropDown *material = GTK_DROP_DOWN (panel_find (b.row, "material"));

  gtk_drop_down_set_selected (material, DW_MATERIAL_STEEL);
  ck_assert_int_eq (dw_shim_material_of (shim (&b, 0)), DW_MATERIAL_STEEL);
  ck_assert (shim (&b, 0)->thickness == 0.1e-3);
  ck_assert (!gtk_widget_get_visible (panel_find (b.row, "properties")));
  ck_assert_str_eq (dw_document_get_undo_label (b.document), "Change front shim material");
  dw_document_undo (b.document);
  ck_assert_uint_eq (gtk_drop_down_get_selected (material), DW_MATERIAL_OWN);
  drop_bench (&b);
}
END_TEST

START_TEST (own_values_start_from_the_material)
{
  bench b = make_bench (0);
  GtkDropDown *material = GTK_DROP_DOWN (panel_find (b.row, "material"));
  guint64 state;

  gtk_drop_down_set_selected (material, DW_MATERIAL_STEEL);
  state = dw_document_get_state (b.document);
  gtk_drop_down_set_selected (material, DW_MATERIAL_OWN);
  /* looking at them changes nothing */
  ck_assert_uint_eq (dw_document_get_state (b.document), state);
  ck_assert (gtk_widget_get_visible (panel_find (b.row, "properties")));
  drop_bench (&b);
}
END_TEST

START_TEST (the_ends_of_the_stack_do_not_move_on)
{
  bench first = make_bench (0);
  bench last = make_bench (1);

  ck_assert (!gtk_widget_get_sensitive (panel_find (first.row, "up")));
  ck_assert (gtk_widget_get_sensitive (panel_find (first.row, "down")));
  ck_assert (gtk_widget_get_sensitive (panel_find (last.row, "up")));
  ck_assert (!gtk_widget_get_sensitive (panel_find (last.row, "down")));
  drop_bench (&first);
  drop_bench (&last);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/shim-row");
  TCase *tc = tcase_create ("shim-row");
  panel_case (s, tc);
  tcase_add_test (tc, shows_its_leaves);
  tcase_add_test (tc, a_material_brings_its_numbers);
  tcase_add_test (tc, own_values_start_from_the_material);
  tcase_add_test (tc, the_ends_of_the_stack_do_not_move_on);
  return run_suite (s);
}
