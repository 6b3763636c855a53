/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-scale.h
 * From a value to its place on the page and back, evenly or by the logarithm; round numbers.
 *
 * Pure functions.
 */
#pragma once

#include <stdbool.h>

/** One axis. Plain value. */
typedef struct
{
  bool is_log;
  double low;   /**< [value] at @p start; > 0 when logarithmic */
  double high;  /**< [value] at @p end; > low */
  double start; /**< [pt] */
  double end;   /**< [pt] below start for an axis that rises on the page */
} dw_scale;

/** [pt] of a value; infinite for one that a logarithmic scale can not hold. */
double dw_scale_place (const dw_scale *scale, double value);

/** Value [value] at a place [pt]; the inverse of dw_scale_place(). */
double dw_scale_value (const dw_scale *scale, double place);

/** How far a value lies between low and high [1]: 0 at low, 1 at high. */
double dw_scale_share (const dw_scale *scale, double value);

/** The value [value] there; the inverse of dw_scale_share(). */
double dw_scale_at_share (const dw_scale *scale, double share);

/** A step of 1, 2 or 5 times a power of ten. */
typedef struct
{
  int mantissa; /**< 1, 2 or 5 */
  int exponent; /**< of ten */
} dw_step;

/** The smallest step that is not below @p least (> 0) [value]. */
dw_step dw_step_at_least (double least);

/** The next larger one. */
dw_step dw_step_next (dw_step step);

/** @p count steps [value], without the rounding of repeated sums: 3 times 0.1 is 0.3. */
double dw_step_times (dw_step step, double count);

/** Decimals that a multiple of the step needs. */
int dw_step_decimals (dw_step step);
