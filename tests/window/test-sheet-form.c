/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-form.h"

#include <math.h>
#include <string.h>

#include "window-fixture.h"
#include "window/dw-number-field.h"

static GtkWindow *shell;
static DwSheetForm *form;
static DwDocument *document;

static void
on_changed (void)
{
  dw_sheet_form_update (form, document, "baseline", DW_UNITS_METRIC);
}

static void
open_form (void)
{
  g_autoptr (dw_project) project = dw_project_new ();
  ck_assert (dw_project_set_meeting (project, DW_MEETING_TRACK, "Clay"));
  ck_assert (dw_project_set_setup_notes (project, 0, "Inner edge\nwears"));
  document = dw_document_new (project);
  shell = GTK_WINDOW (gtk_window_new ());
  form = DW_SHEET_FORM (dw_sheet_form_new ());
  gtk_window_set_child (shell, GTK_WIDGET (form));
  gtk_window_set_default_size (shell, 300, 700);
  g_signal_connect (document, "changed", G_CALLBACK (on_changed), NULL);
  on_changed ();
  gtk_window_present (shell);
  fixture_settle ();
}

static void
close_form (void)
{
  gtk_window_destroy (shell);
  fixture_settle ();
  g_object_unref (document);
}

/* The n-th widget of a type below another, in the order of the page. */
static GtkWidget *
find_nth (GtkWidget *widget, GType type, int *n)
{
  if (g_type_is_a (G_OBJECT_TYPE (widget), type) && (*n)-- == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_nth (child, type, n);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
nth (GType type, int n)
{
  GtkWidget *found = find_nth (GTK_WIDGET (form), type, &n);
  ck_assert_ptr_nonnull (found);
  return found;
}

static const dw_project *
project_now (void)
{
  return dw_document_get_project (document);
}

static GtkTextBuffer *
notes (int n)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (nth (GTK_TYPE_TEXT_VIEW, n)));
}

START_TEST (each_word_of_the_meeting_is_one_step_to_undo)
{
  static const char *const words[DW_N_MEETING] = { "Summer cup", "Sand", "dusty", "Ada", "Buggy" };
  open_form ();
  for (int i = 0; i < DW_N_MEETING; i++)
    {
      GtkEditable *entry = GTK_EDITABLE (nth (GTK_TYPE_ENTRY, i));
      gtk_editable_set_text (entry, words[i]);
      gtk_editable_insert_text (entry, "!", -1, &(int){ (int)strlen (words[i]) });
      g_autofree char *told = g_strconcat (words[i], "!", NULL);
      ck_assert_str_eq (project_now ()->meeting[i], told);
    }
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change the car");
  for (int i = 0; i < DW_N_MEETING; i++)
    ck_assert (dw_document_undo (document));
  ck_assert (!dw_document_undo (document));
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (nth (GTK_TYPE_ENTRY, DW_MEETING_TRACK))),
                    "Clay");
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (nth (GTK_TYPE_ENTRY, DW_MEETING_CAR))),
                    "");
  close_form ();
}
END_TEST

START_TEST (a_word_that_is_too_long_stays_in_its_field_and_changes_nothing)
{
  g_autofree char *text = g_strnfill (DW_PROJECT_MAX_TEXT + 1, 'x');
  open_form ();
  GtkWidget *entry = nth (GTK_TYPE_ENTRY, DW_MEETING_EVENT);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  ck_assert_str_eq (project_now ()->meeting[DW_MEETING_EVENT], "");
  ck_assert (gtk_widget_has_css_class (entry, "error"));
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (form), "Up to 200 characters"));
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (entry)), text);
  text[DW_PROJECT_MAX_TEXT] = '\0';
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  ck_assert_str_eq (project_now ()->meeting[DW_MEETING_EVENT], text);
  ck_assert (!gtk_widget_has_css_class (entry, "error"));
  close_form ();
}
END_TEST

START_TEST (numbers_of_the_project_can_be_changed_and_masses_taken_away)
{
  open_form ();
  DwNumberField *oil = DW_NUMBER_FIELD (nth (DW_TYPE_NUMBER_FIELD, 0));
  DwNumberField *mass = DW_NUMBER_FIELD (nth (DW_TYPE_NUMBER_FIELD, 2));
  dw_number_field_step (oil, 3);
  assert_close (project_now ()->conditions.oil_temperature,
                dw_conditions_defaults ().oil_temperature + 3.0, 1e-9, 0.0, "three degrees");
  g_signal_emit_by_name (mass, "committed", 0.5, TRUE);
  ck_assert (project_now ()->car.has_sprung_mass[DW_FRONT]);
  ck_assert (!project_now ()->car.has_sprung_mass[DW_REAR]);
  assert_close (dw_number_field_get_value (mass), 0.5, 1e-12, 0.0, "shown");
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change the front sprung mass");
  g_signal_emit_by_name (mass, "committed", (double)NAN, TRUE);
  ck_assert (!project_now ()->car.has_sprung_mass[DW_FRONT]);
  ck_assert (isnan (dw_number_field_get_value (mass)));
  close_form ();
}
END_TEST

START_TEST (notes_are_taken_as_they_are_typed)
{
  open_form ();
  GtkTextBuffer *own = notes (0);
  gtk_text_buffer_insert_at_cursor (own, " more.", -1);
  ck_assert_str_eq (project_now ()->setups != NULL ? dw_project_get_setup (project_now (), 0)->notes
                                                   : "",
                    "Inner edge\nwears more.");
  gtk_text_buffer_insert_at_cursor (own, "..", -1);
  GtkTextBuffer *general = notes (1);
  gtk_text_buffer_set_text (general, "For all\n\tof them", -1);
  ck_assert_str_eq (project_now ()->notes, "For all\n\tof them");
  ck_assert (dw_document_undo (document));
  ck_assert_str_eq (project_now ()->notes, "");
  ck_assert (dw_document_undo (document));
  ck_assert_str_eq (dw_project_get_setup (project_now (), 0)->notes, "Inner edge\nwears");
  ck_assert (!dw_document_undo (document));
  close_form ();
}
END_TEST

START_TEST (notes_that_are_too_long_are_told_and_not_lost)
{
  g_autofree char *text = g_strnfill (DW_PROJECT_MAX_NOTES + 12, 'n');
  open_form ();
  GtkTextBuffer *general = notes (1);
  gtk_text_buffer_set_text (general, text, -1);
  ck_assert_ptr_nonnull (fixture_find_text (GTK_WIDGET (form), "4012 characters, up to 4000"));
  ck_assert_str_eq (project_now ()->notes, "");
  /* what somebody else changes meanwhile does not take the text away */
  GtkTextIter from, to;
  gtk_text_buffer_get_iter_at_offset (general, &from, 100);
  gtk_text_buffer_get_end_iter (general, &to);
  gtk_text_buffer_delete (general, &from, &to);
  ck_assert_uint_eq (strlen (project_now ()->notes), 100);
  ck_assert_ptr_null (fixture_find_text (GTK_WIDGET (form), "are allowed"));
  close_form ();
}
END_TEST

START_TEST (without_a_setup_there_are_no_notes_to_it)
{
  open_form ();
  dw_sheet_form_update (form, document, "no-such-setup", DW_UNITS_METRIC);
  ck_assert (!gtk_widget_get_sensitive (nth (GTK_TYPE_TEXT_VIEW, 0)));
  ck_assert (gtk_widget_get_sensitive (nth (GTK_TYPE_TEXT_VIEW, 1)));
  close_form ();
}
END_TEST

START_TEST (it_goes_away_with_its_window)
{
  open_form ();
  gpointer gone = form;
  g_object_add_weak_pointer (G_OBJECT (form), &gone);
  close_form ();
  ck_assert_ptr_null (gone);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/sheet-form");
  TCase *tc = tcase_create ("sheet-form");

  fixture_case (s, tc);
  tcase_add_test (tc, each_word_of_the_meeting_is_one_step_to_undo);
  tcase_add_test (tc, a_word_that_is_too_long_stays_in_its_field_and_changes_nothing);
  tcase_add_test (tc, numbers_of_the_project_can_be_changed_and_masses_taken_away);
  tcase_add_test (tc, notes_are_taken_as_they_are_typed);
  tcase_add_test (tc, notes_that_are_too_long_are_told_and_not_lost);
  tcase_add_test (tc, without_a_setup_there_are_no_notes_to_it);
  tcase_add_test (tc, it_goes_away_with_its_window);
  return run_suite (s);
}
