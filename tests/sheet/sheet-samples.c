/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-samples.h"

#include <stdlib.h>
#include <string.h>

#include "project/dw-project-file.h"
#include "random-damper.h"

dw_project *
sample_demo (const char *name)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autofree char *file = g_strdup_printf ("demo/%s.dampwright", name);
  char *path = test_source_path (file);
  dw_project *project = dw_project_load (path, findings, NULL);
  free (path);
  ck_assert_msg (project != NULL, "%s", file);
  return project;
}

dw_project *
sample_project (void)
{
  return sample_demo ("club-final");
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

/* ---- sheets ---- */

dw_sheet_options
sample_sheet_options (const dw_project *project)
{
  const guint n = dw_project_get_n_setups (project);
  return (dw_sheet_options){
    .project = project,
    .setup = n > 1   ? dw_project_get_setup (project, 1)
             : n > 0 ? dw_project_get_setup (project, 0)
                     : NULL,
    .against = n > 1 ? dw_project_get_setup (project, 0) : NULL,
    .paper = DW_PAPER_A4,
    .units = DW_UNITS_METRIC,
    .file_name = "club-final.dampwright",
    .date = "2026-05-03",
    .font_family = "DejaVu Sans",
  };
}

dw_sheet *
sample_sheet (dw_sheet_kind kind, const dw_sheet_options *options)
{
  dw_sheet_failure failure = { 0 };
  dw_sheet *sheet = dw_sheet_new (kind, options, &failure);
  ck_assert_msg (sheet != NULL, "kind %d, axle %d: %s, %s", (int)kind, (int)failure.axle,
                 failure.finding.field, failure.finding.text);
  return sheet;
}

dw_sheet_tools *
sample_tools (const dw_sheet_options *options)
{
  return dw_sheet_tools_new (options);
}

char *
sample_words (const dw_sheet *sheet)
{
  GString *all = g_string_new (NULL);
  for (int page = 0; page < dw_sheet_get_n_pages (sheet); page++)
    {
      g_autofree char *words = dw_block_get_words (dw_sheet_get_page (sheet, page));
      g_string_append_printf (all, "%s%s", page > 0 ? "\f" : "", words);
    }
  return g_string_free (all, FALSE);
}

char *
sample_block_words (dw_block *block)
{
  char *words = dw_block_get_words (block);
  dw_block_free (block);
  return words;
}

void
expect_in_order (const char *words, const char *const *pieces)
{
  const char *at = words;
  for (int i = 0; pieces[i] != NULL; i++)
    {
      const char *found = strstr (at, pieces[i]);
      ck_assert_msg (found != NULL, "\"%s\" is not behind \"%s\" in:\n%s", pieces[i],
                     i > 0 ? pieces[i - 1] : "", words);
      at = found + strlen (pieces[i]);
    }
}

int
count_pieces (const char *words, const char *piece)
{
  int n = 0;
  for (const char *at = strstr (words, piece); at != NULL; at = strstr (at + strlen (piece), piece))
    n++;
  return n;
}

/* ---- notes ---- */

char *
sample_long_notes (char letter)
{
  GString *notes = g_string_new (NULL);
  for (int i = 1; notes->len + 6 <= DW_PROJECT_MAX_NOTES; i++)
    g_string_append_printf (notes, "%c%04d%c", letter, i, i % 40 == 0 ? '\n' : ' ');
  return g_string_free (notes, FALSE);
}

void
expect_long_notes (const char *words, char letter)
{
  g_auto (GStrv) pieces = g_strsplit_set (words, " \n\f\t", 0);
  int next = 1;
  for (char **p = pieces; *p != NULL; p++)
    if ((*p)[0] == letter && strlen (*p) == 5 && g_ascii_isdigit ((*p)[1]))
      {
        ck_assert_msg (atoi (*p + 1) == next, "%s where %c%04d should be", *p, letter, next);
        next++;
      }
  ck_assert_int_eq (next - 1, DW_PROJECT_MAX_NOTES / 6);
}

/* ---- at worst ---- */

static dw_damper *
damper (dw_project *project, guint index, dw_axle axle)
{
  return &dw_project_edit_setup (project, index)->damper[axle];
}

/* One of each size, so that no two become one. */
static void
fill_holes (dw_damper *d)
{
  d->piston.n_holes = DW_MAX_HOLE_GROUPS;
  for (int i = 0; i < DW_MAX_HOLE_GROUPS; i++)
    d->piston.holes[i] = (dw_holes){ 4, (0.8 + 0.0125 * i) * 1e-3, i >= 14 };
}

static dw_project *
many_holes (void)
{
  dw_project *project = sample_project ();
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    fill_holes (damper (project, 1, (dw_axle)axle));
  return project;
}

static void
fill_stack (dw_damper *d)
{
  d->valve.n_shims = DW_MAX_SHIMS;
  for (int i = 0; i < DW_MAX_SHIMS; i++)
    d->valve.shims[i] = (dw_shim){ .thickness = (0.05 + 0.0125 * i) * 1e-3,
                                   .count = 1 + i % 3,
                                   .modulus = 4e9,
                                   .poisson = 0.38,
                                   .strength = 100e6 };
}

static dw_project *
many_shims (void)
{
  dw_project *project = sample_project ();
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    fill_stack (damper (project, 1, (dw_axle)axle));
  return project;
}

static void
name_all (dw_project *project, const char *name)
{
  dw_project_set_title (project, name);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    ck_assert (dw_project_rename_setup (project, i, name));
  for (int i = 0; i < DW_N_MEETING; i++)
    ck_assert (dw_project_set_meeting (project, (dw_meeting_field)i, name));
  dw_parts *parts = dw_project_edit_parts (project);
  for (guint i = 0; i < parts->pistons->len; i++)
    {
      dw_spare_piston *p = &g_array_index (parts->pistons, dw_spare_piston, i);
      g_free (p->name);
      p->name = g_strdup (name);
    }
}

/* The widest letter, without a blank to break at. */
static dw_project *
long_names (void)
{
  dw_project *project = sample_project ();
  g_autofree char *name = g_strnfill (DW_PROJECT_MAX_TEXT, 'W');
  name_all (project, name);
  return project;
}

static dw_project *
no_names (void)
{
  dw_project *project = sample_project ();
  name_all (project, "");
  dw_project_set_notes (project, "");
  dw_project_set_setup_notes (project, 1, "");
  return project;
}

static dw_project *
long_notes (void)
{
  dw_project *project = sample_project ();
  g_autofree char *own = sample_long_notes ('a');
  g_autofree char *general = sample_long_notes ('b');
  ck_assert (dw_project_set_setup_notes (project, 1, own));
  ck_assert (dw_project_set_notes (project, general));
  return project;
}

/* A line each, as many as there may be. */
static dw_project *
notes_of_lines (void)
{
  dw_project *project = sample_project ();
  g_autoptr (GString) notes = g_string_new (NULL);
  while (notes->len + 4 <= DW_PROJECT_MAX_NOTES)
    g_string_append (notes, notes->len % 3 == 0 ? "x\n" : "\t\n\n");
  g_string_append (notes, "x");
  ck_assert (dw_project_set_setup_notes (project, 1, notes->str));
  return project;
}

#define HEBREW "\u05db\u05d9\u05d5\u05d5\u05e0\u05d5\u05df \u05d0\u05d7\u05d5\u05e8\u05d9"
#define ARABIC                                                                                     \
  "\u0636\u0628\u0637 \u0627\u0644\u062e\u0644\u0641 1.35 mm \u0662\u0663 trial " HEBREW

static dw_project *
right_to_left (void)
{
  dw_project *project = sample_project ();
  name_all (project, HEBREW);
  ck_assert (dw_project_set_meeting (project, DW_MEETING_TRACK, ARABIC));
  ck_assert (dw_project_rename_setup (project, 1, ARABIC));
  g_autoptr (GString) notes = g_string_new (NULL);
  for (int i = 0; i < 30; i++)
    g_string_append_printf (notes, "%s, %s%s", HEBREW, ARABIC, i % 7 == 0 ? "\n" : "; ");
  ck_assert (dw_project_set_notes (project, notes->str));
  ck_assert (dw_project_set_setup_notes (project, 1, notes->str));
  return project;
}

/* Letters with a mark each, in one word, and marks upon marks. */
static dw_project *
combining (void)
{
  dw_project *project = sample_project ();
  g_autoptr (GString) name = g_string_new (NULL);
  for (int i = 0; i < DW_PROJECT_MAX_TEXT / 2; i++)
    g_string_append (name, i % 9 == 8 ? "\u0323\u0302" : "o\u0308");
  name_all (project, name->str);
  ck_assert (dw_project_set_notes (project, name->str));
  return project;
}

static dw_oil
measured_oil (void)
{
  return (dw_oil){ .kind = DW_OIL_MEASURED,
                   .point_temperature = { 20.0, 40.0 },
                   .point_viscosity = { 512.5e-6, 347.25e-6 },
                   .density = 968.5,
                   .has_thinning = true,
                   .thinning_rate = 123456.0,
                   .thinning_exponent = 0.4375 };
}

static dw_project *
other_kinds (void)
{
  dw_project *project = sample_project ();
  dw_damper *front = damper (project, 1, DW_FRONT);
  front->gas = (dw_gas){ .kind = DW_GAS_VENTED, .pressure = 101325.0, .volume = front->gas.volume };
  front->oil = (dw_oil){ .kind = DW_OIL_BLEND,
                         .n_parts = 2,
                         .parts = { { 350e-6, 0.3125 }, { 10000e-6, 0.6875 } } };
  front->valve.preload = 12.5e3;
  front->valve.seat_gap = 15e-6;
  dw_damper *rear = damper (project, 1, DW_REAR);
  rear->oil = measured_oil ();
  rear->gas.kind = DW_GAS_EMULSION;
  rear->valve.opens_on = DW_COMPRESSION;
  rear->stance.has_droop = false;
  rear->stance.droop = 0.0;
  rear->body.has_filling = false;
  rear->body.filling = 0.0;
  return project;
}

static dw_project *
no_shims (void)
{
  dw_project *project = sample_project ();
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_damper *d = damper (project, 1, (dw_axle)axle);
      d->valve.n_shims = 0;
      d->piston.n_holes = 1;
    }
  return project;
}

static dw_project *
no_masses (void)
{
  dw_project *project = sample_project ();
  project->car = (dw_car){ 0 };
  ck_assert (dw_project_set_fitted (project, NULL));
  return project;
}

/* All of it at once, front and rear as different as they can be. */
static dw_project *
everything (void)
{
  dw_project *project = long_notes ();
  g_autofree char *name = g_strnfill (DW_PROJECT_MAX_TEXT, 'W');
  name_all (project, name);
  fill_holes (damper (project, 1, DW_FRONT));
  fill_stack (damper (project, 1, DW_FRONT));
  fill_stack (damper (project, 1, DW_REAR));
  damper (project, 1, DW_FRONT)->oil = measured_oil ();
  damper (project, 1, DW_REAR)->oil = measured_oil ();
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_damper *d = damper (project, 1, (dw_axle)axle);
      d->body.stroke = 31.25e-3;
      d->piston.thickness = 3.125e-3;
      d->seal_friction = 1.375;
      d->spring = (dw_spring){ 812.5, 91.25e-3, 6.375e-3 };
      d->motion_ratio = 0.5625;
      d->valve.preload = 1.5e3;
      d->valve.seat_gap = 12.5e-6;
      d->valve.lift_limit = 0.4375e-3;
    }
  return project;
}

const sample_extreme sample_extremes[] = {
  { "64 holes of 16 sizes in each piston", many_holes },
  { "16 entries of shims in each stack", many_shims },
  { "names of 200 letters without a blank", long_names },
  { "no names, no notes", no_names },
  { "notes of 4,000 characters to setup and project", long_notes },
  { "notes of nearly 2,000 lines", notes_of_lines },
  { "Hebrew and Arabic, with digits and Latin words in them", right_to_left },
  { "letters with combining marks", combining },
  { "a blend and a vented space in front, a measured, thinning oil behind", other_kinds },
  { "no shims at all", no_shims },
  { "no masses, no fitted setup", no_masses },
  { "everything at once", everything },
};
const int n_sample_extremes = N_ENTRIES (sample_extremes);

dw_project *
sample_random_project (test_random *random, bool extreme)
{
  dw_project *project = sample_project ();
  for (guint i = 0; i < 2; i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      *damper (project, i, (dw_axle)axle) = extreme ? extreme_damper (random)
                                                    : random_damper (random);
  return project;
}

dw_project *
sample_many_setups (int n)
{
  dw_project *project = sample_project ();
  for (int i = (int)dw_project_get_n_setups (project); i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("Trial number %d", i);
      const int at = dw_project_add_setup (project, NULL, name,
                                           &dw_project_get_setup (project, 0)->damper[DW_FRONT],
                                           &dw_project_get_setup (project, 0)->damper[DW_REAR]);
      ck_assert_int_eq (at, i);
      damper (project, (guint)at, DW_REAR)->oil.viscosity = (300 + i) * 1e-6;
    }
  return project;
}
