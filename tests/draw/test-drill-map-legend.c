/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-legend.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-samples.h"

typedef struct
{
  sample_map *sample;
  dw_chart_style style;
  dw_text_metrics metrics;
  dw_drill_lines lines;
  dw_drill_map_legend legend;
  dw_chart_label_list texts;
  dw_drill_map_legend_input input;
} fixture;

static void
open_fixture (fixture *f, sample_map_kind kind)
{
  const dw_scale x = { false, 1e-3, 2.2e-3, 0.0, 400.0 };
  const dw_scale y = { false, 1e-3, 2.2e-3, 300.0, 0.0 };
  *f = (fixture){ .sample = sample_map_new (kind, 4, 2.1e-3) };
  f->style = dw_chart_style_make (DW_STYLE_LIGHT);
  f->metrics = sample_metrics (&f->style);
  dw_drill_lines_make (&f->sample->map, &x, &y, 10, &f->lines);
  f->input = (dw_drill_map_legend_input){ &f->sample->map, &f->style, &f->metrics, &f->lines,
                                          true };
}

static void
close_fixture (fixture *f)
{
  dw_drill_lines_clear (&f->lines);
  dw_chart_label_list_clear (&f->texts);
  sample_map_free (f->sample);
}

static void
make (fixture *f, bool beside, const dw_rect *strip)
{
  dw_chart_label_list_clear (&f->texts);
  if (beside)
    dw_drill_map_legend_make_beside (&f->input, strip, &f->legend, &f->texts);
  else
    dw_drill_map_legend_make_above (&f->input, strip, &f->legend, &f->texts);
}

static int
count (const fixture *f, dw_label_kind kind)
{
  int n = 0;
  for (int i = 0; i < f->texts.n; i++)
    n += f->texts.labels[i].kind == kind ? 1 : 0;
  return n;
}

START_TEST (it_tells_tones_and_lines_with_units)
{
  fixture f;
  const dw_rect strip = { 10.0, 20.0, 160.0, 420.0 };
  open_fixture (&f, SAMPLE_HALVES);
  make (&f, true, &strip);
  ck_assert (f.legend.is_upright && f.legend.bar.height > 60.0);
  ck_assert_int_eq (count (&f, DW_LABEL_TONE), f.lines.shade.n);
  ck_assert_int_eq (f.legend.n_samples, DW_N_KEYS);
  g_autoptr (GString) words = g_string_new (NULL);
  for (int i = 0; i < f.texts.n; i++)
    if (f.texts.labels[i].kind != DW_LABEL_TONE)
      g_string_append_printf (words, "%s ", f.texts.labels[i].text);
  ck_assert_ptr_nonnull (strstr (words->str, "Shaded: compression at low speed, change in %"));
  ck_assert_ptr_nonnull (strstr (words->str, "Lines: pack in compression"));
  ck_assert_ptr_nonnull (strstr (words->str, "too little land"));
  close_fixture (&f);
}
END_TEST

/* Of any size: nothing outside, no text or sample on another. */
START_TEST (it_stays_in_its_place)
{
  fixture f;
  const bool beside = _i < N_SAMPLE_MAPS;
  open_fixture (&f, (sample_map_kind)(_i % N_SAMPLE_MAPS));
  for (double width = 100.0; width < 900.0; width *= 1.2)
    for (double height = 60.0; height < 900.0; height *= 1.3)
      {
        const dw_rect strip = { 10.0, 20.0, width, height };
        make (&f, beside, &strip);
        const dw_rect place = { strip.x, strip.y, strip.width, fmax (height, f.legend.box.height) };
        for (int i = 0; i < f.texts.n; i++)
          {
            ck_assert (dw_rect_holds_rect (&place, &f.texts.labels[i].box) || width < 140.0);
            for (int k = 0; k < i; k++)
              ck_assert_msg (!dw_rect_overlaps (&f.texts.labels[i].box, &f.texts.labels[k].box),
                             "%.0f x %.0f: %s on %s", width, height, f.texts.labels[i].text,
                             f.texts.labels[k].text);
            for (int k = 0; k < f.legend.n_samples; k++)
              ck_assert (!dw_rect_overlaps (&f.texts.labels[i].box, &f.legend.samples[k].box));
            ck_assert (!dw_rect_overlaps (&f.texts.labels[i].box, &f.legend.bar));
          }
        ck_assert (f.legend.bar.width == 0.0 || dw_rect_holds_rect (&place, &f.legend.bar));
      }
  close_fixture (&f);
}
END_TEST

START_TEST (tones_rise_along_the_bar)
{
  fixture f;
  const dw_rect strip = { 10.0, 20.0, 300.0, 400.0 };
  open_fixture (&f, SAMPLE_HALVES);
  for (int beside = 0; beside < 2; beside++)
    {
      make (&f, beside == 1, &strip);
      const dw_rect *bar = &f.legend.bar;
      const int last = dw_drill_lines_n_tones (&f.lines) - 1;
      for (int i = 1; i <= last; i++)
        {
          const double from = dw_drill_map_legend_tone_end (&f.legend, &f.lines, i - 1);
          const double to = dw_drill_map_legend_tone_end (&f.legend, &f.lines, i);
          ck_assert (beside == 1 ? to < from : to > from);
        }
      assert_close (dw_drill_map_legend_tone_end (&f.legend, &f.lines, last),
                    beside == 1 ? bar->y : bar->x + bar->width, 1e-9, 0.0, "the end");
    }
  close_fixture (&f);
}
END_TEST

START_TEST (a_value_lies_in_its_tone)
{
  fixture f;
  const dw_rect strip = { 10.0, 20.0, 300.0, 400.0 };
  test_random random = test_random_new (1);
  open_fixture (&f, SAMPLE_HALVES);
  make (&f, false, &strip);
  for (int n = 0; n < 300; n++)
    {
      const double value = test_random_uniform (&random, -110.0, 60.0);
      const dw_spot at = dw_drill_map_legend_value_at (&f.legend, &f.lines, value);
      int tone = 0;
      while (tone < f.lines.shade.n && value >= f.lines.shade.value[tone])
        tone++;
      const double to = dw_drill_map_legend_tone_end (&f.legend, &f.lines, tone);
      const double from = tone > 0 ? dw_drill_map_legend_tone_end (&f.legend, &f.lines, tone - 1)
                                   : f.legend.bar.x;
      ck_assert_msg (at.x >= from - 1e-9 && at.x <= to + 1e-9, "%g", value);
    }
  /* a level is where its label is */
  assert_close (dw_drill_map_legend_value_at (&f.legend, &f.lines, f.lines.shade.value[2]).x,
                dw_drill_map_legend_tone_end (&f.legend, &f.lines, 2), 1e-9, 0.0, "at the edge");
  ck_assert (isnan (dw_drill_map_legend_value_at (&f.legend, &f.lines, (double)NAN).x));
  close_fixture (&f);
}
END_TEST

START_TEST (what_is_not_there_has_no_sample)
{
  fixture f;
  const dw_rect strip = { 10.0, 20.0, 400.0, 400.0 };
  open_fixture (&f, SAMPLE_STRIP);
  f.input.has_land_end = false;
  make (&f, false, &strip);
  ck_assert (f.legend.bar.width == 0.0);
  for (int i = 0; i < f.legend.n_samples; i++)
    ck_assert (f.legend.samples[i].key != DW_KEY_CONTOUR && f.legend.samples[i].key != DW_KEY_EQUAL
               && f.legend.samples[i].key != DW_KEY_NO_ROOM);
  close_fixture (&f);
}
END_TEST

START_TEST (its_width_follows_the_area)
{
  fixture f;
  open_fixture (&f, SAMPLE_HALVES);
  const double em = f.style.font[DW_TEXT_TICK].size;
  assert_close (dw_drill_map_legend_width (&f.input, 100.0), 10.0 * em, 1e-9, 0.0, "at least");
  assert_close (dw_drill_map_legend_width (&f.input, 5000.0), 17.0 * em, 1e-9, 0.0, "at most");
  close_fixture (&f);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map-legend");
  TCase *tcase = tcase_create ("drill-map-legend");
  tcase_add_test (tcase, it_tells_tones_and_lines_with_units);
  tcase_add_loop_test (tcase, it_stays_in_its_place, 0, 2 * N_SAMPLE_MAPS);
  tcase_add_test (tcase, tones_rise_along_the_bar);
  tcase_add_test (tcase, a_value_lies_in_its_tone);
  tcase_add_test (tcase, what_is_not_there_has_no_sample);
  tcase_add_test (tcase, its_width_follows_the_area);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
