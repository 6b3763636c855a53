/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-parts.h
 * The parts box: what can be fitted today.
 *
 * All numbers are SI. A box is counted, so that copies of a project share it;
 * one that is shared must not be written, see dw_project_edit_parts(). The
 * count is thread-safe, the content belongs to one thread at a time.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#include "model/dw-damper.h"

G_BEGIN_DECLS

#define DW_PARTS_MAX 500 /**< entries of each kind */

typedef struct
{
  double diameter; /**< [m] */
} dw_drill;

/** A bottle of oil. */
typedef struct
{
  dw_oil oil;
  bool has_volume;
  double volume; /**< [m3] left in the bottle; only if has_volume, else 0 */
} dw_bottle;

/** A piston at hand. */
typedef struct
{
  dw_piston piston; /**< with no holes: blank */
  char *name;       /**< owned */
} dw_spare_piston;

/** Read and write the entries with g_array_index(). */
typedef struct
{
  gatomicrefcount refs; /**< private */
  GArray *drills;       /**< of dw_drill */
  GArray *shims;        /**< of dw_shim; count = how many are in the box */
  GArray *oils;         /**< of dw_bottle */
  GArray *pistons;      /**< of dw_spare_piston; the array frees the names */
} dw_parts;

/** An empty box. Give back with dw_parts_unref(). */
dw_parts *dw_parts_new (void);

/** One more owner of the same box. @return  @p parts */
dw_parts *dw_parts_ref (dw_parts *parts);

/** One owner less; the last one frees the box. */
void dw_parts_unref (dw_parts *parts);

/** Whether it has other owners. */
bool dw_parts_is_shared (dw_parts *parts);

/** A box of its own with the same content. Give back with dw_parts_unref(). */
dw_parts *dw_parts_copy (const dw_parts *parts);

/** The same content in the same order, numbers to the last bit. */
bool dw_parts_equal (const dw_parts *a, const dw_parts *b);

/** Put a piston into the box. @param name  valid text, see dw_project_text_is_valid(); copied */
void dw_parts_add_piston (dw_parts *parts, const char *name, const dw_piston *piston);

G_END_DECLS
