/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-history.h
 * Undo by snapshots of the whole model; "saved" is a number, never a pointer.
 *
 * Knows nothing of the model but how to copy, compare and free it. One thread
 * at a time.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define DW_HISTORY_LIMIT 500 /**< steps that can be undone unless set otherwise */

/** Opaque. Free with dw_history_free(). */
typedef struct _DwHistory DwHistory;

/** How to handle a model. */
typedef struct
{
  gpointer (*copy) (gconstpointer model);
  gboolean (*equal) (gconstpointer a, gconstpointer b);
  GDestroyNotify free;
} DwHistoryOps;

/** For dw_project. */
extern const DwHistoryOps dw_history_project_ops;

/**
 * A history of one state, which counts as saved. Caller frees.
 *
 * @param ops    copied
 * @param model  copied
 */
DwHistory *dw_history_new (const DwHistoryOps *ops, gconstpointer model);

/** NULL is allowed. */
void dw_history_free (DwHistory *self);

/** The current model. Borrowed: valid until the next record, undo or redo. */
gconstpointer dw_history_get_model (DwHistory *self);

/**
 * Record an edit. One that changes nothing is dropped; any other cuts off what could be redone.
 *
 * Edits that follow one another with an equal merge key become one step,
 * unless an undo, a redo or a save came between. When such a run ends where
 * it began, its step goes away.
 *
 * @param label  shown as "Undo label", already translated; copied
 * @param merge  key of a drag or typing run, NULL for none; copied
 * @param model  the model after the edit; copied
 * @return       TRUE if the model changed
 */
gboolean dw_history_record (DwHistory *self, const char *label, const char *merge,
                            gconstpointer model);

/** @return  FALSE when there is nothing to undo */
gboolean dw_history_undo (DwHistory *self);

/** @return  FALSE when there is nothing to redo */
gboolean dw_history_redo (DwHistory *self);

/** Label of the step that undo would take back; NULL: nothing to undo. Borrowed as the model. */
const char *dw_history_get_undo_label (DwHistory *self);

/** Label of the step that redo would bring back; NULL: nothing to redo. Borrowed as the model. */
const char *dw_history_get_redo_label (DwHistory *self);

/**
 * How many steps can be undone at most; the oldest are forgotten, the current model never.
 *
 * @param limit  at least 1
 */
void dw_history_set_limit (DwHistory *self, guint limit);

/** Serial number of the current state, never used twice; take it when a save starts ... */
guint64 dw_history_get_state (DwHistory *self);

/** ... and hand it back when that save has reached the disk. */
void dw_history_set_saved (DwHistory *self, guint64 state);

/** Nothing in memory is on disk any more or not yet: the file is new, or was recovered. */
void dw_history_set_never_saved (DwHistory *self);

/** Whether the current state is another than the saved one. */
gboolean dw_history_is_modified (DwHistory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (DwHistory, dw_history_free)

G_END_DECLS
