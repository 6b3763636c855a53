/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-decimal.h
 * Numbers as text in a trade unit, as SI doubles in memory, exact both ways.
 *
 * A unit differs from SI by a power of ten, so the change is made in the
 * text: "1.25" with power -3 is read as 1.25e-3, correctly rounded, where
 * 1.25 * 0.001 would not always be. Thread-safe, independent of the locale.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define DW_DECIMAL_SIZE 48 /**< bytes that hold any formatted number and its zero */

/**
 * Read a decimal number: sign, digits with a point, exponent; blanks around it are allowed.
 *
 * @param power  of ten from the text's unit to SI
 * @param value  [SI unit of the input] set on success; infinite when too large for a double
 * @return       false, @p value left alone, when @p text is anything else
 */
bool dw_decimal_parse (const char *text, int power, double *value);

/** As above for a whole number, digits with a sign only; false also when it does not fit. */
bool dw_decimal_parse_int (const char *text, int *value);

/**
 * The shortest text that dw_decimal_parse() reads back as the same double.
 *
 * Without exponent where the number, in the text's unit, is 0 or lies between 1e-7 and 1e17.
 *
 * @param value   [SI unit of the input] minus zero is written as zero; what is not finite as
 *                "nan" or "inf", which no reader takes
 * @param power   of ten from the text's unit to SI
 * @param buffer  DW_DECIMAL_SIZE bytes
 * @return        @p buffer
 */
const char *dw_decimal_format (double value, int power, char *buffer);

G_END_DECLS
