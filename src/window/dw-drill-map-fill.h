/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-fill.h
 * From choices of drill sizes to the map that shows them: fields, dots, tolerance, words.
 */
#pragma once

#include "window/dw-drill-choices.h"
#include "window/dw-drill-map-view.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/** What the map is to show. Plain value. */
typedef struct
{
  dw_drill_measure shade;
  gboolean has_contour;
  dw_drill_measure contour;
  gboolean oils;          /**< lines at which an oil at hand would hold */
  dw_drill_filter filter; /**< choices that do not pass are faint */
  dw_units units;
  int chosen; /**< dot; -1 = none */
} dw_drill_map_options;

/** Show the choices; the dots are in their order. Without holes in a set the map is empty. */
void dw_drill_map_fill (DwDrillMapView *view, DwDrillChoices *choices,
                        const dw_drill_map_options *options);

G_END_DECLS
