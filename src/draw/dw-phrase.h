/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-phrase.h
 * Sentences with names in braces, "{force} at {speed}", so that a translation may change their
 * order.
 */
#pragma once

/** What stands for one name. Borrowed. */
typedef struct
{
  const char *name; /**< without braces; NULL ends a list */
  const char *text;
} dw_word;

/**
 * Fill a phrase.
 *
 * A name that is not in the list, and a brace that is not closed, stay as they are.
 *
 * @param words  ended by one without a name
 * @return       caller frees with g_free()
 */
char *dw_phrase_fill (const char *phrase, const dw_word *words);
