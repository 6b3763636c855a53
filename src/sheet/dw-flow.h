/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-flow.h
 * Blocks one below the other, on as many pages as they need.
 *
 * A block is never divided: what is to go on across pages is a list of blocks, one a line. Several
 * columns run at a time, each with a place of its own. One thread at a time.
 */
#pragma once

#include "sheet/dw-block.h"

G_BEGIN_DECLS

/** Where a column goes on. */
typedef struct
{
  int page; /**< from 0 */
  double y; /**< [pt] from the top of the paper */
} dw_place;

/** Begins a page after the first: puts its head on it and returns where that ends [pt]. */
typedef double (*dw_flow_head) (dw_block *page, gpointer data);

typedef struct
{
  double width;      /**< [pt] of the paper */
  double height;     /**< [pt] of the paper */
  dw_rect frame;     /**< where blocks go */
  GPtrArray *pages;  /**< of dw_block, owned; as large as the paper */
  GArray *tops;      /**< private: of double, where the blocks of a page begin [pt] */
  dw_flow_head head; /**< of pages after the first; NULL = none */
  gpointer data;     /**< borrowed, for @p head */
} dw_flow;

/** One empty page. @param frame  of every page, in the paper */
void dw_flow_init (dw_flow *flow, double width, double height, const dw_rect *frame,
                   dw_flow_head head, gpointer data);

void dw_flow_clear (dw_flow *flow);

/** Where the first page begins. */
dw_place dw_flow_start (const dw_flow *flow);

/** The lower of two places. */
dw_place dw_place_later (dw_place a, dw_place b);

/** [pt] left on the page below a place. */
double dw_flow_room (const dw_flow *flow, dw_place place);

/** Borrowed: the page of a place. */
dw_block *dw_flow_page (const dw_flow *flow, dw_place place);

/** Go to the next page when less than a height [pt] is left, unless the page is still empty. */
void dw_flow_need (dw_flow *flow, double height, dw_place *place);

/**
 * Put a block at a place, or at the top of the next page when it does not fit below it; one that is
 * higher than a page goes to the top of one all the same.
 *
 * @param block  taken
 * @param x      [pt] from the left of the frame
 * @param place  moved below it
 */
void dw_flow_add (dw_flow *flow, dw_block *block, double x, dw_place *place);

/** As many blocks, one below the other. @param rows  of dw_block; emptied, not freed */
void dw_flow_add_rows (dw_flow *flow, GPtrArray *rows, double x, dw_place *place);

/** [pt] of blocks one below the other. @param rows  of dw_block */
double dw_rows_height (const GPtrArray *rows);

/** A list that owns its blocks. */
GPtrArray *dw_rows_new (void);

G_END_DECLS
