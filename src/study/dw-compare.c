/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-compare.h"

#include <assert.h>
#include <math.h>

double
dw_compare_change (double before, double after)
{
  if (before == after)
    return 0.0;
  if (before == 0.0)
    return NAN;
  return (after - before) / fabs (before) * 100.0;
}

dw_change
dw_compare_judge (double percent)
{
  if (isnan (percent))
    return DW_CHANGE_UNKNOWN;
  if (fabs (percent) <= DW_COMPARE_SAME)
    return DW_CHANGE_SAME;
  return percent < 0.0 ? DW_CHANGE_LESS : DW_CHANGE_MORE;
}

void
dw_compare_read (const dw_figures *a, const dw_figures *b, dw_comparison *out)
{
  dw_comparison r = { .a = *a, .b = *b };
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      for (int i = 0; i < DW_N_SPEEDS; i++)
        {
          r.force[s][i] = dw_compare_change (a->point[s][i].force, b->point[s][i].force);
          r.c[s][i] = dw_compare_change (a->c[s][i], b->c[s][i]);
        }
      r.pack[s] = dw_compare_change (a->pack[s], b->pack[s]);
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    r.rebound_share[i] = dw_compare_change (a->rebound_share[i], b->rebound_share[i]);
  *out = r;
}

static dw_status
read_figures (const dw_damper *damper, double oil_temperature, const double speeds[DW_N_SPEEDS],
              dw_figures *out, dw_error *err)
{
  dw_force_model model;
  const dw_status status = dw_force_model_make (damper, oil_temperature, &model, err);
  return status != DW_OK ? status : dw_figures_read (&model, speeds, out, err);
}

dw_status
dw_compare_figures (const dw_damper *a, const dw_damper *b, double oil_temperature,
                    const double speeds[DW_N_SPEEDS], dw_comparison *out, dw_error *err)
{
  assert (a != NULL && b != NULL && out != NULL);

  dw_figures figures[2];
  dw_status status = read_figures (a, oil_temperature, speeds, &figures[0], err);
  if (status == DW_OK)
    status = read_figures (b, oil_temperature, speeds, &figures[1], err);
  if (status == DW_OK)
    dw_compare_read (&figures[0], &figures[1], out);
  return status;
}
