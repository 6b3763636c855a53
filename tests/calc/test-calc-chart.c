/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>
#include <string.h>

#include "calc-run.h"
#include "model/dw-force.h"
#include "project/dw-project-file.h"

static char *
read_file (const char *folder, const char *name, gsize *length)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *data = NULL;
  ck_assert_msg (g_file_get_contents (path, &data, length, NULL), "%s was not written", path);
  return data;
}

static const struct
{
  const char *options;
  const char *name;
  const char *start; /* of the file */
} kinds[] = {
  { "--setup baseline,trial-1", "a.svg", "<?xml" },
  { "--setup baseline,trial-1,trial-2 --style dark --log --quantity c", "a.png", "\x89PNG\r\n" },
  { "--setup baseline --axle rear --strip rebound", "a.pdf", "%PDF-" },
  { "--setup baseline,trial-1 --band", "a.svg", "<?xml" },
  { "--style sun --size 400x300 --dpi 72", "b.png", "\x89PNG\r\n" },
  { "--at wheel --to 2 --style contrast", "c.SVG", "<?xml" },
  { "--setup trial-1", "a.csv", "setup,axle,stroke,place,speed_m_s," },
};

START_TEST (the_name_decides_what_is_written)
{
  char *folder = calc_make_folder ();
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *said = calc_output ("chart {demo}/club-final.dampwright %s -o '%s/%d%s'",
                                           kinds[_i].options, folder, i, kinds[_i].name);
      ck_assert_str_eq (said, "");
    }
  g_autofree char *first = g_strconcat ("0", kinds[_i].name, NULL);
  g_autofree char *second = g_strconcat ("1", kinds[_i].name, NULL);
  gsize length[2];
  g_autofree char *a = read_file (folder, first, &length[0]);
  g_autofree char *b = read_file (folder, second, &length[1]);
  ck_assert (strncmp (a, kinds[_i].start, strlen (kinds[_i].start)) == 0);
  ck_assert_uint_eq (length[0], length[1]);
  ck_assert_msg (memcmp (a, b, length[0]) == 0, "two runs gave two files");
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_picture_has_the_size_asked_for)
{
  char *folder = calc_make_folder ();
  gsize length;
  calc_result r = calc_run (
      "chart {demo}/club-final.dampwright --size 500x300 --dpi 72 -o '%s/x.png'", folder);
  g_autofree char *data = read_file (folder, "x.png", &length);
  ck_assert_int_eq (r.status, 0);
  ck_assert_mem_eq (data + 16, "\0\0\x01\xf4\0\0\x01\x2c", 8);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (the_numbers_are_the_models)
{
  char *folder = calc_make_folder ();
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autofree char *path = calc_path ("{demo}/club-final.dampwright");
  g_autoptr (dw_project) project = dw_project_load (path, findings, NULL);
  const dw_setup *setup = dw_project_find_setup (project, "trial-1");
  dw_force_model model;
  ck_assert_int_eq (dw_force_model_make (&setup->damper[DW_REAR],
                                         project->conditions.oil_temperature, &model, NULL),
                    DW_OK);
  g_autofree char *said = calc_output (
      "chart {demo}/club-final.dampwright --setup baseline,trial-1 --to 0.5 -o '%s/x.csv'", folder);
  ck_assert_str_eq (said, "");
  gsize length;
  g_autofree char *text = read_file (folder, "x.csv", &length);
  test_table *table = test_table_parse (text);
  int n = 0;
  double fastest = 0.0;
  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      dw_force_point p;
      const double speed = test_table_number (table, i, "speed_m_s");
      fastest = fmax (fastest, speed);
      if (strcmp (test_table_text (table, i, "setup"), "trial-1") != 0
          || strcmp (test_table_text (table, i, "axle"), "rear") != 0
          || strcmp (test_table_text (table, i, "stroke"), "rebound") != 0)
        continue;
      ck_assert_int_eq (dw_force_at (&model, DW_REBOUND, speed, &p, NULL), DW_OK);
      assert_close (test_table_number (table, i, "force_n"), p.force, 1e-9, 1e-9, "the model");
      n++;
    }
  ck_assert_int_gt (n, 30);
  ck_assert (fastest == 0.5);
  test_table_free (table);
  calc_remove_folder (folder);
}
END_TEST

static const struct
{
  const char *arguments;
  int status;
  const char *piece;
} refused[] = {
  { "{demo}/club-final.dampwright", 2, "-o" },
  { "-o x.svg", 2, "needs FILE" },
  { "{demo}/club-final.dampwright -o x.jpg", 2, ".svg, .png, .pdf or .csv" },
  { "{demo}/club-final.dampwright -o x", 2, ".svg, .png, .pdf or .csv" },
  { "{demo}/club-final.dampwright -o x.svg --setup a,b,c,d,e", 2, "at most 4" },
  { "{demo}/club-final.dampwright -o x.svg --setup baseline,,trial-1", 2, "commas" },
  { "{demo}/club-final.dampwright -o x.svg --setup baseline,baseline", 2, "twice" },
  { "{demo}/club-final.dampwright -o x.svg --style pink", 2, "--style needs light or dark" },
  { "{demo}/club-final.dampwright -o x.svg --quantity power", 2, "force or c" },
  { "{demo}/club-final.dampwright -o x.svg --at seat", 2, "shaft or wheel" },
  { "{demo}/club-final.dampwright -o x.svg --strip both", 2, "compression or rebound" },
  { "{demo}/club-final.dampwright -o x.svg --axle middle", 2, "front or rear" },
  { "{demo}/club-final.dampwright -o x.svg --to 11", 2, "--to" },
  { "{demo}/club-final.dampwright -o x.svg --size 300", 2, "842x595" },
  { "{demo}/club-final.dampwright -o x.svg --size 50x300", 2, "--size" },
  { "{demo}/club-final.dampwright -o x.svg --dpi 100", 2, ".png" },
  { "{demo}/club-final.dampwright -o x.png --dpi 5", 2, "--dpi" },
  { "{demo}/club-final.dampwright -o x.png --dpi 600 --size 4000x300", 2, "pixels" },
  { "{demo}/club-final.dampwright -o x.svg --setup nobody", 1, "no setup \"nobody\"" },
  { "{data}/valid/empty.dampwright -o x.svg", 1, "no setup" },
  { "{demo}/nothing.dampwright -o x.svg", 3, "nothing.dampwright" },
  { "{demo}/club-final.dampwright -o /no-such-folder/x.svg", 3, "no-such-folder" },
};

START_TEST (what_cannot_be_drawn_is_said)
{
  calc_result r = calc_run ("chart %s", refused[_i].arguments);
  ck_assert_msg (r.status == refused[_i].status, "%s ends with %d: %s", refused[_i].arguments,
                 r.status, r.err);
  ck_assert_msg (calc_says (r.err, refused[_i].piece), "%s: %s", refused[_i].arguments, r.err);
  ck_assert_str_eq (r.out, "");
  calc_result_clear (&r);
}
END_TEST

START_TEST (a_failure_keeps_the_old_file)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "x.svg", NULL);
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  calc_result r = calc_run ("chart {demo}/club-final.dampwright --setup nobody -o '%s/x.svg'",
                            folder);
  gsize length;
  g_autofree char *data = read_file (folder, "x.svg", &length);
  ck_assert_int_eq (r.status, 1);
  ck_assert_str_eq (data, "old");
  calc_expect_files (folder, 1);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_comma_locale_draws_the_same)
{
  char *folder = calc_make_folder ();
  calc_result here = calc_run ("chart {demo}/club-final.dampwright -o '%s/a.svg'", folder);
  calc_result there = calc_run_in ("de_DE.UTF-8",
                                   "chart {demo}/club-final.dampwright -o '%s/b.svg'", folder);
  gsize length;
  g_autofree char *a = read_file (folder, "a.svg", &length);
  g_autofree char *b = read_file (folder, "b.svg", &length);
  ck_assert_str_eq (a, b);
  calc_result_clear (&here);
  calc_result_clear (&there);
  calc_remove_folder (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-chart");
  TCase *tc = tcase_create ("chart");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, the_name_decides_what_is_written, 0, N_ENTRIES (kinds));
  tcase_add_test (tc, a_picture_has_the_size_asked_for);
  tcase_add_test (tc, the_numbers_are_the_models);
  tcase_add_loop_test (tc, what_cannot_be_drawn_is_said, 0, N_ENTRIES (refused));
  tcase_add_test (tc, a_failure_keeps_the_old_file);
  tcase_add_test (tc, a_comma_locale_draws_the_same);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
