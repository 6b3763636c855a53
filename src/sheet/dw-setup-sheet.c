/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-setup-sheet.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-chart-page.h"
#include "sheet/dw-chart-words.h"
#include "sheet/dw-damper-card.h"
#include "sheet/dw-difference-words.h"
#include "sheet/dw-empty-chart.h"
#include "sheet/dw-figures-table.h"
#include "sheet/dw-verdict.h"

/* [pt] The charts: at least so high, at most, and so high where the page goes on anyway. */
static const double LEAST_CHART = 114.0;
static const double MOST_CHART = 230.0;
static const double USUAL_CHART = 150.0;

/* [pt] Between parts of the page. */
static const double PART_GAP = 6.0;

/* [pt] A line to write on, and how many of them there are at least. */
static const double WRITING_HEIGHT = 15.0;
static const int LEAST_WRITING_LINES = 1;
static const int MOST_WRITING_LINES = 8;

/* A bullet and a blank before each difference. */
static const char BULLET[] = "• ";

/* What the sheet is made of besides head and parts. */
typedef struct
{
  const dw_sheet_tools *tools;
  const dw_setup *setup;   /* NULL = blank */
  const dw_setup *against; /* NULL = none */
  dw_comparison comparison[DW_N_AXLES];
} sheet;

/* ---- figures ---- */

/* Of the two that could not be compared: the one that is told, unless it alone can be computed. */
static const dw_setup *
find_culprit (const sheet *s, int axle, const double speeds[DW_N_SPEEDS])
{
  const dw_damper *b = &s->setup->damper[axle];
  dw_comparison alone;
  const bool is_good = dw_compare_figures (b, b,
                                           s->tools->options.project->conditions.oil_temperature,
                                           speeds, &alone, NULL)
                       == DW_OK;
  return is_good ? s->against : s->setup;
}

static bool
compare (sheet *s, dw_sheet_failure *failure)
{
  const dw_project *project = s->tools->options.project;
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  const dw_setup *a = s->against != NULL ? s->against : s->setup;
  for (int axle = 0; s->setup != NULL && axle < DW_N_AXLES; axle++)
    {
      dw_error finding;
      if (dw_compare_figures (&a->damper[axle], &s->setup->damper[axle],
                              project->conditions.oil_temperature, speeds, &s->comparison[axle],
                              &finding)
          == DW_OK)
        continue;
      if (failure != NULL)
        *failure = (dw_sheet_failure){ find_culprit (s, axle, speeds), (dw_axle)axle, finding };
      return false;
    }
  return true;
}

static dw_block *
figures (const sheet *s)
{
  dw_block *block = dw_block_new (s->tools->frame.width);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_block *table = dw_figures_table_make (
          s->tools, s->setup != NULL ? &s->comparison[axle] : NULL,
          s->setup != NULL ? &s->setup->damper[axle] : NULL, (dw_axle)axle);
      block->height = fmax (block->height, table->height + PART_GAP);
      dw_block_place (block, table, dw_sheet_column_at (s->tools, (dw_axle)axle), 0.0);
    }
  return block;
}

/* ---- charts ---- */

static void
paint_chart (cairo_t *cr, gpointer data)
{
  dw_chart_page_paint (data, cr);
}

static void
free_chart (gpointer data)
{
  dw_chart_page_free (data);
}

static dw_chart_page_options
chart_options (const sheet *s, double height)
{
  const dw_sheet_options *o = &s->tools->options;
  dw_chart_page_options options = dw_chart_page_options_defaults (o->project);
  options.n_setups = 0;
  if (s->against != NULL)
    options.setups[options.n_setups++] = s->against->id;
  options.setups[options.n_setups++] = s->setup->id;
  options.look.labels = dw_chart_words ();
  options.look.units = dw_chart_words_units (o->units);
  options.look.numbers = s->tools->numbers;
  options.look.quantity = o->shows_damping ? DW_SHOW_DAMPING : DW_SHOW_FORCE;
  options.labels = dw_chart_page_words ();
  /* Translators: what marks in a chart mean, in one line */
  options.labels.key = _ ("Ring: a void opens behind the piston. Dotted: the force once the lost "
                          "travel is over. Thin: until then.");
  options.labels.axle[DW_FRONT] = options.labels.axle[DW_REAR] = NULL;
  options.style = DW_STYLE_PRINT;
  options.font_family = o->font_family;
  options.width = s->tools->frame.width;
  options.height = height;
  options.is_part = true;
  return options;
}

/* NULL when a curve can not be computed. */
static dw_block *
charts (const sheet *s, double height, dw_sheet_failure *failure)
{
  dw_block *block = dw_block_new (s->tools->frame.width);
  const dw_rect box = { 0.0, 0.0, block->width, height };
  block->height = height + PART_GAP;
  if (s->setup == NULL)
    {
      dw_empty_chart_add (s->tools, block, &box);
      return block;
    }
  const dw_chart_page_options options = chart_options (s, height);
  dw_chart_page_failure found;
  dw_chart_page *page = dw_chart_page_new (&options, &found);
  if (page == NULL)
    {
      if (failure != NULL)
        *failure = (dw_sheet_failure){ found.setup == options.n_setups - 1 ? s->setup : s->against,
                                       found.axle, found.finding };
      dw_block_free (block);
      return NULL;
    }
  dw_block_add_drawing (block, box, paint_chart, page, free_chart);
  return block;
}

/* ---- what differs ---- */

static void
add_differences (const sheet *s, dw_axle axle, GPtrArray *rows)
{
  const double width = dw_sheet_column (s->tools);
  const dw_damper *a = &s->against->damper[axle];
  const dw_damper *b = &s->setup->damper[axle];
  g_autofree dw_difference *list = g_new (dw_difference, DW_MAX_DIFFERENCES);
  const size_t n = MIN (dw_difference_find (a, b, list, DW_MAX_DIFFERENCES), DW_MAX_DIFFERENCES);
  for (size_t i = 0; i < n; i++)
    {
      g_autofree char *words = dw_difference_words (&list[i], a, b, s->tools->options.units);
      g_autofree char *text = g_strconcat (BULLET, words, NULL);
      dw_sheet_add_lines (s->tools, rows, DW_TYPE_BODY, text, width);
    }
  if (n == 0)
    {
      dw_sheet_add_lines (s->tools, rows, DW_TYPE_BODY, _ ("Nothing differs on this axle."), width);
      return;
    }
  g_autofree char *verdict = dw_verdict_text (&s->comparison[axle]);
  dw_sheet_add_lines (s->tools, rows, DW_TYPE_BODY, verdict, width);
  if (dw_difference_count_acting (list, n) > 1)
    dw_sheet_add_lines (
        s->tools, rows, DW_TYPE_BODY,
        _ ("More than one thing differs: the curves cannot tell which of them did it."), width);
}

/* ---- notes ---- */

/* Notes to the setup and to the project side by side, or those that there are over the whole width. */
static void
make_notes (const sheet *s, GPtrArray *const columns[DW_N_AXLES])
{
  if (s->setup == NULL)
    return;
  const char *const notes[DW_N_AXLES] = { s->setup->notes, s->tools->options.project->notes };
  const bool has_both = *notes[0] != '\0' && *notes[1] != '\0';
  const double width = has_both ? dw_sheet_column (s->tools) : s->tools->frame.width;
  for (int i = 0; i < DW_N_AXLES; i++)
    if (*notes[i] != '\0')
      dw_sheet_add_lines (s->tools, columns[has_both ? i : 0], DW_TYPE_BODY, notes[i], width);
}

/* ---- all of it ---- */

/* Charts get what the page has left when all else stands on it. */
static double
chart_height (const dw_sheet_part *part, double below)
{
  const double left = dw_sheet_part_room (part) - below - PART_GAP;
  return left >= LEAST_CHART ? fmin (left, MOST_CHART) : USUAL_CHART;
}

static double
taller (GPtrArray *const columns[DW_N_AXLES])
{
  return fmax (dw_rows_height (columns[DW_FRONT]), dw_rows_height (columns[DW_REAR]));
}

/* [pt] that the first lines of two columns take. */
static double
first_of (GPtrArray *const columns[DW_N_AXLES])
{
  double height = 0.0;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (columns[axle]->len > 0)
      height = fmax (height, ((const dw_block *)g_ptr_array_index (columns[axle], 0))->height);
  return height;
}

static void
add_comparison (const sheet *s, dw_sheet_part *part, GPtrArray *const columns[DW_N_AXLES])
{
  /* Translators: name of a setup; what differs follows, front and rear side by side. */
  g_autofree char *text = g_strdup_printf (_ ("What differs from “%s”"),
                                           dw_sheet_name (s->against));
  dw_sheet_part_add_heading (part, text, first_of (columns));
  dw_sheet_part_add_columns (part, columns);
  dw_sheet_part_add (part, dw_sheet_space (PART_GAP));
}

/* Charts, figures, what differs, notes. */
static bool
add_lower_half (const sheet *s, dw_sheet_part *part, dw_sheet_failure *failure)
{
  g_autoptr (GPtrArray) own = dw_rows_new ();
  g_autoptr (GPtrArray) general = dw_rows_new ();
  GPtrArray *const notes[DW_N_AXLES] = { own, general };
  g_autoptr (GPtrArray) front = dw_rows_new ();
  g_autoptr (GPtrArray) rear = dw_rows_new ();
  GPtrArray *const columns[DW_N_AXLES] = { front, rear };
  for (int axle = 0; s->against != NULL && axle < DW_N_AXLES; axle++)
    add_differences (s, (dw_axle)axle, columns[axle]);
  make_notes (s, notes);
  dw_block *table = figures (s);
  const double heading = dw_sheet_heading_height (s->tools);
  const double below = table->height + taller (notes) + heading
                       + LEAST_WRITING_LINES * WRITING_HEIGHT
                       + (s->against != NULL ? heading + taller (columns) + PART_GAP : 0.0);
  dw_block *chart = charts (s, chart_height (part, below), failure);
  if (chart == NULL)
    {
      dw_block_free (table);
      return false;
    }
  dw_sheet_part_add (part, chart);
  dw_sheet_part_add (part, table);
  if (s->against != NULL)
    add_comparison (s, part, columns);
  dw_sheet_part_add_heading (part, _ ("Notes"), WRITING_HEIGHT);
  dw_sheet_part_add_columns (part, notes);
  dw_sheet_part_add_writing_lines (part, WRITING_HEIGHT, MOST_WRITING_LINES);
  return true;
}

static const char *
note_of (const sheet *s)
{
  if (s->setup == NULL)
    return NULL;
  return dw_project_get_fitted (s->tools->options.project) == s->setup
             ? _ ("fitted: in the car now")
             : _ ("trial: an idea");
}

dw_sheet_part *
dw_setup_sheet_new (const dw_sheet_tools *tools, dw_sheet_failure *failure)
{
  g_autofree sheet *s = g_new0 (sheet, 1);
  *s = (sheet){ .tools = tools, .setup = tools->options.setup, .against = tools->options.against };
  const dw_sheet_title title = { .title = s->setup != NULL ? dw_sheet_name (s->setup) : "",
                                 .kind = _ ("Setup sheet"),
                                 .note = note_of (s) };
  const dw_damper *dampers = s->setup != NULL ? s->setup->damper : NULL;
  if (!compare (s, failure))
    return NULL;

  g_autoptr (dw_sheet_part) part = dw_sheet_part_new (tools, &title);
  g_autoptr (GPtrArray) rows = dw_rows_new ();
  dw_sheet_part_add (part, dw_sheet_head_fields (tools, s->setup == NULL));
  dw_sheet_part_add (part, dw_damper_card_drawings (tools, dampers));
  dw_damper_card_add_rows (tools, dampers, rows);
  dw_sheet_part_add_rows (part, rows);
  dw_sheet_part_add (part, dw_sheet_space (PART_GAP));
  if (!add_lower_half (s, part, failure))
    return NULL;
  return g_steal_pointer (&part);
}
