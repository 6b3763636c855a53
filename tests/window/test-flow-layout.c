/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-flow-layout.h"

START_TEST (as_many_columns_as_fit)
{
  static const struct
  {
    int width;
    int columns;
  } rows[] = { { 50, 1 }, { 199, 1 }, { 200, 1 }, { 417, 1 }, { 418, 2 }, { 635, 2 }, { 636, 3 } };
  g_autoptr (GtkLayoutManager) layout = dw_flow_layout_new (200);

  for (int i = 0; i < N_ENTRIES (rows); i++)
    ck_assert_int_eq (dw_flow_layout_get_n_columns (DW_FLOW_LAYOUT (layout), rows[i].width),
                      rows[i].columns);
}
END_TEST

/* Five children of 100 by 20 in columns of 100, the third one hidden. */
static GtkWidget *
box_of_five (GtkWidget *children[5])
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_layout_manager (box, dw_flow_layout_new (100));
  for (int i = 0; i < 5; i++)
    {
      children[i] = gtk_label_new (NULL);
      gtk_widget_set_size_request (children[i], 100, 20);
      gtk_box_append (GTK_BOX (box), children[i]);
    }
  gtk_widget_set_visible (children[2], FALSE);
  return box;
}

static graphene_rect_t
place_of (GtkWidget *child)
{
  graphene_rect_t place;
  ck_assert (gtk_widget_compute_bounds (child, gtk_widget_get_parent (child), &place));
  return place;
}

START_TEST (children_fill_the_columns_row_by_row)
{
  GtkWidget *children[5];
  GtkWidget *box = box_of_five (children);
  panel_show (box);

  /* 640 pixels: five columns, one row */
  ck_assert (place_of (children[0]).origin.x < place_of (children[1]).origin.x);
  ck_assert (place_of (children[1]).origin.x < place_of (children[3]).origin.x);
  ck_assert (place_of (children[4]).origin.y == place_of (children[0]).origin.y);

  /* two columns, two rows; the hidden one leaves no hole */
  gtk_widget_set_halign (box, GTK_ALIGN_START);
  gtk_widget_set_size_request (box, 230, -1);
  panel_settle ();
  ck_assert_int_eq (gtk_widget_get_width (box), 230);
  ck_assert (place_of (children[1]).origin.y == place_of (children[0]).origin.y);
  ck_assert (place_of (children[3]).origin.y > place_of (children[0]).origin.y);
  ck_assert (place_of (children[3]).origin.x == place_of (children[0]).origin.x);
  ck_assert (place_of (children[4]).origin.x == place_of (children[1]).origin.x);
  ck_assert (place_of (children[4]).origin.x + 100.0f <= 230.0f);
}
END_TEST

START_TEST (height_follows_the_width)
{
  GtkWidget *children[5];
  GtkWidget *box = box_of_five (children);
  int one, two, four;
  panel_show (box);

  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 100, &one, NULL, NULL, NULL);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 230, &two, NULL, NULL, NULL);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, 600, &four, NULL, NULL, NULL);
  ck_assert_int_ge (one, 4 * 20);
  ck_assert_int_ge (two, 2 * 20);
  ck_assert_int_lt (two, one);
  ck_assert_int_ge (four, 20);
  ck_assert_int_lt (four, two);
}
END_TEST

START_TEST (mirrored_where_text_runs_from_the_right)
{
  GtkWidget *children[5];
  GtkWidget *box = box_of_five (children);
  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  panel_show (box);
  ck_assert (place_of (children[0]).origin.x > place_of (children[1]).origin.x);
}
END_TEST

START_TEST (never_narrower_than_its_widest_child)
{
  GtkWidget *children[5];
  GtkWidget *box = box_of_five (children);
  int width;
  gtk_widget_set_size_request (children[4], 333, 20);
  panel_show (box);
  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  ck_assert_int_eq (width, 333);
}
END_TEST

/* Else names and numbers would be far apart in a wide window. */
START_TEST (columns_do_not_grow_without_end)
{
  GtkWidget *children[5];
  GtkWidget *box = box_of_five (children);
  panel_show (box);

  gtk_widget_set_halign (box, GTK_ALIGN_START);
  gtk_widget_set_size_request (box, 330, -1);
  panel_settle ();
  ck_assert_int_eq (gtk_widget_get_width (children[0]), 120);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/flow-layout");
  TCase *tc = tcase_create ("flow-layout");
  panel_case (s, tc);
  tcase_add_test (tc, as_many_columns_as_fit);
  tcase_add_test (tc, children_fill_the_columns_row_by_row);
  tcase_add_test (tc, height_follows_the_width);
  tcase_add_test (tc, mirrored_where_text_runs_from_the_right);
  tcase_add_test (tc, never_narrower_than_its_widest_child);
  tcase_add_test (tc, columns_do_not_grow_without_end);
  return run_suite (s);
}
