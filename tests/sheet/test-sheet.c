/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whole sheets: what stands on page one, the laws of every page, the same bytes, other languages. */

#include <glib/gi18n.h>
#include <locale.h>
#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"

/* ---- the laws ---- */

static const char *const kind_names[DW_N_SHEETS] = { [DW_SHEET_SETUP] = "setup",
                                                     [DW_SHEET_CARD] = "card",
                                                     [DW_SHEET_BOTH] = "both",
                                                     [DW_SHEET_BLANK] = "blank",
                                                     [DW_SHEET_SUMMARY] = "all" };

/* Paper, units, quantity and comparison in turns. */
enum
{
  N_LOOKS = 8
};

static void
choose_look (dw_sheet_options *options, int look)
{
  options->paper = look % 2 == 0 ? DW_PAPER_A4 : DW_PAPER_LETTER;
  options->units = look / 2 % 2 == 0 ? DW_UNITS_METRIC : SAMPLE_INCHES;
  options->shows_damping = look / 4 == 1;
}

/* One sheet, and the same without a setup to compare with where that is another. */
static void
expect_lawful_kind (const dw_project *project, dw_sheet_kind kind, int look, const char *why)
{
  dw_sheet_options options = sample_sheet_options (project);
  choose_look (&options, look);
  g_autofree char *name = g_strdup_printf ("%s, %s, look %d", why, kind_names[kind], look);
  g_autoptr (dw_sheet) sheet = sample_sheet (kind, &options);
  expect_lawful (sheet, name);
  if (kind == DW_SHEET_BLANK || kind == DW_SHEET_SUMMARY)
    return;
  options.against = NULL;
  g_autoptr (dw_sheet) alone = sample_sheet (kind, &options);
  expect_lawful (alone, name);
}

static void
expect_lawful_kinds (const dw_project *project, const char *why, int first_look, int step)
{
  for (int look = first_look; look < N_LOOKS; look += step)
    for (int kind = 0; kind < DW_N_SHEETS; kind++)
      expect_lawful_kind (project, (dw_sheet_kind)kind, look, why);
}

/* The same pages but for their numbers: both are sheet and card. */
static void
expect_lawful_pages (const dw_project *project, const char *why, int first_look, int step)
{
  for (int look = first_look; look < N_LOOKS; look += step)
    for (int kind = DW_SHEET_BOTH; kind < DW_N_SHEETS; kind++)
      expect_lawful_kind (project, (dw_sheet_kind)kind, look, why);
}

static const char *const demos[] = { "club-final", "early-void", "smooth-indoor" };

START_TEST (every_page_of_the_demos_is_lawful)
{
  g_autoptr (dw_project) project = sample_demo (demos[_i]);
  expect_lawful_kinds (project, demos[_i], _i % 2, 2);
}
END_TEST

START_TEST (every_page_of_an_extreme_project_is_lawful)
{
  g_autoptr (dw_project) project = sample_extremes[_i].make ();
  expect_lawful_pages (project, sample_extremes[_i].why, _i % 5, 5);
}
END_TEST

START_TEST (every_page_of_any_project_is_lawful)
{
  test_random r = test_random_new ((uint64_t)(9100 + _i));
  for (int k = 0; k < 4; k++)
    {
      g_autofree char *why = g_strdup_printf ("seed %d.%d", _i, k);
      g_autoptr (dw_project) project = sample_random_project (&r, k % 2 == 1);
      dw_sheet_options options = sample_sheet_options (project);
      choose_look (&options, (_i + k) % N_LOOKS);
      g_autoptr (dw_sheet) both = sample_sheet (DW_SHEET_BOTH, &options);
      g_autoptr (dw_sheet) all = sample_sheet (DW_SHEET_SUMMARY, &options);
      expect_lawful (both, why);
      expect_lawful (all, why);
    }
}
END_TEST

/* ---- nothing is lost ---- */

START_TEST (long_notes_go_on_and_are_all_there)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autofree char *own = sample_long_notes ('a');
  g_autofree char *general = sample_long_notes ('b');
  ck_assert (dw_project_set_setup_notes (project, 1, own));
  if (_i == 0)
    ck_assert (dw_project_set_notes (project, general));
  else
    ck_assert (dw_project_set_notes (project, ""));
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SETUP, &options);
  g_autofree char *words = sample_words (sheet);
  expect_long_notes (words, 'a');
  if (_i == 0)
    expect_long_notes (words, 'b');
  const int n = dw_sheet_get_n_pages (sheet);
  ck_assert_int_ge (n, 2);
  ck_assert_int_eq (count_pieces (words, "Rear quicker on rebound, continued\n"), n - 1);
  g_auto (GStrv) pages = g_strsplit (words, "\f", 0);
  for (int page = 0; page < n; page++)
    {
      g_autofree char *foot = page + 1 < n ? g_strdup_printf (
                                  "page %d of %d, continued on page %d\n", page + 1, n, page + 2)
                                           : g_strdup_printf ("page %d of %d\n", page + 1, n);
      ck_assert_msg (g_str_has_suffix (pages[page], foot), "%s", pages[page]);
      ck_assert (dw_sheet_goes_on (sheet, page) == (page + 1 < n));
    }
}
END_TEST

START_TEST (a_long_name_is_told_whole)
{
  g_autoptr (dw_project) project = sample_project ();
  GString *name = g_string_new (NULL);
  for (int i = 0; i < 50; i++)
    g_string_append_printf (name, "W%03d", i);
  ck_assert (dw_project_rename_setup (project, 1, name->str));
  ck_assert (dw_project_set_meeting (project, DW_MEETING_DRIVER, name->str));
  const dw_sheet_options options = sample_sheet_options (project);
  for (int kind = 0; kind < DW_N_SHEETS; kind++)
    {
      g_autoptr (dw_sheet) sheet = sample_sheet ((dw_sheet_kind)kind, &options);
      g_autofree char *words = sample_words (sheet);
      ck_assert (kind == DW_SHEET_BLANK || strstr (words, name->str) != NULL);
    }
  g_string_free (name, TRUE);
}
END_TEST

START_TEST (right_to_left_words_are_all_there)
{
  g_autoptr (dw_project) project = sample_project ();
  static const char name[] = "\u05db\u05d9\u05d5\u05d5\u05df 12 \u0636\u0628\u0637 mm";
  ck_assert (dw_project_rename_setup (project, 1, name));
  ck_assert (dw_project_set_setup_notes (project, 1, name));
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SETUP, &options);
  g_autofree char *words = sample_words (sheet);
  ck_assert_int_ge (count_pieces (words, name), 2);
}
END_TEST

START_TEST (two_hundred_setups_have_their_heads_on_every_page)
{
  g_autoptr (dw_project) project = sample_many_setups (200);
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SUMMARY, &options);
  g_autofree char *words = sample_words (sheet);
  const int n = dw_sheet_get_n_pages (sheet);
  ck_assert_int_ge (n, 20);
  ck_assert_int_eq (count_pieces (words, "\nBuilt from\n"), n);
  for (int i = 3; i < 200; i++)
    {
      g_autofree char *name = g_strdup_printf ("\nTrial number %d\n", i);
      ck_assert_int_eq (count_pieces (words, name), 1);
    }
  expect_lawful (sheet, "200 setups");
}
END_TEST

/* ---- what there is none of ---- */

START_TEST (a_project_without_setups_has_a_blank_sheet_and_a_table)
{
  g_autoptr (dw_project) project = dw_project_new_empty ();
  const dw_sheet_options options = sample_sheet_options (project);
  ck_assert_ptr_null (options.setup);
  g_autoptr (dw_sheet) blank = sample_sheet (DW_SHEET_BLANK, &options);
  g_autoptr (dw_sheet) all = sample_sheet (DW_SHEET_SUMMARY, &options);
  expect_lawful (blank, "blank");
  expect_lawful (all, "all");
  ck_assert_int_eq (dw_sheet_get_n_pages (blank), 1);
  ck_assert_int_eq (dw_sheet_get_n_pages (all), 1);
  ck_assert_str_eq (dw_sheet_get_title (blank), "Setup sheet");
  ck_assert_str_eq (dw_sheet_get_title (all), "All setups");
}
END_TEST

START_TEST (a_setup_is_not_compared_with_itself)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.against = options.setup;
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SETUP, &options);
  g_autofree char *words = sample_words (sheet);
  ck_assert_ptr_null (strstr (words, "What differs"));
  ck_assert_ptr_null (strstr (words, "="));
}
END_TEST

START_TEST (a_damper_that_cannot_be_computed_is_named)
{
  static const dw_sheet_kind kinds[] = { DW_SHEET_SETUP, DW_SHEET_BOTH, DW_SHEET_SUMMARY };
  g_autoptr (dw_project) project = sample_project ();
  dw_project_edit_setup (project, 1)->damper[DW_REAR].body.rod = 1.0;
  const dw_sheet_options options = sample_sheet_options (project);
  for (int i = 0; i < N_ENTRIES (kinds); i++)
    {
      dw_sheet_failure failure = { 0 };
      ck_assert_ptr_null (dw_sheet_new (kinds[i], &options, &failure));
      ck_assert_ptr_eq (failure.setup, options.setup);
      ck_assert_int_eq ((int)failure.axle, DW_REAR);
      ck_assert_str_eq (failure.finding.field, "body.rod");
      ck_assert_ptr_null (dw_sheet_new (kinds[i], &options, NULL));
    }
  dw_sheet_free (NULL);
}
END_TEST

/* ---- pages and files ---- */

START_TEST (both_are_the_sheet_and_then_the_card)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_BOTH, &options);
  ck_assert_int_eq (dw_sheet_get_n_pages (sheet), 2);
  /* the card is no continuation of the sheet */
  ck_assert (!dw_sheet_goes_on (sheet, 0));
  g_autofree char *words = sample_words (sheet);
  expect_in_order (words, (const char *[]){ "\nSetup sheet\n", "\npage 1 of 2\n", "\f",
                                            "\nBench card\n", "\npage 2 of 2\n", NULL });
}
END_TEST

START_TEST (a_title_names_setup_and_project)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SETUP, &options);
  ck_assert_str_eq (dw_sheet_get_title (sheet),
                    "Rear quicker on rebound – Rough club final, drying track (invented example)");
  dw_project_set_title (project, "");
  dw_project_rename_setup (project, 1, "");
  g_autoptr (dw_sheet) nameless = sample_sheet (DW_SHEET_SETUP, &options);
  ck_assert_str_eq (dw_sheet_get_title (nameless), "trial-1");
}
END_TEST

static GBytes *
render (dw_sheet *sheet, dw_export_kind kind, int first, int n)
{
  g_autoptr (GError) error = NULL;
  const dw_drawing drawing = dw_sheet_drawing (sheet, first, n);
  GBytes *bytes = dw_export_render (&drawing, kind, &error);
  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "");
  return bytes;
}

static GBytes *
render_kind (const dw_project *project, dw_sheet_kind kind, dw_export_kind format, const char *date)
{
  dw_sheet_options options = sample_sheet_options (project);
  options.date = date;
  g_autoptr (dw_sheet) sheet = sample_sheet (kind, &options);
  return render (sheet, format, 0, format == DW_EXPORT_PDF ? dw_sheet_get_n_pages (sheet) : 1);
}

START_TEST (the_same_input_gives_the_same_bytes)
{
  static const dw_export_kind formats[] = { DW_EXPORT_PDF, DW_EXPORT_SVG, DW_EXPORT_PNG };
  for (int i = 0; i < N_ENTRIES (formats); i++)
    {
      g_autoptr (dw_project) project = sample_project ();
      g_autoptr (GBytes) first = render_kind (project, (dw_sheet_kind)_i, formats[i], "2026-05-03");
      g_autoptr (dw_project) again = sample_project ();
      g_autoptr (GBytes) second = render_kind (again, (dw_sheet_kind)_i, formats[i], "2026-05-03");
      ck_assert_msg (g_bytes_equal (first, second), "%s, %s", kind_names[_i],
                     dw_export_kind_name (formats[i]));
    }
}
END_TEST

/* Kind, place and stroke of all that stands on a page; of texts the words as well when they are no
 * date. */
static char *
list_items (const dw_sheet *sheet, const char *date)
{
  GString *list = g_string_new (NULL);
  for (int page = 0; page < dw_sheet_get_n_pages (sheet); page++)
    {
      const dw_block *block = dw_sheet_get_page (sheet, page);
      for (guint i = 0; i < block->items->len; i++)
        {
          const dw_item *item = &g_array_index (block->items, dw_item, i);
          const char *text = item->kind == DW_ITEM_TEXT ? pango_layout_get_text (item->text) : "";
          const bool is_date = strcmp (text, date) == 0;
          g_string_append_printf (list, "%d %d %.3f %.3f %s\n", page, (int)item->kind,
                                  is_date ? 0.0 : item->box.x, item->box.y,
                                  is_date ? "date" : text);
        }
    }
  return g_string_free (list, FALSE);
}

START_TEST (another_date_changes_nothing_else)
{
  static const char *const dates[] = { "2026-05-03", "1999-12-31" };
  g_autoptr (dw_project) project = sample_project ();
  char *lists[2];
  for (int i = 0; i < 2; i++)
    {
      dw_sheet_options options = sample_sheet_options (project);
      options.date = dates[i];
      g_autoptr (dw_sheet) sheet = sample_sheet ((dw_sheet_kind)_i, &options);
      lists[i] = list_items (sheet, dates[i]);
      ck_assert_str_eq (dw_sheet_drawing (sheet, 0, 1).date, dates[i]);
      ck_assert_int_eq (count_pieces (lists[i], " date\n"), _i == DW_SHEET_BLANK  ? 0
                                                            : _i == DW_SHEET_BOTH ? 2
                                                                                  : 1);
    }
  ck_assert_str_eq (lists[0], lists[1]);
  g_free (lists[0]);
  g_free (lists[1]);
}
END_TEST

START_TEST (a_page_is_painted_on_white)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_BOTH, &options);
  const int width = (int)dw_sheet_get_width (sheet);
  const int height = (int)dw_sheet_get_height (sheet);
  ck_assert_int_eq (width, 595);
  ck_assert_int_eq (height, 841);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  dw_sheet_paint (sheet, 1, cr);
  cairo_surface_flush (surface);
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  int n_dark = 0;
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        const unsigned char *p = data + y * stride + 4 * x;
        const bool in_margin = x < 34 || y < 34 || x > width - 35 || y > height - 35;
        ck_assert_int_eq (p[3], 255);
        ck_assert (!in_margin || p[0] == 255);
        n_dark += p[0] < 128;
      }
  ck_assert_int_gt (n_dark, 5000);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}
END_TEST

/* ---- other languages ---- */

static const struct
{
  const char *locale;
  const char *language;
  const char *words[7]; /* some that must be there, in this order */
} languages[] = {
  { "de_DE.UTF-8",
    "de",
    { "Abstimmungsblatt", "Versuch: eine Idee", "Strecke", "Vorn", "Ausfederweg", "Unterschiede zu",
      "Werkbankkarte" } },
  { "fr_FR.UTF-8",
    "fr",
    { "Fiche de réglage", "essai", "Piste", "Avant", "Course détente", "Différences avec",
      "Fiche d’atelier" } },
  { "es_ES.UTF-8",
    "es",
    { "Hoja de reglaje", "prueba: una idea", "Circuito", "Delante", "Extensión", "Diferencias con",
      "Ficha de taller" } },
};

static bool
speak (int i)
{
  if (!test_use_locale (languages[i].locale))
    return false;
  ck_assert_ptr_nonnull (g_getenv ("DAMPWRIGHT_LOCALE_DIR"));
  g_setenv ("LANGUAGE", languages[i].language, TRUE);
  bindtextdomain ("dampwright", g_getenv ("DAMPWRIGHT_LOCALE_DIR"));
  bind_textdomain_codeset ("dampwright", "UTF-8");
  textdomain ("dampwright");
  return true;
}

/* What people write into a project may be English: here it is none of any language. */
static dw_project *
wordless_project (dw_project *project)
{
  static const char text[] = "Xx";
  dw_project_set_title (project, text);
  for (int i = 0; i < DW_N_MEETING; i++)
    dw_project_set_meeting (project, (dw_meeting_field)i, text);
  dw_project_set_notes (project, text);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    {
      g_autofree char *name = g_strdup_printf ("Xx%u", i);
      dw_project_rename_setup (project, i, name);
      dw_project_set_setup_notes (project, i, text);
    }
  dw_parts *parts = dw_project_edit_parts (project);
  for (guint i = 0; i < parts->pistons->len; i++)
    {
      dw_spare_piston *p = &g_array_index (parts->pistons, dw_spare_piston, i);
      g_free (p->name);
      p->name = g_strdup (text);
    }
  return project;
}

static char *
all_words (const dw_project *project, dw_units units)
{
  GString *all = g_string_new (NULL);
  for (int kind = 0; kind < DW_N_SHEETS; kind++)
    {
      dw_sheet_options options = sample_sheet_options (project);
      options.units = units;
      options.shows_damping = kind % 2 == 1;
      options.file_name = "Xx";
      for (int alone = 0; alone < 2; alone++)
        {
          options.against = alone == 1 ? NULL : sample_sheet_options (project).against;
          g_autoptr (dw_sheet) sheet = sample_sheet ((dw_sheet_kind)kind, &options);
          g_autofree char *words = sample_words (sheet);
          g_string_append (all, words);
        }
    }
  return g_string_free (all, FALSE);
}

static bool
has_letters (const char *text)
{
  int n = 0;
  for (const char *c = text; *c != '\0'; c++)
    n += g_ascii_isalpha (*c);
  return n > 3;
}

/* Lines that are the same in English and in the language. */
static const char *const shared_lines[] = {
  "c in N s/m", "c in lbf s/in", "Shim",                                 /* German */
  "Notes",      "Piston",        "Comp.", "Reb.", "compression", "Date", /* French, Spanish */
  "Pack",       "Dampwright",    "Xx",
};

static bool
is_shared (const char *line)
{
  for (int i = 0; i < N_ENTRIES (shared_lines); i++)
    if (g_str_has_prefix (line, shared_lines[i]))
      return true;
  /* numbers with their units, and what is put together of such */
  return !has_letters (line) || strpbrk (line, "0123456789") != NULL;
}

/* English words that no other language here has, in what is put together of several texts. */
static const char *const english[]
    = { "the",   "and",     "with",      "of",      "opens",   "hole",   "holes",   "thick",
        "shaft", "stroke",  "bore",      "spring",  "oil",     "shim",   "shims",   "seal",
        "long",  "preload", "hub",       "outside", "lift",    "limit",  "drill",   "front",
        "rear",  "none",    "clearance", "Speed",   "speed",   "softer", "firmer",  "same",
        "fill",  "damper",  "stack",     "open",    "covered", "built",  "bladder", "thinning" };

static bool
has_word (const char *line, const char *word)
{
  g_auto (GStrv) words = g_strsplit_set (line, " ,.;:!?()“”\n", 0);
  return g_strv_contains ((const char *const *)words, word);
}

START_TEST (no_english_is_left)
{
  g_autoptr (dw_project) one = wordless_project (sample_extremes[8].make ());
  g_autoptr (dw_project) two = wordless_project (sample_project ());
  const dw_project *const projects[] = { one, two };
  char *before[2];
  for (int i = 0; i < 2; i++)
    before[i] = all_words (projects[i], DW_UNITS_METRIC);
  if (speak (_i))
    for (int i = 0; i < 2; i++)
      {
        g_autofree char *there = all_words (projects[i], DW_UNITS_METRIC);
        g_auto (GStrv) old = g_strsplit_set (before[i], "\n\f", 0);
        g_auto (GStrv) lines = g_strsplit_set (there, "\n\f", 0);
        for (char **line = lines; *line != NULL; line++)
          {
            ck_assert_msg (is_shared (*line) || !g_strv_contains ((const char *const *)old, *line),
                           "%s: \"%s\" is English", languages[_i].language, *line);
            for (int k = 0; k < N_ENTRIES (english); k++)
              ck_assert_msg (!has_word (*line, english[k]), "%s: \"%s\" in \"%s\"",
                             languages[_i].language, english[k], *line);
          }
      }
  g_free (before[0]);
  g_free (before[1]);
}
END_TEST

/* A point between two digits is no decimal sign there; the version has some. */
static void
expect_commas (const char *words)
{
  g_auto (GStrv) lines = g_strsplit_set (words, "\n\f", 0);
  for (char **line = lines; *line != NULL; line++)
    if (!g_str_has_prefix (*line, "Dampwright"))
      for (const char *c = strchr (*line, '.'); c != NULL; c = strchr (c + 1, '.'))
        ck_assert_msg (c == *line || !g_ascii_isdigit (c[-1]) || !g_ascii_isdigit (c[1]), "%s",
                       *line);
}

START_TEST (a_language_has_its_words_and_commas)
{
  if (!speak (_i))
    return;
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_BOTH, &options);
  g_autofree char *words = sample_words (sheet);
  const char *pieces[N_ENTRIES (languages[0].words) + 1] = { NULL };
  memcpy (pieces, languages[_i].words, sizeof languages[_i].words);
  expect_in_order (words, pieces);
  ck_assert_ptr_nonnull (strstr (words, "6 × 1,35 mm"));
  ck_assert_ptr_nonnull (strstr (words, "0,05 m/s"));
  expect_commas (words);
}
END_TEST

/* A head that is broken stands in two rows, with its letters anywhere. */
START_TEST (heads_of_narrow_columns_stay_on_their_line)
{
  static const char *const heads[] = { "Comp.", "Reb.", "change", "Share", "Ratio", "L", "R" };
  if (!speak (_i))
    return;
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet) both = sample_sheet (DW_SHEET_BOTH, &options);
  g_autoptr (dw_sheet) all = sample_sheet (DW_SHEET_SUMMARY, &options);
  int n = 0;
  for (int page = 0; page < dw_sheet_get_n_pages (both) + 1; page++)
    {
      const dw_block *block = page == 0 ? dw_sheet_get_page (all, 0)
                                        : dw_sheet_get_page (both, page - 1);
      for (guint i = 0; i < block->items->len; i++)
        {
          const dw_item *item = &g_array_index (block->items, dw_item, i);
          for (int k = 0; item->kind == DW_ITEM_TEXT && k < N_ENTRIES (heads); k++)
            if (strcmp (pango_layout_get_text (item->text),
                        g_dpgettext2 ("dampwright", "narrow", heads[k]))
                == 0)
              {
                ck_assert_msg (pango_layout_get_line_count (item->text) == 1, "%s: %s",
                               languages[_i].language, pango_layout_get_text (item->text));
                n++;
              }
        }
    }
  /* two tables of six, five in the summary, two columns with L and R */
  ck_assert_int_ge (n, 2 * 6 + 5 + 2 * 2);
}
END_TEST

START_TEST (a_language_keeps_the_laws)
{
  if (!speak (_i))
    return;
  for (int demo = 0; demo < N_ENTRIES (demos); demo++)
    {
      g_autoptr (dw_project) project = sample_demo (demos[demo]);
      g_autofree char *why = g_strdup_printf ("%s, %s", languages[_i].language, demos[demo]);
      expect_lawful_pages (project, why, demo, 3);
      /* one page is what a team mate wants */
      const dw_sheet_options options = sample_sheet_options (project);
      g_autoptr (dw_sheet) sheet = sample_sheet (DW_SHEET_SETUP, &options);
      ck_assert_msg (dw_sheet_get_n_pages (sheet) == 1, "%s needs %d pages", why,
                     dw_sheet_get_n_pages (sheet));
    }
  for (int i = 0; i < n_sample_extremes; i++)
    {
      g_autoptr (dw_project) project = sample_extremes[i].make ();
      g_autofree char *why = g_strdup_printf ("%s, %s", languages[_i].language,
                                              sample_extremes[i].why);
      expect_lawful_pages (project, why, i % N_LOOKS, N_LOOKS);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/sheet");
  TCase *tcase = tcase_create ("sheet");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, every_page_of_the_demos_is_lawful, 0, N_ENTRIES (demos));
  tcase_add_loop_test (tcase, every_page_of_an_extreme_project_is_lawful, 0, n_sample_extremes);
  tcase_add_loop_test (tcase, every_page_of_any_project_is_lawful, 0, 10);
  tcase_add_loop_test (tcase, long_notes_go_on_and_are_all_there, 0, 2);
  tcase_add_test (tcase, a_long_name_is_told_whole);
  tcase_add_test (tcase, right_to_left_words_are_all_there);
  tcase_add_test (tcase, two_hundred_setups_have_their_heads_on_every_page);
  tcase_add_test (tcase, a_project_without_setups_has_a_blank_sheet_and_a_table);
  tcase_add_test (tcase, a_setup_is_not_compared_with_itself);
  tcase_add_test (tcase, a_damper_that_cannot_be_computed_is_named);
  tcase_add_test (tcase, both_are_the_sheet_and_then_the_card);
  tcase_add_test (tcase, a_title_names_setup_and_project);
  tcase_add_loop_test (tcase, the_same_input_gives_the_same_bytes, 0, DW_N_SHEETS);
  tcase_add_loop_test (tcase, another_date_changes_nothing_else, 0, DW_N_SHEETS);
  tcase_add_test (tcase, a_page_is_painted_on_white);
  tcase_add_loop_test (tcase, no_english_is_left, 0, N_ENTRIES (languages));
  tcase_add_loop_test (tcase, a_language_has_its_words_and_commas, 0, N_ENTRIES (languages));
  tcase_add_loop_test (tcase, heads_of_narrow_columns_stay_on_their_line, 0, N_ENTRIES (languages));
  tcase_add_loop_test (tcase, a_language_keeps_the_laws, 0, N_ENTRIES (languages));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
