/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-xml-source.h"

#include <libxml/SAX2.h>
#include <libxml/parser.h>
#include <string.h>

#include "project/dw-xml-guard.h"

typedef struct
{
  gsize offset; /* of the name in the text */
  gsize length;
  int line;
} attribute_place;

typedef struct
{
  int line;
  guint first_attribute;
  guint n_attributes;
} element_place;

struct dw_xml_source
{
  const char *text; /* borrowed */
  xmlDoc *doc;
  GArray *elements;   /* of element_place, in the order of their start tags */
  GArray *attributes; /* of attribute_place */
};

/* ---- places: a walk over a text that is known to be well-formed ---- */

typedef struct
{
  const char *at;
  const char *end;
  int line;
} scanner;

static bool
begins_with (const scanner *s, const char *what)
{
  const gsize length = strlen (what);
  return (gsize)(s->end - s->at) >= length && memcmp (s->at, what, length) == 0;
}

static void
advance (scanner *s)
{
  if (*s->at == '\n')
    s->line++;
  s->at++;
}

/* To behind the next @p what, or to the end. */
static void
skip_past (scanner *s, const char *what)
{
  while (s->at < s->end && !begins_with (s, what))
    advance (s);
  s->at = MIN (s->at + strlen (what), s->end);
}

static void
skip_while (scanner *s, const char *set, bool member)
{
  while (s->at < s->end && *s->at != '\0' && (strchr (set, *s->at) != NULL) == member)
    advance (s);
}

static void
scan_attribute (scanner *s, dw_xml_source *source)
{
  attribute_place place = { .offset = (gsize)(s->at - source->text), .line = s->line };
  skip_while (s, "= \t\r\n", false);
  place.length = (gsize)(s->at - source->text) - place.offset;
  g_array_append_val (source->attributes, place);

  skip_while (s, "= \t\r\n", true);
  if (s->at >= s->end)
    return;
  const char quote[] = { *s->at, '\0' };
  advance (s);
  skip_past (s, quote);
}

static void
scan_start_tag (scanner *s, dw_xml_source *source)
{
  element_place place = { .line = s->line, .first_attribute = source->attributes->len };
  skip_while (s, " \t\r\n/>", false);
  for (;;)
    {
      skip_while (s, " \t\r\n", true);
      if (s->at >= s->end || *s->at == '/' || *s->at == '>')
        break;
      scan_attribute (s, source);
    }
  place.n_attributes = source->attributes->len - place.first_attribute;
  g_array_append_val (source->elements, place);
}

static void
find_places (dw_xml_source *source, gsize length)
{
  scanner s = { source->text, source->text + length, 1 };
  while (s.at < s.end)
    {
      if (*s.at != '<')
        advance (&s);
      else if (begins_with (&s, "<!--"))
        {
          s.at += strlen ("<!--");
          skip_past (&s, "-->");
        }
      else if (begins_with (&s, "<![CDATA["))
        skip_past (&s, "]]>");
      else if (begins_with (&s, "<?"))
        skip_past (&s, "?>");
      else if (begins_with (&s, "</"))
        skip_past (&s, ">");
      else
        scan_start_tag (&s, source);
    }
}

/* Number the elements in the order of their start tags; not by recursion. */
static void
number_elements (xmlDoc *doc)
{
  guint n = 0;
  xmlNode *node = xmlDocGetRootElement (doc);
  while (node != NULL)
    {
      if (node->type == XML_ELEMENT_NODE)
        node->_private = GUINT_TO_POINTER (++n);
      if (node->type == XML_ELEMENT_NODE && node->children != NULL)
        {
          node = node->children;
          continue;
        }
      while (node != NULL && node->next == NULL)
        node = node->parent != NULL && node->parent->type == XML_ELEMENT_NODE ? node->parent : NULL;
      if (node != NULL)
        node = node->next;
    }
}

static const element_place *
place_of (const dw_xml_source *source, const xmlNode *node)
{
  const guint number = GPOINTER_TO_UINT (node->_private);
  if (number == 0 || number > source->elements->len)
    return NULL;
  return &g_array_index (source->elements, element_place, number - 1);
}

/* ---- parsing ---- */

typedef struct
{
  dw_findings *findings;
  bool failed;
} parse_state;

/* The first fatal error only: those that libxml2 reports after it are mostly its echo. */
static void
on_error (void *data, dw_xml_error *error)
{
  const xmlParserCtxt *context = data;
  parse_state *state = context->_private;
  if (state->failed)
    return;

  const bool fatal = error->level == XML_ERR_FATAL || error->level == XML_ERR_ERROR;
  state->failed = fatal;
  g_autofree char *message = g_strdup (error->message != NULL ? error->message : "unknown error");
  dw_findings_add (state->findings, fatal ? DW_ERROR : DW_WARNING, error->line, NULL, NULL, NULL,
                   "%s: %s", fatal ? "not well-formed XML" : "XML", g_strchomp (message));
}

/* Refuse and let libxml2 go no further. */
static void
stop (xmlParserCtxt *context, const char *message)
{
  parse_state *state = context->_private;
  if (!state->failed)
    dw_findings_add (state->findings, DW_ERROR, xmlSAX2GetLineNumber (context), NULL, NULL, NULL,
                     "%s", message);
  state->failed = true;
  xmlStopParser (context);
}

static void
on_doctype (void *data, G_GNUC_UNUSED const xmlChar *name, G_GNUC_UNUSED const xmlChar *public_id,
            G_GNUC_UNUSED const xmlChar *system_id)
{
  stop (data, "a document type declaration (DOCTYPE) is not accepted, nor are its entities");
}

static void
on_start_element (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri,
                  int n_namespaces, const xmlChar **namespaces, int n_attributes, int n_defaulted,
                  const xmlChar **attributes)
{
  const xmlParserCtxt *context = data;
  if (context->nodeNr >= DW_XML_MAX_DEPTH)
    stop (data, "elements are nested too deeply, allowed " G_STRINGIFY (DW_XML_MAX_DEPTH));
  else
    xmlSAX2StartElementNs (data, name, prefix, uri, n_namespaces, namespaces, n_attributes,
                           n_defaulted, attributes);
}

static xmlDoc *
parse (const char *text, gsize length, dw_findings *findings)
{
  parse_state state = { findings, false };
  xmlParserCtxt *context = xmlNewParserCtxt ();
  if (context == NULL)
    g_error ("out of memory while reading XML");
  context->_private = &state;
  context->sax->serror = on_error;
  context->sax->internalSubset = on_doctype;
  context->sax->startElementNs = on_start_element;

  xmlDoc *doc = xmlCtxtReadMemory (context, text, (int)length, NULL, NULL, XML_PARSE_NONET);
  if (state.failed)
    g_clear_pointer (&doc, xmlFreeDoc);
  else if (doc == NULL)
    dw_findings_add (findings, DW_ERROR, 0, NULL, NULL, NULL, "not well-formed XML");
  xmlFreeParserCtxt (context);
  return doc;
}

/* ---- before parsing ---- */

static int
line_at (const char *text, const char *at)
{
  int line = 1;
  for (const char *p = text; p < at; p++)
    if (*p == '\n')
      line++;
  return line;
}

/* libxml2 compares every attribute of an element with every other, which takes hours for a tag
 * of a few megabytes. A start tag holds no '<' and, outside quotes, one '=' for each attribute and
 * no '>' but at its end. Where a quote is missing, libxml2 leaves the tag at the next '<' too. */
static const char *
find_crowded_tag (const char *text, gsize length)
{
  const char *tag = NULL; /* that p is in */
  char quote = '\0';      /* that p is in */
  int n = 0;
  for (const char *p = text; p < text + length; p++)
    if (*p == '<')
      {
        /* comments, CDATA and the like are no tags */
        tag = p + 1 < text + length && strchr ("!?", p[1]) != NULL ? NULL : p;
        quote = '\0';
        n = 0;
      }
    else if (tag == NULL)
      continue;
    else if (quote != '\0')
      quote = *p == quote ? '\0' : quote;
    else if (*p == '"' || *p == '\'')
      quote = *p;
    else if (*p == '>')
      tag = NULL;
    else if (*p == '=' && ++n > DW_XML_MAX_ATTRIBUTES)
      return tag;
  return NULL;
}

static bool
is_acceptable (const char *text, gsize length, dw_findings *findings)
{
  if (length == 0)
    {
      dw_findings_add (findings, DW_ERROR, 1, NULL, NULL, NULL, "the file is empty");
      return false;
    }
  if (length > DW_XML_MAX_SIZE)
    {
      dw_findings_add (findings, DW_ERROR, 0, NULL, NULL, NULL,
                       "the file is too large for a project, allowed %d MiB",
                       DW_XML_MAX_SIZE / (1024 * 1024));
      return false;
    }

  const char *bad = NULL;
  if (!g_utf8_validate_len (text, length, &bad))
    {
      dw_findings_add (findings, DW_ERROR, line_at (text, bad), NULL, NULL, NULL,
                       "byte 0x%02X is not text in UTF-8", (unsigned)(unsigned char)*bad);
      return false;
    }

  const char *crowded = find_crowded_tag (text, length);
  if (crowded != NULL)
    dw_findings_add (findings, DW_ERROR, line_at (text, crowded), NULL, NULL, NULL,
                     "more than %d attributes in one element", DW_XML_MAX_ATTRIBUTES);
  return crowded == NULL;
}

/* The text is UTF-8; taking it for something else would garble the names in it. */
static bool
is_encoding_right (const xmlDoc *doc, dw_findings *findings)
{
  const char *encoding = (const char *)doc->encoding;
  if (encoding == NULL || g_ascii_strcasecmp (encoding, "UTF-8") == 0)
    return true;
  dw_findings_add (findings, DW_ERROR, 1, NULL, "encoding", encoding,
                   "encoding \"%.40s\" is not accepted, allowed UTF-8", encoding);
  return false;
}

dw_xml_source *
dw_xml_source_parse (const char *text, gsize length, dw_findings *findings)
{
  g_return_val_if_fail (text != NULL || length == 0, NULL);

  if (!is_acceptable (text, length, findings))
    return NULL;
  xmlDoc *doc = parse (text, length, findings);
  if (doc == NULL)
    return NULL;
  if (!is_encoding_right (doc, findings))
    {
      xmlFreeDoc (doc);
      return NULL;
    }

  dw_xml_source *source = g_new0 (dw_xml_source, 1);
  source->text = text;
  source->doc = doc;
  source->elements = g_array_new (FALSE, FALSE, sizeof (element_place));
  source->attributes = g_array_new (FALSE, FALSE, sizeof (attribute_place));
  find_places (source, length);
  number_elements (doc);
  return source;
}

void
dw_xml_source_free (dw_xml_source *source)
{
  if (source == NULL)
    return;
  xmlFreeDoc (source->doc);
  g_array_unref (source->elements);
  g_array_unref (source->attributes);
  g_free (source);
}

xmlDoc *
dw_xml_source_get_doc (const dw_xml_source *source)
{
  return source->doc;
}

int
dw_xml_source_get_line (const dw_xml_source *source, const xmlNode *node)
{
  const element_place *place = place_of (source, node);
  return place != NULL ? place->line : (int)xmlGetLineNo (node);
}

int
dw_xml_source_get_attribute_line (const dw_xml_source *source, const xmlNode *node,
                                  const char *attribute)
{
  const element_place *place = place_of (source, node);
  for (guint i = 0; place != NULL && i < place->n_attributes; i++)
    {
      const attribute_place *own = &g_array_index (source->attributes, attribute_place,
                                                   place->first_attribute + i);
      if (own->length == strlen (attribute)
          && memcmp (source->text + own->offset, attribute, own->length) == 0)
        return own->line;
    }
  return dw_xml_source_get_line (source, node);
}
