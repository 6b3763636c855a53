/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file fuzz-project-reader.c
 * Reads thousands of damaged project files.
 *
 * Whatever a file holds, reading it ends soon, and with either a project that
 * can be written and read again or a reason why not. Under the sanitizers this
 * also shows that it neither leaks nor reaches beyond its memory.
 */
#include <string.h>

#include "project-samples.h"
#include "project/dw-project-reader.h"
#include "project/dw-project-writer.h"

#define N_MUTANTS 2000

/* [us] for one file of some kilobytes, on a busy machine with sanitizers. */
#define LONGEST_READ (5 * G_USEC_PER_SEC)

/* The good files, several times so that they are the more frequent ones, and some bad ones. */
static const struct
{
  const char *folder;
  const char *name;
} corpus[] = {
  { "valid", "everything.dampwright" },
  { "valid", "everything.dampwright" },
  { "valid", "everything.dampwright" },
  { "valid", "bare.dampwright" },
  { "valid", "bare.dampwright" },
  { "valid", "empty.dampwright" },
  { "malformed", "external-entity.dampwright" },
  { "malformed", "billion-laughs.dampwright" },
  { "malformed", "foreign-attribute.dampwright" },
};

/* What a value or a place in the text may be replaced by. */
static const char *const splices[] = {
  "",
  "0",
  "-1",
  "1",
  "2.5",
  "64",
  "65",
  "1e308",
  "1e-400",
  "99999999999999999999",
  "nan",
  "yes",
  "no",
  "rear",
  "front",
  "vented",
  "baseline",
  "&#0;",
  "&#10;",
  "&lt;",
  "&x;",
  "&",
  "<",
  ">",
  "\"",
  "'",
  "<!--",
  "-->",
  "<![CDATA[",
  "]]>",
  "<?",
  "<!DOCTYPE a [",
  "xmlns=\"\"",
  "xmlns=\"urn:x\"",
  "xmlns:x=\"urn:x\" x:y=\"1\"",
  "<x:y/>",
  "</setup>",
  "<setup id=\"z\">",
  "<part/>",
  "\xC3",
  "\xEF\xBF\xBF",
  "é",
  "\t\r\n",
  "version=\"2\"",
  "axle=\"front\"",
  "<holes diameter-mm=\"1\" covered=\"yes\"/>",
  "<stance droop-mm=\"1\"/>",
  "<meeting event=\"a\"/>",
  "<notes>",
  "</notes>",
  "<notes> a\n</notes>",
  "&#13;",
  "\x7F",
};

static gsize
place (test_random *random, const GString *text)
{
  return text->len == 0 ? 0 : (gsize)test_random_int (random, 0, (int)text->len - 1);
}

static gsize
span (test_random *random, const GString *text, gsize start)
{
  const gsize most = (gsize)test_random_int (random, 1, 200);
  return MIN (most, text->len - start);
}

/* Where some line begins, and its length with the line feed. */
static gsize
find_line (test_random *random, const GString *text, gsize *length)
{
  gsize start = place (random, text);
  while (start > 0 && text->str[start - 1] != '\n')
    start--;
  const char *end = memchr (text->str + start, '\n', text->len - start);
  *length = end != NULL ? (gsize)(end - text->str) - start + 1 : text->len - start;
  return start;
}

/* Replace the value of some attribute. */
static void
splice_value (test_random *random, GString *text)
{
  const gsize start = place (random, text);
  const char *open = memchr (text->str + start, '"', text->len - start);
  if (open == NULL)
    return;
  const gsize first = (gsize)(open - text->str) + 1;
  const char *close = memchr (text->str + first, '"', text->len - first);
  if (close == NULL)
    return;
  g_string_erase (text, (gssize)first, close - text->str - (gssize)first);
  g_string_insert (text, (gssize)first,
                   splices[test_random_int (random, 0, N_ENTRIES (splices) - 1)]);
}

static void
repeat_span (GString *text, gsize start, gsize length, gsize to)
{
  g_autofree char *copy = g_memdup2 (text->str + start, length);
  g_string_insert_len (text, (gssize)to, copy, (gssize)length);
}

static void
mutate (test_random *random, GString *text)
{
  const gsize start = place (random, text);
  gsize length = 0;
  switch (test_random_int (random, 0, 8))
    {
    case 0:
      if (text->len > 0)
        text->str[start] = (char)(text->str[start] ^ (1 << test_random_int (random, 0, 7)));
      break;
    case 1:
      g_string_erase (text, (gssize)start, (gssize)span (random, text, start));
      break;
    case 2:
      repeat_span (text, start, span (random, text, start), place (random, text));
      break;
    case 3:
      g_string_insert (text, (gssize)start,
                       splices[test_random_int (random, 0, N_ENTRIES (splices) - 1)]);
      break;
    case 4:
    case 5:
      splice_value (random, text);
      break;
    case 6: /* a line twice */
      {
        const gsize line = find_line (random, text, &length);
        repeat_span (text, line, length, line);
        break;
      }
    case 7: /* a line gone */
      {
        const gsize line = find_line (random, text, &length);
        g_string_erase (text, (gssize)line, (gssize)length);
        break;
      }
    default:
      if (test_random_int (random, 0, 9) == 0)
        g_string_truncate (text, start);
      break;
    }
}

static int
count_lines (const GString *text)
{
  int n = 1;
  for (gsize i = 0; i < text->len; i++)
    n += text->str[i] == '\n';
  return n;
}

static void
check_findings (const dw_findings *findings, const GString *text, int number)
{
  for (guint i = 0; i < dw_findings_get_n (findings); i++)
    {
      const dw_finding *finding = dw_findings_get (findings, i);
      ck_assert_msg (*finding->message != '\0' && g_utf8_validate (finding->message, -1, NULL),
                     "mutant %d", number);
      ck_assert_msg (finding->line >= 0 && finding->line <= count_lines (text),
                     "mutant %d: line %d", number, finding->line);
      /* That the reader takes what the schema refuses is a fault in one of the two. */
      ck_assert_msg (strstr (finding->message, "against the schema") == NULL, "mutant %d: %s\n%s",
                     number, finding->message, text->str);
    }
}

/* @return whether it was good */
static bool
try_mutant (const GString *text, int number)
{
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_read_text (text->str, text->len, findings);
  ck_assert_int_lt (g_get_monotonic_time () - start, LONGEST_READ);
  check_findings (findings, text, number);
  ck_assert_msg ((project == NULL) == (dw_findings_get_n_errors (findings) > 0), "mutant %d",
                 number);
  if (project == NULL)
    return false;

  g_autoptr (GBytes) written = dw_project_write_text (project);
  g_autoptr (dw_findings) none = dw_findings_new ();
  g_autoptr (dw_project) again = dw_project_read_text (g_bytes_get_data (written, NULL),
                                                       g_bytes_get_size (written), none);
  ck_assert_msg (again != NULL && dw_project_equal (project, again),
                 "mutant %d was read, but does not come back:\n%s", number, text->str);
  ck_assert_uint_eq (dw_findings_get_n (none), 0);
  return true;
}

START_TEST (damaged_files_end_in_a_project_or_a_reason)
{
  int n_good = 0;
  for (int number = 0; number < N_MUTANTS; number++)
    {
      test_random random = test_random_new ((uint64_t)number + 5000);
      const int which = test_random_int (&random, 0, N_ENTRIES (corpus) - 1);
      gsize length = 0;
      g_autofree char *file = sample_read (corpus[which].folder, corpus[which].name, &length);
      GString *text = g_string_new_len (file, (gssize)length);
      for (int n = test_random_int (&random, 1, 4); n > 0; n--)
        mutate (&random, text);
      n_good += try_mutant (text, number);
      g_string_free (text, TRUE);
    }
  /* A test that only ever sees one outcome shows little. */
  ck_assert_int_gt (n_good, N_MUTANTS / 20);
  ck_assert_int_lt (n_good, N_MUTANTS / 2);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/fuzz");
  TCase *tc = tcase_create ("mutants");
  tcase_set_timeout (tc, 300);
  tcase_add_test (tc, damaged_files_end_in_a_project_or_a_reason);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
