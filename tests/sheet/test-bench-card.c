/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-bench-card.h"

#include <math.h>
#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"
#include "sheet/dw-bench-steps.h"

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

/* Squares to tick. */
static int
count_boxes (const dw_sheet_part *part)
{
  int n = 0;
  for (guint i = 0; i < part->flow.pages->len; i++)
    {
      const dw_block *page = g_ptr_array_index (part->flow.pages, i);
      for (guint k = 0; k < page->items->len; k++)
        {
          const dw_item *item = &g_array_index (page->items, dw_item, k);
          n += item->kind == DW_ITEM_FRAME && item->box.width == item->box.height;
        }
    }
  return n;
}

START_TEST (cautions_come_before_any_work)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = dw_bench_card_new (tools);
  g_autofree char *words = part_words (part);
  ck_assert_uint_eq (part->flow.pages->len, 1);
  expect_in_order (
      words,
      (const char *[]){ "Rear quicker on rebound\n",
                        "Bench card\nbuilt from “As qualified”\n2026-05-03\n",
                        "Before you begin\n",
                        "Wear eye protection",
                        "pin vice",
                        "never in the fingers.",
                        "Holes cannot be made smaller again",
                        "Release gas pressure before opening",
                        "Silicone oil on the floor is slippery",
                        "Front\nRear\n",
                        "Work on the front dampers\nL\nR\n",
                        "Nothing to do: these dampers stay as they",
                        "Work on the rear dampers\nL\nR\n",
                        "1.\nRelease the gas pressure, then open the damper over a tray.\n",
                        "2.\nStack on the side",
                        "1 × 0.1 mm\n",
                        "3.\nFill in the oil:\n",
                        "350 cSt: 7.60 ml a damper, 15.2 ml for left and right\n",
                        "4.\nMove the shaft",
                        "5.\nHold",
                        "Measured after building\nfront left\nfront right\nrear left\nrear right\n",
                        "Largest drill that goes into the holes, mm\nOil filled in, ml\n",
                        "Ride height, mm\nDroop, mm\n",
                        "Notes\n",
                        NULL });
}
END_TEST

START_TEST (without_a_setup_before_it_is_built_from_new_parts)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.against = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = dw_bench_card_new (tools);
  g_autofree char *words = part_words (part);
  expect_in_order (words, (const char *[]){ "built from new parts\n", "Work on the front dampers",
                                            "Body: bore 16 mm", "Work on the rear dampers",
                                            "Body: bore 16 mm", NULL });
}
END_TEST

/* What is one thing is ticked once for left and once for right: an action, or each of its items. */
START_TEST (every_step_is_ticked_for_left_and_right)
{
  for (int alone = 0; alone < 2; alone++)
    {
      g_autoptr (dw_project) project = sample_project ();
      dw_sheet_options options = sample_sheet_options (project);
      if (alone == 1)
        options.against = NULL;
      g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
      g_autoptr (dw_sheet_part) part = dw_bench_card_new (tools);
      int n_ticked = 0;
      for (int axle = 0; axle < DW_N_AXLES; axle++)
        {
          g_autoptr (GArray) steps = dw_bench_steps_make (
              options.against != NULL ? &options.against->damper[axle] : NULL,
              &options.setup->damper[axle], dw_project_get_parts (project), options.units);
          for (guint i = 0; i < steps->len; i++)
            {
              const dw_bench_step *step = &g_array_index (steps, dw_bench_step, i);
              const bool has_items = i + 1 < steps->len && step[1].kind == DW_STEP_ITEM;
              n_ticked += step->kind == DW_STEP_ITEM
                          || (step->kind == DW_STEP_ACTION && !has_items);
            }
        }
      ck_assert_int_ge (n_ticked, 5);
      ck_assert_int_eq (count_boxes (part), 2 * n_ticked);
    }
}
END_TEST

START_TEST (units_of_what_is_measured_are_the_users)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.units = SAMPLE_INCHES;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = dw_bench_card_new (tools);
  g_autofree char *words = part_words (part);
  expect_in_order (words, (const char *[]){ "Largest drill that goes into the holes, in\n",
                                            "Oil filled in, ml\n", "Travel of the shaft, in\n",
                                            "Time for the stroke under one weight, in and out, s\n",
                                            "Ride height, in\n", NULL });
}
END_TEST

/* The table goes to the next page whole. */
START_TEST (the_table_is_not_divided)
{
  for (int k = 0; k < n_sample_extremes; k++)
    {
      g_autoptr (dw_project) project = sample_extremes[k].make ();
      const dw_sheet_options options = sample_sheet_options (project);
      g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
      g_autoptr (dw_sheet_part) part = dw_bench_card_new (tools);
      int n_whole = 0;
      for (guint i = 0; i < part->flow.pages->len; i++)
        {
          g_autofree char *words = dw_block_get_words (g_ptr_array_index (part->flow.pages, i));
          const bool has_head = strstr (words, "Measured after building\n") != NULL;
          const bool has_end = strstr (words, "\nDroop, mm\n") != NULL;
          ck_assert_msg (has_head == has_end, "%s, page %u", sample_extremes[k].why, i + 1);
          n_whole += has_head && has_end;
        }
      ck_assert_int_eq (n_whole, 1);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/bench-card");
  TCase *tcase = tcase_create ("bench-card");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, cautions_come_before_any_work);
  tcase_add_test (tcase, without_a_setup_before_it_is_built_from_new_parts);
  tcase_add_test (tcase, every_step_is_ticked_for_left_and_right);
  tcase_add_test (tcase, units_of_what_is_measured_are_the_users);
  tcase_add_test (tcase, the_table_is_not_divided);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
