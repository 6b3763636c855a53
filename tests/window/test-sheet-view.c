/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-view.h"

#include <math.h>

#include "window-fixture.h"

static GtkWindow *shell;
static DwSheetView *view;
static dw_project *project;

/* A view in a scrolled window of its own, with so many pages. */
static void
open_view (dw_sheet_kind kind)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  project = dw_project_new ();
  const dw_sheet_options options
      = { .project = project, .setup = dw_project_get_fitted (project), .date = "2026-01-01" };
  shell = GTK_WINDOW (gtk_window_new ());
  view = DW_SHEET_VIEW (dw_sheet_view_new ());
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (view));
  gtk_window_set_child (shell, scrolled);
  gtk_window_set_default_size (shell, 600, 500);
  dw_sheet_view_take (view, dw_sheet_new (kind, &options, NULL));
  gtk_window_present (shell);
  fixture_settle ();
}

static void
close_view (void)
{
  gtk_window_destroy (shell);
  fixture_settle ();
  dw_project_free (project);
}

START_TEST (pages_stand_below_each_other_as_wide_as_there_is_room)
{
  open_view (DW_SHEET_BOTH);
  const int width = gtk_widget_get_width (GTK_WIDGET (view));
  const graphene_rect_t first = dw_sheet_view_page_box (view, 0);
  const graphene_rect_t second = dw_sheet_view_page_box (view, 1);
  ck_assert_int_eq (dw_sheet_get_n_pages (dw_sheet_view_get_sheet (view)), 2);
  ck_assert (first.origin.x > 0.0F && first.origin.x + first.size.width < (float)width);
  ck_assert (first.size.width > 0.9F * (float)width);
  ck_assert (second.origin.y > first.origin.y + first.size.height);
  ck_assert (second.origin.x == first.origin.x && second.size.width == first.size.width);
  assert_close ((double)first.size.height / (double)first.size.width, 297.0 / 210.0, 3e-3, 0.0,
                "the shape of the paper, to a pixel");
  ck_assert_int_ge (gtk_widget_get_height (GTK_WIDGET (view)),
                    (int)(second.origin.y + second.size.height));
  close_view ();
}
END_TEST

START_TEST (the_page_at_a_height_is_found)
{
  open_view (DW_SHEET_BOTH);
  const graphene_rect_t second = dw_sheet_view_page_box (view, 1);
  ck_assert_int_eq (dw_sheet_view_page_at (view, 0.0), 0);
  ck_assert_int_eq (dw_sheet_view_page_at (view, (double)second.origin.y - 20.0), 0);
  ck_assert_int_eq (dw_sheet_view_page_at (view, (double)second.origin.y + 1.0), 1);
  ck_assert_int_eq (dw_sheet_view_page_at (view, 1e6),
                    dw_sheet_get_n_pages (dw_sheet_view_get_sheet (view)) - 1);
  close_view ();
}
END_TEST

START_TEST (a_size_of_its_own_is_kept_and_bounded)
{
  static const struct
  {
    double asked, shown;
    const char *why;
  } rows[] = {
    { 1.5, 1.5, "as asked" },
    { 0.01, DW_SHEET_VIEW_LEAST, "no smaller than that" },
    { 100.0, DW_SHEET_VIEW_MOST, "no larger than that" },
  };
  open_view (DW_SHEET_SETUP);
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      dw_sheet_view_set_zoom (view, rows[i].asked);
      assert_close (dw_sheet_view_get_shown_zoom (view), rows[i].shown, 1e-12, 0.0, rows[i].why);
    }
  fixture_settle ();
  /* a page that is wider than the room can be scrolled */
  ck_assert_int_gt (gtk_widget_get_width (GTK_WIDGET (view)),
                    gtk_widget_get_width (GTK_WIDGET (shell)));
  close_view ();
}
END_TEST

START_TEST (steps_go_through_round_sizes_and_end)
{
  open_view (DW_SHEET_SETUP);
  dw_sheet_view_set_zoom (view, 1.0);
  dw_sheet_view_step_zoom (view, 1);
  assert_close (dw_sheet_view_get_shown_zoom (view), 1.1, 1e-12, 0.0, "the next one");
  dw_sheet_view_step_zoom (view, -2);
  assert_close (dw_sheet_view_get_shown_zoom (view), 0.9, 1e-12, 0.0, "two down");
  dw_sheet_view_step_zoom (view, 100);
  assert_close (dw_sheet_view_get_shown_zoom (view), DW_SHEET_VIEW_MOST, 1e-12, 0.0, "the largest");
  dw_sheet_view_step_zoom (view, -100);
  assert_close (dw_sheet_view_get_shown_zoom (view), DW_SHEET_VIEW_LEAST, 1e-12, 0.0,
                "the smallest");
  close_view ();
}
END_TEST

static void
count (int *n)
{
  (*n)++;
}

START_TEST (another_room_is_told_where_pages_fit_themselves)
{
  int n = 0;
  open_view (DW_SHEET_SETUP);
  g_signal_connect_swapped (view, "zoomed", G_CALLBACK (count), &n);
  const double before = dw_sheet_view_get_shown_zoom (view);
  gtk_window_set_default_size (shell, 800, 500);
  fixture_settle ();
  ck_assert_int_ge (n, 1);
  ck_assert (dw_sheet_view_get_shown_zoom (view) > before);
  close_view ();
}
END_TEST

START_TEST (its_words_are_there_for_those_who_do_not_see_it)
{
  open_view (DW_SHEET_SETUP);
  gtk_test_accessible_assert_role (view, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "The sheet as it will be printed");
  g_autofree char *words = dw_block_get_words (
      dw_sheet_get_page (dw_sheet_view_get_sheet (view), 0));
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
  close_view ();
}
END_TEST

START_TEST (without_a_sheet_it_is_empty)
{
  open_view (DW_SHEET_SETUP);
  dw_sheet_view_take (view, NULL);
  fixture_settle ();
  ck_assert_ptr_null (dw_sheet_view_get_sheet (view));
  ck_assert_int_eq (dw_sheet_view_page_at (view, 100.0), 0);
  dw_sheet_view_step_zoom (view, 1);
  close_view ();
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/sheet-view");
  TCase *tc = tcase_create ("sheet-view");

  fixture_case (s, tc);
  tcase_add_test (tc, pages_stand_below_each_other_as_wide_as_there_is_room);
  tcase_add_test (tc, the_page_at_a_height_is_found);
  tcase_add_test (tc, a_size_of_its_own_is_kept_and_bounded);
  tcase_add_test (tc, steps_go_through_round_sizes_and_end);
  tcase_add_test (tc, another_room_is_told_where_pages_fit_themselves);
  tcase_add_test (tc, its_words_are_there_for_those_who_do_not_see_it);
  tcase_add_test (tc, without_a_sheet_it_is_empty);
  return run_suite (s);
}
