/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* Boxes that dw_match_sound() looks into, a grid. */
#define SOUNDINGS 12

/* Boxes between two questions whether to go on. */
#define PACE 256

/* What is known of a corner; where a force can not be computed, or stays at the cap of a vented damper,
 * it bounds nothing and is NaN. */
typedef struct
{
  double force[DW_N_STROKES][DW_N_SPEEDS];     /* [N] */
  double hydraulic[DW_N_STROKES][DW_N_SPEEDS]; /* [N] the part that parts and oil make */
  double reynolds[DW_N_STROKES][DW_N_SPEEDS];  /* [1] */
  bool stack_acts[DW_N_STROKES];
} corner;

/* A part of a grid, with two of its corners. */
typedef struct
{
  int from[DW_N_AXES_MATCH]; /* the firmest corner */
  int to[DW_N_AXES_MATCH];   /* the softest one, included */
  corner firm;
  corner soft;
} box;

/* What is being searched. */
typedef struct
{
  const dw_match_grids *grids;
  int grid;
  const dw_match_wish *wish;
  const dw_match_found *known; /* NULL = none */
  bool (*keep_going) (void *data);
  void *data;
  int n_boxes;
  int most_boxes; /* 0 = any number */
  bool is_cancelled;
  dw_match_found found;
} search;

/* ---- misses ---- */

static double
miss_of (const dw_match_target *target, double force)
{
  return target->is_free ? (double)NAN : force / target->force - 1.0;
}

/* Worst and rms of misses, NaN left out. */
static void
sum_up (double miss[DW_N_STROKES][DW_N_SPEEDS], double *worst, double *rms)
{
  double sum = 0.0;
  int n = 0;
  *worst = 0.0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      if (!isnan (miss[s][i]))
        {
          *worst = fmax (*worst, fabs (miss[s][i]));
          sum += miss[s][i] * miss[s][i];
          n++;
        }
  *rms = n > 0 ? sqrt (sum / n) : 0.0;
}

/* To the nearest, so that misses which are printed alike are equal. */
static long
step_of (double worst)
{
  return worst < 1e6 ? lround (worst / DW_MATCH_EQUAL) : 1000000000L;
}

static int
compare_builds (const dw_match_build *a, const dw_match_build *b)
{
  if (a->grid != b->grid)
    return a->grid < b->grid ? -1 : 1;
  for (int i = 0; i < DW_N_AXES_MATCH; i++)
    if (a->at[i] != b->at[i])
      return a->at[i] < b->at[i] ? -1 : 1;
  return 0;
}

int
dw_match_compare (const dw_match_candidate *a, const dw_match_candidate *b)
{
  const long x = step_of (a->worst);
  const long y = step_of (b->worst);
  if (x != y)
    return x < y ? -1 : 1;
  if (a->levers != b->levers)
    return a->levers < b->levers ? -1 : 1;
  if (a->for_good != b->for_good)
    return a->for_good < b->for_good ? -1 : 1;
  const long u = step_of (a->rms);
  const long v = step_of (b->rms);
  if (u != v)
    return u < v ? -1 : 1;
  return compare_builds (&a->build, &b->build);
}

/* ---- what was found ---- */

dw_match_found
dw_match_found_none (void)
{
  return (dw_match_found){ .n = 0 };
}

static void
keep (dw_match_found *found, const dw_match_candidate *c)
{
  int at = found->n;
  while (at > 0 && dw_match_compare (c, &found->best[at - 1]) < 0)
    at--;
  if (at > 0 && dw_match_compare (c, &found->best[at - 1]) == 0)
    return;
  if (at < DW_MATCH_MOST)
    {
      const int last = found->n < DW_MATCH_MOST ? found->n : DW_MATCH_MOST - 1;
      for (int i = last; i > at; i--)
        found->best[i] = found->best[i - 1];
      found->best[at] = *c;
      found->n = last + 1;
    }
  if (!found->has_with[c->levers] || dw_match_compare (c, &found->with[c->levers]) < 0)
    {
      found->has_with[c->levers] = true;
      found->with[c->levers] = *c;
    }
}

void
dw_match_found_merge (const dw_match_grids *grids, dw_match_found *found,
                      const dw_match_found *other)
{
  (void)grids;
  for (int i = 0; i < other->n; i++)
    keep (found, &other->best[i]);
  for (int i = 0; i <= DW_N_LEVERS; i++)
    if (other->has_with[i])
      keep (found, &other->with[i]);
  found->n_judged += other->n_judged;
  found->n_computed += other->n_computed;
}

/* ---- wishes ---- */

dw_match_wish
dw_match_wish_hold (const dw_figures *figures, const double speeds[DW_N_SPEEDS])
{
  dw_match_wish wish;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      {
        const double force = figures->point[s][i].force;
        wish.target[s][i] = (dw_match_target){ !(force > 0.0), force };
      }
  memcpy (wish.speeds, speeds, sizeof wish.speeds);
  return wish;
}

bool
dw_match_wish_is_any (const dw_match_wish *wish)
{
  return dw_match_wish_is_any_of (wish, DW_COMPRESSION)
         || dw_match_wish_is_any_of (wish, DW_REBOUND);
}

bool
dw_match_wish_is_any_of (const dw_match_wish *wish, dw_stroke stroke)
{
  for (int i = 0; i < DW_N_SPEEDS; i++)
    if (!wish->target[stroke][i].is_free)
      return true;
  return false;
}

/* ---- one build ---- */

typedef dw_force_point points[DW_N_STROKES][DW_N_SPEEDS];

/* @p all  strokes that nobody asked for as well */
static bool
compute (const dw_match_grids *grids, const dw_match_build *build, const dw_match_wish *wish,
         bool all, dw_damper *damper, points out)
{
  dw_force_model model;
  double temperature;
  if (!dw_match_grids_build (grids, build, damper, &temperature)
      || dw_force_model_make (damper, temperature, &model, NULL) != DW_OK)
    return false;
  for (int s = 0; s < DW_N_STROKES; s++)
    if ((all || dw_match_wish_is_any_of (wish, (dw_stroke)s))
        && dw_force_curve (&model, (dw_stroke)s, wish->speeds, DW_N_SPEEDS, out[s], NULL) != DW_OK)
      return false;
  return true;
}

static void
judge_forces (const dw_match_grids *grids, const dw_match_build *build, const dw_match_wish *wish,
              dw_match_candidate *out)
{
  out->build = *build;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      out->miss[s][i] = miss_of (&wish->target[s][i], out->force[s][i]);
  sum_up (out->miss, &out->worst, &out->rms);
  out->levers = dw_match_grids_levers (grids, build, &out->for_good);
}

bool
dw_match_judge (const dw_match_grids *grids, const dw_match_build *build, const dw_match_wish *wish,
                dw_match_candidate *out)
{
  dw_match_candidate c;
  points p;
  dw_damper damper;
  if (!dw_match_grids_has_room (grids, build) || !compute (grids, build, wish, true, &damper, p))
    return false;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      c.force[s][i] = p[s][i].force;
  judge_forces (grids, build, wish, &c);
  *out = c;
  return true;
}

/* ---- bounds ---- */

static void
fill_corner (search *s, const int at[DW_N_AXES_MATCH], corner *out)
{
  dw_match_build build = { .grid = s->grid };
  points p;
  dw_damper damper = { .valve = { .n_shims = 0 } };
  memcpy (build.at, at, sizeof build.at);
  s->found.n_computed += 1.0;
  const bool is_known = compute (s->grids, &build, s->wish, false, &damper, p);
  const dw_valve *valve = &damper.valve;
  for (int k = 0; k < DW_N_STROKES; k++)
    {
      /* shut and tight, what lies over the holes does nothing */
      out->stack_acts[k] = valve->n_shims == 0 || (int)valve->opens_on == k
                           || valve->seat_gap > 0.0;
      for (int i = 0; i < DW_N_SPEEDS; i++)
        {
          const bool bounds = is_known && dw_match_wish_is_any_of (s->wish, (dw_stroke)k)
                              && !(damper.gas.kind == DW_GAS_VENTED && p[k][i].is_void);
          out->force[k][i] = bounds ? p[k][i].force : (double)NAN;
          out->hydraulic[k][i] = bounds ? p[k][i].hydraulic : 0.0;
          out->reynolds[k][i] = bounds ? p[k][i].reynolds : 0.0;
        }
    }
}

/* Size of the least miss of a force between two others; a bound that is not known bounds nothing. */
static double
least_miss (const dw_match_target *target, double low, double high)
{
  if (target->is_free)
    return (double)NAN;
  if (low > target->force)
    return low / target->force - 1.0;
  if (high < target->force)
    return 1.0 - high / target->force;
  return 0.0;
}

static void
bound (const search *s, const box *b, double *worst, double *rms)
{
  double miss[DW_N_STROKES][DW_N_SPEEDS];
  for (int k = 0; k < DW_N_STROKES; k++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      {
        const bool spans[DW_N_AXES_MATCH]
            = { [DW_AXIS_STACK] = b->to[DW_AXIS_STACK] > b->from[DW_AXIS_STACK]
                                  && (b->firm.stack_acts[k] || b->soft.stack_acts[k]),
                [DW_AXIS_OIL] = b->to[DW_AXIS_OIL] > b->from[DW_AXIS_OIL] };
        const double margin = dw_match_margin (spans, b->soft.reynolds[k][i]);
        miss[k][i] = least_miss (&s->wish->target[k][i],
                                 b->soft.force[k][i] - margin * b->soft.hydraulic[k][i],
                                 b->firm.force[k][i] + margin * b->firm.hydraulic[k][i]);
      }
  sum_up (miss, worst, rms);
}

/* Levers of a grid but the blend, which the oil tells. */
static int
least_levers (const search *s, int *for_good)
{
  const dw_match_grid *grid = dw_match_grids_get (s->grids, s->grid);
  int n = 0;
  for (int i = 0; i < DW_N_LEVERS; i++)
    n += grid->uses[i] ? 1 : 0;
  *for_good = (grid->uses[DW_LEVER_OPEN] ? 1 : 0) + (grid->uses[DW_LEVER_COVERED] ? 1 : 0);
  return n;
}

/* The best that a box can hold, as a candidate that goes before all that it does: of equal builds the
 * first one counts, and none in the box goes before its firmest corner. */
static dw_match_candidate
hope_of (const search *s, const box *b)
{
  dw_match_candidate hope = { .build = { .grid = s->grid } };
  memcpy (hope.build.at, b->from, sizeof hope.build.at);
  bound (s, b, &hope.worst, &hope.rms);
  hope.levers = least_levers (s, &hope.for_good);
  return hope;
}

static bool
would_be_kept (const dw_match_found *found, const dw_match_candidate *hope)
{
  return found->n < DW_MATCH_MOST || dw_match_compare (hope, &found->best[DW_MATCH_MOST - 1]) < 0;
}

/* Whether a box may hold the best with its number of levers; one more where the oil may be a blend. */
static bool
would_lead (const search *s, const dw_match_found *found, const dw_match_candidate *hope)
{
  const int most = dw_match_grids_get (s->grids, s->grid)->has_blends ? 1 : 0;
  for (int more = 0; more <= most && hope->levers + more <= DW_N_LEVERS; more++)
    {
      dw_match_candidate h = *hope;
      h.levers += more;
      if (!found->has_with[h.levers] || dw_match_compare (&h, &found->with[h.levers]) < 0)
        return true;
    }
  return false;
}

static bool
is_hopeless (const search *s, const box *b)
{
  const dw_match_candidate hope = hope_of (s, b);
  const dw_match_found *others = s->known;
  const bool kept = would_be_kept (&s->found, &hope)
                    && (others == NULL || would_be_kept (others, &hope));
  const bool leads = would_lead (s, &s->found, &hope)
                     && (others == NULL || would_lead (s, others, &hope));
  return !kept && !leads;
}

/* ---- the search ---- */

static int
longest_axis (const box *b)
{
  int longest = 0;
  for (int a = 1; a < DW_N_AXES_MATCH; a++)
    if (b->to[a] - b->from[a] > b->to[longest] - b->from[longest])
      longest = a;
  return longest;
}

static void
judge_leaf (search *s, const box *b)
{
  dw_match_build build = { .grid = s->grid };
  dw_match_candidate c;
  memcpy (build.at, b->from, sizeof build.at);
  s->found.n_computed += 1.0;
  if (dw_match_judge (s->grids, &build, s->wish, &c))
    keep (&s->found, &c);
}

static double
hope_size (const search *s, const box *b)
{
  double worst, rms;
  bound (s, b, &worst, &rms);
  return worst + 1e-3 * rms;
}

static bool
is_one (const box *b)
{
  const int axis = longest_axis (b);
  return b->from[axis] == b->to[axis];
}

static bool
has_time (search *s)
{
  if (s->most_boxes > 0 && s->n_boxes >= s->most_boxes)
    return false;
  if (++s->n_boxes % PACE == 0 && s->keep_going != NULL && !s->keep_going (s->data))
    s->is_cancelled = true;
  return !s->is_cancelled;
}

/* Into halves, the one that promises more first. A box of one build is not bounded but judged. */
static void
look_into (search *s, const box *b)
{
  if (s->is_cancelled || is_hopeless (s, b) || !has_time (s))
    return;
  const int axis = longest_axis (b);
  const int middle = b->from[axis] + (b->to[axis] - b->from[axis]) / 2;
  box firm = *b;
  box soft = *b;
  firm.to[axis] = middle;
  soft.from[axis] = middle + 1;
  const bool firm_is_one = is_one (&firm);
  const bool soft_is_one = is_one (&soft);
  if (firm_is_one)
    judge_leaf (s, &firm);
  if (soft_is_one)
    judge_leaf (s, &soft);
  if (!firm_is_one)
    fill_corner (s, firm.to, &firm.soft);
  if (!soft_is_one)
    fill_corner (s, soft.from, &soft.firm);
  const bool firm_first = soft_is_one
                          || (!firm_is_one && hope_size (s, &firm) <= hope_size (s, &soft));
  if (!firm_is_one && firm_first)
    look_into (s, &firm);
  if (!soft_is_one)
    look_into (s, &soft);
  if (!firm_is_one && !firm_first)
    look_into (s, &firm);
}

static void
start (search *s)
{
  const dw_match_grid *grid = dw_match_grids_get (s->grids, s->grid);
  box all;
  double n = 1.0;
  for (int a = 0; a < DW_N_AXES_MATCH; a++)
    {
      all.from[a] = 0;
      all.to[a] = grid->n[a] - 1;
      n *= grid->n[a];
    }
  s->found.n_judged = n;
  if (is_one (&all))
    {
      judge_leaf (s, &all);
      return;
    }
  fill_corner (s, all.from, &all.firm);
  fill_corner (s, all.to, &all.soft);
  look_into (s, &all);
}

dw_match_found
dw_match_sound (const dw_match_grids *grids, int grid, const dw_match_wish *wish)
{
  search s = { .grids = grids,
               .grid = grid,
               .wish = wish,
               .most_boxes = SOUNDINGS,
               .found = dw_match_found_none () };
  start (&s);
  s.found.n_judged = 0.0;
  return s.found;
}

dw_status
dw_match_search (const dw_match_grids *grids, int grid, const dw_match_wish *wish,
                 const dw_match_found *known, bool (*keep_going) (void *data), void *data,
                 dw_match_found *out, dw_error *err)
{
  search s = { .grids = grids,
               .grid = grid,
               .wish = wish,
               .known = known,
               .keep_going = keep_going,
               .data = data,
               .found = dw_match_found_none () };
  assert (grids != NULL && wish != NULL && out != NULL);
  start (&s);
  if (s.is_cancelled)
    return dw_fail (err, DW_ERR_CANCELLED, "", -1, "stopped");
  *out = s.found;
  return DW_OK;
}

dw_status
dw_match_all (const dw_match_grids *grids, const dw_match_wish *wish,
              bool (*keep_going) (void *data), void *data, dw_match_found *out, dw_error *err)
{
  const int n = dw_match_grids_get_n (grids);
  dw_match_found found = dw_match_found_none ();
  for (int i = 0; i < n; i++)
    {
      const dw_match_found one = dw_match_sound (grids, i, wish);
      dw_match_found_merge (grids, &found, &one);
    }
  const dw_match_found known = found;
  for (int i = 0; i < n; i++)
    {
      dw_match_found one;
      const dw_status status = dw_match_search (grids, i, wish, &known, keep_going, data, &one,
                                                err);
      if (status != DW_OK)
        return status;
      dw_match_found_merge (grids, &found, &one);
    }
  *out = found;
  return DW_OK;
}
