/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-force.h
 * Force of one damper against shaft speed, both strokes.
 *
 *     compression: F = dp A + (p_gas - p_atm) A_rod + F_seal + F_film
 *     rebound:     F = dp A - (p_gas - p_atm) A_rod + F_seal + F_film
 *
 * dp from dw-flow.h, A the ring area, F_film from dw-leak.h. In compression the rod side cannot
 * fall below zero absolute pressure: where dp reaches p_gas a void opens. With a vented gas
 * space the force then stays what it was at the onset; with sealed gas the curve is the steady
 * one, reached after the travel that dw_gas_lost_travel() gives. The push of the gas squeezed
 * by the void (at most A_rod/A of the force) is not added: it depends on the stroke's history.
 *
 * A model is filled once and then only read: any number of threads may use it. No allocation,
 * no global state. Same input, same bytes out.
 */
#pragma once

#include "model/dw-flow.h"

/** A damper with its oil at a temperature, ready for any number of forces. */
typedef struct
{
  dw_flow_model flow;
  dw_gas gas;
  double rod_area;       /**< [m2] */
  double gas_push;       /**< [N] (p_gas - p_atm) A_rod */
  double seal;           /**< [N] */
  double onset_speed;    /**< [m/s] compression speed where the void opens; infinity if never */
  double onset_pressure; /**< [Pa] dp there, the absolute gas pressure */
} dw_force_model;

/** One stroke at one speed; positive magnitudes. */
typedef struct
{
  double speed;         /**< [m/s] shaft speed */
  double force;         /**< [N] whole resisting force; may be < 0 near rest when gas pushes */
  double hydraulic;     /**< [N] dp A, never capped */
  double pressure;      /**< [Pa] dp across the piston, never capped */
  double flow_open;     /**< [m3/s] through open holes */
  double flow_covered;  /**< [m3/s] through covered holes */
  double flow_leak;     /**< [m3/s] past the piston's edge */
  double lift;          /**< [m] mean rim lift of the shim */
  double lift_at_holes; /**< [m] rim lift at the covered holes, the one that the oil passes */
  double film_pressure; /**< [Pa] under the shim */
  double reynolds;      /**< [1] largest of all holes */
  double shear_rate;    /**< [1/s] largest wall shear rate of all holes, 8 V/d */
  double root_moment;   /**< [N] bending moment per width at the shim's hub */
  double lost_travel;   /**< [m] lost to the void; infinity when vented */
  bool is_void;         /**< past the void onset */
  bool at_stop;         /**< the shim has reached its lift limit at the holes */
} dw_force_point;

/** How the oil flows in a hole. */
typedef enum
{
  DW_REGIME_SHUT,     /**< no flow */
  DW_REGIME_CREEPING, /**< viscous alone: the kinetic part is below 1 % of dp */
  DW_REGIME_LAMINAR,  /**< laminar, still developing in the hole */
  DW_REGIME_TURBULENT /**< past DW_HOLE_LAMINAR_RE */
} dw_regime;

/** One size of hole in one stroke at one speed. */
typedef struct
{
  bool covered;      /**< under the shim */
  double diameter;   /**< [m] */
  double velocity;   /**< [m/s] mean in the hole */
  double flow;       /**< [m3/s] all holes of the size */
  double reynolds;   /**< [1] */
  double shear_rate; /**< [1/s] at the wall, 8 V/d */
  dw_regime regime;
} dw_hole_point;

/**
 * Prepare a damper.
 *
 * @param oil_temperature  [degC] inside DW_LIMIT_OIL_TEMPERATURE
 * @param out              set on success only
 * @return DW_OK, or the first finding of dw_damper_check() or dw_oil_fluid()
 */
dw_status dw_force_model_make (const dw_damper *damper, double oil_temperature, dw_force_model *out,
                               dw_error *err);

/**
 * Force at one speed.
 *
 * @param speed  [m/s] 0..10
 * @param out    set on success only
 * @return DW_OK, DW_ERR_RANGE ("speed") or DW_ERR_NO_CONVERGENCE ("force")
 */
dw_status dw_force_at (const dw_force_model *model, dw_stroke stroke, double speed,
                       dw_force_point *out, dw_error *err);

/**
 * Forces at rising speeds; faster than one by one, since each starts from those before.
 *
 * @param speeds  [m/s] n values, 0..10, best in rising order
 * @param out     n points; those before a failure are set
 * @return as dw_force_at(), with the row in err->index
 */
dw_status dw_force_curve (const dw_force_model *model, dw_stroke stroke, const double *speeds,
                          size_t n, dw_force_point *out, dw_error *err);

/**
 * What each size of hole does at one speed; open sizes first. Groups of equal diameter are one.
 *
 * @param speed  [m/s] 0..10
 * @param out    room for 2 * DW_MAX_HOLE_GROUPS
 * @param n      set to the number of sizes
 * @return as dw_force_at()
 */
dw_status dw_force_holes (const dw_force_model *model, dw_stroke stroke, double speed,
                          dw_hole_point *out, size_t *n, dw_error *err);
