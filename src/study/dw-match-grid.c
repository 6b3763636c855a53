/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-match-grid.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "model/dw-drill.h"
#include "model/dw-oil.h"

/* [1] Bottles are mixed in these steps: what a syringe measures of a filling. */
static const double BLEND_STEP = 0.05;

/* [1] Oils whose viscosities differ by less are one. */
static const double SAME_OIL = 1e-9;

/* [1] Blends that differ by less do: nobody mixes more exactly, and no bottle is. */
static const double SAME_BLEND = 0.01;

/* [1] See dw_match_margin(). Up to the first Reynolds number viscosity alone decides, past the second the
 * loss that grows with it may outweigh what a thinner oil takes away. */
static const double CREEPING_REYNOLDS = 32.0;
static const double VISCOUS_REYNOLDS = 128.0;
static const double OIL_MARGIN[] = { 0.004, 0.02, 0.07 };
static const double STACK_MARGIN[] = { 0.02, 0.02, 0.08 };

double
dw_match_margin (const bool spans[DW_N_AXES_MATCH], double reynolds)
{
  const int range = reynolds <= CREEPING_REYNOLDS ? 0 : reynolds <= VISCOUS_REYNOLDS ? 1 : 2;
  return (spans[DW_AXIS_STACK] ? STACK_MARGIN[range] : 0.0)
         + (spans[DW_AXIS_OIL] ? OIL_MARGIN[range] : 0.0);
}

/* A piston with the drills that make its holes larger. */
typedef struct
{
  int index; /* of the box; -1 = the present one */
  dw_drill_sets sets;
  double *drills[DW_DRILL_SETS]; /* [m] rising; owned */
  int n_drills[DW_DRILL_SETS];
} piston;

/* Oils in order, each thinner than the one before. */
typedef struct
{
  int first; /* of the oils */
  int n;
  bool has_blends;
} family;

struct dw_match_grids
{
  dw_damper now;
  double temperature; /* [degC] */
  dw_match_box box;
  piston *pistons;
  int n_pistons;
  dw_match_oil *oils;
  int n_oils;
  family *families;
  int n_families;
  int *stacks; /* of the box but the own one, from the stiffest down */
  int n_stacks;
  dw_match_grid *grids;
  int n_grids;
  int room;
  bool needed[DW_N_LEVERS];
};

/* ---- pistons ---- */

static int
rising (const void *a, const void *b)
{
  const double x = *(const double *)a;
  const double y = *(const double *)b;
  return x < y ? -1 : x > y;
}

/* Drills that make every hole of a set larger, each once. */
static bool
find_drills (piston *p, const dw_match_box *box)
{
  for (int s = 0; s < DW_DRILL_SETS; s++)
    {
      p->drills[s] = calloc ((size_t)box->n_drills + 1, sizeof (double));
      if (p->drills[s] == NULL)
        return false;
      for (int i = 0; i < box->n_drills; i++)
        if (dw_drill_sets_can_reach (&p->sets, s, box->drills[i])
            && box->drills[i] <= p->sets.largest[s] + DW_FACE_SAME)
          p->drills[s][p->n_drills[s]++] = box->drills[i];
      qsort (p->drills[s], (size_t)p->n_drills[s], sizeof (double), rising);
      int n = 0;
      for (int i = 0; i < p->n_drills[s]; i++)
        if (n == 0 || p->drills[s][i] - p->drills[s][n - 1] > DW_DRILL_SAME)
          p->drills[s][n++] = p->drills[s][i];
      p->n_drills[s] = n;
    }
  return true;
}

/* A piston that would not fit, or that holds nothing to let oil through, is left out. */
static bool
add_piston (dw_match_grids *g, int index)
{
  piston *p = &g->pistons[g->n_pistons];
  dw_damper damper = g->now;
  if (index >= 0)
    damper.piston = g->box.pistons[index];
  if (index >= 0 && (damper.piston.n_holes == 0 || dw_damper_check (&damper, NULL, 0) > 0))
    return true;
  *p = (piston){ .index = index };
  dw_drill_sets_init (&p->sets, &damper, DW_DRILL_KINDS);
  g->n_pistons++;
  return find_drills (p, &g->box);
}

/* ---- oils ---- */

static bool
is_plain_silicone (const dw_oil *oil)
{
  return oil->kind == DW_OIL_NOMINAL && !oil->has_thinning;
}

static bool
is_present (const dw_match_grids *g, const dw_match_oil *oil)
{
  return is_plain_silicone (&g->now.oil) && !isnan (oil->viscosity)
         && fabs (oil->viscosity / g->now.oil.viscosity - 1.0) < SAME_OIL;
}

static void
add_oil (dw_match_grids *g, dw_match_oil oil)
{
  if (!is_present (g, &oil))
    g->oils[g->n_oils++] = oil;
}

static void
add_blends (dw_match_grids *g, int i, int k)
{
  const double a = g->box.bottles[i].viscosity;
  const double b = g->box.bottles[k].viscosity;
  const int steps = (int)lround (1.0 / BLEND_STEP);
  if (fabs (a / b - 1.0) < SAME_OIL)
    return;
  for (int n = 1; n < steps; n++)
    {
      const double share = n * BLEND_STEP;
      const dw_oil oil = { .kind = DW_OIL_BLEND,
                           .density = g->box.bottles[i].density,
                           .n_parts = 2,
                           .parts = { { a, 1.0 - share }, { b, share } } };
      add_oil (g, (dw_match_oil){ oil, dw_blend_log (a, b, 1.0 - share), i, k, share });
    }
}

static int
thickest_first (const void *a, const void *b)
{
  const dw_match_oil *p = a;
  const dw_match_oil *q = b;
  if (p->viscosity != q->viscosity)
    return p->viscosity > q->viscosity ? -1 : 1;
  /* a bottle is less work than a blend; then the order of the box */
  if ((p->other < 0) != (q->other < 0))
    return p->other < 0 ? -1 : 1;
  if (p->bottle != q->bottle)
    return p->bottle - q->bottle;
  return p->other - q->other;
}

static bool
is_near (const dw_match_oil *thick, const dw_match_oil *thin)
{
  return thick->viscosity / thin->viscosity - 1.0 < SAME_BLEND;
}

/* Of oils that are as good as one a bottle stays, else the first blend. */
static void
drop_near_blends (dw_match_grids *g)
{
  int n = 0;
  for (int i = 0; i < g->n_oils; i++)
    {
      const dw_match_oil *oil = &g->oils[i];
      bool is_needless = oil->other >= 0 && n > 0 && is_near (&g->oils[n - 1], oil);
      for (int k = i + 1; oil->other >= 0 && k < g->n_oils && is_near (oil, &g->oils[k]); k++)
        is_needless = is_needless || g->oils[k].other < 0;
      if (!is_needless)
        g->oils[n++] = *oil;
    }
  g->n_oils = n;
}

static bool
find_oils (dw_match_grids *g, const bool allowed[DW_N_LEVERS])
{
  const int n = g->box.n_bottles;
  const size_t most
      = (size_t)n + (size_t)n * (size_t)(n > 0 ? n - 1 : 0) / 2 * (size_t)lround (1.0 / BLEND_STEP);
  g->oils = calloc (most + 1, sizeof *g->oils);
  g->families = calloc ((size_t)n + 1, sizeof *g->families);
  if (g->oils == NULL || g->families == NULL)
    return false;
  for (int i = 0; i < n; i++)
    {
      const dw_oil *oil = &g->box.bottles[i];
      if (!is_plain_silicone (oil))
        continue;
      if (allowed[DW_LEVER_OIL])
        add_oil (g, (dw_match_oil){ *oil, oil->viscosity, i, -1, 0.0 });
      for (int k = i + 1; allowed[DW_LEVER_BLEND] && k < n; k++)
        if (is_plain_silicone (&g->box.bottles[k]))
          add_blends (g, i, k);
    }
  qsort (g->oils, (size_t)g->n_oils, sizeof *g->oils, thickest_first);
  drop_near_blends (g);
  if (g->n_oils > 0)
    g->families[g->n_families++] = (family){ 0, g->n_oils, allowed[DW_LEVER_BLEND] };
  /* any other oil thins in its own way: no order to be relied on */
  for (int i = 0; allowed[DW_LEVER_OIL] && i < n; i++)
    if (!is_plain_silicone (&g->box.bottles[i]))
      {
        g->families[g->n_families++] = (family){ g->n_oils, 1, false };
        g->oils[g->n_oils++] = (dw_match_oil){ g->box.bottles[i], (double)NAN, i, -1, 0.0 };
      }
  return true;
}

/* ---- grids ---- */

static bool
add_grid (dw_match_grids *g, const dw_match_grid *grid)
{
  for (int i = 0; i < DW_N_LEVERS; i++)
    if (g->needed[i] && !grid->uses[i])
      return true;
  if (g->n_grids == g->room)
    {
      const int room = g->room == 0 ? 64 : 2 * g->room;
      dw_match_grid *grids = realloc (g->grids, (size_t)room * sizeof *grids);
      if (grids == NULL)
        return false;
      g->grids = grids;
      g->room = room;
    }
  g->grids[g->n_grids++] = *grid;
  return true;
}

static bool
find_stacks (dw_match_grids *g)
{
  g->stacks = calloc (g->box.n_stacks + 1, sizeof *g->stacks);
  if (g->stacks == NULL)
    return false;
  for (size_t i = g->box.n_stacks; i > 0; i--)
    if (!g->box.stacks[i - 1].is_own)
      g->stacks[g->n_stacks++] = (int)(i - 1);
  return true;
}

static bool
has_covered (const piston *p)
{
  return p->sets.n_holes[1] > 0;
}

/* Stacks and oils for drilled holes, or for holes as they are: a stack used or not. */
static bool
add_grids_of (dw_match_grids *g, const piston *p, dw_match_grid grid,
              const bool allowed[DW_N_LEVERS])
{
  const bool can_stack = allowed[DW_LEVER_STACK] && has_covered (p) && g->n_stacks > 0;
  for (int way = 0; way <= (can_stack ? 1 : 0); way++)
    {
      grid.uses[DW_LEVER_STACK] = way == 1;
      grid.n[DW_AXIS_STACK] = way == 1 ? g->n_stacks : 1;
      if (!add_grid (g, &grid))
        return false;
    }
  return true;
}

/* One piston at one temperature with the oils of one family: each pair of drills is a grid of its own,
 * so that there is work for many hands. */
static bool
add_grids (dw_match_grids *g, const piston *p, int temperature, int fam,
           const bool allowed[DW_N_LEVERS])
{
  const int n_open = allowed[DW_LEVER_OPEN] ? p->n_drills[0] : 0;
  const int n_covered = allowed[DW_LEVER_COVERED] ? p->n_drills[1] : 0;
  for (int open = -1; open < n_open; open++)
    for (int covered = -1; covered < n_covered; covered++)
      {
        const dw_match_grid grid
            = { .piston = p->index,
                .drill = { open, covered },
                .temperature = temperature,
                .family = fam,
                .uses = { [DW_LEVER_OPEN] = open >= 0,
                          [DW_LEVER_COVERED] = covered >= 0,
                          [DW_LEVER_OIL] = fam >= 0,
                          [DW_LEVER_PISTON] = p->index >= 0,
                          [DW_LEVER_TEMPERATURE] = temperature >= 0 },
                .has_blends = fam >= 0 && g->families[fam].has_blends,
                .n = { [DW_AXIS_STACK] = 1, [DW_AXIS_OIL] = fam >= 0 ? g->families[fam].n : 1 } };
        if (!add_grids_of (g, p, grid, allowed))
          return false;
      }
  return true;
}

static bool
lay_out (dw_match_grids *g, const bool allowed[DW_N_LEVERS])
{
  const int n_pistons = allowed[DW_LEVER_PISTON] ? g->box.n_pistons : 0;
  const int n_temperatures = allowed[DW_LEVER_TEMPERATURE] ? g->box.n_temperatures : 0;
  g->pistons = calloc ((size_t)n_pistons + 1, sizeof *g->pistons);
  if (g->pistons == NULL)
    return false;
  for (int i = -1; i < n_pistons; i++)
    if (!add_piston (g, i))
      return false;
  if (!find_oils (g, allowed) || !find_stacks (g))
    return false;
  for (int p = 0; p < g->n_pistons; p++)
    for (int t = -1; t < n_temperatures; t++)
      for (int fam = -1; fam < g->n_families; fam++)
        if (!add_grids (g, &g->pistons[p], t, fam, allowed))
          return false;
  return true;
}

dw_status
dw_match_grids_new (const dw_damper *now, double temperature, const dw_match_box *box,
                    const bool allowed[DW_N_LEVERS], const bool needed[DW_N_LEVERS],
                    dw_match_grids **out, dw_error *err)
{
  assert (now != NULL && box != NULL && allowed != NULL && out != NULL);

  dw_match_grids *g = calloc (1, sizeof *g);
  if (g == NULL)
    return dw_fail (err, DW_ERR_NO_MEMORY, "", -1, "out of memory");
  g->now = *now;
  g->temperature = temperature;
  g->box = *box;
  for (int i = 0; needed != NULL && i < DW_N_LEVERS; i++)
    g->needed[i] = needed[i];
  if (!lay_out (g, allowed))
    {
      dw_match_grids_free (g);
      return dw_fail (err, DW_ERR_NO_MEMORY, "", -1, "out of memory");
    }
  *out = g;
  return DW_OK;
}

void
dw_match_grids_free (dw_match_grids *g)
{
  if (g == NULL)
    return;
  for (int i = 0; i < g->n_pistons; i++)
    for (int s = 0; s < DW_DRILL_SETS; s++)
      free (g->pistons[i].drills[s]);
  free (g->pistons);
  free (g->oils);
  free (g->families);
  free (g->stacks);
  free (g->grids);
  free (g);
}

int
dw_match_grids_get_n (const dw_match_grids *g)
{
  return g->n_grids;
}

const dw_match_grid *
dw_match_grids_get (const dw_match_grids *g, int grid)
{
  assert (grid >= 0 && grid < g->n_grids);
  return &g->grids[grid];
}

double
dw_match_grids_count (const dw_match_grids *g)
{
  double n = 0.0;
  for (int i = 0; i < g->n_grids; i++)
    {
      double of_grid = 1.0;
      for (int a = 0; a < DW_N_AXES_MATCH; a++)
        of_grid *= g->grids[i].n[a];
      n += of_grid;
    }
  return n;
}

/* ---- builds ---- */

static const piston *
piston_of (const dw_match_grids *g, const dw_match_grid *grid)
{
  for (int i = 0; i < g->n_pistons; i++)
    if (g->pistons[i].index == grid->piston)
      return &g->pistons[i];
  assert (false); /* every grid has a piston */
  return NULL;
}

void
dw_match_grids_sizes (const dw_match_grids *g, const dw_match_build *build,
                      double size[DW_DRILL_SETS])
{
  const dw_match_grid *grid = dw_match_grids_get (g, build->grid);
  const piston *p = piston_of (g, grid);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    size[s] = grid->drill[s] >= 0 ? p->drills[s][grid->drill[s]] : 0.0;
}

int
dw_match_grids_stack (const dw_match_grids *g, const dw_match_build *build)
{
  const dw_match_grid *grid = dw_match_grids_get (g, build->grid);
  return grid->uses[DW_LEVER_STACK] ? g->stacks[build->at[DW_AXIS_STACK]] : -1;
}

const dw_match_oil *
dw_match_grids_oil (const dw_match_grids *g, const dw_match_build *build)
{
  const dw_match_grid *grid = dw_match_grids_get (g, build->grid);
  if (grid->family < 0)
    return NULL;
  return &g->oils[g->families[grid->family].first + build->at[DW_AXIS_OIL]];
}

bool
dw_match_grids_build (const dw_match_grids *g, const dw_match_build *build, dw_damper *damper,
                      double *temperature)
{
  const dw_match_grid *grid = dw_match_grids_get (g, build->grid);
  const dw_match_oil *oil = dw_match_grids_oil (g, build);
  const int stack = dw_match_grids_stack (g, build);
  double size[DW_DRILL_SETS];
  dw_match_grids_sizes (g, build, size);
  if (dw_drill_sets_resize (&piston_of (g, grid)->sets, size, damper, NULL) != DW_OK)
    return false;
  if (stack >= 0)
    dw_ladder_apply (&g->box.stacks[stack], &damper->valve);
  if (oil != NULL)
    damper->oil = oil->oil;
  *temperature = grid->temperature >= 0 ? g->box.temperatures[grid->temperature] : g->temperature;
  return true;
}

bool
dw_match_grids_has_room (const dw_match_grids *g, const dw_match_build *build)
{
  const piston *p = piston_of (g, dw_match_grids_get (g, build->grid));
  double size[DW_DRILL_SETS];
  dw_match_grids_sizes (g, build, size);
  return dw_drill_sets_have_room (&p->sets, size);
}

int
dw_match_grids_levers (const dw_match_grids *g, const dw_match_build *build, int *for_good)
{
  const dw_match_grid *grid = dw_match_grids_get (g, build->grid);
  const dw_match_oil *oil = dw_match_grids_oil (g, build);
  int n = 0;
  for (int i = 0; i < DW_N_LEVERS; i++)
    n += grid->uses[i] ? 1 : 0;
  /* a blend is more to get wrong than a bottle */
  n += oil != NULL && oil->other >= 0 ? 1 : 0;
  *for_good = (grid->uses[DW_LEVER_OPEN] ? 1 : 0) + (grid->uses[DW_LEVER_COVERED] ? 1 : 0);
  return n;
}
