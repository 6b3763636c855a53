/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-input.h"

#include <string.h>

#include "calc-run.h"
#include "calc/dw-calc-error.h"

static const dw_calc_option options[]
    = { { "--setup", "ID", "" }, { "--axle", "front|rear", "" }, { NULL, NULL, NULL } };

/* As from a command line with one option, or none. */
static dw_calc_arguments *
arguments_of (char *option)
{
  return dw_calc_arguments_new (options, option != NULL ? 1 : 0, &option, NULL);
}

START_TEST (a_good_file_is_loaded)
{
  g_autofree char *path = calc_path ("{demo}/club-final.dampwright");
  g_autoptr (GError) error = NULL;
  g_autoptr (dw_project) project = dw_calc_input_load (path, &error);
  ck_assert_ptr_nonnull (project);
  ck_assert_ptr_null (error);
}
END_TEST

START_TEST (a_refused_file_gives_every_finding)
{
  g_autofree char *path = calc_path ("{data}/malformed/no-bore.dampwright");
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (dw_calc_input_load (path, &error));
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_BAD_INPUT);
  ck_assert (g_str_has_prefix (error->message, path));
  ck_assert (!g_str_has_suffix (error->message, "\n"));
}
END_TEST

START_TEST (a_missing_file_is_another_matter)
{
  g_autofree char *path = calc_path ("{data}/none.dampwright");
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (dw_calc_input_load (path, &error));
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_IO);
}
END_TEST

START_TEST (all_setups_are_the_default)
{
  g_autoptr (dw_project) project = dw_project_new ();
  const dw_damper damper = dw_damper_defaults ();
  dw_project_add_setup (project, "b", "", &damper, &damper);
  g_autoptr (dw_calc_arguments) none = arguments_of (NULL);
  g_autoptr (GPtrArray) all = dw_calc_input_setups (project, "f", none, NULL);
  ck_assert_uint_eq (all->len, 2);
  ck_assert_ptr_eq (g_ptr_array_index (all, 1), dw_project_get_setup (project, 1));

  char option[] = "--setup=b";
  g_autoptr (dw_calc_arguments) one = arguments_of (option);
  g_autoptr (GPtrArray) chosen = dw_calc_input_setups (project, "f", one, NULL);
  ck_assert_uint_eq (chosen->len, 1);
  ck_assert_ptr_eq (g_ptr_array_index (chosen, 0), dw_project_get_setup (project, 1));
}
END_TEST

START_TEST (a_setup_that_is_not_there_names_the_others)
{
  g_autoptr (dw_project) project = dw_project_new_empty ();
  g_autoptr (GError) of_none = NULL;
  ck_assert_ptr_null (dw_calc_input_find (project, "f", "x\n", &of_none));
  ck_assert_str_eq (of_none->message, "f: no setup \"x\xEF\xBF\xBD\", the project has none");

  const dw_damper damper = dw_damper_defaults ();
  g_autoptr (GError) of_two = NULL;
  dw_project_add_setup (project, "a", "", &damper, &damper);
  dw_project_add_setup (project, "b", "", &damper, &damper);
  ck_assert_ptr_null (dw_calc_input_find (project, "f", "x", &of_two));
  ck_assert_str_eq (of_two->message, "f: no setup \"x\", the project has a, b");
  ck_assert_int_eq (dw_calc_error_get_status (of_two), DW_CALC_BAD_INPUT);
}
END_TEST

START_TEST (an_axle_is_front_rear_or_both)
{
  char front[] = "--axle=front";
  char rear[] = "--axle=rear";
  char wrong[] = "--axle=left";
  dw_calc_axles axles;
  g_autoptr (dw_calc_arguments) a = arguments_of (NULL);
  g_autoptr (dw_calc_arguments) b = arguments_of (front);
  g_autoptr (dw_calc_arguments) c = arguments_of (rear);
  g_autoptr (dw_calc_arguments) d = arguments_of (wrong);
  g_autoptr (GError) error = NULL;
  ck_assert (dw_calc_input_axles (a, &axles, NULL));
  ck_assert (axles.first == DW_FRONT && axles.last == DW_REAR);
  ck_assert (dw_calc_input_axles (b, &axles, NULL));
  ck_assert (axles.first == DW_FRONT && axles.last == DW_FRONT);
  ck_assert (dw_calc_input_axles (c, &axles, NULL));
  ck_assert (axles.first == DW_REAR && axles.last == DW_REAR);
  ck_assert (!dw_calc_input_axles (d, &axles, &error));
  ck_assert_int_eq (dw_calc_error_get_status (error), DW_CALC_WRONG_USAGE);
}
END_TEST

START_TEST (what_the_model_says_is_put_in_its_place)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autoptr (GError) error = NULL;
  dw_error finding;
  dw_fail (&finding, DW_ERR_RANGE, "body.bore", -1, "too wide");
  ck_assert (
      !dw_calc_input_refuse ("f", dw_project_get_setup (project, 0), DW_REAR, &finding, &error));
  ck_assert_str_eq (error->message, "f: setup baseline, rear: body.bore: too wide");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-input");
  TCase *tc = tcase_create ("input");
  tcase_add_test (tc, a_good_file_is_loaded);
  tcase_add_test (tc, a_refused_file_gives_every_finding);
  tcase_add_test (tc, a_missing_file_is_another_matter);
  tcase_add_test (tc, all_setups_are_the_default);
  tcase_add_test (tc, a_setup_that_is_not_there_names_the_others);
  tcase_add_test (tc, an_axle_is_front_rear_or_both);
  tcase_add_test (tc, what_the_model_says_is_put_in_its_place);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
