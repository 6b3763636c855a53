/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-legend.h
 * Which line is which setup: a sample with dash and marker, and the name.
 */
#pragma once

#include "draw/dw-chart.h"
#include "draw/dw-text.h"

/** One setup. */
typedef struct
{
  int series;
  int slot;
  char *text;      /**< owned; shortened in its middle when long */
  dw_rect box;     /**< sample and text */
  dw_spot from;    /**< left end of the sample */
  dw_spot to;      /**< right end */
  dw_spot text_at; /**< left end of the baseline */
} dw_legend_entry;

/** All of them. Start with all zero, end with dw_legend_clear(). */
typedef struct
{
  dw_legend_entry entries[DW_MAX_SERIES];
  int n;
  dw_rect box; /**< what they cover; without extent when there is none */
} dw_legend;

/** Free the texts; it may be used again. */
void dw_legend_clear (dw_legend *legend);

/**
 * Lay the setups of a chart out in rows from the upper left corner of a strip.
 *
 * They stand as wide as their names need and wrap; when that takes more than the strip's height
 * they are put into columns and their names are shortened, as long as something of them is left.
 *
 * @param strip   place that there is
 * @param legend  cleared, then filled; its box lies in the strip's width
 */
void dw_legend_make (const dw_chart *chart, const dw_chart_style *style,
                     const dw_text_metrics *metrics, const dw_rect *strip, dw_legend *legend);

/** The same with a row for each setup, names shortened to the strip's width. */
void dw_legend_make_rows (const dw_chart *chart, const dw_chart_style *style,
                          const dw_text_metrics *metrics, const dw_rect *strip, dw_legend *legend);

/** [pt] that a row needs at least, to show something of a name. */
double dw_legend_least_width (const dw_chart_style *style);

/** [pt] that the widest entry needs for its whole name. */
double dw_legend_width (const dw_chart *chart, const dw_chart_style *style,
                        const dw_text_metrics *metrics);

void dw_legend_paint (const dw_legend *legend, const dw_chart_style *style, cairo_t *cr);
