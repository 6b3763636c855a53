/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-finding-text.h
 * What the model found wrong with a damper, in the user's language.
 *
 * The model writes English; its sentences are marked for translation here, where gettext is.
 */
#pragma once

#include <glib.h>

#include "study/dw-piston-face.h"
#include "model/dw-status.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

/** The finding's sentence, with numbers as the locale writes them; caller frees. */
char *dw_finding_text (const dw_error *finding);

/** What is too close to what on a piston's face, in the user's units; caller frees. */
char *dw_ligament_words (const dw_piston_face *face, const dw_ligament *ligament, dw_units units);

G_END_DECLS
