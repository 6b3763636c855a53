/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-bench-card.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-bench-steps.h"
#include "sheet/dw-damper-card.h"

/* [pt] */
static const double PART_GAP = 6.0;
static const double STEP_PAD = 2.5;
static const double NUMBER_WIDTH = 16.0;
static const double TICK_SIZE = 9.0;
static const double TICK_STEP = 24.0;
static const double WRITING_HEIGHT = 14.5;

static const int MOST_WRITING_LINES = 8;

/* [1] of the width: names of what is measured. */
static const double NAME_PART = 0.4;

enum
{
  N_SIDES = 2,
  N_WHEELS = DW_N_AXLES * N_SIDES
};

/* ---- cautions ---- */

static void
add_cautions (const dw_sheet_tools *tools, dw_sheet_part *part)
{
  static const char *const cautions[] = {
    N_ ("Wear eye protection; hold small drills in a pin vice or a bench drill, the piston in a "
        "clamp, never in the fingers."),
    N_ ("Holes cannot be made smaller again: check size, number and place before the drill turns."),
    N_ ("Release gas pressure before opening; lay springs down, they jump."),
    N_ ("Silicone oil on the floor is slippery: wipe it up, keep it off tyres and brakes."),
  };
  g_autoptr (GPtrArray) rows = dw_rows_new ();
  dw_sheet_part_add_heading (part, _ ("Before you begin"), 0.0);
  for (gsize i = 0; i < G_N_ELEMENTS (cautions); i++)
    {
      g_autofree char *text = g_strconcat ("• ", _ (cautions[i]), NULL);
      dw_sheet_add_lines (tools, rows, DW_TYPE_BODY, text, tools->frame.width);
    }
  g_ptr_array_add (rows, dw_sheet_space (PART_GAP));
  dw_sheet_part_add_rows (part, rows);
}

/* ---- steps ---- */

static double
tick_at (double width, int side)
{
  return width - (N_SIDES - side) * TICK_STEP + 0.5 * (TICK_STEP - TICK_SIZE);
}

/* The axle, and what the boxes under it are for. */
static dw_block *
column_head (const dw_sheet_tools *tools, dw_axle axle)
{
  const double width = dw_sheet_column (tools);
  const char *const sides[N_SIDES] = {
    /* Translators: left, over a column of boxes to tick; one or two letters */
    C_ ("narrow", "L"),
    /* Translators: right, over a column of boxes to tick; one or two letters */
    C_ ("narrow", "R"),
  };
  dw_block *block = dw_sheet_heading (
      tools, axle == DW_FRONT ? _ ("Work on the front dampers") : _ ("Work on the rear dampers"),
      width);
  for (int side = 0; side < N_SIDES; side++)
    dw_block_add_text (block, dw_typeset_line (tools->typeset, DW_TYPE_STRONG, sides[side]),
                       tick_at (width, side) + 1.0, 1.0);
  return block;
}

/* @p is_ticked  with boxes; an action that its items make up has none */
static dw_block *
step_block (const dw_sheet_tools *tools, const dw_bench_step *step, int number, bool is_ticked)
{
  const double width = dw_sheet_column (tools);
  const double text_width = width - NUMBER_WIDTH - N_SIDES * TICK_STEP;
  const bool is_action = step->kind == DW_STEP_ACTION;
  dw_block *block = dw_block_new (width);
  if (is_action)
    {
      g_autofree char *text = g_strdup_printf ("%d.", number);
      dw_block_add_text (block, dw_typeset_line (tools->typeset, DW_TYPE_STRONG, text), 0.0, 0.0);
    }
  const dw_type type = step->kind == DW_STEP_ITEM ? DW_TYPE_STRONG : DW_TYPE_BODY;
  block->height = STEP_PAD
                  + dw_block_add_text (
                      block, dw_typeset_values (tools->typeset, type, step->text, text_width),
                      NUMBER_WIDTH, 0.0);
  for (int side = 0; is_ticked && side < N_SIDES; side++)
    dw_block_add_frame (block, (dw_rect){ tick_at (width, side), 1.0, TICK_SIZE, TICK_SIZE },
                        1.5 * DW_SHEET_RULE, -1.0);
  block->height = fmax (block->height, TICK_SIZE + STEP_PAD);
  return block;
}

static void
add_steps (const dw_sheet_tools *tools, dw_axle axle, GPtrArray *rows)
{
  const dw_sheet_options *o = &tools->options;
  const dw_damper *before = o->against != NULL ? &o->against->damper[axle] : NULL;
  g_autoptr (GArray) steps = dw_bench_steps_make (before, &o->setup->damper[axle],
                                                  dw_project_get_parts (o->project), o->units);
  int number = 0;
  g_ptr_array_add (rows, column_head (tools, axle));
  for (guint i = 0; i < steps->len; i++)
    {
      const dw_bench_step *step = &g_array_index (steps, dw_bench_step, i);
      const bool is_action = step->kind == DW_STEP_ACTION;
      number += is_action ? 1 : 0;
      const bool has_items = i + 1 < steps->len && step[1].kind == DW_STEP_ITEM;
      const bool is_ticked = step->kind == DW_STEP_ITEM || (is_action && !has_items);
      g_ptr_array_add (rows, step_block (tools, step, number, is_ticked));
    }
}

/* ---- what is measured afterwards ---- */

static double
wheel_at (double width, int wheel)
{
  return width * (NAME_PART + (1.0 - NAME_PART) * wheel / N_WHEELS);
}

static dw_block *
measured_head (const dw_sheet_tools *tools)
{
  const char *const wheels[N_WHEELS] = { _ ("front left"), _ ("front right"), _ ("rear left"),
                                         _ ("rear right") };
  const double width = tools->frame.width;
  dw_block *block = dw_block_new (width);
  for (int i = 0; i < N_WHEELS; i++)
    {
      const double x = wheel_at (width, i) + STEP_PAD;
      const double height = dw_block_add_text (
          block,
          dw_typeset_fit (tools->typeset, DW_TYPE_STRONG, wheels[i],
                          wheel_at (width, i + 1) - x - STEP_PAD),
          x, 0.0);
      block->height = fmax (block->height, height);
    }
  return block;
}

/* A name and four cells, frames that touch. */
static dw_block *
measured_row (const dw_sheet_tools *tools, const char *name, dw_quantity quantity)
{
  const double width = tools->frame.width;
  const char *unit = dw_quantity_unit (quantity, tools->options.units);
  g_autofree char *text = *unit != '\0' ? g_strdup_printf ("%s, %s", name, unit) : g_strdup (name);
  dw_block *block = dw_block_new (width);
  PangoLayout *words = dw_typeset_fit (tools->typeset, DW_TYPE_BODY, text,
                                       NAME_PART * width - 2.0 * STEP_PAD);
  const double height = dw_block_add_text (block, words, STEP_PAD, STEP_PAD);
  block->height = fmax (WRITING_HEIGHT, height + 2.0 * STEP_PAD);
  for (int i = -1; i < N_WHEELS; i++)
    {
      const double x = i < 0 ? 0.0 : wheel_at (width, i);
      dw_block_add_frame (block, (dw_rect){ x, 0.0, wheel_at (width, i + 1) - x, block->height },
                          DW_SHEET_RULE, -1.0);
    }
  return block;
}

static void
append (dw_block *all, dw_block *row)
{
  const double y = all->height;
  all->height += row->height;
  dw_block_place (all, row, 0.0, y);
}

static void
add_measured (const dw_sheet_tools *tools, dw_sheet_part *part)
{
  static const struct
  {
    const char *name;
    dw_quantity quantity;
  } rows[] = {
    { N_ ("Largest drill that goes into the holes"), DW_QUANTITY_LENGTH },
    { N_ ("Oil filled in"), DW_QUANTITY_VOLUME },
    { N_ ("Travel of the shaft"), DW_QUANTITY_LENGTH },
    { N_ ("Shaft comes out by itself"), DW_QUANTITY_LENGTH },
    { N_ ("Time for the stroke under one weight, in and out, s"), DW_QUANTITY_NUMBER },
    { N_ ("Length of the fitted spring"), DW_QUANTITY_LENGTH },
    { N_ ("Ride height"), DW_QUANTITY_LENGTH },
    { N_ ("Droop"), DW_QUANTITY_LENGTH },
  };
  /* one box, not two halves: it goes on the next page whole */
  dw_block *all = dw_block_new (tools->frame.width);
  append (all, dw_sheet_heading (tools, _ ("Measured after building"), all->width));
  append (all, measured_head (tools));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    append (all, measured_row (tools, _ (rows[i].name), rows[i].quantity));
  dw_sheet_part_add (part, all);
}

/* ---- all of it ---- */

dw_sheet_part *
dw_bench_card_new (const dw_sheet_tools *tools)
{
  const dw_sheet_options *o = &tools->options;
  g_return_val_if_fail (o->setup != NULL, NULL);

  char *from = o->against != NULL
                   /* Translators: the setup that is built now */
                   ? g_strdup_printf (_ ("built from “%s”"), dw_sheet_name (o->against))
                   : g_strdup (_ ("built from new parts"));
  const dw_sheet_title title
      = { .title = dw_sheet_name (o->setup), .kind = _ ("Bench card"), .note = from };
  g_autoptr (GPtrArray) front = dw_rows_new ();
  g_autoptr (GPtrArray) rear = dw_rows_new ();
  GPtrArray *const columns[DW_N_AXLES] = { front, rear };
  dw_sheet_part *part = dw_sheet_part_new (tools, &title);
  part->owned = from;
  part->free_owned = g_free;
  add_cautions (tools, part);
  dw_sheet_part_add (part, dw_damper_card_drawings (tools, o->setup->damper));
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    add_steps (tools, (dw_axle)axle, columns[axle]);
  dw_sheet_part_add_columns (part, columns);
  dw_sheet_part_add (part, dw_sheet_space (PART_GAP));
  add_measured (tools, part);
  dw_sheet_part_add (part, dw_sheet_space (PART_GAP));
  dw_sheet_part_add_heading (part, _ ("Notes"), WRITING_HEIGHT);
  dw_sheet_part_add_writing_lines (part, WRITING_HEIGHT, MOST_WRITING_LINES);
  return part;
}
