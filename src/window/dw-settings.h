/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-settings.h
 * What the user has chosen once for all projects: units, theme, window size.
 *
 * Lives in GSettings; where the schema is not installed the choices hold until the program ends.
 * "changed" is emitted after any choice. For the main thread.
 */
#pragma once

#include <gio/gio.h>

#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_SETTINGS (dw_settings_get_type ())
G_DECLARE_FINAL_TYPE (DwSettings, dw_settings, DW, SETTINGS, GObject)

typedef enum
{
  DW_THEME_SYSTEM,
  DW_THEME_LIGHT,
  DW_THEME_DARK,
  DW_THEME_CONTRAST,
  DW_THEME_SUN, /**< high contrast with heavier lines, for the pit */
  DW_N_THEMES
} dw_theme;

/** Caller unrefs. */
DwSettings *dw_settings_new (void);

dw_units dw_settings_get_units (DwSettings *self);
void dw_settings_set_units (DwSettings *self, dw_units units);

dw_theme dw_settings_get_theme (DwSettings *self);
void dw_settings_set_theme (DwSettings *self, dw_theme theme);

/** Size of a new window [px], and whether it fills the screen. */
void dw_settings_get_window (DwSettings *self, int *width, int *height, gboolean *maximized);
void dw_settings_set_window (DwSettings *self, int width, int height, gboolean maximized);

G_END_DECLS
