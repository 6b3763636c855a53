/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study-dampers.h"

#include <math.h>

#include "model/dw-units.h"

dw_damper
study_damper (void)
{
  dw_damper damper = dw_damper_defaults ();
  damper.piston.n_holes = 3;
  damper.piston.holes[0] = (dw_holes){ .count = 4, .diameter = 1.5e-3 };
  damper.piston.holes[1] = (dw_holes){ .count = 2, .diameter = 1.2e-3 };
  damper.piston.holes[2] = (dw_holes){ .count = 4, .diameter = 1.1e-3, .covered = true };
  damper.valve.n_shims = 2;
  damper.valve.shims[0] = (dw_shim){
    .thickness = 0.15e-3, .count = 1, .modulus = 4e9, .poisson = 0.38, .strength = 100e6
  };
  damper.valve.shims[1] = damper.valve.shims[0];
  damper.valve.shims[1].thickness = 0.1e-3;
  damper.valve.shims[1].count = 2;
  damper.seal_friction = 0.4;
  damper.stance = (dw_stance){
    .has_ride_height = true, .ride_height = 24e-3, .has_droop = true, .droop = 18e-3
  };
  return damper;
}

dw_damper
study_covered_damper (void)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.holes[1] = (dw_holes){ 4, 1.1e-3, true };
  d.piston.n_holes = 2;
  d.valve.opens_on = DW_REBOUND;
  d.valve.hub_diameter = 6e-3;
  d.valve.outer_diameter = 10.6e-3;
  d.valve.hole_circle = 8.2e-3;
  d.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  d.valve.n_shims = 1;
  return d;
}

#define CHANGE(name, statement)                                                                    \
  static void name (dw_damper *d)                                                                  \
  {                                                                                                \
    statement;                                                                                     \
  }

CHANGE (bore, d->body.bore = 15e-3)
CHANGE (stroke, d->body.stroke = 27e-3)
CHANGE (clearance, d->piston.clearance = 0.05e-3)
CHANGE (eccentricity, d->piston.eccentricity = 0.5)
CHANGE (drilled, d->piston.holes[0].diameter = 1.6e-3)
CHANGE (covered_drilled, d->piston.holes[2].diameter = 1.2e-3)
CHANGE (more_holes, d->piston.holes[1].count = 3)
CHANGE (another_piston, d->piston.holes[1] = ((dw_holes){ .count = 5, .diameter = 1.0e-3 }))
CHANGE (covered_now, d->piston.holes[1].covered = true)
CHANGE (group_added, d->piston.n_holes = 4;
        d->piston.holes[3] = ((dw_holes){ .count = 2, .diameter = 1.0e-3 }))
CHANGE (group_removed, d->piston.n_holes = 2)
CHANGE (half_drilled, d->piston.n_holes = 4; d->piston.holes[0].count = 2;
        d->piston.holes[3] = ((dw_holes){ .count = 2, .diameter = 1.6e-3 }))
CHANGE (all_one_size, d->piston.holes[1].diameter = 1.5e-3)
CHANGE (opens_on, d->valve.opens_on = DW_COMPRESSION)
CHANGE (lift_limit, d->valve.lift_limit = 0.4e-3)
CHANGE (coupling, d->valve.leaf_coupling = 0.2)
CHANGE (thinner, d->valve.shims[0].thickness = 0.1e-3)
CHANGE (thinner_top, d->valve.shims[1].thickness = 0.125e-3)
CHANGE (one_less, d->valve.shims[1].count = 1)
CHANGE (one_more, d->valve.shims[0].count = 2)
CHANGE (shim_removed, d->valve.n_shims = 1)
CHANGE (shim_added, d->valve.n_shims = 3; d->valve.shims[2] = d->valve.shims[0];
        d->valve.shims[2].thickness = 0.2e-3)
CHANGE (stiffer_leaf, d->valve.shims[0].modulus = 5e9)
CHANGE (stronger_leaf, d->valve.shims[0].strength = 120e6)
CHANGE (steel, d->valve.shims[0] = ((dw_shim){ 0.1e-3, 2, 200e9, 0.3, 900e6 }))
CHANGE (turned_over, const dw_shim first = d->valve.shims[0]; d->valve.shims[0] = d->valve.shims[1];
        d->valve.shims[1] = first)
CHANGE (thicker_oil, d->oil.viscosity = 525e-6)
CHANGE (blend, d->oil.kind = DW_OIL_BLEND; d->oil.n_parts = 2;
        d->oil.parts[0] = ((dw_oil_part){ 350e-6, 0.25 });
        d->oil.parts[1] = ((dw_oil_part){ 500e-6, 0.75 }))
CHANGE (measured, d->oil.kind = DW_OIL_MEASURED; d->oil.point_temperature[0] = 20.0;
        d->oil.point_temperature[1] = 40.0; d->oil.point_viscosity[0] = 600e-6;
        d->oil.point_viscosity[1] = 300e-6)
CHANGE (thins, d->oil.has_thinning = true; d->oil.thinning_rate = 2e4;
        d->oil.thinning_exponent = 0.8)
CHANGE (gas_pressure, d->gas.pressure = 150e3)
CHANGE (gas_volume, d->gas.volume = 2e-6)
CHANGE (vented, d->gas.kind = DW_GAS_VENTED)
CHANGE (seal, d->seal_friction = 0.6)
CHANGE (spring_rate, d->spring.rate = 580.0)
CHANGE (other_spring, d->spring.rate = 580.0; d->spring.free_length = 75e-3)
CHANGE (preload, d->spring.preload = 4e-3)
CHANGE (linkage, d->motion_ratio = 0.62)
CHANGE (filling, d->body.has_filling = true; d->body.filling = 12.5e-6)
CHANGE (ride_height, d->stance.ride_height = 26e-3)
CHANGE (no_droop, d->stance.has_droop = false)

static const study_change changes[] = {
  { bore, DW_DIFFERENCE_VALUE, "body.bore", 16e-3, 15e-3, true, "bore 16 mm -> 15 mm" },
  { stroke, DW_DIFFERENCE_VALUE, "body.stroke", 30e-3, 27e-3, false, "stroke 30 mm -> 27 mm" },
  { clearance, DW_DIFFERENCE_VALUE, "piston.clearance", 0.03e-3, 0.05e-3, true,
    "piston clearance 0.03 mm -> 0.05 mm" },
  { eccentricity, DW_DIFFERENCE_VALUE, "piston.eccentricity", 0.0, 0.5, true,
    "piston eccentricity 0 -> 0.5" },
  { drilled, DW_DIFFERENCE_CHANGED, "piston.holes.diameter", 1.5e-3, 1.6e-3, true,
    "holes: 4 x 1.5 mm -> 4 x 1.6 mm" },
  { covered_drilled, DW_DIFFERENCE_CHANGED, "piston.holes.diameter", 1.1e-3, 1.2e-3, true,
    "covered holes: 4 x 1.1 mm -> 4 x 1.2 mm" },
  { more_holes, DW_DIFFERENCE_ADDED, "piston.holes.count", 2.0, 3.0, true,
    "holes added: 1 x 1.2 mm (2 -> 3)" },
  { another_piston, DW_DIFFERENCE_CHANGED, "piston.holes", NAN, NAN, true,
    "holes: 2 x 1.2 mm -> 5 x 1 mm" },
  { covered_now, DW_DIFFERENCE_CHANGED, "piston.holes.covered", NAN, NAN, true,
    "holes 2 x 1.2 mm: open -> covered" },
  { group_added, DW_DIFFERENCE_ADDED, "piston.holes.count", 0.0, 2.0, true,
    "holes added: 2 x 1 mm" },
  { group_removed, DW_DIFFERENCE_REMOVED, "piston.holes.count", 4.0, 0.0, true,
    "covered holes removed: 4 x 1.1 mm" },
  { half_drilled, DW_DIFFERENCE_CHANGED, "piston.holes.diameter", 1.5e-3, 1.6e-3, true,
    "holes: 2 x 1.5 mm -> 2 x 1.6 mm" },
  { all_one_size, DW_DIFFERENCE_CHANGED, "piston.holes.diameter", 1.2e-3, 1.5e-3, true,
    "holes: 2 x 1.2 mm -> 2 x 1.5 mm" },
  { opens_on, DW_DIFFERENCE_CHOICE, "valve.opens-on", NAN, NAN, true,
    "shim opens on rebound -> on compression" },
  { lift_limit, DW_DIFFERENCE_VALUE, "valve.lift-limit", 0.6e-3, 0.4e-3, true,
    "shim lift limit 0.6 mm -> 0.4 mm" },
  { coupling, DW_DIFFERENCE_VALUE, "valve.leaf-coupling", 0.0, 0.2, true,
    "leaf coupling 0 -> 0.2" },
  { thinner, DW_DIFFERENCE_CHANGED, "valve.shim.thickness", 0.15e-3, 0.1e-3, true,
    "shim 1: thickness 0.15 mm -> 0.1 mm" },
  { thinner_top, DW_DIFFERENCE_CHANGED, "valve.shim.thickness", 0.1e-3, 0.125e-3, true,
    "shim 2: 2 leaves, thickness 0.1 mm -> 0.125 mm" },
  { one_less, DW_DIFFERENCE_REMOVED, "valve.shim.count", 2.0, 1.0, true,
    "1 shim of 0.1 mm removed (2 -> 1)" },
  { one_more, DW_DIFFERENCE_ADDED, "valve.shim.count", 1.0, 2.0, true,
    "1 shim of 0.15 mm added (1 -> 2)" },
  { shim_removed, DW_DIFFERENCE_REMOVED, "valve.shim.count", 2.0, 0.0, true,
    "2 shims of 0.1 mm removed" },
  { shim_added, DW_DIFFERENCE_ADDED, "valve.shim.count", 0.0, 1.0, true, "1 shim of 0.2 mm added" },
  { stiffer_leaf, DW_DIFFERENCE_CHANGED, "valve.shim.modulus", 4e9, 5e9, true,
    "shim 1: modulus 4 GPa -> 5 GPa" },
  { stronger_leaf, DW_DIFFERENCE_CHANGED, "valve.shim.strength", 100e6, 120e6, false,
    "shim 1: strength 100 MPa -> 120 MPa" },
  { steel, DW_DIFFERENCE_CHANGED, "valve.shim", NAN, NAN, true,
    "shim 1: 1 x 0.15 mm -> 2 x 0.1 mm, modulus 4 GPa -> 200 GPa, Poisson's ratio 0.38 -> 0.3, "
    "strength 100 MPa -> 900 MPa" },
  { turned_over, DW_DIFFERENCE_ORDER, "valve.shim", NAN, NAN, false,
    "order of the shims: 1 x 0.15, 2 x 0.1 mm -> 2 x 0.1, 1 x 0.15 mm" },
  { thicker_oil, DW_DIFFERENCE_CHANGED, "oil.viscosity", 450e-6, 525e-6, true,
    "oil 450 cSt -> 525 cSt" },
  { blend, DW_DIFFERENCE_CHANGED, "oil", NAN, NAN, true,
    "oil 450 cSt -> 25 % of 350 cSt with 75 % of 500 cSt" },
  { measured, DW_DIFFERENCE_CHANGED, "oil", NAN, NAN, true,
    "oil 450 cSt -> 600 cSt at 20 degC and 300 cSt at 40 degC, 970 kg/m3" },
  { thins, DW_DIFFERENCE_CHANGED, "oil", NAN, NAN, true,
    "oil 450 cSt -> 450 cSt, thinning from 20000 1/s (exponent 0.8)" },
  { gas_pressure, DW_DIFFERENCE_VALUE, "gas.pressure", 101.325e3, 150e3, true,
    "gas pressure 101.325 kPa -> 150 kPa" },
  { gas_volume, DW_DIFFERENCE_VALUE, "gas.volume", 1e-6, 2e-6, true, "gas volume 1 ml -> 2 ml" },
  { vented, DW_DIFFERENCE_CHOICE, "gas.kind", NAN, NAN, true,
    "gas bladder 101.325 kPa, 1 ml -> vented" },
  { seal, DW_DIFFERENCE_VALUE, "seal.friction", 0.4, 0.6, true, "seal friction 0.4 N -> 0.6 N" },
  { spring_rate, DW_DIFFERENCE_VALUE, "spring.rate", 500.0, 580.0, false,
    "spring rate 0.5 N/mm -> 0.58 N/mm" },
  { other_spring, DW_DIFFERENCE_CHANGED, "spring", NAN, NAN, false,
    "spring 0.5 N/mm, 70 mm long -> 0.58 N/mm, 75 mm long" },
  { preload, DW_DIFFERENCE_VALUE, "spring.preload", 0.0, 4e-3, false,
    "spring preload 0 mm -> 4 mm" },
  { linkage, DW_DIFFERENCE_VALUE, "linkage.motion-ratio", 1.0, 0.62, false,
    "motion ratio 1 -> 0.62" },
  { filling, DW_DIFFERENCE_VALUE, "body.filling", NAN, 12.5e-6, false,
    "oil filling not given -> 12.5 ml" },
  { ride_height, DW_DIFFERENCE_VALUE, "stance.ride-height", 24e-3, 26e-3, false,
    "ride height 24 mm -> 26 mm" },
  { no_droop, DW_DIFFERENCE_VALUE, "stance.droop", 18e-3, NAN, false, "droop 18 mm -> not given" },
};

const study_change *
study_changes (int *n)
{
  *n = (int)(sizeof changes / sizeof changes[0]);
  return changes;
}
