/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-spread.h
 * How far a damper that is built may be from the one that was meant, and left from right.
 *
 * Every input is taken as equally likely anywhere within its limits and independent of the others;
 * each hole is an input of its own. First order: the force is taken as linear in each input over
 * one standard deviation about the middle of its limits, and the variances add. A hole's limits
 * are those of ISO 286-1, zone H: never smaller than the drill, up to a standard tolerance larger.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "model/dw-force.h"

/** Most speeds of one call. */
#define DW_SPREAD_SPEEDS 64

/** Limits of each input; 0 = exact. */
typedef struct
{
  int hole_grade;          /**< standard tolerance grade IT of drilled holes, 6..13; 0 = none */
  double hole_error;       /**< [m] +-, besides the grade: the user's own drill and hand */
  unsigned exact_groups;   /**< a bit for each group of holes that is as it is: measured, say */
  double piston_thickness; /**< [m] +- */
  double clearance;        /**< [m] +-, radial; a clearance of 0 stays 0 */
  double shim_thickness;   /**< [1] +- part; all leaves alike, as cut from one sheet */
  double oil;              /**< [1] +- part of the viscosity */
  double temperature;      /**< [K] +- of the oil */
} dw_spread_limits;

/** One stroke at one speed. */
typedef struct
{
  double nominal;        /**< [N] of the damper as given */
  double mean;           /**< [N] with every input in the middle of its limits */
  double deviation;      /**< [N] standard deviation of one damper */
  double pair_deviation; /**< [N] of left minus right: same oil, same temperature */
} dw_spread_point;

/**
 * A careful hand with a drill and bought parts: H12 (IT12 of ISO 286-1), piston thickness to
 * ISO 2768-1 fine (0.05 mm), clearance 0.01 mm, shim 5 %, bottle 5 %, 2 K. The last four are
 * common practice, no source.
 */
dw_spread_limits dw_spread_limits_defaults (void);

/**
 * Spread of the force at some speeds.
 *
 * Where an input at its upper end makes a damper that cannot be (a hole cuts the shim's ring), the
 * slope is taken on the other side alone.
 *
 * @param temperature  [degC] of the oil
 * @param speeds       [m/s] n of them, rising, 0..10
 * @param n            at most DW_SPREAD_SPEEDS
 * @param out          n points, set on success only
 * @return DW_OK, or what dw_force_model_make() or dw_force_curve() found of the damper as given
 */
dw_status dw_spread_make (const dw_damper *damper, double temperature,
                          const dw_spread_limits *limits, dw_stroke stroke, const double *speeds,
                          size_t n, dw_spread_point *out, dw_error *err);

/** [N] Two standard deviations below the mean, or the nominal force where that is lower. */
double dw_spread_low (const dw_spread_point *point);

/** [N] Two standard deviations above the mean, or the nominal force where that is higher. */
double dw_spread_high (const dw_spread_point *point);
