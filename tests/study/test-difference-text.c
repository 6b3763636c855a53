/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-difference-text.h"

#include <string.h>

#include "study-dampers.h"
#include "test-support.h"

START_TEST (every_change_is_told_in_trade_units)
{
  int n_rows = 0;
  const study_change *row = &study_changes (&n_rows)[_i];
  const dw_damper a = study_damper ();
  dw_damper b = a;
  row->change (&b);

  dw_difference found[1];
  char text[DW_DIFFERENCE_TEXT];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  dw_difference_describe (&found[0], &a, &b, text);
  ck_assert_str_eq (text, row->text);
}
END_TEST

/* The longest text there is: two measured oils, all numbers with six digits and an exponent. */
START_TEST (the_longest_text_is_whole)
{
  dw_damper a = dw_damper_defaults ();
  a.oil = (dw_oil){ .kind = DW_OIL_MEASURED,
                    .point_temperature = { -12.3456789, 123.456789 },
                    .point_viscosity = { 0.0123456789, 0.00123456789 },
                    .density = 1234.56789,
                    .has_thinning = true,
                    .thinning_rate = 12345678.9,
                    .thinning_exponent = 0.123456789 };
  dw_damper b = a;
  b.oil.density = 987.654321;
  dw_difference found[1];
  char text[DW_DIFFERENCE_TEXT];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  dw_difference_describe (&found[0], &a, &b, text);
  ck_assert_str_eq (text, "oil 12345.7 cSt at -12.3457 degC and 1234.57 cSt at 123.457 degC, "
                          "1234.57 kg/m3, thinning from 1.23457e+07 1/s (exponent 0.123457) -> "
                          "12345.7 cSt at -12.3457 degC and 1234.57 cSt at 123.457 degC, "
                          "987.654 kg/m3, thinning from 1.23457e+07 1/s (exponent 0.123457)");
}
END_TEST

/* Sixteen shims in another order fill a line, but not the buffer. */
START_TEST (the_longest_stack_is_whole)
{
  dw_damper a = study_damper ();
  a.valve.n_shims = DW_MAX_SHIMS;
  for (int i = 0; i < DW_MAX_SHIMS; i++)
    a.valve.shims[i] = (dw_shim){ (1.012345 + i * 1e-5) * 1e-3, 64, 4e9, 0.3, 1e8 };
  dw_damper b = a;
  b.valve.shims[0] = a.valve.shims[15];
  b.valve.shims[15] = a.valve.shims[0];
  dw_difference found[1];
  char text[DW_DIFFERENCE_TEXT];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  dw_difference_describe (&found[0], &a, &b, text);
  ck_assert_msg (strlen (text) < DW_DIFFERENCE_TEXT - 1, "%zu bytes", strlen (text));
  ck_assert_ptr_nonnull (strstr (text, " mm -> 64 x "));
  ck_assert_str_eq (text + strlen (text) - 3, " mm");
}
END_TEST

int
main (void)
{
  int n = 0;
  study_changes (&n);
  Suite *suite = suite_create ("study/dw-difference-text");
  TCase *tc = tcase_create ("text");
  tcase_add_loop_test (tc, every_change_is_told_in_trade_units, 0, n);
  tcase_add_test (tc, the_longest_text_is_whole);
  tcase_add_test (tc, the_longest_stack_is_whole);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
