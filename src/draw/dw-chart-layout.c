/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-layout.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-chart-notes.h"
#include "draw/dw-phrase.h"

/* Distances, in ems of the tick letters. */
static const double PADDING = 0.6;    /* around everything */
static const double ROW_GAP = 0.35;   /* between rows of text */
static const double TITLE_GAP = 1.0;  /* behind the title, when something follows */
static const double LABEL_GAP = 0.55; /* from the plot to its labels */
static const double CLEARANCE = 0.1;  /* between two texts above each other, at least */
static const double LEAST_MAJOR_X = 4.2;
static const double LEAST_MAJOR_Y = 1.9;
static const double LEAST_MINOR = 0.5;

/* [pt] A plot that is lower than this is worth more than a title or a strip. */
static const double LOW_PLOT = 70.0;
static const double LOW_PLOT_WITH_STRIP = 80.0;

/* The strip's part of the area [1], and its limits in ems. */
static const double STRIP_PART = 0.14;
static const double STRIP_LEAST = 3.2;
static const double STRIP_MOST = 6.5;

/* Samples in its heading: height in ascents of the letters, width in heights, gaps in ems. */
static const double SWATCH = 0.9;
static const double SWATCH_ASPECT = 1.4;
static const double SWATCH_GAP = 0.3;
static const double KEY_GAP = 0.9;

/* The legend stands at the right of an area at least so wide [1 of its height] ... */
static const double WIDE = 1.7;
/* ... and so wide [em], takes at most this part of it, and above at most this part. */
static const double WIDE_LEAST = 56.0;
static const double LEGEND_PART = 0.28;
static const double LEGEND_PART_ABOVE = 0.32;

/* What is being laid out. */
typedef struct
{
  const dw_chart *chart;
  const dw_chart_style *style;
  const dw_text_metrics *metrics;
  double em;    /* [pt] of the tick letters */
  double top;   /* [pt] of what is still free */
  double right; /* [pt] */
} builder;

static char *
caption (const builder *b, const char *what, const char *unit)
{
  const dw_word words[] = { { "what", what }, { "unit", unit }, { NULL, NULL } };
  return dw_phrase_fill (b->chart->labels.caption, words);
}

static char *
value_caption (const builder *b)
{
  const dw_chart *chart = b->chart;
  return caption (b, chart->labels.quantity[chart->quantity][chart->place],
                  dw_chart_value_unit (chart)->symbol);
}

static bool
has_captions (const builder *b)
{
  return b->chart->labels.caption != NULL;
}

static double
row (const builder *b, dw_text_role role)
{
  return dw_text_height (b->metrics, role) + ROW_GAP * b->em;
}

/* ---- rows above and beside the plot ---- */

static double
strip_height (const builder *b, const dw_rect *area)
{
  return fmin (STRIP_MOST * b->em, fmax (STRIP_LEAST * b->em, STRIP_PART * area->height));
}

static char *
strip_heading (const builder *b)
{
  const dw_chart *chart = b->chart;
  const dw_word words[] = { { "setup", chart->series[chart->strip_series]->name },
                            { "stroke", chart->labels.stroke[chart->strip_stroke] },
                            { NULL, NULL } };
  return dw_phrase_fill (chart->labels.strip, words);
}

static double
swatch_size (const builder *b)
{
  return SWATCH * dw_text_measure (b->metrics, "0", DW_TEXT_NOTE).ascent;
}

/* The strip's heading and the samples of its parts in one row where there is room for both. */
static int
heading_rows (const builder *b, const dw_rect *area)
{
  g_autofree char *heading = strip_heading (b);
  double width = dw_text_measure (b->metrics, heading, DW_TEXT_NOTE).width;
  for (int i = 0; i < DW_N_SHARES; i++)
    width += dw_text_measure (b->metrics, b->chart->labels.share[i], DW_TEXT_NOTE).width
             + SWATCH_ASPECT * swatch_size (b) + (SWATCH_GAP + KEY_GAP) * b->em;
  /* the key ends with the plot, which ends before the labels do */
  const double slack = 2.0 * b->em;
  return width + slack <= b->right - area->x - PADDING * b->em ? 1 : 2;
}

/* Strip with its heading. */
static double
strip_room (const builder *b, const dw_rect *area)
{
  return strip_height (b, area) + heading_rows (b, area) * row (b, DW_TEXT_CAPTION) + 0.5 * b->em;
}

/* What stands under the plot without the strip. */
static double
foot_room (const builder *b)
{
  return LABEL_GAP * b->em + dw_text_height (b->metrics, DW_TEXT_TICK)
         + (has_captions (b) ? row (b, DW_TEXT_CAPTION) : 0.0);
}

static bool
legend_goes_right (const builder *b, const dw_rect *area)
{
  if (b->chart->legend == DW_LEGEND_AUTO)
    return area->width >= WIDE_LEAST * b->em && area->width >= WIDE * area->height;
  return b->chart->legend == DW_LEGEND_RIGHT;
}

static bool
has_legend (const builder *b)
{
  return b->chart->legend != DW_LEGEND_NONE && b->chart->n_series > 0;
}

/* Strip above the plot that the legend may fill. */
static dw_rect
legend_strip (const builder *b, const dw_rect *area)
{
  const double left = area->x + PADDING * b->em;
  return (dw_rect){ left, b->top, b->right - left, LEGEND_PART_ABOVE * area->height };
}

/* A low area has its names side by side instead. */
static bool
is_table (const builder *b, const dw_rect *area)
{
  const int n = b->chart->n_series;
  return b->chart->legend == DW_LEGEND_TABLE && n > 0
         && n * row (b, DW_TEXT_LEGEND) <= LEGEND_PART_ABOVE * area->height;
}

/* Columns of figures where they leave something of the names. */
static dw_readout_columns
readout_columns (const builder *b, const dw_rect *area)
{
  const double left = area->x + PADDING * b->em;
  return dw_readout_columns_make (b->chart, b->style, b->metrics, b->right,
                                  b->right - left - dw_legend_least_width (b->style));
}

static void
make_legend_above (const builder *b, const dw_rect *area, dw_legend *legend)
{
  const dw_rect strip = legend_strip (b, area);
  if (is_table (b, area))
    dw_legend_make_rows (b->chart, b->style, b->metrics, &strip, legend);
  else
    dw_legend_make (b->chart, b->style, b->metrics, &strip, legend);
}

/* What a legend above the plot takes. */
static double
legend_room (const builder *b, const dw_rect *area)
{
  if (!has_legend (b) || legend_goes_right (b, area))
    return 0.0;
  dw_legend legend = { 0 };
  make_legend_above (b, area, &legend);
  const double height = legend.box.height;
  dw_legend_clear (&legend);
  return height + 0.6 * b->em;
}

/* Behind the title, on its baseline, when there is room before @p right; decided by the wider of
 * two titles beside each other, so that both charts have the same rows. */
static void
add_caption_to_title (builder *b, dw_chart_layout *layout, const dw_chart_label *title,
                      double right)
{
  g_autofree char *text = value_caption (b);
  const dw_text_extent extent = dw_text_measure (b->metrics, text, DW_TEXT_CAPTION);
  const dw_spot corner = { title->box.x + title->box.width + TITLE_GAP * b->em,
                           title->at.y - extent.ascent };
  const char *beside = b->chart->labels.title_beside;
  const double wider = beside != NULL ? dw_text_measure (b->metrics, beside, DW_TEXT_TITLE).width
                                            - title->box.width
                                      : 0.0;
  if (corner.x + fmax (0.0, wider) + extent.width <= right)
    dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_VALUE_CAPTION, DW_TEXT_CAPTION,
                             text, corner, extent.width + 1.0);
}

/* Heads of a table's columns stand in the row of the title, or in one of their own. */
static void
add_heads (builder *b, dw_chart_layout *layout, const dw_chart_label *title)
{
  const dw_text_extent extent = dw_text_measure (b->metrics, "0", DW_TEXT_NOTE);
  layout->readout = readout_columns (b, &layout->area);
  if (title != NULL)
    {
      if (has_captions (b))
        add_caption_to_title (b, layout, title, b->right - layout->readout.width);
      layout->readout.top = title->at.y - extent.ascent;
      return;
    }
  layout->readout.top = b->top;
  if (layout->readout.n > 0)
    b->top += row (b, DW_TEXT_NOTE);
}

static const dw_chart_label *
add_title (builder *b, dw_chart_layout *layout)
{
  const char *title = b->chart->labels.title;
  const double left = layout->area.x + PADDING * b->em;
  if (title == NULL || *title == '\0')
    return NULL;
  const double bottom = layout->area.y + layout->area.height;
  const double rest = bottom - b->top - row (b, DW_TEXT_TITLE) - legend_room (b, &layout->area)
                      - row (b, DW_TEXT_CAPTION) - foot_room (b);
  if (rest < LOW_PLOT)
    return NULL;
  const double room = b->right - left
                      - (is_table (b, &layout->area) ? readout_columns (b, &layout->area).width
                                                     : 0.0);
  const dw_chart_label *label = dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_TITLE,
                                                         DW_TEXT_TITLE, title,
                                                         (dw_spot){ left, b->top }, room);
  b->top += row (b, DW_TEXT_TITLE) + ROW_GAP * b->em;
  return label;
}

static void
add_legend (builder *b, dw_chart_layout *layout)
{
  const dw_rect *area = &layout->area;
  const double pad = PADDING * b->em;
  if (!has_legend (b))
    return;
  if (legend_goes_right (b, area))
    {
      const double needed = dw_legend_width (b->chart, b->style, b->metrics);
      const double width = fmin (needed, LEGEND_PART * area->width);
      /* as narrow as one entry, so that they stand below each other */
      const dw_rect strip = { b->right - width, b->top + row (b, DW_TEXT_CAPTION), width,
                              area->height };
      dw_legend_make (b->chart, b->style, b->metrics, &strip, &layout->legend);
      b->right -= width + 2.0 * pad;
      return;
    }
  make_legend_above (b, area, &layout->legend);
  b->top += layout->legend.box.height + 0.6 * b->em;
}

/* ---- plot and axes ---- */

static dw_ticks_options
tick_options (const builder *b, bool is_vertical)
{
  return (dw_ticks_options){
    .numbers = &b->chart->numbers,
    .metrics = b->metrics,
    .factor = is_vertical ? dw_chart_value_unit (b->chart)->factor : b->chart->units.speed.factor,
    .is_vertical = is_vertical,
    .least_major = (is_vertical ? LEAST_MAJOR_Y : LEAST_MAJOR_X) * b->em,
    .least_minor = LEAST_MINOR * b->em,
  };
}

static double
widest_label (const dw_ticks *ticks)
{
  double widest = 0.0;
  for (int i = 0; i < ticks->n; i++)
    widest = fmax (widest, ticks->ticks[i].label_width);
  return widest;
}

static void
scale_axes (const builder *b, dw_chart_layout *layout)
{
  const dw_rect *plot = &layout->frame.plot;
  const dw_view *v = &layout->view;
  layout->frame.x = (dw_scale){ b->chart->is_log, v->x_low, v->x_high, plot->x,
                                plot->x + plot->width };
  layout->frame.y = (dw_scale){ false, v->y_low, v->y_high, plot->y + plot->height, plot->y };
}

static void
make_ticks (const builder *b, dw_chart_layout *layout)
{
  const dw_ticks_options across = tick_options (b, false);
  const dw_ticks_options up = tick_options (b, true);
  scale_axes (b, layout);
  dw_ticks_make (&layout->frame.x, &across, &layout->x_ticks);
  dw_ticks_make (&layout->frame.y, &up, &layout->y_ticks);
}

/* "0 %" and "100 %" beside the strip. */
static char *
strip_tick (const builder *b, double percent)
{
  char number[DW_NUMBER_ROOM];
  dw_number_fixed (&b->chart->numbers, percent, 0, number, sizeof number);
  return g_strconcat (number, "\u2009%", NULL);
}

/* How far labels of the speed axis reach past the plot's right end. */
static double
overhang (const dw_chart_layout *layout)
{
  double most = 0.0;
  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      const dw_rect box = dw_chart_layout_x_label_box (layout, i);
      most = fmax (most, box.x + box.width - layout->frame.plot.x - layout->frame.plot.width);
    }
  return most;
}

/* The labels decide how much is left for the plot, and the plot how many labels there are: the
 * second round has the first one's margins. */
static void
place_plot (const builder *b, dw_chart_layout *layout, double bottom, bool has_strip)
{
  const dw_rect *area = &layout->area;
  const double pad = PADDING * b->em;
  const double left = area->x + pad;
  const double right = b->right;
  const double y = b->top;
  const double height = fmax (1.0, bottom - y);
  dw_rect *plot = &layout->frame.plot;

  g_autofree char *hundred = strip_tick (b, 100.0);
  const double strip_label = has_strip ? dw_text_measure (b->metrics, hundred, DW_TEXT_TICK).width
                                       : 0.0;
  layout->tick_height = dw_text_height (b->metrics, DW_TEXT_TICK);
  layout->tick_ascent = dw_text_measure (b->metrics, "0", DW_TEXT_TICK).ascent;
  *plot = (dw_rect){ left + 3.0 * b->em, y, fmax (1.0, right - left - 3.0 * b->em), height };
  make_ticks (b, layout);
  for (int round = 0; round < 3; round++)
    {
      const double widest = fmax (widest_label (&layout->y_ticks), strip_label);
      const double labels = widest + LABEL_GAP * b->em;
      const double x = left + fmax (labels, b->em);
      /* half of the rightmost label, at least half a pad so that marks are not at the edge */
      const double margin = round == 0 ? 1.5 * b->em : fmax (overhang (layout), 0.3 * b->em);
      plot->x = x;
      plot->width = fmax (1.0, right - x - margin);
      make_ticks (b, layout);
    }
  layout->y_tick_right = plot->x - LABEL_GAP * b->em;
  layout->x_tick_top = plot->y + plot->height + LABEL_GAP * b->em;
  layout->zero = dw_scale_place (&layout->frame.y, 0.0);
  layout->shows_zero = layout->zero >= plot->y && layout->zero <= plot->y + plot->height;
}

static void
add_speed_caption (const builder *b, dw_chart_layout *layout)
{
  const dw_chart *chart = b->chart;
  const dw_rect *plot = &layout->frame.plot;
  g_autofree char *text = caption (b, chart->labels.speed[chart->place], chart->units.speed.symbol);
  const double right = plot->x + plot->width;
  const double left = layout->area.x + PADDING * b->em;
  const dw_spot corner = { left, layout->x_tick_top + layout->tick_height + ROW_GAP * b->em };
  dw_chart_label *label = dw_chart_label_list_add (&layout->texts, b->metrics,
                                                   DW_LABEL_SPEED_CAPTION, DW_TEXT_CAPTION, text,
                                                   corner, right - left);
  if (label != NULL)
    {
      const double shift = right - left - label->box.width;
      label->box.x += shift;
      label->at.x += shift;
    }
}

static void
add_value_caption (builder *b, dw_chart_layout *layout)
{
  const double left = layout->area.x + PADDING * b->em;
  g_autofree char *text = value_caption (b);
  if (dw_chart_label_list_find (&layout->texts, DW_LABEL_VALUE_CAPTION) == NULL)
    {
      dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_VALUE_CAPTION, DW_TEXT_CAPTION,
                               text, (dw_spot){ left, b->top }, b->right - left);
      b->top += dw_text_height (b->metrics, DW_TEXT_CAPTION);
    }
}

/* ---- the strip ---- */

/* Samples of the parts, from the right. @return  where they begin; 0 when they do not fit */
static double
add_strip_key (const builder *b, dw_chart_layout *layout, double y)
{
  const dw_rect *plot = &layout->frame.plot;
  const double size = swatch_size (b);
  double x = plot->x + plot->width;
  for (int i = DW_N_SHARES - 1; i >= 0; i--)
    {
      const char *text = b->chart->labels.share[i];
      const double width = dw_text_measure (b->metrics, text, DW_TEXT_NOTE).width;
      const double left = x - width - SWATCH_ASPECT * size - SWATCH_GAP * b->em;
      if (left < layout->area.x + PADDING * b->em)
        return 0.0;
      const dw_chart_label *label = dw_chart_label_list_add (
          &layout->texts, b->metrics, DW_LABEL_SHARE, DW_TEXT_NOTE, text, (dw_spot){ x - width, y },
          width + 1.0);
      if (label == NULL)
        return 0.0;
      layout->swatch[i] = (dw_rect){ left, label->at.y - size, SWATCH_ASPECT * size, size };
      x = left - KEY_GAP * b->em;
    }
  return x;
}

/* @p y is the top of the last row. */
static void
add_strip_heading (const builder *b, dw_chart_layout *layout, double y)
{
  const double from = layout->area.x + PADDING * b->em;
  const bool is_one_row = heading_rows (b, &layout->area) == 1;
  const double key = add_strip_key (b, layout, y);
  const double to = is_one_row && key > 0.0 ? key : b->right;
  const double top = is_one_row ? y : y - row (b, DW_TEXT_NOTE);
  g_autofree char *text = strip_heading (b);
  dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_STRIP, DW_TEXT_NOTE, text,
                           (dw_spot){ from, top }, to - from);
}

static void
add_strip_ticks (const builder *b, dw_chart_layout *layout)
{
  const dw_rect *plot = &layout->strip.plot;
  for (int i = 0; i <= 1; i++)
    {
      g_autofree char *text = strip_tick (b, 100.0 * i);
      const double y = i == 0 ? plot->y + plot->height - layout->tick_height : plot->y;
      dw_chart_label *label = dw_chart_label_list_add (
          &layout->texts, b->metrics, DW_LABEL_STRIP_TICK, DW_TEXT_TICK, text,
          (dw_spot){ layout->area.x, y }, layout->y_tick_right - layout->area.x);
      if (label == NULL)
        continue;
      const double shift = layout->y_tick_right - label->box.x - label->box.width;
      label->box.x += shift;
      label->at.x += shift;
    }
}

static void
add_strip (const builder *b, dw_chart_layout *layout)
{
  const double height = strip_height (b, &layout->area);
  const double bottom = layout->area.y + layout->area.height - PADDING * b->em;
  const dw_rect plot = { layout->frame.plot.x, bottom - height, layout->frame.plot.width, height };
  layout->has_strip = true;
  dw_flow_strip_make (b->chart, &plot, &layout->frame.x, &layout->strip);
  add_strip_heading (b, layout, plot.y - dw_text_height (b->metrics, DW_TEXT_NOTE) - 0.3 * b->em);
  add_strip_ticks (b, layout);
}

/* ---- all ---- */

dw_chart_layout *
dw_chart_layout_new (const dw_chart *chart, const dw_chart_style *style,
                     const dw_text_metrics *metrics, const dw_rect *area)
{
  dw_chart_layout *layout = g_new0 (dw_chart_layout, 1);
  builder b = { .chart = chart, .style = style, .metrics = metrics };

  b.em = style->font[DW_TEXT_TICK].size;
  b.top = area->y + PADDING * b.em;
  b.right = area->x + area->width - PADDING * b.em;
  layout->area = *area;
  layout->n_series = chart->n_series;
  layout->speed_factor = chart->units.speed.factor;
  layout->whole = dw_chart_whole_view (chart);
  layout->view = dw_chart_current_view (chart);

  const dw_chart_label *title = add_title (&b, layout);
  if (is_table (&b, area))
    add_heads (&b, layout, title);
  add_legend (&b, layout);
  if (has_captions (&b))
    add_value_caption (&b, layout);
  /* the uppermost label reaches half its height over the plot */
  b.top += fmax (ROW_GAP * b.em, (0.5 + CLEARANCE) * dw_text_height (metrics, DW_TEXT_TICK));
  double bottom = area->y + area->height - PADDING * b.em - foot_room (&b);
  const bool wants_strip = chart->strip_series >= 0 && chart->strip_series < chart->n_series;
  const bool has_strip = wants_strip
                         && bottom - b.top - strip_room (&b, area) >= LOW_PLOT_WITH_STRIP;
  if (has_strip)
    bottom -= strip_room (&b, area);
  place_plot (&b, layout, bottom, has_strip);
  if (has_captions (&b))
    add_speed_caption (&b, layout);
  if (has_strip)
    add_strip (&b, layout);

  for (int i = 0; i < chart->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      dw_chart_curve_make (chart, i, (dw_stroke)s, style, &layout->frame, &layout->curves[i][s]);
  const dw_chart_notes notes = { chart, style, metrics, &layout->frame, layout->curves };
  dw_chart_notes_add (&notes, &layout->texts);
  return layout;
}

void
dw_chart_layout_free (dw_chart_layout *layout)
{
  if (layout == NULL)
    return;
  for (int i = 0; i < layout->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      dw_chart_curve_clear (&layout->curves[i][s]);
  dw_flow_strip_clear (&layout->strip);
  dw_legend_clear (&layout->legend);
  dw_chart_label_list_clear (&layout->texts);
  g_free (layout);
}

dw_rect
dw_chart_layout_x_label_box (const dw_chart_layout *layout, int tick)
{
  const dw_tick *t = &layout->x_ticks.ticks[tick];
  return (dw_rect){ t->place - 0.5 * t->label_width, layout->x_tick_top, t->label_width,
                    t->is_major ? layout->tick_height : 0.0 };
}

dw_rect
dw_chart_layout_y_label_box (const dw_chart_layout *layout, int tick)
{
  const dw_tick *t = &layout->y_ticks.ticks[tick];
  return (dw_rect){ layout->y_tick_right - t->label_width, t->place - 0.5 * layout->tick_height,
                    t->label_width, t->is_major ? layout->tick_height : 0.0 };
}

/* ---- asked ---- */

bool
dw_chart_layout_hit (const dw_chart_layout *layout, double x, double y, double radius,
                     dw_chart_hit *out)
{
  const dw_spot at = { x, y };
  dw_chart_hit best = { .series = -1, .distance = radius };
  for (int i = 0; i < layout->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      {
        dw_spot spot;
        const double distance = dw_chart_curve_nearest (&layout->curves[i][s], at, &spot);
        if (distance <= radius && (best.series < 0 || distance < best.distance))
          best = (dw_chart_hit){ i, (dw_stroke)s, spot, dw_chart_layout_speed (layout, spot.x),
                                 distance };
      }
  if (best.series < 0)
    return false;
  *out = best;
  return true;
}

double
dw_chart_layout_x (const dw_chart_layout *layout, double speed)
{
  return dw_scale_place (&layout->frame.x, speed);
}

double
dw_chart_layout_y (const dw_chart_layout *layout, dw_stroke stroke, double magnitude)
{
  return dw_chart_frame_y (&layout->frame, stroke, magnitude);
}

double
dw_chart_layout_speed (const dw_chart_layout *layout, double x)
{
  return dw_scale_value (&layout->frame.x, x);
}

double
dw_chart_layout_value (const dw_chart_layout *layout, double y)
{
  return dw_scale_value (&layout->frame.y, y);
}

/* ---- views ---- */

/* Shares of the plot, from its left and its lower border. */
static double
across (const dw_chart_layout *layout, double x)
{
  return (x - layout->frame.plot.x) / layout->frame.plot.width;
}

static double
upwards (const dw_chart_layout *layout, double y)
{
  return (layout->frame.plot.y + layout->frame.plot.height - y) / layout->frame.plot.height;
}

static double
inside (double share)
{
  return fmin (1.0, fmax (0.0, share));
}

dw_view
dw_chart_layout_zoom (const dw_chart_layout *layout, double x, double y, double factor)
{
  return dw_view_zoom (&layout->view, &layout->whole, layout->frame.x.is_log,
                       inside (across (layout, x)), inside (upwards (layout, y)), factor);
}

dw_view
dw_chart_layout_drag (const dw_chart_layout *layout, double x0, double y0, double x1, double y1)
{
  return dw_view_drag (&layout->view, &layout->whole, layout->frame.x.is_log,
                       inside (across (layout, x0)), inside (upwards (layout, y0)),
                       inside (across (layout, x1)), inside (upwards (layout, y1)));
}

dw_view
dw_chart_layout_pan (const dw_chart_layout *layout, double dx, double dy)
{
  return dw_view_pan (&layout->view, &layout->whole, layout->frame.x.is_log,
                      -dx / layout->frame.plot.width, dy / layout->frame.plot.height);
}

/* ---- keys ---- */

/* Steps of the keys over the whole axis. */
static const double KEY_STEPS = 100.0;
static const double LARGE = 10.0;

/* Of each decade, about evenly spaced. */
static const int SMALL_STEPS[] = { 100, 120, 150, 200, 250, 300, 400, 500, 600, 800, 1000 };
static const int LARGE_STEPS[] = { 100, 200, 500, 1000 };

static double
step_log (double shown, int direction, bool is_large)
{
  const int *steps = is_large ? LARGE_STEPS : SMALL_STEPS;
  const int n = is_large ? (int)G_N_ELEMENTS (LARGE_STEPS) : (int)G_N_ELEMENTS (SMALL_STEPS);
  const int exponent = (int)floor (log10 (shown) + 1e-9);
  double best = shown;
  for (int e = exponent - 1; e <= exponent + 1; e++)
    for (int i = 0; i < n; i++)
      {
        const double speed = dw_step_times ((dw_step){ steps[i], e - 2 }, 1.0);
        const double slack = 1e-6 * shown;
        if (direction > 0 && speed > shown + slack && (best == shown || speed < best))
          best = speed;
        if (direction < 0 && speed < shown - slack && (best == shown || speed > best))
          best = speed;
      }
  return best;
}

static double
step_even (const dw_scale *x, double factor, double shown, int direction, bool is_large)
{
  const double range = (x->high - x->low) / factor;
  const dw_step step = dw_step_at_least (range / KEY_STEPS * (is_large ? LARGE : 1.0));
  const double at = shown / dw_step_times (step, 1.0);
  const double next = direction > 0 ? floor (at + 1e-6) + 1.0 : ceil (at - 1e-6) - 1.0;
  return dw_step_times (step, next);
}

double
dw_chart_layout_step (const dw_chart_layout *layout, double speed, int direction, bool is_large)
{
  const dw_scale *x = &layout->frame.x;
  const double from = fmin (x->high, fmax (x->low, speed));
  const double shown = from / layout->speed_factor;
  const double next = x->is_log ? step_log (shown, direction, is_large)
                                : step_even (x, layout->speed_factor, shown, direction, is_large);
  return fmin (x->high, fmax (x->low, next * layout->speed_factor));
}
