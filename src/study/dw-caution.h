/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-caution.h
 * Where a damper's curve leaves what the model is sure of, or the parts what they stand.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include "model/dw-force.h"

/** [1/s] Wall shear rate from which silicone oils of damper grades thin (literature, roughly). */
#define DW_CAUTION_SHEAR_RATE 1e4

typedef enum
{
  DW_CAUTION_RESOLVED,  /**< a hole's Reynolds number past the solutions behind the hole's loss */
  DW_CAUTION_TURBULENT, /**< past the laminar range */
  DW_CAUTION_THINNING,  /**< silicone thins here, the damper's oil is taken as if it did not */
  DW_CAUTION_STRESS,    /**< the shim is bent further than its material stays elastic */
  DW_CAUTION_AT_STOP,   /**< the shim has reached its lift limit and opens no further */
  DW_N_CAUTIONS
} dw_caution_kind;

/** One caution about one stroke. */
typedef struct
{
  dw_caution_kind kind;
  dw_stroke stroke;
  double speed; /**< [m/s] lowest of the speeds asked for at which it holds */
  double worst; /**< [1] largest: Reynolds number, stress over its limit; [1/s] for thinning */
} dw_caution;

/**
 * Cautions about one stroke's points, at most one of a kind.
 *
 * @param damper  whose points they are
 * @param points  from dw_force_curve(), at rising speeds
 * @param out     room for DW_N_CAUTIONS
 * @return        how many there are
 */
size_t dw_caution_find (const dw_damper *damper, dw_stroke stroke, const dw_force_point *points,
                        size_t n, dw_caution out[DW_N_CAUTIONS]);
