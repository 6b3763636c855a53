/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-entry.h
 * A number field tied to one number of the damper that is edited.
 */
#pragma once

#include "window/dw-damper-editor.h"
#include "window/dw-damper-place.h"
#include "window/dw-number-field.h"

G_BEGIN_DECLS

/**
 * Tie a field to a place, for as long as the field lives: it shows that number, changes it, and
 * shows the findings about it. Once a field.
 *
 * @param editor  referenced by the field
 * @param row     of holes, shims or oils; 0 where there are none
 */
void dw_damper_entry_bind (DwNumberField *field, DwDamperEditor *editor,
                           const dw_damper_place *place, int row);

/** The place that a field is tied to, NULL when it is not. */
const dw_damper_place *dw_damper_entry_get_place (DwNumberField *field);

/**
 * Say that a widget has no effect as things are, or NULL that it has: then it is insensitive, and
 * its tooltip begins with the reason.
 */
void dw_damper_entry_set_idle (GtkWidget *widget, const char *reason);

G_END_DECLS
