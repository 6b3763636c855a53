/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-difference-text.h
 * A difference between two dampers in words.
 *
 * Pure functions: safe from any thread.
 */
#pragma once

#include "study/dw-difference.h"

/** Bytes that hold any text of dw_difference_describe(). */
#define DW_DIFFERENCE_TEXT 640

/**
 * A difference in English and trade units, no full stop: "oil 450 cSt -> 525 cSt",
 * "shim 1: thickness 0.15 mm -> 0.1 mm".
 *
 * @param a,b   those that were compared
 * @param text  DW_DIFFERENCE_TEXT bytes
 */
void dw_difference_describe (const dw_difference *difference, const dw_damper *a,
                             const dw_damper *b, char *text);
