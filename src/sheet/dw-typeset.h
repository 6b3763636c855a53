/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-typeset.h
 * Letters of a printed page: sizes for what a text is, and what becomes of a text that is too long.
 *
 * Nothing is cut. A text that does not fit its line is set smaller, down to DW_TYPE_LEAST; what is
 * still too long goes on in the next line, inside a word if need be. Lines of a text that runs
 * from right to left begin at the right. For one thread.
 */
#pragma once

#include <pango/pango.h>

G_BEGIN_DECLS

/** [pt] The smallest letters on a page: what can be read at arm's length in a pit. */
#define DW_TYPE_LEAST 8.0

typedef enum
{
  DW_TYPE_TITLE,   /**< what the page is about */
  DW_TYPE_HEADING, /**< of a part of it */
  DW_TYPE_STRONG,  /**< names before values, heads of columns */
  DW_TYPE_BODY,
  DW_TYPE_SMALL, /**< foot, names over fields */
  DW_N_TYPES
} dw_type;

/** Opaque. Free with dw_typeset_free(). */
typedef struct dw_typeset dw_typeset;

/** @param family  what Pango understands, copied; NULL = "Sans" */
dw_typeset *dw_typeset_new (const char *family);

/** NULL is allowed. */
void dw_typeset_free (dw_typeset *typeset);

/** [pt] size of a type's letters. */
double dw_type_size (dw_type type);

/** [pt] from one line to the next. */
double dw_typeset_line_height (dw_typeset *typeset, dw_type type);

/** One line, as long as it takes. Caller unrefs. */
PangoLayout *dw_typeset_line (dw_typeset *typeset, dw_type type, const char *text);

/** Lines of a width; line ends in the text begin a new one. Caller unrefs. @param width  [pt] */
PangoLayout *dw_typeset_lines (dw_typeset *typeset, dw_type type, const char *text, double width);

/**
 * The same of numbers with units, "6 × 1.3 mm, 450 cSt": no number is parted from its unit, no count
 * from what it counts, while a line has room for both. Caller unrefs. @param width  [pt]
 */
PangoLayout *dw_typeset_values (dw_typeset *typeset, dw_type type, const char *text, double width);

/** One line, set smaller when it does not fit, then several. Caller unrefs. @param width  [pt] */
PangoLayout *dw_typeset_fit (dw_typeset *typeset, dw_type type, const char *text, double width);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_typeset, dw_typeset_free)

G_END_DECLS
