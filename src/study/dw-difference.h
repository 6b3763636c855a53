/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-difference.h
 * What differs between two dampers as they are built.
 *
 * One physical change is one difference: a group of holes drilled larger, an oil poured in, a
 * shim added, a spring swapped. The order of the hole groups is no difference, nor is whether
 * equal holes or shims stand in one entry or in two.
 *
 * Plain values that point at nothing but static storage; safe from any thread.
 */
#pragma once

#include "model/dw-damper.h"

/** Two dampers that a project can hold never differ in more. */
#define DW_MAX_DIFFERENCES 96

typedef enum
{
  DW_DIFFERENCE_VALUE,   /**< one number is another, or is given in one of them only */
  DW_DIFFERENCE_CHOICE,  /**< one of several kinds is another */
  DW_DIFFERENCE_CHANGED, /**< holes, a shim, the oil or the spring is another */
  DW_DIFFERENCE_ADDED,   /**< holes or shims that were not there */
  DW_DIFFERENCE_REMOVED, /**< holes or shims that are not there any more */
  DW_DIFFERENCE_ORDER    /**< the same shims in another order */
} dw_difference_kind;

/** One difference between damper a and damper b. */
typedef struct
{
  dw_difference_kind kind;
  const char *path; /**< as in dw-limits.h, or its beginning: "piston.holes.diameter", "oil" */
  int index;        /**< first hole group or shim of a (of b when added); -1 for other parts */
  double before; /**< [SI unit of the path] in a; NaN when it is no single number, or not given */
  double after;  /**< [SI unit of the path] in b; NaN when it is no single number, or not given */
  const char *label;   /**< DW_DIFFERENCE_VALUE only: "seal friction" */
  const char *unit;    /**< DW_DIFFERENCE_VALUE only: trade unit with a blank in front, or "" */
  double unit_size;    /**< [SI unit of the path] in one trade unit; DW_DIFFERENCE_VALUE only */
  int n_before;        /**< holes or leaves of a that it takes */
  int n_after;         /**< holes or leaves of b that it gives */
  unsigned before_set; /**< bit i: hole group or shim i of a is of their kind */
  unsigned after_set;  /**< bit i: hole group or shim i of b is of their kind */
  bool acts;           /**< on the damper's force; a spring, say, does not */
} dw_difference;

/**
 * Everything that differs, from the body to how the car stands.
 *
 * @param a,b  with counts as dw_damper_check() accepts them
 * @param out  filled up to @p capacity; may be NULL when capacity is 0
 * @return     how many there are (may exceed capacity); 0 = the same build
 */
size_t dw_difference_find (const dw_damper *a, const dw_damper *b, dw_difference *out,
                           size_t capacity);

/** How many of them act on the damper's force. */
size_t dw_difference_count_acting (const dw_difference *differences, size_t n);
