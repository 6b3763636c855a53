/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-plate.h
 * Bending of a round shim clamped at its hub: annular plate, inner edge fixed, outer edge free.
 *
 * Linear: Roark's Formulas for Stress and Strain, 7th ed., Table 11.2, cases 1l (line load on a
 * circle) and 2l (pressure from a circle outwards). Large deflection: the axisymmetric
 * Foppl-von Karman equations, solved by Newton's method on finite differences; hub also held
 * in its plane, rim free.
 *
 * Symbols as in Roark: a outer, b inner radius, r0 load radius. Deflections are positive in the
 * direction of the load. Pure functions: safe from any thread, no allocation.
 */
#pragma once

#include "model/dw-status.h"

/** Roark's plate constants C1..C9 at b/a and L3..L17 at r0/a; index = subscript. */
typedef struct
{
  double c[10]; /**< [1] */
  double l[18]; /**< [1] L3, L6, L9, L11, L14, L17 */
} dw_plate_constants;

/** An annular plate. */
typedef struct
{
  double inner;     /**< [m] clamped radius b */
  double outer;     /**< [m] rim radius a */
  double stiffness; /**< [N m] flexural rigidity D */
  double poisson;   /**< [1] Poisson's ratio */
} dw_plate;

/** Rim and field of one load case. */
typedef struct
{
  double rim;         /**< [m] deflection at the outer edge */
  double slope;       /**< [rad] slope at the outer edge */
  double root_moment; /**< [N] bending moment per width at the hub, magnitude */
} dw_plate_answer;

/**
 * Roark's constants.
 *
 * @param inner_ratio  [1] b/a, 0 < .. < 1
 * @param load_ratio   [1] r0/a, b/a .. 1
 * @param poisson      [1]
 */
dw_plate_constants dw_plate_constants_make (double inner_ratio, double load_ratio, double poisson);

/**
 * Line load on a circle, case 1l.
 *
 * @param radius  [m] r0, inner..outer
 * @param line    [N/m] load per length of the circle
 */
dw_plate_answer dw_plate_ring_line (const dw_plate *plate, double radius, double line);

/**
 * Uniform pressure from a radius to the rim, case 2l.
 *
 * @param radius    [m] r0, inner..outer
 * @param pressure  [Pa]
 */
dw_plate_answer dw_plate_pressure_outside (const dw_plate *plate, double radius, double pressure);

/**
 * Deflection at any radius under a line load on a circle [m].
 *
 * @param load_radius  [m] r0
 * @param line         [N/m]
 * @param radius       [m] where, inner..outer
 */
double dw_plate_deflection (const dw_plate *plate, double load_radius, double line, double radius);

/** Lift of a shim under pressure on a ring. */
typedef struct
{
  double rim_linear; /**< [m] rim lift, linear plate */
  double rim;        /**< [m] rim lift, large deflection, axisymmetric */
  double ring;       /**< [m] large-deflection lift at the ring's middle radius */
} dw_shim_lift;

/**
 * A shim under uniform pressure between two radii, linear and with large deflection.
 *
 * Within 1 % of resolved shell solutions up to a lift of 10 thicknesses (see the tests). An
 * axisymmetric shape: a shim lifted at a few holes rises in lobes and stiffens less, so this is
 * the lower bound of its lift.
 *
 * @param plate        D of the whole stack
 * @param membrane     [N/m] in-plane stiffness of the stack, sum of E t
 * @param ring_inner   [m] inner radius of the pressed ring, >= plate->inner
 * @param ring_outer   [m] outer radius of the pressed ring, <= plate->outer
 * @param pressure     [Pa] >= 0
 * @param out          set on success only
 * @return DW_OK or DW_ERR_NO_CONVERGENCE ("valve.shim")
 */
dw_status dw_plate_lift (const dw_plate *plate, double membrane, double ring_inner,
                         double ring_outer, double pressure, dw_shim_lift *out, dw_error *err);
