/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "project/dw-project-file.h"
#include "study/dw-compare.h"

#define DEMO "{demo}/club-final.dampwright"

/* A row of the csv against the values worked out here. */
static void
expect_row (const test_table *table, size_t row, const char *axle, const char *stroke,
            const char *quantity, double a, double b)
{
  const char *change = test_table_text (table, row, "change_percent");
  ck_assert_str_eq (test_table_text (table, row, "axle"), axle);
  ck_assert_str_eq (test_table_text (table, row, "stroke"), stroke);
  ck_assert_str_eq (test_table_text (table, row, "quantity"), quantity);
  ck_assert_msg (calc_field_is (table, row, "a", 0, a) && calc_field_is (table, row, "b", 0, b),
                 "row %zu: %s, %s", row, test_table_text (table, row, "a"),
                 test_table_text (table, row, "b"));
  assert_close (g_ascii_strtod (change, NULL), (b / a - 1.0) * 100.0, 1e-9, 1e-9, "rounding only");
}

START_TEST (csv_has_every_figure_of_both)
{
  g_autofree char *path = calc_path (DEMO);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_load (path, findings, NULL);
  ck_assert_ptr_nonnull (project);
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  const dw_setup *a = dw_project_find_setup (project, "baseline");
  const dw_setup *b = dw_project_find_setup (project, "trial-2");
  test_table *table = calc_table ("compare " DEMO " baseline trial-2 --format csv");
  size_t row = 0;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const char *name = dw_axle_name ((dw_axle)axle);
      dw_comparison r;
      ck_assert_int_eq (dw_compare_figures (&a->damper[axle], &b->damper[axle],
                                            project->conditions.oil_temperature, speeds, &r, NULL),
                        DW_OK);
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int i = 0; i < DW_N_SPEEDS; i++)
          {
            ck_assert (calc_field_is (table, row, "speed_m_s", 0, speeds[i]));
            expect_row (table, row++, name, dw_stroke_name ((dw_stroke)s), "force",
                        r.a.point[s][i].force, r.b.point[s][i].force);
          }
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int i = 0; i < DW_N_SPEEDS; i++)
          expect_row (table, row++, name, dw_stroke_name ((dw_stroke)s), "c", r.a.c[s][i],
                      r.b.c[s][i]);
      for (int i = 0; i < DW_N_SPEEDS; i++)
        expect_row (table, row++, name, "", "rebound_share", r.a.rebound_share[i],
                    r.b.rebound_share[i]);
      for (int s = 0; s < DW_N_STROKES; s++)
        {
          ck_assert_str_eq (test_table_text (table, row, "speed_m_s"), "");
          expect_row (table, row++, name, dw_stroke_name ((dw_stroke)s), "pack", r.a.pack[s],
                      r.b.pack[s]);
        }
    }
  ck_assert_uint_eq (test_table_n_rows (table), row);
  test_table_free (table);
}
END_TEST

START_TEST (the_columns_are_those_of_the_man_page)
{
  g_autofree char *text = calc_output ("compare " DEMO " baseline trial-2 --format csv");
  ck_assert (g_str_has_prefix (text, "axle,stroke,speed_m_s,quantity,unit,a,b,change_percent\n"));
}
END_TEST

static const struct
{
  const char *ids;
  const char *piece;
  const char *why;
} said[] = {
  { "baseline trial-1",
    "\nFront: nothing differs.\n  Result: compression the same; rebound the same",
    "an axle that is alike" },
  { "baseline trial-1", "\nRear: 1 thing differs.\n  shim 1: thickness ", "one change" },
  { "baseline trial-1", "Result: compression the same; rebound the same at low speed",
    "the strokes apart" },
  { "baseline trial-1", " % softer at high speed", "softer" },
  { "trial-1 baseline", " % firmer at high speed", "firmer" },
  { "baseline trial-2",
    "\nFront: 2 things differ: this comparison cannot tell which did it.\n"
    "  holes: ",
    "two changes" },
  { "baseline trial-2", "\n  oil ", "the oil" },
  { "baseline baseline", "\nRear: nothing differs.\n", "a setup with itself" },
  { "baseline trial-2", "\na: baseline (As qualified)\nb: trial-2 (Front drilled, thicker oil)\n",
    "which is which" },
};

START_TEST (the_table_says_what_people_need)
{
  g_autofree char *text = calc_output ("compare " DEMO " %s", said[_i].ids);
  ck_assert_msg (calc_says (text, said[_i].piece), "%s: no \"%s\" in\n%s", said[_i].why,
                 said[_i].piece, text);
}
END_TEST

/* Changes that do not act on the force: a spring and an oil differ, so the oil did it. */
START_TEST (what_does_not_act_is_told_apart)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "spring.dampwright", NULL);
  g_autofree char *demo = calc_path (DEMO);
  g_autofree char *text = NULL;
  ck_assert (g_file_get_contents (demo, &text, NULL, NULL));
  g_autoptr (GString) file = g_string_new (text);
  char *trial = strstr (file->str, "<setup id=\"trial-1\"");
  ck_assert_ptr_nonnull (trial);
  char *rate = strstr (trial, "rate-n-per-mm=\"0.");
  ck_assert_ptr_nonnull (rate);
  rate[strlen ("rate-n-per-mm=\"0.")] = '9';
  ck_assert (g_file_set_contents (path, file->str, -1, NULL));

  g_autofree char *one = calc_output ("compare %s baseline trial-1", path);
  ck_assert (calc_says (one, "Front: 1 thing differs, and it does not act on the damping force."));
  g_autofree char *more = calc_output ("compare %s trial-2 trial-1", path);
  ck_assert (calc_says (more, "Front: 3 things differ, 2 of them act on the damping force: this "
                              "comparison cannot tell which did it."));
  ck_assert_ptr_nonnull (strstr (more, "(does not act on the damping force)"));
  calc_remove_folder (folder);
}
END_TEST

START_TEST (an_unknown_setup_names_those_that_exist)
{
  static const char *const ids[] = { "nope trial-1", "baseline nope" };
  for (size_t i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      calc_result r = calc_run ("compare " DEMO " %s", ids[i]);
      ck_assert_int_eq (r.status, 1);
      ck_assert_str_eq (r.out, "");
      ck_assert_ptr_nonnull (strstr (r.err, "\"nope\", the project has baseline, trial-1"));
      calc_result_clear (&r);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-compare");
  TCase *tc = tcase_create ("compare");
  tcase_set_timeout (tc, 60);
  tcase_add_test (tc, csv_has_every_figure_of_both);
  tcase_add_test (tc, the_columns_are_those_of_the_man_page);
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, what_does_not_act_is_told_apart);
  tcase_add_test (tc, an_unknown_setup_names_those_that_exist);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
