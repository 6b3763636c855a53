/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-support.h"
#include "window/dw-settings.h"

static int n_changed;

static void
on_changed (DwSettings *settings, gpointer data)
{
  (void)settings;
  (void)data;
  n_changed++;
}

static DwSettings *
new_settings (void)
{
  DwSettings *settings = dw_settings_new ();
  n_changed = 0;
  g_signal_connect (settings, "changed", G_CALLBACK (on_changed), NULL);
  return settings;
}

START_TEST (defaults_are_metric_and_the_desktop_s_theme)
{
  g_autoptr (DwSettings) settings = new_settings ();
  int width, height;
  gboolean maximized;
  ck_assert_int_eq (dw_settings_get_units (settings), DW_UNITS_METRIC);
  ck_assert_int_eq (dw_settings_get_theme (settings), DW_THEME_SYSTEM);
  dw_settings_get_window (settings, &width, &height, &maximized);
  ck_assert_int_eq (width, 1280);
  ck_assert_int_eq (height, 800);
  ck_assert (!maximized);
}
END_TEST

START_TEST (choices_hold_and_are_told)
{
  g_autoptr (DwSettings) settings = new_settings ();
  dw_settings_set_units (settings, DW_UNITS_INCH | DW_UNITS_LBF_PER_INCH);
  ck_assert_int_eq (dw_settings_get_units (settings), DW_UNITS_INCH | DW_UNITS_LBF_PER_INCH);
  ck_assert_int_gt (n_changed, 0);
  dw_settings_set_theme (settings, DW_THEME_SUN);
  ck_assert_int_eq (dw_settings_get_theme (settings), DW_THEME_SUN);
  const int told = n_changed;
  dw_settings_set_theme (settings, DW_THEME_SUN);
  ck_assert_int_eq (n_changed, told);
}
END_TEST

START_TEST (window_size_is_remembered_silently)
{
  g_autoptr (DwSettings) settings = new_settings ();
  int width, height;
  gboolean maximized;
  dw_settings_set_window (settings, 1100, 720, TRUE);
  dw_settings_get_window (settings, &width, &height, &maximized);
  ck_assert (width == 1100 && height == 720 && maximized);
  ck_assert_int_eq (n_changed, 0);
}
END_TEST

/* The schema in data/ is the one that is compiled for these tests. */
START_TEST (the_schema_is_found_and_shared)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = source != NULL ? g_settings_schema_source_lookup (
                                           source, "org.dampwright.Dampwright", TRUE)
                                                      : NULL;
  ck_assert_ptr_nonnull (schema);
  g_autoptr (DwSettings) a = new_settings ();
  g_autoptr (DwSettings) b = dw_settings_new ();
  dw_settings_set_units (a, DW_UNITS_FAHRENHEIT);
  ck_assert_int_eq (dw_settings_get_units (b), DW_UNITS_FAHRENHEIT);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/settings");
  TCase *tc = tcase_create ("settings");
  tcase_add_test (tc, defaults_are_metric_and_the_desktop_s_theme);
  tcase_add_test (tc, choices_hold_and_are_told);
  tcase_add_test (tc, window_size_is_remembered_silently);
  tcase_add_test (tc, the_schema_is_found_and_shared);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
