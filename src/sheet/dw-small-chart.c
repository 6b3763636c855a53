/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-small-chart.h"

#include <math.h>

/* [pt] */
static const double FRAME_WIDTH = 0.5;
static const double LINE_WIDTH = 1.3;
static const double BESIDE_WIDTH = 0.7;
static const double DASH[] = { 2.5, 1.5 };

typedef struct
{
  const dw_series *series; /* borrowed */
  const dw_series *beside; /* borrowed, or NULL */
  double width;            /* [pt] */
  double height;           /* [pt] */
  double to;               /* [m/s] */
  double reach;            /* [N] */
} small_chart;

double
dw_small_chart_reach (const dw_series *series)
{
  double reach = 0.0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (size_t i = 0; i < series->stroke[s].n; i++)
      reach = fmax (reach, series->stroke[s].points[i].force); /* a gap, NaN, is no force */
  return reach;
}

static void
add_stroke (const small_chart *c, const dw_series_stroke *stroke, double sign, cairo_t *cr)
{
  cairo_new_sub_path (cr);
  for (size_t i = 0; i < stroke->n; i++)
    {
      const dw_series_point *p = &stroke->points[i];
      if (isnan (p->force))
        cairo_new_sub_path (cr);
      else
        cairo_line_to (cr, p->speed / c->to * c->width,
                       0.5 * c->height * (1.0 - sign * p->force / c->reach));
    }
}

static void
add_series (const small_chart *c, const dw_series *series, cairo_t *cr)
{
  cairo_new_path (cr);
  add_stroke (c, &series->stroke[DW_COMPRESSION], 1.0, cr);
  add_stroke (c, &series->stroke[DW_REBOUND], -1.0, cr);
}

static void
paint (cairo_t *cr, gpointer data)
{
  const small_chart *c = data;
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_rectangle (cr, 0.0, 0.0, c->width, c->height);
  cairo_move_to (cr, 0.0, 0.5 * c->height);
  cairo_line_to (cr, c->width, 0.5 * c->height);
  cairo_set_line_width (cr, FRAME_WIDTH);
  cairo_stroke (cr);
  cairo_rectangle (cr, 0.0, 0.0, c->width, c->height);
  cairo_clip (cr);
  if (c->beside != NULL)
    {
      cairo_set_line_width (cr, BESIDE_WIDTH);
      cairo_set_dash (cr, DASH, G_N_ELEMENTS (DASH), 0.0);
      add_series (c, c->beside, cr);
      cairo_stroke (cr);
      cairo_set_dash (cr, NULL, 0, 0.0);
    }
  cairo_set_line_width (cr, LINE_WIDTH);
  add_series (c, c->series, cr);
  cairo_stroke (cr);
}

void
dw_small_chart_add (dw_block *block, dw_rect box, const dw_series *series, const dw_series *beside,
                    double to, double reach)
{
  const small_chart chart = { series, beside, box.width, box.height, to, reach };
  dw_block_add_drawing (block, box, paint, g_memdup2 (&chart, sizeof chart), g_free);
}
