/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "window-fixture.h"
#include "window/dw-chart-export.h"

static GBytes *
render (DwWindow *window, dw_export_kind kind)
{
  const dw_project *project = dw_document_get_project (dw_window_get_document (window));
  const dw_chart look = dw_chart_defaults ();
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  char ids[][9] = { "trial-1", "baseline" };
  g_autoptr (GError) error = NULL;
  for (int i = 0; i < N_ENTRIES (ids); i++)
    g_ptr_array_add (drawn, ids[i]);
  GBytes *bytes = dw_chart_export_render (project, drawn, &look, kind, &error);
  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "");
  return bytes;
}

START_TEST (every_kind_is_what_its_name_says)
{
  static const char *const heads[DW_N_EXPORTS] = { [DW_EXPORT_SVG] = "<?xml",
                                                   [DW_EXPORT_PNG] = "\x89PNG",
                                                   [DW_EXPORT_PDF] = "%PDF",
                                                   [DW_EXPORT_CSV] = "setup," };
  DwWindow *window = fixture_open ("club-final.dampwright");
  for (int kind = 0; kind < DW_N_EXPORTS; kind++)
    {
      g_autoptr (GBytes) bytes = render (window, (dw_export_kind)kind);
      ck_assert_uint_gt (g_bytes_get_size (bytes), 500);
      ck_assert_msg (memcmp (g_bytes_get_data (bytes, NULL), heads[kind], strlen (heads[kind]))
                         == 0,
                     "%s", dw_export_kind_name ((dw_export_kind)kind));
    }
}
END_TEST

START_TEST (the_fitted_setup_is_the_reference)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autoptr (GBytes) bytes = render (window, DW_EXPORT_CSV);
  const char *text = g_bytes_get_data (bytes, NULL);
  const char *line = memchr (text, '\n', g_bytes_get_size (bytes));
  ck_assert (line != NULL && g_str_has_prefix (line + 1, "baseline,"));
}
END_TEST

/* Bands and strip, limit and words are those of the window. */
START_TEST (the_page_shows_what_the_window_shows)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  const dw_project *project = dw_document_get_project (dw_window_get_document (window));
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  char id[] = "baseline";
  dw_chart look = dw_chart_defaults ();
  gsize plain, rich;
  g_ptr_array_add (drawn, id);
  look.shows_band = false;
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (GBytes) bytes = dw_chart_export_render (project, drawn, &look, DW_EXPORT_SVG,
                                                         NULL);
      *(i == 0 ? &plain : &rich) = g_bytes_get_size (bytes);
      look.shows_band = true;
      look.strip_series = 0;
    }
  ck_assert_uint_gt (rich, plain + 2000);
}
END_TEST

START_TEST (nothing_drawn_is_an_error)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  const dw_chart look = dw_chart_defaults ();
  g_autoptr (GPtrArray) drawn = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  ck_assert_ptr_null (
      dw_chart_export_render (dw_document_get_project (dw_window_get_document (window)), drawn,
                              &look, DW_EXPORT_PNG, &error));
  ck_assert_ptr_nonnull (error);
}
END_TEST

START_TEST (the_window_writes_a_file_and_tells_when_it_cannot)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_build_filename (fixture_folder (), "curves.svg", NULL);
  ck_assert (gtk_widget_activate_action (GTK_WIDGET (window), "win.chart-export-to", "^ay", path));
  ck_assert (g_file_test (path, G_FILE_TEST_IS_REGULAR));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.chart-export-to", "^ay", "/tmp/curves.odd");
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "must end in .svg"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.chart-export-to", "^ay", "/dev/null/c.png");
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "Not exported:"));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/chart-export");
  TCase *tc = tcase_create ("chart-export");
  fixture_case (s, tc);
  tcase_add_test (tc, every_kind_is_what_its_name_says);
  tcase_add_test (tc, the_fitted_setup_is_the_reference);
  tcase_add_test (tc, the_page_shows_what_the_window_shows);
  tcase_add_test (tc, nothing_drawn_is_an_error);
  tcase_add_test (tc, the_window_writes_a_file_and_tells_when_it_cannot);
  return run_suite (s);
}
