/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-output.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* As many links as the kernel follows before it calls them a loop. */
#define MOST_LINKS 40

/* What a new file gets before the process's mask takes its share. */
#define NEW_FILE_MODE 0666

#define PERMISSION_BITS 07777

struct dw_calc_output
{
  FILE *file;
  char *target;    /* owned; NULL = standard output */
  char *temporary; /* owned; NULL = written to directly */
  mode_t mode;     /* that the target is to have */
};

static gboolean
fail_with_errno (GError **error, int number, const char *path)
{
  g_autofree char *shown = path != NULL ? g_filename_display_name (path) : NULL;
  g_set_error (error, G_FILE_ERROR, (gint)g_file_error_from_errno (number), "cannot write %s: %s",
               shown != NULL ? shown : "standard output", g_strerror (number));
  return FALSE;
}

static void
output_free (dw_calc_output *output)
{
  g_free (output->target);
  g_free (output->temporary);
  g_free (output);
}

/* Where a chain of links ends, whether or not there is a file; caller frees. */
static char *
follow_links (const char *path, GError **error)
{
  g_autofree char *at = g_strdup (path);
  for (int i = 0; i < MOST_LINKS; i++)
    {
      g_autofree char *next = g_file_read_link (at, NULL);
      if (next == NULL)
        return g_steal_pointer (&at);
      g_autofree char *folder = g_path_get_dirname (at);
      g_free (at);
      at = g_path_is_absolute (next) ? g_strdup (next) : g_build_filename (folder, next, NULL);
    }
  fail_with_errno (error, ELOOP, path);
  return NULL;
}

/* The umask can only be read by setting it. One thread, so nobody sees it in between. */
static mode_t
mode_of_new_file (void)
{
  const mode_t mask = umask (0);
  umask (mask);
  return NEW_FILE_MODE & ~mask;
}

static gboolean
open_directly (dw_calc_output *output, GError **error)
{
  output->file = g_fopen (output->target, "we");
  return output->file != NULL || fail_with_errno (error, errno, output->target);
}

/* A file beside the target, so that renaming it cannot cross from one disk to another. */
static gboolean
open_beside (dw_calc_output *output, GError **error)
{
  g_autofree char *name = g_strconcat (output->target, ".XXXXXX", NULL);
  const int descriptor = g_mkstemp (name);
  if (descriptor < 0)
    return fail_with_errno (error, errno, output->target);

  output->temporary = g_steal_pointer (&name);
  output->file = fdopen (descriptor, "w");
  if (output->file != NULL)
    return TRUE;
  const int number = errno;
  close (descriptor);
  g_unlink (output->temporary);
  return fail_with_errno (error, number, output->target);
}

static gboolean
open_target (dw_calc_output *output, const char *path, GError **error)
{
  struct stat status;
  output->target = follow_links (path, error);
  if (output->target == NULL)
    return FALSE;
  if (stat (output->target, &status) != 0)
    {
      if (errno != ENOENT)
        return fail_with_errno (error, errno, path);
      output->mode = mode_of_new_file ();
      return open_beside (output, error);
    }
  if (S_ISDIR (status.st_mode))
    return fail_with_errno (error, EISDIR, path);
  if (!S_ISREG (status.st_mode))
    return open_directly (output, error);
  /* A folder that may be written to is no leave to replace a file that may not. */
  if (access (output->target, W_OK) != 0)
    return fail_with_errno (error, errno, path);
  output->mode = status.st_mode & PERMISSION_BITS;
  return open_beside (output, error);
}

dw_calc_output *
dw_calc_output_open (const char *path, GError **error)
{
  dw_calc_output *output = g_new0 (dw_calc_output, 1);
  if (path == NULL)
    output->file = stdout;
  else if (!open_target (output, path, error))
    {
      output_free (output);
      return NULL;
    }
  return output;
}

FILE *
dw_calc_output_get_file (const dw_calc_output *output)
{
  return output->file;
}

gboolean
dw_calc_output_has_failed (const dw_calc_output *output)
{
  return ferror (output->file) != 0;
}

/* Everything has left the program and, for a file, is on the disk. The first error counts. */
static int
finish_writing (dw_calc_output *output)
{
  errno = 0;
  int number = 0;
  /* an error of before has lost its number: a flush that fails again gives it back */
  if (fflush (output->file) != 0 || ferror (output->file) != 0)
    number = errno != 0 ? errno : EIO;
  if (output->temporary != NULL && number == 0
      && (fchmod (fileno (output->file), output->mode) != 0 || fsync (fileno (output->file)) != 0))
    number = errno;
  if (output->target != NULL && fclose (output->file) != 0 && number == 0)
    number = errno;
  return number;
}

gboolean
dw_calc_output_close (dw_calc_output *output, GError **error)
{
  int number = finish_writing (output);
  if (number == 0 && output->temporary != NULL && g_rename (output->temporary, output->target) != 0)
    number = errno;
  if (number != 0)
    {
      fail_with_errno (error, number, output->target);
      if (output->temporary != NULL)
        g_unlink (output->temporary);
    }
  output_free (output);
  return number == 0;
}

void
dw_calc_output_discard (dw_calc_output *output)
{
  if (output == NULL)
    return;
  if (output->target != NULL)
    fclose (output->file);
  if (output->temporary != NULL)
    g_unlink (output->temporary);
  output_free (output);
}
