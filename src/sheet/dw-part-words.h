/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-part-words.h
 * Parts of a damper in the user's language and units: "6 × 1.3 mm", "450 cSt".
 *
 * Translated where the process has a language. Every text is the caller's to free.
 */
#pragma once

#include <glib.h>

#include "model/dw-damper.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/**
 * "0.15 mm", as many digits as a field shows.
 *
 * @param value  [SI or degC]; NaN is "not given"
 */
char *dw_part_words_quantity (dw_quantity quantity, dw_units units, double value);

/** "6 × 1.3 mm". @param length  [m] of each */
char *dw_part_words_some (int count, double length, dw_units units);

/**
 * "4 × 1.4 mm, 2 × 1.5 mm": the holes of one kind.
 *
 * @return  "" when the piston has none of them
 */
char *dw_part_words_holes (const dw_piston *piston, bool covered, dw_units units);

/** "1 × 0.15, 2 × 0.1 mm": from the piston outwards; "" without shims. */
char *dw_part_words_stack (const dw_valve *valve, dw_units units);

/** "450 cSt", a blend or measured points. */
char *dw_part_words_oil (const dw_oil *oil, dw_units units);

/** "bladder 101.3 kPa, 1.2 ml" or "vented". */
char *dw_part_words_gas (const dw_gas *gas, dw_units units);

/** "0.72 N/mm, 70 mm long". */
char *dw_part_words_spring (const dw_spring *spring, dw_units units);

G_END_DECLS
