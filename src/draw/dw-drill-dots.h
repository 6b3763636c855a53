/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-dots.h
 * The choices of a map on the page: where they are, which one is under the pointer, which one is next.
 */
#pragma once

#include "draw/dw-drill-map.h"
#include "draw/dw-geometry.h"
#include "draw/dw-scale.h"

/** One choice; indexes are those of the map's dots. */
typedef struct
{
  dw_spot at;
  bool is_wanted;
  bool is_shown; /**< it lies in the plot */
} dw_drill_place;

/** Start with all zero, end with dw_drill_dots_clear(). */
typedef struct
{
  dw_drill_place *places; /**< owned */
  int n;
  double radius; /**< [pt] of a wanted one: smaller where they are many */
} dw_drill_dots;

void dw_drill_dots_clear (dw_drill_dots *dots);

/**
 * Place the dots of a map.
 *
 * @param x,y      of the page; in a strip dots lie on the curve of the shaded measure
 * @param largest  [pt] radius where there is room
 * @param dots     cleared, then filled
 */
void dw_drill_dots_make (const dw_drill_map *map, const dw_rect *plot, const dw_scale *x,
                         const dw_scale *y, double largest, dw_drill_dots *dots);

/** Nearest dot that is shown, wanted ones first where both are in reach; -1 = none in @p radius [pt]
 * of @p x,y [pt]. */
int dw_drill_dots_hit (const dw_drill_dots *dots, double x, double y, double radius);

/**
 * The next dot in a direction: the nearest one in its row or column, else the one that needs the
 * least turn; -1 when none lies there.
 *
 * @param from   [pt] where to start
 * @param dx,dy  -1, 0 or 1, to the right and upwards
 */
int dw_drill_dots_next (const dw_drill_dots *dots, dw_spot from, int dx, int dy);
