/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ladder-describe.h
 * A ladder of stacks in words, for screen readers and for the description of an exported file.
 */
#pragma once

#include "draw/dw-ladder-chart.h"

/**
 * How many stacks there are, over which forces, where the ends are, what is fitted and what is chosen.
 * The sentences are those of the chart's labels.
 *
 * @return  caller frees with g_free()
 */
char *dw_ladder_describe (const dw_ladder_chart *chart);

/** One stack: its force, its bounds, what adding thicknesses makes of it, its group. Caller frees. */
char *dw_ladder_describe_rung (const dw_ladder_chart *chart, int rung);
