/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-gas.h
 * The gas that makes room for the shaft: its push, the void it allows, and gas in the oil.
 *
 * Pure functions: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"
#include "model/dw-oil.h"

/** [1] Polytropic exponent of air in a quick stroke (adiabatic, kappa 1.4). */
#define DW_GAS_EXPONENT 1.4

/**
 * Push of the gas on the shaft [N], (p_gas - p_atm) A_rod; 0 when vented.
 *
 * @param rod_area  [m2]
 */
double dw_gas_push (const dw_gas *gas, double rod_area);

/**
 * Travel lost to the void [m] until the gas has been squeezed to dp:
 * V0 (1 - (p_gas/dp)^(1/n))/A. 0 below the onset, infinity when vented.
 *
 * @param pressure   [Pa] dp across the piston
 * @param ring_area  [m2] A
 */
double dw_gas_lost_travel (const dw_gas *gas, double pressure, double ring_area);

/**
 * Pressure of a trapped volume after the shaft went in [Pa], p0 (V0/(V0 - A_rod x))^n.
 *
 * @param pressure  [Pa] p0, absolute
 * @param volume    [m3] V0
 * @param rod_area  [m2]
 * @param travel    [m] x, inwards positive, A_rod x < V0
 * @param exponent  [1] n
 */
double dw_gas_pressure_at (double pressure, double volume, double rod_area, double travel,
                           double exponent);

/**
 * Density of oil with gas mixed in [kg/m3]: (rho_l + al rho_g)/(1 + al (p_a/p)^(1/n)), al the
 * gas volume per oil volume at p_a, rho_g gas density there.
 *
 * @param liquid     [kg/m3] rho_l
 * @param gas        [kg/m3] rho_g
 * @param fraction   [1] al
 * @param reference  [Pa] p_a, absolute
 * @param pressure   [Pa] p, absolute
 * @param exponent   [1] n
 */
double dw_emulsion_density (double liquid, double gas, double fraction, double reference,
                            double pressure, double exponent);

/**
 * Bulk modulus of oil with gas mixed in [Pa].
 *
 * @param liquid     [Pa] of the oil alone
 * @param fraction   [1] gas per oil volume at the reference pressure
 * @param reference  [Pa] absolute
 * @param pressure   [Pa] absolute
 * @param exponent   [1] n
 */
double dw_emulsion_bulk_modulus (double liquid, double fraction, double reference, double pressure,
                                 double exponent);

/** Gas volume per oil volume [1] of an emulsion damper: the cylinder, less the gas, is oil. */
double dw_emulsion_fraction (const dw_damper *damper);

/** The fluid as the piston meets it: thinned in density by mixed-in gas when an emulsion. */
dw_fluid dw_gas_mixed_fluid (const dw_damper *damper, const dw_fluid *oil);
