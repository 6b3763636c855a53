/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-project-reader.h
 * From the text of a project file to a project.
 *
 * Thread-safe, independent of the locale; touches neither files nor network.
 */
#pragma once

#include "project/dw-finding.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

/**
 * Read the text of a project file; all findings are collected, not only the first.
 *
 * @param text      need not end with a zero; may be NULL when @p length is 0
 * @param length    in bytes
 * @param findings  what was found is added here
 * @return          a new project, caller frees; NULL when there were errors
 */
dw_project *dw_project_read_text (const char *text, gsize length, dw_findings *findings);

G_END_DECLS
