/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>

#include "draw/dw-phrase.h"
#include "test-support.h"

static const dw_word words[]
    = { { "force", "12 N" }, { "speed", "0.2" }, { "unit", "m/s" }, { NULL, NULL } };

static const struct
{
  const char *phrase;
  const char *expected;
  const char *why;
} rows[] = {
  { "{force} at {speed} {unit}", "12 N at 0.2 m/s", "the usual order" },
  { "bei {speed} {unit}: {force}", "bei 0.2 m/s: 12 N", "another language's order" },
  { "{speed}{speed}", "0.20.2", "twice" },
  { "no name", "no name", "nothing to fill" },
  { "{unknown} {force", "{unknown} {force", "an unknown name and an open brace stay" },
  { "", "", "empty" },
};

START_TEST (phrases_are_filled)
{
  g_autofree char *text = dw_phrase_fill (rows[_i].phrase, words);
  ck_assert_msg (g_strcmp0 (text, rows[_i].expected) == 0, "%s: %s", rows[_i].why, text);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/phrase");
  TCase *tcase = tcase_create ("phrase");
  tcase_add_loop_test (tcase, phrases_are_filled, 0, N_ENTRIES (rows));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
