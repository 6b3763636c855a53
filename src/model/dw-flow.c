/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-flow.h"

#include <assert.h>
#include <math.h>

#include "model/dw-gas.h"
#include "model/dw-plate.h"
#include "model/dw-root.h"

static const double PI = 3.14159265358979323846;

/* Kinetic head of developed flow in the slot (54/35, read off the resolved slot flow) over the
 * kinetic loss of a long hole: this share of a covered hole's loss is not lost at the hole but
 * handed to the film, whose own equation contains it. */
static const double HANDED_TO_FILM = 1.543 / DW_HOLE_K_LONG;

/* Newton is stopped after a relative step this small: what is left is of the order of its
 * square, 4e-12, far below the 1e-9 to which an independent solver is held in the tests. */
static const double LAST_STEP = 2e-6;

/* Absurd, but still a number: thick oil through nothing but a leaking seat comes near it [Pa]. */
static const double HIGHEST = 1e40;

/* Below this shaft speed [m/s] flows are scaled, not solved: products of smaller numbers would
 * leave the range of a double. */
static const double SLOWEST = 1e-9;

enum
{
  MOST_NEWTON_STEPS = 24
};

/* ---- making the model ---- */

/* Equal sizes become one, so that the solver has few unknowns. */
static int
merged_sizes (const dw_piston *piston, bool covered, bool all, double diameter[], int count[])
{
  int n = 0;
  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *h = &piston->holes[i];
      int k = 0;
      if (!all && h->covered != covered)
        continue;
      while (k < n && diameter[k] != h->diameter)
        k++;
      if (k == n)
        {
          diameter[n] = h->diameter;
          count[n++] = 0;
        }
      count[k] += h->count;
    }
  return n;
}

static double
area_of (int n, const double diameter[], const int count[])
{
  double area = 0.0;
  for (int i = 0; i < n; i++)
    area += count[i] * PI / 4.0 * diameter[i] * diameter[i];
  return area;
}

/* Conductances of unequal holes add; so do the areas they load, up to the whole ring. */
static void
init_shim (dw_flow_model *model, const dw_valve *valve, int n, const double diameter[],
           const int count[])
{
  const dw_film_ring ring = { valve->hub_diameter / 2.0, valve->outer_diameter / 2.0,
                              valve->hole_circle / 2.0 };
  const dw_stack stack = dw_stack_make (valve);
  const dw_plate plate = { ring.hub, ring.rim, stack.stiffness, stack.poisson };
  const double circle = 2.0 * PI * ring.hole_circle;
  /* per newton of load spread on the hole circle */
  const dw_plate_answer answer = dw_plate_ring_line (&plate, ring.hole_circle, 1.0 / circle);
  const double at_circle = dw_plate_deflection (&plate, ring.hole_circle, 1.0 / circle,
                                                ring.hole_circle);
  double diameters = 0.0;
  int holes = 0;

  for (int i = 0; i < n; i++)
    {
      diameters += count[i] * diameter[i];
      holes += count[i];
    }
  const double crowding = diameters / circle;
  const double lobe = dw_film_lobe (&ring, diameters / holes, holes);
  double bent = 0.0;
  double even = 0.0;
  double load = 0.0;
  for (int i = 0; i < n; i++)
    {
      bent += count[i] / dw_film_bent_resistance (&ring, diameter[i], crowding);
      even += 1.0 / dw_film_even_resistance (&ring, diameter[i], count[i]);
      load += count[i] * dw_film_load_area (&ring, diameter[i], crowding);
    }
  load = fmin (load, PI * (ring.rim * ring.rim - ring.hub * ring.hub));
  model->film = dw_film_make (&model->fluid, &ring, 1.0 / bent, at_circle / answer.rim, lobe,
                              model->covered_area);
  model->shim = (dw_shim_spring){ .per_pressure = answer.rim * load,
                                  .lobe = lobe,
                                  .preload = valve->preload,
                                  .limit = valve->lift_limit,
                                  .moment = answer.root_moment * load,
                                  .load_area = load };
  if (valve->seat_gap > 0.0)
    {
      const double h = valve->seat_gap;
      model->seat = 2.0 * PI * h * h * h * even / (12.0 * model->fluid.dynamic);
    }
}

void
dw_flow_model_init (dw_flow_model *model, const dw_damper *damper, const dw_fluid *fluid)
{
  const dw_piston *piston = &damper->piston;
  const dw_valve *valve = &damper->valve;
  const bool shimmed = valve->n_shims > 0;
  double open_d[DW_MAX_HOLE_GROUPS];
  double covered_d[DW_MAX_HOLE_GROUPS];
  int open_n[DW_MAX_HOLE_GROUPS];
  int covered_n[DW_MAX_HOLE_GROUPS];
  const int n_open = merged_sizes (piston, false, !shimmed, open_d, open_n);
  const int n_covered = shimmed ? merged_sizes (piston, true, false, covered_d, covered_n) : 0;

  model->ring_area = dw_damper_ring_area (damper);
  model->fluid = dw_gas_mixed_fluid (damper, fluid);
  model->leak = dw_leak_make (damper->body.bore, piston->clearance, piston->eccentricity,
                              piston->thickness, model->fluid.dynamic);
  model->opens_on = valve->opens_on;
  model->n_open = n_open;
  model->n_covered = n_covered;
  model->open_area = area_of (n_open, open_d, open_n);
  model->covered_area = area_of (n_covered, covered_d, covered_n);
  model->lifts = n_covered > 0 && valve->lift_limit > 0.0;
  model->seat = 0.0;

  const double share_alone = model->open_area / model->ring_area;
  const double share_all = (model->open_area + model->covered_area) / model->ring_area;
  for (int i = 0; i < n_open; i++)
    dw_hole_flow_init (&model->open[i], &model->fluid, open_d[i], piston->thickness, open_n[i],
                       share_alone, share_all);
  double perimeter = 0.0;
  for (int i = 0; i < n_covered; i++)
    {
      dw_hole_flow_init (&model->covered[i], &model->fluid, covered_d[i], piston->thickness,
                         covered_n[i], share_alone, share_all);
      perimeter += covered_n[i] * PI * covered_d[i];
    }
  if (n_covered > 0)
    {
      model->opening_per_lift = perimeter / model->covered_area;
      init_shim (model, valve, n_covered, covered_d, covered_n);
    }
}

bool
dw_flow_uses_covered (const dw_flow_model *model, dw_stroke stroke)
{
  return model->n_covered > 0 && (model->seat > 0.0 || (model->lifts && stroke == model->opens_on));
}

/* ---- the shim at a pressure ---- */

/* Everything that depends on the pressure under the shim alone, with slopes. */
typedef struct
{
  double flow, flow_slope;       /* through film and seat [m3/s], [m3/(s Pa)] */
  double opening, opening_slope; /* [1], [1/Pa] */
  double kinetic, kinetic_slope; /* [1], [1/Pa] */
} shim_state;

/* Lift per pressure @p rate, from the preload to the stop. */
static inline double
lift_at (const dw_shim_spring *shim, double rate, double pressure, double *slope)
{
  const double w = (pressure - shim->preload) * rate;

  *slope = 0.0;
  if (w <= 0.0)
    return 0.0;
  if (w >= shim->limit)
    return shim->limit;
  *slope = rate;
  return w;
}

double
dw_flow_lift (const dw_flow_model *model, double film_pressure)
{
  double slope;
  return model->lifts ? lift_at (&model->shim, model->shim.per_pressure, film_pressure, &slope)
                      : 0.0;
}

double
dw_flow_lift_at_holes (const dw_flow_model *model, double film_pressure)
{
  const double rate = model->shim.per_pressure * model->shim.lobe;
  double slope;
  return model->lifts ? lift_at (&model->shim, rate, film_pressure, &slope) : 0.0;
}

static inline shim_state
shim_at (const dw_flow_model *model, bool opening, double pressure, double guess)
{
  shim_state s = { .flow = model->seat * pressure,
                   .flow_slope = model->seat,
                   .kinetic = 1.0 - HANDED_TO_FILM };
  double slope;

  if (!opening)
    return s;
  const double w = lift_at (&model->shim, model->shim.per_pressure * model->shim.lobe, pressure,
                            &slope);
  if (w <= 0.0)
    return s;

  const dw_film_flow film = dw_film_flow_at (&model->film, pressure, w, slope, guess);
  s.flow += film.flow;
  s.flow_slope += film.by_pressure;

  const double x = w * model->opening_per_lift;
  const double root = sqrt (1.0 + x * x);
  s.opening = x / root;
  s.opening_slope = slope * model->opening_per_lift / (root * root * root);

  /* a gap past the resolved range slowly lets the hole discharge as if it were free */
  const double ratio = w * model->film.ratio / DW_FILM_RESOLVED_RATIO;
  if (ratio > 1.0)
    {
      const double fade = 1.0 / (ratio * ratio);
      s.kinetic = 1.0 - HANDED_TO_FILM * fade;
      s.kinetic_slope = HANDED_TO_FILM * 2.0 * fade / w * slope;
    }
  return s;
}

/* ---- starting points ---- */

/* Flow and slope through open holes and leak with K constant. */
static double
open_estimate (const dw_flow_model *model, double pressure, double *slope)
{
  double flow = model->leak.conductance * pressure;
  double sum = model->leak.conductance;

  for (int i = 0; i < model->n_open; i++)
    {
      double by_pressure;
      flow += model->open[i].area
              * dw_hole_velocity_estimate (&model->open[i], pressure, 1.0, &by_pressure);
      sum += model->open[i].area * by_pressure;
    }
  *slope = sum;
  return flow;
}

/* dp of the covered branch, hole and film, with K constant and one mean size. */
static double
covered_estimate (const dw_flow_model *model, double flow, double film_pressure, double kinetic,
                  double *by_flow)
{
  const dw_hole_flow *h = &model->covered[0];
  const double v = flow / model->covered_area;
  const double a = kinetic * h->half_density * (h->k_alone - 0.3);
  const double b = h->ends + h->pipe;

  *by_flow = (b + 2.0 * a * v) / model->covered_area;
  return film_pressure + (b + a * v) * v;
}

static void
start_plain (const dw_flow_model *model, double flow, dw_flow_state *s)
{
  double conductance = model->leak.conductance;

  for (int i = 0; i < model->n_open; i++)
    conductance += model->open[i].area / (model->open[i].ends + model->open[i].pipe);
  s->pressure = flow / conductance;
  s->film_pressure = 0.0;
  /* flow(dp) is concave: from the linear answer Newton climbs to the root without overshoot */
  for (int k = 0; k < 4; k++)
    {
      double slope;
      const double q = open_estimate (model, s->pressure, &slope);
      s->pressure += (flow - q) / slope;
    }
}

/* With the shim open: one unknown, ln p, the rest explicit. */
static void
start_covered (const dw_flow_model *model, bool opening, double flow, dw_flow_state *s)
{
  start_plain (model, flow, s);
  double p = s->pressure;
  double dp = p;

  for (int k = 0; k < 12; k++)
    {
      double open_slope;
      double by_flow;
      const shim_state shim = shim_at (model, opening, p, 0.0);
      dp = covered_estimate (model, shim.flow, p, shim.kinetic, &by_flow);
      const double q = open_estimate (model, dp, &open_slope) + shim.flow;
      const double slope = open_slope * (1.0 + by_flow * shim.flow_slope) + shim.flow_slope;
      const double step = (flow - q) / (slope * p); /* of ln p */
      p *= exp (fmax (-2.0, fmin (2.0, step)));
      if (fabs (step) < 1e-2)
        break;
    }
  s->pressure = dp;
  s->film_pressure = p;
}

static void
start (const dw_flow_model *model, bool covered, bool opening, double flow, dw_flow_state *s)
{
  double slope;

  if (covered)
    start_covered (model, opening, flow, s);
  else
    start_plain (model, flow, s);
  for (int i = 0; i < model->n_open; i++)
    s->open[i] = dw_hole_velocity_estimate (&model->open[i], s->pressure, 1.0, &slope);
  if (!covered)
    return;
  const double drop = fmax (s->pressure - s->film_pressure, 1e-6 * s->pressure);
  for (int i = 0; i < model->n_covered; i++)
    s->covered[i] = dw_hole_velocity_estimate (&model->covered[i], drop, 1.0 - HANDED_TO_FILM,
                                               &slope);
}

/* ---- Newton on all unknowns at once ---- */

/* No unknown may change sign or vanish in one step. */
static inline double
stepped (double value, double step)
{
  const double next = value + step;
  return next > 0.1 * value ? next : 0.1 * value;
}

typedef struct
{
  double r; /* residual [Pa] */
  double h; /* d dp/dV */
  double e; /* d residual/d p */
} hole_row;

/* Sums over the holes of one kind: S = sum a/h, T = sum a e/h, R = sum a r/h, Q = sum a V. */
typedef struct
{
  double S, T, R, Q;
} hole_sums;

static inline void
add_row (hole_sums *sums, const hole_row *row, double area, double v)
{
  const double weight = area / row->h;
  sums->S += weight;
  sums->T += weight * row->e;
  sums->R += weight * row->r;
  sums->Q += area * v;
}

/* fmax() without its care for NaN, which would keep the compiler from inlining it. */
static inline double
larger (double a, double b)
{
  return a > b ? a : b;
}

static inline double
relative (double step, double value, double floor)
{
  return fabs (step) / (fabs (value) + floor);
}

/* Without covered flow: unknowns dp and the open velocities. */
static bool
newton_plain (const dw_flow_model *model, double flow, dw_flow_state *s)
{
  hole_row row[DW_MAX_HOLE_GROUPS];

  for (int k = 0; k < MOST_NEWTON_STEPS; k++)
    {
      hole_sums o = { 0 };
      for (int i = 0; i < model->n_open; i++)
        {
          const dw_hole_drop drop = dw_hole_drop_at (&model->open[i], s->open[i], 0.0, 1.0);
          row[i] = (hole_row){ drop.pressure - s->pressure, drop.by_velocity, 0.0 };
          add_row (&o, &row[i], model->open[i].area, s->open[i]);
        }
      const double rt = o.Q + model->leak.conductance * s->pressure - flow;
      const double ddp = (o.R - rt) / (o.S + model->leak.conductance);
      double change = relative (ddp, s->pressure, 0.0);
      s->pressure = stepped (s->pressure, ddp);
      for (int i = 0; i < model->n_open; i++)
        {
          const double dv = (ddp - row[i].r) / row[i].h;
          change = larger (change, relative (dv, s->open[i], 0.0));
          s->open[i] = stepped (s->open[i], dv);
        }
      if (change <= LAST_STEP)
        return true;
      if (!isfinite (change))
        return false;
    }
  return false;
}

static inline double
covered_now (const dw_flow_model *model, const dw_flow_state *s)
{
  double flow = 0.0;
  for (int i = 0; i < model->n_covered; i++)
    flow += model->covered[i].area * s->covered[i];
  return flow;
}

/* With covered flow the unknowns are p under the shim and x = dp - p, what is left for the holes:
 * where one of them is next to nothing, a difference of dp and p would have no digits left.
 *   row i (open):    h V' + (e - 1) p' - x' = -r        row j (covered): h V' + e p' - x' = -r
 *   film:  sum a V' - flow'(p) p' = -rc
 *   total: sum a V' + G (p' + x') = -rt */
static bool
newton_covered (const dw_flow_model *model, bool opening, double flow, dw_flow_state *s)
{
  hole_row open[DW_MAX_HOLE_GROUPS];
  hole_row covered[DW_MAX_HOLE_GROUPS];
  const double G = model->leak.conductance;
  /* hardly any flow through a hardly open shim need not be known to many digits of its own */
  const double trickle = 1e-6 * flow / model->covered_area;
  double p = s->film_pressure;
  double x = larger (s->pressure - p, 1e-12 * s->pressure);

  for (int k = 0; k < MOST_NEWTON_STEPS; k++)
    {
      const shim_state shim = shim_at (model, opening, p, covered_now (model, s));
      hole_sums o = { 0 };
      hole_sums c = { 0 };
      for (int i = 0; i < model->n_open; i++)
        {
          const dw_hole_drop d = dw_hole_drop_at (&model->open[i], s->open[i], shim.opening, 1.0);
          open[i] = (hole_row){ d.pressure - (p + x), d.by_velocity,
                                d.by_opening * shim.opening_slope };
          add_row (&o, &open[i], model->open[i].area, s->open[i]);
        }
      for (int i = 0; i < model->n_covered; i++)
        {
          const dw_hole_drop d = dw_hole_drop_at (&model->covered[i], s->covered[i], shim.opening,
                                                  shim.kinetic);
          covered[i] = (hole_row){ d.pressure - x, d.by_velocity,
                                   d.by_opening * shim.opening_slope
                                       + d.by_kinetic * shim.kinetic_slope };
          add_row (&c, &covered[i], model->covered[i].area, s->covered[i]);
        }
      const double rc = c.Q - shim.flow;
      const double rt = o.Q + c.Q + G * (p + x) - flow;
      /* V' taken out: c.S x' - (c.T + flow') p' = c.R - rc, and the total likewise */
      const double a11 = c.S, a12 = -(c.T + shim.flow_slope), b1 = c.R - rc;
      const double a21 = o.S + c.S + G, a22 = o.S - o.T - c.T + G, b2 = o.R + c.R - rt;
      const double det = a11 * a22 - a12 * a21;
      const double dx = (b1 * a22 - a12 * b2) / det;
      const double dp = (a11 * b2 - b1 * a21) / det;
      double change = larger (relative (dp, p, 0.0), relative (dx, x, 1e-6 * p));
      p = stepped (p, dp);
      x = stepped (x, dx);
      for (int i = 0; i < model->n_open; i++)
        {
          const double dv = (dp + dx - open[i].r - open[i].e * dp) / open[i].h;
          change = larger (change, relative (dv, s->open[i], 0.0));
          s->open[i] = stepped (s->open[i], dv);
        }
      for (int i = 0; i < model->n_covered; i++)
        {
          const double dv = (dx - covered[i].r - covered[i].e * dp) / covered[i].h;
          change = larger (change, relative (dv, s->covered[i], trickle));
          s->covered[i] = stepped (s->covered[i], dv);
        }
      s->film_pressure = p;
      s->pressure = p + x;
      if (change <= LAST_STEP)
        return true;
      if (!isfinite (change))
        return false;
    }
  return false;
}

/* ---- nested brackets: slow, sure ---- */

typedef struct
{
  const dw_flow_model *model;
  bool covered;
  bool opening;
  double flow;     /* wanted [m3/s] */
  double pressure; /* dp of the inner question [Pa] */
  dw_flow_state *s;
} bracket_question;

static double
covered_flow (const bracket_question *q, const shim_state *shim, double film_pressure)
{
  double flow = 0.0;
  for (int i = 0; i < q->model->n_covered; i++)
    {
      q->s->covered[i] = dw_hole_velocity (&q->model->covered[i], q->pressure - film_pressure,
                                           shim->opening, shim->kinetic);
      flow += q->model->covered[i].area * q->s->covered[i];
    }
  return flow;
}

/* Film flow less hole flow at a pressure under the shim; rises from below 0 to above. */
static double
film_surplus (double film_pressure, void *data)
{
  bracket_question *q = data;
  const shim_state shim = shim_at (q->model, q->opening, film_pressure, 0.0);
  return shim.flow - covered_flow (q, &shim, film_pressure);
}

/* At the root the holes pass what the film passes. Where nearly all of dp is lost in the film, what
 * is left for the holes is a difference of nearly equal numbers: the film's flow is the sure one. */
static void
take_film_flow (bracket_question *q, const shim_state *shim)
{
  const dw_flow_model *model = q->model;
  const double holes = covered_flow (q, shim, q->s->film_pressure);

  for (int i = 0; i < model->n_covered; i++)
    q->s->covered[i] = holes > 0.0 ? q->s->covered[i] * (shim->flow / holes)
                                   : shim->flow / model->covered_area;
}

static double
flow_through (bracket_question *q, double pressure)
{
  const dw_flow_model *model = q->model;
  shim_state shim = { 0 };
  double flow = model->leak.conductance * pressure;

  q->pressure = pressure;
  q->s->pressure = pressure;
  q->s->film_pressure = 0.0;
  if (q->covered)
    {
      q->s->film_pressure = dw_root_bracketed (film_surplus, q, 0.0, pressure);
      shim = shim_at (model, q->opening, q->s->film_pressure, 0.0);
      take_film_flow (q, &shim);
      flow += shim.flow;
    }
  for (int i = 0; i < model->n_open; i++)
    {
      q->s->open[i] = dw_hole_velocity (&model->open[i], pressure, shim.opening, 1.0);
      flow += model->open[i].area * q->s->open[i];
    }
  return flow;
}

static double
flow_surplus (double pressure, void *data)
{
  bracket_question *q = data;
  return flow_through (q, pressure) - q->flow;
}

static bool
solve_bracketed (const dw_flow_model *model, bool covered, bool opening, double flow,
                 dw_flow_state *s)
{
  bracket_question q = { model, covered, opening, flow, 0.0, s };
  double low = 0.0;
  double high = 1.0;

  while (flow_surplus (high, &q) < 0.0)
    {
      low = high;
      high *= 4.0;
      if (high > HIGHEST)
        return false;
    }
  const double pressure = dw_root_bracketed (flow_surplus, &q, low, high);
  const double rest = flow - flow_through (&q, pressure);
  /* A shim that opens all at once lets the flow leap from one double of dp to the next: what is
   * missing flows there. A bracket that closed on a real jump must not pass as an answer. */
  if (fabs (rest) > 1e-6 * flow)
    return false;
  for (int i = 0; covered && i < model->n_covered; i++)
    s->covered[i] += rest / model->covered_area;
  return true;
}

/* A preloaded shim that does not leak stays down until dp reaches the preload. */
static bool
stays_shut (const dw_flow_model *model, double flow, dw_flow_state *s)
{
  dw_flow_state shut;

  if (model->seat > 0.0 || model->shim.preload <= 0.0)
    return false;
  start (model, false, false, flow, &shut);
  if (!newton_plain (model, flow, &shut) || shut.pressure > model->shim.preload)
    return false;

  shut.film_pressure = shut.pressure;
  for (int i = 0; i < model->n_covered; i++)
    shut.covered[i] = 0.0;
  *s = shut;
  return true;
}

/* All flow is viscous here, so everything goes with the speed. */
static dw_status
solve_creeping (const dw_flow_model *model, dw_stroke stroke, double speed, dw_flow_state *state,
                dw_error *err)
{
  const dw_status status = dw_flow_solve (model, stroke, SLOWEST, false, state, err);
  const double share = speed / SLOWEST;

  if (status != DW_OK)
    return status;
  state->pressure *= share;
  state->film_pressure *= share;
  for (int i = 0; i < model->n_open; i++)
    state->open[i] *= share;
  for (int i = 0; i < model->n_covered; i++)
    state->covered[i] *= share;
  return DW_OK;
}

dw_status
dw_flow_solve (const dw_flow_model *model, dw_stroke stroke, double speed, bool near,
               dw_flow_state *state, dw_error *err)
{
  assert (speed > 0.0 && isfinite (speed));

  if (speed < SLOWEST)
    return solve_creeping (model, stroke, speed, state, err);

  const bool opening = model->lifts && stroke == model->opens_on;
  const bool covered = dw_flow_uses_covered (model, stroke);
  const double flow = speed * (model->ring_area - model->leak.dragged);

  if (covered && stays_shut (model, flow, state))
    return DW_OK;
  if (!near)
    start (model, covered, opening, flow, state);

  bool good = covered ? newton_covered (model, opening, flow, state)
                      : newton_plain (model, flow, state);
  if (!good)
    good = solve_bracketed (model, covered, opening, flow, state);
  if (!good || !isfinite (state->pressure))
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "force", -1, "no flow balance at %.6g m/s in %s",
                    speed, dw_stroke_name (stroke));
  return DW_OK;
}

double
dw_flow_at_pressure (const dw_flow_model *model, dw_stroke stroke, double pressure,
                     dw_flow_state *out)
{
  const bool opening = model->lifts && stroke == model->opens_on;
  bracket_question q = { model, dw_flow_uses_covered (model, stroke), opening, 0.0, 0.0, out };
  return flow_through (&q, pressure);
}
