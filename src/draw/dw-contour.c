/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-contour.h"

#include <assert.h>
#include <glib.h>
#include <math.h>

/* A piece of line in one cell, between two of the grid's edges. */
typedef struct
{
  int edge[2];
  bool is_used;
} piece;

/* Pieces and which of them meet at an edge: two at most, one from each cell beside it. */
typedef struct
{
  const double *values;
  int n_x;
  int n_y;
  double level;
  GArray *pieces; /* of piece */
  int *at_edge;   /* two for each edge; -1 = none */
} tracer;

/* ---- edges ---- */

/* Edges to the right of nodes first, then those upwards. */
static int
right_of (const tracer *t, int x, int y)
{
  return y * t->n_x + x;
}

static int
above (const tracer *t, int x, int y)
{
  return t->n_x * t->n_y + y * t->n_x + x;
}

static double
value_at (const tracer *t, int x, int y)
{
  return t->values[y * t->n_x + x];
}

/* Where the level lies between two values. [1] */
static double
part (double level, double from, double to)
{
  return to != from ? (level - from) / (to - from) : 0.5;
}

static dw_spot
spot_of (const tracer *t, int edge)
{
  const int n = t->n_x * t->n_y;
  const bool is_up = edge >= n;
  const int node = is_up ? edge - n : edge;
  const int x = node % t->n_x;
  const int y = node / t->n_x;
  const double from = value_at (t, x, y);
  const double to = is_up ? value_at (t, x, y + 1) : value_at (t, x + 1, y);
  const double share = part (t->level, from, to);
  return (dw_spot){ x + (is_up ? 0.0 : share), y + (is_up ? share : 0.0) };
}

/* ---- cells ---- */

static void
add_piece (tracer *t, int a, int b)
{
  const piece p = { { a, b }, false };
  const int index = (int)t->pieces->len;
  g_array_append_val (t->pieces, p);
  for (int end = 0; end < 2; end++)
    {
      int *slot = &t->at_edge[2 * p.edge[end]];
      if (slot[0] >= 0)
        slot++;
      *slot = index;
    }
}

static void
trace_cell (tracer *t, int x, int y)
{
  const double corner[] = { value_at (t, x, y), value_at (t, x + 1, y), value_at (t, x + 1, y + 1),
                            value_at (t, x, y + 1) };
  const int edge[] = { right_of (t, x, y), above (t, x + 1, y), right_of (t, x, y + 1),
                       above (t, x, y) };
  int crossed[4];
  int n = 0;

  for (int i = 0; i < 4; i++)
    if (!isfinite (corner[i]))
      return;
  for (int i = 0; i < 4; i++)
    if ((corner[i] >= t->level) != (corner[(i + 1) % 4] >= t->level))
      crossed[n++] = edge[i];
  if (n == 2)
    add_piece (t, crossed[0], crossed[1]);
  if (n == 4)
    {
      const double mean = 0.25 * (corner[0] + corner[1] + corner[2] + corner[3]);
      /* corners 0 and 2 are on one side: joined through the middle when it is on theirs */
      const bool joins = (mean >= t->level) == (corner[0] >= t->level);
      add_piece (t, crossed[0], crossed[joins ? 1 : 3]);
      add_piece (t, crossed[2], crossed[joins ? 3 : 1]);
    }
}

/* ---- lines ---- */

static piece *
get_piece (const tracer *t, int index)
{
  return &g_array_index (t->pieces, piece, index);
}

/* The other piece at an edge that is not yet used; -1 = none. */
static int
next_piece (const tracer *t, int edge)
{
  for (int i = 0; i < 2; i++)
    {
      const int index = t->at_edge[2 * edge + i];
      if (index >= 0 && !get_piece (t, index)->is_used)
        return index;
    }
  return -1;
}

/* From an edge on, as long as there are pieces. */
static void
follow (const tracer *t, int edge, dw_polyline *out)
{
  dw_spot spot = spot_of (t, edge);
  dw_polyline_add (out, spot.x, spot.y);
  for (int index = next_piece (t, edge); index >= 0; index = next_piece (t, edge))
    {
      piece *p = get_piece (t, index);
      p->is_used = true;
      edge = p->edge[p->edge[0] == edge ? 1 : 0];
      spot = spot_of (t, edge);
      dw_polyline_add (out, spot.x, spot.y);
    }
  dw_polyline_add_gap (out);
}

static bool
is_end (const tracer *t, int edge)
{
  return t->at_edge[2 * edge + 1] < 0;
}

void
dw_contour_make (const double *values, int n_x, int n_y, double level, dw_polyline *out)
{
  assert (n_x >= 2 && n_y >= 2 && n_x <= DW_CONTOUR_MOST && n_y <= DW_CONTOUR_MOST);

  const int n_edges = 2 * n_x * n_y;
  tracer t = {
    values, n_x, n_y, level, g_array_new (FALSE, FALSE, sizeof (piece)), g_new (int, 2 * n_edges)
  };
  for (int i = 0; i < 2 * n_edges; i++)
    t.at_edge[i] = -1;
  for (int y = 0; y + 1 < n_y; y++)
    for (int x = 0; x + 1 < n_x; x++)
      trace_cell (&t, x, y);

  dw_polyline_clear (out);
  /* open lines from their ends, then what is closed */
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < t.pieces->len; i++)
      for (int end = 0; end < 2; end++)
        if (!get_piece (&t, (int)i)->is_used
            && (pass == 1 || is_end (&t, get_piece (&t, (int)i)->edge[end])))
          follow (&t, get_piece (&t, (int)i)->edge[end], out);
  g_array_unref (t.pieces);
  g_free (t.at_edge);
}
