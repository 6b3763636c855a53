/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-text.h"

START_TEST (a_text_that_fits_stays)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const double width = dw_text_measure (&metrics, "Rear quicker", DW_TEXT_LEGEND).width;
  g_autofree char *text = dw_text_ellipsize (&metrics, "Rear quicker", DW_TEXT_LEGEND, width);
  ck_assert_str_eq (text, "Rear quicker");
}
END_TEST

START_TEST (a_long_text_loses_its_middle)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const char *whole = "Rückwärts schneller über 1 m/s";
  for (double width = 0.0; width < 200.0; width += 3.7)
    {
      g_autofree char *text = dw_text_ellipsize (&metrics, whole, DW_TEXT_LEGEND, width);
      ck_assert (g_utf8_validate (text, -1, NULL));
      ck_assert (*text == '\0' || dw_text_measure (&metrics, text, DW_TEXT_LEGEND).width <= width);
      /* one character more would not have fitted */
      const double next = dw_text_measure (&metrics, text, DW_TEXT_LEGEND).width
                          + 0.6 * style.font[DW_TEXT_LEGEND].size;
      ck_assert (strcmp (text, whole) == 0 || *text == '\0' || next > width);
    }
  g_autofree char *text = dw_text_ellipsize (&metrics, "abcdefghij", DW_TEXT_LEGEND,
                                             6.0 * 0.6 * style.font[DW_TEXT_LEGEND].size + 0.01);
  ck_assert_str_eq (text, "abc\u2026ij");
}
END_TEST

START_TEST (wrapped_lines_fit_and_lose_nothing)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const char *whole = "Estimates for scale-model dampers: check on the car, one change at a time.";
  for (double width = 80.0; width < 500.0; width += 20.0)
    {
      g_auto (GStrv) lines = dw_text_wrap (&metrics, whole, DW_TEXT_NOTE, width);
      g_autofree char *joined = g_strjoinv (" ", lines);
      ck_assert_str_eq (joined, whole);
      for (char **line = lines; *line != NULL; line++)
        ck_assert (strchr (*line, ' ') == NULL
                   || dw_text_measure (&metrics, *line, DW_TEXT_NOTE).width <= width);
    }
}
END_TEST

/* The layout trusts these numbers: ink must stay inside the measured box. */
START_TEST (pango_measures_what_it_paints)
{
  dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  dw_text_pango *pango = dw_text_pango_new (&style);
  const dw_text_metrics metrics = dw_text_pango_metrics (pango);
  const char *text = "Hgjy 0.25 m/s";
  const dw_text_extent extent = dw_text_measure (&metrics, text, DW_TEXT_TITLE);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;
  dw_text_paint (cr, &style, DW_TEXT_TITLE, text, (dw_spot){ 10.0, 40.0 }, 0.0);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  ck_assert (x >= 9.0 && x + width <= 10.0 + extent.width + 2.0);
  ck_assert (width > 0.85 * extent.width);
  ck_assert (y >= 40.0 - extent.ascent - 1.0 && y + height <= 40.0 + extent.descent + 1.0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  dw_text_pango_free (pango);
}
END_TEST

/* More texts than are remembered, each asked for twice. */
START_TEST (what_is_remembered_is_what_was_measured)
{
  dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  dw_text_pango *pango = dw_text_pango_new (&style);
  dw_text_pango *judge = dw_text_pango_new (&style);
  const dw_text_metrics metrics = dw_text_pango_metrics (pango);
  for (int i = 0; i < 1200; i++)
    {
      g_autofree char *text = g_strdup_printf ("%d", i % 700);
      const double width = dw_text_measure (&metrics, text, DW_TEXT_TICK).width;
      ck_assert (dw_text_measure (&metrics, text, DW_TEXT_TICK).width == width);
      if (i % 100 == 0)
        {
          const dw_text_metrics fresh = dw_text_pango_metrics (judge);
          ck_assert (dw_text_measure (&fresh, text, DW_TEXT_TICK).width == width);
        }
    }
  dw_text_pango_free (pango);
  dw_text_pango_free (judge);
}
END_TEST

START_TEST (a_rim_surrounds_the_letters)
{
  dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  double plain[4];
  double rimmed[4];
  for (int i = 0; i < 2; i++)
    {
      double *b = i == 0 ? plain : rimmed;
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);
      if (i == 0)
        dw_text_paint (cr, &style, DW_TEXT_NOTE, "x", (dw_spot){ 10.0, 40.0 }, 0.0);
      else
        dw_text_paint_rimmed (cr, &style, DW_TEXT_NOTE, "x", (dw_spot){ 10.0, 40.0 }, style.ink,
                              style.plot);
      cairo_recording_surface_ink_extents (surface, &b[0], &b[1], &b[2], &b[3]);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
  ck_assert (rimmed[2] > plain[2] + 1.0 && rimmed[3] > plain[3] + 1.0);
  ck_assert (rimmed[0] < plain[0] && rimmed[1] < plain[1]);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/text");
  TCase *tcase = tcase_create ("text");
  tcase_add_test (tcase, a_text_that_fits_stays);
  tcase_add_test (tcase, a_long_text_loses_its_middle);
  tcase_add_test (tcase, wrapped_lines_fit_and_lose_nothing);
  tcase_add_test (tcase, pango_measures_what_it_paints);
  tcase_add_test (tcase, what_is_remembered_is_what_was_measured);
  tcase_add_test (tcase, a_rim_surrounds_the_letters);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
