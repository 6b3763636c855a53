/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-words.h
 * The words of the map of drill sizes in the user's language. All are static but those that count
 * holes, which live until the next call.
 */
#pragma once

#include <glib.h>

#include "draw/dw-drill-map.h"

G_BEGIN_DECLS

/** What a measure is called. */
const char *dw_drill_measure_words (dw_drill_measure measure);

/** Words of a map of these sets. */
dw_drill_map_labels dw_drill_map_words (const dw_drill_sets *sets);

G_END_DECLS
