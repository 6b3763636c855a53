/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-chart-notes.h"

static int
count_kind (const dw_chart_layout *layout, dw_label_kind kind)
{
  int n = 0;
  for (int i = 0; i < layout->texts.n; i++)
    n += layout->texts.labels[i].kind == kind;
  return n;
}

/* Sizes from a thumbnail to a wall, force and c, even and logarithmic. */
START_TEST (notes_lie_in_the_plot_and_on_nothing)
{
  dw_chart chart = sample_chart (4, _i % 2 == 1);
  chart.quantity = _i / 2 % 2 == 1 ? DW_SHOW_DAMPING : DW_SHOW_FORCE;
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  int n_onsets = 0;
  for (double width = 200.0; width < 3000.0; width *= 1.37)
    for (double height = 150.0; height < 2000.0; height *= 1.43)
      {
        dw_chart_layout *layout = sample_layout (&chart, width, height);
        for (int i = 0; i < layout->texts.n; i++)
          {
            const dw_chart_label *label = &layout->texts.labels[i];
            if (label->kind != DW_LABEL_STROKE && label->kind != DW_LABEL_ONSET)
              continue;
            ck_assert (dw_rect_holds_rect (&layout->frame.plot, &label->box));
            if (label->kind == DW_LABEL_STROKE)
              continue;
            n_onsets++;
            ck_assert (label->box.y + label->box.height <= layout->zero + 0.01);
            for (int k = 0; k < layout->n_series; k++)
              for (int s = 0; s < DW_N_STROKES; s++)
                ck_assert (
                    !dw_chart_curve_meets (&layout->curves[k][s], style.onset_radius, &label->box));
          }
        dw_chart_layout_free (layout);
      }
  ck_assert_int_gt (n_onsets, 20);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (both_halves_have_their_word_on_the_right_side)
{
  dw_chart chart = sample_chart (2, false);
  for (double width = 200.0; width < 2500.0; width *= 1.7)
    {
      dw_chart_layout *layout = sample_layout (&chart, width, 0.75 * width);
      const dw_chart_label *word = dw_chart_label_list_find (&layout->texts, DW_LABEL_STROKE);
      ck_assert_int_eq (count_kind (layout, DW_LABEL_STROKE), 2);
      ck_assert_str_eq (word[0].text, "compression");
      ck_assert (word[0].box.y + word[0].box.height <= layout->zero);
      ck_assert_str_eq (word[1].text, "rebound");
      ck_assert (word[1].box.y >= layout->zero);
      dw_chart_layout_free (layout);
    }
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (a_half_that_is_not_shown_has_no_word)
{
  dw_chart chart = sample_chart (1, false);
  const dw_view whole = dw_chart_whole_view (&chart);
  chart.has_view = true;
  chart.view = whole;
  chart.view.y_low = 0.3 * whole.y_high;
  dw_chart_layout *layout = sample_layout (&chart, 600.0, 400.0);
  ck_assert_int_eq (count_kind (layout, DW_LABEL_STROKE), 1);
  ck_assert (!layout->shows_zero);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (an_onset_is_told_with_its_speed_once)
{
  dw_chart chart = sample_chart (1, false);
  dw_series *twin = sample_series ("Twin", 400e-6, false);
  chart.series[chart.n_series++] = twin;
  dw_chart_layout *layout = sample_layout (&chart, 700.0, 500.0);
  const dw_chart_label *label = dw_chart_label_list_find (&layout->texts, DW_LABEL_ONSET);
  ck_assert_int_eq (count_kind (layout, DW_LABEL_ONSET), 1);
  ck_assert (strstr (label->text, "void from 0.") == label->text);
  ck_assert (strstr (label->text, " m/s") != NULL);
  ck_assert_int_eq (label->slot, DW_SLOT_FITTED);
  dw_chart_layout_free (layout);
  sample_chart_clear (&chart);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/chart-notes");
  TCase *tcase = tcase_create ("chart-notes");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, notes_lie_in_the_plot_and_on_nothing, 0, 4);
  tcase_add_test (tcase, both_halves_have_their_word_on_the_right_side);
  tcase_add_test (tcase, a_half_that_is_not_shown_has_no_word);
  tcase_add_test (tcase, an_onset_is_told_with_its_speed_once);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
