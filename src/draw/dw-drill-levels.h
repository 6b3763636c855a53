/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-levels.h
 * Round values of a measure at which a map changes its tone or has a line. Pure functions.
 */
#pragma once

#include "draw/dw-drill-map.h"

#define DW_DRILL_MOST_LEVELS 16

/** Rising. Plain value. */
typedef struct
{
  int n;
  double value[DW_DRILL_MOST_LEVELS]; /**< [unit of the measure] */
  int decimals;                       /**< of a number as shown */
} dw_drill_levels;

/**
 * Levels between two values: steps of 1, 2 or 5 times a power of ten; of oils, which are sold so,
 * round numbers that grow evenly by their ratio. None when the values are nearly the same or not
 * finite.
 *
 * @param low,high  [unit of the measure]
 * @param most      2..DW_DRILL_MOST_LEVELS; more than a third of it when the range allows
 */
dw_drill_levels dw_drill_levels_make (dw_drill_measure measure, double low, double high, int most);

/**
 * A value of a measure as text: "+10", "0.95".
 *
 * @param value     [unit of the measure]
 * @param decimals  -1 = three digits
 * @param has_unit  with the unit behind it: "+10 %"
 */
void dw_drill_level_text (dw_drill_measure measure, const dw_number_format *numbers, double value,
                          int decimals, bool has_unit, char *out, size_t room);
