/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file project-samples.h
 * Projects, files and folders that the tests of the project layer share.
 */
#pragma once

#include <glib.h>

#include "project/dw-finding.h"
#include "project/dw-project.h"
#include "test-support.h"

/** Names of the good files in tests/data/valid, NULL at the end. */
extern const char *const sample_valid_names[];

/** Any damper that dw_damper_check() accepts, with numbers of full precision. */
dw_damper sample_random_damper (test_random *random);

/** Any project that can be saved: up to 4 setups, odd characters, all kinds of parts. Caller frees. */
dw_project *sample_random_project (test_random *random);

/** The bytes of a file in tests/data; caller frees. */
char *sample_read (const char *folder, const char *name, gsize *length);

/** Read a text of one of the good files, or end the test with its findings. Caller frees. */
dw_project *sample_parse (const char *text, gsize length);

/** Whether any finding is an error whose message has this piece. */
bool sample_has_error (const dw_findings *findings, const char *piece);

/** A new empty folder below the temporary one; sample_remove_folder() frees the name. */
char *sample_make_folder (void);

/** Remove a folder of files and links, and free its name. */
void sample_remove_folder (char *folder);
