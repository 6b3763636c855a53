/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-edit.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "model/dw-drill.h"

typedef struct
{
  const char *base;
  dw_axle axle;
  const dw_damper *drilled;
  const char *last;
  const dw_damper *put;
  const char *name;
  char *made; /* id; owned */
} edit;

/* ---- a trial ---- */

static gboolean
is_untouched (const dw_project *project, const edit *e)
{
  const dw_setup *setup = e->last != NULL ? dw_project_find_setup (project, e->last) : NULL;
  return setup != NULL && strcmp (project->fitted, e->last) != 0 && *setup->notes == '\0'
         && dw_damper_equal (&setup->damper[e->axle], e->put);
}

static gboolean
put_into_trial (dw_project *project, gpointer data)
{
  edit *e = data;
  int index = dw_project_find_index (project, e->base);

  if (index < 0)
    return FALSE;
  if (is_untouched (project, e))
    {
      index = dw_project_find_index (project, e->last);
      dw_project_edit_setup (project, (guint)index)->damper[e->axle] = *e->drilled;
      dw_project_rename_setup (project, (guint)index, e->name);
      e->made = g_strdup (e->last);
      return TRUE;
    }
  const dw_setup *base = dw_project_get_setup (project, (guint)index);
  dw_damper damper[DW_N_AXLES] = { base->damper[DW_FRONT], base->damper[DW_REAR] };
  damper[e->axle] = *e->drilled;
  const int at = dw_project_add_setup (project, NULL, e->name, &damper[DW_FRONT], &damper[DW_REAR]);
  if (at < 0)
    return FALSE;
  dw_project_move_setup (project, (guint)at, (guint)index + 1);
  e->made = g_strdup (dw_project_get_setup (project, (guint)index + 1)->id);
  return TRUE;
}

char *
dw_drill_edit_trial (DwDocument *document, const char *base, dw_axle axle, const dw_damper *drilled,
                     const char *last, const dw_damper *put, const char *name)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (document) && drilled != NULL, NULL);

  edit e = { base, axle, drilled, put != NULL ? last : NULL, put, name, NULL };
  dw_document_edit (document, _ ("Put drilling into a trial"), NULL, put_into_trial, &e);
  return e.made;
}

/* ---- a piston that is drilled ---- */

static gboolean
are_alike (const dw_piston *a, const dw_piston *b)
{
  if (a->n_holes != b->n_holes || fabs (a->thickness - b->thickness) > DW_DRILL_SAME)
    return FALSE;
  for (int i = 0; i < a->n_holes; i++)
    if (a->holes[i].count != b->holes[i].count || a->holes[i].covered != b->holes[i].covered
        || fabs (a->holes[i].diameter - b->holes[i].diameter) > DW_DRILL_SAME)
      return FALSE;
  return TRUE;
}

/* The pistons came out of the box: there, too, they are no longer what they were. */
static void
drill_spare (dw_project *project, const dw_piston *before, const dw_piston *after)
{
  const dw_parts *parts = dw_project_get_parts (project);
  for (guint i = 0; i < parts->pistons->len; i++)
    if (are_alike (&g_array_index (parts->pistons, dw_spare_piston, i).piston, before))
      {
        dw_parts *box = dw_project_edit_parts (project);
        dw_piston *spare = &g_array_index (box->pistons, dw_spare_piston, i).piston;
        spare->n_holes = after->n_holes;
        for (int g = 0; g < after->n_holes; g++)
          spare->holes[g] = after->holes[g];
        return;
      }
}

static gboolean
drill (dw_project *project, gpointer data)
{
  edit *e = data;
  const int index = dw_project_find_index (project, e->base);

  if (index < 0)
    return FALSE;
  dw_setup *setup = dw_project_edit_setup (project, (guint)index);
  const dw_piston before = setup->damper[e->axle].piston;
  setup->damper[e->axle] = *e->drilled;
  drill_spare (project, &before, &e->drilled->piston);
  dw_project_set_fitted (project, e->base);
  e->made = g_strdup (e->base);
  return TRUE;
}

gboolean
dw_drill_edit_drilled (DwDocument *document, const char *id, dw_axle axle, const dw_damper *drilled)
{
  g_return_val_if_fail (DW_IS_DOCUMENT (document) && drilled != NULL, FALSE);

  edit e = { .base = id, .axle = axle, .drilled = drilled };
  dw_document_edit (document,
                    axle == DW_FRONT ? _ ("Front pistons drilled") : _ ("Rear pistons drilled"),
                    NULL, drill, &e);
  const gboolean is_done = e.made != NULL;
  g_free (e.made);
  return is_done;
}
