/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-status.h
 * How a call of the model, a study or the ride says that it failed.
 *
 * Plain values, no globals: any thread may use them.
 */
#pragma once

/* One list makes the codes and their texts, so they cannot drift apart. */
#define DW_STATUS_LIST(X)                                                                          \
  X (DW_OK, "success")                                                                             \
  X (DW_ERR_RANGE, "value outside its allowed range")                                              \
  X (DW_ERR_GEOMETRY, "parts do not fit into each other")                                          \
  X (DW_ERR_NO_CONVERGENCE, "solution did not settle")                                             \
  X (DW_ERR_CANCELLED, "stopped by the user")

#define DW_STATUS_ENUM(name, text) name,
typedef enum
{
  DW_STATUS_LIST (DW_STATUS_ENUM) DW_N_STATUS
} dw_status;
#undef DW_STATUS_ENUM

/** Where and why a call failed. Plain value, nothing to free. */
typedef struct
{
  dw_status code;
  int index;      /**< offending hole group, shim or row, -1 when none */
  char field[48]; /**< path of the input, "piston.holes.diameter" */
  char text[160]; /**< English sentence; the window translates by code */
} dw_error;

/** English text of a code; never NULL. */
const char *dw_status_text (dw_status code);

/** Fill @p err (may be NULL) and return @p code, so callers write `return dw_fail (...)`. */
dw_status dw_fail (dw_error *err, dw_status code, const char *field, int index, const char *fmt,
                   ...) __attribute__ ((format (printf, 5, 6)));
