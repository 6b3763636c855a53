/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-short-names.h"

#include "panel-fixture.h"

static int
least_width (GtkWidget *widget)
{
  int least;
  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

START_TEST (a_long_name_does_not_widen_the_button)
{
  static const char *const NAMES[]
      = { "short", "a name that is far too long for the button of a drop-down", NULL };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *plain = gtk_drop_down_new_from_strings (NAMES);
  GtkWidget *shortened = gtk_drop_down_new_from_strings (NAMES);
  dw_short_names_apply (GTK_DROP_DOWN (shortened));
  gtk_box_append (GTK_BOX (box), plain);
  gtk_box_append (GTK_BOX (box), shortened);
  panel_show (box);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (plain), 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (shortened), 1);
  panel_settle ();
  ck_assert_int_gt (least_width (plain), 250);
  ck_assert_int_lt (least_width (shortened), 120);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/short-names");
  TCase *tc = tcase_create ("short-names");
  panel_case (s, tc);
  tcase_add_test (tc, a_long_name_does_not_widen_the_button);
  return run_suite (s);
}
