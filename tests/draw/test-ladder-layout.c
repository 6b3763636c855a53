/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-layout.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-samples.h"

static dw_ladder_layout *
make (const sample_ladder *s, dw_style_id id, double width)
{
  const dw_chart_style style = dw_chart_style_make (id);
  const dw_text_metrics metrics = sample_metrics (&style);
  return dw_ladder_layout_new (&s->chart, &style, &metrics, (dw_spot){ 10.0, 20.0 }, width);
}

static double
force_at (const dw_ladder_layout *layout, double x)
{
  return dw_scale_value (&layout->x, x);
}

/* ---- where everything is ---- */

START_TEST (bars_reach_from_bound_to_bound)
{
  sample_ladder *s = sample_ladder_new (3, 0.3, _i > 2);
  sample_ladder_set_speed (s, _i % 3);
  s->chart.is_log = _i == 1;
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 500.0);
  const int v = s->chart.speed;
  ck_assert_int_eq (layout->n_rows, (int)s->ladder->n);
  ck_assert (layout->x.is_log == s->chart.is_log);
  for (int i = 0; i < layout->n_rows; i++)
    {
      const dw_ladder_row *row = &layout->rows[i];
      const dw_ladder_rung *rung = &s->ladder->rungs[i];
      assert_close (force_at (layout, row->bar.x), rung->force[DW_LEAVES_SLIDE][v], 1e-9, 0.0,
                    "left end");
      assert_close (force_at (layout, row->bar.x + row->bar.width), rung->force[DW_LEAVES_STICK][v],
                    1e-9, 0.0, "right end");
      assert_close (force_at (layout, row->mark.x), dw_ladder_chart_force (&s->chart, i), 1e-9, 0.0,
                    "mark");
      ck_assert (row->mark.x >= row->bar.x - 1e-6
                 && row->mark.x <= row->bar.x + row->bar.width + 1e-6);
      ck_assert (row->has_habit == (rung->leaves > 1));
      if (row->has_habit)
        assert_close (force_at (layout, row->habit.x), rung->habit[v], 1e-9, 0.0, "habit");
      ck_assert (row->bar.y > row->box.y
                 && row->bar.y + row->bar.height < row->box.y + row->box.height);
      ck_assert_msg (row->bar.x > layout->plot.x
                         && row->bar.x + row->bar.width < layout->plot.x + layout->plot.width,
                     "inside the plot");
    }
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (rows_lie_on_each_other_the_stiffest_on_top)
{
  sample_ladder *s = sample_ladder_new (3, 0.0, false);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 400.0);
  const dw_ladder_row *rows = layout->rows;
  for (int i = 1; i < layout->n_rows; i++)
    {
      assert_close (rows[i].box.y + rows[i].box.height, rows[i - 1].box.y, 1e-9, 0.0, "no gap");
      assert_close (rows[i].box.height, layout->row_height, 1e-12, 0.0, "of one height");
    }
  const double bottom = rows[0].box.y + rows[0].box.height;
  assert_close (rows[layout->n_rows - 1].box.y, layout->head.y + layout->head.height, 1e-9, 0.0,
                "under the head");
  ck_assert (bottom < layout->area.y + layout->area.height);
  assert_close (layout->plot.height, layout->n_rows * layout->row_height, 1e-9, 0.0, "all rows");
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (bands_are_the_groups)
{
  sample_ladder *s = sample_ladder_new (3, 0.0, false);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 500.0);
  int first = 0;
  ck_assert_int_eq (layout->n_bands, s->ladder->n_groups);
  for (int k = 0; k < layout->n_bands; k++)
    {
      const dw_ladder_band *band = &layout->bands[k];
      const int last = first + band->n - 1;
      for (int i = first; i <= last; i++)
        ck_assert_int_eq (s->ladder->rungs[i].group, k);
      assert_close (band->box.y, layout->rows[last].box.y, 1e-9, 0.0, "from its stiffest");
      assert_close (band->box.height, band->n * layout->row_height, 1e-9, 0.0, "to its softest");
      ck_assert (band->is_toned == (k % 2 == 1));
      ck_assert ((band->word != NULL) == (band->n > 1));
      first = last + 1;
    }
  ck_assert_int_eq (first, layout->n_rows);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

/* A mark lies in a zone exactly when the study says so of this speed. */
START_TEST (zones_are_what_the_study_says)
{
  sample_ladder *s = sample_ladder_new (3, 0.0, false);
  sample_ladder_set_speed (s, _i);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 600.0);
  int n[3] = { 0 };
  for (int i = 0; i < layout->n_rows; i++)
    {
      const double x = layout->rows[i].mark.x;
      const dw_ladder_verdict verdict = x >= layout->plain.x ? DW_LADDER_PLAIN
                                        : x <= layout->holes.x + layout->holes.width
                                            ? DW_LADDER_HOLES
                                            : DW_LADDER_SHIM;
      ck_assert_int_eq (verdict, s->ladder->rungs[i].verdict_at[_i]);
      n[verdict]++;
    }
  ck_assert_int_gt (n[DW_LADDER_PLAIN], 0);
  ck_assert (layout->holes.x + layout->holes.width <= layout->plain.x);
  assert_close (layout->plain.x + layout->plain.width, layout->plot.x + layout->plot.width, 1e-9,
                0.0, "to the end");
  assert_close (layout->holes.x, layout->plot.x, 1e-9, 0.0, "from the start");
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (where_all_is_the_same_all_is_plain)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  dw_ladder *ladder = s->ladder;
  for (size_t i = 0; i < ladder->n; i++)
    {
      ladder->rungs[i].figures.point[DW_REBOUND][DW_HIGH].force = _i == 0 ? 100.0 : 0.0;
      for (int k = 0; k < DW_N_LEAF_BOUNDS; k++)
        ladder->rungs[i].force[k][DW_HIGH] = _i == 0 ? 100.0 : 0.0;
      ladder->rungs[i].habit[DW_HIGH] = _i == 0 ? 100.0 : 0.0;
    }
  ladder->plain[DW_HIGH] = ladder->soft[DW_HIGH] = _i == 0 ? 100.0 : 0.0;
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 400.0);
  ck_assert (layout->x.high > layout->x.low && layout->ticks.n >= 2);
  for (int i = 0; i < layout->n_rows; i++)
    ck_assert (layout->rows[i].mark.x >= layout->plain.x - 1e-9);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

/* ---- texts ---- */

typedef struct
{
  const char *text;
  dw_rect box;
} named_box;

static named_box
box_at (const dw_text_metrics *metrics, dw_text_role role, const char *text, dw_spot baseline)
{
  const double ascent = dw_text_measure (metrics, text, role).ascent;
  return (named_box){ text, dw_text_box (metrics, role, text,
                                         (dw_spot){ baseline.x, baseline.y - ascent }) };
}

/* @return  how many, all that the layout has */
static int
collect (const dw_ladder_layout *layout, const dw_text_metrics *metrics, named_box *out)
{
  int n = 0;
  for (int i = 0; i < layout->n_rows; i++)
    {
      const dw_ladder_row *row = &layout->rows[i];
      out[n++] = box_at (metrics, DW_TEXT_TICK, row->stack, row->stack_at);
      if (layout->shows_values)
        out[n++] = box_at (metrics, DW_TEXT_TICK, row->value, row->value_at);
    }
  for (int i = 0; i < layout->n_bands; i++)
    if (layout->bands[i].word != NULL)
      out[n++] = box_at (metrics, DW_TEXT_NOTE, layout->bands[i].word, layout->bands[i].word_at);
  for (int i = 0; i < layout->texts.n; i++)
    out[n++] = (named_box){ layout->texts.labels[i].text, layout->texts.labels[i].box };
  for (int i = 0; i < layout->n_samples; i++)
    out[n++] = (named_box){ "sample", layout->samples[i].box };
  for (int i = 0; i < layout->ticks.n; i++)
    if (layout->ticks.ticks[i].is_major)
      out[n++] = (named_box){ layout->ticks.ticks[i].label, dw_ladder_layout_tick_box (layout, i) };
  return n;
}

/* Nothing on another, outside, in the plot, or under a bracket; marks in the plot. @p reach [pt] */
static void
expect_sound (const dw_ladder_layout *layout, const dw_text_metrics *metrics, double reach)
{
  static named_box boxes[512];
  const int n = collect (layout, metrics, boxes);
  const dw_rect brackets = { layout->bracket_x - layout->bracket_width, layout->plot.y,
                             layout->bracket_width, layout->plot.height };
  ck_assert_int_le (n, N_ENTRIES (boxes));
  for (int i = 0; i < n; i++)
    {
      const dw_rect inner = dw_rect_inset (&boxes[i].box, 1e-6);
      ck_assert_msg (dw_rect_holds_rect (&layout->area, &boxes[i].box), "%s is outside, %g to %g",
                     boxes[i].text, boxes[i].box.x, boxes[i].box.x + boxes[i].box.width);
      ck_assert_msg (!dw_rect_overlaps (&inner, &layout->plot), "%s is in the plot", boxes[i].text);
      ck_assert_msg (!dw_rect_overlaps (&inner, &brackets), "%s is on a bracket", boxes[i].text);
      for (int k = 0; k < i; k++)
        ck_assert_msg (!dw_rect_overlaps (&inner, &boxes[k].box), "%s on %s", boxes[i].text,
                       boxes[k].text);
    }
  ck_assert (dw_rect_holds_rect (&layout->area, &layout->plot));
  ck_assert (layout->plot.width >= 40.0);
  for (int i = 0; i < layout->n_rows; i++)
    {
      const dw_ladder_row *row = &layout->rows[i];
      const double right = fmax (row->mark.x, row->has_habit ? row->habit.x : 0.0) + reach;
      ck_assert_msg (row->mark.x - reach >= layout->plot.x, "a mark over the left edge");
      ck_assert_msg (right <= layout->plot.x + layout->plot.width, "a mark over the right edge");
    }
}

START_TEST (nothing_overlaps_at_any_width)
{
  const dw_style_id styles[] = { DW_STYLE_LIGHT, DW_STYLE_SUN, DW_STYLE_PRINT };
  sample_ladder *s = sample_ladder_new (1 + _i % 3, 0.3, _i % 2 == 1);
  sample_ladder_set_speed (s, _i % 3);
  if (_i > 3)
    {
      s->chart.units = dw_chart_units_inch ();
      s->chart.labels.habit = "a word of a language that has no short word for what it means here";
      s->chart.labels.same = "tous les mêmes";
      s->chart.is_log = true;
    }
  for (int id = 0; id < N_ENTRIES (styles); id++)
    {
      const dw_chart_style style = dw_chart_style_make (styles[id]);
      const dw_text_metrics metrics = sample_metrics (&style);
      for (double width = 300.0; width <= 900.0; width += 24.0)
        {
          dw_ladder_layout *layout = make (s, styles[id], width);
          expect_sound (layout, &metrics, 1.75 * style.marker_radius);
          dw_ladder_layout_free (layout);
        }
    }
  sample_ladder_free (s);
}
END_TEST

START_TEST (absurd_widths_are_survived)
{
  sample_ladder *s = sample_ladder_new (2, 0.3, true);
  for (double width = 0.0; width < 300.0; width += 7.0)
    {
      dw_ladder_layout *layout = make (s, DW_STYLE_SUN, width);
      ck_assert (layout->plot.width > 0.0 && isfinite (layout->area.height));
      dw_ladder_layout_free (layout);
    }
  sample_ladder_free (s);
}
END_TEST

START_TEST (what_is_fitted_and_own_says_so)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 600.0);
  int fitted = 0;
  int own = 0;
  for (int i = 0; i < layout->n_rows; i++)
    {
      fitted += layout->rows[i].is_fitted && strcmp (layout->rows[i].stack, "0.15 (fitted)") == 0;
      own += layout->rows[i].is_own && strcmp (layout->rows[i].stack, "2 × 0.1 (this setup)") == 0;
    }
  ck_assert (fitted == 1 && own == 1);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

/* What a ladder of single leaves has no need of is not explained. */
START_TEST (the_legend_explains_what_is_there)
{
  sample_ladder *tall = sample_ladder_new (3, 0.0, false);
  sample_ladder *flat = sample_ladder_new (1, 0.0, false);
  dw_ladder_layout *all = make (tall, DW_STYLE_LIGHT, 600.0);
  dw_ladder_layout *few = make (flat, DW_STYLE_LIGHT, 600.0);
  ck_assert_int_eq (all->n_samples, DW_N_LADDER_KEYS);
  ck_assert_int_eq (few->n_samples, flat->ladder->n_groups < (int)flat->ladder->n ? 6 : 5);
  dw_ladder_layout_free (all);
  dw_ladder_layout_free (few);
  sample_ladder_free (tall);
  sample_ladder_free (flat);
}
END_TEST

/* ---- pointer and keys ---- */

START_TEST (every_row_is_hit)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 450.0);
  for (int i = 0; i < layout->n_rows; i++)
    {
      const dw_rect *box = &layout->rows[i].box;
      const double bottom = box->y + box->height - 0.01;
      ck_assert_int_eq (dw_ladder_layout_hit (layout, box->x + 1.0, box->y + 0.01), i);
      ck_assert_int_eq (dw_ladder_layout_hit (layout, box->x + box->width - 1.0, bottom), i);
      ck_assert_int_eq (dw_ladder_layout_hit (layout, box->x - 1.0, bottom), -1);
      ck_assert_int_eq (dw_ladder_layout_hit (layout, box->x + box->width + 1.0, bottom), -1);
    }
  ck_assert_int_eq (dw_ladder_layout_hit (layout, 100.0, layout->plot.y - 0.1), -1);
  ck_assert_int_eq (dw_ladder_layout_hit (layout, 100.0, layout->plot.y + layout->plot.height), -1);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (arrow_keys_climb_and_stop_at_the_ends)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 450.0);
  const int last = layout->n_rows - 1;
  const struct
  {
    int row, by, expected;
  } steps[] = { { -1, 1, dw_ladder_chart_fitted (&s->chart) },
                { -1, -1, dw_ladder_chart_fitted (&s->chart) },
                { 3, 1, 4 },
                { 3, -1, 2 },
                { 0, -1, 0 },
                { last, 1, last },
                { last - 1, 10, last },
                { 2, -10, 0 },
                { 2, G_MAXINT, last },
                { 2, G_MININT, 0 },
                { 99999, 1, dw_ladder_chart_fitted (&s->chart) } };
  for (int i = 0; i < N_ENTRIES (steps); i++)
    ck_assert_msg (dw_ladder_layout_step (layout, steps[i].row, steps[i].by) == steps[i].expected,
                   "%d by %d", steps[i].row, steps[i].by);
  dw_ladder_layout_free (layout);
  s->chart.has_fitted = false;
  layout = make (s, DW_STYLE_LIGHT, 450.0);
  ck_assert_int_eq (dw_ladder_layout_step (layout, -1, 1), 0);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (marks_are_renewed_alone)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  s->chart.chosen = 3;
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 450.0);
  ck_assert (layout->chosen == 3 && layout->pointed == -1);
  s->chart.chosen = 1000;
  s->chart.pointed = 0;
  dw_ladder_layout_mark (layout, &s->chart);
  ck_assert (layout->chosen == -1 && layout->pointed == 0);
  dw_ladder_layout_free (layout);
  sample_ladder_free (s);
}
END_TEST

START_TEST (an_empty_ladder_is_empty)
{
  sample_ladder *s = sample_ladder_new (1, 0.0, false);
  s->chart.ladder = NULL;
  dw_ladder_layout *layout = make (s, DW_STYLE_LIGHT, 450.0);
  ck_assert_int_eq (layout->n_rows, 0);
  ck_assert_int_eq (dw_ladder_layout_hit (layout, 50.0, 25.0), -1);
  ck_assert_int_eq (dw_ladder_layout_step (layout, -1, 1), -1);
  dw_ladder_layout_free (layout);
  dw_ladder_layout_free (NULL);
  sample_ladder_free (s);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ladder-layout");
  TCase *tcase = tcase_create ("ladder-layout");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, bars_reach_from_bound_to_bound, 0, 6);
  tcase_add_test (tcase, rows_lie_on_each_other_the_stiffest_on_top);
  tcase_add_test (tcase, bands_are_the_groups);
  tcase_add_loop_test (tcase, zones_are_what_the_study_says, 0, DW_N_SPEEDS);
  tcase_add_loop_test (tcase, where_all_is_the_same_all_is_plain, 0, 2);
  tcase_add_loop_test (tcase, nothing_overlaps_at_any_width, 0, 8);
  tcase_add_test (tcase, absurd_widths_are_survived);
  tcase_add_test (tcase, what_is_fitted_and_own_says_so);
  tcase_add_test (tcase, the_legend_explains_what_is_there);
  tcase_add_test (tcase, every_row_is_hit);
  tcase_add_test (tcase, arrow_keys_climb_and_stop_at_the_ends);
  tcase_add_test (tcase, marks_are_renewed_alone);
  tcase_add_test (tcase, an_empty_ladder_is_empty);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
