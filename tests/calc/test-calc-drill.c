/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-drill.h"
#include "project/dw-project-file.h"
#include "study/dw-drill-table.h"

#define DEMO "{demo}/club-final.dampwright"
#define VOID "{demo}/early-void.dampwright"
#define ALL  "{data}/valid/everything.dampwright"

static const char *const stroke_names[DW_N_STROKES] = { "compression", "rebound" };
static const char *const speed_names[DW_N_SPEEDS] = { "low", "middle", "high" };

/* What is asked of the program, and the same of the study. */
typedef struct
{
  const char *file;
  const char *arguments;
  const char *setup;
  dw_axle axle;
  dw_drill_division division;
  int drills; /* 0 = box, 1 = table, 2 = metric */
  dw_spread_limits limits;
  const char *why;
} question;

static const question questions[] = {
  { DEMO, "", "baseline", DW_FRONT, DW_DRILL_HALVES, 0, { .hole_grade = 12 }, "as it comes" },
  { DEMO,
    "--sets kinds --tolerance H11",
    "trial-2",
    DW_REAR,
    DW_DRILL_KINDS,
    0,
    { .hole_grade = 11 },
    "open and covered holes" },
  { DEMO,
    "--drills metric --tolerance 0.02",
    "trial-1",
    DW_REAR,
    DW_DRILL_HALVES,
    2,
    { .hole_error = 0.02e-3 },
    "metric drills, an own error" },
  { VOID,
    "--tolerance H12 --sets halves",
    "bladder",
    DW_REAR,
    DW_DRILL_HALVES,
    0,
    { .hole_grade = 12 },
    "halves that are not alike" },
  { DEMO,
    "--drills table",
    "trial-2",
    DW_FRONT,
    DW_DRILL_HALVES,
    1,
    { .hole_grade = 12 },
    "number drills as well" },
  { ALL,
    "--tolerance 0",
    "trial-1",
    DW_FRONT,
    DW_DRILL_HALVES,
    0,
    { .hole_grade = 0 },
    "one hole, exact" },
  { "{data}/valid/bare.dampwright",
    "--sets kinds",
    "a",
    DW_REAR,
    DW_DRILL_KINDS,
    1,
    { .hole_grade = 12 },
    "a box without drills" },
};

/* The study of a question; the lists are owned. */
typedef struct
{
  dw_project *project;
  GArray *drills;  /* [m] */
  GArray *bottles; /* [m2/s] */
  dw_drilling study;
  dw_drill_box box;
} answer;

static void
answer_clear (answer *a)
{
  dw_project_free (a->project);
  g_array_unref (a->drills);
  g_array_unref (a->bottles);
}

static void
answer_init (answer *a, const question *q)
{
  a->project = calc_load (q->file);
  a->drills = g_array_new (FALSE, FALSE, sizeof (double));
  a->bottles = g_array_new (FALSE, FALSE, sizeof (double));
  const dw_parts *parts = dw_project_get_parts (a->project);
  size_t n = 0;
  const dw_drill_size *table = dw_drill_table (&n);
  for (guint i = 0; q->drills == 0 && i < parts->drills->len; i++)
    g_array_append_val (a->drills, g_array_index (parts->drills, dw_drill, i).diameter);
  for (size_t i = 0; q->drills != 0 && i < n; i++)
    if (q->drills == 1 || table[i].series == DW_DRILL_METRIC)
      g_array_append_val (a->drills, table[i].diameter);
  for (guint i = 0; i < parts->oils->len; i++)
    if (g_array_index (parts->oils, dw_bottle, i).oil.kind == DW_OIL_NOMINAL)
      g_array_append_val (a->bottles, g_array_index (parts->oils, dw_bottle, i).oil.viscosity);
  a->box = (dw_drill_box){ .drills = (const double *)(gpointer)a->drills->data,
                           .n_drills = (int)a->drills->len,
                           .bottles = (const double *)(gpointer)a->bottles->data,
                           .n_bottles = (int)a->bottles->len,
                           .limits = q->limits };

  const dw_setup *setup = dw_project_find_setup (a->project, q->setup);
  const dw_speeds *s = &a->project->speeds;
  const double speeds[DW_N_SPEEDS] = { s->low, s->middle, s->high };
  dw_drill_sets sets;
  ck_assert_ptr_nonnull (setup);
  dw_drill_sets_init (&sets, &setup->damper[q->axle], q->division);
  ck_assert_int_eq (
      dw_drilling_init (&a->study, &sets, a->project->conditions.oil_temperature, speeds, NULL),
      DW_OK);
}

/* NaN stands for an empty field. */
static void
expect_field (const test_table *table, size_t row, const char *column, int power, double value)
{
  const char *text = test_table_text (table, row, column);
  const bool good = isnan (value) ? *text == '\0'
                                  : calc_field_is (table, row, column, power, value);
  ck_assert_msg (good, "row %zu, %s: \"%s\" is not %.17g", row, column, text, value);
}

static void
expect_force_fields (const test_table *table, size_t row, const dw_drill_row *expected)
{
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        const char *stroke = stroke_names[s];
        const char *speed = speed_names[v];
        const struct
        {
          char *column;
          double value;
        } fields[] = {
          { g_strdup_printf ("%s_%s_n", stroke, speed),
            expected->result.figures.point[s][v].force },
          { g_strdup_printf ("%s_%s_change_percent", stroke, speed),
            expected->result.change[s][v] },
          { g_strdup_printf ("hold_%s_%s_change_percent", stroke, speed),
            expected->has_hold ? expected->hold.change[s][v] : (double)NAN },
          { g_strdup_printf ("pair_%s_%s_n", stroke, speed),
            expected->spread[s][v].pair_deviation },
        };
        for (size_t i = 0; i < G_N_ELEMENTS (fields); i++)
          {
            expect_field (table, row, fields[i].column, 0, fields[i].value);
            g_free (fields[i].column);
          }
      }
}

static void
expect_row (const test_table *table, size_t row, const question *q, const answer *a,
            const dw_drill_row *expected)
{
  const double none = (double)NAN;
  const dw_drill_mix *mix = &expected->mix;
  const dw_figures *figures = &expected->result.figures;
  const double *size = expected->result.size;
  const bool has_drill = expected->has_single && expected->single_drill > 0.0;
  const struct
  {
    const char *column;
    int power;
    double value;
  } fields[] = {
    { "set1_mm", -3, size[0] > 0.0 ? size[0] : none },
    { "set2_mm", -3, size[1] > 0.0 ? size[1] : none },
    { "pack_compression", 0, figures->pack[DW_COMPRESSION] },
    { "pack_rebound", 0, figures->pack[DW_REBOUND] },
    { "rebound_share_low", 0, figures->rebound_share[DW_LOW] },
    { "rebound_share_middle", 0, figures->rebound_share[DW_MIDDLE] },
    { "rebound_share_high", 0, figures->rebound_share[DW_HIGH] },
    { "hold_cst", -6, expected->has_hold ? expected->hold.viscosity : none },
    { "hold_bottle_cst", -6, mix->bottle >= 0 ? a->box.bottles[mix->bottle] : none },
    { "hold_other_cst", -6, mix->other >= 0 ? a->box.bottles[mix->other] : none },
    { "hold_other_share", 0, mix->other >= 0 ? mix->share : none },
    { "single_mm", -3, expected->has_single ? expected->single : none },
    { "single_drill_mm", -3, has_drill ? expected->single_drill : none },
    { "scatter_percent", 0, dw_drill_row_scatter (expected) * 100.0 },
    { "pair_percent", 0, dw_drill_row_pair (expected) * 100.0 },
    { "holes", 0, expected->n_holes },
    { "passes", 0, expected->n_passes },
  };
  ck_assert_str_eq (test_table_text (table, row, "setup"), q->setup);
  ck_assert_str_eq (test_table_text (table, row, "axle"), dw_axle_name (q->axle));
  for (size_t i = 0; i < G_N_ELEMENTS (fields); i++)
    expect_field (table, row, fields[i].column, fields[i].power, fields[i].value);
  expect_force_fields (table, row, expected);
}

/* Now, then every choice in order of size, each as the study has it. */
START_TEST (csv_is_what_the_study_says)
{
  const question *q = &questions[_i];
  answer a;
  answer_init (&a, q);
  test_table *table = calc_table ("drill %s --setup %s --axle %s %s --format csv", q->file,
                                  q->setup, dw_axle_name (q->axle), q->arguments);
  g_autofree double *first = g_new (double, (gsize)a.box.n_drills + 1);
  g_autofree double *second = g_new (double, (gsize)a.box.n_drills + 1);
  const int n_first = dw_drill_sizes (&a.study.sets, 0, a.box.drills, a.box.n_drills, first);
  const int n_second = dw_drill_sizes (&a.study.sets, 1, a.box.drills, a.box.n_drills, second);
  size_t row = 0;
  for (int i = 0; i < n_first; i++)
    for (int k = 0; k < n_second; k++)
      {
        const double size[] = { first[i], second[k] };
        dw_drill_row expected;
        if (!dw_drill_is_choice (&a.study.sets, size))
          continue;
        for (int s = 0; s < DW_DRILL_SETS; s++)
          ck_assert_msg (size[s] == 0.0 || size[s] > a.study.sets.present[s], "%s", q->why);
        ck_assert_msg (row < test_table_n_rows (table), "%s: %zu rows", q->why, row);
        ck_assert_int_eq (dw_drill_row_make (&a.study, &a.box, size, &expected, NULL), DW_OK);
        expect_row (table, row++, q, &a, &expected);
      }
  ck_assert_uint_eq (test_table_n_rows (table), row);
  ck_assert_uint_gt (row, 1);
  test_table_free (table);
  answer_clear (&a);
}
END_TEST

START_TEST (the_columns_are_those_of_the_man_page)
{
  g_autofree char *text = calc_output ("drill " DEMO " --format csv");
  char *path = test_source_path ("data/dampcalc.1");
  char *page = test_file_read (path, NULL);
  ck_assert (g_str_has_prefix (
      text, "setup,axle,set1_mm,set2_mm,compression_low_n,compression_low_change_percent,"));
  g_autofree char *section = g_strdup (strstr (page, ".SS drill FILE"));
  ck_assert_ptr_nonnull (section);
  *strstr (section, ".SS drills") = '\0';
  /* in the page "compression" stands for both strokes, "low" for the three speeds */
  g_autofree char *head = g_strndup (text, (gsize)(strchr (text, '\n') - text));
  g_auto (GStrv) names = g_strsplit (head, ",", 0);
  int n_named = 0;
  for (char **name = names; *name != NULL; name++)
    {
      if (strstr (*name, "rebound_low") != NULL || strstr (*name, "_middle") != NULL
          || strstr (*name, "_high") != NULL || strcmp (*name, "pack_rebound") == 0)
        continue;
      ck_assert_msg (strstr (section, *name) != NULL, "%s is not in the man page", *name);
      n_named++;
    }
  ck_assert_int_ge (n_named, 20);
  free (path);
  free (page);
}
END_TEST

START_TEST (both_axles_of_the_fitted_setup_are_the_default)
{
  g_autofree char *both = calc_output ("drill " DEMO " --format csv");
  g_autofree char *front = calc_output ("drill " DEMO
                                        " --setup baseline --axle front --format csv");
  g_autofree char *rear = calc_output ("drill " DEMO " --setup baseline --axle rear --format csv");
  g_autofree char *together = g_strconcat (front, strchr (rear, '\n') + 1, NULL);
  ck_assert_str_eq (both, together);
}
END_TEST

static double
number (const test_table *table, size_t row, const char *column)
{
  return g_ascii_strtod (test_table_text (table, row, column), NULL);
}

static bool
is_kept (const test_table *table, size_t row)
{
  return fabs (number (table, row, "compression_low_change_percent")) <= 20.0
         && fabs (number (table, row, "compression_middle_change_percent")) <= 20.0
         && fabs (number (table, row, "compression_high_change_percent")) <= 20.0;
}

static bool
is_packed (const test_table *table, size_t row)
{
  const double pack = number (table, row, "pack_compression");
  return pack >= 1.55 && pack <= 1.64;
}

static bool
is_little_work (const test_table *table, size_t row)
{
  return number (table, row, "holes") <= 3.0;
}

static bool
is_all (const test_table *table, size_t row)
{
  return is_kept (table, row) && is_packed (table, row) && !is_little_work (table, row);
}

static const struct
{
  const char *arguments;
  bool (*is_asked_for) (const test_table *table, size_t row);
  int n; /* 0 = some */
} filters[] = {
  { "--keep-compression 20", is_kept, 0 }, { "--pack 1.55:1.64", is_packed, 0 },
  { "--most-holes 3", is_little_work, 0 }, { "--most-holes 2", NULL, -1 },
  { "--keep-compression 0", NULL, -1 },    { "--keep-compression 20 --pack 1.55:1.64", is_all, 0 },
};

/* What is now stays; of the rest exactly those that the filter asks for, unchanged. */
START_TEST (a_filter_keeps_what_it_asks_for)
{
  test_table *all = calc_table ("drill " DEMO " --axle front --format csv");
  test_table *some = calc_table ("drill " DEMO " --axle front %s --format csv",
                                 filters[_i].arguments);
  size_t row = 1;
  ck_assert_str_eq (test_table_text (some, 0, "holes"), "0");
  for (size_t i = 1; i < test_table_n_rows (all); i++)
    if (filters[_i].is_asked_for != NULL && filters[_i].is_asked_for (all, i))
      {
        ck_assert_uint_lt (row, test_table_n_rows (some));
        ck_assert_str_eq (test_table_text (some, row, "set1_mm"),
                          test_table_text (all, i, "set1_mm"));
        ck_assert_str_eq (test_table_text (some, row, "set2_mm"),
                          test_table_text (all, i, "set2_mm"));
        ck_assert_str_eq (test_table_text (some, row, "hold_cst"),
                          test_table_text (all, i, "hold_cst"));
        row++;
      }
  ck_assert_uint_eq (test_table_n_rows (some), row);
  ck_assert_msg (filters[_i].n < 0 ? row == 1 : row > 1 && row < test_table_n_rows (all),
                 "%zu rows", row);
  test_table_free (all);
  test_table_free (some);
}
END_TEST

static const struct
{
  const char *sort;
  const char *column;
} orders[] = {
  { "size", "set1_mm" },
  { "compression", "compression_middle_change_percent" },
  { "rebound", "rebound_middle_change_percent" },
  { "pack", "pack_compression" },
  { "oil", "hold_cst" },
  { "scatter", "scatter_percent" },
  { "holes", "holes" },
  { "passes", "passes" },
};

/* Now stands first; an empty size is 0. */
START_TEST (rows_are_sorted_least_first)
{
  const char *column = orders[_i].column;
  test_table *plain = calc_table ("drill " DEMO " --axle rear --sets kinds --format csv");
  test_table *table = calc_table ("drill " DEMO " --axle rear --sets kinds --sort %s --format csv",
                                  orders[_i].sort);
  const size_t n = test_table_n_rows (table);
  double sum = 0.0;
  ck_assert_uint_eq (n, test_table_n_rows (plain));
  ck_assert_str_eq (test_table_text (table, 0, "holes"), "0");
  for (size_t i = 1; i < n; i++)
    sum += number (table, i, "rebound_high_n") - number (plain, i, "rebound_high_n");
  assert_close (sum, 0.0, 0.0, 1e-6, "the same rows in another order");
  for (size_t i = 2; i < n; i++)
    {
      const double before = fabs (number (table, i - 1, column));
      const double after = fabs (number (table, i, column));
      ck_assert_msg (before <= after, "row %zu: %g before %g", i, before, after);
      if (before == after)
        ck_assert (number (table, i - 1, "set1_mm") < number (table, i, "set1_mm")
                   || (number (table, i - 1, "set1_mm") == number (table, i, "set1_mm")
                       && number (table, i - 1, "set2_mm") < number (table, i, "set2_mm")));
    }
  test_table_free (plain);
  test_table_free (table);
}
END_TEST

#define DAMPER                                                                                     \
  "<damper axle=\"%s\"><body bore-mm=\"16\" rod-mm=\"3.5\"/>"                                      \
  "<piston thickness-mm=\"2.6\" clearance-mm=\"0.03\">%s</piston>"                                 \
  "<valve hub-diameter-mm=\"6\" outer-diameter-mm=\"10.6\" hole-circle-mm=\"8.2\">"                \
  "<shim thickness-mm=\"0.15\"/></valve><oil viscosity-cst=\"400\"/></damper>"

/* A project with one piston front and rear, and a parts box. */
static char *
write_project (const char *folder, const char *piston, const char *parts)
{
  char *path = g_build_filename (folder, "drill.dampwright", NULL);
  g_autoptr (GString) text = g_string_new (
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\" fitted=\"a\"><setup id=\"a\">");
  g_string_append_printf (text, DAMPER DAMPER "</setup><parts>%s</parts></project>", "front",
                          piston, "rear", piston, parts);
  ck_assert (g_file_set_contents (path, text->str, -1, NULL));
  return path;
}

#define ONE_HOLE     "<holes count=\"1\" diameter-mm=\"1.3\"/>"
#define COVERED_ONLY "<holes count=\"4\" diameter-mm=\"1.1\" covered=\"yes\"/>"
#define DRILLS                                                                                     \
  "<drill diameter-mm=\"1.4\"/><drill diameter-mm=\"1.2\"/><drill diameter-mm=\"1.4\"/>"

static const struct
{
  const char *piston;
  const char *parts;
  const char *arguments;
  int n; /* choices; -1 = many */
  const char *piece;
  const char *why;
} pistons[] = {
  { ONE_HOLE, DRILLS, "", 1, "Set 1: 1 hole of 1.3 mm. Set 2: no holes.", "one hole only" },
  { ONE_HOLE, DRILLS, "--sets kinds", 1, "1 choice with the drills of the parts box.", "the same" },
  { COVERED_ONLY, DRILLS, "--sets kinds", 2, "Set 1: no holes. Set 2: 4 covered holes of 1.1 mm.",
    "covered holes only" },
  { COVERED_ONLY, DRILLS, "--sets halves", 0,
    "No choice with the drills of the parts box: none is larger than the holes and leaves enough "
    "land.",
    "covered holes are in no half" },
  { ONE_HOLE, "", "", -1, "with the drills of the table, as the parts box has none.", "no drills" },
  { ONE_HOLE, "", "--drills table", -1, "choices with the drills of the table.", "all drills" },
  { ONE_HOLE, "", "--drills metric", -1, "choices with the metric drills of the table.", "metric" },
  { ONE_HOLE, "<drill diameter-mm=\"1.3\"/>", "", 0, "No choice", "no larger drill" },
  { "", DRILLS, "", 0, "Now: no holes; ", "a blank" },
  { ONE_HOLE, DRILLS, "--most-holes 1", 1, "1 choice with", "all pass the filter" },
  { ONE_HOLE, DRILLS, "--keep-compression 0.1", 0,
    "0 of 1 choices with the drills of the parts box "
    "are as asked.",
    "none passes" },
};

START_TEST (any_piston_has_its_choices)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, pistons[_i].piston, pistons[_i].parts);
  g_autofree char *text = calc_output ("drill %s --axle rear %s", path, pistons[_i].arguments);
  test_table *table = calc_table ("drill %s --axle rear %s --format csv", path,
                                  pistons[_i].arguments);
  const size_t n = test_table_n_rows (table);
  ck_assert_msg (calc_says (text, pistons[_i].piece), "%s: no \"%s\" in\n%.1500s", pistons[_i].why,
                 pistons[_i].piece, text);
  ck_assert_msg (pistons[_i].n < 0 ? n > 20 : n == (size_t)pistons[_i].n + 1, "%s: %zu rows",
                 pistons[_i].why, n);
  ck_assert (calc_says (text, "Drilling cannot be undone: wear eye protection"));
  test_table_free (table);
  calc_remove_folder (folder);
}
END_TEST

static const struct
{
  const char *arguments;
  const char *piece;
  const char *why;
} said[] = {
  { DEMO, "\nbaseline, front (As qualified)\n", "a heading an axle" },
  { DEMO, "\nbaseline, rear (As qualified)\n", "the other one" },
  { DEMO, "Now: 6 holes of 1.4 mm, 4 covered holes of 1.1 mm; oil of 400 cSt at 28 degC.",
    "what is now" },
  { DEMO, "At 0.05, 0.2 and 1 m/s: compression ", "its forces" },
  { DEMO, "They are alike: the smaller size stands in set 1.", "halves" },
  { DEMO, "\n -      1.45   -5.9 ", "a row: as it is, a size, a change" },
  { DEMO, "  400 + 57 % 450  ", "two bottles" },
  { DEMO " --axle rear", "  400             ", "one bottle" },
  { DEMO, ", drilled to H12.", "the tolerance" },
  { DEMO " --tolerance 0.03", ", drilled to +-0.03 mm.", "an own one" },
  { DEMO " --sets kinds", "Set 1: 6 holes of 1.4 mm. Set 2: 4 covered holes of 1.1 mm.", "kinds" },
  { DEMO " --most-holes 4", "6 of 27 choices with the drills of the parts box are as asked.",
    "a filter" },
  { ALL " --setup trial-1 --axle rear", "; oil like silicone of ", "a blend" },
};

START_TEST (the_table_says_what_people_need)
{
  g_autofree char *text = calc_output ("drill %s", said[_i].arguments);
  ck_assert_msg (calc_says (text, said[_i].piece), "%s: no \"%s\" in\n%.1500s", said[_i].why,
                 said[_i].piece, text);
}
END_TEST

START_TEST (an_unknown_setup_names_those_that_exist)
{
  calc_result r = calc_run ("drill " DEMO " --setup nope --axle front");
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_ptr_nonnull (strstr (r.err, "\"nope\", the project has baseline, trial-1, trial-2"));
  calc_result_clear (&r);
}
END_TEST

START_TEST (without_a_fitted_setup_one_has_to_be_named)
{
  calc_result r = calc_run ("drill {data}/valid/bare.dampwright");
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_ptr_nonnull (strstr (r.err, "bare.dampwright: no setup is fitted; --setup"));
  calc_result_clear (&r);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-drill");
  TCase *tc = tcase_create ("drill");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_study_says, 0, N_ENTRIES (questions));
  tcase_add_test (tc, the_columns_are_those_of_the_man_page);
  tcase_add_test (tc, both_axles_of_the_fitted_setup_are_the_default);
  tcase_add_loop_test (tc, a_filter_keeps_what_it_asks_for, 0, N_ENTRIES (filters));
  tcase_add_loop_test (tc, rows_are_sorted_least_first, 0, N_ENTRIES (orders));
  tcase_add_loop_test (tc, any_piston_has_its_choices, 0, N_ENTRIES (pistons));
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, an_unknown_setup_names_those_that_exist);
  tcase_add_test (tc, without_a_fitted_setup_one_has_to_be_named);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
