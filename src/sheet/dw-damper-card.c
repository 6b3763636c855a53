/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-damper-card.h"

#include <glib/gi18n.h>
#include <math.h>

#include "draw/dw-piston-layout.h"
#include "draw/dw-stack-paint.h"
#include "sheet/dw-build-words.h"
#include "sheet/dw-chart-words.h"

/* [pt] */
static const double DRAWING_HEIGHT = 112.0;
static const double NAME_GAP = 6.0;
static const double ROW_PAD = 1.2;
static const double WRITING_HEIGHT = 13.0;

/* [1] of a column: the face, the rest is the stack; names of parts before their values. */
static const double FACE_PART = 0.46;
static const double NAME_PART = 0.27;

static const double TURN = 6.283185307179586; /* [rad] */

/* ---- drawings ---- */

/* A layout with the style that it is painted in. */
typedef struct
{
  const dw_chart_style *style; /* borrowed */
  dw_piston_layout *face;      /* owned, or NULL */
  dw_stack_layout *stack;      /* owned, or NULL */
} drawing;

static void
free_drawing (gpointer data)
{
  drawing *d = data;
  dw_piston_layout_free (d->face);
  dw_stack_layout_free (d->stack);
  g_free (d);
}

static void
paint_drawing (cairo_t *cr, gpointer data)
{
  const drawing *d = data;
  if (d->face != NULL)
    dw_piston_paint (d->face, d->style, -1, cr);
  if (d->stack != NULL)
    dw_stack_paint (d->stack, d->style, cr);
}

static dw_piston_labels
face_labels (void)
{
  /* The holes stand in the list below, in the user's unit. */
  dw_piston_labels labels = dw_piston_labels_defaults ();
  /* translators: scale of a drawing */
  labels.scale = _ ("{scale} : 1");
  labels.open = NULL;
  labels.covered = NULL;
  return labels;
}

static void
add_face (const dw_sheet_tools *tools, dw_block *block, const dw_damper *damper, dw_rect box)
{
  const dw_rect area = { 0.0, 0.0, box.width, box.height };
  const dw_piston_labels labels = face_labels ();
  drawing *d = g_new0 (drawing, 1);
  d->style = &tools->style;
  d->face = dw_piston_layout_new (damper, &labels, &tools->numbers, &tools->style, &tools->metrics,
                                  &area);
  dw_block_add_drawing (block, box, paint_drawing, d, free_drawing);
}

static dw_stack_labels
stack_labels (const dw_sheet_tools *tools)
{
  dw_stack_labels labels = dw_stack_labels_defaults ();
  /* Translators: two scales of one drawing; words in braces are filled in and stay as they are */
  labels.scale = _ ("{scale} : 1, thickness {factor} : 1");
  labels.scale_alone = _ ("{scale} : 1");
  labels.entry = _ ("{number}: {count} × {thickness} {unit}");
  /* Translators: several shims told at once, by their numbers */
  labels.more = _ ("{first} to {last}: {count} leaves");
  labels.lift = _ ("lift {lift} {unit}");
  /* Translators: a lift that is drawn smaller than it is */
  labels.lift_cut = _ ("lift {lift} {unit}, cut");
  labels.opens[DW_COMPRESSION] = _ ("opens on compression");
  labels.opens[DW_REBOUND] = _ ("opens on rebound");
  labels.none = _ ("no shim");
  labels.length = dw_chart_words_units (tools->options.units).length;
  return labels;
}

static void
add_stack (const dw_sheet_tools *tools, dw_block *block, const dw_damper *damper, dw_rect box)
{
  const dw_rect area = { 0.0, 0.0, box.width, box.height };
  const dw_stack_labels labels = stack_labels (tools);
  drawing *d = g_new0 (drawing, 1);
  d->style = &tools->style;
  d->stack = dw_stack_layout_new (damper, &labels, &tools->numbers, &tools->style, &tools->metrics,
                                  &area);
  dw_block_add_drawing (block, box, paint_drawing, d, free_drawing);
}

/* A bore with its middle marked. */
static void
paint_bore (cairo_t *cr, gpointer data)
{
  const double radius = 0.42 * DRAWING_HEIGHT;
  const double x = 0.5 * *(const double *)data;
  const double y = 0.5 * DRAWING_HEIGHT;
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_set_line_width (cr, 2.0 * DW_SHEET_RULE);
  cairo_arc (cr, x, y, radius, 0.0, TURN);
  cairo_stroke (cr);
  cairo_set_line_width (cr, DW_SHEET_RULE);
  cairo_move_to (cr, x - 0.1 * radius, y);
  cairo_rel_line_to (cr, 0.2 * radius, 0.0);
  cairo_move_to (cr, x, y - 0.1 * radius);
  cairo_rel_line_to (cr, 0.0, 0.2 * radius);
  cairo_stroke (cr);
}

/* Lines for the leaves of a stack, the one on the piston at the bottom. */
static void
add_empty_stack (const dw_sheet_tools *tools, dw_block *block, dw_rect box)
{
  const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_SMALL);
  dw_block_add_text (block,
                     dw_typeset_fit (tools->typeset, DW_TYPE_SMALL,
                                     _ ("Stack: count and thickness, 1 lies on the piston"),
                                     box.width),
                     box.x, box.y);
  int n = 1;
  for (double y = box.y + box.height; y - WRITING_HEIGHT > box.y + 3.0 * line; y -= WRITING_HEIGHT)
    {
      g_autofree char *number = g_strdup_printf ("%d", n++);
      dw_block_add_text (block, dw_typeset_line (tools->typeset, DW_TYPE_SMALL, number), box.x,
                         y - line);
      dw_sheet_add_rule (block, box.x + NAME_GAP + line, y, box.width - NAME_GAP - line);
    }
}

static void
add_empty (const dw_sheet_tools *tools, dw_block *block, dw_rect face, dw_rect stack)
{
  dw_block_add_drawing (block, face, paint_bore, g_memdup2 (&face.width, sizeof face.width),
                        g_free);
  add_empty_stack (tools, block, stack);
}

dw_block *
dw_damper_card_drawings (const dw_sheet_tools *tools, const dw_damper *dampers)
{
  const double width = dw_sheet_column (tools);
  dw_block *block = dw_block_new (tools->frame.width);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      const double x = dw_sheet_column_at (tools, (dw_axle)axle);
      dw_block *heading = dw_sheet_heading (tools, dw_sheet_axle_word ((dw_axle)axle), width);
      const double y = heading->height;
      const dw_rect face = { x, y, FACE_PART * width, DRAWING_HEIGHT };
      const dw_rect stack = { x + face.width, y, width - face.width, DRAWING_HEIGHT };
      dw_block_place (block, heading, x, 0.0);
      block->height = y + DRAWING_HEIGHT + ROW_PAD;
      if (dampers == NULL)
        {
          add_empty (tools, block, face, stack);
          continue;
        }
      add_face (tools, block, &dampers[axle], face);
      add_stack (tools, block, &dampers[axle], stack);
    }
  return block;
}

/* ---- parts in words ---- */

static dw_block *
cell (const dw_sheet_tools *tools, dw_build build, const char *value, double width)
{
  dw_block *block = dw_block_new (width);
  const double name_width = NAME_PART * width;
  const double x = name_width + NAME_GAP;
  PangoLayout *name = dw_typeset_fit (tools->typeset, DW_TYPE_STRONG, dw_build_name (build),
                                      name_width);
  if (*value == '\0')
    {
      const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_STRONG);
      const double end = fmax (WRITING_HEIGHT,
                               dw_block_add_text (block, name, 0.0, WRITING_HEIGHT - line));
      dw_sheet_add_rule (block, x, end - 0.2 * line, width - x);
      block->height = end;
      return block;
    }
  const double height = dw_block_add_text (block, name, 0.0, 0.0);
  block->height = fmax (
      height,
      dw_block_add_text (block, dw_typeset_values (tools->typeset, DW_TYPE_BODY, value, width - x),
                         x, 0.0));
  return block;
}

/* Front and rear in one row, so that the same part stands at the same height. */
static dw_block *
row_of (const dw_sheet_tools *tools, dw_build build, char *const values[DW_N_AXLES])
{
  dw_block *row = dw_block_new (tools->frame.width);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_block *one = cell (tools, build, values[axle], dw_sheet_column (tools));
      row->height = fmax (row->height, one->height + ROW_PAD);
      dw_block_place (row, one, dw_sheet_column_at (tools, (dw_axle)axle), 0.0);
    }
  return row;
}

/* What only one of the axles has. */
static void
say_none (char *values[DW_N_AXLES])
{
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (*values[axle] == '\0')
      {
        g_free (values[axle]);
        /* Translators: there are no such parts, covered holes say */
        values[axle] = g_strdup (_ ("none"));
      }
}

void
dw_damper_card_add_rows (const dw_sheet_tools *tools, const dw_damper *dampers, GPtrArray *rows)
{
  for (int build = 0; build < DW_N_BUILDS; build++)
    {
      char *values[DW_N_AXLES];
      bool is_told = false;
      for (int axle = 0; axle < DW_N_AXLES; axle++)
        {
          values[axle] = dampers == NULL ? g_strdup ("")
                                         : dw_build_value ((dw_build)build, &dampers[axle],
                                                           tools->options.units);
          is_told = is_told || *values[axle] != '\0';
        }
      if (is_told && !dw_build_is_open ((dw_build)build))
        say_none (values);
      if (is_told || dampers == NULL || dw_build_is_open ((dw_build)build))
        g_ptr_array_add (rows, row_of (tools, (dw_build)build, values));
      for (int axle = 0; axle < DW_N_AXLES; axle++)
        g_free (values[axle]);
    }
}
