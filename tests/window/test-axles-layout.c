/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-axles-layout.h"

/* Two children of 150 and 200 by 20 and 30. */
static GtkWidget *
box_of_two (GtkWidget *children[DW_N_AXLES])
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (box, dw_axles_layout_new (10));
  for (int i = 0; i < DW_N_AXLES; i++)
    {
      children[i] = gtk_label_new (NULL);
      gtk_widget_set_size_request (children[i], 150 + 50 * i, 20 + 10 * i);
      gtk_box_append (GTK_BOX (box), children[i]);
    }
  return box;
}

static void
show (GtkWidget *box, gboolean both, dw_axle preferred)
{
  dw_axles_layout_show (DW_AXLES_LAYOUT (gtk_widget_get_layout_manager (box)), both, preferred);
  panel_settle ();
}

START_TEST (both_have_equal_halves)
{
  GtkWidget *children[DW_N_AXLES];
  GtkWidget *box = box_of_two (children);
  panel_show (box);
  ck_assert (gtk_widget_get_mapped (children[DW_FRONT]));
  ck_assert (gtk_widget_get_mapped (children[DW_REAR]));
  ck_assert_int_eq (gtk_widget_get_width (children[DW_FRONT]),
                    gtk_widget_get_width (children[DW_REAR]));
  ck_assert_int_eq (gtk_widget_get_width (children[DW_FRONT]),
                    (gtk_widget_get_width (box) - 10) / 2);
}
END_TEST

START_TEST (one_has_all_and_the_other_is_not_drawn)
{
  GtkWidget *children[DW_N_AXLES];
  GtkWidget *box = box_of_two (children);
  panel_show (box);
  show (box, FALSE, DW_REAR);
  ck_assert (!gtk_widget_get_mapped (children[DW_FRONT]));
  ck_assert_int_eq (gtk_widget_get_width (children[DW_REAR]), gtk_widget_get_width (box));
  show (box, TRUE, DW_REAR);
  ck_assert (gtk_widget_get_mapped (children[DW_FRONT]));
}
END_TEST

START_TEST (a_narrow_place_shows_the_preferred_one)
{
  GtkWidget *children[DW_N_AXLES];
  GtkWidget *box = box_of_two (children);
  panel_show (box);
  gtk_widget_set_halign (box, GTK_ALIGN_START);
  gtk_widget_set_size_request (box, 409, -1);
  gtk_widget_set_hexpand (box, FALSE);
  panel_settle ();
  /* as wide as both want to be: 2 x 200 + 10 */
  ck_assert_int_eq (gtk_widget_get_width (box), 410);
  ck_assert (gtk_widget_get_mapped (children[DW_REAR]));
  const GtkAllocation narrow = { 0, 0, 409, 30 };
  gtk_layout_manager_allocate (gtk_widget_get_layout_manager (box), box, narrow.width,
                               narrow.height, -1);
  ck_assert (gtk_widget_get_child_visible (children[DW_FRONT]));
  ck_assert (!gtk_widget_get_child_visible (children[DW_REAR]));
}
END_TEST

START_TEST (the_least_width_is_that_of_one)
{
  GtkWidget *children[DW_N_AXLES];
  GtkWidget *box = box_of_two (children);
  int least, wanted, high, low;
  panel_show (box);
  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL, NULL);
  ck_assert_int_eq (least, 200);
  ck_assert_int_eq (wanted, 410);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 410, &high, NULL, NULL, NULL);
  ck_assert_int_eq (high, 30);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 300, &low, NULL, NULL, NULL);
  ck_assert_int_eq (low, 20);
}
END_TEST

START_TEST (mirrored_where_text_runs_from_the_right)
{
  GtkWidget *children[DW_N_AXLES];
  GtkWidget *box = box_of_two (children);
  graphene_rect_t front, rear;
  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  panel_show (box);
  ck_assert (gtk_widget_compute_bounds (children[DW_FRONT], box, &front));
  ck_assert (gtk_widget_compute_bounds (children[DW_REAR], box, &rear));
  ck_assert (front.origin.x > rear.origin.x);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/axles-layout");
  TCase *tc = tcase_create ("axles-layout");
  panel_case (s, tc);
  tcase_add_test (tc, both_have_equal_halves);
  tcase_add_test (tc, one_has_all_and_the_other_is_not_drawn);
  tcase_add_test (tc, a_narrow_place_shows_the_preferred_one);
  tcase_add_test (tc, the_least_width_is_that_of_one);
  tcase_add_test (tc, mirrored_where_text_runs_from_the_right);
  return run_suite (s);
}
