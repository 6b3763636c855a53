/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-page-scale.h"

#include "test-support.h"

static const struct
{
  const char *why;
  double largest;
  double most;
  double scale;
} rows[] = {
  { "a round one stays", 4.0, 20.0, 4.0 },
  { "just below", 3.999, 20.0, 3.0 },
  { "never more than is wanted", 70.0, 20.0, 20.0 },
  { "what is wanted need not be round", 70.0, 22.0, 20.0 },
  { "smaller than the parts", 0.7, 20.0, 0.5 },
  { "very much smaller is as it is", 0.07, 20.0, 0.07 },
  { "thin parts", 237.0, 500.0, 200.0 },
};

START_TEST (scales_are_round)
{
  ck_assert_msg (dw_page_scale_round (rows[_i].largest, rows[_i].most) == rows[_i].scale, "%s",
                 rows[_i].why);
}
END_TEST

START_TEST (steps_are_never_large)
{
  for (double x = 1.0; x < 500.0; x *= 1.01)
    {
      const double scale = dw_page_scale_round (x, 500.0);
      ck_assert (scale <= x && scale > 0.66 * x);
    }
}
END_TEST

START_TEST (a_point_is_a_seventy_second_of_an_inch)
{
  assert_close (72.0 * DW_PAGE_POINT, 0.0254, 1e-15, 0.0, "inch");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/page-scale");
  TCase *tcase = tcase_create ("page-scale");
  tcase_add_loop_test (tcase, scales_are_round, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, steps_are_never_large);
  tcase_add_test (tcase, a_point_is_a_seventy_second_of_an_inch);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
