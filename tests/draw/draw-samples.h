/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file draw-samples.h
 * What the tests of drawing share: letters of a known size, dampers with and without a void, charts,
 * maps of drill sizes.
 */
#pragma once

#include "draw/dw-chart-layout.h"
#include "draw/dw-drill-map.h"
#include "draw/dw-ladder-chart.h"
#include "test-support.h"

/** Letters 0.6 em wide, 0.8 em up, 0.2 em down: no fonts are needed. Borrows the style. */
dw_text_metrics sample_metrics (const dw_chart_style *style);

/** Open and covered holes, a shim that opens on rebound, sealed gas at air pressure. */
dw_damper sample_damper (void);

/** Its curves to 1 m/s, of an oil [m2/s]; caller frees. */
dw_series *sample_series (const char *name, double viscosity, bool is_log);

/** A chart of @p n series of different oils, the first one fitted. End with sample_chart_clear(). */
dw_chart sample_chart (int n, bool is_log);
void sample_chart_clear (dw_chart *chart);

/** Its layout in an area from the origin; caller frees. */
dw_chart_layout *sample_layout (const dw_chart *chart, double width, double height);

/** Where a layout's texts are: labels of ticks, legend and others. @return  how many */
int sample_text_boxes (const dw_chart_layout *layout, dw_rect *boxes, int room);

/** Which holes a sample map is of. */
typedef enum
{
  SAMPLE_HALVES, /**< two sets of three open holes that are alike */
  SAMPLE_KINDS,  /**< six open and four covered ones */
  SAMPLE_STRIP,  /**< six open ones in one set */
  N_SAMPLE_MAPS
} sample_map_kind;

/** A study, its fields and a map that borrows them. */
typedef struct
{
  dw_drilling study;
  dw_drill_field shade;
  dw_drill_field contour;
  dw_drill_field equal;
  dw_drill_field oil;
  dw_drill_dot *dots;
  double oils[4];
  dw_drill_map map;
} sample_map;

/**
 * A map with every @p nth drill of the table up to a size [m]: compression shaded, pack in lines; what
 * changes compression by more than half is faint. Caller frees.
 */
sample_map *sample_map_new (sample_map_kind kind, int nth, double largest);
void sample_map_free (sample_map *sample);

/** Compute the fields again, after the measures were changed. */
void sample_map_fill (sample_map *sample);

/** A ladder of stacks of the sample damper, which is a trial: the car has one leaf of 0.15 mm. */
typedef struct
{
  dw_damper damper;
  dw_valve fitted;
  dw_ladder *ladder;
  dw_ladder_chart chart;
} sample_ladder;

/**
 * @param most_leaves  in one stack
 * @param coupling     [1] of leaves
 * @param has_steel    some of the leaves are of another material
 */
sample_ladder *sample_ladder_new (int most_leaves, double coupling, bool has_steel);
void sample_ladder_free (sample_ladder *sample);

/** Show another speed, DW_LOW, DW_MIDDLE or DW_HIGH. */
void sample_ladder_set_speed (sample_ladder *sample, int speed);

/** Dot of a pair of sizes that is nearest [m]. */
int sample_map_dot (const sample_map *sample, double x, double y);
