/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-swap.h"

#include <assert.h>
#include <stdbool.h>

/* A lot by rising size, and what of it is not accounted for yet. */
typedef struct
{
  const dw_part *part;
  int n;
  int order[DW_SWAP_MAX_PARTS];
  int left[DW_SWAP_MAX_PARTS];
} lot;

typedef struct
{
  lot a;
  lot b;
  dw_swap *out;
  size_t n;
} search;

static void
open_lot (lot *l, const dw_part *part, int n)
{
  l->part = part;
  l->n = n;
  for (int i = 0; i < n; i++)
    {
      int at = i;
      for (; at > 0 && part[l->order[at - 1]].size > part[i].size; at--)
        l->order[at] = l->order[at - 1];
      l->order[at] = i;
      l->left[i] = part[i].count;
    }
}

static void
add (search *s, int from, int to, int n_from, int n_to)
{
  if (from >= 0)
    s->a.left[from] -= n_from;
  if (to >= 0)
    s->b.left[to] -= n_to;
  s->out[s->n++] = (dw_swap){ from, to, n_from, n_to };
}

/* What stays as it is. */
static void
leave_common (search *s)
{
  for (int i = 0; i < s->a.n; i++)
    for (int j = 0; j < s->b.n; j++)
      if (s->a.part[i].kind == s->b.part[j].kind)
        {
          const int p = s->a.left[i];
          const int q = s->b.left[j];
          const int n = p < q ? p : q;
          s->a.left[i] -= n;
          s->b.left[j] -= n;
        }
}

typedef bool pairing (const search *s, int i, int j);

static bool
only_side_differs (const search *s, int i, int j)
{
  return s->a.part[i].side != s->b.part[j].side && s->a.part[i].size == s->b.part[j].size
         && s->a.left[i] == s->b.left[j];
}

static bool
as_many (const search *s, int i, int j)
{
  return s->a.part[i].side == s->b.part[j].side && s->a.left[i] == s->b.left[j];
}

static bool
any (const search *s, int i, int j)
{
  return s->a.part[i].side == s->b.part[j].side;
}

static int
total_left (const lot *l, int side)
{
  int n = 0;
  for (int i = 0; i < l->n; i++)
    if (l->part[i].side == side)
      n += l->left[i];
  return n;
}

/* Pairs what the rule allows, by rising size. Where as many go as come on a side, one entry may
 * become several; else an entry is swapped whole, and the rest is added or taken out. */
static void
pair (search *s, pairing *rule)
{
  for (int p = 0; p < s->a.n; p++)
    for (int q = 0; q < s->b.n; q++)
      {
        const int i = s->a.order[p];
        const int j = s->b.order[q];
        int n_from = s->a.left[i];
        int n_to = s->b.left[j];
        if (n_from == 0 || n_to == 0 || !rule (s, i, j))
          continue;
        const int side = s->a.part[i].side;
        if (total_left (&s->a, side) == total_left (&s->b, side))
          {
            n_from = n_from < n_to ? n_from : n_to;
            n_to = n_from;
          }
        add (s, i, j, n_from, n_to);
      }
}

size_t
dw_swap_find (const dw_part *a, int n_a, const dw_part *b, int n_b, dw_swap *out)
{
  assert (n_a >= 0 && n_a <= DW_SWAP_MAX_PARTS && n_b >= 0 && n_b <= DW_SWAP_MAX_PARTS);
  assert (out != NULL || n_a + n_b == 0);

  search s = { .out = out };
  open_lot (&s.a, a, n_a);
  open_lot (&s.b, b, n_b);
  leave_common (&s);
  pair (&s, only_side_differs);
  pair (&s, as_many);
  pair (&s, any);
  for (int i = 0; i < n_a; i++)
    if (s.a.left[i] > 0)
      add (&s, i, -1, s.a.left[i], 0);
  for (int j = 0; j < n_b; j++)
    if (s.b.left[j] > 0)
      add (&s, -1, j, 0, s.b.left[j]);
  return s.n;
}
