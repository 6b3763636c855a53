/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Long because which stacks there are and what each does have judges of their own: subsets of single
 * leaves, and dampers built by hand. */
#include "study/dw-ladder.h"

#include <math.h>
#include <string.h>

#include "model/dw-film.h"
#include "random-damper.h"
#include "study-dampers.h"
#include "test-support.h"

#define POLYMER(thickness, count)                                                                  \
  {                                                                                                \
    (thickness) * 1e-3, count, 4e9, 0.38, 100e6                                                    \
  }
#define STEEL(thickness, count)                                                                    \
  {                                                                                                \
    (thickness) * 1e-3, count, 200e9, 0.3, 900e6                                                   \
  }

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
static const dw_shim everyday[] = { POLYMER (0.1, 6), POLYMER (0.15, 4), POLYMER (0.2, 4),
                                    POLYMER (0.25, 2) };

static dw_ladder_options
options_of (const dw_shim *box, int n_box, int most_leaves, int dampers)
{
  dw_ladder_options o = dw_ladder_options_defaults (box, n_box, 25.0, speeds);
  o.most_leaves = most_leaves;
  o.dampers = dampers;
  return o;
}

static dw_ladder *
ladder_with (const dw_damper *damper, const dw_ladder_options *options)
{
  dw_ladder *ladder = NULL;
  dw_error err = { .text = "" };
  ck_assert_msg (dw_ladder_make (damper, options, NULL, NULL, &ladder, &err) == DW_OK, "%s: %s",
                 err.field, err.text);
  return ladder;
}

static dw_ladder *
ladder_of (const dw_damper *damper, const dw_shim *box, int n_box, int most_leaves)
{
  const dw_ladder_options options = options_of (box, n_box, most_leaves, 2);
  return ladder_with (damper, &options);
}

static dw_figures
figures_of (const dw_damper *damper)
{
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (damper, 25.0, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &figures, NULL), DW_OK);
  return figures;
}

static dw_damper
damper_with (const dw_damper *damper, const dw_ladder_rung *rung, double coupling)
{
  dw_damper built = *damper;
  dw_ladder_apply (rung, &built.valve);
  built.valve.leaf_coupling = coupling;
  return built;
}

static const dw_ladder_rung *
rung_of (const dw_ladder *ladder, const double *thicknesses, int n)
{
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      int at = 0;
      bool is_it = rung->leaves == n;
      for (int k = 0; k < rung->n_shims && is_it; k++)
        for (int c = 0; c < rung->shims[k].count && is_it; c++)
          is_it = fabs (rung->shims[k].thickness - 1e-3 * thicknesses[at++]) < 1e-9;
      if (is_it)
        return rung;
    }
  ck_abort_msg ("no such stack of %d leaves", n);
  return NULL;
}

/* ---- which stacks there are ---- */

#define MOST_BRUTE 2048

/* One stack of the brute force: how many of each kind, kinds in the order of a list. */
typedef struct
{
  int counts[6];
  double stiffness; /* [N m] of sliding leaves */
} brute_stack;

/* Every subset of single leaves, each leaf a thing of its own; equal ones are struck out. */
static int
brute_force (const dw_shim *kinds, const int *have, int n_kinds, int most_leaves, brute_stack *out)
{
  int kind_of[16];
  int n_leaves = 0;
  int n = 0;
  for (int k = 0; k < n_kinds; k++)
    for (int i = 0; i < have[k]; i++)
      kind_of[n_leaves++] = k;
  for (unsigned subset = 1; subset < 1U << n_leaves; subset++)
    {
      brute_stack s = { .stiffness = 0.0 };
      int leaves = 0;
      bool is_new = true;
      for (int i = 0; i < n_leaves; i++)
        if ((subset >> i & 1U) != 0)
          {
            const dw_shim *shim = &kinds[kind_of[i]];
            leaves++;
            s.counts[kind_of[i]]++;
            s.stiffness += shim->modulus * pow (shim->thickness, 3.0)
                           / (12.0 * (1.0 - shim->poisson * shim->poisson));
          }
      for (int i = 0; i < n && is_new; i++)
        is_new = memcmp (out[i].counts, s.counts, sizeof s.counts) != 0;
      if (leaves <= most_leaves && is_new)
        out[n++] = s;
    }
  return n;
}

#define NONE                                                                                       \
  {                                                                                                \
    0                                                                                              \
  }

static const struct
{
  const char *why;
  int n_kinds;
  dw_shim kinds[6]; /* count = in the box */
  int fitted[6];    /* leaves of each in the stack now */
  int most_leaves;
  int dampers;
  int have[6]; /* of each for one damper, by hand */
} boxes[] = {
  /* clang-format off */
  { "six make three for each of two", 2,
    { POLYMER (0.1, 6), POLYMER (0.2, 2) }, NONE, 3, 2, { 3, 1 } },
  { "all of them for one", 2,
    { POLYMER (0.1, 6), POLYMER (0.2, 2) }, NONE, 4, 1, { 6, 2 } },
  { "an odd one is left over", 2,
    { POLYMER (0.1, 5), POLYMER (0.2, 1) }, NONE, 4, 2, { 2, 0 } },
  { "what is in the stack is there", 2,
    { POLYMER (0.1, 2), POLYMER (0.2, 1) }, { 1, 1 }, 3, 2, { 2, 1 } },
  { "only in the stack", 2,
    { POLYMER (0.1, 2), POLYMER (0.15, 0) }, { 0, 2 }, 4, 2, { 1, 2 } },
  { "one damper with its own", 2,
    { POLYMER (0.1, 2), POLYMER (0.2, 1) }, { 1, 0 }, 4, 1, { 3, 1 } },
  { "an empty box: the stack can be made thinner", 2,
    { POLYMER (0.1, 0), POLYMER (0.2, 0) }, { 2, 1 }, 3, 2, { 2, 1 } },
  { "single leaves", 3,
    { POLYMER (0.1, 4), POLYMER (0.15, 4), POLYMER (0.2, 4) }, NONE, 1, 2, { 2, 2, 2 } },
  { "two materials, equally thick", 2,
    { POLYMER (0.1, 4), STEEL (0.1, 4) }, { 1, 0 }, 3, 2, { 3, 2 } },
  { "six kinds", 6,
    { POLYMER (0.05, 4), POLYMER (0.1, 4), POLYMER (0.15, 4), POLYMER (0.2, 4),
      POLYMER (0.25, 4), POLYMER (0.3, 4) },
    NONE, 3, 2, { 2, 2, 2, 2, 2, 2 } },
  { "as many leaves as a stack may have", 3,
    { POLYMER (0.05, 6), POLYMER (0.1, 6), POLYMER (0.15, 6) }, NONE, 8, 2, { 3, 3, 3 } },
  /* clang-format on */
};

static bool
is_brute (const dw_ladder_rung *rung, const dw_shim *kinds, int n_kinds, const brute_stack *s)
{
  int counts[6] = { 0 };
  for (int i = 0; i < rung->n_shims; i++)
    for (int k = 0; k < n_kinds; k++)
      if (rung->shims[i].thickness == kinds[k].thickness
          && rung->shims[i].modulus == kinds[k].modulus)
        counts[k] += rung->shims[i].count;
  return memcmp (counts, s->counts, sizeof counts) == 0;
}

/* The fitted stack lies with its thinnest leaf nearest the piston. */
static dw_damper
fitted_damper (const dw_shim *kinds, const int *fitted, int n_kinds)
{
  dw_damper damper = study_covered_damper ();
  damper.valve.n_shims = 0;
  for (int k = 0; k < n_kinds; k++)
    if (fitted[k] > 0)
      {
        damper.valve.shims[damper.valve.n_shims] = kinds[k];
        damper.valve.shims[damper.valve.n_shims++].count = fitted[k];
      }
  return damper;
}

START_TEST (a_ladder_is_every_stack_once_in_order_of_stiffness)
{
  static brute_stack expected[MOST_BRUTE];
  const int n_kinds = boxes[_i].n_kinds;
  const dw_shim *kinds = boxes[_i].kinds;
  const dw_damper damper = fitted_damper (kinds, boxes[_i].fitted, n_kinds);
  const dw_ladder_options options = options_of (kinds, n_kinds, boxes[_i].most_leaves,
                                                boxes[_i].dampers);
  dw_ladder *ladder = ladder_with (&damper, &options);
  const int n = brute_force (kinds, boxes[_i].have, n_kinds, boxes[_i].most_leaves, expected);
  ck_assert_msg ((int)ladder->n == n, "%s: %zu, not %d", boxes[_i].why, ladder->n, n);
  ck_assert (!ladder->is_cut && ladder->most_leaves == boxes[_i].most_leaves);
  int n_fitted = 0;
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      int found = 0;
      for (int k = 0; k < n; k++)
        if (is_brute (rung, kinds, n_kinds, &expected[k]))
          {
            found++;
            assert_close (rung->stiffness, expected[k].stiffness, 1e-12, 0.0, "leaves slide");
            n_fitted += rung->is_fitted
                        && memcmp (expected[k].counts, boxes[_i].fitted, sizeof (int[6])) == 0;
          }
      ck_assert_msg (found == 1, "%s: row %zu found %d times", boxes[_i].why, i, found);
      ck_assert (i == 0 || rung[-1].stiffness <= rung->stiffness);
      for (int k = 1; k < rung->n_shims && !rung->is_fitted; k++)
        ck_assert_msg (rung->shims[k - 1].thickness >= rung->shims[k].thickness, "thickest first");
    }
  ck_assert_msg (n_fitted == (damper.valve.n_shims > 0), "%s: %d fitted", boxes[_i].why, n_fitted);
  dw_ladder_free (ladder);
}
END_TEST

START_TEST (entries_of_equal_leaves_count_together)
{
  const dw_shim split[] = { POLYMER (0.1, 1), POLYMER (0.2, 2), POLYMER (0.1, 3) };
  const dw_shim whole[] = { POLYMER (0.2, 2), POLYMER (0.1, 4) };
  const dw_damper damper = study_covered_damper ();
  dw_ladder *p = ladder_of (&damper, split, 3, 3);
  dw_ladder *q = ladder_of (&damper, whole, 2, 3);
  ck_assert_uint_eq (p->n, q->n);
  for (size_t i = 0; i < p->n; i++)
    {
      ck_assert (p->rungs[i].stiffness == q->rungs[i].stiffness);
      ck_assert_int_eq (p->rungs[i].n_shims, q->rungs[i].n_shims);
      for (int k = 0; k < p->rungs[i].n_shims; k++)
        ck_assert_int_eq (p->rungs[i].shims[k].count, q->rungs[i].shims[k].count);
    }
  dw_ladder_free (p);
  dw_ladder_free (q);
}
END_TEST

/* A trial is computed with what the car has: its own leaves are still in the box, or nowhere. */
START_TEST (a_trial_uses_the_leaves_of_the_fitted_stack)
{
  const dw_shim box[] = { POLYMER (0.1, 2) };
  const dw_damper car = study_covered_damper (); /* 1 x 0.15 */
  dw_damper trial = car;
  trial.valve.shims[0].thickness = 0.1e-3;
  dw_ladder_options options = options_of (box, 1, 3, 2);
  options.fitted = &car.valve;
  dw_ladder *ladder = ladder_with (&trial, &options);
  ck_assert_uint_eq (ladder->n, 3); /* 0.10, 0.15, both */
  ck_assert (ladder->rungs[0].is_own && !ladder->rungs[0].is_fitted);
  ck_assert (ladder->rungs[1].is_fitted && !ladder->rungs[1].is_own);
  ck_assert (!ladder->rungs[2].is_fitted && !ladder->rungs[2].is_own);
  dw_ladder_free (ladder);

  trial.valve.shims[0].thickness = 0.3e-3;
  ladder = ladder_with (&trial, &options);
  ck_assert_msg (ladder->n == 3, "a trial that nobody can build is not on it");
  for (size_t i = 0; i < ladder->n; i++)
    ck_assert (!ladder->rungs[i].is_own);
  dw_ladder_free (ladder);

  trial.valve.outer_diameter = 10.7e-3;
  ladder = ladder_with (&trial, &options);
  ck_assert_msg (ladder->n == 1 && !ladder->rungs[0].is_fitted, "leaves of another rim");
  dw_ladder_free (ladder);
}
END_TEST

START_TEST (the_fitted_stack_is_there_however_tall)
{
  const dw_shim box[] = { POLYMER (0.2, 2) };
  dw_damper damper = study_covered_damper ();
  damper.valve.shims[0] = (dw_shim)POLYMER (0.1, 3);
  damper.valve.shims[1] = (dw_shim)POLYMER (0.15, 2);
  damper.valve.n_shims = 2;
  dw_ladder *ladder = ladder_of (&damper, box, 1, 1);
  ck_assert_uint_eq (ladder->n, 4);
  ck_assert_int_eq (ladder->most_leaves, 1);
  const dw_ladder_rung *rung = &ladder->rungs[3];
  ck_assert (rung->is_fitted && rung->is_own && rung->leaves == 5 && rung->n_shims == 2);
  ck_assert_msg (rung->shims[0].thickness == 0.1e-3, "as it lies");
  const dw_figures now = figures_of (&damper);
  ck_assert_msg (rung->figures.point[DW_REBOUND][DW_LOW].force
                     == now.point[DW_REBOUND][DW_LOW].force,
                 "it has the force that the damper has");
  dw_ladder_free (ladder);
}
END_TEST

/* Of two materials that stick it matters which lies where. */
START_TEST (the_fitted_stack_keeps_its_order)
{
  const dw_shim box[] = { POLYMER (0.1, 2), STEEL (0.05, 2) };
  dw_damper damper = study_covered_damper ();
  damper.valve.shims[0] = (dw_shim)STEEL (0.05, 1);
  damper.valve.shims[1] = (dw_shim)POLYMER (0.1, 1);
  damper.valve.shims[2] = (dw_shim)STEEL (0.05, 1);
  damper.valve.n_shims = 3;
  damper.valve.leaf_coupling = 1.0;
  dw_ladder *ladder = ladder_of (&damper, box, 2, 3);
  const dw_figures now = figures_of (&damper);
  int n = 0;
  for (size_t i = 0; i < ladder->n; i++)
    if (ladder->rungs[i].is_fitted)
      {
        n++;
        ck_assert (ladder->rungs[i].stiffness == dw_stack_make (&damper.valve).stiffness);
        ck_assert (ladder->rungs[i].figures.point[DW_REBOUND][DW_HIGH].force
                   == now.point[DW_REBOUND][DW_HIGH].force);
      }
  ck_assert_int_eq (n, 1);
  dw_ladder_free (ladder);
}
END_TEST

START_TEST (sixteen_kinds_are_stacked)
{
  dw_shim box[16];
  dw_damper damper = study_covered_damper ();
  damper.valve.n_shims = 16;
  for (int i = 0; i < 16; i++)
    {
      box[i] = (dw_shim)POLYMER (0.05 + 0.02 * i, 2);
      damper.valve.shims[i] = box[i];
      damper.valve.shims[i].count = 1;
    }
  dw_ladder *ladder = ladder_of (&damper, box, 16, 2);
  /* two of each: 16 alone, 16 pairs of one kind, 120 of two; and all that are fitted */
  ck_assert_uint_eq (ladder->n, 16 + 16 + 120 + 1);
  ck_assert (ladder->rungs[ladder->n - 1].is_fitted);
  ck_assert_int_eq (ladder->rungs[ladder->n - 1].n_shims, 16);
  dw_ladder_free (ladder);
}
END_TEST

/* 60 kinds: 60 alone, 1830 of two, more than 30 000 of three. */
START_TEST (a_ladder_too_long_loses_whole_heights)
{
  dw_shim box[60];
  dw_damper damper = study_covered_damper ();
  damper.valve.shims[0] = (dw_shim)POLYMER (0.02, 5);
  for (int i = 0; i < 60; i++)
    box[i] = (dw_shim)POLYMER (0.02 + 0.01 * i, i == 0 ? 0 : 4);
  dw_ladder *ladder = ladder_of (&damper, box, 60, 8);
  ck_assert (ladder->is_cut && ladder->most_leaves == 2);
  ck_assert_uint_eq (ladder->n, 60 + 60 * 61 / 2 + 1);
  ck_assert_uint_le (ladder->n, DW_LADDER_MAX_STACKS);
  int n_tall = 0;
  for (size_t i = 0; i < ladder->n; i++)
    n_tall += ladder->rungs[i].leaves > 2;
  ck_assert_msg (n_tall == 1, "only what is fitted");
  dw_ladder_free (ladder);
}
END_TEST

/* ---- what they do ---- */

START_TEST (a_rung_is_the_model_with_its_stack)
{
  dw_damper damper = study_covered_damper ();
  damper.valve.opens_on = (dw_stroke)_i;
  damper.valve.leaf_coupling = 0.3;
  dw_ladder *ladder = ladder_of (&damper, everyday, N_ENTRIES (everyday), 3);
  const dw_stroke other = _i == DW_REBOUND ? DW_COMPRESSION : DW_REBOUND;
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      const dw_damper built = damper_with (&damper, rung, 0.3);
      const dw_damper bounds[] = { damper_with (&damper, rung, 0.0),
                                   damper_with (&damper, rung, 1.0) };
      const dw_figures f = figures_of (&built);
      const dw_figures b[] = { figures_of (&bounds[0]), figures_of (&bounds[1]) };
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          for (int s = 0; s < DW_N_STROKES; s++)
            ck_assert (rung->figures.point[s][v].force == f.point[s][v].force);
          for (int k = 0; k < DW_N_LEAF_BOUNDS; k++)
            assert_close (rung->force[k][v], b[k].point[_i][v].force, 1e-9, 0.0, "root finder");
          ck_assert_msg (f.point[other][v].force == ladder->rungs[0].figures.point[other][v].force,
                         "the stroke that shuts the stack does not know of it");
        }
      ck_assert (rung->figures.rebound_share[DW_MIDDLE] == f.rebound_share[DW_MIDDLE]);
      ck_assert (rung->at_stop == f.point[_i][DW_HIGH].at_stop);
    }
  dw_ladder_free (ladder);
}
END_TEST

/* [m] Width of the slot on the hole circle that has the covered holes' area. */
static double
slot_of (const dw_damper *damper)
{
  double area = 0.0;
  for (int i = 0; i < damper->piston.n_holes; i++)
    if (damper->piston.holes[i].covered)
      area += damper->piston.holes[i].count * 0.25 * M_PI * damper->piston.holes[i].diameter
              * damper->piston.holes[i].diameter;
  return area / (M_PI * damper->valve.hole_circle);
}

/* Within what is resolved the law is exact; past it forms are continued, and more lift may cost a
 * little: in 12 000 random dampers of thin oil through wide gaps up to 6.5 %. */
static double
slack_of (const dw_force_point *softer, double slot)
{
  return softer->reynolds <= 600.0 && softer->lift_at_holes <= DW_FILM_RESOLVED_RATIO * slot ? 1e-7
                                                                                             : 0.1;
}

static void
expect_order (const dw_ladder_rung *rung, const dw_ladder_rung *softer, dw_stroke stroke,
              double slot)
{
  const dw_stroke other = stroke == DW_REBOUND ? DW_COMPRESSION : DW_REBOUND;
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      const dw_force_point *p = &rung->figures.point[stroke][v];
      const dw_force_point *q = &softer->figures.point[stroke][v];
      const double slack = slack_of (q, slot);
      ck_assert (isfinite (p->force) && isfinite (rung->force[DW_LEAVES_SLIDE][v])
                 && isfinite (rung->force[DW_LEAVES_STICK][v]));
      ck_assert_msg (rung->figures.point[other][v].force == softer->figures.point[other][v].force,
                     "the stroke that shuts it");
      ck_assert_msg (q->hydraulic <= p->hydraulic * (1.0 + slack), "stiffer %.12g below %.12g",
                     p->hydraulic, q->hydraulic);
      /* past a void the force is what it was at the onset, film on the edge included */
      ck_assert (p->is_void || q->force <= p->force + slack * p->hydraulic);
    }
}

START_TEST (a_stiffer_stack_never_gives_less_force)
{
  test_random r = test_random_new (9101 + (uint64_t)_i);
  for (int n = 0; n < 40;)
    {
      dw_damper damper = random_damper (&r);
      dw_ladder *ladder = NULL;
      dw_shim box[4];
      damper.piston.holes[damper.piston.n_holes - 1].covered = true;
      damper.valve.n_shims = 1;
      for (int i = 0; i < 4; i++)
        box[i] = (dw_shim)POLYMER (test_random_log_uniform (&r, 0.03, 1.0), 4);
      damper.valve.shims[0] = box[0];
      const dw_ladder_options options = options_of (box, 4, 3, 2);
      if (dw_damper_check (&damper, NULL, 0) > 0)
        continue;
      ck_assert_int_eq (dw_ladder_make (&damper, &options, NULL, NULL, &ladder, NULL), DW_OK);
      for (size_t i = 1; i < ladder->n; i++)
        expect_order (&ladder->rungs[i], &ladder->rungs[i - 1], damper.valve.opens_on,
                      slot_of (&damper));
      dw_ladder_free (ladder);
      n++;
    }
}
END_TEST

START_TEST (the_coupling_lies_between_its_bounds)
{
  dw_damper damper = study_covered_damper ();
  damper.valve.leaf_coupling = _i / 4.0;
  dw_ladder *ladder = ladder_of (&damper, everyday, N_ENTRIES (everyday), 3);
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      const double t = cbrt (12.0 * rung->stiffness * (1.0 - 0.38 * 0.38) / 4e9);
      ck_assert (rung->single[DW_LEAVES_SLIDE] <= t * (1.0 + 1e-12));
      ck_assert (t <= rung->single[DW_LEAVES_STICK] * (1.0 + 1e-12));
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          const double force = rung->figures.point[DW_REBOUND][v].force;
          ck_assert (rung->force[DW_LEAVES_SLIDE][v] <= force * (1.0 + 1e-9));
          ck_assert (force <= rung->force[DW_LEAVES_STICK][v] * (1.0 + 1e-9));
          ck_assert (rung->leaves > 1
                     || rung->force[DW_LEAVES_SLIDE][v] == rung->force[DW_LEAVES_STICK][v]);
          ck_assert_msg (rung->habit[v] == rung->force[DW_LEAVES_STICK][v], "one material");
        }
      assert_close (rung->single[DW_LEAVES_STICK], rung->added, 1e-9, 0.0,
                    "stuck leaves of one material are as thick as the habit says");
      if (rung->leaves == 1)
        assert_close (rung->single[DW_LEAVES_SLIDE], rung->added, 1e-9, 0.0, "one leaf");
    }
  dw_ladder_free (ladder);
}
END_TEST

START_TEST (two_equal_leaves_are_twice_or_eight_times_one)
{
  const dw_shim box[] = { POLYMER (0.1, 4) };
  dw_damper damper = study_covered_damper ();
  damper.valve.shims[0] = (dw_shim)POLYMER (0.1, 1);
  damper.valve.leaf_coupling = _i;
  dw_ladder *ladder = ladder_of (&damper, box, 1, 2);
  ck_assert_uint_eq (ladder->n, 2);
  const dw_ladder_rung *one = &ladder->rungs[0];
  const dw_ladder_rung *two = &ladder->rungs[1];
  assert_close (two->stiffness / one->stiffness, _i == 0 ? 2.0 : 8.0, 1e-12, 0.0, "rigidity");
  assert_close (two->single[DW_LEAVES_SLIDE], 0.1e-3 * cbrt (2.0), 1e-12, 0.0, "t 2^(1/3)");
  assert_close (two->single[DW_LEAVES_STICK], 0.2e-3, 1e-12, 0.0, "2 t");
  assert_close (two->added, 0.2e-3, 1e-12, 0.0, "the habit");
  dw_ladder_free (ladder);
}
END_TEST

/* A stiff leaf over a soft one: the habit takes the first one's material for all of it. */
START_TEST (the_habit_forgets_that_materials_differ)
{
  const dw_shim box[] = { STEEL (0.1, 2), POLYMER (0.15, 0) };
  const dw_damper damper = study_covered_damper ();
  dw_ladder *ladder = ladder_of (&damper, box, 2, 2);
  for (size_t i = 0; i < ladder->n; i++)
    if (ladder->rungs[i].n_shims == 2)
      {
        const dw_ladder_rung *rung = &ladder->rungs[i];
        dw_damper single = damper;
        single.valve.shims[0] = (dw_shim)POLYMER (0.25, 1);
        const dw_figures f = figures_of (&single);
        ck_assert (rung->shims[0].modulus == 4e9);
        for (int v = 0; v < DW_N_SPEEDS; v++)
          {
            assert_close (rung->habit[v], f.point[DW_REBOUND][v].force, 1e-9, 0.0, "0.25 polymer");
            ck_assert (rung->habit[v] < rung->force[DW_LEAVES_STICK][v]);
          }
        dw_ladder_free (ladder);
        return;
      }
  ck_abort_msg ("no stack of both");
}
END_TEST

/* Order of stacks by stiffness is order of rebound (tried above); a thick shim leaves rebound only slightly
 * quicker than compression; with a second on top it is a plain piston within 1 % up to 0.5 m/s. */
START_TEST (common_practice_is_met_by_the_everyday_shim)
{
  static const double thick[] = { 0.25 };
  static const double with_second[] = { 0.25, 0.25 };
  static const double calm[DW_N_SPEEDS] = { 0.05, 0.2, 0.5 };
  const dw_shim box[] = { POLYMER (0.1, 4), POLYMER (0.25, 4) };
  dw_damper damper = study_covered_damper ();
  damper.gas.kind = DW_GAS_VENTED;
  dw_ladder_options options = options_of (box, 2, 2, 2);
  options.speeds = calm;
  dw_ladder *ladder = ladder_with (&damper, &options);
  const dw_ladder_rung *one = rung_of (ladder, thick, 1);
  const dw_ladder_rung *two = rung_of (ladder, with_second, 2);
  dw_damper plain = damper;
  plain.piston.n_holes = 1;
  const dw_figures f = figures_of (&plain);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      ck_assert (one->force[DW_LEAVES_SLIDE][v] < ladder->plain[v]);
      ck_assert_msg (one->force[DW_LEAVES_SLIDE][v] > 0.9 * ladder->plain[v], "%g of %g",
                     one->force[DW_LEAVES_SLIDE][v], ladder->plain[v]);
      assert_close (two->force[DW_LEAVES_STICK][v], ladder->plain[v], 0.01, 0.0, "plain");
      if (v < DW_HIGH)
        assert_close (ladder->plain[v], f.point[DW_REBOUND][v].force, 1e-9, 0.0, "as undrilled");
    }
  ck_assert_int_eq (two->verdict, DW_LADDER_PLAIN);
  dw_ladder_free (ladder);
}
END_TEST

static bool
is_near (const double force[DW_N_SPEEDS], const dw_figures *reference, dw_stroke stroke)
{
  bool is = true;
  for (int v = 0; v < DW_N_SPEEDS; v++)
    is = is && fabs (force[v] / reference->point[stroke][v].force - 1.0) <= 0.02;
  return is;
}

/* Against dampers that are built without covered holes, and with the softest shim over them. */
START_TEST (verdicts_are_those_of_a_plain_piston_and_of_holes_alone)
{
  const dw_shim box[] = { POLYMER (0.01, 4), POLYMER (0.02, 2), POLYMER (0.05, 2),
                          POLYMER (0.1, 2),  POLYMER (0.2, 2),  POLYMER (0.4, 2) };
  dw_damper damper = study_covered_damper ();
  damper.valve.opens_on = (dw_stroke)_i;
  dw_damper undrilled = damper;
  undrilled.piston.n_holes = 1;
  dw_damper bare = damper;
  bare.valve.n_shims = 0;
  damper.valve.shims[0] = (dw_shim){ 0.01e-3, 1, 0.1e9, 0.38, 100e6 };
  const dw_figures plain = figures_of (&undrilled);
  const dw_figures soft = figures_of (&damper);
  const dw_figures holes = figures_of (&bare);
  dw_ladder *ladder = ladder_of (&damper, box, N_ENTRIES (box), 2);
  int n[3] = { 0 };
  int n_partly = 0;
  dw_ladder_verdict before = DW_LADDER_HOLES;
  for (size_t i = 0; i < ladder->n; i++)
    {
      const dw_ladder_rung *rung = &ladder->rungs[i];
      double force[DW_N_SPEEDS];
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          force[v] = rung->figures.point[_i][v].force;
          const bool is_plain = fabs (force[v] / plain.point[_i][v].force - 1.0) <= 0.02;
          const bool is_soft = fabs (force[v] / soft.point[_i][v].force - 1.0) <= 0.02;
          ck_assert_int_eq (rung->verdict_at[v], is_plain  ? DW_LADDER_PLAIN
                                                 : is_soft ? DW_LADDER_HOLES
                                                           : DW_LADDER_SHIM);
        }
      const dw_ladder_verdict expected = is_near (force, &plain, (dw_stroke)_i)  ? DW_LADDER_PLAIN
                                         : is_near (force, &soft, (dw_stroke)_i) ? DW_LADDER_HOLES
                                                                                 : DW_LADDER_SHIM;
      ck_assert_int_eq (rung->verdict, expected);
      ck_assert_msg (before == expected || expected != DW_LADDER_HOLES, "the softest ones");
      ck_assert_msg (before != DW_LADDER_PLAIN || expected == DW_LADDER_PLAIN, "the stiffest ones");
      before = expected;
      n[expected]++;
      n_partly += expected == DW_LADDER_SHIM && rung->verdict_at[DW_LOW] == DW_LADDER_PLAIN;
    }
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      assert_close (ladder->plain[v], plain.point[_i][v].force, 1e-9, 0.0, "never lifts");
      assert_close (ladder->soft[v], soft.point[_i][v].force, 1e-9, 0.0, "at its stop");
      assert_close (ladder->holes[v], holes.point[_i][v].force, 1e-9, 0.0, "nothing over them");
    }
  ck_assert_msg (n[0] > 0 && n[1] > 0 && n[2] > 0, "%d shim, %d plain, %d holes", n[0], n[1], n[2]);
  ck_assert_msg (n_partly > 0, "plain at low speed only");
  dw_ladder_free (ladder);
}
END_TEST

/* A seat that leaks leaks under the stiffest stack too; that is all that it still passes. */
START_TEST (a_leaking_seat_does_not_hide_a_stiff_stack)
{
  const dw_shim box[] = { POLYMER (0.1, 2), POLYMER (2.0, 2) };
  dw_damper damper = study_covered_damper ();
  damper.valve.seat_gap = 0.1e-3;
  damper.piston.holes[0].count = 2;
  dw_ladder *ladder = ladder_of (&damper, box, 2, 1);
  const dw_ladder_rung *stiff = &ladder->rungs[ladder->n - 1];
  dw_damper undrilled = damper;
  undrilled.piston.n_holes = 1;
  const dw_figures f = figures_of (&undrilled);
  ck_assert_int_eq (stiff->verdict, DW_LADDER_PLAIN);
  ck_assert_msg (ladder->plain[DW_LOW] < 0.98 * f.point[DW_REBOUND][DW_LOW].force,
                 "the seat passes too little to try this: %g of %g", ladder->plain[DW_LOW],
                 f.point[DW_REBOUND][DW_LOW].force);
  dw_ladder_free (ladder);
}
END_TEST

START_TEST (groups_hold_what_is_as_their_softest)
{
  const dw_shim fine[] = { POLYMER (0.1, 6), POLYMER (0.125, 6), POLYMER (0.15, 6),
                           POLYMER (0.175, 6), POLYMER (0.2, 6) };
  const dw_damper damper = study_covered_damper ();
  dw_ladder *ladder = ladder_of (&damper, fine, N_ENTRIES (fine), 3);
  size_t first = 0;
  int n_shared = 0;
  for (size_t i = 0; i < ladder->n; i++)
    {
      double force[DW_N_SPEEDS];
      for (int v = 0; v < DW_N_SPEEDS; v++)
        force[v] = ladder->rungs[i].figures.point[DW_REBOUND][v].force;
      const bool joins = i > 0 && is_near (force, &ladder->rungs[first].figures, DW_REBOUND);
      ck_assert_int_eq (ladder->rungs[i].group,
                        i == 0 ? 0 : ladder->rungs[i - 1].group + (joins ? 0 : 1));
      n_shared += joins;
      first = joins ? first : i;
    }
  ck_assert_int_eq (ladder->n_groups, ladder->rungs[ladder->n - 1].group + 1);
  ck_assert_msg (n_shared > 5 && ladder->n_groups > 5, "%d, %d", n_shared, ladder->n_groups);
  dw_ladder_free (ladder);
}
END_TEST

/* ---- what cannot be climbed ---- */

static bool
count_and_stop (void *data, double progress)
{
  int *left = data;
  ck_assert (progress >= 0.0 && progress < 1.0);
  return --*left > 0;
}

START_TEST (a_climb_can_be_stopped)
{
  const dw_damper damper = study_covered_damper ();
  const dw_ladder_options options = options_of (everyday, N_ENTRIES (everyday), 5, 1);
  dw_ladder *ladder = NULL;
  dw_error err = { .text = "" };
  int left = _i + 1;
  ck_assert_int_eq (dw_ladder_make (&damper, &options, count_and_stop, &left, &ladder, &err),
                    DW_ERR_CANCELLED);
  ck_assert_int_eq (left, 0);
  ck_assert_ptr_null (ladder);
  left = 1000;
  ck_assert_int_eq (dw_ladder_make (&damper, &options, count_and_stop, &left, &ladder, &err),
                    DW_OK);
  ck_assert_msg (left < 1000, "it was asked");
  dw_ladder_free (ladder);
}
END_TEST

static const dw_shim one_leaf[] = { POLYMER (0.1, 1) };
static const dw_shim bad_leaf[] = { POLYMER (5.0, 2) };

static const struct
{
  const char *why;
  const dw_shim *box;
  int n_box;
  bool has_covered;
  dw_status status;
  const char *field;
} refusals[] = {
  { "no covered hole", everyday, 4, false, DW_ERR_GEOMETRY, "piston.holes" },
  { "nothing at hand", NULL, 0, true, DW_ERR_RANGE, "valve.shim" },
  { "one leaf for two dampers", one_leaf, 1, true, DW_ERR_RANGE, "valve.shim" },
  { "a leaf that is none", bad_leaf, 1, true, DW_ERR_RANGE, "valve.shim.thickness" },
};

START_TEST (what_cannot_be_stacked_is_told)
{
  dw_damper damper = study_covered_damper ();
  const dw_ladder_options options = options_of (refusals[_i].box, refusals[_i].n_box, 3, 2);
  dw_ladder *ladder = NULL;
  dw_error err = { .text = "" };
  damper.valve.n_shims = 0;
  damper.piston.holes[1].covered = refusals[_i].has_covered;
  const dw_status status = dw_ladder_make (&damper, &options, NULL, NULL, &ladder, &err);
  ck_assert_msg (status == refusals[_i].status, "%s: %s", refusals[_i].why, err.text);
  ck_assert_str_eq (err.field, refusals[_i].field);
  ck_assert_ptr_null (ladder);
  ck_assert_int_eq (dw_ladder_make (&damper, &options, NULL, NULL, &ladder, NULL), status);
}
END_TEST

START_TEST (a_rung_is_put_into_a_valve)
{
  const dw_damper damper = study_damper ();
  dw_ladder *ladder = ladder_of (&damper, everyday, N_ENTRIES (everyday), 3);
  dw_damper other = damper;
  dw_ladder_apply (&ladder->rungs[0], &other.valve);
  ck_assert_int_eq (other.valve.n_shims, 1);
  ck_assert (other.valve.shims[0].thickness == 0.1e-3 && other.valve.shims[0].count == 1);
  ck_assert (other.valve.lift_limit == damper.valve.lift_limit);
  dw_ladder_free (ladder);
  dw_ladder_free (NULL);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/ladder");
  TCase *stacks = tcase_create ("stacks");
  tcase_add_loop_test (stacks, a_ladder_is_every_stack_once_in_order_of_stiffness, 0,
                       N_ENTRIES (boxes));
  tcase_add_test (stacks, entries_of_equal_leaves_count_together);
  tcase_add_test (stacks, a_trial_uses_the_leaves_of_the_fitted_stack);
  tcase_add_test (stacks, the_fitted_stack_is_there_however_tall);
  tcase_add_test (stacks, the_fitted_stack_keeps_its_order);
  tcase_add_test (stacks, sixteen_kinds_are_stacked);
  tcase_add_test (stacks, a_ladder_too_long_loses_whole_heights);
  suite_add_tcase (suite, stacks);
  TCase *forces = tcase_create ("forces");
  tcase_set_timeout (forces, 60);
  tcase_add_loop_test (forces, a_rung_is_the_model_with_its_stack, 0, DW_N_STROKES);
  tcase_add_loop_test (forces, a_stiffer_stack_never_gives_less_force, 0, 10);
  tcase_add_loop_test (forces, the_coupling_lies_between_its_bounds, 0, 5);
  tcase_add_loop_test (forces, two_equal_leaves_are_twice_or_eight_times_one, 0, 2);
  tcase_add_test (forces, the_habit_forgets_that_materials_differ);
  tcase_add_test (forces, common_practice_is_met_by_the_everyday_shim);
  tcase_add_loop_test (forces, verdicts_are_those_of_a_plain_piston_and_of_holes_alone, 0,
                       DW_N_STROKES);
  tcase_add_test (forces, a_leaking_seat_does_not_hide_a_stiff_stack);
  tcase_add_test (forces, groups_hold_what_is_as_their_softest);
  suite_add_tcase (suite, forces);
  TCase *refused = tcase_create ("refused");
  tcase_add_loop_test (refused, a_climb_can_be_stopped, 0, 3);
  tcase_add_loop_test (refused, what_cannot_be_stacked_is_told, 0, N_ENTRIES (refusals));
  tcase_add_test (refused, a_rung_is_put_into_a_valve);
  suite_add_tcase (suite, refused);
  return run_suite (suite);
}
