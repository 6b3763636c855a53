/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-project-writer.h
 * From a project to the text of its file.
 *
 * Thread-safe, independent of the locale; equal projects give the same bytes.
 */
#pragma once

#include "project/dw-project.h"

G_BEGIN_DECLS

/**
 * Write a project as XML in UTF-8. Values are not checked: dw_project_save() does that.
 *
 * @param project  with valid texts
 * @return         caller unrefs
 */
GBytes *dw_project_write_text (const dw_project *project);

G_END_DECLS
