/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How fast one thread matches forces with a full box: 20 drills, 12 bottles, 6 thicknesses of shims four
 * times each, up to 4 leaves. An effective build is one that is judged, most of them by bounds alone.
 * The ratio of dampers computed to builds judged does not depend on the machine. Prints "name value
 * unit". */
#include <stdio.h>
#include <stdlib.h>

#include "match-boxes.h"
#include "test-support.h"

enum
{
  ROUNDS = 5
};

static const struct
{
  const char *name;
  double rebound; /* [1] wanted, of what is now */
  bool keeps_compression;
  const char *levers; /* as for match_levers() */
} rows[] = {
  { "less_rebound", 0.85, true, "ocsb" },
  { "more_rebound", 1.15, true, "ocsb" },
  { "free_compression", 0.85, false, "ocsb" },
  { "blends", 0.85, true, "ocsbm" },
};

static dw_match_wish
wish_of (const match_box *m, int row)
{
  dw_force_model model;
  dw_figures figures;
  if (dw_force_model_make (&m->now, m->temperature, &model, NULL) != DW_OK
      || dw_figures_read (&model, m->speeds, &figures, NULL) != DW_OK)
    abort ();
  dw_match_wish wish = dw_match_wish_hold (&figures, m->speeds);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    {
      wish.target[DW_REBOUND][v].force *= rows[row].rebound;
      wish.target[DW_COMPRESSION][v].is_free = !rows[row].keeps_compression;
    }
  return wish;
}

static void
measure (const match_box *m, int row)
{
  bool allowed[DW_N_LEVERS];
  dw_match_grids *grids = NULL;
  dw_match_found found = dw_match_found_none ();
  double round[ROUNDS];
  const dw_match_wish wish = wish_of (m, row);
  match_levers (rows[row].levers, allowed);
  if (dw_match_grids_new (&m->now, m->temperature, &m->box, allowed, NULL, &grids, NULL) != DW_OK)
    abort ();
  for (int i = 0; i < ROUNDS; i++)
    {
      const double start = test_now ();
      if (dw_match_all (grids, &wish, NULL, NULL, &found, NULL) != DW_OK)
        abort ();
      round[i] = test_now () - start;
    }
  test_sort (round, ROUNDS);
  printf ("match_%s_time %.3f s\n", rows[row].name, round[ROUNDS / 2]);
  printf ("match_%s_builds %.0f 1\n", rows[row].name, found.n_judged);
  printf ("match_%s_rate %.0f 1/s\n", rows[row].name, found.n_judged / round[ROUNDS / 2]);
  printf ("match_%s_computed %.0f 1\n", rows[row].name, found.n_computed);
  printf ("match_%s_computed_share %.4f 1\n", rows[row].name, found.n_computed / found.n_judged);
  dw_match_grids_free (grids);
}

int
main (void)
{
  match_box m;
  match_box_init (&m, 20, 12, 6, 4);
  for (int row = 0; row < N_ENTRIES (rows); row++)
    measure (&m, row);
  match_box_clear (&m);
  return 0;
}
