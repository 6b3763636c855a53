/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-words.h"

#include <string.h>

#include "test-support.h"

START_TEST (axes_count_their_holes)
{
  dw_damper damper = dw_damper_defaults ();
  dw_drill_sets sets;
  damper.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  damper.piston.n_holes = 2;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_KINDS);
  dw_drill_map_labels labels = dw_drill_map_words (&sets);
  ck_assert_str_eq (labels.axis[0], "Set 1: 6 open holes");
  ck_assert_str_eq (labels.axis[1], "Set 2: 4 covered holes");
  sets.set_of[0] = 0;
  dw_drill_sets_update (&sets);
  labels = dw_drill_map_words (&sets);
  ck_assert_str_eq (labels.axis[0], "Set 1: 7 holes");
}
END_TEST

START_TEST (every_measure_and_every_phrase_has_words)
{
  dw_damper damper = dw_damper_defaults ();
  dw_drill_sets sets;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  const dw_drill_map_labels labels = dw_drill_map_words (&sets);
  const dw_drill_map_labels english = dw_drill_map_labels_defaults ();
  for (int m = 0; m < DW_N_MEASURES; m++)
    {
      ck_assert_uint_gt (strlen (labels.measure[m]), 3);
      for (int k = 0; k < m; k++)
        ck_assert_str_ne (labels.measure[m], labels.measure[k]);
    }
  /* a phrase that is forgotten here would be a crash there: as many words as the defaults have */
  const char *const *ours = (const char *const *)(const void *)&labels;
  const char *const *theirs = (const char *const *)(const void *)&english;
  for (size_t i = 0; i < sizeof labels / sizeof (char *); i++)
    ck_assert_msg ((ours[i] == NULL) == (theirs[i] == NULL), "phrase %zu", i);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-map-words");
  TCase *tc = tcase_create ("drill-map-words");
  tcase_add_test (tc, axes_count_their_holes);
  tcase_add_test (tc, every_measure_and_every_phrase_has_words);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
