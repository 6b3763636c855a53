/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-label-column.h
 * Labels above each other beside what they name, moved apart where they would overlap.
 *
 * Pure functions.
 */
#pragma once

#define DW_LABEL_COLUMN_MOST 32

/** How many labels of a height there is room for. All in [pt]. */
int dw_label_column_room (double top, double bottom, double height);

/**
 * Places nearest to the wanted ones (least sum of squares) that keep the order, do not overlap and lie
 * between top and bottom.
 *
 * @param wanted      [pt] middle of each, rising
 * @param n           at most DW_LABEL_COLUMN_MOST, and no more than there is room for
 * @param height      [pt] of a label
 * @param top,bottom  [pt] of the column
 * @param middle      [pt] set; room for n
 */
void dw_label_column_spread (const double *wanted, int n, double height, double top, double bottom,
                             double *middle);
