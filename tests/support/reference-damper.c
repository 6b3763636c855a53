/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-damper.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

#include "model/dw-film.h"
#include "model/dw-oil.h"
#include "model/dw-plate.h"
#include "model/dw-stack.h"

/* The closed forms in the lengths (film resistance, load area, lobe), the plate and the oil are
 * judged against tables of their own; here they are taken as numbers. All flow equations are
 * written again. */
typedef struct
{
  const dw_damper *d;
  dw_stroke stroke;
  double speed;
  double mu, nu, rho;
  double area; /* ring */
  double open_share, all_share;
  double covered_area;
  bool shimmed, opening;
  double resistance, shape, lobe, compliance, slot; /* of the shim */
  double seat;
  double dp; /* of the outer question */
  double opening_now, kinetic_now;
  double q_open, q_covered, film_pressure;
} problem;

static double
brent (double (*f) (double, void *), void *data, double low, double high, bool *good)
{
  gsl_function function = { f, data };
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  double root = NAN;

  if (gsl_root_fsolver_set (solver, &function, low, high) != GSL_SUCCESS)
    *good = false;
  else
    {
      int status = GSL_CONTINUE;
      for (int i = 0; i < 200 && status == GSL_CONTINUE; i++)
        {
          if (gsl_root_fsolver_iterate (solver) != GSL_SUCCESS)
            break;
          status = gsl_root_test_interval (gsl_root_fsolver_x_lower (solver),
                                           gsl_root_fsolver_x_upper (solver), 0.0, 1e-14);
        }
      root = gsl_root_fsolver_root (solver);
    }
  gsl_root_fsolver_free (solver);
  return root;
}

/* ---- one hole ---- */

static double
high_re_loss (double s)
{
  if (s <= 0.1)
    return 2.13 - 2.65 * s;
  const double rest = 2.13 - 2.65 * 0.1 - 0.51;
  return 0.51 + rest * exp (-2.65 * (s - 0.1) / rest);
}

static double
churchill (double re)
{
  const double a = pow (2.457 * log (1.0 / pow (7.0 / re, 0.9)), 16);
  const double b = pow (37530.0 / re, 16);
  return 8.0 * pow (pow (8.0 / re, 12) + pow (a + b, -1.5), 1.0 / 12.0);
}

static double
hole_pressure (const problem *p, double diameter, double v, double kinetic)
{
  const double ratio = p->d->piston.thickness / diameter;
  double thin = 1.0;
  double friction = 1.0;

  if (v <= 0.0)
    return 0.0;
  if (p->d->oil.has_thinning)
    {
      const double x = 8.0 * v / diameter / p->d->oil.thinning_rate;
      thin = pow (1.0 + x * x, (p->d->oil.thinning_exponent - 1.0) / 2.0);
    }
  const double re = v * diameter / (p->nu * thin);
  if (re > 2000.0)
    friction = churchill (re) * re / (churchill (2000.0) * 2000.0);
  const double alone = high_re_loss (p->open_share);
  const double all = high_re_loss (p->all_share);
  const double k = (alone - p->opening_now * (alone - all) - 0.51 * exp (-ratio / re / 0.0112))
                   * pow (re, 1.69) / (pow (re, 1.69) + pow (17.9, 1.69));
  return thin * p->mu * v / diameter * (6.0 * M_PI + 32.0 * ratio * friction)
         + kinetic * k * p->rho * v * v / 2.0;
}

typedef struct
{
  const problem *p;
  double diameter, kinetic, pressure;
} hole_question;

static double
hole_surplus (double v, void *data)
{
  const hole_question *q = data;
  return hole_pressure (q->p, q->diameter, v, q->kinetic) - q->pressure;
}

static double
holes_flow (const problem *p, bool covered, double pressure, double kinetic, bool *good)
{
  double flow = 0.0;

  if (pressure <= 0.0)
    return 0.0;
  for (int i = 0; i < p->d->piston.n_holes; i++)
    {
      const dw_holes *h = &p->d->piston.holes[i];
      if ((h->covered && p->shimmed) != covered)
        continue;
      hole_question q = { p, h->diameter, kinetic, pressure };
      double high = 1e-9;
      while (hole_surplus (high, &q) < 0.0)
        high *= 8.0;
      const double v = brent (hole_surplus, &q, 0.0, high, good);
      flow += h->count * M_PI / 4.0 * h->diameter * h->diameter * v;
    }
  return flow;
}

/* ---- film ---- */

typedef struct
{
  const problem *p;
  double lift, pressure;
} film_question;

static double
film_surplus_of_flow (double q, void *data)
{
  const film_question *f = data;
  const problem *p = f->p;
  const double rim = p->d->valve.outer_diameter / 2.0;
  const double b = 2.0 * M_PI * rim / p->lobe;
  const double w = f->lift;
  const double h = w * p->shape;
  const double x = fmin (h / p->slot, 3.75);
  const double fade = fmin (1.0, pow (3.75 / (h / p->slot), 2));
  const double re = q / (b * p->nu);
  const double s = re / (re + 77.0 * (1.0 - 0.143 * x));
  const double vb = q / (b * w);
  const double vs = q / p->covered_area;
  const double c = 14.4 + 4.3 * pow (x, 2.24);

  return 12.0 * p->mu * q * p->resistance / (2.0 * M_PI * w * w * w) + c * p->mu * q / (b * h * h)
         + p->rho / 2.0 * (1.97 * vb * vb + 2.15 * fade * vs * vs) * s - f->pressure;
}

static double
film_flow_at (const problem *p, double pressure, double lift, bool *good)
{
  film_question f = { p, lift, pressure };
  double high = 1e-15;

  while (film_surplus_of_flow (high, &f) < 0.0)
    high *= 8.0;
  return brent (film_surplus_of_flow, &f, 0.0, high, good);
}

/* A larger lift never passes less oil than a smaller one: the largest flow up to this lift, by
 * golden section where the flow falls. */
static double
film_flow (const problem *p, double pressure, double lift, bool *good)
{
  const double resolved = 3.75 * p->slot / p->shape * (1.0 - 1e-12);
  const double golden = (sqrt (5.0) - 1.0) / 2.0;
  const double flow = film_flow_at (p, pressure, lift, good);
  const double end = fmin (lift, resolved);
  double low = 0.0;
  double high = end;

  /* a slightly smaller lift needs more pressure for the same flow: nothing falls */
  film_question below = { p, end * (1.0 - 1e-4), pressure };
  film_question at = { p, end, pressure };
  if (film_surplus_of_flow (flow, &below) >= film_surplus_of_flow (flow, &at))
    return flow;
  for (int i = 0; i < 60; i++)
    {
      const double a = high - golden * (high - low);
      const double b = low + golden * (high - low);
      if (a > 0.0 && film_flow_at (p, pressure, a, good) > film_flow_at (p, pressure, b, good))
        high = b;
      else
        low = a;
    }
  return fmax (flow, film_flow_at (p, pressure, (low + high) / 2.0, good));
}

/* Film and seat flow less hole flow for a pressure under the shim. */
static double
shim_surplus (double pressure, void *data)
{
  problem *p = data;
  const dw_valve *valve = &p->d->valve;
  bool good = true;
  double q = p->seat * pressure;

  p->opening_now = 0.0;
  p->kinetic_now = 1.0 - 1.543 / 2.13;
  if (p->opening && pressure > valve->preload)
    {
      const double w = fmin (valve->lift_limit,
                             p->lobe * p->compliance * (pressure - valve->preload));
      q += film_flow (p, pressure, w, &good);
      double perimeter = 0.0;
      for (int i = 0; i < p->d->piston.n_holes; i++)
        if (p->d->piston.holes[i].covered)
          perimeter += p->d->piston.holes[i].count * M_PI * p->d->piston.holes[i].diameter;
      const double curtain = w * perimeter / p->covered_area;
      p->opening_now = curtain / sqrt (1.0 + curtain * curtain);
      const double wide = w * p->shape / p->slot / 3.75;
      if (wide > 1.0)
        p->kinetic_now = 1.0 - 1.543 / 2.13 / (wide * wide);
    }
  return q - holes_flow (p, true, p->dp - pressure, p->kinetic_now, &good);
}

/* ---- the whole ---- */

static double
total_flow (problem *p, double dp, bool *good)
{
  const dw_piston *piston = &p->d->piston;
  const double c = piston->clearance;
  double leak = 0.0;

  p->dp = dp;
  p->opening_now = 0.0;
  p->kinetic_now = 1.0;
  p->q_covered = 0.0;
  p->film_pressure = 0.0;
  if (p->covered_area > 0.0 && (p->opening || p->seat > 0.0))
    {
      p->film_pressure = dp;
      if (shim_surplus (dp, p) > 0.0)
        p->film_pressure = brent (shim_surplus, p, 0.0, dp, good);
      shim_surplus (p->film_pressure, p);
      p->q_covered = holes_flow (p, true, dp - p->film_pressure, p->kinetic_now, good);
    }
  p->q_open = holes_flow (p, false, dp, 1.0, good);
  if (c > 0.0)
    leak = M_PI * (p->d->body.bore - c) * c * c * c * dp
           * (1.0 + 1.5 * piston->eccentricity * piston->eccentricity)
           / (12.0 * p->mu * piston->thickness);
  return p->q_open + p->q_covered + leak;
}

static double
flow_surplus (double dp, void *data)
{
  problem *p = data;
  bool good = true;
  const double c = p->d->piston.clearance;
  const double dragged = c > 0.0 ? M_PI * (p->d->body.bore - c) * c * p->speed / 2.0 : 0.0;
  return total_flow (p, dp, &good) + dragged - p->speed * p->area;
}

static void
set_shim (problem *p)
{
  const dw_valve *v = &p->d->valve;
  const dw_film_ring ring = { v->hub_diameter / 2.0, v->outer_diameter / 2.0,
                              v->hole_circle / 2.0 };
  const dw_stack stack = dw_stack_make (v);
  const dw_plate plate = { ring.hub, ring.rim, stack.stiffness, stack.poisson };
  double diameters = 0.0;
  double conductance = 0.0;
  double even = 0.0;
  double load = 0.0;
  int n = 0;

  for (int i = 0; i < p->d->piston.n_holes; i++)
    if (p->d->piston.holes[i].covered)
      {
        n += p->d->piston.holes[i].count;
        diameters += p->d->piston.holes[i].count * p->d->piston.holes[i].diameter;
      }
  const double crowding = diameters / (M_PI * v->hole_circle);
  for (int i = 0; i < p->d->piston.n_holes; i++)
    {
      const dw_holes *h = &p->d->piston.holes[i];
      int same = 0;
      bool first = true;
      if (!h->covered)
        continue;
      conductance += h->count / dw_film_bent_resistance (&ring, h->diameter, crowding);
      load += h->count * dw_film_load_area (&ring, h->diameter, crowding);
      for (int j = 0; j < p->d->piston.n_holes; j++)
        if (p->d->piston.holes[j].covered && p->d->piston.holes[j].diameter == h->diameter)
          {
            same += p->d->piston.holes[j].count;
            first = first && j >= i;
          }
      if (first)
        even += 1.0 / dw_film_even_resistance (&ring, h->diameter, same);
    }
  load = fmin (load, M_PI * (ring.rim * ring.rim - ring.hub * ring.hub));
  const double line = 1.0 / (2.0 * M_PI * ring.hole_circle);
  const double rim = dw_plate_ring_line (&plate, ring.hole_circle, line).rim;
  p->compliance = load * rim;
  p->shape = dw_plate_deflection (&plate, ring.hole_circle, line, ring.hole_circle) / rim;
  p->resistance = 1.0 / conductance;
  p->lobe = dw_film_lobe (&ring, diameters / n, n);
  p->slot = p->covered_area / (2.0 * M_PI * ring.hole_circle);
  p->seat = 2.0 * M_PI * pow (v->seat_gap, 3) * even / (12.0 * p->mu);
}

static void
set_fluid (problem *p, double temperature)
{
  dw_fluid fluid;

  dw_oil_fluid (&p->d->oil, temperature, &fluid, NULL);
  p->mu = fluid.dynamic;
  p->rho = fluid.density;
  if (p->d->gas.kind == DW_GAS_EMULSION)
    {
      const double cylinder = M_PI / 4.0 * p->d->body.bore * p->d->body.bore * p->d->body.stroke;
      const double al = p->d->gas.volume / fmax (cylinder - p->d->gas.volume, p->d->gas.volume);
      p->rho = (p->rho + al * 1.204 * p->d->gas.pressure / 101325.0) / (1.0 + al);
    }
  p->nu = p->mu / p->rho;
}

static void
set_areas (problem *p)
{
  const dw_damper *d = p->d;
  double open = 0.0;

  p->area = M_PI / 4.0 * (d->body.bore * d->body.bore - d->body.rod * d->body.rod);
  p->shimmed = d->valve.n_shims > 0;
  for (int i = 0; i < d->piston.n_holes; i++)
    {
      const dw_holes *h = &d->piston.holes[i];
      const double a = h->count * M_PI / 4.0 * h->diameter * h->diameter;
      if (h->covered && p->shimmed)
        p->covered_area += a;
      else
        open += a;
    }
  p->open_share = open / p->area;
  p->all_share = (open + p->covered_area) / p->area;
  p->opening = p->covered_area > 0.0 && d->valve.lift_limit > 0.0 && p->stroke == d->valve.opens_on;
}

static double
whole_force (problem *p, double dp)
{
  const dw_damper *d = p->d;
  const double c = d->piston.clearance;
  const double D = d->body.bore - c;
  const double rod = M_PI / 4.0 * d->body.rod * d->body.rod;
  const double gas = d->gas.kind == DW_GAS_VENTED ? 0.0 : (d->gas.pressure - 101325.0) * rod;
  const double film = c > 0.0 ? M_PI * D * d->piston.thickness * p->mu * p->speed / c
                                    - M_PI * D * c * dp / 2.0
                              : 0.0;
  return dp * p->area + (p->stroke == DW_COMPRESSION ? gas : -gas) + d->seal_friction + film;
}

bool
reference_solve (const dw_damper *damper, double temperature, dw_stroke stroke, double speed,
                 reference_point *out)
{
  problem p = { .d = damper, .stroke = stroke, .speed = speed };
  bool good = true;
  double high = 1.0;

  gsl_set_error_handler_off ();
  set_fluid (&p, temperature);
  set_areas (&p);
  if (p.covered_area > 0.0)
    set_shim (&p);
  while (flow_surplus (high, &p) < 0.0)
    high *= 8.0;
  const double dp = brent (flow_surplus, &p, 0.0, high, &good);
  total_flow (&p, dp, &good);
  *out = (reference_point){ .pressure = dp,
                            .flow_open = p.q_open,
                            .flow_covered = p.q_covered,
                            .flow_leak = speed * p.area - p.q_open - p.q_covered,
                            .film_pressure = p.film_pressure,
                            .force = whole_force (&p, dp) };
  return good;
}
