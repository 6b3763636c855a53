/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-reader.h"

#include <string.h>

#include "project/dw-damper-reader.h"
#include "project/dw-decimal.h"
#include "project/dw-element-reader.h"
#include "project/dw-project-schema.h"
#include "project/dw-xml-guard.h"

/* ---- root ---- */

static void
refuse_newer (const dw_element_reader *reader, xmlNode *root, const char *version)
{
  dw_element_report (reader, DW_ERROR, root, NULL,
                     "written by a newer version of this program: project version %.20s, this one "
                     "reads %d; nothing was changed",
                     version, DW_PROJECT_VERSION);
}

/* The namespace carries the version as well, for readers that know no attributes. */
static bool
check_namespace (const dw_element_reader *reader, xmlNode *root)
{
  const char *uri = root->ns != NULL ? (const char *)root->ns->href : "";
  int version = 0;
  if (g_str_equal (uri, DW_PROJECT_NAMESPACE) && g_str_equal (dw_element_name (root), "project"))
    return true;

  if (g_str_has_prefix (uri, DW_PROJECT_NAMESPACE_STEM)
      && dw_decimal_parse_int (uri + strlen (DW_PROJECT_NAMESPACE_STEM), &version)
      && version > DW_PROJECT_VERSION)
    refuse_newer (reader, root, uri + strlen (DW_PROJECT_NAMESPACE_STEM));
  else
    dw_element_report (reader, DW_ERROR, root, NULL,
                       "not a project: the outermost element must be <project> of the namespace %s",
                       DW_PROJECT_NAMESPACE);
  return false;
}

static bool
check_version (const dw_element_reader *reader, xmlNode *root)
{
  g_autofree char *text = dw_element_dup (root, "version");
  int version = 0;
  double any = 0.0;
  if (text == NULL)
    dw_element_report (reader, DW_ERROR, root, NULL, "<project> lacks version, allowed %d",
                       DW_PROJECT_VERSION);
  else if (dw_decimal_parse_int (text, &version) && version == DW_PROJECT_VERSION)
    return true;
  else if (dw_decimal_parse (text, 0, &any) && any > DW_PROJECT_VERSION)
    refuse_newer (reader, root, text);
  else
    dw_element_report (reader, DW_ERROR, root, "version",
                       "version \"%.60s\" is not known, allowed %d", text, DW_PROJECT_VERSION);
  return false;
}

/* ---- what stands in a project ---- */

static void
read_leaf (const dw_element_reader *reader, xmlNode *root, dw_form_id id, void *values)
{
  xmlNode *node = dw_element_child (root, dw_form_get (id)->element);
  if (node == NULL)
    return;
  dw_element_check_children (reader, node, NULL, 0);
  dw_element_read_fields (reader, node, id, values);
}

/* @p notes  what stands in <notes>; left alone when there is nothing, or it is not good */
static void
read_notes (const dw_element_reader *reader, xmlNode *parent, char **notes)
{
  xmlNode *node = dw_element_child (parent, dw_form_get (DW_FORM_NOTES)->element);
  if (node == NULL)
    return;
  dw_element_read_fields (reader, node, DW_FORM_NOTES, NULL);
  g_autofree char *text = dw_element_read_text (reader, node);
  const glong length = g_utf8_strlen (text, -1);
  if (length > DW_PROJECT_MAX_NOTES)
    dw_element_report (reader, DW_ERROR, node, NULL, "<notes> has %ld characters, allowed 0 to %d",
                       length, DW_PROJECT_MAX_NOTES);
  else if (!dw_project_notes_are_valid (text))
    dw_element_report (reader, DW_ERROR, node, NULL,
                       "<notes> holds a control character, allowed 0 to %d characters, of the "
                       "control characters line feed and tab only",
                       DW_PROJECT_MAX_NOTES);
  else
    {
      g_free (*notes);
      *notes = g_steal_pointer (&text);
    }
}

static void
read_speeds (const dw_element_reader *reader, xmlNode *root, dw_speeds *speeds)
{
  const guint n_errors = dw_findings_get_n_errors (reader->findings);
  read_leaf (reader, root, DW_FORM_SPEEDS, speeds);
  if (dw_findings_get_n_errors (reader->findings) == n_errors
      && !(speeds->low < speeds->middle && speeds->middle < speeds->high))
    dw_element_report (reader, DW_ERROR, dw_element_child (root, "speeds"), NULL,
                       "speeds do not rise: %g, %g, %g m/s, allowed low < middle < high",
                       speeds->low, speeds->middle, speeds->high);
}

static void
read_dampers (const dw_element_reader *reader, xmlNode *node, dw_damper *dampers)
{
  bool seen[DW_N_AXLES] = { false };
  bool guessing = false;
  for (xmlNode *child = dw_element_child (node, "damper"); child != NULL;
       child = dw_element_next (child))
    {
      int axle = DW_N_AXLES;
      dw_damper damper;
      dw_element_read_fields (reader, child, DW_FORM_DAMPER, &axle);
      dw_damper_read (reader, child, &damper);
      if (axle == DW_N_AXLES)
        guessing = true;
      else if (seen[axle])
        dw_element_report (reader, DW_ERROR, child, NULL,
                           "<damper axle=\"%s\"> stands in <setup> once more, allowed once",
                           dw_axle_name (axle));
      else
        {
          seen[axle] = true;
          dampers[axle] = damper;
        }
    }
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (!seen[axle] && !guessing)
      dw_element_report (reader, DW_ERROR, node, NULL, "<setup> lacks <damper axle=\"%s\">",
                         dw_axle_name (axle));
}

/* @p ids  of the setups before, each with its line */
static void
register_id (const dw_element_reader *reader, xmlNode *node, const char *id, GHashTable *ids)
{
  const int line = GPOINTER_TO_INT (g_hash_table_lookup (ids, id));
  if (line != 0 && *id != '\0')
    dw_element_report (reader, DW_ERROR, node, "id", "id \"%s\" is already that of line %d", id,
                       line);
  else
    g_hash_table_insert (ids, g_strdup (id),
                         GINT_TO_POINTER (dw_xml_source_get_line (reader->source, node)));
}

static void
read_setup (const dw_element_reader *reader, xmlNode *node, dw_project *project, GHashTable *ids)
{
  static const dw_child_rule rules[] = { { "damper", false, G_MAXUINT }, { "notes", false, 1 } };
  const guint n_errors = dw_findings_get_n_errors (reader->findings);
  dw_setup setup = { .id = NULL };
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (reader, node, DW_FORM_SETUP, &setup);
  /* "" stands for an id that could not be read: what is fitted may have meant it. */
  register_id (reader, node, setup.id != NULL ? setup.id : "", ids);
  read_dampers (reader, node, setup.damper);
  read_notes (reader, node, &setup.notes);

  if (dw_findings_get_n_errors (reader->findings) == n_errors)
    {
      const int index = dw_project_add_setup (project, setup.id,
                                              setup.name != NULL ? setup.name : setup.id,
                                              &setup.damper[DW_FRONT], &setup.damper[DW_REAR]);
      if (index >= 0 && setup.notes != NULL)
        dw_project_set_setup_notes (project, (guint)index, setup.notes);
    }
  g_free (setup.id);
  g_free (setup.name);
  g_free (setup.notes);
}

static void
read_setups (const dw_element_reader *reader, xmlNode *root, dw_project *project)
{
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (xmlNode *node = dw_element_child (root, "setup"); node != NULL;
       node = dw_element_next (node))
    read_setup (reader, node, project, ids);
  if (*project->fitted != '\0' && !g_hash_table_contains (ids, project->fitted)
      && !g_hash_table_contains (ids, ""))
    dw_element_report (
        reader, DW_ERROR, root, "fitted",
        "fitted \"%s\" names no setup of this project, allowed the id of one or \"\"",
        project->fitted);
}

static void
read_parts (const dw_element_reader *reader, xmlNode *node, dw_parts *parts)
{
  static const dw_child_rule rules[] = {
    { "drill", false, DW_PARTS_MAX },
    { "shim", false, DW_PARTS_MAX },
    { "oil", false, DW_PARTS_MAX },
    { "piston", false, DW_PARTS_MAX },
  };
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (reader, node, DW_FORM_PARTS, parts);
  for (xmlNode *child = dw_element_child (node, "drill"); child; child = dw_element_next (child))
    {
      dw_drill drill = { 0.0 };
      dw_element_check_children (reader, child, NULL, 0);
      dw_element_read_fields (reader, child, DW_FORM_DRILL, &drill);
      g_array_append_val (parts->drills, drill);
    }
  for (xmlNode *child = dw_element_child (node, "shim"); child; child = dw_element_next (child))
    {
      dw_shim shim = { .count = 0 };
      dw_shim_read (reader, child, &shim);
      g_array_append_val (parts->shims, shim);
    }
  for (xmlNode *child = dw_element_child (node, "oil"); child; child = dw_element_next (child))
    {
      dw_bottle bottle;
      dw_bottle_read (reader, child, &bottle);
      g_array_append_val (parts->oils, bottle);
    }
  for (xmlNode *child = dw_element_child (node, "piston"); child; child = dw_element_next (child))
    {
      dw_spare_piston spare = { .name = NULL };
      dw_spare_piston_read (reader, child, &spare);
      g_array_append_val (parts->pistons, spare); /* the box frees the name now */
    }
}

static void
read_project (const dw_element_reader *reader, xmlNode *root, dw_project *project)
{
  static const dw_child_rule rules[] = {
    { "conditions", false, 1 }, { "speeds", false, 1 }, { "car", false, 1 },
    { "meeting", false, 1 },    { "notes", false, 1 },  { "setup", false, DW_PROJECT_MAX_SETUPS },
    { "parts", false, 1 },
  };
  dw_element_check_children (reader, root, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (reader, root, DW_FORM_PROJECT, project);
  read_leaf (reader, root, DW_FORM_CONDITIONS, &project->conditions);
  read_speeds (reader, root, &project->speeds);
  read_leaf (reader, root, DW_FORM_CAR, &project->car);
  read_leaf (reader, root, DW_FORM_MEETING, project);
  read_notes (reader, root, &project->notes);
  read_setups (reader, root, project);
  xmlNode *parts = dw_element_child (root, "parts");
  if (parts != NULL)
    read_parts (reader, parts, dw_project_edit_parts (project));
}

/* Inside the guard. */
static dw_project *
read_guarded (const char *text, gsize length, dw_findings *findings)
{
  const guint n_errors = dw_findings_get_n_errors (findings);
  g_autoptr (dw_xml_source) source = dw_xml_source_parse (text, length, findings);
  if (source == NULL)
    return NULL;
  const dw_element_reader reader = { source, findings };
  xmlNode *root = xmlDocGetRootElement (dw_xml_source_get_doc (source));
  if (!check_namespace (&reader, root) || !check_version (&reader, root))
    return NULL;

  g_autoptr (dw_project) project = dw_project_new_empty ();
  read_project (&reader, root, project);
  /* The schema has the last word, but only when it has something to add. */
  if (dw_findings_get_n_errors (findings) == n_errors)
    dw_project_schema_check (source, findings);
  if (dw_findings_get_n_errors (findings) > n_errors)
    return NULL;
  return g_steal_pointer (&project);
}

dw_project *
dw_project_read_text (const char *text, gsize length, dw_findings *findings)
{
  g_return_val_if_fail (findings != NULL, NULL);

  dw_xml_guard guard;
  dw_xml_guard_enter (&guard);
  dw_project *project = read_guarded (text, length, findings);
  dw_xml_guard_leave (&guard);
  return project;
}
