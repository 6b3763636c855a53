/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-view.h
 * The map of drill sizes: the pointer and the arrow keys walk the dots.
 *
 * Signals: "pointed" (int) when another dot is under the pointer, -1 = none; "chosen" (int) for a
 * click or an arrow key; "activated" (int) for Enter or a double click.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/dw-chart-style.h"
#include "draw/dw-drill-map.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_MAP_VIEW (dw_drill_map_view_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillMapView, dw_drill_map_view, DW, DRILL_MAP_VIEW, GtkWidget)

GtkWidget *dw_drill_map_view_new (void);

/**
 * Show another map.
 *
 * @param map  all it borrows is copied but its words, which must be static; NULL = nothing
 */
void dw_drill_map_view_set_map (DwDrillMapView *self, const dw_drill_map *map);

/** Mark a dot; no signal. -1 = none. */
void dw_drill_map_view_choose (DwDrillMapView *self, int dot);

/** @param style  copied; its lengths are those of the screen already */
void dw_drill_map_view_set_style (DwDrillMapView *self, const dw_chart_style *style);

/** The map that is shown, borrowed; NULL when there is none. */
const dw_drill_map *dw_drill_map_view_get_map (DwDrillMapView *self);

/** Where a dot is drawn [px]; false when it is not. */
gboolean dw_drill_map_view_place (DwDrillMapView *self, int dot, double *x, double *y);

G_END_DECLS
