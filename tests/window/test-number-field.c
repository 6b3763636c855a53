/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "panel-fixture.h"

/* What a field has told. */
typedef struct
{
  double value;
  int previews;
  int finals;
  const char *refuse; /* message to refuse with; NULL = take it */
} told;

static void
on_committed (DwNumberField *field, double value, gboolean final, told *t)
{
  t->value = value;
  if (final)
    t->finals++;
  else
    t->previews++;
  if (t->refuse != NULL)
    dw_number_field_set_error (field, t->refuse);
}

/* A bore of 16 mm. */
static DwNumberField *
new_field (told *t)
{
  DwNumberField *field = DW_NUMBER_FIELD (g_object_ref_sink (dw_number_field_new ()));

  dw_number_field_set_label (field, "Bore");
  dw_number_field_set_kind (field, DW_QUANTITY_LENGTH, DW_LIMIT_BORE,
                            (dw_step){ DW_STEP_EVEN, 0.5e-3 }, FALSE);
  dw_number_field_set_value (field, 16e-3);
  *t = (told){ 0 };
  g_signal_connect (field, "committed", G_CALLBACK (on_committed), t);
  return field;
}

START_TEST (every_way_of_typing_is_taken)
{
  static const struct
  {
    const char *text;
    double value;
    const char *shown;
  } rows[] = { { "13.5", 13.5e-3, "13.5" },     { "13,5", 13.5e-3, "13.5" },
               { " 13.5 mm", 13.5e-3, "13.5" }, { "0.5 in", 12.7e-3, "12.7" },
               { "1.2cm", 12e-3, "12" },        { "500 thou", 12.7e-3, "12.7" },
               { "12.70 MM", 12.7e-3, "12.7" } };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      told t;
      g_autoptr (DwNumberField) field = new_field (&t);
      panel_type (field, rows[i].text);
      ck_assert_str_eq (panel_text (field), rows[i].text);
      ck_assert_int_gt (t.previews, 0);
      ck_assert_int_eq (t.finals, 0);
      assert_close (dw_number_field_get_value (field), rows[i].value, 1e-12, 0.0, rows[i].text);
      panel_enter (field);
      ck_assert_int_eq (t.finals, 1);
      assert_close (t.value, rows[i].value, 1e-12, 0.0, rows[i].text);
      ck_assert_str_eq (panel_text (field), rows[i].shown);
      panel_enter (field);
      ck_assert_int_eq (t.finals, 1);
    }
}
END_TEST

START_TEST (what_cannot_be_says_what_can)
{
  static const struct
  {
    const char *text;
    dw_units units;
    const char *message;
  } rows[] = {
    { "41", DW_UNITS_METRIC, "allowed 5 to 40 mm" },
    { "-12", DW_UNITS_METRIC, "allowed 5 to 40 mm" },
    { "2 in", DW_UNITS_METRIC, "allowed 5 to 40 mm" },
    { "2", DW_UNITS_INCH, "allowed 0.1969 to 1.575 in" },
    { "sixteen", DW_UNITS_METRIC, "not a number; allowed 5 to 40 mm" },
    { "1e400", DW_UNITS_METRIC, "not a number; allowed 5 to 40 mm" },
    { "nan", DW_UNITS_METRIC, "not a number; allowed 5 to 40 mm" },
    { "12 kg", DW_UNITS_METRIC, "not a number; allowed 5 to 40 mm" },
    { "", DW_UNITS_METRIC, "not a number; allowed 5 to 40 mm" },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      told t;
      g_autoptr (DwNumberField) field = new_field (&t);
      dw_number_field_set_units (field, rows[i].units);
      gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), rows[i].text);
      ck_assert_int_eq (t.previews, 0);
      ck_assert_str_eq (dw_number_field_get_error (field), rows[i].message);
      ck_assert (gtk_widget_has_css_class (panel_entry (field), "error"));
      gtk_test_accessible_assert_state (GTK_ACCESSIBLE (panel_entry (field)),
                                        GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
      gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_entry (field)),
                                           GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, rows[i].message);
      panel_enter (field);
      ck_assert_int_eq (t.finals, 0);
      ck_assert_str_eq (panel_text (field), rows[i].text);
      ck_assert (dw_number_field_get_value (field) == 16e-3);
      panel_type (field, "20 mm");
      ck_assert_ptr_null (dw_number_field_get_error (field));
      ck_assert (!gtk_widget_has_css_class (panel_entry (field), "error"));
      ck_assert (t.value == 20e-3);
    }
}
END_TEST

START_TEST (an_optional_field_may_be_emptied)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  dw_number_field_set_optional (field, TRUE);
  panel_type (field, "");
  ck_assert_msg (isnan (t.value) && t.previews == 1, "told %d times", t.previews);
  ck_assert_ptr_null (dw_number_field_get_error (field));
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "  ");
  ck_assert_msg (t.previews == 1, "blanks are nothing new");
  panel_enter (field);
  ck_assert (t.finals == 1 && isnan (t.value) && isnan (dw_number_field_get_value (field)));
  ck_assert_str_eq (panel_text (field), "");
  panel_enter (field);
  panel_key (field, GDK_KEY_Up);
  ck_assert_msg (t.finals == 1 && t.previews == 1, "from nothing there is no step");

  panel_type (field, "41");
  ck_assert_str_eq (dw_number_field_get_error (field), "allowed 5 to 40 mm");
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert (isnan (dw_number_field_get_value (field)));
  ck_assert_str_eq (panel_text (field), "");
  panel_type (field, "18");
  panel_enter (field);
  ck_assert (t.value == 18e-3);
  panel_type (field, "");
  ck_assert (isnan (dw_number_field_get_value (field)));
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert (t.value == 18e-3);
  ck_assert_str_eq (panel_text (field), "18");
}
END_TEST

START_TEST (counts_are_whole)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  dw_number_field_set_kind (field, DW_QUANTITY_NUMBER, DW_LIMIT_HOLE_COUNT,
                            (dw_step){ DW_STEP_EVEN, 1.0 }, TRUE);
  dw_number_field_set_value (field, 6.0);
  panel_type (field, "4.5");
  ck_assert (t.value == 4.0);
  ck_assert_str_eq (dw_number_field_get_error (field), "allowed whole numbers from 1 to 64");
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert_str_eq (panel_text (field), "6");
  panel_key (field, GDK_KEY_Up);
  ck_assert (t.value == 7.0);
}
END_TEST

START_TEST (escape_gives_back)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  ck_assert (!panel_key (field, GDK_KEY_Escape));
  panel_type (field, "18");
  ck_assert (t.value == 18e-3);
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert (t.value == 16e-3 && t.finals == 1);
  ck_assert_str_eq (panel_text (field), "16");
  panel_type (field, "x");
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert_ptr_null (dw_number_field_get_error (field));
  ck_assert_str_eq (panel_text (field), "16");
  ck_assert (dw_number_field_get_value (field) == 16e-3);
}
END_TEST

START_TEST (leaving_the_field_commits)
{
  told t;
  DwNumberField *field = new_field (&t);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *other = gtk_entry_new ();

  gtk_box_append (GTK_BOX (box), GTK_WIDGET (field));
  gtk_box_append (GTK_BOX (box), other);
  panel_show (box);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  panel_settle ();
  ck_assert (
      gtk_widget_is_ancestor (gtk_root_get_focus (gtk_widget_get_root (box)), GTK_WIDGET (field)));
  panel_type (field, "0.5 in");
  gtk_widget_grab_focus (other);
  panel_settle ();
  ck_assert_int_eq (t.finals, 1);
  ck_assert (t.value == 12.7e-3);
  ck_assert_str_eq (panel_text (field), "12.7");
  g_object_unref (field);
}
END_TEST

/* The value has more digits than are shown; passing through must not cut them off. */
START_TEST (looking_at_a_field_changes_nothing)
{
  told t;
  DwNumberField *field = new_field (&t);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *other = gtk_entry_new ();

  dw_number_field_set_units (field, DW_UNITS_INCH);
  ck_assert_str_eq (panel_text (field), "0.6299");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (field));
  gtk_box_append (GTK_BOX (box), other);
  panel_show (box);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  panel_enter (field);
  gtk_widget_grab_focus (other);
  panel_settle ();
  ck_assert_int_eq (t.previews + t.finals, 0);
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  g_object_unref (field);
}
END_TEST

START_TEST (keys_move_by_steps)
{
  static const struct
  {
    guint key;
    double value;
  } rows[] = { { GDK_KEY_Up, 16.5e-3 },    { GDK_KEY_Down, 16e-3 },
               { GDK_KEY_Page_Up, 21e-3 }, { GDK_KEY_Page_Down, 16e-3 },
               { GDK_KEY_KP_Up, 16.5e-3 }, { GDK_KEY_KP_Page_Up, 21.5e-3 } };
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      ck_assert (panel_key (field, rows[i].key));
      assert_close (t.value, rows[i].value, 1e-12, 0.0, "a step of 0.5 mm");
    }
  ck_assert_int_eq (t.finals, 0);
  ck_assert_str_eq (panel_text (field), "21.5");
  ck_assert (!panel_key (field, GDK_KEY_a));
  panel_type (field, "18.2");
  panel_key (field, GDK_KEY_Up);
  assert_close (t.value, 18.5e-3, 1e-12, 0.0, "from what is typed");
  for (int i = 0; i < 20; i++)
    panel_key (field, GDK_KEY_Page_Up);
  ck_assert (t.value == 40e-3);
  panel_type (field, "x");
  panel_key (field, GDK_KEY_Up);
  ck_assert_str_eq (panel_text (field), "x");
  ck_assert (panel_key (field, GDK_KEY_Escape));
  ck_assert (t.value == 16e-3);
}
END_TEST

static gboolean
scroll (DwNumberField *field, double dy)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (panel_entry (field));
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        g_signal_emit_by_name (controller, "scroll", 0.0, dy, &taken);
    }
  return taken;
}

START_TEST (the_wheel_moves_only_with_the_focus)
{
  told t;
  DwNumberField *field = new_field (&t);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *other = gtk_entry_new ();

  gtk_box_append (GTK_BOX (box), other);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (field));
  panel_show (box);
  gtk_widget_grab_focus (other);
  panel_settle ();
  ck_assert (!scroll (field, -1.0));
  ck_assert_int_eq (t.previews, 0);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  panel_settle ();
  ck_assert (scroll (field, -1.0));
  ck_assert (t.value == 16.5e-3);
  ck_assert (scroll (field, 1.0));
  ck_assert (t.value == 16e-3);
  /* while what it tells is still there */
  panel_enter (field);
  g_object_unref (field);
}
END_TEST

START_TEST (a_refused_value_stays_typed_only)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  t.refuse = "no room";
  panel_type (field, "18");
  panel_enter (field);
  ck_assert_str_eq (panel_text (field), "18");
  ck_assert_str_eq (dw_number_field_get_error (field), "no room");
  ck_assert (dw_number_field_get_value (field) == 16e-3);
  t.refuse = NULL;
  panel_enter (field);
  ck_assert_ptr_null (dw_number_field_get_error (field));
  ck_assert (dw_number_field_get_value (field) == 18e-3);
}
END_TEST

START_TEST (only_another_value_replaces_what_is_typed)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  panel_type (field, "17.");
  gtk_editable_set_position (GTK_EDITABLE (panel_entry (field)), 1);
  dw_number_field_set_value (field, 17e-3);
  ck_assert_str_eq (panel_text (field), "17.");
  ck_assert_int_eq (gtk_editable_get_position (GTK_EDITABLE (panel_entry (field))), 1);
  dw_number_field_set_value (field, 12e-3);
  ck_assert_str_eq (panel_text (field), "12");
  ck_assert (!panel_key (field, GDK_KEY_Escape));
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "99");
  ck_assert_ptr_nonnull (dw_number_field_get_error (field));
  dw_number_field_reset (field);
  ck_assert_str_eq (panel_text (field), "12");
  ck_assert_ptr_null (dw_number_field_get_error (field));
  dw_number_field_set_value (field, NAN);
  ck_assert_str_eq (panel_text (field), "");
  panel_key (field, GDK_KEY_Up);
  ck_assert_str_eq (panel_text (field), "");
}
END_TEST

START_TEST (runs_end_with_enter_and_escape)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);

  panel_type (field, "17.25");
  const guint first = dw_number_field_get_run (field);
  panel_key (field, GDK_KEY_Up);
  ck_assert_uint_eq (dw_number_field_get_run (field), first);
  panel_enter (field);
  panel_key (field, GDK_KEY_Up);
  const guint second = dw_number_field_get_run (field);
  ck_assert_uint_ne (second, first);
  panel_key (field, GDK_KEY_Escape);
  panel_type (field, "17");
  ck_assert_uint_ne (dw_number_field_get_run (field), second);
}
END_TEST

START_TEST (the_decimal_sign_is_that_of_the_locale)
{
  told t;
  g_autoptr (DwNumberField) field = NULL;

  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  field = new_field (&t);
  panel_type (field, "13.5");
  panel_enter (field);
  ck_assert_str_eq (panel_text (field), "13,5");
  dw_number_field_set_kind (field, DW_QUANTITY_LENGTH, DW_LIMIT_CLEARANCE,
                            (dw_step){ DW_STEP_EVEN, 0.005e-3 }, FALSE);
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), "3");
  ck_assert_str_eq (dw_number_field_get_error (field), "allowed 0 to 0,5 mm");
}
END_TEST

START_TEST (it_tells_its_name_and_unit)
{
  told t;
  g_autoptr (DwNumberField) field = new_field (&t);
  g_autofree char *label = NULL;
  double value;
  guint units;

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_entry (field)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Bore, mm");
  g_object_set (field, "units", DW_UNITS_INCH, "value", 25.4e-3, "show-label", FALSE, NULL);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_entry (field)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Bore, in");
  ck_assert_str_eq (panel_text (field), "1");
  ck_assert (!gtk_widget_get_visible (panel_find (GTK_WIDGET (field), "name")));
  g_object_get (field, "label", &label, "value", &value, "units", &units, NULL);
  ck_assert_str_eq (label, "Bore");
  ck_assert (value == 25.4e-3 && units == DW_UNITS_INCH);
}
END_TEST

START_TEST (it_goes_when_its_window_goes)
{
  told t;
  DwNumberField *field = new_field (&t);
  GtkWidget *window = panel_show (GTK_WIDGET (field));
  gpointer weak = field;

  g_object_add_weak_pointer (G_OBJECT (field), &weak);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  panel_type (field, "17");
  g_object_unref (field);
  gtk_window_destroy (GTK_WINDOW (window));
  panel_settle ();
  ck_assert_ptr_null (weak);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/number-field");
  TCase *tc = tcase_create ("number-field");
  tcase_add_test (tc, every_way_of_typing_is_taken);
  tcase_add_test (tc, what_cannot_be_says_what_can);
  tcase_add_test (tc, an_optional_field_may_be_emptied);
  tcase_add_test (tc, counts_are_whole);
  tcase_add_test (tc, escape_gives_back);
  tcase_add_test (tc, leaving_the_field_commits);
  tcase_add_test (tc, looking_at_a_field_changes_nothing);
  tcase_add_test (tc, keys_move_by_steps);
  tcase_add_test (tc, the_wheel_moves_only_with_the_focus);
  tcase_add_test (tc, a_refused_value_stays_typed_only);
  tcase_add_test (tc, only_another_value_replaces_what_is_typed);
  tcase_add_test (tc, runs_end_with_enter_and_escape);
  tcase_add_test (tc, the_decimal_sign_is_that_of_the_locale);
  tcase_add_test (tc, it_tells_its_name_and_unit);
  tcase_add_test (tc, it_goes_when_its_window_goes);
  panel_case (s, tc);
  return run_suite (s);
}
