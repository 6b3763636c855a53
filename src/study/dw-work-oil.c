/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-work-oil.h"

#include <assert.h>
#include <math.h>

static const double PI = 3.141592653589793;

static double
disc_area (double diameter)
{
  return 0.25 * PI * diameter * diameter;
}

/* The piston travels the stroke, so the cylinder is at least that and the piston long. Of this room
 * the piston takes its own, but for its holes, and the shaft half of its travel: the shaft is half in
 * where the damper spends its time, and what it displaces from there on the gas space takes up. What
 * is left at the ends past the stroke, the oil that rests in the gas space's side, and gas that an
 * emulsion holds are not known: the estimate is a floor for most dampers. */
static double
estimated_filling (const dw_damper *damper)
{
  const dw_piston *piston = &damper->piston;
  double holes = 0.0;
  for (int i = 0; i < piston->n_holes; i++)
    holes += piston->holes[i].count * disc_area (piston->holes[i].diameter);
  const double gap = disc_area (damper->body.bore)
                     - disc_area (damper->body.bore - 2.0 * piston->clearance);
  return (disc_area (damper->body.bore) - 0.5 * dw_damper_rod_area (damper)) * damper->body.stroke
         + (gap + holes) * piston->thickness;
}

double
dw_work_filling (const dw_damper *damper, bool *is_measured)
{
  assert (damper != NULL && is_measured != NULL);

  *is_measured = damper->body.has_filling;
  return *is_measured ? damper->body.filling : estimated_filling (damper);
}

int
dw_work_oil_parts (const dw_oil *oil, double filling, dw_work_oil out[DW_MAX_OIL_PARTS])
{
  assert (oil != NULL && out != NULL);
  assert (oil->kind != DW_OIL_BLEND || (oil->n_parts > 0 && oil->n_parts <= DW_MAX_OIL_PARTS));

  if (oil->kind != DW_OIL_BLEND)
    {
      out[0] = (dw_work_oil){ oil->kind == DW_OIL_NOMINAL ? oil->viscosity : (double)NAN, filling,
                              2.0 * filling };
      return 1;
    }
  for (int i = 0; i < oil->n_parts; i++)
    {
      const double share = oil->parts[i].share * filling;
      out[i] = (dw_work_oil){ oil->parts[i].viscosity, share, 2.0 * share };
    }
  return oil->n_parts;
}
