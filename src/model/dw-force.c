/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-force.h"

#include <assert.h>
#include <math.h>
#include <stddef.h>

#include "model/dw-gas.h"
#include "model/dw-limits.h"

/* Past this the onset is of no interest, and the speed beyond the accepted range. */
static const double FASTEST = 10.0;

dw_status
dw_force_model_make (const dw_damper *damper, double oil_temperature, dw_force_model *out,
                     dw_error *err)
{
  dw_error finding;
  dw_fluid fluid;

  assert (damper != NULL && out != NULL);

  if (dw_damper_check (damper, &finding, 1) > 0)
    {
      if (err != NULL)
        *err = finding;
      return finding.code;
    }
  const dw_status status = dw_oil_fluid (&damper->oil, oil_temperature, &fluid, err);
  if (status != DW_OK)
    return status;

  dw_flow_model_init (&out->flow, damper, &fluid);
  out->gas = damper->gas;
  out->rod_area = dw_damper_rod_area (damper);
  out->gas_push = dw_gas_push (&damper->gas, out->rod_area);
  out->seal = damper->seal_friction;
  out->onset_pressure = damper->gas.pressure;

  dw_flow_state s;
  const double flow = dw_flow_at_pressure (&out->flow, DW_COMPRESSION, out->onset_pressure, &s);
  out->onset_speed = flow / (out->flow.ring_area - out->flow.leak.dragged);
  if (!(out->onset_speed <= FASTEST))
    out->onset_speed = HUGE_VAL;
  return DW_OK;
}

static double
resisting_force (const dw_force_model *model, dw_stroke stroke, double pressure, double speed)
{
  const dw_leak *leak = &model->flow.leak;
  const double push = stroke == DW_COMPRESSION ? model->gas_push : -model->gas_push;
  return pressure * (model->flow.ring_area - leak->unloaded) + leak->drag * speed + model->seal
         + push;
}

static void
read_holes (const dw_hole_flow holes[], const double velocity[], int n, double *flow,
            dw_force_point *out)
{
  for (int i = 0; i < n; i++)
    {
      const dw_hole_flow *h = &holes[i];
      const double rate = velocity[i] * h->shear_per_velocity;
      const double thin = h->thinning_exponent < 1.0
                              ? dw_carreau (rate, h->thinning_rate, h->thinning_exponent)
                              : 1.0;
      *flow += h->area * velocity[i];
      const double re = velocity[i] * h->re_per_velocity / thin;
      out->reynolds = re > out->reynolds ? re : out->reynolds;
      out->shear_rate = rate > out->shear_rate ? rate : out->shear_rate;
    }
}

static void
read_point (const dw_force_model *model, dw_stroke stroke, double speed, const dw_flow_state *s,
            dw_force_point *out)
{
  const dw_flow_model *flow = &model->flow;
  dw_force_point p = { .speed = speed, .pressure = s->pressure };

  read_holes (flow->open, s->open, flow->n_open, &p.flow_open, &p);
  if (dw_flow_uses_covered (flow, stroke))
    {
      read_holes (flow->covered, s->covered, flow->n_covered, &p.flow_covered, &p);
      p.film_pressure = s->film_pressure;
      if (flow->lifts && stroke == flow->opens_on)
        {
          p.lift = dw_flow_lift (flow, s->film_pressure);
          p.lift_at_holes = dw_flow_lift_at_holes (flow, s->film_pressure);
          p.at_stop = p.lift_at_holes >= flow->shim.limit;
          /* at the stop the washer carries the rest */
          p.root_moment = p.lift / flow->shim.per_pressure * flow->shim.moment;
        }
    }
  p.flow_leak = flow->leak.conductance * s->pressure + flow->leak.dragged * speed;
  p.hydraulic = s->pressure * flow->ring_area;
  p.force = resisting_force (model, stroke, s->pressure, speed);
  if (stroke == DW_COMPRESSION && s->pressure > model->onset_pressure)
    {
      p.is_void = true;
      p.lost_travel = dw_gas_lost_travel (&model->gas, s->pressure, flow->ring_area);
      if (model->gas.kind == DW_GAS_VENTED)
        p.force = resisting_force (model, stroke, model->onset_pressure, model->onset_speed);
    }
  *out = p;
}

static void
read_rest (const dw_force_model *model, dw_stroke stroke, dw_force_point *out)
{
  *out = (dw_force_point){ .force = resisting_force (model, stroke, 0.0, 0.0) };
}

static dw_status
check_speed (double speed, int row, dw_error *err)
{
  if (speed >= 0.0 && speed <= FASTEST)
    return DW_OK;
  return dw_fail (err, DW_ERR_RANGE, "speed", row,
                  "%.6g m/s is outside the allowed range 0 to %g m/s", speed, FASTEST);
}

dw_status
dw_force_at (const dw_force_model *model, dw_stroke stroke, double speed, dw_force_point *out,
             dw_error *err)
{
  return dw_force_curve (model, stroke, &speed, 1, out, err);
}

/* The last solutions of a curve, for a start by extrapolation. A cubic: beyond the first few
 * points its error is so small that Newton's first step is its last. */
enum
{
  TRAIL = 4
};

typedef struct
{
  double speed[TRAIL]; /* by slot; the slots are used in turn */
  dw_flow_state state[TRAIL];
  int n;      /* solutions held */
  int newest; /* slot of the last one */
} trail;

/* Lagrange's weights, by slot; inlined for a full trail so that the loops unroll. */
static inline void
weigh (const trail *t, int n, double speed, double w[TRAIL])
{
  for (int i = 0; i < n; i++)
    {
      double over = 1.0;
      double under = 1.0;
      for (int j = 0; j < n; j++)
        if (j != i)
          {
            over *= speed - t->speed[j];
            under *= t->speed[i] - t->speed[j];
          }
      w[i] = over / under;
    }
  for (int i = n; i < TRAIL; i++)
    w[i] = 0.0;
}

/* @p offset is that of the unknown in a state, in doubles. */
static inline double
extrapolated (const trail *t, const double w[TRAIL], size_t offset)
{
  const double newest = ((const double *)&t->state[t->newest])[offset];
  double sum = 0.0;

  for (int i = 0; i < TRAIL; i++)
    sum += w[i] * ((const double *)&t->state[i])[offset];
  /* across a bend the cubic may miss by far: then the last value is the better start */
  return sum > 0.5 * newest && sum < 2.0 * newest ? sum : newest;
}

#define OFFSET(member) (offsetof (dw_flow_state, member) / sizeof (double))

/* Prepare @p s as a start; it may be the trail's oldest slot, since no unknown reads another.
 * False where an extrapolation would be a guess. */
static bool
start_from (const trail *t, const dw_flow_model *flow, double speed, dw_flow_state *s)
{
  double w[TRAIL];

  if (t->n < 2 || speed > 2.0 * t->speed[t->newest])
    return false;
  if (t->n == TRAIL)
    weigh (t, TRAIL, speed, w);
  else
    weigh (t, t->n, speed, w);
  s->pressure = extrapolated (t, w, OFFSET (pressure));
  s->film_pressure = extrapolated (t, w, OFFSET (film_pressure));
  for (int i = 0; i < flow->n_open; i++)
    s->open[i] = extrapolated (t, w, OFFSET (open) + (size_t)i);
  for (int i = 0; i < flow->n_covered; i++)
    s->covered[i] = extrapolated (t, w, OFFSET (covered) + (size_t)i);
  return true;
}

dw_status
dw_force_curve (const dw_force_model *model, dw_stroke stroke, const double *speeds, size_t n,
                dw_force_point *out, dw_error *err)
{
  trail t = { .n = 0 };

  assert (model != NULL && (speeds != NULL || n == 0) && (out != NULL || n == 0));

  for (size_t i = 0; i < n; i++)
    {
      dw_status status = check_speed (speeds[i], (int)i, err);
      if (status != DW_OK)
        return status;
      if (speeds[i] == 0.0)
        {
          read_rest (model, stroke, &out[i]);
          continue;
        }
      if (t.n > 0 && !(speeds[i] > t.speed[t.newest]))
        t.n = 0;
      const int slot = t.n < TRAIL ? t.n : (t.newest + 1) % TRAIL;
      dw_flow_state *s = &t.state[slot];
      const bool near = start_from (&t, &model->flow, speeds[i], s);
      status = dw_flow_solve (&model->flow, stroke, speeds[i], near, s, err);
      if (status != DW_OK)
        {
          if (err != NULL)
            err->index = (int)i;
          return status;
        }
      read_point (model, stroke, speeds[i], s, &out[i]);
      t.speed[slot] = speeds[i];
      t.newest = slot;
      t.n += t.n < TRAIL;
    }
  return DW_OK;
}

static dw_hole_point
hole_point (const dw_hole_flow *h, bool covered, double velocity)
{
  const double rate = velocity * h->shear_per_velocity;
  const double thin = dw_carreau (rate, h->thinning_rate, h->thinning_exponent);
  const dw_hole_drop drop = dw_hole_drop_at (h, velocity, 0.0, 1.0);
  const double viscous = thin * (h->ends + h->pipe) * velocity;
  dw_hole_point p = { .covered = covered,
                      .diameter = h->diameter,
                      .velocity = velocity,
                      .flow = h->area * velocity,
                      .reynolds = velocity * h->re_per_velocity / thin,
                      .shear_rate = rate,
                      .regime = DW_REGIME_LAMINAR };

  if (velocity <= 0.0)
    p.regime = DW_REGIME_SHUT;
  else if (p.reynolds > DW_HOLE_LAMINAR_RE)
    p.regime = DW_REGIME_TURBULENT;
  else if (drop.pressure < 1.01 * viscous)
    p.regime = DW_REGIME_CREEPING;
  return p;
}

dw_status
dw_force_holes (const dw_force_model *model, dw_stroke stroke, double speed, dw_hole_point *out,
                size_t *n, dw_error *err)
{
  const dw_flow_model *flow = &model->flow;
  const bool covered = dw_flow_uses_covered (flow, stroke);
  dw_flow_state s = { 0 };
  dw_status status = check_speed (speed, -1, err);

  if (status == DW_OK && speed > 0.0)
    status = dw_flow_solve (flow, stroke, speed, false, &s, err);
  if (status != DW_OK)
    return status;
  for (int i = 0; i < flow->n_open; i++)
    out[i] = hole_point (&flow->open[i], false, s.open[i]);
  for (int i = 0; i < flow->n_covered; i++)
    out[flow->n_open + i] = hole_point (&flow->covered[i], true, covered ? s.covered[i] : 0.0);
  *n = (size_t)(flow->n_open + flow->n_covered);
  return DW_OK;
}
