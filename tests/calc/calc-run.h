/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file calc-run.h
 * Runs the built dampcalc as a user does, and keeps what came out.
 */
#pragma once

#include <glib.h>

#include "project/dw-project.h"
#include "test-support.h"

/** What a run left behind; the strings are owned. Clear with calc_result_clear(). */
typedef struct
{
  int status;
  char *out;
  char *err;
} calc_result;

/**
 * Run dampcalc. A program that cannot be started or dies of a signal ends the test.
 *
 * @param format  its arguments, as typed into a shell; {demo} and {data} stand for the folders
 *                demo/ and tests/data/ of the source
 */
calc_result calc_run (const char *format, ...) G_GNUC_PRINTF (1, 2);

/** The same in a locale, "de_DE.UTF-8". */
calc_result calc_run_in (const char *locale, const char *format, ...) G_GNUC_PRINTF (2, 3);

/** The same with standard output written to a file or device; out is empty. */
calc_result calc_run_to (const char *path, const char *format, ...) G_GNUC_PRINTF (2, 3);

void calc_result_clear (calc_result *result);

/** A run that must end with 0 and say nothing on standard error; its output, caller frees. */
char *calc_output (const char *format, ...) G_GNUC_PRINTF (1, 2);

/** The same, read as csv. Free with test_table_free(). */
test_table *calc_table (const char *format, ...) G_GNUC_PRINTF (1, 2);

/** Whether a field of a csv reads back to exactly this double. @param power  see dw_decimal_parse() */
bool calc_field_is (const test_table *table, size_t row, const char *column, int power,
                    double value);

/** Whether a page says something, wherever its lines are broken. */
bool calc_says (const char *page, const char *piece);

/** A path like "{demo}/x" with the folder put in; caller frees. */
char *calc_path (const char *text);

/** A project that must load, by such a path; the caller frees it. */
dw_project *calc_load (const char *name);

/** A new empty folder below the temporary one; calc_remove_folder() removes it and frees it. */
char *calc_make_folder (void);

/** Names in a folder; it ends the test when they are not as many. */
void calc_expect_files (const char *folder, int n);

void calc_remove_folder (char *folder);
