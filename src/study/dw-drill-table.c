/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-table.h"

#include <math.h>

#include "model/dw-drill.h"

static void
insert_sorted (double *list, int *n, double value)
{
  int at = *n;
  for (int i = 0; i < *n; i++)
    if (fabs (list[i] - value) <= DW_DRILL_SAME)
      return;
  while (at > 0 && list[at - 1] > value)
    {
      list[at] = list[at - 1];
      at--;
    }
  list[at] = value;
  (*n)++;
}

int
dw_drill_sizes (const dw_drill_sets *sets, int set, const double *drills, int n, double *out)
{
  int n_sizes = 1;
  out[0] = 0.0;
  for (int i = 0; i < n; i++)
    {
      double size[DW_DRILL_SETS] = { 0.0, 0.0 };
      size[set] = drills[i];
      if (dw_drill_sets_can_reach (sets, set, drills[i]) && dw_drill_sets_have_room (sets, size))
        insert_sorted (out, &n_sizes, drills[i]);
    }
  return n_sizes;
}

bool
dw_drill_is_choice (const dw_drill_sets *sets, const double size[DW_DRILL_SETS])
{
  dw_damper drilled;
  /* of two halves that are alike, set 1 gets the smaller size */
  if (sets->is_alike && size[0] > size[1])
    return false;
  return dw_drill_sets_have_room (sets, size)
         && dw_drill_sets_resize (sets, size, &drilled, NULL) == DW_OK
         && dw_damper_check (&drilled, NULL, 0) == 0;
}

/* Drills through all holes of the choice, each hole from what it is. */
static int
count_passes (const dw_drill_sets *sets, const dw_drill_box *box, const double size[DW_DRILL_SETS])
{
  int n = 0;
  for (int i = 0; i < sets->face.n_holes; i++)
    {
      const int s = sets->set_of[i];
      if (s >= 0 && size[s] > 0.0)
        n += dw_drill_passes_find (sets->face.holes[i].diameter, size[s], box->drills,
                                   box->n_drills)
                 .n;
    }
  return n;
}

/* Nearest drill that all holes of both sets can be drilled to. */
static double
nearest_for_all (const dw_drill_sets *sets, const dw_drill_box *box, double wanted)
{
  double best = 0.0;
  for (int i = 0; i < box->n_drills; i++)
    {
      const double drill = box->drills[i];
      const double size[DW_DRILL_SETS] = { sets->n_holes[0] > 0 ? drill : 0.0,
                                           sets->n_holes[1] > 0 ? drill : 0.0 };
      bool is_nearer = best == 0.0 || fabs (drill - wanted) < fabs (best - wanted);
      for (int s = 0; s < DW_DRILL_SETS; s++)
        is_nearer = is_nearer
                    && (sets->n_holes[s] == 0 || dw_drill_sets_can_reach (sets, s, drill));
      if (is_nearer && dw_drill_is_choice (sets, size))
        best = drill;
    }
  return best;
}

dw_status
dw_drill_row_make (const dw_drilling *study, const dw_drill_box *box,
                   const double size[DW_DRILL_SETS], dw_drill_row *out, dw_error *err)
{
  dw_drill_row row = { .mix = { -1, -1, 0.0 } };
  dw_status status = dw_drilling_at (study, size, &row.result, err);
  if (status == DW_OK)
    status = dw_drilling_spread (study, size, &box->limits, row.spread, err);
  if (status != DW_OK)
    return status;
  row.n_holes = dw_drill_count (&study->sets, size);
  row.n_passes = count_passes (&study->sets, box, size);
  row.has_hold = dw_drilling_hold (study, size, &row.hold, NULL) == DW_OK;
  if (row.has_hold)
    row.mix = dw_drill_mix_find (row.hold.viscosity, box->bottles, box->n_bottles);
  row.has_single = dw_drilling_single (study, size, &row.single, NULL) == DW_OK;
  if (row.has_single)
    row.single_drill = nearest_for_all (&study->sets, box, row.single);
  *out = row;
  return DW_OK;
}

/* Two standard deviations over the mean; 0 of a force that is nothing. */
static double
part_of (double deviation, const dw_spread_point *point)
{
  return point->mean != 0.0 ? 2.0 * deviation / fabs (point->mean) : 0.0;
}

double
dw_drill_row_scatter (const dw_drill_row *row)
{
  double most = 0.0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      most = fmax (most, part_of (row->spread[s][v].deviation, &row->spread[s][v]));
  return most;
}

double
dw_drill_row_pair (const dw_drill_row *row)
{
  double most = 0.0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      most = fmax (most, part_of (row->spread[s][v].pair_deviation, &row->spread[s][v]));
  return most;
}

/* ---- which rows, and in which order ---- */

dw_drill_filter
dw_drill_filter_defaults (void)
{
  return (dw_drill_filter){ .keep_compression = HUGE_VAL,
                            .least_pack = -HUGE_VAL,
                            .most_pack = HUGE_VAL,
                            .most_holes = DW_MAX_FACE_HOLES };
}

bool
dw_drill_filter_passes (const dw_drill_filter *filter, const dw_drill_row *row)
{
  const dw_drill_result *result = &row->result;
  const double pack = result->figures.pack[DW_COMPRESSION];
  for (int v = 0; v < DW_N_SPEEDS; v++)
    if (!isinf (filter->keep_compression)
        && !(fabs (result->change[DW_COMPRESSION][v]) <= filter->keep_compression))
      return false;
  return pack >= filter->least_pack && pack <= filter->most_pack
         && row->n_holes <= filter->most_holes;
}

static double
key_of (const dw_drill_row *row, dw_drill_order order)
{
  switch (order)
    {
    case DW_DRILL_BY_COMPRESSION:
      return fabs (row->result.change[DW_COMPRESSION][DW_MIDDLE]);
    case DW_DRILL_BY_REBOUND:
      return fabs (row->result.change[DW_REBOUND][DW_MIDDLE]);
    case DW_DRILL_BY_PACK:
      return row->result.figures.pack[DW_COMPRESSION];
    case DW_DRILL_BY_OIL:
      return row->has_hold ? row->hold.viscosity : HUGE_VAL;
    case DW_DRILL_BY_SCATTER:
      return dw_drill_row_scatter (row);
    case DW_DRILL_BY_HOLES:
      return row->n_holes;
    case DW_DRILL_BY_PASSES:
      return row->n_passes;
    case DW_DRILL_BY_SIZE:
    case DW_N_DRILL_ORDERS:
      break;
    }
  return 0.0;
}

/* What is not a number comes last, so that the order is one. */
static int
compare_keys (double a, double b)
{
  if (isnan (a) || isnan (b))
    return isnan (a) - isnan (b);
  return (a > b) - (a < b);
}

int
dw_drill_row_compare (const dw_drill_row *a, const dw_drill_row *b, dw_drill_order order)
{
  int sign = compare_keys (key_of (a, order), key_of (b, order));
  for (int s = 0; s < DW_DRILL_SETS && sign == 0; s++)
    sign = compare_keys (a->result.size[s], b->result.size[s]);
  return sign;
}
