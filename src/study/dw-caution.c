/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-caution.h"

#include <assert.h>
#include <math.h>

/* Silicone is a nominal oil or a blend; how a measured one of another kind thins is not known. */
static bool
is_taken_as_newtonian (const dw_oil *oil)
{
  return !oil->has_thinning && oil->kind != DW_OIL_MEASURED;
}

/* What a caution looks at, and from where on it holds; infinite = never. */
static void
look_at (const dw_damper *damper, const dw_force_point *point, double value[DW_N_CAUTIONS],
         double limit[DW_N_CAUTIONS])
{
  const double never = HUGE_VAL;

  value[DW_CAUTION_RESOLVED] = point->reynolds;
  limit[DW_CAUTION_RESOLVED] = DW_HOLE_RESOLVED_RE;
  value[DW_CAUTION_TURBULENT] = point->reynolds;
  limit[DW_CAUTION_TURBULENT] = DW_HOLE_LAMINAR_RE;
  value[DW_CAUTION_THINNING] = point->shear_rate;
  limit[DW_CAUTION_THINNING] = is_taken_as_newtonian (&damper->oil) ? DW_CAUTION_SHEAR_RATE : never;
  value[DW_CAUTION_STRESS] = dw_stack_stress_ratio (&damper->valve, point->root_moment);
  limit[DW_CAUTION_STRESS] = 1.0;
  value[DW_CAUTION_AT_STOP] = point->at_stop ? 1.0 : 0.0;
  limit[DW_CAUTION_AT_STOP] = 0.5;
}

size_t
dw_caution_find (const dw_damper *damper, dw_stroke stroke, const dw_force_point *points, size_t n,
                 dw_caution out[DW_N_CAUTIONS])
{
  assert (damper != NULL && (points != NULL || n == 0) && out != NULL);

  bool holds[DW_N_CAUTIONS] = { false };
  dw_caution found[DW_N_CAUTIONS];
  for (size_t i = 0; i < n; i++)
    {
      double value[DW_N_CAUTIONS];
      double limit[DW_N_CAUTIONS];
      look_at (damper, &points[i], value, limit);
      for (int k = 0; k < DW_N_CAUTIONS; k++)
        if (value[k] > limit[k])
          {
            if (!holds[k])
              found[k] = (dw_caution){ (dw_caution_kind)k, stroke, points[i].speed, value[k] };
            holds[k] = true;
            found[k].worst = fmax (found[k].worst, value[k]);
          }
    }

  size_t n_found = 0;
  for (int k = 0; k < DW_N_CAUTIONS; k++)
    if (holds[k])
      out[n_found++] = found[k];
  return n_found;
}
