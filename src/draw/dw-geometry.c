/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-geometry.h"

#include <math.h>

/* [pt] Far below what can be seen, far above the rounding of page coordinates. */
static const double SAME = 1e-3;

bool
dw_rect_overlaps (const dw_rect *a, const dw_rect *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}

bool
dw_rect_holds (const dw_rect *rect, double x, double y)
{
  return x >= rect->x && x <= rect->x + rect->width && y >= rect->y && y <= rect->y + rect->height;
}

bool
dw_rect_holds_rect (const dw_rect *outer, const dw_rect *inner)
{
  const dw_rect wide = dw_rect_inset (outer, -SAME);
  return dw_rect_holds (&wide, inner->x, inner->y)
         && dw_rect_holds (&wide, inner->x + inner->width, inner->y + inner->height);
}

dw_rect
dw_rect_inset (const dw_rect *rect, double by)
{
  const double x = fmin (by, 0.5 * rect->width);
  const double y = fmin (by, 0.5 * rect->height);
  return (dw_rect){ rect->x + x, rect->y + y, rect->width - 2.0 * x, rect->height - 2.0 * y };
}

/* One border: t is cut to the part where p t <= q. */
static bool
cut (double p, double q, double *from, double *to)
{
  if (p == 0.0)
    return q >= 0.0;
  const double t = q / p;
  if (p < 0.0)
    *from = fmax (*from, t);
  else
    *to = fmin (*to, t);
  return *from <= *to;
}

bool
dw_segment_clip (const dw_rect *rect, dw_spot *a, dw_spot *b)
{
  const double dx = b->x - a->x;
  const double dy = b->y - a->y;
  double from = 0.0;
  double to = 1.0;

  if (!cut (-dx, a->x - rect->x, &from, &to) || !cut (dx, rect->x + rect->width - a->x, &from, &to)
      || !cut (-dy, a->y - rect->y, &from, &to)
      || !cut (dy, rect->y + rect->height - a->y, &from, &to))
    return false;
  const dw_spot start = *a;
  if (from > 0.0)
    *a = (dw_spot){ start.x + from * dx, start.y + from * dy };
  if (to < 1.0)
    *b = (dw_spot){ start.x + to * dx, start.y + to * dy };
  return true;
}

dw_spot
dw_segment_nearest (dw_spot a, dw_spot b, dw_spot to)
{
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double square = dx * dx + dy * dy;
  const double t = square > 0.0 ? ((to.x - a.x) * dx + (to.y - a.y) * dy) / square : 0.0;
  const double s = fmin (1.0, fmax (0.0, t));
  return (dw_spot){ a.x + s * dx, a.y + s * dy };
}

double
dw_spot_distance (dw_spot a, dw_spot b)
{
  return hypot (b.x - a.x, b.y - a.y);
}
