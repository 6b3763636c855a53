/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-file.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <sys/stat.h>

#include "project/dw-project-reader.h"
#include "project/dw-project-writer.h"
#include "project/dw-xml-source.h"

/* As many links as the kernel follows before it calls them a loop. */
#define MOST_LINKS 40

/* What a new file gets before the process's mask takes its share. */
#define NEW_FILE_MODE 0666

#define PERMISSION_BITS 07777

G_DEFINE_QUARK (dw - project - error - quark, dw_project_error)

static gboolean
fail_with_errno (GError **error, int number, const char *what, const char *path)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (number), "%s %s: %s", what, shown,
               g_strerror (number));
  return FALSE;
}

/* ---- loading ---- */

/* One byte more than a project may have, so that a larger file shows; never all of an endless one. */
static GByteArray *
read_at_most (const char *path, GError **error)
{
  FILE *file = g_fopen (path, "rbe");
  if (file == NULL)
    {
      fail_with_errno (error, errno, "cannot open", path);
      return NULL;
    }

  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  char block[65536];
  size_t n = 0;
  do
    {
      n = fread (block, 1, sizeof block, file);
      g_byte_array_append (bytes, (const guint8 *)block, (guint)n);
    }
  while (n == sizeof block && bytes->len <= DW_XML_MAX_SIZE);

  const int number = ferror (file) ? errno : 0;
  fclose (file);
  if (number != 0)
    {
      fail_with_errno (error, number, "cannot read", path);
      return NULL;
    }
  return g_steal_pointer (&bytes);
}

dw_project *
dw_project_load (const char *path, dw_findings *findings, GError **error)
{
  g_return_val_if_fail (path != NULL && findings != NULL, NULL);

  g_autoptr (GByteArray) bytes = read_at_most (path, error);
  if (bytes == NULL)
    return NULL;
  return dw_project_read_text ((const char *)bytes->data, bytes->len, findings);
}

/* ---- saving ---- */

/* Reading back is cheap beside a lost setup: what cannot be read must not replace what can. */
static gboolean
verify (const dw_project *project, GBytes *text, GError **error)
{
  gsize length = 0;
  const char *data = g_bytes_get_data (text, &length);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) again = dw_project_read_text (data, length, findings);
  if (again != NULL && dw_project_equal (project, again))
    return TRUE;

  const char *reason = "the text does not give the project back";
  for (guint i = 0; i < dw_findings_get_n (findings); i++)
    if (dw_findings_get (findings, i)->severity == DW_ERROR)
      {
        reason = dw_findings_get (findings, i)->message;
        break;
      }
  g_set_error (error, DW_PROJECT_ERROR, DW_PROJECT_ERROR_CONTENT,
               "the project is not saved, it could not be opened again: %s", reason);
  return FALSE;
}

/* Where a chain of links ends, whether or not there is a file; caller frees. */
static char *
follow_links (const char *path, GError **error)
{
  g_autofree char *at = g_strdup (path);
  for (int i = 0; i < MOST_LINKS; i++)
    {
      g_autofree char *target = g_file_read_link (at, NULL);
      if (target == NULL)
        return g_steal_pointer (&at);
      g_autofree char *directory = g_path_get_dirname (at);
      g_free (at);
      at = g_path_is_absolute (target) ? g_strdup (target)
                                       : g_build_filename (directory, target, NULL);
    }
  fail_with_errno (error, ELOOP, "cannot save", path);
  return NULL;
}

/* Mode of the file that will be replaced. A device or a directory is not replaced. */
static gboolean
find_mode (const char *path, int *mode, bool *exists, GError **error)
{
  struct stat status;
  *mode = NEW_FILE_MODE;
  *exists = stat (path, &status) == 0;
  if (!*exists)
    return errno == ENOENT || fail_with_errno (error, errno, "cannot save", path);
  if (S_ISDIR (status.st_mode))
    return fail_with_errno (error, EISDIR, "cannot save", path);
  if (!S_ISREG (status.st_mode))
    {
      g_autofree char *shown = g_filename_display_name (path);
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL, "cannot save %s: not a regular file",
                   shown);
      return FALSE;
    }
  *mode = (int)(status.st_mode & PERMISSION_BITS);
  return TRUE;
}

gboolean
dw_project_save (const dw_project *project, const char *path, GError **error)
{
  g_return_val_if_fail (project != NULL && path != NULL, FALSE);

  g_autoptr (GBytes) text = dw_project_write_text (project);
  if (!verify (project, text, error))
    return FALSE;

  int mode = 0;
  bool exists = false;
  g_autofree char *target = follow_links (path, error);
  if (target == NULL || !find_mode (target, &mode, &exists, error))
    return FALSE;

  gsize length = 0;
  const char *data = g_bytes_get_data (text, &length);
  if (!g_file_set_contents_full (target, data, (gssize)length,
                                 G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, mode,
                                 error))
    {
      g_prefix_error (error, "cannot save: ");
      return FALSE;
    }
  /* The new file was made under the process's mask, which the old one need not have obeyed. */
  if (exists && g_chmod (target, mode) != 0)
    return fail_with_errno (error, errno, "saved, but cannot restore the permissions of", target);
  return TRUE;
}
