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

dw_drill_passes
dw_drill_passes_find (double from, double to, const double *drills, int n)
{
  dw_drill_passes passes = { .n = 0 };
  double at = from;
  while (to > at + SAME && passes.n < DW_DRILL_MAX_PASSES)
    {
      /* the last place is kept for the size asked for */
      const double drill = passes.n + 1 < DW_DRILL_MAX_PASSES ? next_drill (at, to, drills, n) : to;
      if (drill - at > DW_DRILL_MOST_PER_PASS + 2.0 * SAME)
        passes.has_large_pass = true;
      passes.drill[passes.n++] = at = drill;
    }
  return passes;
}
