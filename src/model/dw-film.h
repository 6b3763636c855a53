/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-film.h
 * The oil film between the lifted shim and the piston, and the load it puts on the shim.
 *
 *     p = 12 mu q R/(2 pi w^3) + C mu q/(b h^2) + rho/2 (1.97 Vb^2 + 2.15 Vs^2) S
 *
 * w lift of the rim at the holes, h lift at the hole circle there, b length of rim that lets oil
 * out, Vb = q/(b w) speed there, Vs speed in the holes, S = Re/(Re + 77 (1 - 0.143 h/s)),
 * Re = rho q/(b mu), s width of the slot with the holes' area, C = 14.4 + 4.3 (h/s)^2.24.
 * Coefficients fitted to resolved axisymmetric Navier-Stokes solutions (table and error reached:
 * tests), h/s up to 3.75.
 *
 * R is the viscous shape number. Between even faces n holes share the ring: closed form of
 * dw_film_even_resistance(). A shim is bent by the very pressure it holds: each hole lifts its
 * own stretch of the rim, higher than the mean by the lobe factor, and drains through it almost
 * as if it were alone. Load area, lobe factor and R are closed forms in the lengths, fitted to
 * 50 solutions of Reynolds' equation under a Kirchhoff plate bent by the film's pressure (hub
 * 0.33 to 0.7 of the rim, 2 to 8 holes; table, solver and error reached: tests).
 *
 * Pure functions on plain values: safe from any thread, no allocation.
 */
#pragma once

#include "model/dw-oil.h"

/** [1] h/s up to which the film's inertia was resolved; past it its factors stay or fade. */
#define DW_FILM_RESOLVED_RATIO 3.75

/** Constants of one film; p(q, w) and q(p, w) need nothing else. */
typedef struct
{
  double viscous;   /**< [Pa s] 12 mu R/(2 pi): p = viscous q/w^3 */
  double turning;   /**< [Pa s/m] mu/(b shape^2): times C q/w^2 */
  double ratio;     /**< [1/m] (h/s)/w = shape/s */
  double rim_head;  /**< [kg/m5] rho/2 1.97/b^2: times q^2/w^2 */
  double slot_head; /**< [kg/m7] rho/2 2.15/(area of the holes)^2: times q^2 */
  double half_flow; /**< [m3/s] 77 b nu: flow at which S is near 1/2 */
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
 * @param lobe        [1] lift at the holes over mean lift; the rim lets oil out on 1/lobe of its
 *                    length
 * @param hole_area   [m2] of all covered holes together
 */
dw_film dw_film_make (const dw_fluid *fluid, const dw_film_ring *ring, double resistance,
                      double shape, double lobe, double hole_area);

/**
 * Pressure that drives a flow through the film at a lift [Pa], by the equation as it stands.
 *
 * @param flow  [m3/s] >= 0
 * @param lift  [m] of the rim at the holes, > 0
 */
double dw_film_pressure (const dw_film *film, double flow, double lift);

/**
 * Flow that a pressure drives, and its slope when the lift grows with the pressure. Never less
 * than a smaller lift would pass (see the .c).
 *
 * @param pressure          [Pa] >= 0
 * @param lift              [m] of the rim at the holes, >= 0
 * @param lift_by_pressure  [m/Pa] slope of the lift, 0 at the stop
 * @param guess             [m3/s] a flow near the answer, 0 = none
 */
dw_film_flow dw_film_flow_at (const dw_film *film, double pressure, double lift,
                              double lift_by_pressure, double guess);

/**
 * Shape number R of an even gap around n holes [1], closed form; never below that of a slot
 * that ends at the holes' outer edge.
 *
 * @param diameter  [m] of a hole
 */
double dw_film_even_resistance (const dw_film_ring *ring, double diameter, int n_holes);

/**
 * Shape number of one hole under the shim that it bends [1], on the lift at the hole; n equal
 * holes give R = this/n. Within 1.5 % rms, 3.3 % max of the coupled solutions.
 *
 * @param diameter  [m] of a hole
 * @param crowding  [1] sum of the covered holes' diameters over the hole circle's length
 */
double dw_film_bent_resistance (const dw_film_ring *ring, double diameter, double crowding);

/**
 * Area on which the full pressure, spread on the hole circle, lifts the rim's mean as much as
 * one hole and its film do [m2]. Never below the hole itself. 2.3 % rms, 5.2 % max.
 *
 * @param diameter  [m] of a hole
 * @param crowding  [1] as above
 */
double dw_film_load_area (const dw_film_ring *ring, double diameter, double crowding);

/**
 * Lift of the rim at the holes over its mean [1], >= 1. 1.2 % rms, 3.7 % max.
 *
 * @param diameter  [m] mean hole
 * @param n_holes   covered holes in all, >= 1
 */
double dw_film_lobe (const dw_film_ring *ring, double diameter, int n_holes);
