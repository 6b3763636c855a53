/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-readout.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-pen.h"

/* The speed stands on a plate that is so much larger than its letters [em of the tick letters]. */
static const double PLATE = 0.25;

/* Names that reach under the figures fade out over so much before them [em of the tick letters]. */
static const double FADE = 1.6;

/* Changes that are written without decimals [%]. */
static const double LARGE_CHANGE = 9.95;

typedef struct
{
  const dw_chart *chart;
  const dw_chart_layout *layout;
  const dw_chart_reading *reading;
  const dw_text_metrics *metrics;
  dw_chart_label_list *list;
} maker;

/* A text that ends at @p right on a baseline. */
static dw_chart_label *
add_right (const maker *m, dw_label_kind kind, dw_text_role role, const char *text, double right,
           double baseline)
{
  const dw_text_extent extent = dw_text_measure (m->metrics, text, role);
  const dw_spot corner = { right - extent.width, baseline - extent.ascent };
  return dw_chart_label_list_add (m->list, m->metrics, kind, role, text, corner,
                                  extent.width + 1.0);
}

static double
shown (const maker *m, const dw_reading_value *v)
{
  const double value = m->chart->quantity == DW_SHOW_FORCE ? v->force : v->c;
  return value / dw_chart_value_unit (m->chart)->factor;
}

static void
add_change (const maker *m, const dw_reading_value *v, double right, double baseline)
{
  char number[DW_NUMBER_ROOM];
  const bool is_large = fabs (v->change_percent) >= LARGE_CHANGE;
  const double rounded = fabs (v->change_percent) < 0.05 ? 0.0 : v->change_percent;

  dw_number_fixed (&m->chart->numbers, rounded, is_large ? 0 : 1, number, sizeof number);
  g_autofree char *text = g_strconcat (rounded > 0.0 ? "+" : "", number, "\u2009%", NULL);
  add_right (m, DW_LABEL_READING, DW_TEXT_LEGEND, text, right, baseline);
}

static void
add_lost (const maker *m, const dw_reading_value *v, double right, double baseline)
{
  char number[DW_NUMBER_ROOM];
  if (isinf (v->lost_travel))
    g_strlcpy (number, m->chart->labels.lost_all, sizeof number);
  else
    dw_number_steady (&m->chart->numbers, v->lost_travel / m->chart->units.length.factor, 2, number,
                      sizeof number);
  add_right (m, DW_LABEL_READING, DW_TEXT_LEGEND, number, right, baseline);
}

static void
add_figure (const maker *m, const dw_readout_column *column, int series, double baseline)
{
  const dw_reading_value *v = &m->reading->values[series][column->stroke];
  char number[DW_NUMBER_ROOM];
  if (!v->is_known)
    return;
  switch (column->kind)
    {
    case DW_READ_VALUE:
      dw_number_steady (&m->chart->numbers, shown (m, v), 3, number, sizeof number);
      add_right (m, DW_LABEL_READING, DW_TEXT_LEGEND, number, column->right, baseline);
      break;
    case DW_READ_CHANGE:
      if (v->has_change)
        add_change (m, v, column->right, baseline);
      break;
    case DW_READ_LOST:
      if (v->is_void)
        add_lost (m, v, column->right, baseline);
      break;
    }
}

/* Over the last of a stroke's columns, which it shares with the one before. */
static void
add_heads (const maker *m)
{
  const dw_readout_columns *c = &m->layout->readout;
  const double baseline = c->top + dw_text_measure (m->metrics, "0", DW_TEXT_NOTE).ascent;
  for (int i = 0; i < c->n; i++)
    {
      const dw_readout_column *column = &c->columns[i];
      const bool is_last = i + 1 == c->n || c->columns[i + 1].kind != DW_READ_CHANGE;
      g_autofree char *lost = dw_readout_columns_lost_head (m->chart);
      if (is_last)
        add_right (m, DW_LABEL_READING_HEAD, DW_TEXT_NOTE,
                   column->kind == DW_READ_LOST ? lost : m->chart->labels.stroke[column->stroke],
                   column->right, baseline);
    }
}

/* Under the line, between the labels of the axis. */
static void
add_speed (const maker *m)
{
  const dw_chart_layout *layout = m->layout;
  const dw_unit *unit = &m->chart->units.speed;
  char number[DW_NUMBER_ROOM];

  dw_number_steady (&m->chart->numbers, m->reading->speed / unit->factor, 3, number, sizeof number);
  g_autofree char *text = g_strconcat (number, "\u00a0", unit->symbol, NULL);
  const double width = dw_text_measure (m->metrics, text, DW_TEXT_TICK).width;
  const double pad = PLATE * layout->tick_height;
  const double most = layout->area.x + layout->area.width - width - pad;
  const double left = fmax (layout->area.x + pad, fmin (most, m->reading->x - 0.5 * width));
  dw_chart_label_list_add (m->list, m->metrics, DW_LABEL_READING_SPEED, DW_TEXT_TICK, text,
                           (dw_spot){ left, layout->x_tick_top }, width + 1.0);
}

static bool
is_in_plot (const dw_chart_reading *reading)
{
  return reading->x >= reading->plot.x && reading->x <= reading->plot.x + reading->plot.width;
}

void
dw_readout_make (const dw_chart *chart, const dw_chart_layout *layout,
                 const dw_chart_reading *reading, const dw_text_metrics *metrics,
                 dw_chart_label_list *list)
{
  const maker m = { chart, layout, reading, metrics, list };
  const dw_legend *legend = &layout->legend;

  dw_chart_label_list_clear (list);
  if (!is_in_plot (reading))
    return;
  add_speed (&m);
  if (layout->readout.n == 0)
    return;
  add_heads (&m);
  for (int i = 0; i < legend->n; i++)
    for (int k = 0; k < layout->readout.n; k++)
      add_figure (&m, &layout->readout.columns[k], legend->entries[i].series,
                  legend->entries[i].text_at.y);
}

dw_rect
dw_readout_table_box (const dw_chart_layout *layout)
{
  const dw_readout_columns *c = &layout->readout;
  const dw_rect *legend = &layout->legend.box;
  if (c->n == 0)
    return (dw_rect){ 0 };
  const double left = c->columns[0].left - FADE * layout->tick_height;
  const double right = fmax (c->columns[c->n - 1].right, legend->x + legend->width);
  return (dw_rect){ left, c->top, right - left, legend->y + legend->height - c->top };
}

/* The names have the whole row as long as there is no reading. */
static void
cover (const dw_chart_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const dw_rect box = dw_readout_table_box (layout);
  const double solid = box.x + 0.6 * FADE * layout->tick_height;
  const dw_color c = style->background;
  cairo_pattern_t *fade = cairo_pattern_create_linear (box.x, 0.0, solid, 0.0);
  cairo_pattern_add_color_stop_rgba (fade, 0.0, c.red, c.green, c.blue, 0.0);
  cairo_pattern_add_color_stop_rgba (fade, 1.0, c.red, c.green, c.blue, 1.0);
  /* the heads' row is free, and the last name's letters reach a little below */
  const double top = layout->legend.box.y;
  cairo_set_source (cr, fade);
  cairo_rectangle (cr, box.x, top, box.width, box.y + box.height + 1.0 - top);
  cairo_fill (cr);
  cairo_pattern_destroy (fade);
}

static dw_rect
plate (const dw_chart_label *label)
{
  const double pad = PLATE * label->box.height;
  return (dw_rect){ label->box.x - pad, label->box.y, label->box.width + 2.0 * pad,
                    label->box.height };
}

dw_rect
dw_readout_speed_box (const dw_chart_label_list *list)
{
  const dw_chart_label *label = dw_chart_label_list_find (list, DW_LABEL_READING_SPEED);
  return label != NULL ? plate (label) : (dw_rect){ 0 };
}

void
dw_readout_paint (const dw_chart_label_list *list, const dw_chart_layout *layout,
                  const dw_chart_style *style, cairo_t *cr)
{
  cairo_save (cr);
  if (dw_chart_label_list_find (list, DW_LABEL_READING) != NULL)
    cover (layout, style, cr);
  for (int i = 0; i < list->n; i++)
    {
      const dw_chart_label *label = &list->labels[i];
      const bool is_speed = label->kind == DW_LABEL_READING_SPEED;
      const dw_rect box = plate (label);
      if (is_speed)
        dw_pen_fill_rect (cr, &box, style->ink);
      dw_pen_color (cr, is_speed                               ? style->background
                        : label->kind == DW_LABEL_READING_HEAD ? style->muted
                                                               : style->ink);
      dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
    }
  cairo_restore (cr);
}
