/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-figures-table.h"

#include <string.h>

#include "random-damper.h"
#include "sheet-laws.h"
#include "sheet-samples.h"

static dw_comparison
compare (const dw_project *project, dw_axle axle)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  dw_comparison comparison;
  dw_error finding;
  ck_assert_int_eq (dw_compare_figures (&dw_project_get_setup (project, 0)->damper[axle],
                                        &dw_project_get_setup (project, 1)->damper[axle],
                                        project->conditions.oil_temperature, speeds, &comparison,
                                        &finding),
                    DW_OK);
  return comparison;
}

static char *
table_words (const dw_sheet_options *options, dw_axle axle)
{
  g_autoptr (dw_sheet_tools) tools = sample_tools (options);
  const dw_comparison comparison = compare (options->project, axle);
  dw_block *block = dw_figures_table_make (tools, &comparison, &options->setup->damper[axle], axle);
  const dw_rect room = { 0.0, 0.0, dw_sheet_column (tools), block->height };
  expect_lawful_block (block, &room, "table");
  return sample_block_words (block);
}

static char *
number (dw_quantity quantity, dw_units units, double value)
{
  return dw_quantity_format_digits (quantity, units, value, 3);
}

static void
append_change (GString *words, double percent)
{
  g_autofree char *change = dw_quantity_format_change (percent);
  g_string_append_printf (words, "%s\n",
                          dw_compare_judge (percent) == DW_CHANGE_SAME ? "=" : change);
}

/* What the table must be, written down anew from the comparison. */
static char *
expected_words (const dw_sheet_options *o, const dw_comparison *c, dw_axle axle)
{
  GString *words = g_string_new (o->shows_damping ? "c in " : "Force in ");
  const dw_quantity quantity = o->shows_damping ? DW_QUANTITY_DAMPING : DW_QUANTITY_FORCE;
  const double speeds[] = { 0.05, 0.2, 1.0 };
  const bool has_change = o->against != NULL;
  const char *change = has_change ? "change\n" : "";
  g_string_append_printf (words, "%s\nComp.\n%sReb.\n%sShare\nRatio\n",
                          dw_quantity_unit (quantity, o->units), change, change);
  for (int speed = 0; speed < 3; speed++)
    {
      g_autofree char *v = dw_quantity_format_short (DW_QUANTITY_SPEED, o->units, speeds[speed]);
      g_string_append_printf (words, "%s %s\n", v, dw_quantity_unit (DW_QUANTITY_SPEED, o->units));
      for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
        {
          g_autofree char *f = number (quantity, o->units,
                                       o->shows_damping ? c->b.c[stroke][speed]
                                                        : c->b.point[stroke][speed].force);
          g_string_append_printf (words, "%s\n", f);
          if (has_change)
            append_change (words, c->force[stroke][speed]);
        }
      g_autofree char *share = number (DW_QUANTITY_NUMBER, o->units, c->b.rebound_share[speed]);
      g_string_append_printf (words, "%s\n", share);
      if (!o->project->car.has_sprung_mass[axle])
        continue;
      /* c/(2 sqrt (k m)): at the wheel both c and k have the motion ratio's square */
      const dw_damper *d = &o->setup->damper[axle];
      const double mean = 0.5 * (c->b.c[DW_COMPRESSION][speed] + c->b.c[DW_REBOUND][speed]);
      g_autofree char *ratio = number (
          DW_QUANTITY_NUMBER, o->units,
          dw_damping_ratio (dw_wheel_damping (mean, d->motion_ratio),
                            dw_wheel_rate (d->spring.rate, d->motion_ratio),
                            o->project->car.sprung_mass[axle]));
      g_string_append_printf (words, "%s\n", ratio);
    }
  g_string_append (words, "Pack\n");
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    {
      g_autofree char *pack = number (DW_QUANTITY_NUMBER, o->units, c->b.pack[stroke]);
      g_string_append_printf (words, "%s\n", pack);
      if (has_change)
        append_change (words, c->pack[stroke]);
    }
  return g_string_free (words, FALSE);
}

enum
{
  N_LOOKS = 16
};

START_TEST (every_cell_is_what_the_comparison_says)
{
  g_autoptr (dw_project) project = sample_project ();
  if ((_i & 8) != 0)
    project->car = (dw_car){ 0 };
  dw_sheet_options options = sample_sheet_options (project);
  options.shows_damping = (_i & 1) != 0;
  options.units = (_i & 2) != 0 ? SAMPLE_INCHES : DW_UNITS_METRIC;
  if ((_i & 4) != 0)
    options.against = NULL;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const dw_comparison c = compare (project, (dw_axle)axle);
      g_autofree char *words = table_words (&options, (dw_axle)axle);
      g_autofree char *expected = expected_words (&options, &c, (dw_axle)axle);
      ck_assert_str_eq (words, expected);
    }
}
END_TEST

/* The figures of the demo as they were read off page one by eye. */
START_TEST (the_demos_rear_is_softer_on_rebound)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autofree char *words = table_words (&options, DW_REAR);
  expect_in_order (words, (const char *[]){ "\n1 m/s\n", "165\n", "=\n", "119\n",
                                            "\u221211\u202f%\n", "0.720\n", "2.14\n", "Pack\n",
                                            "1.82\n", "=\n", "1.31\n", "\u221210\u202f%\n", NULL });
}
END_TEST

START_TEST (a_blank_table_has_cells_to_write_in)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_figures_table_make (tools, NULL, NULL, DW_FRONT);
  const dw_rect room = { 0.0, 0.0, dw_sheet_column (tools), block->height };
  expect_lawful_block (block, &room, "blank");
  int n_lines = 0;
  for (guint i = 0; i < block->items->len; i++)
    n_lines += g_array_index (block->items, dw_item, i).kind == DW_ITEM_LINE;
  /* six cells in four rows, and the line below the heads */
  ck_assert_int_eq (n_lines, 6 * 4 + 1);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert_str_eq (words, "Force in N\nComp.\nchange\nReb.\nchange\nShare\nRatio\n0.05 m/s\n0.2 "
                           "m/s\n1 m/s\nPack\n");
}
END_TEST

/* Heads of columns stay on their line, or the row of heads is twice as high. */
START_TEST (heads_have_one_line)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.paper = (dw_paper)_i;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) block = dw_figures_table_make (tools, NULL, NULL, DW_FRONT);
  for (guint i = 0; i < 7; i++)
    ck_assert_int_eq (pango_layout_get_line_count (g_array_index (block->items, dw_item, i).text),
                      1);
}
END_TEST

START_TEST (any_figures_stay_in_their_cells)
{
  test_random r = test_random_new (9002);
  for (int k = 0; k < 60; k++)
    {
      g_autoptr (dw_project) project = sample_random_project (&r, k % 2 == 0);
      dw_sheet_options options = sample_sheet_options (project);
      options.units = k % 3 == 0 ? SAMPLE_INCHES : DW_UNITS_METRIC;
      options.shows_damping = k % 5 == 0;
      g_autofree char *words = table_words (&options, k % 4 < 2 ? DW_FRONT : DW_REAR);
      ck_assert_ptr_null (strstr (words, "nan"));
      ck_assert_ptr_null (strstr (words, "inf"));
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/figures-table");
  TCase *tcase = tcase_create ("figures-table");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, every_cell_is_what_the_comparison_says, 0, N_LOOKS);
  tcase_add_test (tcase, the_demos_rear_is_softer_on_rebound);
  tcase_add_test (tcase, a_blank_table_has_cells_to_write_in);
  tcase_add_loop_test (tcase, heads_have_one_line, 0, DW_N_PAPERS);
  tcase_add_test (tcase, any_figures_stay_in_their_cells);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
