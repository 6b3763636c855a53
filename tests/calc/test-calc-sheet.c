/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sheets as they come out of the program, read again by other programs (poppler-utils). */

#include <glib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/wait.h>

#include "calc-run.h"
#include "project/dw-project-file.h"
#include "sheet/dw-quantity.h"
#include "study/dw-compare.h"

/* ---- reading PDFs ---- */

/* What a program says of a file; one that is not there or fails ends the test. Caller frees. */
static char *
ask (const char *program, const char *options, const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *quoted = g_shell_quote (path);
  g_autofree char *line = g_strdup_printf ("LC_ALL=C.UTF-8 %s %s %s%s", program, options, quoted,
                                           strcmp (program, "pdftotext") == 0 ? " -" : "");
  const char *argv[] = { "/bin/sh", "-c", line, NULL };
  char *out = NULL;
  g_autofree char *err = NULL;
  int status = 0;
  ck_assert (g_spawn_sync (NULL, (char **)(guintptr)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &out,
                           &err, &status, NULL));
  ck_assert_msg (WIFEXITED (status) && WEXITSTATUS (status) == 0,
                 "%s: %s (it is in the package poppler-utils)", line, err);
  return out;
}

static char *
text_of (const char *folder, const char *name)
{
  return ask ("pdftotext", "-raw -enc UTF-8", folder, name);
}

/* The value behind a name that pdfinfo tells; caller frees. */
static char *
info_of (const char *folder, const char *name, const char *what)
{
  g_autofree char *all = ask ("pdfinfo", "", folder, name);
  g_auto (GStrv) lines = g_strsplit (all, "\n", 0);
  g_autofree char *prefix = g_strconcat (what, ":", NULL);
  for (char **line = lines; *line != NULL; line++)
    if (g_str_has_prefix (*line, prefix))
      return g_strstrip (g_strdup (*line + strlen (prefix)));
  ck_abort_msg ("no %s in %s", what, all);
  return NULL;
}

static int
pages_of (const char *folder, const char *name)
{
  g_autofree char *pages = info_of (folder, name, "Pages");
  return (int)g_ascii_strtoll (pages, NULL, 10);
}

/* Words behind each other with one blank between, wherever lines are broken and of whatever kind the
 * blanks are. */
static char *
flatten (const char *text)
{
  GString *flat = g_string_new (NULL);
  for (const char *c = text; *c != '\0'; c += g_utf8_skip[(guchar)*c])
    if (!g_unichar_isspace (g_utf8_get_char (c)))
      g_string_append_unichar (flat, g_utf8_get_char (c));
    else if (flat->len > 0 && flat->str[flat->len - 1] != ' ')
      g_string_append_c (flat, ' ');
  return g_string_free (flat, FALSE);
}

static void
expect_in_order (const char *text, const char *const *pieces)
{
  g_autofree char *flat = flatten (text);
  const char *at = flat;
  for (int i = 0; pieces[i] != NULL; i++)
    {
      g_autofree char *piece = flatten (pieces[i]);
      const char *found = strstr (at, piece);
      ck_assert_msg (found != NULL, "\"%s\" is not behind \"%s\" in: %s", piece,
                     i > 0 ? pieces[i - 1] : "", flat);
      at = found + strlen (piece);
    }
}

static void
make (const char *folder, const char *name, const char *arguments)
{
  g_autofree char *said = calc_output ("sheet %s -o '%s/%s'", arguments, folder, name);
  ck_assert_str_eq (said, "");
}

#define TRIAL "{demo}/club-final.dampwright --setup trial-1 --against baseline --date 2026-05-03"

/* ---- what stands on page one ---- */

START_TEST (every_value_of_both_dampers_is_on_page_one)
{
  char *folder = calc_make_folder ();
  make (folder, "a.pdf", TRIAL);
  g_autofree char *text = text_of (folder, "a.pdf");
  expect_in_order (
      text,
      (const char *[]){
          "Rear quicker on rebound Rough club final, drying track (invented example) Setup sheet "
          "trial: an idea 2026-05-03",
          "Event Rough club final (invented) Track Clay bowl with a tabletop (invented) Surface "
          "drying clay, ruts in the fast corner Oil in the dampers 28 °C",
          "Driver Example driver (invented) Car 1:8 buggy (invented) Run, place Air 21 °C",
          "Front",
          "lift 0.6 mm",
          "1: 1 × 0.15 mm",
          "Rear",
          "lift 0.6 mm",
          "1: 1 × 0.1 mm",
          "Body bore 16 mm, shaft 3.5 mm, stroke 27 mm Body bore 16 mm, shaft 3.5 mm, stroke 33 mm",
          "Piston 2.6 mm thick, clearance 0.03 mm Piston 2.6 mm thick, clearance 0.03 mm",
          "Open holes 6 × 1.4 mm Open holes 6 × 1.35 mm",
          "Covered holes 4 × 1.1 mm Covered holes 4 × 1.15 mm",
          "Stack 1 × 0.15 mm, opens on rebound Stack 1 × 0.1 mm, opens on rebound",
          "Shim hub 6, outside 10.6, lift limit 0.6 mm Shim hub 6, outside 10.6, lift limit 0.6 mm",
          "Oil 400 cSt Oil 350 cSt",
          "Oil filling 6.3 ml Oil filling 7.6 ml",
          "Gas, seal bladder 101.3 kPa, 1.2 ml; seal 0.4 N Gas, seal bladder 101.3 kPa, 1.2 ml; "
          "seal "
          "0.4 N",
          "Spring 0.72 N/mm, 70 mm long, preload 4 mm Spring 0.58 N/mm, 85 mm long, preload 5 mm",
          "Motion ratio 0.62 Motion ratio 0.6",
          "Ride height 24 mm Ride height 26 mm",
          "Droop 18 mm Droop 22 mm",
          "compression",
          "rebound",
          "Force in N Comp. change Reb. change Share Ratio",
          "What differs from “As qualified”",
          "shim 1: thickness 0.15 mm → 0.1 mm",
          "Compression the same. Rebound the same at low speed, 2.6 % softer at middle speed, 11 % "
          "softer at high speed.",
          "Notes",
          "Only the rear shim differs.",
          "Qualified third on damp clay.",
          "Estimates for scale-model dampers, not for vehicles",
          "Dampwright " DW_VERSION ", club-final.dampwright",
          "page 1 of 1",
          NULL });
  calc_remove_folder (folder);
}
END_TEST

static void
append_change (GString *row, double percent)
{
  g_autofree char *change = dw_quantity_format_change (percent);
  g_string_append_printf (row, " %s", dw_compare_judge (percent) == DW_CHANGE_SAME ? "=" : change);
}

static void
append_number (GString *row, dw_quantity quantity, double value)
{
  g_autofree char *number = dw_quantity_format_digits (quantity, DW_UNITS_METRIC, value, 3);
  g_string_append_printf (row, " %s", number);
}

/* A row of the table, as the study says it. */
static char *
speed_row (const dw_project *project, const dw_comparison *c, const dw_damper *d, int axle,
           int speed, bool shows_damping)
{
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  g_autofree char *v = dw_quantity_format_short (DW_QUANTITY_SPEED, DW_UNITS_METRIC, speeds[speed]);
  GString *row = g_string_new (NULL);
  g_string_printf (row, "%s m/s", v);
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    {
      append_number (row, shows_damping ? DW_QUANTITY_DAMPING : DW_QUANTITY_FORCE,
                     shows_damping ? c->b.c[stroke][speed] : c->b.point[stroke][speed].force);
      append_change (row, c->force[stroke][speed]);
    }
  append_number (row, DW_QUANTITY_NUMBER, c->b.rebound_share[speed]);
  append_number (row, DW_QUANTITY_NUMBER,
                 dw_figures_damping_ratio (&c->b, d, speed, project->car.sprung_mass[axle]));
  return g_string_free (row, FALSE);
}

START_TEST (figures_are_those_of_the_study)
{
  char *folder = calc_make_folder ();
  g_autofree char *arguments = g_strdup_printf ("%s %s", TRIAL, _i == 1 ? "--quantity c" : "");
  make (folder, "a.pdf", arguments);
  g_autofree char *text = text_of (folder, "a.pdf");
  g_autoptr (dw_project) project = calc_load ("{demo}/club-final.dampwright");
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func (g_free);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const dw_damper *b = &dw_project_find_setup (project, "trial-1")->damper[axle];
      dw_comparison c;
      ck_assert_int_eq (
          dw_compare_figures (&dw_project_find_setup (project, "baseline")->damper[axle], b,
                              project->conditions.oil_temperature, speeds, &c, NULL),
          DW_OK);
      for (int speed = 0; speed < DW_N_SPEEDS; speed++)
        g_ptr_array_add (pieces, speed_row (project, &c, b, axle, speed, _i == 1));
      GString *pack = g_string_new ("Pack");
      for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
        {
          append_number (pack, DW_QUANTITY_NUMBER, c.b.pack[stroke]);
          append_change (pack, c.pack[stroke]);
        }
      g_ptr_array_add (pieces, g_string_free (pack, FALSE));
    }
  g_ptr_array_add (pieces, NULL);
  expect_in_order (text, (const char *const *)pieces->pdata);
  calc_remove_folder (folder);
}
END_TEST

/* ---- files ---- */

static const struct
{
  const char *arguments;
  int n_pages;
  const char *size; /* as pdfinfo tells it */
  const char *title;
  const char *piece; /* of the text */
} kinds[] = {
  { "{demo}/club-final.dampwright --date 2026-05-03", 1, "595.276 x 841.89 pts (A4)",
    "As qualified – Rough club final, drying track (invented example)", "fitted: in the car now" },
  { TRIAL " --kind card", 1, "595.276 x 841.89 pts (A4)",
    "Rear quicker on rebound – Rough club final, drying track (invented example)",
    "built from “As qualified”" },
  { TRIAL " --kind both", 2, "595.276 x 841.89 pts (A4)",
    "Rear quicker on rebound – Rough club final, drying track (invented example)", "page 2 of 2" },
  { "{demo}/club-final.dampwright --setup trial-1 --alone --kind card --date 2026-05-03", 2,
    "595.276 x 841.89 pts (A4)",
    "Rear quicker on rebound – Rough club final, drying track (invented example)",
    "built from new parts" },
  { "{demo}/club-final.dampwright --kind blank --paper letter --date 2026-05-03", 1,
    "612 x 792 pts (letter)", "Setup sheet – Rough club final, drying track (invented example)",
    "Run, place" },
  { "{demo}/club-final.dampwright --kind all --paper letter --date 2026-05-03", 1,
    "612 x 792 pts (letter)", "All setups – Rough club final, drying track (invented example)",
    "Front drilled, thicker oil" },
  { "{data}/valid/empty.dampwright --kind blank --date 2026-05-03", 1, "595.276 x 841.89 pts (A4)",
    "Setup sheet", "Run, place" },
  { "{data}/valid/empty.dampwright --kind all --date 2026-05-03", 1, "595.276 x 841.89 pts (A4)",
    "All setups", "Built from" },
  { "{data}/valid/everything.dampwright --setup trial-1 --against baseline --kind both --date "
    "2026-05-03",
    4, "595.276 x 841.89 pts (A4)", NULL, "Bench card" },
};

START_TEST (a_pdf_says_what_it_is)
{
  char *folder = calc_make_folder ();
  make (folder, "a.pdf", kinds[_i].arguments);
  g_autofree char *title = info_of (folder, "a.pdf", "Title");
  g_autofree char *creator = info_of (folder, "a.pdf", "Creator");
  g_autofree char *size = info_of (folder, "a.pdf", "Page size");
  g_autofree char *created = info_of (folder, "a.pdf", "CreationDate");
  g_autofree char *subject = info_of (folder, "a.pdf", "Subject");
  g_autofree char *text = text_of (folder, "a.pdf");
  ck_assert_int_eq (pages_of (folder, "a.pdf"), kinds[_i].n_pages);
  ck_assert_str_eq (creator, "Dampwright " DW_VERSION);
  ck_assert_str_eq (size, kinds[_i].size);
  ck_assert_str_eq (created, "Sun May  3 00:00:00 2026 UTC");
  ck_assert_str_eq (subject, "Setup sheet for the dampers of an off-road model car");
  if (kinds[_i].title != NULL)
    ck_assert_str_eq (title, kinds[_i].title);
  ck_assert_msg (calc_says (text, kinds[_i].piece), "no \"%s\" in %s", kinds[_i].piece, text);
  calc_remove_folder (folder);
}
END_TEST

/* Every font is in the file, only the letters that are used, and each says which letter it is. */
START_TEST (fonts_are_embedded_and_can_be_searched)
{
  char *folder = calc_make_folder ();
  make (folder, "a.pdf", kinds[_i].arguments);
  g_autofree char *fonts = ask ("pdffonts", "", folder, "a.pdf");
  g_auto (GStrv) lines = g_strsplit (g_strchomp (fonts), "\n", 0);
  ck_assert_uint_ge (g_strv_length (lines), 4);
  for (char **line = lines + 2; *line != NULL; line++)
    ck_assert_msg (strstr (*line, " yes yes yes ") != NULL, "%s", *line);
  calc_remove_folder (folder);
}
END_TEST

static char *
read_file (const char *folder, const char *name, gsize *length)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *data = NULL;
  ck_assert_msg (g_file_get_contents (path, &data, length, NULL), "%s was not written", path);
  return data;
}

static bool
are_equal (const char *folder, const char *one, const char *other)
{
  gsize n;
  gsize m;
  g_autofree char *a = read_file (folder, one, &n);
  g_autofree char *b = read_file (folder, other, &m);
  return n == m && memcmp (a, b, n) == 0;
}

static const char *const suffixes[] = { "pdf", "png", "svg" };

START_TEST (the_same_input_gives_the_same_bytes)
{
  char *folder = calc_make_folder ();
  const char *kind = _i / 3 == 0 ? "--kind both" : "--kind setup --quantity c";
  g_autofree char *names[] = { g_strdup_printf ("a.%s", suffixes[_i % 3]),
                               g_strdup_printf ("b.%s", suffixes[_i % 3]),
                               g_strdup_printf ("c.%s", suffixes[_i % 3]), NULL };
  for (int k = 0; k < 2; k++)
    {
      g_autofree char *said = calc_output ("sheet %s %s -o '%s/%s'", TRIAL, kind, folder, names[k]);
      ck_assert_str_eq (said, "");
    }
  ck_assert_msg (are_equal (folder, names[0], names[1]), "two runs");
  if (test_use_locale ("de_DE.UTF-8"))
    {
      calc_result r = calc_run_in ("de_DE.UTF-8", "sheet %s %s -o '%s/%s'", TRIAL, kind, folder,
                                   names[2]);
      ck_assert_int_eq (r.status, 0);
      ck_assert_msg (are_equal (folder, names[0], names[2]), "another locale");
      calc_result_clear (&r);
    }
  for (int k = 1; k < 3; k++)
    g_free (names[k]);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (another_date_changes_the_date_alone)
{
  char *folder = calc_make_folder ();
  make (folder, "a.pdf", TRIAL " --kind both");
  make (folder, "b.pdf",
        "{demo}/club-final.dampwright --setup trial-1 --against baseline --kind "
        "both --date 2019-12-31");
  g_autofree char *a = text_of (folder, "a.pdf");
  g_autofree char *b = text_of (folder, "b.pdf");
  g_autofree char *created = info_of (folder, "b.pdf", "CreationDate");
  ck_assert (!are_equal (folder, "a.pdf", "b.pdf"));
  ck_assert_str_eq (created, "Tue Dec 31 00:00:00 2019 UTC");
  GString *same = g_string_new (a);
  ck_assert_uint_eq (g_string_replace (same, "2026-05-03", "2019-12-31", 0), 2);
  ck_assert_str_eq (same->str, b);
  g_string_free (same, TRUE);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (without_a_date_it_is_today)
{
  char *folder = calc_make_folder ();
  g_autoptr (GDateTime) before = g_date_time_new_now_local ();
  make (folder, "a.pdf", "{demo}/club-final.dampwright");
  g_autoptr (GDateTime) after = g_date_time_new_now_local ();
  g_autofree char *one = g_date_time_format (before, "%Y-%m-%d");
  g_autofree char *other = g_date_time_format (after, "%Y-%m-%d");
  g_autofree char *text = text_of (folder, "a.pdf");
  /* the test may run over midnight */
  ck_assert (strstr (text, one) != NULL || strstr (text, other) != NULL);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_picture_is_one_page)
{
  gsize length;
  char *folder = calc_make_folder ();
  make (folder, "a.png", TRIAL " --kind both --page 2 --dpi 72");
  make (folder, "b.png", TRIAL " --kind card --dpi 72");
  make (folder, "c.png", TRIAL " --kind both --dpi 72");
  make (folder, "d.png", TRIAL " --paper letter");
  make (folder, "e.svg", TRIAL " --kind both --page 2");
  g_autofree char *a = read_file (folder, "a.png", &length);
  g_autofree char *d = read_file (folder, "d.png", &length);
  g_autofree char *e = read_file (folder, "e.svg", &length);
  ck_assert_mem_eq (a + 16, "\0\0\x02\x53\0\0\x03\x4a", 8); /* 595 by 842 */
  ck_assert_mem_eq (d + 16, "\0\0\x04\xfb\0\0\x06\x72", 8); /* 1275 by 1650, 150 an inch */
  ck_assert (!are_equal (folder, "a.png", "c.png"));
  /* the card's page of both is not that of the card alone: it says "page 2 of 2" */
  ck_assert (!are_equal (folder, "a.png", "b.png"));
  ck_assert_ptr_nonnull (strstr (e, "<svg"));
  ck_assert_ptr_nonnull (strstr (e, "<title>Rear quicker on rebound"));
  calc_remove_folder (folder);
}
END_TEST

/* ---- long and foreign ---- */

static void
save (const dw_project *project, const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;
  ck_assert_msg (dw_project_save (project, path, &error), "%s",
                 error != NULL ? error->message : "");
}

START_TEST (long_notes_go_on_over_the_pages)
{
  char *folder = calc_make_folder ();
  g_autoptr (dw_project) project = calc_load ("{demo}/club-final.dampwright");
  GString *notes = g_string_new (NULL);
  for (int i = 1; notes->len + 6 <= DW_PROJECT_MAX_NOTES; i++)
    g_string_append_printf (notes, "n%04d%c", i, i % 40 == 0 ? '\n' : ' ');
  ck_assert (dw_project_set_setup_notes (project, 1, notes->str));
  ck_assert (dw_project_set_notes (project, ""));
  save (project, folder, "x.dampwright");
  g_autofree char *arguments = g_strdup_printf ("'%s/x.dampwright' --setup trial-1", folder);
  make (folder, "a.pdf", arguments);
  g_autofree char *text = text_of (folder, "a.pdf");
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f", 0);
  int next = 1;
  for (char **w = words; *w != NULL; w++)
    if ((*w)[0] == 'n' && strlen (*w) == 5 && g_ascii_isdigit ((*w)[1]))
      ck_assert_int_eq (g_ascii_strtoll (*w + 1, NULL, 10), next++);
  ck_assert_int_eq (next - 1, DW_PROJECT_MAX_NOTES / 6);
  ck_assert_int_ge (pages_of (folder, "a.pdf"), 2);
  expect_in_order (
      text, (const char *[]){ "continued on page 2", "Rear quicker on rebound, continued", NULL });
  g_string_free (notes, TRUE);
  calc_remove_folder (folder);
}
END_TEST

/* Letters come in their places on paper; which ones they are must be in the file. */
START_TEST (foreign_letters_can_be_searched)
{
  static const char *const words[] = { "\u05db\u05d9\u05d5\u05d5\u05e0\u05d5\u05df",
                                       "\u0434\u0435\u043c\u043f\u0444\u0435\u0440",
                                       "\u03ac\u03bb\u03bc\u03b1" };
  char *folder = calc_make_folder ();
  g_autoptr (dw_project) project = calc_load ("{demo}/club-final.dampwright");
  for (int i = 0; i < N_ENTRIES (words); i++)
    {
      ck_assert (dw_project_rename_setup (project, 1, words[i]));
      save (project, folder, "x.dampwright");
      g_autofree char *arguments = g_strdup_printf ("'%s/x.dampwright' --setup trial-1", folder);
      make (folder, "a.pdf", arguments);
      /* the raw order is that on paper, from left to right */
      g_autofree char *text = ask ("pdftotext", "-layout -enc UTF-8", folder, "a.pdf");
      ck_assert_msg (strstr (text, words[i]) != NULL, "%s", text);
      g_autofree char *fonts = ask ("pdffonts", "", folder, "a.pdf");
      ck_assert_ptr_null (strstr (fonts, " no "));
    }
  calc_remove_folder (folder);
}
END_TEST

START_TEST (two_hundred_setups_have_their_heads_on_every_page)
{
  char *folder = calc_make_folder ();
  g_autoptr (dw_project) project = calc_load ("{demo}/club-final.dampwright");
  const dw_setup first = *dw_project_get_setup (project, 0);
  for (int i = 3; i < 200; i++)
    {
      g_autofree char *name = g_strdup_printf ("Trial number %d", i);
      ck_assert_int_eq (dw_project_add_setup (project, NULL, name, &first.damper[DW_FRONT],
                                              &first.damper[DW_REAR]),
                        i);
    }
  save (project, folder, "x.dampwright");
  g_autofree char *arguments = g_strdup_printf ("'%s/x.dampwright' --kind all", folder);
  make (folder, "a.pdf", arguments);
  g_autofree char *text = text_of (folder, "a.pdf");
  const int n = pages_of (folder, "a.pdf");
  int n_heads = 0;
  for (const char *at = strstr (text, "Built from"); at != NULL; at = strstr (at + 1, "Built from"))
    n_heads++;
  ck_assert_int_ge (n, 20);
  ck_assert_int_eq (n_heads, n);
  ck_assert_ptr_nonnull (strstr (text, "Trial number 199"));
  calc_remove_folder (folder);
}
END_TEST

/* ---- what cannot be told ---- */

static const struct
{
  const char *arguments;
  int status;
  const char *piece;
} refused[] = {
  { "{demo}/club-final.dampwright --setup nobody", 1, "no setup \"nobody\"" },
  { "{demo}/club-final.dampwright --against nobody", 1, "no setup \"nobody\"" },
  { "{data}/valid/empty.dampwright", 1, "there is no setup to tell" },
  { "{data}/valid/empty.dampwright --kind card", 1, "there is no setup to tell" },
  { "{data}/malformed/no-bore.dampwright", 1, "no-bore.dampwright" },
  { "{demo}/none.dampwright", 3, "none.dampwright" },
};

START_TEST (what_cannot_be_told_is_said_and_the_old_file_stays)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "x.pdf", NULL);
  g_autofree char *text = NULL;
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  calc_result r = calc_run ("sheet %s -o '%s'", refused[_i].arguments, path);
  ck_assert_msg (r.status == refused[_i].status, "%d: %s", r.status, r.err);
  ck_assert_msg (calc_says (r.err, refused[_i].piece), "%s", r.err);
  ck_assert_str_eq (r.out, "");
  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  ck_assert_str_eq (text, "old");
  calc_expect_files (folder, 1);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_page_that_is_not_there_is_refused)
{
  char *folder = calc_make_folder ();
  calc_result r = calc_run ("sheet %s --kind both --page 3 -o '%s/x.png'", TRIAL, folder);
  ck_assert_int_eq (r.status, 1);
  ck_assert_msg (calc_says (r.err, "--page 3: the sheet has 2, allowed 1 to 2"), "%s", r.err);
  calc_expect_files (folder, 0);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_setup_is_to_be_named_when_none_is_fitted)
{
  char *folder = calc_make_folder ();
  g_autoptr (dw_project) project = calc_load ("{demo}/club-final.dampwright");
  ck_assert (dw_project_set_fitted (project, NULL));
  save (project, folder, "x.dampwright");
  calc_result r = calc_run ("sheet '%s/x.dampwright' -o '%s/x.pdf'", folder, folder);
  ck_assert_int_eq (r.status, 1);
  ck_assert_msg (calc_says (r.err, "no setup is fitted; --setup has to name one"), "%s", r.err);
  calc_result_clear (&r);
  g_autofree char *named = g_strdup_printf ("'%s/x.dampwright' --setup trial-1 --kind both",
                                            folder);
  make (folder, "a.pdf", named);
  g_autofree char *text = text_of (folder, "a.pdf");
  ck_assert (!calc_says (text, "What differs from"));
  ck_assert (calc_says (text, "built from new parts"));
  calc_remove_folder (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-sheet");
  TCase *tc = tcase_create ("sheet");
  tcase_set_timeout (tc, 60);
  tcase_add_test (tc, every_value_of_both_dampers_is_on_page_one);
  tcase_add_loop_test (tc, figures_are_those_of_the_study, 0, 2);
  tcase_add_loop_test (tc, a_pdf_says_what_it_is, 0, N_ENTRIES (kinds));
  tcase_add_loop_test (tc, fonts_are_embedded_and_can_be_searched, 0, N_ENTRIES (kinds));
  tcase_add_loop_test (tc, the_same_input_gives_the_same_bytes, 0, 6);
  tcase_add_test (tc, another_date_changes_the_date_alone);
  tcase_add_test (tc, without_a_date_it_is_today);
  tcase_add_test (tc, a_picture_is_one_page);
  tcase_add_test (tc, long_notes_go_on_over_the_pages);
  tcase_add_test (tc, foreign_letters_can_be_searched);
  tcase_add_test (tc, two_hundred_setups_have_their_heads_on_every_page);
  tcase_add_loop_test (tc, what_cannot_be_told_is_said_and_the_old_file_stays, 0,
                       N_ENTRIES (refused));
  tcase_add_test (tc, a_page_that_is_not_there_is_refused);
  tcase_add_test (tc, a_setup_is_to_be_named_when_none_is_fitted);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
