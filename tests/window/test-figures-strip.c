/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "model/dw-figures.h"
#include "window-fixture.h"
#include "window/dw-figures-strip.h"

static GtkWindow *holder;
static DwFiguresStrip *strip;

static void
make_strip (void)
{
  fixture_start ();
  strip = DW_FIGURES_STRIP (dw_figures_strip_new ());
  holder = GTK_WINDOW (gtk_window_new ());
  gtk_window_set_child (holder, GTK_WIDGET (strip));
  gtk_window_set_application (holder, GTK_APPLICATION (fixture_app ()));
}

static const dw_project *
project_of_demo (const char *name)
{
  return dw_document_get_project (dw_window_get_document (fixture_open (name)));
}

static bool
shows (const char *text)
{
  return fixture_find_text (GTK_WIDGET (strip), text) != NULL;
}

START_TEST (figures_are_those_of_the_model)
{
  const dw_project *project = project_of_demo ("club-final.dampwright");
  const dw_setup *setup = dw_project_find_setup (project, "trial-1");
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (&setup->damper[DW_REAR],
                                         project->conditions.oil_temperature, &model, NULL),
                    DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &figures, NULL), DW_OK);
  dw_figures_strip_update (strip, project, setup, DW_REAR, DW_UNITS_METRIC);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      {
        g_autofree char *c = dw_quantity_format_digits (DW_QUANTITY_DAMPING, DW_UNITS_METRIC,
                                                        figures.c[s][i], 3);
        ck_assert_msg (shows (c), "no %s", c);
      }
  ck_assert (shows ("−2.6\u202f%"));
  ck_assert (shows ("Rebound the same at low speed, 2.6 % softer at middle speed"));
  ck_assert (shows ("c in N s/m"));
}
END_TEST

START_TEST (the_fitted_setup_is_not_compared_with_itself)
{
  const dw_project *project = project_of_demo ("club-final.dampwright");
  dw_figures_strip_update (strip, project, dw_project_get_fitted (project), DW_FRONT,
                           DW_UNITS_METRIC);
  ck_assert (shows ("This setup is fitted."));
  ck_assert (!shows ("%"));
}
END_TEST

START_TEST (units_are_those_chosen)
{
  const dw_project *project = project_of_demo ("club-final.dampwright");
  dw_figures_strip_update (strip, project, dw_project_get_fitted (project), DW_FRONT,
                           DW_UNITS_INCH | DW_UNITS_LBF);
  ck_assert (shows ("c in lbf s/in"));
  ck_assert (shows ("in/s"));
}
END_TEST

START_TEST (no_setup_shows_nothing)
{
  const dw_project *project = project_of_demo ("club-final.dampwright");
  dw_figures_strip_update (strip, project, NULL, DW_FRONT, DW_UNITS_METRIC);
  ck_assert (!gtk_widget_get_visible (gtk_widget_get_first_child (GTK_WIDGET (strip))));
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/figures-strip");
  TCase *tc = tcase_create ("figures-strip");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, make_strip, fixture_stop);
  suite_add_tcase (s, tc);
  tcase_add_test (tc, figures_are_those_of_the_model);
  tcase_add_test (tc, the_fitted_setup_is_not_compared_with_itself);
  tcase_add_test (tc, units_are_those_chosen);
  tcase_add_test (tc, no_setup_shows_nothing);
  return run_suite (s);
}
