/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "panel-fixture.h"
#include "window/dw-row-box.h"

static GtkWidget *
new_entry (gpointer data, int index)
{
  g_autofree char *text = g_strdup_printf ("%s%d", (const char *)data, index);
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  return entry;
}

static char prefix[] = "row ";

static GtkWidget *
focus_of (GtkWidget *widget)
{
  return gtk_root_get_focus (gtk_widget_get_root (widget));
}

START_TEST (there_are_as_many_rows_as_asked_for)
{
  GtkBox *rows = g_object_ref_sink (GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0)));
  const int counts[] = { 3, 3, 5, 1, 0, 2 };

  for (int i = 0; i < N_ENTRIES (counts); i++)
    {
      GtkWidget *first = gtk_widget_get_first_child (GTK_WIDGET (rows));
      int n = 0;
      dw_row_box_sync (rows, counts[i], new_entry, prefix, NULL);
      for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (rows)); row != NULL;
           row = gtk_widget_get_next_sibling (row))
        {
          g_autofree char *text = g_strdup_printf ("row %d", n++);
          ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (row)), text);
        }
      ck_assert_int_eq (n, counts[i]);
      ck_assert_int_eq (gtk_widget_get_visible (GTK_WIDGET (rows)), counts[i] > 0);
      if (first != NULL && counts[i] > 0)
        ck_assert_ptr_eq (gtk_widget_get_first_child (GTK_WIDGET (rows)), first);
    }
  g_object_unref (rows);
}
END_TEST

START_TEST (the_focus_stays_in_the_table)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *add = gtk_button_new_with_label ("Add");

  gtk_box_append (GTK_BOX (outer), rows);
  gtk_box_append (GTK_BOX (outer), add);
  dw_row_box_sync (GTK_BOX (rows), 3, new_entry, prefix, add);
  panel_show (outer);
  dw_row_box_focus (GTK_BOX (rows), -1);
  ck_assert (gtk_widget_is_ancestor (focus_of (outer), gtk_widget_get_last_child (rows)));
  dw_row_box_sync (GTK_BOX (rows), 2, new_entry, prefix, add);
  ck_assert (gtk_widget_is_ancestor (focus_of (outer), gtk_widget_get_last_child (rows)));
  dw_row_box_focus (GTK_BOX (rows), 0);
  ck_assert (gtk_widget_is_ancestor (focus_of (outer), gtk_widget_get_first_child (rows)));
  dw_row_box_focus (GTK_BOX (rows), 7);
  dw_row_box_sync (GTK_BOX (rows), 1, new_entry, prefix, add);
  ck_assert (gtk_widget_is_ancestor (focus_of (outer), gtk_widget_get_first_child (rows)));
  dw_row_box_sync (GTK_BOX (rows), 0, new_entry, prefix, add);
  ck_assert_ptr_eq (focus_of (outer), add);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/row-box");
  TCase *tc = tcase_create ("row-box");
  tcase_add_test (tc, there_are_as_many_rows_as_asked_for);
  tcase_add_test (tc, the_focus_stays_in_the_table);
  panel_case (s, tc);
  return run_suite (s);
}
