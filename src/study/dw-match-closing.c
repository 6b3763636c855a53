/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match-closing.h"

#include <math.h>

/* Steps over a range, evenly in the logarithm, and thirds that are then cut off around each valley: what
 * is left is a hundred-thousandth of a size. */
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

/* [1] Holes up to so many times their size, if the land allows it. */
static const double LARGEST_DRILLED = 2.0;

typedef struct
{
  dw_drill_sets sets; /* of the damper that is there: open, covered holes */
  double temperature; /* [degC] */
  const dw_match_wish *wish;
  dw_match_closing_part part;
} question;

/* ---- one size ---- */

/* Holes are drilled as everywhere: larger than they are, and not into the land. */
static bool
drill (const question *q, int set, double size, dw_damper *damper)
{
  const double sizes[DW_DRILL_SETS] = { set == 0 ? size : 0.0, set == 1 ? size : 0.0 };
  return dw_drill_sets_apply (&q->sets, sizes, damper, NULL) == DW_OK;
}

/* @return  false: it can not be done */
static bool
put (const question *q, double size, dw_damper *damper)
{
  *damper = q->sets.damper;
  switch (q->part)
    {
    case DW_CLOSING_OIL:
      damper->oil = (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = size };
      return true;
    case DW_CLOSING_OPEN:
      return drill (q, 0, size, damper);
    case DW_CLOSING_COVERED:
      return drill (q, 1, size, damper);
    case DW_CLOSING_SHIM:
      damper->valve.n_shims = 1;
      damper->valve.shims[0].count = 1;
      damper->valve.shims[0].thickness = size;
      return true;
    case DW_CLOSING_NONE:
      break;
    }
  return true;
}

/* Largest miss; infinite where it can not be built. */
static double
miss_of (const question *q, double size)
{
  dw_damper damper;
  dw_force_model model;
  dw_force_point points[DW_N_SPEEDS];
  double worst = 0.0;
  if (!put (q, size, &damper)
      || dw_force_model_make (&damper, q->temperature, &model, NULL) != DW_OK)
    return HUGE_VAL;
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      if (!dw_match_wish_is_any_of (q->wish, (dw_stroke)s))
        continue;
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
drill_range (const dw_drill_sets *sets, int set, double *from, double *to)
{
  *from = sets->present[set];
  *to = fmin (LARGEST_DRILLED * sets->present[set], sets->largest[set]);
  return sets->n_holes[set] > 0 && *to > *from;
}

static bool
range_of (const question *q, double *from, double *to)
{
  switch (q->part)
    {
    case DW_CLOSING_OIL:
      *from = THINNEST_OIL;
      *to = THICKEST_OIL;
      return true;
    case DW_CLOSING_OPEN:
      return drill_range (&q->sets, 0, from, to);
    case DW_CLOSING_COVERED:
      return drill_range (&q->sets, 1, from, to);
    case DW_CLOSING_SHIM:
      *from = THINNEST_SHIM;
      *to = THICKEST_SHIM;
      return q->sets.damper.valve.n_shims > 0 && q->sets.n_holes[1] > 0;
    case DW_CLOSING_NONE:
      break;
    }
  return false;
}

static void
improve (const question *q, double size, dw_match_closing *best)
{
  const double miss = miss_of (q, size);
  if (miss < best->worst)
    *best = (dw_match_closing){ q->part, size, miss };
}

/* Thirds of what is left, until it is narrow. */
static void
narrow (const question *q, double from, double to, dw_match_closing *best)
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
  improve (q, 0.5 * (from + to), best);
}

/* Every valley is made exact: the one that looks deepest from step to step need not be it. */
static dw_match_closing
try_part (const question *q)
{
  dw_match_closing best = { DW_CLOSING_NONE, 0.0, HUGE_VAL };
  double size[N_STEPS + 1];
  double miss[N_STEPS + 1];
  double from, to;
  if (!range_of (q, &from, &to))
    return best;
  for (int i = 0; i <= N_STEPS; i++)
    {
      size[i] = i < N_STEPS ? from * pow (to / from, (double)i / N_STEPS) : to;
      miss[i] = miss_of (q, size[i]);
      if (miss[i] < best.worst)
        best = (dw_match_closing){ q->part, size[i], miss[i] };
    }
  for (int i = 0; i <= N_STEPS; i++)
    if ((i == 0 || miss[i] < miss[i - 1]) && (i == N_STEPS || miss[i] <= miss[i + 1]))
      narrow (q, size[i > 0 ? i - 1 : 0], size[i < N_STEPS ? i + 1 : N_STEPS], &best);
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
  question q = { .temperature = temperature, .wish = wish, .part = DW_CLOSING_NONE };
  dw_drill_sets_init (&q.sets, damper, DW_DRILL_KINDS);
  const double now = miss_of (&q, 0.0);
  dw_match_closing best = { DW_CLOSING_NONE, 0.0, now };
  for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
    {
      if (!allowed[parts[i].lever])
        continue;
      q.part = parts[i].part;
      const dw_match_closing one = try_part (&q);
      if (one.worst < best.worst && one.worst < now - WORTH)
        best = one;
    }
  return best;
}
