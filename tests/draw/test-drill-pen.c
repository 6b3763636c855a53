/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-pen.h"

#include <glib.h>

#include "test-support.h"

enum
{
  SIZE = 60
};

typedef struct
{
  cairo_surface_t *surface;
  cairo_t *cr;
} sheet;

static sheet
open_sheet (const dw_chart_style *style)
{
  sheet s = { .surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE) };
  s.cr = cairo_create (s.surface);
  dw_pen_fill_rect (s.cr, &(dw_rect){ 0.0, 0.0, SIZE, SIZE }, style->plot);
  return s;
}

/* Pixels of a box that differ clearly from the plot. */
static int
marked (sheet *s, const dw_chart_style *style, const dw_rect *box)
{
  int n = 0;
  cairo_surface_flush (s->surface);
  const unsigned char *data = cairo_image_surface_get_data (s->surface);
  const int stride = cairo_image_surface_get_stride (s->surface);
  for (int y = (int)box->y; y < (int)(box->y + box->height); y++)
    for (int x = (int)box->x; x < (int)(box->x + box->width); x++)
      n += ABS (data[y * stride + 4 * x + 1] - (int)(255.0 * style->plot.green)) > 20 ? 1 : 0;
  return n;
}

static void
close_sheet (sheet *s)
{
  ck_assert_int_eq (cairo_status (s->cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (s->cr);
  cairo_surface_destroy (s->surface);
}

static const dw_rect box = { 10.0, 10.0, 40.0, 40.0 };
static const dw_rect above = { 0.0, 0.0, SIZE, 9.0 };
static const dw_rect below = { 0.0, 51.0, SIZE, 9.0 };

/* Told apart without colour: by width or dash. */
START_TEST (lines_differ_without_colour)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)_i);
  const dw_line_style contour = dw_drill_pen_contour (&style);
  const dw_line_style oil = dw_drill_pen_oil (&style);
  const dw_line_style equal = dw_drill_pen_equal (&style);
  ck_assert_int_eq (contour.n_dash, 0);
  ck_assert_int_gt (oil.n_dash, 0);
  ck_assert_int_eq (equal.n_dash, 0);
  ck_assert (equal.width > 2.0 * contour.width);
  ck_assert (dw_drill_pen_land (&style).width > 1.3 * contour.width);
}
END_TEST

START_TEST (patterns_stay_in_their_box)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)_i);
  int ink[2];
  for (int pattern = 0; pattern < 2; pattern++)
    {
      sheet s = open_sheet (&style);
      if (pattern == 0)
        dw_drill_pen_hatch (s.cr, &box, &style);
      else
        dw_drill_pen_speckles (s.cr, &box, NULL, &style);
      ink[pattern] = marked (&s, &style, &box);
      ck_assert_int_eq (marked (&s, &style, &above) + marked (&s, &style, &below), 0);
      close_sheet (&s);
    }
  /* what is below stays to be seen, and the two are not taken for each other */
  ck_assert_int_gt (ink[0], 60);
  ck_assert_int_gt (ink[1], 15);
  ck_assert_int_lt (ink[0], 800);
  ck_assert_int_lt (ink[1], 800);
}
END_TEST

START_TEST (speckles_keep_to_an_outline)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_polyline outline = { 0 };
  dw_polyline_add (&outline, 10.0, 10.0);
  dw_polyline_add (&outline, 50.0, 10.0);
  dw_polyline_add (&outline, 50.0, 30.0);
  dw_polyline_add (&outline, 10.0, 30.0);
  sheet s = open_sheet (&style);
  dw_drill_pen_speckles (s.cr, &box, &outline, &style);
  ck_assert_int_gt (marked (&s, &style, &(dw_rect){ 10.0, 10.0, 40.0, 20.0 }), 8);
  ck_assert_int_eq (marked (&s, &style, &(dw_rect){ 10.0, 32.0, 40.0, 28.0 }), 0);
  close_sheet (&s);
  dw_polyline_clear (&outline);
}
END_TEST

/* Each mark leaves its own shape: amounts of ink differ, small ones are smaller. */
START_TEST (marks_differ_by_shape_and_size)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)_i);
  const dw_rect all = { 0.0, 0.0, SIZE, SIZE };
  for (int m = 0; m < DW_N_DRILL_MARKS; m++)
    {
      int ink[2];
      for (int small = 0; small < 2; small++)
        {
          sheet s = open_sheet (&style);
          dw_drill_pen_mark (s.cr, (dw_drill_mark)m, (dw_spot){ 30.0, 30.0 }, small == 1, &style);
          ink[small] = marked (&s, &style, &all);
          /* a ring leaves the dot inside it to be seen */
          const dw_rect middle = { 29.0, 29.0, 2.0, 2.0 };
          ck_assert_int_eq (marked (&s, &style, &middle) == 0, m == DW_DRILL_MARK_POINTED);
          close_sheet (&s);
        }
      ck_assert_int_gt (ink[0], ink[1]);
      ck_assert_int_gt (ink[1], 10);
    }
}
END_TEST

START_TEST (every_sample_is_painted_in_its_box)
{
  const dw_chart_style style = dw_chart_style_make ((dw_style_id)(_i % DW_N_STYLES));
  const dw_drill_sample sample = { (dw_drill_key)(_i / DW_N_STYLES), { 15.0, 22.0, 28.0, 16.0 } };
  sheet s = open_sheet (&style);
  dw_drill_pen_sample (s.cr, &sample, &style);
  ck_assert_int_gt (marked (&s, &style, &sample.box), 10);
  ck_assert_int_eq (marked (&s, &style, &(dw_rect){ 0.0, 0.0, SIZE, 17.0 }), 0);
  ck_assert_int_eq (marked (&s, &style, &(dw_rect){ 0.0, 43.0, SIZE, 17.0 }), 0);
  close_sheet (&s);
}
END_TEST

START_TEST (a_tolerance_may_have_no_extent)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  sheet s = open_sheet (&style);
  dw_drill_pen_tolerance (s.cr, &(dw_rect){ 30.0, 20.0, 0.0, 15.0 }, false, &style);
  ck_assert_int_gt (marked (&s, &style, &box), 5);
  dw_drill_pen_tolerance (s.cr, &(dw_rect){ 15.0, 0.0, 8.0, 60.0 }, true, &style);
  close_sheet (&s);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-pen");
  TCase *tcase = tcase_create ("drill-pen");
  tcase_add_loop_test (tcase, lines_differ_without_colour, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, patterns_stay_in_their_box, 0, DW_N_STYLES);
  tcase_add_test (tcase, speckles_keep_to_an_outline);
  tcase_add_loop_test (tcase, marks_differ_by_shape_and_size, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, every_sample_is_painted_in_its_box, 0, DW_N_KEYS * DW_N_STYLES);
  tcase_add_test (tcase, a_tolerance_may_have_no_extent);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
