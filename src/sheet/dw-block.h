/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-block.h
 * A part of a page, or a whole one: texts, lines, frames and drawings with their places.
 *
 * Making and painting are apart, so that tests read what stands where. Lengths are points from the
 * block's upper left corner, y down; ink is black. One thread at a time.
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>
#include <stdbool.h>

#include "draw/dw-geometry.h"

G_BEGIN_DECLS

typedef enum
{
  DW_ITEM_TEXT,   /**< all lines of a layout, or one of them */
  DW_ITEM_LINE,   /**< straight */
  DW_ITEM_FRAME,  /**< a rectangle, with or without a tone */
  DW_ITEM_DRAWING /**< something that paints itself */
} dw_item_kind;

/** Paint a drawing; the origin is the upper left corner of its box. */
typedef void (*dw_item_paint) (cairo_t *cr, gpointer data);

/** One thing on a block. Fields that its kind does not need are 0. */
typedef struct
{
  dw_item_kind kind;
  dw_rect box;         /**< what it covers */
  dw_spot at;          /**< text: the layout's corner, or a line's left end on its baseline */
  PangoLayout *text;   /**< owned */
  int line;            /**< of the text; -1 = all */
  double width;        /**< [pt] of a stroke; 0 = none */
  double tone;         /**< [1] 0 black to 1 white, inside a frame; < 0 = none */
  dw_item_paint paint; /**< drawing */
  gpointer data;       /**< owned, for @p paint */
  GDestroyNotify free; /**< of @p data */
} dw_item;

/** Free with dw_block_free(). */
typedef struct
{
  double width;  /**< [pt] */
  double height; /**< [pt] as far as its makers say it goes */
  GArray *items; /**< of dw_item, in the order of reading; read only */
} dw_block;

/** Empty, without height. @param width  [pt] */
dw_block *dw_block_new (double width);

/** NULL is allowed. */
void dw_block_free (dw_block *block);

/**
 * Put a text with its upper left corner at a spot.
 *
 * @param text  taken
 * @return      [pt] its height
 */
double dw_block_add_text (dw_block *block, PangoLayout *text, double x, double y);

/** The same with its right end at @p right [pt]. */
double dw_block_add_text_right (dw_block *block, PangoLayout *text, double right, double y);

/** One line of a text, which is not taken; returns its height [pt]. */
double dw_block_add_text_line (dw_block *block, PangoLayout *text, int line, double x, double y);

/** @param width  [pt] of the stroke */
void dw_block_add_line (dw_block *block, dw_spot from, dw_spot to, double width);

/** @param width  [pt] of the stroke, 0 = none @param tone  0 black to 1 white, < 0 = none */
void dw_block_add_frame (dw_block *block, dw_rect box, double width, double tone);

/** @param data  taken */
void dw_block_add_drawing (dw_block *block, dw_rect box, dw_item_paint paint, gpointer data,
                           GDestroyNotify free_data);

/** Move everything of another block, which is taken, onto this one. */
void dw_block_place (dw_block *block, dw_block *other, double x, double y);

void dw_block_paint (const dw_block *block, cairo_t *cr);

/** All its texts in the order of reading, a line each; what drawings write is not among them. Caller
 * frees. */
char *dw_block_get_words (const dw_block *block);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_block, dw_block_free)

G_END_DECLS
