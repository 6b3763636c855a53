/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-part.h
 * A part of a sheet that begins on a page of its own: its title, its pages, and the head of those
 * after the first.
 */
#pragma once

#include "sheet/dw-flow.h"
#include "sheet/dw-sheet-head.h"

G_BEGIN_DECLS

/** What could not be computed. */
typedef struct
{
  const dw_setup *setup; /**< borrowed from the project */
  dw_axle axle;
  dw_error finding;
} dw_sheet_failure;

/** Free with dw_sheet_part_free(). */
typedef struct
{
  const dw_sheet_tools *tools; /**< borrowed */
  dw_sheet_title title;        /**< its words are borrowed */
  gpointer owned;              /**< what the makers of the part keep for it; owned */
  GDestroyNotify free_owned;   /**< of @p owned */
  dw_block *(*heads) (
      const dw_sheet_tools *tools); /**< heads of columns, again on each page; NULL =
                                                       none */
  dw_flow flow;
  dw_place place; /**< where the next block goes */
} dw_sheet_part;

/**
 * A part with its head on its first page.
 *
 * @param title  its words are borrowed
 */
dw_sheet_part *dw_sheet_part_new (const dw_sheet_tools *tools, const dw_sheet_title *title);

/** NULL is allowed. */
void dw_sheet_part_free (dw_sheet_part *part);

/** @param block  taken */
void dw_sheet_part_add (dw_sheet_part *part, dw_block *block);

/**
 * A heading with a line under it; never the last thing on a page.
 *
 * @param next  [pt] height of what follows and must stay with it
 */
void dw_sheet_part_add_heading (dw_sheet_part *part, const char *text, double next);

/** Lines to write on, as the page has room, at most so many. @param step  [pt] from line to line */
void dw_sheet_part_add_writing_lines (dw_sheet_part *part, double step, int most);

/** @param rows  of dw_block; emptied, not freed */
void dw_sheet_part_add_rows (dw_sheet_part *part, GPtrArray *rows);

/**
 * Two columns that run side by side, on as many pages as the longer one needs.
 *
 * @param columns  a list of dw_block for each axle; emptied, not freed
 */
void dw_sheet_part_add_columns (dw_sheet_part *part, GPtrArray *const columns[DW_N_AXLES]);

/** [pt] left on the page. */
double dw_sheet_part_room (const dw_sheet_part *part);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_sheet_part, dw_sheet_part_free)

G_END_DECLS
