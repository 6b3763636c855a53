/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-regions.h"

#include <math.h>

#include "draw/dw-drill-land.h"

void
dw_drill_regions_clear (dw_drill_regions *regions)
{
  dw_polyline_clear (&regions->land);
  dw_polyline_clear (&regions->no_room);
  *regions = (dw_drill_regions){ 0 };
}

static void
add_spot (const dw_scale *x, const dw_scale *y, double across, double up, dw_polyline *out)
{
  dw_polyline_add (out, dw_scale_place (x, across), dw_scale_place (y, up));
}

/* ---- what is smaller than now ---- */

static void
find_gone (const dw_drill_map *map, const dw_rect *plot, const dw_scale *x, const dw_scale *y,
           dw_drill_regions *regions)
{
  const bool is_strip = map->shade->n_y < 2;
  const double present = map->sets->present[dw_drill_field_across (map->sets)];
  const double right = plot->x + plot->width;
  const double bottom = plot->y + plot->height;
  const double up = is_strip ? dw_drill_field_at (map->shade, present, 0.0) : map->sets->present[1];
  regions->now = (dw_spot){ dw_scale_place (x, present), dw_scale_place (y, up) };
  const double now_x = fmin (right, fmax (plot->x, regions->now.x));
  const double now_y = fmin (bottom, fmax (plot->y, regions->now.y));
  regions->gone[0] = (dw_rect){ plot->x, plot->y, now_x - plot->x, plot->height };
  regions->gone[1] = (dw_rect){ now_x, now_y, right - now_x, bottom - now_y };
  regions->n_gone = is_strip ? 1 : 2;
}

/* ---- land ---- */

static void
find_strip_land (const dw_drill_map *map, const dw_scale *x, const dw_scale *y,
                 dw_drill_regions *regions)
{
  const double end = dw_drill_land_end (map->sets, dw_drill_field_across (map->sets), x->high);
  if (end >= x->high)
    return;
  add_spot (x, y, end, y->high, &regions->land);
  add_spot (x, y, end, y->low, &regions->land);
  add_spot (x, y, end, y->high, &regions->no_room);
  add_spot (x, y, end, y->low, &regions->no_room);
  add_spot (x, y, x->high, y->low, &regions->no_room);
  add_spot (x, y, x->high, y->high, &regions->no_room);
}

static void
find_land (const dw_drill_map *map, const dw_scale *x, const dw_scale *y, dw_drill_regions *regions)
{
  dw_polyline border = { 0 };
  dw_drill_land_make (map->sets, x->high, y->high, &border);
  for (size_t i = 0; i < border.n; i++)
    {
      add_spot (x, y, border.spots[i].x, border.spots[i].y, &regions->land);
      add_spot (x, y, border.spots[i].x, border.spots[i].y, &regions->no_room);
    }
  if (border.n > 0)
    {
      /* round the corner of the plot back to the border's beginning */
      add_spot (x, y, x->high, border.spots[border.n - 1].y, &regions->no_room);
      add_spot (x, y, x->high, y->high, &regions->no_room);
      add_spot (x, y, border.spots[0].x, y->high, &regions->no_room);
    }
  dw_polyline_clear (&border);
}

void
dw_drill_regions_make (const dw_drill_map *map, const dw_rect *plot, const dw_scale *x,
                       const dw_scale *y, dw_drill_regions *regions)
{
  dw_drill_regions_clear (regions);
  find_gone (map, plot, x, y, regions);
  if (map->shade->n_y < 2)
    find_strip_land (map, x, y, regions);
  else
    find_land (map, x, y, regions);
}
