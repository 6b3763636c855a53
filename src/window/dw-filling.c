/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-filling.h"

#include "model/dw-limits.h"
#include "model/dw-oil.h"
#include "sheet/dw-quantity.h"

/* [degC] where nominal viscosities are given, and the next point of an own oil. */
static const double NOMINAL_TEMPERATURE = 25.0;
static const double WARM_TEMPERATURE = 45.0;
static const double COLD_TEMPERATURE = 5.0;

/* Start values of an oil that thins: [1/s] and [1]. A guess of the right size, to be replaced by
 * what the bottle says. */
static const double THINNING_RATE = 1e5;
static const double THINNING_EXPONENT = 0.8;

/* The number a user would type for it: three digits. */
static double
rounded (dw_quantity quantity, double value)
{
  g_autofree char *text = dw_quantity_format_digits (quantity, DW_UNITS_METRIC, value, 3);
  double x = value;
  dw_quantity_parse (quantity, DW_UNITS_METRIC, text, &x);
  return x;
}

/* Another oil's nominal viscosity is asked of the model; one it cannot tell is as in a new damper. */
static double
nominal_of (const dw_oil *oil)
{
  dw_fluid fluid;
  double viscosity;

  if (oil->kind == DW_OIL_NOMINAL)
    return oil->viscosity;
  if (dw_oil_fluid (oil, NOMINAL_TEMPERATURE, &fluid, NULL) != DW_OK)
    return dw_damper_defaults ().oil.viscosity;
  viscosity = rounded (DW_QUANTITY_VISCOSITY, fluid.viscosity);
  return dw_limit_holds (DW_LIMIT_VISCOSITY, viscosity) ? viscosity
                                                        : dw_damper_defaults ().oil.viscosity;
}

static void
put_point (dw_oil *oil, int i, double temperature, double nominal)
{
  oil->point_temperature[i] = temperature;
  oil->point_viscosity[i] = temperature == NOMINAL_TEMPERATURE
                                ? nominal
                                : rounded (DW_QUANTITY_VISCOSITY,
                                           dw_silicone_viscosity (nominal, temperature));
}

static void
make_measured (dw_oil *oil, double nominal)
{
  put_point (oil, 0, NOMINAL_TEMPERATURE, nominal);
  put_point (oil, 1, WARM_TEMPERATURE, nominal);
  /* the thinnest oils would leave the range when warm */
  if (!dw_limit_holds (DW_LIMIT_VISCOSITY, oil->point_viscosity[1]))
    {
      put_point (oil, 0, COLD_TEMPERATURE, nominal);
      put_point (oil, 1, NOMINAL_TEMPERATURE, nominal);
    }
  oil->density = rounded (DW_QUANTITY_DENSITY, dw_silicone_density (nominal, NOMINAL_TEMPERATURE));
}

void
dw_filling_set_oil_kind (dw_oil *oil, dw_oil_kind kind)
{
  const double nominal = nominal_of (oil);

  if (oil->kind == kind)
    return;
  oil->kind = kind;
  oil->n_parts = 0;
  switch (kind)
    {
    case DW_OIL_NOMINAL:
      oil->viscosity = nominal;
      break;
    case DW_OIL_MEASURED:
      make_measured (oil, nominal);
      break;
    case DW_OIL_BLEND:
      oil->n_parts = DW_MAX_OIL_PARTS;
      for (int i = 0; i < DW_MAX_OIL_PARTS; i++)
        oil->parts[i] = (dw_oil_part){ .viscosity = nominal, .share = 0.5 };
      break;
    }
}

void
dw_filling_set_thinning (dw_oil *oil, bool thins)
{
  oil->has_thinning = thins;
  if (!thins)
    return;
  if (!dw_limit_holds (DW_LIMIT_THINNING_RATE, oil->thinning_rate))
    oil->thinning_rate = THINNING_RATE;
  if (!dw_limit_holds (DW_LIMIT_THINNING_EXPONENT, oil->thinning_exponent))
    oil->thinning_exponent = THINNING_EXPONENT;
}

void
dw_filling_set_gas_kind (dw_gas *gas, dw_gas_kind kind)
{
  const dw_limit_id pressure = kind == DW_GAS_VENTED ? DW_LIMIT_AIR_PRESSURE
                                                     : DW_LIMIT_GAS_PRESSURE;

  gas->kind = kind;
  if (!dw_limit_holds (pressure, gas->pressure))
    gas->pressure = dw_limit_get (pressure)->fallback;
  if (!dw_limit_holds (DW_LIMIT_GAS_VOLUME, gas->volume))
    gas->volume = dw_limit_get (DW_LIMIT_GAS_VOLUME)->fallback;
}
