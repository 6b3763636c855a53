/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-stack-words.h
 * The words of a drawn shim stack.
 *
 * Every text is freed by the caller with g_free(); it is NULL where its words are left out.
 */
#pragma once

#include "draw/dw-chart.h"
#include "draw/dw-number-format.h"
#include "model/dw-damper.h"

/** Words, already translated, and their unit. Borrowed. NULL or empty = not written. */
typedef struct
{
  const char *scale;       /**< "{scale} : 1 across, thickness {factor} : 1" */
  const char *scale_alone; /**< without a stack: "{scale} : 1 across" */
  const char *entry;       /**< "{number}: {count} × {thickness} {unit}" */
  const char *more;        /**< where labels lack room: "{first}–{last}: {count} leaves" */
  const char *lift;        /**< "lift {lift} {unit}" */
  const char *lift_cut;    /**< drawn smaller than to scale: "lift {lift} {unit}, cut" */
  const char *opens[DW_N_STROKES]; /**< "opens on rebound" */
  const char *none;                /**< "no shim" */
  dw_unit length;                  /**< of thicknesses and lift */
} dw_stack_labels;

/** English, millimetres. */
dw_stack_labels dw_stack_labels_defaults (void);

/** Entry @p i of the stack, number 1 nearest the piston: "1: 2 × 0.15 mm". */
char *dw_stack_words_entry (const dw_stack_labels *labels, const dw_number_format *numbers,
                            const dw_valve *valve, int i);

/** All entries from @p first on in one: "12–16: 20 leaves". */
char *dw_stack_words_more (const dw_stack_labels *labels, const dw_number_format *numbers,
                           const dw_valve *valve, int first);

/** "lift 0.6 mm". @param is_cut  it is drawn smaller than to scale */
char *dw_stack_words_lift (const dw_stack_labels *labels, const dw_number_format *numbers,
                           const dw_valve *valve, bool is_cut);

/**
 * "4 : 1 across, thickness 25 : 1".
 *
 * @param scale   [1] across
 * @param factor  [1] of thicknesses; 0 = without a stack
 */
char *dw_stack_words_scale (const dw_stack_labels *labels, const dw_number_format *numbers,
                            double scale, double factor);
