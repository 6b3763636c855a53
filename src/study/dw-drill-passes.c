/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-passes.h"

#include <math.h>

#include "model/dw-drill.h"

/* [m] A pass that is exactly the most is not too much. */
static const double SAME = DW_DRILL_SAME;

/* The drill nearest to a size, strictly between two others; 0 when there is none. */
static double
nearest_between (double wanted, double above, double below, const double *drills, int n)
{
  double best = 0.0;
  for (int i = 0; i < n; i++)
    if (drills[i] > above + SAME && drills[i] < below - SAME
        && (best == 0.0 || fabs (drills[i] - wanted) < fabs (best - wanted)))
      best = drills[i];
  return best;
}

/* The next drill on the way: as many passes are left as the limit asks for, and this one takes its
 * part of the rest; never more than the limit where a drill allows it. */
static double
next_drill (double from, double to, const double *drills, int n)
{
  const double rest = to - from;
  if (rest <= DW_DRILL_MOST_PER_PASS + SAME)
    return to;
  const double passes = ceil ((rest - SAME) / DW_DRILL_MOST_PER_PASS);
  const double wanted = from + rest / passes;
  const double within = fmin (to, from + DW_DRILL_MOST_PER_PASS + 2.0 * SAME);
  double drill = nearest_between (wanted, from, within, drills, n);
  if (drill == 0.0)
    drill = nearest_between (wanted, from, to, drills, n);
  return drill == 0.0 ? to : drill;
}

/* Adds the drills from what the hole is to what it shall be. */
static void
widen (dw_drill_passes *passes, double from, double to, const double *drills, int n)
{
  double at = from;
  while (to > at + SAME && passes->n < DW_DRILL_MAX_PASSES)
    {
      /* the last place is kept for the size asked for */
      const double drill = passes->n + 1 < DW_DRILL_MAX_PASSES ? next_drill (at, to, drills, n)
                                                               : to;
      if (drill - at > DW_DRILL_MOST_PER_PASS + 2.0 * SAME)
        passes->has_large_pass = true;
      passes->drill[passes->n++] = at = drill;
    }
}

dw_drill_passes
dw_drill_passes_find (double from, double to, const double *drills, int n)
{
  dw_drill_passes passes = { .n = 0 };
  widen (&passes, from, to, drills, n);
  return passes;
}

/* The drill that begins a hole: the smallest one that may, else the size asked for. */
static double
pilot_for (double to, const double *drills, int n)
{
  const double least = fmax (DW_DRILL_LEAST_PILOT, DW_DRILL_PILOT_SHARE * to);
  double pilot = to;
  for (int i = 0; i < n; i++)
    if (drills[i] > least - SAME && drills[i] < pilot - SAME)
      pilot = drills[i];
  return pilot;
}

dw_drill_passes
dw_drill_passes_from_solid (double to, const double *drills, int n)
{
  dw_drill_passes passes = { .n = 1, .drill = { pilot_for (to, drills, n) } };
  widen (&passes, passes.drill[0], to, drills, n);
  return passes;
}

double
dw_drill_passes_check (double size, int grade, const double *drills, int n)
{
  const double zone = dw_tolerance_it (grade, size);
  /* just below the largest hole that counts as well drilled, so that a drill of that size is one
   * that must not go in */
  const double above = size + fmax (0.0, (isnan (zone) ? 0.0 : zone) - 2.0 * SAME);
  const dw_drill_size *next = dw_drill_next (above);
  double check = next != NULL ? next->diameter : (double)NAN;
  for (int i = 0; i < n; i++)
    if (drills[i] > above + SAME && !(drills[i] >= check))
      check = drills[i];
  return check;
}
