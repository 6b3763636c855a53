/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-verdict.h
 * What a comparison comes to, in words: compression and rebound judged apart.
 */
#pragma once

#include <glib.h>

#include "study/dw-compare.h"

G_BEGIN_DECLS

/**
 * "Compression the same. Rebound the same at low speed, 2.6 % softer at middle speed, 11 % softer
 * at high speed." Translated. Caller frees.
 */
char *dw_verdict_text (const dw_comparison *comparison);

G_END_DECLS
