/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-units.h
 * Factors from trade units to SI: value in SI = value in the unit times the factor.
 *
 * Exact by definition (international inch, pound and standard gravity, BIPM
 * SI brochure 9th ed.); temperatures stay in degrees Celsius.
 */
#pragma once

#define DW_MM            1e-3               /**< [m] in one millimetre */
#define DW_INCH          0.0254             /**< [m] in one inch */
#define DW_THOU          0.0000254          /**< [m] in one thousandth of an inch */
#define DW_CST           1e-6               /**< [m2/s] in one centistokes */
#define DW_ML            1e-6               /**< [m3] in one millilitre */
#define DW_KPA           1e3                /**< [Pa] in one kilopascal */
#define DW_BAR           1e5                /**< [Pa] in one bar */
#define DW_PSI           6894.757293168361  /**< [Pa] in one pound-force per square inch */
#define DW_GPA           1e9                /**< [Pa] in one gigapascal */
#define DW_LBF           4.4482216152605    /**< [N] in one pound-force */
#define DW_N_PER_MM      1e3                /**< [N/m] in one newton per millimetre */
#define DW_LBF_PER_INCH  175.12683524647636 /**< [N/m] in one pound-force per inch */
#define DW_GF_PER_MM     9.80665            /**< [N/m] in one gram-force per millimetre */
#define DW_KELVIN_AT_0_C 273.15             /**< [K] at 0 degC */
#define DW_ATMOSPHERE    101.325e3          /**< [Pa] standard atmosphere */

/** Temperature in degrees Celsius from degrees Fahrenheit. */
#define DW_C_FROM_F(f) (((f)-32.0) / 1.8)
