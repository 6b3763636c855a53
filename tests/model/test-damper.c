/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "model/dw-damper.h"
#include "model/dw-limits.h"
#include "test-support.h"

/* A damper with everything in use, so that every field can be spoilt. */
static dw_damper
full (void)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.n_holes = 2;
  d.piston.holes[1] = (dw_holes){ .count = 4, .diameter = 1.0e-3, .covered = true };
  d.valve.n_shims = 2;
  d.valve.shims[0] = (dw_shim){ 0.1e-3, 1, 4e9, 0.38, 100e6 };
  d.valve.shims[1] = (dw_shim){ 0.15e-3, 2, 4e9, 0.38, 100e6 };
  return d;
}

static void
to_measured (dw_damper *d)
{
  d->oil = (dw_oil){ .kind = DW_OIL_MEASURED,
                     .point_temperature = { 10.0, 40.0 },
                     .point_viscosity = { 600e-6, 330e-6 },
                     .density = 970.0 };
}

static void
to_blend (dw_damper *d)
{
  d->oil = (dw_oil){ .kind = DW_OIL_BLEND,
                     .n_parts = 2,
                     .parts = { { 400e-6, 0.3 }, { 500e-6, 0.7 } },
                     .has_thinning = true,
                     .thinning_rate = 2e4,
                     .thinning_exponent = 0.8 };
}

/* ---- ranges ---- */

#define FIELD(prepare, member, path, index)                                                        \
  {                                                                                                \
    prepare, offsetof (dw_damper, member), path, index                                             \
  }

static void
as_is (dw_damper *d)
{
  (void)d;
}

static void
to_vented (dw_damper *d)
{
  d->gas.kind = DW_GAS_VENTED;
}

static void
to_told (dw_damper *d)
{
  d->body.has_filling = true;
  d->body.filling = 12e-6;
  d->stance = (dw_stance){
    .has_ride_height = true, .ride_height = 24e-3, .has_droop = true, .droop = 18e-3
  };
}

static const struct
{
  void (*prepare) (dw_damper *d);
  size_t offset;
  const char *path;
  int index;
} fields[] = {
  FIELD (as_is, body.bore, "body.bore", -1),
  FIELD (as_is, body.rod, "body.rod", -1),
  FIELD (as_is, body.stroke, "body.stroke", -1),
  FIELD (to_told, body.filling, "body.filling", -1),
  FIELD (as_is, piston.thickness, "piston.thickness", -1),
  FIELD (as_is, piston.clearance, "piston.clearance", -1),
  FIELD (as_is, piston.eccentricity, "piston.eccentricity", -1),
  FIELD (as_is, piston.holes[1].diameter, "piston.holes.diameter", 1),
  FIELD (as_is, valve.hub_diameter, "valve.hub-diameter", -1),
  FIELD (as_is, valve.outer_diameter, "valve.outer-diameter", -1),
  FIELD (as_is, valve.hole_circle, "valve.hole-circle", -1),
  FIELD (as_is, valve.lift_limit, "valve.lift-limit", -1),
  FIELD (as_is, valve.leaf_coupling, "valve.leaf-coupling", -1),
  FIELD (as_is, valve.preload, "valve.preload", -1),
  FIELD (as_is, valve.seat_gap, "valve.seat-gap", -1),
  FIELD (as_is, valve.shims[1].thickness, "valve.shim.thickness", 1),
  FIELD (as_is, valve.shims[1].modulus, "valve.shim.modulus", 1),
  FIELD (as_is, valve.shims[0].poisson, "valve.shim.poisson", 0),
  FIELD (as_is, valve.shims[0].strength, "valve.shim.strength", 0),
  FIELD (as_is, oil.viscosity, "oil.viscosity", -1),
  FIELD (to_measured, oil.point_temperature[1], "oil.point.temperature", 1),
  FIELD (to_measured, oil.point_viscosity[0], "oil.viscosity", 0),
  FIELD (to_measured, oil.density, "oil.density", -1),
  FIELD (to_blend, oil.parts[0].viscosity, "oil.viscosity", 0),
  FIELD (to_blend, oil.parts[1].share, "oil.part.share", 1),
  FIELD (to_blend, oil.thinning_rate, "oil.thinning-rate", -1),
  FIELD (to_blend, oil.thinning_exponent, "oil.thinning-exponent", -1),
  FIELD (as_is, gas.pressure, "gas.pressure", -1),
  FIELD (as_is, gas.volume, "gas.volume", -1),
  FIELD (to_vented, gas.pressure, "gas.pressure (vented)", -1),
  FIELD (as_is, seal_friction, "seal.friction", -1),
  FIELD (as_is, spring.rate, "spring.rate", -1),
  FIELD (as_is, spring.free_length, "spring.free-length", -1),
  FIELD (as_is, spring.preload, "spring.preload", -1),
  FIELD (as_is, motion_ratio, "linkage.motion-ratio", -1),
  FIELD (to_told, stance.ride_height, "stance.ride-height", -1),
  FIELD (to_told, stance.droop, "stance.droop", -1),
};

static bool
has_finding (const dw_damper *d, dw_status code, const char *path, int index)
{
  dw_error found[40];
  const size_t n = dw_damper_check (d, found, 40);
  for (size_t i = 0; i < n && i < 40; i++)
    if (found[i].code == code && strcmp (found[i].field, path) == 0 && found[i].index == index)
      return true;
  return false;
}

static const dw_limit *
limit_of (const char *path)
{
  for (int i = 0; i < DW_N_LIMITS; i++)
    if (strcmp (dw_limit_get ((dw_limit_id)i)->path, path) == 0)
      return dw_limit_get ((dw_limit_id)i);
  ck_abort_msg ("no limit %s", path);
  return NULL;
}

START_TEST (each_value_outside_its_range_is_found)
{
  const dw_limit *limit = limit_of (fields[_i].path);
  const double span = limit->high - limit->low;
  const double bad[] = { limit->low - 1e-6 * span, limit->high + 1e-6 * span, NAN, INFINITY,
                         -INFINITY };
  for (int i = 0; i < N_ENTRIES (bad); i++)
    {
      dw_damper d = full ();
      fields[_i].prepare (&d);
      ck_assert_uint_eq (dw_damper_check (&d, NULL, 0), 0);
      *(double *)((char *)&d + fields[_i].offset) = bad[i];
      ck_assert_msg (has_finding (&d, DW_ERR_RANGE, fields[_i].path, fields[_i].index), "%s = %g",
                     fields[_i].path, bad[i]);
    }
}
END_TEST

START_TEST (counts_out_of_range_are_found)
{
  dw_damper d = full ();
  d.piston.holes[0].count = 0;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "piston.holes.count", 0));
  d.piston.holes[0].count = 65;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "piston.holes.count", 0));
  d = full ();
  d.valve.shims[1].count = 0;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "valve.shim.count", 1));
  d = full ();
  d.piston.n_holes = DW_MAX_HOLE_GROUPS + 1;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "piston.holes", -1));
  d = full ();
  d.valve.n_shims = -1;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "valve.shim", -1));
  d = full ();
  to_blend (&d);
  d.oil.n_parts = 1;
  ck_assert (has_finding (&d, DW_ERR_RANGE, "oil.part", -1));
}
END_TEST

/* ---- parts that do not fit ---- */

static void
thick_rod (dw_damper *d)
{
  d->body.rod = 0.81 * d->body.bore;
}

static void
huge_hole (dw_damper *d)
{
  d->piston.holes[0].diameter = d->body.bore / 2.0;
}

static void
too_much_hole (dw_damper *d)
{
  d->piston.holes[0] = (dw_holes){ .count = 30, .diameter = 2.2e-3 };
}

static void
no_way_through (dw_damper *d)
{
  d->piston.clearance = 0.0;
  d->piston.holes[0].covered = true;
}

static void
wide_hub (dw_damper *d)
{
  d->valve.hub_diameter = 0.96 * d->valve.outer_diameter;
}

static void
narrow_hub (dw_damper *d)
{
  d->valve.hub_diameter = 0.09 * d->valve.outer_diameter;
}

static void
wide_shim (dw_damper *d)
{
  d->valve.outer_diameter = d->body.bore + 0.1e-3;
}

static void
hole_past_the_rim (dw_damper *d)
{
  d->valve.hole_circle = 8.7e-3;
}

static void
hole_under_the_hub (dw_damper *d)
{
  d->valve.hole_circle = 7.1e-3;
}

static void
crowded_circle (dw_damper *d)
{
  d->piston.holes[1].count = 24;
}

static void
close_points (dw_damper *d)
{
  to_measured (d);
  d->oil.point_temperature[1] = 14.9;
}

static void
thickening_oil (dw_damper *d)
{
  to_measured (d);
  d->oil.point_viscosity[1] = 600e-6;
}

static void
shares_short (dw_damper *d)
{
  to_blend (d);
  d->oil.parts[0].share = 0.2;
}

static void
long_preload (dw_damper *d)
{
  d->spring.preload = d->spring.free_length;
}

static void
hair_gap (dw_damper *d)
{
  d->piston.clearance = 0.5e-6;
}

static void
hair_seat (dw_damper *d)
{
  d->valve.seat_gap = 0.9e-6;
}

static const struct
{
  void (*spoil) (dw_damper *d);
  dw_status code;
  const char *path;
  int index;
} misfits[] = {
  { thick_rod, DW_ERR_GEOMETRY, "body.rod", -1 },
  { huge_hole, DW_ERR_GEOMETRY, "piston.holes.diameter", 0 },
  { too_much_hole, DW_ERR_GEOMETRY, "piston.holes", -1 },
  { no_way_through, DW_ERR_GEOMETRY, "piston.holes", -1 },
  { wide_hub, DW_ERR_GEOMETRY, "valve.hub-diameter", -1 },
  { narrow_hub, DW_ERR_GEOMETRY, "valve.hub-diameter", -1 },
  { wide_shim, DW_ERR_GEOMETRY, "valve.outer-diameter", -1 },
  { hole_past_the_rim, DW_ERR_GEOMETRY, "piston.holes.diameter", 1 },
  { hole_under_the_hub, DW_ERR_GEOMETRY, "piston.holes.diameter", 1 },
  { crowded_circle, DW_ERR_GEOMETRY, "valve.hole-circle", -1 },
  { close_points, DW_ERR_GEOMETRY, "oil.point.temperature", 1 },
  { thickening_oil, DW_ERR_GEOMETRY, "oil.point.viscosity", 1 },
  { shares_short, DW_ERR_RANGE, "oil.part.share", -1 },
  { long_preload, DW_ERR_GEOMETRY, "spring.preload", -1 },
  { hair_gap, DW_ERR_RANGE, "piston.clearance", -1 },
  { hair_seat, DW_ERR_RANGE, "valve.seat-gap", -1 },
};

START_TEST (parts_that_do_not_fit_are_found)
{
  dw_damper d = full ();
  misfits[_i].spoil (&d);
  ck_assert (has_finding (&d, misfits[_i].code, misfits[_i].path, misfits[_i].index));
}
END_TEST

START_TEST (all_findings_are_counted_and_only_as_many_written_as_fit)
{
  dw_damper d = full ();
  dw_error found[3];
  d.body.bore = d.body.rod = d.body.stroke = d.piston.thickness = -1.0;
  memset (found, 0, sizeof found);
  const size_t n = dw_damper_check (&d, found, 2);
  ck_assert_uint_ge (n, 4);
  ck_assert_int_eq (found[1].code, DW_ERR_RANGE);
  ck_assert_int_eq (found[2].code, DW_OK);
  ck_assert_uint_eq (dw_damper_check (&d, NULL, 0), n);
}
END_TEST

START_TEST (texts_name_value_and_range_in_trade_units)
{
  dw_damper d = full ();
  dw_error e;
  d.body.bore = 55e-3;
  dw_damper_check (&d, &e, 1);
  ck_assert_str_eq (e.text, "55 mm is outside the allowed range 5 to 40 mm");
}
END_TEST

START_TEST (defaults_are_good_and_repeat)
{
  const dw_damper a = dw_damper_defaults ();
  const dw_damper b = dw_damper_defaults ();
  ck_assert_uint_eq (dw_damper_check (&a, NULL, 0), 0);
  ck_assert (dw_damper_equal (&a, &b));
  ck_assert (!a.body.has_filling && !a.stance.has_ride_height && !a.stance.has_droop);
}
END_TEST

/* ---- equality ---- */

START_TEST (a_change_in_any_field_is_seen)
{
  dw_damper a = full ();
  fields[_i].prepare (&a);
  dw_damper b = a;
  ck_assert (dw_damper_equal (&a, &b));
  double *x = (double *)((char *)&b + fields[_i].offset);
  *x = nextafter (*x, 1e30);
  ck_assert (!dw_damper_equal (&a, &b));
}
END_TEST

START_TEST (kinds_counts_and_flags_are_compared)
{
  const dw_damper a = full ();
  dw_damper b;
#define DIFFERS(change)                                                                            \
  b = a;                                                                                           \
  change;                                                                                          \
  ck_assert (!dw_damper_equal (&a, &b))
  DIFFERS (b.piston.n_holes = 1);
  DIFFERS (b.piston.holes[0].count++);
  DIFFERS (b.piston.holes[1].covered = false);
  DIFFERS (b.valve.opens_on = DW_COMPRESSION);
  DIFFERS (b.valve.n_shims = 1);
  DIFFERS (b.valve.shims[1].count++);
  DIFFERS (b.gas.kind = DW_GAS_EMULSION);
  DIFFERS (b.oil.has_thinning = true);
  DIFFERS (b.body.has_filling = true);
  DIFFERS (b.stance.has_ride_height = true);
  DIFFERS (b.stance.has_droop = true);
  DIFFERS (to_measured (&b));
  DIFFERS (to_blend (&b));
#undef DIFFERS
  /* what is not in use does not count */
  b = a;
  b.piston.holes[7].diameter = 1.0;
  b.valve.shims[9].thickness = 1.0;
  b.oil.density = 5.0;
  b.body.filling = 5.0;
  b.stance.ride_height = 5.0;
  b.stance.droop = 5.0;
  ck_assert (dw_damper_equal (&a, &b));
  ck_assert_uint_eq (dw_damper_check (&b, NULL, 0), 0);
}
END_TEST

START_TEST (areas_and_leaves_are_counted)
{
  const dw_damper d = full ();
  assert_close (dw_damper_ring_area (&d), M_PI / 4.0 * (16e-3 * 16e-3 - 3.5e-3 * 3.5e-3), 1e-12,
                0.0, "pi/4 (bore^2 - rod^2)");
  assert_close (dw_damper_rod_area (&d), M_PI / 4.0 * 3.5e-3 * 3.5e-3, 1e-12, 0.0, "pi/4 rod^2");
  ck_assert_int_eq (dw_valve_leaf_count (&d.valve), 3);
  ck_assert_str_eq (dw_stroke_name (DW_COMPRESSION), "compression");
  ck_assert_str_eq (dw_stroke_name (DW_REBOUND), "rebound");
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/damper");
  TCase *tc = tcase_create ("damper");
  tcase_add_loop_test (tc, each_value_outside_its_range_is_found, 0, N_ENTRIES (fields));
  tcase_add_test (tc, counts_out_of_range_are_found);
  tcase_add_loop_test (tc, parts_that_do_not_fit_are_found, 0, N_ENTRIES (misfits));
  tcase_add_test (tc, all_findings_are_counted_and_only_as_many_written_as_fit);
  tcase_add_test (tc, texts_name_value_and_range_in_trade_units);
  tcase_add_test (tc, defaults_are_good_and_repeat);
  tcase_add_loop_test (tc, a_change_in_any_field_is_seen, 0, N_ENTRIES (fields));
  tcase_add_test (tc, kinds_counts_and_flags_are_compared);
  tcase_add_test (tc, areas_and_leaves_are_counted);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
