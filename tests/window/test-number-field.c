/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "panel-fixture.h"

typedef struct
{
  int told;
  int finals;
  double value;
  bool refuse;
} ear;

/* Of all tests: the field may still tell something when its window goes. */
static ear heard;

static void
on_committed (DwNumberField *field, double value, gboolean final, ear *e)
{
  e->told++;
  e->finals += final ? 1 : 0;
  e->value = value;
  if (e->refuse)
    dw_number_field_set_error (field, "does not fit");
}

/* A bore of 16 mm, steps of 0.5 mm, shown in a window. */
static DwNumberField *
shown_field (void)
{
  DwNumberField *field = DW_NUMBER_FIELD (dw_number_field_new ());
  dw_number_field_set_kind (field, DW_QUANTITY_LENGTH, DW_LIMIT_BORE,
                            (dw_step){ DW_STEP_EVEN, 0.5e-3 }, FALSE);
  dw_number_field_set_label (field, "Bore");
  dw_number_field_set_value (field, 16e-3);
  g_signal_connect (field, "committed", G_CALLBACK (on_committed), &heard);
  heard = (ear){ 0 };
  panel_show (GTK_WIDGET (field));
  gtk_widget_grab_focus (GTK_WIDGET (field));
  panel_settle ();
  return field;
}

START_TEST (takes_what_people_type)
{
  static const struct
  {
    const char *text;
    double value;
  } rows[] = { { "12.5", 12.5e-3 },   { "12,5", 12.5e-3 },   { "12.5 mm", 12.5e-3 },
               { "12.5mm", 12.5e-3 }, { "0.5 in", 12.7e-3 }, { "500 thou", 12.7e-3 },
               { " 13 ", 13e-3 },     { "0,5 in", 12.7e-3 } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      DwNumberField *field = shown_field ();
      panel_type (field, rows[i].text);
      ck_assert_msg (dw_number_field_get_error (field) == NULL, "%s", rows[i].text);
      ck_assert_msg (fabs (dw_number_field_get_value (field) - rows[i].value) < 1e-12, "%s",
                     rows[i].text);
      panel_enter (field);
      ck_assert_int_eq (heard.finals, 1);
      ck_assert (fabs (heard.value - rows[i].value) < 1e-12);
    }
}
END_TEST

START_TEST (what_is_wrong_is_told_with_the_range_and_to_nobody_else)
{
  static const char *const texts[] = { "", "abc", "400", "-3", "0.001", "1e400", "nan", "12 kg" };
  for (int i = 0; i < N_ENTRIES (texts); i++)
    {
      DwNumberField *field = shown_field ();
      /* set at once: typed key by key, "400" passes through a good "40" */
      gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), texts[i]);
      ck_assert_msg (dw_number_field_get_error (field) != NULL, "%s", texts[i]);
      ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (field), "allowed"));
      ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (field), "mm"));
      ck_assert (gtk_widget_has_css_class (panel_entry (field), "error"));
      ck_assert_int_eq (heard.told, 0);
      ck_assert (dw_number_field_get_value (field) == 16e-3);
      ck_assert_str_eq (panel_text (field), texts[i]);
    }
}
END_TEST

START_TEST (escape_gives_back_what_was_there)
{
  DwNumberField *field = shown_field ();

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "14");
  ck_assert (dw_number_field_get_value (field) == 14e-3);
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  ck_assert (heard.value == 16e-3);
  ck_assert_str_eq (panel_text (field), "16");
  /* nothing to give back: the key is somebody else's */
  ck_assert (!panel_key (field, GDK_KEY_Escape));
}
END_TEST

START_TEST (arrows_step_and_one_run_is_one_number)
{
  DwNumberField *field = shown_field ();
  guint run;

  ck_assert (panel_key (field, GDK_KEY_Up));
  run = dw_number_field_get_run (field);
  ck_assert (fabs (dw_number_field_get_value (field) - 16.5e-3) < 1e-12);
  ck_assert_str_eq (panel_text (field), "16.5");
  panel_key (field, GDK_KEY_Page_Down);
  ck_assert (fabs (dw_number_field_get_value (field) - 11.5e-3) < 1e-12);
  ck_assert_uint_eq (dw_number_field_get_run (field), run);
  panel_enter (field);
  panel_key (field, GDK_KEY_Down);
  ck_assert (fabs (dw_number_field_get_value (field) - 11e-3) < 1e-12);
  ck_assert_uint_ne (dw_number_field_get_run (field), run);
  ck_assert (!panel_key (field, GDK_KEY_Left));
}
END_TEST

START_TEST (steps_end_at_the_range)
{
  DwNumberField *field = shown_field ();
  const dw_limit *limit = dw_limit_get (DW_LIMIT_BORE);

  for (int i = 0; i < 100; i++)
    panel_key (field, GDK_KEY_Page_Up);
  ck_assert (dw_number_field_get_value (field) == limit->high);
  for (int i = 0; i < 100; i++)
    panel_key (field, GDK_KEY_Page_Down);
  ck_assert (dw_number_field_get_value (field) == limit->low);
}
END_TEST

START_TEST (a_refused_value_stays_typed_and_is_not_kept)
{
  DwNumberField *field = shown_field ();
  heard.refuse = true;

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "14");
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  ck_assert_str_eq (dw_number_field_get_error (field), "does not fit");
  ck_assert_str_eq (panel_text (field), "14");
  heard.refuse = false;
  panel_enter (field);
  ck_assert (dw_number_field_get_value (field) == 14e-3);
  ck_assert_ptr_null (dw_number_field_get_error (field));
}
END_TEST

START_TEST (leaving_it_ends_what_was_typed)
{
  DwNumberField *field = shown_field ();
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (field));

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "14,0");
  gtk_root_set_focus (root, NULL);
  panel_settle ();
  ck_assert_int_eq (heard.finals, 1);
  ck_assert_str_eq (panel_text (field), "14");
}
END_TEST

START_TEST (other_units_show_the_same_value)
{
  DwNumberField *field = shown_field ();

  dw_number_field_set_units (field, DW_UNITS_INCH);
  ck_assert_str_eq (panel_text (field), "0.6299");
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  /* not touched, not changed: the digits that are not shown stay */
  panel_enter (field);
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  ck_assert_int_eq (heard.told, 0);
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "0.63");
  ck_assert (fabs (dw_number_field_get_value (field) - 0.63 * 0.0254) < 1e-12);
}
END_TEST

START_TEST (counts_are_whole)
{
  DwNumberField *field = shown_field ();

  dw_number_field_set_kind (field, DW_QUANTITY_NUMBER, DW_LIMIT_HOLE_COUNT,
                            (dw_step){ DW_STEP_EVEN, 1.0 }, TRUE);
  dw_number_field_set_value (field, 6.0);
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "6.5");
  ck_assert_ptr_nonnull (strstr (dw_number_field_get_error (field), "whole"));
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "7");
  ck_assert (dw_number_field_get_value (field) == 7.0);
}
END_TEST

START_TEST (readers_hear_name_unit_and_what_is_wrong)
{
  DwNumberField *field = shown_field ();
  GtkAccessible *entry = GTK_ACCESSIBLE (panel_entry (field));

  ck_assert (gtk_test_accessible_has_property (entry, GTK_ACCESSIBLE_PROPERTY_LABEL));
  g_autofree char *label = gtk_test_accessible_check_property (entry, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                               "Bore, mm");
  ck_assert_msg (label == NULL, "%s", label);
  gtk_editable_set_text (GTK_EDITABLE (entry), "x");
  g_autofree char *state = gtk_test_accessible_check_state (entry, GTK_ACCESSIBLE_STATE_INVALID,
                                                            GTK_ACCESSIBLE_INVALID_TRUE);
  ck_assert_msg (state == NULL, "%s", state);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/number-field");
  TCase *tc = tcase_create ("number-field");
  panel_case (s, tc);
  tcase_add_test (tc, takes_what_people_type);
  tcase_add_test (tc, what_is_wrong_is_told_with_the_range_and_to_nobody_else);
  tcase_add_test (tc, escape_gives_back_what_was_there);
  tcase_add_test (tc, arrows_step_and_one_run_is_one_number);
  tcase_add_test (tc, steps_end_at_the_range);
  tcase_add_test (tc, a_refused_value_stays_typed_and_is_not_kept);
  tcase_add_test (tc, leaving_it_ends_what_was_typed);
  tcase_add_test (tc, other_units_show_the_same_value);
  tcase_add_test (tc, counts_are_whole);
  tcase_add_test (tc, readers_hear_name_unit_and_what_is_wrong);
  return run_suite (s);
}
