/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-units.h"
#include "study/dw-warmth.h"
#include "study/dw-work-oil.h"

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
  double then;      /* [degC] */
  double warm_up;   /* [K] */
  const char *rows; /* n, t and w of the oil in the damper, b a bottle, h held, m mixed */
  const char *why;
} question;

static const question questions[] = {
  { DEMO, "", "baseline", DW_FRONT, 38.0, 10.0, "ntwbbbbbbhm", "as it comes" },
  { DEMO, "--at-c 12.5 --warm-up 7.5", "trial-2", DW_REAR, 12.5, 7.5, "ntwbbbbbbh",
    "colder: all too "
    "thick" },
  { DEMO, "--at-c 28 --warm-up 0", "trial-1", DW_FRONT, 28.0, 0.0, "ntwbbbbbbhm",
    "nothing changes" },
  { VOID, "--at-c 45", "vented", DW_FRONT, 45.0, 10.0, "ntwbbbh", "forces that a void caps" },
  { ALL, "--at-c 20", "baseline", DW_REAR, 20.0, 10.0, "ntwbbbh", "a measured oil that thins" },
};

static void
expect_field (const test_table *table, size_t row, const char *column, int power, double value)
{
  ck_assert_msg (calc_field_is (table, row, column, power, value),
                 "row %zu, %s: \"%s\" is not %.17g", row, column,
                 test_table_text (table, row, column), value);
}

static void
expect_empty (const test_table *table, size_t row, const char *column)
{
  ck_assert_str_eq (test_table_text (table, row, column), "");
}

/* One row: the model with that oil at that temperature, against now. */
static void
expect_oil (const test_table *table, size_t row, const dw_damper *damper, const dw_oil *oil,
            double temperature, const double speeds[DW_N_SPEEDS], const dw_figures *now)
{
  dw_damper filled = *damper;
  dw_force_model model;
  dw_figures f;
  dw_fluid fluid;
  dw_work_oil parts[DW_MAX_OIL_PARTS];
  bool is_measured;
  filled.oil = *oil;
  ck_assert_int_eq (dw_force_model_make (&filled, temperature, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &f, NULL), DW_OK);
  ck_assert_int_eq (dw_oil_fluid (oil, temperature, &fluid, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        g_autofree char *force = g_strdup_printf ("%s_%s_n", stroke_names[s], speed_names[v]);
        g_autofree char *change = g_strdup_printf ("%s_%s_change_percent", stroke_names[s],
                                                   speed_names[v]);
        expect_field (table, row, force, 0, f.point[s][v].force);
        if (now == NULL)
          expect_empty (table, row, change);
        else
          expect_field (table, row, change, 0,
                        dw_compare_change (now->point[s][v].force, f.point[s][v].force));
      }
  expect_field (table, row, "pack_compression", 0, f.pack[DW_COMPRESSION]);
  expect_field (table, row, "pack_rebound", 0, f.pack[DW_REBOUND]);
  expect_field (table, row, "rebound_share_high", 0, f.rebound_share[DW_HIGH]);
  expect_field (table, row, "temperature_c", 0, temperature);
  expect_field (table, row, "viscosity_cst", -6, fluid.viscosity);
  expect_field (table, row, "viscosity_low_cst", -6, fluid.viscosity_low);
  expect_field (table, row, "viscosity_high_cst", -6, fluid.viscosity_high);
  expect_field (table, row, "density_kg_m3", 0, fluid.density);
  expect_field (table, row, "other_kind", 0, dw_warmth_mixes_kinds (&damper->oil, oil));
  const int n = dw_work_oil_parts (oil, dw_work_filling (damper, &is_measured), parts);
  expect_field (table, row, "first_ml", -6, parts[0].one);
  if (n == 2)
    expect_field (table, row, "second_ml", -6, parts[1].one);
  else
    expect_empty (table, row, "second_cst");
}

START_TEST (csv_is_what_the_study_says)
{
  static const char *const names[] = {
    ['n'] = "now", ['t'] = "then", ['w'] = "warm", ['b'] = "bottle", ['h'] = "hold", ['m'] = "mix"
  };
  const question *q = &questions[_i];
  dw_project *project = calc_load (q->file);
  const dw_damper *damper = &dw_project_find_setup (project, q->setup)->damper[q->axle];
  const GArray *box = dw_project_get_parts (project)->oils;
  const dw_speeds *v = &project->speeds;
  const dw_warmth asked
      = { damper, project->conditions.oil_temperature, q->then, { v->low, v->middle, v->high } };
  g_autofree dw_oil *oils = g_new (dw_oil, box->len);
  g_autofree dw_warmth_bottle *bottles = g_new0 (dw_warmth_bottle, box->len);
  dw_warmth_held held;
  dw_warmth_blend mix;
  dw_comparison change;
  int nearest;
  int bottle = 0;
  for (guint i = 0; i < box->len; i++)
    oils[i] = g_array_index (box, dw_bottle, i).oil;
  ck_assert_int_eq (dw_warmth_compare (&asked, &change, NULL), DW_OK);
  ck_assert_int_eq (dw_warmth_bottles (&asked, oils, (int)box->len, bottles, &nearest, NULL),
                    DW_OK);
  ck_assert_int_eq (dw_warmth_hold (&asked, DW_COMPRESSION, &held, NULL), DW_OK);
  ck_assert_int_eq (dw_warmth_mix (&asked, held.viscosity, oils, (int)box->len, &mix, NULL), DW_OK);
  const dw_oil exact = { .kind = DW_OIL_NOMINAL, .viscosity = held.viscosity };

  test_table *table = calc_table ("oils %s --setup %s --axle %s %s --format csv", q->file, q->setup,
                                  dw_axle_name (q->axle), q->arguments);
  ck_assert_msg (test_table_n_rows (table) == strlen (q->rows), "%s: %zu rows", q->why,
                 test_table_n_rows (table));
  for (size_t row = 0; row < strlen (q->rows); row++)
    {
      const char kind = q->rows[row];
      const bool is_bottle = kind == 'b';
      const dw_oil *oil = is_bottle     ? &oils[bottle]
                          : kind == 'h' ? &exact
                          : kind == 'm' ? &mix.oil
                                        : &damper->oil;
      const double at = kind == 'n' ? asked.now : kind == 'w' ? asked.now + q->warm_up : q->then;
      ck_assert_str_eq (test_table_text (table, row, "setup"), q->setup);
      ck_assert_str_eq (test_table_text (table, row, "axle"), dw_axle_name (q->axle));
      ck_assert_str_eq (test_table_text (table, row, "row"), names[(unsigned char)kind]);
      expect_oil (table, row, damper, oil, at, asked.speeds, kind == 'n' ? NULL : &change.a);
      expect_field (table, row, "nearest", 0, is_bottle && bottle == nearest);
      if (is_bottle)
        expect_field (table, row, "bottle", 0, ++bottle);
      else
        expect_empty (table, row, "bottle");
    }
  test_table_free (table);
  dw_project_free (project);
}
END_TEST

START_TEST (both_axles_of_the_fitted_setup_are_the_default)
{
  g_autofree char *both = calc_output ("oils " DEMO " --format csv");
  g_autofree char *front = calc_output ("oils " DEMO " --setup baseline --axle front --at-c 38 "
                                        "--warm-up 10 --format csv");
  g_autofree char *rear = calc_output ("oils " DEMO " --setup baseline --axle rear --format csv");
  g_autofree char *together = g_strconcat (front, strchr (rear, '\n') + 1, NULL);
  ck_assert_str_eq (both, together);
}
END_TEST

/* "low" stands for the three speeds, compression for both strokes. */
START_TEST (the_columns_are_those_of_the_man_page)
{
  g_autofree char *text = calc_output ("oils " DEMO " --format csv");
  char *path = test_source_path ("data/dampcalc.1");
  char *page = test_file_read (path, NULL);
  ck_assert (g_str_has_prefix (text, "setup,axle,row,bottle,kind,nominal_cst,temperature_c,"
                                     "viscosity_cst,viscosity_low_cst,viscosity_high_cst,"));
  g_autofree char *section = g_strdup (strstr (page, ".SS oils FILE"));
  ck_assert_ptr_nonnull (section);
  *strstr (section + 1, ".SS ") = '\0';
  g_autofree char *head = g_strndup (text, (gsize)(strchr (text, '\n') - text));
  g_auto (GStrv) names = g_strsplit (head, ",", 0);
  ck_assert_uint_eq (g_strv_length (names), 34);
  for (char **name = names; *name != NULL; name++)
    if (!g_str_has_prefix (*name, "rebound_") && strstr (*name, "n_middle") == NULL
        && strstr (*name, "n_high") == NULL)
      ck_assert_msg (strstr (section, *name) != NULL, "%s is not in the man page", *name);
  free (path);
  free (page);
}
END_TEST

#define DAMPER                                                                                     \
  "<damper axle=\"%s\"><body bore-mm=\"16\" rod-mm=\"3.5\" stroke-mm=\"30\"%s/>"                   \
  "<piston thickness-mm=\"2.6\" clearance-mm=\"0.03\"><holes count=\"6\" diameter-mm=\"1.3\"/>"    \
  "</piston>%s</damper>"

/* A project of one kind of damper, at 25 degC unless told. */
static char *
write_project (const char *folder, const char *temperature, const char *filling, const char *oil,
               const char *parts)
{
  char *path = g_build_filename (folder, "oils.dampwright", NULL);
  g_autofree char *text = g_strdup_printf (
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\" fitted=\"a\">"
      "<conditions oil-c=\"%s\"/><setup id=\"a\">" DAMPER DAMPER
      "</setup><parts>%s</parts></project>",
      temperature, "front", filling, oil, "rear", filling, oil, parts);
  ck_assert (g_file_set_contents (path, text, -1, NULL));
  return path;
}

#define PLAIN    "<oil viscosity-cst=\"400\"/>"
#define THICK    "<oil viscosity-cst=\"600\"/>"
#define MEASURED "<oil t1-c=\"20\" viscosity1-cst=\"410\" t2-c=\"40\" viscosity2-cst=\"290\"/>"
#define FADING   "<oil t1-c=\"20\" viscosity1-cst=\"410\" t2-c=\"25\" viscosity2-cst=\"5\"/>"
#define FILLED   " filling-ml=\"8\""

static const struct
{
  const char *temperature, *filling, *oil, *parts, *arguments;
  const char *piece;
  bool is_said;
  const char *why;
} said[] = {
  { "25", FILLED, PLAIN, PLAIN THICK, "", "Oil in it: 400 cSt. Now 25 degC, then 35 degC.", true,
    "what is compared" },
  { "25", FILLED, PLAIN, PLAIN THICK, "--at-c 25", "silicone of 400 cSt holds", true,
    "nothing to make up for" },
  { "25", FILLED, PLAIN, PLAIN THICK, "--at-c 25",
    "Fill in 400 cSt: 8.0 ml of 400 cSt for one damper, 16.0 ml of 400 cSt for both (filling as "
    "measured).",
    true, "one bottle" },
  { "25", FILLED, PLAIN, PLAIN THICK, "--at-c 25", "Published blend rules", false,
    "a pure oil follows no rule" },
  { "25", FILLED, PLAIN, PLAIN THICK, "", "Fill in 400 + ", true, "two bottles" },
  { "25", FILLED, PLAIN, PLAIN THICK, "", "% from end to end.", true, "and the rules' spread" },
  { "25", "", PLAIN, PLAIN THICK, "", "(filling estimated from the parts)", true,
    "no filling told" },
  { "25", "", PLAIN, PLAIN THICK, "", "Warning", false, "one kind of oil" },
  { "25", "", MEASURED, PLAIN THICK, "", "Warning: the oil in the damper is of another kind.", true,
    "a measured oil in the damper" },
  { "25", "", PLAIN, MEASURED, "", "other kind\n", true, "a measured oil in the box" },
  { "25", "", PLAIN, PLAIN THICK, "", "\n  >  400 ", true, "the nearest one is marked" },
  { "25", "", PLAIN, PLAIN THICK, "", "other kind\n", false, "silicone and silicone" },
  { "25", "", PLAIN, MEASURED, "", "No plain silicone bottles at hand give that.", true,
    "which is not mixed" },
  { "25", "", PLAIN, "", "", "The parts box has no oil.", true, "an empty box" },
  { "25", "", PLAIN, FADING, "--at-c 60", "not known there", true,
    "a line that ends before that temperature" },
  { "25", "", "<oil viscosity-cst=\"90000\"/>", PLAIN, "--at-c 60",
    "No silicone oil holds low-speed compression at 60 degC.", true, "thicker than any" },
  { "25", "", PLAIN, PLAIN, "--warm-up 12.5", "warms up from 25 to 37.5 degC:", true, "the drift" },
};

START_TEST (the_table_says_what_people_need)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, said[_i].temperature, said[_i].filling,
                                         said[_i].oil, said[_i].parts);
  g_autofree char *text = calc_output ("oils %s --axle rear %s", path, said[_i].arguments);
  const bool is_there = calc_says (text, said[_i].piece) || strstr (text, said[_i].piece) != NULL;
  ck_assert_msg (is_there == said[_i].is_said, "%s: \"%s\" in\n%.1800s", said[_i].why,
                 said[_i].piece, text);
  g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
  for (char **line = lines; *line != NULL; line++)
    ck_assert_msg (strlen (*line) <= 100, "%s", *line);
  calc_remove_folder (folder);
}
END_TEST

/* Where no oil holds, or a bottle is not known, there is no row or no number, and still an end. */
START_TEST (what_is_not_known_is_left_out_of_the_csv)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, "25", "", "<oil viscosity-cst=\"90000\"/>",
                                         FADING);
  test_table *table = calc_table ("oils %s --axle rear --at-c 60 --format csv", path);
  ck_assert_uint_eq (test_table_n_rows (table), 4);
  ck_assert_str_eq (test_table_text (table, 3, "row"), "bottle");
  ck_assert_str_eq (test_table_text (table, 3, "kind"), "measured");
  ck_assert_str_eq (test_table_text (table, 3, "nearest"), "0");
  ck_assert_str_eq (test_table_text (table, 3, "other_kind"), "1");
  expect_empty (table, 3, "viscosity_cst");
  expect_empty (table, 3, "compression_low_n");
  expect_empty (table, 3, "compression_low_change_percent");
  test_table_free (table);
  calc_remove_folder (folder);
}
END_TEST

static const struct
{
  const char *temperature;
  const char *arguments;
  const char *piece;
} refusals[] = {
  { "145", "", "155 degC is outside the allowed range -25 to 150 degC" },
  { "145", "--at-c 20 --warm-up 6", "151 degC is outside" },
  { "25", "--setup nope", "\"nope\", the project has a" },
};

START_TEST (what_cannot_be_told_is_status_1)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = write_project (folder, refusals[_i].temperature, "", PLAIN, PLAIN);
  calc_result r = calc_run ("oils %s %s", path, refusals[_i].arguments);
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (r.out, "");
  ck_assert_msg (strstr (r.err, refusals[_i].piece) != NULL, "%s", r.err);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-oils");
  TCase *tc = tcase_create ("oils");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, csv_is_what_the_study_says, 0, N_ENTRIES (questions));
  tcase_add_test (tc, both_axles_of_the_fitted_setup_are_the_default);
  tcase_add_test (tc, the_columns_are_those_of_the_man_page);
  tcase_add_loop_test (tc, the_table_says_what_people_need, 0, N_ENTRIES (said));
  tcase_add_test (tc, what_is_not_known_is_left_out_of_the_csv);
  tcase_add_loop_test (tc, what_cannot_be_told_is_status_1, 0, N_ENTRIES (refusals));
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
