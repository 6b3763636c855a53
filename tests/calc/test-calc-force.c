/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-force.h"
#include "project/dw-project-file.h"

static const char header[]
    = "setup,axle,stroke,speed_m_s,force_n,hydraulic_n,pressure_pa,flow_open_m3_s,"
      "flow_covered_m3_s,flow_leak_m3_s,lift_m,reynolds,void,lost_travel_m\n";

/* The rows of one stroke of one damper, from @p row on, against the model asked here. */
static void
expect_rows (const test_table *table, size_t row, const dw_project *project, const dw_setup *setup,
             dw_axle axle, dw_stroke stroke, const double *speeds, size_t n)
{
  dw_force_model model;
  g_autofree dw_force_point *points = g_new (dw_force_point, n);
  ck_assert_int_eq (
      dw_force_model_make (&setup->damper[axle], project->conditions.oil_temperature, &model, NULL),
      DW_OK);
  ck_assert_int_eq (dw_force_curve (&model, stroke, speeds, n, points, NULL), DW_OK);
  for (size_t i = 0; i < n; i++, row++)
    {
      const dw_force_point *p = &points[i];
      const struct
      {
        const char *column;
        double value;
      } fields[] = {
        { "speed_m_s", speeds[i] },          { "force_n", p->force },
        { "hydraulic_n", p->hydraulic },     { "pressure_pa", p->pressure },
        { "flow_open_m3_s", p->flow_open },  { "flow_covered_m3_s", p->flow_covered },
        { "flow_leak_m3_s", p->flow_leak },  { "lift_m", p->lift },
        { "reynolds", p->reynolds },         { "void", p->is_void ? 1.0 : 0.0 },
        { "lost_travel_m", p->lost_travel },
      };
      ck_assert_str_eq (test_table_text (table, row, "setup"), setup->id);
      ck_assert_str_eq (test_table_text (table, row, "axle"), dw_axle_name (axle));
      ck_assert_str_eq (test_table_text (table, row, "stroke"), dw_stroke_name (stroke));
      for (size_t k = 0; k < G_N_ELEMENTS (fields); k++)
        ck_assert_msg (calc_field_is (table, row, fields[k].column, 0, fields[k].value),
                       "row %zu, %s: %s is not %.17g", row, fields[k].column,
                       test_table_text (table, row, fields[k].column), fields[k].value);
    }
}

/* All setups, both axles, compression before rebound. */
static void
expect_all (const test_table *table, const dw_project *project, const double *speeds, size_t n)
{
  size_t row = 0;
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      for (int stroke = 0; stroke < DW_N_STROKES; stroke++, row += n)
        expect_rows (table, row, project, dw_project_get_setup (project, i), (dw_axle)axle,
                     (dw_stroke)stroke, speeds, n);
  ck_assert_uint_eq (test_table_n_rows (table), row);
}

static const char *const projects[] = {
  "{demo}/club-final.dampwright",    "{demo}/early-void.dampwright",
  "{demo}/smooth-indoor.dampwright", "{data}/valid/everything.dampwright",
  "{data}/valid/bare.dampwright",
};

START_TEST (the_project_s_three_speeds_are_the_default)
{
  g_autoptr (dw_project) project = calc_load (projects[_i]);
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  test_table *table = calc_table ("force %s --format csv", projects[_i]);
  expect_all (table, project, speeds, 3);
  test_table_free (table);
}
END_TEST

START_TEST (speeds_are_sorted_and_may_be_nothing)
{
  g_autoptr (dw_project) project = calc_load (projects[0]);
  const double speeds[] = { 0.0, 0.05, 0.2, 0.2, 10.0 };
  test_table *table = calc_table ("force %s --speeds 0.2,10,0,0.05,0.2 --format csv", projects[0]);
  expect_all (table, project, speeds, 5);
  test_table_free (table);
}
END_TEST

START_TEST (even_speeds_end_at_the_fastest)
{
  g_autoptr (dw_project) project = calc_load (projects[1]);
  enum
  {
    N = 40
  };
  double speeds[N];
  for (int i = 0; i < N; i++)
    speeds[i] = 3.3 * (i + 1) / N;
  test_table *table = calc_table ("force %s --to 3.3 --count %d --format csv", projects[1], N);
  expect_all (table, project, speeds, N);
  ck_assert (calc_field_is (table, N - 1, "speed_m_s", 0, 3.3));
  test_table_free (table);
}
END_TEST

START_TEST (steps_may_be_written_as_a_range)
{
  g_autofree char *range = calc_output ("force %s --speeds 0.1:0.4:0.1 --format csv", projects[0]);
  g_autofree char *list = calc_output ("force %s --speeds 0.1,0.2,0.3,0.4 --format csv",
                                       projects[0]);
  ck_assert_str_eq (range, list);
}
END_TEST

START_TEST (setup_and_axle_choose)
{
  g_autoptr (dw_project) project = calc_load (projects[0]);
  const dw_setup *setup = dw_project_find_setup (project, "trial-1");
  const double speeds[] = { 0.3 };
  test_table *table = calc_table ("force %s --setup trial-1 --axle rear --speeds 0.3 --format csv",
                                  projects[0]);
  ck_assert_uint_eq (test_table_n_rows (table), 2);
  expect_rows (table, 0, project, setup, DW_REAR, DW_COMPRESSION, speeds, 1);
  expect_rows (table, 1, project, setup, DW_REAR, DW_REBOUND, speeds, 1);
  test_table_free (table);
}
END_TEST

START_TEST (the_columns_are_those_of_the_contract)
{
  g_autofree char *text = calc_output ("force %s --format csv", projects[0]);
  g_autofree char *none = calc_output ("force {data}/valid/empty.dampwright --format csv");
  ck_assert (g_str_has_prefix (text, header));
  ck_assert_str_eq (none, header);
}
END_TEST

/* Past the onset of a vented damper all further travel is lost. */
START_TEST (a_vented_damper_loses_travel_without_end)
{
  test_table *table = calc_table (
      "force {data}/valid/everything.dampwright --setup baseline --axle rear --speeds 0.01,2 "
      "--format csv");
  ck_assert_str_eq (test_table_text (table, 0, "void"), "0");
  ck_assert_str_eq (test_table_text (table, 0, "lost_travel_m"), "0");
  ck_assert_str_eq (test_table_text (table, 1, "void"), "1");
  ck_assert_str_eq (test_table_text (table, 1, "lost_travel_m"), "inf");
  test_table_free (table);
}
END_TEST

START_TEST (an_unknown_setup_names_those_that_exist)
{
  calc_result r = calc_run ("force %s --setup nope", projects[0]);
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_ptr_nonnull (strstr (r.err, "club-final.dampwright: "));
  ck_assert_ptr_nonnull (strstr (r.err, "\"nope\""));
  ck_assert_ptr_nonnull (strstr (r.err, "baseline, trial-1, trial-2"));
  calc_result_clear (&r);
}
END_TEST

START_TEST (a_refused_file_is_status_1_with_file_and_line)
{
  calc_result r = calc_run ("force {data}/malformed/misfit-hole.dampwright");
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_ptr_nonnull (strstr (r.err, "misfit-hole.dampwright:9: "));
  ck_assert_ptr_nonnull (strstr (r.err, "6.2 to 9.6 mm"));
  calc_result_clear (&r);
}
END_TEST

START_TEST (a_warning_does_not_stop_it)
{
  calc_result r = calc_run ("force {data}/malformed/unknown-attribute.dampwright --format csv");
  ck_assert_int_eq (r.status, 0);
  ck_assert (g_str_has_prefix (r.out, header));
  ck_assert_ptr_nonnull (strstr (r.err, ":5: warning: "));
  calc_result_clear (&r);
}
END_TEST

static const struct
{
  const char *arguments;
  const char *piece;
  const char *why;
} said[] = {
  { "{demo}/club-final.dampwright", "\nbaseline, front (As qualified)\n", "a heading a damper" },
  { "{demo}/club-final.dampwright", "\ntrial-2, rear (", "and the last one" },
  { "{demo}/club-final.dampwright", " kg/m3 at 28 degC (", "the oil at its temperature" },
  { "{demo}/club-final.dampwright", "Void: in compression from 0.", "the onset" },
  { "{data}/valid/everything.dampwright --axle rear", "the force grows no further", "vented" },
  { "{data}/valid/everything.dampwright --axle rear", "published blend rules: ", "a blend" },
  { "{data}/valid/everything.dampwright", "beyond the 600 that was checked", "Reynolds number" },
  { "{demo}/club-final.dampwright --speeds 0.3,2", "silicone thins above about 10000 1/s",
    "shear rate" },
  { "{demo}/club-final.dampwright --speeds 0.3,8", "times what its material stands", "stress" },
  { "{demo}/club-final.dampwright --speeds 0.3,8", "reached its lift limit", "stop" },
  { "{demo}/club-final.dampwright --speeds 0", "\n  compression      0  0.4", "at rest" },
  { "{data}/valid/everything.dampwright", "if the leaves slide freely", "loose bound" },
  { "{data}/valid/everything.dampwright", "if they stick together", "stuck bound" },
  { "{data}/valid/empty.dampwright", "no setups", "an empty project" },
};

START_TEST (the_table_says_what_people_need)
{
  g_autofree char *text = calc_output ("force %s", said[_i].arguments);
  ck_assert_msg (calc_says (text, said[_i].piece), "%s: no \"%s\" in\n%.1500s", said[_i].why,
                 said[_i].piece, text);
}
END_TEST

/* Points of a column stand under each other, and the unit at the column's end. */
START_TEST (the_table_is_aligned)
{
  g_autofree char *text = calc_output ("force %s --setup baseline --axle rear --speeds 0.05,0.25",
                                       projects[0]);
  const char *head = strstr (text, "  stroke ");
  ck_assert_msg (head != NULL, "%s", text);
  g_auto (GStrv) lines = g_strsplit (head, "\n", 0);
  ck_assert_uint_ge (g_strv_length (lines), 7);
  const ptrdiff_t end = strstr (lines[0], "speed") + 4 - lines[0];
  ck_assert_int_eq (lines[1][end], 's'); /* of m/s */
  ck_assert_int_eq (lines[2][end], '5'); /* of 0.05 */
  ck_assert_int_eq (lines[3][end], '5'); /* of 0.25 */
  ck_assert_int_eq (lines[2][end - 2], '.');
  ck_assert_int_eq (lines[3][end - 2], '.');
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-force");
  TCase *tc = tcase_create ("force");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, the_project_s_three_speeds_are_the_default, 0, N_ENTRIES (projects));
  tcase_add_test (tc, speeds_are_sorted_and_may_be_nothing);
  tcase_add_test (tc, even_speeds_end_at_the_fastest);
  tcase_add_test (tc, steps_may_be_written_as_a_range);
  tcase_add_test (tc, setup_and_axle_choose);
  tcase_add_test (tc, the_columns_are_those_of_the_contract);
  tcase_add_test (tc, a_vented_damper_loses_travel_without_end);
  tcase_add_test (tc, an_unknown_setup_names_those_that_exist);
  tcase_add_test (tc, a_refused_file_is_status_1_with_file_and_line);
  tcase_add_test (tc, a_warning_does_not_stop_it);
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, the_table_is_aligned);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
