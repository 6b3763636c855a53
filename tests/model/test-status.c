/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "model/dw-status.h"
#include "test-support.h"

START_TEST (every_code_has_a_text_of_its_own)
{
  const char *text = dw_status_text ((dw_status)_i);
  ck_assert_uint_gt (strlen (text), 4);
  ck_assert_str_ne (text, "unknown status");
  for (int j = 0; j < _i; j++)
    ck_assert_str_ne (text, dw_status_text ((dw_status)j));
}
END_TEST

START_TEST (fail_fills_the_error_and_hands_the_code_on)
{
  dw_error e;
  ck_assert_int_eq (dw_fail (&e, DW_ERR_RANGE, "body.bore", 3, "%d mm", 55), DW_ERR_RANGE);
  ck_assert_int_eq (e.code, DW_ERR_RANGE);
  ck_assert_int_eq (e.index, 3);
  ck_assert_str_eq (e.field, "body.bore");
  ck_assert_str_eq (e.text, "55 mm");
  ck_assert_int_eq (dw_fail (NULL, DW_ERR_GEOMETRY, "x", -1, "y"), DW_ERR_GEOMETRY);
}
END_TEST

START_TEST (numbers_are_kept_beside_the_sentence)
{
  dw_error e;
  dw_fail (&e, DW_ERR_GEOMETRY, "x", -1, "%.6g mm of %.3g %%, %.6g", 1.25, 20.0, -3.0);
  ck_assert_str_eq (e.text, "1.25 mm of 20 %, -3");
  ck_assert_str_eq (e.form, "%.6g mm of %.3g %%, %.6g");
  ck_assert (e.numbers[0] == 1.25 && e.numbers[1] == 20.0 && e.numbers[2] == -3.0);
  dw_fail (&e, DW_ERR_GEOMETRY, "x", -1, "no number");
  ck_assert_str_eq (e.form, "no number");
  /* what is no number, or too many, has no form */
  dw_fail (&e, DW_ERR_GEOMETRY, "x", -1, "%.6g%s", 1.0, " mm");
  ck_assert_ptr_null (e.form);
  ck_assert_str_eq (e.text, "1 mm");
  dw_fail (&e, DW_ERR_GEOMETRY, "x", -1, "%.1g%.1g%.1g%.1g%.1g", 1.0, 2.0, 3.0, 4.0, 5.0);
  ck_assert_ptr_null (e.form);
  ck_assert_str_eq (e.text, "12345");
}
END_TEST

START_TEST (long_texts_are_cut_not_overrun)
{
  dw_error e;
  char path[200];
  memset (path, 'p', sizeof path - 1);
  path[sizeof path - 1] = '\0';
  dw_fail (&e, DW_ERR_RANGE, path, -1, "%s%s", path, path);
  ck_assert_uint_eq (strlen (e.field), sizeof e.field - 1);
  ck_assert_uint_eq (strlen (e.text), sizeof e.text - 1);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/status");
  TCase *tc = tcase_create ("status");
  tcase_add_loop_test (tc, every_code_has_a_text_of_its_own, 0, DW_N_STATUS);
  tcase_add_test (tc, fail_fills_the_error_and_hands_the_code_on);
  tcase_add_test (tc, numbers_are_kept_beside_the_sentence);
  tcase_add_test (tc, long_texts_are_cut_not_overrun);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
