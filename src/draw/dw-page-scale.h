/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-page-scale.h
 * Scales that parts are drawn to: how large on the page, to how large they are.
 *
 * Pure functions.
 */
#pragma once

#include "model/dw-units.h"

/** [m] in one point of the page */
#define DW_PAGE_POINT (DW_INCH / 72.0)

/**
 * The largest round scale that is not above another one: 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20
 * and so on, 0.5, 0.2 and 0.1.
 *
 * @param largest  [1] that there is room for
 * @param most     [1] that is ever wanted
 * @return         [1] @p largest itself where even 0.1 is more
 */
double dw_page_scale_round (double largest, double most);
