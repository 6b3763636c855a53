/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-damper-reader.h"

#include <string.h>

/* More than dw_damper_check() finds in a damper whose every number is in its range. */
#define MOST_MISFITS 64

static void
read_leaf (const dw_element_reader *reader, xmlNode *node, dw_form_id id, void *values)
{
  dw_element_check_children (reader, node, NULL, 0);
  dw_element_read_fields (reader, node, id, values);
}

/* An element that may be left out: all its attributes take their defaults then. */
static void
read_optional_leaf (const dw_element_reader *reader, xmlNode *parent, dw_form_id id, void *values)
{
  xmlNode *node = dw_element_child (parent, dw_form_get (id)->element);
  dw_form_set_defaults (id, values);
  if (node != NULL)
    read_leaf (reader, node, id, values);
}

/* ---- piston and valve ---- */

/* @p values begins with the piston */
static void
read_piston (const dw_element_reader *reader, xmlNode *node, dw_form_id id, void *values,
             dw_piston *piston)
{
  static const dw_child_rule rules[] = { { "holes", false, DW_MAX_HOLE_GROUPS } };
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (reader, node, id, values);
  piston->n_holes = 0;
  for (xmlNode *holes = dw_element_child (node, "holes"); holes != NULL;
       holes = dw_element_next (holes))
    read_leaf (reader, holes, DW_FORM_HOLES, &piston->holes[piston->n_holes++]);
}

void
dw_spare_piston_read (const dw_element_reader *reader, xmlNode *node, dw_spare_piston *spare)
{
  read_piston (reader, node, DW_FORM_SPARE_PISTON, spare, &spare->piston);
  if (spare->name == NULL)
    spare->name = g_strdup ("");
}

void
dw_shim_read (const dw_element_reader *reader, xmlNode *node, dw_shim *shim)
{
  read_leaf (reader, node, DW_FORM_SHIM, shim);
}

static void
read_valve (const dw_element_reader *reader, xmlNode *node, dw_valve *valve)
{
  static const dw_child_rule rules[] = { { "shim", false, DW_MAX_SHIMS } };
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (reader, node, DW_FORM_VALVE, valve);
  valve->n_shims = 0;
  for (xmlNode *shim = dw_element_child (node, "shim"); shim != NULL; shim = dw_element_next (shim))
    dw_shim_read (reader, shim, &valve->shims[valve->n_shims++]);
}

/* The valve may be left out only when there is nothing for it to cover. */
static void
read_optional_valve (const dw_element_reader *reader, xmlNode *parent, dw_damper *damper)
{
  xmlNode *node = dw_element_child (parent, "valve");
  if (node != NULL)
    {
      read_valve (reader, node, &damper->valve);
      return;
    }

  bool covered = false;
  for (int i = 0; i < damper->piston.n_holes; i++)
    covered |= damper->piston.holes[i].covered;
  if (covered)
    dw_element_report (reader, DW_ERROR, parent, NULL,
                       "<damper> lacks <valve>, which covered holes need");
}

/* ---- oil ---- */

static bool
has_any (xmlNode *node, const char *const *attributes)
{
  for (; *attributes != NULL; attributes++)
    if (dw_element_has (node, *attributes))
      return true;
  return false;
}

/* The one form that an <oil> takes; false, with a finding, when there is not exactly one. */
static bool
find_oil_kind (const dw_element_reader *reader, xmlNode *node, dw_oil_kind *kind)
{
  static const char *const nominal[] = { "viscosity-cst", NULL };
  static const char *const measured[] = { "t1-c",           "viscosity1-cst", "t2-c",
                                          "viscosity2-cst", "density-kg-m3",  NULL };
  const bool is_nominal = has_any (node, nominal);
  const bool is_measured = has_any (node, measured);
  const bool is_blend = dw_element_child (node, "part") != NULL;

  if (is_nominal + is_measured + is_blend != 1)
    {
      dw_element_report (reader, DW_ERROR, node, NULL,
                         "<oil> has %s, allowed exactly one of: viscosity-cst; two measured points "
                         "(t1-c, viscosity1-cst, t2-c, viscosity2-cst, density-kg-m3); two <part>",
                         is_nominal + is_measured + is_blend == 0 ? "no viscosity"
                                                                  : "more than one viscosity");
      return false;
    }
  *kind = is_nominal ? DW_OIL_NOMINAL : is_measured ? DW_OIL_MEASURED : DW_OIL_BLEND;
  return true;
}

static void
read_blend (const dw_element_reader *reader, xmlNode *node, dw_oil *oil)
{
  oil->n_parts = 0;
  for (xmlNode *part = dw_element_child (node, "part"); part != NULL; part = dw_element_next (part))
    read_leaf (reader, part, DW_FORM_OIL_PART, &oil->parts[oil->n_parts++]);
  if (oil->n_parts != DW_MAX_OIL_PARTS)
    dw_element_report (reader, DW_ERROR, node, NULL, "<oil> has %d <part>, allowed %d",
                       oil->n_parts, DW_MAX_OIL_PARTS);
}

/* @p values begins with the oil; @p nominal is followed by the measured and the blended form. */
static void
read_oil (const dw_element_reader *reader, xmlNode *node, dw_form_id nominal, void *values,
          dw_oil *oil)
{
  static const dw_child_rule rules[] = { { "part", false, DW_MAX_OIL_PARTS } };
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));
  if (!find_oil_kind (reader, node, &oil->kind))
    return;

  dw_element_read_fields (reader, node, nominal + oil->kind, values);
  if (oil->kind == DW_OIL_BLEND)
    read_blend (reader, node, oil);
  if (dw_element_has (node, "thinning-rate-per-s") != dw_element_has (node, "thinning-exponent"))
    dw_element_report (reader, DW_ERROR, node, NULL,
                       "<oil> has one of thinning-rate-per-s and thinning-exponent, allowed both "
                       "or neither");
}

/* ---- what the model finds ---- */

/* The @p index-th child of this name; NULL when there is none. */
static xmlNode *
nth_child (xmlNode *node, const char *name, int index)
{
  xmlNode *child = dw_element_child (node, name);
  while (child != NULL && index-- > 0)
    child = dw_element_next (child);
  return child;
}

static bool
is_repeated (const char *name)
{
  return g_str_equal (name, "holes") || g_str_equal (name, "shim") || g_str_equal (name, "part");
}

/* Follow "piston.holes.diameter" from <damper> as far as there are elements. A finding without
 * index is about all groups together, and stays at the element that holds them. */
static xmlNode *
follow_path (xmlNode *node, char **components, int index)
{
  for (; *components != NULL; components++)
    {
      if (is_repeated (*components) && index < 0)
        break;
      xmlNode *child = nth_child (node, *components, is_repeated (*components) ? index : 0);
      if (child == NULL)
        break;
      node = child;
    }
  return node;
}

/* The attribute that a path means; with several, as for measured points, the index-th. */
static const char *
find_attribute (xmlNode *node, const dw_error *misfit)
{
  const char *name = NULL;
  for (int id = 0; id < DW_N_FORMS; id++)
    {
      const dw_form *form = dw_form_get (id);
      int n = 0;
      for (guint i = 0; i < form->n_fields && g_str_equal (form->element, dw_element_name (node));
           i++)
        if (g_str_equal (dw_field_get_path (&form->fields[i]), misfit->field)
            && dw_element_has (node, form->fields[i].name) && n++ <= MAX (misfit->index, 0))
          name = form->fields[i].name;
    }
  return name;
}

/* @p top is what the first component of the paths is looked up in; with @p prefix only the
 * findings below it, whose element is then @p top itself. */
static void
report_misfits (const dw_element_reader *reader, xmlNode *top, const dw_damper *damper,
                const char *prefix)
{
  dw_error misfits[MOST_MISFITS];
  const size_t n = dw_damper_check (damper, misfits, MOST_MISFITS);
  for (size_t i = 0; i < MIN (n, MOST_MISFITS); i++)
    {
      const dw_error *misfit = &misfits[i];
      g_auto (GStrv) components = g_strsplit (misfit->field, ".", -1);
      if (prefix != NULL && g_strcmp0 (components[0], prefix) != 0)
        continue;

      xmlNode *node = follow_path (top, components + (prefix != NULL ? 1 : 0), misfit->index);
      const char *attribute = find_attribute (node, misfit);
      g_autofree char *value = attribute != NULL ? dw_element_dup (node, attribute) : NULL;
      if (value != NULL)
        dw_element_report (reader, DW_ERROR, node, attribute, "%s \"%s\": %s", attribute, value,
                           misfit->text);
      else
        dw_element_report (reader, DW_ERROR, node, NULL, "<%s>: %s", dw_element_name (node),
                           misfit->text);
    }
}

/* ---- whole things ---- */

void
dw_bottle_read (const dw_element_reader *reader, xmlNode *node, dw_bottle *bottle)
{
  const guint n_errors = dw_findings_get_n_errors (reader->findings);
  *bottle = (dw_bottle){ .oil = dw_damper_defaults ().oil };
  read_oil (reader, node, DW_FORM_BOTTLE_NOMINAL, bottle, &bottle->oil);
  if (dw_findings_get_n_errors (reader->findings) > n_errors)
    return;

  /* The model checks an oil as part of a damper: lend it one. */
  dw_damper damper = dw_damper_defaults ();
  damper.oil = bottle->oil;
  report_misfits (reader, node, &damper, "oil");
}

static void
read_gas (const dw_element_reader *reader, xmlNode *parent, dw_gas *gas)
{
  xmlNode *node = dw_element_child (parent, "gas");
  g_autofree char *kind = node != NULL ? dw_element_dup (node, "kind") : NULL;
  const bool vented = g_strcmp0 (kind, "vented") == 0;
  read_optional_leaf (reader, parent, vented ? DW_FORM_GAS_VENTED : DW_FORM_GAS_SEALED, gas);
}

void
dw_damper_read (const dw_element_reader *reader, xmlNode *node, dw_damper *damper)
{
  static const dw_child_rule rules[] = {
    { "body", true, 1 },    { "piston", true, 1 },   { "valve", false, 1 },
    { "oil", true, 1 },     { "gas", false, 1 },     { "seal", false, 1 },
    { "spring", false, 1 }, { "linkage", false, 1 }, { "stance", false, 1 },
  };
  const guint n_errors = dw_findings_get_n_errors (reader->findings);
  *damper = dw_damper_defaults ();
  damper->piston.n_holes = 0;
  dw_element_check_children (reader, node, rules, G_N_ELEMENTS (rules));

  read_optional_leaf (reader, node, DW_FORM_BODY, &damper->body);
  xmlNode *piston = dw_element_child (node, "piston");
  if (piston != NULL)
    read_piston (reader, piston, DW_FORM_PISTON, &damper->piston, &damper->piston);
  read_optional_valve (reader, node, damper);
  xmlNode *oil = dw_element_child (node, "oil");
  if (oil != NULL)
    read_oil (reader, oil, DW_FORM_OIL_NOMINAL, &damper->oil, &damper->oil);
  read_gas (reader, node, &damper->gas);
  read_optional_leaf (reader, node, DW_FORM_SEAL, damper);
  read_optional_leaf (reader, node, DW_FORM_SPRING, &damper->spring);
  read_optional_leaf (reader, node, DW_FORM_LINKAGE, damper);
  read_optional_leaf (reader, node, DW_FORM_STANCE, &damper->stance);

  if (dw_findings_get_n_errors (reader->findings) == n_errors)
    report_misfits (reader, node, damper, NULL);
}
