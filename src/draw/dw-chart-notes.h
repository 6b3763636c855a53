/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-notes.h
 * Words inside the plot: which half is which stroke, and where a void opens. Each looks for a
 * place where it covers neither a line nor another word.
 */
#pragma once

#include "draw/dw-chart-curve.h"
#include "draw/dw-chart-label.h"

/** What the words belong to. Borrows everything. */
typedef struct
{
  const dw_chart *chart;
  const dw_chart_style *style;
  const dw_text_metrics *metrics;
  const dw_chart_frame *frame;
  dw_chart_curve (*curves)[DW_N_STROKES]; /**< of all series; only read */
} dw_chart_notes;

/**
 * Add the words of the strokes, which are always there when their half is, and of the onsets: in
 * full where there is room, else the speed alone, else nothing but the mark.
 */
void dw_chart_notes_add (const dw_chart_notes *notes, dw_chart_label_list *texts);
