/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-describe.h"

#include <glib.h>
#include <string.h>

#include "draw-samples.h"
#include "model/dw-units.h"

START_TEST (a_map_is_told_with_numbers_and_units)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 4, 2.0e-3);
  sample->map.labels.axis[0] = "six open holes";
  sample->map.labels.axis[1] = "four covered holes";
  sample->map.chosen = sample_map_dot (sample, 1.5e-3, 1.6e-3);
  g_autofree char *text = dw_drill_map_describe (&sample->map);
  static const char *const parts[] = {
    "Shaded: compression at low speed, change in %, from \u2212",
    "over six open holes from 1.04 to ",
    " mm and four covered holes from 0.88 to ",
    "Choices: ",
    "Now 1.30 and 1.10 mm.",
    "Chosen: 1.",
    " mm, compression at low speed, change \u2212",
    ", pack in compression 1.",
  };
  for (int i = 0; i < N_ENTRIES (parts); i++)
    ck_assert_msg (strstr (text, parts[i]) != NULL, "no \"%s\" in: %s", parts[i], text);
  ck_assert_ptr_null (strchr (text, '{'));
  sample_map_free (sample);
}
END_TEST

START_TEST (without_a_choice_it_says_so)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 4, 2.0e-3);
  sample->map.contour = NULL;
  g_autofree char *text = dw_drill_map_describe (&sample->map);
  ck_assert (g_str_has_suffix (text, "No choice is marked."));
  sample_map_free (sample);
}
END_TEST

START_TEST (a_strip_names_one_set)
{
  sample_map *sample = sample_map_new (SAMPLE_STRIP, 4, 2.0e-3);
  sample->map.length_factor = DW_INCH;
  sample->map.length_unit = "inch";
  g_strlcpy (sample->map.numbers.decimal, ",", sizeof sample->map.numbers.decimal);
  g_autofree char *text = dw_drill_map_describe (&sample->map);
  ck_assert_msg (strstr (text, "Now 0,0512 inch.") != NULL, "%s", text);
  ck_assert_msg (strstr (text, "over Set 1 from 0,0409 to ") != NULL, "%s", text);
  ck_assert_ptr_null (strstr (text, "Set 2"));
  sample_map_free (sample);
}
END_TEST

START_TEST (an_empty_map_says_nothing)
{
  const dw_drill_map map = dw_drill_map_defaults ();
  g_autofree char *text = dw_drill_map_describe (&map);
  ck_assert_str_eq (text, "");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map-describe");
  TCase *tcase = tcase_create ("drill-map-describe");
  tcase_add_test (tcase, a_map_is_told_with_numbers_and_units);
  tcase_add_test (tcase, without_a_choice_it_says_so);
  tcase_add_test (tcase, a_strip_names_one_set);
  tcase_add_test (tcase, an_empty_map_says_nothing);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
