/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "draw-samples.h"

START_TEST (a_text_knows_its_box_and_baseline)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  dw_chart_label_list list = { 0 };
  const double size = style.font[DW_TEXT_NOTE].size;
  const dw_chart_label *label = dw_chart_label_list_add (
      &list, &metrics, DW_LABEL_ONSET, DW_TEXT_NOTE, "abc", (dw_spot){ 5.0, 7.0 }, 1000.0);
  assert_close (label->box.width, 1.8 * size, 1e-12, 0.0, "three letters");
  assert_close (label->box.height, size, 1e-12, 0.0, "ascent and descent");
  assert_close (label->at.y, 7.0 + 0.8 * size, 1e-12, 0.0, "baseline below the corner");
  ck_assert_int_eq (label->slot, -1);
  ck_assert (dw_chart_label_list_find (&list, DW_LABEL_ONSET) == label);
  ck_assert (dw_chart_label_list_find (&list, DW_LABEL_TITLE) == NULL);
  const dw_rect on = { 6.0, 8.0, 1.0, 1.0 };
  const dw_rect off = { 6.0, 8.0 + size, 1.0, 1.0 };
  ck_assert (dw_chart_label_list_meets (&list, &on));
  ck_assert (!dw_chart_label_list_meets (&list, &off));
  dw_chart_label_list_clear (&list);
  ck_assert_int_eq (list.n, 0);
}
END_TEST

START_TEST (what_has_no_room_is_not_added)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  dw_chart_label_list list = { 0 };
  ck_assert (dw_chart_label_list_add (&list, &metrics, DW_LABEL_TITLE, DW_TEXT_TITLE, "abc",
                                      (dw_spot){ 0.0, 0.0 }, 1.0)
             == NULL);
  ck_assert_int_eq (list.n, 0);
  for (int i = 0; i < DW_MAX_LABELS + 3; i++)
    dw_chart_label_list_add (&list, &metrics, DW_LABEL_TITLE, DW_TEXT_TITLE, "abc",
                             (dw_spot){ 0.0, 0.0 }, 1000.0);
  ck_assert_int_eq (list.n, DW_MAX_LABELS);
  dw_chart_label_list_clear (&list);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-label");
  TCase *tcase = tcase_create ("chart-label");
  tcase_add_test (tcase, a_text_knows_its_box_and_baseline);
  tcase_add_test (tcase, what_has_no_room_is_not_added);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
