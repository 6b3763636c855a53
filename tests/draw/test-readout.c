/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-readout.h"

static dw_chart_style style;
static dw_chart chart;
static dw_chart_layout *layout;
static dw_chart_label_list list;

static void
set_up (int n, double width, double height)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  chart = sample_chart (n, false);
  chart.legend = DW_LEGEND_TABLE;
  chart.labels.title = "Front";
  layout = sample_layout (&chart, width, height);
}

static void
tear_down (void)
{
  dw_chart_label_list_clear (&list);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}

static void
read_at (double speed)
{
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_chart_reading reading = dw_chart_read (&chart, layout, speed);
  dw_readout_make (&chart, layout, &reading, &metrics, &list);
}

/* The text of a kind that ends at a column's right edge, in the n-th row from above. */
static const char *
text_at (int column, int row)
{
  const double right = layout->readout.columns[column].right;
  const double y = layout->legend.entries[row].text_at.y;
  for (int i = 0; i < list.n; i++)
    {
      const dw_rect *box = &list.labels[i].box;
      if (fabs (box->x + box->width - right) < 0.01 && fabs (list.labels[i].at.y - y) < 0.01)
        return list.labels[i].text;
    }
  return "";
}

START_TEST (figures_are_those_of_the_reading)
{
  char expected[40];
  set_up (3, 700.0, 400.0);
  ck_assert_int_eq (layout->readout.n, 5);
  read_at (0.8);
  const dw_chart_reading r = dw_chart_read (&chart, layout, 0.8);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < 2; i++)
      {
        dw_number_steady (&chart.numbers, r.values[i][s].force, 3, expected, sizeof expected);
        ck_assert_str_eq (text_at (2 * s, i), expected);
      }
  ck_assert_str_eq (text_at (1, 0), "");
  snprintf (expected, sizeof expected, "+%.1f\u2009%%", r.values[1][DW_COMPRESSION].change_percent);
  ck_assert_str_eq (text_at (1, 1), expected);
  snprintf (expected, sizeof expected, "+%.0f\u2009%%", r.values[2][DW_COMPRESSION].change_percent);
  ck_assert_uint_eq (strlen (expected), strlen ("+16\u2009%"));
  ck_assert_str_eq (text_at (1, 2), expected);
  ck_assert (r.values[0][DW_COMPRESSION].is_void);
  dw_number_steady (&chart.numbers, r.values[0][DW_COMPRESSION].lost_travel / 1e-3, 2, expected,
                    sizeof expected);
  ck_assert_str_eq (text_at (4, 0), expected);
  tear_down ();
}
END_TEST

START_TEST (damping_is_shown_where_the_chart_shows_it)
{
  char expected[40];
  set_up (1, 700.0, 400.0);
  chart.quantity = DW_SHOW_DAMPING;
  read_at (0.1);
  const dw_chart_reading r = dw_chart_read (&chart, layout, 0.1);
  dw_number_steady (&chart.numbers, r.values[0][DW_REBOUND].c, 3, expected, sizeof expected);
  ck_assert_str_eq (text_at (1, 0), expected);
  tear_down ();
}
END_TEST

START_TEST (the_speed_stands_under_the_line)
{
  set_up (1, 700.0, 400.0);
  read_at (0.5);
  const dw_chart_label *speed = dw_chart_label_list_find (&list, DW_LABEL_READING_SPEED);
  ck_assert_ptr_nonnull (speed);
  ck_assert_str_eq (speed->text, "0.500\u00a0m/s");
  assert_close (speed->box.x + 0.5 * speed->box.width, dw_chart_layout_x (layout, 0.5), 0.0, 1e-6,
                "centred under the line");
  ck_assert (speed->box.y >= layout->frame.plot.y + layout->frame.plot.height);
  const dw_rect box = dw_readout_speed_box (&list);
  ck_assert (dw_rect_holds_rect (&box, &speed->box));
  tear_down ();
}
END_TEST

/* Any size, any number of setups, any speed: every text lies in what is painted again. */
START_TEST (texts_stay_in_their_boxes_and_apart)
{
  for (double width = 200.0; width < 1500.0; width *= 1.3)
    for (double height = 150.0; height < 1000.0; height *= 1.5)
      for (int v = 0; v <= 4; v++)
        {
          set_up (_i, width, height);
          read_at (0.25 * v);
          const dw_rect table = dw_readout_table_box (layout);
          const dw_rect speed = dw_readout_speed_box (&list);
          const dw_rect roomy = { table.x - 0.1, table.y - 0.1, table.width + 0.2,
                                  table.height + 0.2 };
          for (int i = 0; i < list.n; i++)
            {
              const dw_chart_label *label = &list.labels[i];
              ck_assert (dw_rect_holds_rect (
                  label->kind == DW_LABEL_READING_SPEED ? &speed : &roomy, &label->box));
              ck_assert (dw_rect_holds_rect (&layout->area, &label->box));
              for (int k = 0; k < i; k++)
                ck_assert (!dw_rect_overlaps (&label->box, &list.labels[k].box));
              /* something of every name is left */
              for (int k = 0; k < layout->legend.n && label->kind == DW_LABEL_READING; k++)
                ck_assert (label->box.x > layout->legend.entries[k].text_at.x + 15.0);
              if (label->kind != DW_LABEL_READING_SPEED)
                ck_assert (!dw_chart_label_list_meets (&layout->texts, &label->box));
            }
          tear_down ();
        }
}
END_TEST

START_TEST (outside_the_plot_nothing_is_said)
{
  set_up (2, 700.0, 400.0);
  read_at (7.0);
  ck_assert_int_eq (list.n, 0);
  ck_assert (dw_readout_speed_box (&list).width == 0.0);
  tear_down ();
}
END_TEST

START_TEST (what_is_painted_lies_in_the_boxes)
{
  set_up (2, 700.0, 400.0);
  style.font_family = "DejaVu Sans";
  read_at (0.5);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;
  dw_readout_paint (&list, layout, &style, cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  const dw_rect speed = dw_readout_speed_box (&list);
  assert_close (y + height, speed.y + speed.height, 0.0, 1.5, "the plate is the lowest");
  ck_assert (y >= layout->readout.top - 2.0 && y < layout->readout.top + 12.0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  tear_down ();
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/readout");
  TCase *tcase = tcase_create ("readout");
  tcase_add_test (tcase, figures_are_those_of_the_reading);
  tcase_add_test (tcase, damping_is_shown_where_the_chart_shows_it);
  tcase_add_test (tcase, the_speed_stands_under_the_line);
  tcase_add_loop_test (tcase, texts_stay_in_their_boxes_and_apart, 1, 5);
  tcase_add_test (tcase, outside_the_plot_nothing_is_said);
  tcase_add_test (tcase, what_is_painted_lies_in_the_boxes);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
