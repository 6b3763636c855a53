/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-input.h
 * Projects and what is asked of them: loading with findings, choosing setups and axles.
 */
#pragma once

#include <glib.h>

#include "calc/dw-calc-arguments.h"
#include "model/dw-status.h"
#include "project/dw-finding.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

/** Axles from first to last. */
typedef struct
{
  dw_axle first;
  dw_axle last;
} dw_calc_axles;

/**
 * Read a project. Warnings are printed on standard error, errors are the message of @p error.
 *
 * @param error  DW_CALC_BAD_INPUT with a line for each finding, or G_FILE_ERROR
 * @return       caller frees; NULL on failure
 */
dw_project *dw_calc_input_load (const char *path, GError **error);

/**
 * One setup by its id.
 *
 * @param path   of the project, for the message
 * @param error  DW_CALC_BAD_INPUT, naming the ids that exist
 * @return       borrowed from @p project; NULL on failure
 */
const dw_setup *dw_calc_input_find (const dw_project *project, const char *path, const char *id,
                                    GError **error);

/**
 * Read the project that the first operand names, with the setup that --setup names or the fitted one.
 *
 * @param setup  set: borrowed from the project; NULL on failure
 * @param error  as dw_calc_input_load () and dw_calc_input_find (), also when no setup is named and
 *               none is fitted
 * @return       caller frees; NULL on failure
 */
dw_project *dw_calc_input_open (const dw_calc_arguments *arguments, const dw_setup **setup,
                                GError **error);

/**
 * The setup that --setup names, or all of them.
 *
 * @return  of const dw_setup *, borrowed from @p project; caller frees the array; NULL on failure
 */
GPtrArray *dw_calc_input_setups (const dw_project *project, const char *path,
                                 const dw_calc_arguments *arguments, GError **error);

/** The axle that --axle names, or both. */
gboolean dw_calc_input_axles (const dw_calc_arguments *arguments, dw_calc_axles *axles,
                              GError **error);

/**
 * What the model says against a damper of a project: "FILE: setup trial-1, rear: ...".
 *
 * @return  FALSE, with DW_CALC_BAD_INPUT
 */
gboolean dw_calc_input_refuse (const char *path, const dw_setup *setup, dw_axle axle,
                               const dw_error *finding, GError **error);

G_END_DECLS
