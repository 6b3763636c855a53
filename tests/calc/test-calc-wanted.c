/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-wanted.h"

#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-error.h"
#include "test-support.h"

/* Reads words behind "match a --axle rear". */
static gboolean
read_words (const char *text, dw_calc_wanted *wanted, GError **error)
{
  g_autofree char *line = g_strconcat ("a --axle rear ", text, NULL);
  g_auto (GStrv) words = NULL;
  int n = 0;
  ck_assert (g_shell_parse_argv (line, &n, &words, NULL));
  g_autofree dw_calc_option *options = dw_calc_command_make_options (&dw_calc_match);
  g_autoptr (dw_calc_arguments) arguments = dw_calc_arguments_new (options, n, words, error);
  ck_assert_ptr_nonnull (arguments);
  const gboolean good = dw_calc_wanted_read (arguments, wanted, error);
  wanted->like = NULL; /* borrowed from the words */
  return good;
}

static dw_calc_wanted
wanted_of (const char *text)
{
  dw_calc_wanted wanted = { .threads = -1 };
  g_autoptr (GError) error = NULL;
  ck_assert_msg (read_words (text, &wanted, &error), "%s: %s", text,
                 error != NULL ? error->message : "");
  return wanted;
}

START_TEST (without_options_all_is_held)
{
  const dw_calc_wanted w = wanted_of ("");
  ck_assert_int_eq (w.axle, DW_REAR);
  ck_assert (w.is_kept[DW_COMPRESSION] && w.is_kept[DW_REBOUND]);
  ck_assert (!w.has_use && !w.has_temperatures && !w.is_fair);
  ck_assert_int_eq (w.most_leaves, 3);
  ck_assert_int_eq (w.dampers, 2);
  ck_assert_int_eq (w.threads, 0);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (!w.is_changed[s][v] && w.change[s][v] == 0.0);
}
END_TEST

static const struct
{
  const char *text;
  bool keeps[DW_N_STROKES];
  double change[DW_N_STROKES][DW_N_SPEEDS]; /* [1] 0 = none */
  const char *why;
} wishes[] = {
  { "--keep compression", { true, false }, { { 0 } }, "one" },
  { "--keep rebound", { false, true }, { { 0 } }, "the other" },
  { "--keep both", { true, true }, { { 0 } }, "both" },
  { "--change compression:+10", { true, true }, { { 0.1, 0.1, 0.1 } }, "a stroke" },
  { "--keep compression --change rebound-high:-15",
    { true, false },
    { { 0 }, { 0, 0, -0.15 } },
    "wanted where it is free" },
  { "--change compression-low:900,rebound-middle:-90,compression-high:0.5",
    { true, true },
    { { 9, 0, 0.005 }, { 0, -0.9, 0 } },
    "several, at the ends of the range" },
};

START_TEST (a_wish_is_read)
{
  const dw_calc_wanted w = wanted_of (wishes[_i].text);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      ck_assert_msg (w.is_kept[s] == wishes[_i].keeps[s], "%s", wishes[_i].why);
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          ck_assert_msg (w.change[s][v] == wishes[_i].change[s][v], "%s: %.17g", wishes[_i].why,
                         w.change[s][v]);
          ck_assert (w.is_changed[s][v] == (wishes[_i].change[s][v] != 0.0));
        }
    }
}
END_TEST

/* No change is a wish too: the force is wanted although its stroke is free. */
START_TEST (a_change_by_nothing_is_wanted)
{
  const dw_calc_wanted w = wanted_of ("--keep rebound --change compression-low:0");
  ck_assert (w.is_changed[DW_COMPRESSION][DW_LOW] && !w.is_changed[DW_COMPRESSION][DW_MIDDLE]);
}
END_TEST

START_TEST (what_may_be_used_is_read)
{
  const dw_calc_wanted w = wanted_of ("--use piston,temperature,open --temperatures 18.5:31");
  for (int i = 0; i < DW_N_LEVERS; i++)
    ck_assert (w.use[i]
               == (i == DW_LEVER_PISTON || i == DW_LEVER_TEMPERATURE || i == DW_LEVER_OPEN));
  ck_assert (w.has_use && w.has_temperatures && w.lowest == 18.5 && w.highest == 31.0);
  const dw_calc_wanted other = wanted_of ("--fair --threads 3 --dampers 1 --most-leaves 8");
  ck_assert (other.is_fair && !other.has_use);
  ck_assert_int_eq (other.threads, 3);
  ck_assert_int_eq (other.dampers, 1);
  ck_assert_int_eq (other.most_leaves, 8);
}
END_TEST

/* The messages are tried through the program; here, that nothing is written. */
START_TEST (what_is_not_understood_changes_nothing)
{
  static const char *const bad[] = { "--keep all",
                                     "--change rebound",
                                     "--use shims",
                                     "--use temperature",
                                     "--threads 65",
                                     "--fair --keep both",
                                     "--change rebound:5,rebound:5" };
  for (int i = 0; i < N_ENTRIES (bad); i++)
    {
      dw_calc_wanted wanted = { .threads = -1 };
      g_autoptr (GError) error = NULL;
      ck_assert_msg (!read_words (bad[i], &wanted, &error), "%s", bad[i]);
      ck_assert (g_error_matches (error, DW_CALC_ERROR, DW_CALC_WRONG_USAGE));
      ck_assert_int_eq (wanted.threads, -1);
    }
}
END_TEST

START_TEST (every_lever_and_speed_has_its_name)
{
  for (int i = 0; i < DW_N_LEVERS; i++)
    {
      g_autofree char *text = g_strdup_printf ("--use %s%s", dw_calc_lever_name (i),
                                               i == DW_LEVER_TEMPERATURE ? " --temperatures 1:2"
                                                                         : "");
      const dw_calc_wanted w = wanted_of (text);
      for (int k = 0; k < DW_N_LEVERS; k++)
        ck_assert (w.use[k] == (k == i));
    }
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      g_autofree char *text = g_strdup_printf ("--change rebound-%s:5", dw_calc_speed_name (v));
      const dw_calc_wanted w = wanted_of (text);
      ck_assert (w.is_changed[DW_REBOUND][v]);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-wanted");
  TCase *tc = tcase_create ("wanted");
  tcase_add_test (tc, without_options_all_is_held);
  tcase_add_loop_test (tc, a_wish_is_read, 0, N_ENTRIES (wishes));
  tcase_add_test (tc, a_change_by_nothing_is_wanted);
  tcase_add_test (tc, what_may_be_used_is_read);
  tcase_add_test (tc, what_is_not_understood_changes_nothing);
  tcase_add_test (tc, every_lever_and_speed_has_its_name);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
