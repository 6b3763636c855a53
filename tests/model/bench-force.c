/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long forces take, beside the same equations solved by nested GSL Brent in the same run.
 * Prints "name value unit"; ratios are what counts, the machine's speed drifts. */
#include <stdio.h>
#include <stdlib.h>

#include "model/dw-figures.h"
#include "reference-damper.h"
#include "test-support.h"

static dw_damper
damper_of (bool shimmed, double open)
{
  dw_damper d = dw_damper_defaults ();
  d.body = (dw_body){ .bore = 15.5e-3, .rod = 3.5e-3, .stroke = 31e-3 };
  d.piston.n_holes = shimmed ? 2 : 1;
  d.piston.holes[0] = (dw_holes){ .count = 4, .diameter = open };
  d.piston.holes[1] = (dw_holes){ .count = 4, .diameter = 1.0e-3, .covered = true };
  d.valve.outer_diameter = 9.4e-3;
  d.valve.n_shims = shimmed ? 1 : 0;
  d.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  return d;
}

enum
{
  SPEEDS = 200,
  ROUNDS = 15
};

static double speed[SPEEDS];

/* Median over rounds of the seconds for one call. */
static double
median_of (void (*run) (void *data), void *data, int calls)
{
  double round[ROUNDS];
  for (int i = 0; i < ROUNDS; i++)
    {
      const double start = test_now ();
      for (int k = 0; k < calls; k++)
        run (data);
      round[i] = (test_now () - start) / calls;
    }
  test_sort (round, ROUNDS);
  return round[ROUNDS / 2];
}

static volatile double sink;

static void
single_forces (void *data)
{
  for (int i = 0; i < SPEEDS; i++)
    {
      dw_force_point p;
      if (dw_force_at (data, DW_REBOUND, speed[i], &p, NULL) != DW_OK)
        abort ();
      sink = p.force;
    }
}

static void
generic_forces (void *data)
{
  for (int i = 0; i < SPEEDS; i += 20)
    {
      reference_point p;
      if (!reference_solve (data, 25.0, DW_REBOUND, speed[i], &p))
        abort ();
      sink = p.force;
    }
}

/* Two setups, two axles, two strokes, 200 points: what the window draws on every key press. */
static void
overlay_curves (void *data)
{
  const dw_damper *dampers = data;
  static dw_force_point p[SPEEDS];
  for (int k = 0; k < 4; k++)
    {
      dw_force_model m;
      if (dw_force_model_make (&dampers[k], 25.0, &m, NULL) != DW_OK)
        abort ();
      for (int s = 0; s < DW_N_STROKES; s++)
        {
          if (dw_force_curve (&m, (dw_stroke)s, speed, SPEEDS, p, NULL) != DW_OK)
            abort ();
          sink = p[SPEEDS - 1].force;
        }
    }
}

static void
make_and_read (void *data)
{
  static const double judged[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  dw_force_model m;
  dw_figures f;
  if (dw_force_model_make (data, 25.0, &m, NULL) != DW_OK
      || dw_figures_read (&m, judged, &f, NULL) != DW_OK)
    abort ();
  sink = f.pack[DW_REBOUND];
}

int
main (void)
{
  dw_damper plain = damper_of (false, 1.25e-3);
  dw_damper shimmed = damper_of (true, 1.25e-3);
  dw_damper shown[4] = { damper_of (true, 1.25e-3), damper_of (true, 1.3e-3),
                         damper_of (true, 1.35e-3), damper_of (true, 1.4e-3) };
  dw_damper shown_plain[4] = { damper_of (false, 1.25e-3), damper_of (false, 1.3e-3),
                               damper_of (false, 1.35e-3), damper_of (false, 1.4e-3) };
  dw_force_model a, b;

  for (int i = 0; i < SPEEDS; i++)
    speed[i] = 1.0 * (i + 1) / SPEEDS;
  if (dw_force_model_make (&plain, 25.0, &a, NULL) != DW_OK
      || dw_force_model_make (&shimmed, 25.0, &b, NULL) != DW_OK)
    return 1;

  const double fast_plain = median_of (single_forces, &a, 20) / SPEEDS;
  const double fast_shim = median_of (single_forces, &b, 20) / SPEEDS;
  const double slow_plain = median_of (generic_forces, &plain, 1) / (SPEEDS / 20);
  const double slow_shim = median_of (generic_forces, &shimmed, 1) / (SPEEDS / 20);
  printf ("force_plain %.0f ns\n", 1e9 * fast_plain);
  printf ("force_plain_generic %.0f ns\n", 1e9 * slow_plain);
  printf ("force_plain_gain %.1f times\n", slow_plain / fast_plain);
  printf ("force_shim %.0f ns\n", 1e9 * fast_shim);
  printf ("force_shim_generic %.0f ns\n", 1e9 * slow_shim);
  printf ("force_shim_gain %.1f times\n", slow_shim / fast_shim);
  printf ("curves_1600_points_shims %.3f ms\n", 1e3 * median_of (overlay_curves, shown, 20));
  printf ("curves_1600_points_plain %.3f ms\n", 1e3 * median_of (overlay_curves, shown_plain, 20));
  printf ("damper_and_figures %.2f us\n", 1e6 * median_of (make_and_read, &shimmed, 2000));
  return 0;
}
