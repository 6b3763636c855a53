/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-dots.h"

#include <glib.h>
#include <math.h>

/* Radius of a dot where they are many, in the mean distance of neighbours [1], and at least [pt]. */
static const double PART_OF_DISTANCE = 0.24;
static const double LEAST_RADIUS = 1.1;

/* Two places nearer than this are in one row. [pt] */
static const double SAME_ROW = 0.01;

/* A step to the side counts so many steps ahead. [1] */
static const double ASIDE = 3.0;

/* A wanted dot is hit before a faint one that is nearer by no more than this part of the radius. */
static const double PREFERENCE = 0.35;

void
dw_drill_dots_clear (dw_drill_dots *dots)
{
  g_free (dots->places);
  *dots = (dw_drill_dots){ 0 };
}

/* Mean distance of dots, as if they filled the rectangle around them evenly. [pt] */
static double
mean_distance (const dw_drill_dots *dots, bool is_strip)
{
  dw_spot low = { HUGE_VAL, HUGE_VAL };
  dw_spot high = { -HUGE_VAL, -HUGE_VAL };
  int n = 0;
  for (int i = 0; i < dots->n; i++)
    if (dots->places[i].is_shown)
      {
        const dw_spot at = dots->places[i].at;
        low = (dw_spot){ fmin (low.x, at.x), fmin (low.y, at.y) };
        high = (dw_spot){ fmax (high.x, at.x), fmax (high.y, at.y) };
        n++;
      }
  if (n < 2)
    return HUGE_VAL;
  return is_strip ? (high.x - low.x) / (n - 1)
                  : sqrt ((high.x - low.x) * (high.y - low.y) / (double)n);
}

void
dw_drill_dots_make (const dw_drill_map *map, const dw_rect *plot, const dw_scale *x,
                    const dw_scale *y, double largest, dw_drill_dots *dots)
{
  const bool is_strip = map->shade->n_y < 2;
  dw_drill_dots_clear (dots);
  dots->n = map->n_dots;
  dots->places = g_new (dw_drill_place, MAX (1, map->n_dots));
  for (int i = 0; i < map->n_dots; i++)
    {
      const dw_drill_dot *dot = &map->dots[i];
      const double up = is_strip ? dw_drill_field_at (map->shade, dot->x, 0.0) : dot->y;
      const dw_spot at = { dw_scale_place (x, dot->x), dw_scale_place (y, up) };
      dots->places[i] = (dw_drill_place){ at, dot->is_wanted, dw_rect_holds (plot, at.x, at.y) };
    }
  dots->radius = fmin (largest,
                       fmax (LEAST_RADIUS, PART_OF_DISTANCE * mean_distance (dots, is_strip)));
}

int
dw_drill_dots_hit (const dw_drill_dots *dots, double x, double y, double radius)
{
  int best = -1;
  double least = HUGE_VAL;
  for (int i = 0; i < dots->n; i++)
    {
      const dw_drill_place *p = &dots->places[i];
      const double away = hypot (p->at.x - x, p->at.y - y);
      if (!p->is_shown || !(away <= radius))
        continue;
      const double cost = away + (p->is_wanted ? 0.0 : PREFERENCE * radius);
      if (cost < least)
        {
          least = cost;
          best = i;
        }
    }
  return best;
}

int
dw_drill_dots_next (const dw_drill_dots *dots, dw_spot from, int dx, int dy)
{
  int best = -1;
  double least = HUGE_VAL;
  for (int i = 0; i < dots->n; i++)
    {
      const dw_drill_place *p = &dots->places[i];
      /* the page's y goes down */
      const double right = p->at.x - from.x;
      const double up = from.y - p->at.y;
      const double ahead = dx * right + dy * up;
      const double aside = fabs (dy * right) + fabs (dx * up);
      if (!p->is_shown || !(ahead > SAME_ROW))
        continue;
      /* what is in the row comes before all else */
      const double cost = aside <= SAME_ROW ? ahead - 1e6 : ahead + ASIDE * aside;
      if (cost < least)
        {
          least = cost;
          best = i;
        }
    }
  return best;
}
