/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-film.h
 * The oil film between the lifted shim and the piston, and the load it puts on the shim.
 *
 *     p = 12 mu q R/(2 pi w^3) + C mu q/(2 pi a h^2) + rho/2 (1.97 Va^2 + 2.15 Vs^2) S
 *
 * w lift at the rim, h lift at the hole circle, Va = q/(2 pi a w) speed at the rim (radius a),
 * Vs speed in the holes, S = Re/(Re + 77 (1 - 0.143 h/s)), Re = rho q/(2 pi a mu), s width of
 * the slot with the holes' area, C = 14.4 + 4.3 (h/s)^2.24. Coefficients fitted to resolved
 * axisymmetric Navier-Stokes solutions (table and error reached: tests), h/s up to 3.75.
 *
 * R is the viscous shape number. Even gap with n holes: closed form of
 * dw_film_even_resistance(). Under a bent shim the gap opens towards the rim and every hole
 * drains by itself: R = 2 pi/n times an integral over the plate's shape, and the load per hole
 * is a form in the lengths; both fitted to 53 solutions of Reynolds' equation under the linear
 * plate shape (table and solver: tests), 3.7 % and 2.0 % rms.
 *
 * Pure functions on plain values: safe from any thread, no allocation.
 */
#pragma once

#include "model/dw-oil.h"
#include "model/dw-plate.h"

/** [1] h/s up to which the film's inertia was resolved; past it its factors stay or fade. */
#define DW_FILM_RESOLVED_RATIO 3.75

/** Constants of one film; p(q, w) and q(p, w) need nothing else. */
typedef struct
{
  double viscous;       /**< [Pa s] 12 mu R/(2 pi): p = viscous q/w^3 */
  double turning;       /**< [Pa s/m] mu/(2 pi a shape^2): times C q/w^2 */
  double ratio;         /**< [1/m] (h/s)/w = shape/s */
  double rim_head;      /**< [kg/m5] rho/2 1.97/(2 pi a)^2: times q^2/w^2 */
  double slot_head;     /**< [kg/m7] rho/2 2.15/(area of the holes)^2: times q^2 */
  double half_flow;     /**< [m3/s] 77 * 2 pi a nu: flow at which S is near 1/2 */
} dw_film;

/** Flow and how it changes as the lift follows the pressure. */
typedef struct
{
  double flow;        /**< [m3/s] */
  double by_pressure; /**< [m3/(s Pa)] total, the lift's change included */
} dw_film_flow;

/** Where the covered holes of a valve sit. */
typedef struct
{
  double hub;         /**< [m] radius */
  double rim;         /**< [m] radius */
  double hole_circle; /**< [m] radius */
} dw_film_ring;

/**
 * Constants of a film.
 *
 * @param ring        radii of the shim
 * @param resistance  [1] R
 * @param shape       [1] h/w, lift at the hole circle over lift at the rim; 1 for an even gap
 * @param hole_area   [m2] of all covered holes together
 */
dw_film dw_film_make (const dw_fluid *fluid, const dw_film_ring *ring, double resistance,
                      double shape, double hole_area);

/**
 * Pressure that drives a flow through the film [Pa].
 *
 * @param flow  [m3/s] >= 0
 * @param lift  [m] at the rim, > 0
 */
double dw_film_pressure (const dw_film *film, double flow, double lift);

/**
 * Flow that a pressure drives, and its slope when the lift grows with the pressure.
 *
 * @param pressure          [Pa] >= 0
 * @param lift              [m] at the rim, >= 0
 * @param lift_by_pressure  [m/Pa] slope of the lift, 0 at the stop
 */
dw_film_flow dw_film_flow_at (const dw_film *film, double pressure, double lift,
                              double lift_by_pressure);

/**
 * Shape number R of an even gap around n holes [1], closed form; never below that of a slot
 * that ends at the holes' outer edge.
 *
 * @param diameter  [m] of a hole
 */
double dw_film_even_resistance (const dw_film_ring *ring, double diameter, int n_holes);

/**
 * Shape number of one hole under a bent shim [1]; n equal holes give R = this/n.
 *
 * @param plate     the shim as a plate, loaded on the hole circle
 * @param diameter  [m] of a hole
 */
double dw_film_bent_resistance (const dw_film_ring *ring, const dw_plate *plate, double diameter);

/**
 * Area over which the full pressure would load the shim as one hole does [m2].
 *
 * @param diameter  [m] of a hole
 */
double dw_film_load_area (const dw_film_ring *ring, double diameter);
