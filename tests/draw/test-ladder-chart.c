/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-chart.h"

#include <glib.h>
#include <string.h>

#include "draw-samples.h"
#include "model/dw-units.h"

static bool
has_stack (const sample_ladder *s, const char *wanted)
{
  const bool tells = dw_ladder_chart_has_materials (&s->chart);
  for (int i = 0; i < dw_ladder_chart_count (&s->chart); i++)
    {
      g_autofree char *text = dw_ladder_chart_stack (&s->chart, i, tells);
      ck_assert_ptr_null (strchr (text, '{'));
      if (strcmp (text, wanted) == 0)
        return true;
    }
  return false;
}

START_TEST (stacks_are_told_from_the_piston_outwards)
{
  sample_ladder *s = sample_ladder_new (3, 0.0, false);
  ck_assert (!dw_ladder_chart_has_materials (&s->chart));
  ck_assert (has_stack (s, "0.1") && has_stack (s, "2 × 0.1") && has_stack (s, "0.15 + 2 × 0.1"));
  ck_assert (has_stack (s, "0.25 + 0.2 + 0.1") && !has_stack (s, "0.1 + 0.15"));
  g_strlcpy (s->chart.numbers.decimal, ",", sizeof s->chart.numbers.decimal);
  ck_assert (has_stack (s, "0,25 + 0,2 + 0,1"));
  s->chart.units.length = (dw_unit){ "thou", DW_THOU };
  ck_assert (has_stack (s, "3,937"));
  sample_ladder_free (s);
}
END_TEST

START_TEST (materials_are_told_when_there_are_several)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, true);
  ck_assert (dw_ladder_chart_has_materials (&s->chart));
  ck_assert (has_stack (s, "0.1 (4 GPa) + 0.05 (200 GPa)") && has_stack (s, "2 × 0.1 (4 GPa)"));
  sample_ladder_free (s);
}
END_TEST

START_TEST (the_fitted_one_is_marked_when_something_is_fitted)
{
  sample_ladder *s = sample_ladder_new (2, 0.0, false);
  const int fitted = dw_ladder_chart_fitted (&s->chart);
  ck_assert_int_ge (fitted, 0);
  ck_assert (s->ladder->rungs[fitted].shims[0].thickness == 0.15e-3);
  s->chart.has_fitted = false;
  ck_assert_int_eq (dw_ladder_chart_fitted (&s->chart), -1);
  sample_ladder_free (s);
}
END_TEST

START_TEST (forces_are_those_of_the_speed_and_the_stroke)
{
  sample_ladder *s = sample_ladder_new (1, 0.0, false);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      sample_ladder_set_speed (s, v);
      const double force = s->ladder->rungs[1].figures.point[DW_REBOUND][v].force;
      ck_assert (dw_ladder_chart_force (&s->chart, 1) == force);
    }
  g_autofree char *newton = dw_ladder_chart_number (&s->chart, 12.0);
  s->chart.units = dw_chart_units_inch ();
  g_autofree char *pound = dw_ladder_chart_number (&s->chart, 12.0 * DW_LBF);
  ck_assert_str_eq (newton, "12.0");
  ck_assert_str_eq (pound, "12.0");
  sample_ladder_free (s);
}
END_TEST

START_TEST (without_a_ladder_there_is_nothing)
{
  const dw_ladder_chart chart = dw_ladder_chart_defaults ();
  ck_assert_int_eq (dw_ladder_chart_count (&chart), 0);
  ck_assert_int_eq (dw_ladder_chart_fitted (&chart), -1);
  ck_assert (!dw_ladder_chart_has_materials (&chart));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ladder-chart");
  TCase *tcase = tcase_create ("ladder-chart");
  tcase_add_test (tcase, stacks_are_told_from_the_piston_outwards);
  tcase_add_test (tcase, materials_are_told_when_there_are_several);
  tcase_add_test (tcase, the_fitted_one_is_marked_when_something_is_fitted);
  tcase_add_test (tcase, forces_are_those_of_the_speed_and_the_stroke);
  tcase_add_test (tcase, without_a_ladder_there_is_nothing);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
