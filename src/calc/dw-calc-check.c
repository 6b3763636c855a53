/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc check: everything that is wrong in a project file. */

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "model/dw-figures.h"
#include "project/dw-project-file.h"

static const char *const paragraphs[] = {
  "Prints nothing when the file is good. Otherwise each finding is a line with the file, the line "
  "in it, what is wrong and what is allowed, and the exit status is 1.",
  "A warning counts as well: the other commands go on without a misspelt attribute, and the damper "
  "is then not the one that was meant. The forces of every damper are computed too, so that a file "
  "that is good here does not fail later.",
  NULL,
};

static const char *const examples[] = { "check club-day.dampwright", NULL };

static const dw_calc_option options[] = { { NULL, NULL, NULL } };

/* Whether the damper's forces can be computed; prints why not. */
static bool
check_damper (const dw_project *project, const char *path, const dw_setup *setup, dw_axle axle,
              FILE *file)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  dw_force_model model;
  dw_figures figures;
  dw_error finding;
  dw_status status = dw_force_model_make (&setup->damper[axle], project->conditions.oil_temperature,
                                          &model, &finding);
  if (status == DW_OK)
    status = dw_figures_read (&model, speeds, &figures, &finding);
  if (status == DW_OK)
    return true;

  g_autoptr (GError) error = NULL;
  dw_calc_input_refuse (path, setup, axle, &finding, &error);
  fprintf (file, "%s\n", error->message);
  return false;
}

static bool
check_setups (const dw_project *project, const char *path, FILE *file)
{
  bool good = true;
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      if (!check_damper (project, path, dw_project_get_setup (project, i), (dw_axle)axle, file))
        good = false;
  return good;
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  g_autofree char *shown = dw_calc_printable (path);
  g_autoptr (dw_findings) findings = dw_findings_new ();
  GError *failure = NULL;
  g_autoptr (dw_project) project = dw_project_load (path, findings, &failure);
  if (failure != NULL)
    {
      g_propagate_error (error, failure);
      return DW_CALC_IO;
    }

  g_autofree char *text = dw_findings_to_text (findings, shown);
  fputs (text, file);
  const bool good = project != NULL && check_setups (project, path, file);
  return good && *text == '\0' ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_check = {
  .name = "check",
  .summary = "Is a project file good, and if not, what is wrong in it",
  .operands = "FILE",
  .n_operands = 1,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
