/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-land.h"

#include <math.h>

#include "model/dw-drill.h"

/* [m] To which ends of land are found: far below any drill's step. */
static const double WITHIN = 1e-10;

/* [m] A spot this near to a straight line lies on it: far below a drill's step. */
static const double STRAIGHT = 1e-9;

/* Straight pieces are parted at most so often to find where they bend. */
#define MOST_PARTINGS 40

static double
size_of (const dw_drill_sets *sets, int set, double diameter)
{
  return diameter > sets->present[set] + 0.5 * DW_DRILL_SAME ? diameter : 0.0;
}

static bool
has_room (const dw_drill_sets *sets, double x, double y)
{
  const double size[DW_DRILL_SETS] = { size_of (sets, 0, x), size_of (sets, 1, y) };
  return dw_drill_sets_have_room (sets, size);
}

/* Largest size of a set beside one of the other set, by halving: the rule is the study's. */
static double
largest_beside (const dw_drill_sets *sets, int set, double other, double high)
{
  double low = sets->present[set];
  double end = high;
  if (set == 0 ? has_room (sets, end, other) : has_room (sets, other, end))
    return end;
  while (end - low > WITHIN)
    {
      const double middle = 0.5 * (low + end);
      if (set == 0 ? has_room (sets, middle, other) : has_room (sets, other, middle))
        low = middle;
      else
        end = middle;
    }
  return low;
}

double
dw_drill_land_end (const dw_drill_sets *sets, int set, double high)
{
  return largest_beside (sets, set, sets->present[1 - set], high);
}

/* Pieces of the border are straight: parted where the middle does not lie on one. */
static void
add_between (const dw_drill_sets *sets, dw_spot a, dw_spot b, double y_high, int partings,
             dw_polyline *out)
{
  const double x = 0.5 * (a.x + b.x);
  const dw_spot middle = { x, largest_beside (sets, 1, x, y_high) };
  const bool is_straight = fabs (middle.y - 0.5 * (a.y + b.y)) <= 4.0 * WITHIN;
  if (partings < MOST_PARTINGS && !(is_straight && partings > 2) && b.x - a.x > WITHIN)
    {
      add_between (sets, a, middle, y_high, partings + 1, out);
      add_between (sets, middle, b, y_high, partings + 1, out);
      return;
    }
  dw_polyline_add (out, b.x, b.y);
}

void
dw_drill_land_make (const dw_drill_sets *sets, double x_high, double y_high, dw_polyline *out)
{
  const double x_low = sets->present[0];
  const double y_low = sets->present[1];
  const double x_end = dw_drill_land_end (sets, 0, x_high);
  dw_polyline_clear (out);
  if (has_room (sets, x_high, y_high))
    return;
  const dw_spot from = { x_low, dw_drill_land_end (sets, 1, y_high) };
  const dw_spot to = { x_end, largest_beside (sets, 1, x_end, y_high) };
  dw_polyline_add (out, from.x, from.y);
  if (to.x > from.x)
    add_between (sets, from, to, y_high, 0, out);
  if (x_end < x_high && to.y > y_low)
    dw_polyline_add (out, x_end, y_low);
  dw_polyline_straighten (out, STRAIGHT);
}
