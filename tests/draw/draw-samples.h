/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file draw-samples.h
 * What the tests of drawing share: letters of a known size, dampers with and without a void, charts.
 */
#pragma once

#include "draw/dw-chart-layout.h"
#include "test-support.h"

/** Letters 0.6 em wide, 0.8 em up, 0.2 em down: no fonts are needed. Borrows the style. */
dw_text_metrics sample_metrics (const dw_chart_style *style);

/** Open and covered holes, a shim that opens on rebound, sealed gas at air pressure. */
dw_damper sample_damper (void);

/** Its curves to 1 m/s, of an oil [m2/s]; caller frees. */
dw_series *sample_series (const char *name, double viscosity, bool is_log);

/** A chart of @p n series of different oils, the first one fitted. End with sample_chart_clear(). */
dw_chart sample_chart (int n, bool is_log);
void sample_chart_clear (dw_chart *chart);

/** Its layout in an area from the origin; caller frees. */
dw_chart_layout *sample_layout (const dw_chart *chart, double width, double height);

/** Where a layout's texts are: labels of ticks, legend and others. @return  how many */
int sample_text_boxes (const dw_chart_layout *layout, dw_rect *boxes, int room);
