/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-project-file.h
 * Projects on disk.
 *
 * Thread-safe: any number of threads may load and save, each its own project.
 */
#pragma once

#include "project/dw-finding.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

#define DW_PROJECT_ERROR (dw_project_error_quark ())

typedef enum
{
  DW_PROJECT_ERROR_CONTENT /**< the project holds something that no file may hold */
} dw_project_error;

GQuark dw_project_error_quark (void);

/**
 * Read a project file.
 *
 * @param path      in the file system's encoding
 * @param findings  everything that was found in the content, warnings included, is added here
 * @param error     set when the file could not be read (G_FILE_ERROR)
 * @return          a new project, caller frees; NULL with @p error set when the file could not
 *                  be read, NULL without it when @p findings has errors
 */
dw_project *dw_project_load (const char *path, dw_findings *findings, GError **error);

/**
 * Write a project file, all or nothing.
 *
 * The new content is complete on disk before it takes the old one's place; on
 * failure the old file is untouched. Before anything is written the text is
 * read back, so a file that would later be refused is never made. A symbolic
 * link is followed, not replaced; the permissions of an existing file are kept.
 *
 * @param error  G_FILE_ERROR with the system's reason, or DW_PROJECT_ERROR_CONTENT
 * @return       whether the file holds the project now
 */
gboolean dw_project_save (const dw_project *project, const char *path, GError **error);

G_END_DECLS
