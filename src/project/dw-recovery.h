/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-recovery.h
 * Copies of unsaved work in the user's state folder, and finding those a crash left behind.
 *
 * A copy is two files of one name: the project, NAME.dampwright, and NAME.lock, which says where
 * the project came from and is locked as long as its program runs; the system drops the lock
 * when the program dies, however it dies.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** A place for one document's copy. Opaque; free with dw_recovery_free(). */
typedef struct dw_recovery dw_recovery;

/** A copy that a program left behind. Free with dw_recovered_free(). */
typedef struct
{
  char *copy;   /**< path of the project file, owned */
  char *lock;   /**< path of the lock file, owned */
  char *origin; /**< URI of the file it came from, owned; NULL when it was never saved */
} dw_recovered;

/** "dampwright/recovery" in the user's state folder. Caller frees. */
char *dw_recovery_default_folder (void);

/**
 * Take a place.
 *
 * @param folder  created when missing, for this user only
 * @param origin  URI of the document's file, or NULL
 * @return        caller frees; NULL with @p error
 */
dw_recovery *dw_recovery_new (const char *folder, const char *origin, GError **error);

/** Give the place up and take its files away. NULL is allowed. */
void dw_recovery_free (dw_recovery *recovery);

/** Write the copy, all or nothing. */
gboolean dw_recovery_write (dw_recovery *recovery, GBytes *text, GError **error);

/** Copies in a folder whose program is gone, oldest name first. Caller frees with g_ptr_array_unref(). */
GPtrArray *dw_recovery_find (const char *folder);

/** Take a left copy away, once it is open or not wanted. */
void dw_recovered_remove (const dw_recovered *recovered);

void dw_recovered_free (dw_recovered *recovered);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_recovery, dw_recovery_free)

G_END_DECLS
