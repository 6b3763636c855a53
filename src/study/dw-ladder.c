/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-ladder.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Entries of the box that differ; more than a stack has of entries is of no use at a time, but any of
 * them may be chosen. */
#define MAX_KINDS 64

/* Progress is told after so many stacks. */
#define PACE 64

/* Equal leaves. */
typedef struct
{
  dw_shim shim; /* its count is how many one damper may have */
} kind;

/* What is being climbed. */
typedef struct
{
  const dw_damper *damper;
  const dw_ladder_options *options;
  kind kinds[MAX_KINDS]; /* thickest first */
  int n_kinds;
  dw_ladder *ladder;
  size_t room;
  bool out_of_memory;
} climb;

dw_ladder_options
dw_ladder_options_defaults (const dw_shim *box, int n_box, double temperature, const double *speeds)
{
  return (dw_ladder_options){ .box = box,
                              .n_box = n_box,
                              .most_leaves = 3,
                              .dampers = 2,
                              .temperature = temperature,
                              .speeds = speeds };
}

void
dw_ladder_free (dw_ladder *ladder)
{
  if (ladder == NULL)
    return;
  free (ladder->rungs);
  free (ladder);
}

void
dw_ladder_apply (const dw_ladder_rung *rung, dw_valve *valve)
{
  valve->n_shims = rung->n_shims;
  for (int i = 0; i < rung->n_shims; i++)
    valve->shims[i] = rung->shims[i];
}

/* ---- leaves at hand ---- */

static bool
is_same_leaf (const dw_shim *a, const dw_shim *b)
{
  return a->thickness == b->thickness && a->modulus == b->modulus && a->poisson == b->poisson
         && a->strength == b->strength;
}

/* @return  how many there are of this leaf now; 0 when there is no room for one kind more */
static int *
count_of (climb *c, const dw_shim *shim)
{
  for (int i = 0; i < c->n_kinds; i++)
    if (is_same_leaf (&c->kinds[i].shim, shim))
      return &c->kinds[i].shim.count;
  if (c->n_kinds == MAX_KINDS)
    return NULL;
  kind *k = &c->kinds[c->n_kinds++];
  k->shim = *shim;
  k->shim.count = 0;
  return &k->shim.count;
}

static int
thickest_first (const void *a, const void *b)
{
  const dw_shim *p = &((const kind *)a)->shim;
  const dw_shim *q = &((const kind *)b)->shim;
  const double left[] = { p->thickness, p->modulus, p->poisson, p->strength };
  const double right[] = { q->thickness, q->modulus, q->poisson, q->strength };
  for (int i = 0; i < 4; i++)
    if (left[i] != right[i])
      return left[i] > right[i] ? -1 : 1;
  return 0;
}

/* What the box has is shared by the dampers that are built alike; what is in the stack is there. */
static void
collect (climb *c)
{
  const dw_ladder_options *o = c->options;
  const dw_valve *valve = &c->damper->valve;
  for (int i = 0; i < o->n_box; i++)
    {
      int *count = count_of (c, &o->box[i]);
      if (count != NULL)
        *count += o->box[i].count;
    }
  for (int i = 0; i < c->n_kinds; i++)
    c->kinds[i].shim.count /= o->dampers;
  for (int i = 0; i < valve->n_shims; i++)
    {
      int *count = count_of (c, &valve->shims[i]);
      if (count != NULL)
        *count += valve->shims[i].count;
    }
  qsort (c->kinds, (size_t)c->n_kinds, sizeof *c->kinds, thickest_first);
}

/* ---- stacks ---- */

static bool
add_rung (climb *c, const dw_ladder_rung *rung)
{
  dw_ladder *ladder = c->ladder;
  if (ladder->n == DW_LADDER_MAX_STACKS)
    {
      ladder->is_cut = true;
      return false;
    }
  if (ladder->n == c->room)
    {
      const size_t room = c->room == 0 ? 64 : 2 * c->room;
      dw_ladder_rung *rungs = realloc (ladder->rungs, room * sizeof *rungs);
      if (rungs == NULL)
        {
          c->out_of_memory = true;
          return false;
        }
      ladder->rungs = rungs;
      c->room = room;
    }
  ladder->rungs[ladder->n++] = *rung;
  return true;
}

/* All ways to take @p left leaves more of kind @p i and those after it; false when no more fit. */
static bool
add_stacks (climb *c, int i, int left, dw_ladder_rung *rung)
{
  if (left == 0)
    return add_rung (c, rung);
  if (i == c->n_kinds)
    return true;
  const int most = c->kinds[i].shim.count < left ? c->kinds[i].shim.count : left;
  for (int n = most; n >= 0; n--)
    {
      if (n > 0 && rung->n_shims == DW_MAX_SHIMS)
        continue;
      if (n > 0)
        {
          rung->shims[rung->n_shims] = c->kinds[i].shim;
          rung->shims[rung->n_shims++].count = n;
        }
      const bool goes_on = add_stacks (c, i + 1, left - n, rung);
      rung->n_shims -= n > 0 ? 1 : 0;
      if (!goes_on)
        return false;
    }
  return true;
}

/* Few leaves first, so that a ladder that is cut has lost the tall ones. */
static void
enumerate (climb *c)
{
  for (int leaves = 1; leaves <= c->options->most_leaves; leaves++)
    {
      dw_ladder_rung rung = { .leaves = leaves };
      if (!add_stacks (c, 0, leaves, &rung))
        return;
    }
}

/* The same leaves, whatever their order and their entries. */
static bool
is_same_stack (const dw_ladder_rung *rung, const dw_valve *valve)
{
  int left[DW_MAX_SHIMS];
  int unmatched = dw_valve_leaf_count (valve);
  if (rung->leaves != unmatched)
    return false;
  for (int i = 0; i < rung->n_shims; i++)
    {
      left[i] = rung->shims[i].count;
      for (int k = 0; k < valve->n_shims; k++)
        if (is_same_leaf (&rung->shims[i], &valve->shims[k]))
          {
            left[i] -= valve->shims[k].count;
            unmatched -= valve->shims[k].count;
          }
      if (left[i] != 0)
        return false;
    }
  return unmatched == 0;
}

/* ---- what a stack does ---- */

static dw_status
read_figures (const climb *c, const dw_damper *damper, dw_figures *out, dw_error *err)
{
  dw_force_model model;
  const dw_status status = dw_force_model_make (damper, c->options->temperature, &model, err);
  return status == DW_OK ? dw_figures_read (&model, c->options->speeds, out, err) : status;
}

static void
read_forces (const dw_figures *figures, dw_stroke stroke, double out[DW_N_SPEEDS])
{
  for (int i = 0; i < DW_N_SPEEDS; i++)
    out[i] = figures->point[stroke][i].force;
}

static dw_status
read_bound (const climb *c, dw_damper *damper, dw_leaf_bound bound, dw_ladder_rung *rung,
            dw_error *err)
{
  const double coupling = bound == DW_LEAVES_STICK ? 1.0 : 0.0;
  dw_figures figures = rung->figures;
  dw_status status = DW_OK;
  /* one leaf is its own bound, and so is a coupling that is one */
  if (rung->leaves > 1 && c->damper->valve.leaf_coupling != coupling)
    {
      damper->valve.leaf_coupling = coupling;
      status = read_figures (c, damper, &figures, err);
    }
  if (status == DW_OK)
    read_forces (&figures, damper->valve.opens_on, rung->force[bound]);
  return status;
}

static dw_status
fill_rung (const climb *c, dw_ladder_rung *rung, dw_error *err)
{
  dw_damper damper = *c->damper;
  dw_ladder_apply (rung, &damper.valve);
  const dw_stack stack = dw_stack_make (&damper.valve);
  const dw_shim *first = &rung->shims[0];
  rung->stiffness = stack.stiffness;
  rung->single[DW_LEAVES_SLIDE] = dw_stack_equivalent_thickness (stack.loose, first->modulus,
                                                                 first->poisson);
  rung->single[DW_LEAVES_STICK] = dw_stack_equivalent_thickness (stack.stuck, first->modulus,
                                                                 first->poisson);
  rung->added = stack.thickness;
  rung->is_fitted = is_same_stack (rung, &c->damper->valve);

  dw_status status = read_figures (c, &damper, &rung->figures, err);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS && status == DW_OK; bound++)
    status = read_bound (c, &damper, (dw_leaf_bound)bound, rung, err);
  rung->at_stop = rung->figures.point[damper.valve.opens_on][DW_HIGH].at_stop;
  return status;
}

/* ---- references, verdicts, groups ---- */

static bool
is_within (const double a[DW_N_SPEEDS], const double b[DW_N_SPEEDS])
{
  for (int i = 0; i < DW_N_SPEEDS; i++)
    if (!(fabs (a[i] - b[i]) <= DW_LADDER_SAME / 100.0 * fabs (b[i])))
      return false;
  return true;
}

/* Shut for good: as if they had not been drilled. A piston that has no other way through keeps what
 * is never reached. */
static void
read_plain (const climb *c, double out[DW_N_SPEEDS])
{
  dw_damper damper = *c->damper;
  dw_figures figures;
  damper.piston.n_holes = 0;
  for (int i = 0; i < c->damper->piston.n_holes; i++)
    if (!c->damper->piston.holes[i].covered)
      damper.piston.holes[damper.piston.n_holes++] = c->damper->piston.holes[i];
  const dw_status status = read_figures (c, &damper, &figures, NULL);
  for (int i = 0; i < DW_N_SPEEDS; i++)
    out[i] = HUGE_VAL;
  if (status == DW_OK)
    read_forces (&figures, damper.valve.opens_on, out);
}

static dw_status
read_holes (const climb *c, double out[DW_N_SPEEDS], dw_error *err)
{
  dw_damper damper = *c->damper;
  dw_figures figures;
  damper.valve.n_shims = 0;
  const dw_status status = read_figures (c, &damper, &figures, err);
  if (status == DW_OK)
    read_forces (&figures, damper.valve.opens_on, out);
  return status;
}

static int
softest_first (const void *a, const void *b)
{
  const dw_ladder_rung *p = a;
  const dw_ladder_rung *q = b;
  if (p->stiffness != q->stiffness)
    return p->stiffness < q->stiffness ? -1 : 1;
  if (p->leaves != q->leaves)
    return p->leaves < q->leaves ? -1 : 1;
  /* as stiff and as many: the thicker leaf first, so that the order never is chance */
  for (int i = 0; i < p->n_shims && i < q->n_shims; i++)
    if (p->shims[i].thickness != q->shims[i].thickness)
      return p->shims[i].thickness > q->shims[i].thickness ? -1 : 1;
  return p->n_shims - q->n_shims;
}

/* Which do the same: each is held against the softest of its group, so that a group is no chain. */
static void
group_rungs (const climb *c)
{
  dw_ladder *ladder = c->ladder;
  const dw_stroke stroke = c->damper->valve.opens_on;
  double first[DW_N_SPEEDS] = { 0.0 };
  ladder->n_groups = 0;
  for (size_t i = 0; i < ladder->n; i++)
    {
      dw_ladder_rung *rung = &ladder->rungs[i];
      double force[DW_N_SPEEDS];
      read_forces (&rung->figures, stroke, force);
      if (i == 0 || !is_within (force, first))
        {
          ladder->n_groups++;
          memcpy (first, force, sizeof first);
        }
      rung->group = ladder->n_groups - 1;
      rung->verdict = is_within (force, ladder->plain)   ? DW_LADDER_PLAIN
                      : is_within (force, ladder->holes) ? DW_LADDER_HOLES
                                                         : DW_LADDER_SHIM;
    }
}

/* ---- all of it ---- */

static bool
has_covered_holes (const dw_piston *piston)
{
  for (int i = 0; i < piston->n_holes; i++)
    if (piston->holes[i].covered)
      return true;
  return false;
}

static dw_status
fill (climb *c, bool (*keep_going) (void *data, double progress), void *data, dw_error *err)
{
  dw_ladder *ladder = c->ladder;
  dw_status status = read_holes (c, ladder->holes, err);
  read_plain (c, ladder->plain);
  for (size_t i = 0; i < ladder->n && status == DW_OK; i++)
    {
      if (i % PACE == 0 && keep_going != NULL && !keep_going (data, (double)i / (double)ladder->n))
        return dw_fail (err, DW_ERR_CANCELLED, "valve.shim", -1, "stopped");
      status = fill_rung (c, &ladder->rungs[i], err);
    }
  return status;
}

dw_status
dw_ladder_make (const dw_damper *damper, const dw_ladder_options *options,
                bool (*keep_going) (void *data, double progress), void *data, dw_ladder **out,
                dw_error *err)
{
  climb c = { .damper = damper, .options = options };

  assert (damper != NULL && options != NULL && out != NULL && options->dampers > 0);

  if (!has_covered_holes (&damper->piston))
    return dw_fail (err, DW_ERR_GEOMETRY, "piston.holes", -1,
                    "no hole is covered: a stack would do nothing");
  c.ladder = calloc (1, sizeof *c.ladder);
  if (c.ladder == NULL)
    return dw_fail (err, DW_ERR_NO_MEMORY, "valve.shim", -1, "out of memory");
  collect (&c);
  enumerate (&c);
  dw_status status = DW_OK;
  if (c.out_of_memory)
    status = dw_fail (err, DW_ERR_NO_MEMORY, "valve.shim", -1, "out of memory");
  else if (c.ladder->n == 0)
    status = dw_fail (err, DW_ERR_RANGE, "valve.shim", -1,
                      "no stack can be built: the box needs %d of a shim", options->dampers);
  else
    status = fill (&c, keep_going, data, err);
  if (status != DW_OK)
    {
      dw_ladder_free (c.ladder);
      return status;
    }
  qsort (c.ladder->rungs, c.ladder->n, sizeof *c.ladder->rungs, softest_first);
  group_rungs (&c);
  *out = c.ladder;
  return DW_OK;
}
