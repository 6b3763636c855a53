/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-ladder.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "model/dw-drill.h"
#include "model/dw-limits.h"

/* [m] Washers that differ by no more are alike. */
static const double SAME = DW_DRILL_SAME;

/* Progress is told after so many stacks: some milliseconds. */
#define PACE 32

/* What is being climbed. */
typedef struct
{
  const dw_damper *damper;
  const dw_valve *fitted; /* NULL = its leaves do not fit this valve */
  const dw_ladder_options *options;
  dw_shim
      *kinds; /* leaves that differ, thickest first; count is how many one damper may have; owned */
  int n_kinds;
  dw_ladder *ladder; /* owned until it is given away */
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

/* How many there are of this leaf so far. */
static int *
count_of (climb *c, const dw_shim *shim)
{
  for (int i = 0; i < c->n_kinds; i++)
    if (is_same_leaf (&c->kinds[i], shim))
      return &c->kinds[i].count;
  dw_shim *kind = &c->kinds[c->n_kinds++];
  *kind = *shim;
  kind->count = 0;
  return &kind->count;
}

static int
thickest_first (const void *a, const void *b)
{
  const dw_shim *p = a;
  const dw_shim *q = b;
  const double left[] = { p->thickness, p->modulus, p->poisson, p->strength };
  const double right[] = { q->thickness, q->modulus, q->poisson, q->strength };
  for (int i = 0; i < 4; i++)
    if (left[i] != right[i])
      return left[i] > right[i] ? -1 : 1;
  return 0;
}

/* What the box has is shared by the dampers that are built alike; what is in each stack is there. */
static bool
collect (climb *c)
{
  const dw_ladder_options *o = c->options;
  c->kinds = calloc ((size_t)o->n_box + DW_MAX_SHIMS, sizeof *c->kinds);
  if (c->kinds == NULL)
    return false;
  for (int i = 0; i < o->n_box; i++)
    *count_of (c, &o->box[i]) += o->box[i].count;
  for (int i = 0; i < c->n_kinds; i++)
    c->kinds[i].count /= o->dampers;
  for (int i = 0; c->fitted != NULL && i < c->fitted->n_shims; i++)
    *count_of (c, &c->fitted->shims[i]) += c->fitted->shims[i].count;
  qsort (c->kinds, (size_t)c->n_kinds, sizeof *c->kinds, thickest_first);
  return true;
}

/* ---- stacks ---- */

static bool
has_room (climb *c)
{
  const size_t room = c->room == 0 ? 64 : 2 * c->room;
  if (c->ladder->n < c->room)
    return true;
  dw_ladder_rung *rungs = realloc (c->ladder->rungs, room * sizeof *rungs);
  c->out_of_memory = rungs == NULL;
  if (rungs == NULL)
    return false;
  c->ladder->rungs = rungs;
  c->room = room;
  return true;
}

static bool
add_rung (climb *c, const dw_ladder_rung *rung)
{
  dw_ladder *ladder = c->ladder;
  ladder->is_cut = ladder->is_cut || ladder->n == DW_LADDER_MAX_STACKS;
  if (ladder->is_cut || !has_room (c))
    return false;
  ladder->rungs[ladder->n++] = *rung;
  return true;
}

/* All ways to take @p left leaves more of kind @p i and those after it; false when it has to end. */
static bool
add_stacks (climb *c, int i, int left, dw_ladder_rung *rung)
{
  if (left == 0)
    return add_rung (c, rung);
  if (i == c->n_kinds)
    return true;
  const int most = c->kinds[i].count < left ? c->kinds[i].count : left;
  for (int n = most; n > 0; n--)
    {
      rung->shims[rung->n_shims] = c->kinds[i];
      rung->shims[rung->n_shims++].count = n;
      const bool goes_on = add_stacks (c, i + 1, left - n, rung);
      rung->n_shims--;
      if (!goes_on)
        return false;
    }
  return add_stacks (c, i + 1, left, rung);
}

/* A height is there whole or not at all, so that it can be said what is missing. */
static void
enumerate (climb *c)
{
  dw_ladder *ladder = c->ladder;
  for (int leaves = 1; leaves <= c->options->most_leaves; leaves++)
    {
      const size_t n = ladder->n;
      dw_ladder_rung rung = { .leaves = leaves };
      if (!add_stacks (c, 0, leaves, &rung))
        {
          ladder->n = n;
          return;
        }
      ladder->most_leaves = leaves;
    }
}

/* How many leaves of this kind there are in a valve. */
static int
count_in (const dw_valve *valve, const dw_shim *shim)
{
  int n = 0;
  for (int i = 0; i < valve->n_shims; i++)
    if (is_same_leaf (&valve->shims[i], shim))
      n += valve->shims[i].count;
  return n;
}

/* The same leaves, whatever their order and their entries. */
static bool
is_same_stack (const dw_ladder_rung *rung, const dw_valve *valve)
{
  dw_valve own;
  dw_ladder_apply (rung, &own);
  if (rung->leaves != dw_valve_leaf_count (valve))
    return false;
  for (int i = 0; i < rung->n_shims; i++)
    if (count_in (&own, &rung->shims[i]) != count_in (valve, &rung->shims[i]))
      return false;
  return true;
}

static bool
can_be_built (climb *c, const dw_valve *valve)
{
  for (int i = 0; i < valve->n_shims; i++)
    {
      int have = 0;
      for (int k = 0; k < c->n_kinds; k++)
        if (is_same_leaf (&c->kinds[k], &valve->shims[i]))
          have = c->kinds[k].count;
      if (have < count_in (valve, &valve->shims[i]))
        return false;
    }
  return valve->n_shims > 0;
}

/* A stack that is there already, with its leaves as they lie. */
static void
add_present (climb *c, const dw_valve *valve)
{
  dw_ladder *ladder = c->ladder;
  size_t at = 0;
  if (!can_be_built (c, valve))
    return;
  while (at < ladder->n && !is_same_stack (&ladder->rungs[at], valve))
    at++;
  if (at == ladder->n && !has_room (c))
    return;
  dw_ladder_rung rung = { .n_shims = valve->n_shims, .leaves = dw_valve_leaf_count (valve) };
  for (int i = 0; i < valve->n_shims; i++)
    rung.shims[i] = valve->shims[i];
  ladder->rungs[at] = rung;
  ladder->n += at == ladder->n ? 1 : 0;
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

/* Only the stroke that opens it. */
static dw_status
read_opening (const climb *c, const dw_damper *damper, double out[DW_N_SPEEDS], dw_error *err)
{
  dw_force_model model;
  dw_force_point points[DW_N_SPEEDS];
  dw_status status = dw_force_model_make (damper, c->options->temperature, &model, err);
  if (status == DW_OK)
    status = dw_force_curve (&model, damper->valve.opens_on, c->options->speeds, DW_N_SPEEDS,
                             points, err);
  for (int i = 0; i < DW_N_SPEEDS && status == DW_OK; i++)
    out[i] = points[i].force;
  return status;
}

static dw_status
read_bound (const climb *c, const dw_damper *damper, dw_leaf_bound bound, dw_ladder_rung *rung,
            dw_error *err)
{
  const double coupling = bound == DW_LEAVES_STICK ? 1.0 : 0.0;
  /* one leaf is its own bound, and so is a coupling that is one */
  if (rung->leaves == 1 || damper->valve.leaf_coupling == coupling)
    {
      read_forces (&rung->figures, damper->valve.opens_on, rung->force[bound]);
      return DW_OK;
    }
  dw_damper bounded = *damper;
  bounded.valve.leaf_coupling = coupling;
  return read_opening (c, &bounded, rung->force[bound], err);
}

/* Leaves of one material that stick are the leaf that the habit thinks of. */
static dw_status
read_habit (const climb *c, const dw_damper *damper, dw_ladder_rung *rung, dw_error *err)
{
  dw_damper single = *damper;
  dw_shim *leaf = &single.valve.shims[0];
  bool is_one_material = true;
  for (int i = 1; i < rung->n_shims; i++)
    is_one_material = is_one_material && rung->shims[i].modulus == leaf->modulus
                      && rung->shims[i].poisson == leaf->poisson;
  if (is_one_material)
    {
      memcpy (rung->habit, rung->force[DW_LEAVES_STICK], sizeof rung->habit);
      return DW_OK;
    }
  single.valve.n_shims = 1;
  leaf->count = 1;
  leaf->thickness = fmin (rung->added, dw_limit_get (DW_LIMIT_SHIM_THICKNESS)->high);
  return read_opening (c, &single, rung->habit, err);
}

static dw_status
fill_rung (const climb *c, dw_ladder_rung *rung, dw_error *err)
{
  dw_damper damper = *c->damper;
  dw_ladder_apply (rung, &damper.valve);
  const dw_stack stack = dw_stack_make (&damper.valve);
  const dw_shim *first = &rung->shims[0];
  const double bounds[DW_N_LEAF_BOUNDS] = { stack.loose, stack.stuck };
  rung->stiffness = stack.stiffness;
  rung->added = stack.thickness;
  rung->is_fitted = c->fitted != NULL && is_same_stack (rung, c->fitted);
  rung->is_own = is_same_stack (rung, &c->damper->valve);

  dw_status status = read_figures (c, &damper, &rung->figures, err);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS && status == DW_OK; bound++)
    {
      rung->single[bound] = dw_stack_equivalent_thickness (bounds[bound], first->modulus,
                                                           first->poisson);
      status = read_bound (c, &damper, (dw_leaf_bound)bound, rung, err);
    }
  if (status == DW_OK)
    status = read_habit (c, &damper, rung, err);
  if (status == DW_OK)
    rung->at_stop = rung->figures.point[damper.valve.opens_on][DW_HIGH].at_stop;
  return status;
}

/* ---- references, verdicts, groups ---- */

static bool
is_within (double force, double reference)
{
  return fabs (force - reference) <= DW_LADDER_SAME / 100.0 * fabs (reference);
}

/* The ends of every ladder, and what is left without one. A shim that never lifts keeps what its seat
 * leaks, as the stiffest stack does. */
static dw_status
read_references (const climb *c, dw_error *err)
{
  dw_ladder *ladder = c->ladder;
  dw_damper shut = *c->damper;
  dw_ladder_apply (&ladder->rungs[0], &shut.valve);
  dw_damper soft = shut;
  dw_damper bare = *c->damper;
  shut.valve.lift_limit = 0.0;
  soft.valve.n_shims = 1;
  soft.valve.shims[0].count = 1;
  soft.valve.shims[0].thickness = dw_limit_get (DW_LIMIT_SHIM_THICKNESS)->low;
  soft.valve.shims[0].modulus = dw_limit_get (DW_LIMIT_MODULUS)->low;
  bare.valve.n_shims = 0;

  dw_status status = read_opening (c, &shut, ladder->plain, err);
  if (status == DW_OK)
    status = read_opening (c, &soft, ladder->soft, err);
  return status == DW_OK ? read_opening (c, &bare, ladder->holes, err) : status;
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

static void
judge (const dw_ladder *ladder, const double force[DW_N_SPEEDS], dw_ladder_rung *rung)
{
  for (int i = 0; i < DW_N_SPEEDS; i++)
    rung->verdict_at[i] = is_within (force[i], ladder->plain[i])  ? DW_LADDER_PLAIN
                          : is_within (force[i], ladder->soft[i]) ? DW_LADDER_HOLES
                                                                  : DW_LADDER_SHIM;
  rung->verdict = rung->verdict_at[0];
  for (int i = 1; i < DW_N_SPEEDS; i++)
    if (rung->verdict_at[i] != rung->verdict)
      rung->verdict = DW_LADDER_SHIM;
}

static bool
is_same (const double a[DW_N_SPEEDS], const double b[DW_N_SPEEDS])
{
  for (int i = 0; i < DW_N_SPEEDS; i++)
    if (!is_within (a[i], b[i]))
      return false;
  return true;
}

/* Which do the same: each is held against the softest of its group, so that a group is no chain. */
static void
group_rungs (const climb *c)
{
  dw_ladder *ladder = c->ladder;
  double first[DW_N_SPEEDS] = { 0.0 };
  for (size_t i = 0; i < ladder->n; i++)
    {
      dw_ladder_rung *rung = &ladder->rungs[i];
      double force[DW_N_SPEEDS];
      read_forces (&rung->figures, c->damper->valve.opens_on, force);
      if (i == 0 || !is_same (force, first))
        {
          ladder->n_groups++;
          memcpy (first, force, sizeof first);
        }
      rung->group = ladder->n_groups - 1;
      judge (ladder, force, rung);
    }
}

/* ---- all of it ---- */

/* The stack in the car, when its leaves fit the damper. */
static const dw_valve *
fitted_valve (const dw_damper *damper, const dw_ladder_options *options)
{
  const dw_valve *own = &damper->valve;
  const dw_valve *fitted = options->fitted;
  if (fitted == NULL)
    return own;
  return fabs (fitted->hub_diameter - own->hub_diameter) <= SAME
                 && fabs (fitted->outer_diameter - own->outer_diameter) <= SAME
             ? fitted
             : NULL;
}

static dw_status
stack_up (climb *c, dw_error *err)
{
  if (collect (c))
    {
      enumerate (c);
      if (c->fitted != NULL)
        add_present (c, c->fitted);
      add_present (c, &c->damper->valve);
    }
  else
    c->out_of_memory = true;
  if (c->out_of_memory)
    return dw_fail (err, DW_ERR_NO_MEMORY, "valve.shim", -1, "out of memory");
  if (c->ladder->n == 0)
    return dw_fail (err, DW_ERR_RANGE, "valve.shim", -1,
                    "no stack can be built: the parts box needs a shim for each damper");
  return DW_OK;
}

static dw_status
fill (climb *c, bool (*keep_going) (void *data, double progress), void *data, dw_error *err)
{
  dw_ladder *ladder = c->ladder;
  dw_status status = read_references (c, err);
  for (size_t i = 0; i < ladder->n && status == DW_OK; i++)
    {
      if (i % PACE == 0 && keep_going != NULL && !keep_going (data, (double)i / (double)ladder->n))
        return dw_fail (err, DW_ERR_CANCELLED, "valve.shim", -1, "stopped");
      status = fill_rung (c, &ladder->rungs[i], err);
    }
  if (status != DW_OK)
    return status;
  qsort (ladder->rungs, ladder->n, sizeof *ladder->rungs, softest_first);
  group_rungs (c);
  return DW_OK;
}

dw_status
dw_ladder_make (const dw_damper *damper, const dw_ladder_options *options,
                bool (*keep_going) (void *data, double progress), void *data, dw_ladder **out,
                dw_error *err)
{
  assert (damper != NULL && options != NULL && out != NULL);
  assert (options->dampers > 0 && options->most_leaves > 0);
  assert (options->most_leaves <= DW_LADDER_MAX_LEAVES);

  climb c = { .damper = damper, .options = options, .fitted = fitted_valve (damper, options) };
  if (!dw_piston_has_covered (&damper->piston))
    return dw_fail (err, DW_ERR_GEOMETRY, "piston.holes", -1,
                    "no hole is covered: a stack would do nothing");
  c.ladder = calloc (1, sizeof *c.ladder);
  dw_status status = c.ladder == NULL
                         ? dw_fail (err, DW_ERR_NO_MEMORY, "valve.shim", -1, "out of memory")
                         : stack_up (&c, err);
  if (status == DW_OK)
    status = fill (&c, keep_going, data, err);
  free (c.kinds);
  if (status == DW_OK)
    *out = c.ladder;
  else
    dw_ladder_free (c.ladder);
  return status;
}
