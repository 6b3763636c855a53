/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-oil.h"

#include <assert.h>
#include <math.h>

#include "model/dw-limits.h"
#include "model/dw-units.h"

/* log10 nu = 763.1/(273 + T) + constant: makers' data books, from memory; the literal 273 is
 * part of the correlation. */
static const double SILICONE_SLOPE = 763.1;
static const double SILICONE_ZERO = 273.0;
static const double NOMINAL_TEMPERATURE = 25.0;

/* Thermal expansion of silicone from 100 cSt up, makers' typical value, from memory. */
static const double EXPANSION = 9.6e-4;

/* Typical density at 25 degC by grade, from memory; log-linear between, constant outside. */
static const struct
{
  double viscosity; /* [cSt] */
  double density;   /* [kg/m3] */
} densities[]
    = { { 50.0, 960.0 }, { 100.0, 966.0 }, { 200.0, 968.0 }, { 350.0, 970.0 }, { 500.0, 971.0 } };

/* An own oil is not to be asked for where its D341 line gives less than this: the standard's
 * inverse is published down to about 0.2 cSt. */
static const double THINNEST = 0.3e-6;
static const double THICKEST = 1.0; /* [m2/s] = one million cSt */

double
dw_silicone_viscosity (double nominal, double temperature)
{
  const double exponent = SILICONE_SLOPE / (SILICONE_ZERO + temperature)
                          - SILICONE_SLOPE / (SILICONE_ZERO + NOMINAL_TEMPERATURE);
  return nominal * pow (10.0, exponent);
}

double
dw_oil_density_at (double density25, double temperature)
{
  return density25 / (1.0 + EXPANSION * (temperature - NOMINAL_TEMPERATURE));
}

static double
silicone_density25 (double nominal)
{
  const int last = (int)(sizeof densities / sizeof densities[0]) - 1;
  const double cst = nominal / DW_CST;

  if (cst <= densities[0].viscosity)
    return densities[0].density;
  for (int i = 0; i < last; i++)
    if (cst <= densities[i + 1].viscosity)
      {
        const double t = log (cst / densities[i].viscosity)
                         / log (densities[i + 1].viscosity / densities[i].viscosity);
        return densities[i].density + t * (densities[i + 1].density - densities[i].density);
      }
  return densities[last].density;
}

double
dw_silicone_density (double nominal, double temperature)
{
  return dw_oil_density_at (silicone_density25 (nominal), temperature);
}

double
dw_d341_z (double viscosity)
{
  const double v = viscosity / DW_CST;
  return v + 0.7 + exp (-1.47 - 1.84 * v - 0.51 * v * v);
}

/* The standard's published inverse of Z. */
static double
viscosity_from_z (double z)
{
  const double u = z - 0.7;
  return DW_CST * (u - exp (-0.7487 - 3.295 * u + 0.6119 * u * u - 0.3193 * u * u * u));
}

dw_d341
dw_d341_fit (double kelvin1, double viscosity1, double kelvin2, double viscosity2)
{
  const double w1 = log10 (log10 (dw_d341_z (viscosity1)));
  const double w2 = log10 (log10 (dw_d341_z (viscosity2)));
  dw_d341 line;

  line.b = (w1 - w2) / (log10 (kelvin2) - log10 (kelvin1));
  line.a = w1 + line.b * log10 (kelvin1);
  return line;
}

double
dw_d341_viscosity (dw_d341 line, double kelvin)
{
  const double w = line.a - line.b * log10 (kelvin);
  return viscosity_from_z (pow (10.0, pow (10.0, w)));
}

double
dw_blend_log (double v1, double v2, double x1)
{
  return exp (x1 * log (v1) + (1.0 - x1) * log (v2));
}

double
dw_blend_walther (double v1, double v2, double x1)
{
  const double w1 = log10 (log10 (v1 / DW_CST + 0.7));
  const double w2 = log10 (log10 (v2 / DW_CST + 0.7));
  const double w = x1 * w1 + (1.0 - x1) * w2;
  return DW_CST * (pow (10.0, pow (10.0, w)) - 0.7);
}

double
dw_blend_refutas (double v1, double v2, double w1)
{
  const double n1 = 14.534 * log (log (v1 / DW_CST + 0.8)) + 10.975;
  const double n2 = 14.534 * log (log (v2 / DW_CST + 0.8)) + 10.975;
  const double n = w1 * n1 + (1.0 - w1) * n2;
  return DW_CST * (exp (exp ((n - 10.975) / 14.534)) - 0.8);
}

static dw_status
nominal_fluid (double nominal, dw_fluid *out)
{
  out->viscosity = dw_silicone_viscosity (nominal, out->temperature);
  out->density = dw_silicone_density (nominal, out->temperature);
  out->viscosity_low = out->viscosity;
  out->viscosity_high = out->viscosity;
  return DW_OK;
}

static dw_status
measured_fluid (const dw_oil *oil, dw_fluid *out, dw_error *err)
{
  const dw_d341 line = dw_d341_fit (
      oil->point_temperature[0] + DW_KELVIN_AT_0_C, oil->point_viscosity[0],
      oil->point_temperature[1] + DW_KELVIN_AT_0_C, oil->point_viscosity[1]);

  out->viscosity = dw_d341_viscosity (line, out->temperature + DW_KELVIN_AT_0_C);
  if (!(out->viscosity >= THINNEST && out->viscosity <= THICKEST))
    return dw_fail (err, DW_ERR_RANGE, "oil.point.temperature", -1,
                    "the line through the two points gives no usable viscosity at %.6g degC, "
                    "allowed %.6g to %.6g cSt",
                    out->temperature, THINNEST / DW_CST, THICKEST / DW_CST);
  out->density = dw_oil_density_at (oil->density, out->temperature);
  out->viscosity_low = out->viscosity;
  out->viscosity_high = out->viscosity;
  return DW_OK;
}

/* Blended at 25 degC: every silicone grade shares one temperature factor, so the log rule
 * gives the same at any temperature, and the other rules' spread is taken there too. */
static dw_status
blend_fluid (const dw_oil *oil, dw_fluid *out)
{
  const double v1 = oil->parts[0].viscosity;
  const double v2 = oil->parts[1].viscosity;
  const double x1 = oil->parts[0].share;
  const double rho1 = silicone_density25 (v1);
  const double rho2 = silicone_density25 (v2);
  const double mean_density = x1 * rho1 + (1.0 - x1) * rho2;
  const double nominal = dw_blend_log (v1, v2, x1);
  const double walther = dw_blend_walther (v1, v2, x1);
  const double refutas = dw_blend_refutas (v1, v2, x1 * rho1 / mean_density);
  const double factor = dw_silicone_viscosity (1.0, out->temperature);

  out->viscosity = nominal * factor;
  out->viscosity_low = fmin (nominal, fmin (walther, refutas)) * factor;
  out->viscosity_high = fmax (nominal, fmax (walther, refutas)) * factor;
  out->density = dw_oil_density_at (mean_density, out->temperature);
  return DW_OK;
}

dw_status
dw_oil_fluid (const dw_oil *oil, double temperature, dw_fluid *out, dw_error *err)
{
  assert (oil != NULL && out != NULL);

  if (!dw_limit_holds (DW_LIMIT_OIL_TEMPERATURE, temperature))
    return dw_fail (err, DW_ERR_RANGE, "conditions.oil", -1,
                    "%.6g degC is outside the allowed range %.6g to %.6g degC", temperature,
                    dw_limit_get (DW_LIMIT_OIL_TEMPERATURE)->low,
                    dw_limit_get (DW_LIMIT_OIL_TEMPERATURE)->high);

  dw_fluid fluid = { .temperature = temperature,
                     .thinning_rate = oil->has_thinning ? oil->thinning_rate : HUGE_VAL,
                     .thinning_exponent = oil->has_thinning ? oil->thinning_exponent : 1.0 };
  dw_status status = DW_OK;

  switch (oil->kind)
    {
    case DW_OIL_NOMINAL:
      status = nominal_fluid (oil->viscosity, &fluid);
      break;
    case DW_OIL_MEASURED:
      status = measured_fluid (oil, &fluid, err);
      break;
    case DW_OIL_BLEND:
      status = blend_fluid (oil, &fluid);
      break;
    }
  if (status != DW_OK)
    return status;

  fluid.dynamic = fluid.viscosity * fluid.density;
  *out = fluid;
  return DW_OK;
}

double
dw_carreau (double shear_rate, double critical, double exponent)
{
  if (exponent >= 1.0)
    return 1.0;
  const double x = shear_rate / critical;
  return pow (1.0 + x * x, (exponent - 1.0) / 2.0);
}
