/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How fast the drilling study answers, in one thread: choices of two sizes, the field that a map
 * shades, rows with all that is told of a choice, oils that hold. Prints "name value unit". */
#include <stdio.h>
#include <stdlib.h>

#include "model/dw-drill.h"
#include "study-dampers.h"
#include "study/dw-drill-table.h"
#include "test-support.h"

enum
{
  ROUNDS = 15,
  FIELD = 61,
  MOST_SIZES = 256
};

/* A study and the sizes that drills can reach in it. */
typedef struct
{
  dw_drilling study;
  dw_drill_box box;
  double sizes[DW_DRILL_SETS][MOST_SIZES]; /* [m] 0 = as it is */
  int n_sizes[DW_DRILL_SETS];
} job;

static volatile double sink;

/* All drills of the table, six bottles. */
static void
prepare (job *j, bool shimmed, dw_drill_division division)
{
  static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  static const double bottles[] = { 300e-6, 400e-6, 500e-6, 600e-6, 800e-6, 1000e-6 };
  static double drills[MOST_SIZES];
  const dw_damper damper = shimmed ? study_covered_damper () : dw_damper_defaults ();
  dw_drill_sets sets;
  size_t n = 0;
  const dw_drill_size *table = dw_drill_table (&n);
  for (size_t i = 0; i < n; i++)
    drills[i] = table[i].diameter;
  dw_drill_sets_init (&sets, &damper, division);
  if (dw_drilling_init (&j->study, &sets, 25.0, speeds, NULL) != DW_OK)
    abort ();
  j->box = (dw_drill_box){ .drills = drills,
                           .n_drills = (int)n,
                           .bottles = bottles,
                           .n_bottles = (int)(sizeof bottles / sizeof bottles[0]),
                           .limits = { .hole_grade = 12 } };
  for (int s = 0; s < DW_DRILL_SETS; s++)
    j->n_sizes[s] = dw_drill_sizes (&j->study.sets, s, drills, (int)n, j->sizes[s]);
}

/* Runs something for every choice. @return  how many there were */
static int
for_every_choice (const job *j, void (*run) (const job *j, const double size[DW_DRILL_SETS]))
{
  int n = 0;
  for (int i = 0; i < j->n_sizes[0]; i++)
    for (int k = 0; k < j->n_sizes[1]; k++)
      {
        const double size[DW_DRILL_SETS] = { j->sizes[0][i], j->sizes[1][k] };
        if (!dw_drill_sets_have_room (&j->study.sets, size))
          continue;
        run (j, size);
        n++;
      }
  return n;
}

/* Both strokes at three speeds. */
static void
evaluate (const job *j, const double size[DW_DRILL_SETS])
{
  dw_drill_result result;
  if (dw_drilling_at (&j->study, size, &result, NULL) != DW_OK)
    abort ();
  sink = result.change[DW_REBOUND][DW_HIGH];
}

static void
make_row (const job *j, const double size[DW_DRILL_SETS])
{
  dw_drill_row row;
  if (dw_drill_row_make (&j->study, &j->box, size, &row, NULL) != DW_OK)
    abort ();
  sink = dw_drill_row_scatter (&row);
}

static void
hold (const job *j, const double size[DW_DRILL_SETS])
{
  double viscosity = 0.0;
  if (dw_drilling_field_oil (&j->study, size, &viscosity, NULL) != DW_OK)
    abort ();
  sink = viscosity;
}

/* Median over rounds of how many a second. @param repeats  of all choices in a round */
static double
rate_of (const job *j, int repeats, void (*run) (const job *j, const double size[DW_DRILL_SETS]))
{
  double round[ROUNDS];
  for (int i = 0; i < ROUNDS; i++)
    {
      int n = 0;
      const double start = test_now ();
      for (int k = 0; k < repeats; k++)
        n += for_every_choice (j, run);
      round[i] = n / (test_now () - start);
    }
  test_sort (round, ROUNDS);
  return round[ROUNDS / 2];
}

/* Median seconds for a field of FIELD x FIELD pairs of diameters, 0.8 to 1.8 mm. */
static double
field_time (const job *j)
{
  const double least = 0.8e-3; /* [m] */
  const double span = 1.0e-3;  /* [m] */
  double round[ROUNDS];
  for (int r = 0; r < ROUNDS; r++)
    {
      const double start = test_now ();
      for (int i = 0; i < FIELD * FIELD; i++)
        {
          const double diameter[DW_DRILL_SETS] = { least + span * (i % FIELD) / (FIELD - 1),
                                                   least + span * (i / FIELD) / (FIELD - 1) };
          dw_figures figures;
          if (dw_drilling_field (&j->study, diameter, &figures, NULL) != DW_OK)
            abort ();
          sink = figures.pack[DW_REBOUND];
        }
      round[r] = test_now () - start;
    }
  test_sort (round, ROUNDS);
  return round[ROUNDS / 2];
}

static const struct
{
  const char *name;
  bool shimmed;
  dw_drill_division division;
} rows[] = {
  { "plain", false, DW_DRILL_HALVES },
  { "shim", true, DW_DRILL_HALVES },
  { "shim_kinds", true, DW_DRILL_KINDS },
};

int
main (void)
{
  static job j;
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      prepare (&j, rows[i].shimmed, rows[i].division);
      printf ("drilling_choices_%s %.0f 1/s\n", rows[i].name, rate_of (&j, 10, evaluate));
      printf ("drilling_field_%s %.2f ms\n", rows[i].name, 1e3 * field_time (&j));
      printf ("drilling_rows_%s %.0f 1/s\n", rows[i].name, rate_of (&j, 1, make_row));
      printf ("drilling_oils_%s %.0f 1/s\n", rows[i].name, rate_of (&j, 1, hold));
    }
  return 0;
}
