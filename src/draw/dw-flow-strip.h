/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-flow-strip.h
 * Where the oil of one stroke flows: shares of open holes, covered holes and leak against speed,
 * stacked to the full height. They say which part a change would act on.
 */
#pragma once

#include "draw/dw-chart.h"
#include "draw/dw-polyline.h"
#include "draw/dw-scale.h"

/** The strip. Start with all zero, end with dw_flow_strip_clear(). */
typedef struct
{
  dw_rect plot;
  double from; /**< [pt] left end of the data */
  double to;   /**< [pt] right end; not above @p from when there is none */
  /** Upper edge of each part, bottom to top; the last is the top of the plot. */
  dw_polyline edge[DW_N_SHARES];
} dw_flow_strip;

/** Free the lines; it may be used again. */
void dw_flow_strip_clear (dw_flow_strip *strip);

/**
 * Lay out the strip that a chart asks for.
 *
 * @param plot   left and right as those of the chart
 * @param x      speed as shown, the chart's
 * @param strip  cleared, then filled
 */
void dw_flow_strip_make (const dw_chart *chart, const dw_rect *plot, const dw_scale *x,
                         dw_flow_strip *strip);
