/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-words.h
 * A choice of drill sizes in words: what it does, and how it is drilled. In the user's language and
 * units. Pure functions but for the locale's decimal sign; callers free what they get.
 */
#pragma once

#include <glib.h>

#include "project/dw-project.h"
#include "study/dw-drill-table.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/** "1.40 mm and 1.50 mm", "1.40 mm, set 2 as it is", "as it is now". */
char *dw_drill_words_sizes (const dw_drill_sets *sets, const double size[DW_DRILL_SETS],
                            dw_units units);

/** "520 cSt: 450 + 37 % of 600"; "–" when none holds. @param bottles  [m2/s] as in dw_drill_box */
char *dw_drill_words_oil (const dw_drill_row *row, const double *bottles, int n);

/** All figures of a choice, some lines. @param row  whole */
char *dw_drill_words_figures (const dw_drilling *study, const dw_drill_box *box,
                              const dw_drill_row *row, dw_units units);

/** What is to be done, line by line, with the cautions. @param row  whole */
char *dw_drill_words_plan (const dw_drilling *study, const dw_drill_box *box,
                           const dw_drill_row *row, dw_axle axle, dw_units units);

/** Name of a trial: "Rear drilled 1.40 + 1.50 mm". */
char *dw_drill_words_trial (const dw_drill_sets *sets, const double size[DW_DRILL_SETS],
                            dw_axle axle, dw_units units);

G_END_DECLS
