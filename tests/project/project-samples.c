/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project-samples.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

#include "model/dw-limits.h"
#include "project/dw-project-reader.h"

const char *const sample_valid_names[] = { "everything.dampwright", "bare.dampwright",
                                           "empty.dampwright", NULL };

static double
pick (test_random *random, dw_limit_id id)
{
  const dw_limit *limit = dw_limit_get (id);
  return test_random_uniform (random, limit->low, limit->high);
}

static bool
coin (test_random *random)
{
  return test_random_int (random, 0, 1) == 1;
}

static void
random_piston (test_random *random, dw_piston *piston)
{
  piston->thickness = test_random_uniform (random, 1e-3, 5e-3);
  piston->clearance = coin (random) ? 0.0 : test_random_uniform (random, 0.01e-3, 0.1e-3);
  piston->eccentricity = pick (random, DW_LIMIT_ECCENTRICITY);
  piston->n_holes = test_random_int (random, 0, 4);
  for (int i = 0; i < piston->n_holes; i++)
    piston->holes[i] = (dw_holes){ .count = test_random_int (random, 1, 5),
                                   .diameter = test_random_uniform (random, 0.5e-3, 1.4e-3),
                                   .covered = coin (random) };
}

static dw_shim
random_shim (test_random *random)
{
  return (dw_shim){ .thickness = pick (random, DW_LIMIT_SHIM_THICKNESS),
                    .count = test_random_int (random, 1, 64),
                    .modulus = pick (random, DW_LIMIT_MODULUS),
                    .poisson = pick (random, DW_LIMIT_POISSON),
                    .strength = pick (random, DW_LIMIT_STRENGTH) };
}

static void
random_valve (test_random *random, dw_valve *valve)
{
  valve->opens_on = coin (random) ? DW_COMPRESSION : DW_REBOUND;
  valve->hub_diameter = test_random_uniform (random, 4e-3, 6e-3);
  valve->outer_diameter = test_random_uniform (random, 9.5e-3, 10e-3);
  valve->hole_circle = test_random_uniform (random, 7.5e-3, 7.9e-3);
  valve->lift_limit = pick (random, DW_LIMIT_LIFT);
  valve->leaf_coupling = pick (random, DW_LIMIT_COUPLING);
  valve->preload = pick (random, DW_LIMIT_PRELOAD);
  valve->seat_gap = pick (random, DW_LIMIT_SEAT_GAP);
  valve->n_shims = test_random_int (random, 0, 4);
  for (int i = 0; i < valve->n_shims; i++)
    valve->shims[i] = random_shim (random);
}

static void
random_oil (test_random *random, dw_oil *oil)
{
  oil->kind = (dw_oil_kind)test_random_int (random, DW_OIL_NOMINAL, DW_OIL_BLEND);
  oil->viscosity = pick (random, DW_LIMIT_VISCOSITY);
  oil->point_temperature[0] = test_random_uniform (random, -40.0, 20.0);
  oil->point_temperature[1] = test_random_uniform (random, 26.0, 150.0);
  oil->point_viscosity[0] = test_random_uniform (random, 100e-6, 900e-6);
  oil->point_viscosity[1] = test_random_uniform (random, 1e-6, 99e-6);
  oil->density = pick (random, DW_LIMIT_DENSITY);
  if (oil->kind == DW_OIL_BLEND)
    {
      const double share = pick (random, DW_LIMIT_SHARE);
      oil->n_parts = 2;
      oil->parts[0] = (dw_oil_part){ pick (random, DW_LIMIT_VISCOSITY), share };
      oil->parts[1] = (dw_oil_part){ pick (random, DW_LIMIT_VISCOSITY), 1.0 - share };
    }
  oil->has_thinning = coin (random);
  oil->thinning_rate = pick (random, DW_LIMIT_THINNING_RATE);
  oil->thinning_exponent = pick (random, DW_LIMIT_THINNING_EXPONENT);
}

/* Each of it given or not. */
static void
random_stance (test_random *random, dw_stance *stance)
{
  stance->has_ride_height = coin (random);
  stance->has_droop = coin (random);
  if (stance->has_ride_height)
    stance->ride_height = pick (random, DW_LIMIT_RIDE_HEIGHT);
  if (stance->has_droop)
    stance->droop = pick (random, DW_LIMIT_DROOP);
}

static dw_damper
any_damper (test_random *random)
{
  dw_damper damper = dw_damper_defaults ();
  damper.body.bore = test_random_uniform (random, 11e-3, 25e-3);
  damper.body.rod = test_random_uniform (random, 1e-3, 5e-3);
  damper.body.stroke = pick (random, DW_LIMIT_STROKE);
  damper.body.has_filling = coin (random);
  if (damper.body.has_filling)
    damper.body.filling = pick (random, DW_LIMIT_FILLING);
  random_piston (random, &damper.piston);
  if (coin (random))
    random_valve (random, &damper.valve);
  random_oil (random, &damper.oil);
  damper.gas.kind = (dw_gas_kind)test_random_int (random, DW_GAS_BLADDER, DW_GAS_EMULSION);
  damper.gas.pressure = pick (random, DW_LIMIT_AIR_PRESSURE);
  damper.gas.volume = pick (random, DW_LIMIT_GAS_VOLUME);
  damper.seal_friction = pick (random, DW_LIMIT_SEAL_FRICTION);
  damper.spring.rate = pick (random, DW_LIMIT_SPRING_RATE);
  damper.spring.free_length = test_random_uniform (random, 210e-3, 500e-3);
  damper.spring.preload = pick (random, DW_LIMIT_SPRING_PRELOAD);
  damper.motion_ratio = pick (random, DW_LIMIT_MOTION_RATIO);
  random_stance (random, &damper.stance);
  return damper;
}

dw_damper
sample_random_damper (test_random *random)
{
  for (int i = 0; i < 1000; i++)
    {
      const dw_damper damper = any_damper (random);
      if (dw_damper_check (&damper, NULL, 0) == 0)
        return damper;
    }
  ck_abort_msg ("no good damper among 1000 random ones");
  return dw_damper_defaults ();
}

/* Characters that XML, UTF-8 or a locale could stumble over; caller frees. */
static char *
random_text (test_random *random)
{
  static const char *const pieces[] = { "a",  "Z",   " ", "  ", "&",  "<",        ">",    "\"",
                                        "'",  "]]>", "ä", "ß",  "漢", "🔧",        ";",    "&amp;",
                                        "%s", "\\",  ",", ".",  "é",  "\xC2\xA0", "<!--", "{" };
  GString *text = g_string_new (NULL);
  for (int n = test_random_int (random, 0, 20); n > 0; n--)
    g_string_append (text, pieces[test_random_int (random, 0, N_ENTRIES (pieces) - 1)]);
  return g_string_free (text, FALSE);
}

/* As above in several lines, with blanks where an XML tool likes to put or drop its own. */
static char *
random_notes (test_random *random)
{
  static const char *const pieces[]
      = { "", " ", "\n", "\t", "\n\n", "  \n  ", "\n<notes>", "====" };
  GString *notes = g_string_new (NULL);
  for (int n = coin (random) ? test_random_int (random, 1, 12) : 0; n > 0; n--)
    {
      g_autofree char *text = coin (random) ? random_text (random) : g_strdup ("");
      g_string_append (notes, pieces[test_random_int (random, 0, N_ENTRIES (pieces) - 1)]);
      g_string_append (notes, text);
    }
  g_string_append (notes, pieces[test_random_int (random, 0, N_ENTRIES (pieces) - 1)]);
  return g_string_free (notes, FALSE);
}

static void
random_meeting (test_random *random, dw_project *project)
{
  for (int i = 0; i < DW_N_MEETING; i++)
    if (coin (random))
      {
        g_autofree char *text = random_text (random);
        ck_assert (dw_project_set_meeting (project, (dw_meeting_field)i, text));
      }
  g_autofree char *notes = random_notes (random);
  ck_assert (dw_project_set_notes (project, notes));
}

static void
random_parts (test_random *random, dw_parts *parts)
{
  for (int n = test_random_int (random, 0, 5); n > 0; n--)
    {
      const dw_drill drill = { pick (random, DW_LIMIT_HOLE_DIAMETER) };
      const dw_shim shim = random_shim (random);
      dw_bottle bottle = { .has_volume = coin (random) };
      random_oil (random, &bottle.oil);
      if (bottle.has_volume)
        bottle.volume = pick (random, DW_LIMIT_BOTTLE_VOLUME);
      dw_piston piston = { 0 };
      random_piston (random, &piston);
      g_autofree char *name = random_text (random);
      g_array_append_val (parts->drills, drill);
      g_array_append_val (parts->shims, shim);
      g_array_append_val (parts->oils, bottle);
      dw_parts_add_piston (parts, name, &piston);
    }
}

dw_project *
sample_random_project (test_random *random)
{
  dw_project *project = dw_project_new_empty ();
  g_autofree char *title = random_text (random);
  dw_project_set_title (project, title);
  project->conditions.oil_temperature = pick (random, DW_LIMIT_OIL_TEMPERATURE);
  project->conditions.air_temperature = pick (random, DW_LIMIT_AIR_TEMPERATURE);
  project->speeds.low = test_random_uniform (random, 1e-4, 0.1);
  project->speeds.middle = test_random_uniform (random, 0.11, 0.5);
  project->speeds.high = test_random_uniform (random, 0.51, 10.0);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (coin (random))
      {
        project->car.has_sprung_mass[axle] = true;
        project->car.sprung_mass[axle] = pick (random, DW_LIMIT_SPRUNG_MASS);
      }
  random_meeting (random, project);
  for (int n = test_random_int (random, 0, 4); n > 0; n--)
    {
      const dw_damper front = sample_random_damper (random);
      const dw_damper rear = sample_random_damper (random);
      g_autofree char *name = random_text (random);
      g_autofree char *notes = random_notes (random);
      const int index = dw_project_add_setup (project, NULL, name, &front, &rear);
      ck_assert_int_ge (index, 0);
      ck_assert (dw_project_set_setup_notes (project, (guint)index, notes));
    }
  if (dw_project_get_n_setups (project) > 0 && coin (random))
    dw_project_set_fitted (project, dw_project_get_setup (project, 0)->id);
  random_parts (random, dw_project_edit_parts (project));
  return project;
}

char *
sample_read (const char *folder, const char *name, gsize *length)
{
  g_autofree char *relative = g_build_filename (folder, name, NULL);
  char *path = test_data_path (relative);
  size_t n = 0;
  char *text = test_file_read (path, &n);
  free (path);
  *length = n;
  char *copy = g_malloc (n + 1);
  memcpy (copy, text, n + 1);
  free (text);
  return copy;
}

dw_project *
sample_parse (const char *text, gsize length)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  dw_project *project = dw_project_read_text (text, length, findings);
  g_autofree char *found = dw_findings_to_text (findings, "sample");
  ck_assert_msg (project != NULL && *found == '\0', "a good text is not: %s\n%.*s", found,
                 (int)MIN (length, 20000), text);
  return project;
}

bool
sample_has_error (const dw_findings *findings, const char *piece)
{
  for (guint i = 0; i < dw_findings_get_n (findings); i++)
    if (dw_findings_get (findings, i)->severity == DW_ERROR
        && strstr (dw_findings_get (findings, i)->message, piece) != NULL)
      return true;
  return false;
}

char *
sample_make_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("dampwright-XXXXXX", &error);
  ck_assert_msg (folder != NULL, "no temporary folder: %s", error != NULL ? error->message : "");
  return folder;
}

void
sample_remove_folder (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  g_rmdir (folder);
  g_free (folder);
}
