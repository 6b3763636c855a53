/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-difference.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "model/dw-units.h"
#include "study/dw-swap.h"

/* ---- single numbers ---- */

/* When a number acts on the force. */
typedef enum
{
  ACTS_ALWAYS,
  ACTS_NEVER,
  ACTS_THROUGH_SHIM,  /* with a shim over covered holes */
  ACTS_THROUGH_STACK, /* as above, and more than one leaf */
  ACTS_THROUGH_LEAK   /* with a clearance */
} effect;

typedef struct
{
  const char *path;
  const char *label;
  const char *unit;
  double unit_size; /* SI in one unit */
  size_t offset;    /* of the double in a dw_damper */
  effect acts;
  bool optional; /* a bool at has says whether it was given */
  size_t has;    /* offset of that bool; only if optional */
} number;

#define NUMBER(path, label, unit, size, member, acts)                                              \
  {                                                                                                \
    path, label, unit, size, offsetof (dw_damper, member), acts, false, 0                          \
  }
/* What only the sheet tells. */
#define TOLD(path, label, unit, size, member, given)                                               \
  {                                                                                                \
    path, label, unit, size, offsetof (dw_damper, member), ACTS_NEVER, true,                       \
        offsetof (dw_damper, given)                                                                \
  }

static const number before_holes[] = {
  NUMBER ("body.bore", "bore", " mm", DW_MM, body.bore, ACTS_ALWAYS),
  NUMBER ("body.rod", "shaft", " mm", DW_MM, body.rod, ACTS_ALWAYS),
  NUMBER ("body.stroke", "stroke", " mm", DW_MM, body.stroke, ACTS_NEVER),
  TOLD ("body.filling", "oil filling", " ml", DW_ML, body.filling, body.has_filling),
  NUMBER ("piston.thickness", "piston thickness", " mm", DW_MM, piston.thickness, ACTS_ALWAYS),
  NUMBER ("piston.clearance", "piston clearance", " mm", DW_MM, piston.clearance, ACTS_ALWAYS),
  NUMBER ("piston.eccentricity", "piston eccentricity", "", 1.0, piston.eccentricity,
          ACTS_THROUGH_LEAK),
};

static const number before_shims[] = {
  NUMBER ("valve.hub-diameter", "shim hub diameter", " mm", DW_MM, valve.hub_diameter,
          ACTS_THROUGH_SHIM),
  NUMBER ("valve.outer-diameter", "shim outer diameter", " mm", DW_MM, valve.outer_diameter,
          ACTS_THROUGH_SHIM),
  NUMBER ("valve.hole-circle", "hole circle", " mm", DW_MM, valve.hole_circle, ACTS_THROUGH_SHIM),
  NUMBER ("valve.lift-limit", "shim lift limit", " mm", DW_MM, valve.lift_limit, ACTS_THROUGH_SHIM),
  NUMBER ("valve.leaf-coupling", "leaf coupling", "", 1.0, valve.leaf_coupling, ACTS_THROUGH_STACK),
  NUMBER ("valve.preload", "shim preload", " kPa", DW_KPA, valve.preload, ACTS_THROUGH_SHIM),
  NUMBER ("valve.seat-gap", "seat gap", " mm", DW_MM, valve.seat_gap, ACTS_THROUGH_SHIM),
};

static const number of_gas[] = {
  NUMBER ("gas.pressure", "gas pressure", " kPa", DW_KPA, gas.pressure, ACTS_ALWAYS),
  NUMBER ("gas.volume", "gas volume", " ml", DW_ML, gas.volume, ACTS_ALWAYS),
};

static const number of_seal[] = {
  NUMBER ("seal.friction", "seal friction", " N", 1.0, seal_friction, ACTS_ALWAYS),
};

/* A spring of another rate has another length as a rule: together they are one difference. */
static const number of_spring[] = {
  NUMBER ("spring.rate", "spring rate", " N/mm", DW_N_PER_MM, spring.rate, ACTS_NEVER),
  NUMBER ("spring.free-length", "spring free length", " mm", DW_MM, spring.free_length, ACTS_NEVER),
};

static const number after_spring[] = {
  NUMBER ("spring.preload", "spring preload", " mm", DW_MM, spring.preload, ACTS_NEVER),
  NUMBER ("linkage.motion-ratio", "motion ratio", "", 1.0, motion_ratio, ACTS_NEVER),
  TOLD ("stance.ride-height", "ride height", " mm", DW_MM, stance.ride_height,
        stance.has_ride_height),
  TOLD ("stance.droop", "droop", " mm", DW_MM, stance.droop, stance.has_droop),
};

#define N_ROWS(table) (sizeof (table) / sizeof (table)[0])

/* What is being compared, and what was found. */
typedef struct
{
  const dw_damper *a;
  const dw_damper *b;
  dw_difference *out;
  size_t capacity;
  size_t n;
} search;

static void
add (search *s, dw_difference difference)
{
  if (s->n < s->capacity)
    s->out[s->n] = difference;
  s->n++;
}

static bool
has_shim_at_work (const dw_damper *damper)
{
  return damper->valve.n_shims > 0 && dw_piston_has_covered (&damper->piston);
}

static bool
takes_effect (effect acts, const dw_damper *damper)
{
  switch (acts)
    {
    case ACTS_ALWAYS:
      return true;
    case ACTS_NEVER:
      return false;
    case ACTS_THROUGH_SHIM:
      return has_shim_at_work (damper);
    case ACTS_THROUGH_STACK:
      return has_shim_at_work (damper) && dw_valve_leaf_count (&damper->valve) > 1;
    case ACTS_THROUGH_LEAK:
      return damper->piston.clearance > 0.0;
    }
  return false;
}

/* NaN when it is not given. */
static double
value_of (const number *row, const dw_damper *damper)
{
  const char *base = (const char *)damper;
  if (row->optional && !*(const bool *)(base + row->has))
    return NAN;
  return *(const double *)(base + row->offset);
}

static bool
same_value (double before, double after)
{
  return before == after || (isnan (before) && isnan (after));
}

static void
find_number (search *s, const number *row)
{
  const double before = value_of (row, s->a);
  const double after = value_of (row, s->b);
  if (same_value (before, after))
    return;
  add (s,
       (dw_difference){ .kind = DW_DIFFERENCE_VALUE,
                        .path = row->path,
                        .index = -1,
                        .before = before,
                        .after = after,
                        .label = row->label,
                        .unit = row->unit,
                        .unit_size = row->unit_size,
                        .acts = takes_effect (row->acts, s->a) || takes_effect (row->acts, s->b) });
}

static void
find_numbers (search *s, const number *rows, size_t n)
{
  for (size_t i = 0; i < n; i++)
    find_number (s, &rows[i]);
}

/* ---- holes and shims ---- */

/* Equal parts of a damper, in however many groups or entries they are written down. */
typedef struct
{
  dw_part part[DW_SWAP_MAX_PARTS];
  unsigned set[DW_SWAP_MAX_PARTS]; /* bit i: group or entry i */
  int first[DW_SWAP_MAX_PARTS];    /* lowest of them */
  int n;
} lot;

_Static_assert(DW_MAX_HOLE_GROUPS <= DW_SWAP_MAX_PARTS && DW_MAX_SHIMS <= DW_SWAP_MAX_PARTS,
               "a lot holds every part of a damper");

/* @p kind is unique for what a builder could not tell apart. */
static void
lot_add (lot *l, int i, dw_part part)
{
  int at = 0;
  while (at < l->n && l->part[at].kind != part.kind)
    at++;
  if (at < l->n)
    {
      l->part[at].count += part.count;
      l->set[at] |= 1U << i;
      return;
    }
  l->part[at] = part;
  l->set[at] = 1U << i;
  l->first[at] = i;
  l->n++;
}

static bool
same_hole (const dw_holes *p, const dw_holes *q)
{
  return p->diameter == q->diameter && p->covered == q->covered;
}

static bool
same_leaf (const dw_shim *p, const dw_shim *q)
{
  return p->thickness == q->thickness && p->modulus == q->modulus && p->poisson == q->poisson
         && p->strength == q->strength;
}

/* The kind of a hole is the first group that has one like it; those of b count behind a's. */
static int
kind_of_hole (const search *s, const dw_holes *hole)
{
  const dw_piston *pistons[] = { &s->a->piston, &s->b->piston };
  int kind = 0;
  for (int k = 0; k < 2; k++)
    for (int i = 0; i < pistons[k]->n_holes; i++, kind++)
      if (same_hole (&pistons[k]->holes[i], hole))
        return kind;
  return kind;
}

static int
kind_of_leaf (const search *s, const dw_shim *shim)
{
  const dw_valve *valves[] = { &s->a->valve, &s->b->valve };
  int kind = 0;
  for (int k = 0; k < 2; k++)
    for (int i = 0; i < valves[k]->n_shims; i++, kind++)
      if (same_leaf (&valves[k]->shims[i], shim))
        return kind;
  return kind;
}

static lot
lot_of_holes (const search *s, const dw_piston *piston)
{
  lot l = { .n = 0 };
  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *h = &piston->holes[i];
      lot_add (&l, i, (dw_part){ kind_of_hole (s, h), h->covered, h->diameter, h->count });
    }
  return l;
}

static lot
lot_of_shims (const search *s, const dw_valve *valve)
{
  lot l = { .n = 0 };
  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *shim = &valve->shims[i];
      lot_add (&l, i, (dw_part){ kind_of_leaf (s, shim), 0, shim->thickness, shim->count });
    }
  return l;
}

/* How many parts like one of these there are in a lot. */
static int
count_in (const lot *l, int kind)
{
  for (int i = 0; i < l->n; i++)
    if (l->part[i].kind == kind)
      return l->part[i].count;
  return 0;
}

/* What holes and shims have in common; the caller adds path and numbers of a swap. */
static dw_difference
difference_of (const dw_swap *swap, const lot *a, const lot *b, const char *count_path)
{
  dw_difference d = { .kind = DW_DIFFERENCE_CHANGED,
                      .path = count_path,
                      .index = swap->from >= 0 ? a->first[swap->from] : b->first[swap->to],
                      .before = NAN,
                      .after = NAN,
                      .n_before = swap->n_from,
                      .n_after = swap->n_to,
                      .before_set = swap->from >= 0 ? a->set[swap->from] : 0U,
                      .after_set = swap->to >= 0 ? b->set[swap->to] : 0U };
  if (swap->from < 0 || swap->to < 0)
    {
      const int kind = swap->from >= 0 ? a->part[swap->from].kind : b->part[swap->to].kind;
      d.kind = swap->from < 0 ? DW_DIFFERENCE_ADDED : DW_DIFFERENCE_REMOVED;
      d.before = count_in (a, kind);
      d.after = count_in (b, kind);
    }
  return d;
}

static void
find_holes (search *s)
{
  const lot a = lot_of_holes (s, &s->a->piston);
  const lot b = lot_of_holes (s, &s->b->piston);
  dw_swap swaps[2 * DW_SWAP_MAX_PARTS];
  const size_t n = dw_swap_find (a.part, a.n, b.part, b.n, swaps);

  for (size_t i = 0; i < n; i++)
    {
      dw_difference d = difference_of (&swaps[i], &a, &b, "piston.holes.count");
      d.acts = true;
      if (d.kind == DW_DIFFERENCE_CHANGED)
        {
          const dw_part *p = &a.part[swaps[i].from];
          const dw_part *q = &b.part[swaps[i].to];
          const bool drilled = p->side == q->side && d.n_before == d.n_after;
          d.path = p->side != q->side ? "piston.holes.covered"
                   : drilled          ? "piston.holes.diameter"
                                      : "piston.holes";
          if (drilled)
            {
              d.before = p->size;
              d.after = q->size;
            }
        }
      add (s, d);
    }
}

/* The one number that is another in two shims: its path and values. Several: "valve.shim". */
static void
name_shim_change (dw_difference *d, const dw_shim *p, const dw_shim *q)
{
  const struct
  {
    const char *path;
    double before;
    double after;
  } rows[] = {
    { "valve.shim.thickness", p->thickness, q->thickness },
    { "valve.shim.count", d->n_before, d->n_after },
    { "valve.shim.modulus", p->modulus, q->modulus },
    { "valve.shim.poisson", p->poisson, q->poisson },
    { "valve.shim.strength", p->strength, q->strength },
  };
  int n = 0;
  for (size_t i = 0; i < N_ROWS (rows); i++)
    if (rows[i].before != rows[i].after)
      {
        d->path = rows[i].path;
        d->before = rows[i].before;
        d->after = rows[i].after;
        n++;
      }
  if (n == 1)
    return;
  d->path = "valve.shim";
  d->before = NAN;
  d->after = NAN;
}

/* Leaf @p k of a stack, counted from the piston; NULL past the last. */
static const dw_shim *
leaf_at (const dw_valve *valve, int k)
{
  for (int i = 0; i < valve->n_shims; i++)
    {
      if (k < valve->shims[i].count)
        return &valve->shims[i];
      k -= valve->shims[i].count;
    }
  return NULL;
}

static bool
same_order (const dw_valve *p, const dw_valve *q)
{
  const int n = dw_valve_leaf_count (p);
  for (int k = 0; k < n; k++)
    if (!same_leaf (leaf_at (p, k), leaf_at (q, k)))
      return false;
  return true;
}

/* The same leaves, laid otherwise. Leaves that slide freely share the load in any order. */
static void
find_order (search *s, bool at_work)
{
  const dw_valve *p = &s->a->valve;
  const dw_valve *q = &s->b->valve;
  if (same_order (p, q))
    return;
  add (s, (dw_difference){ .kind = DW_DIFFERENCE_ORDER,
                           .path = "valve.shim",
                           .before = NAN,
                           .after = NAN,
                           .n_before = dw_valve_leaf_count (p),
                           .n_after = dw_valve_leaf_count (q),
                           .before_set = (1U << p->n_shims) - 1U,
                           .after_set = (1U << q->n_shims) - 1U,
                           .acts = at_work && (p->leaf_coupling > 0.0 || q->leaf_coupling > 0.0) });
}

static void
find_shims (search *s)
{
  const bool at_work = dw_piston_has_covered (&s->a->piston)
                       || dw_piston_has_covered (&s->b->piston);
  const lot a = lot_of_shims (s, &s->a->valve);
  const lot b = lot_of_shims (s, &s->b->valve);
  dw_swap swaps[2 * DW_SWAP_MAX_PARTS];
  const size_t n = dw_swap_find (a.part, a.n, b.part, b.n, swaps);

  for (size_t i = 0; i < n; i++)
    {
      dw_difference d = difference_of (&swaps[i], &a, &b, "valve.shim.count");
      if (d.kind == DW_DIFFERENCE_CHANGED)
        name_shim_change (&d, &s->a->valve.shims[a.first[swaps[i].from]],
                          &s->b->valve.shims[b.first[swaps[i].to]]);
      d.acts = at_work && strcmp (d.path, "valve.shim.strength") != 0;
      add (s, d);
    }
  if (n == 0)
    find_order (s, at_work);
}

/* ---- oil, gas, spring ---- */

/* Asks dw_damper_equal(), so that the two never disagree on what an oil is. */
static void
find_oil (search *s)
{
  const dw_oil *p = &s->a->oil;
  const dw_oil *q = &s->b->oil;
  if (dw_oil_equal (p, q))
    return;

  dw_difference d = { .kind = DW_DIFFERENCE_CHANGED,
                      .path = "oil",
                      .index = -1,
                      .before = NAN,
                      .after = NAN,
                      .acts = true };
  dw_oil poured = *p;
  poured.viscosity = q->viscosity;
  if (p->kind == DW_OIL_NOMINAL && dw_oil_equal (&poured, q))
    {
      d.path = "oil.viscosity";
      d.before = p->viscosity;
      d.after = q->viscosity;
    }
  add (s, d);
}

static void
find_gas (search *s)
{
  const dw_gas_kind kind = s->a->gas.kind;
  if (kind != s->b->gas.kind)
    add (s, (dw_difference){ .kind = DW_DIFFERENCE_CHOICE,
                             .path = "gas.kind",
                             .index = -1,
                             .before = NAN,
                             .after = NAN,
                             .acts = true });
  else
    /* the outside air has no volume */
    find_numbers (s, of_gas, kind == DW_GAS_VENTED ? 1 : N_ROWS (of_gas));
}

static void
find_spring (search *s)
{
  const dw_spring *p = &s->a->spring;
  const dw_spring *q = &s->b->spring;
  if (p->rate != q->rate && p->free_length != q->free_length)
    add (s, (dw_difference){ .kind = DW_DIFFERENCE_CHANGED,
                             .path = "spring",
                             .index = -1,
                             .before = NAN,
                             .after = NAN });
  else
    find_numbers (s, of_spring, N_ROWS (of_spring));
}

static void
find_opens_on (search *s)
{
  if (s->a->valve.opens_on == s->b->valve.opens_on)
    return;
  add (s, (dw_difference){ .kind = DW_DIFFERENCE_CHOICE,
                           .path = "valve.opens-on",
                           .index = -1,
                           .before = NAN,
                           .after = NAN,
                           .acts = has_shim_at_work (s->a) || has_shim_at_work (s->b) });
}

size_t
dw_difference_find (const dw_damper *a, const dw_damper *b, dw_difference *out, size_t capacity)
{
  assert (a != NULL && b != NULL && (out != NULL || capacity == 0));

  search s = { .a = a, .b = b, .out = out, .capacity = capacity };
  find_numbers (&s, before_holes, N_ROWS (before_holes));
  find_holes (&s);
  find_opens_on (&s);
  find_numbers (&s, before_shims, N_ROWS (before_shims));
  find_shims (&s);
  find_oil (&s);
  find_gas (&s);
  find_numbers (&s, of_seal, N_ROWS (of_seal));
  find_spring (&s);
  find_numbers (&s, after_spring, N_ROWS (after_spring));
  return s.n;
}

size_t
dw_difference_count_acting (const dw_difference *differences, size_t n)
{
  size_t n_acting = 0;
  for (size_t i = 0; i < n; i++)
    n_acting += differences[i].acts ? 1 : 0;
  return n_acting;
}
