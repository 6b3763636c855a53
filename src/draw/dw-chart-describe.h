/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-describe.h
 * A chart in words, for screen readers and for the description of an exported file.
 */
#pragma once

#include "draw/dw-chart.h"

/**
 * What the chart shows: quantity, range of speeds, and of each setup the values at some speeds
 * and the void onset. The sentences are those of the chart's labels.
 *
 * @param speeds  [m/s] shaft; those that a curve does not reach are left out
 * @return        caller frees with g_free()
 */
char *dw_chart_describe (const dw_chart *chart, const double *speeds, int n_speeds);
