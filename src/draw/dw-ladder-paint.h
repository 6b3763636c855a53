/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ladder-paint.h
 * Painting a ladder of stacks that has been laid out.
 *
 * Only rows that the context's clip can show are painted, so that a long ladder may be scrolled.
 */
#pragma once

#include "draw/dw-ladder-layout.h"

/** All of it. */
void dw_ladder_paint (const dw_ladder_layout *layout, const dw_chart_style *style, cairo_t *cr);

/** What stands above the rows: on a ground of its own, so that rows may be scrolled below it. */
void dw_ladder_paint_head (const dw_ladder_layout *layout, const dw_chart_style *style,
                           cairo_t *cr);

/** The rows without what is chosen and pointed at: a ground that a window may keep. */
void dw_ladder_paint_rows (const dw_ladder_layout *layout, const dw_chart_style *style,
                           cairo_t *cr);

/** What is chosen and pointed at. */
void dw_ladder_paint_marks (const dw_ladder_layout *layout, const dw_chart_style *style,
                            cairo_t *cr);
