/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project.h"

#include <libxml/tree.h>
#include <string.h>

#include "model/dw-limits.h"

/* An id made from a name leaves room for the number that makes it unique. */
#define MAX_ID_STEM (DW_PROJECT_MAX_ID - 8)

/* Speeds of bumps, corners and landings in a small damper. */
static const dw_speeds DEFAULT_SPEEDS = { .low = 0.05, .middle = 0.2, .high = 1.0 };

/* ---- a setup with a count of the projects that share it ---- */

typedef struct
{
  dw_setup setup; /* first, so that the one's address is the other's */
  gatomicrefcount refs;
} shared_setup;

static shared_setup *
shared_setup_new (const char *id, const char *name, const dw_damper *front, const dw_damper *rear)
{
  shared_setup *shared = g_new0 (shared_setup, 1);
  shared->setup.id = g_strdup (id);
  shared->setup.name = g_strdup (name);
  shared->setup.notes = g_strdup ("");
  shared->setup.damper[DW_FRONT] = *front;
  shared->setup.damper[DW_REAR] = *rear;
  g_atomic_ref_count_init (&shared->refs);
  return shared;
}

static void
shared_setup_unref (gpointer data)
{
  shared_setup *shared = data;
  if (!g_atomic_ref_count_dec (&shared->refs))
    return;
  g_free (shared->setup.id);
  g_free (shared->setup.name);
  g_free (shared->setup.notes);
  g_free (shared);
}

/* ---- making, copying, comparing ---- */

dw_conditions
dw_conditions_defaults (void)
{
  return (dw_conditions){
    .oil_temperature = dw_limit_get (DW_LIMIT_OIL_TEMPERATURE)->fallback,
    .air_temperature = dw_limit_get (DW_LIMIT_AIR_TEMPERATURE)->fallback,
  };
}

dw_speeds
dw_speeds_defaults (void)
{
  return DEFAULT_SPEEDS;
}

dw_project *
dw_project_new_empty (void)
{
  dw_project *project = g_new0 (dw_project, 1);
  project->title = g_strdup ("");
  project->fitted = g_strdup ("");
  project->conditions = dw_conditions_defaults ();
  project->speeds = dw_speeds_defaults ();
  for (int i = 0; i < DW_N_MEETING; i++)
    project->meeting[i] = g_strdup ("");
  project->notes = g_strdup ("");
  project->setups = g_ptr_array_new_with_free_func (shared_setup_unref);
  project->parts = dw_parts_new ();
  return project;
}

static void
fill_parts (dw_parts *parts)
{
  for (int hundredths = 100; hundredths <= 150; hundredths += 5)
    {
      const dw_drill drill = { .diameter = hundredths / 100e3 };
      g_array_append_val (parts->drills, drill);
    }
  for (int hundredths = 10; hundredths <= 25; hundredths += 5)
    {
      const dw_shim shim = { .thickness = hundredths / 100e3,
                             .count = 4,
                             .modulus = dw_limit_get (DW_LIMIT_MODULUS)->fallback,
                             .poisson = dw_limit_get (DW_LIMIT_POISSON)->fallback,
                             .strength = dw_limit_get (DW_LIMIT_STRENGTH)->fallback };
      g_array_append_val (parts->shims, shim);
    }
  for (int centistokes = 350; centistokes <= 600; centistokes += 50)
    {
      const dw_bottle bottle = { .oil = { .kind = DW_OIL_NOMINAL,
                                          .viscosity = centistokes / 1e6,
                                          .density = dw_limit_get (DW_LIMIT_DENSITY)->fallback },
                                 .has_volume = true,
                                 .volume = 60.0 / 1e6 };
      g_array_append_val (parts->oils, bottle);
    }
}

dw_project *
dw_project_new (void)
{
  const dw_damper damper = dw_damper_defaults ();
  dw_project *project = dw_project_new_empty ();
  dw_project_add_setup (project, "baseline", "Baseline", &damper, &damper);
  dw_project_set_fitted (project, "baseline");
  fill_parts (project->parts);
  return project;
}

dw_project *
dw_project_copy (const dw_project *project)
{
  g_return_val_if_fail (project != NULL, NULL);

  dw_project *copy = g_new0 (dw_project, 1);
  *copy = *project;
  copy->title = g_strdup (project->title);
  copy->fitted = g_strdup (project->fitted);
  for (int i = 0; i < DW_N_MEETING; i++)
    copy->meeting[i] = g_strdup (project->meeting[i]);
  copy->notes = g_strdup (project->notes);
  copy->setups = g_ptr_array_new_full (project->setups->len, shared_setup_unref);
  for (guint i = 0; i < project->setups->len; i++)
    {
      shared_setup *shared = g_ptr_array_index (project->setups, i);
      g_atomic_ref_count_inc (&shared->refs);
      g_ptr_array_add (copy->setups, shared);
    }
  copy->parts = dw_parts_ref (project->parts);
  return copy;
}

void
dw_project_free (dw_project *project)
{
  if (project == NULL)
    return;
  g_free (project->title);
  g_free (project->fitted);
  for (int i = 0; i < DW_N_MEETING; i++)
    g_free (project->meeting[i]);
  g_free (project->notes);
  g_ptr_array_unref (project->setups);
  dw_parts_unref (project->parts);
  g_free (project);
}

static bool
setups_equal (const dw_setup *a, const dw_setup *b)
{
  if (a == b)
    return true;
  return g_str_equal (a->id, b->id) && g_str_equal (a->name, b->name)
         && g_str_equal (a->notes, b->notes)
         && dw_damper_equal (&a->damper[DW_FRONT], &b->damper[DW_FRONT])
         && dw_damper_equal (&a->damper[DW_REAR], &b->damper[DW_REAR]);
}

static bool
cars_equal (const dw_car *a, const dw_car *b)
{
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (a->has_sprung_mass[axle] != b->has_sprung_mass[axle]
        || (a->has_sprung_mass[axle] && a->sprung_mass[axle] != b->sprung_mass[axle]))
      return false;
  return true;
}

static bool
meetings_equal (char *const *a, char *const *b)
{
  for (int i = 0; i < DW_N_MEETING; i++)
    if (!g_str_equal (a[i], b[i]))
      return false;
  return true;
}

bool
dw_project_equal (const dw_project *a, const dw_project *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, false);

  if (!g_str_equal (a->title, b->title) || !g_str_equal (a->fitted, b->fitted)
      || a->conditions.oil_temperature != b->conditions.oil_temperature
      || a->conditions.air_temperature != b->conditions.air_temperature
      || a->speeds.low != b->speeds.low || a->speeds.middle != b->speeds.middle
      || a->speeds.high != b->speeds.high || !cars_equal (&a->car, &b->car)
      || !meetings_equal (a->meeting, b->meeting) || !g_str_equal (a->notes, b->notes)
      || a->setups->len != b->setups->len || !dw_parts_equal (a->parts, b->parts))
    return false;
  for (guint i = 0; i < a->setups->len; i++)
    if (!setups_equal (dw_project_get_setup (a, i), dw_project_get_setup (b, i)))
      return false;
  return true;
}

/* ---- texts and ids ---- */

bool
dw_project_id_is_valid (const char *id)
{
  return id != NULL && g_utf8_validate (id, -1, NULL) && g_utf8_strlen (id, -1) <= DW_PROJECT_MAX_ID
         && xmlValidateNCName ((const xmlChar *)id, 0) == 0;
}

/* @p controls  those of the control characters that it may hold */
static bool
is_text (const char *text, glong most, const char *controls)
{
  if (text == NULL || !g_utf8_validate (text, -1, NULL) || g_utf8_strlen (text, -1) > most)
    return false;
  for (const char *p = text; *p != '\0'; p = g_utf8_find_next_char (p, NULL))
    {
      const gunichar c = g_utf8_get_char (p);
      /* U+FFFE and U+FFFF are UTF-8, but XML cannot hold them. */
      if ((g_unichar_iscntrl (c) && strchr (controls, *p) == NULL) || c == 0xFFFE || c == 0xFFFF)
        return false;
    }
  return true;
}

bool
dw_project_text_is_valid (const char *text)
{
  return is_text (text, DW_PROJECT_MAX_TEXT, "");
}

bool
dw_project_notes_are_valid (const char *notes)
{
  return is_text (notes, DW_PROJECT_MAX_NOTES, "\n\t");
}

/* The text may be part of what it replaces. */
static void
replace (char **at, const char *text)
{
  char *copy = g_strdup (text);
  g_free (*at);
  *at = copy;
}

void
dw_project_set_title (dw_project *project, const char *title)
{
  g_return_if_fail (dw_project_text_is_valid (title));
  replace (&project->title, title);
}

bool
dw_project_set_meeting (dw_project *project, dw_meeting_field field, const char *text)
{
  g_return_val_if_fail (project != NULL && (unsigned)field < DW_N_MEETING, false);

  if (!dw_project_text_is_valid (text))
    return false;
  replace (&project->meeting[field], text);
  return true;
}

bool
dw_project_set_notes (dw_project *project, const char *notes)
{
  g_return_val_if_fail (project != NULL, false);

  if (!dw_project_notes_are_valid (notes))
    return false;
  replace (&project->notes, notes);
  return true;
}

/* Letters and digits of the name in lower case, a hyphen for everything between them. */
static char *
id_stem (const char *name)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C");
  GString *stem = g_string_new (NULL);
  for (const char *p = ascii; *p != '\0' && stem->len < MAX_ID_STEM; p++)
    {
      const bool hyphen_fits = stem->len > 0 && stem->str[stem->len - 1] != '-';
      if (g_ascii_isalnum (*p))
        g_string_append_c (stem, g_ascii_tolower (*p));
      else if (hyphen_fits)
        g_string_append_c (stem, '-');
    }
  if (stem->len > 0 && stem->str[stem->len - 1] == '-')
    g_string_truncate (stem, stem->len - 1);
  if (stem->len == 0 || !g_ascii_isalpha (stem->str[0]))
    g_string_prepend (stem, stem->len == 0 ? "setup" : "s-");
  return g_string_free (stem, FALSE);
}

char *
dw_project_make_id (const dw_project *project, const char *name)
{
  g_return_val_if_fail (project != NULL && name != NULL, NULL);

  g_autofree char *stem = id_stem (name);
  char *id = g_strdup (stem);
  for (guint number = 2; dw_project_find_index (project, id) >= 0; number++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, number);
    }
  return id;
}

/* ---- setups ---- */

guint
dw_project_get_n_setups (const dw_project *project)
{
  return project->setups->len;
}

const dw_setup *
dw_project_get_setup (const dw_project *project, guint index)
{
  g_return_val_if_fail (index < project->setups->len, NULL);

  const shared_setup *shared = g_ptr_array_index (project->setups, index);
  return &shared->setup;
}

int
dw_project_find_index (const dw_project *project, const char *id)
{
  for (guint i = 0; i < project->setups->len; i++)
    if (g_strcmp0 (dw_project_get_setup (project, i)->id, id) == 0)
      return (int)i;
  return -1;
}

const dw_setup *
dw_project_find_setup (const dw_project *project, const char *id)
{
  const int index = dw_project_find_index (project, id);
  return index < 0 ? NULL : dw_project_get_setup (project, (guint)index);
}

bool
dw_project_set_fitted (dw_project *project, const char *id)
{
  const bool none = id == NULL || *id == '\0';
  if (!none && dw_project_find_index (project, id) < 0)
    return false;

  replace (&project->fitted, none ? "" : id);
  return true;
}

const dw_setup *
dw_project_get_fitted (const dw_project *project)
{
  return dw_project_find_setup (project, project->fitted);
}

dw_setup *
dw_project_edit_setup (dw_project *project, guint index)
{
  g_return_val_if_fail (index < project->setups->len, NULL);

  shared_setup *shared = g_ptr_array_index (project->setups, index);
  if (!g_atomic_ref_count_compare (&shared->refs, 1))
    {
      const dw_setup *old = &shared->setup;
      shared_setup *copy = shared_setup_new (old->id, old->name, &old->damper[DW_FRONT],
                                             &old->damper[DW_REAR]);
      replace (&copy->setup.notes, old->notes);
      project->setups->pdata[index] = copy;
      shared_setup_unref (shared);
      shared = copy;
    }
  return &shared->setup;
}

int
dw_project_add_setup (dw_project *project, const char *id, const char *name, const dw_damper *front,
                      const dw_damper *rear)
{
  g_return_val_if_fail (project != NULL && front != NULL && rear != NULL, -1);

  if (project->setups->len >= DW_PROJECT_MAX_SETUPS || !dw_project_text_is_valid (name))
    return -1;
  g_autofree char *own_id = id != NULL ? g_strdup (id) : dw_project_make_id (project, name);
  if (!dw_project_id_is_valid (own_id) || dw_project_find_index (project, own_id) >= 0)
    return -1;

  g_ptr_array_add (project->setups, shared_setup_new (own_id, name, front, rear));
  return (int)project->setups->len - 1;
}

void
dw_project_remove_setup (dw_project *project, guint index)
{
  g_return_if_fail (index < project->setups->len);

  if (g_str_equal (dw_project_get_setup (project, index)->id, project->fitted))
    dw_project_set_fitted (project, NULL);
  g_ptr_array_remove_index (project->setups, index);
}

void
dw_project_move_setup (dw_project *project, guint from, guint to)
{
  g_return_if_fail (from < project->setups->len && to < project->setups->len);

  g_ptr_array_insert (project->setups, (int)to, g_ptr_array_steal_index (project->setups, from));
}

bool
dw_project_rename_setup (dw_project *project, guint index, const char *name)
{
  if (!dw_project_text_is_valid (name))
    return false;

  g_autofree char *copy = g_strdup (name); /* the name may be the setup's own */
  replace (&dw_project_edit_setup (project, index)->name, copy);
  return true;
}

bool
dw_project_set_setup_notes (dw_project *project, guint index, const char *notes)
{
  g_return_val_if_fail (project != NULL && index < project->setups->len, false);

  if (!dw_project_notes_are_valid (notes))
    return false;
  g_autofree char *copy = g_strdup (notes); /* the notes may be the setup's own */
  replace (&dw_project_edit_setup (project, index)->notes, copy);
  return true;
}

/* ---- parts box ---- */

const dw_parts *
dw_project_get_parts (const dw_project *project)
{
  return project->parts;
}

dw_parts *
dw_project_edit_parts (dw_project *project)
{
  if (dw_parts_is_shared (project->parts))
    {
      dw_parts *copy = dw_parts_copy (project->parts);
      dw_parts_unref (project->parts);
      project->parts = copy;
    }
  return project->parts;
}

const char *
dw_axle_name (dw_axle axle)
{
  return axle == DW_FRONT ? "front" : "rear";
}
