/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-hole-match.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "test-support.h"

#define MM 1e-3

/* ---- closed cases ---- */

/* "4x1.3 2x1.1c": covered ones have a c. */
static dw_piston
piston_of (const char *text)
{
  dw_piston piston = { .thickness = 2.5 * MM };
  int read = 0;
  int count;
  double size;
  while (sscanf (text, " %dx%lf%n", &count, &size, &read) == 2)
    {
      text += read;
      const bool covered = *text == 'c';
      text += covered;
      piston.holes[piston.n_holes++] = (dw_holes){ count, size * MM, covered };
    }
  return piston;
}

static const struct
{
  const char *why;
  const char *from;
  const char *to;
  bool keeps_kinds;
  const char *steps; /* NULL = none; from group > to group x count, - = solid */
} rows[] = {
  { "the same piston", "6x1.3", "6x1.3", true, "0>0x6 " },
  { "all larger", "6x1.3", "6x1.4", true, "0>0x6 " },
  { "a hole does not shrink", "6x1.3", "6x1.2", true, NULL },
  { "one of six would have to shrink", "6x1.3", "5x1.4 1x1.2", true, NULL },
  { "a hole does not go away", "6x1.3", "5x1.3", true, NULL },
  { "one more is drilled from solid", "6x1.3", "7x1.3", true, "0>0x6 -1>0x1 " },
  { "a blank becomes anything", "", "2x1.3 4x1.1c", true, "-1>1x4 -1>0x2 " },
  { "nothing becomes a blank but a blank", "1x1.0", "", true, NULL },
  { "blank to blank", "", "", true, "" },
  { "half of them", "6x1.3", "3x1.3 3x1.5", true, "0>0x3 0>1x3 " },
  { "equal ones stay: one is drilled and not two", "1x1.0 1x1.2", "1x1.2 1x1.4", true,
    "1>0x1 0>1x1 " },
  { "the larger goes to the larger", "2x1.0 2x1.1", "2x1.5 2x1.3", true, "1>0x2 0>1x2 " },
  { "solid becomes the smallest", "2x1.0", "2x1.1 2x1.3", true, "0>1x2 -1>0x2 " },
  { "a group is split", "4x1.0 2x1.2", "3x1.3 3x1.5", true, "1>1x2 0>1x1 0>0x3 " },
  { "kinds go their own ways", "4x1.3 4x1.1c", "4x1.4 4x1.1c", true, "1>1x4 0>0x4 " },
  { "open ones do not get covered", "8x1.1", "4x1.1 4x1.1c", true, NULL },
  { "unless kinds may change", "8x1.1", "4x1.1 4x1.1c", false, "0>0x4 0>1x4 " },
  { "then those of one kind stay first", "2x1.1 2x1.1c", "2x1.1c 2x1.1", false, "0>1x2 1>0x2 " },
  { "covered ones would shrink although open ones could grow", "2x1.0 2x1.3c", "2x1.5 2x1.2c", true,
    NULL },
  { "without kinds they can be exchanged", "2x1.0 2x1.3c", "2x1.5 2x1.2c", false, "1>0x2 0>1x2 " },
};

START_TEST (holes_are_matched_one_way)
{
  const dw_piston from = piston_of (rows[_i].from);
  const dw_piston to = piston_of (rows[_i].to);
  dw_hole_match match;
  char text[400] = "";
  const bool found = dw_hole_match_find (&from, &to, rows[_i].keeps_kinds, &match);
  ck_assert_msg (found == (rows[_i].steps != NULL), "%s", rows[_i].why);
  if (!found)
    return;
  for (int i = 0; i < match.n; i++)
    {
      const size_t at = strlen (text);
      snprintf (text + at, sizeof text - at, "%d>%dx%d ", match.steps[i].from, match.steps[i].to,
                match.steps[i].count);
    }
  ck_assert_msg (strcmp (text, rows[_i].steps) == 0, "%s: %s", rows[_i].why, text);
}
END_TEST

START_TEST (sizes_that_differ_by_rounding_are_the_same)
{
  dw_piston from = piston_of ("6x1.3");
  dw_piston to = from;
  dw_hole_match match;
  to.holes[0].diameter = 1.3 / 25.4 * 0.0254;
  ck_assert (dw_hole_match_find (&from, &to, true, &match));
  ck_assert (dw_hole_match_find (&to, &from, true, &match));
  to.holes[0].diameter = 1.3 * MM - 2e-9;
  ck_assert (!dw_hole_match_find (&from, &to, true, &match));
  ck_assert (!dw_hole_match_is_same (1.3 * MM, 1.3 * MM - 2e-9));
}
END_TEST

/* ---- all ways there are, one after the other ---- */

#define MOST 6

/* Single holes of one piston. [nm], + COVERED */
typedef struct
{
  int n;
  struct
  {
    long size;
    bool covered;
  } hole[MOST];
} singles;

static singles
singles_of (const dw_piston *piston)
{
  singles s = { .n = 0 };
  for (int i = 0; i < piston->n_holes; i++)
    for (int k = 0; k < piston->holes[i].count; k++, s.n++)
      {
        ck_assert_int_lt (s.n, MOST);
        s.hole[s.n].size = lround (piston->holes[i].diameter * 1e9);
        s.hole[s.n].covered = piston->holes[i].covered;
      }
  return s;
}

typedef struct
{
  bool found;
  int left_alone; /* most holes that stay as they are */
  long largest;   /* [nm] smallest largest step among those */
} best_of_all;

/* Gives hole @p i of from each wanted hole in turn; what is not taken comes from solid. */
static void
try_all (const singles *from, const singles *to, bool keeps_kinds, int i, unsigned taken,
         int left_alone, long largest, best_of_all *best)
{
  if (i < from->n)
    {
      for (int j = 0; j < to->n; j++)
        {
          const long step = to->hole[j].size - from->hole[i].size;
          if ((taken >> j & 1U) != 0 || step < 0
              || (keeps_kinds && from->hole[i].covered != to->hole[j].covered))
            continue;
          try_all (from, to, keeps_kinds, i + 1, taken | 1U << j, left_alone + (step == 0),
                   step > largest ? step : largest, best);
        }
      return;
    }
  for (int j = 0; j < to->n; j++)
    if ((taken >> j & 1U) == 0 && to->hole[j].size > largest)
      largest = to->hole[j].size;
  if (!best->found || left_alone > best->left_alone
      || (left_alone == best->left_alone && largest < best->largest))
    *best = (best_of_all){ true, left_alone, largest };
}

static dw_piston
few_holes (test_random *r, int most)
{
  dw_piston piston = { .thickness = 2.5 * MM };
  int left = test_random_int (r, 0, most);
  while (left > 0)
    {
      const int count = test_random_int (r, 1, left);
      piston.holes[piston.n_holes++] = (dw_holes){ count, test_random_int (r, 8, 12) * 0.1 * MM,
                                                   test_random_int (r, 0, 2) == 0 };
      left -= count;
    }
  return piston;
}

/* What the match gives and takes, by group; how many stay, and its largest step. */
static best_of_all
judge (const dw_piston *from, const dw_piston *to, bool keeps_kinds, const dw_hole_match *match)
{
  int gives[DW_MAX_HOLE_GROUPS] = { 0 };
  int takes[DW_MAX_HOLE_GROUPS] = { 0 };
  best_of_all b = { .found = true };
  ck_assert_int_le (match->n, DW_HOLE_MATCH_MAX_STEPS);
  for (int i = 0; i < match->n; i++)
    {
      const dw_hole_step *step = &match->steps[i];
      const dw_holes *p = step->from < 0 ? NULL : &from->holes[step->from];
      const dw_holes *q = &to->holes[step->to];
      const long size = lround (q->diameter * 1e9);
      const long grows = p == NULL ? size : size - lround (p->diameter * 1e9);
      ck_assert_int_gt (step->count, 0);
      ck_assert_msg (grows >= 0, "a hole shrinks");
      ck_assert (p == NULL || !keeps_kinds || p->covered == q->covered);
      b.left_alone += grows == 0 ? step->count : 0;
      b.largest = grows > b.largest ? grows : b.largest;
      takes[step->to] += step->count;
      if (p != NULL)
        gives[step->from] += step->count;
    }
  for (int i = 0; i < from->n_holes; i++)
    ck_assert_int_eq (gives[i], from->holes[i].count);
  for (int i = 0; i < to->n_holes; i++)
    ck_assert_int_eq (takes[i], to->holes[i].count);
  return b;
}

START_TEST (no_other_way_is_better)
{
  test_random r = test_random_new (7101);
  int n_found = 0;
  int n_none = 0;
  for (int i = 0; i < 20000; i++)
    {
      const dw_piston from = few_holes (&r, i % 2 == 0 ? MOST : 3);
      const dw_piston to = few_holes (&r, MOST);
      const bool keeps_kinds = i % 3 != 0;
      const singles one = singles_of (&from);
      const singles two = singles_of (&to);
      best_of_all best = { .found = false };
      dw_hole_match match;
      try_all (&one, &two, keeps_kinds, 0, 0U, 0, 0, &best);
      ck_assert_int_eq (dw_hole_match_find (&from, &to, keeps_kinds, &match), best.found);
      if (!best.found)
        {
          n_none++;
          continue;
        }
      const best_of_all mine = judge (&from, &to, keeps_kinds, &match);
      ck_assert_int_eq (mine.left_alone, best.left_alone);
      ck_assert_int_eq (mine.largest, best.largest);
      n_found++;
    }
  ck_assert_int_gt (n_found, 1000);
  ck_assert_int_gt (n_none, 1000);
}
END_TEST

START_TEST (the_largest_pistons_are_matched)
{
  test_random r = test_random_new (7102);
  for (int k = 0; k < 2000; k++)
    {
      dw_piston from = { .n_holes = DW_MAX_HOLE_GROUPS };
      dw_piston to = { .n_holes = DW_MAX_HOLE_GROUPS };
      dw_hole_match match;
      for (int i = 0; i < DW_MAX_HOLE_GROUPS; i++)
        {
          const bool covered = test_random_int (&r, 0, 1) == 1;
          from.holes[i] = (dw_holes){ test_random_int (&r, 1, 64), 0.0, covered };
          from.holes[i].diameter = test_random_uniform (&r, 0.2 * MM, 5.0 * MM);
          to.holes[i] = (dw_holes){ 64, test_random_uniform (&r, 5.0 * MM, 10.0 * MM), covered };
        }
      ck_assert (dw_hole_match_find (&from, &to, k % 2 == 0, &match));
      judge (&from, &to, k % 2 == 0, &match);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/hole-match");
  TCase *tcase = tcase_create ("hole-match");
  tcase_add_loop_test (tcase, holes_are_matched_one_way, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, sizes_that_differ_by_rounding_are_the_same);
  tcase_add_test (tcase, no_other_way_is_better);
  tcase_add_test (tcase, the_largest_pistons_are_matched);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
