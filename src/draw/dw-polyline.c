/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-polyline.h"

#include <glib.h>
#include <math.h>

static const dw_spot GAP = { (double)NAN, (double)NAN };

void
dw_polyline_clear (dw_polyline *line)
{
  g_free (line->spots);
  *line = (dw_polyline){ 0 };
}

static void
push (dw_polyline *line, dw_spot spot)
{
  if (line->n == line->room)
    {
      line->room = line->room > 0 ? 2 * line->room : 64;
      line->spots = g_renew (dw_spot, line->spots, line->room);
    }
  line->spots[line->n++] = spot;
}

bool
dw_spot_is_gap (dw_spot spot)
{
  return isnan (spot.x);
}

void
dw_polyline_add_gap (dw_polyline *line)
{
  if (line->n > 0 && !dw_spot_is_gap (line->spots[line->n - 1]))
    push (line, GAP);
}

void
dw_polyline_add (dw_polyline *line, double x, double y)
{
  if (isfinite (x) && isfinite (y))
    push (line, (dw_spot){ x, y });
  else
    dw_polyline_add_gap (line);
}

static void
add_unless_same (dw_polyline *line, dw_spot spot)
{
  if (line->n > 0)
    {
      const dw_spot last = line->spots[line->n - 1];
      if (last.x == spot.x && last.y == spot.y)
        return;
    }
  push (line, spot);
}

/* Spots first to last lie in one column: the extremes in the order in which they came. */
static void
add_column (const dw_spot *spots, size_t first, size_t last, dw_polyline *out)
{
  size_t low = first;
  size_t high = first;
  for (size_t i = first; i <= last; i++)
    {
      low = spots[i].y < spots[low].y ? i : low;
      high = spots[i].y > spots[high].y ? i : high;
    }
  push (out, spots[first]);
  add_unless_same (out, spots[low < high ? low : high]);
  add_unless_same (out, spots[low < high ? high : low]);
  add_unless_same (out, spots[last]);
}

void
dw_polyline_thin (const dw_polyline *line, double column, dw_polyline *out)
{
  dw_polyline_clear (out);
  for (size_t i = 0; i < line->n;)
    {
      if (dw_spot_is_gap (line->spots[i]))
        {
          dw_polyline_add_gap (out);
          i++;
          continue;
        }
      const double here = floor (line->spots[i].x / column);
      size_t last = i;
      while (last + 1 < line->n && !dw_spot_is_gap (line->spots[last + 1])
             && floor (line->spots[last + 1].x / column) == here)
        last++;
      add_column (line->spots, i, last, out);
      i = last + 1;
    }
}

/* Whether all spots between two others are near the straight line. */
static bool
are_straight (const dw_spot *spots, size_t from, size_t to, double within)
{
  for (size_t i = from + 1; i < to; i++)
    if (dw_spot_distance (dw_segment_nearest (spots[from], spots[to], spots[i]), spots[i]) > within)
      return false;
  return true;
}

/* One piece is looked at no farther ahead, so that long ones do not take the square of their length. */
#define MOST_AHEAD 24

void
dw_polyline_straighten (dw_polyline *line, double within)
{
  size_t n = 0;
  for (size_t i = 0; i < line->n;)
    {
      size_t next = i + 1;
      line->spots[n++] = line->spots[i];
      if (dw_spot_is_gap (line->spots[i]) || next >= line->n)
        {
          i = next;
          continue;
        }
      while (next + 1 < line->n && next - i < MOST_AHEAD && !dw_spot_is_gap (line->spots[next + 1])
             && !dw_spot_is_gap (line->spots[next])
             && are_straight (line->spots, i, next + 1, within))
        next++;
      i = next;
    }
  line->n = n;
}

void
dw_polyline_clip (const dw_polyline *line, const dw_rect *rect, dw_polyline *out)
{
  dw_polyline_clear (out);
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      dw_spot a = line->spots[i];
      dw_spot b = line->spots[i + 1];
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b) || !dw_segment_clip (rect, &a, &b))
        {
          dw_polyline_add_gap (out);
          continue;
        }
      if (a.x != line->spots[i].x || a.y != line->spots[i].y)
        dw_polyline_add_gap (out);
      add_unless_same (out, a);
      add_unless_same (out, b);
      if (b.x != line->spots[i + 1].x || b.y != line->spots[i + 1].y)
        dw_polyline_add_gap (out);
    }
  if (out->n > 0 && dw_spot_is_gap (out->spots[out->n - 1]))
    out->n--;
}

/* A spot seen from the middle of a turned rectangle; back with the other angle. */
static dw_spot
turned (dw_spot spot, double angle)
{
  const double c = cos (angle);
  const double s = sin (angle);
  return (dw_spot){ spot.x * c + spot.y * s, spot.y * c - spot.x * s };
}

static dw_spot
between (dw_spot a, dw_spot b, double share)
{
  return (dw_spot){ a.x + share * (b.x - a.x), a.y + share * (b.y - a.y) };
}

/* Part of a piece that lies in a box around a turned middle: false when there is none. */
static bool
part_inside (dw_spot a, dw_spot b, dw_spot middle, const dw_rect *box, double angle, double *from,
             double *to)
{
  const double length = dw_spot_distance (a, b);
  const dw_spot start = turned ((dw_spot){ a.x - middle.x, a.y - middle.y }, angle);
  dw_spot first = start;
  dw_spot last = turned ((dw_spot){ b.x - middle.x, b.y - middle.y }, angle);
  if (!(length > 0.0) || !dw_segment_clip (box, &first, &last))
    return false;
  *from = dw_spot_distance (start, first) / length;
  *to = dw_spot_distance (start, last) / length;
  return true;
}

void
dw_polyline_cut (const dw_polyline *line, const dw_rect *rect, double angle, dw_polyline *out)
{
  const dw_spot middle = { rect->x + 0.5 * rect->width, rect->y + 0.5 * rect->height };
  const dw_rect box = { -0.5 * rect->width, -0.5 * rect->height, rect->width, rect->height };
  const double hair = 1e-9; /* of a piece */
  dw_polyline_clear (out);
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[i + 1];
      double from = 1.0;
      double to = 1.0;
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b))
        {
          dw_polyline_add_gap (out);
          continue;
        }
      const bool is_cut = part_inside (a, b, middle, &box, angle, &from, &to);
      if (from > hair)
        {
          add_unless_same (out, a);
          add_unless_same (out, between (a, b, from));
        }
      if (is_cut)
        dw_polyline_add_gap (out);
      if (is_cut && to < 1.0 - hair)
        {
          add_unless_same (out, between (a, b, to));
          add_unless_same (out, b);
        }
    }
  if (out->n > 0 && dw_spot_is_gap (out->spots[out->n - 1]))
    out->n--;
}

double
dw_polyline_nearest (const dw_polyline *line, dw_spot to, dw_spot *out)
{
  double best = HUGE_VAL;
  for (size_t i = 0; i < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = i + 1 < line->n && !dw_spot_is_gap (line->spots[i + 1]) ? line->spots[i + 1]
                                                                                : a;
      if (dw_spot_is_gap (a))
        continue;
      const dw_spot near = dw_segment_nearest (a, b, to);
      const double distance = dw_spot_distance (near, to);
      if (distance < best)
        {
          best = distance;
          if (out != NULL)
            *out = near;
        }
    }
  return best;
}

bool
dw_polyline_at (const dw_polyline *line, double x, double *y)
{
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[i + 1];
      if (!(a.x <= x && x <= b.x)) /* false for gaps as well */
        continue;
      *y = b.x > a.x ? a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x) : a.y;
      return true;
    }
  return false;
}

bool
dw_polyline_meets (const dw_polyline *line, const dw_rect *rect)
{
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      dw_spot a = line->spots[i];
      dw_spot b = line->spots[i + 1];
      if (!dw_spot_is_gap (a) && !dw_spot_is_gap (b) && dw_segment_clip (rect, &a, &b))
        return true;
    }
  return false;
}

/* Whether a ray from the spot to the right meets the piece. */
static bool
is_right (dw_spot a, dw_spot b, dw_spot spot)
{
  return (a.y > spot.y) != (b.y > spot.y)
         && spot.x < a.x + (b.x - a.x) * (spot.y - a.y) / (b.y - a.y);
}

bool
dw_polyline_holds (const dw_polyline *outline, dw_spot spot)
{
  bool is_inside = false;
  size_t start = 0;
  for (size_t i = 0; i < outline->n; i++)
    {
      const bool is_last = i + 1 == outline->n || dw_spot_is_gap (outline->spots[i + 1]);
      if (dw_spot_is_gap (outline->spots[i]))
        {
          start = i + 1;
          continue;
        }
      const dw_spot next = outline->spots[is_last ? start : i + 1];
      if (is_right (outline->spots[i], next, spot))
        is_inside = !is_inside;
    }
  return is_inside;
}
