/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-output.h
 * Where results go: standard output, or a file that is replaced whole or not at all.
 *
 * Results are written as they are computed, so a long table takes no memory. A new file is
 * written beside the target and takes its place in dw_calc_output_close(); what is no regular
 * file (a device, a pipe) is written to directly.
 */
#pragma once

#include <glib.h>
#include <stdio.h>

G_BEGIN_DECLS

/** Opaque; end with dw_calc_output_close() or dw_calc_output_discard(). */
typedef struct dw_calc_output dw_calc_output;

/**
 * @param path   target; NULL = standard output
 * @param error  G_FILE_ERROR with the system's reason
 * @return       NULL on failure
 */
dw_calc_output *dw_calc_output_open (const char *path, GError **error);

/** Borrowed; for printing into. */
FILE *dw_calc_output_get_file (const dw_calc_output *output);

/** Whether something could not be written, so that going on is of no use. */
gboolean dw_calc_output_has_failed (const dw_calc_output *output);

/**
 * Put everything where it belongs; frees @p output.
 *
 * @return  FALSE with G_FILE_ERROR when it could not be written; the old file is untouched then
 */
gboolean dw_calc_output_close (dw_calc_output *output, GError **error);

/** Leave the target as it was; frees @p output. NULL is allowed. */
void dw_calc_output_discard (dw_calc_output *output);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_calc_output, dw_calc_output_discard)

G_END_DECLS
