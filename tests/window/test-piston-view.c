/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-piston-view.h"

static GtkWidget *
shown_view (const dw_damper *damper)
{
  GtkWidget *view = dw_piston_view_new ();
  dw_piston_view_set_damper (DW_PISTON_VIEW (view), damper);
  panel_show (view);
  return view;
}

START_TEST (the_face_is_told_in_words)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  DwPistonView *view = DW_PISTON_VIEW (g_object_ref_sink (dw_piston_view_new ()));
  g_autofree char *none = dw_piston_view_dup_description (view);

  ck_assert_ptr_null (none);
  dw_piston_view_set_damper (view, panel_damper (document, DW_FRONT));
  g_autofree char *text = dw_piston_view_dup_description (view);
  ck_assert_str_eq (text, "Piston in a bore of 16 mm, 6 open holes of 1.3 mm, "
                          "3 covered holes of 1 mm");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (panel_find (GTK_WIDGET (view), "canvas")),
                                       GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text);
  g_object_unref (view);
}
END_TEST

/* Covered holes stand evenly on their circle, the first at the top: look for it there. */
START_TEST (the_hole_under_the_pointer_is_told)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  const dw_damper *damper = panel_damper (document, DW_FRONT);
  GtkWidget *view = shown_view (damper);
  GtkWidget *canvas = panel_find (view, "canvas");
  const double x = gtk_widget_get_width (canvas) / 2.0;
  const double middle = gtk_widget_get_height (canvas) / 2.0;
  /* the bore fills the drawing but for a margin of 3 pixels */
  const double radius = damper->valve.hole_circle / damper->body.bore * (MIN (x, middle) - 3.0);
  g_autofree char *covered = dw_piston_view_dup_hole (DW_PISTON_VIEW (view), x, middle - radius);
  g_autofree char *shaft = dw_piston_view_dup_hole (DW_PISTON_VIEW (view), x, middle);
  int n_open = 0;

  ck_assert_ptr_nonnull (covered);
  ck_assert_ptr_nonnull (strstr (covered, "Covered hole, 1 mm, group 2"));
  ck_assert_ptr_null (shaft);
  for (int i = 0; i < 132 * 132; i++)
    {
      g_autofree char *hole = dw_piston_view_dup_hole (DW_PISTON_VIEW (view), i % 132, i / 132);
      if (hole != NULL && strstr (hole, "Open hole, 1.3 mm, group 1") != NULL)
        n_open++;
    }
  ck_assert_int_gt (n_open, 6 * 50);
}
END_TEST

START_TEST (thin_land_is_a_warning)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  dw_damper damper = *panel_damper (document, DW_FRONT);
  GtkWidget *view = shown_view (&damper);
  GtkWidget *warning = panel_find (view, "warning");

  ck_assert (!gtk_widget_get_visible (warning));
  damper.piston.holes[0] = (dw_holes){ .count = 24, .diameter = 1.6e-3 };
  dw_piston_view_set_damper (DW_PISTON_VIEW (view), &damper);
  ck_assert (gtk_widget_get_visible (warning));
  ck_assert_ptr_nonnull (strstr (gtk_label_get_label (GTK_LABEL (warning)), "holes of 1.60"));
  panel_settle ();
  dw_piston_view_set_damper (DW_PISTON_VIEW (view), NULL);
  ck_assert (!gtk_widget_get_visible (warning));
}
END_TEST

START_TEST (units_and_style_may_change)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_DARK);
  GtkWidget *view = shown_view (panel_damper (document, DW_FRONT));
  gpointer weak = view;

  dw_piston_view_set_style (DW_PISTON_VIEW (view), &style);
  dw_piston_view_set_units (DW_PISTON_VIEW (view), DW_UNITS_INCH);
  panel_settle ();
  g_autofree char *text = dw_piston_view_dup_description (DW_PISTON_VIEW (view));
  ck_assert_ptr_nonnull (strstr (text, "0.6299 in"));
  g_object_add_weak_pointer (G_OBJECT (view), &weak);
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (view)));
  panel_settle ();
  ck_assert_ptr_null (weak);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/piston-view");
  TCase *tc = tcase_create ("piston-view");
  tcase_add_test (tc, the_face_is_told_in_words);
  tcase_add_test (tc, the_hole_under_the_pointer_is_told);
  tcase_add_test (tc, thin_land_is_a_warning);
  tcase_add_test (tc, units_and_style_may_change);
  panel_case (s, tc);
  return run_suite (s);
}
