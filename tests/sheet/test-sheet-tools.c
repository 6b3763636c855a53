/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-tools.h"

#include "sheet-laws.h"
#include "sheet-samples.h"

START_TEST (columns_stand_side_by_side)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.paper = (dw_paper)_i;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  const double width = dw_sheet_column (tools);
  ck_assert (dw_sheet_column_at (tools, DW_FRONT) == 0.0);
  assert_close (dw_sheet_column_at (tools, DW_REAR), width + DW_SHEET_GAP, 1e-12, 0.0, "the gap");
  assert_close (dw_sheet_column_at (tools, DW_REAR) + width, tools->frame.width, 1e-12, 0.0,
                "right edge");
  const dw_rect frame = dw_paper_frame ((dw_paper)_i);
  ck_assert (tools->frame.width == frame.width && tools->frame.height == frame.height);
}
END_TEST

START_TEST (letters_in_drawings_can_be_read)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  for (int role = 0; role < DW_N_TEXTS; role++)
    ck_assert_msg (tools->style.font[role].size >= DW_TYPE_LEAST, "role %d: %g pt", role,
                   tools->style.font[role].size);
  ck_assert_str_eq (tools->style.font_family, "DejaVu Sans");
  dw_sheet_tools_free (NULL);
}
END_TEST

START_TEST (numbers_have_the_locales_decimal_sign)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) point = sample_tools (&options);
  ck_assert_str_eq (point->numbers.decimal, ".");
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  g_autoptr (dw_sheet_tools) comma = sample_tools (&options);
  ck_assert_str_eq (comma->numbers.decimal, ",");
}
END_TEST

START_TEST (a_setup_without_a_name_is_called_by_its_id)
{
  g_autoptr (dw_project) project = sample_project ();
  ck_assert_str_eq (dw_sheet_name (dw_project_get_setup (project, 1)), "Rear quicker on rebound");
  dw_project_rename_setup (project, 1, "");
  ck_assert_str_eq (dw_sheet_name (dw_project_get_setup (project, 1)), "trial-1");
  ck_assert_str_eq (dw_sheet_axle_word (DW_FRONT), "Front");
  ck_assert_str_eq (dw_sheet_axle_word (DW_REAR), "Rear");
}
END_TEST

START_TEST (a_heading_has_a_line_under_it)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_sheet_heading (tools, "Notes", 200.0);
  const dw_item *text = &g_array_index (block->items, dw_item, 0);
  const dw_item *line = &g_array_index (block->items, dw_item, 1);
  assert_close (block->height, dw_sheet_heading_height (tools), 1e-12, 0.0, "one line");
  ck_assert (line->kind == DW_ITEM_LINE && line->box.width == 200.0);
  ck_assert (line->box.y >= text->box.y + text->box.height - 1e-9);
  ck_assert (line->box.y < block->height);
  g_autoptr (dw_block) two = dw_sheet_heading (tools, "What differs from a setup", 60.0);
  ck_assert_msg (two->height > block->height + 5.0, "%g, %g", two->height, block->height);
}
END_TEST

START_TEST (a_space_is_nothing_but_height)
{
  g_autoptr (dw_block) space = dw_sheet_space (7.5);
  ck_assert (space->height == 7.5 && space->items->len == 0);
}
END_TEST

/* Each line is a block that can stand on another page, and none is lost. */
START_TEST (lines_are_a_block_each)
{
  static const char text[]
      = "Only the rear shim differs.\n\nLook at the tyres after five laps: the "
        "inner edge should wear less.";
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (GPtrArray) rows = dw_rows_new ();
  dw_sheet_add_lines (tools, rows, DW_TYPE_BODY, text, 150.0);
  ck_assert_uint_eq (rows->len, 4);
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < rows->len; i++)
    {
      const dw_block *row = g_ptr_array_index (rows, i);
      g_autofree char *words = dw_block_get_words (row);
      const dw_rect room = { 0.0, 0.0, 150.0, row->height };
      ck_assert_uint_eq (row->items->len, 1);
      expect_lawful_block (row, &room, words);
      g_string_append (all, g_strchomp (words));
      g_string_append_c (all, ' ');
    }
  expect_in_order (all->str, (const char *[]){ "Only the rear shim differs.", "Look at the tyres",
                                               "wear less.", NULL });
  g_string_free (all, TRUE);
}
END_TEST

START_TEST (a_rule_is_a_thin_line)
{
  g_autoptr (dw_block) block = dw_block_new (100.0);
  dw_sheet_add_rule (block, 10.0, 20.0, 50.0);
  const dw_item *line = &g_array_index (block->items, dw_item, 0);
  ck_assert (line->kind == DW_ITEM_LINE && line->width == DW_SHEET_RULE);
  ck_assert (line->box.x == 10.0 && line->box.y == 20.0 && line->box.width == 50.0
             && line->box.height == 0.0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/sheet-tools");
  TCase *tcase = tcase_create ("sheet-tools");
  tcase_add_loop_test (tcase, columns_stand_side_by_side, 0, DW_N_PAPERS);
  tcase_add_test (tcase, letters_in_drawings_can_be_read);
  tcase_add_test (tcase, numbers_have_the_locales_decimal_sign);
  tcase_add_test (tcase, a_setup_without_a_name_is_called_by_its_id);
  tcase_add_test (tcase, a_heading_has_a_line_under_it);
  tcase_add_test (tcase, a_space_is_nothing_but_height);
  tcase_add_test (tcase, lines_are_a_block_each);
  tcase_add_test (tcase, a_rule_is_a_thin_line);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
