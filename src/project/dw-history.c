/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-history.h"

#include "project/dw-project.h"

/* No state has this number, so "saved" can point nowhere. */
#define NO_STATE G_GUINT64_CONSTANT (0)

typedef struct
{
  gpointer model;
  char *label;
  char *merge;
  guint64 state;
} Step;

struct _DwHistory
{
  DwHistoryOps ops;
  GPtrArray *steps; /* of Step; steps[0] is what undo cannot go behind */
  guint now;
  guint limit;
  gboolean run_open; /* the current step may still take in edits of its merge key */
  guint64 last_state;
  guint64 saved_state;
};

static gpointer
copy_project (gconstpointer model)
{
  return dw_project_copy (model);
}

static gboolean
equal_projects (gconstpointer a, gconstpointer b)
{
  return dw_project_equal (a, b);
}

static void
free_project (gpointer model)
{
  dw_project_free (model);
}

const DwHistoryOps dw_history_project_ops = { copy_project, equal_projects, free_project };

static Step *
step_at (DwHistory *self, guint i)
{
  return g_ptr_array_index (self->steps, i);
}

static void
step_free (DwHistory *self, Step *step)
{
  self->ops.free (step->model);
  g_free (step->label);
  g_free (step->merge);
  g_free (step);
}

static void
push (DwHistory *self, const char *label, const char *merge, gconstpointer model)
{
  Step *step = g_new0 (Step, 1);
  step->model = self->ops.copy (model);
  step->label = g_strdup (label);
  step->merge = g_strdup (merge);
  step->state = ++self->last_state;
  g_ptr_array_add (self->steps, step);
  self->now = self->steps->len - 1;
}

static void
truncate_to (DwHistory *self, guint len)
{
  while (self->steps->len > len)
    step_free (self, g_ptr_array_steal_index (self->steps, self->steps->len - 1));
}

/* Forget the oldest steps; never the current one, nor what stands after it. */
static void
forget_oldest (DwHistory *self)
{
  while (self->now > self->limit)
    {
      step_free (self, g_ptr_array_steal_index (self->steps, 0));
      self->now--;
    }
}

DwHistory *
dw_history_new (const DwHistoryOps *ops, gconstpointer model)
{
  g_return_val_if_fail (ops != NULL && model != NULL, NULL);

  DwHistory *self = g_new0 (DwHistory, 1);
  self->ops = *ops;
  self->steps = g_ptr_array_new ();
  self->limit = DW_HISTORY_LIMIT;
  self->last_state = NO_STATE;
  push (self, NULL, NULL, model);
  self->saved_state = self->last_state;
  return self;
}

void
dw_history_free (DwHistory *self)
{
  if (self == NULL)
    return;
  truncate_to (self, 0);
  g_ptr_array_unref (self->steps);
  g_free (self);
}

gconstpointer
dw_history_get_model (DwHistory *self)
{
  return step_at (self, self->now)->model;
}

/* Take an edit into the current step. The state number is a new one all the same: a save that
 * is under way must not count for what was typed since it began. */
static void
merge_into_step (DwHistory *self, const char *label, const char *merge, gconstpointer model)
{
  truncate_to (self, self->now);
  self->now--;
  if (self->ops.equal (step_at (self, self->now)->model, model))
    {
      self->run_open = FALSE;
      return;
    }
  push (self, label, merge, model);
}

gboolean
dw_history_record (DwHistory *self, const char *label, const char *merge, gconstpointer model)
{
  g_return_val_if_fail (self != NULL && model != NULL, FALSE);

  const Step *top = step_at (self, self->now);
  if (self->ops.equal (top->model, model))
    return FALSE;

  const gboolean merges = self->run_open && self->now > 0 && merge != NULL
                          && g_strcmp0 (merge, top->merge) == 0;
  truncate_to (self, self->now + 1);
  self->run_open = TRUE;
  if (merges)
    merge_into_step (self, label, merge, model);
  else
    push (self, label, merge, model);
  forget_oldest (self);
  return TRUE;
}

gboolean
dw_history_undo (DwHistory *self)
{
  if (self->now == 0)
    return FALSE;
  self->now--;
  self->run_open = FALSE;
  return TRUE;
}

gboolean
dw_history_redo (DwHistory *self)
{
  if (self->now + 1 >= self->steps->len)
    return FALSE;
  self->now++;
  self->run_open = FALSE;
  return TRUE;
}

const char *
dw_history_get_undo_label (DwHistory *self)
{
  return self->now > 0 ? step_at (self, self->now)->label : NULL;
}

const char *
dw_history_get_redo_label (DwHistory *self)
{
  return self->now + 1 < self->steps->len ? step_at (self, self->now + 1)->label : NULL;
}

void
dw_history_set_limit (DwHistory *self, guint limit)
{
  g_return_if_fail (limit >= 1);

  self->limit = limit;
  forget_oldest (self);
}

guint64
dw_history_get_state (DwHistory *self)
{
  return step_at (self, self->now)->state;
}

void
dw_history_set_saved (DwHistory *self, guint64 state)
{
  self->saved_state = state;
  self->run_open = FALSE; /* a step that was saved is never merged over */
}

void
dw_history_set_never_saved (DwHistory *self)
{
  dw_history_set_saved (self, NO_STATE);
}

gboolean
dw_history_is_modified (DwHistory *self)
{
  return dw_history_get_state (self) != self->saved_state;
}
