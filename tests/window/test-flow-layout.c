/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-flow-layout.h"

#define N_CHILDREN 5

/* Five children of 60 by 20 pixels in columns of 100. */
static GtkWidget *
new_box (GtkWidget **children)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (box, dw_flow_layout_new (100));
  for (int i = 0; i < N_CHILDREN; i++)
    {
      children[i] = gtk_drawing_area_new ();
      gtk_widget_set_size_request (children[i], 60, 20);
      gtk_widget_insert_before (children[i], box, NULL);
    }
  return g_object_ref_sink (box);
}

static int
height_for (GtkWidget *box, int width)
{
  int minimum;
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, width, &minimum, NULL, NULL, NULL);
  return minimum;
}

START_TEST (columns_follow_the_width)
{
  g_autoptr (DwFlowLayout) layout = DW_FLOW_LAYOUT (dw_flow_layout_new (100));

  ck_assert_int_eq (dw_flow_layout_get_n_columns (layout, 10), 1);
  ck_assert_int_eq (dw_flow_layout_get_n_columns (layout, 217), 1);
  ck_assert_int_eq (dw_flow_layout_get_n_columns (layout, 218), 2);
  ck_assert_int_eq (dw_flow_layout_get_n_columns (layout, 336), 3);
}
END_TEST

START_TEST (more_columns_need_less_height)
{
  GtkWidget *children[N_CHILDREN];
  g_autoptr (GtkWidget) box = new_box (children);
  int minimum;

  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  ck_assert_int_eq (minimum, 100);
  ck_assert_int_eq (height_for (box, 100), 5 * 20 + 4 * 6);
  ck_assert_int_eq (height_for (box, 218), 3 * 20 + 2 * 6);
  ck_assert_int_eq (height_for (box, 600), 20);
  gtk_widget_set_visible (children[1], FALSE);
  ck_assert_int_eq (height_for (box, 218), 2 * 20 + 6);
  gtk_widget_set_size_request (children[0], 130, 50);
  ck_assert_int_eq (height_for (box, 218), 50 + 20 + 6);
  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  ck_assert_int_eq (minimum, 130);
}
END_TEST

static graphene_rect_t
place_of (GtkWidget *child, GtkWidget *box)
{
  graphene_rect_t rect;
  ck_assert (gtk_widget_compute_bounds (child, box, &rect));
  return rect;
}

START_TEST (children_stand_in_columns)
{
  GtkWidget *children[N_CHILDREN];
  g_autoptr (GtkWidget) box = new_box (children);
  const GtkAllocation all = { 0, 0, 230, 200 };

  panel_show (box);
  gtk_widget_size_allocate (box, &all, -1);
  for (int i = 0; i < N_CHILDREN; i++)
    {
      const graphene_rect_t place = place_of (children[i], box);
      ck_assert_int_eq ((int)place.origin.x, i % 2 * (106 + 18));
      ck_assert_int_eq ((int)place.origin.y, i / 2 * (20 + 6));
      ck_assert_int_eq ((int)place.size.width, 106);
    }
  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  gtk_widget_queue_resize (box);
  gtk_widget_size_allocate (box, &all, -1);
  ck_assert_int_eq ((int)place_of (children[0], box).origin.x, 230 - 106);
  ck_assert_int_eq ((int)place_of (children[1], box).origin.x, 0);
}
END_TEST

START_TEST (columns_do_not_grow_without_end)
{
  GtkWidget *children[N_CHILDREN];
  g_autoptr (GtkWidget) box = new_box (children);
  const GtkAllocation all = { 0, 0, 330, 200 };

  panel_show (box);
  gtk_widget_size_allocate (box, &all, -1);
  ck_assert_int_eq ((int)place_of (children[0], box).size.width, 120);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/flow-layout");
  TCase *tc = tcase_create ("flow-layout");
  tcase_add_test (tc, columns_follow_the_width);
  tcase_add_test (tc, more_columns_need_less_height);
  tcase_add_test (tc, children_stand_in_columns);
  tcase_add_test (tc, columns_do_not_grow_without_end);
  panel_case (s, tc);
  return run_suite (s);
}
