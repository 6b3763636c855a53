/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file study-dampers.h
 * Changes of a damper that the tests of the study layer share, one a row: what is done, and what
 * it is called.
 */
#pragma once

#include "model/dw-damper.h"
#include "study/dw-difference.h"

/** One change of the damper that study_damper() gives. */
typedef struct
{
  void (*change) (dw_damper *damper);
  dw_difference_kind kind;
  const char *path;
  double before; /**< [SI unit of the path] NaN = none */
  double after;  /**< [SI unit of the path] NaN = none */
  bool acts;
  const char *text; /**< of dw_difference_describe() */
} study_change;

/** Two open groups (4 x 1.5 mm, 2 x 1.2 mm), one covered, a stack of 1 x 0.15 and 2 x 0.1 mm. */
dw_damper study_damper (void);

/** Six open holes of 1.3 mm outside a shim that covers four of 1.1 mm and opens on rebound. */
dw_damper study_covered_damper (void);

/** Single changes, each of which must be one difference. @param n  set to their number */
const study_change *study_changes (int *n);
