/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/dw-color.h"
#include "test-support.h"

static const struct
{
  double lightness, chroma, hue;
  double red, green, blue; /* of 255 */
  const char *why;
} rows[] = {
  { 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, "black" },
  { 100.0, 0.0, 0.0, 255.0, 255.0, 255.0, "white" },
  { 53.389, 0.0, 0.0, 127.5, 127.5, 127.5, "the middle of sRGB is 53.4 of lightness" },
  { 53.24, 104.55, 40.0, 255.0, 0.0, 0.0, "primaries of sRGB in CIELAB, as commonly tabulated" },
  { 87.73, 119.78, 136.02, 0.0, 255.0, 0.0, "the same" },
  { 32.30, 133.81, 306.28, 0.0, 0.0, 255.0, "the same" },
};

START_TEST (colours_are_those_of_cielab)
{
  const dw_color c = dw_color_from_lch (rows[_i].lightness, rows[_i].chroma, rows[_i].hue);
  assert_close (255.0 * c.red, rows[_i].red, 0.0, 0.8, rows[_i].why);
  assert_close (255.0 * c.green, rows[_i].green, 0.0, 0.8, rows[_i].why);
  assert_close (255.0 * c.blue, rows[_i].blue, 0.0, 0.8, rows[_i].why);
  ck_assert (c.alpha == 1.0);
}
END_TEST

START_TEST (contrast_is_that_of_wcag)
{
  const dw_color black = { 0.0, 0.0, 0.0, 1.0 };
  const dw_color white = { 1.0, 1.0, 1.0, 1.0 };
  const dw_color grey = { 119.0 / 255.0, 119.0 / 255.0, 119.0 / 255.0, 1.0 };
  assert_close (dw_color_contrast (black, white), 21.0, 1e-12, 0.0, "largest there is");
  assert_close (dw_color_contrast (white, black), 21.0, 1e-12, 0.0, "in either order");
  assert_close (dw_color_contrast (white, grey), 4.48, 0.0, 0.005, "#777 on white just fails 4.5");
  assert_close (dw_color_luminance (white), 1.0, 1e-12, 0.0, "white");
}
END_TEST

START_TEST (colours_outside_the_screen_are_cut)
{
  const dw_color c = dw_color_from_lch (50.0, 200.0, 150.0);
  ck_assert (c.red >= 0.0 && c.red <= 1.0 && c.green >= 0.0 && c.green <= 1.0);
  ck_assert (c.blue >= 0.0 && c.blue <= 1.0);
}
END_TEST

START_TEST (mixing_ends_at_both_ends)
{
  const dw_color a = { 0.1, 0.2, 0.3, 1.0 };
  const dw_color b = dw_color_with_alpha ((dw_color){ 0.5, 0.6, 0.7, 1.0 }, 0.5);
  ck_assert (b.alpha == 0.5);
  assert_close (dw_color_mix (a, b, 0.0).green, 0.2, 1e-15, 0.0, "nothing of b");
  assert_close (dw_color_mix (a, b, 1.0).blue, 0.7, 1e-15, 0.0, "all of b");
  assert_close (dw_color_mix (a, b, 0.5).alpha, 0.75, 1e-15, 0.0, "alpha as well");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/color");
  TCase *tcase = tcase_create ("color");
  tcase_add_loop_test (tcase, colours_are_those_of_cielab, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, contrast_is_that_of_wcag);
  tcase_add_test (tcase, colours_outside_the_screen_are_cut);
  tcase_add_test (tcase, mixing_ends_at_both_ends);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
