/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-quantity.h
 * Numbers as people type and read them: with a unit, with their decimal sign.
 *
 * "1.3", "1,3", "1.3 mm", "0.051 in", "4 thou" are all a length. Without a unit the one that is
 * shown counts. No GTK here. Pure functions but for the locale's decimal sign: any thread.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

G_BEGIN_DECLS

/** Which units are shown, one bit a choice; what is typed may be in any. */
typedef enum
{
  DW_UNITS_METRIC = 0,
  DW_UNITS_INCH = 1 << 0,        /**< in for mm */
  DW_UNITS_LBF = 1 << 1,         /**< lbf for N, lbf s/in for N s/m */
  DW_UNITS_FAHRENHEIT = 1 << 2,  /**< degF for degC */
  DW_UNITS_LBF_PER_INCH = 1 << 3 /**< lbf/in for N/mm */
} dw_units;

/** What a number measures. */
typedef enum
{
  DW_QUANTITY_NUMBER,      /**< pure number */
  DW_QUANTITY_LENGTH,      /**< [m] */
  DW_QUANTITY_FORCE,       /**< [N] */
  DW_QUANTITY_DAMPING,     /**< [N s/m] */
  DW_QUANTITY_RATE,        /**< [N/m] */
  DW_QUANTITY_SPEED,       /**< [m/s] */
  DW_QUANTITY_TEMPERATURE, /**< [degC] */
  DW_QUANTITY_VISCOSITY,   /**< [m2/s] */
  DW_QUANTITY_DENSITY,     /**< [kg/m3] */
  DW_QUANTITY_PRESSURE,    /**< [Pa] shown in kPa */
  DW_QUANTITY_MODULUS,     /**< [Pa] shown in GPa */
  DW_QUANTITY_STRESS,      /**< [Pa] shown in MPa */
  DW_QUANTITY_VOLUME,      /**< [m3] */
  DW_QUANTITY_MASS,        /**< [kg] */
  DW_QUANTITY_SHEAR_RATE,  /**< [1/s] */
  DW_N_QUANTITY_KINDS
} dw_quantity;

/** The unit that is shown, "mm"; "" for a pure number. Never NULL. */
const char *dw_quantity_unit (dw_quantity quantity, dw_units units);

/**
 * Read what was typed: blanks, point or comma, an optional unit.
 *
 * A metric value comes out as the correctly rounded SI number, as from a file.
 *
 * @param value  [SI or degC] set on success
 * @return       false for anything that is not one finite number and a known unit
 */
bool dw_quantity_parse (dw_quantity quantity, dw_units units, const char *text, double *value);

/**
 * The number as it is shown, without its unit: as many digits as it takes to read the same value
 * back in metric units, at most six significant ones otherwise; decimal sign of the locale.
 *
 * @param value  [SI or degC]
 * @return       caller frees
 */
char *dw_quantity_format (dw_quantity quantity, dw_units units, double value);

/**
 * Short enough for a field. Metric values in full; in other units a round value has no end of
 * digits, and four significant ones are shown. Caller frees.
 *
 * @param value  [SI or degC]
 */
char *dw_quantity_format_short (dw_quantity quantity, dw_units units, double value);

/**
 * With a number of significant digits, zeros among them ("1.40"), for results. Caller frees.
 *
 * @param value   [SI or degC]
 * @param digits  1..15
 */
char *dw_quantity_format_digits (dw_quantity quantity, dw_units units, double value, int digits);

/**
 * A change in percent with its sign: "+1.2 %", "−11 %"; from ten on without decimals. "" for
 * NaN. Caller frees.
 *
 * @param percent  [%]
 */
char *dw_quantity_format_change (double percent);

/**
 * The value in the shown unit [shown unit].
 *
 * @param value  [SI or degC]
 */
double dw_quantity_to_shown (dw_quantity quantity, dw_units units, double value);

G_END_DECLS
