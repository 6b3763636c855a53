/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-sets.h"

#include <math.h>

#include "model/dw-drill.h"
#include "model/dw-limits.h"
#include "model/dw-units.h"

/* [m] No land between sets without holes. */
static const double FAR = 1.0;

/* ---- dividing ---- */

void
dw_drill_sets_init (dw_drill_sets *sets, const dw_damper *damper, dw_drill_division division)
{
  int n_open = 0;

  sets->damper = *damper;
  dw_piston_face_make (damper, &sets->face);
  for (int i = 0; i < sets->face.n_holes; i++)
    {
      const bool covered = sets->face.holes[i].covered;
      if (division == DW_DRILL_KINDS)
        sets->set_of[i] = covered ? 1 : 0;
      else
        sets->set_of[i] = covered ? -1 : n_open++ % 2;
    }
  dw_drill_sets_update (sets);
}

/* ---- land ---- */

static double
distance (const dw_face_hole *a, const dw_face_hole *b)
{
  return hypot (a->x - b->x, a->y - b->y);
}

/* Largest diameter that leaves a hole of a diameter, so far away, its land. */
static double
largest_beside (double away, double diameter)
{
  /* away - (d + diameter)/2 >= DW_FACE_LEAST_LAND max (d, diameter) */
  const double as_larger = (away - 0.5 * diameter) / (0.5 + DW_FACE_LEAST_LAND);
  const double as_smaller = 2.0 * (away - (0.5 + DW_FACE_LEAST_LAND) * diameter);
  return as_larger >= diameter ? as_larger : as_smaller;
}

static double
largest_within_face (const dw_piston_face *face, const dw_face_hole *hole)
{
  const double at = hypot (hole->x, hole->y);
  double radius = fmin (face->piston_radius - at, at - face->shaft_radius);
  /* a covered hole that touches hub or rim is outside the ring for the model */
  if (face->has_shim && hole->covered)
    radius = fmin (radius, fmin (face->shim_radius - at, at - face->hub_radius) - DW_FACE_SAME);
  else if (face->has_shim)
    radius = fmin (radius, at - face->hub_radius);
  return 2.0 * radius;
}

/* Largest size of one hole of a set, beside those of its own set at the same size and those of
 * neither; the other set is looked at by pairs of sizes. */
static double
largest_of_hole (const dw_drill_sets *sets, int hole)
{
  const dw_piston_face *face = &sets->face;
  double most = largest_within_face (face, &face->holes[hole]);
  for (int i = 0; i < face->n_holes; i++)
    {
      const double away = distance (&face->holes[hole], &face->holes[i]);
      if (i == hole)
        continue;
      if (sets->set_of[i] == sets->set_of[hole])
        most = fmin (most, away / (1.0 + DW_FACE_LEAST_LAND));
      else if (sets->set_of[i] < 0)
        most = fmin (most, largest_beside (away, face->holes[i].diameter));
    }
  return most;
}

static bool
are_alike (const dw_drill_sets *sets)
{
  for (int i = 0; i < sets->damper.piston.n_holes; i++)
    if (sets->count[0][i] != sets->count[1][i])
      return false;
  return sets->n_holes[0] > 0;
}

static void
count_holes (dw_drill_sets *sets)
{
  for (int s = 0; s < DW_DRILL_SETS; s++)
    {
      sets->n_holes[s] = 0;
      sets->present[s] = 0.0;
      sets->largest[s] = FAR;
      for (int g = 0; g < DW_MAX_HOLE_GROUPS; g++)
        sets->count[s][g] = 0;
    }
  for (int i = 0; i < sets->face.n_holes; i++)
    {
      const int s = sets->set_of[i];
      const dw_face_hole *hole = &sets->face.holes[i];
      if (s < 0)
        continue;
      sets->n_holes[s]++;
      sets->count[s][hole->group]++;
      sets->present[s] = fmax (sets->present[s], hole->diameter);
    }
}

void
dw_drill_sets_update (dw_drill_sets *sets)
{
  const dw_piston_face *face = &sets->face;

  count_holes (sets);
  sets->apart = FAR;
  for (int i = 0; i < face->n_holes; i++)
    {
      const int s = sets->set_of[i];
      if (s < 0)
        continue;
      sets->largest[s] = fmin (sets->largest[s], largest_of_hole (sets, i));
      for (int k = 0; s == 0 && k < face->n_holes; k++)
        if (sets->set_of[k] == 1)
          sets->apart = fmin (sets->apart, distance (&face->holes[i], &face->holes[k]));
    }
  for (int s = 0; s < DW_DRILL_SETS; s++)
    if (sets->n_holes[s] == 0)
      sets->largest[s] = 0.0;
    else if (sets->n_holes[1 - s] > 0)
      sets->largest[s] = fmin (sets->largest[s],
                               largest_beside (sets->apart, sets->present[1 - s]));
  sets->is_alike = are_alike (sets);
}

bool
dw_drill_sets_have_room (const dw_drill_sets *sets, const double size[DW_DRILL_SETS])
{
  double d[DW_DRILL_SETS];
  for (int s = 0; s < DW_DRILL_SETS; s++)
    {
      d[s] = size[s] > 0.0 ? size[s] : sets->present[s];
      /* that of crowded holes is below nothing: no reason against leaving them as they are */
      if (size[s] > 0.0 && size[s] > sets->largest[s] + DW_FACE_SAME)
        return false;
    }
  if ((size[0] == 0.0 && size[1] == 0.0) || sets->n_holes[0] == 0 || sets->n_holes[1] == 0)
    return true;
  return sets->apart - 0.5 * (d[0] + d[1]) >= DW_FACE_LEAST_LAND * fmax (d[0], d[1]) - DW_FACE_SAME;
}

/* ---- drilling ---- */

bool
dw_drill_sets_can_reach (const dw_drill_sets *sets, int set, double size)
{
  return sets->n_holes[set] > 0 && size > sets->present[set] + DW_DRILL_SAME;
}

/* @return  false when there is no room for one group more */
static bool
add_holes (dw_piston *piston, int count, double diameter, bool covered)
{
  if (count == 0)
    return true;
  for (int i = 0; i < piston->n_holes; i++)
    {
      dw_holes *holes = &piston->holes[i];
      if (holes->covered == covered && fabs (holes->diameter - diameter) <= DW_DRILL_SAME
          && holes->count + count <= (int)dw_limit_get (DW_LIMIT_HOLE_COUNT)->high)
        {
          holes->count += count;
          return true;
        }
    }
  if (piston->n_holes == DW_MAX_HOLE_GROUPS)
    return false;
  piston->holes[piston->n_holes++] = (dw_holes){ count, diameter, covered };
  return true;
}

dw_status
dw_drill_sets_resize (const dw_drill_sets *sets, const double diameter[DW_DRILL_SETS],
                      dw_damper *out, dw_error *err)
{
  const dw_piston *now = &sets->damper.piston;
  dw_damper d = sets->damper;
  bool fits = true;

  d.piston.n_holes = 0;
  for (int g = 0; g < now->n_holes; g++)
    {
      const dw_holes *holes = &now->holes[g];
      int left = holes->count;
      for (int s = 0; s < DW_DRILL_SETS; s++)
        if (diameter[s] > 0.0)
          {
            left -= sets->count[s][g];
            fits = fits && add_holes (&d.piston, sets->count[s][g], diameter[s], holes->covered);
          }
      fits = fits && add_holes (&d.piston, left, holes->diameter, holes->covered);
    }
  if (!fits)
    return dw_fail (err, DW_ERR_GEOMETRY, "piston.holes", -1, "%d groups of holes, allowed 0 to %d",
                    DW_MAX_HOLE_GROUPS + 1, DW_MAX_HOLE_GROUPS);
  *out = d;
  return DW_OK;
}

dw_status
dw_drill_sets_apply (const dw_drill_sets *sets, const double size[DW_DRILL_SETS], dw_damper *out,
                     dw_error *err)
{
  for (int s = 0; s < DW_DRILL_SETS; s++)
    if (size[s] != 0.0 && !dw_drill_sets_can_reach (sets, s, size[s]))
      return dw_fail (err, DW_ERR_RANGE, "drill.size", s,
                      "%.6g mm is not larger than the %.6g mm that the hole has", size[s] / DW_MM,
                      sets->present[s] / DW_MM);
  if (!dw_drill_sets_have_room (sets, size))
    return dw_fail (err, DW_ERR_GEOMETRY, "drill.size", -1,
                    "%.6g and %.6g mm leave too little land", size[0] / DW_MM, size[1] / DW_MM);
  return dw_drill_sets_resize (sets, size, out, err);
}
