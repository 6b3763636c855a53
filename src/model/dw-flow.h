/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-flow.h
 * How the oil that the piston displaces divides among open holes, covered holes and leak.
 *
 *     Q_open(dp) + Q_covered(dp) + Q_leak(dp, v) = |v| A
 *     covered holes: dp = dp_hole(q) + p,  p driving q through the film under the shim
 *
 * The shim's mean rim lift follows p linearly (Roark, total load spread on the hole circle)
 * from the preload to the stop; at the holes it is higher by the lobe factor of dw-film.h. All unknowns (dp, p, one velocity per hole size) are found
 * together by Newton's method, whose matrix is an arrow and is eliminated by hand; where that
 * does not settle, nested brackets do.
 *
 * A model is filled once and then only read: any number of threads may use it. No allocation.
 */
#pragma once

#include "model/dw-damper.h"
#include "model/dw-film.h"
#include "model/dw-hole.h"
#include "model/dw-leak.h"
#include "model/dw-stack.h"

/** The shim's lift as it follows the pressure under it. */
typedef struct
{
  double per_pressure; /**< [m/Pa] mean rim lift per pressure past the preload */
  double lobe;         /**< [1] rim lift at the holes over the mean, until the stop */
  double preload;      /**< [Pa] */
  double limit;        /**< [m] stop */
  double moment;       /**< [N/Pa] root moment per width, per pressure past the preload */
  double load_area;    /**< [m2] area on which the pressure under the shim acts */
} dw_shim_spring;

/** A damper with its oil, ready for any number of flow solutions. */
typedef struct
{
  double ring_area; /**< [m2] */
  dw_fluid fluid;   /**< oil as the piston meets it */
  dw_leak leak;
  dw_stroke opens_on; /**< stroke that lifts the shim */
  int n_open;         /**< sizes of open holes */
  int n_covered;      /**< sizes of covered holes; 0 when nothing can flow there */
  dw_hole_flow open[DW_MAX_HOLE_GROUPS];
  dw_hole_flow covered[DW_MAX_HOLE_GROUPS];
  double open_area;        /**< [m2] */
  double covered_area;     /**< [m2] */
  bool lifts;              /**< the shim can open at all */
  dw_film film;            /**< only if lifts */
  dw_shim_spring shim;     /**< only if lifts */
  double seat;             /**< [m3/(s Pa)] leak under the shut shim */
  double opening_per_lift; /**< [1/m] 4/d: curtain over hole area, per lift */
} dw_flow_model;

/** One solution. Also the starting point for a neighbouring one. */
typedef struct
{
  double pressure;                    /**< [Pa] dp across the piston */
  double film_pressure;               /**< [Pa] under the shim; 0 when the covered holes are shut */
  double open[DW_MAX_HOLE_GROUPS];    /**< [m/s] velocity in each size of open hole */
  double covered[DW_MAX_HOLE_GROUPS]; /**< [m/s] velocity in each size of covered hole */
} dw_flow_state;

/**
 * Make the model of a damper that dw_damper_check() finds good.
 *
 * @param fluid  from dw_oil_fluid(); gas of an emulsion is mixed in here
 */
void dw_flow_model_init (dw_flow_model *model, const dw_damper *damper, const dw_fluid *fluid);

/** Whether oil passes the covered holes in a stroke (through the lifted shim or a leaking seat). */
bool dw_flow_uses_covered (const dw_flow_model *model, dw_stroke stroke);

/**
 * Solve one stroke at one shaft speed.
 *
 * @param speed  [m/s] > 0, finite
 * @param near   whether @p state holds a solution near by, to start from
 * @param state  the solution; without meaning after a failure
 * @return DW_OK or DW_ERR_NO_CONVERGENCE ("force")
 */
dw_status dw_flow_solve (const dw_flow_model *model, dw_stroke stroke, double speed, bool near,
                         dw_flow_state *state, dw_error *err);

/**
 * All flow but the dragged one at a given dp: the inverse question, without iteration on dp.
 *
 * @param pressure  [Pa] > 0
 * @param out       the state at that dp
 * @return          [m3/s] open + covered + pressure-driven leak
 */
double dw_flow_at_pressure (const dw_flow_model *model, dw_stroke stroke, double pressure,
                            dw_flow_state *out);

/**
 * Mean rim lift of the shim [m] for a pressure under it.
 *
 * @param film_pressure  [Pa]
 */
double dw_flow_lift (const dw_flow_model *model, double film_pressure);

/**
 * Lift of the rim at the holes [m], the one that the film feels; reaches the stop first.
 *
 * @param film_pressure  [Pa]
 */
double dw_flow_lift_at_holes (const dw_flow_model *model, double film_pressure);
