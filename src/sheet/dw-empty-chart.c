/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-empty-chart.h"

#include <glib/gi18n.h>

enum
{
  N_ACROSS = 10,
  N_UP = 8 /* the middle line is force 0 */
};

/* [pt] */
static const double GRID_WIDTH = 0.5;
static const double PAD = 2.0;

static void
add_grid (dw_block *block, const dw_rect *plot)
{
  for (int i = 1; i < N_ACROSS; i++)
    {
      const double x = plot->x + i * plot->width / N_ACROSS;
      dw_block_add_line (block, (dw_spot){ x, plot->y }, (dw_spot){ x, plot->y + plot->height },
                         GRID_WIDTH);
    }
  for (int i = 1; i < N_UP; i++)
    {
      const double y = plot->y + i * plot->height / N_UP;
      dw_block_add_line (block, (dw_spot){ plot->x, y }, (dw_spot){ plot->x + plot->width, y },
                         i == N_UP / 2 ? 3.0 * GRID_WIDTH : GRID_WIDTH);
    }
  dw_block_add_frame (block, *plot, 2.0 * GRID_WIDTH, -1.0);
}

static void
add_words (const dw_sheet_tools *tools, dw_block *block, const dw_rect *area)
{
  const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_SMALL);
  const dw_quantity quantity = tools->options.shows_damping ? DW_QUANTITY_DAMPING
                                                            : DW_QUANTITY_FORCE;
  g_autofree char *up = g_strdup_printf (
      /* Translators: above a chart to draw in; a unit follows */
      tools->options.shows_damping ? _ ("c in %s, up: compression, down: rebound")
                                   : _ ("Force in %s, up: compression, down: rebound"),
      dw_quantity_unit (quantity, tools->options.units));
  /* Translators: below a chart to draw in; a unit follows */
  g_autofree char *across = g_strdup_printf (
      _ ("Shaft speed in %s"), dw_quantity_unit (DW_QUANTITY_SPEED, tools->options.units));
  dw_block_add_text (block, dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, up, area->width),
                     area->x, area->y);
  dw_block_add_text_right (block,
                           dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, across, area->width),
                           area->x + area->width, area->y + area->height - line);
}

void
dw_empty_chart_add (const dw_sheet_tools *tools, dw_block *block, const dw_rect *box)
{
  const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_SMALL) + PAD;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const dw_rect area = { box->x + dw_sheet_column_at (tools, (dw_axle)axle), box->y,
                             dw_sheet_column (tools), box->height };
      const dw_rect plot = { area.x, area.y + line, area.width, area.height - 2.0 * line };
      add_words (tools, block, &area);
      add_grid (block, &plot);
    }
}
