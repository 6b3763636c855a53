/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-levels.h"

#include <math.h>

#include "draw/dw-scale.h"
#include "test-support.h"

static const struct
{
  dw_drill_measure measure;
  double low, high;
  int most;
  int n;
  double first, last;
  const char *why;
} rows[] = {
  { DW_MEASURE_COMPRESSION_LOW, -86.0, 0.3, 9, 9, -80.0, 0.0, "tens" },
  { DW_MEASURE_COMPRESSION_LOW, -86.0, 0.3, 8, 5, -80.0, 0.0, "one more than allowed: twenties" },
  { DW_MEASURE_PACK_COMPRESSION, 0.78, 1.66, 12, 9, 0.8, 1.6, "tenths" },
  { DW_MEASURE_SHARE_LOW, 0.9985, 1.0, 12, 0, 0.0, 0.0, "a difference that says nothing" },
  { DW_MEASURE_SHARE_LOW, 0.99, 1.01, 12, 3, 0.995, 1.005, "no finer than half a percent" },
  { DW_MEASURE_REBOUND_LOW, -1.1, 0.9, 12, 4, -1.0, 0.5, "nor here" },
  { DW_MEASURE_OIL, 390e-6, 2600e-6, 12, 9, 400e-6, 2500e-6, "ratios, not steps" },
  { DW_MEASURE_OIL, 90e-6, 11000e-6, 12, 7, 100e-6, 10000e-6, "two decades: 1, 2, 5" },
  { DW_MEASURE_OIL, 390e-6, 700e-6, 12, 6, 400e-6, 650e-6, "nearly the same: even steps" },
  { DW_MEASURE_REBOUND_LOW, 5.0, 5.0, 12, 0, 0.0, 0.0, "nothing between" },
  { DW_MEASURE_REBOUND_LOW, (double)NAN, (double)NAN, 12, 0, 0.0, 0.0, "nothing known" },
};

START_TEST (levels_are_round_and_few)
{
  const dw_drill_levels levels = dw_drill_levels_make (rows[_i].measure, rows[_i].low,
                                                       rows[_i].high, rows[_i].most);
  ck_assert_msg (levels.n == rows[_i].n, "%s: %d levels, %g to %g", rows[_i].why, levels.n,
                 levels.value[0], levels.value[levels.n > 0 ? levels.n - 1 : 0]);
  if (levels.n == 0)
    return;
  assert_close (levels.value[0], rows[_i].first, 1e-9, 1e-12, rows[_i].why);
  assert_close (levels.value[levels.n - 1], rows[_i].last, 1e-9, 1e-12, rows[_i].why);
}
END_TEST

/* Over random ranges: inside, rising, no more than asked for, more than a third of them. */
START_TEST (there_are_enough_levels_for_any_range)
{
  test_random random = test_random_new ((uint64_t)_i);
  for (int n = 0; n < 2000; n++)
    {
      const dw_drill_measure measure = (dw_drill_measure)test_random_int (&random, 0,
                                                                          DW_N_MEASURES - 1);
      const double factor = dw_drill_measure_factor (measure);
      const bool is_oil = measure == DW_MEASURE_OIL;
      const double low = is_oil ? test_random_log_uniform (&random, 1.0, 5000.0)
                                : test_random_uniform (&random, -90.0, 90.0);
      const double width = test_random_log_uniform (&random, is_oil ? low : 10.0, 1000.0 + low);
      const int most = test_random_int (&random, 4, 12);
      const dw_drill_levels levels = dw_drill_levels_make (measure, low * factor,
                                                           (low + fabs (width)) * factor, most);
      ck_assert_msg (levels.n <= most && levels.n * 3 >= most - 1, "%d of %d levels from %g by %g",
                     levels.n, most, low, width);
      for (int i = 0; i < levels.n; i++)
        {
          ck_assert (levels.value[i] > low * factor);
          ck_assert (levels.value[i] < (low + fabs (width)) * factor);
          ck_assert (i == 0 || levels.value[i] > levels.value[i - 1]);
        }
    }
}
END_TEST

static const struct
{
  dw_drill_measure measure;
  double value;
  int decimals;
  bool has_unit;
  const char *text;
} texts[] = {
  { DW_MEASURE_COMPRESSION_LOW, 10.0, 0, true, "+10\u2009%" },
  { DW_MEASURE_COMPRESSION_LOW, 0.0, 0, true, "0\u2009%" },
  { DW_MEASURE_COMPRESSION_LOW, -12.5, 1, false, "\u221212,5" },
  { DW_MEASURE_COMPRESSION_LOW, -41.7, -1, true, "\u221242\u2009%" },
  { DW_MEASURE_COMPRESSION_LOW, 3.24, -1, true, "+3,2\u2009%" },
  { DW_MEASURE_COMPRESSION_LOW, 0.01, -1, true, "0,0\u2009%" },
  { DW_MEASURE_SHARE_HIGH, 0.9512, -1, true, "0,951" },
  { DW_MEASURE_PACK_REBOUND, 1.4, 2, true, "1,40" },
  { DW_MEASURE_OIL, 500e-6, -1, true, "500\u2009cSt" },
  { DW_MEASURE_OIL, 12500e-6, 0, false, "12500" },
};

START_TEST (values_have_sign_comma_and_unit)
{
  char text[40];
  dw_number_format numbers = dw_number_format_defaults ();
  numbers.decimal[0] = ',';
  dw_drill_level_text (texts[_i].measure, &numbers, texts[_i].value, texts[_i].decimals,
                       texts[_i].has_unit, text, sizeof text);
  ck_assert_str_eq (text, texts[_i].text);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-levels");
  TCase *tcase = tcase_create ("drill-levels");
  tcase_add_loop_test (tcase, levels_are_round_and_few, 0, N_ENTRIES (rows));
  tcase_add_loop_test (tcase, there_are_enough_levels_for_any_range, 0, 3);
  tcase_add_loop_test (tcase, values_have_sign_comma_and_unit, 0, N_ENTRIES (texts));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
