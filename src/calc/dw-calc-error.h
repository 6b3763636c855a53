/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-error.h
 * How `dampcalc` ends, and what it says when that is not well.
 *
 * For one thread, as all of calc/.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Exit statuses; also the codes of DW_CALC_ERROR. */
typedef enum
{
  DW_CALC_GOOD = 0,
  DW_CALC_BAD_INPUT = 1,   /**< a file, or what is asked of it, cannot be computed */
  DW_CALC_WRONG_USAGE = 2, /**< a command line that cannot be understood */
  DW_CALC_IO = 3           /**< could not read or write */
} dw_calc_status;

#define DW_CALC_ERROR (dw_calc_error_quark ())

GQuark dw_calc_error_quark (void);

/** A wrong command line. @return  FALSE, so that callers write `return dw_calc_misused (...)` */
gboolean dw_calc_misused (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

/** A file's content. @return  FALSE */
gboolean dw_calc_refused (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

/** The exit status that an error stands for: its code, or DW_CALC_IO for any other domain. */
dw_calc_status dw_calc_error_get_status (const GError *error);

/**
 * What is printed for an error, with a line end.
 *
 * Wrong usage: one line that ends in where to look. Messages about a file begin with its name;
 * others with that of the program.
 *
 * @param command  NULL before one is known
 * @return         caller frees
 */
char *dw_calc_error_to_text (const GError *error, const char *command);

/** The same text without control characters and in good UTF-8; caller frees. */
char *dw_calc_printable (const char *text);

G_END_DECLS
