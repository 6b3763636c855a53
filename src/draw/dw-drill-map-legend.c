/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-legend.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-phrase.h"

/* Sizes in ems of the tick letters. */
static const double BAR = 1.3;          /* width of an upright bar */
static const double BAR_LYING = 0.9;    /* height of one that lies */
static const double BAR_LEAST = 8.0;    /* height of an upright one */
static const double BAR_PER_TONE = 2.8; /* and at most, for each tone */
static const double LABEL_GAP = 0.45;
static const double SAMPLE = 2.3; /* width */
static const double SAMPLE_GAP = 0.5;
static const double KEY_GAP = 1.2; /* between samples in a row */
static const double ROW_GAP = 0.3;
static const double BLOCK_GAP = 0.7;

/* Between two values beside a bar, in heights of a label. */
static const double VALUE_GAP = 0.25;

/* Width of a legend beside the plot: part of the area [1], and in ems. */
static const double PART = 0.26;
static const double LEAST_WIDTH = 10.0;
static const double MOST_WIDTH = 17.0;

typedef struct
{
  const dw_drill_map_legend_input *in;
  double em;
  double left;
  double right;
  double top;    /* of what is free */
  double bottom; /* of the strip */
  dw_drill_map_legend *legend;
  dw_chart_label_list *texts;
} builder;

static builder
begin (const dw_drill_map_legend_input *input, const dw_rect *strip, dw_drill_map_legend *legend,
       dw_chart_label_list *texts)
{
  *legend = (dw_drill_map_legend){ .box = { strip->x, strip->y, strip->width, 0.0 } };
  return (builder){ .in = input,
                    .em = input->style->font[DW_TEXT_TICK].size,
                    .left = strip->x,
                    .right = strip->x + strip->width,
                    .top = strip->y,
                    .bottom = strip->y + strip->height,
                    .legend = legend,
                    .texts = texts };
}

static double
height_of (const builder *b, dw_text_role role)
{
  return dw_text_height (b->in->metrics, role);
}

/* ---- words ---- */

static char *
heading (const dw_drill_map_legend_input *in)
{
  g_autofree char *what = dw_drill_map_measure_caption (&in->map->labels, in->map->shade_measure);
  const dw_word words[] = { { "what", what }, { NULL, NULL } };
  return dw_phrase_fill (in->map->labels.shaded, words);
}

static char *
key_text (const dw_drill_map_legend_input *in, dw_drill_key key)
{
  const dw_drill_map_labels *labels = &in->map->labels;
  const char *const plain[DW_N_KEYS] = {
    [DW_KEY_DOT] = labels->dot,         [DW_KEY_TOLERANCE] = labels->tolerance,
    [DW_KEY_OIL] = labels->oil,         [DW_KEY_EQUAL] = labels->equal,
    [DW_KEY_NO_ROOM] = labels->no_room, [DW_KEY_GONE] = labels->gone,
  };
  if (key != DW_KEY_CONTOUR)
    return g_strdup (plain[key]);
  g_autofree char *what = dw_drill_map_measure_caption (labels, in->map->contour_measure);
  const dw_word words[] = { { "what", what }, { NULL, NULL } };
  return dw_phrase_fill (labels->contours, words);
}

static bool
has_key (const dw_drill_map_legend_input *in, dw_drill_key key)
{
  switch (key)
    {
    case DW_KEY_CONTOUR:
      return in->lines->n_contours > 0;
    case DW_KEY_DOT:
      return in->map->n_dots > 0;
    case DW_KEY_TOLERANCE:
      return in->map->n_dots > 0 && in->map->tolerance > 0.0;
    case DW_KEY_OIL:
      return in->lines->n_oils > 0;
    case DW_KEY_EQUAL:
      return in->lines->equal.line.n > 0;
    case DW_KEY_NO_ROOM:
      return in->has_land_end;
    case DW_KEY_GONE:
      return true;
    case DW_N_KEYS:
      break;
    }
  return false;
}

/* ---- the bar ---- */

static bool
has_bar (const builder *b)
{
  return b->in->lines->tone[0].n > 0 && b->in->lines->shade.n > 0;
}

double
dw_drill_map_legend_tone_end (const dw_drill_map_legend *legend, const dw_drill_lines *lines,
                              int tone)
{
  const double share = (tone + 1.0) / dw_drill_lines_n_tones (lines);
  return legend->is_upright ? legend->bar.y + legend->bar.height * (1.0 - share)
                            : legend->bar.x + legend->bar.width * share;
}

/* In tones from the low end. Tones at the ends are taken for as wide as their neighbours. */
static double
tones_to (const dw_drill_levels *shade, double value)
{
  int i = 0;
  while (i < shade->n && value >= shade->value[i])
    i++;
  const int a = CLAMP (i - 1, 0, shade->n - 2);
  const double width = shade->n > 1 ? shade->value[a + 1] - shade->value[a] : 1.0;
  const double at = i > 0 ? i + (value - shade->value[i - 1]) / width
                          : 1.0 - (shade->value[0] - value) / width;
  return CLAMP (at, (double)i, i + 1.0);
}

dw_spot
dw_drill_map_legend_value_at (const dw_drill_map_legend *legend, const dw_drill_lines *lines,
                              double value)
{
  const dw_rect *bar = &legend->bar;
  if (bar->width <= 0.0 || lines->shade.n == 0 || !isfinite (value))
    return (dw_spot){ (double)NAN, (double)NAN };
  const double share = tones_to (&lines->shade, value) / dw_drill_lines_n_tones (lines);
  return legend->is_upright
             ? (dw_spot){ bar->x + 0.5 * bar->width, bar->y + bar->height * (1.0 - share) }
             : (dw_spot){ bar->x + bar->width * share, bar->y + 0.5 * bar->height };
}

/* Every first, second, ... value, so that they keep their distance; zero is among them. */
static int
value_step (const builder *b, double apart, double size, int *first)
{
  const dw_drill_levels *shade = &b->in->lines->shade;
  int step = 1;
  while (step * apart < size && step < shade->n)
    step++;
  *first = 0;
  for (int i = 0; i < shade->n; i++)
    if (shade->value[i] == 0.0)
      *first = i % step;
  return step;
}

static void
value_text (const builder *b, int i, char *text, size_t room)
{
  const dw_drill_levels *shade = &b->in->lines->shade;
  dw_drill_level_text (b->in->map->shade_measure, &b->in->map->numbers, shade->value[i],
                       shade->decimals, false, text, room);
}

static double
widest_value (const builder *b)
{
  double widest = 0.0;
  for (int i = 0; i < b->in->lines->shade.n; i++)
    {
      char text[DW_NUMBER_ROOM];
      value_text (b, i, text, sizeof text);
      widest = fmax (widest, dw_text_measure (b->in->metrics, text, DW_TEXT_TICK).width);
    }
  return widest;
}

static void
add_values (const builder *b)
{
  const dw_drill_map_legend *legend = b->legend;
  const int n = b->in->lines->shade.n;
  const double height = height_of (b, DW_TEXT_TICK);
  const double length = legend->is_upright ? legend->bar.height : legend->bar.width;
  const double size = legend->is_upright ? (1.0 + VALUE_GAP) * height
                                         : widest_value (b) + VALUE_GAP * height;
  int first;
  const int step = value_step (b, length / (n + 1), size, &first);
  for (int i = first; i < n; i += step)
    {
      char text[DW_NUMBER_ROOM];
      value_text (b, i, text, sizeof text);
      const double width = dw_text_measure (b->in->metrics, text, DW_TEXT_TICK).width;
      const double at = dw_drill_map_legend_tone_end (legend, b->in->lines, i);
      const dw_spot corner = legend->is_upright
                                 ? (dw_spot){ legend->bar.x + legend->bar.width + LABEL_GAP * b->em,
                                              at - 0.5 * height }
                                 : (dw_spot){ at - 0.5 * width,
                                              legend->bar.y + legend->bar.height + 0.15 * b->em };
      dw_chart_label_list_add (b->texts, b->in->metrics, DW_LABEL_TONE, DW_TEXT_TICK, text, corner,
                               width + 1.0);
    }
}

/* ---- samples ---- */

static double
text_left (const builder *b, double left)
{
  return left + (SAMPLE + SAMPLE_GAP) * b->em;
}

/* In the middle of a row of text. */
static void
add_sample (const builder *b, dw_drill_key key, double left)
{
  const double height = height_of (b, DW_TEXT_LEGEND);
  b->legend->samples[b->legend->n_samples++]
      = (dw_drill_sample){ key, { left, b->top + 0.06 * height, SAMPLE * b->em, 0.88 * height } };
}

static void
add_line (const builder *b, const char *text, dw_label_kind kind, double left, double width)
{
  dw_chart_label_list_add (b->texts, b->in->metrics, kind, DW_TEXT_LEGEND, text,
                           (dw_spot){ left, b->top }, width);
}

/* A text in lines. @return  their height */
static double
wrapped_height (const builder *b, const char *text, double width)
{
  g_auto (GStrv) lines = dw_text_wrap (b->in->metrics, text, DW_TEXT_LEGEND, width);
  return (double)g_strv_length (lines) * height_of (b, DW_TEXT_LEGEND);
}

static void
add_wrapped (builder *b, const char *text, dw_label_kind kind, double left)
{
  g_auto (GStrv) lines = dw_text_wrap (b->in->metrics, text, DW_TEXT_LEGEND, b->right - left);
  for (char **line = lines; *line != NULL; line++)
    {
      add_line (b, *line, kind, left, b->right - left);
      b->top += height_of (b, DW_TEXT_LEGEND);
    }
}

/* ---- beside the plot ---- */

double
dw_drill_map_legend_width (const dw_drill_map_legend_input *input, double area_width)
{
  const double em = input->style->font[DW_TEXT_TICK].size;
  return fmin (MOST_WIDTH * em, fmax (LEAST_WIDTH * em, PART * area_width));
}

/* Height of the samples that fit under a bar, and how many that are. */
static double
samples_height (const builder *b, double room, bool *chosen)
{
  double height = 0.0;
  bool is_full = false;
  for (int key = 0; key < DW_N_KEYS; key++)
    {
      g_autofree char *text = key_text (b->in, (dw_drill_key)key);
      const double one = wrapped_height (b, text, b->right - text_left (b, b->left))
                         + ROW_GAP * b->em;
      chosen[key] = !is_full && has_key (b->in, (dw_drill_key)key) && height + one <= room;
      is_full = is_full || (has_key (b->in, (dw_drill_key)key) && !chosen[key]);
      height += chosen[key] ? one : 0.0;
    }
  return height;
}

static void
add_upright_bar (builder *b, double height)
{
  /* values reach half their height over the ends of tones, never over the bar's */
  b->legend->is_upright = true;
  b->legend->bar = (dw_rect){ b->left, b->top, BAR * b->em, height };
  add_values (b);
  b->top += height + BLOCK_GAP * b->em;
}

void
dw_drill_map_legend_make_beside (const dw_drill_map_legend_input *input, const dw_rect *strip,
                                 dw_drill_map_legend *legend, dw_chart_label_list *texts)
{
  bool chosen[DW_N_KEYS];
  builder b = begin (input, strip, legend, texts);
  if (has_bar (&b))
    {
      g_autofree char *text = heading (input);
      add_wrapped (&b, text, DW_LABEL_LEGEND, b.left);
      b.top += ROW_GAP * b.em;
    }
  const double least = has_bar (&b) ? (BAR_LEAST + BLOCK_GAP) * b.em : 0.0;
  const double taken = samples_height (&b, b.bottom - b.top - least, chosen);
  if (has_bar (&b))
    {
      const double room = b.bottom - b.top - taken - BLOCK_GAP * b.em;
      const double most = BAR_PER_TONE * b.em * dw_drill_lines_n_tones (input->lines);
      if (room >= 0.5 * BAR_LEAST * b.em)
        add_upright_bar (&b, fmin (most, room));
    }
  for (int key = 0; key < DW_N_KEYS; key++)
    if (chosen[key])
      {
        g_autofree char *text = key_text (input, (dw_drill_key)key);
        add_sample (&b, (dw_drill_key)key, b.left);
        add_wrapped (&b, text, DW_LABEL_KEY, text_left (&b, b.left));
        b.top += ROW_GAP * b.em;
      }
  legend->box.height = b.top - strip->y;
}

/* ---- above the plot ---- */

static void
add_lying_bar (builder *b)
{
  b->legend->bar = (dw_rect){ b->left, b->top, b->right - b->left, BAR_LYING * b->em };
  add_values (b);
  b->top += BAR_LYING * b->em + 0.15 * b->em + height_of (b, DW_TEXT_TICK) + ROW_GAP * b->em;
}

/* Samples beside each other, in a new row where the last one is full. */
static void
add_rows (builder *b)
{
  const double row = height_of (b, DW_TEXT_LEGEND);
  double x = b->left;
  bool is_begun = false; /* a row */
  for (int key = 0; key < DW_N_KEYS; key++)
    {
      if (!has_key (b->in, (dw_drill_key)key))
        continue;
      g_autofree char *text = key_text (b->in, (dw_drill_key)key);
      const double from = text_left (b, x) - x;
      const double width = from + dw_text_measure (b->in->metrics, text, DW_TEXT_LEGEND).width;
      if (x > b->left && x + width > b->right)
        {
          x = b->left;
          b->top += row + ROW_GAP * b->em;
          is_begun = false;
        }
      /* what the lines mean is told in any case */
      if (b->top + row > b->bottom && key > DW_KEY_CONTOUR)
        break;
      add_sample (b, (dw_drill_key)key, x);
      add_line (b, text, DW_LABEL_KEY, x + from, b->right - x - from);
      x += width + KEY_GAP * b->em;
      is_begun = true;
    }
  b->top += is_begun ? row : -ROW_GAP * b->em;
}

void
dw_drill_map_legend_make_above (const dw_drill_map_legend_input *input, const dw_rect *strip,
                                dw_drill_map_legend *legend, dw_chart_label_list *texts)
{
  builder b = begin (input, strip, legend, texts);
  if (has_bar (&b))
    {
      g_autofree char *text = heading (input);
      add_line (&b, text, DW_LABEL_LEGEND, b.left, b.right - b.left);
      b.top += height_of (&b, DW_TEXT_LEGEND) + ROW_GAP * b.em;
      add_lying_bar (&b);
    }
  add_rows (&b);
  legend->box.height = fmax (0.0, b.top - strip->y);
}
