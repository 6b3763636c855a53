/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-summary-sheet.h"

#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"
#include "study/dw-compare.h"

static dw_sheet_part *
make (const dw_sheet_tools *tools)
{
  dw_sheet_part *part = dw_summary_sheet_new (tools, NULL);
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

#define WITH_PART(project)                                                                         \
  const dw_sheet_options options = sample_sheet_options (project);                                 \
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);                                      \
  g_autoptr (dw_sheet_part) part = make (tools);                                                   \
  g_autofree char *words = part_words (part)

START_TEST (every_setup_is_told_with_its_notes)
{
  g_autoptr (dw_project) project = sample_project ();
  WITH_PART (project);
  expect_in_order (
      words,
      (const char *[]){
          "Rough club final, drying track (invented example)\nAll setups\n2026-05-03\n", "Event\n",
          "c in N s/m\n0.05 m/s\n1 m/s\n0.2 m/s\nSetup\nBuilt from\n",
          "Comp.\nReb.\nComp.\nReb.\nShare\ndashed: fitted\n", "As qualified\nfitted\n",
          "Front: open 6 × 1.4 mm; covered 4 × 1.1 mm; stack 1 × 0.15 mm; 400 cSt; 0.72 N/mm, 70 "
          "mm "
          "long\n",
          "Rear: open 6 × 1.35 mm; covered 4 × 1.15 mm; stack 1 × 0.15 mm; 350 cSt; 0.58 N/mm, 85 "
          "mm long\n",
          "Calm and even", "Filled with the shaft half out, bled twice.\n",
          "Rear quicker on rebound\nFront:", "stack 1 × 0.1 mm;", "Only the rear shim differs.",
          "Front drilled, thicker oil\nFront: open 6 × 1.5 mm;", "475 cSt;", "Notes\n",
          "Qualified third", NULL });
  ck_assert_int_eq (count_pieces (words, "\nfitted\n"), 1);
}
END_TEST

/* Low and high speed in both strokes, and the rebound share in the middle. */
START_TEST (figures_are_those_of_the_study)
{
  g_autoptr (dw_project) project = sample_project ();
  WITH_PART (project);
  const double speeds[] = { 0.05, 0.2, 1.0 };
  const char *at = words;
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      {
        const dw_damper *d = &dw_project_get_setup (project, i)->damper[axle];
        dw_comparison c;
        dw_error err;
        ck_assert_int_eq (
            dw_compare_figures (d, d, project->conditions.oil_temperature, speeds, &c, &err),
            DW_OK);
        const double values[] = { c.b.c[DW_COMPRESSION][DW_LOW], c.b.c[DW_REBOUND][DW_LOW],
                                  c.b.c[DW_COMPRESSION][DW_HIGH], c.b.c[DW_REBOUND][DW_HIGH],
                                  c.b.rebound_share[DW_MIDDLE] };
        g_autoptr (GString) row = g_string_new ("long\n");
        for (int k = 0; k < N_ENTRIES (values); k++)
          {
            g_autofree char *number = dw_quantity_format_digits (
                k == 4 ? DW_QUANTITY_NUMBER : DW_QUANTITY_DAMPING, DW_UNITS_METRIC, values[k], 3);
            g_string_append_printf (row, "%s\n", number);
          }
        at = strstr (at, row->str);
        ck_assert_msg (at != NULL, "setup %u, axle %d: no %s in %s", i, axle, row->str, words);
        at += row->len;
      }
}
END_TEST

static int
count_drawings (const dw_sheet_part *part)
{
  int n = 0;
  for (guint i = 0; i < part->flow.pages->len; i++)
    {
      const dw_block *page = g_ptr_array_index (part->flow.pages, i);
      for (guint k = 0; k < page->items->len; k++)
        n += g_array_index (page->items, dw_item, k).kind == DW_ITEM_DRAWING;
    }
  return n;
}

START_TEST (every_damper_has_its_chart)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_sheet_part) part = make (tools);
  ck_assert_int_eq (count_drawings (part), 3 * DW_N_AXLES);
}
END_TEST

START_TEST (without_a_fitted_setup_none_is_dashed)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_project_set_fitted (project, NULL);
  WITH_PART (project);
  ck_assert_ptr_null (strstr (words, "fitted"));
}
END_TEST

START_TEST (parts_that_are_not_there_are_not_told)
{
  g_autoptr (dw_project) project = sample_demo ("early-void");
  WITH_PART (project);
  ck_assert_ptr_null (strstr (words, "covered"));
  ck_assert_ptr_null (strstr (words, "stack"));
  ck_assert_ptr_nonnull (strstr (words, "Front: open 5 × 1.3 mm; 500 cSt;"));
}
END_TEST

START_TEST (a_project_without_setups_has_its_heads)
{
  g_autoptr (dw_project) project = dw_project_new_empty ();
  WITH_PART (project);
  ck_assert_uint_eq (part->flow.pages->len, 1);
  ck_assert (g_str_has_prefix (words, "All setups\nAll setups\n"));
  ck_assert_int_eq (count_drawings (part), 0);
}
END_TEST

/* Setups are not divided, and the notes at the end have no heads of columns over them. */
START_TEST (long_notes_stand_below_the_table_without_its_heads)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (GString) notes = g_string_new ("begin");
  for (int i = 0; i < 150; i++)
    g_string_append (notes, "\nline");
  ck_assert (dw_project_set_notes (project, notes->str));
  WITH_PART (project);
  ck_assert_uint_ge (part->flow.pages->len, 2);
  ck_assert_int_eq (count_pieces (words, "Built from\n"), 1);
  ck_assert_int_eq (count_pieces (words, "\nline"), 150);
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_is_named)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_project_edit_setup (project, 2)->damper[DW_REAR].body.rod = 1.0;
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_sheet_failure failure = { 0 };
  ck_assert_ptr_null (dw_summary_sheet_new (tools, &failure));
  ck_assert_ptr_eq (failure.setup, dw_project_get_setup (project, 2));
  ck_assert_int_eq ((int)failure.axle, DW_REAR);
  ck_assert_ptr_null (dw_summary_sheet_new (tools, NULL));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/summary-sheet");
  TCase *tcase = tcase_create ("summary-sheet");
  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, every_setup_is_told_with_its_notes);
  tcase_add_test (tcase, figures_are_those_of_the_study);
  tcase_add_test (tcase, every_damper_has_its_chart);
  tcase_add_test (tcase, without_a_fitted_setup_none_is_dashed);
  tcase_add_test (tcase, parts_that_are_not_there_are_not_told);
  tcase_add_test (tcase, a_project_without_setups_has_its_heads);
  tcase_add_test (tcase, long_notes_stand_below_the_table_without_its_heads);
  tcase_add_test (tcase, a_damper_that_cannot_be_computed_is_named);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
