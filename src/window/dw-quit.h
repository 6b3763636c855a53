/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-quit.h
 * Leaving the program: all windows close, and unsaved work is asked for once.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * Close all windows of the application.
 *
 * With unsaved work in several windows one question is asked for all of them; with one, that
 * window's own. Cancel keeps every window. What was never saved asks for its name when it is
 * saved, and its window stays when that is cancelled.
 */
void dw_quit (GtkApplication *app);

G_END_DECLS
