/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-document.h
 * An open project: the value, its undo history, its file, its recovery copy.
 *
 * The window listens; the document knows no window. Use it from the thread of
 * its main context. Signals: "changed" after the project changed (edit, undo,
 * redo, reload), "state-changed" after file, modified mark or undo labels may
 * have, "file-changed" when another program has changed the file on disk.
 */
#pragma once

#include <gio/gio.h>

#include "project/dw-finding.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

#define DW_TYPE_DOCUMENT (dw_document_get_type ())
G_DECLARE_FINAL_TYPE (DwDocument, dw_document, DW, DOCUMENT, GObject)

/** Change the project; @return  FALSE when nothing is to be recorded. */
typedef gboolean (*DwDocumentEdit) (dw_project *project, gpointer data);

/** An unsaved document. @param project  copied. Caller unrefs. */
DwDocument *dw_document_new (const dw_project *project);

/**
 * Open a file.
 *
 * @param findings  everything found in the content is added here, warnings too
 * @param error     set when the file could not be read
 * @return          caller unrefs; NULL with @p error when the file could not be read, NULL
 *                  without it when @p findings has errors
 */
DwDocument *dw_document_open (GFile *file, dw_findings *findings, GError **error);

/** Borrowed: valid until the next change. */
const dw_project *dw_document_get_project (DwDocument *self);

/** The file it was loaded from or saved to, borrowed; NULL when never saved. */
GFile *dw_document_get_file (DwDocument *self);

/** What to call it: the file's name, else the project's title, else "". Caller frees. */
char *dw_document_dup_name (DwDocument *self);

/**
 * The only way to change the project.
 *
 * @param label  "Change spring rate", translated; copied
 * @param merge  key of a run that becomes one step, NULL for none
 * @param edit   called once with a copy
 * @return       whether the project changed
 */
gboolean dw_document_edit (DwDocument *self, const char *label, const char *merge,
                           DwDocumentEdit edit, gpointer data);

/** @return  FALSE when there is nothing to undo */
gboolean dw_document_undo (DwDocument *self);

/** @return  FALSE when there is nothing to redo */
gboolean dw_document_redo (DwDocument *self);

/** Labels of the next undo and redo step, borrowed; NULL when there is none. */
const char *dw_document_get_undo_label (DwDocument *self);
const char *dw_document_get_redo_label (DwDocument *self);

/** Number of the project's current state, never used twice: marks results that are stale. */
guint64 dw_document_get_state (DwDocument *self);

gboolean dw_document_is_modified (DwDocument *self);

/**
 * Save in a thread. The document counts as saved only once the bytes are on disk; what is edited
 * meanwhile stays modified. On failure nothing has changed, the old file included.
 *
 * @param file  where to; becomes the document's file on success
 */
void dw_document_save_async (DwDocument *self, GFile *file, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer data);

gboolean dw_document_save_finish (DwDocument *self, GAsyncResult *result, GError **error);

/**
 * Read the file again, as one undoable step.
 *
 * @return as dw_document_open(); FALSE leaves the document as it was
 */
gboolean dw_document_reload (DwDocument *self, const char *label, dw_findings *findings,
                             GError **error);

/**
 * Keep a recovery copy from now on, written within DW_DOCUMENT_RECOVERY_SECONDS of an edit and
 * taken away when the document is saved or discarded.
 *
 * @param folder  created when missing; NULL = keep none
 */
void dw_document_keep_recovery (DwDocument *self, const char *folder);

#define DW_DOCUMENT_RECOVERY_SECONDS 4 /**< from an edit to its recovery copy */

/** Write the recovery copy now if one is due. */
void dw_document_flush_recovery (DwDocument *self);

/** The user does not want it: take the recovery copy away for good. */
void dw_document_discard_recovery (DwDocument *self);

/** An unsaved document with a recovered project; @param file  where it once came from, or NULL. */
DwDocument *dw_document_new_recovered (const dw_project *project, GFile *file);

G_END_DECLS
