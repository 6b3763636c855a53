/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-force.h"

#include <assert.h>
#include <math.h>
#include <string.h>

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
    return dw_fail (err, finding.code, finding.field, finding.index, "%s", finding.text);
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
    out->onset_speed = INFINITY;
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
      const double thin = dw_carreau (rate, h->thinning_rate, h->thinning_exponent);
      *flow += h->area * velocity[i];
      out->reynolds = fmax (out->reynolds, velocity[i] * h->re_per_velocity / thin);
      out->shear_rate = fmax (out->shear_rate, rate);
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
          p.at_stop = p.lift >= flow->shim.limit;
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
  return dw_fail (err, DW_ERR_RANGE, "speed", row, "%.6g m/s is outside the allowed range 0 to %g m/s",
                  speed, FASTEST);
}

dw_status
dw_force_at (const dw_force_model *model, dw_stroke stroke, double speed, dw_force_point *out,
             dw_error *err)
{
  return dw_force_curve (model, stroke, &speed, 1, out, err);
}

/* The last solutions of a curve, newest last, for a start by extrapolation. */
enum
{
  TRAIL = 4 /* a cubic: its error is below Newton's last step on all but the first few points */
};

typedef struct
{
  double speed[TRAIL];
  dw_flow_state state[TRAIL];
  int n;
} trail;

static void
remember (trail *t, double speed, const dw_flow_state *s)
{
  if (t->n == TRAIL)
    {
      memmove (&t->speed[0], &t->speed[1], (TRAIL - 1) * sizeof t->speed[0]);
      memmove (&t->state[0], &t->state[1], (TRAIL - 1) * sizeof t->state[0]);
      t->n = TRAIL - 1;
    }
  t->speed[t->n] = speed;
  t->state[t->n++] = *s;
}

/* Lagrange's weights for a point beyond the trail's. */
static void
weights (const trail *t, double speed, double w[TRAIL])
{
  for (int i = 0; i < t->n; i++)
    {
      w[i] = 1.0;
      for (int j = 0; j < t->n; j++)
        if (j != i)
          w[i] *= (speed - t->speed[j]) / (t->speed[i] - t->speed[j]);
    }
}

static double
extrapolated (const trail *t, const double w[TRAIL], const double *first, size_t stride)
{
  const double *newest = first + (size_t) (t->n - 1) * stride;
  double sum = 0.0;

  for (int i = 0; i < t->n; i++)
    sum += w[i] * first[(size_t) i * stride];
  /* across a bend the cubic may miss by far: then the last value is the better start */
  return sum > 0.5 * *newest && sum < 2.0 * *newest ? sum : *newest;
}

/* Far jumps start afresh: an extrapolation over more than the trail's own length is a guess. */
static bool
start_from (const trail *t, const dw_flow_model *flow, double speed, dw_flow_state *s)
{
  const size_t stride = sizeof (dw_flow_state) / sizeof (double);
  double w[TRAIL];

  if (t->n < 2 || !(speed > t->speed[t->n - 1])
      || speed - t->speed[t->n - 1] > 1.5 * (t->speed[t->n - 1] - t->speed[0]))
    return false;
  weights (t, speed, w);
  s->pressure = extrapolated (t, w, &t->state[0].pressure, stride);
  s->film_pressure = extrapolated (t, w, &t->state[0].film_pressure, stride);
  for (int i = 0; i < flow->n_open; i++)
    s->open[i] = extrapolated (t, w, &t->state[0].open[i], stride);
  for (int i = 0; i < flow->n_covered; i++)
    s->covered[i] = extrapolated (t, w, &t->state[0].covered[i], stride);
  return true;
}

dw_status
dw_force_curve (const dw_force_model *model, dw_stroke stroke, const double *speeds, size_t n,
                dw_force_point *out, dw_error *err)
{
  trail t;

  assert (model != NULL && (speeds != NULL || n == 0) && (out != NULL || n == 0));

  t.n = 0;
  for (size_t i = 0; i < n; i++)
    {
      dw_flow_state s;
      dw_status status = check_speed (speeds[i], (int) i, err);
      if (status != DW_OK)
        return status;
      if (speeds[i] == 0.0)
        {
          read_rest (model, stroke, &out[i]);
          continue;
        }
      const bool near = start_from (&t, &model->flow, speeds[i], &s);
      status = dw_flow_solve (&model->flow, stroke, speeds[i], near ? &s : NULL, &s, err);
      if (status != DW_OK)
        {
          if (err != NULL)
            err->index = (int) i;
          return status;
        }
      if (n > 1)
        {
          if (t.n > 0 && speeds[i] <= t.speed[t.n - 1])
            t.n = 0;
          remember (&t, speeds[i], &s);
        }
      read_point (model, stroke, speeds[i], &s, &out[i]);
    }
  return DW_OK;
}
