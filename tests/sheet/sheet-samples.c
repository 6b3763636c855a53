/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-samples.h"

#include <stdlib.h>

#include "project/dw-project-file.h"

dw_project *
sample_project (void)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  char *path = test_source_path ("demo/club-final.dampwright");
  dw_project *project = dw_project_load (path, findings, NULL);
  free (path);
  ck_assert_ptr_nonnull (project);
  return project;
}

dw_chart_page_options
sample_options (const dw_project *project)
{
  dw_chart_page_options options = dw_chart_page_options_defaults (project);
  options.setups[0] = "baseline";
  options.setups[1] = "trial-1";
  options.n_setups = 2;
  options.font_family = "DejaVu Sans";
  return options;
}
