/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-view.h
 * The overlay chart of one axle: zoom by wheel, drag and keys, reading line by pointer and keys.
 *
 * Signal "reading" (text, or NULL when there is none) after the reading line moved.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/dw-chart.h"

G_BEGIN_DECLS

#define DW_TYPE_CHART_VIEW (dw_chart_view_get_type ())
G_DECLARE_FINAL_TYPE (DwChartView, dw_chart_view, DW, CHART_VIEW, GtkWidget)

GtkWidget *dw_chart_view_new (void);

/**
 * Show other curves. Zoom and reading line stay.
 *
 * @param series  n of them, owned by the view from now on; the first is the reference
 * @param chart   options, units and words; its series are not looked at. Words are borrowed and
 *                must be static.
 */
void dw_chart_view_take (DwChartView *self, dw_series **series, int n, const dw_chart *chart);

/** Colours and line widths; @p scale [1] of all lengths. */
void dw_chart_view_set_style (DwChartView *self, const dw_chart_style *style);

/** Speeds [m/s] at which the chart is described in words. */
void dw_chart_view_set_speeds (DwChartView *self, double low, double middle, double high);

/** The curves are those of an earlier state, and why; NULL = they are right. */
void dw_chart_view_set_stale (DwChartView *self, const char *why);

void dw_chart_view_show_whole (DwChartView *self);

/** Put the reading line at a speed as shown [m/s]; NaN takes it away. */
void dw_chart_view_read_at (DwChartView *self, double speed);

/** What the reading line says, in two lines; NULL when there is none. Caller frees. */
char *dw_chart_view_dup_reading (DwChartView *self);

/** The chart as it is laid out, borrowed; NULL before the first allocation. */
const dw_chart *dw_chart_view_get_chart (DwChartView *self);

G_END_DECLS
