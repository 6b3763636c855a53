/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ticks.h
 * Ticks of an axis: round numbers in the unit that is shown, no label on another.
 *
 * Steps are 1, 2 or 5 times a power of ten; on a logarithmic axis of more than half a decade
 * labels stand at 1, 2 and 5 of each decade, or at the decades, as there is room.
 */
#pragma once

#include "draw/dw-number-format.h"
#include "draw/dw-scale.h"
#include "draw/dw-text.h"

#define DW_MAX_TICKS 600

/** One tick. */
typedef struct
{
  double value; /**< [value] as the scale has it */
  double place; /**< [pt] */
  bool is_major;
  char label[24];     /**< "" for minor ones; without sign: an axis is mirrored at zero */
  double label_width; /**< [pt] */
} dw_tick;

/** Ticks in rising order. */
typedef struct
{
  dw_tick ticks[DW_MAX_TICKS];
  int n;
} dw_ticks;

/** What ticks are made for. */
typedef struct
{
  const dw_number_format *numbers;
  const dw_text_metrics *metrics;
  double factor;      /**< [value] in one unit that is shown */
  bool is_vertical;   /**< labels stand above each other */
  double least_major; /**< [pt] between two labelled ticks */
  double least_minor; /**< [pt] between two ticks */
} dw_ticks_options;

/** Fill @p ticks for a scale. */
void dw_ticks_make (const dw_scale *scale, const dw_ticks_options *options, dw_ticks *ticks);

/** Give values below zero their sign: for an axis that is not mirrored. @param options  as above */
void dw_ticks_add_signs (dw_ticks *ticks, const dw_ticks_options *options);

/**
 * The range widened to round numbers, for an axis that shows all.
 *
 * @param low,high  [value] low < high; both > 0 when @p is_log
 * @param factor    [value] in one unit that is shown
 */
void dw_ticks_round_range (double *low, double *high, double factor, bool is_log);
