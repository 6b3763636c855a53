/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-spread.h"

#include <assert.h>
#include <math.h>

#include "model/dw-drill.h"
#include "model/dw-limits.h"

/* An input that scatters. */
typedef enum
{
  INPUT_HOLES, /* diameter of one group */
  INPUT_PISTON_THICKNESS,
  INPUT_CLEARANCE,
  INPUT_SHIM_THICKNESS,
  INPUT_OIL,
  INPUT_TEMPERATURE
} input_kind;

/* How far it may be off, and what of it counts. */
typedef struct
{
  input_kind kind;
  int group;        /* of holes */
  double deviation; /* [m], [1] or [K] standard deviation of what the force depends on */
  bool is_shared;   /* the same left and right */
} input;

#define MAX_INPUTS (DW_MAX_HOLE_GROUPS + 5)

/* A damper and its temperature, with its forces at the speeds asked for. */
typedef struct
{
  dw_damper damper;
  double temperature; /* [degC] */
} build;

static double
pow2 (double x)
{
  return x * x;
}

dw_spread_limits
dw_spread_limits_defaults (void)
{
  return (dw_spread_limits){ .hole_grade = 12,
                             .piston_thickness = 0.05e-3,
                             .clearance = 0.01e-3,
                             .shim_thickness = 0.05,
                             .oil = 0.05,
                             .temperature = 2.0 };
}

static bool
is_exact (const dw_spread_limits *limits, int group)
{
  return (limits->exact_groups >> group & 1U) != 0;
}

/* [m] Width of the zone that a drilled hole lies in, from its nominal size up. */
static double
hole_zone (const dw_spread_limits *limits, int group, double diameter)
{
  if (limits->hole_grade == 0 || is_exact (limits, group))
    return 0.0;
  const double zone = dw_tolerance_it (limits->hole_grade, diameter);
  /* the standard's table ends at 6 mm */
  return isnan (zone) ? 0.0 : zone;
}

/* Variance of an even chance in +-h is h^2/3; n holes that are off independently move the flow of
 * their group as one hole that is off by a share 1/sqrt(n). */
static double
hole_deviation (const dw_spread_limits *limits, int group, const dw_holes *holes)
{
  const double zone = 0.5 * hole_zone (limits, group, holes->diameter);
  const double error = is_exact (limits, group) ? 0.0 : limits->hole_error;
  return sqrt ((pow2 (zone) + pow2 (error)) / (3.0 * holes->count));
}

static int
list_inputs (const dw_damper *damper, const dw_spread_limits *limits, input inputs[MAX_INPUTS])
{
  int n = 0;
  for (int i = 0; i < damper->piston.n_holes; i++)
    inputs[n++] = (input){ INPUT_HOLES, i, hole_deviation (limits, i, &damper->piston.holes[i]),
                           false };
  inputs[n++] = (input){ INPUT_PISTON_THICKNESS, -1, limits->piston_thickness / sqrt (3.0), false };
  if (damper->piston.clearance > 0.0)
    inputs[n++] = (input){ INPUT_CLEARANCE, -1, limits->clearance / sqrt (3.0), false };
  if (damper->valve.n_shims > 0)
    inputs[n++] = (input){ INPUT_SHIM_THICKNESS, -1, limits->shim_thickness / sqrt (3.0), false };
  inputs[n++] = (input){ INPUT_OIL, -1, limits->oil / sqrt (3.0), true };
  inputs[n++] = (input){ INPUT_TEMPERATURE, -1, limits->temperature / sqrt (3.0), true };
  return n;
}

static void
scale_oil (dw_oil *oil, double factor)
{
  oil->viscosity *= factor;
  for (int i = 0; i < 2; i++)
    oil->point_viscosity[i] *= factor;
  for (int i = 0; i < oil->n_parts; i++)
    oil->parts[i].viscosity *= factor;
}

/* The middle of all limits: only holes have one that is not the nominal value. */
static void
go_to_middle (const dw_spread_limits *limits, build *b)
{
  for (int i = 0; i < b->damper.piston.n_holes; i++)
    {
      dw_holes *holes = &b->damper.piston.holes[i];
      holes->diameter += 0.5 * hole_zone (limits, i, holes->diameter);
    }
}

/* @param by  in standard deviations, -1 or 1 */
static void
shift (const input *in, double by, build *b)
{
  const double step = by * in->deviation;
  dw_damper *d = &b->damper;
  switch (in->kind)
    {
    case INPUT_HOLES:
      d->piston.holes[in->group].diameter += step;
      break;
    case INPUT_PISTON_THICKNESS:
      d->piston.thickness += step;
      break;
    case INPUT_CLEARANCE:
      d->piston.clearance += step;
      break;
    case INPUT_SHIM_THICKNESS:
      for (int i = 0; i < d->valve.n_shims; i++)
        d->valve.shims[i].thickness *= 1.0 + step;
      break;
    case INPUT_OIL:
      scale_oil (&d->oil, 1.0 + step);
      break;
    case INPUT_TEMPERATURE:
      b->temperature += step;
      break;
    }
}

static dw_status
forces_of (const build *b, dw_stroke stroke, const double *speeds, size_t n,
           dw_force_point points[DW_SPREAD_SPEEDS], dw_error *err)
{
  dw_force_model model;
  dw_status status = dw_force_model_make (&b->damper, b->temperature, &model, err);
  if (status == DW_OK)
    status = dw_force_curve (&model, stroke, speeds, n, points, err);
  return status;
}

/* Force change of one standard deviation of an input, at every speed. */
static void
slopes_of (const build *middle, const input *in, dw_stroke stroke, const double *speeds, size_t n,
           const dw_force_point *at_middle, double slopes[DW_SPREAD_SPEEDS])
{
  dw_force_point points[2][DW_SPREAD_SPEEDS];
  bool is_there[2];
  for (int side = 0; side < 2; side++)
    {
      build b = *middle;
      shift (in, side == 0 ? -1.0 : 1.0, &b);
      is_there[side] = forces_of (&b, stroke, speeds, n, points[side], NULL) == DW_OK;
    }
  for (size_t i = 0; i < n; i++)
    {
      const double below = is_there[0] ? points[0][i].force : at_middle[i].force;
      const double above = is_there[1] ? points[1][i].force : at_middle[i].force;
      const double span = (double)is_there[0] + (double)is_there[1];
      slopes[i] = span > 0.0 ? (above - below) / span : 0.0;
    }
}

dw_status
dw_spread_make (const dw_damper *damper, double temperature, const dw_spread_limits *limits,
                dw_stroke stroke, const double *speeds, size_t n, dw_spread_point *out,
                dw_error *err)
{
  dw_force_point nominal[DW_SPREAD_SPEEDS];
  dw_force_point at_middle[DW_SPREAD_SPEEDS];
  double slopes[DW_SPREAD_SPEEDS];
  input inputs[MAX_INPUTS];
  const build given = { *damper, temperature };
  build middle = given;

  assert (n <= DW_SPREAD_SPEEDS);

  const dw_status status = forces_of (&given, stroke, speeds, n, nominal, err);
  if (status != DW_OK)
    return status;
  go_to_middle (limits, &middle);
  if (forces_of (&middle, stroke, speeds, n, at_middle, NULL) != DW_OK)
    {
      middle = given;
      for (size_t i = 0; i < n; i++)
        at_middle[i] = nominal[i];
    }
  for (size_t i = 0; i < n; i++)
    out[i] = (dw_spread_point){ .nominal = nominal[i].force, .mean = at_middle[i].force };

  const int n_inputs = list_inputs (damper, limits, inputs);
  for (int k = 0; k < n_inputs; k++)
    {
      if (!(inputs[k].deviation > 0.0))
        continue;
      slopes_of (&middle, &inputs[k], stroke, speeds, n, at_middle, slopes);
      for (size_t i = 0; i < n; i++)
        {
          out[i].deviation += pow2 (slopes[i]);
          out[i].pair_deviation += inputs[k].is_shared ? 0.0 : 2.0 * pow2 (slopes[i]);
        }
    }
  for (size_t i = 0; i < n; i++)
    {
      out[i].deviation = sqrt (out[i].deviation);
      out[i].pair_deviation = sqrt (out[i].pair_deviation);
    }
  return DW_OK;
}

double
dw_spread_low (const dw_spread_point *point)
{
  return fmin (point->nominal, point->mean - 2.0 * point->deviation);
}

double
dw_spread_high (const dw_spread_point *point)
{
  return fmax (point->nominal, point->mean + 2.0 * point->deviation);
}
