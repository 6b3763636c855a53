/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-damper-panel.h"

static GtkWidget *
shown_panel (DwDocument *document)
{
  GtkWidget *panel = dw_damper_panel_new ();
  dw_damper_panel_set_document (DW_DAMPER_PANEL (panel), document);
  dw_damper_panel_set_setup (DW_DAMPER_PANEL (panel), "a");
  panel_show (panel);
  return panel;
}

static DwNumberField *
field (GtkWidget *panel, const char *id)
{
  return DW_NUMBER_FIELD (panel_find (panel, id));
}

START_TEST (every_number_of_the_damper_is_there)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  const dw_damper *damper = panel_damper (document, DW_FRONT);

  ck_assert (dw_number_field_get_value (field (panel, "bore")) == damper->body.bore);
  ck_assert (dw_number_field_get_value (field (panel, "viscosity")) == damper->oil.viscosity);
  ck_assert (dw_number_field_get_value (field (panel, "rate")) == damper->spring.rate);
  ck_assert_int_eq (panel_count_rows (panel_find (panel, "holes")), 2);
  ck_assert_int_eq (panel_count_rows (panel_find (panel, "shims")), 2);
  dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), DW_REAR);
  ck_assert (dw_number_field_get_value (field (panel, "stroke")) == 35e-3);
}
END_TEST

START_TEST (an_edit_reaches_the_document_and_comes_back)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  const double before = panel_damper (document, DW_FRONT)->body.stroke;

  gtk_editable_set_text (GTK_EDITABLE (panel_entry (field (panel, "stroke"))), "22,5 mm");
  ck_assert (fabs (panel_damper (document, DW_FRONT)->body.stroke - 22.5e-3) < 1e-12);
  dw_document_undo (document);
  ck_assert (dw_number_field_get_value (field (panel, "stroke")) == before);
}
END_TEST

START_TEST (an_oil_shows_what_describes_it)
{
  static const struct
  {
    dw_oil_kind kind;
    const char *shown;
    const char *hidden[2];
  } rows[] = { { DW_OIL_NOMINAL, "viscosity", { "viscosity1", "part_share1" } },
               { DW_OIL_MEASURED, "viscosity1", { "viscosity", "part_share1" } },
               { DW_OIL_BLEND, "part_share1", { "viscosity", "viscosity1" } } };
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  GtkDropDown *kind = GTK_DROP_DOWN (panel_find (panel, "oil_kind"));

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      gtk_drop_down_set_selected (kind, rows[i].kind);
      ck_assert_int_eq (panel_damper (document, DW_FRONT)->oil.kind, rows[i].kind);
      ck_assert (gtk_widget_get_visible (panel_find (panel, rows[i].shown)));
      for (int k = 0; k < 2; k++)
        ck_assert (!gtk_widget_get_visible (panel_find (panel, rows[i].hidden[k])));
    }
}
END_TEST

START_TEST (thinning_is_asked_for)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  GtkCheckButton *thinning = GTK_CHECK_BUTTON (panel_find (panel, "thinning"));

  ck_assert (gtk_check_button_get_active (thinning));
  gtk_check_button_set_active (thinning, FALSE);
  ck_assert (!panel_damper (document, DW_FRONT)->oil.has_thinning);
  ck_assert (!gtk_widget_get_visible (panel_find (panel, "thinning_rate")));
}
END_TEST

START_TEST (what_has_no_effect_says_why)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  GtkWidget *preload = panel_find (panel, "valve_preload");

  ck_assert (gtk_widget_get_sensitive (preload));
  for (int i = 0; i < 2; i++)
    gtk_widget_activate_action (panel_find (panel, "shims"), "shims.remove", "i", 0);
  ck_assert (!gtk_widget_get_sensitive (preload));
  ck_assert_ptr_nonnull (strstr (gtk_widget_get_tooltip_text (preload), "no shims"));
  ck_assert (gtk_widget_get_visible (panel_find (panel, "valve_hint")));
  dw_document_undo (document);
  ck_assert (gtk_widget_get_sensitive (preload));
}
END_TEST

START_TEST (a_section_is_made_alike)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  const double front = panel_damper (document, DW_FRONT)->spring.rate;
  const double rear = panel_damper (document, DW_REAR)->spring.rate;

  ck_assert (front != rear);
  ck_assert (gtk_widget_activate_action (panel, "section.copy-to", "s", "spring"));
  ck_assert (panel_damper (document, DW_REAR)->spring.rate == front);
  dw_document_undo (document);
  ck_assert (gtk_widget_activate_action (panel, "section.copy-from", "s", "spring"));
  ck_assert (panel_damper (document, DW_FRONT)->spring.rate == rear);
}
END_TEST

START_TEST (without_a_document_nothing_can_be_typed)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);

  dw_damper_panel_set_setup (DW_DAMPER_PANEL (panel), "not there");
  ck_assert (!gtk_widget_is_sensitive (panel_find (panel, "bore")));
  ck_assert_str_eq (panel_text (field (panel, "bore")), "");
  dw_damper_panel_set_document (DW_DAMPER_PANEL (panel), NULL);
  ck_assert (!gtk_widget_is_sensitive (panel_find (panel, "bore")));
}
END_TEST

START_TEST (units_are_those_asked_for)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  GtkWidget *panel = shown_panel (document);
  const double bore = panel_damper (document, DW_FRONT)->body.bore;

  dw_damper_panel_set_units (DW_DAMPER_PANEL (panel), DW_UNITS_INCH);
  ck_assert (fabs (g_ascii_strtod (panel_text (field (panel, "bore")), NULL) * 0.0254 - bore)
             < 5e-6);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-panel");
  TCase *tc = tcase_create ("damper-panel");
  panel_case (s, tc);
  tcase_add_test (tc, every_number_of_the_damper_is_there);
  tcase_add_test (tc, an_edit_reaches_the_document_and_comes_back);
  tcase_add_test (tc, an_oil_shows_what_describes_it);
  tcase_add_test (tc, thinning_is_asked_for);
  tcase_add_test (tc, what_has_no_effect_says_why);
  tcase_add_test (tc, a_section_is_made_alike);
  tcase_add_test (tc, without_a_document_nothing_can_be_typed);
  tcase_add_test (tc, units_are_those_asked_for);
  return run_suite (s);
}
