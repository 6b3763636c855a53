/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-empty-chart.h"

#include "sheet-laws.h"
#include "sheet-samples.h"

static const struct
{
  dw_units units;
  bool shows_damping;
  const char *words;
} rows[] = {
  { DW_UNITS_METRIC, false, "Force in N, up: compression, down: rebound\nShaft speed in m/s\n" },
  { DW_UNITS_METRIC, true, "c in N s/m, up: compression, down: rebound\nShaft speed in m/s\n" },
  { SAMPLE_INCHES, false, "Force in lbf, up: compression, down: rebound\nShaft speed in in/s\n" },
};

START_TEST (two_grids_say_what_is_to_be_drawn)
{
  const dw_rect box = { 10.0, 20.0, 523.0, 200.0 };
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.units = rows[_i].units;
  options.shows_damping = rows[_i].shows_damping;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_block_new (600.0);
  dw_empty_chart_add (tools, block, &box);
  const dw_rect room = { box.x, box.y, tools->frame.width, box.height };
  expect_lawful_block (block, &room, rows[_i].words);
  g_autofree char *words = dw_block_get_words (block);
  g_autofree char *expected = g_strconcat (rows[_i].words, rows[_i].words, NULL);
  ck_assert_str_eq (words, expected);
}
END_TEST

/* The line at no force stands in the middle and is the thickest. */
START_TEST (no_force_is_a_thick_line_in_the_middle)
{
  const dw_rect box = { 0.0, 0.0, 523.0, 180.0 };
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_block_new (600.0);
  dw_empty_chart_add (tools, block, &box);
  int n_thick = 0;
  double thickest = 0.0;
  for (guint i = 0; i < block->items->len; i++)
    thickest = MAX (thickest, g_array_index (block->items, dw_item, i).width);
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      if (item->width < thickest)
        continue;
      n_thick++;
      assert_close (item->box.y, 90.0, 0.0, 1e-9, "halfway");
      assert_close (item->box.width, dw_sheet_column (tools), 1e-12, 0.0, "all across");
    }
  ck_assert_int_eq (n_thick, DW_N_AXLES);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/empty-chart");
  TCase *tcase = tcase_create ("empty-chart");
  tcase_add_loop_test (tcase, two_grids_say_what_is_to_be_drawn, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, no_force_is_a_thick_line_in_the_middle);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
