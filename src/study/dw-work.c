/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-work.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "model/dw-drill.h"
#include "study/dw-spread.h"

/* [m] Parts that differ by no more are alike. */
static const double SAME = DW_DRILL_SAME;

/* What the work is from and to, and with what. */
typedef struct
{
  const dw_damper *a;
  const dw_damper *b;
  const double *drills; /* [m] */
  int n_drills;
  int grade; /* of the holes that are drilled */
} bench;

/* What is drilled into one piston. */
typedef struct
{
  int n;
  int n_passes;
  dw_work_holes holes[DW_HOLE_MATCH_MAX_STEPS];
} drilling;

/* ---- drilling one piston ---- */

static dw_work_holes
work_of (const bench *w, const dw_piston *piston, const dw_hole_step *step)
{
  const dw_holes *to = &w->b->piston.holes[step->to];
  const bool is_solid = step->from < 0;
  const double from = is_solid ? 0.0 : piston->holes[step->from].diameter;
  return (dw_work_holes){
    .count = step->count,
    .covered = to->covered,
    .from = from,
    .to = to->diameter,
    .passes = is_solid ? dw_drill_passes_from_solid (to->diameter, w->drills, w->n_drills)
                       : dw_drill_passes_find (from, to->diameter, w->drills, w->n_drills),
    .check = dw_drill_passes_check (to->diameter, w->grade, w->drills, w->n_drills),
  };
}

static bool
gets_same_drills (const dw_work_holes *p, const dw_work_holes *q)
{
  return p->covered == q->covered && p->from == q->from && p->to == q->to;
}

/* Whether p is drilled before q, see dw-work.h. */
static bool
goes_before (const dw_work_holes *p, const dw_work_holes *q)
{
  const bool p_solid = p->from == 0.0;
  const bool q_solid = q->from == 0.0;
  if (p_solid != q_solid)
    return p_solid;
  if (p->covered != q->covered)
    return q->covered;
  return p->to != q->to ? p->to < q->to : p->from < q->from;
}

static void
add (drilling *d, const dw_work_holes *holes)
{
  int at = 0;
  d->n_passes += holes->count * holes->passes.n;
  for (int i = 0; i < d->n; i++)
    if (gets_same_drills (&d->holes[i], holes))
      {
        d->holes[i].count += holes->count;
        return;
      }
  while (at < d->n && !goes_before (holes, &d->holes[at]))
    at++;
  memmove (&d->holes[at + 1], &d->holes[at], (size_t)(d->n - at) * sizeof *holes);
  d->holes[at] = *holes;
  d->n++;
}

/* False when no drill makes the wanted holes out of those of the piston. */
static bool
drill (const bench *w, const dw_piston *piston, bool keeps_kinds, drilling *out)
{
  dw_hole_match match;
  if (!dw_hole_match_find (piston, &w->b->piston, keeps_kinds, &match))
    return false;
  *out = (drilling){ .n = 0 };
  for (int i = 0; i < match.n; i++)
    {
      const dw_hole_step *step = &match.steps[i];
      if (step->from >= 0
          && dw_hole_match_is_same (piston->holes[step->from].diameter,
                                    w->b->piston.holes[step->to].diameter))
        continue;
      const dw_work_holes holes = work_of (w, piston, step);
      add (out, &holes);
    }
  return true;
}

/* ---- which piston ---- */

static bool
is_same (double a, double b)
{
  return fabs (a - b) <= SAME;
}

static double
outer_diameter (const dw_body *body, const dw_piston *piston)
{
  return body->bore - 2.0 * piston->clearance;
}

/* Whether the shims of both dampers lie over the same places of a piston. */
static bool
covers_same_places (const dw_damper *a, const dw_damper *b)
{
  return a->valve.n_shims > 0 && b->valve.n_shims > 0
         && is_same (a->valve.hub_diameter, b->valve.hub_diameter)
         && is_same (a->valve.outer_diameter, b->valve.outer_diameter);
}

/* The piston that is in it. */
static bool
drill_fitted (const bench *w, drilling *out)
{
  const dw_damper *a = w->a;
  const dw_damper *b = w->b;
  const bool keeps_kinds = covers_same_places (a, b);
  if (!is_same (a->piston.thickness, b->piston.thickness)
      || !is_same (outer_diameter (&a->body, &a->piston), outer_diameter (&b->body, &b->piston)))
    return false;
  if (keeps_kinds && dw_piston_has_covered (&a->piston) && dw_piston_has_covered (&b->piston)
      && !is_same (a->valve.hole_circle, b->valve.hole_circle))
    return false;
  return drill (w, &a->piston, keeps_kinds, out);
}

/* The piston of the box with the least work, the first of equals; -1 when none can be used. What its
 * covered holes are covered by is not known; without a shim it does not matter. */
static int
drill_spare (const bench *w, const dw_piston *spares, int n, drilling *out)
{
  int best = -1;
  for (int i = 0; i < n; i++)
    {
      drilling d;
      if (!is_same (spares[i].thickness, w->b->piston.thickness)
          || !is_same (spares[i].clearance, w->b->piston.clearance)
          || !drill (w, &spares[i], w->b->valve.n_shims > 0, &d))
        continue;
      if (best >= 0 && d.n_passes >= out->n_passes)
        continue;
      best = i;
      *out = d;
    }
  return best;
}

static void
choose_piston (const bench *w, const dw_piston *spares, int n_spares, dw_work *out)
{
  const dw_piston blank = { .n_holes = 0 };
  drilling fitted;
  drilling spare;
  const drilling *chosen = &fitted;

  out->spare = -1;
  if (drill_fitted (w, &fitted))
    out->piston = fitted.n == 0 ? DW_WORK_PISTON_KEEP : DW_WORK_PISTON_DRILL;
  else
    {
      chosen = &spare;
      out->spare = drill_spare (w, spares, n_spares, &spare);
      if (out->spare < 0)
        {
          out->piston = DW_WORK_PISTON_NEW;
          drill (w, &blank, false, &spare);
        }
      else
        out->piston = spare.n == 0 ? DW_WORK_PISTON_SPARE : DW_WORK_PISTON_SPARE_DRILL;
    }
  out->n_holes = chosen->n;
  out->n_passes = chosen->n_passes;
  memcpy (out->holes, chosen->holes, (size_t)chosen->n * sizeof chosen->holes[0]);
}

/* ---- everything else ---- */

static bool
begins (const char *path, const char *with)
{
  return strncmp (path, with, strlen (with)) == 0;
}

bool
dw_work_is_assumption (const dw_difference *difference, const dw_damper *a, const dw_damper *b)
{
  const char *path = difference->path;
  /* a measurement that nobody has taken changes nothing on the damper */
  if (strcmp (path, "body.filling") == 0 || begins (path, "stance."))
    return isnan (difference->after);
  if (strcmp (path, "gas.pressure") == 0)
    return a->gas.kind == DW_GAS_VENTED && b->gas.kind == DW_GAS_VENTED;
  return strcmp (path, "piston.eccentricity") == 0 || strcmp (path, "valve.leaf-coupling") == 0;
}

/* What one other difference asks for. The hole circle is a place on the piston, which has been
 * chosen with it; numbers of a valve without shims are of no part. */
static void
add_other (const bench *w, const dw_difference *found, bool has_shims, dw_work *out)
{
  const bool is_valve = begins (found->path, "valve.");
  out->others[out->n_others++] = *found;
  if (dw_work_is_assumption (found, w->a, w->b) || strcmp (found->path, "valve.hole-circle") == 0
      || (is_valve && !has_shims))
    return;
  if (begins (found->path, "body.") || begins (found->path, "gas.") || is_valve
      || begins (found->path, "seal."))
    out->opens = true;
  /* another shaft is put into the piston */
  if (has_shims && (is_valve || strcmp (found->path, "body.rod") == 0))
    out->restacks = true;
}

static void
find_others (const bench *w, dw_work *out)
{
  dw_difference found[DW_MAX_DIFFERENCES];
  const size_t n = dw_difference_find (w->a, w->b, found, DW_MAX_DIFFERENCES);
  const bool has_shims = w->a->valve.n_shims > 0 || w->b->valve.n_shims > 0;

  assert (n <= DW_MAX_DIFFERENCES);
  for (size_t i = 0; i < n; i++)
    {
      const char *path = found[i].path;
      if (begins (path, "piston.holes"))
        continue;
      if (begins (path, "valve.shim"))
        out->restacks = true;
      else if (begins (path, "oil"))
        out->changes_oil = true;
      else
        add_other (w, &found[i], has_shims, out);
    }
  if (has_shims && out->piston != DW_WORK_PISTON_KEEP)
    out->restacks = true;
  if (out->piston != DW_WORK_PISTON_KEEP || out->restacks || out->changes_oil)
    out->opens = true;
  out->refills = out->opens;
}

void
dw_work_find (const dw_damper *a, const dw_damper *b, const dw_piston *spares, int n_spares,
              const double *drills, int n_drills, dw_work *out)
{
  assert (a != NULL && b != NULL && out != NULL);
  assert (spares != NULL || n_spares == 0);
  assert (drills != NULL || n_drills == 0);

  const bench w = { a, b, drills, n_drills, dw_spread_limits_defaults ().hole_grade };
  memset (out, 0, sizeof *out);
  choose_piston (&w, spares, n_spares, out);
  find_others (&w, out);
}
