/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "match-boxes.h"

#include <string.h>

#include "random-damper.h"
#include "study-dampers.h"

static void
finish (match_box *m, int n_shims, int most_leaves)
{
  dw_ladder_options options = dw_ladder_options_defaults (m->shims, n_shims, m->temperature,
                                                          m->speeds);
  options.most_leaves = most_leaves;
  options.dampers = 1;
  m->ladder = NULL;
  if (n_shims > 0 && dw_ladder_make (&m->now, &options, NULL, NULL, &m->ladder, NULL) == DW_OK)
    {
      m->box.stacks = m->ladder->rungs;
      m->box.n_stacks = m->ladder->n;
    }
  m->box.drills = m->drills;
  m->box.bottles = m->bottles;
  m->box.pistons = m->pistons;
  m->box.temperatures = m->temperatures;
}

static void
set_speeds (match_box *m)
{
  static const double usual[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };
  memcpy (m->speeds, usual, sizeof usual);
}

void
match_box_init (match_box *m, int n_drills, int n_bottles, int n_shims, int most_leaves)
{
  *m = (match_box){ .now = study_covered_damper (), .temperature = 25.0 };
  set_speeds (m);
  for (int i = 0; i < n_drills; i++)
    m->drills[i] = 1.15e-3 + i * 0.05e-3;
  for (int i = 0; i < n_bottles; i++)
    m->bottles[i] = (dw_oil){ .kind = DW_OIL_NOMINAL, .viscosity = (255.0 + 50.0 * i) * 1e-6 };
  for (int i = 0; i < n_shims; i++)
    m->shims[i] = (dw_shim){ (0.05 + 0.04 * i) * 1e-3, 4, 4e9, 0.38, 100e6 };
  m->box.n_drills = n_drills;
  m->box.n_bottles = n_bottles;
  finish (m, n_shims, most_leaves);
}

void
match_box_init_random (match_box *m, test_random *random)
{
  *m = (match_box){ .now = test_random_int (random, 0, 2) > 0 ? study_covered_damper ()
                                                              : random_damper (random),
                    .temperature = random_temperature (random) };
  set_speeds (m);
  m->box.n_drills = test_random_int (random, 0, 4);
  m->box.n_bottles = test_random_int (random, 0, 4);
  m->box.n_pistons = test_random_int (random, 0, 1);
  m->box.n_temperatures = test_random_int (random, 0, 1);
  const int n_shims = test_random_int (random, 0, 3);
  for (int i = 0; i < m->box.n_drills; i++)
    m->drills[i] = test_random_uniform (random, 0.8e-3, 2.2e-3);
  for (int i = 0; i < m->box.n_bottles; i++)
    m->bottles[i] = (dw_oil){ .kind = DW_OIL_NOMINAL,
                              .viscosity = test_random_log_uniform (random, 50e-6, 2000e-6) };
  for (int i = 0; i < n_shims; i++)
    m->shims[i] = (dw_shim){ test_random_uniform (random, 0.05e-3, 0.3e-3),
                             test_random_int (random, 1, 2), 4e9, 0.38, 100e6 };
  for (int i = 0; i < m->box.n_pistons; i++)
    m->pistons[i] = study_covered_damper ().piston;
  for (int i = 0; i < m->box.n_temperatures; i++)
    m->temperatures[i] = random_temperature (random);
  finish (m, n_shims, 2);
}

void
match_box_clear (match_box *m)
{
  dw_ladder_free (m->ladder);
}

void
match_levers (const char *words, bool allowed[DW_N_LEVERS])
{
  static const char letters[DW_N_LEVERS + 1] = "ocsbmpt";
  for (int i = 0; i < DW_N_LEVERS; i++)
    allowed[i] = strchr (words, letters[i]) != NULL;
}

bool
match_next (const dw_match_grids *grids, dw_match_build *build)
{
  if (build->grid >= 0)
    {
      const dw_match_grid *grid = dw_match_grids_get (grids, build->grid);
      for (int a = 0; a < DW_N_AXES_MATCH; a++)
        {
          if (++build->at[a] < grid->n[a])
            return true;
          build->at[a] = 0;
        }
    }
  memset (build->at, 0, sizeof build->at);
  return ++build->grid < dw_match_grids_get_n (grids);
}
