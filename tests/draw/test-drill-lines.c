/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-lines.h"

#include <math.h>

#include "draw-samples.h"

static const dw_scale across = { false, 1.0e-3, 2.0e-3, 50.0, 450.0 };
static const dw_scale up = { false, 1.0e-3, 2.0e-3, 360.0, 20.0 };

/* Known functions of sizes in millimetres, as percents. */
static double
plane (double x, double y)
{
  return 40.0 * (x - 1.3) - 100.0 * (y - 1.3);
}

static double
bowl (double x, double y)
{
  return 200.0 * ((x - 1.5) * (x - 1.5) + (y - 1.5) * (y - 1.5)) - 50.0;
}

static const struct
{
  double (*f) (double x, double y);
  double within; /* [%] */
  const char *why;
} shapes[] = { { plane, 0.1, "straight lines, but for spots that are left out" },
               { bowl, 0.35, "circles through chords of a sixtieth" } };

static double
value_at (int shape, dw_spot spot)
{
  return shapes[shape].f (1e3 * dw_scale_value (&across, spot.x),
                          1e3 * dw_scale_value (&up, spot.y));
}

static void
fill_shape (dw_drill_field *field, int shape)
{
  *field = (dw_drill_field){
    .n_x = 61, .n_y = 61, .x_low = 1e-3, .x_high = 2e-3, .y_low = 1e-3, .y_high = 2e-3
  };
  for (int k = 0; k < 61; k++)
    for (int i = 0; i < 61; i++)
      field->value[k * 61 + i] = shapes[shape].f (1.0 + i / 60.0, 1.0 + k / 60.0);
}

/* A sample map whose fields are a known function. */
static sample_map *
known_map (int shape)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 8, 2e-3);
  fill_shape (&sample->shade, shape);
  sample->contour = sample->shade;
  sample->equal = sample->shade;
  sample->map.contour_measure = DW_MEASURE_REBOUND_LOW;
  return sample;
}

START_TEST (lines_lie_where_the_measure_has_their_value)
{
  sample_map *sample = known_map (_i);
  dw_drill_lines lines = { .n_contours = 0 };
  dw_drill_lines_make (&sample->map, &across, &up, 10, &lines);
  dw_drill_lines_move (&lines, &across, &up);
  ck_assert_int_ge (lines.n_contours, 4);
  for (int i = 0; i < lines.n_contours; i++)
    for (size_t s = 0; s < lines.contour[i].line.n; s++)
      if (!dw_spot_is_gap (lines.contour[i].line.spots[s]))
        assert_close (value_at (_i, lines.contour[i].line.spots[s]), lines.contour[i].value, 0.0,
                      shapes[_i].within, shapes[_i].why);
  ck_assert_uint_gt (lines.equal.line.n, 1);
  for (size_t s = 0; s < lines.equal.line.n; s++)
    if (!dw_spot_is_gap (lines.equal.line.spots[s]))
      assert_close (value_at (_i, lines.equal.line.spots[s]), 0.0, 0.0, shapes[_i].within,
                    "no change");
  dw_drill_lines_clear (&lines);
  sample_map_free (sample);
}
END_TEST

/* Every spot of the plot has the tone of its value: inside all outlines up to it, outside the rest. */
START_TEST (tones_cover_what_is_not_below_their_level)
{
  sample_map *sample = known_map (_i);
  test_random random = test_random_new ((uint64_t)_i);
  dw_drill_lines lines = { .n_contours = 0 };
  dw_drill_lines_make (&sample->map, &across, &up, 10, &lines);
  dw_drill_lines_move (&lines, &across, &up);
  ck_assert_int_ge (lines.shade.n, 3);
  ck_assert_int_eq (dw_drill_lines_n_tones (&lines), lines.shade.n + 1);
  for (int n = 0; n < 3000; n++)
    {
      const dw_spot spot = { test_random_uniform (&random, 50.5, 449.5),
                             test_random_uniform (&random, 20.5, 359.5) };
      const double value = value_at (_i, spot);
      ck_assert (dw_polyline_holds (&lines.tone[0], spot));
      for (int i = 0; i < lines.shade.n; i++)
        if (fabs (value - lines.shade.value[i]) > 2.0 * shapes[_i].within)
          ck_assert_msg (dw_polyline_holds (&lines.tone[i + 1], spot)
                             == (value > lines.shade.value[i]),
                         "%g at level %g", value, lines.shade.value[i]);
    }
  dw_drill_lines_clear (&lines);
  sample_map_free (sample);
}
END_TEST

START_TEST (what_is_not_known_has_no_tone)
{
  sample_map *sample = known_map (0);
  dw_drill_lines lines = { .n_contours = 0 };
  for (int k = 40; k < 61; k++)
    for (int i = 0; i < 61; i++)
      sample->shade.value[k * 61 + i] = (double)NAN;
  dw_drill_lines_make (&sample->map, &across, &up, 10, &lines);
  ck_assert (dw_polyline_holds (&lines.tone[0], (dw_spot){ 200.0, 300.0 }));
  const dw_spot unknown = { 200.0, 40.0 };
  for (int i = 0; i < dw_drill_lines_n_tones (&lines); i++)
    ck_assert (!dw_polyline_holds (&lines.tone[i], unknown));
  dw_drill_lines_clear (&lines);
  sample_map_free (sample);
}
END_TEST

START_TEST (shares_go_from_end_to_end)
{
  dw_drill_lines lines = { .shade = { .n = 4 } };
  for (int i = 0; i <= 4; i++)
    assert_close (dw_drill_lines_share (&lines, i), i / 4.0, 1e-12, 0.0, "even");
  lines.shade.n = 0;
  ck_assert (dw_drill_lines_share (&lines, 0) == 0.0);
}
END_TEST

/* What cannot be drilled does not stretch the tones. */
START_TEST (the_range_is_that_of_open_sizes)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 2.0e-3);
  double low;
  double high;
  dw_drill_lines_range (&sample->map, &sample->shade, &low, &high);
  ck_assert_msg (high < 12.0 && high > -6.0, "%g", high);
  ck_assert_msg (low < -60.0 && low > -100.0, "%g", low);
  const double larger = sample->shade.value[0];
  ck_assert (larger > 60.0);

  for (int i = 0; i < DW_DRILL_FIELD_MOST * DW_DRILL_FIELD_MOST; i++)
    sample->shade.value[i] = (double)NAN;
  dw_drill_lines_range (&sample->map, &sample->shade, &low, &high);
  ck_assert (isnan (low) && isnan (high));
  sample_map_free (sample);
}
END_TEST

START_TEST (oils_are_lines_with_their_names)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 2.0e-3);
  const bool is_strip = _i == SAMPLE_STRIP;
  const dw_drill_field *f = &sample->shade;
  const dw_scale x = { false, f->x_low, f->x_high, 50.0, 450.0 };
  const dw_scale y = { false, is_strip ? -100.0 : f->y_low, is_strip ? 20.0 : f->y_high, 360.0,
                       20.0 };
  dw_drill_lines lines = { .n_contours = 0 };
  sample->oils[3] = 90000e-6; /* nowhere on the map */
  dw_drill_lines_make (&sample->map, &x, &y, 10, &lines);
  ck_assert_int_eq (lines.n_oils, 3);
  ck_assert_str_eq (lines.oil[1].text, "500\u2009cSt");
  for (int i = 0; i < lines.n_oils; i++)
    for (size_t s = 0; s < lines.oil[i].line.n; s++)
      {
        const dw_spot spot = lines.oil[i].line.spots[s];
        if (dw_spot_is_gap (spot))
          continue;
        const double up_there = is_strip ? 0.0 : dw_scale_value (&y, spot.y);
        assert_close (dw_drill_field_at (&sample->oil, dw_scale_value (&x, spot.x), up_there),
                      lines.oil[i].value, 0.01, 0.0, "on the field of oils");
      }
  ck_assert_int_eq (lines.curve.line.n > 0, is_strip);
  ck_assert_int_eq (lines.n_contours > 0, !is_strip);
  dw_drill_lines_clear (&lines);
  sample_map_free (sample);
}
END_TEST

START_TEST (lines_move_with_the_plot)
{
  sample_map *sample = known_map (1);
  dw_drill_lines lines = { .n_contours = 0 };
  const dw_scale x = { false, 1.0e-3, 2.0e-3, 0.0, 800.0 };
  dw_drill_lines_make (&sample->map, &across, &up, 10, &lines);
  const dw_spot before = lines.contour[2].line.spots[0];
  dw_drill_lines_move (&lines, &x, &up);
  const dw_spot after = lines.contour[2].line.spots[0];
  assert_close (after.x, 2.0 * (before.x - 50.0), 1e-9, 1e-9, "twice as wide");
  assert_close (after.y, before.y, 1e-9, 0.0, "as high");
  dw_drill_lines_clear (&lines);
  sample_map_free (sample);
}
END_TEST

START_TEST (the_curve_of_a_strip_is_cut)
{
  dw_drill_lines lines = { .n_contours = 0 };
  const dw_rect plot = { 0.0, 0.0, 100.0, 100.0 };
  dw_polyline_add (&lines.curve.line, -50.0, 150.0);
  dw_polyline_add (&lines.curve.line, 150.0, -50.0);
  dw_drill_lines_clip (&lines, &plot);
  ck_assert_uint_eq (lines.curve.line.n, 2);
  assert_close (lines.curve.line.spots[0].x, 0.0, 0.0, 1e-9, "at the border");
  assert_close (lines.curve.line.spots[1].y, 0.0, 0.0, 1e-9, "and the other");
  dw_drill_lines_clear (&lines);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-lines");
  TCase *tcase = tcase_create ("drill-lines");
  tcase_add_loop_test (tcase, lines_lie_where_the_measure_has_their_value, 0, N_ENTRIES (shapes));
  tcase_add_loop_test (tcase, tones_cover_what_is_not_below_their_level, 0, N_ENTRIES (shapes));
  tcase_add_test (tcase, what_is_not_known_has_no_tone);
  tcase_add_test (tcase, shares_go_from_end_to_end);
  tcase_add_loop_test (tcase, the_range_is_that_of_open_sizes, 0, N_SAMPLE_MAPS);
  tcase_add_loop_test (tcase, oils_are_lines_with_their_names, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, lines_move_with_the_plot);
  tcase_add_test (tcase, the_curve_of_a_strip_is_cut);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
