/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-contour.h
 * Lines on which a field has one value: marching squares over an even grid, joined into whole lines.
 *
 * A cell with a corner that is not known has no line. In a cell whose corners lie crosswise above
 * and below, the mean of the four decides which are joined. Pure functions.
 */
#pragma once

#include "draw/dw-polyline.h"

/** Nodes in each direction, at most. */
#define DW_CONTOUR_MOST 128

/**
 * Lines of one level.
 *
 * @param values  [any unit] n_x times n_y, row by row; NaN = not known
 * @param n_x,n_y 2..DW_CONTOUR_MOST
 * @param level   [unit of the values]
 * @param out     cleared, then filled: spots in nodes, 0..n_x - 1 and 0..n_y - 1, lines parted by
 *                gaps; a closed line ends where it began
 */
void dw_contour_make (const double *values, int n_x, int n_y, double level, dw_polyline *out);
