/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-status.h
 * How a call of the model, a study or the ride says that it failed.
 *
 * Plain values, no globals: any thread may use them.
 */
#pragma once

#include <stdarg.h>

/* One list makes the codes and their texts, so they cannot drift apart. */
#define DW_STATUS_LIST(X)                                                                          \
  X (DW_OK, "success")                                                                             \
  X (DW_ERR_RANGE, "value outside its allowed range")                                              \
  X (DW_ERR_GEOMETRY, "parts do not fit into each other")                                          \
  X (DW_ERR_NO_CONVERGENCE, "solution did not settle")                                             \
  X (DW_ERR_NO_MEMORY, "out of memory")                                                            \
  X (DW_ERR_CANCELLED, "stopped by the user")

#define DW_STATUS_ENUM(name, text) name,
typedef enum
{
  DW_STATUS_LIST (DW_STATUS_ENUM) DW_N_STATUS
} dw_status;
#undef DW_STATUS_ENUM

#define DW_ERROR_NUMBERS 4 /**< most numbers in one sentence */

/**
 * Where and why a call failed. Plain value, nothing to free.
 *
 * The sentence is there twice: ready in English, and as its form with the numbers that belong in,
 * for who wants to say it in another language.
 */
typedef struct
{
  dw_status code;
  int index;                        /**< offending hole group, shim or row, -1 when none */
  char field[48];                   /**< path of the input, "piston.holes.diameter" */
  char text[160];                   /**< English sentence */
  const char *form;                 /**< printf's, of "%.6g" only; NULL when it takes others */
  double numbers[DW_ERROR_NUMBERS]; /**< in order, in the units that the form names [1] */
} dw_error;

/** English text of a code; never NULL. */
const char *dw_status_text (dw_status code);

/**
 * Fill @p err (may be NULL) and return @p code, so callers write `return dw_fail (...)`.
 *
 * @param fmt  lives as long as the program: a literal
 */
dw_status dw_fail (dw_error *err, dw_status code, const char *field, int index, const char *fmt,
                   ...) __attribute__ ((format (printf, 5, 6)));

/** The same with the arguments collected already. */
dw_status dw_fail_va (dw_error *err, dw_status code, const char *field, int index, const char *fmt,
                      va_list ap) __attribute__ ((format (printf, 5, 0)));
