/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-laws.h"

#include <math.h>
#include <string.h>

#include "test-support.h"

/* [pt] What sums of rounded sizes may be off: Pango counts in 1/1024 of a point. */
static const double ROUNDING = 0.01;

/* [pt] Half of the widest stroke: a drawing's outline may stand on the edge of its box. */
static const double STROKE = 1.0;

/* [1] of a text's height, at its foot: room below the letters, where a line may run. */
static const double DESCENT = 0.25;

static const char *
name_of (const dw_item *item)
{
  static const char *const names[] = { [DW_ITEM_TEXT] = "text",
                                       [DW_ITEM_LINE] = "line",
                                       [DW_ITEM_FRAME] = "frame",
                                       [DW_ITEM_DRAWING] = "drawing" };
  return item->kind == DW_ITEM_TEXT ? pango_layout_get_text (item->text) : names[item->kind];
}

static void
expect_inside (const dw_item *item, const dw_rect *frame, const char *why)
{
  const dw_rect *b = &item->box;
  ck_assert_msg (b->x >= frame->x - ROUNDING && b->y >= frame->y - ROUNDING
                     && b->x + b->width <= frame->x + frame->width + ROUNDING
                     && b->y + b->height <= frame->y + frame->height + ROUNDING,
                 "%s: %.2f, %.2f, %.2f by %.2f is not inside %.2f, %.2f, %.2f by %.2f: \"%s\"", why,
                 b->x, b->y, b->width, b->height, frame->x, frame->y, frame->width, frame->height,
                 name_of (item));
}

/* How far two boxes lie in each other, less than 0 when they do not. */
static double
overlap (const dw_rect *a, const dw_rect *b)
{
  const double x = fmin (a->x + a->width, b->x + b->width) - fmax (a->x, b->x);
  const double y = fmin (a->y + a->height, b->y + b->height) - fmax (a->y, b->y);
  return fmin (x, y);
}

/* The letters without the room below them. */
static dw_rect
letters (const dw_item *item)
{
  dw_rect box = item->box;
  const int n = item->line >= 0 ? 1 : pango_layout_get_line_count (item->text);
  box.height -= DESCENT * box.height / n;
  return box;
}

static void
expect_apart (const dw_item *text, const dw_item *other, const char *why)
{
  if (other->kind == DW_ITEM_FRAME)
    return; /* what stands in a cell */
  const dw_rect inner = letters (text);
  const double depth = overlap (other->kind == DW_ITEM_LINE ? &inner : &text->box, &other->box);
  const bool is_apart = other->kind == DW_ITEM_LINE
                            /* a line has no width: what lies between the ends counts */
                            ? depth < 0.0
                            : depth <= ROUNDING;
  ck_assert_msg (is_apart, "%s: \"%s\" lies %.2f pt over \"%s\"", why, name_of (text), depth,
                 name_of (other));
}

static void
expect_readable (const dw_item *item, const char *why)
{
  const PangoFontDescription *font = pango_layout_get_font_description (item->text);
  const double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;
  ck_assert (pango_font_description_get_size_is_absolute (font));
  ck_assert_msg (size >= DW_TYPE_LEAST, "%s: %.2f pt: \"%s\"", why, size, name_of (item));
  ck_assert_msg (!pango_layout_is_ellipsized (item->text), "%s: cut: \"%s\"", why, name_of (item));
}

static void
expect_painted_inside (const dw_item *item, const char *why)
{
  double x, y, width, height;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  item->paint (cr, item->data);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  ck_assert_msg (x >= -STROKE && y >= -STROKE && x + width <= item->box.width + STROKE
                     && y + height <= item->box.height + STROKE,
                 "%s: a drawing of %.1f by %.1f has ink at %.1f, %.1f, %.1f by %.1f", why,
                 item->box.width, item->box.height, x, y, width, height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static bool
is_empty (const dw_item *item)
{
  return item->box.width <= 0.0 || item->box.height <= 0.0;
}

void
expect_lawful_block (const dw_block *block, const dw_rect *frame, const char *why)
{
  for (guint i = 0; i < block->items->len; i++)
    {
      const dw_item *item = &g_array_index (block->items, dw_item, i);
      expect_inside (item, frame, why);
      if (item->kind == DW_ITEM_DRAWING)
        expect_painted_inside (item, why);
      if (item->kind != DW_ITEM_TEXT || is_empty (item))
        continue;
      expect_readable (item, why);
      for (guint k = 0; k < block->items->len; k++)
        {
          const dw_item *other = &g_array_index (block->items, dw_item, k);
          const bool is_judged = other->kind != DW_ITEM_TEXT || (k > i && !is_empty (other));
          if (is_judged && k != i)
            expect_apart (item, other, why);
        }
    }
}

void
expect_lawful (const dw_sheet *sheet, const char *why)
{
  const dw_rect frame = dw_sheet_get_frame (sheet);
  for (int page = 0; page < dw_sheet_get_n_pages (sheet); page++)
    {
      g_autofree char *where = g_strdup_printf ("%s, page %d", why, page + 1);
      expect_lawful_block (dw_sheet_get_page (sheet, page), &frame, where);
    }
}
