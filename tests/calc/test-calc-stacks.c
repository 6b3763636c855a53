/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-units.h"
#include "project/dw-project-file.h"
#include "study/dw-ladder.h"

#define DEMO "{demo}/club-final.dampwright"

/* What is asked of the program, and the same of the study. */
typedef struct
{
  const char *arguments;
  const char *setup;
  dw_axle axle;
  int most_leaves;
  int dampers;
  const char *why;
} question;

static const question questions[] = {
  { "", "baseline", DW_FRONT, 3, 2, "as it comes" },
  { "--most-leaves 1", "baseline", DW_REAR, 1, 2, "single leaves" },
  { "--most-leaves 5 --dampers 1", "trial-2", DW_FRONT, 5, 1, "tall ones, one damper" },
  { "--dampers 2", "trial-1", DW_REAR, 3, 2, "a trial with another shim than the car" },
};

static dw_ladder *
ladder_of (const dw_project *project, const question *q)
{
  const dw_speeds *s = &project->speeds;
  const double speeds[DW_N_SPEEDS] = { s->low, s->middle, s->high };
  const GArray *shims = dw_project_get_parts (project)->shims;
  dw_ladder *ladder = NULL;
  dw_ladder_options o = dw_ladder_options_defaults ((const dw_shim *)(gpointer)shims->data,
                                                    (int)shims->len,
                                                    project->conditions.oil_temperature, speeds);
  o.fitted = &dw_project_get_fitted (project)->damper[q->axle].valve;
  o.most_leaves = q->most_leaves;
  o.dampers = q->dampers;
  ck_assert_int_eq (dw_ladder_make (&dw_project_find_setup (project, q->setup)->damper[q->axle], &o,
                                    NULL, NULL, &ladder, NULL),
                    DW_OK);
  return ladder;
}

/* "2x0.10+1x0.15" read back and compared leaf by leaf. */
static void
expect_stack (const char *text, const dw_ladder_rung *rung)
{
  g_auto (GStrv) words = g_strsplit (text, "+", 0);
  ck_assert_int_eq (g_strv_length (words), (guint)rung->n_shims);
  for (int i = 0; i < rung->n_shims; i++)
    {
      char *end = NULL;
      ck_assert_int_eq (g_ascii_strtoull (words[i], &end, 10), (guint64)rung->shims[i].count);
      ck_assert (*end == 'x' && strchr (end, '.') != NULL);
      assert_close (g_ascii_strtod (end + 1, NULL) * DW_MM, rung->shims[i].thickness, 1e-9, 0.0,
                    text);
    }
}

static void
expect_field (const test_table *table, size_t row, const char *column, int power, double value)
{
  ck_assert_msg (calc_field_is (table, row, column, power, value),
                 "row %zu, %s: \"%s\" is not %.17g", row, column,
                 test_table_text (table, row, column), value);
}

static void
expect_forces (const test_table *table, size_t row, const char *name, const double *forces)
{
  static const char *const speed_names[DW_N_SPEEDS] = { "low", "middle", "high" };
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      g_autofree char *column = g_strdup_printf ("%s_%s_n", name, speed_names[v]);
      expect_field (table, row, column, 0, forces[v]);
    }
}

static void
expect_row (const test_table *table, size_t row, const question *q, const dw_ladder *ladder)
{
  static const char *const verdicts[] = { "shim", "plain", "holes" };
  const dw_ladder_rung *rung = &ladder->rungs[row];
  const dw_figures *f = &rung->figures;
  double force[DW_N_SPEEDS];
  const struct
  {
    const char *column;
    int power;
    double value;
  } fields[] = {
    { "rung", 0, (double)row + 1.0 },
    { "group", 0, rung->group + 1 },
    { "fitted", 0, rung->is_fitted },
    { "own", 0, rung->is_own },
    { "leaves", 0, rung->leaves },
    { "stiffness_n_m", 0, rung->stiffness },
    { "single_loose_mm", -3, rung->single[DW_LEAVES_SLIDE] },
    { "single_stuck_mm", -3, rung->single[DW_LEAVES_STICK] },
    { "added_mm", -3, rung->added },
    { "rebound_share_low", 0, f->rebound_share[DW_LOW] },
    { "rebound_share_middle", 0, f->rebound_share[DW_MIDDLE] },
    { "rebound_share_high", 0, f->rebound_share[DW_HIGH] },
    { "lift_high_mm", -3, f->point[DW_REBOUND][DW_HIGH].lift_at_holes },
    { "at_stop", 0, rung->at_stop },
  };
  for (int v = 0; v < DW_N_SPEEDS; v++)
    force[v] = f->point[DW_REBOUND][v].force;
  ck_assert_str_eq (test_table_text (table, row, "setup"), q->setup);
  ck_assert_str_eq (test_table_text (table, row, "axle"), dw_axle_name (q->axle));
  ck_assert_str_eq (test_table_text (table, row, "stroke"), "rebound");
  ck_assert_str_eq (test_table_text (table, row, "verdict"), verdicts[rung->verdict]);
  expect_stack (test_table_text (table, row, "stack"), rung);
  for (size_t i = 0; i < G_N_ELEMENTS (fields); i++)
    expect_field (table, row, fields[i].column, fields[i].power, fields[i].value);
  expect_forces (table, row, "force", force);
  expect_forces (table, row, "loose", rung->force[DW_LEAVES_SLIDE]);
  expect_forces (table, row, "stuck", rung->force[DW_LEAVES_STICK]);
  expect_forces (table, row, "habit", rung->habit);
  expect_forces (table, row, "plain", ladder->plain);
  expect_forces (table, row, "soft", ladder->soft);
  expect_forces (table, row, "holes", ladder->holes);
}

START_TEST (csv_is_what_the_study_says)
{
  const question *q = &questions[_i];
  dw_project *project = calc_load (DEMO);
  dw_ladder *ladder = ladder_of (project, q);
  test_table *table = calc_table ("stacks " DEMO " --setup %s --axle %s %s --format csv", q->setup,
                                  dw_axle_name (q->axle), q->arguments);
  ck_assert_msg (test_table_n_rows (table) == ladder->n, "%s: %zu rows, not %zu", q->why,
                 test_table_n_rows (table), ladder->n);
  for (size_t row = 0; row < ladder->n; row++)
    expect_row (table, row, q, ladder);
  test_table_free (table);
  dw_ladder_free (ladder);
  dw_project_free (project);
}
END_TEST

START_TEST (both_axles_of_the_fitted_setup_are_the_default)
{
  g_autofree char *both = calc_output ("stacks " DEMO " --format csv");
  g_autofree char *front = calc_output ("stacks " DEMO
                                        " --setup baseline --axle front --format csv");
  g_autofree char *rear = calc_output ("stacks " DEMO " --setup baseline --axle rear --format csv");
  g_autofree char *together = g_strconcat (front, strchr (rear, '\n') + 1, NULL);
  ck_assert_str_eq (both, together);
}
END_TEST

/* "plain" stands for plain, soft and holes, "low" for the three speeds. */
START_TEST (the_columns_are_those_of_the_man_page)
{
  g_autofree char *text = calc_output ("stacks " DEMO " --format csv");
  char *path = test_source_path ("data/dampcalc.1");
  char *page = test_file_read (path, NULL);
  ck_assert (g_str_has_prefix (text, "setup,axle,stroke,rung,group,verdict,fitted,own,leaves,stack,"
                                     "stiffness_n_m,single_loose_mm,single_stuck_mm,added_mm,"
                                     "force_low_n,force_middle_n,force_high_n,loose_low_n,"));
  g_autofree char *section = g_strdup (strstr (page, ".SS stacks FILE"));
  ck_assert_ptr_nonnull (section);
  *strstr (section + 1, ".SS ") = '\0';
  g_autofree char *head = g_strndup (text, (gsize)(strchr (text, '\n') - text));
  g_auto (GStrv) names = g_strsplit (head, ",", 0);
  for (char **name = names; *name != NULL; name++)
    if (strstr (*name, "_middle") == NULL && !g_str_has_suffix (*name, "_high_n")
        && strcmp (*name, "rebound_share_high") != 0)
      ck_assert_msg (strstr (section, *name) != NULL, "%s is not in the man page", *name);
  free (path);
  free (page);
}
END_TEST

#define DAMPER                                                                                     \
  "<damper axle=\"%s\"><body bore-mm=\"16\" rod-mm=\"3.5\"/>"                                      \
  "<piston thickness-mm=\"2.6\" clearance-mm=\"0.03\"><holes count=\"6\" diameter-mm=\"1.3\"/>"    \
  "%s</piston><valve opens-on=\"%s\" hub-diameter-mm=\"6\" outer-diameter-mm=\"10.6\" "            \
  "hole-circle-mm=\"8.2\" leaf-coupling=\"%s\">%s</valve><oil viscosity-cst=\"400\"/></damper>"
#define COVERED "<holes count=\"4\" diameter-mm=\"1.1\" covered=\"yes\"/>"
#define SHIM    "<shim thickness-mm=\"0.15\"/>"

/* A project with one kind of piston front and plain ones or the same rear. */
static char *
write_project (const char *folder, const char *rear_holes, const char *opens_on,
               const char *coupling, const char *stack, const char *parts, const char *fitted)
{
  char *path = g_build_filename (folder, "stacks.dampwright", NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  g_string_append_printf (
      text,
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\"%s><setup id=\"a\">" DAMPER DAMPER
      "</setup><parts>%s</parts></project>",
      fitted, "front", COVERED, opens_on, coupling, stack, "rear", rear_holes, opens_on, coupling,
      stack, parts);
  ck_assert (g_file_set_contents (path, text->str, -1, NULL));
  return path;
}

static const struct
{
  const char *rear, *opens_on, *coupling, *stack, *parts, *fitted;
  const char *piece;
  const char *why;
} said[] = {
  { COVERED, "rebound", "0", SHIM, "<shim thickness-mm=\"0.1\" count=\"4\"/>", " fitted=\"a\"",
    "5 stacks of up to 3 leaves for each of two dampers", "0.15 once, 0.10 twice" },
  { COVERED, "rebound", "0", SHIM, "<shim thickness-mm=\"0.1\" count=\"4\"/>", " fitted=\"a\"",
    "Adding thicknesses, 2x0.10 mm would be 0.20 mm: ", "the habit" },
  { COVERED, "rebound", "0", SHIM, "<shim thickness-mm=\"0.1\" count=\"4\"/>", " fitted=\"a\"",
    "It bends as 0.126 mm while leaves slide, ", "and the bending" },
  { COVERED, "rebound", "0", SHIM, "", " fitted=\"a\"", "1 stack of up to 3 leaves",
    "nothing but what is fitted" },
  { COVERED, "compression", "0", SHIM, "", " fitted=\"a\"",
    "Force in compression in N at 0.05, 0.2", "the other stroke" },
  { COVERED, "rebound", "0.25", SHIM, "<shim thickness-mm=\"0.1\" count=\"4\"/>", " fitted=\"a\"",
    " force  force  force  slide  slide  slide  stuck  stuck  stuck ", "neither of the bounds" },
  { COVERED, "rebound", "0.25", SHIM, "", " fitted=\"a\"", "force: by the leaf coupling, 0.25.",
    "which one it is" },
  { COVERED, "rebound", "1", SHIM, "", " fitted=\"a\"", " one  slide  slide  slide  stuck  stuck ",
    "one of them" },
  { "", "rebound", "0", SHIM, "", " fitted=\"a\"",
    "No ladder: no hole is covered: a stack would do nothing.", "a plain rear" },
  { COVERED, "rebound", "0", SHIM,
    "<shim thickness-mm=\"0.1\" count=\"2\" modulus-gpa=\"200\" poisson=\"0.3\"/>", " fitted=\"a\"",
    " 0.15(4 GPa)+0.10(200 GPa) ", "two materials" },
  { COVERED, "rebound", "0", "", "<shim thickness-mm=\"0.125\" count=\"2\"/>", " fitted=\"a\"",
    " 0.125 ", "no shim yet" },
};

START_TEST (the_table_says_what_people_need)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, said[_i].rear, said[_i].opens_on,
                                         said[_i].coupling, said[_i].stack, said[_i].parts,
                                         said[_i].fitted);
  g_autofree char *text = calc_output ("stacks %s", path);
  ck_assert_msg (calc_says (text, said[_i].piece) || strstr (text, said[_i].piece) != NULL,
                 "%s: no \"%s\" in\n%.1500s", said[_i].why, said[_i].piece, text);
  calc_remove_folder (folder);
}
END_TEST

/* Lines of the demo, as they are read: brackets, what is fitted, both ends. */
START_TEST (the_ladder_is_drawn_with_brackets_and_ends)
{
  g_autofree char *text = calc_output ("stacks " DEMO " --axle rear --setup trial-1");
  static const char *const pieces[] = {
    "\n   no shim   ",
    "\n   holes alone   ",
    "\n   0.10   ",
    "\n/  3x0.10   ",
    "\n\\  0.15   ",
    "\n   plain piston  ",
    "  own, stop\n",
    "  fitted\n",
    "  plain\n",
    "\n   0.25+2x0.20 ",
    "\ntrial-1, rear (Rear quicker on rebound)\n",
  };
  const char *at = text;
  for (size_t i = 0; i < G_N_ELEMENTS (pieces); i++)
    ck_assert_msg (strstr (text, pieces[i]) != NULL, "no \"%s\" in\n%s", pieces[i], text);
  for (int i = 0; i < 4; i++)
    {
      static const char *const order[] = { "no shim", "holes alone", "\n   0.10 ", "plain piston" };
      at = strstr (at, order[i]);
      ck_assert_msg (at != NULL, "%s is not in its place", order[i]);
    }
  g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
  for (char **line = lines; *line != NULL; line++)
    ck_assert_msg (strlen (*line) <= 100, "%s", *line);
}
END_TEST

/* The trial's leaf is neither in the car nor in the box. */
START_TEST (a_trial_that_nobody_can_build_is_told)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, COVERED, "rebound", "0", SHIM, "", "");
  g_autofree char *text = NULL;
  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) parts = g_strsplit (text, "</setup>", 2);
  g_auto (GStrv) setup = g_strsplit (strstr (parts[0], "<setup"), SHIM, 0);
  g_autofree char *trial = g_strjoinv ("<shim thickness-mm=\"0.3\" count=\"2\"/>", setup);
  g_autoptr (GString) all = g_string_new (text);
  g_string_replace (all, "version=\"1\"", "version=\"1\" fitted=\"a\"", 1);
  g_string_replace (all, "</setup>", "</setup>@", 1);
  g_string_replace (all, "@", trial, 1);
  g_string_replace (all, "<parts>", "</setup><parts>", 1);
  char *second = strstr (strstr (all->str, "</setup>"), "id=\"a\"");
  second[4] = 'b';
  ck_assert (g_file_set_contents (path, all->str, -1, NULL));
  g_autofree char *said_text = calc_output ("stacks %s --setup b", path);
  ck_assert_msg (
      calc_says (said_text,
                 "This setup's own stack, 2x0.30 mm, cannot be built of what is at hand."),
      "%s", said_text);
  ck_assert (strstr (said_text, "  fitted") != NULL && strstr (said_text, "  own") == NULL);
  calc_remove_folder (folder);
}
END_TEST

static const struct
{
  const char *arguments;
  const char *piece;
} refusals[] = {
  { "{demo}/smooth-indoor.dampwright", "no hole is covered" },
  { DEMO " --setup nope", "\"nope\", the project has baseline, trial-1, trial-2" },
  { "{data}/valid/bare.dampwright", "no setup is fitted; --setup" },
};

START_TEST (what_cannot_be_stacked_is_status_1)
{
  calc_result r = calc_run ("stacks %s", refusals[_i].arguments);
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_msg (strstr (r.err, refusals[_i].piece) != NULL, "%s", r.err);
  calc_result_clear (&r);
}
END_TEST

/* Nothing is in the car: the setup's own leaves are at hand, and nothing is called fitted. */
START_TEST (without_a_fitted_setup_none_is_marked)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, COVERED, "rebound", "0", SHIM, "", "");
  test_table *table = calc_table ("stacks %s --setup a --axle rear --format csv", path);
  ck_assert_uint_eq (test_table_n_rows (table), 1);
  ck_assert_str_eq (test_table_text (table, 0, "fitted"), "0");
  ck_assert_str_eq (test_table_text (table, 0, "own"), "1");
  test_table_free (table);
  calc_remove_folder (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-stacks");
  TCase *tc = tcase_create ("stacks");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_study_says, 0, N_ENTRIES (questions));
  tcase_add_test (tc, both_axles_of_the_fitted_setup_are_the_default);
  tcase_add_test (tc, the_columns_are_those_of_the_man_page);
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, the_ladder_is_drawn_with_brackets_and_ends);
  tcase_add_test (tc, a_trial_that_nobody_can_build_is_told);
  tcase_add_loop_test (tc, what_cannot_be_stacked_is_status_1, 0, N_ENTRIES (refusals));
  tcase_add_test (tc, without_a_fitted_setup_none_is_marked);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
