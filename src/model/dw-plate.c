/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-plate.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>
#include <stddef.h>

/* ---- linear plate, Roark ---- */

/* C1..C9 with x = b/a; L3, L6, L9 are C3, C6, C9 at r0/a. */
static double
c3 (double x)
{
  return x / 4.0 * ((x * x + 1.0) * -log (x) + x * x - 1.0);
}

static double
c6 (double x)
{
  return x / 4.0 * (x * x - 1.0 - 2.0 * log (x));
}

static double
c9 (double x, double nu)
{
  return x * ((1.0 + nu) / 2.0 * -log (x) + (1.0 - nu) / 4.0 * (1.0 - x * x));
}

static double
c2 (double x)
{
  return 0.25 * (1.0 - x * x * (1.0 - 2.0 * log (x)));
}

static double
c8 (double x, double nu)
{
  return 0.5 * (1.0 + nu + (1.0 - nu) * x * x);
}

static double
l11 (double x)
{
  const double x2 = x * x;
  return (1.0 + 4.0 * x2 - 5.0 * x2 * x2 + 4.0 * x2 * (2.0 + x2) * log (x)) / 64.0;
}

static double
l14 (double x)
{
  const double x2 = x * x;
  return (1.0 - x2 * x2 + 4.0 * x2 * log (x)) / 16.0;
}

static double
l17 (double x, double nu)
{
  const double x2 = x * x;
  return 0.25 * (1.0 - (1.0 - nu) / 4.0 * (1.0 - x2 * x2) - x2 * (1.0 - (1.0 + nu) * log (x)));
}

dw_plate_constants
dw_plate_constants_make (double inner_ratio, double load_ratio, double poisson)
{
  const double x = inner_ratio;
  const double y = load_ratio;
  const double nu = poisson;
  dw_plate_constants k = { { 0 }, { 0 } };

  k.c[1] = (1.0 + nu) / 2.0 * x * -log (x) + (1.0 - nu) / 4.0 * (1.0 / x - x);
  k.c[2] = c2 (x);
  k.c[3] = c3 (x);
  k.c[4] = 0.5 * ((1.0 + nu) * x + (1.0 - nu) / x);
  k.c[5] = 0.5 * (1.0 - x * x);
  k.c[6] = c6 (x);
  k.c[7] = 0.5 * (1.0 - nu * nu) * (1.0 / x - x);
  k.c[8] = c8 (x, nu);
  k.c[9] = c9 (x, nu);
  k.l[3] = c3 (y);
  k.l[6] = c6 (y);
  k.l[9] = c9 (y, nu);
  k.l[11] = l11 (y);
  k.l[14] = l14 (y);
  k.l[17] = l17 (y, nu);
  return k;
}

dw_plate_answer
dw_plate_ring_line (const dw_plate *plate, double radius, double line)
{
  const double a = plate->outer;
  const double b = plate->inner;
  const double r0 = radius;
  const double D = plate->stiffness;
  const dw_plate_constants k = dw_plate_constants_make (b / a, r0 / a, plate->poisson);
  const double Mrb = -(line * a / k.c[8]) * (r0 * k.c[9] / b - k.l[9]);
  const double Qb = line * r0 / b;

  /* Roark counts deflection against the load: the sign is turned here. */
  return (dw_plate_answer){
    .rim = -(Mrb * a * a * k.c[2] / D + Qb * a * a * a * k.c[3] / D
             - line * a * a * a * k.l[3] / D),
    .slope = -(Mrb * a * k.c[5] / D + Qb * a * a * k.c[6] / D - line * a * a * k.l[6] / D),
    .root_moment = fabs (Mrb),
  };
}

dw_plate_answer
dw_plate_pressure_outside (const dw_plate *plate, double radius, double pressure)
{
  const double a = plate->outer;
  const double b = plate->inner;
  const double r0 = radius;
  const double q = pressure;
  const double D = plate->stiffness;
  const dw_plate_constants k = dw_plate_constants_make (b / a, r0 / a, plate->poisson);
  const double Mrb = -(q * a * a / k.c[8]) * (k.c[9] * (a * a - r0 * r0) / (2.0 * a * b) - k.l[17]);
  const double Qb = q * (a * a - r0 * r0) / (2.0 * b);
  const double a4 = a * a * a * a;

  return (dw_plate_answer){
    .rim = -(Mrb * a * a * k.c[2] / D + Qb * a * a * a * k.c[3] / D - q * a4 * k.l[11] / D),
    .slope = -(Mrb * a * k.c[5] / D + Qb * a * a * k.c[6] / D - q * a * a * a * k.l[14] / D),
    .root_moment = fabs (Mrb),
  };
}

double
dw_plate_deflection (const dw_plate *plate, double load_radius, double line, double radius)
{
  const double b = plate->inner;
  const double r = radius;
  const double D = plate->stiffness;
  const dw_plate_constants k = dw_plate_constants_make (b / plate->outer,
                                                        load_radius / plate->outer, plate->poisson);
  const double Mrb = -(line * plate->outer / k.c[8]) * (load_radius * k.c[9] / b - k.l[9]);
  const double Qb = line * load_radius / b;

  if (r <= b)
    return 0.0;
  /* Roark's general field: F2 and F3 are C2 and C3 at b/r; G3 is C3 at r0/r, past r0 only. */
  double y = Mrb * r * r * c2 (b / r) / D + Qb * r * r * r * c3 (b / r) / D;
  if (r > load_radius)
    y -= line * r * r * r * c3 (load_radius / r) / D;
  return -y;
}

/* ---- large deflection, Foppl-von Karman ----
 *
 * Slope beta = dw/dr and stress function psi = r N_r on the nodes r_i = b + i h:
 *
 *     r beta'' + beta' - beta/r = (psi beta - r Q(r))/D      r Q(r) = load outside r / (2 pi)
 *     r psi''  + psi'  - psi/r  = -(E t/2) beta^2
 *
 * Hub: beta = 0 and no in-plane strain, psi' = nu psi/b. Rim: M_r = 0, beta' = -nu beta/a, and
 * N_r = 0, psi = 0. Made dimensionless with a, D and t so that any input is of order one. */

enum
{
  NODES = 241,
  MOST_NEWTON_STEPS = 60
};

typedef struct
{
  double x[NODES];    /* r/a */
  double load[NODES]; /* r Q a/D * reference slope */
  double step;        /* node distance / a */
  double poisson;
  double membrane; /* E t a^2/D, multiplies beta^2/2 */
} fvk_problem;

typedef struct
{
  double beta[NODES];
  double psi[NODES];
} fvk_field;

/* 2x2 block row: lower, diagonal and upper couple beta and psi of the neighbours. */
typedef struct
{
  double lower[2]; /* own variable only: no cross terms between nodes */
  double diagonal[2][2];
  double upper[2];
  double residual[2];
} fvk_row;

static fvk_row
fvk_inner_row (const fvk_problem *p, const fvk_field *f, int i)
{
  const double h = p->step;
  const double x = p->x[i];
  const double lo = x / (h * h) - 1.0 / (2.0 * h);
  const double up = x / (h * h) + 1.0 / (2.0 * h);
  const double mid = -2.0 * x / (h * h) - 1.0 / x;
  const double b = f->beta[i];
  const double s = f->psi[i];

  return (fvk_row){
    .lower = { lo, lo },
    .upper = { up, up },
    .diagonal = { { mid - s, -b }, { p->membrane * b, mid } },
    .residual = { lo * f->beta[i - 1] + mid * b + up * f->beta[i + 1] - s * b + p->load[i],
                  lo * f->psi[i - 1] + mid * s + up * f->psi[i + 1] + p->membrane / 2.0 * b * b },
  };
}

/* Boundary rows use a mirrored node outside the plate, taken out by the boundary condition. */
static fvk_row
fvk_row_at (const fvk_problem *p, const fvk_field *f, int i)
{
  const double h = p->step;
  const double x = p->x[i];
  const double lo = x / (h * h) - 1.0 / (2.0 * h);
  const double up = x / (h * h) + 1.0 / (2.0 * h);
  const double mid = -2.0 * x / (h * h) - 1.0 / x;
  const double b = f->beta[i];
  const double s = f->psi[i];

  if (i > 0 && i < NODES - 1)
    return fvk_inner_row (p, f, i);
  if (i == 0)
    {
      /* beta = 0; psi_-1 = psi_1 - 2 h nu psi_0/x */
      const double mid_psi = mid - lo * 2.0 * h * p->poisson / x;
      return (fvk_row){
        .upper = { 0.0, up + lo },
        .diagonal = { { 1.0, 0.0 }, { p->membrane * b, mid_psi } },
        .residual = { b, mid_psi * s + (up + lo) * f->psi[1] + p->membrane / 2.0 * b * b },
      };
    }
  /* beta_N = beta_N-2 - 2 h nu beta_N-1/x; psi = 0 */
  const double mid_beta = mid - up * 2.0 * h * p->poisson / x;
  return (fvk_row){
    .lower = { lo + up, 0.0 },
    .diagonal = { { mid_beta - s, -b }, { 0.0, 1.0 } },
    .residual = { (lo + up) * f->beta[i - 1] + mid_beta * b - s * b + p->load[i], s },
  };
}

/* One Newton step by block elimination; returns the largest change of the slope. */
static double
fvk_newton (const fvk_problem *p, fvk_field *f)
{
  double g[NODES][2][2]; /* eliminated upper blocks */
  double e[NODES][2];    /* eliminated right sides */

  for (int i = 0; i < NODES; i++)
    {
      const fvk_row row = fvk_row_at (p, f, i);
      double m[2][2] = { { row.diagonal[0][0], row.diagonal[0][1] },
                         { row.diagonal[1][0], row.diagonal[1][1] } };
      double rhs[2] = { -row.residual[0], -row.residual[1] };
      if (i > 0)
        for (int k = 0; k < 2; k++)
          {
            m[k][0] -= row.lower[k] * g[i - 1][k][0];
            m[k][1] -= row.lower[k] * g[i - 1][k][1];
            rhs[k] -= row.lower[k] * e[i - 1][k];
          }
      const double det = m[0][0] * m[1][1] - m[0][1] * m[1][0];
      e[i][0] = (m[1][1] * rhs[0] - m[0][1] * rhs[1]) / det;
      e[i][1] = (m[0][0] * rhs[1] - m[1][0] * rhs[0]) / det;
      g[i][0][0] = m[1][1] * row.upper[0] / det;
      g[i][0][1] = -m[0][1] * row.upper[1] / det;
      g[i][1][0] = -m[1][0] * row.upper[0] / det;
      g[i][1][1] = m[0][0] * row.upper[1] / det;
    }

  double change = 0.0;
  double next[2] = { 0.0, 0.0 };
  for (int i = NODES - 1; i >= 0; i--)
    {
      const double d0 = e[i][0] - g[i][0][0] * next[0] - g[i][0][1] * next[1];
      const double d1 = e[i][1] - g[i][1][0] * next[0] - g[i][1][1] * next[1];
      f->beta[i] += d0;
      f->psi[i] += d1;
      change = fmax (change, fabs (d0));
      next[0] = d0;
      next[1] = d1;
    }
  return change;
}

/* Lift by integrating the slope; trapezoid, as fine as the differences. */
static void
fvk_lifts (const fvk_problem *p, const fvk_field *f, double ring, double *at_ring, double *at_rim)
{
  double w = 0.0;
  *at_ring = 0.0;
  for (int i = 1; i < NODES; i++)
    {
      const double before = w;
      w += p->step * (f->beta[i - 1] + f->beta[i]) / 2.0;
      if (p->x[i - 1] <= ring && ring <= p->x[i])
        *at_ring = before + (ring - p->x[i - 1]) / p->step * (w - before);
    }
  *at_rim = w;
}

/* Load that presses outside radius x, over 2 pi, per unit pressure and radius^2. */
static double
load_outside (double x, double inner, double outer)
{
  const double from = fmax (x, inner);
  return from >= outer ? 0.0 : (outer * outer - from * from) / 2.0;
}

/* Newton under a load that grows in steps no larger than the last one allowed. */
static bool
fvk_solve (fvk_problem *p, fvk_field *f, const double full_load[NODES])
{
  double reached = 0.0;
  double stride = 1.0;

  for (int tries = 0; tries < 200 && reached < 1.0; tries++)
    {
      const fvk_field before = *f;
      const double goal = fmin (1.0, reached + stride);
      double change = HUGE_VAL;
      for (int i = 0; i < NODES; i++)
        p->load[i] = goal * full_load[i];
      for (int k = 0; k < MOST_NEWTON_STEPS && change > 1e-12 && !isnan (change); k++)
        change = fvk_newton (p, f);
      if (change <= 1e-12)
        {
          reached = goal;
          stride *= 2.0;
        }
      else
        {
          *f = before;
          stride /= 4.0;
        }
    }
  return reached >= 1.0;
}

dw_status
dw_plate_lift (const dw_plate *plate, double membrane, double ring_inner, double ring_outer,
               double pressure, dw_shim_lift *out, dw_error *err)
{
  assert (plate != NULL && out != NULL);
  assert (ring_inner >= plate->inner && ring_outer <= plate->outer && ring_inner < ring_outer);

  const double a = plate->outer;
  const double D = plate->stiffness;
  const double b = plate->inner;
  fvk_problem p = { .step = (1.0 - b / a) / (NODES - 1),
                    .poisson = plate->poisson,
                    .membrane = membrane * a * a / D };
  fvk_field f = { { 0.0 }, { 0.0 } };
  double full_load[NODES];

  for (int i = 0; i < NODES; i++)
    {
      p.x[i] = b / a + i * p.step;
      full_load[i] = pressure * a * a * a / D
                     * load_outside (p.x[i], ring_inner / a, ring_outer / a);
    }
  p.x[NODES - 1] = 1.0;

  if (!fvk_solve (&p, &f, full_load))
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "valve.shim", -1,
                    "large-deflection lift did not settle at %.6g kPa", pressure / 1e3);

  dw_shim_lift lift;
  fvk_lifts (&p, &f, (ring_inner + ring_outer) / 2.0 / a, &lift.ring, &lift.rim);
  lift.ring *= a;
  lift.rim *= a;
  lift.rim_linear = dw_plate_pressure_outside (plate, ring_inner, pressure).rim
                    - (ring_outer < a ? dw_plate_pressure_outside (plate, ring_outer, pressure).rim
                                      : 0.0);
  *out = lift;
  return DW_OK;
}
