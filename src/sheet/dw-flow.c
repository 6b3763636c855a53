/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-flow.h"

/* [pt] Sums of heights may differ so much from the height they were measured as. */
static const double ROUNDING = 1e-6;

static void
free_block (gpointer block)
{
  dw_block_free (block);
}

/* Blocks begin at @p top. */
static void
add_page (dw_flow *flow, dw_block *page, double top)
{
  page->height = flow->height;
  g_ptr_array_add (flow->pages, page);
  g_array_append_val (flow->tops, top);
}

void
dw_flow_init (dw_flow *flow, double width, double height, const dw_rect *frame, dw_flow_head head,
              gpointer data)
{
  *flow = (dw_flow){ .width = width,
                     .height = height,
                     .frame = *frame,
                     .pages = g_ptr_array_new_with_free_func (free_block),
                     .tops = g_array_new (FALSE, FALSE, sizeof (double)),
                     .head = head,
                     .data = data };
  add_page (flow, dw_block_new (width), frame->y);
}

void
dw_flow_clear (dw_flow *flow)
{
  g_clear_pointer (&flow->pages, g_ptr_array_unref);
  g_clear_pointer (&flow->tops, g_array_unref);
}

static double
top_of (const dw_flow *flow, int page)
{
  return g_array_index (flow->tops, double, page);
}

dw_place
dw_flow_start (const dw_flow *flow)
{
  return (dw_place){ 0, flow->frame.y };
}

dw_place
dw_place_later (dw_place a, dw_place b)
{
  if (a.page != b.page)
    return a.page > b.page ? a : b;
  return a.y > b.y ? a : b;
}

double
dw_flow_room (const dw_flow *flow, dw_place place)
{
  return flow->frame.y + flow->frame.height - place.y;
}

dw_block *
dw_flow_page (const dw_flow *flow, dw_place place)
{
  return g_ptr_array_index (flow->pages, (guint)place.page);
}

/* Another column may have begun the next page already. */
static void
turn_page (dw_flow *flow, dw_place *place)
{
  place->page++;
  if ((guint)place->page == flow->pages->len)
    {
      dw_block *page = dw_block_new (flow->width);
      add_page (flow, page, flow->head != NULL ? flow->head (page, flow->data) : flow->frame.y);
    }
  place->y = top_of (flow, place->page);
}

void
dw_flow_need (dw_flow *flow, double height, dw_place *place)
{
  if (height > dw_flow_room (flow, *place) + ROUNDING && place->y > top_of (flow, place->page))
    turn_page (flow, place);
}

void
dw_flow_add (dw_flow *flow, dw_block *block, double x, dw_place *place)
{
  dw_flow_need (flow, block->height, place);
  const double y = place->y;
  place->y += block->height;
  dw_block_place (dw_flow_page (flow, *place), block, flow->frame.x + x, y);
}

void
dw_flow_add_rows (dw_flow *flow, GPtrArray *rows, double x, dw_place *place)
{
  for (guint i = 0; i < rows->len; i++)
    {
      dw_block *row = g_ptr_array_index (rows, i);
      rows->pdata[i] = NULL;
      dw_flow_add (flow, row, x, place);
    }
  g_ptr_array_set_size (rows, 0);
}

double
dw_rows_height (const GPtrArray *rows)
{
  double height = 0.0;
  for (guint i = 0; i < rows->len; i++)
    height += ((const dw_block *)g_ptr_array_index (rows, i))->height;
  return height;
}

GPtrArray *
dw_rows_new (void)
{
  return g_ptr_array_new_with_free_func (free_block);
}
