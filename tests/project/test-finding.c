/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-finding.h"

#include <string.h>

#include "test-support.h"

static void
add (dw_findings *findings, dw_severity severity, int line)
{
  dw_findings_add (findings, severity, line, NULL, NULL, NULL, "line %d", line);
}

START_TEST (findings_stand_in_the_order_of_their_lines)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  add (findings, DW_ERROR, 9);
  add (findings, DW_WARNING, 3);
  dw_findings_add (findings, DW_ERROR, 3, "body", "bore-mm", "55", "second of line %d", 3);
  add (findings, DW_ERROR, 0);
  g_autofree char *text = dw_findings_to_text (findings, "club.dampwright");
  ck_assert_str_eq (text, "club.dampwright: line 0\n"
                          "club.dampwright:3: warning: line 3\n"
                          "club.dampwright:3: second of line 3\n"
                          "club.dampwright:9: line 9\n");
  ck_assert_uint_eq (dw_findings_get_n_errors (findings), 3);
  const dw_finding *finding = dw_findings_get (findings, 2);
  ck_assert_str_eq (finding->element, "body");
  ck_assert_str_eq (finding->attribute, "bore-mm");
  ck_assert_str_eq (finding->value, "55");
  ck_assert_ptr_null (dw_findings_get (findings, 0)->value);
}
END_TEST

START_TEST (no_findings_make_no_text)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autofree char *text = dw_findings_to_text (findings, "f");
  ck_assert_str_eq (text, "");
  ck_assert_uint_eq (dw_findings_get_n_errors (findings), 0);
  dw_findings_free (NULL);
}
END_TEST

START_TEST (a_full_list_counts_what_it_does_not_hold)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  for (int i = 1; i <= DW_FINDINGS_MAX + 37; i++)
    add (findings, DW_ERROR, i);
  ck_assert_uint_eq (dw_findings_get_n (findings), DW_FINDINGS_MAX);
  ck_assert_uint_eq (dw_findings_get_n_dropped (findings), 37);
  ck_assert_uint_eq (dw_findings_get_n_errors (findings), DW_FINDINGS_MAX + 37);
  g_autofree char *text = dw_findings_to_text (findings, "f");
  ck_assert_msg (g_str_has_suffix (text, "f:200: line 200\nf: and 37 more\n"), "%s", text);
}
END_TEST

START_TEST (an_error_takes_the_place_of_a_warning)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  for (int i = 1; i <= DW_FINDINGS_MAX; i++)
    add (findings, DW_WARNING, i);
  add (findings, DW_WARNING, 1000);
  add (findings, DW_ERROR, 1001);
  ck_assert_uint_eq (dw_findings_get_n (findings), DW_FINDINGS_MAX);
  ck_assert_uint_eq (dw_findings_get_n_dropped (findings), 2);
  const dw_finding *last = dw_findings_get (findings, DW_FINDINGS_MAX - 1);
  ck_assert_int_eq (last->severity, DW_ERROR);
  ck_assert_int_eq (last->line, 1001);
  ck_assert_int_eq (dw_findings_get (findings, DW_FINDINGS_MAX - 2)->line, DW_FINDINGS_MAX - 1);
}
END_TEST

START_TEST (a_message_is_safe_to_print)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  dw_findings_add (findings, DW_ERROR, 1, NULL, NULL, NULL, "a%sb%sc", "\x1B[31m\r\n", "\xFF");
  const char *message = dw_findings_get (findings, 0)->message;
  ck_assert (g_utf8_validate (message, -1, NULL));
  ck_assert_ptr_null (strpbrk (message, "\x1B\r\n"));
  ck_assert_int_eq (message[0], 'a');
  ck_assert (g_str_has_suffix (message, "c"));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-finding");
  TCase *tc = tcase_create ("finding");
  tcase_add_test (tc, findings_stand_in_the_order_of_their_lines);
  tcase_add_test (tc, no_findings_make_no_text);
  tcase_add_test (tc, a_full_list_counts_what_it_does_not_hold);
  tcase_add_test (tc, an_error_takes_the_place_of_a_warning);
  tcase_add_test (tc, a_message_is_safe_to_print);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
