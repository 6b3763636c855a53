/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map.h"

#include <glib.h>

#include "test-support.h"

START_TEST (defaults_choose_nothing)
{
  const dw_drill_map map = dw_drill_map_defaults ();
  ck_assert_int_eq (map.chosen, -1);
  ck_assert_int_eq (map.pointed, -1);
  ck_assert_int_eq (map.n_dots, 0);
  ck_assert_ptr_null (map.shade);
  ck_assert (map.length_factor == 1e-3);
  ck_assert_str_eq (map.length_unit, "mm");
}
END_TEST

START_TEST (every_measure_has_words)
{
  const dw_drill_map_labels labels = dw_drill_map_labels_defaults ();
  for (int m = 0; m < DW_N_MEASURES; m++)
    {
      ck_assert_ptr_nonnull (labels.measure[m]);
      for (int k = 0; k < m; k++)
        ck_assert_str_ne (labels.measure[m], labels.measure[k]);
      g_autofree char *caption = dw_drill_map_measure_caption (&labels, (dw_drill_measure)m);
      ck_assert (g_str_has_prefix (caption, labels.measure[m]));
      ck_assert_ptr_null (strchr (caption, '{'));
    }
}
END_TEST

static const struct
{
  dw_drill_measure measure;
  const char *unit;
  double factor;
  const char *caption;
} rows[] = {
  { DW_MEASURE_REBOUND_HIGH, "%", 1.0, "rebound at high speed, change in %" },
  { DW_MEASURE_PACK_COMPRESSION, "", 1.0, "pack in compression" },
  { DW_MEASURE_SHARE_LOW, "", 1.0, "rebound share at low speed" },
  { DW_MEASURE_OIL, "cSt", 1e-6, "oil that holds low-speed compression in cSt" },
};

START_TEST (measures_have_their_units)
{
  const dw_drill_map_labels labels = dw_drill_map_labels_defaults ();
  g_autofree char *caption = dw_drill_map_measure_caption (&labels, rows[_i].measure);
  ck_assert_str_eq (dw_drill_measure_unit (rows[_i].measure), rows[_i].unit);
  ck_assert (dw_drill_measure_factor (rows[_i].measure) == rows[_i].factor);
  ck_assert_str_eq (caption, rows[_i].caption);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map");
  TCase *tcase = tcase_create ("drill-map");
  tcase_add_test (tcase, defaults_choose_nothing);
  tcase_add_test (tcase, every_measure_has_words);
  tcase_add_loop_test (tcase, measures_have_their_units, 0, N_ENTRIES (rows));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
