/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-figures.h
 * What is read off a damper's curves: c, rebound share, pack, flow shares, wheel values.
 *
 * Pure functions: safe from any thread.
 */
#pragma once

#include "model/dw-force.h"

enum
{
  DW_LOW,    /**< low shaft speed, 0.05 m/s unless the project says otherwise */
  DW_MIDDLE, /**< 0.2 m/s */
  DW_HIGH,   /**< 1.0 m/s */
  DW_N_SPEEDS
};

/** Figures of one damper. First index: dw_stroke; second: DW_LOW, DW_MIDDLE, DW_HIGH. */
typedef struct
{
  dw_force_point point[DW_N_STROKES][DW_N_SPEEDS];
  double c[DW_N_STROKES][DW_N_SPEEDS]; /**< [N s/m] F/v */
  double pack[DW_N_STROKES];           /**< [1] (F high/F low)/(high/low); 1 = purely viscous */
  double rebound_share[DW_N_SPEEDS];   /**< [1] F rebound/F compression */
} dw_figures;

/** How the displaced oil divides; the three add to 1. */
typedef struct
{
  double open;    /**< [1] */
  double covered; /**< [1] */
  double leak;    /**< [1] */
} dw_flow_shares;

/**
 * Read the figures. Forces are whole forces: gas, seal and film included.
 *
 * @param speeds  [m/s] low, middle, high; rising, > 0, at most 10
 * @param out     set on success only
 * @return DW_OK, DW_ERR_RANGE ("speed") or DW_ERR_NO_CONVERGENCE
 */
dw_status dw_figures_read (const dw_force_model *model, const double speeds[DW_N_SPEEDS],
                           dw_figures *out, dw_error *err);

/** Shares of the flow; all 0 at rest. */
dw_flow_shares dw_flow_shares_of (const dw_force_point *point);

/**
 * Rate at the wheel [N/m], k MR^2 (virtual work).
 *
 * @param rate          [N/m] at the spring
 * @param motion_ratio  [1] spring travel per wheel travel
 */
double dw_wheel_rate (double rate, double motion_ratio);

/**
 * Damping at the wheel [N s/m], c MR^2 (virtual work).
 *
 * @param c             [N s/m] at the shaft
 * @param motion_ratio  [1] damper travel per wheel travel
 */
double dw_wheel_damping (double c, double motion_ratio);

/**
 * Undamped natural frequency [Hz], sqrt(k/m)/(2 pi).
 *
 * @param wheel_rate  [N/m]
 * @param mass        [kg] sprung mass on this wheel
 */
double dw_ride_frequency (double wheel_rate, double mass);

/**
 * Damping ratio [1], c/(2 sqrt(k m)).
 *
 * @param wheel_c     [N s/m] at the wheel
 * @param wheel_rate  [N/m] at the wheel
 * @param mass        [kg] sprung mass on this wheel
 */
double dw_damping_ratio (double wheel_c, double wheel_rate, double mass);

/**
 * Damping ratio [1] of a damper at one of its three speeds. The strokes take turns, so their mean is
 * what calms the wheel over a whole swing.
 *
 * @param damper  whose figures they are
 * @param speed   DW_LOW, DW_MIDDLE or DW_HIGH
 * @param mass    [kg] sprung mass on this wheel
 */
double dw_figures_damping_ratio (const dw_figures *figures, const dw_damper *damper, int speed,
                                 double mass);
