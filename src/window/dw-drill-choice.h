/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-choice.h
 * One choice of drill sizes as an object, so that lists can hold it.
 */
#pragma once

#include <gio/gio.h>

#include "study/dw-drill-table.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_CHOICE (dw_drill_choice_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillChoice, dw_drill_choice, DW, DRILL_CHOICE, GObject)

/** With what drilling does; what takes longer is not known yet. @param result  copied */
DwDrillChoice *dw_drill_choice_new (const dw_drill_result *result, int n_holes);

/** [m] Size of a set; 0 = left as it is. */
double dw_drill_choice_get_size (DwDrillChoice *self, int set);

/** Borrowed. Only result and n_holes hold until dw_drill_choice_is_whole(). */
const dw_drill_row *dw_drill_choice_get_row (DwDrillChoice *self);

/** Whether oil, scatter, passes and single size are known. */
gboolean dw_drill_choice_is_whole (DwDrillChoice *self);

/** Make it whole; notifies "whole". @param row  copied */
void dw_drill_choice_take_row (DwDrillChoice *self, const dw_drill_row *row);

G_END_DECLS
