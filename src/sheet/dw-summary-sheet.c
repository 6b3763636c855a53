/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-summary-sheet.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-part-words.h"
#include "sheet/dw-small-chart.h"
#include "study/dw-compare.h"

/* [1] of the width, where columns begin. */
static const double NAME_AT = 0.0;
static const double PARTS_AT = 0.2;
static const double FIGURES_AT = 0.53;
static const double CHART_AT = 0.87;

enum
{
  COLUMN_LOW_COMPRESSION,
  COLUMN_LOW_REBOUND,
  COLUMN_HIGH_COMPRESSION,
  COLUMN_HIGH_REBOUND,
  COLUMN_SHARE,
  N_COLUMNS
};

/* [pt] */
static const double GAP = 6.0;
static const double COLUMN_GAP = 2.0; /* between figures */
static const double ROW_PAD = 3.0;
static const double RULE_GAP = 0.5;
static const double CHART_HEIGHT = 34.0;

static const int DIGITS = 3;

/* One damper, computed. */
typedef struct
{
  dw_figures figures;
  dw_series *series; /* owned */
} computed;

/* All of them: DW_N_AXLES a setup. Kept as long as the part, which draws the series. */
typedef struct
{
  const dw_sheet_tools *tools;
  guint n_setups;
  int fitted; /* index; -1 = none */
  computed *dampers;
  double reach; /* [N] */
} table;

static void
table_free (table *t)
{
  for (guint i = 0; i < t->n_setups * DW_N_AXLES; i++)
    dw_series_free (t->dampers[i].series);
  g_free (t->dampers);
  g_free (t);
}

static void
free_table (gpointer data)
{
  table_free (data);
}

/* ---- figures ---- */

static dw_status
compute_one (const dw_project *project, const dw_setup *setup, int axle, computed *out,
             dw_error *err)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  const dw_series_range range = { 0.0, project->speeds.high, false };
  const double temperature = project->conditions.oil_temperature;
  dw_comparison comparison;
  out->series = dw_series_new (setup->name);
  const dw_status status = dw_compare_figures (&setup->damper[axle], &setup->damper[axle],
                                               temperature, speeds, &comparison, err);
  if (status != DW_OK)
    return status;
  out->figures = comparison.b;
  return dw_series_fill (out->series, &setup->damper[axle], temperature, &range, err);
}

static bool
compute (table *t, dw_sheet_failure *failure)
{
  const dw_project *project = t->tools->options.project;
  for (guint i = 0; i < t->n_setups; i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      {
        const dw_setup *setup = dw_project_get_setup (project, i);
        computed *one = &t->dampers[i * DW_N_AXLES + (guint)axle];
        dw_error finding;
        if (compute_one (project, setup, axle, one, &finding) != DW_OK)
          {
            if (failure != NULL)
              *failure = (dw_sheet_failure){ setup, (dw_axle)axle, finding };
            return false;
          }
        t->reach = fmax (t->reach, dw_small_chart_reach (one->series));
      }
  return true;
}

/* ---- the table ---- */

static double
column_end (int column, double width)
{
  const double from = FIGURES_AT * width;
  const double to = CHART_AT * width - GAP;
  return from + (to - from) * (column + 1) / N_COLUMNS;
}

/* Texts that end at the columns' right ends; NULL = none. Returns the height. */
static double
add_figures (const dw_sheet_tools *tools, dw_block *block, dw_type type,
             char *const texts[N_COLUMNS], double y)
{
  double height = 0.0;
  for (int i = 0; i < N_COLUMNS; i++)
    {
      const double end = column_end (i, block->width);
      const double room = end
                          - (i > 0 ? column_end (i - 1, block->width) : FIGURES_AT * block->width)
                          - COLUMN_GAP;
      PangoLayout *text = dw_typeset_fit (tools->typeset, type, texts[i], room);
      pango_layout_set_alignment (text, PANGO_ALIGN_RIGHT);
      height = fmax (height, dw_block_add_text_right (block, text, end, y));
    }
  return height;
}

/* A speed in the middle over so many columns, the last of them is named, and a line that joins them.
   Returns its height. */
static double
add_over (const dw_sheet_tools *tools, dw_block *block, int column, int n_columns, double speed,
          double y)
{
  g_autofree char *words = dw_part_words_quantity (DW_QUANTITY_SPEED, tools->options.units, speed);
  const double end = column_end (column, block->width);
  const double start = column_end (column - n_columns, block->width) + COLUMN_GAP;
  PangoLayout *text = dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, words, end - start);
  int text_width;
  pango_layout_get_size (text, &text_width, NULL);
  const double pad = fmax (0.0, (end - start - pango_units_to_double (text_width)) / 2.0);
  const double height = dw_block_add_text (block, text, start + pad, y) + RULE_GAP;
  dw_sheet_add_rule (block, start + COLUMN_GAP, y + height, end - start - COLUMN_GAP);
  return height + RULE_GAP;
}

/* The speeds, at y; returns their height. */
static double
add_speeds (const dw_sheet_tools *tools, dw_block *block, double y)
{
  const dw_speeds *speeds = &tools->options.project->speeds;
  const double low = add_over (tools, block, COLUMN_LOW_REBOUND, 2, speeds->low, y);
  const double high = add_over (tools, block, COLUMN_HIGH_REBOUND, 2, speeds->high, y);
  return fmax (fmax (low, high), add_over (tools, block, COLUMN_SHARE, 1, speeds->middle, y));
}

static double
add_under (const dw_sheet_tools *tools, dw_block *block, double x, double room, const char *text,
           double y)
{
  return dw_block_add_text (block, dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, text, room), x,
                            y);
}

/* Heads of the columns of figures, at y; returns their height. */
static double
add_strokes (const dw_sheet_tools *tools, dw_block *block, double y)
{
  char *texts[N_COLUMNS];
  for (int i = 0; i < N_COLUMNS; i++)
    texts[i] = g_strdup (i == COLUMN_SHARE ? C_ ("narrow", "Share")
                         : i % 2 == 0      ? C_ ("narrow", "Comp.")
                                           : C_ ("narrow", "Reb."));
  const double height = add_figures (tools, block, DW_TYPE_SMALL, texts, y);
  for (int i = 0; i < N_COLUMNS; i++)
    g_free (texts[i]);
  return height;
}

static dw_block *
table_head (const dw_sheet_tools *tools)
{
  const double width = tools->frame.width;
  const dw_project *project = tools->options.project;
  dw_block *block = dw_block_new (width);
  /* Translators: c is damping, force over speed; its unit follows */
  g_autofree char *unit = g_strdup_printf (
      _ ("c in %s"), dw_quantity_unit (DW_QUANTITY_DAMPING, tools->options.units));
  const double second = add_under (tools, block, FIGURES_AT * width + 2.0 * COLUMN_GAP,
                                   (CHART_AT - FIGURES_AT) * width - 2.0 * COLUMN_GAP, unit, 0.0);
  const double third = second + add_speeds (tools, block, second);
  double height = add_under (tools, block, NAME_AT * width, PARTS_AT * width - GAP, _ ("Setup"),
                             third);
  height = fmax (height,
                 add_under (tools, block, PARTS_AT * width, (FIGURES_AT - PARTS_AT) * width - GAP,
                            _ ("Built from"), third));
  height = fmax (height, add_strokes (tools, block, third));
  if (dw_project_get_fitted (project) != NULL)
    height = fmax (height, add_under (tools, block, CHART_AT * width, (1.0 - CHART_AT) * width,
                                      _ ("dashed: fitted"), third));
  dw_sheet_add_rule (block, 0.0, third + height, width);
  block->height = third + height + ROW_PAD;
  return block;
}

/* "Front: 6 × 1.4 mm open, 4 × 1.1 mm covered; 1 × 0.15 mm; 400 cSt; 0.72 N/mm, 70 mm long" */
static char *
parts_words (const dw_sheet_tools *tools, const dw_damper *damper, dw_axle axle)
{
  const dw_units units = tools->options.units;
  g_autofree char *open = dw_part_words_holes (&damper->piston, false, units);
  g_autofree char *covered = dw_part_words_holes (&damper->piston, true, units);
  g_autofree char *stack = dw_part_words_stack (&damper->valve, units);
  g_autofree char *oil = dw_part_words_oil (&damper->oil, units);
  g_autofree char *spring = dw_part_words_spring (&damper->spring, units);
  GString *text = g_string_new (NULL);
  g_string_append_printf (text, "%s: ", dw_sheet_axle_word (axle));
  if (*open != '\0')
    /* Translators: counts and sizes of holes */
    g_string_append_printf (text, _ ("open %s; "), open);
  if (*covered != '\0')
    /* Translators: counts and sizes of holes */
    g_string_append_printf (text, _ ("covered %s; "), covered);
  if (*stack != '\0')
    /* Translators: counts and thicknesses of shims */
    g_string_append_printf (text, _ ("stack %s; "), stack);
  g_string_append_printf (text, "%s; %s", oil, spring);
  return g_string_free (text, FALSE);
}

static double
add_axle (const table *t, dw_block *block, guint index, dw_axle axle, double y)
{
  const dw_sheet_tools *tools = t->tools;
  const dw_setup *setup = dw_project_get_setup (tools->options.project, index);
  const computed *one = &t->dampers[index * DW_N_AXLES + (guint)axle];
  const dw_figures *f = &one->figures;
  const double width = block->width;
  const double values[N_COLUMNS] = { f->c[DW_COMPRESSION][DW_LOW], f->c[DW_REBOUND][DW_LOW],
                                     f->c[DW_COMPRESSION][DW_HIGH], f->c[DW_REBOUND][DW_HIGH],
                                     f->rebound_share[DW_MIDDLE] };
  char *texts[N_COLUMNS];
  for (int i = 0; i < N_COLUMNS; i++)
    texts[i] = dw_quantity_format_digits (i == COLUMN_SHARE ? DW_QUANTITY_NUMBER
                                                            : DW_QUANTITY_DAMPING,
                                          tools->options.units, values[i], DIGITS);
  g_autofree char *words = parts_words (tools, &setup->damper[axle], axle);
  const double height = dw_block_add_text (
      block,
      dw_typeset_values (tools->typeset, DW_TYPE_SMALL, words,
                         (FIGURES_AT - PARTS_AT) * width - GAP),
      PARTS_AT * width, y);
  add_figures (tools, block, DW_TYPE_BODY, texts, y);
  for (int i = 0; i < N_COLUMNS; i++)
    g_free (texts[i]);
  const bool has_fitted = t->fitted >= 0 && (guint)t->fitted != index;
  dw_small_chart_add (
      block, (dw_rect){ CHART_AT * width, y, (1.0 - CHART_AT) * width, CHART_HEIGHT }, one->series,
      has_fitted ? t->dampers[(guint)t->fitted * DW_N_AXLES + (guint)axle].series : NULL,
      tools->options.project->speeds.high, t->reach);
  return y + fmax (height, CHART_HEIGHT) + ROW_PAD;
}

static dw_block *
setup_row (const table *t, guint index)
{
  const dw_sheet_tools *tools = t->tools;
  const dw_setup *setup = dw_project_get_setup (tools->options.project, index);
  const double width = tools->frame.width;
  const double name_width = PARTS_AT * width - GAP;
  dw_block *block = dw_block_new (width);
  double left = dw_block_add_text (
      block, dw_typeset_lines (tools->typeset, DW_TYPE_STRONG, dw_sheet_name (setup), name_width),
      0.0, 0.0);
  if ((int)index == t->fitted)
    left += dw_block_add_text (
        block, dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, _ ("fitted"), name_width), 0.0, left);
  double y = 0.0;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    y = add_axle (t, block, index, (dw_axle)axle, y);
  block->height = fmax (left + ROW_PAD, y);
  return block;
}

static dw_block *
rule (const dw_sheet_tools *tools)
{
  dw_block *block = dw_block_new (tools->frame.width);
  dw_sheet_add_rule (block, 0.0, 0.0, block->width);
  block->height = ROW_PAD;
  return block;
}

static void
add_notes (const dw_sheet_tools *tools, dw_sheet_part *part, const char *notes)
{
  const double x = PARTS_AT * tools->frame.width;
  g_autoptr (GPtrArray) rows = dw_rows_new ();
  if (*notes == '\0')
    return;
  dw_sheet_add_lines (tools, rows, DW_TYPE_SMALL, notes, tools->frame.width - x);
  dw_flow_add_rows (&part->flow, rows, x, &part->place);
  dw_sheet_part_add (part, dw_sheet_space (ROW_PAD));
}

/* ---- all of it ---- */

dw_sheet_part *
dw_summary_sheet_new (const dw_sheet_tools *tools, dw_sheet_failure *failure)
{
  const dw_project *project = tools->options.project;
  table *t = g_new0 (table, 1);
  t->tools = tools;
  t->n_setups = dw_project_get_n_setups (project);
  t->dampers = g_new0 (computed, (gsize)t->n_setups * DW_N_AXLES);
  t->fitted = dw_project_find_index (project, project->fitted);
  if (!compute (t, failure))
    {
      table_free (t);
      return NULL;
    }
  const dw_sheet_title title = {
    .title = *project->title != '\0' ? project->title : _ ("All setups"),
    .kind = _ ("All setups"),
  };
  dw_sheet_part *part = dw_sheet_part_new (tools, &title);
  part->owned = t;
  part->free_owned = free_table;
  part->heads = table_head;
  dw_sheet_part_add (part, dw_sheet_head_fields (tools, false));
  dw_sheet_part_add (part, table_head (tools));
  for (guint i = 0; i < t->n_setups; i++)
    {
      dw_sheet_part_add (part, setup_row (t, i));
      add_notes (tools, part, dw_project_get_setup (project, i)->notes);
      dw_sheet_part_add (part, rule (tools));
    }
  if (*project->notes != '\0')
    {
      g_autoptr (GPtrArray) rows = dw_rows_new ();
      dw_sheet_add_lines (tools, rows, DW_TYPE_BODY, project->notes, tools->frame.width);
      part->heads = NULL;
      dw_sheet_part_add_heading (part, _ ("Notes"),
                                 dw_typeset_line_height (tools->typeset, DW_TYPE_BODY));
      dw_sheet_part_add_rows (part, rows);
    }
  return part;
}
