/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-stack.h"

#include <math.h>

static double
plane_modulus (const dw_shim *shim)
{
  return shim->modulus / (1.0 - shim->poisson * shim->poisson);
}

/* Height of the neutral plane of stuck leaves above the first leaf's lower face. */
static double
neutral_plane (const dw_valve *valve)
{
  double z = 0.0;
  double sum = 0.0;
  double moment = 0.0;

  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *s = &valve->shims[i];
      const double t = s->thickness * s->count;
      sum += plane_modulus (s) * t;
      moment += plane_modulus (s) * t * (z + t / 2.0);
      z += t;
    }
  return sum > 0.0 ? moment / sum : 0.0;
}

/* Integral of E/(1 - nu^2) (z - z0)^2 over the thickness. */
static double
stuck_rigidity (const dw_valve *valve)
{
  const double z0 = neutral_plane (valve);
  double z = -z0;
  double d = 0.0;

  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *s = &valve->shims[i];
      const double top = z + s->thickness * s->count;
      d += plane_modulus (s) * (top * top * top - z * z * z) / 3.0;
      z = top;
    }
  return d;
}

dw_stack
dw_stack_make (const dw_valve *valve)
{
  dw_stack stack = { 0 };
  double weighted = 0.0;

  if (valve->n_shims == 0)
    return stack;
  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *s = &valve->shims[i];
      const double t = s->thickness;
      const double d = s->count * plane_modulus (s) * t * t * t / 12.0;
      stack.loose += d;
      weighted += d * s->poisson;
      stack.membrane += s->count * s->modulus * t;
      stack.thickness += s->count * t;
      stack.leaves += s->count;
    }
  stack.poisson = weighted / stack.loose;
  /* one leaf is its own bound: rounding must not part the two */
  stack.stuck = stack.leaves == 1 ? stack.loose : stuck_rigidity (valve);
  stack.stiffness = stack.loose + valve->leaf_coupling * (stack.stuck - stack.loose);
  return stack;
}

double
dw_stack_equivalent_thickness (double rigidity, double modulus, double poisson)
{
  return cbrt (12.0 * rigidity * (1.0 - poisson * poisson) / modulus);
}

double
dw_stack_stress_ratio (const dw_valve *valve, double root_moment)
{
  const dw_stack stack = dw_stack_make (valve);
  double worst = 0.0;

  if (stack.leaves == 0)
    return 0.0;

  const double curvature = root_moment / stack.stiffness;
  double z = -neutral_plane (valve);
  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *s = &valve->shims[i];
      const double top = z + s->thickness * s->count;
      const double loose = s->thickness / 2.0;
      const double stuck = fmax (fabs (z), fabs (top));
      const double reach = loose + valve->leaf_coupling * (stuck - loose);
      worst = fmax (worst, plane_modulus (s) * curvature * reach / s->strength);
      z = top;
    }
  return worst;
}
