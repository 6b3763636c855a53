/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-piston-view.h
 * The piston's face to scale, and under it what the drill should know before it turns.
 *
 * Signal "hole-turned" (int hole) when a hole that is in sets is clicked, or chosen by keys.
 *
 * The hole under the pointer is told in a tooltip, the whole face in words for screen readers.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/dw-chart-style.h"
#include "model/dw-damper.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_PISTON_VIEW (dw_piston_view_get_type ())
G_DECLARE_FINAL_TYPE (DwPistonView, dw_piston_view, DW, PISTON_VIEW, GtkWidget)

/** Without a damper, in the light style. */
GtkWidget *dw_piston_view_new (void);

/** @param damper  good, copied; NULL = nothing is drawn */
void dw_piston_view_set_damper (DwPistonView *self, const dw_damper *damper);

void dw_piston_view_set_units (DwPistonView *self, dw_units units);

/** @param style  copied; its lengths are those of the screen already */
void dw_piston_view_set_style (DwPistonView *self, const dw_chart_style *style);

/**
 * Divide the holes into sets that a click, or arrow keys and space, can change.
 *
 * @param set_of  per hole of the face as in dw_drill_sets, copied; NULL = no sets
 * @param n       how many
 */
void dw_piston_view_set_sets (DwPistonView *self, const int *set_of, int n);

/** How large the face is at least [px]. */
void dw_piston_view_set_extent (DwPistonView *self, int extent);

/** What the face shows, in one sentence; caller frees. NULL without a damper. */
char *dw_piston_view_dup_description (DwPistonView *self);

/** What the tooltip says at a spot of the drawing [px], caller frees; NULL = no hole is there. */
char *dw_piston_view_dup_hole (DwPistonView *self, double x, double y);

G_END_DECLS
