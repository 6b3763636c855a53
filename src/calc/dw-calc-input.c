/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-input.h"

#include <stdio.h>
#include <string.h>

#include "calc/dw-calc-error.h"
#include "project/dw-project-file.h"

dw_project *
dw_calc_input_load (const char *path, GError **error)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  GError *failure = NULL;
  dw_project *project = dw_project_load (path, findings, &failure);
  g_autofree char *shown = dw_calc_printable (path);
  g_autofree char *text = dw_findings_to_text (findings, shown);
  if (failure != NULL)
    {
      g_propagate_error (error, failure);
      return NULL;
    }
  if (project == NULL)
    {
      g_strchomp (text);
      dw_calc_refused (error, "%s", text);
      return NULL;
    }
  fputs (text, stderr);
  return project;
}

const dw_setup *
dw_calc_input_find (const dw_project *project, const char *path, const char *id, GError **error)
{
  const dw_setup *setup = dw_project_find_setup (project, id);
  if (setup != NULL)
    return setup;

  g_autoptr (GString) ids = g_string_new (NULL);
  const guint n = dw_project_get_n_setups (project);
  for (guint i = 0; i < n; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", dw_project_get_setup (project, i)->id);
  g_autofree char *shown = dw_calc_printable (path);
  g_autofree char *asked = dw_calc_printable (id);
  if (n == 0)
    dw_calc_refused (error, "%s: no setup \"%s\", the project has none", shown, asked);
  else
    dw_calc_refused (error, "%s: no setup \"%s\", the project has %s", shown, asked, ids->str);
  return NULL;
}

GPtrArray *
dw_calc_input_setups (const dw_project *project, const char *path,
                      const dw_calc_arguments *arguments, GError **error)
{
  const char *id = dw_calc_arguments_get (arguments, "--setup");
  g_autoptr (GPtrArray) setups = g_ptr_array_new ();
  if (id != NULL)
    {
      const dw_setup *setup = dw_calc_input_find (project, path, id, error);
      if (setup == NULL)
        return NULL;
      g_ptr_array_add (setups, (gpointer)(guintptr)setup);
      return g_steal_pointer (&setups);
    }
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    g_ptr_array_add (setups, (gpointer)(guintptr)dw_project_get_setup (project, i));
  return g_steal_pointer (&setups);
}

static const dw_setup *
find_or_fitted (const dw_project *project, const char *path, const dw_calc_arguments *arguments,
                GError **error)
{
  const char *id = dw_calc_arguments_get (arguments, "--setup");
  if (id != NULL)
    return dw_calc_input_find (project, path, id, error);
  const dw_setup *fitted = dw_project_get_fitted (project);
  g_autofree char *shown = dw_calc_printable (path);
  if (fitted == NULL)
    dw_calc_refused (error, "%s: no setup is fitted; --setup has to name one", shown);
  return fitted;
}

dw_project *
dw_calc_input_open (const dw_calc_arguments *arguments, const dw_setup **setup, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  g_autoptr (dw_project) project = dw_calc_input_load (path, error);
  *setup = project != NULL ? find_or_fitted (project, path, arguments, error) : NULL;
  return *setup != NULL ? g_steal_pointer (&project) : NULL;
}

gboolean
dw_calc_input_axles (const dw_calc_arguments *arguments, dw_calc_axles *axles, GError **error)
{
  const char *name = dw_calc_arguments_get (arguments, "--axle");
  if (name == NULL)
    {
      *axles = (dw_calc_axles){ DW_FRONT, DW_REAR };
      return TRUE;
    }
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (strcmp (dw_axle_name ((dw_axle)axle), name) == 0)
      {
        *axles = (dw_calc_axles){ (dw_axle)axle, (dw_axle)axle };
        return TRUE;
      }
  return dw_calc_misused (error, "--axle needs front or rear, not \"%s\"", name);
}

gboolean
dw_calc_input_refuse (const char *path, const dw_setup *setup, dw_axle axle,
                      const dw_error *finding, GError **error)
{
  g_autofree char *shown = dw_calc_printable (path);
  return dw_calc_refused (error, "%s: setup %s, %s: %s: %s", shown, setup->id, dw_axle_name (axle),
                          finding->field, finding->text);
}
