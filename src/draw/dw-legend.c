/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-legend.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-pen.h"
#include "draw/dw-phrase.h"

/* In ems of the legend's letters. */
static const double SAMPLE = 4.4;
static const double SHORT_SAMPLE = 2.4; /* in columns, where there is little room */
static const double GAP_BEHIND_SAMPLE = 0.6;
static const double GAP_BETWEEN = 1.6;
static const double LINE_GAP = 0.3;

/* A column must hold so much of a name, or it tells nothing. */
static const double LEAST_NAME = 5.0;

/* [pt] A name that fits exactly must not be cut by the rounding of sums. */
static const double HAIR = 1e-3;

void
dw_legend_clear (dw_legend *legend)
{
  for (int i = 0; i < legend->n; i++)
    g_free (legend->entries[i].text);
  *legend = (dw_legend){ 0 };
}

static double
em (const dw_chart_style *style)
{
  return style->font[DW_TEXT_LEGEND].size;
}

static char *
name_of (const dw_chart *chart, int series)
{
  const dw_series *s = chart->series[series];
  const dw_word words[] = { { "setup", s->name }, { NULL, NULL } };
  return s->is_fitted ? dw_phrase_fill (chart->labels.fitted, words) : g_strdup (s->name);
}

static double
entry_width (const dw_chart *chart, const dw_chart_style *style, const dw_text_metrics *metrics,
             int series)
{
  g_autofree char *name = name_of (chart, series);
  return (SAMPLE + GAP_BEHIND_SAMPLE) * em (style)
         + dw_text_measure (metrics, name, DW_TEXT_LEGEND).width;
}

double
dw_legend_width (const dw_chart *chart, const dw_chart_style *style, const dw_text_metrics *metrics)
{
  double widest = 0.0;
  for (int i = 0; i < chart->n_series; i++)
    widest = fmax (widest, entry_width (chart, style, metrics, i));
  return widest;
}

/* Width of each of some columns. */
static double
cell_width (const dw_chart_style *style, const dw_rect *strip, int columns)
{
  return (strip->width - (columns - 1) * GAP_BETWEEN * em (style)) / columns;
}

static void
place_entry (const dw_chart *chart, const dw_chart_style *style, const dw_text_metrics *metrics,
             const dw_rect *box, double sample, int series, dw_legend *legend)
{
  const double indent = (sample + GAP_BEHIND_SAMPLE) * em (style);
  const dw_text_extent extent = dw_text_measure (metrics, "0", DW_TEXT_LEGEND);
  const double middle = box->y + 0.5 * box->height;
  g_autofree char *name = name_of (chart, series);
  dw_legend_entry *entry = &legend->entries[legend->n++];
  *entry = (dw_legend_entry){
    .series = series,
    .slot = dw_chart_slot (chart, series),
    .text = dw_text_ellipsize (metrics, name, DW_TEXT_LEGEND,
                               fmax (0.0, box->width - indent + HAIR)),
    .box = *box,
    .from = { box->x, middle },
    .to = { box->x + fmin (sample * em (style), box->width), middle },
    .text_at = { box->x + indent, middle + 0.5 * (extent.ascent - extent.descent) },
  };
  const double right = box->x + box->width;
  const double bottom = box->y + box->height;
  legend->box.width = fmax (legend->box.width, right - legend->box.x);
  legend->box.height = fmax (legend->box.height, bottom - legend->box.y);
}

/* Rows as they come; @p columns > 0: cells of one width. */
static void
fill (const dw_chart *chart, const dw_chart_style *style, const dw_text_metrics *metrics,
      const dw_rect *strip, int columns, dw_legend *legend)
{
  const double between = GAP_BETWEEN * em (style);
  const double height = dw_text_height (metrics, DW_TEXT_LEGEND);
  const double line = height + LINE_GAP * em (style);
  double x = strip->x;
  double y = strip->y;

  dw_legend_clear (legend);
  legend->box = (dw_rect){ strip->x, strip->y, 0.0, 0.0 };
  for (int i = 0; i < chart->n_series; i++)
    {
      const double cell = columns > 0 ? cell_width (style, strip, columns)
                                      : entry_width (chart, style, metrics, i);
      const double width = fmax (1.0, fmin (cell, strip->width));
      if (x > strip->x && x + width > strip->x + strip->width + 1e-6)
        {
          x = strip->x;
          y += line;
        }
      const dw_rect box = { x, y, width, height };
      place_entry (chart, style, metrics, &box, columns > 0 ? SHORT_SAMPLE : SAMPLE, i, legend);
      x += width + between;
    }
}

void
dw_legend_make (const dw_chart *chart, const dw_chart_style *style, const dw_text_metrics *metrics,
                const dw_rect *strip, dw_legend *legend)
{
  fill (chart, style, metrics, strip, 0, legend);
  const double least = dw_legend_least_width (style);
  for (int columns = 2; columns <= chart->n_series && legend->box.height > strip->height
                        && cell_width (style, strip, columns) >= least;
       columns++)
    fill (chart, style, metrics, strip, columns, legend);
}

void
dw_legend_make_rows (const dw_chart *chart, const dw_chart_style *style,
                     const dw_text_metrics *metrics, const dw_rect *strip, dw_legend *legend)
{
  fill (chart, style, metrics, strip, 1, legend);
}

double
dw_legend_least_width (const dw_chart_style *style)
{
  return (SHORT_SAMPLE + GAP_BEHIND_SAMPLE + LEAST_NAME) * em (style);
}

void
dw_legend_paint (const dw_legend *legend, const dw_chart_style *style, cairo_t *cr)
{
  for (int i = 0; i < legend->n; i++)
    {
      const dw_legend_entry *entry = &legend->entries[i];
      const dw_line_style *line = &style->line[entry->slot];
      dw_spot ends[] = { entry->from, entry->to };
      const dw_polyline sample = { ends, 2, 2 };
      const dw_spot middle = { 0.5 * (entry->from.x + entry->to.x),
                               0.5 * (entry->from.y + entry->to.y) };
      dw_pen_stroke (cr, &sample, line);
      dw_pen_marker (cr, line->marker, middle, style->marker_radius, line->color,
                     style->background);
      dw_pen_color (cr, style->ink);
      dw_text_paint (cr, style, DW_TEXT_LEGEND, entry->text, entry->text_at, 0.0);
    }
}
