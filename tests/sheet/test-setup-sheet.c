/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-setup-sheet.h"

#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"
#include "sheet/dw-difference-words.h"
#include "sheet/dw-verdict.h"

static dw_sheet_part *
make (const dw_sheet_tools *tools)
{
  dw_sheet_part *part = dw_setup_sheet_new (tools, NULL);
  ck_assert_ptr_nonnull (part);
  return part;
}

static char *
part_words (const dw_sheet_part *part)
{
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < part->flow.pages->len; i++)
    {
      g_autofree char *page = dw_block_get_words (g_ptr_array_index (part->flow.pages, i));
      g_string_append (words, page);
    }
  return g_string_free (words, FALSE);
}

static const dw_item *
find_drawing (const dw_sheet_part *part, guint page, double width)
{
  const dw_block *block = g_ptr_array_index (part->flow.pages, page);
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      if (item->kind == DW_ITEM_DRAWING && item->box.width == width)
        return item;
    }
  return NULL;
}

/* The order in which somebody builds and judges. */
START_TEST (page_one_of_the_demo_is_in_order)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  g_autofree char *words = part_words (part);
  ck_assert_uint_eq (part->flow.pages->len, 1);
  static const char *const pieces[] = {
    "Rear quicker on rebound\nRough club final, drying track (invented example)\n",
    "Setup sheet\ntrial: an idea\n2026-05-03\n",
    "Event\nRough club final (invented)\nTrack\nClay bowl with a tabletop (invented)\n",
    "Surface\ndrying clay, ruts in the fast corner\nOil in the dampers\n28 °C\n",
    "Driver\nExample driver (invented)\nCar\n1:8 buggy (invented)\nRun, place\nAir\n21 °C\n",
    "Front\n",
    "Rear\n",
    "Body\nbore 16 mm, shaft 3.5 mm, stroke 27 mm\n",
    "Body\nbore 16 mm, shaft 3.5 mm, stroke 33 mm\n",
    "Piston\n2.6 mm thick, clearance 0.03 mm\nPiston\n2.6 mm thick, clearance 0.03 mm\n",
    "Open holes\n6 × 1.4 mm\nOpen holes\n6 × 1.35 mm\n",
    "Covered holes\n4 × 1.1 mm\nCovered holes\n4 × 1.15 mm\n",
    "Stack\n1 × 0.15 mm, opens on rebound\nStack\n1 × 0.1 mm, opens on rebound\n",
    "Shim\nhub 6, outside 10.6, lift limit 0.6 mm\nShim\nhub 6, outside 10.6",
    "Oil\n400 cSt\nOil\n350 cSt\n",
    "Oil filling\n6.3 ml\nOil filling\n7.6 ml\n",
    "Gas, seal\nbladder 101.3 kPa, 1.2 ml; seal 0.4 N\nGas, seal\nbladder 101.3 kPa, 1.2 ml; seal",
    "Spring\n0.72 N/mm, 70 mm long, preload 4 mm\nSpring\n0.58 N/mm, 85 mm long, preload 5 mm\n",
    "Motion ratio\n0.62\nMotion ratio\n0.6\n",
    "Ride height\n24 mm\nRide height\n26 mm\n",
    "Droop\n18 mm\nDroop\n22 mm\n",
    "Force in N\nComp.\nchange\nReb.\nchange\nShare\nRatio\n",
    "0.05 m/s\n4.51\n=\n4.51\n=\n1.00\n1.40\n",
    "Force in N\n",
    "1 m/s\n165\n=\n119\n\u221211\u202f%\n0.720\n2.14\n",
    "What differs from “As qualified”\n",
    "Nothing differs on this axle.\n",
    "• shim 1: thickness 0.15 mm → 0.1 mm\n",
    "Notes\n",
    "Only the rear shim differs. Look at the tyres after five laps:",
    "Qualified third on damp clay.",
    "- the nose must not strike the ground behind the tabletop\n",
    NULL
  };
  expect_in_order (words, pieces);
}
END_TEST

/* Every number of the tables is what the study says; the table itself is tested where it is made. */
START_TEST (figures_and_differences_are_those_of_the_study)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  g_autofree char *words = part_words (part);
  g_strdelimit (words, "\n", ' ');
  const double speeds[] = { 0.05, 0.2, 1.0 };
  const dw_damper *a = &options.against->damper[DW_REAR];
  const dw_damper *b = &options.setup->damper[DW_REAR];
  dw_comparison comparison;
  dw_error err;
  ck_assert_int_eq (
      dw_compare_figures (a, b, project->conditions.oil_temperature, speeds, &comparison, &err),
      DW_OK);
  g_autofree char *verdict = dw_verdict_text (&comparison);
  /* broken into lines, each with the blank it ends with */
  g_autoptr (GString) flat = g_string_new (words);
  while (g_string_replace (flat, "  ", " ", 0) > 0)
    ;
  ck_assert_msg (strstr (flat->str, verdict) != NULL, "no \"%s\" in %s", verdict, flat->str);
  dw_difference list[DW_MAX_DIFFERENCES];
  const size_t n = dw_difference_find (a, b, list, DW_MAX_DIFFERENCES);
  ck_assert_uint_eq (n, 1);
  g_autofree char *difference = dw_difference_words (&list[0], a, b, DW_UNITS_METRIC);
  ck_assert_ptr_nonnull (strstr (flat->str, difference));
}
END_TEST

START_TEST (several_differences_are_said_to_be_several)
{
  static const char said[] = "More than one thing differs";
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) one = make (tools);
  g_autofree char *words = part_words (one);
  ck_assert_ptr_null (strstr (words, said));

  dw_project_edit_setup (project, 1)->damper[DW_REAR].oil.viscosity = 500e-6;
  const dw_sheet_options again = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools_again = sample_tools (&again);
  g_autoptr (dw_sheet_part) two = make (tools_again);
  g_autofree char *more = part_words (two);
  expect_in_order (more, (const char *[]){ "Nothing differs on this axle.",
                                           "• shim 1: thickness 0.15 mm → 0.1 mm",
                                           "• oil 350 cSt → 500 cSt", said, NULL });
}
END_TEST

START_TEST (a_sheet_of_one_setup_says_nothing_of_others)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.against = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  g_autofree char *words = part_words (part);
  ck_assert_ptr_null (strstr (words, "differs from"));
  ck_assert_ptr_null (strstr (words, "%"));
  ck_assert_ptr_null (strstr (words, "="));
}
END_TEST

START_TEST (the_fitted_setup_is_said_to_be)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.setup = dw_project_get_setup (project, 0);
  options.against = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  g_autofree char *words = part_words (part);
  ck_assert_ptr_nonnull (strstr (words, "\nfitted: in the car now\n"));
  ck_assert_ptr_null (strstr (words, "trial"));
}
END_TEST

START_TEST (a_blank_sheet_tells_no_value)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.setup = options.against = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  g_autofree char *words = part_words (part);
  ck_assert_uint_eq (part->flow.pages->len, 1);
  static const char *const values[] = { "cSt", "6 ×", "16 mm", "28 °C", "2026", "quicker", "Only" };
  for (int i = 0; i < N_ENTRIES (values); i++)
    ck_assert_msg (strstr (words, values[i]) == NULL, "%s", values[i]);
  expect_in_order (words, (const char *[]){ "Setup\n", "Date\n", "Event\nTrack\n", "Front\n",
                                            "Rear\n", "Body\nBody\nPiston\n", "Droop\nDroop\n",
                                            "Force in N, up: compression", "0.05 m/s\n", "Notes\n",
                                            NULL });
}
END_TEST

/* The charts take what the page has left, within what can be read; two lines are left to write on. */
START_TEST (charts_grow_with_the_room_there_is)
{
  double heights[3];
  for (int k = 0; k < 3; k++)
    {
      g_autoptr (dw_project) project = sample_project ();
      dw_project_set_notes (project, "");
      dw_project_set_setup_notes (project, 1, k == 2 ? "a\nb\nc" : "");
      dw_sheet_options options = sample_sheet_options (project);
      if (k == 0)
        options.against = NULL;
      g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
      g_autoptr (dw_sheet_part) part = make (tools);
      const dw_item *chart = find_drawing (part, 0, tools->frame.width);
      ck_assert_ptr_nonnull (chart);
      ck_assert_uint_eq (part->flow.pages->len, 1);
      heights[k] = chart->box.height;
    }
  ck_assert_msg (heights[0] > heights[1] && heights[1] > heights[2], "%g, %g, %g", heights[0],
                 heights[1], heights[2]);
  ck_assert (heights[0] <= 230.0 && heights[2] >= 120.0);
}
END_TEST

START_TEST (what_is_left_of_the_page_is_lines_to_write_on)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  const dw_block *page = g_ptr_array_index (part->flow.pages, 0);
  const dw_item *last = &g_array_index (page->items, dw_item, page->items->len - 1);
  ck_assert (last->kind == DW_ITEM_LINE && last->box.width == tools->frame.width);
  ck_assert (dw_sheet_part_room (part) < 15.0);
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_is_named)
{
  for (guint setup = 0; setup < 2; setup++)
    {
      g_autoptr (dw_project) project = sample_project ();
      dw_project_edit_setup (project, setup)->damper[DW_FRONT].body.rod = 1.0;
      const dw_sheet_options options = sample_sheet_options (project);
      g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
      dw_sheet_failure failure = { 0 };
      ck_assert_ptr_null (dw_setup_sheet_new (tools, &failure));
      ck_assert_ptr_eq (failure.setup, dw_project_get_setup (project, setup));
      ck_assert_int_eq ((int)failure.axle, DW_FRONT);
      ck_assert_str_eq (failure.finding.field, "body.rod");
      ck_assert_ptr_null (dw_setup_sheet_new (tools, NULL));
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/setup-sheet");
  TCase *tcase = tcase_create ("setup-sheet");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, page_one_of_the_demo_is_in_order);
  tcase_add_test (tcase, figures_and_differences_are_those_of_the_study);
  tcase_add_test (tcase, several_differences_are_said_to_be_several);
  tcase_add_test (tcase, a_sheet_of_one_setup_says_nothing_of_others);
  tcase_add_test (tcase, the_fitted_setup_is_said_to_be);
  tcase_add_test (tcase, a_blank_sheet_tells_no_value);
  tcase_add_test (tcase, charts_grow_with_the_room_there_is);
  tcase_add_test (tcase, what_is_left_of_the_page_is_lines_to_write_on);
  tcase_add_test (tcase, a_damper_that_cannot_be_computed_is_named);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
