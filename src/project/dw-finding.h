/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-finding.h
 * What is wrong in a project file, and on which line.
 *
 * A list belongs to one thread at a time.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define DW_FINDINGS_MAX 200 /**< a list keeps this many and counts the rest */

typedef enum
{
  DW_WARNING, /**< left out, the rest is good */
  DW_ERROR    /**< the file is refused */
} dw_severity;

/** One finding; the strings are owned by the list and NULL when they do not apply. */
typedef struct
{
  dw_severity severity;
  int line;        /**< from 1; 0 = the file as a whole */
  char *element;   /**< "body" */
  char *attribute; /**< "bore-mm" */
  char *value;     /**< as it stands in the file */
  char *message;   /**< English sentence without full stop, never NULL */
} dw_finding;

/** Findings of one file, in the order of their lines. Opaque; free with dw_findings_free(). */
typedef struct dw_findings dw_findings;

/** An empty list. Caller frees. */
dw_findings *dw_findings_new (void);

/** NULL is allowed. */
void dw_findings_free (dw_findings *findings);

/**
 * Add one. Once DW_FINDINGS_MAX are held, an error takes the place of the last
 * warning, anything else is only counted. Control characters in the message are replaced.
 *
 * @param element    copied, may be NULL, as may @p attribute and @p value
 */
void dw_findings_add (dw_findings *findings, dw_severity severity, int line, const char *element,
                      const char *attribute, const char *value, const char *format, ...)
    G_GNUC_PRINTF (7, 8);

/** How many are held. */
guint dw_findings_get_n (const dw_findings *findings);

/** How many were counted but not held. */
guint dw_findings_get_n_dropped (const dw_findings *findings);

/** How many errors there were, held or not; 0 = the file is good. */
guint dw_findings_get_n_errors (const dw_findings *findings);

/** Borrowed, valid until the list changes. @param index  < dw_findings_get_n() */
const dw_finding *dw_findings_get (const dw_findings *findings, guint index);

/**
 * "FILE:LINE: message", with "warning: " before the message of a warning and
 * without the line when it is 0. Caller frees.
 */
char *dw_finding_to_text (const dw_finding *finding, const char *file);

/** All findings, a line each, and a last line with the number of those not held. Caller frees. */
char *dw_findings_to_text (const dw_findings *findings, const char *file);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_findings, dw_findings_free)

G_END_DECLS
