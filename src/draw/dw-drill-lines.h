/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-lines.h
 * Areas and lines of a map of drill sizes, on the page.
 */
#pragma once

#include "draw/dw-drill-levels.h"
#include "draw/dw-polyline.h"
#include "draw/dw-scale.h"

/** Levels of the tones, and of the lines, at most. */
#define DW_DRILL_SHADE_LEVELS   9
#define DW_DRILL_CONTOUR_LEVELS 12

/** Oils whose lines are drawn, at most. */
#define DW_DRILL_MOST_OILS 24

/** All points of one value. */
typedef struct
{
  double value; /**< [unit of the measure] */
  dw_polyline line;
  char text[40]; /**< the value with its unit */
} dw_drill_line;

/** Start with all zero, end with dw_drill_lines_clear(). */
typedef struct
{
  dw_drill_levels shade; /**< tone i lies under level i, the last one over all of them */
  /** Outlines to be filled one on the other by the even-odd rule: 0 = where the measure is known,
   * i = where it is not below level i - 1. */
  dw_polyline tone[DW_DRILL_MOST_LEVELS + 1];
  int n_contours;
  dw_drill_line contour[DW_DRILL_MOST_LEVELS];
  dw_drill_line equal; /**< low-speed compression of now */
  int n_oils;
  dw_drill_line oil[DW_DRILL_MOST_OILS];
  dw_drill_line curve; /**< of a strip: the measure against the size */
  dw_scale x;          /**< of the page that they are on */
  dw_scale y;
} dw_drill_lines;

void dw_drill_lines_clear (dw_drill_lines *lines);

/** How many tones there are. */
int dw_drill_lines_n_tones (const dw_drill_lines *lines);

/** Share of the ramp of a tone [1]. */
double dw_drill_lines_share (const dw_drill_lines *lines, int tone);

/**
 * Least and largest value of a field where drills may go: not below what is now, and with land; of
 * the whole field where no node is so.
 *
 * @param low,high  [unit of the measure] NaN when nothing is known
 */
void dw_drill_lines_range (const dw_drill_map *map, const dw_drill_field *field, double *low,
                           double *high);

/**
 * Make them.
 *
 * @param x,y    of the page; in a strip @p y is of the measure
 * @param most   contours, 2..DW_DRILL_CONTOUR_LEVELS
 * @param lines  cleared, then filled
 */
void dw_drill_lines_make (const dw_drill_map *map, const dw_scale *x, const dw_scale *y, int most,
                          dw_drill_lines *lines);

/** Move them to their place on the page, and leave out spots that no eye misses; values of the scales'
 * ends stay as they are. */
void dw_drill_lines_move (dw_drill_lines *lines, const dw_scale *x, const dw_scale *y);

/** Cut the curve of a strip to the plot; all else lies in it. */
void dw_drill_lines_clip (dw_drill_lines *lines, const dw_rect *plot);
