/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-print.h"

#include <string.h>

#include "window-fixture.h"

static dw_project *project;

static dw_sheet *
make (dw_paper paper, gpointer data)
{
  const dw_sheet_options options = { .project = project,
                                     .setup = dw_project_get_fitted (project),
                                     .paper = paper,
                                     .date = "2026-01-01" };
  *(dw_paper *)data = paper;
  return dw_sheet_new (DW_SHEET_BOTH, &options, NULL);
}

static dw_sheet *
make_none (dw_paper paper, gpointer data)
{
  *(dw_paper *)data = paper;
  return NULL;
}

static char *
path_of (const char *name)
{
  return g_build_filename (fixture_folder (), name, NULL);
}

/* Bytes, NUL among them. */
static bool
holds (const char *path, const char *piece)
{
  g_autofree char *data = NULL;
  gsize length = 0;
  const gsize n = strlen (piece);
  ck_assert_msg (g_file_get_contents (path, &data, &length, NULL), "%s", path);
  for (gsize i = 0; i + n <= length; i++)
    if (memcmp (data + i, piece, n) == 0)
      return true;
  return false;
}

static void
start (void)
{
  fixture_start ();
  project = dw_project_new ();
}

static void
stop (void)
{
  dw_project_free (project);
  fixture_stop ();
}

START_TEST (a_job_has_the_pages_of_the_sheet_on_the_chosen_paper)
{
  static const struct
  {
    dw_paper paper;
    const char *box;
    const char *why;
  } rows[] = {
    { DW_PAPER_A4, "/MediaBox [ 0 0 595.", "210 mm wide" },
    { DW_PAPER_LETTER, "/MediaBox [ 0 0 611.99", "8.5 x 11 in" },
  };
  g_autofree char *kept = path_of ("print.ini");
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (DwSheetPrint) print = dw_sheet_print_new (kept);
      g_autoptr (GError) error = NULL;
      g_autofree char *path = path_of (dw_paper_name (rows[i].paper));
      dw_paper made = DW_N_PAPERS;
      dw_sheet_print_set_paper (print, rows[i].paper);
      ck_assert (dw_sheet_print_run (print, NULL, "A job", make, &made, path, &error));
      ck_assert_ptr_null (error);
      ck_assert_int_eq ((int)made, (int)rows[i].paper);
      ck_assert_msg (holds (path, rows[i].box), "%s", rows[i].why);
      ck_assert (holds (path, "/Count 2"));
    }
}
END_TEST

START_TEST (the_paper_is_kept_for_the_next_time)
{
  g_autofree char *kept = path_of ("folder/print.ini");
  g_autoptr (DwSheetPrint) first = dw_sheet_print_new (kept);
  dw_sheet_print_set_paper (first, DW_PAPER_LETTER);
  g_autoptr (DwSheetPrint) second = dw_sheet_print_new (kept);
  ck_assert_int_eq (dw_sheet_print_get_paper (second), DW_PAPER_LETTER);
  dw_sheet_print_set_paper (second, DW_PAPER_A4);
  g_autoptr (DwSheetPrint) third = dw_sheet_print_new (kept);
  ck_assert_int_eq (dw_sheet_print_get_paper (third), DW_PAPER_A4);
}
END_TEST

START_TEST (a_file_that_cannot_be_read_is_as_if_nothing_was_chosen)
{
  g_autofree char *kept = path_of ("print.ini");
  ck_assert (g_file_set_contents (kept, "[Page Setup\n\1\2\3", -1, NULL));
  g_autoptr (DwSheetPrint) print = dw_sheet_print_new (kept);
  dw_sheet_print_set_paper (print, DW_PAPER_A4);
  ck_assert_int_eq (dw_sheet_print_get_paper (print), DW_PAPER_A4);
}
END_TEST

START_TEST (a_folder_that_is_not_there_is_an_error)
{
  g_autofree char *kept = path_of ("print.ini");
  g_autofree char *path = path_of ("no-such-folder/sheet.pdf");
  g_autoptr (DwSheetPrint) print = dw_sheet_print_new (kept);
  g_autoptr (GError) error = NULL;
  dw_paper made;
  ck_assert (!dw_sheet_print_run (print, NULL, "A job", make, &made, path, &error));
  ck_assert_ptr_nonnull (error);
  ck_assert (!g_file_test (path, G_FILE_TEST_EXISTS));
}
END_TEST

START_TEST (a_sheet_that_cannot_be_made_is_not_printed)
{
  g_autofree char *kept = path_of ("print.ini");
  g_autofree char *path = path_of ("none.pdf");
  g_autoptr (DwSheetPrint) print = dw_sheet_print_new (kept);
  dw_paper made;
  ck_assert (!dw_sheet_print_run (print, NULL, "A job", make_none, &made, path, NULL));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/sheet-print");
  TCase *tc = tcase_create ("sheet-print");

  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, start, stop);
  suite_add_tcase (s, tc);
  tcase_add_test (tc, a_job_has_the_pages_of_the_sheet_on_the_chosen_paper);
  tcase_add_test (tc, the_paper_is_kept_for_the_next_time);
  tcase_add_test (tc, a_file_that_cannot_be_read_is_as_if_nothing_was_chosen);
  tcase_add_test (tc, a_folder_that_is_not_there_is_an_error);
  tcase_add_test (tc, a_sheet_that_cannot_be_made_is_not_printed);
  return run_suite (s);
}
