/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-window.h
 * One project in its window: setups on the left, curves and dampers on the right.
 *
 * Signal "open-file" (GFile *) when the user wants another project: the application opens it.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-document.h"
#include "window/dw-settings.h"

G_BEGIN_DECLS

#define DW_TYPE_WINDOW (dw_window_get_type ())
G_DECLARE_FINAL_TYPE (DwWindow, dw_window, DW, WINDOW, GtkApplicationWindow)

/** @param settings, document  kept with a reference */
DwWindow *dw_window_new (GtkApplication *app, DwSettings *settings, DwDocument *document);

/** Borrowed. */
DwDocument *dw_window_get_document (DwWindow *self);

/** Id of the setup that is edited, borrowed; "" when the project has none. */
const char *dw_window_get_selected (DwWindow *self);

/** Edit another setup. */
void dw_window_select (DwWindow *self, const char *id);

/**
 * Show a setup's curves or not; at most DW_MAX_SERIES are shown.
 *
 * @return  whether it is as asked now
 */
gboolean dw_window_draw_setup (DwWindow *self, const char *id, gboolean drawn);

/** Whether a setup's curves are shown. */
gboolean dw_window_is_drawn (DwWindow *self, const char *id);

/** Tell what was left out of a file that was opened. */
void dw_window_show_findings (DwWindow *self, const dw_findings *findings);

/** Save, asking for a name where there is none, and close; stays when it could not be saved. */
void dw_window_save_and_close (DwWindow *self);

/** Close without saving, and let go of the recovery copy. */
void dw_window_discard_and_close (DwWindow *self);

/** Units or theme are other ones. */
void dw_window_settings_changed (DwWindow *self);

G_END_DECLS
