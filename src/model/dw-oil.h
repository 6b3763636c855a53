/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-oil.h
 * What an oil is at a temperature: viscosity, density, and how sure that is.
 *
 * Silicone (PDMS) damper oils follow log10 nu = 763.1/(273 + T) + constant for
 * every grade from about 100 cSt up, -25 to 250 degC (makers' data books, from
 * memory), here normalised so that the nominal value holds at 25 degC exactly.
 * Thinner grades change less with temperature: read their values as a guide.
 *
 * Pure functions, no state: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"
#include "model/dw-status.h"

/** The oil in the damper, at its temperature. */
typedef struct
{
  double temperature;       /**< [degC] */
  double viscosity;         /**< [m2/s] kinematic */
  double density;           /**< [kg/m3] */
  double dynamic;           /**< [Pa s] viscosity times density */
  double viscosity_low;     /**< [m2/s] lowest that the published blend rules give */
  double viscosity_high;    /**< [m2/s] highest; both equal viscosity unless blended */
  double thinning_rate;     /**< [1/s] Carreau critical shear rate; infinity = does not thin */
  double thinning_exponent; /**< [1] Carreau exponent n; 1 = does not thin */
} dw_fluid;

/** A straight line of ASTM D341: log10 log10 Z = a - b log10 T. */
typedef struct
{
  double a; /**< [1] */
  double b; /**< [1] */
} dw_d341;

/**
 * The oil at a temperature.
 *
 * @param temperature  [degC] inside DW_LIMIT_OIL_TEMPERATURE
 * @param out          set on success only
 * @return DW_OK or DW_ERR_RANGE ("conditions.oil", or "oil.point.temperature" when an own oil
 *         is asked for so far outside its two points that the D341 line has no meaning)
 */
dw_status dw_oil_fluid (const dw_oil *oil, double temperature, dw_fluid *out, dw_error *err);

/**
 * Silicone viscosity at a temperature [m2/s], normalised 763.1 rule.
 *
 * @param nominal      [m2/s] at 25 degC, > 0
 * @param temperature  [degC] > -273
 */
double dw_silicone_viscosity (double nominal, double temperature);

/**
 * Silicone density [kg/m3]: by grade at 25 degC (makers' typical values, from memory),
 * rho = rho25/(1 + 9.6e-4/K (T - 25)).
 *
 * @param nominal      [m2/s] at 25 degC, > 0
 * @param temperature  [degC]
 */
double dw_silicone_density (double nominal, double temperature);

/**
 * Density [kg/m3] at a temperature by the silicone expansion, alpha 9.6e-4 1/K.
 *
 * @param density25    [kg/m3] at 25 degC
 * @param temperature  [degC]
 */
double dw_oil_density_at (double density25, double temperature);

/**
 * Line through two measured points, ASTM D341 (Z with its low-viscosity terms).
 *
 * @param kelvin1,kelvin2        [K] different
 * @param viscosity1,viscosity2  [m2/s] at these, > 0
 */
dw_d341 dw_d341_fit (double kelvin1, double viscosity1, double kelvin2, double viscosity2);

/**
 * Viscosity on a D341 line [m2/s].
 *
 * @param kelvin  [K] > 0
 */
double dw_d341_viscosity (dw_d341 line, double kelvin);

/**
 * Z of ASTM D341 [1]: v + 0.7 + exp(-1.47 - 1.84 v - 0.51 v^2), v in cSt.
 *
 * @param viscosity  [m2/s]
 */
double dw_d341_z (double viscosity);

/**
 * Blend by the logarithmic (Arrhenius) rule [m2/s], ln v = sum x ln v. The value used.
 *
 * @param v1,v2  [m2/s] of the two oils, > 0
 * @param x1     [1] volume share of the first, 0..1
 */
double dw_blend_log (double v1, double v2, double x1);

/**
 * Blend by the ASTM D7152 volume rule (Walther function) [m2/s]: part of the stated spread.
 *
 * @param v1,v2  [m2/s] of the two oils, > 0
 * @param x1     [1] volume share of the first, 0..1
 */
double dw_blend_walther (double v1, double v2, double x1);

/**
 * Blend by the Refutas index [m2/s], VBN = 14.534 ln ln (v + 0.8) + 10.975: part of the spread.
 *
 * @param v1,v2  [m2/s] of the two oils, > 0.2 cSt
 * @param w1     [1] mass share of the first, 0..1
 */
double dw_blend_refutas (double v1, double v2, double w1);

/**
 * Carreau factor on the viscosity [1]: (1 + (rate/critical)^2)^((n - 1)/2); 1 for n = 1.
 *
 * @param shear_rate  [1/s] at the wall
 * @param critical    [1/s] rate at which thinning sets in
 * @param exponent    [1] n, 0 < n <= 1
 */
double dw_carreau (double shear_rate, double critical, double exponent);
