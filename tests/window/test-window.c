/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <libintl.h>
#include <string.h>

#include "window-fixture.h"

static bool
is_gone (void *data)
{
  return *(void **)data == NULL;
}

static bool
has_dialog (void *data)
{
  (void)data;
  return fixture_dialog () != NULL;
}

static gboolean
set_title (dw_project *project, gpointer data)
{
  dw_project_set_title (project, data);
  return TRUE;
}

static void
change_title (DwWindow *window)
{
  char title[] = "Changed";
  ck_assert (
      dw_document_edit (dw_window_get_document (window), "Change title", NULL, set_title, title));
}

START_TEST (opens_on_the_fitted_setup_and_the_first_trial)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  ck_assert (dw_window_is_drawn (window, "baseline"));
  ck_assert (dw_window_is_drawn (window, "trial-1"));
  ck_assert (!dw_window_is_drawn (window, "trial-2"));
  /* the trial is edited, not what is in the car */
  ck_assert_str_eq (dw_window_get_selected (window), "trial-1");
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (window)), "club-final.dampwright");
}
END_TEST

START_TEST (at_most_four_setups_are_drawn)
{
  DwWindow *window = fixture_open ("early-void.dampwright");
  ck_assert (dw_window_draw_setup (window, "pressurised", TRUE));
  ck_assert (dw_window_draw_setup (window, "emulsion", TRUE));
  ck_assert (!dw_window_draw_setup (window, "opened", TRUE));
  ck_assert (!dw_window_is_drawn (window, "opened"));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (window), "Four setups are drawn already"));
  ck_assert (dw_window_draw_setup (window, "vented", FALSE));
  ck_assert (dw_window_draw_setup (window, "opened", TRUE));
}
END_TEST

START_TEST (title_marks_what_is_not_saved)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  change_title (window);
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (window)), "• club-final.dampwright");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  ck_assert_str_eq (gtk_window_get_title (GTK_WINDOW (window)), "club-final.dampwright");
}
END_TEST

START_TEST (a_setup_that_goes_away_is_drawn_and_selected_no_more)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.setup-delete", NULL);
  ck_assert (!dw_window_is_drawn (window, "trial-1"));
  ck_assert_str_eq (dw_window_get_selected (window), "baseline");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  ck_assert_ptr_nonnull (
      dw_project_find_setup (dw_document_get_project (dw_window_get_document (window)), "trial-1"));
}
END_TEST

START_TEST (closing_unsaved_work_asks_and_cancel_keeps_it)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  change_title (window);
  gtk_window_close (GTK_WINDOW (window));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_CANCEL);
  fixture_settle ();
  ck_assert_ptr_eq (fixture_window (), window);
}
END_TEST

START_TEST (discarding_closes_and_leaves_the_file_alone)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  size_t before, after;
  char *old = test_file_read (path, &before);
  change_title (window);
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *)&window);
  gtk_window_close (GTK_WINDOW (window));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_REJECT);
  ck_assert (fixture_until (is_gone, &window, 3000));
  char *new = test_file_read (path, &after);
  ck_assert_uint_eq (before, after);
  ck_assert_int_eq (memcmp (old, new, before), 0);
  free (old);
  free (new);
}
END_TEST

START_TEST (saving_on_close_writes_and_closes)
{
  DwWindow *window = fixture_open ("club-final.dampwright");
  g_autofree char *path = g_file_get_path (dw_document_get_file (dw_window_get_document (window)));
  change_title (window);
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *)&window);
  gtk_window_close (GTK_WINDOW (window));
  ck_assert (fixture_until (has_dialog, NULL, 3000));
  gtk_dialog_response (GTK_DIALOG (fixture_dialog ()), GTK_RESPONSE_ACCEPT);
  ck_assert (fixture_until (is_gone, &window, 5000));
  char *text = test_file_read (path, NULL);
  ck_assert_ptr_nonnull (strstr (text, "title=\"Changed\""));
  free (text);
}
END_TEST

START_TEST (a_window_is_finalised)
{
  DwWindow *window = fixture_open ("smooth-indoor.dampwright");
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *)&window);
  gtk_window_close (GTK_WINDOW (window));
  ck_assert (fixture_until (is_gone, &window, 3000));
}
END_TEST

START_TEST (what_was_left_out_of_a_file_is_told)
{
  g_autofree char *path = g_build_filename (fixture_folder (), "odd.dampwright", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  char *source = test_source_path ("demo/smooth-indoor.dampwright");
  char *text = test_file_read (source, NULL);
  g_auto (GStrv) parts = g_strsplit (text, "<speeds ", 2);
  g_autofree char *odd = g_strconcat (parts[0], "<speeds unknown=\"1\" ", parts[1], NULL);
  ck_assert (g_file_set_contents (path, odd, -1, NULL));
  ck_assert (dw_application_open_file (fixture_app (), file, NULL));
  fixture_settle ();
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (fixture_window ()), "unknown"));
  free (text);
  free (source);
}
END_TEST

/* What a window says of the demo: a button, a word that has two meanings in English, a number, a
 * sentence put together of several messages, and the verdict, whose words change places. */
static const struct
{
  const char *why;
  const char *locale;
  const char *language;
  const char *texts[5];
} languages[] = {
  { "German",
    "de_DE.UTF-8",
    "de",
    { "Neuer Versuch", "Offen", "0,05 m/s", "Hinten: Shim 1: Dicke 0,15 mm → 0,1 mm",
      "Zugstufe langsam gleich, mittel 2,6\u00a0% weicher" } },
  { "French",
    "fr_FR.UTF-8",
    "fr",
    { "Nouvel essai", "Ouverts", "0,05 m/s",
      "Arrière\u00a0: clapet 1\u00a0: épaisseur 0,15 mm → 0,1 mm",
      "Détente basse vitesse identique, moyenne 2,6\u00a0% plus souple" } },
  { "Spanish",
    "es_ES.UTF-8",
    "es",
    { "Nueva prueba", "Abiertos", "0,05 m/s", "Detrás: lámina 1: grosor 0,15 mm → 0,1 mm",
      "Rebote a baja velocidad igual, a media 2,6\u00a0% más suave" } },
};

START_TEST (it_speaks_the_users_language)
{
  if (!test_use_locale (languages[_i].locale))
    return;
  ck_assert_ptr_nonnull (g_getenv ("DAMPWRIGHT_LOCALE_DIR"));
  g_setenv ("LANGUAGE", languages[_i].language, TRUE);
  bindtextdomain ("dampwright", g_getenv ("DAMPWRIGHT_LOCALE_DIR"));
  bind_textdomain_codeset ("dampwright", "UTF-8");
  textdomain ("dampwright");
  DwWindow *window = fixture_open ("club-final.dampwright");

  for (size_t i = 0; i < G_N_ELEMENTS (languages[_i].texts); i++)
    ck_assert_msg (fixture_find_text (GTK_WIDGET (window), languages[_i].texts[i]) != NULL,
                   "%s: no '%s'", languages[_i].why, languages[_i].texts[i]);
  ck_assert_ptr_null (fixture_find_text (GTK_WIDGET (window), "0.05"));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/window");
  TCase *tc = tcase_create ("window");
  fixture_case (s, tc);
  tcase_add_test (tc, opens_on_the_fitted_setup_and_the_first_trial);
  tcase_add_test (tc, at_most_four_setups_are_drawn);
  tcase_add_test (tc, title_marks_what_is_not_saved);
  tcase_add_test (tc, a_setup_that_goes_away_is_drawn_and_selected_no_more);
  tcase_add_test (tc, closing_unsaved_work_asks_and_cancel_keeps_it);
  tcase_add_test (tc, discarding_closes_and_leaves_the_file_alone);
  tcase_add_test (tc, saving_on_close_writes_and_closes);
  tcase_add_test (tc, a_window_is_finalised);
  tcase_add_test (tc, what_was_left_out_of_a_file_is_told);
  tcase_add_loop_test (tc, it_speaks_the_users_language, 0, G_N_ELEMENTS (languages));
  return run_suite (s);
}
