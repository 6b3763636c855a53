/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-swap.h
 * How one lot of parts becomes another with few steps: which are drilled or swapped for others,
 * which are added, which taken out. For the holes of a piston and the leaves of a stack.
 *
 * Pure functions on plain values: safe from any thread.
 */
#pragma once

#include <stddef.h>

#define DW_SWAP_MAX_PARTS 16 /**< entries of one lot */

/** Equal parts of a lot. */
typedef struct
{
  int kind;    /**< the same number for parts that are the same in both lots; once in a lot */
  int side;    /**< parts are swapped only for those of their side */
  double size; /**< [m] smaller ones are swapped for smaller ones */
  int count;   /**< > 0 */
} dw_part;

/** One step. */
typedef struct
{
  int from;   /**< entry of a; -1 = added */
  int to;     /**< entry of b; -1 = taken out */
  int n_from; /**< how many of it go */
  int n_to;   /**< how many of it come */
} dw_swap;

/**
 * The steps from lot a to lot b: first those that move from one side to the other, then swaps,
 * then what is taken out, then what is added.
 *
 * @param n_a,n_b  at most DW_SWAP_MAX_PARTS
 * @param out      room for n_a + n_b
 * @return         how many steps; 0 = the same lot
 */
size_t dw_swap_find (const dw_part *a, int n_a, const dw_part *b, int n_b, dw_swap *out);
