/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-chart.h
 * The small chart beside the map of drill sizes: now, and drilled with its spread.
 */
#pragma once

#include "project/dw-project.h"
#include "study/dw-drill-table.h"
#include "window/dw-chart-view.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/**
 * Show what a choice does to the curves.
 *
 * @param row     sizes are taken from it; NULL = now alone
 * @param limits  of the drilled holes, for the band
 */
void dw_drill_chart_show (DwChartView *view, const dw_drilling *study, const dw_drill_row *row,
                          const dw_spread_limits *limits, dw_axle axle, dw_units units);

G_END_DECLS
