/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-list.h"

#include <math.h>
#include <string.h>

#include "panel-fixture.h"

static DwDrillList *list;
static GListStore *choices;
static DwDrillChoice *told;
static int n_told;

static void
on_chosen (DwDrillList *self, DwDrillChoice *choice)
{
  (void)self;
  told = choice;
  n_told++;
}

static DwDrillChoice *
add (double first, double second, double change, int n_holes)
{
  dw_drill_result result = { .size = { first, second } };
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      result.change[s][v] = change;
  result.figures.pack[DW_COMPRESSION] = 1.5;
  result.figures.rebound_share[DW_MIDDLE] = 0.9;
  DwDrillChoice *choice = dw_drill_choice_new (&result, n_holes);
  g_list_store_append (choices, choice);
  g_object_unref (choice);
  return choice;
}

static void
set_up (void)
{
  panel_start ();
  list = DW_DRILL_LIST (dw_drill_list_new ());
  choices = g_list_store_new (DW_TYPE_DRILL_CHOICE);
  add (0.0, 0.0, 0.0, 0);
  add (1.4e-3, 0.0, -5.5, 3);
  add (1.4e-3, 1.5e-3, -16.0, 6);
  dw_drill_list_set_choices (list, G_LIST_MODEL (choices));
  g_signal_connect (list, "chosen", G_CALLBACK (on_chosen), NULL);
  told = NULL;
  n_told = 0;
}

static void
tear_down (void)
{
  panel_stop ();
  g_object_unref (choices);
}

static DwDrillChoice *
shown (guint i)
{
  g_autoptr (DwDrillChoice) choice = g_list_model_get_item (dw_drill_list_get_shown (list), i);
  return choice;
}

static void
expect (DwDrillChoice *choice, int column, const char *text)
{
  g_autofree char *is = dw_drill_list_dup_text (list, choice, column);
  ck_assert_str_eq (is, text);
}

START_TEST (a_row_tells_sizes_changes_and_what_is_not_known_yet)
{
  panel_show (GTK_WIDGET (list));
  expect (shown (1), 0, "1.40");
  expect (shown (1), 1, "–");
  expect (shown (1), 2, "\u22125.5\u202f%");
  expect (shown (2), 7, "\u221216\u202f%");
  expect (shown (1), 8, "1.50");
  expect (shown (1), 9, "0.900");
  expect (shown (1), 10, "…");
  expect (shown (1), 12, "3");
  expect (shown (1), dw_drill_list_n_columns () - 1, "…");
  dw_drill_list_set_units (list, DW_UNITS_INCH);
  expect (shown (1), 0, "0.05512");
}
END_TEST

START_TEST (a_row_that_becomes_whole_is_shown_whole)
{
  const double bottles[] = { 450e-6, 600e-6 };
  dw_drill_list_set_bottles (list, bottles, 2);
  panel_show (GTK_WIDGET (list));
  DwDrillChoice *choice = shown (1);
  dw_drill_row row = *dw_drill_choice_get_row (choice);
  row.has_hold = true;
  row.hold.viscosity = 520e-6;
  row.mix = (dw_drill_mix){ 0, 1, 0.5 };
  row.n_passes = 6;
  dw_drill_choice_take_row (choice, &row);
  panel_settle ();
  expect (choice, 10, "520 cSt: 450 + 50 % of 600");
  expect (choice, 13, "6");
  row.mix = (dw_drill_mix){ 1, -1, 0.0 };
  dw_drill_choice_take_row (choice, &row);
  expect (choice, 10, "520 cSt: bottle of 600");
  row.mix = (dw_drill_mix){ -1, -1, 0.0 };
  dw_drill_choice_take_row (choice, &row);
  expect (choice, 10, "520\u00a0cSt");
}
END_TEST

START_TEST (a_filter_leaves_rows_out_and_never_what_is_now)
{
  panel_show (GTK_WIDGET (list));
  dw_drill_filter filter = dw_drill_filter_defaults ();
  filter.most_holes = 3;
  dw_drill_list_set_filter (list, &filter);
  ck_assert_uint_eq (g_list_model_get_n_items (dw_drill_list_get_shown (list)), 2);
  filter.most_holes = 64;
  filter.keep_compression = 1.0;
  dw_drill_list_set_filter (list, &filter);
  ck_assert_uint_eq (g_list_model_get_n_items (dw_drill_list_get_shown (list)), 1);
  ck_assert_int_eq (n_told, 0);
}
END_TEST

START_TEST (choosing_marks_a_row_and_the_user_is_told_apart)
{
  panel_show (GTK_WIDGET (list));
  dw_drill_list_choose (list, shown (2));
  ck_assert_ptr_eq (dw_drill_list_get_chosen (list), shown (2));
  ck_assert_int_eq (n_told, 0);
  gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (dw_drill_list_get_shown (list)), 1);
  ck_assert_int_eq (n_told, 1);
  ck_assert_ptr_eq (told, shown (1));
  dw_drill_list_choose (list, NULL);
  ck_assert_ptr_null (dw_drill_list_get_chosen (list));
}
END_TEST

START_TEST (every_column_sorts)
{
  panel_show (GTK_WIDGET (list));
  GtkColumnView *view = NULL;
  for (GtkWidget *w = GTK_WIDGET (list); w != NULL; w = gtk_widget_get_first_child (w))
    if (GTK_IS_COLUMN_VIEW (w))
      view = GTK_COLUMN_VIEW (w);
  ck_assert_ptr_nonnull (view);
  GListModel *columns = gtk_column_view_get_columns (view);
  ck_assert_uint_eq (g_list_model_get_n_items (columns), (guint)dw_drill_list_n_columns ());
  g_autoptr (GtkColumnViewColumn) change = g_list_model_get_item (columns, 2);
  gtk_column_view_sort_by_column (view, change, GTK_SORT_ASCENDING);
  ck_assert (dw_drill_choice_get_row (shown (0))->result.change[0][0] == -16.0);
  gtk_column_view_sort_by_column (view, change, GTK_SORT_DESCENDING);
  ck_assert (dw_drill_choice_get_row (shown (0))->result.change[0][0] == 0.0);
  for (guint i = 0; i < g_list_model_get_n_items (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);
      gtk_column_view_sort_by_column (view, column, GTK_SORT_ASCENDING);
      ck_assert_uint_eq (g_list_model_get_n_items (dw_drill_list_get_shown (list)), 3);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-list");
  TCase *tc = tcase_create ("drill-list");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, set_up, tear_down);
  tcase_add_test (tc, a_row_tells_sizes_changes_and_what_is_not_known_yet);
  tcase_add_test (tc, a_row_that_becomes_whole_is_shown_whole);
  tcase_add_test (tc, a_filter_leaves_rows_out_and_never_what_is_now);
  tcase_add_test (tc, choosing_marks_a_row_and_the_user_is_told_apart);
  tcase_add_test (tc, every_column_sorts);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
