/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-xml-guard.h"

#include <libxml/globals.h>
#include <libxml/parser.h>
#include <math.h>
#include <stdio.h>
#include <unistd.h>

#include "project-samples.h"

static void
my_handler (void *data, G_GNUC_UNUSED dw_xml_error *error)
{
  ++*(int *)data;
}

static void
parse_rubbish (void)
{
  xmlFreeDoc (xmlReadMemory ("<a", 2, NULL, NULL, 0));
}

START_TEST (handlers_of_the_caller_are_put_back)
{
  int n = 0;
  xmlSetStructuredErrorFunc (&n, my_handler);
  dw_xml_guard guard;
  dw_xml_guard_enter (&guard);
  parse_rubbish ();
  ck_assert_int_eq (n, 0);
  dw_xml_guard_leave (&guard);
  parse_rubbish ();
  ck_assert_int_gt (n, 0);
  ck_assert_ptr_eq (xmlStructuredErrorContext, &n);
}
END_TEST

START_TEST (nothing_reaches_standard_error)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "dampwright-stderr-XXXXXX", NULL);
  const int file = g_mkstemp (path);
  ck_assert_int_ge (file, 0);
  unlink (path);
  fflush (stderr);
  const int old = dup (STDERR_FILENO);
  dup2 (file, STDERR_FILENO);

  dw_xml_guard guard;
  dw_xml_guard_enter (&guard);
  parse_rubbish ();
  xmlGenericError (xmlGenericErrorContext, "%s\n", "a message of the older kind");
  dw_xml_guard_leave (&guard);

  fflush (stderr);
  dup2 (old, STDERR_FILENO);
  ck_assert_int_eq (lseek (file, 0, SEEK_END), 0);
}
END_TEST

START_TEST (numbers_have_a_point_meanwhile_and_a_comma_afterwards)
{
  ck_assert_msg (test_use_locale ("de_DE.UTF-8"),
                 "the locale de_DE.UTF-8 is missing: tests/run.sh makes it and sets LOCPATH");
  double value = 0.0;
  char text[32];
  dw_xml_guard guard;
  dw_xml_guard_enter (&guard);
  ck_assert_int_eq (sscanf ("1.5", "%lf", &value), 1);
  ck_assert (value == 1.5);
  dw_xml_guard_leave (&guard);
  snprintf (text, sizeof text, "%.1f", 1.5);
  ck_assert_str_eq (text, "1,5");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-xml-guard");
  TCase *tc = tcase_create ("guard");
  tcase_add_test (tc, handlers_of_the_caller_are_put_back);
  tcase_add_test (tc, nothing_reaches_standard_error);
  tcase_add_test (tc, numbers_have_a_point_meanwhile_and_a_comma_afterwards);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
