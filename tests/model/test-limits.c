/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "model/dw-limits.h"
#include "test-support.h"

START_TEST (every_limit_is_a_sound_range)
{
  const dw_limit *limit = dw_limit_get ((dw_limit_id)_i);
  ck_assert_ptr_nonnull (limit->path);
  ck_assert (isfinite (limit->low) && isfinite (limit->high) && limit->low < limit->high);
  ck_assert_msg (isnan (limit->fallback)
                     || (limit->fallback >= limit->low && limit->fallback <= limit->high),
                 "default of %s", limit->path);
  for (int j = 0; j < _i; j++)
    ck_assert_str_ne (limit->path, dw_limit_get ((dw_limit_id)j)->path);
}
END_TEST

START_TEST (ends_belong_to_the_range)
{
  const dw_limit_id id = (dw_limit_id)_i;
  const dw_limit *limit = dw_limit_get (id);
  ck_assert (dw_limit_holds (id, limit->low) && dw_limit_holds (id, limit->high));
  ck_assert (!dw_limit_holds (id, nextafter (limit->low, -INFINITY)));
  ck_assert (!dw_limit_holds (id, nextafter (limit->high, INFINITY)));
  ck_assert (!dw_limit_holds (id, NAN) && !dw_limit_holds (id, INFINITY));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/limits");
  TCase *tc = tcase_create ("limits");
  tcase_add_loop_test (tc, every_limit_is_a_sound_range, 0, DW_N_LIMITS);
  tcase_add_loop_test (tc, ends_belong_to_the_range, 0, DW_N_LIMITS);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
