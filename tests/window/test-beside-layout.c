/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-beside-layout.h"

/* 200 by 60 and 120 by 100. */
static GtkWidget *
box_of_two (GtkWidget *children[2])
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (box, dw_beside_layout_new ());
  for (int i = 0; i < 2; i++)
    {
      children[i] = gtk_label_new (NULL);
      gtk_box_append (GTK_BOX (box), children[i]);
    }
  gtk_widget_set_size_request (children[0], 200, 60);
  gtk_widget_set_size_request (children[1], 120, 100);
  return box;
}

static graphene_rect_t
place_of (GtkWidget *child)
{
  graphene_rect_t place;
  ck_assert (gtk_widget_compute_bounds (child, gtk_widget_get_parent (child), &place));
  return place;
}

START_TEST (beside_where_there_is_room)
{
  GtkWidget *children[2];
  GtkWidget *box = box_of_two (children);
  panel_show (box);
  const graphene_rect_t second = place_of (children[1]);
  ck_assert (second.origin.y == place_of (children[0]).origin.y);
  ck_assert (second.size.width == 120.0F);
  ck_assert (second.origin.x + second.size.width == (float)gtk_widget_get_width (box));
  ck_assert (place_of (children[0]).size.width
             == (float)gtk_widget_get_width (box) - 120.0F - 12.0F);
}
END_TEST

START_TEST (below_where_there_is_none)
{
  GtkWidget *children[2];
  GtkWidget *box = box_of_two (children);
  int least, high, low;
  panel_show (box);
  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  ck_assert_int_eq (least, 200);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 332, &low, NULL, NULL, NULL);
  ck_assert_int_eq (low, 100);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 331, &high, NULL, NULL, NULL);
  ck_assert_int_eq (high, 60 + 12 + 100);
  gtk_layout_manager_allocate (gtk_widget_get_layout_manager (box), box, 331, high, -1);
  ck_assert (place_of (children[1]).origin.y == 72.0F);
  ck_assert (place_of (children[1]).origin.x == 0.0F);
  ck_assert (place_of (children[0]).size.width == 331.0F);
}
END_TEST

START_TEST (a_hidden_one_leaves_its_room)
{
  GtkWidget *children[2];
  GtkWidget *box = box_of_two (children);
  gtk_widget_set_visible (children[1], FALSE);
  panel_show (box);
  ck_assert_int_eq (gtk_widget_get_width (children[0]), gtk_widget_get_width (box));
}
END_TEST

START_TEST (mirrored_where_text_runs_from_the_right)
{
  GtkWidget *children[2];
  GtkWidget *box = box_of_two (children);
  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  panel_show (box);
  ck_assert (place_of (children[0]).origin.x > place_of (children[1]).origin.x);
  ck_assert (place_of (children[1]).origin.x == 0.0F);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/beside-layout");
  TCase *tc = tcase_create ("beside-layout");
  panel_case (s, tc);
  tcase_add_test (tc, beside_where_there_is_room);
  tcase_add_test (tc, below_where_there_is_none);
  tcase_add_test (tc, a_hidden_one_leaves_its_room);
  tcase_add_test (tc, mirrored_where_text_runs_from_the_right);
  return run_suite (s);
}
