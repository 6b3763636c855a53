/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file reference-damper.h
 * The damper's equations solved a second way: written down anew from the physics, each unknown
 * by GSL's Brent root finder, one inside the other. Slow and plain; the judge of the fast one.
 */
#pragma once

#include "model/dw-damper.h"

typedef struct
{
  double pressure;      /* [Pa] dp */
  double flow_open;     /* [m3/s] */
  double flow_covered;  /* [m3/s] */
  double flow_leak;     /* [m3/s] */
  double film_pressure; /* [Pa] */
  double force;         /* [N] */
} reference_point;

/** One stroke at one speed. @return  whether every root was found */
bool reference_solve (const dw_damper *damper, double temperature, dw_stroke stroke, double speed,
                      reference_point *out);
