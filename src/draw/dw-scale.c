/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-scale.h"

#include <math.h>

double
dw_scale_share (const dw_scale *scale, double value)
{
  if (!scale->is_log)
    return (value - scale->low) / (scale->high - scale->low);
  return value > 0.0 ? log (value / scale->low) / log (scale->high / scale->low) : -HUGE_VAL;
}

double
dw_scale_at_share (const dw_scale *scale, double share)
{
  if (scale->is_log)
    return scale->low * pow (scale->high / scale->low, share);
  return scale->low + share * (scale->high - scale->low);
}

double
dw_scale_place (const dw_scale *scale, double value)
{
  return scale->start + dw_scale_share (scale, value) * (scale->end - scale->start);
}

double
dw_scale_value (const dw_scale *scale, double place)
{
  return dw_scale_at_share (scale, (place - scale->start) / (scale->end - scale->start));
}

dw_step
dw_step_next (dw_step step)
{
  switch (step.mantissa)
    {
    case 1:
      return (dw_step){ 2, step.exponent };
    case 2:
      return (dw_step){ 5, step.exponent };
    default:
      return (dw_step){ 1, step.exponent + 1 };
    }
}

dw_step
dw_step_at_least (double least)
{
  /* a hair of slack: 0.1 is not to be taken for more than 0.1 */
  const double slack = least * (1.0 - 1e-9);
  dw_step step = { 1, (int)floor (log10 (least)) };
  while (dw_step_times (step, 1.0) < slack)
    step = dw_step_next (step);
  return step;
}

double
dw_step_times (dw_step step, double count)
{
  const double tens = pow (10.0, fabs ((double)step.exponent));
  return step.exponent < 0 ? count * step.mantissa / tens : count * step.mantissa * tens;
}

int
dw_step_decimals (dw_step step)
{
  return step.exponent < 0 ? -step.exponent : 0;
}
