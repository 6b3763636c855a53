/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ramp.h"

#include <math.h>

#include "test-support.h"

/* CIELAB lightness from relative luminance (ISO/CIE 11664-4). */
static double
lightness (dw_color color)
{
  const double y = dw_color_luminance (color);
  return y > 216.0 / 24389.0 ? 116.0 * cbrt (y) - 16.0 : 24389.0 / 27.0 * y;
}

START_TEST (equal_steps_are_equally_far)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)_i);
  const dw_ramp ramp = dw_ramp_make (&style);
  const double whole = lightness (dw_ramp_at (&ramp, 1.0)) - lightness (dw_ramp_at (&ramp, 0.0));
  ck_assert (fabs (whole) > 25.0);
  for (int i = 0; i < 10; i++)
    {
      const double step = lightness (dw_ramp_at (&ramp, 0.1 * (i + 1)))
                          - lightness (dw_ramp_at (&ramp, 0.1 * i));
      assert_close (step, whole / 10.0, 0.15, 0.0, "even, and always the same way");
    }
}
END_TEST

START_TEST (ink_can_be_read_on_all_of_it)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)_i);
  const dw_ramp ramp = dw_ramp_make (&style);
  for (int i = 0; i <= 20; i++)
    ck_assert_msg (dw_color_contrast (style.ink, dw_ramp_at (&ramp, i / 20.0)) >= 4.5,
                   "%s at %d: %.2f", dw_style_name ((dw_style_id)_i), i,
                   dw_color_contrast (style.ink, dw_ramp_at (&ramp, i / 20.0)));
}
END_TEST

START_TEST (print_is_grey)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_PRINT);
  const dw_ramp ramp = dw_ramp_make (&style);
  const dw_color c = dw_ramp_at (&ramp, 0.7);
  ck_assert (fabs (c.red - c.green) < 0.01 && fabs (c.green - c.blue) < 0.01);
}
END_TEST

START_TEST (shares_outside_are_the_ends)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_ramp ramp = dw_ramp_make (&style);
  ck_assert (dw_ramp_at (&ramp, -3.0).red == dw_ramp_at (&ramp, 0.0).red);
  ck_assert (dw_ramp_at (&ramp, 7.0).blue == dw_ramp_at (&ramp, 1.0).blue);
  ck_assert (dw_ramp_at (&ramp, (double)NAN).blue == dw_ramp_at (&ramp, 0.0).blue);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ramp");
  TCase *tcase = tcase_create ("ramp");
  tcase_add_loop_test (tcase, equal_steps_are_equally_far, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, ink_can_be_read_on_all_of_it, 0, DW_N_STYLES);
  tcase_add_test (tcase, print_is_grey);
  tcase_add_test (tcase, shares_outside_are_the_ends);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
