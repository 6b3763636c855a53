/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-chart.h"

#include "panel-fixture.h"

START_TEST (now_and_drilled_are_drawn_with_a_band)
{
  static const double speeds[] = { 0.05, 0.2, 1.0 };
  static const double size[] = { 1.5e-3, 0.0 };
  const dw_spread_limits limits = { .hole_grade = 12 };
  const dw_damper damper = dw_damper_defaults ();
  const dw_drill_box box = { .limits = limits };
  DwChartView *view = DW_CHART_VIEW (dw_chart_view_new ());
  dw_drill_sets sets;
  dw_drilling study;
  dw_drill_row row;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert_int_eq (dw_drilling_init (&study, &sets, 25.0, speeds, NULL), DW_OK);
  ck_assert_int_eq (dw_drill_row_make (&study, &box, size, &row, NULL), DW_OK);
  panel_show (GTK_WIDGET (view));

  dw_drill_chart_show (view, &study, NULL, &limits, DW_REAR, DW_UNITS_METRIC);
  const dw_chart *chart = dw_chart_view_get_chart (view);
  ck_assert_int_eq (chart->n_series, 1);
  ck_assert_str_eq (chart->labels.title, "Rear");
  ck_assert_ptr_null (chart->series[0]->stroke[DW_REBOUND].low);

  dw_drill_chart_show (view, &study, &row, &limits, DW_REAR, DW_UNITS_METRIC);
  ck_assert_int_eq (chart->n_series, 2);
  ck_assert_str_eq (chart->series[1]->name, "drilled");
  ck_assert_ptr_nonnull (chart->series[1]->stroke[DW_REBOUND].low);
  const size_t last = chart->series[1]->stroke[DW_REBOUND].n - 1;
  ck_assert (chart->series[1]->stroke[DW_REBOUND].points[last].force
             < chart->series[0]
                   ->stroke[DW_REBOUND]
                   .points[chart->series[0]->stroke[DW_REBOUND].n - 1]
                   .force);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/drill-chart");
  TCase *tc = tcase_create ("drill-chart");
  panel_case (s, tc);
  tcase_add_test (tc, now_and_drilled_are_drawn_with_a_band);
  return run_suite (s);
}
