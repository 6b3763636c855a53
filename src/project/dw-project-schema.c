/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-schema.h"

#include <libxml/relaxng.h>
#include <string.h>

#include "project/dw-xml-guard.h"

/* Made from data/project.rng by embed-text.py. */
extern const unsigned char dw_project_schema_bytes[];
extern const unsigned int dw_project_schema_bytes_length;

typedef struct
{
  const dw_xml_source *source;
  dw_findings *findings;
  guint n;
} check_state;

const char *
dw_project_schema_get_text (gsize *length)
{
  *length = dw_project_schema_bytes_length;
  return (const char *)dw_project_schema_bytes;
}

/* The schema is part of the program: a fault in it is a bug, which its test finds. */
static gpointer
compile (G_GNUC_UNUSED gpointer data)
{
  gsize length = 0;
  const char *text = dw_project_schema_get_text (&length);
  xmlRelaxNGParserCtxt *context = xmlRelaxNGNewMemParserCtxt (text, (int)length);
  xmlRelaxNG *schema = xmlRelaxNGParse (context);
  xmlRelaxNGFreeParserCtxt (context);
  if (schema == NULL)
    g_error ("the schema of the project file cannot be compiled");
  return schema;
}

static void
on_error (void *data, dw_xml_error *error)
{
  check_state *state = data;
  const xmlNode *node = error->node;
  if (node != NULL && node->type != XML_ELEMENT_NODE)
    node = node->parent;
  /* Some breaches come without a node: then it is the content of the outermost element. */
  if (node == NULL || node->type != XML_ELEMENT_NODE)
    node = xmlDocGetRootElement (dw_xml_source_get_doc (state->source));
  g_autofree char *message = g_strdup (error->message != NULL ? error->message : "unknown error");
  dw_findings_add (state->findings, DW_ERROR, dw_xml_source_get_line (state->source, node),
                   (const char *)node->name, NULL, NULL, "against the schema: %s",
                   g_strchomp (message));
  state->n++;
}

void
dw_project_schema_check (const dw_xml_source *source, dw_findings *findings)
{
  static GOnce once = G_ONCE_INIT;
  xmlRelaxNG *schema = g_once (&once, compile, NULL);

  check_state state = { source, findings, 0 };
  xmlRelaxNGValidCtxt *context = xmlRelaxNGNewValidCtxt (schema);
  if (context == NULL)
    g_error ("out of memory while checking XML");
  xmlRelaxNGSetValidStructuredErrors (context, on_error, &state);
  const int result = xmlRelaxNGValidateDoc (context, dw_xml_source_get_doc (source));
  if (result != 0 && state.n == 0)
    dw_findings_add (findings, DW_ERROR, 0, NULL, NULL, NULL,
                     "against the schema, at a place that cannot be named");
  xmlRelaxNGFreeValidCtxt (context);
}
