/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-recovery.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define LOCK_SUFFIX ".lock"
#define COPY_SUFFIX ".dampwright"

struct dw_recovery
{
  char *copy;
  char *lock;
  int fd;
};

char *
dw_recovery_default_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "dampwright", "recovery", NULL);
}

static gboolean
fail (GError **error, const char *path)
{
  const int code = errno;
  g_set_error (error, G_FILE_ERROR, (int)g_file_error_from_errno (code), "%s: %s", path,
               g_strerror (code));
  return FALSE;
}

static gboolean
write_origin (int fd, const char *origin, const char *path, GError **error)
{
  const size_t length = origin != NULL ? strlen (origin) : 0;
  if (length > 0 && write (fd, origin, length) != (ssize_t)length)
    return fail (error, path);
  return TRUE;
}

/* Another program that looks for left copies may come between making the file and locking it, and
 * sweep it away; then another name is taken. */
static gboolean
take_lock (dw_recovery *recovery, const char *folder)
{
  for (int tries = 0; tries < 5; tries++)
    {
      g_autofree char *name = g_uuid_string_random ();
      g_autofree char *lock_name = g_strconcat (name, LOCK_SUFFIX, NULL);
      g_autofree char *copy_name = g_strconcat (name, COPY_SUFFIX, NULL);
      struct stat status;

      g_free (recovery->lock);
      g_free (recovery->copy);
      recovery->lock = g_build_filename (folder, lock_name, NULL);
      recovery->copy = g_build_filename (folder, copy_name, NULL);
      const int fd = g_open (recovery->lock, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
      if (fd < 0)
        return FALSE;
      if (flock (fd, LOCK_EX | LOCK_NB) == 0 && fstat (fd, &status) == 0 && status.st_nlink > 0)
        {
          recovery->fd = fd;
          return TRUE;
        }
      close (fd);
    }
  return FALSE;
}

dw_recovery *
dw_recovery_new (const char *folder, const char *origin, GError **error)
{
  g_return_val_if_fail (folder != NULL, NULL);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      fail (error, folder);
      return NULL;
    }
  dw_recovery *recovery = g_new0 (dw_recovery, 1);
  recovery->fd = -1;
  if (!take_lock (recovery, folder))
    {
      fail (error, recovery->lock);
      dw_recovery_free (recovery);
      return NULL;
    }
  if (!write_origin (recovery->fd, origin, recovery->lock, error))
    {
      dw_recovery_free (recovery);
      return NULL;
    }
  return recovery;
}

void
dw_recovery_free (dw_recovery *recovery)
{
  if (recovery == NULL)
    return;
  /* the copy first: a lock without a copy is harmless, a copy without a lock would be offered */
  if (recovery->fd >= 0)
    {
      g_unlink (recovery->copy);
      g_unlink (recovery->lock);
      close (recovery->fd);
    }
  g_free (recovery->copy);
  g_free (recovery->lock);
  g_free (recovery);
}

gboolean
dw_recovery_write (dw_recovery *recovery, GBytes *text, GError **error)
{
  gsize length;
  const char *bytes = g_bytes_get_data (text, &length);

  return g_file_set_contents_full (recovery->copy, bytes, (gssize)length,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                   0600, error);
}

/* A lock that can be had belongs to nobody. */
static gboolean
is_left (const char *lock)
{
  const int fd = g_open (lock, O_RDWR | O_CLOEXEC, 0);
  gboolean left = FALSE;

  if (fd >= 0)
    {
      left = flock (fd, LOCK_EX | LOCK_NB) == 0;
      close (fd);
    }
  return left;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(const char *const *)a, *(const char *const *)b);
}

GPtrArray *
dw_recovery_find (const char *folder)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify)dw_recovered_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *entry;

  while (dir != NULL && (entry = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (entry, LOCK_SUFFIX))
      g_ptr_array_add (names, g_strndup (entry, strlen (entry) - strlen (LOCK_SUFFIX)));
  g_ptr_array_sort (names, compare_names);

  for (guint i = 0; i < names->len; i++)
    {
      const char *name = g_ptr_array_index (names, i);
      g_autofree char *lock_name = g_strconcat (name, LOCK_SUFFIX, NULL);
      g_autofree char *copy_name = g_strconcat (name, COPY_SUFFIX, NULL);
      g_autofree char *lock = g_build_filename (folder, lock_name, NULL);
      g_autofree char *copy = g_build_filename (folder, copy_name, NULL);
      g_autofree char *origin = NULL;

      if (!is_left (lock))
        continue;
      if (!g_file_test (copy, G_FILE_TEST_IS_REGULAR))
        {
          g_unlink (lock);
          continue;
        }
      g_file_get_contents (lock, &origin, NULL, NULL);
      dw_recovered *recovered = g_new0 (dw_recovered, 1);
      recovered->copy = g_steal_pointer (&copy);
      recovered->lock = g_steal_pointer (&lock);
      recovered->origin = origin != NULL && *origin != '\0' ? g_steal_pointer (&origin) : NULL;
      g_ptr_array_add (found, recovered);
    }
  return found;
}

void
dw_recovered_remove (const dw_recovered *recovered)
{
  g_unlink (recovered->copy);
  g_unlink (recovered->lock);
}

void
dw_recovered_free (dw_recovered *recovered)
{
  if (recovered == NULL)
    return;
  g_free (recovered->copy);
  g_free (recovered->lock);
  g_free (recovered->origin);
  g_free (recovered);
}
