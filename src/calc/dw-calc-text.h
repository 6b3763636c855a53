/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-text.h
 * Numbers and sentences for people.
 */
#pragma once

#include <glib.h>
#include <stdio.h>

G_BEGIN_DECLS

/** What whoever drills is told. */
#define DW_CALC_DRILL_CAUTION                                                                      \
  "Drilling cannot be undone: wear eye protection, hold the bit in a pin vice or a bench drill, "  \
  "deburr, and wash out the swarf."

/** Columns of a terminal that sentences and helps keep to. */
#define DW_CALC_WIDTH 78

/**
 * A number in as many digits as it deserves, three as a rule: "4.37", "13.5", "211", "1230".
 *
 * @param value   [any unit] NaN is "-"
 * @param digits  1..9 significant ones; digits before the point are never cut
 * @return        caller frees
 */
char *dw_calc_figure (double value, int digits);

/**
 * A change in percent with its sign and one digit: "+3.1", "-12.0", "0.0". Caller frees.
 *
 * @param percent  [%] NaN is "-"
 */
char *dw_calc_change (double percent);

/**
 * A number as it was typed, up to six digits: "0.05", "1". Caller frees.
 *
 * @param value  [any unit]
 */
char *dw_calc_plain (double value);

/**
 * Print a paragraph broken at blanks, and inside a word that is longer than a line.
 *
 * @param indent  blanks before each line; lines after the first get two more when @p hang
 */
void dw_calc_wrap (FILE *file, int indent, gboolean hang, const char *text);

/** As above, printf style. */
void dw_calc_wrapf (FILE *file, int indent, gboolean hang, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

G_END_DECLS
