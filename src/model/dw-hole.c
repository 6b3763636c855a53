/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-hole.h"

#include <assert.h>
#include <math.h>

static const double PI = 3.14159265358979323846;

/* Fit of K to the resolved table, symbols as in the equation of dw_hole_loss():
 * K = [a(s) - K_ENTRY exp(-(L/(d Re))/ENTRY_LENGTH)] Re^GROWTH/(Re^GROWTH + RE_HALF^GROWTH) */
static const double K_SHARE = 2.65;
static const double K_ENTRY = 0.51;
static const double ENTRY_LENGTH = 0.0112;
static const double GROWTH = 1.69;
static const double LN_RE_HALF = 2.884800712846709; /* ln 17.9 */

/* exp (-40) is 4e-18: nothing beside 1, and slow to compute where it underflows. */
static const double NO_ENTRY = 40.0;

/* Newton doubles the good digits with each step: after one this small nothing is left to gain. */
static const double VELOCITY_STEP = 1e-10;

/* The straight line in s is resolved up to 0.077; from here on it bends. */
static const double SHARE_STRAIGHT = 0.1;

double
dw_hole_loss_by_share (double share)
{
  if (share <= SHARE_STRAIGHT)
    return DW_HOLE_K_LONG - K_SHARE * share;
  const double above = DW_HOLE_K_LONG - K_SHARE * SHARE_STRAIGHT - K_ENTRY;
  return K_ENTRY + above * exp (-K_SHARE * (share - SHARE_STRAIGHT) / above);
}

double
dw_hole_loss (double re, double length_ratio, double share)
{
  if (re <= 0.0)
    return 0.0;
  const double entry = exp (-length_ratio / (re * ENTRY_LENGTH));
  const double growth = 1.0 / (1.0 + exp (GROWTH * (LN_RE_HALF - log (re))));
  return (dw_hole_loss_by_share (share) - K_ENTRY * entry) * growth;
}

/* S = (8/Re)^12 + (A + B)^-1.5 of Churchill's equation f = 8 S^(1/12), and its slope. */
static double
churchill_sum (double re, double relative_rough, double *slope)
{
  const double c = pow (7.0 / re, 0.9);
  const double ln_term = -log (c + 0.27 * relative_rough);
  const double a = pow (2.457 * ln_term, 16.0);
  const double b = pow (37530.0 / re, 16.0);
  const double laminar = pow (8.0 / re, 12.0);
  const double da = 16.0 * a / ln_term * 0.9 * c / ((c + 0.27 * relative_rough) * re);
  const double db = -16.0 * b / re;
  const double turbulent = pow (a + b, -1.5);

  if (slope != NULL)
    *slope = -12.0 * laminar / re - 1.5 * turbulent / (a + b) * (da + db);
  return laminar + turbulent;
}

double
dw_churchill_friction (double re, double relative_rough)
{
  return 8.0 * pow (churchill_sum (re, relative_rough, NULL), 1.0 / 12.0);
}

/* Factor on the Poiseuille part above DW_HOLE_LAMINAR_RE: Churchill over laminar, scaled to
 * start at exactly 1; @p slope is d factor/d Re. */
static double
pipe_factor (double re, double *slope)
{
  double s_slope;
  const double s = churchill_sum (re, 0.0, &s_slope);
  const double s_start = churchill_sum (DW_HOLE_LAMINAR_RE, 0.0, NULL);
  const double factor = re / DW_HOLE_LAMINAR_RE * pow (s / s_start, 1.0 / 12.0);

  *slope = factor * (1.0 / re + s_slope / (12.0 * s));
  return factor;
}

void
dw_hole_flow_init (dw_hole_flow *flow, const dw_fluid *fluid, double diameter, double length,
                   int count, double share_alone, double share_all)
{
  assert (diameter > 0.0 && length > 0.0 && count >= 1);

  const double mu = fluid->dynamic;
  *flow = (dw_hole_flow){
    .diameter = diameter,
    .area = count * PI / 4.0 * diameter * diameter,
    .ends = 6.0 * PI * mu / diameter,
    .pipe = 32.0 * mu * length / (diameter * diameter),
    .half_density = fluid->density / 2.0,
    .re_per_velocity = diameter / fluid->viscosity,
    .entry = length / diameter / ENTRY_LENGTH,
    .k_alone = dw_hole_loss_by_share (share_alone),
    .k_drop = dw_hole_loss_by_share (share_alone) - dw_hole_loss_by_share (share_all),
    .shear_per_velocity = 8.0 / diameter,
    .thinning_rate = fluid->thinning_rate,
    .thinning_exponent = fluid->thinning_exponent,
  };
}

/* The kinetic part, shared by both oils: value, slope in V and in the opening.
 * @p re_slope is dRe/dV. */
static inline dw_hole_drop
kinetic_drop (const dw_hole_flow *flow, double v, double re, double re_slope, double opening,
              double kinetic)
{
  const double lag = flow->entry / re;
  const double entry = lag < NO_ENTRY ? exp (-lag) : 0.0;
  const double growth = 1.0 / (1.0 + exp (GROWTH * (LN_RE_HALF - log (re))));
  const double level = flow->k_alone - opening * flow->k_drop - K_ENTRY * entry;
  const double k = level * growth;
  const double k_slope = growth * (level * (1.0 - growth) * GROWTH - K_ENTRY * entry * lag) / re;
  const double full_head = flow->half_density * v;
  const double head = kinetic * full_head;

  return (dw_hole_drop){ .pressure = head * v * k,
                         .by_velocity = head * (2.0 * k + v * k_slope * re_slope),
                         .by_opening = -head * v * flow->k_drop * growth,
                         .by_kinetic = full_head * v * k };
}

/* The rare cases: thinning oil, or flow past the laminar limit. */
static dw_hole_drop
general_drop (const dw_hole_flow *flow, double v, double opening, double kinetic)
{
  const double rate = v * flow->shear_per_velocity;
  const double thin = dw_carreau (rate, flow->thinning_rate, flow->thinning_exponent);
  const double x = rate / flow->thinning_rate;
  /* d ln(viscosity)/d ln(V), between n - 1 and 0 */
  const double bend = (flow->thinning_exponent - 1.0) * (x * x / (1.0 + x * x));
  const double re = v * flow->re_per_velocity / thin;
  const double re_slope = flow->re_per_velocity / thin * (1.0 - bend);
  double factor = 1.0;
  double factor_slope = 0.0;

  if (re > DW_HOLE_LAMINAR_RE)
    factor = pipe_factor (re, &factor_slope);

  dw_hole_drop drop = kinetic_drop (flow, v, re, re_slope, opening, kinetic);
  drop.pressure += thin * (flow->ends + flow->pipe * factor) * v;
  drop.by_velocity += thin * (flow->ends + flow->pipe * factor) * (1.0 + bend)
                      + thin * flow->pipe * factor_slope * re_slope * v;
  return drop;
}

dw_hole_drop
dw_hole_drop_at (const dw_hole_flow *flow, double velocity, double opening, double kinetic)
{
  const double viscous = flow->ends + flow->pipe;
  const double re = velocity * flow->re_per_velocity;

  /* Below this the kinetic part is under one part in 1e18 of the viscous one. */
  if (re < 1e-9)
    return (dw_hole_drop){ viscous * velocity, viscous, 0.0, 0.0 };
  if (re > DW_HOLE_LAMINAR_RE || flow->thinning_exponent < 1.0)
    return general_drop (flow, velocity, opening, kinetic);

  dw_hole_drop drop = kinetic_drop (flow, velocity, re, flow->re_per_velocity, opening, kinetic);
  drop.pressure += viscous * velocity;
  drop.by_velocity += viscous;
  return drop;
}

double
dw_hole_velocity_estimate (const dw_hole_flow *flow, double pressure, double kinetic, double *slope)
{
  /* K over the range of damper oils, between its rise and its high-Re value */
  const double a = kinetic * flow->half_density * (flow->k_alone - 0.3);
  const double b = flow->ends + flow->pipe;
  const double root = sqrt (b * b + 4.0 * a * pressure);

  *slope = 1.0 / root;
  /* the form of the quadratic's root that does not cancel for small pressures */
  return 2.0 * pressure / (b + root);
}

double
dw_hole_velocity (const dw_hole_flow *flow, double pressure, double opening, double kinetic)
{
  enum
  {
    MOST_STEPS = 200
  };
  double low = 0.0;
  double high = HUGE_VAL;
  double slope;
  double v = dw_hole_velocity_estimate (flow, pressure, kinetic, &slope);

  if (pressure <= 0.0)
    return 0.0;
  for (int i = 0; i < MOST_STEPS; i++)
    {
      const dw_hole_drop drop = dw_hole_drop_at (flow, v, opening, kinetic);
      if (drop.pressure < pressure)
        low = v;
      else
        high = v;
      const double step = (pressure - drop.pressure) / drop.by_velocity;
      double next = v + step;
      if (fabs (step) <= VELOCITY_STEP * v)
        return next;
      if (!(next > low && next < high))
        next = isinf (high) ? 2.0 * v : (low + high) / 2.0;
      v = next;
    }
  return v;
}
