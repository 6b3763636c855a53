/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdlib.h>

#include "draw/dw-pen.h"
#include "test-support.h"

static const dw_color black = { 0.0, 0.0, 0.0, 1.0 };
static const dw_color white = { 1.0, 1.0, 1.0, 1.0 };

enum
{
  SIZE = 100
};

typedef struct
{
  cairo_surface_t *surface;
  cairo_t *cr;
} sheet;

static sheet
new_sheet (void)
{
  sheet s = { cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE), NULL };
  s.cr = cairo_create (s.surface);
  dw_pen_fill_rect (s.cr, &(dw_rect){ 0.0, 0.0, SIZE, SIZE }, white);
  return s;
}

static void
end_sheet (sheet *s)
{
  cairo_destroy (s->cr);
  cairo_surface_destroy (s->surface);
}

/* Part of the sheet that is dark, in a column or all of it when @p x < 0. */
static double
darkness (const sheet *s, int x)
{
  cairo_surface_flush (s->surface);
  const unsigned char *data = cairo_image_surface_get_data (s->surface);
  const int stride = cairo_image_surface_get_stride (s->surface);
  double sum = 0.0;
  int n = 0;
  for (int row = 0; row < SIZE; row++)
    for (int column = 0; column < SIZE; column++)
      if (x < 0 || column == x)
        {
          sum += 1.0 - data[row * stride + 4 * column] / 255.0;
          n++;
        }
  return sum / n;
}

START_TEST (a_gap_is_not_painted)
{
  sheet s = new_sheet ();
  dw_polyline line = { 0 };
  const dw_line_style style = { .color = black, .width = 2.0 };
  dw_polyline_add (&line, 0.0, 50.0);
  dw_polyline_add (&line, 40.0, 50.0);
  dw_polyline_add_gap (&line);
  dw_polyline_add (&line, 60.0, 50.0);
  dw_polyline_add (&line, 100.0, 50.0);
  dw_pen_stroke (s.cr, &line, &style);
  assert_close (darkness (&s, 20), 0.02, 0.0, 0.002, "two points of a hundred");
  ck_assert (darkness (&s, 50) == 0.0);
  assert_close (darkness (&s, 80), 0.02, 0.0, 0.002, "after the gap");
  dw_polyline_clear (&line);
  end_sheet (&s);
}
END_TEST

START_TEST (past_the_onset_there_is_less_ink)
{
  dw_polyline line = { 0 };
  const dw_line_style style = { .color = black, .width = 3.0 };
  sheet before = new_sheet ();
  sheet past = new_sheet ();
  dw_polyline_add (&line, 0.0, 50.0);
  dw_polyline_add (&line, 100.0, 50.0);
  dw_pen_stroke (before.cr, &line, &style);
  dw_pen_stroke_past (past.cr, &line, &style, 0.6);
  ck_assert (darkness (&past, -1) > 0.002);
  ck_assert (darkness (&past, -1) < 0.5 * darkness (&before, -1));
  dw_polyline_clear (&line);
  end_sheet (&before);
  end_sheet (&past);
}
END_TEST

START_TEST (dashes_are_those_of_the_style)
{
  sheet s = new_sheet ();
  dw_polyline line = { 0 };
  const dw_line_style style = { .color = black, .width = 4.0, .dash = { 10.0, 10.0 }, .n_dash = 2 };
  dw_polyline_add (&line, 0.0, 50.0);
  dw_polyline_add (&line, 100.0, 50.0);
  dw_pen_stroke (s.cr, &line, &style);
  ck_assert (darkness (&s, 5) > 0.03 && darkness (&s, 15) == 0.0 && darkness (&s, 25) > 0.03);
  dw_polyline_clear (&line);
  end_sheet (&s);
}
END_TEST

/* Sizes are chosen so that no marker looks more important than another. */
START_TEST (markers_have_about_the_same_area)
{
  double area[5];
  for (int i = 0; i < 5; i++)
    {
      sheet s = new_sheet ();
      dw_pen_marker (s.cr, (dw_marker)i, (dw_spot){ 50.0, 50.0 }, 20.0, black, white);
      area[i] = darkness (&s, -1) * SIZE * SIZE / (3.14159 * 400.0);
      end_sheet (&s);
    }
  for (int i = 0; i < 5; i++)
    ck_assert_msg (area[i] > 0.6 && area[i] < 1.15, "marker %d has %.2f of a disc", i, area[i]);
}
END_TEST

START_TEST (the_open_mark_is_open)
{
  sheet s = new_sheet ();
  dw_pen_fill_rect (s.cr, &(dw_rect){ 0.0, 0.0, SIZE, SIZE }, black);
  dw_pen_open_mark (s.cr, (dw_spot){ 50.0, 50.0 }, 20.0, 2.0, black, white);
  assert_close (darkness (&s, -1), 1.0 - 3.14159 * 19.0 * 19.0 / (SIZE * SIZE), 0.0, 0.01,
                "white inside");
  end_sheet (&s);
}
END_TEST

START_TEST (areas_between_lines_are_filled_piece_by_piece)
{
  sheet s = new_sheet ();
  dw_polyline upper = { 0 };
  dw_polyline lower = { 0 };
  for (int i = 0; i < 2; i++)
    {
      dw_polyline_add (&upper, 60.0 * i, 20.0);
      dw_polyline_add (&upper, 60.0 * i + 40.0, 20.0);
      dw_polyline_add_gap (&upper);
      dw_polyline_add (&lower, 60.0 * i, 70.0);
      dw_polyline_add (&lower, 60.0 * i + 40.0, 70.0);
      dw_polyline_add_gap (&lower);
    }
  dw_pen_add_between (s.cr, &upper, &lower, 0.0);
  dw_pen_color (s.cr, black);
  cairo_fill (s.cr);
  assert_close (darkness (&s, 20), 0.5, 0.0, 0.01, "20 to 70 of 100");
  ck_assert (darkness (&s, 50) == 0.0);
  assert_close (darkness (&s, 80), 0.5, 0.0, 0.01, "the second piece");
  dw_pen_add_between (s.cr, &upper, NULL, 90.0);
  cairo_fill (s.cr);
  assert_close (darkness (&s, 20), 0.7, 0.0, 0.01, "down to 90");
  dw_polyline_clear (&upper);
  dw_polyline_clear (&lower);
  end_sheet (&s);
}
END_TEST

START_TEST (each_part_of_the_flow_has_its_pattern)
{
  double dark[DW_N_SHARES];
  for (int i = 0; i < DW_N_SHARES; i++)
    {
      sheet s = new_sheet ();
      const dw_rect box = { 10.0, 10.0, 80.0, 80.0 };
      cairo_rectangle (s.cr, box.x, box.y, box.width, box.height);
      dw_pen_fill_pattern (s.cr, &box, white, dw_pen_share_pattern (i), black, 8.0);
      dark[i] = darkness (&s, -1);
      ck_assert (darkness (&s, 5) == 0.0);
      for (int k = 0; k < i; k++)
        ck_assert (dw_pen_share_pattern (i) != dw_pen_share_pattern (k));
      end_sheet (&s);
    }
  ck_assert (dark[DW_SHARE_OPEN] > 0.02 && dark[DW_SHARE_COVERED] > 0.02);
  ck_assert (dark[DW_SHARE_LEAK] == 0.0);
}
END_TEST

START_TEST (a_straight_line_goes_from_end_to_end)
{
  sheet s = new_sheet ();
  dw_pen_line (s.cr, (dw_spot){ 30.0, 50.0 }, (dw_spot){ 70.0, 50.0 }, black, 2.0);
  ck_assert (darkness (&s, 29) == 0.0 && darkness (&s, 71) == 0.0);
  assert_close (darkness (&s, 50), 0.02, 0.0, 0.002, "its width");
  end_sheet (&s);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/pen");
  TCase *tcase = tcase_create ("pen");
  tcase_add_test (tcase, a_gap_is_not_painted);
  tcase_add_test (tcase, past_the_onset_there_is_less_ink);
  tcase_add_test (tcase, dashes_are_those_of_the_style);
  tcase_add_test (tcase, markers_have_about_the_same_area);
  tcase_add_test (tcase, the_open_mark_is_open);
  tcase_add_test (tcase, areas_between_lines_are_filled_piece_by_piece);
  tcase_add_test (tcase, each_part_of_the_flow_has_its_pattern);
  tcase_add_test (tcase, a_straight_line_goes_from_end_to_end);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
