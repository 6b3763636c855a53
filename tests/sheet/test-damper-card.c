/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-damper-card.h"

#include <string.h>

#include "random-damper.h"
#include "sheet-laws.h"
#include "sheet-samples.h"
#include "sheet/dw-build-words.h"

static int
count_items (const dw_block *block, dw_item_kind kind)
{
  int n = 0;
  for (guint i = 0; i < block->items->len; i++)
    n += g_array_index (block->items, dw_item, i).kind == kind;
  return n;
}

START_TEST (each_axle_has_a_face_and_a_stack)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_damper_card_drawings (tools, options.setup->damper);
  const dw_rect room = { 0.0, 0.0, tools->frame.width, block->height };
  expect_lawful_block (block, &room, "drawings");
  ck_assert_int_eq (count_items (block, DW_ITEM_DRAWING), 2 * DW_N_AXLES);
  const double middle = dw_sheet_column (tools) + 0.5 * DW_SHEET_GAP;
  int n_front = 0;
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      if (item->kind == DW_ITEM_DRAWING)
        {
          ck_assert (item->box.x > middle || item->box.x + item->box.width < middle);
          n_front += item->box.x < middle;
        }
    }
  ck_assert_int_eq (n_front, 2);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert_str_eq (words, "Front\nRear\n");
}
END_TEST

START_TEST (without_dampers_there_is_a_bore_to_draw_in)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_damper_card_drawings (tools, NULL);
  const dw_rect room = { 0.0, 0.0, tools->frame.width, block->height };
  expect_lawful_block (block, &room, "blank");
  ck_assert_int_eq (count_items (block, DW_ITEM_DRAWING), DW_N_AXLES);
  g_autofree char *words = dw_block_get_words (block);
  expect_in_order (words, (const char *[]){ "Front\n",
                                            "Stack: count and thickness, 1 lies on the "
                                            "piston\n1\n2\n3\n4\n",
                                            "Rear\n", "1\n2\n", NULL });
  /* the first leaf lies on the piston: lowest */
  double lowest = 0.0;
  double first = 0.0;
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      if (item->kind != DW_ITEM_TEXT)
        continue;
      lowest = MAX (lowest, item->box.y);
      if (strcmp (pango_layout_get_text (item->text), "1") == 0)
        first = item->box.y;
    }
  ck_assert (first == lowest);
}
END_TEST

static GPtrArray *
make_rows (const dw_sheet_tools *tools, const dw_damper *dampers)
{
  GPtrArray *rows = dw_rows_new ();
  dw_damper_card_add_rows (tools, dampers, rows);
  for (guint i = 0; i < rows->len; i++)
    {
      const dw_block *row = g_ptr_array_index (rows, i);
      const dw_rect room = { 0.0, 0.0, tools->frame.width, row->height };
      expect_lawful_block (row, &room, "row");
    }
  return rows;
}

static char *
rows_words (const GPtrArray *rows)
{
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < rows->len; i++)
    {
      g_autofree char *row = dw_block_get_words (g_ptr_array_index (rows, i));
      g_string_append_printf (words, "%s--\n", row);
    }
  return g_string_free (words, FALSE);
}

START_TEST (every_part_of_both_axles_is_told)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (GPtrArray) rows = make_rows (tools, options.setup->damper);
  g_autofree char *words = rows_words (rows);
  GString *expected = g_string_new (NULL);
  for (int build = 0; build < DW_N_BUILDS; build++)
    {
      for (int axle = 0; axle < DW_N_AXLES; axle++)
        {
          g_autofree char *value = dw_build_value ((dw_build)build, &options.setup->damper[axle],
                                                   DW_UNITS_METRIC);
          g_string_append_printf (expected, "%s\n%s\n", dw_build_name ((dw_build)build), value);
        }
      g_string_append (expected, "--\n");
    }
  ck_assert_str_eq (words, expected->str);
  g_string_free (expected, TRUE);
}
END_TEST

START_TEST (what_only_one_axle_has_is_none_on_the_other)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_damper *rear = &dw_project_edit_setup (project, 1)->damper[DW_REAR];
  rear->piston.n_holes = 1;
  rear->valve.n_shims = 0;
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (GPtrArray) rows = make_rows (tools, options.setup->damper);
  g_autofree char *words = rows_words (rows);
  expect_in_order (words, (const char *[]){
                              "Covered holes\n4 × 1.1 mm\nCovered holes\nnone\n--\n",
                              "Stack\n1 × 0.15 mm, opens on rebound\nStack\nnone\n--\n",
                              "Shim\nhub 6, outside 10.6, lift limit 0.6 mm\nShim\nnone\n", NULL });
}
END_TEST

START_TEST (what_neither_has_is_left_out_but_what_is_measured_is_not)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_setup *setup = dw_project_edit_setup (project, 1);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_damper *d = &setup->damper[axle];
      d->piston.n_holes = 1;
      d->valve.n_shims = 0;
      d->body.has_filling = d->stance.has_droop = false;
      d->body.filling = d->stance.droop = 0.0;
    }
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (GPtrArray) rows = make_rows (tools, options.setup->damper);
  g_autofree char *words = rows_words (rows);
  ck_assert_ptr_null (strstr (words, "Covered holes"));
  ck_assert_ptr_null (strstr (words, "Stack"));
  ck_assert_ptr_null (strstr (words, "Shim"));
  ck_assert_ptr_nonnull (strstr (words, "--\nOil filling\nOil filling\n--\n"));
  ck_assert_ptr_nonnull (strstr (words, "--\nDroop\nDroop\n--\n"));
}
END_TEST

START_TEST (a_blank_list_has_a_line_for_every_part)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (GPtrArray) rows = make_rows (tools, NULL);
  ck_assert_uint_eq (rows->len, DW_N_BUILDS);
  for (guint i = 0; i < rows->len; i++)
    ck_assert_int_eq (count_items (g_ptr_array_index (rows, i), DW_ITEM_LINE), DW_N_AXLES);
}
END_TEST

/* Its first and its last text stand at the top of a row: the name in front, the value behind. */
START_TEST (any_dampers_have_their_parts_side_by_side)
{
  test_random r = test_random_new (9003);
  for (int k = 0; k < 50; k++)
    {
      g_autoptr (dw_project) project = sample_random_project (&r, k % 2 == 0);
      dw_sheet_options options = sample_sheet_options (project);
      options.units = k % 3 == 0 ? SAMPLE_INCHES : DW_UNITS_METRIC;
      g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
      g_autoptr (dw_block) drawings = dw_damper_card_drawings (tools, options.setup->damper);
      const dw_rect room = { 0.0, 0.0, tools->frame.width, drawings->height };
      expect_lawful_block (drawings, &room, "any drawings");
      g_autoptr (GPtrArray) rows = make_rows (tools, options.setup->damper);
      for (guint i = 0; i < rows->len; i++)
        {
          const dw_block *row = g_ptr_array_index (rows, i);
          const dw_item *first = &g_array_index (row->items, dw_item, 0);
          const dw_item *last = &g_array_index (row->items, dw_item, row->items->len - 1);
          ck_assert (first->box.x == 0.0 && last->box.x > dw_sheet_column_at (tools, DW_REAR));
          if (row->items->len == 4 && last->kind == DW_ITEM_TEXT)
            ck_assert (first->box.y == 0.0 && last->box.y == 0.0);
        }
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/damper-card");
  TCase *tcase = tcase_create ("damper-card");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, each_axle_has_a_face_and_a_stack);
  tcase_add_test (tcase, without_dampers_there_is_a_bore_to_draw_in);
  tcase_add_test (tcase, every_part_of_both_axles_is_told);
  tcase_add_test (tcase, what_only_one_axle_has_is_none_on_the_other);
  tcase_add_test (tcase, what_neither_has_is_left_out_but_what_is_measured_is_not);
  tcase_add_test (tcase, a_blank_list_has_a_line_for_every_part);
  tcase_add_test (tcase, any_dampers_have_their_parts_side_by_side);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
