/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match.h"

#include <math.h>
#include <pthread.h>
#include <string.h>

#include "match-boxes.h"

static dw_match_grids *
grids_of (const match_box *m, const char *levers)
{
  bool allowed[DW_N_LEVERS];
  dw_match_grids *grids = NULL;
  match_levers (levers, allowed);
  ck_assert_int_eq (
      dw_match_grids_new (&m->now, m->temperature, &m->box, allowed, NULL, &grids, NULL), DW_OK);
  return grids;
}

static dw_match_wish
wish_of (const match_box *m)
{
  dw_force_model model;
  dw_figures figures;
  ck_assert_int_eq (dw_force_model_make (&m->now, m->temperature, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, m->speeds, &figures, NULL), DW_OK);
  return dw_match_wish_hold (&figures, m->speeds);
}

/* Every build judged, the best kept by plain sorting into a list. */
static dw_match_found
by_force (const dw_match_grids *grids, const dw_match_wish *wish)
{
  dw_match_found found = dw_match_found_none ();
  dw_match_build build = { .grid = -1 };
  while (match_next (grids, &build))
    {
      dw_match_candidate c;
      if (!dw_match_judge (grids, &build, wish, &c))
        continue;
      int at = 0;
      while (at < found.n && dw_match_compare (&found.best[at], &c) < 0)
        at++;
      if (at < DW_MATCH_MOST)
        {
          const int moved = (found.n < DW_MATCH_MOST ? found.n : DW_MATCH_MOST - 1) - at;
          memmove (&found.best[at + 1], &found.best[at], (size_t)moved * sizeof c);
          found.best[at] = c;
          found.n += found.n < DW_MATCH_MOST ? 1 : 0;
        }
      if (!found.has_with[c.levers] || dw_match_compare (&c, &found.with[c.levers]) < 0)
        {
          found.has_with[c.levers] = true;
          found.with[c.levers] = c;
        }
    }
  return found;
}

static void
assert_same_candidate (const dw_match_candidate *a, const dw_match_candidate *b, const char *what,
                       int i)
{
  ck_assert_msg (dw_match_compare (a, b) == 0,
                 "%s %d: grid %d (%d %d) misses %.6g %%, not grid %d (%d %d) %.6g %%", what, i,
                 a->build.grid, a->build.at[0], a->build.at[1], 100.0 * a->worst, b->build.grid,
                 b->build.at[0], b->build.at[1], 100.0 * b->worst);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (a->force[s][v] == b->force[s][v]);
}

static void
assert_same (const dw_match_found *a, const dw_match_found *b)
{
  ck_assert_int_eq (a->n, b->n);
  for (int i = 0; i < a->n; i++)
    assert_same_candidate (&a->best[i], &b->best[i], "place", i);
  for (int i = 0; i <= DW_N_LEVERS; i++)
    {
      ck_assert_msg (a->has_with[i] == b->has_with[i], "with %d levers", i);
      if (a->has_with[i])
        assert_same_candidate (&a->with[i], &b->with[i], "levers", i);
    }
}

/* Some held, some free, some changed, alike for all three speeds or each for itself. */
static dw_match_wish
random_wish (const match_box *m, test_random *random)
{
  dw_match_wish wish = wish_of (m);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        dw_match_target *t = &wish.target[s][v];
        t->is_free = test_random_int (random, 0, 2) == 0 || !(t->force > 0.0);
        if (test_random_int (random, 0, 1) == 0)
          t->force *= test_random_uniform (random, 0.6, 1.5);
      }
  return wish;
}

START_TEST (what_is_found_is_what_judging_each_build_gives)
{
  enum
  {
    N_BOXES = 25
  };
  test_random random = test_random_new (8200 + (uint64_t)_i);
  for (int k = 0; k < N_BOXES; k++)
    {
      match_box m;
      match_box_init_random (&m, &random);
      dw_match_grids *grids = grids_of (&m, k % 3 == 0 ? "ocsbmpt" : "ocsbpt");
      const dw_match_wish wish = random_wish (&m, &random);
      dw_match_found found;
      ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &found, NULL), DW_OK);
      const dw_match_found expected = by_force (grids, &wish);
      assert_same (&found, &expected);
      dw_match_grids_free (grids);
      match_box_clear (&m);
    }
}
END_TEST

/* A build of the box is wished for: it is found, and nothing is better. */
START_TEST (a_planted_answer_is_found)
{
  test_random random = test_random_new (8300 + (uint64_t)_i);
  match_box m;
  match_box_init (&m, 12, 8, 5, 3);
  dw_match_grids *grids = grids_of (&m, "ocsb");
  dw_match_candidate planted;
  dw_match_wish wish = wish_of (&m);
  dw_match_build build;
  do
    {
      build.grid = test_random_int (&random, 0, dw_match_grids_get_n (grids) - 1);
      for (int a = 0; a < DW_N_AXES_MATCH; a++)
        build.at[a] = test_random_int (&random, 0,
                                       dw_match_grids_get (grids, build.grid)->n[a] - 1);
    }
  while (!dw_match_judge (grids, &build, &wish, &planted));
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      wish.target[s][v].force = planted.force[s][v];
  dw_match_found found;
  ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &found, NULL), DW_OK);
  ck_assert (found.best[0].worst < DW_MATCH_EQUAL);
  ck_assert_int_le (found.best[0].levers, planted.levers + 1);
  bool is_there = false;
  for (int i = 0; i < found.n; i++)
    is_there = is_there || memcmp (&found.best[i].build, &build, sizeof build) == 0;
  ck_assert (is_there || found.n == DW_MATCH_MOST);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (less_work_goes_first_where_the_miss_is_equal)
{
  match_box m;
  match_box_init (&m, 6, 6, 3, 2);
  dw_match_grids *grids = grids_of (&m, "ocsb");
  dw_match_wish wish = wish_of (&m);
  dw_match_found found;
  /* hold compression and let rebound go: nothing need be done, then the stack alone */
  for (int v = 0; v < DW_N_SPEEDS; v++)
    wish.target[DW_REBOUND][v].is_free = true;
  ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &found, NULL), DW_OK);
  ck_assert_int_eq (found.best[0].levers, 0);
  assert_close (found.best[0].worst, 0.0, 0.0, 1e-9, "as it is");
  ck_assert_int_eq (found.best[1].levers, 1);
  ck_assert_int_eq (found.best[1].for_good, 0);
  for (int i = 1; i < found.n; i++)
    ck_assert_int_lt (dw_match_compare (&found.best[i - 1], &found.best[i]), 0);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (misses_are_those_of_the_forces)
{
  match_box m;
  match_box_init (&m, 3, 3, 0, 1);
  dw_match_grids *grids = grids_of (&m, "ob");
  dw_match_wish wish = wish_of (&m);
  dw_match_found found;
  wish.target[DW_COMPRESSION][DW_LOW].force *= 0.9;
  wish.target[DW_REBOUND][DW_HIGH].is_free = true;
  ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &found, NULL), DW_OK);
  for (int i = 0; i < found.n; i++)
    {
      const dw_match_candidate *c = &found.best[i];
      double worst = 0.0;
      ck_assert (isnan (c->miss[DW_REBOUND][DW_HIGH]));
      for (int s = 0; s < DW_N_STROKES; s++)
        for (int v = 0; v < DW_N_SPEEDS; v++)
          if (!wish.target[s][v].is_free)
            {
              assert_close (c->miss[s][v], c->force[s][v] / wish.target[s][v].force - 1.0, 1e-12,
                            1e-15, "by definition");
              worst = fmax (worst, fabs (c->miss[s][v]));
            }
      assert_close (c->worst, worst, 1e-15, 0.0, "the largest of them");
      ck_assert (c->rms <= c->worst + 1e-15);
    }
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

/* ---- many hands ---- */

typedef struct
{
  const dw_match_grids *grids;
  const dw_match_wish *wish;
  const dw_match_found *known; /* NULL = first round */
  int first, step;
  dw_match_found found;
} share;

static void *
work (void *data)
{
  share *s = data;
  s->found = dw_match_found_none ();
  for (int i = s->first; i < dw_match_grids_get_n (s->grids); i += s->step)
    {
      dw_match_found one = dw_match_found_none ();
      if (s->known == NULL)
        one = dw_match_sound (s->grids, i, s->wish);
      else
        dw_match_search (s->grids, i, s->wish, s->known, NULL, NULL, &one, NULL);
      dw_match_found_merge (s->grids, &s->found, &one);
    }
  return NULL;
}

static dw_match_found
by_threads (const dw_match_grids *grids, const dw_match_wish *wish, int n)
{
  enum
  {
    MOST = 4
  };
  dw_match_found found = dw_match_found_none ();
  dw_match_found known;
  for (int round = 0; round < 2; round++)
    {
      pthread_t threads[MOST];
      share shares[MOST];
      for (int i = 0; i < n; i++)
        {
          shares[i] = (share){ grids, wish, round == 0 ? NULL : &known, i, n, found };
          ck_assert_int_eq (pthread_create (&threads[i], NULL, work, &shares[i]), 0);
        }
      for (int i = 0; i < n; i++)
        pthread_join (threads[i], NULL);
      for (int i = n - 1; i >= 0; i--)
        dw_match_found_merge (grids, &found, &shares[i].found);
      known = found;
    }
  return found;
}

START_TEST (any_number_of_threads_finds_the_same)
{
  match_box m;
  match_box_init (&m, 10, 8, 4, 3);
  dw_match_grids *grids = grids_of (&m, "ocsbm");
  dw_match_wish wish = wish_of (&m);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    wish.target[DW_REBOUND][v].force *= 0.9 - 0.05 * v;
  dw_match_found alone;
  ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &alone, NULL), DW_OK);
  for (int n = 1; n <= 4; n++)
    {
      const dw_match_found found = by_threads (grids, &wish, n);
      assert_same (&found, &alone);
      ck_assert (found.n_judged == alone.n_judged && found.n_computed == alone.n_computed);
    }
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

static bool
stop (void *data)
{
  return --*(int *)data > 0;
}

START_TEST (it_can_be_stopped)
{
  match_box m;
  int patience = 1;
  dw_match_found found = dw_match_found_none ();
  match_box_init (&m, 12, 10, 5, 3);
  dw_match_grids *grids = grids_of (&m, "ocsbm");
  dw_match_wish wish = wish_of (&m);
  wish.target[DW_REBOUND][DW_HIGH].force *= 0.8;
  ck_assert_int_eq (dw_match_all (grids, &wish, stop, &patience, &found, NULL), DW_ERR_CANCELLED);
  ck_assert_int_eq (found.n, 0);
  ck_assert_int_eq (patience, 0);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (most_builds_are_left_aside_without_being_computed)
{
  match_box m;
  match_box_init (&m, 20, 12, 6, 4);
  dw_match_grids *grids = grids_of (&m, "ocsb");
  dw_match_wish wish = wish_of (&m);
  dw_match_found found;
  for (int v = 0; v < DW_N_SPEEDS; v++)
    wish.target[DW_REBOUND][v].force *= 0.85;
  ck_assert_int_eq (dw_match_all (grids, &wish, NULL, NULL, &found, NULL), DW_OK);
  assert_close (found.n_judged, dw_match_grids_count (grids), 0.0, 0.0, "none is forgotten");
  ck_assert_msg (found.n_computed < 0.5 * found.n_judged, "%.0f of %.0f", found.n_computed,
                 found.n_judged);
  dw_match_grids_free (grids);
  match_box_clear (&m);
}
END_TEST

START_TEST (a_force_of_nothing_or_less_is_free)
{
  static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  dw_figures figures = { .rebound_share = { 0.0 } };
  figures.point[DW_COMPRESSION][DW_LOW].force = 2.5;
  figures.point[DW_REBOUND][DW_LOW].force = -1.5;
  const dw_match_wish wish = dw_match_wish_hold (&figures, speeds);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      ck_assert (wish.target[s][v].is_free == !(s == DW_COMPRESSION && v == DW_LOW));
  ck_assert (wish.target[DW_REBOUND][DW_LOW].force == -1.5);
}
END_TEST

START_TEST (a_wish_for_nothing_is_told_apart)
{
  match_box m;
  match_box_init (&m, 0, 0, 0, 1);
  dw_match_wish wish = wish_of (&m);
  ck_assert (dw_match_wish_is_any (&wish));
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      wish.target[s][v].is_free = true;
  ck_assert (!dw_match_wish_is_any (&wish));
  match_box_clear (&m);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/match");
  TCase *tcase = tcase_create ("match");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, what_is_found_is_what_judging_each_build_gives, 0, 4);
  tcase_add_loop_test (tcase, a_planted_answer_is_found, 0, 8);
  tcase_add_test (tcase, less_work_goes_first_where_the_miss_is_equal);
  tcase_add_test (tcase, misses_are_those_of_the_forces);
  tcase_add_test (tcase, any_number_of_threads_finds_the_same);
  tcase_add_test (tcase, it_can_be_stopped);
  tcase_add_test (tcase, most_builds_are_left_aside_without_being_computed);
  tcase_add_test (tcase, a_force_of_nothing_or_less_is_free);
  tcase_add_test (tcase, a_wish_for_nothing_is_told_apart);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
