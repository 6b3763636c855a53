/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-figures.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

dw_status
dw_figures_read (const dw_force_model *model, const double speeds[DW_N_SPEEDS], dw_figures *out,
                 dw_error *err)
{
  dw_figures f;

  for (int i = 0; i < DW_N_SPEEDS; i++)
    if (!(speeds[i] > (i == 0 ? 0.0 : speeds[i - 1])))
      return dw_fail (err, DW_ERR_RANGE, "speed", i, "%.6g m/s must lie above %.6g m/s", speeds[i],
                      i == 0 ? 0.0 : speeds[i - 1]);

  for (int s = 0; s < DW_N_STROKES; s++)
    {
      const dw_status status = dw_force_curve (model, (dw_stroke)s, speeds, DW_N_SPEEDS, f.point[s],
                                               err);
      if (status != DW_OK)
        return status;
      for (int i = 0; i < DW_N_SPEEDS; i++)
        f.c[s][i] = f.point[s][i].force / speeds[i];
      f.pack[s] = f.c[s][DW_HIGH] / f.c[s][DW_LOW];
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    f.rebound_share[i] = f.point[DW_REBOUND][i].force / f.point[DW_COMPRESSION][i].force;
  *out = f;
  return DW_OK;
}

dw_flow_shares
dw_flow_shares_of (const dw_force_point *point)
{
  const double all = point->flow_open + point->flow_covered + point->flow_leak;

  if (all <= 0.0)
    return (dw_flow_shares){ 0.0, 0.0, 0.0 };
  return (dw_flow_shares){ point->flow_open / all, point->flow_covered / all,
                           point->flow_leak / all };
}

double
dw_wheel_rate (double rate, double motion_ratio)
{
  return rate * motion_ratio * motion_ratio;
}

double
dw_wheel_damping (double c, double motion_ratio)
{
  return c * motion_ratio * motion_ratio;
}

double
dw_ride_frequency (double wheel_rate, double mass)
{
  return sqrt (wheel_rate / mass) / (2.0 * PI);
}

double
dw_damping_ratio (double wheel_c, double wheel_rate, double mass)
{
  return wheel_c / (2.0 * sqrt (wheel_rate * mass));
}

double
dw_figures_damping_ratio (const dw_figures *figures, const dw_damper *damper, int speed,
                          double mass)
{
  const double c = (figures->c[DW_COMPRESSION][speed] + figures->c[DW_REBOUND][speed]) / 2.0;
  return dw_damping_ratio (dw_wheel_damping (c, damper->motion_ratio),
                           dw_wheel_rate (damper->spring.rate, damper->motion_ratio), mass);
}
