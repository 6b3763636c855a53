/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-difference-words.h
 * A difference between two dampers in the user's language and units.
 *
 * The same sentences as study/dw-difference-text.h writes in English and trade units.
 */
#pragma once

#include <glib.h>

#include "study/dw-difference.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/**
 * "shim 1: thickness 0.15 mm → 0.1 mm", no full stop.
 *
 * @param a,b  those that were compared
 * @return     caller frees
 */
char *dw_difference_words (const dw_difference *difference, const dw_damper *a, const dw_damper *b,
                           dw_units units);

G_END_DECLS
