/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-piston-face.h"

#include <math.h>
#include <stdio.h>

#include "model/dw-units.h"

static const double TURN = 6.283185307179586; /* [rad] */

/* ---- circles ---- */

static int
count_of (const dw_piston *piston, bool covered)
{
  int n = 0;
  for (int i = 0; i < piston->n_holes; i++)
    if (piston->holes[i].covered == covered)
      n += piston->holes[i].count;
  return n;
}

static double
largest_of (const dw_piston *piston, bool covered)
{
  double largest = 0.0;
  for (int i = 0; i < piston->n_holes; i++)
    if (piston->holes[i].covered == covered)
      largest = fmax (largest, piston->holes[i].diameter);
  return largest;
}

/* Radius at which so many holes stand with enough land between them. */
static double
radius_for (int n, double diameter)
{
  return n > 1 ? 0.5 * (1.0 + DW_FACE_LEAST_LAND) * diameter / sin (0.5 * TURN / n) : 0.0;
}

/* Circle of the open holes; whether it is that of the covered ones. Without a shim nothing is
 * covered, and all holes share one circle. */
static double
open_circle (const dw_piston_face *face, const dw_damper *damper, bool *is_shared)
{
  const dw_piston *piston = &damper->piston;
  const double d_open = largest_of (piston, false);
  const double d = face->has_shim ? d_open : fmax (d_open, largest_of (piston, true));
  const int n = count_of (piston, false) + (face->has_shim ? 0 : count_of (piston, true));
  const double land = DW_FACE_LEAST_LAND * d;
  const double inner = face->has_shim ? face->shim_radius : face->shaft_radius;
  const double outermost = face->piston_radius - land - 0.5 * d;
  const bool fits_outside = face->piston_radius - inner >= d + 2.0 * land;

  *is_shared = !face->has_shim || !fits_outside;
  if (face->has_shim && !fits_outside)
    return 0.5 * damper->valve.hole_circle;
  const double middle = 0.5 * (inner + face->piston_radius);
  return fmax (middle, fmin (outermost, radius_for (n, d)));
}

/* ---- holes ---- */

/* Group of the next hole: the one that lags most behind its share of those placed. */
static int
next_group (const dw_piston *piston, bool covered, const int *placed, int n_placed, int total)
{
  int best = -1;
  double most = -HUGE_VAL;
  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *holes = &piston->holes[i];
      if (holes->covered != covered || placed[i] == holes->count)
        continue;
      const double lag = (double)holes->count * (n_placed + 1) / total - placed[i];
      if (lag > most + 1e-9)
        {
          most = lag;
          best = i;
        }
    }
  return best;
}

/* Where hole i of so many stands. [rad] clockwise from the top */
typedef struct
{
  double start; /* [rad] of the first hole, where they stand evenly */
  int between;  /* so many others are on the circle, from the top on; 0 = none */
} placing;

static double
angle_of (placing how, int i, int total)
{
  if (how.between == 0)
    return how.start + TURN * i / total;
  int gap = 0;
  while ((gap + 1) * total / how.between <= i)
    gap++;
  const int first = gap * total / how.between;
  const int in_gap = (gap + 1) * total / how.between - first;
  return TURN / how.between * (gap + (i - first + 1.0) / (in_gap + 1.0));
}

/* All holes of a kind on a circle. */
static void
place (const dw_piston *piston, bool covered, double radius, placing how, dw_piston_face *face)
{
  int placed[DW_MAX_HOLE_GROUPS] = { 0 };
  const int total = count_of (piston, covered);
  for (int i = 0; i < total && face->n_holes < DW_MAX_FACE_HOLES; i++)
    {
      const int group = next_group (piston, covered, placed, i, total);
      const double angle = angle_of (how, i, total);
      placed[group]++;
      face->holes[face->n_holes++] = (dw_face_hole){ group, covered, radius * sin (angle),
                                                     radius * cos (angle),
                                                     piston->holes[group].diameter };
    }
}

static void
place_holes (const dw_damper *damper, dw_piston_face *face)
{
  const dw_piston *piston = &damper->piston;
  const int n_covered = count_of (piston, true);
  bool is_shared = false;
  const double open_radius = open_circle (face, damper, &is_shared);
  double covered_radius = 0.5 * damper->valve.hole_circle;
  if (!face->has_shim)
    covered_radius = open_radius; /* nothing covers them: open holes like the others */

  place (piston, true, covered_radius, (placing){ 0.0, 0 }, face);
  const double half_step = n_covered > 0 ? 0.5 * TURN / n_covered : 0.0;
  place (piston, false, open_radius, (placing){ half_step, is_shared ? n_covered : 0 }, face);
}

/* ---- land ---- */

static int
group_of (const dw_piston_face *face, int hole)
{
  return hole >= 0 ? face->holes[hole].group : -1;
}

static void
add_ligament (dw_piston_face *face, dw_ligament found)
{
  for (int i = 0; i < face->n_ligaments; i++)
    {
      dw_ligament *old = &face->ligaments[i];
      const int a = group_of (face, old->hole);
      const int b = group_of (face, old->other);
      const int c = group_of (face, found.hole);
      const int d = group_of (face, found.other);
      if (old->kind != found.kind || !((a == c && b == d) || (a == d && b == c)))
        continue;
      if (found.land < old->land - DW_FACE_SAME)
        *old = found;
      return;
    }
  if (face->n_ligaments < DW_MAX_LIGAMENTS)
    face->ligaments[face->n_ligaments++] = found;
}

static void
check_pair (dw_piston_face *face, int i, int j)
{
  const dw_face_hole *a = &face->holes[i];
  const dw_face_hole *b = &face->holes[j];
  const double advised = DW_FACE_LEAST_LAND * fmax (a->diameter, b->diameter);
  const double land = hypot (a->x - b->x, a->y - b->y) - 0.5 * (a->diameter + b->diameter);
  if (land < advised - DW_FACE_SAME)
    add_ligament (face, (dw_ligament){ DW_LIGAMENT_HOLES, i, j, land, advised });
}

static void
check_hole (dw_piston_face *face, int i)
{
  const dw_face_hole *hole = &face->holes[i];
  const double at = hypot (hole->x, hole->y);
  const double radius = 0.5 * hole->diameter;
  const double to_edge = face->piston_radius - at - radius;
  const double to_shaft = at - radius - face->shaft_radius;
  const double to_hub = at - radius - face->hub_radius;
  if (to_edge < -DW_FACE_SAME)
    add_ligament (face, (dw_ligament){ DW_LIGAMENT_EDGE, i, -1, to_edge, 0.0 });
  if (to_shaft < -DW_FACE_SAME)
    add_ligament (face, (dw_ligament){ DW_LIGAMENT_SHAFT, i, -1, to_shaft, 0.0 });
  if (face->has_shim && to_hub < -DW_FACE_SAME)
    add_ligament (face, (dw_ligament){ DW_LIGAMENT_HUB, i, -1, to_hub, 0.0 });
}

void
dw_piston_face_make (const dw_damper *damper, dw_piston_face *face)
{
  const bool has_shim = damper->valve.n_shims > 0;
  *face = (dw_piston_face){
    .bore_radius = 0.5 * damper->body.bore,
    .piston_radius = 0.5 * damper->body.bore - damper->piston.clearance,
    .shaft_radius = 0.5 * damper->body.rod,
    .has_shim = has_shim,
    .hub_radius = has_shim ? 0.5 * damper->valve.hub_diameter : 0.0,
    .shim_radius = has_shim ? 0.5 * damper->valve.outer_diameter : 0.0,
  };
  place_holes (damper, face);
  for (int i = 0; i < face->n_holes; i++)
    {
      check_hole (face, i);
      for (int j = i + 1; j < face->n_holes; j++)
        check_pair (face, i, j);
    }
}

void
dw_ligament_text (const dw_piston_face *face, const dw_ligament *ligament, char *text, size_t room)
{
  static const char *const what[] = { [DW_LIGAMENT_EDGE] = "the piston's edge",
                                      [DW_LIGAMENT_SHAFT] = "the shaft",
                                      [DW_LIGAMENT_HUB] = "the hub of the shim" };
  const double diameter = face->holes[ligament->hole].diameter / DW_MM;
  if (ligament->kind != DW_LIGAMENT_HOLES)
    {
      snprintf (text, room, "hole of %.2f mm cuts %s by %.2f mm", diameter, what[ligament->kind],
                -ligament->land / DW_MM);
      return;
    }
  const double other = face->holes[ligament->other].diameter / DW_MM;
  if (ligament->land < 0.0)
    snprintf (text, room, "holes of %.2f and %.2f mm run into each other by %.2f mm", diameter,
              other, -ligament->land / DW_MM);
  else
    snprintf (text, room, "holes of %.2f and %.2f mm: %.2f mm of land, %.2f mm advised", diameter,
              other, ligament->land / DW_MM, ligament->advised / DW_MM);
}
