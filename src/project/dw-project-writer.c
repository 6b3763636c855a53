/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-writer.h"

#include <libxml/xmlwriter.h>

#include "project/dw-decimal.h"
#include "project/dw-field.h"
#include "project/dw-xml-guard.h"

/* The writer fails only when memory runs out, where GLib gives up as well. */
static void
must (int result)
{
  if (result < 0)
    g_error ("out of memory while writing XML");
}

static void
write_attribute (xmlTextWriter *writer, const char *name, const char *value)
{
  must (xmlTextWriterWriteAttribute (writer, (const xmlChar *)name, (const xmlChar *)value));
}

/* Whether a field of this value stands in the file at all. */
static bool
is_present (const dw_field *field, const char *base)
{
  if (field->optional && field->kind == DW_FIELD_TEXT)
    return **(char *const *)(const void *)(base + field->offset) != '\0';
  if (field->optional)
    return *(const bool *)(base + field->has);
  if (field->kind == DW_FIELD_FLAG)
    return *(const bool *)(base + field->offset);
  return true;
}

/* A char pointer to the struct: the offsets in the table count bytes. */
static void
write_field (xmlTextWriter *writer, const dw_field *field, const char *base)
{
  const void *at = base + field->offset;
  char buffer[DW_DECIMAL_SIZE];
  const char *value = buffer;

  switch (field->kind)
    {
    case DW_FIELD_NUMBER:
      dw_decimal_format (*(const double *)at, field->power, buffer);
      break;
    case DW_FIELD_COUNT:
      g_snprintf (buffer, sizeof buffer, "%d", *(const int *)at);
      break;
    case DW_FIELD_WORD:
      value = field->words[*(const int *)at];
      break;
    case DW_FIELD_FLAG:
      value = field->words[*(const bool *)at ? 1 : 0];
      break;
    case DW_FIELD_TEXT:
    case DW_FIELD_ID:
    case DW_FIELD_REFERENCE:
      value = *(char *const *)at;
      break;
    case DW_FIELD_VERSION:
      g_snprintf (buffer, sizeof buffer, "%d", DW_PROJECT_VERSION);
      break;
    }
  write_attribute (writer, field->name, value);
}

/* Begin an element and write its attributes from the struct at @p values. */
static void
begin (xmlTextWriter *writer, dw_form_id id, const void *values)
{
  const dw_form *form = dw_form_get (id);
  must (xmlTextWriterStartElement (writer, (const xmlChar *)form->element));
  if (id == DW_FORM_PROJECT)
    write_attribute (writer, "xmlns", DW_PROJECT_NAMESPACE);
  for (guint i = 0; i < form->n_fields; i++)
    if (is_present (&form->fields[i], values))
      write_field (writer, &form->fields[i], values);
}

static void
end (xmlTextWriter *writer)
{
  must (xmlTextWriterEndElement (writer));
}

static void
write_leaf (xmlTextWriter *writer, dw_form_id id, const void *values)
{
  begin (writer, id, values);
  end (writer);
}

/* A text is not indented: blanks in it are the user's. */
static void
write_notes (xmlTextWriter *writer, const char *notes)
{
  if (*notes == '\0')
    return;
  begin (writer, DW_FORM_NOTES, NULL);
  must (xmlTextWriterWriteString (writer, (const xmlChar *)notes));
  end (writer);
}

static bool
is_anything_said (char *const *meeting)
{
  for (int i = 0; i < DW_N_MEETING; i++)
    if (*meeting[i] != '\0')
      return true;
  return false;
}

/* @p values begins with the piston */
static void
write_piston (xmlTextWriter *writer, dw_form_id id, const void *values, const dw_piston *piston)
{
  begin (writer, id, values);
  for (int i = 0; i < piston->n_holes; i++)
    write_leaf (writer, DW_FORM_HOLES, &piston->holes[i]);
  end (writer);
}

/* The valve that the reader takes when none is given goes unsaid when it has nothing to cover. */
static bool
is_valve_needed (const dw_damper *damper)
{
  dw_damper plain = *damper;
  plain.valve = dw_damper_defaults ().valve;
  return dw_piston_has_covered (&damper->piston) || !dw_damper_equal (damper, &plain);
}

static void
write_valve (xmlTextWriter *writer, const dw_valve *valve)
{
  begin (writer, DW_FORM_VALVE, valve);
  for (int i = 0; i < valve->n_shims; i++)
    write_leaf (writer, DW_FORM_SHIM, &valve->shims[i]);
  end (writer);
}

/* @p nominal is followed by the measured and the blended form, for an oil as for a bottle. */
static void
write_oil (xmlTextWriter *writer, dw_form_id nominal, const void *values, const dw_oil *oil)
{
  begin (writer, nominal + oil->kind, values);
  if (oil->kind == DW_OIL_BLEND)
    for (int i = 0; i < oil->n_parts; i++)
      write_leaf (writer, DW_FORM_OIL_PART, &oil->parts[i]);
  end (writer);
}

static void
write_damper (xmlTextWriter *writer, dw_axle axle, const dw_damper *damper)
{
  begin (writer, DW_FORM_DAMPER, &axle);
  write_leaf (writer, DW_FORM_BODY, &damper->body);
  write_piston (writer, DW_FORM_PISTON, &damper->piston, &damper->piston);
  if (is_valve_needed (damper))
    write_valve (writer, &damper->valve);
  write_oil (writer, DW_FORM_OIL_NOMINAL, &damper->oil, &damper->oil);
  write_leaf (writer, damper->gas.kind == DW_GAS_VENTED ? DW_FORM_GAS_VENTED : DW_FORM_GAS_SEALED,
              &damper->gas);
  write_leaf (writer, DW_FORM_SEAL, damper);
  write_leaf (writer, DW_FORM_SPRING, &damper->spring);
  write_leaf (writer, DW_FORM_LINKAGE, damper);
  if (damper->stance.has_ride_height || damper->stance.has_droop)
    write_leaf (writer, DW_FORM_STANCE, &damper->stance);
  end (writer);
}

static void
write_setup (xmlTextWriter *writer, const dw_setup *setup)
{
  begin (writer, DW_FORM_SETUP, setup);
  for (dw_axle axle = DW_FRONT; axle < DW_N_AXLES; axle++)
    write_damper (writer, axle, &setup->damper[axle]);
  write_notes (writer, setup->notes);
  end (writer);
}

static void
write_parts (xmlTextWriter *writer, const dw_parts *parts)
{
  if (parts->drills->len + parts->shims->len + parts->oils->len + parts->pistons->len == 0)
    return;

  begin (writer, DW_FORM_PARTS, parts);
  for (guint i = 0; i < parts->drills->len; i++)
    write_leaf (writer, DW_FORM_DRILL, &g_array_index (parts->drills, dw_drill, i));
  for (guint i = 0; i < parts->shims->len; i++)
    write_leaf (writer, DW_FORM_SHIM, &g_array_index (parts->shims, dw_shim, i));
  for (guint i = 0; i < parts->oils->len; i++)
    {
      const dw_bottle *bottle = &g_array_index (parts->oils, dw_bottle, i);
      write_oil (writer, DW_FORM_BOTTLE_NOMINAL, bottle, &bottle->oil);
    }
  for (guint i = 0; i < parts->pistons->len; i++)
    {
      const dw_spare_piston *spare = &g_array_index (parts->pistons, dw_spare_piston, i);
      write_piston (writer, DW_FORM_SPARE_PISTON, spare, &spare->piston);
    }
  end (writer);
}

static void
write_project (xmlTextWriter *writer, const dw_project *project)
{
  begin (writer, DW_FORM_PROJECT, project);
  write_leaf (writer, DW_FORM_CONDITIONS, &project->conditions);
  write_leaf (writer, DW_FORM_SPEEDS, &project->speeds);
  if (project->car.has_sprung_mass[DW_FRONT] || project->car.has_sprung_mass[DW_REAR])
    write_leaf (writer, DW_FORM_CAR, &project->car);
  if (is_anything_said (project->meeting))
    write_leaf (writer, DW_FORM_MEETING, project);
  write_notes (writer, project->notes);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    write_setup (writer, dw_project_get_setup (project, i));
  write_parts (writer, dw_project_get_parts (project));
  end (writer);
}

GBytes *
dw_project_write_text (const dw_project *project)
{
  g_return_val_if_fail (project != NULL, NULL);

  dw_xml_guard guard;
  dw_xml_guard_enter (&guard);
  xmlBuffer *buffer = xmlBufferCreate ();
  xmlTextWriter *writer = xmlNewTextWriterMemory (buffer, 0);
  if (buffer == NULL || writer == NULL)
    must (-1);
  must (xmlTextWriterSetIndent (writer, 1));
  must (xmlTextWriterSetIndentString (writer, (const xmlChar *)"  "));
  must (xmlTextWriterStartDocument (writer, "1.0", "UTF-8", NULL));
  write_project (writer, project);
  must (xmlTextWriterEndDocument (writer));
  xmlFreeTextWriter (writer); /* flushes into the buffer */

  GBytes *text = g_bytes_new (xmlBufferContent (buffer), (gsize)xmlBufferLength (buffer));
  xmlBufferFree (buffer);
  dw_xml_guard_leave (&guard);
  return text;
}
