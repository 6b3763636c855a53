/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-figures-strip.h
 * The figures under a chart: c at the three speeds, pack, rebound share, damping ratio of the
 * selected setup, with the change against the fitted one, and what that comes to in words.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-project.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_FIGURES_STRIP (dw_figures_strip_get_type ())
G_DECLARE_FINAL_TYPE (DwFiguresStrip, dw_figures_strip, DW, FIGURES_STRIP, GtkWidget)

GtkWidget *dw_figures_strip_new (void);

/**
 * Show one axle of a setup.
 *
 * @param setup  may be NULL: nothing is shown
 */
void dw_figures_strip_update (DwFiguresStrip *self, const dw_project *project,
                              const dw_setup *setup, dw_axle axle, dw_units units);

G_END_DECLS
