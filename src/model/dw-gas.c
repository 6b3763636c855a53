/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-gas.h"

#include <math.h>

#include "model/dw-units.h"

static const double PI = 3.14159265358979323846;

/* Air at 20 degC and one atmosphere, ideal gas. */
static const double AIR_DENSITY = 1.204;

/* An emulsion of more gas than this is foam: its viscosity is another matter. */
static const double MOST_GAS_PER_OIL = 1.0;

double
dw_gas_push (const dw_gas *gas, double rod_area)
{
  return gas->kind == DW_GAS_VENTED ? 0.0 : (gas->pressure - DW_ATMOSPHERE) * rod_area;
}

double
dw_gas_lost_travel (const dw_gas *gas, double pressure, double ring_area)
{
  if (pressure <= gas->pressure)
    return 0.0;
  if (gas->kind == DW_GAS_VENTED)
    return HUGE_VAL;
  return gas->volume * (1.0 - pow (gas->pressure / pressure, 1.0 / DW_GAS_EXPONENT)) / ring_area;
}

double
dw_gas_pressure_at (double pressure, double volume, double rod_area, double travel, double exponent)
{
  return pressure * pow (volume / (volume - rod_area * travel), exponent);
}

double
dw_emulsion_density (double liquid, double gas, double fraction, double reference, double pressure,
                     double exponent)
{
  return (liquid + fraction * gas) / (1.0 + fraction * pow (reference / pressure, 1.0 / exponent));
}

double
dw_emulsion_bulk_modulus (double liquid, double fraction, double reference, double pressure,
                          double exponent)
{
  const double squeezed = pow (reference / pressure, 1.0 / exponent);
  return liquid * (1.0 + fraction * squeezed)
         / (1.0 + fraction * squeezed * liquid / (exponent * pressure));
}

double
dw_emulsion_fraction (const dw_damper *damper)
{
  const double bore = damper->body.bore;
  const double cylinder = PI / 4.0 * bore * bore * damper->body.stroke;
  const double oil = fmax (cylinder - damper->gas.volume, damper->gas.volume / MOST_GAS_PER_OIL);
  return damper->gas.volume / oil;
}

dw_fluid
dw_gas_mixed_fluid (const dw_damper *damper, const dw_fluid *oil)
{
  dw_fluid fluid = *oil;

  if (damper->gas.kind != DW_GAS_EMULSION)
    return fluid;
  /* the gas volume is given at the gas pressure: reference and pressure are the same */
  fluid.density = dw_emulsion_density (
      oil->density, AIR_DENSITY * damper->gas.pressure / DW_ATMOSPHERE,
      dw_emulsion_fraction (damper), damper->gas.pressure, damper->gas.pressure, DW_GAS_EXPONENT);
  fluid.viscosity = oil->dynamic / fluid.density;
  return fluid;
}
