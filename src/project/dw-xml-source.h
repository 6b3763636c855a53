/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-xml-source.h
 * A project file as a tree, and where everything in it stands.
 *
 * libxml2 counts an element's line at the end of its start tag and an
 * attribute's not at all; here both are found in the text itself, so that a
 * message names the line to look at. One source belongs to one thread.
 */
#pragma once

#include <glib.h>
#include <libxml/tree.h>

#include "project/dw-finding.h"

G_BEGIN_DECLS

#define DW_XML_MAX_SIZE       (16 * 1024 * 1024) /**< bytes of a file */
#define DW_XML_MAX_DEPTH      32                 /**< elements inside one another */
#define DW_XML_MAX_ATTRIBUTES 200                /**< of one element */

/** Opaque. Free with dw_xml_source_free(). */
typedef struct dw_xml_source dw_xml_source;

/**
 * Parse a text. No DTD, no entities but the five built-in ones, no files, no network.
 *
 * Call it, and use the source, inside dw_xml_guard_enter() and dw_xml_guard_leave().
 *
 * @param text      borrowed for as long as the source lives; need not end with a zero
 * @param length    in bytes
 * @param findings  what keeps the text from being well-formed is added here
 * @return          caller frees; NULL when there was an error
 */
dw_xml_source *dw_xml_source_parse (const char *text, gsize length, dw_findings *findings);

/** NULL is allowed. */
void dw_xml_source_free (dw_xml_source *source);

/** The tree, borrowed. Nodes may be taken out; their lines stay known as long as they live. */
xmlDoc *dw_xml_source_get_doc (const dw_xml_source *source);

/** Line of an element's start tag. @param node  of this source */
int dw_xml_source_get_line (const dw_xml_source *source, const xmlNode *node);

/**
 * Line of an attribute.
 *
 * @param attribute  its name as written, with the prefix
 * @return           the element's line when it has no such attribute
 */
int dw_xml_source_get_attribute_line (const dw_xml_source *source, const xmlNode *node,
                                      const char *attribute);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_xml_source, dw_xml_source_free)

G_END_DECLS
