/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-hole-match.h"

#include <assert.h>
#include <math.h>

/* Why taking equal sizes first and then always the largest of both sides is exact.
 *
 * A matching gives every hole that there is a wanted one of its own that is no smaller; what is
 * wanted besides comes from solid, a hole of size 0. Let there be any.
 *
 * 1. Equal sizes. Say a hole of size s goes to n > s, while the wanted hole of size s comes from
 *    p < s. Exchanged, s stays and p goes to n: allowed, for p < s < n, and one more hole is left
 *    alone. So there is a matching that leaves alone as many of each size as both sides have, and
 *    none can leave more. What remains of both sides is the same sizes in every such matching.
 * 2. The rest. Let O be the largest hole left and N the largest wanted one left; say O goes to n and
 *    N comes from p, so p <= O <= n <= N. Exchanged, O goes to N and p to n: allowed, and no step is
 *    larger than N - p was. So pairing the largest of both sides loses nothing, and so on downwards:
 *    it finds a matching when there is any, and none has a smaller largest step.
 *
 * Sizes are compared in whole nanometres, so that "equal" is the same from every side. */

static long
nanometres (double size)
{
  return lround (size * 1e9);
}

bool
dw_hole_match_is_same (double a, double b)
{
  return nanometres (a) == nanometres (b);
}

/* The groups of a piston, and how many of each are not matched yet. */
typedef struct
{
  const dw_piston *piston;
  int left[DW_MAX_HOLE_GROUPS];
} lot;

typedef struct
{
  lot from;
  lot to;
  dw_hole_match match;
} search;

static void
open_lot (lot *l, const dw_piston *piston)
{
  assert (piston->n_holes >= 0 && piston->n_holes <= DW_MAX_HOLE_GROUPS);
  l->piston = piston;
  for (int i = 0; i < piston->n_holes; i++)
    l->left[i] = piston->holes[i].count;
}

/* @p from = -1: from solid. */
static void
add (search *s, int from, int to, int count)
{
  if (from >= 0)
    s->from.left[from] -= count;
  s->to.left[to] -= count;
  s->match.steps[s->match.n++] = (dw_hole_step){ from, to, count };
}

static int
lesser (int a, int b)
{
  return a < b ? a : b;
}

static void
leave_equal (search *s, bool of_one_kind)
{
  for (int i = 0; i < s->from.piston->n_holes; i++)
    for (int j = 0; j < s->to.piston->n_holes; j++)
      {
        const dw_holes *p = &s->from.piston->holes[i];
        const dw_holes *q = &s->to.piston->holes[j];
        const int n = lesser (s->from.left[i], s->to.left[j]);
        if (n > 0 && dw_hole_match_is_same (p->diameter, q->diameter)
            && (!of_one_kind || p->covered == q->covered))
          add (s, i, j, n);
      }
}

/* Which holes a pass is about. */
typedef enum
{
  COVERED,
  OPEN,
  BOTH
} kinds;

/* Group of the largest holes that are left; -1 when there are none. */
static int
largest_left (const lot *l, kinds which)
{
  int best = -1;
  for (int i = 0; i < l->piston->n_holes; i++)
    {
      const dw_holes *holes = &l->piston->holes[i];
      const bool is_meant = which == BOTH || holes->covered == (which == COVERED);
      if (l->left[i] > 0 && is_meant
          && (best < 0 || holes->diameter > l->piston->holes[best].diameter))
        best = i;
    }
  return best;
}

static bool
pair_largest (search *s, kinds which)
{
  for (;;)
    {
      const int i = largest_left (&s->from, which);
      const int j = largest_left (&s->to, which);
      if (j < 0)
        return i < 0;
      if (i >= 0
          && nanometres (s->from.piston->holes[i].diameter)
                 > nanometres (s->to.piston->holes[j].diameter))
        return false;
      add (s, i, j, i < 0 ? s->to.left[j] : lesser (s->from.left[i], s->to.left[j]));
    }
}

bool
dw_hole_match_find (const dw_piston *from, const dw_piston *to, bool keeps_kinds,
                    dw_hole_match *out)
{
  search s = { .match = { .n = 0 } };
  open_lot (&s.from, from);
  open_lot (&s.to, to);
  leave_equal (&s, true);
  if (!keeps_kinds)
    leave_equal (&s, false);
  const bool found = keeps_kinds ? pair_largest (&s, COVERED) && pair_largest (&s, OPEN)
                                 : pair_largest (&s, BOTH);
  if (found)
    *out = s.match;
  return found;
}
