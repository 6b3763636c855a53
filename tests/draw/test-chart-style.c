/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw/dw-chart-style.h"
#include "test-support.h"

/* Contrast that the header promises for lines, by style. */
static const double promised[DW_N_STYLES] = {
  [DW_STYLE_LIGHT] = 4.5,         [DW_STYLE_DARK] = 4.5, [DW_STYLE_CONTRAST] = 7.0,
  [DW_STYLE_CONTRAST_DARK] = 7.0, [DW_STYLE_SUN] = 7.0,  [DW_STYLE_PRINT] = 20.9,
};

START_TEST (lines_and_texts_stand_out)
{
  const dw_chart_style s = dw_chart_style_make ((dw_style_id)_i);
  for (int i = 0; i < DW_N_SLOTS; i++)
    {
      const double contrast = dw_color_contrast (s.line[i].color, s.plot);
      ck_assert_msg (contrast >= promised[_i], "%s, slot %d: %.2f", dw_style_name ((dw_style_id)_i),
                     i, contrast);
    }
  ck_assert (dw_color_contrast (s.ink, s.background) >= 7.0);
  ck_assert (dw_color_contrast (s.muted, s.background) >= 4.5);
  ck_assert (dw_color_contrast (s.warning, s.metal) >= 3.0);
  /* hatching on its tone */
  ck_assert (dw_color_contrast (s.ink, s.share[DW_SHARE_OPEN]) >= 3.0);
  ck_assert (dw_color_contrast (s.ink, s.share[DW_SHARE_COVERED]) >= 3.0);
}
END_TEST

START_TEST (lines_differ_without_colour)
{
  const dw_chart_style s = dw_chart_style_make ((dw_style_id)_i);
  ck_assert_int_eq (s.line[DW_SLOT_FITTED].n_dash, 0);
  for (int i = DW_SLOT_TRIAL_1; i < DW_N_SLOTS; i++)
    {
      ck_assert_int_gt (s.line[i].n_dash, 0);
      ck_assert (s.line[i].width < s.line[DW_SLOT_FITTED].width);
    }
  for (int i = 0; i < DW_N_SLOTS; i++)
    for (int k = 0; k < i; k++)
      {
        ck_assert (s.line[i].marker != s.line[k].marker);
        ck_assert (s.line[i].n_dash != s.line[k].n_dash
                   || memcmp (s.line[i].dash, s.line[k].dash, sizeof s.line[i].dash) != 0);
      }
}
END_TEST

/* ---- colour vision ---- */

static double
linear (double x)
{
  return x <= 0.04045 ? x / 12.92 : pow ((x + 0.055) / 1.055, 2.4);
}

/* One kind of cone missing (Vienot, Brettel and Mollon 1999, from memory), then CIELAB. */
static void
seen (dw_color c, int missing, double lab[3])
{
  const double rgb[3] = { linear (c.red), linear (c.green), linear (c.blue) };
  double l = 17.8824 * rgb[0] + 43.5161 * rgb[1] + 4.11935 * rgb[2];
  double m = 3.45565 * rgb[0] + 27.1554 * rgb[1] + 3.86714 * rgb[2];
  double s = 0.0299566 * rgb[0] + 0.184309 * rgb[1] + 1.46709 * rgb[2];
  if (missing == 1)
    l = 2.02344 * m - 2.52581 * s;
  else if (missing == 2)
    m = 0.494207 * l + 1.24827 * s;
  else if (missing == 3)
    s = -0.395913 * l + 0.801109 * m;
  const double r = 0.080944 * l - 0.130504 * m + 0.116721 * s;
  const double g = -0.0102485 * l + 0.0540194 * m - 0.113615 * s;
  const double b = -0.000365294 * l - 0.00412163 * m + 0.693513 * s;
  const double xyz[3] = { (0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047,
                          0.2126729 * r + 0.7151522 * g + 0.0721750 * b,
                          (0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / 1.08883 };
  double f[3];
  for (int i = 0; i < 3; i++)
    f[i] = xyz[i] > 0.008856 ? cbrt (xyz[i]) : 7.787 * xyz[i] + 16.0 / 116.0;
  lab[0] = 116.0 * f[1] - 16.0;
  lab[1] = 500.0 * (f[0] - f[1]);
  lab[2] = 200.0 * (f[1] - f[2]);
}

/* Twelve is far more than two areas side by side need, and enough for lines that also differ in
 * dash and marker. Print is black only. */
START_TEST (lines_differ_for_every_colour_vision)
{
  const dw_chart_style s = dw_chart_style_make ((dw_style_id)_i);
  if (_i == DW_STYLE_PRINT)
    {
      for (int i = 0; i < DW_N_SLOTS; i++)
        ck_assert (dw_color_luminance (s.line[i].color) < 1e-6);
      return;
    }
  for (int missing = 0; missing < 4; missing++)
    for (int i = 0; i < DW_N_SLOTS; i++)
      for (int k = 0; k < i; k++)
        {
          double a[3];
          double b[3];
          seen (s.line[i].color, missing, a);
          seen (s.line[k].color, missing, b);
          const double apart = hypot (hypot (a[0] - b[0], a[1] - b[1]), a[2] - b[2]);
          ck_assert_msg (apart >= 12.0, "%s: slots %d and %d are %.1f apart without cone %d",
                         dw_style_name ((dw_style_id)_i), i, k, apart, missing);
        }
}
END_TEST

START_TEST (styles_have_names)
{
  dw_style_id id = DW_N_STYLES;
  ck_assert (dw_style_find (dw_style_name ((dw_style_id)_i), &id));
  ck_assert_int_eq ((int)id, _i);
  ck_assert (!dw_style_find ("colourful", &id));
  ck_assert_int_eq ((int)id, _i);
}
END_TEST

START_TEST (a_scaled_style_is_larger_throughout)
{
  dw_chart_style s = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_chart_style before = s;
  dw_chart_style_scale (&s, 2.0);
  ck_assert (s.font[DW_TEXT_TICK].size == 2.0 * before.font[DW_TEXT_TICK].size);
  ck_assert (s.line[1].width == 2.0 * before.line[1].width);
  ck_assert (s.line[1].dash[1] == 2.0 * before.line[1].dash[1]);
  ck_assert (s.onset_radius == 2.0 * before.onset_radius);
  ck_assert (s.past_width == before.past_width);
}
END_TEST

START_TEST (the_sun_style_is_heavier_than_the_light_one)
{
  const dw_chart_style sun = dw_chart_style_make (DW_STYLE_SUN);
  const dw_chart_style light = dw_chart_style_make (DW_STYLE_LIGHT);
  for (int i = 0; i < DW_N_SLOTS; i++)
    ck_assert (sun.line[i].width > 1.5 * light.line[i].width);
  ck_assert (sun.font[DW_TEXT_TICK].size > 1.2 * light.font[DW_TEXT_TICK].size);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-style");
  TCase *tcase = tcase_create ("chart-style");
  tcase_add_loop_test (tcase, lines_and_texts_stand_out, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, lines_differ_without_colour, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, lines_differ_for_every_colour_vision, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, styles_have_names, 0, DW_N_STYLES);
  tcase_add_test (tcase, a_scaled_style_is_larger_throughout);
  tcase_add_test (tcase, the_sun_style_is_heavier_than_the_light_one);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
