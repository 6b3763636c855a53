/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-stack.h
 * How stiff a shim stack is, between leaves that slide freely and leaves that stick together.
 *
 * Loose leaves share the deflection: rigidities add, sum of E t^3/(12 (1 - nu^2)). Stuck leaves
 * bend as one laminated plate about their common neutral plane; for one material that is the
 * rigidity of a leaf as thick as the stack. Elementary plate theory. Two equal leaves: 2 times
 * or 8 times one leaf.
 *
 * Pure functions: safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"

/** A stack as one plate. */
typedef struct
{
  double loose;     /**< [N m] rigidity with sliding leaves: the lower bound */
  double stuck;     /**< [N m] rigidity with leaves stuck together: the upper bound */
  double stiffness; /**< [N m] between the two by the valve's leaf coupling */
  double poisson;   /**< [1] mean, weighted by rigidity */
  double membrane;  /**< [N/m] in-plane stiffness, sum of E t */
  double thickness; /**< [m] all leaves together */
  int leaves;       /**< how many */
} dw_stack;

/** The stack of a valve; all zero when it has no shims. */
dw_stack dw_stack_make (const dw_valve *valve);

/**
 * Thickness of one leaf as stiff as a rigidity [m].
 *
 * @param rigidity  [N m]
 * @param modulus   [Pa]
 * @param poisson   [1]
 */
double dw_stack_equivalent_thickness (double rigidity, double modulus, double poisson);

/**
 * Highest bending stress over its material's limit [1]; > 1 = not elastic any more.
 *
 * @param root_moment  [N] moment per width at the hub
 */
double dw_stack_stress_ratio (const dw_valve *valve, double root_moment);
