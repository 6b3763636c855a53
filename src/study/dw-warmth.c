/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-warmth.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

#include "model/dw-limits.h"
#include "model/dw-root.h"
#include "model/dw-units.h"

/* ---- one damper at two temperatures ---- */

static dw_status
figures_at (const dw_warmth *asked, const dw_damper *damper, double temperature, dw_figures *out,
            dw_error *err)
{
  dw_force_model model;
  const dw_status status = dw_force_model_make (damper, temperature, &model, err);
  return status == DW_OK ? dw_figures_read (&model, asked->speeds, out, err) : status;
}

/* The damper as it is, then, but with another oil. */
static dw_status
figures_with (const dw_warmth *asked, const dw_oil *oil, dw_figures *out, dw_error *err)
{
  dw_damper damper = *asked->damper;
  damper.oil = *oil;
  return figures_at (asked, &damper, asked->then, out, err);
}

dw_status
dw_warmth_compare (const dw_warmth *asked, dw_comparison *out, dw_error *err)
{
  dw_figures now;
  dw_figures then;
  assert (asked != NULL && out != NULL);

  dw_status status = figures_at (asked, asked->damper, asked->now, &now, err);
  if (status == DW_OK)
    status = figures_at (asked, asked->damper, asked->then, &then, err);
  if (status == DW_OK)
    dw_compare_read (&now, &then, out);
  return status;
}

double
dw_warmth_per_ten (const dw_warmth *asked, double change)
{
  if (asked->then == asked->now)
    return NAN;
  return change * 10.0 / (asked->then - asked->now);
}

/* ---- kinds of oil ---- */

bool
dw_warmth_is_plain_silicone (const dw_oil *oil)
{
  return oil->kind != DW_OIL_MEASURED && !oil->has_thinning;
}

static bool
are_one_measured_oil (const dw_oil *a, const dw_oil *b)
{
  for (int i = 0; i < 2; i++)
    if (a->point_temperature[i] != b->point_temperature[i]
        || a->point_viscosity[i] != b->point_viscosity[i])
      return false;
  return a->density == b->density;
}

bool
dw_warmth_mixes_kinds (const dw_oil *a, const dw_oil *b)
{
  const bool is_measured = a->kind == DW_OIL_MEASURED;
  if (a->has_thinning != b->has_thinning || is_measured != (b->kind == DW_OIL_MEASURED))
    return true;
  if (a->has_thinning
      && (a->thinning_rate != b->thinning_rate || a->thinning_exponent != b->thinning_exponent))
    return true;
  return is_measured && !are_one_measured_oil (a, b);
}

/* ---- the oil that holds ---- */

/* A damper whose oil is to be found. */
typedef struct
{
  const dw_warmth *asked;
  dw_damper damper;
  dw_stroke stroke;
  double wanted; /* [N] without a cap */
  double scale;  /* [N] what the misses are measured by */
  dw_error *err; /* of the first failure */
  dw_status status;
} search;

/* What the force would be if a void did not cap it. Past the onset of a vented damper the force is
 * flat over viscosity and has no single root; this goes on rising. [N] */
static double
uncapped_force (const dw_force_model *model, const dw_force_point *point)
{
  const dw_leak *leak = &model->flow.leak;
  if (!point->is_void || model->gas.kind != DW_GAS_VENTED)
    return point->force;
  return point->force
         + (point->pressure - model->onset_pressure) * (model->flow.ring_area - leak->unloaded)
         + leak->drag * (point->speed - model->onset_speed);
}

static dw_status
low_speed_force (const dw_warmth *asked, const dw_damper *damper, double temperature,
                 dw_stroke stroke, double *force, double *hydraulic, dw_error *err)
{
  dw_force_model model;
  dw_force_point point;
  dw_status status = dw_force_model_make (damper, temperature, &model, err);
  if (status == DW_OK)
    status = dw_force_at (&model, stroke, asked->speeds[DW_LOW], &point, err);
  if (status != DW_OK)
    return status;
  *force = uncapped_force (&model, &point);
  *hydraulic = point.hydraulic;
  return DW_OK;
}

static dw_oil
silicone_of (double viscosity)
{
  return (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = viscosity };
}

/* Miss at a logarithm of the viscosity, as part of the hydraulic force of now; a failure is a hit,
 * and remembered, so that the root finder ends. */
static double
miss (double log_viscosity, void *data)
{
  search *s = data;
  double force;
  double hydraulic;
  if (s->status != DW_OK)
    return 0.0;
  const dw_limit *limit = dw_limit_get (DW_LIMIT_VISCOSITY);
  /* exp (log ()) may miss the range's end by a rounding */
  s->damper.oil = silicone_of (fmin (limit->high, fmax (limit->low, exp (log_viscosity))));
  s->status = low_speed_force (s->asked, &s->damper, s->asked->then, s->stroke, &force, &hydraulic,
                               s->err);
  return s->status == DW_OK ? (force - s->wanted) / s->scale : 0.0;
}

/* By factors of two away from the start until the force is on the other side.
 * @param low,high  log of the viscosity */
static bool
bracket (search *s, double start, double *low, double *high)
{
  const dw_limit *limit = dw_limit_get (DW_LIMIT_VISCOSITY);
  const double lowest = log (limit->low);
  const double highest = log (limit->high);
  double from = fmin (highest, fmax (lowest, start));
  const bool is_soft = miss (from, s) < 0.0;
  const double step = is_soft ? log (2.0) : -log (2.0);

  while (s->status == DW_OK)
    {
      const double to = fmin (highest, fmax (lowest, from + step));
      const double at_to = miss (to, s);
      if (is_soft ? at_to >= 0.0 : at_to <= 0.0)
        {
          *low = fmin (from, to);
          *high = fmax (from, to);
          return s->status == DW_OK;
        }
      if (to == lowest || to == highest)
        return false;
      from = to;
    }
  return false;
}

/* Log of the nominal silicone oil that is then as thick as the present one is now. */
static dw_status
start_of (const dw_warmth *asked, double *start, dw_error *err)
{
  dw_fluid fluid;
  const dw_status status = dw_oil_fluid (&asked->damper->oil, asked->now, &fluid, err);
  if (status == DW_OK)
    *start = log (fluid.viscosity / dw_silicone_viscosity (1.0, asked->then));
  return status;
}

static dw_status
find_viscosity (search *s, double *viscosity, dw_error *err)
{
  const dw_limit *limit = dw_limit_get (DW_LIMIT_VISCOSITY);
  double start;
  double low;
  double high;
  dw_status status = start_of (s->asked, &start, err);
  if (status != DW_OK)
    return status;
  const bool is_found = bracket (s, start, &low, &high);
  if (is_found)
    *viscosity = fmin (limit->high,
                       fmax (limit->low, exp (dw_root_bracketed (miss, s, low, high))));
  if (s->status != DW_OK)
    return s->status;
  if (!is_found)
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "oil.viscosity", -1,
                    "no oil from %.6g to %.6g cSt holds the low-speed force at %.6g degC",
                    limit->low / DW_CST, limit->high / DW_CST, s->asked->then);
  return DW_OK;
}

dw_status
dw_warmth_hold (const dw_warmth *asked, dw_stroke stroke, dw_warmth_held *out, dw_error *err)
{
  dw_figures now;
  dw_figures then;
  double viscosity = 0.0;
  assert (asked != NULL && out != NULL);

  search s = { .asked = asked, .damper = *asked->damper, .stroke = stroke, .err = err };
  dw_status status = figures_at (asked, asked->damper, asked->now, &now, err);
  if (status == DW_OK)
    status = low_speed_force (asked, asked->damper, asked->now, stroke, &s.wanted, &s.scale, err);
  if (status == DW_OK)
    status = find_viscosity (&s, &viscosity, err);
  if (status != DW_OK)
    return status;

  const dw_oil oil = silicone_of (viscosity);
  status = figures_with (asked, &oil, &then, err);
  if (status != DW_OK)
    return status;
  out->viscosity = viscosity;
  dw_compare_read (&now, &then, &out->change);
  out->is_other_kind = dw_warmth_mixes_kinds (&asked->damper->oil, &oil);
  return DW_OK;
}

/* ---- the bottles ---- */

static dw_warmth_bottle
bottle_of (const dw_warmth *asked, const dw_figures *now, const dw_oil *oil)
{
  dw_warmth_bottle b = { .is_other_kind = dw_warmth_mixes_kinds (&asked->damper->oil, oil) };
  dw_figures then;
  b.status = figures_with (asked, oil, &then, &b.reason);
  if (b.status == DW_OK)
    b.status = dw_oil_fluid (oil, asked->then, &b.fluid, &b.reason);
  if (b.status == DW_OK)
    dw_compare_read (now, &then, &b.change);
  return b;
}

/* [N] How far low-speed compression is from now. */
static double
distance (const dw_warmth_bottle *b)
{
  return fabs (b->change.b.point[DW_COMPRESSION][DW_LOW].force
               - b->change.a.point[DW_COMPRESSION][DW_LOW].force);
}

dw_status
dw_warmth_bottles (const dw_warmth *asked, const dw_oil *oils, int n, dw_warmth_bottle *out,
                   int *nearest, dw_error *err)
{
  dw_figures now;
  assert (asked != NULL && nearest != NULL && (n == 0 || (oils != NULL && out != NULL)));

  const dw_status status = figures_at (asked, asked->damper, asked->now, &now, err);
  if (status != DW_OK)
    return status;
  *nearest = -1;
  for (int i = 0; i < n; i++)
    {
      out[i] = bottle_of (asked, &now, &oils[i]);
      if (out[i].status == DW_OK
          && (*nearest < 0 || distance (&out[i]) < distance (&out[*nearest])))
        *nearest = i;
    }
  return DW_OK;
}

/* ---- the mix ---- */

/* Viscosities of the bottles that may be mixed, and which ones they are. */
typedef struct
{
  double *viscosity; /* [m2/s] */
  int *index;
  int n;
} shelf;

static void
shelf_clear (shelf *s)
{
  free (s->viscosity);
  free (s->index);
}

static bool
shelf_fill (shelf *s, const dw_oil *oils, int n)
{
  const size_t room = n > 0 ? (size_t)n : 1;
  s->n = 0;
  s->viscosity = calloc (room, sizeof *s->viscosity);
  s->index = calloc (room, sizeof *s->index);
  if (s->viscosity == NULL || s->index == NULL)
    return false;
  for (int i = 0; i < n; i++)
    if (oils[i].kind == DW_OIL_NOMINAL && !oils[i].has_thinning)
      {
        s->viscosity[s->n] = oils[i].viscosity;
        s->index[s->n++] = i;
      }
  return true;
}

static dw_oil
blend_of (const shelf *s, const dw_drill_mix *mix)
{
  if (mix->other < 0)
    return silicone_of (s->viscosity[mix->bottle]);
  return (dw_oil){ .kind = DW_OIL_BLEND,
                   .n_parts = 2,
                   .parts = { { s->viscosity[mix->bottle], 1.0 - mix->share },
                              { s->viscosity[mix->other], mix->share } } };
}

dw_status
dw_warmth_mix (const dw_warmth *asked, double viscosity, const dw_oil *oils, int n,
               dw_warmth_blend *out, dw_error *err)
{
  shelf s;
  dw_warmth_blend blend = { .bottle = -1, .other = -1 };
  dw_status status = DW_OK;
  assert (asked != NULL && out != NULL && (n == 0 || oils != NULL));

  if (!shelf_fill (&s, oils, n))
    status = dw_fail (err, DW_ERR_NO_MEMORY, "oil", -1, "no memory for %d bottles", n);
  else
    {
      const dw_drill_mix mix = dw_drill_mix_find (viscosity, s.viscosity, s.n);
      if (mix.bottle >= 0)
        {
          blend.bottle = s.index[mix.bottle];
          blend.other = mix.other < 0 ? -1 : s.index[mix.other];
          blend.oil = blend_of (&s, &mix);
          status = dw_oil_fluid (&blend.oil, asked->then, &blend.fluid, err);
        }
    }
  shelf_clear (&s);
  if (status == DW_OK)
    *out = blend;
  return status;
}

/* ---- the drift ---- */

/* Points of a curve at once: they start from each other, and need room. */
enum
{
  BATCH = 64
};

static dw_status
drift_batch (const dw_force_model model[2], dw_stroke stroke, const double *speeds, size_t n,
             dw_warmth_band *out, dw_error *err)
{
  dw_force_point before[BATCH];
  dw_force_point after[BATCH];
  dw_status status = dw_force_curve (&model[0], stroke, speeds, n, before, err);
  if (status == DW_OK)
    status = dw_force_curve (&model[1], stroke, speeds, n, after, err);
  for (size_t i = 0; i < n && status == DW_OK; i++)
    out[i] = (dw_warmth_band){ speeds[i], before[i].force, after[i].force,
                               dw_compare_change (before[i].force, after[i].force) };
  return status;
}

dw_status
dw_warmth_drift (const dw_damper *damper, double temperature, double warm_up, dw_stroke stroke,
                 const double *speeds, size_t n, dw_warmth_band *out, dw_error *err)
{
  dw_force_model model[2];
  assert (damper != NULL && (n == 0 || (speeds != NULL && out != NULL)));

  dw_status status = dw_force_model_make (damper, temperature, &model[0], err);
  if (status == DW_OK)
    status = dw_force_model_make (damper, temperature + warm_up, &model[1], err);
  for (size_t i = 0; i < n && status == DW_OK; i += BATCH)
    {
      status = drift_batch (model, stroke, speeds + i, n - i < BATCH ? n - i : BATCH, out + i, err);
      /* the row is told by the batch, the caller counts all of them */
      if (status != DW_OK && err != NULL && err->index >= 0)
        err->index += (int)i;
    }
  return status;
}
