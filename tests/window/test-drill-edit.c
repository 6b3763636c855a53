/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-edit.h"

#include <string.h>

#include "project/dw-project-file.h"
#include "test-support.h"

static DwDocument *document;
static dw_damper drilled;

static void
set_up (void)
{
  char *path = test_source_path ("demo/club-final.dampwright");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (GError) error = NULL;
  document = dw_document_open (file, findings, &error);
  ck_assert_msg (document != NULL, "%s", error != NULL ? error->message : "");
  free (path);
  const dw_project *project = dw_document_get_project (document);
  drilled = dw_project_get_fitted (project)->damper[DW_REAR];
  drilled.piston.holes[0].diameter = 1.6e-3;
}

static void
tear_down (void)
{
  g_object_unref (document);
}

static const dw_project *
project_now (void)
{
  return dw_document_get_project (document);
}

START_TEST (a_choice_becomes_a_trial_behind_its_setup)
{
  const guint before = dw_project_get_n_setups (project_now ());
  g_autofree char *id = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, NULL, NULL,
                                             "Rear drilled");
  ck_assert_ptr_nonnull (id);
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), before + 1);
  ck_assert_int_eq (dw_project_find_index (project_now (), id), 1);
  const dw_setup *made = dw_project_find_setup (project_now (), id);
  ck_assert_str_eq (made->name, "Rear drilled");
  ck_assert (dw_damper_equal (&made->damper[DW_REAR], &drilled));
  ck_assert (dw_damper_equal (&made->damper[DW_FRONT],
                              &dw_project_get_fitted (project_now ())->damper[DW_FRONT]));
  ck_assert_str_eq (project_now ()->fitted, "baseline");
  dw_document_undo (document);
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), before);
}
END_TEST

START_TEST (the_next_choice_takes_the_place_of_the_last)
{
  dw_damper other = drilled;
  other.piston.holes[0].diameter = 1.7e-3;
  g_autofree char *first = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, NULL, NULL,
                                                "One");
  const guint n = dw_project_get_n_setups (project_now ());
  g_autofree char *second = dw_drill_edit_trial (document, "baseline", DW_REAR, &other, first,
                                                 &drilled, "Two");
  ck_assert_str_eq (first, second);
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), n);
  ck_assert_str_eq (dw_project_find_setup (project_now (), second)->name, "Two");
  ck_assert (
      dw_project_find_setup (project_now (), second)->damper[DW_REAR].piston.holes[0].diameter
      == 1.7e-3);
}
END_TEST

static gboolean
warm_front (dw_project *project, gpointer data)
{
  const int index = dw_project_find_index (project, data);
  dw_project_edit_setup (project, (guint)index)->damper[DW_REAR].oil.viscosity *= 1.1;
  return TRUE;
}

START_TEST (a_trial_that_was_changed_is_left_alone)
{
  g_autofree char *first = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, NULL, NULL,
                                                "One");
  dw_document_edit (document, "Oil", NULL, warm_front, first);
  const guint n = dw_project_get_n_setups (project_now ());
  g_autofree char *second = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, first,
                                                 &drilled, "Two");
  ck_assert_str_ne (first, second);
  ck_assert_uint_eq (dw_project_get_n_setups (project_now ()), n + 1);
}
END_TEST

static gboolean
note (dw_project *project, gpointer data)
{
  return dw_project_set_setup_notes (project, (guint)dw_project_find_index (project, data), "good");
}

START_TEST (a_trial_with_notes_is_left_alone)
{
  g_autofree char *first = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, NULL, NULL,
                                                "One");
  ck_assert_str_eq (dw_project_find_setup (project_now (), first)->notes, "");
  dw_document_edit (document, "Note", NULL, note, first);
  g_autofree char *second = dw_drill_edit_trial (document, "baseline", DW_REAR, &drilled, first,
                                                 &drilled, "Two");
  ck_assert_str_ne (first, second);
  ck_assert_str_eq (dw_project_find_setup (project_now (), first)->notes, "good");
}
END_TEST

START_TEST (drilled_pistons_are_fitted_and_undo_brings_them_back)
{
  const dw_project *before = project_now ();
  g_autoptr (dw_project) copy = dw_project_copy (before);
  dw_damper trial = dw_project_find_setup (before, "trial-1")->damper[DW_REAR];
  trial.piston.holes[0].diameter = 1.6e-3;
  ck_assert (dw_drill_edit_drilled (document, "trial-1", DW_REAR, &trial));
  ck_assert_str_eq (project_now ()->fitted, "trial-1");
  ck_assert (dw_damper_equal (&dw_project_get_fitted (project_now ())->damper[DW_REAR], &trial));
  ck_assert_str_eq (dw_document_get_undo_label (document), "Rear pistons drilled");
  dw_document_undo (document);
  ck_assert (dw_project_equal (project_now (), copy));
  ck_assert (!dw_drill_edit_drilled (document, "none", DW_REAR, &trial));
}
END_TEST

static gboolean
add_spare (dw_project *project, gpointer data)
{
  (void)data;
  dw_parts_add_piston (dw_project_edit_parts (project), "like the rear ones",
                       &dw_project_get_fitted (project)->damper[DW_REAR].piston);
  return TRUE;
}

START_TEST (a_spare_piston_that_was_like_them_is_drilled_too)
{
  dw_document_edit (document, "Spare", NULL, add_spare, NULL);
  const guint last = dw_project_get_parts (project_now ())->pistons->len - 1;
  ck_assert (dw_drill_edit_drilled (document, "baseline", DW_REAR, &drilled));
  const dw_parts *parts = dw_project_get_parts (project_now ());
  const dw_piston *spare = &g_array_index (parts->pistons, dw_spare_piston, last).piston;
  ck_assert (spare->holes[0].diameter == 1.6e-3);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-edit");
  TCase *tc = tcase_create ("drill-edit");
  tcase_add_checked_fixture (tc, set_up, tear_down);
  tcase_add_test (tc, a_choice_becomes_a_trial_behind_its_setup);
  tcase_add_test (tc, the_next_choice_takes_the_place_of_the_last);
  tcase_add_test (tc, a_trial_that_was_changed_is_left_alone);
  tcase_add_test (tc, a_trial_with_notes_is_left_alone);
  tcase_add_test (tc, drilled_pistons_are_fitted_and_undo_brings_them_back);
  tcase_add_test (tc, a_spare_piston_that_was_like_them_is_drilled_too);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
