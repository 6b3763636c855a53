/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-readout.h
 * The figures of a reading line, in columns behind the names of the legend.
 *
 * The columns have their place whether there is a reading or not, so that nothing moves when the
 * line comes and goes; long names, which reach under them, fade out there meanwhile. Per stroke:
 * value as shown, and its change against the first series; then the travel lost to the void. What
 * a narrow area has no room for is left out: first the lost travel, then the changes, then all.
 * Pure functions.
 */
#pragma once

#include "draw/dw-chart-label.h"
#include "draw/dw-chart-reading.h"
#include "draw/dw-readout-columns.h"

/**
 * What a reading says, as texts with their places: heads, figures, the speed at the axis.
 *
 * @param layout  of the same chart
 * @param list    cleared, then filled; the caller clears it
 */
void dw_readout_make (const dw_chart *chart, const dw_chart_layout *layout,
                      const dw_chart_reading *reading, const dw_text_metrics *metrics,
                      dw_chart_label_list *list);

/** What the texts of a list may cover, for painting only that. */
dw_rect dw_readout_table_box (const dw_chart_layout *layout);

/** The same for the speed; without extent when there is none. */
dw_rect dw_readout_speed_box (const dw_chart_label_list *list);

/** Paint the texts. */
void dw_readout_paint (const dw_chart_label_list *list, const dw_chart_layout *layout,
                       const dw_chart_style *style, cairo_t *cr);
