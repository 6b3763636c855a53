/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-readout-columns.h
 * Which columns of figures a chart's legend has room for, and where they are.
 */
#pragma once

#include "draw/dw-chart.h"
#include "draw/dw-text.h"

typedef enum
{
  DW_READ_VALUE,
  DW_READ_CHANGE, /**< against the first series, in percent */
  DW_READ_LOST    /**< travel lost to the void */
} dw_readout_kind;

/** One column; figures end at its right edge. */
typedef struct
{
  dw_readout_kind kind;
  dw_stroke stroke; /**< of a value or a change */
  double left;      /**< [pt] */
  double right;     /**< [pt] */
} dw_readout_column;

#define DW_MAX_READOUT_COLUMNS 5

/** All of them, from left to right. Plain value. */
typedef struct
{
  dw_readout_column columns[DW_MAX_READOUT_COLUMNS];
  int n;        /**< 0 = there is no room */
  double width; /**< [pt] of all of them with a gap before them; 0 without */
  double top;   /**< [pt] of the row of heads */
} dw_readout_columns;

/**
 * Choose columns that fit, and place them.
 *
 * @param right  [pt] where the last one ends
 * @param room   [pt] that there is left of that
 */
dw_readout_columns dw_readout_columns_make (const dw_chart *chart, const dw_chart_style *style,
                                            const dw_text_metrics *metrics, double right,
                                            double room);

/** Head over a stroke's columns, or over the lost travel. Caller frees. */
char *dw_readout_columns_lost_head (const dw_chart *chart);
