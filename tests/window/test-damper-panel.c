/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "panel-fixture.h"
#include "project/dw-project-writer.h"
#include "window/dw-damper-panel.h"
#include "window/dw-widget.h"
#include "window/dw-damper-place.h"
#include "window/dw-shim-material.h"

static GtkWidget *
new_panel (DwDocument *document, dw_axle axle)
{
  GtkWidget *panel = dw_damper_panel_new ();

  dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), axle);
  dw_damper_panel_set_document (DW_DAMPER_PANEL (panel), document);
  dw_damper_panel_set_setup (DW_DAMPER_PANEL (panel), "a");
  panel_show (panel);
  ck_assert (gtk_widget_is_sensitive (panel_find (panel_find (panel, "holes"), "add")));
  return panel;
}

static dw_oil_kind
oil_kind_for (const dw_damper_place *place)
{
  return place->form == DW_FORM_OIL_MEASURED ? DW_OIL_MEASURED
         : place->form == DW_FORM_OIL_PART   ? DW_OIL_BLEND
                                             : DW_OIL_NOMINAL;
}

/* The field of a place, in the panel or in a row of one of its tables. */
static DwNumberField *
field_of (GtkWidget *panel, const dw_damper_place *place, int row)
{
  g_autofree char *id = NULL;

  if (place->form == DW_FORM_HOLES)
    panel = panel_row (panel_find (panel, "holes"), row);
  else if (place->form == DW_FORM_SHIM)
    panel = panel_row (panel_find (panel, "shims"), row);
  else if (place->form == DW_FORM_OIL_PART)
    id = g_strdup_printf ("%s%d", place->id, row + 1);
  return DW_NUMBER_FIELD (panel_find (panel, id != NULL ? id : place->id));
}

static GBytes *
bytes_of (DwDocument *document)
{
  return dw_project_write_text (dw_document_get_project (document));
}

static gboolean
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* A step down, or up from the lowest; the lowest where nothing is given. */
static double
another_value (const dw_damper_place *place, double old)
{
  const dw_limit_id limit = dw_damper_place_field (place)->limit;
  if (isnan (old))
    return dw_limit_get (limit)->low;
  const double down = dw_step_move (place->step, place->quantity, DW_UNITS_METRIC, limit, old, -1);

  return down != old ? down
                     : dw_step_move (place->step, place->quantity, DW_UNITS_METRIC, limit, old, 1);
}

/* One field of one axle: it can be reached, it changes its own number, undo brings it back. */
static void
try_field (DwDocument *document, GtkWidget *panel, const dw_damper_place *place, int row,
           dw_axle axle)
{
  const dw_axle other = axle == DW_FRONT ? DW_REAR : DW_FRONT;
  const dw_damper before = *panel_damper (document, axle);
  const dw_damper aside = *panel_damper (document, other);
  const double old = dw_damper_place_read (place, &before, row);
  const double want = another_value (place, old);
  DwNumberField *field = field_of (panel, place, row);
  g_autofree char *text = dw_quantity_format (place->quantity, DW_UNITS_METRIC, want);
  dw_damper expected = before;

  ck_assert_msg (gtk_widget_get_mapped (GTK_WIDGET (field)), "%s is not shown", place->id);
  ck_assert_msg (gtk_widget_is_sensitive (GTK_WIDGET (field)), "%s is idle", place->id);
  g_autofree char *tip = dw_widget_dup_tooltip (GTK_WIDGET (field));
  ck_assert_msg (tip != NULL && *tip != '\0', "%s", place->id);
  ck_assert_msg (gtk_widget_grab_focus (GTK_WIDGET (field)), "%s takes no focus", place->id);
  panel_type (field, text);
  panel_enter (field);
  dw_damper_place_write (place, &expected, row, want);
  ck_assert_msg (want != old && dw_number_field_get_error (field) == NULL, "%s: %s", place->id,
                 dw_number_field_get_error (field));
  ck_assert_msg (dw_damper_equal (panel_damper (document, axle), &expected), "%s", place->id);
  ck_assert_msg (dw_damper_equal (panel_damper (document, other), &aside), "%s", place->id);
  ck_assert_str_eq (dw_document_get_undo_label (document), place->labels[axle]);
  ck_assert (dw_document_undo (document));
  ck_assert_msg (dw_damper_equal (panel_damper (document, axle), &before), "%s", place->id);
  ck_assert_msg (same (dw_number_field_get_value (field), old), "%s", place->id);
}

START_TEST (every_field_edits_its_own_number)
{
  for (int kind = DW_OIL_NOMINAL; kind <= DW_OIL_BLEND; kind++)
    {
      g_autoptr (DwDocument) document = panel_document ((dw_oil_kind)kind);
      GtkWidget *panel = new_panel (document, (dw_axle)_i);
      for (int i = 0; i < DW_DAMPER_PLACES; i++)
        {
          const dw_damper_place *place = dw_damper_place_get (i);
          for (int row = 0; row < (dw_damper_place_has_rows (place) ? 2 : 1); row++)
            if ((int)oil_kind_for (place) == kind)
              try_field (document, panel, place, row, (dw_axle)_i);
        }
      ck_assert (!dw_document_undo (document));
      gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (panel)));
    }
}
END_TEST

/* Tab reaches all of it: names are counted that the focus has been in. */
START_TEST (tab_goes_through_all_fields)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  int n_fields = 0;

  for (int k = 0; k < 200; k++)
    {
      if (!gtk_widget_child_focus (panel, GTK_DIR_TAB_FORWARD))
        break;
      GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (panel));
      GtkWidget *field = gtk_widget_get_ancestor (focus, DW_TYPE_NUMBER_FIELD);
      if (field != NULL && g_hash_table_add (seen, field))
        n_fields++;
    }
  /* all but the eight numbers of oils of another kind; holes and shims have two rows */
  ck_assert_int_eq (n_fields, DW_DAMPER_PLACES - 5 - 2 + 2 + 5);
}
END_TEST

START_TEST (looking_edits_nothing)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_BLEND);
  const guint64 state = dw_document_get_state (document);
  GtkWidget *panel = new_panel (document, DW_REAR);

  for (guint units = 0; units < 16; units++)
    {
      dw_damper_panel_set_units (DW_DAMPER_PANEL (panel), units);
      dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), units % 2 == 0 ? DW_FRONT : DW_REAR);
      for (int k = 0; k < 60; k++)
        gtk_widget_child_focus (panel, GTK_DIR_TAB_FORWARD);
    }
  dw_damper_panel_set_setup (DW_DAMPER_PANEL (panel), NULL);
  ck_assert (!gtk_widget_get_sensitive (panel_find (panel, "content")));
  dw_damper_panel_set_setup (DW_DAMPER_PANEL (panel), "a");
  ck_assert (gtk_widget_get_sensitive (panel_find (panel, "content")));
  dw_damper_panel_set_document (DW_DAMPER_PANEL (panel), NULL);
  dw_damper_panel_set_document (DW_DAMPER_PANEL (panel), document);
  ck_assert_uint_eq (dw_document_get_state (document), state);
}
END_TEST

static void
type_into (GtkWidget *panel, const char *id, const char *text)
{
  DwNumberField *field = DW_NUMBER_FIELD (panel_find (panel, id));
  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field)), text);
  panel_enter (field);
}

/* A geometry that the model refuses: its words stand at the field, and nothing is edited. */
START_TEST (what_does_not_fit_is_told_in_words)
{
  static const struct
  {
    const char *id;
    const char *text;
    const char *words;
  } rows[] = {
    { "rod", "13.5", "needs a bore above" },
    { "bore", "9.5", "must fit into the bore" },
    { "hub", "9.3", "must stay below 0.95" },
    { "hub", "0.6", "must be at least 0.1" },
    { "hub", "6.7", "leaves the shim's ring" },
    { "hole_circle", "8.7", "leaves the shim's ring" },
    { "outer", "16.5", "must fit into the bore" },
    { "spring_preload", "80", "below the spring's free length" },
    { "clearance", "0.0005", "neither 0 (no leak) nor at least" },
  };
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  const guint64 state = dw_document_get_state (document);

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      DwNumberField *field = DW_NUMBER_FIELD (panel_find (panel, rows[i].id));
      type_into (panel, rows[i].id, rows[i].text);
      ck_assert_msg (dw_number_field_get_error (field) != NULL, "%s", rows[i].id);
      ck_assert_msg (strstr (dw_number_field_get_error (field), rows[i].words) != NULL, "%s: %s",
                     rows[i].id, dw_number_field_get_error (field));
      ck_assert_str_eq (panel_text (field), rows[i].text);
      ck_assert_uint_eq (dw_document_get_state (document), state);
    }
}
END_TEST

/* 64 holes of 1.5 mm are more than half of the face: no field's fault, but the section's. */
START_TEST (what_no_field_is_to_blame_for_stands_at_the_section)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  GtkLabel *message = GTK_LABEL (panel_find (panel, "piston_message"));
  GtkWidget *row = panel_row (panel_find (panel, "holes"), 0);

  type_into (row, "diameter", "1.5");
  type_into (row, "count", "64");
  ck_assert (gtk_widget_get_visible (GTK_WIDGET (message)));
  ck_assert_ptr_nonnull (strstr (gtk_label_get_label (message), "of the piston's face"));
  type_into (row, "count", "8");
  ck_assert (!gtk_widget_get_visible (GTK_WIDGET (message)));
}
END_TEST

static guint
selected (GtkWidget *panel, const char *id)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (panel_find (panel, id)));
}

static void
choose (GtkWidget *panel, const char *id, guint item)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (panel_find (panel, id)), item);
}

static gboolean
is_shown (GtkWidget *panel, const char *id)
{
  return gtk_widget_get_visible (panel_find (panel, id));
}

START_TEST (kinds_are_switched_in_one_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_REAR);

  ck_assert (is_shown (panel, "viscosity") && !is_shown (panel, "t1"));
  choose (panel, "oil_kind", DW_OIL_MEASURED);
  ck_assert_int_eq (panel_damper (document, DW_REAR)->oil.kind, DW_OIL_MEASURED);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change kind of rear oil");
  ck_assert (!is_shown (panel, "viscosity") && is_shown (panel, "t1")
             && is_shown (panel, "density"));
  choose (panel, "oil_kind", DW_OIL_BLEND);
  ck_assert (is_shown (panel, "part_share2") && !is_shown (panel, "t1"));
  choose (panel, "gas_kind", DW_GAS_VENTED);
  ck_assert_int_eq (panel_damper (document, DW_REAR)->gas.kind, DW_GAS_VENTED);
  choose (panel, "opens_on", DW_COMPRESSION);
  ck_assert_int_eq (panel_damper (document, DW_REAR)->valve.opens_on, DW_COMPRESSION);
  ck_assert (is_shown (panel, "thinning_rate"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (panel_find (panel, "thinning")), FALSE);
  ck_assert (!panel_damper (document, DW_REAR)->oil.has_thinning);
  ck_assert (!is_shown (panel, "thinning_rate"));
  ck_assert_int_eq (panel_damper (document, DW_FRONT)->oil.kind, DW_OIL_NOMINAL);
  for (int i = 0; i < 5; i++)
    ck_assert (dw_document_undo (document));
  ck_assert (!dw_document_undo (document));
  ck_assert_uint_eq (selected (panel, "oil_kind"), DW_OIL_NOMINAL);
  ck_assert_uint_eq (selected (panel, "gas_kind"), DW_GAS_BLADDER);
  ck_assert_uint_eq (selected (panel, "opens_on"), DW_REBOUND);
  ck_assert (is_shown (panel, "thinning_rate") && is_shown (panel, "viscosity"));
}
END_TEST

static gboolean
is_idle (GtkWidget *panel, const char *id, const char *reason)
{
  GtkWidget *widget = panel_find (panel, id);
  g_autofree char *tooltip = dw_widget_dup_tooltip (widget);

  if (gtk_widget_is_sensitive (widget))
    return FALSE;
  ck_assert_msg (g_str_has_prefix (tooltip, reason), "%s: %s", id, tooltip);
  return TRUE;
}

START_TEST (what_has_no_effect_is_idle_and_says_why)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  GtkWidget *shims = panel_find (panel, "shims");
  GtkWidget *hint = panel_find (panel, "valve_hint");

  ck_assert (!is_idle (panel, "lift_limit", "") && !is_idle (panel, "coupling", ""));
  ck_assert (!gtk_widget_get_visible (hint));
  choose (panel_row (panel_find (panel, "holes"), 1), "kind", 0);
  ck_assert (is_idle (panel, "lift_limit", "No effect: no holes are covered."));
  ck_assert (is_idle (panel, "opens_on_cell", "No effect: no holes are covered."));
  ck_assert (!is_idle (panel, "hub", "") && gtk_widget_get_visible (hint));
  gtk_widget_activate_action (shims, "shims.remove", "i", 0);
  gtk_widget_activate_action (shims, "shims.remove", "i", 0);
  ck_assert (is_idle (panel, "hub", "No effect: no holes are covered, and there are no shims."));
  choose (panel_row (panel_find (panel, "holes"), 1), "kind", 1);
  ck_assert (is_idle (panel, "lift_limit", "No effect: there are no shims."));
  ck_assert (!is_idle (panel, "hole_circle", ""));
  gtk_widget_activate_action (shims, "shims.add", NULL);
  ck_assert (is_idle (panel, "coupling", "No effect: a single shim."));
  ck_assert (!is_idle (panel, "lift_limit", ""));

  choose (panel, "gas_kind", DW_GAS_VENTED);
  ck_assert (is_idle (panel, "volume", "No effect: the space is open to the air."));
  type_into (panel, "clearance", "0");
  ck_assert (is_idle (panel, "eccentricity", "No effect: there is no clearance."));
}
END_TEST

START_TEST (a_section_goes_to_the_other_axle)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  GtkLabel *message = GTK_LABEL (panel_find (panel, "valve_message"));

  gtk_widget_activate_action (panel_find (panel, "rate"), "section.copy-to", "s", "spring");
  ck_assert (panel_damper (document, DW_REAR)->spring.rate == 500.0);
  ck_assert_str_eq (dw_document_get_undo_label (document), "Copy front spring to rear");
  dw_document_undo (document);
  gtk_widget_activate_action (panel, "section.copy-from", "s", "spring");
  ck_assert (panel_damper (document, DW_FRONT)->spring.rate == 450.0);
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel, "rate"))), "0.45");
  ck_assert (panel_damper (document, DW_FRONT)->stance.ride_height == 26e-3);
  ck_assert (!panel_damper (document, DW_FRONT)->stance.has_droop);
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel, "droop"))), "");
  type_into (panel, "filling", "7.5");
  gtk_widget_activate_action (panel, "section.copy-to", "s", "body");
  ck_assert (panel_damper (document, DW_REAR)->body.filling == 7.5e-6);
  dw_document_undo (document);
  dw_document_undo (document);
  gtk_widget_activate_action (panel, "section.copy-from", "s", "nothing");

  /* front holes of 1.3 mm do not fit under the smaller shim of the rear */
  dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), DW_REAR);
  type_into (panel, "outer", "8.8");
  dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), DW_FRONT);
  type_into (panel_row (panel_find (panel, "holes"), 1), "diameter", "1.3");
  const guint64 state = dw_document_get_state (document);
  gtk_widget_activate_action (panel, "section.copy-from", "s", "valve");
  ck_assert_uint_eq (dw_document_get_state (document), state);
  ck_assert (gtk_widget_get_visible (GTK_WIDGET (message)));
  ck_assert (
      g_str_has_prefix (gtk_label_get_label (message), "Not copied, the front would not fit: "));
  type_into (panel, "stroke", "28");
  ck_assert (!gtk_widget_get_visible (GTK_WIDGET (message)));
}
END_TEST

START_TEST (properties_are_what_was_set)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDocument) shown = NULL;
  g_autofree char *setup = NULL;
  GtkWidget *panel = g_object_ref_sink (dw_damper_panel_new ());
  int axle;
  guint units;

  g_object_set (panel, "document", document, "setup", "a", "axle", DW_REAR, "units", DW_UNITS_INCH,
                NULL);
  g_object_get (panel, "document", &shown, "setup", &setup, "axle", &axle, "units", &units, NULL);
  ck_assert_ptr_eq (shown, document);
  ck_assert_str_eq (setup, "a");
  ck_assert_int_eq (axle, DW_REAR);
  ck_assert_uint_eq (units, DW_UNITS_INCH);
  ck_assert_str_eq (panel_text (DW_NUMBER_FIELD (panel_find (panel, "bore"))), "0.6299");
  g_object_unref (panel);
}
END_TEST

START_TEST (it_goes_when_its_window_goes)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  gpointer weak = panel;
  gpointer row = panel_row (panel_find (panel, "holes"), 0);

  g_object_add_weak_pointer (G_OBJECT (panel), &weak);
  g_object_add_weak_pointer (G_OBJECT (row), &row);
  gtk_widget_grab_focus (panel_find (panel, "bore"));
  type_into (panel, "bore", "x");
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (panel)));
  panel_settle ();
  ck_assert_ptr_null (weak);
  ck_assert_ptr_null (row);
  dw_document_undo (document);
}
END_TEST

/* ---- a random walk ---- */

static void
type_something (test_random *r, GtkWidget *panel, DwDocument *document)
{
  const dw_damper_place *place = dw_damper_place_get (test_random_int (r, 0, DW_DAMPER_PLACES - 1));
  const dw_damper *damper = panel_damper (document, DW_FRONT);
  const int n_rows = place->form == DW_FORM_HOLES  ? damper->piston.n_holes
                     : place->form == DW_FORM_SHIM ? damper->valve.n_shims
                                                   : 1;
  if (n_rows == 0 || (place->form >= DW_FORM_OIL_NOMINAL && place->form <= DW_FORM_OIL_PART))
    return;
  const dw_limit *limit = dw_limit_get (dw_damper_place_field (place)->limit);
  DwNumberField *field = field_of (panel, place, test_random_int (r, 0, n_rows - 1));
  g_autofree char *text = dw_quantity_format_digits (
      place->quantity, DW_UNITS_METRIC, test_random_uniform (r, limit->low, limit->high), 3);
  switch (test_random_int (r, 0, dw_damper_place_is_optional (place) ? 4 : 3))
    {
    case 0:
      panel_type (field, text);
      panel_enter (field);
      break;
    case 4:
      panel_type (field, "");
      panel_enter (field);
      break;
    case 1:
      panel_key (field, GDK_KEY_Up);
      panel_enter (field);
      break;
    case 2:
      panel_key (field, GDK_KEY_Page_Down);
      break;
    default:
      panel_type (field, text);
      panel_key (field, GDK_KEY_Escape);
    }
}

static void
do_something (test_random *r, GtkWidget *panel, DwDocument *document)
{
  static const char *const actions[] = { "shims.up", "shims.down", "shims.remove", "holes.remove" };
  GtkWidget *holes = panel_find (panel, "holes");
  GtkWidget *shims = panel_find (panel, "shims");
  const int row = test_random_int (r, 0, 2);

  switch (test_random_int (r, 0, 9))
    {
    case 0:
      gtk_widget_activate_action (holes, "holes.add", NULL);
      break;
    case 1:
      gtk_widget_activate_action (shims, "shims.add", NULL);
      break;
    case 2:
      {
        const int action = test_random_int (r, 0, N_ENTRIES (actions) - 1);
        gtk_widget_activate_action (action == 3 ? holes : shims, actions[action], "i", row);
        break;
      }
    case 3:
      choose (panel, "oil_kind", (guint)row);
      break;
    case 4:
      choose (panel, "gas_kind", (guint)row);
      break;
    case 5:
      choose (panel, "opens_on", (guint)(row % 2));
      break;
    case 6:
      if (panel_count_rows (holes) > row)
        choose (panel_row (holes, row), "kind", (guint)test_random_int (r, 0, 1));
      break;
    case 7:
      if (panel_count_rows (shims) > row)
        choose (panel_row (shims, row), "material",
                (guint)test_random_int (r, 0, DW_N_MATERIALS - 1));
      break;
    case 8:
      gtk_widget_activate_action (panel, row == 0 ? "section.copy-to" : "section.copy-from", "s",
                                  dw_section_name ((dw_section)test_random_int (r, 0, 5)));
      break;
    default:
      gtk_check_button_set_active (GTK_CHECK_BUTTON (panel_find (panel, "thinning")), row == 0);
    }
  (void)document;
}

/* What is shown is what is in the document, but for text that was not taken. */
static void
check_shown (GtkWidget *panel, DwDocument *document, int k)
{
  const dw_damper *damper = panel_damper (document, DW_FRONT);

  for (int a = 0; a < DW_N_AXLES; a++)
    {
      dw_error error = { 0 };
      ck_assert_msg (dw_damper_check (panel_damper (document, (dw_axle)a), &error, 1) == 0,
                     "%d: %s", k, error.text);
    }
  ck_assert_int_eq (panel_count_rows (panel_find (panel, "holes")), damper->piston.n_holes);
  ck_assert_int_eq (panel_count_rows (panel_find (panel, "shims")), damper->valve.n_shims);
  ck_assert_uint_eq (selected (panel, "oil_kind"), damper->oil.kind);
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    {
      const dw_damper_place *place = dw_damper_place_get (i);
      const int n_rows = place->form == DW_FORM_HOLES  ? damper->piston.n_holes
                         : place->form == DW_FORM_SHIM ? damper->valve.n_shims
                                                       : 1;
      for (int row = 0; row < n_rows; row++)
        {
          DwNumberField *field = field_of (panel, place, row);
          const double value = dw_number_field_get_value (field);
          g_autofree char *text = isnan (value) ? g_strdup ("")
                                                : dw_quantity_format (place->quantity,
                                                                      DW_UNITS_METRIC, value);
          if (!gtk_widget_get_visible (GTK_WIDGET (field)))
            continue;
          ck_assert_msg (same (value, dw_damper_place_read (place, damper, row)), "%d: %s", k,
                         place->id);
          if (dw_number_field_get_error (field) == NULL)
            ck_assert_msg (strcmp (panel_text (field), text) == 0, "%d: %s shows %s, not %s", k,
                           place->id, panel_text (field), text);
        }
    }
}

START_TEST (three_hundred_edits_are_undone_to_the_start)
{
  test_random r = test_random_new ((uint64_t)_i);
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = new_panel (document, DW_FRONT);
  g_autoptr (GBytes) before = bytes_of (document);
  int n_edits = 0;

  for (int k = 0; n_edits < 300; k++)
    {
      const guint64 state = dw_document_get_state (document);
      ck_assert_int_lt (k, 5000);
      if (test_random_int (&r, 0, 1) == 0)
        type_something (&r, panel, document);
      else
        do_something (&r, panel, document);
      if (dw_document_get_state (document) != state)
        n_edits++;
      check_shown (panel, document, k);
    }

  g_autoptr (GBytes) edited = bytes_of (document);
  ck_assert (!g_bytes_equal (before, edited));
  int n_steps = 0;
  while (dw_document_undo (document))
    n_steps++;
  g_autoptr (GBytes) after = bytes_of (document);
  ck_assert (g_bytes_equal (before, after));
  check_shown (panel, document, -1);
  for (int i = 0; i < n_steps; i++)
    ck_assert (dw_document_redo (document));
  g_autoptr (GBytes) again = bytes_of (document);
  ck_assert (g_bytes_equal (edited, again));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-panel");
  TCase *tc = tcase_create ("damper-panel");
  tcase_add_loop_test (tc, every_field_edits_its_own_number, 0, DW_N_AXLES);
  tcase_add_test (tc, tab_goes_through_all_fields);
  tcase_add_test (tc, looking_edits_nothing);
  tcase_add_test (tc, what_does_not_fit_is_told_in_words);
  tcase_add_test (tc, what_no_field_is_to_blame_for_stands_at_the_section);
  tcase_add_test (tc, kinds_are_switched_in_one_step);
  tcase_add_test (tc, what_has_no_effect_is_idle_and_says_why);
  tcase_add_test (tc, a_section_goes_to_the_other_axle);
  tcase_add_test (tc, properties_are_what_was_set);
  tcase_add_test (tc, it_goes_when_its_window_goes);
  tcase_add_loop_test (tc, three_hundred_edits_are_undone_to_the_start, 0, 2);
  panel_case (s, tc);
  return run_suite (s);
}
