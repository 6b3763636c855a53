/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file match-boxes.h
 * Parts boxes that the tests and the benchmark of matching share.
 */
#pragma once

#include "study/dw-match.h"
#include "test-support.h"

/** A box with room for its content. Start it with one of the functions below; clear it in the end. */
typedef struct
{
  dw_damper now;
  double temperature;         /**< [degC] */
  double speeds[DW_N_SPEEDS]; /**< [m/s] */
  double drills[24];
  dw_oil bottles[12];
  dw_shim shims[8];
  dw_piston pistons[3];
  double temperatures[4];
  dw_ladder *ladder; /**< owned; NULL where nothing can be stacked */
  dw_match_box box;
} match_box;

/** Fixed sizes: so many of each, none of them the fitted ones. @param most_leaves  in a stack */
void match_box_init (match_box *m, int n_drills, int n_bottles, int n_shims, int most_leaves);

/** A few parts of any kind for a random damper, or for the shared one with covered holes. */
void match_box_init_random (match_box *m, test_random *random);

void match_box_clear (match_box *m);

/** Which levers a lot of words names: "o" open, "c" covered, "s" stack, "b" bottle, "m" blend, "p"
 * piston, "t" temperature. */
void match_levers (const char *words, bool allowed[DW_N_LEVERS]);

/** The next build of all grids, one after the other; false after the last one. Start with grid -1. */
bool match_next (const dw_match_grids *grids, dw_match_build *build);
