/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-field.h"

#include <assert.h>
#include <math.h>

#include "model/dw-drill.h"
#include "model/dw-limits.h"
#include "study/dw-compare.h"

/* Nodes along the longer side, and along the other at least. */
#define MOST_NODES  61
#define LEAST_NODES 31

/* How far below the present size a map begins: part of it [1], and at least [m]. */
static const double BELOW = 0.2;
static const double BELOW_LEAST = 0.2e-3;

/* Beyond the largest dot: part of the range [1]. Land that ends within it is shown with a margin. */
static const double BEYOND = 0.06;

/* Without dots: where a land's end that is far away is cut off, in present sizes [1]. */
static const double FAR = 1.5;

/* Nodes of the figures for one of the oil: an oil costs about as much as four times its figures. */
#define OIL_EVERY   3
#define MOST_COARSE ((DW_DRILL_FIELD_MOST - 1) / OIL_EVERY + 2)

/* ---- measures ---- */

double
dw_drill_measure_of (dw_drill_measure measure, const dw_figures *figures, const dw_figures *now)
{
  if (measure >= DW_MEASURE_COMPRESSION_LOW && measure <= DW_MEASURE_REBOUND_HIGH)
    {
      const int i = (int)measure - (int)DW_MEASURE_COMPRESSION_LOW;
      const int stroke = i < DW_N_SPEEDS ? DW_COMPRESSION : DW_REBOUND;
      return dw_compare_change (now->point[stroke][i % DW_N_SPEEDS].force,
                                figures->point[stroke][i % DW_N_SPEEDS].force);
    }
  if (measure == DW_MEASURE_PACK_COMPRESSION || measure == DW_MEASURE_PACK_REBOUND)
    return figures->pack[measure == DW_MEASURE_PACK_REBOUND ? DW_REBOUND : DW_COMPRESSION];
  if (measure >= DW_MEASURE_SHARE_LOW && measure <= DW_MEASURE_SHARE_HIGH)
    return figures->rebound_share[(int)measure - (int)DW_MEASURE_SHARE_LOW];
  return (double)NAN;
}

/* ---- ranges ---- */

int
dw_drill_field_across (const dw_drill_sets *sets)
{
  return sets->n_holes[0] == 0 && sets->n_holes[1] > 0 ? 1 : 0;
}

bool
dw_drill_field_is_strip (const dw_drill_sets *sets)
{
  return sets->n_holes[0] == 0 || sets->n_holes[1] == 0;
}

/* Sizes of one set that a map shows. */
static void
find_range (const dw_drill_sets *sets, int set, double largest_dot, double *low, double *high)
{
  const double present = sets->present[set];
  const double land = sets->largest[set];
  const double least = dw_limit_get (DW_LIMIT_HOLE_DIAMETER)->low;
  double to = fmax (largest_dot, present + BELOW_LEAST);

  *low = fmax (present - fmax (BELOW * present, BELOW_LEAST), fmin (least, 0.5 * present));
  if (largest_dot <= 0.0)
    to = fmax (to, fmin (land, FAR * present));
  const double beyond = BEYOND * (to - *low);
  /* the land's end is shown when it is no farther than twice the margin */
  if (land > to && land < to + 2.0 * beyond)
    to = land;
  *high = to + beyond;
}

static double
largest_dot (const dw_drill_dot *dots, int n_dots, bool is_up)
{
  double largest = 0.0;
  for (int i = 0; i < n_dots; i++)
    largest = fmax (largest, is_up ? dots[i].y : dots[i].x);
  return largest;
}

static int
nodes_for (double part)
{
  const int n = 1 + (int)lrint ((MOST_NODES - 1) * part);
  return n < LEAST_NODES ? LEAST_NODES : n;
}

bool
dw_drill_field_place (dw_drill_field *field, const dw_drill_sets *sets, const dw_drill_dot *dots,
                      int n_dots)
{
  const int across = dw_drill_field_across (sets);
  if (sets->n_holes[across] == 0)
    return false;
  double x_most = largest_dot (dots, n_dots, false);
  double y_most = largest_dot (dots, n_dots, true);
  /* of two sizes only one order is a choice: the map stays square, and its halves mirror */
  if (sets->is_alike)
    x_most = y_most = fmax (x_most, y_most);
  find_range (sets, across, x_most, &field->x_low, &field->x_high);
  if (dw_drill_field_is_strip (sets))
    {
      field->n_x = MOST_NODES;
      field->n_y = 1;
      field->y_low = field->y_high = 0.0;
      return true;
    }
  find_range (sets, sets->is_alike ? 0 : 1, y_most, &field->y_low, &field->y_high);
  const double width = field->x_high - field->x_low;
  const double height = field->y_high - field->y_low;
  const double longer = fmax (width, height);
  field->n_x = nodes_for (width / longer);
  field->n_y = nodes_for (height / longer);
  return true;
}

/* ---- filling ---- */

typedef struct
{
  const dw_drilling *study;
  const dw_drill_field *nodes; /* any of the fields */
  bool is_mirrored;            /* values over the diagonal are those below it */
} filler;

static double
node_x (const dw_drill_field *field, double i)
{
  return field->x_low + (field->x_high - field->x_low) * i / (field->n_x - 1);
}

static double
node_y (const dw_drill_field *field, double i)
{
  return field->n_y > 1 ? field->y_low + (field->y_high - field->y_low) * i / (field->n_y - 1)
                        : 0.0;
}

/* Sizes of both sets at a node, which need not be whole. */
static void
sizes_at (const filler *f, double i, double k, double size[DW_DRILL_SETS])
{
  const int across = dw_drill_field_across (&f->study->sets);
  const double x = node_x (f->nodes, i);
  size[across] = x;
  size[1 - across] = node_y (f->nodes, k);
}

static void
fill_figures (const filler *f, int i, int k, const dw_drill_measure *measures,
              dw_drill_field *const *fields, int n)
{
  double size[DW_DRILL_SETS];
  dw_figures figures;
  sizes_at (f, i, k, size);
  const bool is_known = dw_drilling_field (f->study, size, &figures, NULL) == DW_OK;
  for (int m = 0; m < n; m++)
    if (measures[m] != DW_MEASURE_OIL)
      {
        dw_drill_field *field = fields[m];
        const double value = is_known ? dw_drill_measure_of (measures[m], &figures, &f->study->now)
                                      : (double)NAN;
        field->value[k * field->n_x + i] = value;
        if (f->is_mirrored)
          field->value[i * field->n_x + k] = value;
      }
}

/* ---- the oil ---- */

/* Logarithms of the oil on a coarse grid. */
typedef struct
{
  int n_x;
  int n_y;
  double log[MOST_COARSE * MOST_COARSE]; /* row by row; NaN = no oil holds */
} coarse_oil;

static int
coarse_count (int n)
{
  return n > 1 ? (n - 2) / OIL_EVERY + 2 : 1;
}

/* Node of the fine grid under one of the coarse grid. */
static double
fine_node (int i, int n_coarse, int n)
{
  return n_coarse > 1 ? (double)i * (n - 1) / (n_coarse - 1) : 0.0;
}

static void
fill_coarse (const filler *f, coarse_oil *oil)
{
  oil->n_x = coarse_count (f->nodes->n_x);
  oil->n_y = coarse_count (f->nodes->n_y);
  for (int k = 0; k < oil->n_y; k++)
    for (int i = f->is_mirrored ? k : 0; i < oil->n_x; i++)
      {
        double size[DW_DRILL_SETS];
        double viscosity;
        sizes_at (f, fine_node (i, oil->n_x, f->nodes->n_x), fine_node (k, oil->n_y, f->nodes->n_y),
                  size);
        const bool holds = dw_drilling_field_oil (f->study, size, &viscosity, NULL) == DW_OK;
        oil->log[k * oil->n_x + i] = holds ? log (viscosity) : (double)NAN;
        if (f->is_mirrored)
          oil->log[i * oil->n_x + k] = oil->log[k * oil->n_x + i];
      }
}

/* Four neighbours and their weights: Lagrange's cubic through them, a straight line where there are
 * fewer. */
typedef struct
{
  int first;
  int n;
  double weight[4];
} stencil;

static stencil
stencil_at (double at, int n, bool is_cubic)
{
  stencil s = { .n = n < 2 ? 1 : is_cubic && n >= 4 ? 4 : 2 };
  if (s.n == 1)
    {
      s.weight[0] = 1.0;
      return s;
    }
  const int most = n - s.n;
  const int first = (int)floor (at) - (s.n == 4 ? 1 : 0);
  s.first = first < 0 ? 0 : first > most ? most : first;
  for (int i = 0; i < s.n; i++)
    {
      s.weight[i] = 1.0;
      for (int k = 0; k < s.n; k++)
        if (k != i)
          s.weight[i] *= (at - s.first - k) / (double)(i - k);
    }
  return s;
}

/* A neighbour that is not known counts only where it has a weight: known nodes stay known. */
static double
weigh (const double *values, int n_x, const stencil *x, const stencil *y)
{
  double sum = 0.0;
  for (int k = 0; k < y->n; k++)
    for (int i = 0; i < x->n; i++)
      {
        const double weight = x->weight[i] * y->weight[k];
        if (weight != 0.0)
          sum += weight * values[(y->first + k) * n_x + x->first + i];
      }
  return sum;
}

/* Between nodes of a grid, in nodes. */
static double
interpolate (const double *values, int n_x, int n_y, double x, double y, bool is_cubic)
{
  const stencil across = stencil_at (x, n_x, is_cubic);
  const stencil up = stencil_at (y, n_y, is_cubic);
  return weigh (values, n_x, &across, &up);
}

/* Logarithm of the oil at a node of the fine grid. */
static double
oil_at (const filler *f, const coarse_oil *oil, int i, int k)
{
  const dw_drill_field *nodes = f->nodes;
  const double x = (double)i * (oil->n_x - 1) / (nodes->n_x - 1);
  const double y = nodes->n_y > 1 ? (double)k * (oil->n_y - 1) / (nodes->n_y - 1) : 0.0;
  double value = interpolate (oil->log, oil->n_x, oil->n_y, x, y, true);
  if (isnan (value))
    value = interpolate (oil->log, oil->n_x, oil->n_y, x, y, false);
  if (isnan (value))
    {
      /* beside what no oil holds: there are few such nodes */
      double size[DW_DRILL_SETS];
      double viscosity;
      sizes_at (f, i, k, size);
      if (dw_drilling_field_oil (f->study, size, &viscosity, NULL) == DW_OK)
        value = log (viscosity);
    }
  return value;
}

static void
fill_oil (const filler *f, dw_drill_field *field)
{
  coarse_oil oil;
  fill_coarse (f, &oil);
  for (int k = 0; k < field->n_y; k++)
    for (int i = 0; i < field->n_x; i++)
      field->value[k * field->n_x + i] = exp (oil_at (f, &oil, i, k));
}

/* Sets that differ only by their place do the same with their sizes exchanged. */
static bool
can_mirror (const dw_drill_sets *sets, const dw_drill_field *nodes)
{
  return sets->is_alike && nodes->n_x == nodes->n_y && nodes->x_low == nodes->y_low
         && nodes->x_high == nodes->y_high;
}

void
dw_drill_field_fill (const dw_drilling *study, const dw_drill_measure *measures,
                     dw_drill_field *const *fields, int n)
{
  bool has_figures = false;
  if (n == 0)
    return;
  assert (fields[0]->n_x >= 2 && fields[0]->n_x <= DW_DRILL_FIELD_MOST);
  assert (fields[0]->n_y >= 1 && fields[0]->n_y <= DW_DRILL_FIELD_MOST);
  const filler f = { study, fields[0], can_mirror (&study->sets, fields[0]) };
  for (int m = 0; m < n; m++)
    if (measures[m] == DW_MEASURE_OIL)
      fill_oil (&f, fields[m]);
    else
      has_figures = true;
  if (!has_figures)
    return;
  for (int k = 0; k < f.nodes->n_y; k++)
    for (int i = f.is_mirrored ? k : 0; i < f.nodes->n_x; i++)
      fill_figures (&f, i, k, measures, fields, n);
}

/* ---- asking ---- */

double
dw_drill_field_at (const dw_drill_field *field, double x, double y)
{
  const double slack = 1e-9 * (field->x_high - field->x_low);
  if (!(x >= field->x_low - slack && x <= field->x_high + slack))
    return (double)NAN;
  if (field->n_y > 1 && !(y >= field->y_low - slack && y <= field->y_high + slack))
    return (double)NAN;
  const double i = (x - field->x_low) / (field->x_high - field->x_low) * (field->n_x - 1);
  const double k = field->n_y > 1
                       ? (y - field->y_low) / (field->y_high - field->y_low) * (field->n_y - 1)
                       : 0.0;
  return interpolate (field->value, field->n_x, field->n_y, i, k, false);
}
