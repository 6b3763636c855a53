/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-fixture.h"
#include "window/dw-widget.h"

START_TEST (every_child_goes)
{
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));
  GtkWidget *first = gtk_label_new ("first");
  gpointer seen = first;

  gtk_box_append (GTK_BOX (box), first);
  gtk_box_append (GTK_BOX (box), gtk_label_new ("second"));
  g_object_add_weak_pointer (G_OBJECT (first), &seen);

  dw_widget_drop_children (box);
  ck_assert_ptr_null (gtk_widget_get_first_child (box));
  ck_assert_ptr_null (seen);
  g_object_unref (box);
}
END_TEST

START_TEST (a_widget_without_children_stays)
{
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));

  dw_widget_drop_children (box);
  ck_assert_ptr_null (gtk_widget_get_first_child (box));
  g_object_unref (box);
}
END_TEST

START_TEST (a_tooltip_is_set_and_taken_away)
{
  GtkWidget *label = g_object_ref_sink (gtk_label_new ("x"));

  dw_widget_set_tooltip (label, "One.");
  ck_assert_str_eq (gtk_widget_get_tooltip_text (label), "One.");
  dw_widget_set_tooltip (label, "One.");
  dw_widget_set_tooltip (label, "Two.");
  ck_assert_str_eq (gtk_widget_get_tooltip_text (label), "Two.");
  dw_widget_set_tooltip (label, NULL);
  ck_assert_ptr_null (gtk_widget_get_tooltip_text (label));
  g_object_unref (label);
}
END_TEST

START_TEST (a_picture_has_the_pixels_of_the_screen)
{
  GtkWidget *label = g_object_ref_sink (gtk_label_new ("x"));
  cairo_surface_t *picture = dw_widget_new_picture (label, 30, 20);
  const int scale = gtk_widget_get_scale_factor (label);
  double x, y;

  ck_assert_int_eq (cairo_image_surface_get_width (picture), 30 * scale);
  ck_assert_int_eq (cairo_image_surface_get_height (picture), 20 * scale);
  cairo_surface_get_device_scale (picture, &x, &y);
  ck_assert (x == scale && y == scale);
  cairo_surface_destroy (picture);
  g_object_unref (label);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/widget");
  TCase *tc = tcase_create ("widget");
  fixture_case (s, tc);
  tcase_add_test (tc, every_child_goes);
  tcase_add_test (tc, a_widget_without_children_stays);
  tcase_add_test (tc, a_tooltip_is_set_and_taken_away);
  tcase_add_test (tc, a_picture_has_the_pixels_of_the_screen);
  return run_suite (s);
}
