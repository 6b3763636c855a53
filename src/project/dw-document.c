/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-document.h"

#include "project/dw-history.h"
#include "project/dw-project-file.h"
#include "project/dw-project-writer.h"
#include "project/dw-recovery.h"

struct _DwDocument
{
  GObject parent_instance;

  /* Owned */
  DwHistory *history;
  GFile *file;
  GFileMonitor *monitor;
  char *recovery_folder;
  dw_recovery *recovery;

  guint recovery_timer;
  /* what stood in the file when this program last read or wrote it */
  char *file_stamp;
};

G_DEFINE_FINAL_TYPE (DwDocument, dw_document, G_TYPE_OBJECT)

enum
{
  CHANGED,
  STATE_CHANGED,
  FILE_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- the file on disk ---- */

/* Size and time of change, as text; NULL when there is no such file. */
static char *
stamp_of (GFile *file)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file,
                                                  G_FILE_ATTRIBUTE_STANDARD_SIZE
                                                  "," G_FILE_ATTRIBUTE_TIME_MODIFIED
                                                  "," G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC
                                                  "," G_FILE_ATTRIBUTE_UNIX_INODE,
                                                  G_FILE_QUERY_INFO_NONE, NULL, NULL);
  if (info == NULL)
    return NULL;
  return g_strdup_printf (
      "%" G_GOFFSET_FORMAT " %" G_GUINT64_FORMAT ".%u %" G_GUINT64_FORMAT,
      g_file_info_get_size (info),
      g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED),
      g_file_info_get_attribute_uint32 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC),
      g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_UNIX_INODE));
}

static void
remember_stamp (DwDocument *self)
{
  g_free (self->file_stamp);
  self->file_stamp = self->file != NULL ? stamp_of (self->file) : NULL;
}

static void
on_file_event (GFileMonitor *monitor, GFile *file, GFile *other, GFileMonitorEvent event,
               gpointer data)
{
  DwDocument *self = data;
  g_autofree char *stamp = NULL;

  (void)monitor;
  (void)file;
  (void)other;
  if (event == G_FILE_MONITOR_EVENT_PRE_UNMOUNT || event == G_FILE_MONITOR_EVENT_UNMOUNTED)
    return;
  stamp = stamp_of (self->file);
  /* our own save ends in an event too; a file that went away is no news to load */
  if (stamp == NULL || g_strcmp0 (stamp, self->file_stamp) == 0)
    return;
  remember_stamp (self);
  g_signal_emit (self, signals[FILE_CHANGED], 0);
}

static void
set_file (DwDocument *self, GFile *file)
{
  if (self->monitor != NULL)
    g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_clear_object (&self->monitor);
  g_set_object (&self->file, file);
  remember_stamp (self);
  if (file == NULL)
    return;
  /* without a monitor (a strange file system) outside changes go unnoticed, nothing else */
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect (self->monitor, "changed", G_CALLBACK (on_file_event), self);
}

/* ---- the recovery copy ---- */

static void
stop_recovery_timer (DwDocument *self)
{
  g_clear_handle_id (&self->recovery_timer, g_source_remove);
}

void
dw_document_flush_recovery (DwDocument *self)
{
  g_return_if_fail (DW_IS_DOCUMENT (self));

  g_autoptr (GError) error = NULL;
  stop_recovery_timer (self);
  if (self->recovery_folder == NULL || !dw_document_is_modified (self))
    return;
  if (self->recovery == NULL)
    {
      g_autofree char *origin = self->file != NULL ? g_file_get_uri (self->file) : NULL;
      self->recovery = dw_recovery_new (self->recovery_folder, origin, &error);
    }
  if (self->recovery != NULL)
    {
      g_autoptr (GBytes) text = dw_project_write_text (dw_document_get_project (self));
      dw_recovery_write (self->recovery, text, &error);
    }
  /* no room for a copy must not stop the work; the next edit tries again */
  if (error != NULL)
    g_info ("no recovery copy: %s", error->message);
}

static gboolean
on_recovery_timer (gpointer data)
{
  DwDocument *self = data;
  self->recovery_timer = 0;
  dw_document_flush_recovery (self);
  return G_SOURCE_REMOVE;
}

/* A running timer is not put off: the copy comes that long after the first edit it lacks. */
static void
schedule_recovery (DwDocument *self)
{
  if (self->recovery_folder == NULL)
    return;
  if (!dw_document_is_modified (self))
    dw_document_discard_recovery (self);
  else if (self->recovery_timer == 0)
    self->recovery_timer = g_timeout_add_seconds (DW_DOCUMENT_RECOVERY_SECONDS, on_recovery_timer,
                                                  self);
}

void
dw_document_keep_recovery (DwDocument *self, const char *folder)
{
  g_return_if_fail (DW_IS_DOCUMENT (self));

  dw_document_discard_recovery (self);
  g_free (self->recovery_folder);
  self->recovery_folder = g_strdup (folder);
  schedule_recovery (self);
}

void
dw_document_discard_recovery (DwDocument *self)
{
  g_return_if_fail (DW_IS_DOCUMENT (self));

  stop_recovery_timer (self);
  g_clear_pointer (&self->recovery, dw_recovery_free);
}

/* ---- making and opening ---- */

static DwDocument *
new_document (const dw_project *project, GFile *file)
{
  DwDocument *self = g_object_new (DW_TYPE_DOCUMENT, NULL);
  self->history = dw_history_new (&dw_history_project_ops, project);
  set_file (self, file);
  return self;
}

DwDocument *
dw_document_new (const dw_project *project)
{
  g_return_val_if_fail (project != NULL, NULL);
  return new_document (project, NULL);
}

DwDocument *
dw_document_new_recovered (const dw_project *project, GFile *file)
{
  g_return_val_if_fail (project != NULL, NULL);

  DwDocument *self = new_document (project, file);
  dw_history_set_never_saved (self->history);
  return self;
}

static dw_project *
load (GFile *file, dw_findings *findings, GError **error)
{
  g_autofree char *path = g_file_get_path (file);

  if (path == NULL)
    {
      g_autofree char *uri = g_file_get_uri (file);
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT, "%s: not a file of this machine", uri);
      return NULL;
    }
  return dw_project_load (path, findings, error);
}

DwDocument *
dw_document_open (GFile *file, dw_findings *findings, GError **error)
{
  g_return_val_if_fail (G_IS_FILE (file) && findings != NULL, NULL);

  g_autoptr (dw_project) project = load (file, findings, error);
  return project != NULL ? new_document (project, file) : NULL;
}

gboolean
dw_document_reload (DwDocument *self, const char *label, dw_findings *findings, GError **error)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self) && self->file != NULL, FALSE);

  g_autoptr (dw_project) project = load (self->file, findings, error);
  if (project == NULL)
    return FALSE;
  const gboolean changed = dw_history_record (self->history, label, NULL, project);
  dw_history_set_saved (self->history, dw_history_get_state (self->history));
  remember_stamp (self);
  dw_document_discard_recovery (self);
  if (changed)
    g_signal_emit (self, signals[CHANGED], 0);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
  return TRUE;
}

/* ---- reading and editing ---- */

const dw_project *
dw_document_get_project (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), NULL);
  return dw_history_get_model (self->history);
}

GFile *
dw_document_get_file (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), NULL);
  return self->file;
}

char *
dw_document_dup_name (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), NULL);

  if (self->file != NULL)
    {
      g_autofree char *base = g_file_get_basename (self->file);
      return g_filename_display_name (base);
    }
  return g_strdup (dw_document_get_project (self)->title);
}

static void
after_change (DwDocument *self)
{
  schedule_recovery (self);
  g_signal_emit (self, signals[CHANGED], 0);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
}

gboolean
dw_document_edit (DwDocument *self, const char *label, const char *merge, DwDocumentEdit edit,
                  gpointer data)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self) && label != NULL && edit != NULL, FALSE);

  g_autoptr (dw_project) project = dw_project_copy (dw_document_get_project (self));
  if (!edit (project, data) || !dw_history_record (self->history, label, merge, project))
    return FALSE;
  after_change (self);
  return TRUE;
}

gboolean
dw_document_undo (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), FALSE);

  if (!dw_history_undo (self->history))
    return FALSE;
  after_change (self);
  return TRUE;
}

gboolean
dw_document_redo (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), FALSE);

  if (!dw_history_redo (self->history))
    return FALSE;
  after_change (self);
  return TRUE;
}

const char *
dw_document_get_undo_label (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), NULL);
  return dw_history_get_undo_label (self->history);
}

const char *
dw_document_get_redo_label (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), NULL);
  return dw_history_get_redo_label (self->history);
}

guint64
dw_document_get_state (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), 0);
  return dw_history_get_state (self->history);
}

gboolean
dw_document_is_modified (DwDocument *self)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self), FALSE);
  return dw_history_is_modified (self->history);
}

/* ---- saving ---- */

typedef struct
{
  dw_project *project; /* owned: the thread has a copy of its own */
  guint64 state;
  GFile *file; /* owned */
} save_job;

static void
save_job_free (save_job *job)
{
  dw_project_free (job->project);
  g_object_unref (job->file);
  g_free (job);
}

static void
save_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const save_job *job = data;
  g_autofree char *path = g_file_get_path (job->file);
  g_autoptr (GError) error = NULL;

  (void)source;
  if (g_cancellable_set_error_if_cancelled (cancellable, &error))
    g_task_return_error (task, g_steal_pointer (&error));
  else if (path == NULL)
    {
      g_autofree char *uri = g_file_get_uri (job->file);
      g_task_return_new_error (task, G_FILE_ERROR, G_FILE_ERROR_NOENT,
                               "%s: not a file of this machine", uri);
    }
  else if (!dw_project_save (job->project, path, &error))
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_boolean (task, TRUE);
}

void
dw_document_save_async (DwDocument *self, GFile *file, GCancellable *cancellable,
                        GAsyncReadyCallback callback, gpointer data)
{
  g_return_if_fail (DW_IS_DOCUMENT (self) && G_IS_FILE (file));

  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);
  save_job *job = g_new0 (save_job, 1);

  job->project = dw_project_copy (dw_document_get_project (self));
  job->state = dw_history_get_state (self->history);
  job->file = g_object_ref (file);
  g_task_set_name (task, "save project");
  g_task_set_task_data (task, job, (GDestroyNotify)save_job_free);
  /* once the bytes are on disk they are saved, whether or not somebody still waits */
  g_task_set_check_cancellable (task, FALSE);
  g_task_run_in_thread (task, save_in_thread);
}

gboolean
dw_document_save_finish (DwDocument *self, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (self) && g_task_is_valid (result, self), FALSE);

  GTask *task = G_TASK (result);
  const save_job *job = g_task_get_task_data (task);
  if (!g_task_propagate_boolean (task, error))
    return FALSE;

  if (self->file == NULL || !g_file_equal (self->file, job->file))
    set_file (self, job->file);
  else
    remember_stamp (self);
  dw_history_set_saved (self->history, job->state);
  /* the copy names the old file, and perhaps nothing is left to recover */
  dw_document_discard_recovery (self);
  schedule_recovery (self);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
  return TRUE;
}

/* ---- object ---- */

static void
dw_document_dispose (GObject *object)
{
  DwDocument *self = DW_DOCUMENT (object);

  stop_recovery_timer (self);
  set_file (self, NULL);
  g_clear_pointer (&self->recovery, dw_recovery_free);
  G_OBJECT_CLASS (dw_document_parent_class)->dispose (object);
}

static void
dw_document_finalize (GObject *object)
{
  DwDocument *self = DW_DOCUMENT (object);

  dw_history_free (self->history);
  g_free (self->recovery_folder);
  g_free (self->file_stamp);
  G_OBJECT_CLASS (dw_document_parent_class)->finalize (object);
}

static void
dw_document_class_init (DwDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = dw_document_dispose;
  object_class->finalize = dw_document_finalize;
  signals[CHANGED] = g_signal_new ("changed", DW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  signals[STATE_CHANGED] = g_signal_new ("state-changed", DW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0,
                                         NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FILE_CHANGED] = g_signal_new ("file-changed", DW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0,
                                        NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
dw_document_init (DwDocument *self)
{
  (void)self;
}
