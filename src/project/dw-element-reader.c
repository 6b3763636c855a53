/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-element-reader.h"

#include <math.h>
#include <string.h>

#include "project/dw-decimal.h"
#include "project/dw-project.h"

/* Bytes of a value that a message quotes. */
#define MOST_QUOTED 60

const char *
dw_element_name (const xmlNode *node)
{
  return (const char *)node->name;
}

/* Outside any namespace, as all of this format's attributes are. */
static xmlAttr *
find_attribute (xmlNode *node, const char *name)
{
  return xmlHasNsProp (node, (const xmlChar *)name, NULL);
}

bool
dw_element_has (xmlNode *node, const char *attribute)
{
  return find_attribute (node, attribute) != NULL;
}

char *
dw_element_dup (xmlNode *node, const char *attribute)
{
  xmlChar *value = xmlGetNoNsProp (node, (const xmlChar *)attribute);
  if (value == NULL)
    return NULL;
  char *copy = g_strdup ((const char *)value);
  xmlFree (value);
  return copy;
}

void
dw_element_report (const dw_element_reader *reader, dw_severity severity, xmlNode *node,
                   const char *attribute, const char *format, ...)
{
  va_list args;
  va_start (args, format);
  g_autofree char *message = g_strdup_vprintf (format, args);
  va_end (args);

  g_autofree char *value = attribute != NULL ? dw_element_dup (node, attribute) : NULL;
  const int line = attribute != NULL
                       ? dw_xml_source_get_attribute_line (reader->source, node, attribute)
                       : dw_xml_source_get_line (reader->source, node);
  dw_findings_add (reader->findings, severity, line, dw_element_name (node), attribute, value, "%s",
                   message);
}

/* ---- attributes ---- */

/* The value as a message shows it; caller frees. */
static char *
quote (const char *value)
{
  const gsize length = strlen (value);
  if (length <= MOST_QUOTED)
    return g_strdup_printf ("\"%s\"", value);
  const char *cut = g_utf8_find_prev_char (value, value + MOST_QUOTED + 1);
  return g_strdup_printf ("\"%.*s...\"", (int)(cut - value), value);
}

/* @p what says what the value is not; the allowed range follows. */
static void
refuse (const dw_element_reader *reader, xmlNode *node, const dw_field *field, const char *value,
        const char *what)
{
  g_autofree char *quoted = quote (value);
  g_autofree char *range = dw_field_range_text (field);
  dw_element_report (reader, DW_ERROR, node, field->name, "%s %s %s %s", field->name, quoted, what,
                     range);
}

static void
read_number (const dw_element_reader *reader, xmlNode *node, const dw_field *field,
             const char *value, char *base)
{
  double number = NAN;
  if (!dw_decimal_parse (value, field->power, &number))
    refuse (reader, node, field, value, "is not a number with a decimal point; allowed range");
  else if (!dw_limit_holds (field->limit, number))
    refuse (reader, node, field, value, "is outside the allowed range");
  else
    *(double *)(void *)(base + field->offset) = number;
  if (field->optional)
    *(bool *)(base + field->has) = true;
}

static void
read_count (const dw_element_reader *reader, xmlNode *node, const dw_field *field,
            const char *value, char *base)
{
  int number = 0;
  double any = NAN;
  const bool is_whole = dw_decimal_parse_int (value, &number);
  /* Too large for an int is a matter of range as well. */
  const bool is_huge = !is_whole && dw_decimal_parse (value, 0, &any) && any == floor (any)
                       && !dw_limit_holds (field->limit, any);
  if (!is_whole && !is_huge)
    refuse (reader, node, field, value, "is not a whole number; allowed range");
  else if (is_huge || !dw_limit_holds (field->limit, number))
    refuse (reader, node, field, value, "is outside the allowed range");
  else
    *(int *)(void *)(base + field->offset) = number;
}

/* Index of a field's word, -1 for any other. */
static int
find_word (const dw_field *field, const char *value)
{
  for (int i = 0; field->words[i] != NULL; i++)
    if (g_str_equal (field->words[i], value))
      return i;
  return -1;
}

static void
read_word (const dw_element_reader *reader, xmlNode *node, const dw_field *field, const char *value,
           char *base)
{
  const int index = find_word (field, value);
  if (index < 0)
    refuse (reader, node, field, value, "is not");
  else if (field->kind == DW_FIELD_FLAG)
    *(bool *)(base + field->offset) = index == 1;
  else
    *(int *)(void *)(base + field->offset) = index;
}

static void
read_text (const dw_element_reader *reader, xmlNode *node, const dw_field *field, const char *value,
           char *base)
{
  const bool is_id = field->kind == DW_FIELD_ID
                     || (field->kind == DW_FIELD_REFERENCE && *value != '\0');
  g_autofree char *quoted = quote (value);
  if (is_id && !dw_project_id_is_valid (value))
    dw_element_report (reader, DW_ERROR, node, field->name,
                       "%s %s is not an id, allowed 1 to %d letters, digits, '.', '-', '_', "
                       "beginning with a letter or '_'",
                       field->name, quoted, DW_PROJECT_MAX_ID);
  else if (!dw_project_text_is_valid (value))
    dw_element_report (reader, DW_ERROR, node, field->name,
                       "%s %s is too long or holds a control character, allowed 0 to %d characters",
                       field->name, quoted, DW_PROJECT_MAX_TEXT);
  else
    {
      char **const at = (char **)(void *)(base + field->offset);
      g_free (*at);
      *at = g_strdup (value);
    }
}

static void
read_value (const dw_element_reader *reader, xmlNode *node, const dw_field *field,
            const char *value, char *base)
{
  switch (field->kind)
    {
    case DW_FIELD_NUMBER:
      read_number (reader, node, field, value, base);
      break;
    case DW_FIELD_COUNT:
      read_count (reader, node, field, value, base);
      break;
    case DW_FIELD_WORD:
    case DW_FIELD_FLAG:
      read_word (reader, node, field, value, base);
      break;
    case DW_FIELD_TEXT:
    case DW_FIELD_ID:
    case DW_FIELD_REFERENCE:
      read_text (reader, node, field, value, base);
      break;
    case DW_FIELD_VERSION: /* the caller has looked at it before all else */
      break;
    }
}

static void
report_missing (const dw_element_reader *reader, xmlNode *node, const dw_field *field)
{
  g_autofree char *range = field->kind == DW_FIELD_ID ? g_strdup ("an id")
                                                      : dw_field_range_text (field);
  dw_element_report (reader, DW_ERROR, node, NULL, "<%s> lacks %s, allowed %s",
                     dw_element_name (node), field->name, range);
}

/* Report and take out the attributes that the form does not know. */
static void
drop_unknown_attributes (const dw_element_reader *reader, xmlNode *node, const dw_form *form)
{
  xmlAttr *next = NULL;
  for (xmlAttr *attribute = node->properties; attribute != NULL; attribute = next)
    {
      next = attribute->next;
      const char *name = (const char *)attribute->name;
      if (attribute->ns == NULL && dw_form_find (form, name) != NULL)
        continue;

      const char *prefix = attribute->ns != NULL ? (const char *)attribute->ns->prefix : NULL;
      g_autofree char *full = prefix != NULL ? g_strdup_printf ("%s:%s", prefix, name)
                                             : g_strdup (name);
      xmlChar *value = xmlNodeListGetString (node->doc, attribute->children, 1);
      dw_findings_add (reader->findings, DW_WARNING,
                       dw_xml_source_get_attribute_line (reader->source, node, full),
                       dw_element_name (node), full, (const char *)value,
                       "attribute %.60s is not known in <%s> and is left out", full,
                       dw_element_name (node));
      xmlFree (value);
      xmlRemoveProp (attribute);
    }
}

void
dw_element_read_fields (const dw_element_reader *reader, xmlNode *node, dw_form_id id, void *values)
{
  const dw_form *form = dw_form_get (id);
  drop_unknown_attributes (reader, node, form);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      g_autofree char *value = dw_element_dup (node, field->name);
      if (value != NULL)
        read_value (reader, node, field, value, values);
      else if (!dw_field_set_default (field, values))
        report_missing (reader, node, field);
    }
}

/* ---- children ---- */

static const dw_child_rule *
find_rule (const xmlNode *node, const dw_child_rule *rules, guint n_rules)
{
  const char *uri = node->ns != NULL ? (const char *)node->ns->href : NULL;
  if (g_strcmp0 (uri, DW_PROJECT_NAMESPACE) != 0)
    return NULL;
  for (guint i = 0; i < n_rules; i++)
    if (g_str_equal (rules[i].name, dw_element_name (node)))
      return &rules[i];
  return NULL;
}

static void
take_out (xmlNode *node)
{
  xmlUnlinkNode (node);
  xmlFreeNode (node);
}

static void
drop_unknown_element (const dw_element_reader *reader, xmlNode *node)
{
  const char *uri = node->ns != NULL ? (const char *)node->ns->href : NULL;
  const char *name = dw_element_name (node);
  const char *parent = dw_element_name (node->parent);
  if (g_strcmp0 (uri, DW_PROJECT_NAMESPACE) != 0)
    dw_element_report (reader, DW_WARNING, node, NULL, "<%.60s> of another namespace is left out",
                       name);
  else if (dw_form_is_element (name))
    dw_element_report (reader, DW_WARNING, node, NULL,
                       "<%s> does not belong in <%s> and is left out", name, parent);
  else
    dw_element_report (reader, DW_WARNING, node, NULL,
                       "element <%.60s> is not known and is left out", name);
  take_out (node);
}

/* libxml2 gives a text the line on which it ends, other content none; people look where a text
 * begins, or at the element that holds it. */
static int
first_line (const dw_element_reader *reader, const xmlNode *node, const char *text)
{
  if (node->type != XML_TEXT_NODE)
    return dw_xml_source_get_line (reader->source, node->parent);

  int line = (int)xmlGetLineNo (node);
  for (const char *p = text + strspn (text, " \t\r\n"); *p != '\0'; p++)
    if (*p == '\n')
      line--;
  return MAX (line, 1);
}

/* Text, or a reference to an entity; blanks between elements are not worth a word. */
static void
drop_text (const dw_element_reader *reader, xmlNode *node)
{
  if (!xmlIsBlankNode (node))
    {
      xmlChar *text = xmlNodeGetContent (node);
      const char *parent = dw_element_name (node->parent);
      const int line = first_line (reader, node, text != NULL ? (const char *)text : "");
      g_autofree char *shown = quote (text != NULL ? g_strstrip ((char *)text) : "");
      dw_findings_add (reader->findings, DW_WARNING, line, parent, NULL, shown,
                       "text %s in <%s> is left out", shown, parent);
      xmlFree (text);
    }
  take_out (node);
}

static void
check_excess (const dw_element_reader *reader, xmlNode *node, const dw_child_rule *rule, guint n)
{
  const char *name = dw_element_name (node);
  const char *parent = dw_element_name (node->parent);
  if (rule->most == 1)
    dw_element_report (reader, DW_ERROR, node, NULL, "<%s> stands in <%s> once more, allowed once",
                       name, parent);
  else if (n == rule->most + 1)
    dw_element_report (reader, DW_ERROR, node, NULL, "too many <%s> in <%s>, allowed %u", name,
                       parent, rule->most);
  take_out (node);
}

void
dw_element_check_children (const dw_element_reader *reader, xmlNode *node,
                           const dw_child_rule *rules, guint n_rules)
{
  guint counts[16] = { 0 };
  g_assert (n_rules <= G_N_ELEMENTS (counts));

  xmlNode *next = NULL;
  for (xmlNode *child = node->children; child != NULL; child = next)
    {
      next = child->next;
      if (child->type == XML_COMMENT_NODE || child->type == XML_PI_NODE)
        continue;
      if (child->type != XML_ELEMENT_NODE)
        {
          drop_text (reader, child);
          continue;
        }
      const dw_child_rule *rule = find_rule (child, rules, n_rules);
      if (rule == NULL)
        drop_unknown_element (reader, child);
      else if (++counts[rule - rules] > rule->most)
        check_excess (reader, child, rule, counts[rule - rules]);
    }

  for (guint i = 0; i < n_rules; i++)
    if (rules[i].required && counts[i] == 0)
      dw_element_report (reader, DW_ERROR, node, NULL, "<%s> lacks <%s>", dw_element_name (node),
                         rules[i].name);
}

char *
dw_element_read_text (const dw_element_reader *reader, xmlNode *node)
{
  GString *text = g_string_new (NULL);
  xmlNode *next = NULL;
  for (xmlNode *child = node->children; child != NULL; child = next)
    {
      next = child->next;
      if (child->type == XML_TEXT_NODE || child->type == XML_CDATA_SECTION_NODE)
        g_string_append (text, (const char *)child->content);
      else if (child->type == XML_ELEMENT_NODE)
        drop_unknown_element (reader, child);
    }
  return g_string_free (text, FALSE);
}

/* From @p node on: the first element of this name. Children of other names are gone or known. */
static xmlNode *
find_from (xmlNode *node, const char *name)
{
  for (; node != NULL; node = node->next)
    if (node->type == XML_ELEMENT_NODE && g_str_equal (dw_element_name (node), name))
      return node;
  return NULL;
}

xmlNode *
dw_element_child (const xmlNode *node, const char *name)
{
  return find_from (node->children, name);
}

xmlNode *
dw_element_next (const xmlNode *node)
{
  return find_from (node->next, dw_element_name (node));
}
