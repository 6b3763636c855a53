/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-text.h
 * Numbers and sentences for people.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>
#include <stdio.h>

#include "model/dw-damper.h"

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
 * A size in mm with two decimals at least, so that sizes line up: "0.10", "0.125". Caller frees.
 *
 * @param size  [m]
 */
char *dw_calc_size (double size);

/**
 * A stack from the piston outwards, in mm: "0.15+2x0.10" for people, "1x0.15+2x0.10" for programs.
 * Caller frees.
 *
 * @param tells_material  with the modulus in parentheses: "0.15(4 GPa)"
 */
char *dw_calc_stack (const dw_shim *shims, int n, bool tells_material, bool is_csv);

/**
 * End of the part of a text that fits into so many characters, at a blank if there is one. Borrowed.
 *
 * @param text  good UTF-8
 */
const char *dw_calc_line_end (const char *text, glong room);

/**
 * Print a paragraph broken at blanks, and inside a word that is longer than a line.
 *
 * @param indent  blanks before each line; lines after the first get two more when @p hang
 */
void dw_calc_wrap (FILE *file, int indent, gboolean hang, const char *text);

/** As above, printf style. */
void dw_calc_wrapf (FILE *file, int indent, gboolean hang, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

/** Print the title of a project and an empty line; nothing when the title is empty. */
void dw_calc_title (FILE *file, const char *title);

G_END_DECLS
