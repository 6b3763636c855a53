/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-project-schema.h
 * The RELAX NG schema of the project file, as it was when the program was built.
 *
 * Thread-safe: the schema is compiled once and only read afterwards.
 */
#pragma once

#include "project/dw-finding.h"
#include "project/dw-xml-source.h"

G_BEGIN_DECLS

/** The bytes of data/project.rng. Static storage. */
const char *dw_project_schema_get_text (gsize *length);

/**
 * Check a document. Call it inside dw_xml_guard_enter() and dw_xml_guard_leave().
 *
 * @param findings  every breach of the schema is added here, as an error
 */
void dw_project_schema_check (const dw_xml_source *source, dw_findings *findings);

G_END_DECLS
