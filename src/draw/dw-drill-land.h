/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-land.h
 * How far the land between the holes lets two sets be drilled: the border of what a map offers.
 *
 * Pure functions.
 */
#pragma once

#include "draw/dw-polyline.h"
#include "study/dw-drill-sets.h"

/**
 * The border between what the land allows and what it does not, from the smallest set 1 to the
 * largest, upright at its end; sizes are from those of now to the highest that is shown.
 *
 * It ends at the present size of set 2, or where it leaves what is shown.
 *
 * @param x_high  [m] highest size of set 1 that is shown
 * @param y_high  [m] of set 2
 * @param out     cleared, then filled: spots in metres, y upwards; empty when all has land
 */
void dw_drill_land_make (const dw_drill_sets *sets, double x_high, double y_high, dw_polyline *out);

/** Largest size of a set that the land allows [m], the other as it is; @p high when that is less. */
double dw_drill_land_end (const dw_drill_sets *sets, int set, double high);
