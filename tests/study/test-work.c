/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-work.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "model/dw-drill.h"
#include "random-damper.h"
#include "study-dampers.h"
#include "test-support.h"

#define MM 1e-3

static const double box[] = { 0.8 * MM, 1.2 * MM, 1.3 * MM, 1.35 * MM, 1.4 * MM, 1.5 * MM };

/* ---- one change each: what there is to do ---- */

/* Built: four open holes of 1.5, two of 1.2, four covered of 1.1 mm, two sorts of shims, sealed gas. */
#define CHANGE(name, statement)                                                                    \
  static void name (dw_damper *d)                                                                  \
  {                                                                                                \
    statement;                                                                                     \
  }

CHANGE (nothing, (void)d)
CHANGE (drilled, d->piston.holes[1].diameter = 1.3 * MM)
CHANGE (smaller, d->piston.holes[1].diameter = 1.1 * MM)
CHANGE (one_more, d->piston.holes[1].count = 3)
CHANGE (one_less, d->piston.holes[1].count = 1)
CHANGE (other_groups, d->piston.holes[0].count = 1;
        d->piston.holes[3] = ((dw_holes){ 3, 1.5 * MM, false }); d->piston.n_holes = 4)
CHANGE (covered_now, d->piston.holes[1].covered = true)
CHANGE (shims_out_covered_now, d->piston.holes[1].covered = true; d->valve.n_shims = 0)
CHANGE (wider_shims_covered_now, d->piston.holes[1].covered = true; d->valve.outer_diameter += MM)
CHANGE (leaf_and_covered_now, d->piston.holes[1].covered = true; d->valve.shims[0].count = 2)
CHANGE (thicker_piston, d->piston.thickness += 0.5 * MM)
CHANGE (looser, d->piston.clearance += 0.01 * MM)
CHANGE (off_centre, d->piston.eccentricity = 0.5)
CHANGE (bore, d->body.bore += MM)
CHANGE (bore_of_the_same_piston, d->body.bore += 0.02 * MM; d->piston.clearance += 0.01 * MM)
CHANGE (rod, d->body.rod += 0.5 * MM)
CHANGE (stroke, d->body.stroke += MM)
CHANGE (circle, d->valve.hole_circle += 0.5 * MM)
CHANGE (circle_of_wider_shims, d->valve.hole_circle += 0.5 * MM; d->valve.outer_diameter += MM)
CHANGE (hub, d->valve.hub_diameter += 0.1 * MM)
CHANGE (lift, d->valve.lift_limit += 0.1 * MM)
CHANGE (preload, d->valve.preload += 1e3)
CHANGE (coupling, d->valve.leaf_coupling = 0.5)
CHANGE (other_stroke, d->valve.opens_on = DW_COMPRESSION)
CHANGE (more_leaves, d->valve.shims[0].count = 2)
CHANGE (shims_out, d->valve.n_shims = 0)
CHANGE (turned, const dw_shim s = d->valve.shims[0]; d->valve.shims[0] = d->valve.shims[1];
        d->valve.shims[1] = s)
CHANGE (oil, d->oil.viscosity *= 1.1)
CHANGE (thinning, d->oil.has_thinning = true; d->oil.thinning_rate = 1e4;
        d->oil.thinning_exponent = 0.9)
CHANGE (gas, d->gas.pressure *= 1.1)
CHANGE (gas_kind, d->gas.kind = DW_GAS_VENTED)
CHANGE (seal, d->seal_friction += 0.1)
CHANGE (spring, d->spring.rate *= 1.1; d->spring.free_length *= 1.1)
CHANGE (spring_preload, d->spring.preload += MM)
CHANGE (linkage, d->motion_ratio *= 1.1)

#define RESTACKS 1
#define OPENS    2
#define OIL      4

static const struct
{
  const char *why;
  void (*change) (dw_damper *);
  dw_work_piston piston;
  int n_drilled; /* holes */
  int flags;
  const char *other; /* path; NULL = none */
} rows[] = {
  { "nothing differs", nothing, DW_WORK_PISTON_KEEP, 0, 0, NULL },
  { "two of them larger", drilled, DW_WORK_PISTON_DRILL, 2, RESTACKS | OPENS, NULL },
  { "smaller ones need a new piston", smaller, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS, NULL },
  { "one more from solid", one_more, DW_WORK_PISTON_DRILL, 1, RESTACKS | OPENS, NULL },
  { "a hole does not go away", one_less, DW_WORK_PISTON_NEW, 9, RESTACKS | OPENS, NULL },
  { "the same holes in other groups", other_groups, DW_WORK_PISTON_KEEP, 0, 0, NULL },
  { "a covered hole is another place", covered_now, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS,
    NULL },
  { "without shims nothing is covered", shims_out_covered_now, DW_WORK_PISTON_KEEP, 0,
    RESTACKS | OPENS, NULL },
  { "wider shims may cover more", wider_shims_covered_now, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS,
    "valve.outer-diameter" },
  { "one more leaf covers no more", leaf_and_covered_now, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS,
    NULL },
  { "thickness is another piston", thicker_piston, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS,
    "piston.thickness" },
  { "clearance is another piston", looser, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS,
    "piston.clearance" },
  { "off centre is an assumption", off_centre, DW_WORK_PISTON_KEEP, 0, 0, "piston.eccentricity" },
  { "the piston fits its bore", bore, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS, "body.bore" },
  { "a worn bore keeps its piston", bore_of_the_same_piston, DW_WORK_PISTON_KEEP, 0, OPENS,
    "body.bore" },
  { "another shaft goes through the stack", rod, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS,
    "body.rod" },
  { "another body", stroke, DW_WORK_PISTON_KEEP, 0, OPENS, "body.stroke" },
  { "covered holes are on their circle", circle, DW_WORK_PISTON_NEW, 10, RESTACKS | OPENS,
    "valve.hole-circle" },
  { "a wider shim says anew which are covered", circle_of_wider_shims, DW_WORK_PISTON_KEEP, 0,
    RESTACKS | OPENS, "valve.outer-diameter" },
  { "another washer", hub, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, "valve.hub-diameter" },
  { "another stop washer", lift, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, "valve.lift-limit" },
  { "a dished shim", preload, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, "valve.preload" },
  { "how leaves stick is an assumption", coupling, DW_WORK_PISTON_KEEP, 0, 0,
    "valve.leaf-coupling" },
  { "the other way round", other_stroke, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS,
    "valve.opens-on" },
  { "one leaf more", more_leaves, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, NULL },
  { "no shims any more", shims_out, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, NULL },
  { "another order", turned, DW_WORK_PISTON_KEEP, 0, RESTACKS | OPENS, NULL },
  { "another oil", oil, DW_WORK_PISTON_KEEP, 0, OPENS | OIL, NULL },
  { "an oil that thins is another oil", thinning, DW_WORK_PISTON_KEEP, 0, OPENS | OIL, NULL },
  { "gas pressure", gas, DW_WORK_PISTON_KEEP, 0, OPENS, "gas.pressure" },
  { "another gas space", gas_kind, DW_WORK_PISTON_KEEP, 0, OPENS, "gas.kind" },
  { "another seal", seal, DW_WORK_PISTON_KEEP, 0, OPENS, "seal.friction" },
  { "a spring is changed from outside", spring, DW_WORK_PISTON_KEEP, 0, 0, "spring" },
  { "so is its preload", spring_preload, DW_WORK_PISTON_KEEP, 0, 0, "spring.preload" },
  { "and the linkage", linkage, DW_WORK_PISTON_KEEP, 0, 0, "linkage.motion-ratio" },
};

static int
count_drilled (const dw_work *work)
{
  int n = 0;
  for (int i = 0; i < work->n_holes; i++)
    n += work->holes[i].count;
  return n;
}

static bool
names_other (const dw_work *work, const char *path)
{
  for (size_t i = 0; i < work->n_others; i++)
    if (strcmp (work->others[i].path, path) == 0)
      return true;
  return false;
}

START_TEST (every_change_has_its_work)
{
  const dw_damper a = study_damper ();
  dw_damper b = a;
  dw_work work;
  rows[_i].change (&b);
  ck_assert_msg (dw_damper_check (&b, NULL, 0) == 0, "%s: no good damper", rows[_i].why);
  dw_work_find (&a, &b, NULL, 0, box, N_ENTRIES (box), &work);
  const int flags = (work.restacks ? RESTACKS : 0) | (work.opens ? OPENS : 0)
                    | (work.changes_oil ? OIL : 0);
  ck_assert_msg (work.piston == rows[_i].piston, "%s: piston %d", rows[_i].why, (int)work.piston);
  ck_assert_msg (count_drilled (&work) == rows[_i].n_drilled, "%s: %d holes", rows[_i].why,
                 count_drilled (&work));
  ck_assert_msg (flags == rows[_i].flags, "%s: flags %d", rows[_i].why, flags);
  ck_assert (work.refills == work.opens && work.spare == -1);
  if (rows[_i].other == NULL)
    ck_assert_msg (work.n_others == 0, "%s: %s", rows[_i].why, work.others[0].path);
  else
    ck_assert_msg (names_other (&work, rows[_i].other), "%s", rows[_i].why);
}
END_TEST

/* The same changes of a damper that has no shims: none of them is work on a stack. */
START_TEST (without_shims_there_is_nothing_to_stack)
{
  dw_damper a = study_damper ();
  dw_work work;
  a.valve.n_shims = 0;
  dw_damper b = a;
  rows[_i].change (&b);
  b.valve.n_shims = 0;
  dw_work_find (&a, &b, NULL, 0, box, N_ENTRIES (box), &work);
  ck_assert_msg (!work.restacks, "%s", rows[_i].why);
  if (rows[_i].other != NULL && strncmp (rows[_i].other, "valve.", 6) == 0)
    ck_assert_msg (!work.opens && work.piston == DW_WORK_PISTON_KEEP, "%s", rows[_i].why);
}
END_TEST

START_TEST (the_air_outside_is_not_work)
{
  dw_damper a = study_damper ();
  dw_work work;
  a.gas.kind = DW_GAS_VENTED;
  dw_damper b = a;
  b.gas.pressure = 90e3;
  dw_work_find (&a, &b, NULL, 0, NULL, 0, &work);
  ck_assert (work.n_others == 1 && !work.opens);
  ck_assert (dw_work_is_assumption (&work.others[0], &a, &b));
}
END_TEST

START_TEST (what_is_not_measured_any_more_is_not_work)
{
  dw_damper a = study_damper ();
  dw_work work;
  a.body.has_filling = a.stance.has_ride_height = a.stance.has_droop = true;
  a.body.filling = 6e-6;
  a.stance.ride_height = 24e-3;
  a.stance.droop = 18e-3;
  dw_damper b = a;
  b.body.has_filling = b.stance.has_ride_height = b.stance.has_droop = false;
  b.body.filling = b.stance.ride_height = b.stance.droop = 0.0;
  dw_work_find (&a, &b, NULL, 0, NULL, 0, &work);
  ck_assert_uint_eq (work.n_others, 3);
  for (size_t i = 0; i < work.n_others; i++)
    ck_assert (dw_work_is_assumption (&work.others[i], &a, &b));
  ck_assert (!work.opens && !work.refills);

  /* but to another measure it is brought */
  dw_work_find (&b, &a, NULL, 0, NULL, 0, &work);
  ck_assert_uint_eq (work.n_others, 3);
  for (size_t i = 0; i < work.n_others; i++)
    ck_assert (!dw_work_is_assumption (&work.others[i], &b, &a));
  ck_assert (work.opens && work.refills);
}
END_TEST

START_TEST (a_circle_without_holes_is_not_work)
{
  dw_damper a = study_damper ();
  dw_work work;
  a.piston.n_holes = 2;
  dw_damper b = a;
  circle (&b);
  dw_work_find (&a, &b, NULL, 0, NULL, 0, &work);
  ck_assert (work.n_others == 1 && work.piston == DW_WORK_PISTON_KEEP);
  ck_assert (!work.opens && !work.restacks);
}
END_TEST

/* ---- drilling in its order ---- */

START_TEST (drills_are_told_in_their_order)
{
  dw_damper a = study_covered_damper ();
  dw_damper b = a;
  dw_work work;
  b.piston.n_holes = 4;
  b.piston.holes[0] = (dw_holes){ 3, 1.5 * MM, false };
  b.piston.holes[1] = (dw_holes){ 4, 1.2 * MM, true };
  b.piston.holes[2] = (dw_holes){ 3, 1.3 * MM, false };
  b.piston.holes[3] = (dw_holes){ 2, 1.2 * MM, false };
  dw_work_find (&a, &b, NULL, 0, box, N_ENTRIES (box), &work);

  ck_assert_int_eq (work.piston, DW_WORK_PISTON_DRILL);
  ck_assert_int_eq (work.n_holes, 3);
  const dw_work_holes *solid = &work.holes[0];
  const dw_work_holes *open = &work.holes[1];
  const dw_work_holes *covered = &work.holes[2];
  ck_assert (solid->from == 0.0 && solid->count == 2 && solid->to == 1.2 * MM);
  ck_assert (solid->passes.drill[0] == 0.8 * MM && !solid->covered);
  ck_assert (open->from == a.piston.holes[0].diameter && open->to == 1.5 * MM);
  ck_assert_int_eq (open->count, 3);
  ck_assert_int_eq (open->passes.n, 2);
  ck_assert (open->passes.drill[0] == 1.4 * MM && open->check == 1.6 * MM);
  ck_assert (covered->covered && covered->count == 4 && covered->to == 1.2 * MM);
  ck_assert_int_eq (work.n_passes, 2 * solid->passes.n + 3 * 2 + 4 * 1);
}
END_TEST

START_TEST (equal_holes_of_two_groups_are_told_once)
{
  dw_damper a = dw_damper_defaults ();
  a.piston.n_holes = 2;
  a.piston.holes[0] = (dw_holes){ 2, 1.3 * MM, false };
  a.piston.holes[1] = (dw_holes){ 4, 1.3 * MM, false };
  dw_damper b = a;
  dw_work work;
  b.piston.holes[0].diameter = b.piston.holes[1].diameter = 1.4 * MM;
  dw_work_find (&a, &b, NULL, 0, box, N_ENTRIES (box), &work);
  ck_assert (work.n_holes == 1 && work.holes[0].count == 6);
  ck_assert_int_eq (work.n_passes, 6);
}
END_TEST

/* ---- the box ---- */

/* What becomes of a wanted piston of four open holes of 1.4 mm when this is in the box. */
static const struct
{
  const char *why;
  int n;
  dw_holes holes[4]; /* of spares with one group each; count 0 = blank */
  dw_work_piston piston;
  int spare;
} spare_rows[] = {
  { "one as wanted goes before one to drill, wherever it lies",
    3,
    { { 4, 1.3 * MM, false }, { 4, 1.4 * MM, false }, { 4, 1.4 * MM, false } },
    DW_WORK_PISTON_SPARE,
    1 },
  { "the one with the fewest passes",
    3,
    { { 4, 1.0 * MM, false }, { 4, 1.35 * MM, false }, { 4, 1.3 * MM, false } },
    DW_WORK_PISTON_SPARE_DRILL,
    1 },
  { "a blank is the most work",
    2,
    { { 0, 0.0, false }, { 4, 1.2 * MM, false } },
    DW_WORK_PISTON_SPARE_DRILL,
    1 },
  { "but better than none", 1, { { 0, 0.0, false } }, DW_WORK_PISTON_SPARE_DRILL, 0 },
  { "larger holes or more of them are of no use",
    2,
    { { 4, 1.5 * MM, false }, { 5, 1.2 * MM, false } },
    DW_WORK_PISTON_NEW,
    -1 },
  { "without shims a place is a hole like any other",
    1,
    { { 4, 1.4 * MM, true } },
    DW_WORK_PISTON_SPARE,
    0 },
  { "an empty box", 0, { { 0 } }, DW_WORK_PISTON_NEW, -1 },
};

/* Five holes of 1.3 mm are built in, four of 1.4 wanted: the piston that is in it is of no use. */
static void
damper_that_needs_a_piston (dw_damper *a, dw_damper *b)
{
  *a = dw_damper_defaults ();
  a->piston.holes[0] = (dw_holes){ 5, 1.3 * MM, false };
  *b = *a;
  b->piston.holes[0] = (dw_holes){ 4, 1.4 * MM, false };
}

static dw_piston
spare_of (const dw_damper *b, const dw_holes *holes)
{
  dw_piston spare = b->piston;
  spare.n_holes = holes->count > 0 ? 1 : 0;
  spare.holes[0] = *holes;
  return spare;
}

START_TEST (the_best_of_the_box_is_taken)
{
  dw_damper a;
  dw_damper b;
  dw_piston spares[4];
  dw_work work;
  damper_that_needs_a_piston (&a, &b);
  for (int i = 0; i < spare_rows[_i].n; i++)
    spares[i] = spare_of (&b, &spare_rows[_i].holes[i]);
  dw_work_find (&a, &b, spares, spare_rows[_i].n, box, N_ENTRIES (box), &work);
  ck_assert_msg (work.piston == spare_rows[_i].piston, "%s: %d", spare_rows[_i].why,
                 (int)work.piston);
  ck_assert_msg (work.spare == spare_rows[_i].spare, "%s: spare %d", spare_rows[_i].why,
                 work.spare);
  ck_assert (work.opens);
}
END_TEST

START_TEST (a_spare_has_to_fit)
{
  dw_damper a;
  dw_damper b;
  dw_work work;
  damper_that_needs_a_piston (&a, &b);
  dw_piston spare = b.piston;
  spare.thickness += 1e-6;
  dw_work_find (&a, &b, &spare, 1, NULL, 0, &work);
  ck_assert_int_eq (work.piston, DW_WORK_PISTON_NEW);
  spare = b.piston;
  spare.clearance += 1e-6;
  dw_work_find (&a, &b, &spare, 1, NULL, 0, &work);
  ck_assert_int_eq (work.piston, DW_WORK_PISTON_NEW);
  spare = b.piston;
  spare.thickness = spare.thickness / DW_DRILL_SAME * DW_DRILL_SAME;
  spare.eccentricity = 0.7;
  dw_work_find (&a, &b, &spare, 1, NULL, 0, &work);
  ck_assert_int_eq (work.piston, DW_WORK_PISTON_SPARE);
}
END_TEST

START_TEST (the_piston_that_is_in_it_goes_before_the_box)
{
  dw_damper a = dw_damper_defaults ();
  dw_damper b = a;
  dw_work work;
  b.piston.holes[0].diameter = 1.4 * MM;
  dw_work_find (&a, &b, &b.piston, 1, box, N_ENTRIES (box), &work);
  ck_assert (work.piston == DW_WORK_PISTON_DRILL && work.spare == -1);
}
END_TEST

START_TEST (under_a_shim_a_spare_has_its_places)
{
  const dw_damper a = study_covered_damper ();
  dw_damper b = a;
  dw_work work;
  b.piston.holes[0].count--;
  dw_piston spare = b.piston;
  spare.holes[0].covered = true;
  dw_work_find (&a, &b, &spare, 1, NULL, 0, &work);
  ck_assert_int_eq (work.piston, DW_WORK_PISTON_NEW);
}
END_TEST

/* ---- laws ---- */

/* Holes by size, and by kind where it matters; a count below zero for what is missing. */
typedef struct
{
  long size[200]; /* [nm] */
  int count[200];
  int n;
} tally;

static void
tally_add (tally *t, double size, bool covered, bool has_kinds, int count)
{
  const long key = 2 * lround (size * 1e9) + (covered && has_kinds ? 1 : 0);
  int i = 0;
  while (i < t->n && t->size[i] != key)
    i++;
  ck_assert_int_lt (i, 200);
  if (i == t->n)
    {
      t->n++;
      t->size[i] = key;
      t->count[i] = 0;
    }
  t->count[i] += count;
}

static bool
tally_is_even (const tally *t)
{
  for (int i = 0; i < t->n; i++)
    if (t->count[i] != 0)
      return false;
  return true;
}

static void
tally_add_piston (tally *t, const dw_piston *piston, bool has_kinds, int sign)
{
  for (int i = 0; i < piston->n_holes; i++)
    tally_add (t, piston->holes[i].diameter, piston->holes[i].covered, has_kinds,
               sign * piston->holes[i].count);
}

static void
check_passes (const dw_work_holes *h)
{
  ck_assert (h->count > 0 && h->to > h->from);
  ck_assert_int_ge (h->passes.n, 1);
  for (int i = 0; i < h->passes.n; i++)
    ck_assert (h->passes.drill[i] > (i == 0 ? h->from : h->passes.drill[i - 1]));
  ck_assert (h->passes.drill[h->passes.n - 1] == h->to);
  ck_assert (isnan (h->check) || h->check > h->to);
}

static bool
in_order (const dw_work_holes *p, const dw_work_holes *q)
{
  if ((p->from == 0.0) != (q->from == 0.0))
    return p->from == 0.0;
  if (p->covered != q->covered)
    return q->covered;
  return p->to < q->to || (p->to == q->to && p->from < q->from);
}

/* The holes of the piston that is taken, less those that are drilled, and those drilled, are b's. */
static void
check_work (const dw_damper *a, const dw_damper *b, const dw_piston *spares, const dw_work *work)
{
  const dw_piston blank = { .n_holes = 0 };
  const bool is_fitted = work->piston <= DW_WORK_PISTON_DRILL;
  const dw_piston *start = work->spare >= 0 ? &spares[work->spare]
                           : is_fitted      ? &a->piston
                                            : &blank;
  /* whether a shim tells the places apart */
  const bool has_kinds = b->valve.n_shims > 0
                         && (!is_fitted
                             || (a->valve.n_shims > 0
                                 && a->valve.hub_diameter == b->valve.hub_diameter
                                 && a->valve.outer_diameter == b->valve.outer_diameter));
  tally t = { .n = 0 };
  int n_passes = 0;
  tally_add_piston (&t, start, has_kinds, 1);
  tally_add_piston (&t, &b->piston, has_kinds, -1);
  ck_assert (tally_is_even (&t) == (work->n_holes == 0));
  for (int i = 0; i < work->n_holes; i++)
    {
      const dw_work_holes *h = &work->holes[i];
      check_passes (h);
      ck_assert (i == 0 || in_order (&work->holes[i - 1], h));
      if (h->from > 0.0)
        tally_add (&t, h->from, h->covered, has_kinds, -h->count);
      tally_add (&t, h->to, h->covered, has_kinds, h->count);
      n_passes += h->count * h->passes.n;
    }
  ck_assert (tally_is_even (&t));
  ck_assert_int_eq (work->n_passes, n_passes);
  ck_assert (
      (work->spare >= 0)
      == (work->piston == DW_WORK_PISTON_SPARE || work->piston == DW_WORK_PISTON_SPARE_DRILL));
}

/* A damper that shares a good deal with another: a part or two is another, holes are drilled. */
static dw_damper
relative_of (test_random *r, const dw_damper *a)
{
  const dw_damper other = random_damper (r);
  dw_damper b = *a;
  for (int tries = 0; tries < 100; tries++)
    {
      b = *a;
      for (int i = 0; i < b.piston.n_holes; i++)
        {
          b.piston.holes[i].diameter += test_random_int (r, -1, 4) * 0.05 * MM;
          b.piston.holes[i].count += test_random_int (r, 0, 5) == 0;
        }
      switch (test_random_int (r, 0, 5))
        {
        case 0:
          b.piston = other.piston;
          break;
        case 1:
          b.valve = other.valve;
          break;
        case 2:
          b.oil = other.oil;
          break;
        case 3:
          b.piston.holes[0].covered = !b.piston.holes[0].covered;
          break;
        default:
          break;
        }
      if (dw_damper_check (&b, NULL, 0) == 0)
        return b;
    }
  return *a;
}

static bool
same_work (const dw_work *p, const dw_work *q)
{
  bool same = p->piston == q->piston && p->spare == q->spare && p->n_holes == q->n_holes
              && p->n_passes == q->n_passes && p->opens == q->opens && p->restacks == q->restacks
              && p->changes_oil == q->changes_oil && p->n_others == q->n_others;
  for (int i = 0; i < p->n_holes && same; i++)
    same = p->holes[i].count == q->holes[i].count && p->holes[i].from == q->holes[i].from
           && p->holes[i].to == q->holes[i].to && p->holes[i].covered == q->holes[i].covered
           && p->holes[i].passes.n == q->holes[i].passes.n;
  return same;
}

START_TEST (what_is_drilled_gives_the_wanted_holes)
{
  test_random r = test_random_new (7201);
  int seen[DW_WORK_PISTON_NEW + 1] = { 0 };
  for (int k = 0; k < 4000; k++)
    {
      const dw_damper a = random_damper (&r);
      const dw_damper b = relative_of (&r, &a);
      dw_piston spares[3];
      dw_work work;
      dw_work again;
      for (int i = 0; i < 3; i++)
        {
          spares[i] = relative_of (&r, &b).piston;
          for (int g = 0; g < spares[i].n_holes && i > 0; g++)
            spares[i].holes[g].diameter -= 0.1 * MM * (i == 1);
        }
      dw_work_find (&a, &b, spares, 3, box, N_ENTRIES (box), &work);
      check_work (&a, &b, spares, &work);
      seen[work.piston]++;
      memset (&again, 0x5a, sizeof again);
      dw_work_find (&a, &b, spares, 3, box, N_ENTRIES (box), &again);
      ck_assert (same_work (&work, &again));
    }
  for (int i = 0; i <= DW_WORK_PISTON_NEW; i++)
    ck_assert_msg (seen[i] > 20, "piston %d is seen %d times only", i, seen[i]);
}
END_TEST

/* Nothing in the box is better than what was chosen: each spare alone, and the order of kinds. */
START_TEST (no_spare_of_the_box_would_be_less_work)
{
  test_random r = test_random_new (7202);
  int n_compared = 0;
  for (int k = 0; k < 2000; k++)
    {
      dw_damper a = random_damper (&r);
      dw_damper b = relative_of (&r, &a);
      dw_piston spares[4];
      dw_work all;
      a.piston.thickness *= 1.5;
      for (int i = 0; i < 4; i++)
        spares[i] = relative_of (&r, &b).piston;
      dw_work_find (&a, &b, spares, 4, box, N_ENTRIES (box), &all);
      for (int i = 0; i < 4; i++)
        {
          dw_work one;
          dw_work_find (&a, &b, &spares[i], 1, box, N_ENTRIES (box), &one);
          ck_assert_int_le (all.piston, one.piston);
          if (one.piston != all.piston || one.spare < 0)
            continue;
          n_compared++;
          ck_assert_int_le (all.n_passes, one.n_passes);
          if (all.n_passes == one.n_passes)
            ck_assert_int_le (all.spare, i);
        }
    }
  ck_assert_int_gt (n_compared, 500);
}
END_TEST

START_TEST (the_largest_dampers_take_no_time)
{
  test_random r = test_random_new (7203);
  size_t n_table;
  const dw_drill_size *table = dw_drill_table (&n_table);
  double drills[500];
  dw_damper a = study_covered_damper ();
  dw_damper b;
  dw_piston *spares = calloc (500, sizeof *spares);
  dw_work *work = calloc (1, sizeof *work);
  for (int i = 0; i < 500; i++)
    drills[i] = table[(size_t)i % n_table].diameter + (i >= (int)n_table ? 0.01 * i * MM : 0.0);
  a.piston.n_holes = DW_MAX_HOLE_GROUPS;
  for (int i = 0; i < DW_MAX_HOLE_GROUPS; i++)
    a.piston.holes[i] = (dw_holes){ 64, (0.2 + 0.01 * i) * MM, i % 2 == 0 };
  b = a;
  for (int i = 0; i < DW_MAX_HOLE_GROUPS; i++)
    b.piston.holes[i].diameter = (9.0 + 0.01 * test_random_int (&r, 0, 90)) * MM;
  b.piston.thickness += MM;
  for (int i = 0; i < 500; i++)
    {
      spares[i] = a.piston;
      spares[i].thickness = b.piston.thickness;
      spares[i].holes[0].count = 1 + i % 64;
    }
  const double start = test_now ();
  dw_work_find (&a, &b, spares, 500, drills, 500, work);
  ck_assert_int_eq (work->piston, DW_WORK_PISTON_SPARE_DRILL);
  check_work (&a, &b, spares, work);
  /* a second or so without optimisation and with sanitizers */
  ck_assert (test_now () - start < 20.0);
  free (spares);
  free (work);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/work");
  TCase *tcase = tcase_create ("work");
  tcase_add_loop_test (tcase, every_change_has_its_work, 0, N_ENTRIES (rows));
  tcase_add_loop_test (tcase, without_shims_there_is_nothing_to_stack, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, the_air_outside_is_not_work);
  tcase_add_test (tcase, what_is_not_measured_any_more_is_not_work);
  tcase_add_test (tcase, a_circle_without_holes_is_not_work);
  tcase_add_test (tcase, drills_are_told_in_their_order);
  tcase_add_test (tcase, equal_holes_of_two_groups_are_told_once);
  tcase_add_loop_test (tcase, the_best_of_the_box_is_taken, 0, N_ENTRIES (spare_rows));
  tcase_add_test (tcase, a_spare_has_to_fit);
  tcase_add_test (tcase, the_piston_that_is_in_it_goes_before_the_box);
  tcase_add_test (tcase, under_a_shim_a_spare_has_its_places);
  tcase_add_test (tcase, what_is_drilled_gives_the_wanted_holes);
  tcase_add_test (tcase, no_spare_of_the_box_would_be_less_work);
  tcase_add_test (tcase, the_largest_dampers_take_no_time);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
