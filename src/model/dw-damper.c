/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-damper.h"

#include <assert.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>

#include "model/dw-limits.h"
#include "model/dw-units.h"

static const double PI = 3.14159265358979323846;

/* The shares of a blend are typed by hand: "0.33" and "0.67" must do. */
static const double SHARE_SUM_TOLERANCE = 1e-6;

/* Below this a gap is neither closed nor a film that could be made; the shear in it would be a
 * number without meaning. */
static const double SMALLEST_GAP = 0.001e-3;

dw_damper
dw_damper_defaults (void)
{
  return (dw_damper){
    .body = { .bore = 16e-3, .rod = 3.5e-3, .stroke = 30e-3 },
    .piston = { .thickness = 2.5e-3,
                .clearance = 0.03e-3,
                .n_holes = 1,
                .holes = { { .count = 6, .diameter = 1.3e-3 } } },
    .valve = { .opens_on = DW_REBOUND,
               .hub_diameter = 6.2e-3,
               .outer_diameter = 9.6e-3,
               .hole_circle = 7.6e-3,
               .lift_limit = 0.6e-3 },
    .oil = { .kind = DW_OIL_NOMINAL, .viscosity = 450e-6, .density = 970.0 },
    .gas = { .kind = DW_GAS_BLADDER, .pressure = 101.325e3, .volume = 1e-6 },
    .spring = { .rate = 500.0, .free_length = 70e-3 },
    .motion_ratio = 1.0,
  };
}

/* What is not given has no value. */
static bool
optional_equal (bool has_a, double a, bool has_b, double b)
{
  return has_a == has_b && (!has_a || a == b);
}

static bool
body_equal (const dw_body *a, const dw_body *b)
{
  return a->bore == b->bore && a->rod == b->rod && a->stroke == b->stroke
         && optional_equal (a->has_filling, a->filling, b->has_filling, b->filling);
}

static bool
stance_equal (const dw_stance *a, const dw_stance *b)
{
  return optional_equal (a->has_ride_height, a->ride_height, b->has_ride_height, b->ride_height)
         && optional_equal (a->has_droop, a->droop, b->has_droop, b->droop);
}

static bool
holes_equal (const dw_piston *a, const dw_piston *b)
{
  if (a->n_holes != b->n_holes)
    return false;
  for (int i = 0; i < a->n_holes; i++)
    if (a->holes[i].count != b->holes[i].count || a->holes[i].diameter != b->holes[i].diameter
        || a->holes[i].covered != b->holes[i].covered)
      return false;
  return true;
}

static bool
shims_equal (const dw_valve *a, const dw_valve *b)
{
  if (a->n_shims != b->n_shims)
    return false;
  for (int i = 0; i < a->n_shims; i++)
    {
      const dw_shim *s = &a->shims[i];
      const dw_shim *t = &b->shims[i];
      if (s->thickness != t->thickness || s->count != t->count || s->modulus != t->modulus
          || s->poisson != t->poisson || s->strength != t->strength)
        return false;
    }
  return true;
}

bool
dw_oil_equal (const dw_oil *a, const dw_oil *b)
{
  assert (a != NULL && b != NULL);

  if (a->kind != b->kind || a->has_thinning != b->has_thinning)
    return false;
  if (a->has_thinning
      && (a->thinning_rate != b->thinning_rate || a->thinning_exponent != b->thinning_exponent))
    return false;
  switch (a->kind)
    {
    case DW_OIL_NOMINAL:
      return a->viscosity == b->viscosity;
    case DW_OIL_MEASURED:
      for (int i = 0; i < 2; i++)
        if (a->point_temperature[i] != b->point_temperature[i]
            || a->point_viscosity[i] != b->point_viscosity[i])
          return false;
      return a->density == b->density;
    case DW_OIL_BLEND:
      if (a->n_parts != b->n_parts)
        return false;
      for (int i = 0; i < a->n_parts; i++)
        if (a->parts[i].viscosity != b->parts[i].viscosity
            || a->parts[i].share != b->parts[i].share)
          return false;
      return true;
    }
  return false;
}

bool
dw_piston_equal (const dw_piston *a, const dw_piston *b)
{
  assert (a != NULL && b != NULL);

  return a->thickness == b->thickness && a->clearance == b->clearance
         && a->eccentricity == b->eccentricity && holes_equal (a, b);
}

bool
dw_piston_has_covered (const dw_piston *piston)
{
  assert (piston != NULL);

  for (int i = 0; i < piston->n_holes; i++)
    if (piston->holes[i].covered)
      return true;
  return false;
}

static bool
valve_equal (const dw_valve *a, const dw_valve *b)
{
  return a->opens_on == b->opens_on && a->hub_diameter == b->hub_diameter
         && a->outer_diameter == b->outer_diameter && a->hole_circle == b->hole_circle
         && a->lift_limit == b->lift_limit && a->leaf_coupling == b->leaf_coupling
         && a->preload == b->preload && a->seat_gap == b->seat_gap && shims_equal (a, b);
}

bool
dw_damper_equal (const dw_damper *a, const dw_damper *b)
{
  assert (a != NULL && b != NULL);

  return body_equal (&a->body, &b->body) && dw_piston_equal (&a->piston, &b->piston)
         && valve_equal (&a->valve, &b->valve) && dw_oil_equal (&a->oil, &b->oil)
         && a->gas.kind == b->gas.kind && a->gas.pressure == b->gas.pressure
         && a->gas.volume == b->gas.volume && a->seal_friction == b->seal_friction
         && a->spring.rate == b->spring.rate && a->spring.free_length == b->spring.free_length
         && a->spring.preload == b->spring.preload && a->motion_ratio == b->motion_ratio
         && stance_equal (&a->stance, &b->stance);
}

double
dw_damper_ring_area (const dw_damper *damper)
{
  const double bore = damper->body.bore;
  const double rod = damper->body.rod;
  return PI / 4.0 * (bore * bore - rod * rod);
}

double
dw_damper_rod_area (const dw_damper *damper)
{
  return PI / 4.0 * damper->body.rod * damper->body.rod;
}

int
dw_valve_leaf_count (const dw_valve *valve)
{
  int n = 0;
  for (int i = 0; i < valve->n_shims; i++)
    n += valve->shims[i].count;
  return n;
}

const char *
dw_stroke_name (dw_stroke stroke)
{
  return stroke == DW_COMPRESSION ? "compression" : "rebound";
}

/* ---- checking: every finding, not only the first ---- */

typedef struct
{
  dw_error *findings;
  size_t capacity;
  size_t n;
} checker;

static void add (checker *c, dw_status code, const char *field, int index, const char *fmt, ...)
    __attribute__ ((format (printf, 5, 6)));

static void
add (checker *c, dw_status code, const char *field, int index, const char *fmt, ...)
{
  va_list ap;

  va_start (ap, fmt);
  dw_fail_va (c->n < c->capacity ? &c->findings[c->n] : NULL, code, field, index, fmt, ap);
  va_end (ap);
  c->n++;
}

/* @p scale turns the SI value into the unit that the text names. */
static void
range (checker *c, dw_limit_id id, int index, double value, double scale, const char *unit)
{
  const dw_limit *limit = dw_limit_get (id);
  if (dw_limit_holds (id, value))
    return;
  add (c, DW_ERR_RANGE, limit->path, index, "%.6g%s is outside the allowed range %.6g to %.6g%s",
       value * scale, unit, limit->low * scale, limit->high * scale, unit);
}

static void
gap (checker *c, const char *path, double value)
{
  if (value > 0.0 && value < SMALLEST_GAP)
    add (c, DW_ERR_RANGE, path, -1, "%.6g mm is neither 0 (no leak) nor at least %.6g mm",
         value * 1e3, SMALLEST_GAP * 1e3);
}

static void
check_body (checker *c, const dw_body *body)
{
  range (c, DW_LIMIT_BORE, -1, body->bore, 1e3, " mm");
  range (c, DW_LIMIT_ROD, -1, body->rod, 1e3, " mm");
  range (c, DW_LIMIT_STROKE, -1, body->stroke, 1e3, " mm");
  if (body->has_filling)
    range (c, DW_LIMIT_FILLING, -1, body->filling, 1e6, " ml");
  if (body->rod > 0.8 * body->bore)
    add (c, DW_ERR_GEOMETRY, "body.rod", -1,
         "shaft of %.6g mm needs a bore above %.6g mm (shaft at most 0.8 of the bore)",
         body->rod * 1e3, body->rod / 0.8 * 1e3);
}

/* Otherwise the groups must not be looked at. */
static bool
holes_are_counted (const dw_piston *piston)
{
  return piston->n_holes >= 0 && piston->n_holes <= DW_MAX_HOLE_GROUPS;
}

static double
holes_area (const dw_piston *piston)
{
  double area = 0.0;
  for (int i = 0; i < piston->n_holes; i++)
    area += piston->holes[i].count * PI / 4.0 * piston->holes[i].diameter
            * piston->holes[i].diameter;
  return area;
}

static void
check_holes (checker *c, const dw_damper *damper)
{
  const dw_piston *piston = &damper->piston;
  const double bore = damper->body.bore;
  const double ring = dw_damper_ring_area (damper);
  const double area = holes_area (piston);

  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *h = &piston->holes[i];
      range (c, DW_LIMIT_HOLE_COUNT, i, (double)h->count, 1.0, " holes");
      range (c, DW_LIMIT_HOLE_DIAMETER, i, h->diameter, 1e3, " mm");
      if (h->diameter >= bore / 2.0)
        add (c, DW_ERR_GEOMETRY, "piston.holes.diameter", i,
             "hole of %.6g mm must stay below half the bore, %.6g mm", h->diameter * 1e3,
             bore / 2.0 * 1e3);
    }
  if (area > DW_LARGEST_HOLE_SHARE * ring)
    add (c, DW_ERR_GEOMETRY, "piston.holes", -1,
         "holes take %.3g %% of the piston's face, allowed 0 to %.3g %%", area / ring * 100.0,
         DW_LARGEST_HOLE_SHARE * 100.0);
}

static bool
any_open_path (const dw_damper *damper)
{
  const dw_piston *piston = &damper->piston;
  if (piston->clearance > 0.0)
    return true;
  for (int i = 0; i < piston->n_holes; i++)
    if (!piston->holes[i].covered || damper->valve.n_shims == 0 || damper->valve.seat_gap > 0.0)
      return true;
  return false;
}

static void
check_piston (checker *c, const dw_damper *damper)
{
  const dw_piston *piston = &damper->piston;

  range (c, DW_LIMIT_PISTON_THICKNESS, -1, piston->thickness, 1e3, " mm");
  range (c, DW_LIMIT_CLEARANCE, -1, piston->clearance, 1e3, " mm");
  gap (c, "piston.clearance", piston->clearance);
  range (c, DW_LIMIT_ECCENTRICITY, -1, piston->eccentricity, 1.0, "");
  if (!holes_are_counted (piston))
    {
      add (c, DW_ERR_RANGE, "piston.holes", -1, "%d groups of holes, allowed 0 to %d",
           piston->n_holes, DW_MAX_HOLE_GROUPS);
      return;
    }
  check_holes (c, damper);
  if (!any_open_path (damper))
    add (c, DW_ERR_GEOMETRY, "piston.holes", -1,
         "nothing lets the oil pass in both strokes: give an open hole or a clearance above 0");
}

/* Covered holes must open into the ring between hub and rim, and fit beside each other. */
static void
check_covered_holes (checker *c, const dw_damper *damper)
{
  const dw_valve *valve = &damper->valve;
  double chord_sum = 0.0;

  for (int i = 0; i < damper->piston.n_holes; i++)
    {
      const dw_holes *h = &damper->piston.holes[i];
      if (!h->covered)
        continue;
      chord_sum += h->count * h->diameter;
      if (valve->hole_circle + h->diameter >= valve->outer_diameter
          || valve->hole_circle - h->diameter <= valve->hub_diameter)
        add (
            c, DW_ERR_GEOMETRY, "piston.holes.diameter", i,
            "covered hole of %.6g mm on the %.6g mm circle leaves the shim's ring, %.6g to %.6g mm",
            h->diameter * 1e3, valve->hole_circle * 1e3, valve->hub_diameter * 1e3,
            valve->outer_diameter * 1e3);
    }
  if (chord_sum > PI * valve->hole_circle)
    add (c, DW_ERR_GEOMETRY, "valve.hole-circle", -1,
         "covered holes side by side need %.6g mm, the %.6g mm circle has %.6g mm", chord_sum * 1e3,
         valve->hole_circle * 1e3, PI * valve->hole_circle * 1e3);
}

static void
check_shims (checker *c, const dw_valve *valve)
{
  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *s = &valve->shims[i];
      range (c, DW_LIMIT_SHIM_THICKNESS, i, s->thickness, 1e3, " mm");
      range (c, DW_LIMIT_SHIM_COUNT, i, (double)s->count, 1.0, " leaves");
      range (c, DW_LIMIT_MODULUS, i, s->modulus, 1e-9, " GPa");
      range (c, DW_LIMIT_POISSON, i, s->poisson, 1.0, "");
      range (c, DW_LIMIT_STRENGTH, i, s->strength, 1e-6, " MPa");
    }
}

static void
check_valve (checker *c, const dw_damper *damper)
{
  const dw_valve *valve = &damper->valve;

  if (valve->n_shims < 0 || valve->n_shims > DW_MAX_SHIMS)
    {
      add (c, DW_ERR_RANGE, "valve.shim", -1, "%d kinds of shim, allowed 0 to %d", valve->n_shims,
           DW_MAX_SHIMS);
      return;
    }
  range (c, DW_LIMIT_HUB, -1, valve->hub_diameter, 1e3, " mm");
  range (c, DW_LIMIT_SHIM_OUTER, -1, valve->outer_diameter, 1e3, " mm");
  range (c, DW_LIMIT_HOLE_CIRCLE, -1, valve->hole_circle, 1e3, " mm");
  range (c, DW_LIMIT_LIFT, -1, valve->lift_limit, 1e3, " mm");
  range (c, DW_LIMIT_COUPLING, -1, valve->leaf_coupling, 1.0, "");
  range (c, DW_LIMIT_PRELOAD, -1, valve->preload, 1e-3, " kPa");
  range (c, DW_LIMIT_SEAT_GAP, -1, valve->seat_gap, 1e3, " mm");
  gap (c, "valve.seat-gap", valve->seat_gap);
  check_shims (c, valve);

  if (valve->n_shims == 0)
    return;
  if (valve->hub_diameter >= 0.95 * valve->outer_diameter)
    add (c, DW_ERR_GEOMETRY, "valve.hub-diameter", -1,
         "hub of %.6g mm must stay below 0.95 of the shim's %.6g mm", valve->hub_diameter * 1e3,
         valve->outer_diameter * 1e3);
  if (valve->hub_diameter < 0.1 * valve->outer_diameter)
    add (c, DW_ERR_GEOMETRY, "valve.hub-diameter", -1,
         "hub of %.6g mm must be at least 0.1 of the shim's %.6g mm", valve->hub_diameter * 1e3,
         valve->outer_diameter * 1e3);
  if (valve->outer_diameter > damper->body.bore)
    add (c, DW_ERR_GEOMETRY, "valve.outer-diameter", -1,
         "shim of %.6g mm must fit into the bore of %.6g mm", valve->outer_diameter * 1e3,
         damper->body.bore * 1e3);
  if (holes_are_counted (&damper->piston))
    check_covered_holes (c, damper);
}

static void
check_blend (checker *c, const dw_oil *oil)
{
  double sum = 0.0;

  if (oil->n_parts != DW_MAX_OIL_PARTS)
    {
      add (c, DW_ERR_RANGE, "oil.part", -1, "a blend needs %d parts, has %d", DW_MAX_OIL_PARTS,
           oil->n_parts);
      return;
    }
  for (int i = 0; i < oil->n_parts; i++)
    {
      range (c, DW_LIMIT_VISCOSITY, i, oil->parts[i].viscosity, 1e6, " cSt");
      range (c, DW_LIMIT_SHARE, i, oil->parts[i].share, 1.0, "");
      sum += oil->parts[i].share;
    }
  if (!(fabs (sum - 1.0) <= SHARE_SUM_TOLERANCE))
    add (c, DW_ERR_RANGE, "oil.part.share", -1, "shares add to %.9g, must add to 1", sum);
}

static void
check_measured (checker *c, const dw_oil *oil)
{
  for (int i = 0; i < 2; i++)
    {
      range (c, DW_LIMIT_POINT_TEMPERATURE, i, oil->point_temperature[i], 1.0, " degC");
      range (c, DW_LIMIT_VISCOSITY, i, oil->point_viscosity[i], 1e6, " cSt");
    }
  range (c, DW_LIMIT_DENSITY, -1, oil->density, 1.0, " kg/m3");
  /* Closer points would turn a small misreading into a wild slope. */
  if (oil->point_temperature[1] - oil->point_temperature[0] < 5.0)
    add (c, DW_ERR_GEOMETRY, "oil.point.temperature", 1,
         "second point at %.6g degC must lie at least 5 degC above the first at %.6g degC",
         oil->point_temperature[1], oil->point_temperature[0]);
  if (oil->point_viscosity[1] >= oil->point_viscosity[0])
    add (c, DW_ERR_GEOMETRY, "oil.point.viscosity", 1,
         "%.6g cSt when warm must be below the %.6g cSt when cold", oil->point_viscosity[1] * 1e6,
         oil->point_viscosity[0] * 1e6);
}

static void
check_oil (checker *c, const dw_oil *oil)
{
  switch (oil->kind)
    {
    case DW_OIL_NOMINAL:
      range (c, DW_LIMIT_VISCOSITY, -1, oil->viscosity, 1e6, " cSt");
      break;
    case DW_OIL_MEASURED:
      check_measured (c, oil);
      break;
    case DW_OIL_BLEND:
      check_blend (c, oil);
      break;
    }
  if (oil->has_thinning)
    {
      range (c, DW_LIMIT_THINNING_RATE, -1, oil->thinning_rate, 1.0, " 1/s");
      range (c, DW_LIMIT_THINNING_EXPONENT, -1, oil->thinning_exponent, 1.0, "");
    }
}

static void
check_rest (checker *c, const dw_damper *damper)
{
  if (damper->gas.kind == DW_GAS_VENTED)
    range (c, DW_LIMIT_AIR_PRESSURE, -1, damper->gas.pressure, 1e-3, " kPa");
  else
    {
      range (c, DW_LIMIT_GAS_PRESSURE, -1, damper->gas.pressure, 1e-3, " kPa");
      range (c, DW_LIMIT_GAS_VOLUME, -1, damper->gas.volume, 1e6, " ml");
    }
  range (c, DW_LIMIT_SEAL_FRICTION, -1, damper->seal_friction, 1.0, " N");
  range (c, DW_LIMIT_SPRING_RATE, -1, damper->spring.rate, 1e-3, " N/mm");
  range (c, DW_LIMIT_SPRING_LENGTH, -1, damper->spring.free_length, 1e3, " mm");
  range (c, DW_LIMIT_SPRING_PRELOAD, -1, damper->spring.preload, 1e3, " mm");
  if (damper->spring.preload >= damper->spring.free_length)
    add (c, DW_ERR_GEOMETRY, "spring.preload", -1,
         "preload of %.6g mm must be below the spring's free length, %.6g mm",
         damper->spring.preload * 1e3, damper->spring.free_length * 1e3);
  range (c, DW_LIMIT_MOTION_RATIO, -1, damper->motion_ratio, 1.0, "");
}

static void
check_stance (checker *c, const dw_stance *stance)
{
  if (stance->has_ride_height)
    range (c, DW_LIMIT_RIDE_HEIGHT, -1, stance->ride_height, 1e3, " mm");
  if (stance->has_droop)
    range (c, DW_LIMIT_DROOP, -1, stance->droop, 1e3, " mm");
}

size_t
dw_damper_check (const dw_damper *damper, dw_error *findings, size_t capacity)
{
  assert (damper != NULL && (findings != NULL || capacity == 0));

  checker c = { findings, capacity, 0 };
  check_body (&c, &damper->body);
  check_piston (&c, damper);
  check_valve (&c, damper);
  check_oil (&c, &damper->oil);
  check_rest (&c, damper);
  check_stance (&c, &damper->stance);

  return c.n;
}
