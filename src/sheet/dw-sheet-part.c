/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-part.h"

static double
begin_page (dw_block *page, gpointer data)
{
  const dw_sheet_part *part = data;
  dw_block *head = dw_sheet_head_continued (part->tools, &part->title);
  double end = part->flow.frame.y + head->height;
  dw_block_place (page, head, part->flow.frame.x, part->flow.frame.y);
  if (part->heads != NULL)
    {
      dw_block *heads = part->heads (part->tools);
      const double y = end;
      end += heads->height;
      dw_block_place (page, heads, part->flow.frame.x, y);
    }
  return end;
}

dw_sheet_part *
dw_sheet_part_new (const dw_sheet_tools *tools, const dw_sheet_title *title)
{
  dw_sheet_part *part = g_new0 (dw_sheet_part, 1);
  dw_rect frame = tools->frame;
  frame.height -= dw_sheet_foot_height (tools);
  part->tools = tools;
  part->title = *title;
  dw_flow_init (&part->flow, dw_paper_width (tools->options.paper),
                dw_paper_height (tools->options.paper), &frame, begin_page, part);
  part->place = dw_flow_start (&part->flow);
  dw_sheet_part_add (part, dw_sheet_head_make (tools, title));
  return part;
}

void
dw_sheet_part_free (dw_sheet_part *part)
{
  if (part == NULL)
    return;
  dw_flow_clear (&part->flow);
  if (part->free_owned != NULL)
    part->free_owned (part->owned);
  g_free (part);
}

void
dw_sheet_part_add (dw_sheet_part *part, dw_block *block)
{
  dw_flow_add (&part->flow, block, 0.0, &part->place);
}

void
dw_sheet_part_add_heading (dw_sheet_part *part, const char *text, double next)
{
  dw_block *heading = dw_sheet_heading (part->tools, text, part->tools->frame.width);
  dw_flow_need (&part->flow, heading->height + next, &part->place);
  dw_sheet_part_add (part, heading);
}

void
dw_sheet_part_add_writing_lines (dw_sheet_part *part, double step, int most)
{
  for (int i = 0; i < most && dw_sheet_part_room (part) >= step; i++)
    {
      dw_block *line = dw_block_new (part->tools->frame.width);
      line->height = step;
      dw_sheet_add_rule (line, 0.0, step - DW_SHEET_RULE, line->width);
      dw_sheet_part_add (part, line);
    }
}

void
dw_sheet_part_add_rows (dw_sheet_part *part, GPtrArray *rows)
{
  dw_flow_add_rows (&part->flow, rows, 0.0, &part->place);
}

void
dw_sheet_part_add_columns (dw_sheet_part *part, GPtrArray *const columns[DW_N_AXLES])
{
  dw_place end = part->place;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_place place = part->place;
      dw_flow_add_rows (&part->flow, columns[axle], dw_sheet_column_at (part->tools, (dw_axle)axle),
                        &place);
      end = dw_place_later (end, place);
    }
  part->place = end;
}

double
dw_sheet_part_room (const dw_sheet_part *part)
{
  return dw_flow_room (&part->flow, part->place);
}
