/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-tools.h"

#include <glib/gi18n.h>
#include <locale.h>

/* [pt] Above and below a heading's line. */
static const double HEADING_PAD = 2.5;

dw_sheet_tools *
dw_sheet_tools_new (const dw_sheet_options *options)
{
  dw_sheet_tools *tools = g_new0 (dw_sheet_tools, 1);
  tools->options = *options;
  tools->frame = dw_paper_frame (options->paper);
  tools->typeset = dw_typeset_new (options->font_family);
  tools->style = dw_chart_style_make (DW_STYLE_PRINT);
  if (options->font_family != NULL)
    tools->style.font_family = options->font_family;
  tools->pango = dw_text_pango_new (&tools->style);
  tools->metrics = dw_text_pango_metrics (tools->pango);
  tools->numbers = dw_number_format_defaults ();
  g_strlcpy (tools->numbers.decimal, localeconv ()->decimal_point, sizeof tools->numbers.decimal);
  return tools;
}

void
dw_sheet_tools_free (dw_sheet_tools *tools)
{
  if (tools == NULL)
    return;
  dw_typeset_free (tools->typeset);
  dw_text_pango_free (tools->pango);
  g_free (tools);
}

double
dw_sheet_column (const dw_sheet_tools *tools)
{
  return 0.5 * (tools->frame.width - DW_SHEET_GAP);
}

double
dw_sheet_column_at (const dw_sheet_tools *tools, dw_axle axle)
{
  return axle == DW_FRONT ? 0.0 : dw_sheet_column (tools) + DW_SHEET_GAP;
}

const char *
dw_sheet_axle_word (dw_axle axle)
{
  return axle == DW_FRONT ? _ ("Front") : _ ("Rear");
}

const char *
dw_sheet_name (const dw_setup *setup)
{
  return *setup->name != '\0' ? setup->name : setup->id;
}

void
dw_sheet_add_rule (dw_block *block, double x, double y, double width)
{
  dw_block_add_line (block, (dw_spot){ x, y }, (dw_spot){ x + width, y }, DW_SHEET_RULE);
}

dw_block *
dw_sheet_heading (const dw_sheet_tools *tools, const char *text, double width)
{
  dw_block *block = dw_block_new (width);
  const double y = dw_block_add_text (
      block, dw_typeset_fit (tools->typeset, DW_TYPE_HEADING, text, width), 0.0, 0.0);
  dw_block_add_line (block, (dw_spot){ 0.0, y }, (dw_spot){ width, y }, 2.0 * DW_SHEET_RULE);
  block->height = y + HEADING_PAD;
  return block;
}

double
dw_sheet_heading_height (const dw_sheet_tools *tools)
{
  return dw_typeset_line_height (tools->typeset, DW_TYPE_HEADING) + HEADING_PAD;
}

dw_block *
dw_sheet_space (double height)
{
  dw_block *block = dw_block_new (0.0);
  block->height = height;
  return block;
}

void
dw_sheet_add_lines (const dw_sheet_tools *tools, GPtrArray *rows, dw_type type, const char *text,
                    double width)
{
  g_autoptr (PangoLayout) layout = dw_typeset_lines (tools->typeset, type, text, width);
  for (int i = 0; i < pango_layout_get_line_count (layout); i++)
    {
      dw_block *row = dw_block_new (width);
      row->height = dw_block_add_text_line (row, layout, i, 0.0, 0.0);
      g_ptr_array_add (rows, row);
    }
}
