/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-view.h"

#include <math.h>

#include "draw/dw-scale.h"

/* One direction, in shares of the whole view. */
typedef struct
{
  double low, high;
} span;

static span
clamp_span (span s)
{
  if (!isfinite (s.low) || !isfinite (s.high))
    return (span){ 0.0, 1.0 };
  if (s.low > s.high)
    s = (span){ s.high, s.low };
  const double size = fmin (1.0, fmax (s.high - s.low, 1.0 / DW_VIEW_MOST_ZOOM));
  const double middle = 0.5 * (s.low + s.high);
  /* what grew to the least size does so around its middle */
  const double wanted = s.high - s.low == size ? s.low : middle - 0.5 * size;
  const double low = fmin (fmax (wanted, 0.0), 1.0 - size);
  return (span){ low, low + size };
}

static dw_scale
x_scale (const dw_view *whole, bool is_log)
{
  return (dw_scale){ is_log, whole->x_low, whole->x_high, 0.0, 1.0 };
}

static dw_scale
y_scale (const dw_view *whole)
{
  return (dw_scale){ false, whole->y_low, whole->y_high, 0.0, 1.0 };
}

static span
shares (const dw_scale *scale, double low, double high)
{
  return (span){ dw_scale_share (scale, low), dw_scale_share (scale, high) };
}

/* The ends of the whole are kept to the last digit. */
static double
value_at (const dw_scale *scale, double share)
{
  return share <= 0.0 ? scale->low : share >= 1.0 ? scale->high : dw_scale_at_share (scale, share);
}

static dw_view
from_spans (const dw_view *whole, bool is_log, span x, span y)
{
  const dw_scale xs = x_scale (whole, is_log);
  const dw_scale ys = y_scale (whole);
  x = clamp_span (x);
  y = clamp_span (y);
  return (dw_view){ value_at (&xs, x.low), value_at (&xs, x.high), value_at (&ys, y.low),
                    value_at (&ys, y.high) };
}

static void
to_spans (const dw_view *view, const dw_view *whole, bool is_log, span *x, span *y)
{
  const dw_scale xs = x_scale (whole, is_log);
  const dw_scale ys = y_scale (whole);
  *x = shares (&xs, view->x_low, view->x_high);
  *y = shares (&ys, view->y_low, view->y_high);
}

static span
zoom_span (span s, double at, double factor)
{
  const double fixed = s.low + at * (s.high - s.low);
  const double size = fmin (1.0, fmax ((s.high - s.low) / factor, 1.0 / DW_VIEW_MOST_ZOOM));
  return (span){ fixed - at * size, fixed + (1.0 - at) * size };
}

dw_view
dw_view_zoom (const dw_view *view, const dw_view *whole, bool is_log, double x, double y,
              double factor)
{
  span sx;
  span sy;
  to_spans (view, whole, is_log, &sx, &sy);
  if (!(factor > 0.0))
    return from_spans (whole, is_log, sx, sy);
  return from_spans (whole, is_log, zoom_span (sx, x, factor), zoom_span (sy, y, factor));
}

static span
part_of (span s, double from, double to)
{
  const double size = s.high - s.low;
  return (span){ s.low + from * size, s.low + to * size };
}

dw_view
dw_view_drag (const dw_view *view, const dw_view *whole, bool is_log, double x0, double y0,
              double x1, double y1)
{
  span sx;
  span sy;
  to_spans (view, whole, is_log, &sx, &sy);
  return from_spans (whole, is_log, part_of (sx, x0, x1), part_of (sy, y0, y1));
}

dw_view
dw_view_pan (const dw_view *view, const dw_view *whole, bool is_log, double x, double y)
{
  span sx;
  span sy;
  to_spans (view, whole, is_log, &sx, &sy);
  return from_spans (whole, is_log, part_of (sx, x, 1.0 + x), part_of (sy, y, 1.0 + y));
}

dw_view
dw_view_clamp (const dw_view *view, const dw_view *whole, bool is_log)
{
  span sx;
  span sy;
  to_spans (view, whole, is_log, &sx, &sy);
  return from_spans (whole, is_log, sx, sy);
}

bool
dw_view_equal (const dw_view *a, const dw_view *b)
{
  return a->x_low == b->x_low && a->x_high == b->x_high && a->y_low == b->y_low
         && a->y_high == b->y_high;
}
