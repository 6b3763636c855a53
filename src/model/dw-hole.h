/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-hole.h
 * Pressure needed to drive oil through one drilled hole of the piston.
 *
 *     dp = mu V/d (6 pi + 32 L/d) + K(Re, L/d, s) rho V^2/2
 *
 * Creeping term: Dagan, Weinbaum & Pfeffer 1982 (J. Fluid Mech. 115:505). K: fitted to
 * resolved Navier-Stokes solutions (Re 0.01 to 600, L/d 0.5 to 4, s 0.016 to 0.077; the table
 * and the error reached are in the tests). s is the share of the ring area that the flowing
 * holes take. Above Re 2000 the pipe part follows Churchill 1977, joined continuously.
 * dp grows strictly with V.
 *
 * Pure functions on plain values: safe from any thread, no allocation.
 */
#pragma once

#include <stdbool.h>

#include "model/dw-oil.h"

/** [1] Reynolds number up to which the flow in a hole is taken as laminar. */
#define DW_HOLE_LAMINAR_RE 2000.0

/** [1] Largest Reynolds number of the resolved solutions behind K. */
#define DW_HOLE_RESOLVED_RE 600.0

/** [1] K of developed flow from a still space into a still space (s = 0). */
#define DW_HOLE_K_LONG 2.13

/** Constants of one group of equal holes with one oil; made by dw_hole_flow_init(). */
typedef struct
{
  double diameter;           /**< [m] */
  double area;               /**< [m2] of all holes of the group together */
  double ends;               /**< [Pa s/m] 6 pi mu/d: creeping loss of both ends, per velocity */
  double pipe;               /**< [Pa s/m] 32 mu L/d^2: Poiseuille part, per velocity */
  double half_density;       /**< [kg/m3] rho/2 */
  double re_per_velocity;    /**< [s/m] d/nu */
  double entry;              /**< [1] Re at which the entry-length term of K has fallen to 1/e */
  double k_alone;            /**< [1] high-Re K of this group when only the open holes flow */
  double k_drop;             /**< [1] by how much K falls when the covered holes flow as well */
  double shear_per_velocity; /**< [1/m] wall shear rate per velocity, 8/d */
  double thinning_rate;      /**< [1/s] as dw_fluid */
  double thinning_exponent;  /**< [1] as dw_fluid */
} dw_hole_flow;

/** dp of a hole and how it changes. */
typedef struct
{
  double pressure;    /**< [Pa] */
  double by_velocity; /**< [Pa s/m] d dp/dV, > 0 */
  double by_opening;  /**< [Pa] d dp/d(opening), <= 0 */
  double by_kinetic;  /**< [Pa] d dp/d(kinetic), >= 0 */
} dw_hole_drop;

/**
 * Prepare a group of holes.
 *
 * @param flow        filled
 * @param diameter    [m] > 0
 * @param length      [m] piston thickness, > 0
 * @param count       number of holes, >= 1
 * @param share_alone [1] s of the open holes alone, 0..0.5
 * @param share_all   [1] s of all holes, >= share_alone
 */
void dw_hole_flow_init (dw_hole_flow *flow, const dw_fluid *fluid, double diameter, double length,
                        int count, double share_alone, double share_all);

/**
 * Pressure and slopes at a velocity.
 *
 * @param velocity  [m/s] mean in the hole, >= 0
 * @param opening   [1] how far the covered holes count as flowing, 0..1
 * @param kinetic   [1] share of K that is lost: 1 for a free hole, less for one ending in a film
 */
dw_hole_drop dw_hole_drop_at (const dw_hole_flow *flow, double velocity, double opening,
                              double kinetic);

/**
 * Velocity [m/s] that a pressure drives, by safeguarded Newton steps.
 *
 * @param pressure  [Pa] >= 0
 * @param opening   [1] 0..1
 * @param kinetic   [1] 0 < .. <= 1
 */
double dw_hole_velocity (const dw_hole_flow *flow, double pressure, double opening, double kinetic);

/**
 * Velocity [m/s] for a pressure with K held constant, closed form: a starting point.
 *
 * @param pressure  [Pa] >= 0
 * @param kinetic   [1] 0 < .. <= 1
 * @param slope     [m/(s Pa)] set to dV/dp
 */
double dw_hole_velocity_estimate (const dw_hole_flow *flow, double pressure, double kinetic,
                                  double *slope);

/**
 * Kinetic loss K [1].
 *
 * @param re            [1] V d/nu, >= 0
 * @param length_ratio  [1] L/d
 * @param share         [1] flowing area / ring area, 0..0.5
 */
double dw_hole_loss (double re, double length_ratio, double share);

/**
 * High-Re part of K that depends on the share [1]: 2.13 - 2.65 s where resolved, continued
 * with falling slope above s = 0.1 so that it never reaches the entry term.
 *
 * @param share  [1] 0..0.5
 */
double dw_hole_loss_by_share (double share);

/**
 * Darcy friction factor of a smooth pipe [1], Churchill 1977, any Re.
 *
 * @param re              [1] > 0
 * @param relative_rough  [1] e/D, 0 for smooth
 */
double dw_churchill_friction (double re, double relative_rough);
