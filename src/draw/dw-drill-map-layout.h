/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-layout.h
 * A map of drill sizes as numbers: where everything is, without painting anything.
 *
 * The legend stands right of the plot in a wide area, else above it. From top to bottom: legend,
 * caption of the upright axis, plot, sizes, caption of set 1. In a small area there are fewer lines
 * and fewer values beside the tones, and left out are samples of the legend, from the last one on;
 * beside a plot that is very low also the bar of the tones; values on lines where they would cover a
 * dot or another word. Captions and words that are too long are shortened in their middle. Never left
 * out: tones, lines, dots, marks, sizes and captions of both axes, what the lines mean (above the
 * plot). A line has a gap where its value stands on it.
 *
 * A layout keeps nothing of the map or the style. For one thread.
 */
#pragma once

#include "draw/dw-drill-dots.h"
#include "draw/dw-drill-map-legend.h"
#include "draw/dw-drill-regions.h"
#include "draw/dw-ticks.h"

/** All that a map's painting needs but the style. Free with dw_drill_map_layout_free(). */
typedef struct
{
  dw_rect area;
  bool has_data; /**< else nothing but the area */
  bool is_strip; /**< one set: the measure upwards against its size */
  dw_rect plot;
  dw_scale x; /**< of sizes [m] */
  dw_scale y; /**< of sizes [m]; in a strip of the shaded measure */
  dw_ticks x_ticks;
  dw_ticks y_ticks;
  double x_tick_top;   /**< [pt] upper edge of the labels under the plot */
  double y_tick_right; /**< [pt] right edge of the labels beside it */
  double tick_ascent;  /**< [pt] */
  double tick_height;  /**< [pt] */
  dw_drill_lines lines;
  dw_drill_dots dots;
  dw_drill_regions regions;
  dw_drill_map_legend legend;
  dw_chart_label_list texts;
  /* marks, renewed by dw_drill_map_layout_mark() */
  int chosen;        /**< dot; -1 = none that is shown */
  int pointed;       /**< dot; -1 = none that is shown */
  dw_rect tolerance; /**< around what the chosen sizes may become; without extent in a direction in
                        which nothing is drilled; not valid without a chosen dot */
  dw_spot chosen_tone;  /**< its value on the legend's bar; NaN when there is none */
  dw_spot pointed_tone; /**< the same of the dot that is pointed at */
} dw_drill_map_layout;

/**
 * Lay a map out.
 *
 * @param area  of the page; every text and line lies in it
 * @return      caller frees
 */
dw_drill_map_layout *dw_drill_map_layout_new (const dw_drill_map *map, const dw_chart_style *style,
                                              const dw_text_metrics *metrics, const dw_rect *area);

/** NULL is allowed. */
void dw_drill_map_layout_free (dw_drill_map_layout *layout);

/** Take over which dots are chosen and pointed at, and the tolerance; all else stays as it is. */
void dw_drill_map_layout_mark (dw_drill_map_layout *layout, const dw_drill_map *map);

/** What the label of a tick covers; without width for a minor tick. */
dw_rect dw_drill_map_layout_x_label_box (const dw_drill_map_layout *layout, int tick);
dw_rect dw_drill_map_layout_y_label_box (const dw_drill_map_layout *layout, int tick);

/** Nearest dot; -1 when none is in reach. @param x,y  [pt] @param radius  [pt] */
int dw_drill_map_layout_hit (const dw_drill_map_layout *layout, double x, double y, double radius);

/**
 * The next dot for the arrow keys.
 *
 * @param dot    where to start; -1 = what is now
 * @param dx,dy  -1, 0 or 1: right and upwards are larger sizes; in a strip only @p dx counts
 * @return       -1 when no dot lies in that direction
 */
int dw_drill_map_layout_step (const dw_drill_map_layout *layout, int dot, int dx, int dy);

/** Sizes at a place of the plot [m]; NaN outside. @param x,y  [pt] @param size_x,size_y  set; may be
 * NULL */
void dw_drill_map_layout_sizes (const dw_drill_map_layout *layout, double x, double y,
                                double *size_x, double *size_y);
