/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-list.h
 * Choices of drill sizes as a table that can be sorted by every column and filtered.
 *
 * Signals: "chosen" (DwDrillChoice *, NULL = none) when another row is selected by the user;
 * "activated" (DwDrillChoice *) for Enter or a double click; "filtered" after other rows are shown.
 */
#pragma once

#include <gtk/gtk.h>

#include "window/dw-drill-choice.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_LIST (dw_drill_list_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillList, dw_drill_list, DW, DRILL_LIST, GtkWidget)

GtkWidget *dw_drill_list_new (void);

/** @param choices  of DwDrillChoice; kept with a reference */
void dw_drill_list_set_choices (DwDrillList *self, GListModel *choices);

/** @param bottles  [m2/s] as in dw_drill_box, copied; what a mix names */
void dw_drill_list_set_bottles (DwDrillList *self, const double *bottles, int n);

void dw_drill_list_set_units (DwDrillList *self, dw_units units);

/** @param filter  copied */
void dw_drill_list_set_filter (DwDrillList *self, const dw_drill_filter *filter);

/** Borrowed; NULL when none is. */
DwDrillChoice *dw_drill_list_get_chosen (DwDrillList *self);

/** Select a row and bring it into sight; no signal. NULL = none. */
void dw_drill_list_choose (DwDrillList *self, DwDrillChoice *choice);

/** Choices that are shown, in their order; of DwDrillChoice, borrowed. */
GListModel *dw_drill_list_get_shown (DwDrillList *self);

/** A row in words, for read-outs and tests: "1.40 and 1.50 mm: ...". Caller frees. */
char *dw_drill_list_dup_text (DwDrillList *self, DwDrillChoice *choice, int column);

/** How many columns there are. */
int dw_drill_list_n_columns (void);

G_END_DECLS
