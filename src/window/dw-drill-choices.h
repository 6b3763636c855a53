/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-choices.h
 * All choices of drill sizes for one damper, kept up to date.
 *
 * Forces are there at once; the oil that holds, the scatter and the passes follow from the main loop
 * in slices that are shorter than a frame. What belongs to a damper that is no longer asked for is
 * dropped. For the main thread.
 *
 * Signals: "changed" when there are other choices; "filled" when all of them are whole.
 */
#pragma once

#include "project/dw-project.h"
#include "window/dw-drill-choice.h"

G_BEGIN_DECLS

#define DW_TYPE_DRILL_CHOICES (dw_drill_choices_get_type ())
G_DECLARE_FINAL_TYPE (DwDrillChoices, dw_drill_choices, DW, DRILL_CHOICES, GObject)

DwDrillChoices *dw_drill_choices_new (void);

/**
 * Ask for a damper. Nothing happens when all is as before.
 *
 * @param damper     copied
 * @param division   how its holes are divided; the user's own division is kept as long as the
 *                   damper has the same holes and the division the same name
 * @param whole_table  every drill there is instead of the parts box's
 * @param limits     of the holes that are drilled
 */
void dw_drill_choices_ask (DwDrillChoices *self, const dw_project *project, const dw_damper *damper,
                           dw_drill_division division, gboolean whole_table,
                           const dw_spread_limits *limits);

/** Move a hole of the face to the next set: 1, 2, neither. */
void dw_drill_choices_turn_hole (DwDrillChoices *self, int hole);

/** The study, borrowed until "changed"; NULL when the damper cannot be computed. */
const dw_drilling *dw_drill_choices_get_study (DwDrillChoices *self);

/** What choices are made of, borrowed until "changed". */
const dw_drill_box *dw_drill_choices_get_box (DwDrillChoices *self);

/** Why there is no study, borrowed; NULL when there is one. */
const char *dw_drill_choices_get_problem (DwDrillChoices *self);

/** Of DwDrillChoice, borrowed; the first one is as it is now. Empty without a study. */
GListModel *dw_drill_choices_get_list (DwDrillChoices *self);

/** Whether all choices are whole. */
gboolean dw_drill_choices_is_filled (DwDrillChoices *self);

/** The box had no drills, so that the whole table was taken. */
gboolean dw_drill_choices_box_is_empty (DwDrillChoices *self);

G_END_DECLS
