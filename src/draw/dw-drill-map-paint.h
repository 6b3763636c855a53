/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-paint.h
 * Painting a map of drill sizes that was laid out.
 *
 * The ground changes only with the data; the marks over it with every move of the pointer, so that a
 * window may keep a picture of the ground.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-drill-map-layout.h"

/** Ground and marks. @p cr may be a screen, a printed page, a PDF or a test image. @param style  that
 * it was laid out with */
void dw_drill_map_paint (const dw_drill_map_layout *layout, const dw_chart_style *style,
                         cairo_t *cr);

/** All but the marks. */
void dw_drill_map_paint_ground (const dw_drill_map_layout *layout, const dw_chart_style *style,
                                cairo_t *cr);

/** What is now, the chosen dot with its tolerance, the dot that is pointed at. */
void dw_drill_map_paint_marks (const dw_drill_map_layout *layout, const dw_chart_style *style,
                               cairo_t *cr);
