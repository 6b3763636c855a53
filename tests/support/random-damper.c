/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-damper.h"

#include <math.h>

static bool
chance (test_random *r, double p)
{
  return test_random_uniform (r, 0.0, 1.0) < p;
}

static dw_piston
random_piston (test_random *r)
{
  dw_piston piston = { .thickness = test_random_log_uniform (r, 0.5e-3, 8e-3),
                       .clearance = chance (r, 0.2) ? 0.0
                                                    : test_random_log_uniform (r, 5e-6, 0.2e-3),
                       .eccentricity = chance (r, 0.5) ? 0.0 : test_random_uniform (r, 0.0, 1.0),
                       .n_holes = test_random_int (r, 1, 4) };

  for (int i = 0; i < piston.n_holes; i++)
    piston.holes[i] = (dw_holes){ .count = test_random_int (r, 1, 6),
                                  .diameter = test_random_log_uniform (r, 0.4e-3, 2.5e-3),
                                  .covered = i > 0 && chance (r, 0.5) };
  return piston;
}

static dw_valve
random_valve (test_random *r, double bore)
{
  const double outer = bore * test_random_uniform (r, 0.5, 0.95);
  const double hub = outer * test_random_uniform (r, 0.25, 0.8);
  dw_valve valve = { .opens_on = chance (r, 0.5) ? DW_REBOUND : DW_COMPRESSION,
                     .hub_diameter = hub,
                     .outer_diameter = outer,
                     .hole_circle = hub + (outer - hub) * test_random_uniform (r, 0.3, 0.7),
                     .lift_limit = chance (r, 0.1) ? 0.0 : test_random_log_uniform (r, 20e-6, 5e-3),
                     .leaf_coupling = chance (r, 0.5) ? 0.0 : test_random_uniform (r, 0.0, 1.0),
                     .preload = chance (r, 0.5) ? 0.0 : test_random_log_uniform (r, 1e3, 500e3),
                     .seat_gap = chance (r, 0.7) ? 0.0 : test_random_log_uniform (r, 1e-6, 50e-6),
                     .n_shims = test_random_int (r, 0, 3) };

  for (int i = 0; i < valve.n_shims; i++)
    valve.shims[i] = (dw_shim){ .thickness = test_random_log_uniform (r, 0.02e-3, 1e-3),
                                .count = test_random_int (r, 1, 3),
                                .modulus = chance (r, 0.5) ? 4e9 : 200e9,
                                .poisson = test_random_uniform (r, 0.25, 0.4),
                                .strength = 100e6 };
  return valve;
}

static dw_oil
random_oil (test_random *r)
{
  dw_oil oil = { .kind = DW_OIL_NOMINAL,
                 .viscosity = test_random_log_uniform (r, 2e-6, 20000e-6),
                 .density = 970.0 };

  if (chance (r, 0.2))
    {
      oil.has_thinning = true;
      oil.thinning_rate = test_random_log_uniform (r, 1e3, 1e6);
      oil.thinning_exponent = test_random_uniform (r, 0.2, 1.0);
    }
  return oil;
}

dw_damper
random_damper (test_random *r)
{
  static const dw_gas_kind kinds[] = { DW_GAS_BLADDER, DW_GAS_VENTED, DW_GAS_EMULSION };
  dw_damper damper;

  do
    {
      damper = dw_damper_defaults ();
      damper.body.bore = test_random_uniform (r, 8e-3, 25e-3);
      damper.body.rod = fmax (1e-3, damper.body.bore * test_random_uniform (r, 0.1, 0.5));
      damper.piston = random_piston (r);
      damper.valve = random_valve (r, damper.body.bore);
      damper.oil = random_oil (r);
      damper.gas.kind = kinds[test_random_int (r, 0, 2)];
      damper.gas.pressure = damper.gas.kind == DW_GAS_VENTED
                                ? test_random_uniform (r, 80e3, 105e3)
                                : test_random_log_uniform (r, 50e3, 500e3);
      damper.gas.volume = test_random_log_uniform (r, 0.1e-6, 3e-6);
      damper.seal_friction = test_random_uniform (r, 0.0, 2.0);
    }
  while (dw_damper_check (&damper, NULL, 0) > 0);
  return damper;
}

double
extreme_value (test_random *r, dw_limit_id id)
{
  const dw_limit *limit = dw_limit_get (id);
  const double where = test_random_uniform (r, 0.0, 1.0);

  if (where < 0.15)
    return limit->low;
  if (where < 0.3)
    return limit->high;
  if (limit->low > 0.0)
    return test_random_log_uniform (r, limit->low, limit->high);
  /* most of it near 0, where gaps are thin and preloads small */
  return limit->low + (limit->high - limit->low) * pow (test_random_uniform (r, 0.0, 1.0), 3.0);
}

static dw_piston
extreme_piston (test_random *r)
{
  dw_piston piston = { .thickness = extreme_value (r, DW_LIMIT_PISTON_THICKNESS),
                       .clearance = extreme_value (r, DW_LIMIT_CLEARANCE),
                       .eccentricity = extreme_value (r, DW_LIMIT_ECCENTRICITY),
                       .n_holes = test_random_int (r, 1, 3) };

  for (int i = 0; i < piston.n_holes; i++)
    piston.holes[i] = (dw_holes){ .count = test_random_int (r, 1, chance (r, 0.5) ? 6 : 64),
                                  .diameter = extreme_value (r, DW_LIMIT_HOLE_DIAMETER),
                                  .covered = chance (r, 0.5) };
  return piston;
}

static dw_valve
extreme_valve (test_random *r, double bore)
{
  const double outer = bore * (chance (r, 0.2) ? 1.0 : test_random_uniform (r, 0.3, 1.0));
  const double ends[] = { 0.1, 0.949, test_random_uniform (r, 0.1, 0.949) };
  const double hub = fmax (0.5e-3, outer * ends[test_random_int (r, 0, 2)]);
  dw_valve valve = { .opens_on = chance (r, 0.5) ? DW_REBOUND : DW_COMPRESSION,
                     .hub_diameter = hub,
                     .outer_diameter = outer,
                     .hole_circle = hub + (outer - hub) * test_random_uniform (r, 0.0, 1.0),
                     .lift_limit = extreme_value (r, DW_LIMIT_LIFT),
                     .leaf_coupling = extreme_value (r, DW_LIMIT_COUPLING),
                     .preload = extreme_value (r, DW_LIMIT_PRELOAD),
                     .seat_gap = extreme_value (r, DW_LIMIT_SEAT_GAP),
                     .n_shims = test_random_int (r, 0, 3) };

  for (int i = 0; i < valve.n_shims; i++)
    valve.shims[i] = (dw_shim){ .thickness = extreme_value (r, DW_LIMIT_SHIM_THICKNESS),
                                .count = test_random_int (r, 1, 64),
                                .modulus = extreme_value (r, DW_LIMIT_MODULUS),
                                .poisson = extreme_value (r, DW_LIMIT_POISSON),
                                .strength = 100e6 };
  return valve;
}

dw_damper
extreme_damper (test_random *r)
{
  static const dw_gas_kind kinds[] = { DW_GAS_BLADDER, DW_GAS_VENTED, DW_GAS_EMULSION };
  dw_damper d;

  do
    {
      d = dw_damper_defaults ();
      d.body = (dw_body){ .bore = extreme_value (r, DW_LIMIT_BORE),
                          .rod = extreme_value (r, DW_LIMIT_ROD),
                          .stroke = extreme_value (r, DW_LIMIT_STROKE) };
      d.piston = extreme_piston (r);
      d.valve = extreme_valve (r, d.body.bore);
      d.oil.viscosity = extreme_value (r, DW_LIMIT_VISCOSITY);
      d.oil.has_thinning = chance (r, 0.3);
      d.oil.thinning_rate = extreme_value (r, DW_LIMIT_THINNING_RATE);
      d.oil.thinning_exponent = extreme_value (r, DW_LIMIT_THINNING_EXPONENT);
      d.gas.kind = kinds[test_random_int (r, 0, 2)];
      d.gas.pressure = extreme_value (r, d.gas.kind == DW_GAS_VENTED ? DW_LIMIT_AIR_PRESSURE
                                                                     : DW_LIMIT_GAS_PRESSURE);
      d.gas.volume = extreme_value (r, DW_LIMIT_GAS_VOLUME);
      d.seal_friction = extreme_value (r, DW_LIMIT_SEAL_FRICTION);
    }
  while (dw_damper_check (&d, NULL, 0) > 0);
  return d;
}

double
random_temperature (test_random *r)
{
  return test_random_uniform (r, -10.0, 60.0);
}
