/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-work-oil.h
 * How much oil is poured into a damper, and out of which bottles.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"

/**
 * Oil that a damper takes [m3]: room between the cylinder's ends with the shaft half in.
 *
 * @param is_measured  set: whether a measurement says so; false = an estimate from the parts
 */
double dw_work_filling (const dw_damper *damper, bool *is_measured);

/** What comes out of one bottle. */
typedef struct
{
  double viscosity; /**< [m2/s] nominal of the bottle's oil; NaN = the own, measured oil */
  double one;       /**< [m3] for one damper */
  double both;      /**< [m3] for left and right */
} dw_work_oil;

/**
 * Bottles of a filling, in the order of the oil's parts.
 *
 * @param filling  [m3] of one damper
 * @return         how many; one, or as many as the blend has parts
 */
int dw_work_oil_parts (const dw_oil *oil, double filling, dw_work_oil out[DW_MAX_OIL_PARTS]);
