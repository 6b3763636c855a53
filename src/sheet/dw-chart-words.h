/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-words.h
 * The words and the units of force charts, as the user wants them. Words are static: they live as
 * long as the program.
 */
#pragma once

#include <glib.h>

#include "draw/dw-chart.h"
#include "sheet/dw-chart-page.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/** In the user's language, without a title. */
dw_chart_labels dw_chart_words (void);

dw_chart_units dw_chart_words_units (dw_units units);

/** The words of a whole page of charts. */
dw_chart_page_labels dw_chart_page_words (void);

G_END_DECLS
