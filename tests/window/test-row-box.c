/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-row-box.h"

/* A row that can have the focus, and tells which one it is. */
static GtkWidget *
new_row (gpointer made, int index)
{
  (*(int *)made)++;
  return gtk_button_new_with_label (index == 0 ? "0" : index == 1 ? "1" : "2");
}

typedef struct
{
  GtkBox *rows;
  GtkWidget *fallback;
  GtkWidget *window;
  int made;
} table;

static table
shown_table (int n)
{
  table t = { .rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0)),
              .fallback = gtk_button_new_with_label ("add") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), GTK_WIDGET (t.rows));
  gtk_box_append (GTK_BOX (box), t.fallback);
  dw_row_box_sync (t.rows, n, new_row, &t.made, t.fallback);
  t.window = panel_show (box);
  ck_assert_int_eq (t.made, n);
  return t;
}

static GtkWidget *
row (const table *t, int index)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (t->rows));
  for (; index > 0; index--)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

START_TEST (rows_that_stay_are_the_same_ones)
{
  table t = shown_table (3);
  GtkWidget *first = row (&t, 0);
  GtkWidget *second = row (&t, 1);

  dw_row_box_sync (t.rows, 2, new_row, &t.made, t.fallback);
  ck_assert_ptr_null (row (&t, 2));
  dw_row_box_sync (t.rows, 3, new_row, &t.made, t.fallback);
  ck_assert_ptr_eq (row (&t, 0), first);
  ck_assert_ptr_eq (row (&t, 1), second);
  ck_assert_str_eq (gtk_button_get_label (GTK_BUTTON (row (&t, 2))), "2");
  ck_assert_int_eq (t.made, 4);
}
END_TEST

START_TEST (no_rows_take_no_room)
{
  table t = shown_table (1);
  dw_row_box_sync (t.rows, 0, new_row, &t.made, t.fallback);
  ck_assert (!gtk_widget_get_visible (GTK_WIDGET (t.rows)));
  dw_row_box_sync (t.rows, 1, new_row, &t.made, t.fallback);
  ck_assert (gtk_widget_get_visible (GTK_WIDGET (t.rows)));
}
END_TEST

START_TEST (the_keyboard_does_not_fall_out)
{
  table t = shown_table (2);
  GtkRoot *root = GTK_ROOT (t.window);

  dw_row_box_focus (t.rows, -1);
  ck_assert_ptr_eq (gtk_root_get_focus (root), row (&t, 1));
  dw_row_box_sync (t.rows, 1, new_row, &t.made, t.fallback);
  ck_assert_ptr_eq (gtk_root_get_focus (root), row (&t, 0));
  dw_row_box_sync (t.rows, 0, new_row, &t.made, t.fallback);
  ck_assert_ptr_eq (gtk_root_get_focus (root), t.fallback);
}
END_TEST

START_TEST (the_focus_goes_to_a_row)
{
  table t = shown_table (3);
  GtkRoot *root = GTK_ROOT (t.window);

  dw_row_box_focus (t.rows, 1);
  ck_assert_ptr_eq (gtk_root_get_focus (root), row (&t, 1));
  /* one that is not there changes nothing */
  dw_row_box_focus (t.rows, 7);
  ck_assert_ptr_eq (gtk_root_get_focus (root), row (&t, 1));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/row-box");
  TCase *tc = tcase_create ("row-box");
  panel_case (s, tc);
  tcase_add_test (tc, rows_that_stay_are_the_same_ones);
  tcase_add_test (tc, no_rows_take_no_room);
  tcase_add_test (tc, the_keyboard_does_not_fall_out);
  tcase_add_test (tc, the_focus_goes_to_a_row);
  return run_suite (s);
}
