/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match-closing.h"

#include <math.h>

/* Steps over a range, evenly in the logarithm, and of the narrowing afterwards: a fifth of a percent of
 * a size is less than any part is made to. */
enum
{
  N_STEPS = 80,
  N_NARROWINGS = 24
};

/* [1] A part must come nearer by so much to be worth buying. */
static const double WORTH = 1e-3;

/* [m2/s], [m], [m]: what is sold. */
static const double THINNEST_OIL = 20e-6;
static const double THICKEST_OIL = 5000e-6;
static const double THINNEST_SHIM = 0.02e-3;
static const double THICKEST_SHIM = 0.6e-3;

/* [1] Holes up to so many times their size. */
static const double LARGEST_DRILLED = 2.0;

typedef struct
{
  const dw_damper *damper;
  double temperature; /* [degC] */
  const dw_match_wish *wish;
  dw_match_closing_part part;
} question;

/* ---- one size ---- */

static double
largest_hole (const dw_damper *damper, bool covered)
{
  double largest = 0.0;
  for (int i = 0; i < damper->piston.n_holes; i++)
    if (damper->piston.holes[i].covered == covered)
      largest = fmax (largest, damper->piston.holes[i].diameter);
  return largest;
}

static void
put (dw_damper *damper, dw_match_closing_part part, double size)
{
  switch (part)
    {
    case DW_CLOSING_OIL:
      damper->oil
          = (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = size, .density = damper->oil.density };
      break;
    case DW_CLOSING_OPEN:
    case DW_CLOSING_COVERED:
      for (int i = 0; i < damper->piston.n_holes; i++)
        if (damper->piston.holes[i].covered == (part == DW_CLOSING_COVERED))
          damper->piston.holes[i].diameter = size;
      break;
    case DW_CLOSING_SHIM:
      damper->valve.n_shims = 1;
      damper->valve.shims[0].count = 1;
      damper->valve.shims[0].thickness = size;
      break;
    case DW_CLOSING_NONE:
      break;
    }
}

/* Largest miss; infinite where it can not be built. */
static double
miss_of (const question *q, double size)
{
  dw_damper damper = *q->damper;
  dw_force_model model;
  dw_force_point points[DW_N_SPEEDS];
  double worst = 0.0;
  put (&damper, q->part, size);
  if (dw_force_model_make (&damper, q->temperature, &model, NULL) != DW_OK)
    return HUGE_VAL;
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      if (dw_force_curve (&model, (dw_stroke)s, q->wish->speeds, DW_N_SPEEDS, points, NULL)
          != DW_OK)
        return HUGE_VAL;
      for (int i = 0; i < DW_N_SPEEDS; i++)
        if (!q->wish->target[s][i].is_free)
          worst = fmax (worst, fabs (points[i].force / q->wish->target[s][i].force - 1.0));
    }
  return worst;
}

/* ---- one part ---- */

static bool
range_of (const dw_damper *damper, dw_match_closing_part part, double *from, double *to)
{
  const double hole = largest_hole (damper, part == DW_CLOSING_COVERED);
  switch (part)
    {
    case DW_CLOSING_OIL:
      *from = THINNEST_OIL;
      *to = THICKEST_OIL;
      return true;
    case DW_CLOSING_OPEN:
    case DW_CLOSING_COVERED:
      *from = hole;
      *to = LARGEST_DRILLED * hole;
      return hole > 0.0;
    case DW_CLOSING_SHIM:
      *from = THINNEST_SHIM;
      *to = THICKEST_SHIM;
      return damper->valve.n_shims > 0 && largest_hole (damper, true) > 0.0;
    case DW_CLOSING_NONE:
      break;
    }
  return false;
}

/* Thirds of what is left, until it is narrow. */
static double
narrow (const question *q, double from, double to)
{
  for (int i = 0; i < N_NARROWINGS; i++)
    {
      const double a = from + (to - from) / 3.0;
      const double b = to - (to - from) / 3.0;
      if (miss_of (q, a) <= miss_of (q, b))
        to = b;
      else
        from = a;
    }
  return 0.5 * (from + to);
}

static dw_match_closing
try_part (const question *q)
{
  dw_match_closing best = { DW_CLOSING_NONE, 0.0, HUGE_VAL };
  double from, to;
  if (!range_of (q->damper, q->part, &from, &to))
    return best;
  const double step = pow (to / from, 1.0 / N_STEPS);
  int at = 0;
  for (int i = 0; i <= N_STEPS; i++)
    {
      const double miss = miss_of (q, from * pow (step, i));
      if (miss < best.worst)
        {
          best.worst = miss;
          at = i;
        }
    }
  if (!isfinite (best.worst))
    return best;
  const double low = from * pow (step, at > 0 ? at - 1 : 0);
  const double high = from * pow (step, at < N_STEPS ? at + 1 : N_STEPS);
  best.part = q->part;
  best.size = narrow (q, low, high);
  best.worst = miss_of (q, best.size);
  return best;
}

dw_match_closing
dw_match_closing_find (const dw_damper *damper, double temperature, const dw_match_wish *wish,
                       const bool allowed[DW_N_LEVERS])
{
  static const struct
  {
    dw_match_closing_part part;
    dw_lever lever;
  } parts[] = { { DW_CLOSING_OIL, DW_LEVER_OIL },
                { DW_CLOSING_SHIM, DW_LEVER_STACK },
                { DW_CLOSING_OPEN, DW_LEVER_OPEN },
                { DW_CLOSING_COVERED, DW_LEVER_COVERED } };
  question q = { damper, temperature, wish, DW_CLOSING_NONE };
  dw_match_closing best = { DW_CLOSING_NONE, 0.0, miss_of (&q, 0.0) - WORTH };
  for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
    {
      q.part = parts[i].part;
      const dw_match_closing one = allowed[parts[i].lever] ? try_part (&q) : best;
      if (one.part != DW_CLOSING_NONE && one.worst < best.worst)
        best = one;
    }
  if (best.part == DW_CLOSING_NONE)
    best.worst += WORTH;
  return best;
}
