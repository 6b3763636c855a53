/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-figures-table.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-part-words.h"

enum
{
  COLUMN_SPEED,
  COLUMN_COMPRESSION,
  COLUMN_COMPRESSION_CHANGE,
  COLUMN_REBOUND,
  COLUMN_REBOUND_CHANGE,
  COLUMN_SHARE,
  COLUMN_RATIO,
  N_COLUMNS
};

/* Right ends of the columns [1 of the width]; a change belongs to the figure before it. */
static const double ENDS[N_COLUMNS] = { 0.2, 0.32, 0.46, 0.58, 0.72, 0.86, 1.0 };

/* [pt] */
static const double CELL_GAP = 4.0;
static const double ROW_PAD = 1.0;
static const double WRITING_HEIGHT = 13.0;

static const int DIGITS = 3;

/* One row of cells, each with its text or NULL. */
typedef struct
{
  dw_type type;
  char *text[N_COLUMNS]; /* owned */
} table_row;

static void
row_clear (table_row *row)
{
  for (int i = 0; i < N_COLUMNS; i++)
    g_clear_pointer (&row->text[i], g_free);
}

static double
begin_of (int column, double width)
{
  return column == 0 ? 0.0 : ENDS[column - 1] * width + CELL_GAP;
}

/* Names begin at the left, figures end at the right. Returns where the row ends. */
static double
add_row (const dw_sheet_tools *tools, dw_block *block, const table_row *row, double y)
{
  double height = dw_typeset_line_height (tools->typeset, row->type);
  for (int i = 0; i < N_COLUMNS; i++)
    {
      if (row->text[i] == NULL)
        continue;
      const double x = begin_of (i, block->width);
      const double right = ENDS[i] * block->width;
      PangoLayout *text = dw_typeset_fit (tools->typeset, row->type, row->text[i], right - x);
      if (i != COLUMN_SPEED)
        pango_layout_set_alignment (text, PANGO_ALIGN_RIGHT);
      height = fmax (height, i == COLUMN_SPEED ? dw_block_add_text (block, text, x, y)
                                               : dw_block_add_text_right (block, text, right, y));
    }
  return y + height + ROW_PAD;
}

/* ---- heads ---- */

static double
add_heads (const dw_sheet_tools *tools, dw_block *block)
{
  const bool has_changes = tools->options.against != NULL || tools->options.setup == NULL;
  const dw_quantity quantity = tools->options.shows_damping ? DW_QUANTITY_DAMPING
                                                            : DW_QUANTITY_FORCE;
  const char *unit = dw_quantity_unit (quantity, tools->options.units);
  table_row row = { .type = DW_TYPE_SMALL };
  /* Translators: heads of narrow columns; a unit follows in the first. */
  row.text[COLUMN_SPEED] = g_strdup_printf (
      tools->options.shows_damping ? _ ("c in %s") : _ ("Force in %s"), unit);
  /* Translators: short for compression, head of a narrow column */
  row.text[COLUMN_COMPRESSION] = g_strdup (C_ ("narrow", "Comp."));
  /* Translators: change in percent, head of a narrow column */
  row.text[COLUMN_COMPRESSION_CHANGE] = has_changes ? g_strdup (C_ ("narrow", "change")) : NULL;
  /* Translators: short for rebound, head of a narrow column */
  row.text[COLUMN_REBOUND] = g_strdup (C_ ("narrow", "Reb."));
  row.text[COLUMN_REBOUND_CHANGE] = g_strdup (row.text[COLUMN_COMPRESSION_CHANGE]);
  /* Translators: rebound force over compression force, head of a narrow column */
  row.text[COLUMN_SHARE] = g_strdup (C_ ("narrow", "Share"));
  /* Translators: damping ratio, head of a narrow column */
  row.text[COLUMN_RATIO] = g_strdup (C_ ("narrow", "Ratio"));
  const double y = add_row (tools, block, &row, 0.0);
  row_clear (&row);
  dw_sheet_add_rule (block, 0.0, y, block->width);
  return y + ROW_PAD;
}

/* ---- figures ---- */

static char *
number (const dw_sheet_tools *tools, dw_quantity quantity, double value)
{
  return dw_quantity_format_digits (quantity, tools->options.units, value, DIGITS);
}

static char *
change (const dw_sheet_tools *tools, double percent)
{
  if (tools->options.against == NULL || isnan (percent))
    return NULL;
  return dw_compare_judge (percent) == DW_CHANGE_SAME ? g_strdup ("=")
                                                      : dw_quantity_format_change (percent);
}

static char *
value (const dw_sheet_tools *tools, const dw_comparison *c, int stroke, int speed)
{
  return tools->options.shows_damping
             ? number (tools, DW_QUANTITY_DAMPING, c->b.c[stroke][speed])
             : number (tools, DW_QUANTITY_FORCE, c->b.point[stroke][speed].force);
}

static char *
speed_words (const dw_sheet_tools *tools, int speed)
{
  const dw_speeds *speeds = &tools->options.project->speeds;
  const double values[DW_N_SPEEDS] = { speeds->low, speeds->middle, speeds->high };
  return dw_part_words_quantity (DW_QUANTITY_SPEED, tools->options.units, values[speed]);
}

static double
add_speed (const dw_sheet_tools *tools, dw_block *block, const dw_comparison *c, const dw_damper *b,
           dw_axle axle, int speed, double y)
{
  const dw_car *car = &tools->options.project->car;
  table_row row = { .type = DW_TYPE_BODY };
  row.text[COLUMN_SPEED] = speed_words (tools, speed);
  row.text[COLUMN_COMPRESSION] = value (tools, c, DW_COMPRESSION, speed);
  row.text[COLUMN_COMPRESSION_CHANGE] = change (tools, c->force[DW_COMPRESSION][speed]);
  row.text[COLUMN_REBOUND] = value (tools, c, DW_REBOUND, speed);
  row.text[COLUMN_REBOUND_CHANGE] = change (tools, c->force[DW_REBOUND][speed]);
  row.text[COLUMN_SHARE] = number (tools, DW_QUANTITY_NUMBER, c->b.rebound_share[speed]);
  if (car->has_sprung_mass[axle])
    row.text[COLUMN_RATIO] = number (
        tools, DW_QUANTITY_NUMBER,
        dw_figures_damping_ratio (&c->b, b, speed, car->sprung_mass[axle]));
  const double end = add_row (tools, block, &row, y);
  row_clear (&row);
  return end;
}

static double
add_pack (const dw_sheet_tools *tools, dw_block *block, const dw_comparison *c, double y)
{
  table_row row = { .type = DW_TYPE_BODY };
  row.text[COLUMN_SPEED] = g_strdup (_ ("Pack"));
  row.text[COLUMN_COMPRESSION] = number (tools, DW_QUANTITY_NUMBER, c->b.pack[DW_COMPRESSION]);
  row.text[COLUMN_COMPRESSION_CHANGE] = change (tools, c->pack[DW_COMPRESSION]);
  row.text[COLUMN_REBOUND] = number (tools, DW_QUANTITY_NUMBER, c->b.pack[DW_REBOUND]);
  row.text[COLUMN_REBOUND_CHANGE] = change (tools, c->pack[DW_REBOUND]);
  const double end = add_row (tools, block, &row, y);
  row_clear (&row);
  return end;
}

/* ---- blank ---- */

static double
add_blank (const dw_sheet_tools *tools, dw_block *block, const char *name, double y)
{
  const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_BODY);
  const double end = y + WRITING_HEIGHT;
  dw_block_add_text (
      block, dw_typeset_fit (tools->typeset, DW_TYPE_BODY, name, ENDS[COLUMN_SPEED] * block->width),
      0.0, end - line);
  for (int i = COLUMN_COMPRESSION; i < N_COLUMNS; i++)
    dw_sheet_add_rule (block, begin_of (i, block->width), end,
                       ENDS[i] * block->width - begin_of (i, block->width));
  return end + ROW_PAD;
}

dw_block *
dw_figures_table_make (const dw_sheet_tools *tools, const dw_comparison *comparison,
                       const dw_damper *b, dw_axle axle)
{
  dw_block *block = dw_block_new (dw_sheet_column (tools));
  double y = add_heads (tools, block);
  for (int speed = 0; speed < DW_N_SPEEDS; speed++)
    {
      g_autofree char *name = speed_words (tools, speed);
      y = comparison != NULL ? add_speed (tools, block, comparison, b, axle, speed, y)
                             : add_blank (tools, block, name, y);
    }
  y = comparison != NULL ? add_pack (tools, block, comparison, y)
                         : add_blank (tools, block, _ ("Pack"), y);
  block->height = y;
  return block;
}
