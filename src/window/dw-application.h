/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-application.h
 * The program: one instance, a window for each open project, offers after a crash.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-settings.h"

G_BEGIN_DECLS

#define DW_APPLICATION_ID "org.dampwright.Dampwright"

#define DW_TYPE_APPLICATION (dw_application_get_type ())
G_DECLARE_FINAL_TYPE (DwApplication, dw_application, DW, APPLICATION, GtkApplication)

/** Caller unrefs. @param flags  besides G_APPLICATION_HANDLES_OPEN, which is always set */
DwApplication *dw_application_new (GApplicationFlags flags);

/** Borrowed. */
DwSettings *dw_application_get_settings (DwApplication *self);

/** Where recovery copies are kept; borrowed. */
const char *dw_application_get_recovery_folder (DwApplication *self);

/**
 * Open a file in a window of its own, or show the window that has it. What is wrong is told in a
 * dialog over @p parent.
 *
 * @param parent  may be NULL
 * @return        whether it is open now
 */
gboolean dw_application_open_file (DwApplication *self, GFile *file, GtkWindow *parent);

/** A window with a project ready to edit. */
void dw_application_open_new (DwApplication *self);

G_END_DECLS
