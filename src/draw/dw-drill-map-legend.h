/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-legend.h
 * What tones, lines and marks of a map of drill sizes mean: a bar of all tones with their values, and
 * samples with words.
 */
#pragma once

#include "draw/dw-chart-label.h"
#include "draw/dw-drill-lines.h"

/** What has a sample, in the order in which they stand. */
typedef enum
{
  DW_KEY_CONTOUR,
  DW_KEY_OIL,
  DW_KEY_EQUAL,
  DW_KEY_NO_ROOM,
  DW_KEY_GONE,
  DW_KEY_DOT,
  DW_KEY_TOLERANCE,
  DW_N_KEYS
} dw_drill_key;

/** One sample; its words are texts of the layout. */
typedef struct
{
  dw_drill_key key;
  dw_rect box;
} dw_drill_sample;

typedef struct
{
  dw_rect box;     /**< all of it, texts included */
  dw_rect bar;     /**< of the tones, low to high upwards or to the right; no width when left out */
  bool is_upright; /**< high values are at the top */
  dw_drill_sample samples[DW_N_KEYS];
  int n_samples;
} dw_drill_map_legend;

/** What a legend is made of. Borrows everything. */
typedef struct
{
  const dw_drill_map *map;
  const dw_chart_style *style;
  const dw_text_metrics *metrics;
  const dw_drill_lines *lines;
  bool has_land_end; /**< some sizes have too little land */
} dw_drill_map_legend_input;

/** [pt] that a legend beside the plot takes, of an area so wide [pt]. */
double dw_drill_map_legend_width (const dw_drill_map_legend_input *input, double area_width);

/** Beside the plot: words above an upright bar, samples below each other. */
void dw_drill_map_legend_make_beside (const dw_drill_map_legend_input *input, const dw_rect *strip,
                                      dw_drill_map_legend *legend, dw_chart_label_list *texts);

/**
 * Above the plot: a bar that lies, samples in rows. What does not fit into the strip's height is left
 * out from the last sample on.
 */
void dw_drill_map_legend_make_above (const dw_drill_map_legend_input *input, const dw_rect *strip,
                                     dw_drill_map_legend *legend, dw_chart_label_list *texts);

/** Where the upper end of a tone is on the bar [pt]: across, or down when it is upright. */
double dw_drill_map_legend_tone_end (const dw_drill_map_legend *legend, const dw_drill_lines *lines,
                                     int tone);

/**
 * Where a value lies on the bar, between the ends of its tone; at an end when it lies beyond.
 *
 * @param value  [unit of the shaded measure]
 * @return       [pt] in the middle of the bar's width; NaN when there is no bar, or no value
 */
dw_spot dw_drill_map_legend_value_at (const dw_drill_map_legend *legend,
                                      const dw_drill_lines *lines, double value);
