/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-limits.h
 * Accepted range and default of every number a user can give.
 *
 * One table for the model's own check, the project file's reader and writer,
 * the window's "allowed range" texts and the schema test. Values are in the
 * model's units: SI, temperatures in degrees Celsius.
 */
#pragma once

#include <stdbool.h>

/* id, path in the project, lowest, highest, default. A NaN default means: must be given.
 * Lengths in m, pressures in Pa, viscosities in m2/s, the rest as dw-damper.h says. */
#define DW_LIMIT_LIST(X)                                                                           \
  X (DW_LIMIT_BORE, "body.bore", 5e-3, 40e-3, NAN)                                                 \
  X (DW_LIMIT_ROD, "body.rod", 1e-3, 20e-3, NAN)                                                   \
  X (DW_LIMIT_STROKE, "body.stroke", 2e-3, 200e-3, 30e-3)                                          \
  X (DW_LIMIT_FILLING, "body.filling", 0.1e-6, 200e-6, NAN)                                        \
  X (DW_LIMIT_PISTON_THICKNESS, "piston.thickness", 0.3e-3, 20e-3, 2.5e-3)                         \
  X (DW_LIMIT_CLEARANCE, "piston.clearance", 0.0, 0.5e-3, 0.03e-3)                                 \
  X (DW_LIMIT_ECCENTRICITY, "piston.eccentricity", 0.0, 1.0, 0.0)                                  \
  X (DW_LIMIT_HOLE_COUNT, "piston.holes.count", 1.0, 64.0, 1.0)                                    \
  X (DW_LIMIT_HOLE_DIAMETER, "piston.holes.diameter", 0.2e-3, 10e-3, NAN)                          \
  X (DW_LIMIT_HUB, "valve.hub-diameter", 0.5e-3, 38e-3, NAN)                                       \
  X (DW_LIMIT_SHIM_OUTER, "valve.outer-diameter", 1e-3, 40e-3, NAN)                                \
  X (DW_LIMIT_HOLE_CIRCLE, "valve.hole-circle", 0.5e-3, 39e-3, NAN)                                \
  X (DW_LIMIT_LIFT, "valve.lift-limit", 0.0, 10e-3, 0.6e-3)                                        \
  X (DW_LIMIT_COUPLING, "valve.leaf-coupling", 0.0, 1.0, 0.0)                                      \
  X (DW_LIMIT_PRELOAD, "valve.preload", 0.0, 1000e3, 0.0)                                          \
  X (DW_LIMIT_SEAT_GAP, "valve.seat-gap", 0.0, 0.1e-3, 0.0)                                        \
  X (DW_LIMIT_SHIM_THICKNESS, "valve.shim.thickness", 0.01e-3, 3e-3, NAN)                          \
  X (DW_LIMIT_SHIM_COUNT, "valve.shim.count", 1.0, 64.0, 1.0)                                      \
  X (DW_LIMIT_MODULUS, "valve.shim.modulus", 0.1e9, 500e9, 4.0e9)                                  \
  X (DW_LIMIT_POISSON, "valve.shim.poisson", 0.0, 0.49, 0.38)                                      \
  X (DW_LIMIT_STRENGTH, "valve.shim.strength", 1e6, 5000e6, 100e6)                                 \
  X (DW_LIMIT_VISCOSITY, "oil.viscosity", 1e-6, 100000e-6, NAN)                                    \
  X (DW_LIMIT_POINT_TEMPERATURE, "oil.point.temperature", -40.0, 150.0, NAN)                       \
  X (DW_LIMIT_DENSITY, "oil.density", 600.0, 2000.0, 970.0)                                        \
  X (DW_LIMIT_SHARE, "oil.part.share", 0.0, 1.0, NAN)                                              \
  X (DW_LIMIT_THINNING_RATE, "oil.thinning-rate", 1e2, 1e8, NAN)                                   \
  X (DW_LIMIT_THINNING_EXPONENT, "oil.thinning-exponent", 0.2, 1.0, NAN)                           \
  X (DW_LIMIT_GAS_PRESSURE, "gas.pressure", 20e3, 2000e3, 101.325e3)                               \
  X (DW_LIMIT_AIR_PRESSURE, "gas.pressure (vented)", 50e3, 110e3, 101.325e3)                       \
  X (DW_LIMIT_GAS_VOLUME, "gas.volume", 0.01e-6, 100e-6, 1e-6)                                     \
  X (DW_LIMIT_SEAL_FRICTION, "seal.friction", 0.0, 50.0, 0.0)                                      \
  X (DW_LIMIT_SPRING_RATE, "spring.rate", 1.0, 100e3, 500.0)                                       \
  X (DW_LIMIT_SPRING_LENGTH, "spring.free-length", 5e-3, 500e-3, 70e-3)                            \
  X (DW_LIMIT_SPRING_PRELOAD, "spring.preload", 0.0, 200e-3, 0.0)                                  \
  X (DW_LIMIT_MOTION_RATIO, "linkage.motion-ratio", 0.05, 3.0, 1.0)                                \
  X (DW_LIMIT_RIDE_HEIGHT, "stance.ride-height", 0.0, 200e-3, NAN)                                 \
  X (DW_LIMIT_DROOP, "stance.droop", 0.0, 100e-3, NAN)                                             \
  X (DW_LIMIT_OIL_TEMPERATURE, "conditions.oil", -25.0, 150.0, 25.0)                               \
  X (DW_LIMIT_AIR_TEMPERATURE, "conditions.air", -40.0, 60.0, 20.0)                                \
  X (DW_LIMIT_SPEED, "speed", 1e-4, 10.0, NAN)                                                     \
  X (DW_LIMIT_SPRUNG_MASS, "car.sprung-mass", 0.01, 50.0, NAN)                                     \
  X (DW_LIMIT_BOTTLE_VOLUME, "parts.oil.volume", 0.1e-6, 10e-3, NAN)

#define DW_LIMIT_ENUM(id, path, low, high, fallback) id,
typedef enum
{
  DW_LIMIT_LIST (DW_LIMIT_ENUM) DW_N_LIMITS
} dw_limit_id;
#undef DW_LIMIT_ENUM

/** Range of one input. */
typedef struct
{
  const char *path; /**< "body.bore" */
  double low;       /**< [unit of the input] lowest accepted value */
  double high;      /**< [unit of the input] highest accepted value */
  double fallback;  /**< [unit of the input] value when left out; NaN = must be given */
} dw_limit;

/** The range of an input. Never NULL; static storage. */
const dw_limit *dw_limit_get (dw_limit_id id);

/**
 * Whether a value is finite and inside its range, ends included.
 *
 * @param value  [unit of the input] any double
 */
bool dw_limit_holds (dw_limit_id id, double value);
