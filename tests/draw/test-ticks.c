/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-ticks.h"

static dw_chart_style style;
static dw_number_format numbers;

static void
set_up (void)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  numbers = dw_number_format_defaults ();
}

static void
make (const dw_scale *scale, double factor, bool is_vertical, dw_ticks *ticks)
{
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_ticks_options options = { &numbers, &metrics, factor, is_vertical, 20.0, 4.0 };
  dw_ticks_make (scale, &options, ticks);
}

/* Mantissa 1, 2 or 5 of the step between two labelled values. */
static bool
is_nice (double step)
{
  const double m = step / pow (10.0, floor (log10 (step) + 1e-9));
  return fabs (m - 1.0) < 1e-6 || fabs (m - 2.0) < 1e-6 || fabs (m - 5.0) < 1e-6;
}

static void
assert_sound (const dw_ticks *ticks, const dw_scale *scale, bool is_vertical, double factor,
              bool even)
{
  const double height = style.font[DW_TEXT_TICK].size;
  const dw_tick *before = NULL;
  for (int i = 0; i < ticks->n; i++)
    {
      const dw_tick *t = &ticks->ticks[i];
      const double slack = 1e-6 * (scale->high - scale->low);
      ck_assert (t->value >= scale->low - slack && t->value <= scale->high + slack);
      ck_assert (i == 0 || t->value > ticks->ticks[i - 1].value);
      if (!t->is_major)
        continue;
      if (before != NULL)
        {
          const double size = is_vertical ? height : 0.5 * (t->label_width + before->label_width);
          ck_assert_msg (fabs (t->place - before->place) >= size, "%s on %s", t->label,
                         before->label);
          ck_assert (t->value * before->value < 0.0 || strcmp (t->label, before->label) != 0);
          ck_assert (!even || is_nice ((t->value - before->value) / factor));
        }
      assert_close (strtod (t->label, NULL), fabs (t->value / factor), 1e-9, 1e-12,
                    "the label is the value, not a rounding of it");
      before = t;
    }
}

/* Every range, size and unit. */
START_TEST (even_ticks_are_round_and_apart)
{
  static dw_ticks ticks;
  static const double factors[] = { 1.0, 0.0254, 4.4482216152605, 175.12683524647636 };
  test_random random = test_random_new ((uint64_t)_i);
  for (int i = 0; i < 1500; i++)
    {
      const double factor = factors[i % 4];
      const double range = factor * test_random_log_uniform (&random, 1e-5, 1e6);
      const double low = test_random_uniform (&random, -2.0, 2.0) * range;
      const bool is_vertical = i % 2 == 0;
      const dw_scale s = { false, low, low + range, 0.0,
                           test_random_log_uniform (&random, 30.0, 3000.0) };
      make (&s, factor, is_vertical, &ticks);
      ck_assert_int_lt (ticks.n, DW_MAX_TICKS);
      assert_sound (&ticks, &s, is_vertical, factor, true);
    }
}
END_TEST

START_TEST (logarithmic_ticks_are_apart)
{
  static dw_ticks ticks;
  test_random random = test_random_new ((uint64_t)_i);
  for (int i = 0; i < 1500; i++)
    {
      const double low = test_random_log_uniform (&random, 1e-4, 1.0);
      const dw_scale s = { true, low, low * test_random_log_uniform (&random, 1.01, 1e4), 0.0,
                           test_random_log_uniform (&random, 60.0, 3000.0) };
      make (&s, i % 2 == 0 ? 1.0 : 0.0254, false, &ticks);
      ck_assert_int_lt (ticks.n, DW_MAX_TICKS);
      assert_sound (&ticks, &s, false, i % 2 == 0 ? 1.0 : 0.0254, false);
    }
}
END_TEST

START_TEST (a_roomy_axis_has_at_least_three_labels)
{
  static dw_ticks ticks;
  test_random random = test_random_new (5);
  for (int i = 0; i < 500; i++)
    {
      const double high = test_random_log_uniform (&random, 0.5, 500.0);
      const bool is_log = i % 2 == 0;
      const dw_scale s = { is_log, is_log ? 0.01 * high : 0.0, high, 0.0, 400.0 };
      int n = 0;
      make (&s, 1.0, false, &ticks);
      for (int k = 0; k < ticks.n; k++)
        n += ticks.ticks[k].is_major;
      ck_assert_int_ge (n, 3);
    }
}
END_TEST

START_TEST (two_decades_have_1_2_and_5)
{
  static dw_ticks ticks;
  const dw_scale s = { true, 0.01, 1.0, 0.0, 300.0 };
  static const char *const expected[] = { "0.01", "0.02", "0.05", "0.1", "0.2", "0.5", "1" };
  int n = 0;
  make (&s, 1.0, false, &ticks);
  for (int i = 0; i < ticks.n; i++)
    if (ticks.ticks[i].is_major)
      ck_assert_str_eq (ticks.ticks[i].label, expected[n++]);
  ck_assert_int_eq (n, N_ENTRIES (expected));
  ck_assert_int_eq (ticks.n, 19);
}
END_TEST

START_TEST (labels_are_magnitudes_with_the_formats_sign)
{
  static dw_ticks ticks;
  const dw_scale s = { false, -1.0, 1.0, 200.0, 0.0 };
  g_strlcpy (numbers.decimal, ",", sizeof numbers.decimal);
  make (&s, 1.0, true, &ticks);
  ck_assert_str_eq (ticks.ticks[0].label, "1,0");
  ck_assert_str_eq (ticks.ticks[ticks.n - 1].label, "1,0");
}
END_TEST

static const struct
{
  double low, high, factor;
  bool is_log;
  double out_low, out_high;
  const char *why;
} ranges[] = {
  { -131.0, 153.0, 1.0, false, -140.0, 160.0, "steps of 20" },
  { 0.0, 1.0, 1.0, false, 0.0, 1.0, "already round" },
  { 0.0, 0.987, 0.0254, false, 0.0, 40.0 * 0.0254, "round in inches per second" },
  { 0.012, 0.93, 1.0, true, 0.01, 1.0, "1-2-5 on both ends" },
  { 0.03, 3.0, 1.0, true, 0.02, 5.0, "the next ones outwards" },
  { 0.05, 2.0, 1.0, true, 0.05, 2.0, "already round" },
};

START_TEST (an_axis_that_is_not_mirrored_has_signs)
{
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_ticks_options options = { &numbers, &metrics, 1.0, false, 20.0, 4.0 };
  const dw_scale scale = { false, -10.0, 10.0, 0.0, 300.0 };
  dw_ticks *ticks = g_new0 (dw_ticks, 1);
  dw_ticks_make (&scale, &options, ticks);
  dw_ticks_add_signs (ticks, &options);
  int n = 0;
  for (int i = 0; i < ticks->n; i++)
    {
      const dw_tick *t = &ticks->ticks[i];
      const bool has_sign = g_str_has_prefix (t->label, numbers.minus);
      ck_assert_msg (!t->is_major || has_sign == (t->value < -1e-9), "%s at %g", t->label,
                     t->value);
      n += t->is_major && has_sign;
    }
  ck_assert_int_gt (n, 0);
  g_free (ticks);
}
END_TEST

START_TEST (ranges_become_round)
{
  double low = ranges[_i].low;
  double high = ranges[_i].high;
  dw_ticks_round_range (&low, &high, ranges[_i].factor, ranges[_i].is_log);
  assert_close (low, ranges[_i].out_low, 1e-12, 1e-15, ranges[_i].why);
  assert_close (high, ranges[_i].out_high, 1e-12, 1e-15, ranges[_i].why);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ticks");
  TCase *tcase = tcase_create ("ticks");
  tcase_add_checked_fixture (tcase, set_up, NULL);
  tcase_add_loop_test (tcase, even_ticks_are_round_and_apart, 0, 4);
  tcase_add_loop_test (tcase, logarithmic_ticks_are_apart, 0, 4);
  tcase_add_test (tcase, a_roomy_axis_has_at_least_three_labels);
  tcase_add_test (tcase, two_decades_have_1_2_and_5);
  tcase_add_test (tcase, labels_are_magnitudes_with_the_formats_sign);
  tcase_add_test (tcase, an_axis_that_is_not_mirrored_has_signs);
  tcase_add_loop_test (tcase, ranges_become_round, 0, N_ENTRIES (ranges));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
