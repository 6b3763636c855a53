/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "draw-samples.h"

static dw_chart_style style;

static void
make (const dw_chart *chart, double width, double height, dw_legend *legend)
{
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect strip = { 10.0, 20.0, width, height };
  dw_legend_make (chart, &style, &metrics, &strip, legend);
}

/* From a phone's width to a wall's. */
START_TEST (entries_never_touch_and_stay_in_their_strip)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_chart chart = sample_chart (_i, false);
  const dw_text_metrics metrics = sample_metrics (&style);
  for (double width = 60.0; width < 2000.0; width *= 1.13)
    {
      dw_legend legend = { 0 };
      const dw_rect wide = { 10.0, 20.0, width + 0.01, 1e4 };
      make (&chart, width, 60.0, &legend);
      ck_assert_int_eq (legend.n, _i);
      for (int i = 0; i < legend.n; i++)
        {
          const dw_legend_entry *e = &legend.entries[i];
          ck_assert (dw_rect_holds_rect (&wide, &e->box));
          ck_assert (dw_rect_holds_rect (&legend.box, &e->box));
          const double end = e->text_at.x
                             + dw_text_measure (&metrics, e->text, DW_TEXT_LEGEND).width;
          ck_assert (*e->text == '\0' || end <= e->box.x + e->box.width + 0.01);
          ck_assert (e->to.x >= e->from.x && e->to.x <= e->box.x + e->box.width + 0.01);
          for (int k = 0; k < i; k++)
            ck_assert (!dw_rect_overlaps (&e->box, &legend.entries[k].box));
        }
      dw_legend_clear (&legend);
    }
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (names_are_whole_when_there_is_room)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_chart chart = sample_chart (4, false);
  dw_legend legend = { 0 };
  make (&chart, 2000.0, 200.0, &legend);
  ck_assert_str_eq (legend.entries[0].text, "As qualified (fitted)");
  ck_assert_str_eq (legend.entries[3].text, chart.series[3]->name);
  ck_assert (legend.entries[0].box.y == legend.entries[3].box.y);
  ck_assert_int_eq (legend.entries[0].slot, DW_SLOT_FITTED);
  dw_legend_clear (&legend);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_low_strip_shortens_names_in_the_middle)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_chart chart = sample_chart (4, false);
  dw_legend legend = { 0 };
  make (&chart, 520.0, 12.0, &legend);
  ck_assert (strstr (legend.entries[3].text, "\u2026") != NULL);
  ck_assert (legend.box.height <= 12.0);
  dw_legend_clear (&legend);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_width_is_that_of_the_longest_name)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_chart chart = sample_chart (4, false);
  dw_legend legend = { 0 };
  const dw_text_metrics metrics = sample_metrics (&style);
  make (&chart, dw_legend_width (&chart, &style, &metrics), 200.0, &legend);
  ck_assert_str_eq (legend.entries[3].text, chart.series[3]->name);
  dw_legend_clear (&legend);
  sample_chart_clear (&chart);
}
END_TEST

/* Ink where the sample is, in the colour of its line. */
START_TEST (a_sample_is_painted)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  dw_chart chart = sample_chart (1, false);
  dw_legend legend = { 0 };
  make (&chart, 300.0, 60.0, &legend);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;
  dw_legend_paint (&legend, &style, cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  ck_assert (x < legend.entries[0].from.x + 1.0 && x + width > legend.entries[0].text_at.x + 20.0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  dw_legend_clear (&legend);
  sample_chart_clear (&chart);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/legend");
  TCase *tcase = tcase_create ("legend");
  tcase_add_loop_test (tcase, entries_never_touch_and_stay_in_their_strip, 1, 5);
  tcase_add_test (tcase, names_are_whole_when_there_is_room);
  tcase_add_test (tcase, a_low_strip_shortens_names_in_the_middle);
  tcase_add_test (tcase, the_width_is_that_of_the_longest_name);
  tcase_add_test (tcase, a_sample_is_painted);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
