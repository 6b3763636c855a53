/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How fast a ladder of stacks is climbed, in one thread: an everyday parts box, one with many kinds,
 * leaves that are neither loose nor stuck, two materials. A rung has both strokes and both bounds; the
 * same is told in figures of one damper, which it costs. Prints "name value unit". */
#include <stdio.h>
#include <stdlib.h>

#include "study-dampers.h"
#include "study/dw-ladder.h"
#include "test-support.h"

enum
{
  ROUNDS = 15,
  MOST_KINDS = 16,
  SINGLE = 2000
};

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

static volatile double sink;

static const struct
{
  const char *name;
  int n_kinds;
  int count; /* of each in the box */
  int most_leaves;
  double coupling; /* [1] */
  int nth_steel;   /* every nth kind is of steel; 0 = none */
} rows[] = {
  { "everyday", 4, 6, 3, 0.0, 0 },
  { "many_kinds", 16, 8, 4, 0.0, 0 },
  { "between", 16, 8, 3, 0.3, 0 },
  { "materials", 16, 8, 3, 0.3, 2 },
};

static int
fill_box (int row, dw_shim box[MOST_KINDS])
{
  for (int i = 0; i < rows[row].n_kinds; i++)
    {
      box[i] = (dw_shim){ 0.1e-3 + 0.025e-3 * i, rows[row].count, 4e9, 0.38, 100e6 };
      if (rows[row].nth_steel > 0 && i % rows[row].nth_steel == 0)
        box[i].modulus = 200e9;
    }
  return rows[row].n_kinds;
}

/* @return  [s] median of all rungs; @p n set to how many there are */
static double
climb_time (int row, size_t *n)
{
  dw_damper damper = study_covered_damper ();
  dw_shim box[MOST_KINDS];
  const int n_box = fill_box (row, box);
  dw_ladder_options options = dw_ladder_options_defaults (box, n_box, 25.0, speeds);
  double round[ROUNDS];
  options.most_leaves = rows[row].most_leaves;
  damper.valve.leaf_coupling = rows[row].coupling;
  for (int i = 0; i < ROUNDS; i++)
    {
      dw_ladder *ladder = NULL;
      const double start = test_now ();
      if (dw_ladder_make (&damper, &options, NULL, NULL, &ladder, NULL) != DW_OK)
        abort ();
      round[i] = test_now () - start;
      *n = ladder->n;
      sink = ladder->rungs[ladder->n / 2].stiffness;
      dw_ladder_free (ladder);
    }
  test_sort (round, ROUNDS);
  return round[ROUNDS / 2];
}

/* @return  [s] median of reading the figures of one damper anew */
static double
figures_time (void)
{
  const dw_damper damper = study_covered_damper ();
  double round[ROUNDS];
  for (int i = 0; i < ROUNDS; i++)
    {
      const double start = test_now ();
      for (int k = 0; k < SINGLE; k++)
        {
          dw_force_model model;
          dw_figures figures;
          if (dw_force_model_make (&damper, 25.0, &model, NULL) != DW_OK
              || dw_figures_read (&model, speeds, &figures, NULL) != DW_OK)
            abort ();
          sink = figures.pack[DW_REBOUND];
        }
      round[i] = (test_now () - start) / SINGLE;
    }
  test_sort (round, ROUNDS);
  return round[ROUNDS / 2];
}

int
main (void)
{
  const double single = figures_time ();
  printf ("ladder_figures %.1f us\n", 1e6 * single);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      size_t n = 0;
      const double time = climb_time ((int)i, &n);
      printf ("ladder_%s %.2f ms (%zu rungs)\n", rows[i].name, 1e3 * time, n);
      printf ("ladder_rungs_%s %.0f 1/s\n", rows[i].name, (double)n / time);
      printf ("ladder_cost_%s %.2f figures a rung\n", rows[i].name, time / (double)n / single);
    }
  return 0;
}
