/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-match-closing.h
 * Which single part that is not in the box would bring a build nearest to the forces that are wanted.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "study/dw-match.h"

typedef enum
{
  DW_CLOSING_NONE,    /**< none comes nearer than what is there */
  DW_CLOSING_OIL,     /**< another oil */
  DW_CLOSING_OPEN,    /**< another drill for the open holes */
  DW_CLOSING_COVERED, /**< another drill for the covered ones */
  DW_CLOSING_SHIM     /**< one leaf instead of the stack */
} dw_match_closing_part;

/** The part, and what it would come to. */
typedef struct
{
  dw_match_closing_part part;
  double size;  /**< [m2/s] nominal viscosity, [m] diameter, [m] thickness */
  double worst; /**< [1] largest miss with it */
} dw_match_closing;

/**
 * Look for it.
 *
 * Each part for itself is tried over its whole range in fine steps, and every valley is then made
 * exact: the miss has several where targets pull apart. Oils of 20 to 5000 cSt, one leaf of 0.02 to
 * 0.6 mm of the first shim's material, holes up to twice their size if the land allows it. A part
 * counts when it comes nearer by a tenth of a percent.
 *
 * @param damper       the nearest build
 * @param temperature  [degC] of its oil
 * @param allowed      levers: oil, open, covered, stack
 */
dw_match_closing dw_match_closing_find (const dw_damper *damper, double temperature,
                                        const dw_match_wish *wish, const bool allowed[DW_N_LEVERS]);
