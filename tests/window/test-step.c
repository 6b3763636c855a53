/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "model/dw-drill.h"
#include "test-support.h"
#include "window/dw-step.h"

static const struct
{
  dw_step step;
  dw_quantity quantity;
  dw_units units;
  dw_limit_id limit;
  double from;
  int n;
  double to;
  const char *why;
} rows[] = {
  { { DW_STEP_EVEN, 0.05e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_PISTON_THICKNESS,
    2.5e-3,
    1,
    2.55e-3,
    "up by one" },
  { { DW_STEP_EVEN, 0.05e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_PISTON_THICKNESS,
    2.5e-3,
    -10,
    2.0e-3,
    "down by a page" },
  { { DW_STEP_EVEN, 0.05e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_PISTON_THICKNESS,
    2.52e-3,
    1,
    2.55e-3,
    "between two steps up reaches the next" },
  { { DW_STEP_EVEN, 0.05e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_PISTON_THICKNESS,
    2.52e-3,
    -1,
    2.5e-3,
    "between two steps down reaches the next" },
  { { DW_STEP_EVEN, 0.005e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_CLEARANCE,
    0.03e-3,
    -1,
    0.025e-3,
    "clearance by five microns" },
  { { DW_STEP_EVEN, 0.005e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_CLEARANCE,
    0.002e-3,
    -1,
    0.0,
    "down to none" },
  { { DW_STEP_EVEN, 0.005e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_CLEARANCE,
    0.499e-3,
    10,
    0.5e-3,
    "not past the range" },
  { { DW_STEP_EVEN, 0.05e-3 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_INCH,
    DW_LIMIT_PISTON_THICKNESS,
    0.1 * 0.0254,
    1,
    0.102 * 0.0254,
    "0.002 in where inches are shown" },
  { { DW_STEP_EVEN, 1.0 },
    DW_QUANTITY_TEMPERATURE,
    DW_UNITS_METRIC,
    DW_LIMIT_POINT_TEMPERATURE,
    25.0,
    1,
    26.0,
    "one degree" },
  { { DW_STEP_EVEN, 1.0 },
    DW_QUANTITY_TEMPERATURE,
    DW_UNITS_FAHRENHEIT,
    DW_LIMIT_POINT_TEMPERATURE,
    25.0,
    1,
    (78.0 - 32.0) / 1.8,
    "two degrees Fahrenheit, from 77 to an even one" },
  { { DW_STEP_EVEN, 10.0 },
    DW_QUANTITY_RATE,
    DW_UNITS_LBF_PER_INCH,
    DW_LIMIT_SPRING_RATE,
    3.0 * 175.12683524647636,
    1,
    3.05 * 175.12683524647636,
    "0.05 lbf/in" },
  { { DW_STEP_EVEN, 1.0 },
    DW_QUANTITY_NUMBER,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_COUNT,
    6.0,
    1,
    7.0,
    "a count" },
  { { DW_STEP_EVEN, 1.0 },
    DW_QUANTITY_NUMBER,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_COUNT,
    1.0,
    -1,
    1.0,
    "a count has no zero" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_DIAMETER,
    1.3e-3,
    1,
    1.35e-3,
    "the next metric drill" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_DIAMETER,
    1.3e-3,
    -2,
    1.2e-3,
    "two drills down" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_DIAMETER,
    1.32e-3,
    -1,
    1.3e-3,
    "from between two drills" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_DIAMETER,
    3e-3,
    1,
    3e-3,
    "there is no larger drill" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_METRIC,
    DW_LIMIT_HOLE_DIAMETER,
    0.4e-3,
    -1,
    0.4e-3,
    "there is no smaller drill" },
  { { DW_STEP_DRILL, 0.0 },
    DW_QUANTITY_LENGTH,
    DW_UNITS_INCH,
    DW_LIMIT_HOLE_DIAMETER,
    0.052 * 0.0254,
    1,
    0.055 * 0.0254,
    "number drills in inches: #55 to #54" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    450e-6,
    1,
    500e-6,
    "a thicker bottle" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    475e-6,
    -1,
    450e-6,
    "from between two bottles" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    100e-6,
    -1,
    90e-6,
    "finer below 100" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    1000e-6,
    1,
    1500e-6,
    "coarser above 1000" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    1000e-6,
    -1,
    950e-6,
    "and finer below it" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    1e-6,
    -1,
    1e-6,
    "the thinnest there is" },
  { { DW_STEP_GRADE, 0.0 },
    DW_QUANTITY_VISCOSITY,
    DW_UNITS_METRIC,
    DW_LIMIT_VISCOSITY,
    100000e-6,
    1,
    100000e-6,
    "the thickest there is" },
};

START_TEST (steps_land_on_round_numbers)
{
  const double to = dw_step_move (rows[_i].step, rows[_i].quantity, rows[_i].units, rows[_i].limit,
                                  rows[_i].from, rows[_i].n);
  /* nine digits come through the text of a step */
  assert_close (to, rows[_i].to, 1e-9, 1e-15, rows[_i].why);
}
END_TEST

/* What is shown in metric units has few digits, and reads back the same. */
START_TEST (metric_steps_are_exact)
{
  const dw_step step = { DW_STEP_EVEN, 0.05e-3 };
  double x = 0.3e-3;

  for (int i = 0; i < 300; i++)
    {
      x = dw_step_move (step, DW_QUANTITY_LENGTH, DW_UNITS_METRIC, DW_LIMIT_PISTON_THICKNESS, x, 1);
      g_autofree char *text = dw_quantity_format (DW_QUANTITY_LENGTH, DW_UNITS_METRIC, x);
      ck_assert_msg (strlen (text) <= 5, "%s", text);
    }
  assert_close (x, 15.3e-3, 1e-12, 0.0, "300 steps of 0.05 mm");
}
END_TEST

/* Every drill of the series is met, in both directions. */
START_TEST (all_drills_are_passed)
{
  const dw_step step = { DW_STEP_DRILL, 0.0 };
  const dw_units units = _i == DW_DRILL_NUMBER ? DW_UNITS_INCH : DW_UNITS_METRIC;
  size_t n;
  const dw_drill_size *table = dw_drill_table (&n);
  double up = 0.25e-3;

  for (size_t i = 0; i < n; i++)
    if ((int)table[i].series == _i)
      {
        const double before = up;
        up = dw_step_move (step, DW_QUANTITY_LENGTH, units, DW_LIMIT_HOLE_DIAMETER, up, 1);
        ck_assert (up == table[i].diameter);
        if (before > 0.25e-3)
          ck_assert (dw_step_move (step, DW_QUANTITY_LENGTH, units, DW_LIMIT_HOLE_DIAMETER, up, -1)
                     == before);
      }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/step");
  TCase *tc = tcase_create ("step");
  tcase_add_loop_test (tc, steps_land_on_round_numbers, 0, N_ENTRIES (rows));
  tcase_add_test (tc, metric_steps_are_exact);
  tcase_add_loop_test (tc, all_drills_are_passed, 0, DW_N_DRILL_SERIES);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
