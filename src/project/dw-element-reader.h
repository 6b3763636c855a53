/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-element-reader.h
 * Reading one element of a project file by the table in dw-field.h.
 *
 * Whatever is not known is reported as a warning and taken out of the tree,
 * so that the schema sees what was understood. One thread at a time.
 */
#pragma once

#include <libxml/tree.h>

#include "project/dw-field.h"
#include "project/dw-finding.h"
#include "project/dw-xml-source.h"

G_BEGIN_DECLS

/** What the functions here need to know. Both pointers are borrowed. */
typedef struct
{
  dw_xml_source *source;
  dw_findings *findings;
} dw_element_reader;

/** How often an element may stand in another. */
typedef struct
{
  const char *name;
  bool required;
  guint most; /**< 1 or more */
} dw_child_rule;

/**
 * Report something about an element or one of its attributes.
 *
 * @param attribute  NULL for the element as a whole; its value is looked up
 */
void dw_element_report (const dw_element_reader *reader, dw_severity severity, xmlNode *node,
                        const char *attribute, const char *format, ...) G_GNUC_PRINTF (5, 6);

/**
 * Read the attributes of an element into a struct, defaults for those left out.
 *
 * A text that is left out leaves its pointer alone, a number that is marked
 * optional its own value; what is not good is reported and leaves the struct's
 * value alone, too.
 *
 * @param values  the struct that the form belongs to; texts in it are NULL or owned
 */
void dw_element_read_fields (const dw_element_reader *reader, xmlNode *node, dw_form_id id,
                             void *values);

/**
 * Keep the children that the rules know, report everything else.
 *
 * Those in excess are taken out, too.
 */
void dw_element_check_children (const dw_element_reader *reader, xmlNode *node,
                                const dw_child_rule *rules, guint n_rules);

/**
 * What stands in an element that holds text, blanks and line feeds included; caller frees.
 *
 * Elements in it are reported and taken out, comments are passed over.
 */
char *dw_element_read_text (const dw_element_reader *reader, xmlNode *node);

/** The first child of this name, NULL for none. */
xmlNode *dw_element_child (const xmlNode *node, const char *name);

/** The next sibling of the same name, NULL for none. */
xmlNode *dw_element_next (const xmlNode *node);

/** The name of an element. Borrowed. */
const char *dw_element_name (const xmlNode *node);

bool dw_element_has (xmlNode *node, const char *attribute);

/** Value of an attribute, NULL when it is not there; caller frees. */
char *dw_element_dup (xmlNode *node, const char *attribute);

G_END_DECLS
