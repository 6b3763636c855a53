/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-csv.h
 * The curves of a chart as rows for programs: point decimals, full precision in every locale.
 */
#pragma once

#include <glib.h>

#include "draw/dw-chart.h"

G_BEGIN_DECLS

/** Column names, with a line end. */
extern const char dw_chart_csv_header[];

/**
 * Add both strokes of a series, a row a speed, as the chart shows it (at shaft or wheel).
 *
 * @param setup  id for the first column
 * @param axle   word for the second
 */
void dw_chart_csv_add (const dw_chart *chart, int series, const char *setup, const char *axle,
                       GString *out);

G_END_DECLS
