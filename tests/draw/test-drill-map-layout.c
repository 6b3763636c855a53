/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-layout.h"

#include <glib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "draw-samples.h"
#include "model/dw-units.h"

#define MOST_BOXES 400

static dw_drill_map_layout *
lay_out (const sample_map *sample, dw_style_id id, double width, double height)
{
  const dw_chart_style style = dw_chart_style_make (id);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect area = { 5.0, 7.0, width, height };
  return dw_drill_map_layout_new (&sample->map, &style, &metrics, &area);
}

static int
text_boxes (const dw_drill_map_layout *layout, dw_rect *boxes)
{
  int n = 0;
  for (int i = 0; i < layout->x_ticks.n; i++)
    if (layout->x_ticks.ticks[i].is_major)
      boxes[n++] = dw_drill_map_layout_x_label_box (layout, i);
  for (int i = 0; i < layout->y_ticks.n; i++)
    if (layout->y_ticks.ticks[i].is_major)
      boxes[n++] = dw_drill_map_layout_y_label_box (layout, i);
  for (int i = 0; i < layout->texts.n; i++)
    boxes[n++] = layout->texts.labels[i].box;
  ck_assert_int_lt (n, MOST_BOXES);
  return n;
}

static void
assert_tidy (const dw_drill_map_layout *layout, const char *what)
{
  static dw_rect boxes[MOST_BOXES];
  const int n = text_boxes (layout, boxes);
  for (int i = 0; i < n; i++)
    {
      ck_assert_msg (dw_rect_holds_rect (&layout->area, &boxes[i]), "%s: a text is outside", what);
      for (int k = 0; k < i; k++)
        ck_assert_msg (!dw_rect_overlaps (&boxes[i], &boxes[k]),
                       "%s: texts at %.1f,%.1f and %.1f,%.1f overlap", what, boxes[i].x, boxes[i].y,
                       boxes[k].x, boxes[k].y);
    }
  ck_assert_msg (dw_rect_holds_rect (&layout->area, &layout->plot), "%s: plot", what);
  ck_assert_msg (layout->plot.height > 50.0 && layout->plot.width > 100.0,
                 "%s: a plot of %.0f by %.0f", what, layout->plot.width, layout->plot.height);
  ck_assert_msg (!dw_rect_overlaps (&layout->legend.box, &layout->plot), "%s: legend", what);
  for (int i = 0; i < layout->legend.n_samples; i++)
    ck_assert_msg (dw_rect_holds_rect (&layout->area, &layout->legend.samples[i].box), "%s: sample",
                   what);
  ck_assert_msg (layout->legend.bar.width == 0.0
                     || dw_rect_holds_rect (&layout->area, &layout->legend.bar),
                 "%s: bar", what);
  int n_x = 0;
  for (int i = 0; i < layout->x_ticks.n; i++)
    n_x += layout->x_ticks.ticks[i].is_major ? 1 : 0;
  ck_assert_msg (n_x >= 2, "%s: no scale", what);
}

/* 260 x 220 to 2000 x 1500 points, in every style, in mm and in, for one set and for two. */
START_TEST (nothing_overlaps_at_any_size)
{
  const sample_map_kind kind = (sample_map_kind)(_i % N_SAMPLE_MAPS);
  sample_map *sample = sample_map_new (kind, _i < N_SAMPLE_MAPS ? 3 : 1, 2.7e-3);
  test_random random = test_random_new ((uint64_t)_i);
  sample->map.labels.axis[0] = "Set 1, 3 open holes";
  sample->map.labels.axis[1] = "Set 2, 4 covered holes";
  if (_i >= N_SAMPLE_MAPS)
    {
      /* other languages need more room */
      sample->map.labels.axis[0] = "Satz 1, drei offene Bohrungen, jede zweite von sechs";
      sample->map.labels.equal = "Niedriggeschwindigkeitsdruckstufenkraft wie jetzt";
      sample->map.labels.shaded = "Abgestufte Helligkeit und Farbe: {what}";
      sample->map.labels.now = "so ist es jetzt";
    }
  for (double width = 260.0; width <= 2000.0; width *= 1.25)
    for (double height = 220.0; height <= 1500.0; height *= 1.27)
      {
        char what[80];
        const bool is_inch = test_random_int (&random, 0, 1) == 1;
        const dw_style_id style = (dw_style_id)test_random_int (&random, 0, DW_N_STYLES - 1);
        sample->map.length_factor = is_inch ? DW_INCH : DW_MM;
        sample->map.length_unit = is_inch ? "in" : "mm";
        sample->map.chosen = test_random_int (&random, -1, sample->map.n_dots - 1);
        snprintf (what, sizeof what, "%.0f x %.0f, map %d, %s", width, height, _i,
                  dw_style_name (style));
        dw_drill_map_layout *layout = lay_out (sample, style, width, height);
        assert_tidy (layout, what);
        dw_drill_map_layout_free (layout);
      }
  sample_map_free (sample);
}
END_TEST

/* Sets put together at random of pistons at random: also such that have too little land already, holes
 * of several sizes in a set, sets that are empty. */
START_TEST (any_piston_can_be_laid_out)
{
  test_random random = test_random_new ((uint64_t)_i);
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 5, 2.2e-3);
  dw_damper damper = sample_damper ();
  dw_drill_sets sets;
  dw_drill_dot dots[40];
  char what[40];
  static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  damper.piston.holes[0] = (dw_holes){ test_random_int (&random, 1, 14),
                                       test_random_uniform (&random, 0.4e-3, 2.2e-3), false };
  damper.piston.holes[1].diameter = test_random_uniform (&random, 0.6e-3, 2.0e-3);
  damper.piston.holes[2] = (dw_holes){ test_random_int (&random, 1, 3), 1.0e-3, false };
  damper.piston.n_holes = test_random_int (&random, 2, 3);
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  for (int i = 0; i < sets.face.n_holes; i++)
    sets.set_of[i] = test_random_int (&random, -1, _i % 3 == 0 ? 0 : 1);
  dw_drill_sets_update (&sets);
  if (dw_drilling_init (&sample->study, &sets, 25.0, speeds, NULL) == DW_OK
      && dw_drill_field_place (&sample->shade, &sets, NULL, 0))
    {
      for (int i = 0; i < 40; i++)
        dots[i] = (dw_drill_dot){
          test_random_uniform (&random, sample->shade.x_low, sample->shade.x_high),
          test_random_uniform (&random, sample->shade.y_low, fmax (sample->shade.y_high, 1e-6)),
          i % 3 == 0
        };
      sample->map.dots = dots;
      sample->map.n_dots = 40;
      sample->map.chosen = test_random_int (&random, 0, 39);
      sample->map.shade_measure = (dw_drill_measure)test_random_int (&random, 0, DW_N_MEASURES - 1);
      sample->map.contour_measure = (dw_drill_measure)test_random_int (&random, 0,
                                                                       DW_N_MEASURES - 1);
      sample->contour = sample->equal = sample->oil = sample->shade;
      sample_map_fill (sample);
      snprintf (what, sizeof what, "piston %d", _i);
      dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT,
                                             test_random_uniform (&random, 260.0, 900.0),
                                             test_random_uniform (&random, 220.0, 700.0));
      assert_tidy (layout, what);
      dw_drill_map_layout_free (layout);
    }
  sample_map_free (sample);
}
END_TEST

START_TEST (a_map_without_a_field_is_empty)
{
  dw_drill_map map = dw_drill_map_defaults ();
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect area = { 0.0, 0.0, 300.0, 200.0 };
  dw_drill_map_layout *layout = dw_drill_map_layout_new (&map, &style, &metrics, &area);
  double x;
  ck_assert (!layout->has_data);
  ck_assert_int_eq (dw_drill_map_layout_hit (layout, 100.0, 100.0, 50.0), -1);
  ck_assert_int_eq (dw_drill_map_layout_step (layout, 0, 1, 0), -1);
  dw_drill_map_layout_sizes (layout, 100.0, 100.0, &x, NULL);
  ck_assert (isnan (x));
  dw_drill_map_layout_mark (layout, &map);
  ck_assert_int_eq (layout->chosen, -1);
  dw_drill_map_layout_free (layout);
  dw_drill_map_layout_free (NULL);
}
END_TEST

static const dw_tick *
first_label (const dw_ticks *ticks)
{
  for (int i = 0; i < ticks->n; i++)
    if (ticks->ticks[i].is_major)
      return &ticks->ticks[i];
  return NULL;
}

START_TEST (inches_are_round_inches)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 4, 2.2e-3);
  sample->map.length_factor = DW_INCH;
  sample->map.length_unit = "inch";
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  const dw_ticks *const axes[] = { &layout->x_ticks, &layout->y_ticks };
  for (int a = 0; a < 2; a++)
    {
      const dw_tick *tick = first_label (axes[a]);
      const double shown = tick->value / DW_INCH;
      assert_close (g_ascii_strtod (tick->label, NULL), shown, 1e-9, 0.0, "as the label says");
      assert_close (shown * 1000.0, rint (shown * 1000.0), 0.0, 1e-6, "whole thousandths");
    }
  const dw_chart_label *caption = dw_chart_label_list_find (&layout->texts, DW_LABEL_AXIS);
  ck_assert_ptr_nonnull (strstr (caption->text, "in inch"));
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

START_TEST (numbers_have_the_users_comma)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 2.2e-3);
  int n = 0;
  g_strlcpy (sample->map.numbers.decimal, ",", sizeof sample->map.numbers.decimal);
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  ck_assert_ptr_nonnull (strchr (first_label (&layout->x_ticks)->label, ','));
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_chart_label *label = &layout->texts.labels[i];
      if (label->kind != DW_LABEL_LEVEL && label->kind != DW_LABEL_TONE)
        continue;
      ck_assert_ptr_null (strchr (label->text, '.'));
      n += strchr (label->text, ',') != NULL ? 1 : 0;
    }
  ck_assert (n > 3 || _i == SAMPLE_STRIP);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

START_TEST (a_strip_shows_the_measure_upwards)
{
  sample_map *sample = sample_map_new (SAMPLE_STRIP, 4, 2.2e-3);
  sample->map.chosen = sample_map_dot (sample, 1.5e-3, 0.0);
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 500.0, 400.0);
  const dw_drill_dot *dot = &sample->dots[sample->map.chosen];
  const dw_spot at = layout->dots.places[layout->chosen].at;
  ck_assert (layout->is_strip);
  ck_assert_int_eq (layout->lines.n_contours, 0);
  assert_close (dw_scale_value (&layout->x, at.x), dot->x, 1e-9, 0.0, "its size");
  assert_close (dw_scale_value (&layout->y, at.y), dw_drill_field_at (&sample->shade, dot->x, 0.0),
                1e-9, 0.0, "its value");
  ck_assert (dw_polyline_nearest (&layout->lines.curve.line, at, NULL) < 0.5);
  assert_close (layout->tolerance.x, at.x, 1e-9, 0.0, "an interval from the size on");
  assert_close (layout->tolerance.height, layout->plot.height, 1e-9, 0.0, "as high as the plot");
  const dw_tick *lowest = first_label (&layout->y_ticks);
  ck_assert_msg (g_str_has_prefix (lowest->label, "\u2212"), "%s has a sign", lowest->label);
  /* up and down lead nowhere; right and left along the curve */
  ck_assert_int_eq (dw_drill_map_layout_step (layout, sample->map.chosen, 0, 1), -1);
  const int next = dw_drill_map_layout_step (layout, sample->map.chosen, 1, 0);
  ck_assert_int_ge (next, 0);
  ck_assert (sample->dots[next].x > dot->x);
  ck_assert_int_eq (dw_drill_map_layout_step (layout, next, -1, 0), sample->map.chosen);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

/* ---- marks ---- */

START_TEST (the_tolerance_is_to_scale)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 4, 2.2e-3);
  sample->map.chosen = sample_map_dot (sample, 1.5e-3, 1.6e-3);
  sample->map.tolerance = 0.05e-3;
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  const dw_drill_dot *dot = &sample->dots[sample->map.chosen];
  const dw_rect *box = &layout->tolerance;
  assert_close (dw_scale_value (&layout->x, box->x), dot->x, 1e-9, 0.0, "from its size");
  assert_close (dw_scale_value (&layout->x, box->x + box->width), dot->x + 0.05e-3, 1e-9, 0.0,
                "to the largest");
  assert_close (dw_scale_value (&layout->y, box->y + box->height), dot->y, 1e-9, 0.0, "upwards");
  assert_close (dw_scale_value (&layout->y, box->y), dot->y + 0.05e-3, 1e-9, 0.0, "as well");

  /* what is left as it is has no tolerance */
  sample->map.chosen = sample_map_dot (sample, 1.3e-3, 1.6e-3);
  dw_drill_map_layout_mark (layout, &sample->map);
  ck_assert (layout->tolerance.width == 0.0 && layout->tolerance.height > 1.0);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

START_TEST (marking_is_as_laying_out_anew)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 2.2e-3);
  dw_drill_map_layout *marked = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  ck_assert_int_eq (marked->chosen, -1);
  ck_assert (dw_spot_is_gap (marked->chosen_tone));
  sample->map.chosen = 3;
  sample->map.pointed = 5;
  dw_drill_map_layout_mark (marked, &sample->map);
  dw_drill_map_layout *anew = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  ck_assert_int_eq (marked->chosen, anew->chosen);
  ck_assert_int_eq (marked->pointed, anew->pointed);
  ck_assert (marked->tolerance.x == anew->tolerance.x
             && marked->tolerance.width == anew->tolerance.width
             && marked->tolerance.height == anew->tolerance.height);
  ck_assert (memcmp (&marked->chosen_tone, &anew->chosen_tone, sizeof (dw_spot)) == 0
             || dw_spot_is_gap (anew->chosen_tone));
  ck_assert_int_eq (dw_spot_is_gap (anew->chosen_tone), _i == SAMPLE_STRIP);
  sample->map.chosen = 100000;
  dw_drill_map_layout_mark (marked, &sample->map);
  ck_assert_int_eq (marked->chosen, -1);
  dw_drill_map_layout_free (marked);
  dw_drill_map_layout_free (anew);
  sample_map_free (sample);
}
END_TEST

/* ---- questions ---- */

START_TEST (hits_and_steps_are_those_of_the_dots)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 4, 2.2e-3);
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  const int dot = sample_map_dot (sample, 1.6e-3, 1.6e-3);
  const dw_spot at = layout->dots.places[dot].at;
  ck_assert_int_eq (dw_drill_map_layout_hit (layout, at.x + 1.0, at.y, 6.0), dot);
  const int right = dw_drill_map_layout_step (layout, dot, 1, 0);
  const int up = dw_drill_map_layout_step (layout, dot, 0, 1);
  ck_assert (sample->dots[right].x > sample->dots[dot].x);
  ck_assert (sample->dots[right].y == sample->dots[dot].y);
  ck_assert (sample->dots[up].y > sample->dots[dot].y);
  ck_assert (sample->dots[up].x == sample->dots[dot].x);
  ck_assert_int_eq (dw_drill_map_layout_step (layout, up, 0, -1), dot);

  /* without a dot from what is now */
  const int first = dw_drill_map_layout_step (layout, -1, 1, 0);
  ck_assert (sample->dots[first].x > sample->study.sets.present[0]);
  ck_assert (sample->dots[first].y == sample->study.sets.present[1]);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

START_TEST (a_place_has_its_sizes)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 4, 2.2e-3);
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_LIGHT, 700.0, 500.0);
  const dw_spot at = layout->dots.places[7].at;
  double x;
  double y;
  dw_drill_map_layout_sizes (layout, at.x, at.y, &x, &y);
  assert_close (x, sample->dots[7].x, 1e-9, 0.0, "of set 1");
  assert_close (y, sample->dots[7].y, 1e-9, 0.0, "of set 2");
  dw_drill_map_layout_sizes (layout, layout->plot.x - 1.0, at.y, &x, &y);
  ck_assert (isnan (x) && isnan (y));
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

START_TEST (lines_and_dots_lie_in_the_plot)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 2, 2.7e-3);
  dw_drill_map_layout *layout = lay_out (sample, DW_STYLE_SUN, 640.0, 480.0);
  const dw_rect plot = dw_rect_inset (&layout->plot, -0.01);
  const dw_drill_lines *lines = &layout->lines;
  for (int i = 0; i < lines->n_contours; i++)
    for (size_t s = 0; s < lines->contour[i].line.n; s++)
      ck_assert (dw_spot_is_gap (lines->contour[i].line.spots[s])
                 || dw_rect_holds (&plot, lines->contour[i].line.spots[s].x,
                                   lines->contour[i].line.spots[s].y));
  for (size_t s = 0; s < lines->curve.line.n; s++)
    ck_assert (
        dw_spot_is_gap (lines->curve.line.spots[s])
        || dw_rect_holds (&plot, lines->curve.line.spots[s].x, lines->curve.line.spots[s].y));
  for (int i = 0; i < layout->dots.n; i++)
    ck_assert (layout->dots.places[i].is_shown);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map-layout");
  TCase *tcase = tcase_create ("drill-map-layout");
  tcase_set_timeout (tcase, 60.0);
  tcase_add_loop_test (tcase, nothing_overlaps_at_any_size, 0, 2 * N_SAMPLE_MAPS);
  tcase_add_loop_test (tcase, any_piston_can_be_laid_out, 0, 60);
  tcase_add_test (tcase, a_map_without_a_field_is_empty);
  tcase_add_test (tcase, inches_are_round_inches);
  tcase_add_loop_test (tcase, numbers_have_the_users_comma, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, a_strip_shows_the_measure_upwards);
  tcase_add_test (tcase, the_tolerance_is_to_scale);
  tcase_add_loop_test (tcase, marking_is_as_laying_out_anew, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, hits_and_steps_are_those_of_the_dots);
  tcase_add_test (tcase, a_place_has_its_sizes);
  tcase_add_loop_test (tcase, lines_and_dots_lie_in_the_plot, 0, N_SAMPLE_MAPS);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
