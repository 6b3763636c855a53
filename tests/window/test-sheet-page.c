/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-page.h"

#include <math.h>
#include <string.h>

#include "window-fixture.h"
#include "window/dw-window-private.h"

static DwWindow *window;
static DwSheetPage *page;

static void
open_page (void)
{
  window = fixture_open ("club-final.dampwright");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "sheet");
  page = window->sheet;
  fixture_settle ();
}

static dw_sheet *
sheet_now (void)
{
  return dw_sheet_view_get_sheet (dw_sheet_page_get_view (page));
}

/* All words of the sheet in the view; caller frees. */
static char *
words_now (void)
{
  GString *words = g_string_new (NULL);
  for (int i = 0; i < dw_sheet_get_n_pages (sheet_now ()); i++)
    {
      g_autofree char *text = dw_block_get_words (dw_sheet_get_page (sheet_now (), i));
      g_string_append (words, text);
    }
  return g_string_free (words, FALSE);
}

static void
assert_told (const char *piece, bool is_told)
{
  g_autofree char *words = words_now ();
  ck_assert_msg ((strstr (words, piece) != NULL) == is_told, "\"%s\" is %stold:\n%s", piece,
                 is_told ? "not " : "", words);
}

static gboolean
warm_up (dw_project *project, gpointer data)
{
  (void)data;
  project->conditions.oil_temperature = 33.0;
  return TRUE;
}

static gboolean
thicken (dw_project *project, gpointer data)
{
  (void)data;
  const int index = dw_project_find_index (project, "trial-1");
  dw_project_edit_setup (project, (guint)index)->damper[DW_REAR].oil.viscosity = 555e-6;
  return TRUE;
}

START_TEST (the_page_is_made_when_it_is_first_shown)
{
  window = fixture_open ("club-final.dampwright");
  ck_assert_ptr_null (window->sheet);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "sheet");
  page = window->sheet;
  fixture_settle ();
  ck_assert_ptr_nonnull (sheet_now ());
  assert_told ("Rear quicker on rebound", true);
  assert_told ("What differs from “As qualified”", true);
}
END_TEST

/* What happens while another page is shown is caught up with, and costs nothing until then. */
START_TEST (an_edit_is_on_the_sheet_when_somebody_looks)
{
  open_page ();
  assert_told ("33 °C", false);
  dw_document_edit (dw_window_get_document (window), "Warm up", NULL, warm_up, NULL);
  assert_told ("33 °C", true);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "curves");
  fixture_settle ();
  const dw_sheet *before = sheet_now ();
  dw_document_edit (dw_window_get_document (window), "Thicken", NULL, thicken, NULL);
  fixture_settle ();
  ck_assert_ptr_eq (sheet_now (), before);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "sheet");
  fixture_settle ();
  assert_told ("555 cSt", true);
  dw_document_undo (dw_window_get_document (window));
  assert_told ("555 cSt", false);
}
END_TEST

START_TEST (every_kind_of_pages_can_be_chosen)
{
  static const struct
  {
    dw_sheet_kind kind;
    const char *told;
    const char *why;
  } rows[] = {
    { DW_SHEET_CARD, "Measured after building", "the card alone" },
    { DW_SHEET_BOTH, "What differs from", "both: the sheet" },
    { DW_SHEET_BLANK, "Stack: count and thickness", "to write on" },
    { DW_SHEET_SUMMARY, "Front drilled, thicker oil", "all setups" },
    { DW_SHEET_SETUP, "What differs from", "and back" },
  };
  open_page ();
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      dw_sheet_page_set_kind (page, rows[i].kind);
      fixture_settle ();
      assert_told (rows[i].told, true);
    }
  dw_sheet_page_set_kind (page, DW_SHEET_BOTH);
  ck_assert_int_eq (dw_sheet_get_n_pages (sheet_now ()), 2);
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (page), "2 pages"));
}
END_TEST

/* The n-th drop-down of the page, in the order of the template. */
static GtkDropDown *
drop_down (int n)
{
  GtkWidget *row = gtk_widget_get_first_child (gtk_widget_get_first_child (GTK_WIDGET (page)));
  GtkWidget *child = gtk_widget_get_first_child (row);
  for (; n > 0; n--)
    child = gtk_widget_get_next_sibling (child);
  return GTK_DROP_DOWN (child);
}

START_TEST (what_it_is_compared_with_is_chosen)
{
  open_page ();
  GtkDropDown *against = drop_down (1);
  gtk_drop_down_set_selected (against, 1);
  assert_told ("What differs from", false);
  gtk_drop_down_set_selected (against, 4);
  assert_told ("What differs from “Front drilled, thicker oil”", true);
  /* the choice lasts while setups come and go, until the one that is meant is gone */
  gtk_widget_activate_action (GTK_WIDGET (window), "win.setup-duplicate", NULL);
  fixture_settle ();
  assert_told ("What differs from “Front drilled, thicker oil”", true);
  dw_window_select (window, "trial-2");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.setup-delete", NULL);
  fixture_settle ();
  assert_told ("Front drilled, thicker oil", false);
}
END_TEST

START_TEST (damping_instead_of_force_and_letter_instead_of_a4)
{
  open_page ();
  assert_told ("Force in N", true);
  gtk_drop_down_set_selected (drop_down (2), 1);
  assert_told ("c in N s/m", true);
  gtk_drop_down_set_selected (drop_down (3), DW_PAPER_LETTER);
  assert_close (dw_sheet_get_width (sheet_now ()), 612.0, 1e-9, 0.0, "8.5 in");
  ck_assert_int_eq (dw_sheet_print_get_paper (dw_sheet_page_get_print (page)), DW_PAPER_LETTER);
}
END_TEST

static char *
path_of (const char *name)
{
  return g_build_filename (fixture_folder (), name, NULL);
}

static void
assert_pdf (const char *path)
{
  g_autofree char *data = NULL;
  gsize length = 0;
  ck_assert (g_file_get_contents (path, &data, &length, NULL));
  ck_assert_uint_gt (length, 1000);
  ck_assert (strncmp (data, "%PDF-", 5) == 0);
}

START_TEST (the_pages_are_saved_as_pdf)
{
  g_autofree char *path = path_of ("sheet.pdf");
  open_page ();
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.save-to", "^ay", path);
  assert_pdf (path);
}
END_TEST

START_TEST (a_save_that_fails_says_so_in_the_window)
{
  g_autofree char *path = path_of ("no-such-folder/sheet.pdf");
  open_page ();
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.save-to", "^ay", path);
  ck_assert_ptr_nonnull (window->told[0]);
  ck_assert_msg (g_str_has_prefix (window->told[0], "Not saved: "), "%s", window->told[0]);
}
END_TEST

START_TEST (what_a_printer_gets_is_what_is_shown)
{
  g_autofree char *path = path_of ("printed.pdf");
  open_page ();
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.print-to", "^ay", path);
  assert_pdf (path);
  ck_assert_ptr_null (window->told[0]);
}
END_TEST

static bool
has_texture (void *data)
{
  (void)data;
  GdkContentFormats *formats = gdk_clipboard_get_formats (
      gtk_widget_get_clipboard (GTK_WIDGET (page)));
  return gdk_content_formats_contain_gtype (formats, GDK_TYPE_TEXTURE);
}

START_TEST (the_page_in_view_is_copied_as_a_picture)
{
  open_page ();
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.copy", NULL);
  ck_assert (fixture_until (has_texture, NULL, 2000));
}
END_TEST

START_TEST (sizes_go_in_steps_and_back_to_fitting)
{
  open_page ();
  DwSheetView *view = dw_sheet_page_get_view (page);
  ck_assert (dw_sheet_view_is_fitting (view));
  const double fitting = dw_sheet_view_get_shown_zoom (view);
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.zoom-in", NULL);
  ck_assert (dw_sheet_view_get_shown_zoom (view) > fitting);
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.zoom-out", NULL);
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.zoom-out", NULL);
  ck_assert (dw_sheet_view_get_shown_zoom (view) < fitting);
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.zoom-fit", NULL);
  fixture_settle ();
  ck_assert (dw_sheet_view_is_fitting (view));
  assert_close (dw_sheet_view_get_shown_zoom (view), fitting, 1e-9, 0.0, "as at first");
  /* once more: a whole page is seen */
  gtk_widget_activate_action (GTK_WIDGET (page), "sheet.zoom-fit", NULL);
  fixture_settle ();
  ck_assert (!dw_sheet_view_is_fitting (view));
  const graphene_rect_t box = dw_sheet_view_page_box (view, 0);
  ck_assert_int_le ((int)box.size.height, gtk_widget_get_height (GTK_WIDGET (page)));
}
END_TEST

static gboolean
break_it (dw_project *project, gpointer data)
{
  (void)data;
  const int index = dw_project_find_index (project, "trial-1");
  dw_project_edit_setup (project, (guint)index)->damper[DW_REAR].body.rod = 1.0;
  return TRUE;
}

/* No edit of the window gets so far, but a file of tomorrow may. */
START_TEST (a_damper_that_cannot_be_computed_leaves_the_last_sheet_marked)
{
  open_page ();
  const dw_sheet *before = sheet_now ();
  dw_document_edit (dw_window_get_document (window), "Break it", NULL, break_it, NULL);
  fixture_settle ();
  ck_assert_ptr_eq (sheet_now (), before);
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (page), "1000 mm"));
}
END_TEST

/* The print dialog, once it is there; the user gives up. */
static gboolean
give_up (gpointer data)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) one = g_list_model_get_item (windows, i);
      if (!GTK_IS_DIALOG (one))
        continue;
      *(bool *)data = true;
      gtk_dialog_response (GTK_DIALOG (one), GTK_RESPONSE_CANCEL);
      return G_SOURCE_REMOVE;
    }
  return G_SOURCE_CONTINUE;
}

/* Giving up is no failure, and nothing is told. */
START_TEST (printing_from_another_page_shows_the_sheet_first)
{
  bool was_asked = false;
  window = fixture_open ("club-final.dampwright");
  g_object_set (gtk_settings_get_default (), "gtk-print-backends", "file", NULL);
  g_timeout_add (50, give_up, &was_asked);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.print", NULL);
  ck_assert (was_asked);
  ck_assert_str_eq (gtk_stack_get_visible_child_name (window->pages), "sheet");
  ck_assert_ptr_null (window->told[0]);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/sheet-page");
  TCase *tc = tcase_create ("sheet-page");

  fixture_case (s, tc);
  tcase_add_test (tc, the_page_is_made_when_it_is_first_shown);
  tcase_add_test (tc, an_edit_is_on_the_sheet_when_somebody_looks);
  tcase_add_test (tc, every_kind_of_pages_can_be_chosen);
  tcase_add_test (tc, what_it_is_compared_with_is_chosen);
  tcase_add_test (tc, damping_instead_of_force_and_letter_instead_of_a4);
  tcase_add_test (tc, the_pages_are_saved_as_pdf);
  tcase_add_test (tc, a_save_that_fails_says_so_in_the_window);
  tcase_add_test (tc, what_a_printer_gets_is_what_is_shown);
  tcase_add_test (tc, the_page_in_view_is_copied_as_a_picture);
  tcase_add_test (tc, sizes_go_in_steps_and_back_to_fitting);
  tcase_add_test (tc, a_damper_that_cannot_be_computed_leaves_the_last_sheet_marked);
  tcase_add_test (tc, printing_from_another_page_shows_the_sheet_first);
  return run_suite (s);
}
