/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-axles-layout.h
 * Two children, front and rear: side by side in equal halves, or one of them alone.
 *
 * Both are shown when both are wanted and the width is enough; else the preferred one has all of
 * it and the other one is not drawn. The least width is that of one.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-project.h"

G_BEGIN_DECLS

#define DW_TYPE_AXLES_LAYOUT (dw_axles_layout_get_type ())
G_DECLARE_FINAL_TYPE (DwAxlesLayout, dw_axles_layout, DW, AXLES_LAYOUT, GtkLayoutManager)

/** Both wanted, the front preferred. @param spacing  in pixels between them */
GtkLayoutManager *dw_axles_layout_new (int spacing);

/**
 * What is to be seen.
 *
 * @param both       whether both are wanted
 * @param preferred  which one when only one is shown
 */
void dw_axles_layout_show (DwAxlesLayout *self, gboolean both, dw_axle preferred);

G_END_DECLS
