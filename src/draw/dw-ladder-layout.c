/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-layout.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw/dw-phrase.h"

/* Distances, in ems of the tick letters. */
static const double PADDING = 0.7;
static const double ROW = 1.9;       /* height of a row */
static const double LINE_GAP = 0.35; /* between lines of the head */
static const double POINTER = 1.7;   /* column of the pointers */
static const double POINTER_AT = 0.8;
static const double GAP = 0.8;    /* between columns */
static const double HOOKS = 0.6;  /* width of a bracket */
static const double SAMPLE = 2.6; /* width of a sample */
static const double SAMPLE_GAP = 0.5;
static const double ITEM_GAP = 1.6;
static const double LEAST_MAJOR = 2.9;
static const double LEAST_MINOR = 0.5;
static const double LEAST_MARGIN = 1.6; /* right of the plot, for half a label */

/* Narrower plots than this give the column of forces up [em]; narrower areas the words of brackets. */
static const double NARROW_PLOT = 9.0;
static const double NARROW_AREA = 44.0;

/* [1] of the width that stacks take at most, of a row's height that a bar takes, and of the range of
 * forces that stands free at each end. */
static const double STACK_PART = 0.45;
static const double BAR_PART = 0.46;
static const double MARGIN = 0.06;

/* How far marks reach round their middles, in radii of a marker. */
static const double REACH = 2.0;

/* [1] of a force: what is left of a range in which all are the same. */
static const double LEAST_RANGE = 0.01;

/* Lines that the title takes at most. */
#define MOST_LINES 2

#define SPEED_DIGITS 3

typedef struct
{
  const dw_ladder_chart *chart;
  const dw_text_metrics *metrics;
  dw_ladder_layout *layout;
  double em;    /* [pt] of the tick letters */
  double reach; /* [pt] of marks */
  double left;  /* [pt] */
  double right; /* [pt] */
  double top;   /* [pt] of what is still free */
  /* columns */
  double stack_x;
  double stack_width;
  double value_width;
  double value_right;
  double row_right;
  double word_x;
  double word_width; /* 0 = brackets have no words */
} builder;

static double
width_of (const builder *b, const char *text, dw_text_role role)
{
  return dw_text_measure (b->metrics, text, role).width;
}

/* ---- title ---- */

static char *
title_text (const dw_ladder_chart *chart)
{
  char speed[DW_NUMBER_ROOM];
  dw_number_digits (&chart->numbers, chart->at / chart->units.speed.factor, SPEED_DIGITS, speed,
                    sizeof speed);
  const dw_word words[] = { { "stroke", chart->labels.stroke[chart->stroke] },
                            { "speed", speed },
                            { "speed_unit", chart->units.speed.symbol },
                            { "unit", chart->units.force.symbol },
                            { NULL, NULL } };
  return dw_phrase_fill (chart->labels.title, words);
}

/* In two lines at most; the rest is shortened. */
static void
add_title (builder *b)
{
  const double width = b->right - b->left;
  g_autofree char *text = title_text (b->chart);
  g_auto (GStrv) lines = dw_text_wrap (b->metrics, text, DW_TEXT_CAPTION, width);
  for (int i = 0; lines[i] != NULL && i < MOST_LINES; i++)
    {
      g_autofree char *rest = i == MOST_LINES - 1 ? g_strjoinv (" ", &lines[i])
                                                  : g_strdup (lines[i]);
      dw_chart_label_list_add (&b->layout->texts, b->metrics, DW_LABEL_TITLE, DW_TEXT_CAPTION, rest,
                               (dw_spot){ b->left, b->top }, width);
      b->top += dw_text_height (b->metrics, DW_TEXT_CAPTION);
    }
  b->top += LINE_GAP * b->em;
}

/* ---- legend ---- */

static bool
has_tall_stacks (const dw_ladder *ladder)
{
  for (size_t i = 0; i < ladder->n; i++)
    if (ladder->rungs[i].leaves > 1)
      return true;
  return false;
}

static bool
is_needed (const builder *b, dw_ladder_key key)
{
  const dw_ladder *ladder = b->chart->ladder;
  switch (key)
    {
    case DW_LADDER_KEY_BOUNDS:
    case DW_LADDER_KEY_HABIT:
      return has_tall_stacks (ladder);
    case DW_LADDER_KEY_GROUP:
      return ladder->n_groups < (int)ladder->n;
    case DW_LADDER_KEY_HOLES:
      return b->layout->holes.width > 0.0;
    case DW_LADDER_KEY_VALUE:
    case DW_LADDER_KEY_PLAIN:
    case DW_N_LADDER_KEYS:
      break;
    }
  return true;
}

static char *
key_text (const dw_ladder_chart *chart, dw_ladder_key key)
{
  const dw_ladder_labels *labels = &chart->labels;
  const char *const texts[DW_N_LADDER_KEYS]
      = { [DW_LADDER_KEY_BOUNDS] = labels->bounds, [DW_LADDER_KEY_VALUE] = labels->value,
          [DW_LADDER_KEY_HABIT] = labels->habit,   [DW_LADDER_KEY_GROUP] = labels->groups,
          [DW_LADDER_KEY_HOLES] = labels->holes,   [DW_LADDER_KEY_PLAIN] = labels->plain };
  char percent[DW_NUMBER_ROOM];
  dw_number_digits (&chart->numbers, DW_LADDER_SAME, 2, percent, sizeof percent);
  const dw_word words[] = { { "percent", percent }, { NULL, NULL } };
  return dw_phrase_fill (texts[key], words);
}

/* Samples beside each other, in as many lines as it takes. */
static void
add_legend (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const double height = dw_text_height (b->metrics, DW_TEXT_NOTE);
  const double before = (SAMPLE + SAMPLE_GAP) * b->em;
  double x = b->left;
  for (int key = 0; key < DW_N_LADDER_KEYS; key++)
    {
      if (!is_needed (b, (dw_ladder_key)key))
        continue;
      g_autofree char *text = key_text (b->chart, (dw_ladder_key)key);
      const double width = before + width_of (b, text, DW_TEXT_NOTE);
      if (x > b->left && x + width > b->right)
        {
          x = b->left;
          b->top += height + LINE_GAP * b->em;
        }
      layout->samples[layout->n_samples++] = (dw_ladder_sample){
        (dw_ladder_key)key,
        { x, b->top + 0.1 * height, SAMPLE * b->em, 0.8 * height },
      };
      dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_KEY, DW_TEXT_NOTE, text,
                               (dw_spot){ x + before, b->top }, b->right - x - before);
      x += width + ITEM_GAP * b->em;
    }
  b->top += height + 2.0 * LINE_GAP * b->em;
}

/* ---- columns ---- */

static char *
row_text (const dw_ladder_chart *chart, int i, bool tells_material, const dw_ladder_row *row)
{
  g_autofree char *stack = dw_ladder_chart_stack (chart, i, tells_material);
  const dw_word words[] = { { "stack", stack }, { NULL, NULL } };
  if (row->is_fitted)
    return dw_phrase_fill (chart->labels.fitted, words);
  return row->is_own ? dw_phrase_fill (chart->labels.own, words) : g_steal_pointer (&stack);
}

static void
make_row_texts (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const dw_ladder_chart *chart = b->chart;
  const bool tells_material = dw_ladder_chart_has_materials (chart);
  const int fitted = dw_ladder_chart_fitted (chart);
  layout->n_rows = dw_ladder_chart_count (chart);
  layout->rows = g_new0 (dw_ladder_row, (gsize)layout->n_rows);
  for (int i = 0; i < layout->n_rows; i++)
    {
      dw_ladder_row *row = &layout->rows[i];
      row->is_fitted = i == fitted;
      row->is_own = chart->ladder->rungs[i].is_own && !row->is_fitted;
      row->stack = row_text (chart, i, tells_material, row);
      row->value = dw_ladder_chart_number (chart, dw_ladder_chart_force (chart, i));
      row->stack_width = width_of (b, row->stack, DW_TEXT_TICK);
      /* neighbours often have the same force, and measuring takes most of the time */
      const bool is_same = i > 0 && strcmp (row->value, row[-1].value) == 0;
      row->value_width = is_same ? row[-1].value_width : width_of (b, row->value, DW_TEXT_TICK);
      b->stack_width = fmax (b->stack_width, row->stack_width);
      b->value_width = fmax (b->value_width, row->value_width);
    }
}

static void
shorten_stacks (builder *b)
{
  const double most = STACK_PART * (b->right - b->left);
  if (b->stack_width <= most)
    return;
  b->stack_width = most;
  for (int i = 0; i < b->layout->n_rows; i++)
    {
      dw_ladder_row *row = &b->layout->rows[i];
      if (row->stack_width <= most)
        continue;
      g_autofree char *whole = row->stack;
      row->stack = dw_text_ellipsize (b->metrics, whole, DW_TEXT_TICK, most);
      row->stack_width = width_of (b, row->stack, DW_TEXT_TICK);
    }
}

/* From both sides; what is left in the middle is the plot's. */
static void
place_columns (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const bool has_brackets = b->chart->ladder->n_groups < layout->n_rows;
  const char *word = b->chart->labels.same;
  double right = b->right;
  if (has_brackets && b->right - b->left >= NARROW_AREA * b->em)
    {
      b->word_width = width_of (b, word, DW_TEXT_NOTE);
      right -= b->word_width + 0.5 * GAP * b->em;
      b->word_x = b->right - b->word_width;
    }
  layout->bracket_width = has_brackets ? HOOKS * b->em : 0.0;
  layout->bracket_x = right;
  right -= has_brackets ? (HOOKS + 0.5 * GAP) * b->em : 0.0;
  b->row_right = right;
  right -= 0.5 * GAP * b->em;
  b->value_right = right;

  layout->pointer_x = b->left + POINTER_AT * b->em;
  b->stack_x = b->left + POINTER * b->em;
  layout->plot.x = b->stack_x + b->stack_width + GAP * b->em;
  const double without = fmin (right, b->right - LEAST_MARGIN * b->em);
  const double with = fmin (without, right - b->value_width - GAP * b->em);
  layout->shows_values = with - layout->plot.x >= NARROW_PLOT * b->em;
  layout->plot.width = fmax (1.0, (layout->shows_values ? with : without) - layout->plot.x);
}

/* ---- axis ---- */

static void
widen (double value, double *low, double *high)
{
  *low = fmin (*low, value);
  *high = fmax (*high, value);
}

/* All bars and marks, both ends of the ladder, and some room. */
static void
make_scale (builder *b)
{
  const dw_ladder *ladder = b->chart->ladder;
  const int v = b->chart->speed;
  dw_rect *plot = &b->layout->plot;
  double low = fmin (ladder->soft[v], ladder->plain[v]);
  double high = fmax (ladder->soft[v], ladder->plain[v]);
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      widen (rung->force[DW_LEAVES_SLIDE][v], &low, &high);
      widen (rung->force[DW_LEAVES_STICK][v], &low, &high);
      widen (rung->habit[v], &low, &high);
      widen (dw_ladder_chart_force (b->chart, (int)i), &low, &high);
    }
  const double least = fmax (LEAST_RANGE * fmax (fabs (low), fabs (high)), 1e-6);
  /* no mark reaches out of the plot */
  const double share = fmax (MARGIN, b->reach / fmax (b->reach, plot->width - 2.0 * b->reach));
  const double margin = fmax (share * (high - low), least);
  const bool is_log = b->chart->is_log && low > 0.0;
  const double factor = is_log ? fmax (1.0 + LEAST_RANGE, pow (high / low, share)) : 1.0;
  b->layout->x = (dw_scale){ is_log, is_log ? low / factor : low - margin,
                             is_log ? high * factor : high + margin, plot->x,
                             plot->x + plot->width };
}

static void
make_ticks (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const dw_ticks_options options = {
    .numbers = &b->chart->numbers,
    .metrics = b->metrics,
    .factor = b->chart->units.force.factor,
    .least_major = LEAST_MAJOR * b->em,
    .least_minor = LEAST_MINOR * b->em,
  };
  dw_ticks_make (&layout->x, &options, &layout->ticks);
  dw_ticks_add_signs (&layout->ticks, &options);
}

/* From a force to another, all rows high; heights are set when they are known. */
static dw_rect
zone (const dw_ladder_layout *layout, double from, double to)
{
  const double left = fmax (layout->plot.x, dw_scale_place (&layout->x, from));
  const double right = fmin (layout->plot.x + layout->plot.width, dw_scale_place (&layout->x, to));
  return (dw_rect){ left, 0.0, fmax (0.0, right - left), 0.0 };
}

/* As the study judges at this speed: where both ends are near each other, all is as good as plain. */
static void
make_zones (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const dw_ladder *ladder = b->chart->ladder;
  const int v = b->chart->speed;
  const double share = DW_LADDER_SAME / 100.0;
  const double plain_from = ladder->plain[v] - share * fabs (ladder->plain[v]);
  const double soft_to = ladder->soft[v] + share * fabs (ladder->soft[v]);
  layout->plain = zone (layout, plain_from, layout->x.high);
  layout->holes = zone (layout, layout->x.low, fmin (soft_to, plain_from));
}

static void
add_axis (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const dw_word words[] = { { "unit", b->chart->units.length.symbol }, { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (b->chart->labels.stack, words);
  layout->tick_top = b->top;
  layout->tick_ascent = dw_text_measure (b->metrics, "0", DW_TEXT_TICK).ascent;
  layout->tick_height = dw_text_height (b->metrics, DW_TEXT_TICK);
  /* half of the first label may reach over the plot's edge */
  double end = layout->plot.x;
  for (int i = 0; i < layout->ticks.n; i++)
    if (layout->ticks.ticks[i].is_major)
      end = fmin (end, dw_ladder_layout_tick_box (layout, i).x);
  dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_AXIS, DW_TEXT_TICK, text,
                           (dw_spot){ b->stack_x, b->top },
                           fmax (0.0, end - 0.5 * GAP * b->em - b->stack_x));
  b->top += layout->tick_height + LINE_GAP * b->em;
}

/* ---- rows ---- */

static double
row_top (const builder *b, int row)
{
  return b->layout->plot.y + (b->layout->n_rows - 1 - row) * b->layout->row_height;
}

static void
place_row (builder *b, int i)
{
  dw_ladder_layout *layout = b->layout;
  dw_ladder_row *row = &layout->rows[i];
  const dw_ladder_rung *rung = &b->chart->ladder->rungs[i];
  const int v = b->chart->speed;
  const double y = row_top (b, i);
  const double middle = y + 0.5 * layout->row_height;
  const double baseline = middle - 0.5 * layout->tick_height + layout->tick_ascent;
  const double slide = dw_scale_place (&layout->x, rung->force[DW_LEAVES_SLIDE][v]);
  const double stick = dw_scale_place (&layout->x, rung->force[DW_LEAVES_STICK][v]);
  const double height = BAR_PART * layout->row_height;
  row->box = (dw_rect){ b->left, y, b->row_right - b->left, layout->row_height };
  row->stack_at = (dw_spot){ b->stack_x, baseline };
  row->value_at = (dw_spot){ b->value_right - row->value_width, baseline };
  row->bar = (dw_rect){ fmin (slide, stick), middle - 0.5 * height, fabs (stick - slide), height };
  row->mark = (dw_spot){ dw_scale_place (&layout->x, dw_ladder_chart_force (b->chart, i)), middle };
  row->has_habit = rung->leaves > 1;
  if (row->has_habit)
    row->habit = (dw_spot){ dw_scale_place (&layout->x, rung->habit[v]), middle };
}

static void
place_band (builder *b, int first, int last)
{
  dw_ladder_layout *layout = b->layout;
  dw_ladder_band *band = &layout->bands[layout->n_bands++];
  const double y = row_top (b, last);
  band->n = last - first + 1;
  band->box = (dw_rect){ b->left, y, b->right - b->left, band->n * layout->row_height };
  band->is_toned = layout->n_bands % 2 == 0;
  if (band->n == 1 || b->word_width <= 0.0)
    return;
  const dw_text_extent extent = dw_text_measure (b->metrics, b->chart->labels.same, DW_TEXT_NOTE);
  band->word = g_strdup (b->chart->labels.same);
  band->word_at = (dw_spot){ b->word_x,
                             y + 0.5 * band->box.height + 0.5 * (extent.ascent - extent.descent) };
}

static void
place_rows (builder *b)
{
  dw_ladder_layout *layout = b->layout;
  const dw_ladder *ladder = b->chart->ladder;
  layout->plot.y = b->top;
  layout->plot.height = layout->n_rows * layout->row_height;
  layout->holes.y = layout->plain.y = layout->plot.y;
  layout->holes.height = layout->plain.height = layout->plot.height;
  layout->bands = g_new0 (dw_ladder_band, (gsize)ladder->n_groups);
  int first = 0;
  for (int i = 0; i < layout->n_rows; i++)
    {
      place_row (b, i);
      if (i + 1 < layout->n_rows && ladder->rungs[i + 1].group == ladder->rungs[i].group)
        continue;
      place_band (b, first, i);
      first = i + 1;
    }
}

/* ---- all of it ---- */

dw_ladder_layout *
dw_ladder_layout_new (const dw_ladder_chart *chart, const dw_chart_style *style,
                      const dw_text_metrics *metrics, dw_spot corner, double width)
{
  dw_ladder_layout *layout = g_new0 (dw_ladder_layout, 1);
  const double em = style->font[DW_TEXT_TICK].size;
  builder b = { .chart = chart,
                .metrics = metrics,
                .layout = layout,
                .em = em,
                .reach = REACH * style->marker_radius,
                .left = corner.x + PADDING * em,
                .right = fmax (corner.x + width - PADDING * em, corner.x + PADDING * em),
                .top = corner.y + PADDING * em };
  layout->row_height = ROW * em;
  layout->area = (dw_rect){ corner.x, corner.y, width, 2.0 * PADDING * em };
  layout->head = layout->area;
  layout->chosen = layout->pointed = -1;
  if (dw_ladder_chart_count (chart) == 0)
    return layout;

  make_row_texts (&b);
  shorten_stacks (&b);
  place_columns (&b);
  make_scale (&b);
  make_ticks (&b);
  make_zones (&b);
  add_title (&b);
  add_legend (&b);
  add_axis (&b);
  layout->head.height = b.top - corner.y;
  place_rows (&b);
  layout->area.height = layout->head.height + layout->plot.height + PADDING * em;
  dw_ladder_layout_mark (layout, chart);
  return layout;
}

void
dw_ladder_layout_free (dw_ladder_layout *layout)
{
  if (layout == NULL)
    return;
  for (int i = 0; i < layout->n_rows; i++)
    {
      g_free (layout->rows[i].stack);
      g_free (layout->rows[i].value);
    }
  for (int i = 0; i < layout->n_bands; i++)
    g_free (layout->bands[i].word);
  g_free (layout->rows);
  g_free (layout->bands);
  dw_chart_label_list_clear (&layout->texts);
  g_free (layout);
}

void
dw_ladder_layout_mark (dw_ladder_layout *layout, const dw_ladder_chart *chart)
{
  layout->chosen = chart->chosen < layout->n_rows ? MAX (-1, chart->chosen) : -1;
  layout->pointed = chart->pointed < layout->n_rows ? MAX (-1, chart->pointed) : -1;
}

int
dw_ladder_layout_hit (const dw_ladder_layout *layout, double x, double y)
{
  const double from_top = floor ((y - layout->plot.y) / layout->row_height);
  if (layout->n_rows == 0 || !(from_top >= 0.0 && from_top < layout->n_rows))
    return -1;
  const int row = layout->n_rows - 1 - (int)from_top;
  const dw_rect *box = &layout->rows[row].box;
  return x >= box->x && x <= box->x + box->width ? row : -1;
}

int
dw_ladder_layout_step (const dw_ladder_layout *layout, int row, int by)
{
  if (layout->n_rows == 0)
    return -1;
  if (row >= 0 && row < layout->n_rows)
    return by >= 0 ? row + MIN (by, layout->n_rows - 1 - row) : row + MAX (by, -row);
  for (int i = 0; i < layout->n_rows; i++)
    if (layout->rows[i].is_fitted)
      return i;
  return 0;
}

dw_rect
dw_ladder_layout_tick_box (const dw_ladder_layout *layout, int tick)
{
  const dw_tick *t = &layout->ticks.ticks[tick];
  const double width = t->is_major ? t->label_width : 0.0;
  return (dw_rect){ t->place - 0.5 * width, layout->tick_top, width, layout->tick_height };
}
