/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-number-field.h
 * One number with its name in front and its unit behind.
 *
 * Takes "1.3", "1,3", "1.3 mm", "0.051 in". Every key press that leaves a number inside the range
 * is told at once by the signal
 *
 *     committed (double value, gboolean final)
 *
 * with final = FALSE; Enter and leaving the field tell it with TRUE. Escape tells the value from
 * before. Up and Down, Page Up and Page Down (ten times as far) and, while it has the focus, the
 * scroll wheel move by a step. The handler of "committed" may refuse with
 * dw_number_field_set_error(): then the value stays as it was and the text as it was typed.
 *
 * A field that is optional may be emptied too: that is told as NaN.
 *
 * A text that is no number, or out of range, is told to nobody but the user: the entry is marked
 * and the allowed range stands under it.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-step.h"

G_BEGIN_DECLS

#define DW_TYPE_NUMBER_FIELD (dw_number_field_get_type ())
G_DECLARE_FINAL_TYPE (DwNumberField, dw_number_field, DW, NUMBER_FIELD, GtkWidget)

/** A pure number, any that a motion ratio may be: set it up with the functions below. */
GtkWidget *dw_number_field_new (void);

/** What the number measures, its range and its step. Shown and accepted as whole when @p whole. */
void dw_number_field_set_kind (DwNumberField *self, dw_quantity quantity, dw_limit_id limit,
                               dw_step step, gboolean whole);

/** Other range, same quantity. */
void dw_number_field_set_limit (DwNumberField *self, dw_limit_id limit);

/** Whether it may be left empty; at first it may not. */
void dw_number_field_set_optional (DwNumberField *self, gboolean optional);

/** @param units  bits of dw_units: what is shown, and meant where no unit is typed */
void dw_number_field_set_units (DwNumberField *self, dw_units units);

/** [SI or degC] The last good value; NaN = none, shown empty. */
double dw_number_field_get_value (DwNumberField *self);

/** Show a value [SI or degC]. The same one again leaves text, cursor and error alone. */
void dw_number_field_set_value (DwNumberField *self, double value);

/** Name shown in front, and for screen readers. */
void dw_number_field_set_label (DwNumberField *self, const char *label);

/** What stands under the entry, borrowed; NULL when nothing is wrong. */
const char *dw_number_field_get_error (DwNumberField *self);

/** Mark it with a message; NULL takes the mark away. Inside "committed": the value is refused. */
void dw_number_field_set_error (DwNumberField *self, const char *message);

/** Drop what is being typed, and any error: the text is that of the value again. */
void dw_number_field_reset (DwNumberField *self);

/**
 * Number of the run of changes that is going on: changes with the same number belong together, as
 * one step to undo. A run ends with Enter, Escape, or when the field loses the focus.
 */
guint dw_number_field_get_run (DwNumberField *self);

/** Move by steps as the arrow keys do. @param n  negative = down */
void dw_number_field_step (DwNumberField *self, int n);

G_END_DECLS
