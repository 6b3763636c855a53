/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-plan.h
 * The plan of a choice: which drills go through which holes in which order, with the cautions, and a
 * drawing that shows the holes.
 *
 * Signal "drilled" after the user has said, and confirmed, that the real pistons are drilled now.
 */
#pragma once

#include <gtk/gtk.h>

#include "project/dw-project.h"
#include "study/dw-drill-table.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_PLAN (dw_drill_plan_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillPlan, dw_drill_plan, DW, DRILL_PLAN, GtkWindow)

/** @param row  whole; nothing is kept but what is shown */
GtkWidget *dw_drill_plan_new (const dw_drilling *study, const dw_drill_box *box,
                              const dw_drill_row *row, dw_axle axle, dw_units units);

/** The plan in words, borrowed. */
const char *dw_drill_plan_get_text (DwDrillPlan *self);

G_END_DECLS
