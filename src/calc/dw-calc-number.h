/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-number.h
 * Numbers on the command line: a point in every locale, a comma between those of a list.
 */
#pragma once

#include <glib.h>

#include "model/dw-limits.h"

G_BEGIN_DECLS

#define DW_CALC_MOST_NUMBERS 100000 /**< in one list */

/** What a number may be. */
typedef struct
{
  double low;       /**< [SI unit of the number] lowest accepted */
  double high;      /**< [SI unit of the number] highest accepted */
  int power;        /**< of ten from the unit typed to SI */
  const char *unit; /**< as it stands in a sentence, "mm"; "" for none */
} dw_calc_range;

/** The range of one of the model's inputs, typed in a trade unit. */
dw_calc_range dw_calc_range_of (dw_limit_id limit, int power, const char *unit);

/**
 * One number.
 *
 * @param option  for the message, "--hub"
 * @param value   [SI unit] set on success
 * @param error   DW_CALC_WRONG_USAGE
 */
gboolean dw_calc_number_parse (const char *option, const char *text, const dw_calc_range *range,
                               double *value, GError **error);

/** A whole number from @p low to @p high, digits only. */
gboolean dw_calc_count_parse (const char *option, const char *text, int low, int high, int *value,
                              GError **error);

/**
 * Numbers with commas between them; FROM:TO:STEP stands for evenly spaced ones, ends included.
 *
 * @return  of double [SI unit], at least one, at most DW_CALC_MOST_NUMBERS; caller frees; NULL on
 *          failure
 */
GArray *dw_calc_numbers_parse (const char *option, const char *text, const dw_calc_range *range,
                               GError **error);

G_END_DECLS
