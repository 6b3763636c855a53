/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-leak.h
 * Oil past the piston's edge, and the drag of that film.
 *
 * Thin annular gap with a moving wall (Rao, Mechanical Vibrations, SI ed. 2017, eq. E.7 to E.8;
 * eccentricity factor 1 + 1.5 eps^2: Merritt, Blackburn, from memory):
 *
 *     Q = pi D c^3 dp (1 + 1.5 eps^2)/(12 mu L) + pi D c |v|/2
 *
 * D is the mean diameter of the gap, bore - c. With the ring area taken to the bore, the force
 * of pressure and film on the piston is dp A + pi D L mu v/c - pi D c dp/2: the last term is
 * what of dp A falls on the gap instead of the piston, half given back by the film's pull. The
 * drag is that of the concentric film; a piston that touches the bore rubs, which is friction.
 *
 * Pure functions: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"

/** Constants of one gap. All zero when the clearance is 0. */
typedef struct
{
  double conductance; /**< [m3/(s Pa)] pressure-driven flow per dp */
  double dragged;     /**< [m2] flow per shaft speed that the wall drags, pi D c/2 */
  double drag;        /**< [N s/m] force per shaft speed */
  double unloaded;    /**< [m2] force per dp that does not reach the piston, pi D c/2 */
} dw_leak;

/**
 * Make the constants.
 *
 * @param bore          [m]
 * @param clearance     [m] radial, 0 = no gap
 * @param eccentricity  [1] 0..1
 * @param length        [m] piston thickness
 * @param dynamic       [Pa s] dynamic viscosity
 */
dw_leak dw_leak_make (double bore, double clearance, double eccentricity, double length,
                      double dynamic);

/**
 * Pressure-driven flow through a thin annular gap [m3/s].
 *
 * @param diameter      [m] mean diameter of the gap
 * @param clearance     [m] radial
 * @param eccentricity  [1] 0..1
 * @param length        [m]
 * @param dynamic       [Pa s]
 * @param pressure      [Pa] dp
 */
double dw_annulus_flow (double diameter, double clearance, double eccentricity, double length,
                        double dynamic, double pressure);
