/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-page.h"

#include <string.h>

#include "project/dw-project-writer.h"
#include "window-fixture.h"
#include "window/dw-drill-edit.h"
#include "window/dw-drill-plan.h"
#include "window/dw-window-private.h"

static DwWindow *window;
static DwDrillPage *page;

static void
open_page (void)
{
  window = fixture_open ("club-final.dampwright");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "drilling");
  page = window->drill;
  fixture_settle ();
}

static const dw_project *
project_now (void)
{
  return dw_document_get_project (dw_window_get_document (window));
}

static GListModel *
choices_now (void)
{
  return dw_drill_choices_get_list (dw_drill_page_get_choices (page));
}

static void
choose_any (void)
{
  g_autoptr (DwDrillChoice) choice = g_list_model_get_item (
      choices_now (), g_list_model_get_n_items (choices_now ()) / 2);
  ck_assert_ptr_nonnull (choice);
  ck_assert (dw_drill_page_choose (page, dw_drill_choice_get_row (choice)->result.size));
}

static gboolean
warm_up (dw_project *project, gpointer data)
{
  (void)data;
  project->conditions.oil_temperature += 20.0;
  return TRUE;
}

START_TEST (nothing_is_computed_until_the_page_is_shown)
{
  window = fixture_open ("club-final.dampwright");
  ck_assert_ptr_null (window->drill);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "drilling");
  page = window->drill;
  fixture_settle ();
  ck_assert_uint_gt (g_list_model_get_n_items (choices_now ()), 10);
  /* what happens while another page is shown is caught up with */
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "curves");
  fixture_settle ();
  const dw_drilling *study = dw_drill_choices_get_study (dw_drill_page_get_choices (page));
  const double before = study->now.c[DW_REBOUND][DW_LOW];
  dw_document_edit (dw_window_get_document (window), "Warm up", NULL, warm_up, NULL);
  ck_assert (study->now.c[DW_REBOUND][DW_LOW] == before);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "drilling");
  fixture_settle ();
  ck_assert (study->now.c[DW_REBOUND][DW_LOW] < before);
  const dw_drill_map *map = dw_drill_map_view_get_map (dw_drill_page_get_map (page));
  ck_assert_uint_eq ((guint)map->n_dots, g_list_model_get_n_items (choices_now ()));
}
END_TEST

START_TEST (map_list_and_words_show_the_same_choice)
{
  open_page ();
  choose_any ();
  const dw_drill_map *map = dw_drill_map_view_get_map (dw_drill_page_get_map (page));
  DwDrillChoice *chosen = dw_drill_list_get_chosen (dw_drill_page_get_list (page));
  ck_assert_int_ge (map->chosen, 0);
  ck_assert_ptr_nonnull (chosen);
  ck_assert (map->dots[map->chosen].x == dw_drill_choice_get_size (chosen, 0));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (page), "Oil that holds"));
  ck_assert (!dw_drill_page_choose (page, (const double[]){ 1e-3, 1e-3 }));
}
END_TEST

START_TEST (a_choice_is_put_into_one_trial_that_is_drawn)
{
  open_page ();
  dw_window_select (window, "baseline");
  fixture_settle ();
  const guint n = dw_project_get_n_setups (project_now ());
  choose_any ();
  ck_assert (gtk_widget_activate_action (GTK_WIDGET (page), "drill.trial", NULL));
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), n + 1);
  const dw_setup *made = dw_project_get_setup (project_now (), 1);
  ck_assert_ptr_nonnull (strstr (made->name, "Front drilled"));
  ck_assert (dw_window_is_drawn (window, made->id));
  ck_assert_str_eq (dw_window_get_selected (window), "baseline");
  /* the next idea takes its place */
  g_autoptr (DwDrillChoice) other = g_list_model_get_item (choices_now (), 1);
  ck_assert (dw_drill_page_choose (page, dw_drill_choice_get_row (other)->result.size));
  gtk_widget_activate_action (GTK_WIDGET (page), "drill.trial", NULL);
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), n + 1);
}
END_TEST

START_TEST (an_edit_keeps_the_chosen_sizes)
{
  open_page ();
  choose_any ();
  DwDrillChoice *chosen = dw_drill_list_get_chosen (dw_drill_page_get_list (page));
  const double size[] = { dw_drill_choice_get_size (chosen, 0),
                          dw_drill_choice_get_size (chosen, 1) };
  gtk_widget_activate_action (GTK_WIDGET (window), "win.setup-fit", NULL);
  dw_window_select (window, "baseline");
  fixture_settle ();
  chosen = dw_drill_list_get_chosen (dw_drill_page_get_list (page));
  ck_assert_ptr_nonnull (chosen);
  ck_assert (dw_drill_choice_get_size (chosen, 0) == size[0]);
  ck_assert (dw_drill_choice_get_size (chosen, 1) == size[1]);
}
END_TEST

static bool
is_filled (void *data)
{
  (void)data;
  return dw_drill_choices_is_filled (dw_drill_page_get_choices (page));
}

START_TEST (options_change_what_is_asked)
{
  open_page ();
  const guint few = g_list_model_get_n_items (choices_now ());
  g_object_set (page, "whole-table", TRUE, "tolerance", "H11", "oils", TRUE, NULL);
  ck_assert_uint_gt (g_list_model_get_n_items (choices_now ()), few);
  ck_assert_int_eq (dw_drill_choices_get_box (dw_drill_page_get_choices (page))->limits.hole_grade,
                    11);
  ck_assert_int_gt (dw_drill_map_view_get_map (dw_drill_page_get_map (page))->n_oils, 0);
  g_object_set (page, "tolerance", "own", NULL);
  ck_assert (dw_drill_choices_get_box (dw_drill_page_get_choices (page))->limits.hole_error
             == 0.05e-3);
  ck_assert (fixture_until (is_filled, NULL, 30000));
  gtk_widget_activate_action (GTK_WIDGET (page), "drill.whole-table", NULL);
  ck_assert_uint_eq (g_list_model_get_n_items (choices_now ()), few);
}
END_TEST

START_TEST (there_is_no_plan_without_a_choice)
{
  open_page ();
  gtk_widget_activate_action (GTK_WIDGET (page), "drill.plan", NULL);
  fixture_settle ();
  ck_assert_ptr_null (fixture_dialog ());
}
END_TEST

static bool
has_plan (void *data)
{
  (void)data;
  return fixture_dialog () != NULL && DW_IS_DRILL_PLAN (fixture_dialog ());
}

START_TEST (drilled_pistons_become_fitted)
{
  open_page ();
  choose_any ();
  gtk_widget_activate_action (GTK_WIDGET (page), "drill.plan", NULL);
  ck_assert (fixture_until (has_plan, NULL, 5000));
  const char *selected = dw_window_get_selected (window);
  const dw_damper before = dw_project_find_setup (project_now (), selected)->damper[DW_FRONT];
  g_signal_emit_by_name (fixture_dialog (), "drilled");
  const dw_damper *after = &dw_project_find_setup (project_now (), selected)->damper[DW_FRONT];
  ck_assert (!dw_damper_equal (&before, after));
  ck_assert_str_eq (project_now ()->fitted, selected);
  gtk_window_destroy (fixture_dialog ());
  fixture_settle ();
  /* what was drilled is now: no smaller size is offered any more */
  g_autoptr (DwDrillChoice) now = g_list_model_get_item (choices_now (), 0);
  ck_assert_int_eq (dw_drill_choice_get_row (now)->n_holes, 0);
}
END_TEST

/* Choosing, trials, drilling, sets, options, undo and redo in any order, and all the way back. */
START_TEST (a_random_walk_comes_back_to_the_first_byte)
{
  test_random r = test_random_new (7);
  open_page ();
  g_autoptr (GBytes) before = dw_project_write_text (project_now ());
  for (int i = 0; i < 120; i++)
    {
      const guint n = g_list_model_get_n_items (choices_now ());
      const guint n_setups = dw_project_get_n_setups (project_now ());
      g_autoptr (DwDrillChoice) choice
          = n > 0
                ? g_list_model_get_item (choices_now (), (guint)test_random_int (&r, 0, (int)n - 1))
                : NULL;
      dw_damper drilled;
      switch (test_random_int (&r, 0, 7))
        {
        case 0:
          dw_window_select (window,
                            dw_project_get_setup (project_now (),
                                                  (guint)test_random_int (&r, 0, (int)n_setups - 1))
                                ->id);
          break;
        case 1:
          dw_drill_choices_turn_hole (dw_drill_page_get_choices (page), test_random_int (&r, 0, 9));
          break;
        case 2:
          g_object_set (page, "oils", test_random_int (&r, 0, 1), "tolerance",
                        test_random_int (&r, 0, 1) ? "H11" : "own", NULL);
          break;
        case 3:
          gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
          break;
        case 4:
          gtk_widget_activate_action (GTK_WIDGET (window), "win.redo", NULL);
          break;
        case 5:
          if (choice != NULL
              && dw_drill_sets_apply (
                     &dw_drill_choices_get_study (dw_drill_page_get_choices (page))->sets,
                     dw_drill_choice_get_row (choice)->result.size, &drilled, NULL)
                     == DW_OK)
            dw_drill_edit_drilled (dw_window_get_document (window), dw_window_get_selected (window),
                                   DW_FRONT, &drilled);
          break;
        default:
          if (choice != NULL
              && dw_drill_page_choose (page, dw_drill_choice_get_row (choice)->result.size))
            gtk_widget_activate_action (GTK_WIDGET (page), "drill.trial", NULL);
        }
      while (g_main_context_iteration (NULL, FALSE))
        ;
    }
  while (dw_document_undo (dw_window_get_document (window)))
    ;
  fixture_settle ();
  g_autoptr (GBytes) after = dw_project_write_text (project_now ());
  ck_assert (g_bytes_equal (before, after));
}
END_TEST

START_TEST (a_page_is_finalised_with_its_window)
{
  open_page ();
  g_object_add_weak_pointer (G_OBJECT (page), (gpointer *)&page);
  gtk_window_destroy (GTK_WINDOW (window));
  fixture_settle ();
  ck_assert_ptr_null (page);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-page");
  TCase *tc = tcase_create ("drill-page");
  fixture_case (s, tc);
  tcase_add_test (tc, nothing_is_computed_until_the_page_is_shown);
  tcase_add_test (tc, map_list_and_words_show_the_same_choice);
  tcase_add_test (tc, a_choice_is_put_into_one_trial_that_is_drawn);
  tcase_add_test (tc, an_edit_keeps_the_chosen_sizes);
  tcase_add_test (tc, options_change_what_is_asked);
  tcase_add_test (tc, there_is_no_plan_without_a_choice);
  tcase_add_test (tc, drilled_pistons_become_fitted);
  tcase_add_test (tc, a_random_walk_comes_back_to_the_first_byte);
  tcase_add_test (tc, a_page_is_finalised_with_its_window);
  return run_suite (s);
}
