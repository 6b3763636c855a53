/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-units.h"
#include "project/dw-match-job.h"

#define DEMO "{demo}/club-final.dampwright"

/* What is asked of the program, and the same of the job. */
typedef struct
{
  const char *arguments;
  const char *setup;
  const char *like; /* NULL = the same */
  dw_axle axle;
  bool keeps[DW_N_STROKES];
  double change[DW_N_STROKES][DW_N_SPEEDS]; /* [1] 0 = none */
  const char *use;                          /* "ocsbmpt" as below; NULL = as it comes */
  int most_leaves;
  bool is_fair;
  const char *why;
} question;

static const question questions[] = {
  { "", "baseline", NULL, DW_FRONT, { true, true }, { { 0 } }, NULL, 3, false, "as it comes" },
  { "--keep compression --change rebound:-10",
    "baseline",
    NULL,
    DW_FRONT,
    { true, false },
    { { 0 }, { -0.1, -0.1, -0.1 } },
    NULL,
    3,
    false,
    "rebound goes down" },
  { "--keep rebound --change compression-high:+12.5",
    "trial-1",
    NULL,
    DW_REAR,
    { false, true },
    { { 0, 0, 0.125 } },
    NULL,
    3,
    false,
    "one force of a free stroke" },
  { "--like trial-1 --use stack,oil,blend",
    "baseline",
    "trial-1",
    DW_REAR,
    { true, true },
    { { 0 } },
    "sbm",
    3,
    false,
    "another setup's forces, blends" },
  { "--use open,oil,temperature --temperatures 20:24 --keep compression",
    "trial-2",
    NULL,
    DW_FRONT,
    { true, false },
    { { 0 } },
    "obt",
    3,
    false,
    "another temperature" },
  { "--use covered,stack,piston --most-leaves 1",
    "baseline",
    NULL,
    DW_REAR,
    { true, true },
    { { 0 } },
    "csp",
    1,
    false,
    "another piston" },
  { "--fair", "baseline", NULL, DW_FRONT, { true, false }, { { 0 } }, NULL, 3, true, "fair" },
};

static dw_match_question
question_of (const dw_project *project, const question *q)
{
  static const char letters[] = "ocsbmpt";
  const dw_setup *setup = dw_project_find_setup (project, q->setup);
  dw_match_question out = q->is_fair ? dw_match_question_fair (project, setup, q->axle)
                                     : dw_match_question_defaults (project, setup, q->axle);
  if (q->like != NULL)
    out.wish = dw_match_question_defaults (project, dw_project_find_setup (project, q->like),
                                           q->axle)
                   .wish;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        out.wish.target[s][v].is_free = !q->keeps[s] && q->change[s][v] == 0.0;
        out.wish.target[s][v].force *= 1.0 + q->change[s][v];
      }
  for (int i = 0; q->use != NULL && i < DW_N_LEVERS; i++)
    out.allowed[i] = strchr (q->use, letters[i]) != NULL;
  if (out.allowed[DW_LEVER_TEMPERATURE])
    {
      out.lowest_temperature = 20.0;
      out.highest_temperature = 24.0;
    }
  out.most_leaves = q->most_leaves;
  return out;
}

static void
expect_field (const test_table *table, size_t row, const char *column, int power, double value)
{
  ck_assert_msg (isnan (value) ? *test_table_text (table, row, column) == '\0'
                               : calc_field_is (table, row, column, power, value),
                 "row %zu, %s: \"%s\" is not %.17g", row, column,
                 test_table_text (table, row, column), value);
}

static void
expect_forces (const test_table *table, size_t row, const dw_match_candidate *c)
{
  static const char *const speeds[DW_N_SPEEDS] = { "low", "middle", "high" };
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        const char *stroke = dw_stroke_name ((dw_stroke)s);
        g_autofree char *miss = g_strdup_printf ("miss_%s_%s", stroke, speeds[v]);
        g_autofree char *force = g_strdup_printf ("force_%s_%s_n", stroke, speeds[v]);
        expect_field (table, row, miss, 0, c->miss[s][v]);
        expect_field (table, row, force, 0, c->force[s][v]);
      }
}

/* What is done, as a damper that is built from the row's own words gives the row's forces. */
static void
expect_build (const test_table *table, size_t row, dw_match_job *job, const dw_match_build *build,
              const dw_project *project)
{
  const dw_match_grids *grids = dw_match_job_get_grids (job);
  const dw_match_oil *oil = dw_match_grids_oil (grids, build);
  const dw_match_grid *grid = dw_match_grids_get (grids, build->grid);
  const char *piston = test_table_text (table, row, "piston");
  double size[DW_DRILL_SETS];
  dw_damper damper;
  double temperature;
  ck_assert (dw_match_grids_build (grids, build, &damper, &temperature));
  dw_match_grids_sizes (grids, build, size);
  expect_field (table, row, "open_mm", -3, size[0] > 0.0 ? size[0] : (double)NAN);
  expect_field (table, row, "covered_mm", -3, size[1] > 0.0 ? size[1] : (double)NAN);
  expect_field (table, row, "oil_c", 0, temperature);
  expect_field (table, row, "oil_viscosity_cst", -6,
                oil != NULL ? oil->viscosity : damper.oil.viscosity);
  expect_field (table, row, "bottle", 0, oil != NULL ? oil->bottle + 1.0 : (double)NAN);
  expect_field (table, row, "other_bottle", 0,
                oil != NULL && oil->other >= 0 ? oil->other + 1.0 : (double)NAN);
  expect_field (table, row, "share", 0, oil != NULL && oil->other >= 0 ? oil->share : (double)NAN);
  ck_assert_str_eq (test_table_text (table, row, "oil"), oil == NULL       ? ""
                                                         : oil->other >= 0 ? "blend"
                                                                           : "bottle");
  ck_assert_str_eq (piston, grid->piston < 0
                                ? ""
                                : g_array_index (dw_project_get_parts (project)->pistons,
                                                 dw_spare_piston, grid->piston)
                                      .name);
  ck_assert ((*test_table_text (table, row, "stack") != '\0')
             == (dw_match_grids_stack (grids, build) >= 0));
}

START_TEST (csv_is_what_the_job_says)
{
  const question *q = &questions[_i];
  dw_project *project = calc_load (DEMO);
  const dw_match_question asked = question_of (project, q);
  dw_match_job *job = dw_match_job_new (dw_project_get_parts (project), &asked, NULL);
  dw_match_found found;
  ck_assert (dw_match_job_run (job, 1, NULL, &found, NULL));
  test_table *table = calc_table ("match " DEMO " --setup %s --axle %s %s --format csv", q->setup,
                                  dw_axle_name (q->axle), q->arguments);
  ck_assert_msg (test_table_n_rows (table) == (size_t)found.n && found.n > 1, "%s", q->why);
  for (int i = 0; i < found.n; i++)
    {
      const dw_match_candidate *c = &found.best[i];
      const size_t row = (size_t)i;
      ck_assert_str_eq (test_table_text (table, row, "setup"), q->setup);
      ck_assert_str_eq (test_table_text (table, row, "axle"), dw_axle_name (q->axle));
      expect_field (table, row, "place", 0, i + 1.0);
      expect_field (table, row, "worst_miss", 0, c->worst);
      expect_field (table, row, "rms_miss", 0, c->rms);
      expect_field (table, row, "changes", 0, c->levers);
      expect_field (table, row, "for_good", 0, c->for_good);
      expect_forces (table, row, c);
      expect_build (table, row, job, &c->build, project);
    }
  test_table_free (table);
  dw_match_job_free (job);
  dw_project_free (project);
}
END_TEST

START_TEST (any_number_of_threads_prints_the_same)
{
  static const char *const formats[] = { "table", "csv" };
  for (size_t i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autofree char *one = calc_output ("match " DEMO " --axle rear --change rebound:-20 --use "
                                          "open,covered,stack,oil,blend --threads 1 --format %s",
                                          formats[i]);
      for (int n = 2; n <= 4; n++)
        {
          g_autofree char *other = calc_output (
              "match " DEMO " --axle rear --change rebound:-20 --use "
              "open,covered,stack,oil,blend --threads %d --format %s",
              n, formats[i]);
          ck_assert_str_eq (one, other);
        }
    }
}
END_TEST

/* "compression_low" stands for both strokes and three speeds. */
START_TEST (the_columns_are_those_of_the_man_page)
{
  g_autofree char *text = calc_output ("match " DEMO " --axle front --format csv");
  char *path = test_source_path ("data/dampcalc.1");
  char *page = test_file_read (path, NULL);
  ck_assert (g_str_has_prefix (text, "setup,axle,place,worst_miss,rms_miss,miss_compression_low,"));
  g_autofree char *section = g_strdup (strstr (page, ".SS match FILE"));
  ck_assert_ptr_nonnull (section);
  *strstr (section + 1, ".SS ") = '\0';
  g_autofree char *head = g_strndup (text, (gsize)(strchr (text, '\n') - text));
  g_auto (GStrv) names = g_strsplit (head, ",", 0);
  for (char **name = names; *name != NULL; name++)
    if (strstr (*name, "_compression_middle") == NULL && strstr (*name, "_compression_high") == NULL
        && strstr (*name, "_rebound_") == NULL)
      ck_assert_msg (strstr (section, *name) != NULL, "%s is not in the man page", *name);
  free (path);
  free (page);
}
END_TEST

#define DAMPER(axle, oil)                                                                          \
  "<damper axle=\"" axle "\"><body bore-mm=\"16\" rod-mm=\"3.5\"/>"                                \
  "<piston thickness-mm=\"2.6\" clearance-mm=\"0.03\"><holes count=\"6\" diameter-mm=\"1.3\"/>"    \
  "<holes count=\"4\" diameter-mm=\"1.1\" covered=\"yes\"/></piston>"                              \
  "<valve opens-on=\"rebound\" hub-diameter-mm=\"6\" outer-diameter-mm=\"10.6\" "                  \
  "hole-circle-mm=\"8.2\"><shim thickness-mm=\"0.15\"/></valve>"                                   \
  "<oil viscosity-cst=\"" oil "\"/></damper>"
#define SPARE(name, covered)                                                                       \
  "<piston name=\"" name "\" thickness-mm=\"2.6\" clearance-mm=\"0.03\">"                          \
  "<holes count=\"6\" diameter-mm=\"" covered "\"/></piston>"

/* Setup "a" with oil of 400 cSt, "b" with 500. */
static char *
write_project (const char *folder, const char *parts)
{
  char *path = g_build_filename (folder, "match.dampwright", NULL);
  g_autofree char *text = g_strdup_printf (
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\" fitted=\"a\">"
      "<setup id=\"a\">" DAMPER ("front", "400")
          DAMPER ("rear", "400") "</setup>"
                                 "<setup id=\"b\">" DAMPER ("front", "500")
                                     DAMPER ("rear", "500") "</setup>"
                                                            "<parts>%s</parts></project>",
      parts);
  ck_assert (g_file_set_contents (path, text, -1, NULL));
  return path;
}

static const struct
{
  const char *parts;
  const char *arguments;
  const char *piece;
  const char *why;
} said[] = {
  { "", "", "1 0.0 0.0 0.0 0.0 0.0 0.0 0.0 0 0 as it is", "nothing else can be built" },
  { "", "", "The best holds what is wanted within 1 %: it misses by 0 % at most.", "and it holds" },
  { "<oil viscosity-cst=\"500\"/>", "--like b", "1 0 oil 500 cSt",
    "the bottle of the other setup" },
  { "<oil viscosity-cst=\"500\"/>", "--like b", "Wanted are forces of b.", "whose" },
  { "<oil viscosity-cst=\"600\"/>", "--like b", "Nothing holds what is wanted within 1 %",
    "too far" },
  { "<oil viscosity-cst=\"600\"/>", "--like b",
    "With one part that is not in the box, an oil of 500 cSt, it would miss by 0.0 %.",
    "which would" },
  { "<oil viscosity-cst=\"400\"/><oil viscosity-cst=\"600\"/>", "--like b --use blend",
    "2 0 oil 400 + 55 % of 600 cSt", "mixed" },
  { "<drill diameter-mm=\"1.5\"/>", "--use open --change compression:-30", "1 1 open 1.50 mm",
    "drilled" },
  { "<drill diameter-mm=\"1.2\"/>", "--use covered --change rebound-high:-5 --keep compression",
    "1 1 covered 1.20 mm", "under the shim" },
  { "<drill diameter-mm=\"1.5\"/>", "", "Drilling cannot be undone: wear eye protection",
    "the caution" },
  { "<shim thickness-mm=\"0.1\" count=\"4\"/>",
    "--use stack --change rebound-high:-5 --keep compression", " stack 0.10", "a stack" },
  { "<oil viscosity-cst=\"450\"/>", "--use temperature,oil --temperatures 25:40",
    "2 0 oil 450 cSt, oil at 31 degC", "warmer" },
  { SPARE ("other six", "1.3"), "--fair", "1 0 piston \"other six\"", "another piston" },
  { SPARE ("", "1.3"), "--fair", "1 0 piston 1 of the box", "one without a name" },
  { SPARE ("small six", "1.2"), "--fair",
    "No piston of the box can hold compression within 1 %: the best misses by", "none can" },
  { SPARE ("small six", "1.2") "<drill diameter-mm=\"1.3\"/>", "--fair",
    "The best holds compression within 1 %", "drilled it can" },
  { "<drill diameter-mm=\"1.5\"/>", "", "4 builds were judged;", "how many" },
};

/* The table without the blanks between its columns. */
static char *
squeeze (const char *text)
{
  g_autoptr (GString) out = g_string_new (NULL);
  for (const char *p = text; *p != '\0'; p++)
    if ((*p != ' ' && *p != '\n') || (out->len > 0 && out->str[out->len - 1] != ' '))
      g_string_append_c (out, *p == '\n' ? ' ' : *p);
  return g_strdup (out->str);
}

START_TEST (the_table_says_what_people_need)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, said[_i].parts);
  g_autofree char *text = calc_output ("match %s --axle rear %s", path, said[_i].arguments);
  g_autofree char *tight = squeeze (text);
  ck_assert_msg (strstr (tight, said[_i].piece) != NULL, "%s: no \"%s\" in\n%.3000s", said[_i].why,
                 said[_i].piece, text);
  calc_remove_folder (folder);
}
END_TEST

/* Nothing is drilled where drilling is not allowed: no caution. */
START_TEST (the_caution_is_for_whoever_drills)
{
  g_autofree char *text = calc_output ("match " DEMO " --axle rear --use stack,oil");
  ck_assert (!calc_says (text, "Drilling cannot be undone"));
}
END_TEST

/* Twenty builds with everything that can be done, and long names. */
START_TEST (no_line_is_longer_than_100)
{
  static const char *const asked[] = {
    ("--use open,covered,stack,oil,blend,piston,temperature --temperatures 20:22 --most-leaves 5 "
     "--dampers 1 --change compression:+33,rebound:-40"),
    "--fair",
    "--keep rebound --change rebound:900",
  };
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (
      folder, SPARE ("a piston whose name is long enough for more than one line of a table, and "
                     "longerthanthatwithoutanyblankbetweenitswordssothatithastobebrokensomewhere",
                     "1.0") "<drill diameter-mm=\"1.4\"/><drill diameter-mm=\"1.5\"/>"
                            "<shim thickness-mm=\"0.1\" count=\"3\"/>"
                            "<shim thickness-mm=\"0.12\" modulus-gpa=\"200\" poisson=\"0.3\"/>"
                            "<oil viscosity-cst=\"333.5\"/><oil viscosity-cst=\"612.5\"/>");
  for (size_t i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autofree char *text = calc_output ("match %s --axle front %s", path, asked[i]);
      g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
      for (char **line = lines; *line != NULL; line++)
        ck_assert_msg (g_utf8_strlen (*line, -1) <= 100, "%s", *line);
    }
  calc_remove_folder (folder);
}
END_TEST

static const struct
{
  const char *arguments;
  const char *piece;
} refusals[] = {
  { DEMO " --axle front --setup nope", "\"nope\", the project has baseline, trial-1, trial-2" },
  { DEMO " --axle front --like nope", "\"nope\", the project has" },
  { "{data}/valid/bare.dampwright --axle front", "no setup is fitted; --setup" },
};

START_TEST (what_cannot_be_matched_is_status_1)
{
  calc_result r = calc_run ("match %s", refusals[_i].arguments);
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_msg (strstr (r.err, refusals[_i].piece) != NULL, "%s", r.err);
  calc_result_clear (&r);
}
END_TEST

/* Neither an empty box nor a blank gives another piston. */
START_TEST (without_another_piston_there_is_no_fair_comparison)
{
  static const char *const boxes[] = { "", "<piston name=\"blank\" thickness-mm=\"2.6\"/>" };
  for (size_t i = 0; i < G_N_ELEMENTS (boxes); i++)
    {
      char *folder = calc_make_folder ();
      g_autofree char *path = write_project (folder, boxes[i]);
      calc_result r = calc_run ("match %s --axle front --fair", path);
      ck_assert_int_eq (r.status, 1);
      ck_assert_str_eq (r.out, "");
      ck_assert_msg (strstr (r.err, "setup a, front: parts: the parts box has no other piston that "
                                    "can be fitted\n")
                         != NULL,
                     "%s", r.err);
      calc_result_clear (&r);
      calc_remove_folder (folder);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-match");
  TCase *tc = tcase_create ("match");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_job_says, 0, N_ENTRIES (questions));
  tcase_add_test (tc, any_number_of_threads_prints_the_same);
  tcase_add_test (tc, the_columns_are_those_of_the_man_page);
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, the_caution_is_for_whoever_drills);
  tcase_add_test (tc, no_line_is_longer_than_100);
  tcase_add_loop_test (tc, what_cannot_be_matched_is_status_1, 0, N_ENTRIES (refusals));
  tcase_add_test (tc, without_another_piston_there_is_no_fair_comparison);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
