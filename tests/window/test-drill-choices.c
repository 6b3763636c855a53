/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-choices.h"

#include <math.h>
#include <string.h>

#include "model/dw-drill.h"
#include "project/dw-project-file.h"
#include "test-support.h"

static dw_project *project;
static DwDrillChoices *choices;
static const dw_spread_limits limits = { .hole_grade = 12 };
static int n_changed;
static int n_filled;

static void
count (DwDrillChoices *self, int *n)
{
  (void)self;
  (*n)++;
}

static void
set_up (void)
{
  char *path = test_source_path ("demo/club-final.dampwright");
  g_autoptr (dw_findings) findings = dw_findings_new ();
  project = dw_project_load (path, findings, NULL);
  ck_assert_ptr_nonnull (project);
  free (path);
  choices = dw_drill_choices_new ();
  n_changed = n_filled = 0;
  g_signal_connect (choices, "changed", G_CALLBACK (count), &n_changed);
  g_signal_connect (choices, "filled", G_CALLBACK (count), &n_filled);
}

static void
tear_down (void)
{
  g_object_unref (choices);
  dw_project_free (project);
}

static const dw_damper *
front (void)
{
  return &dw_project_get_fitted (project)->damper[DW_FRONT];
}

static void
ask (dw_drill_division division, gboolean whole_table)
{
  dw_drill_choices_ask (choices, project, front (), division, whole_table, &limits);
}

static void
wait_until_filled (void)
{
  const gint64 end = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;
  while (!dw_drill_choices_is_filled (choices) && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  ck_assert (dw_drill_choices_is_filled (choices));
}

START_TEST (forces_are_there_at_once_and_the_rest_follows)
{
  ask (DW_DRILL_HALVES, FALSE);
  GListModel *list = dw_drill_choices_get_list (choices);
  ck_assert_int_eq (n_changed, 1);
  ck_assert_uint_gt (g_list_model_get_n_items (list), 10);
  ck_assert (!dw_drill_choices_is_filled (choices));
  wait_until_filled ();
  ck_assert_int_eq (n_filled, 1);
  const dw_drilling *study = dw_drill_choices_get_study (choices);
  for (guint i = 0; i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (DwDrillChoice) choice = g_list_model_get_item (list, i);
      dw_drill_row row;
      ck_assert (dw_drill_choice_is_whole (choice));
      const double size[] = { dw_drill_choice_get_size (choice, 0),
                              dw_drill_choice_get_size (choice, 1) };
      ck_assert_int_eq (
          dw_drill_row_make (study, dw_drill_choices_get_box (choices), size, &row, NULL), DW_OK);
      ck_assert (dw_drill_choice_get_row (choice)->hold.viscosity == row.hold.viscosity);
      ck_assert (size[0] == 0.0 || size[0] > 1.4e-3);
      ck_assert (i > 0 || (size[0] == 0.0 && size[1] == 0.0));
    }
}
END_TEST

START_TEST (asking_the_same_again_changes_nothing)
{
  ask (DW_DRILL_HALVES, FALSE);
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert_int_eq (n_changed, 1);
  project->conditions.oil_temperature += 5.0;
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert_int_eq (n_changed, 2);
  ask (DW_DRILL_KINDS, FALSE);
  ck_assert_int_eq (n_changed, 3);
}
END_TEST

/* What was begun for another question is never finished. */
START_TEST (a_new_question_drops_the_old_one)
{
  ask (DW_DRILL_HALVES, TRUE);
  g_main_context_iteration (NULL, FALSE);
  ask (DW_DRILL_KINDS, FALSE);
  wait_until_filled ();
  ck_assert_int_eq (n_filled, 1);
}
END_TEST

START_TEST (the_box_decides_unless_the_table_is_asked_for)
{
  ask (DW_DRILL_HALVES, FALSE);
  const guint few = g_list_model_get_n_items (dw_drill_choices_get_list (choices));
  ck_assert (!dw_drill_choices_box_is_empty (choices));
  ask (DW_DRILL_HALVES, TRUE);
  ck_assert_uint_gt (g_list_model_get_n_items (dw_drill_choices_get_list (choices)), 2 * few);
  g_array_set_size (dw_project_edit_parts (project)->drills, 0);
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert (dw_drill_choices_box_is_empty (choices));
  ck_assert_uint_gt (g_list_model_get_n_items (dw_drill_choices_get_list (choices)), 2 * few);
}
END_TEST

START_TEST (a_hole_goes_round_the_sets_and_stays_where_it_was_put)
{
  ask (DW_DRILL_HALVES, FALSE);
  int hole = 0;
  const dw_drilling *study = dw_drill_choices_get_study (choices);
  while (study->sets.set_of[hole] != 0)
    hole++;
  dw_drill_choices_turn_hole (choices, hole);
  ck_assert_int_eq (dw_drill_choices_get_study (choices)->sets.set_of[hole], 1);
  dw_drill_choices_turn_hole (choices, hole);
  ck_assert_int_eq (dw_drill_choices_get_study (choices)->sets.set_of[hole], -1);
  ck_assert_int_eq (n_changed, 3);
  /* another oil leaves the division alone, another division does not */
  project->conditions.oil_temperature += 5.0;
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert_int_eq (dw_drill_choices_get_study (choices)->sets.set_of[hole], -1);
  ask (DW_DRILL_KINDS, FALSE);
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert_int_eq (dw_drill_choices_get_study (choices)->sets.set_of[hole], 0);
  dw_drill_choices_turn_hole (choices, -1);
  dw_drill_choices_turn_hole (choices, 9999);
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_says_why)
{
  dw_damper bad = *front ();
  bad.body.bore = 1.0;
  dw_drill_choices_ask (choices, project, &bad, DW_DRILL_HALVES, FALSE, &limits);
  ck_assert_ptr_null (dw_drill_choices_get_study (choices));
  ck_assert_ptr_nonnull (dw_drill_choices_get_problem (choices));
  ck_assert_uint_eq (g_list_model_get_n_items (dw_drill_choices_get_list (choices)), 0);
  ck_assert (!dw_drill_choices_is_filled (choices));
  ask (DW_DRILL_HALVES, FALSE);
  ck_assert_ptr_null (dw_drill_choices_get_problem (choices));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-choices");
  TCase *tc = tcase_create ("drill-choices");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, set_up, tear_down);
  tcase_add_test (tc, forces_are_there_at_once_and_the_rest_follows);
  tcase_add_test (tc, asking_the_same_again_changes_nothing);
  tcase_add_test (tc, a_new_question_drops_the_old_one);
  tcase_add_test (tc, the_box_decides_unless_the_table_is_asked_for);
  tcase_add_test (tc, a_hole_goes_round_the_sets_and_stays_where_it_was_put);
  tcase_add_test (tc, a_damper_that_cannot_be_computed_says_why);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
