/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-number-format.h
 * How numbers stand in a drawing: decimal sign, minus sign, digits.
 *
 * Nothing here looks at the locale of the process: the caller says which signs it wants, so
 * that a window shows its user's comma and an exported file the same bytes everywhere.
 */
#pragma once

#include <stddef.h>

/** Signs of a number. Plain value. */
typedef struct
{
  char decimal[8]; /**< UTF-8, "." or "," */
  char minus[8];   /**< UTF-8, U+2212 */
} dw_number_format;

/** Room that every number fits into, NUL included. */
#define DW_NUMBER_ROOM 64

/** A point, and the typographic minus sign. */
dw_number_format dw_number_format_defaults (void);

/**
 * With a fixed number of decimals: "0.05", "12,5". NaN is "-", infinity is the sign for it. What
 * does not fit is cut between characters.
 *
 * @param value     [1] in the unit that is shown
 * @param decimals  0..12
 */
void dw_number_fixed (const dw_number_format *format, double value, int decimals, char *out,
                      size_t room);

/**
 * With a number of significant digits, never in powers of ten, without zeros that say nothing.
 * Digits before the decimal sign are never cut: 1234 in three digits is "1234".
 *
 * @param digits  1..9
 */
void dw_number_digits (const dw_number_format *format, double value, int digits, char *out,
                       size_t room);

/** As above, with zeros: 4 in three digits is "4.00". For columns and readings that change. */
void dw_number_steady (const dw_number_format *format, double value, int digits, char *out,
                       size_t room);
