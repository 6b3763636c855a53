/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-readout-columns.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-phrase.h"

/* Gaps, in ems of the legend's letters. */
static const double BEFORE_ALL = 1.0;
static const double BEFORE_STROKE = 1.1;
static const double BEFORE_CHANGE = 0.45;

/* The widest figures that are usual. */
static const char WIDEST_VALUE[] = "0000";
static const char WIDEST_CHANGE[] = "+00.0\u2009%";
static const char WIDEST_LOST[] = "00.0";

typedef struct
{
  const dw_chart *chart;
  const dw_text_metrics *metrics;
  double em; /* [pt] */
} maker;

static double
width_of (const maker *m, const char *text, dw_text_role role)
{
  return dw_text_measure (m->metrics, text, role).width;
}

/* Some series has a void at all. */
static bool
has_void (const dw_chart *chart)
{
  for (int i = 0; i < chart->n_series; i++)
    if (isfinite (chart->series[i]->onset_speed))
      return true;
  return false;
}

char *
dw_readout_columns_lost_head (const dw_chart *chart)
{
  const dw_word words[] = { { "unit", chart->units.length.symbol }, { NULL, NULL } };
  return dw_phrase_fill (chart->labels.lost, words);
}

/* Columns are put from the right to the left; the list is turned at the end. */
static void
put (dw_readout_columns *c, dw_readout_kind kind, dw_stroke stroke, double *right, double width)
{
  c->columns[c->n++] = (dw_readout_column){ kind, stroke, *right - width, *right };
  *right -= width;
}

static void
put_stroke (const maker *m, dw_readout_columns *c, dw_stroke stroke, bool has_change, double *right)
{
  const double change = has_change ? width_of (m, WIDEST_CHANGE, DW_TEXT_LEGEND) : 0.0;
  const double gap = has_change ? BEFORE_CHANGE * m->em : 0.0;
  const double head = width_of (m, m->chart->labels.stroke[stroke], DW_TEXT_NOTE);
  const double value = fmax (width_of (m, WIDEST_VALUE, DW_TEXT_LEGEND), head - change - gap);
  if (has_change)
    {
      put (c, DW_READ_CHANGE, stroke, right, change);
      *right -= gap;
    }
  put (c, DW_READ_VALUE, stroke, right, value);
}

static void
put_lost (const maker *m, dw_readout_columns *c, double *right)
{
  char *head = dw_readout_columns_lost_head (m->chart);
  put (c, DW_READ_LOST, DW_COMPRESSION, right,
       fmax (width_of (m, WIDEST_LOST, DW_TEXT_LEGEND), width_of (m, head, DW_TEXT_NOTE)));
  g_free (head);
}

static void
turn (dw_readout_columns *c)
{
  for (int i = 0; i < c->n / 2; i++)
    {
      const dw_readout_column first = c->columns[i];
      c->columns[i] = c->columns[c->n - 1 - i];
      c->columns[c->n - 1 - i] = first;
    }
}

static dw_readout_columns
place (const maker *m, double right, bool has_change, bool has_lost)
{
  dw_readout_columns c = { .n = 0 };
  double x = right;
  if (has_lost)
    {
      put_lost (m, &c, &x);
      x -= BEFORE_STROKE * m->em;
    }
  put_stroke (m, &c, DW_REBOUND, has_change, &x);
  x -= BEFORE_STROKE * m->em;
  put_stroke (m, &c, DW_COMPRESSION, has_change, &x);
  c.width = right - x + BEFORE_ALL * m->em;
  turn (&c);
  return c;
}

dw_readout_columns
dw_readout_columns_make (const dw_chart *chart, const dw_chart_style *style,
                         const dw_text_metrics *metrics, double right, double room)
{
  const maker m = { chart, metrics, style->font[DW_TEXT_LEGEND].size };
  const bool has_change = chart->n_series > 1;
  const bool has_lost = has_void (chart);

  dw_readout_columns c = place (&m, right, has_change, has_lost);
  if (c.width > room && has_lost)
    c = place (&m, right, has_change, false);
  if (c.width > room && has_change)
    c = place (&m, right, false, false);
  if (c.width > room)
    c = (dw_readout_columns){ .n = 0 };
  return c;
}
