/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "panel-fixture.h"
#include "window/dw-piston-view.h"

static DwPistonView *
shown_view (const dw_damper *damper)
{
  GtkWidget *view = dw_piston_view_new ();
  dw_piston_view_set_damper (DW_PISTON_VIEW (view), damper);
  panel_show (view);
  return DW_PISTON_VIEW (view);
}

static dw_damper
some_damper (void)
{
  dw_damper damper = dw_damper_defaults ();

  damper.body.bore = 16e-3;
  damper.piston.n_holes = 2;
  damper.piston.holes[0] = (dw_holes){ .count = 6, .diameter = 1.2e-3 };
  damper.piston.holes[1] = (dw_holes){ .count = 1, .diameter = 1e-3, .covered = true };
  return damper;
}

START_TEST (the_face_is_told_in_words)
{
  const dw_damper damper = some_damper ();
  DwPistonView *view = shown_view (&damper);
  g_autofree char *metric = dw_piston_view_dup_description (view);

  ck_assert_str_eq (metric,
                    "Piston in a bore of 16 mm, 6 open holes of 1.2 mm, 1 covered hole of 1 mm");
  dw_piston_view_set_units (view, DW_UNITS_INCH);
  g_autofree char *inches = dw_piston_view_dup_description (view);
  ck_assert_ptr_nonnull (strstr (inches, "0.6299 in"));
  dw_piston_view_set_damper (view, NULL);
  ck_assert_ptr_null (dw_piston_view_dup_description (view));
}
END_TEST

START_TEST (the_pointer_finds_every_hole)
{
  const dw_damper damper = some_damper ();
  DwPistonView *view = shown_view (&damper);
  GtkWidget *canvas = panel_find (GTK_WIDGET (view), "canvas");
  int open = 0, covered = 0;

  for (int y = 0; y < gtk_widget_get_height (canvas); y += 2)
    for (int x = 0; x < gtk_widget_get_width (canvas); x += 2)
      {
        g_autofree char *text = dw_piston_view_dup_hole (view, x, y);
        if (text != NULL && strstr (text, "Open hole, 1.2 mm, group 1") != NULL)
          open++;
        else if (text != NULL && strstr (text, "Covered hole, 1 mm, group 2") != NULL)
          covered++;
        else
          ck_assert_msg (text == NULL, "%s", text);
      }
  ck_assert_msg (covered > 4, "%d %d %s", covered, open,
                 gtk_label_get_label (GTK_LABEL (panel_find (GTK_WIDGET (view), "warning"))));
  /* six of them, and each larger than the covered one */
  ck_assert_int_gt (open, 6 * covered);
  ck_assert_ptr_null (dw_piston_view_dup_hole (view, -50.0, -50.0));
}
END_TEST

START_TEST (holes_too_close_are_warned_of)
{
  dw_damper damper = some_damper ();
  DwPistonView *view = shown_view (&damper);
  GtkWidget *warning = panel_find (GTK_WIDGET (view), "warning");

  ck_assert (!gtk_widget_get_visible (warning));
  damper.piston.holes[0] = (dw_holes){ .count = 12, .diameter = 3e-3 };
  dw_piston_view_set_damper (view, &damper);
  ck_assert (gtk_widget_get_visible (warning));
  ck_assert_int_gt ((int)strlen (gtk_label_get_label (GTK_LABEL (warning))), 10);
  dw_piston_view_set_damper (view, NULL);
  ck_assert (!gtk_widget_get_visible (warning));
}
END_TEST

START_TEST (every_style_is_drawn)
{
  const dw_damper damper = some_damper ();
  DwPistonView *view = shown_view (&damper);

  for (int k = 0; k < DW_N_STYLES; k++)
    {
      const dw_chart_style style = dw_chart_style_make ((dw_style_id)k);
      dw_piston_view_set_style (view, &style);
      panel_settle ();
      g_autofree char *words = dw_piston_view_dup_description (view);
      ck_assert_ptr_nonnull (words);
    }
}
END_TEST

static int turned = -1;

static void
on_turned (DwPistonView *view, int hole)
{
  (void)view;
  turned = hole;
}

static gboolean
press_key (DwPistonView *view, guint key)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (GTK_WIDGET (view));
  gboolean taken = FALSE;
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) c = g_list_model_get_item (all, i);
      if (GTK_IS_EVENT_CONTROLLER_KEY (c))
        g_signal_emit_by_name (c, "key-pressed", key, 0, 0, &taken);
    }
  return taken;
}

START_TEST (holes_in_sets_are_turned_by_click_and_keys)
{
  const dw_damper damper = some_damper ();
  const int set_of[7] = { -1, 0, 1, 0, 1, 0, 1 };
  DwPistonView *view = shown_view (&damper);
  GtkWidget *canvas = panel_find (GTK_WIDGET (view), "canvas");
  turned = -1;
  g_signal_connect (view, "hole-turned", G_CALLBACK (on_turned), NULL);
  /* without sets it is a picture */
  ck_assert (!press_key (view, GDK_KEY_Right));
  ck_assert (!gtk_widget_get_focusable (GTK_WIDGET (view)));

  dw_piston_view_set_sets (view, set_of, 7);
  dw_piston_view_set_extent (view, 200);
  panel_settle ();
  ck_assert_int_ge (gtk_widget_get_width (canvas), 200);
  ck_assert (gtk_widget_get_focusable (GTK_WIDGET (view)));
  ck_assert (press_key (view, GDK_KEY_Right));
  ck_assert (press_key (view, GDK_KEY_Right));
  ck_assert (press_key (view, GDK_KEY_space));
  ck_assert_int_eq (turned, 1);
  ck_assert (press_key (view, GDK_KEY_Left));
  ck_assert (press_key (view, GDK_KEY_Left));
  ck_assert (press_key (view, GDK_KEY_Return));
  ck_assert_int_eq (turned, 6);

  g_autoptr (GListModel) all = gtk_widget_observe_controllers (canvas);
  for (int y = 0; y < gtk_widget_get_height (canvas) && turned == 6; y += 2)
    for (int x = 0; x < gtk_widget_get_width (canvas) && turned == 6; x += 2)
      for (guint i = 0; i < g_list_model_get_n_items (all); i++)
        {
          g_autoptr (GtkEventController) c = g_list_model_get_item (all, i);
          if (GTK_IS_GESTURE_CLICK (c))
            g_signal_emit_by_name (c, "pressed", 1, (double)x, (double)y);
        }
  ck_assert_int_ne (turned, 6);
  dw_piston_view_set_sets (view, NULL, 0);
  ck_assert (!press_key (view, GDK_KEY_space));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/piston-view");
  TCase *tc = tcase_create ("piston-view");
  panel_case (s, tc);
  tcase_add_test (tc, the_face_is_told_in_words);
  tcase_add_test (tc, the_pointer_finds_every_hole);
  tcase_add_test (tc, holes_too_close_are_warned_of);
  tcase_add_test (tc, every_style_is_drawn);
  tcase_add_test (tc, holes_in_sets_are_turned_by_click_and_keys);
  return run_suite (s);
}
