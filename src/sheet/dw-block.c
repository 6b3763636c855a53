/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-block.h"

#include <math.h>
#include <pango/pangocairo.h>

static void
clear_item (gpointer data)
{
  dw_item *item = data;
  g_clear_object (&item->text);
  if (item->free != NULL)
    item->free (item->data);
}

dw_block *
dw_block_new (double width)
{
  dw_block *block = g_new0 (dw_block, 1);
  block->width = width;
  block->items = g_array_new (FALSE, TRUE, sizeof (dw_item));
  g_array_set_clear_func (block->items, clear_item);
  return block;
}

void
dw_block_free (dw_block *block)
{
  if (block == NULL)
    return;
  g_array_unref (block->items);
  g_free (block);
}

/* ---- what stands on it ---- */

static dw_rect
to_points (const PangoRectangle *r, double x, double y)
{
  return (dw_rect){ x + (double)r->x / PANGO_SCALE, y + (double)r->y / PANGO_SCALE,
                    (double)r->width / PANGO_SCALE, (double)r->height / PANGO_SCALE };
}

double
dw_block_add_text (dw_block *block, PangoLayout *text, double x, double y)
{
  PangoRectangle logical;
  pango_layout_get_extents (text, NULL, &logical);
  const dw_item item = { .kind = DW_ITEM_TEXT,
                         .box = to_points (&logical, x, y),
                         .at = { x, y },
                         .text = text,
                         .line = -1,
                         .tone = -1.0 };
  g_array_append_val (block->items, item);
  return item.box.height;
}

double
dw_block_add_text_right (dw_block *block, PangoLayout *text, double right, double y)
{
  PangoRectangle logical;
  pango_layout_get_extents (text, NULL, &logical);
  /* lines that stand at the right of a width begin away from the layout's corner */
  return dw_block_add_text (block, text, right - (double)(logical.x + logical.width) / PANGO_SCALE,
                            y);
}

double
dw_block_add_text_line (dw_block *block, PangoLayout *text, int line, double x, double y)
{
  PangoLayoutIter *iter = pango_layout_get_iter (text);
  PangoRectangle logical;
  for (int i = 0; i < line; i++)
    pango_layout_iter_next_line (iter);
  pango_layout_iter_get_line_extents (iter, NULL, &logical);
  const int baseline = pango_layout_iter_get_baseline (iter) - logical.y;
  pango_layout_iter_free (iter);

  logical.y = 0;
  const dw_item item = { .kind = DW_ITEM_TEXT,
                         .box = to_points (&logical, x, y),
                         .at = { x + (double)logical.x / PANGO_SCALE,
                                 y + (double)baseline / PANGO_SCALE },
                         .text = g_object_ref (text),
                         .line = line,
                         .tone = -1.0 };
  g_array_append_val (block->items, item);
  return item.box.height;
}

void
dw_block_add_line (dw_block *block, dw_spot from, dw_spot to, double width)
{
  const dw_item item = { .kind = DW_ITEM_LINE,
                         .box = { from.x, from.y, to.x - from.x, to.y - from.y },
                         .width = width,
                         .tone = -1.0 };
  g_array_append_val (block->items, item);
}

void
dw_block_add_frame (dw_block *block, dw_rect box, double width, double tone)
{
  const dw_item item = { .kind = DW_ITEM_FRAME, .box = box, .width = width, .tone = tone };
  g_array_append_val (block->items, item);
}

void
dw_block_add_drawing (dw_block *block, dw_rect box, dw_item_paint paint, gpointer data,
                      GDestroyNotify free_data)
{
  const dw_item item = { .kind = DW_ITEM_DRAWING,
                         .box = box,
                         .tone = -1.0,
                         .paint = paint,
                         .data = data,
                         .free = free_data };
  g_array_append_val (block->items, item);
}

void
dw_block_place (dw_block *block, dw_block *other, double x, double y)
{
  for (guint i = 0; i < other->items->len; i++)
    {
      dw_item item = g_array_index (other->items, dw_item, i);
      item.box.x += x;
      item.box.y += y;
      item.at.x += x;
      item.at.y += y;
      g_array_append_val (block->items, item);
    }
  g_array_set_clear_func (other->items, NULL); /* what its items own has moved */
  dw_block_free (other);
}

/* ---- painting ---- */

static void
paint_text (const dw_item *item, cairo_t *cr)
{
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_move_to (cr, item->at.x, item->at.y);
  if (item->line < 0)
    pango_cairo_show_layout (cr, item->text);
  else
    pango_cairo_show_layout_line (cr, pango_layout_get_line_readonly (item->text, item->line));
}

static void
paint_frame (const dw_item *item, cairo_t *cr)
{
  cairo_rectangle (cr, item->box.x, item->box.y, item->box.width, item->box.height);
  if (item->tone >= 0.0)
    {
      cairo_set_source_rgb (cr, item->tone, item->tone, item->tone);
      cairo_fill_preserve (cr);
    }
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_set_line_width (cr, item->width);
  if (item->width > 0.0)
    cairo_stroke (cr);
  cairo_new_path (cr);
}

static void
paint_line (const dw_item *item, cairo_t *cr)
{
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_set_line_width (cr, item->width);
  cairo_move_to (cr, item->box.x, item->box.y);
  cairo_rel_line_to (cr, item->box.width, item->box.height);
  cairo_stroke (cr);
}

static void
paint_item (const dw_item *item, cairo_t *cr)
{
  cairo_save (cr);
  switch (item->kind)
    {
    case DW_ITEM_TEXT:
      paint_text (item, cr);
      break;
    case DW_ITEM_LINE:
      paint_line (item, cr);
      break;
    case DW_ITEM_FRAME:
      paint_frame (item, cr);
      break;
    case DW_ITEM_DRAWING:
      cairo_translate (cr, item->box.x, item->box.y);
      item->paint (cr, item->data);
      break;
    }
  cairo_restore (cr);
}

void
dw_block_paint (const dw_block *block, cairo_t *cr)
{
  for (guint i = 0; i < block->items->len; i++)
    paint_item (&g_array_index (block->items, dw_item, i), cr);
}

char *
dw_block_get_words (const dw_block *block)
{
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      if (item->kind != DW_ITEM_TEXT)
        continue;
      const char *text = pango_layout_get_text (item->text);
      if (item->line < 0)
        g_string_append (words, text);
      else
        {
          const PangoLayoutLine *line = pango_layout_get_line_readonly (item->text, item->line);
          g_string_append_len (words, text + line->start_index, line->length);
        }
      g_string_append_c (words, '\n');
    }
  return g_string_free (words, FALSE);
}
