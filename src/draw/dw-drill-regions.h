/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-regions.h
 * Where on a map of drill sizes nothing can be drilled: what is smaller than now, and what the land
 * between the holes does not allow.
 */
#pragma once

#include "draw/dw-drill-map.h"
#include "draw/dw-polyline.h"
#include "draw/dw-scale.h"

/** On the page. Start with all zero, end with dw_drill_regions_clear(). */
typedef struct
{
  dw_spot now;         /**< the present sizes */
  dw_rect gone[2];     /**< left of now, and right of that below it; perhaps without extent */
  int n_gone;          /**< in a strip 1 */
  dw_polyline land;    /**< border between land and too little of it; empty when all has land */
  dw_polyline no_room; /**< outline of what has too little; closed, empty as well */
} dw_drill_regions;

void dw_drill_regions_clear (dw_drill_regions *regions);

/**
 * Find them.
 *
 * @param x,y      of the page; in a strip @p y is of the shaded measure
 * @param regions  cleared, then filled
 */
void dw_drill_regions_make (const dw_drill_map *map, const dw_rect *plot, const dw_scale *x,
                            const dw_scale *y, dw_drill_regions *regions);
