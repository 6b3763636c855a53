/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-field.h"

#include <math.h>

#include "draw-samples.h"
#include "model/dw-drill.h"
#include "model/dw-oil.h"

static double
x_of (const dw_drill_field *field, int i)
{
  return field->x_low + (field->x_high - field->x_low) * i / (field->n_x - 1);
}

static double
y_of (const dw_drill_field *field, int k)
{
  return field->n_y > 1 ? field->y_low + (field->y_high - field->y_low) * k / (field->n_y - 1)
                        : 0.0;
}

static void
sizes_of (const sample_map *sample, double x, double y, double size[DW_DRILL_SETS])
{
  const int across = dw_drill_field_across (&sample->study.sets);
  size[across] = x;
  size[1 - across] = y;
}

/* ---- measures ---- */

START_TEST (measures_are_those_of_the_study)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 8, 2e-3);
  const double size[] = { 1.5e-3, 1.3e-3 };
  dw_drill_result r;
  ck_assert_int_eq (dw_drilling_at (&sample->study, size, &r, NULL), DW_OK);
  for (int m = 0; m < DW_MEASURE_OIL; m++)
    {
      const double value = dw_drill_measure_of ((dw_drill_measure)m, &r.figures,
                                                &sample->study.now);
      double expected = 0.0;
      if (m <= DW_MEASURE_REBOUND_HIGH)
        expected = r.change[m / DW_N_SPEEDS == 0 ? DW_COMPRESSION : DW_REBOUND][m % DW_N_SPEEDS];
      else if (m <= DW_MEASURE_PACK_REBOUND)
        expected = r.figures.pack[m == DW_MEASURE_PACK_REBOUND ? DW_REBOUND : DW_COMPRESSION];
      else
        expected = r.figures.rebound_share[m - DW_MEASURE_SHARE_LOW];
      ck_assert_msg (value == expected, "measure %d", m);
    }
  ck_assert (isnan (dw_drill_measure_of (DW_MEASURE_OIL, &r.figures, &sample->study.now)));
  sample_map_free (sample);
}
END_TEST

/* ---- filling ---- */

START_TEST (nodes_are_what_the_study_says)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 8, 2.3e-3);
  const dw_drill_field *field = &sample->shade;
  int tried = 0;
  for (int k = 0; k < field->n_y; k += 4)
    for (int i = 0; i < field->n_x; i += 3)
      {
        double size[DW_DRILL_SETS];
        dw_figures figures;
        sizes_of (sample, x_of (field, i), y_of (field, k), size);
        const double value = field->value[k * field->n_x + i];
        if (dw_drilling_field (&sample->study, size, &figures, NULL) != DW_OK)
          {
            ck_assert (isnan (value));
            continue;
          }
        const double expected = dw_drill_measure_of (sample->map.shade_measure, &figures,
                                                     &sample->study.now);
        assert_close (value, expected, 1e-9, 1e-9,
                      "the study itself; mirrored halves sum in another order");
        assert_close (dw_drill_field_at (field, x_of (field, i), y_of (field, k)), value, 1e-9,
                      1e-9, "asked at the node");
        tried++;
      }
  ck_assert_int_gt (tried, field->n_y > 1 ? 150 : 15);
  sample_map_free (sample);
}
END_TEST

/* The oil is computed at every third node: at the others, and between them, it is nearly exact. */
START_TEST (the_oil_is_right_between_its_nodes)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 8, 2.3e-3);
  const dw_drill_field *field = &sample->oil;
  test_random random = test_random_new ((uint64_t)_i);
  int tried = 0;
  for (int n = 0; n < 400; n++)
    {
      const int i = test_random_int (&random, 0, field->n_x - 1);
      const int k = test_random_int (&random, 0, field->n_y - 1);
      double size[DW_DRILL_SETS];
      double viscosity;
      sizes_of (sample, x_of (field, i), y_of (field, k), size);
      if (dw_drilling_field_oil (&sample->study, size, &viscosity, NULL) != DW_OK)
        continue;
      assert_close (field->value[k * field->n_x + i], viscosity, 0.005, 0.0,
                    "cubic through the logarithms of every third node");
      tried++;
    }
  for (int n = 0; n < 200; n++)
    {
      const double x = test_random_uniform (&random, field->x_low, field->x_high);
      const double y = field->n_y > 1 ? test_random_uniform (&random, field->y_low, field->y_high)
                                      : 0.0;
      double size[DW_DRILL_SETS];
      double viscosity;
      sizes_of (sample, x, y, size);
      const double value = dw_drill_field_at (field, x, y);
      if (isnan (value) || dw_drilling_field_oil (&sample->study, size, &viscosity, NULL) != DW_OK)
        continue;
      assert_close (value, viscosity, 0.01, 0.0, "straight between nodes");
      tried++;
    }
  ck_assert_int_gt (tried, 400);
  sample_map_free (sample);
}
END_TEST

/* Halves that are alike are computed once for both orders of the sizes. */
START_TEST (halves_that_are_alike_mirror)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 6, 2.3e-3);
  const dw_drill_field *field = &sample->shade;
  ck_assert (sample->study.sets.is_alike);
  ck_assert_int_eq (field->n_x, field->n_y);
  ck_assert (field->x_low == field->y_low && field->x_high == field->y_high);
  for (int k = 0; k < field->n_y; k++)
    for (int i = 0; i < k; i++)
      {
        ck_assert (field->value[k * field->n_x + i] == field->value[i * field->n_x + k]);
        assert_close (sample->oil.value[k * field->n_x + i], sample->oil.value[i * field->n_x + k],
                      1e-12, 0.0, "sums in another order");
      }

  /* the same nodes without the short cut: one step more in one direction */
  dw_drill_field whole = *field;
  dw_drill_field *const fields[] = { &whole };
  const dw_drill_measure measure = DW_MEASURE_COMPRESSION_LOW;
  whole.n_y = field->n_y - 1;
  whole.y_high = y_of (field, field->n_y - 2);
  dw_drill_field_fill (&sample->study, &measure, fields, 1);
  for (int k = 0; k < whole.n_y; k++)
    for (int i = 0; i < whole.n_x; i++)
      assert_close (whole.value[k * whole.n_x + i], field->value[k * field->n_x + i], 1e-8, 1e-8,
                    "computed each by itself");
  sample_map_free (sample);
}
END_TEST

START_TEST (what_no_oil_holds_is_not_known)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 8, 2.3e-3);
  dw_drill_field field = sample->oil;
  dw_drill_field *const fields[] = { &field };
  const dw_drill_measure measure = DW_MEASURE_OIL;
  /* thin oil in tiny holes: below the thinnest there is */
  field.x_low = field.y_low = 0.2e-3;
  dw_drill_field_fill (&sample->study, &measure, fields, 1);
  double size[] = { 0.2e-3, 0.2e-3 };
  double viscosity;
  const bool holds = dw_drilling_field_oil (&sample->study, size, &viscosity, NULL) == DW_OK;
  ck_assert_int_eq (isfinite (field.value[0]), holds);
  ck_assert (isfinite (field.value[field.n_x * field.n_y - 1]));
  sample_map_free (sample);
}
END_TEST

/* ---- asking ---- */

START_TEST (between_nodes_it_is_bilinear)
{
  dw_drill_field field
      = { .n_x = 5, .n_y = 4, .x_low = 1.0, .x_high = 3.0, .y_low = 2.0, .y_high = 5.0 };
  test_random random = test_random_new (1);
  for (int k = 0; k < 4; k++)
    for (int i = 0; i < 5; i++)
      field.value[k * 5 + i] = 3.0 * x_of (&field, i) - y_of (&field, k)
                               + x_of (&field, i) * y_of (&field, k);
  for (int n = 0; n < 100; n++)
    {
      const double x = test_random_uniform (&random, 1.0, 3.0);
      const double y = test_random_uniform (&random, 2.0, 5.0);
      assert_close (dw_drill_field_at (&field, x, y), 3.0 * x - y + x * y, 1e-12, 1e-12,
                    "x y is bilinear itself");
    }
  assert_close (dw_drill_field_at (&field, 3.0, 5.0), 19.0, 1e-12, 0.0, "the last corner");
  ck_assert (isnan (dw_drill_field_at (&field, 0.99, 3.0)));
  ck_assert (isnan (dw_drill_field_at (&field, 2.0, 5.01)));
  ck_assert (isnan (dw_drill_field_at (&field, (double)NAN, 3.0)));
  field.value[0] = (double)NAN;
  ck_assert (isnan (dw_drill_field_at (&field, 1.1, 2.1)));
  ck_assert (isfinite (dw_drill_field_at (&field, 1.5, 2.1)));
}
END_TEST

/* ---- ranges ---- */

START_TEST (all_dots_lie_inside)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 3, 2.3e-3);
  const dw_drill_sets *sets = &sample->study.sets;
  const dw_drill_field *field = &sample->shade;
  const double present = sets->present[dw_drill_field_across (sets)];
  ck_assert (field->x_low <= present - 0.2e-3 + 1e-12);
  assert_close (field->x_low, fmin (0.8 * present, present - 0.2e-3), 1e-9, 0.0, "a fifth below");
  for (int i = 0; i < sample->map.n_dots; i++)
    {
      const dw_drill_dot *dot = &sample->dots[i];
      ck_assert (dot->x > field->x_low && dot->x < field->x_high);
      ck_assert (field->n_y == 1 || (dot->y > field->y_low && dot->y < field->y_high));
    }
  if (field->n_y > 1)
    {
      const double step_x = (field->x_high - field->x_low) / (field->n_x - 1);
      const double step_y = (field->y_high - field->y_low) / (field->n_y - 1);
      assert_close (step_x / step_y, 1.0, 0.1, 0.0, "about square");
    }
  ck_assert_int_eq (field->n_y == 1, _i == SAMPLE_STRIP);
  sample_map_free (sample);
}
END_TEST

START_TEST (the_end_of_the_land_is_shown_when_it_is_near)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 4, 1.8e-3);
  const dw_drill_sets *sets = &sample->study.sets;
  dw_drill_field field = sample->shade;
  ck_assert (field.x_high < sets->largest[0]);

  const dw_drill_dot near = { sets->largest[0] - 0.02e-3, sets->largest[1] - 0.02e-3, true };
  ck_assert (dw_drill_field_place (&field, sets, &near, 1));
  ck_assert (field.x_high > sets->largest[0] && field.x_high < 1.1 * sets->largest[0]);

  ck_assert (dw_drill_field_place (&field, sets, NULL, 0));
  ck_assert (field.x_high > 1.5 * sets->present[0] && field.x_high < 1.7 * sets->present[0]);
  sample_map_free (sample);
}
END_TEST

START_TEST (without_sets_there_is_no_range)
{
  sample_map *sample = sample_map_new (SAMPLE_HALVES, 8, 1.8e-3);
  dw_drill_sets sets = sample->study.sets;
  dw_drill_field field = { .n_x = 7 };
  for (int i = 0; i < sets.face.n_holes; i++)
    sets.set_of[i] = -1;
  dw_drill_sets_update (&sets);
  ck_assert (!dw_drill_field_place (&field, &sets, NULL, 0));
  ck_assert_int_eq (field.n_x, 7);

  /* covered holes alone, in set 2 */
  for (int i = 0; i < sets.face.n_holes; i++)
    sets.set_of[i] = sets.face.holes[i].covered ? 1 : -1;
  dw_drill_sets_update (&sets);
  ck_assert_int_eq (dw_drill_field_across (&sets), 1);
  ck_assert (dw_drill_field_is_strip (&sets));
  ck_assert (dw_drill_field_place (&field, &sets, NULL, 0));
  ck_assert_int_eq (field.n_y, 1);
  assert_close (field.x_low, 0.88e-3, 1e-9, 0.0, "a fifth below 1.1 mm");
  sample_map_free (sample);
}
END_TEST

/* Of small holes at least 0.2 mm less are shown, but never nothing. */
START_TEST (small_holes_stay_larger_than_none)
{
  dw_damper damper = sample_damper ();
  dw_drill_sets sets;
  dw_drill_field field;
  damper.piston.holes[0].diameter = 0.3e-3;
  dw_drill_sets_init (&sets, &damper, DW_DRILL_HALVES);
  ck_assert (dw_drill_field_place (&field, &sets, NULL, 0));
  ck_assert (field.x_low > 0.0 && field.x_low < 0.3e-3);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-field");
  TCase *tcase = tcase_create ("drill-field");
  tcase_add_test (tcase, measures_are_those_of_the_study);
  tcase_add_loop_test (tcase, nodes_are_what_the_study_says, 0, N_SAMPLE_MAPS);
  tcase_add_loop_test (tcase, the_oil_is_right_between_its_nodes, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, halves_that_are_alike_mirror);
  tcase_add_test (tcase, what_no_oil_holds_is_not_known);
  tcase_add_test (tcase, between_nodes_it_is_bilinear);
  tcase_add_loop_test (tcase, all_dots_lie_inside, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, the_end_of_the_land_is_shown_when_it_is_near);
  tcase_add_test (tcase, without_sets_there_is_no_range);
  tcase_add_test (tcase, small_holes_stay_larger_than_none);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
