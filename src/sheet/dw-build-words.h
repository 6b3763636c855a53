/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-build-words.h
 * One damper as a list of what it is built from, name and value, in the order of building.
 *
 * In the language of the process.
 */
#pragma once

#include <glib.h>

#include "model/dw-damper.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

typedef enum
{
  DW_BUILD_BODY,
  DW_BUILD_PISTON,
  DW_BUILD_OPEN_HOLES,
  DW_BUILD_COVERED_HOLES,
  DW_BUILD_STACK,
  DW_BUILD_SHIM,
  DW_BUILD_OIL,
  DW_BUILD_FILLING,
  DW_BUILD_GAS,
  DW_BUILD_SPRING,
  DW_BUILD_LINKAGE,
  DW_BUILD_RIDE_HEIGHT,
  DW_BUILD_DROOP,
  DW_N_BUILDS
} dw_build;

/** "Body", "Open holes". Never NULL. */
const char *dw_build_name (dw_build build);

/**
 * Whether a line is left to write on where nothing is known: what is measured on the finished damper
 * or the car. The others are then left out, unless the whole sheet is blank.
 */
bool dw_build_is_open (dw_build build);

/** "4 × 1.4 mm"; "" when there is nothing to tell. Caller frees. */
char *dw_build_value (dw_build build, const dw_damper *damper, dw_units units);

G_END_DECLS
