/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drilling.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

#include "model/dw-drill.h"
#include "model/dw-limits.h"
#include "model/dw-oil.h"
#include "model/dw-units.h"
#include "study/dw-compare.h"

/* Roots are found to this part of themselves: far below what a bottle's label or a drill says. */
static const double ROOT_WITHIN = 1e-7;
static const int MOST_STEPS = 100;

/* A bottle this near to what is wanted is taken pure. [1] */
static const double NEAR_ENOUGH = 0.01;

/* ---- one pair of sizes ---- */

static dw_status
figures_of (const dw_drilling *study, const dw_damper *damper, dw_figures *out, dw_error *err)
{
  dw_force_model model;
  dw_status status = dw_force_model_make (damper, study->temperature, &model, err);
  if (status == DW_OK)
    status = dw_figures_read (&model, study->speeds, out, err);
  return status;
}

static void
compare (const dw_drilling *study, const dw_figures *figures,
         double change[DW_N_STROKES][DW_N_SPEEDS])
{
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      change[s][v] = dw_compare_change (study->now.point[s][v].force, figures->point[s][v].force);
}

dw_status
dw_drilling_init (dw_drilling *out, const dw_drill_sets *sets, double temperature,
                  const double speeds[DW_N_SPEEDS], dw_error *err)
{
  dw_figures now;
  const dw_drilling asked = { .temperature = temperature,
                              .speeds = { speeds[0], speeds[1], speeds[2] } };
  const dw_status status = figures_of (&asked, &sets->damper, &now, err);
  if (status != DW_OK)
    return status;
  *out = asked;
  out->sets = *sets;
  out->now = now;
  return DW_OK;
}

dw_status
dw_drilling_at (const dw_drilling *study, const double size[DW_DRILL_SETS], dw_drill_result *out,
                dw_error *err)
{
  dw_damper drilled;
  dw_figures figures;
  dw_status status = dw_drill_sets_apply (&study->sets, size, &drilled, err);
  if (status == DW_OK)
    status = figures_of (study, &drilled, &figures, err);
  if (status != DW_OK)
    return status;
  *out = (dw_drill_result){ .size = { size[0], size[1] }, .figures = figures };
  compare (study, &figures, out->change);
  return DW_OK;
}

dw_status
dw_drilling_field (const dw_drilling *study, const double diameter[DW_DRILL_SETS], dw_figures *out,
                   dw_error *err)
{
  dw_damper damper;
  const dw_status status = dw_drill_sets_resize (&study->sets, diameter, &damper, err);
  return status == DW_OK ? figures_of (study, &damper, out, err) : status;
}

int
dw_drill_count (const dw_drill_sets *sets, const double size[DW_DRILL_SETS])
{
  int n = 0;
  for (int s = 0; s < DW_DRILL_SETS; s++)
    n += size[s] > 0.0 ? sets->n_holes[s] : 0;
  return n;
}

/* ---- roots ---- */

/* A damper of which one number is to be found, so that low-speed compression is as wanted. */
typedef struct
{
  const dw_drilling *study;
  dw_damper damper;
  /* @return  false when there is no such damper */
  bool (*set) (dw_damper *damper, const dw_drill_sets *sets, double x);
  double wanted; /* [N] */
  bool has_failed;
} search;

/* Relative miss at x. GSL would end the program at a value that is not finite: a failure is 0, and
 * remembered. */
static double
miss (double x, void *data)
{
  search *s = data;
  dw_force_model model;
  dw_force_point point;
  if (!s->set (&s->damper, &s->study->sets, x)
      || dw_force_model_make (&s->damper, s->study->temperature, &model, NULL) != DW_OK
      || dw_force_at (&model, DW_COMPRESSION, s->study->speeds[DW_LOW], &point, NULL) != DW_OK)
    {
      s->has_failed = true;
      return 0.0;
    }
  return point.force / s->wanted - 1.0;
}

/* Brent's method between two values whose misses have different signs. */
static bool
find_root (search *s, double low, double high, double *root)
{
  gsl_function f = { miss, s };
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  bool is_found = false;

  if (solver == NULL)
    return false;
  if (gsl_root_fsolver_set (solver, &f, low, high) == GSL_SUCCESS)
    for (int i = 0; i < MOST_STEPS && !is_found && !s->has_failed; i++)
      {
        if (gsl_root_fsolver_iterate (solver) != GSL_SUCCESS)
          break;
        is_found = gsl_root_test_interval (gsl_root_fsolver_x_lower (solver),
                                           gsl_root_fsolver_x_upper (solver), 0.0, ROOT_WITHIN)
                   == GSL_SUCCESS;
      }
  if (is_found)
    *root = gsl_root_fsolver_root (solver);
  gsl_root_fsolver_free (solver);
  return is_found && !s->has_failed;
}

/* ---- the oil that holds ---- */

static bool
set_viscosity (dw_damper *damper, const dw_drill_sets *sets, double x)
{
  (void)sets;
  damper->oil.kind = DW_OIL_NOMINAL;
  damper->oil.n_parts = 0;
  damper->oil.viscosity = x;
  return true;
}

/* [m2/s] Nominal of the silicone oil that is as thick as the present one at the temperature. */
static double
present_viscosity (const dw_drilling *study)
{
  const dw_oil *oil = &study->sets.damper.oil;
  dw_fluid fluid;
  if (oil->kind == DW_OIL_NOMINAL)
    return oil->viscosity;
  if (dw_oil_fluid (oil, study->temperature, &fluid, NULL) != DW_OK)
    return (double)NAN;
  return fluid.viscosity / dw_silicone_viscosity (1.0, study->temperature);
}

/* Thicker or thinner by factors of two until the force is on the other side. */
static bool
bracket_viscosity (search *s, double start, double *low, double *high)
{
  const dw_limit *limit = dw_limit_get (DW_LIMIT_VISCOSITY);
  const double at_start = miss (start, s);
  if (s->has_failed)
    return false;
  const double factor = at_start < 0.0 ? 2.0 : 0.5;
  double from = start;
  while (from > limit->low && from < limit->high)
    {
      const double to = fmin (limit->high, fmax (limit->low, from * factor));
      const double at_to = miss (to, s);
      if (s->has_failed)
        return false;
      if ((at_to < 0.0) != (at_start < 0.0))
        {
          *low = fmin (from, to);
          *high = fmax (from, to);
          return true;
        }
      from = to;
    }
  return false;
}

/* @param damper  drilled, with the oil of now */
static dw_status
find_holding_oil (const dw_drilling *study, const dw_damper *damper, double *out, dw_error *err)
{
  search s = { .study = study,
               .damper = *damper,
               .set = set_viscosity,
               .wanted = study->now.point[DW_COMPRESSION][DW_LOW].force };
  double viscosity = present_viscosity (study);
  double low;
  double high;

  if (!(s.wanted > 0.0) || !(viscosity > 0.0))
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "oil.viscosity", -1,
                    "there is no low-speed compression to hold");
  if ((miss (viscosity, &s) != 0.0 || s.has_failed)
      && (!bracket_viscosity (&s, viscosity, &low, &high)
          || !find_root (&s, low, high, &viscosity)))
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "oil.viscosity", -1,
                    "no oil from %.6g to %.6g cSt holds low-speed compression",
                    dw_limit_get (DW_LIMIT_VISCOSITY)->low / DW_CST,
                    dw_limit_get (DW_LIMIT_VISCOSITY)->high / DW_CST);
  *out = viscosity;
  return DW_OK;
}

dw_status
dw_drilling_field_oil (const dw_drilling *study, const double diameter[DW_DRILL_SETS],
                       double *viscosity, dw_error *err)
{
  dw_damper damper;
  const dw_status status = dw_drill_sets_resize (&study->sets, diameter, &damper, err);
  return status == DW_OK ? find_holding_oil (study, &damper, viscosity, err) : status;
}

dw_status
dw_drilling_hold (const dw_drilling *study, const double size[DW_DRILL_SETS], dw_drill_hold *out,
                  dw_error *err)
{
  dw_damper damper;
  double viscosity = 0.0;
  dw_figures figures;

  dw_status status = dw_drill_sets_apply (&study->sets, size, &damper, err);
  if (status == DW_OK)
    status = find_holding_oil (study, &damper, &viscosity, err);
  if (status != DW_OK)
    return status;
  set_viscosity (&damper, &study->sets, viscosity);
  status = figures_of (study, &damper, &figures, err);
  if (status != DW_OK)
    return status;
  *out = (dw_drill_hold){ .viscosity = viscosity, .figures = figures };
  compare (study, &figures, out->change);
  return DW_OK;
}

dw_drill_mix
dw_drill_mix_find (double viscosity, const double *bottles, int n)
{
  int thinner = -1;
  int thicker = -1;
  int nearest = -1;
  for (int i = 0; i < n; i++)
    {
      const double away = fabs (log (bottles[i] / viscosity));
      if (nearest < 0 || away < fabs (log (bottles[nearest] / viscosity)))
        nearest = i;
      if (bottles[i] < viscosity && (thinner < 0 || bottles[i] > bottles[thinner]))
        thinner = i;
      if (bottles[i] > viscosity && (thicker < 0 || bottles[i] < bottles[thicker]))
        thicker = i;
    }
  if (nearest >= 0 && fabs (bottles[nearest] / viscosity - 1.0) <= NEAR_ENOUGH)
    return (dw_drill_mix){ nearest, -1, 0.0 };
  if (thinner < 0 || thicker < 0)
    return (dw_drill_mix){ -1, -1, 0.0 };
  /* ln v = (1 - x) ln v1 + x ln v2 */
  return (dw_drill_mix){
    thinner, thicker, log (viscosity / bottles[thinner]) / log (bottles[thicker] / bottles[thinner])
  };
}

/* ---- the one size that does the same ---- */

/* All holes of both sets to one diameter, whatever they are now. */
static bool
set_diameter (dw_damper *damper, const dw_drill_sets *sets, double x)
{
  const double diameter[DW_DRILL_SETS] = { x, x };
  return dw_drill_sets_resize (sets, diameter, damper, NULL) == DW_OK;
}

static bool
are_of_one_kind (const dw_drill_sets *sets)
{
  bool has[2] = { false, false };
  for (int i = 0; i < sets->face.n_holes; i++)
    if (sets->set_of[i] >= 0)
      has[sets->face.holes[i].covered] = true;
  return has[false] != has[true];
}

/* [m] Smallest present diameter of the sets. */
static double
smallest_present (const dw_drill_sets *sets)
{
  double smallest = HUGE_VAL;
  for (int i = 0; i < sets->face.n_holes; i++)
    if (sets->set_of[i] >= 0)
      smallest = fmin (smallest, sets->face.holes[i].diameter);
  return smallest;
}

dw_status
dw_drilling_single (const dw_drilling *study, const double size[DW_DRILL_SETS], double *diameter,
                    dw_error *err)
{
  const dw_drill_sets *sets = &study->sets;
  search s = { .study = study, .damper = sets->damper, .set = set_diameter };
  dw_drill_result drilled;
  double low = smallest_present (sets);
  double high = 0.0;

  if (!are_of_one_kind (sets))
    return dw_fail (err, DW_ERR_GEOMETRY, "drill.size", -1,
                    "open and covered holes cannot stand for each other");
  const dw_status status = dw_drilling_at (study, size, &drilled, err);
  if (status != DW_OK)
    return status;
  s.wanted = drilled.figures.point[DW_COMPRESSION][DW_LOW].force;
  for (int i = 0; i < DW_DRILL_SETS; i++)
    high = fmax (high, fmax (size[i], sets->present[i]));
  const double at_low = miss (low, &s);
  const double at_high = miss (high, &s);
  if (s.has_failed)
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "drill.size", -1, "no one size does the same");
  if (at_low == 0.0 || high - low <= DW_DRILL_SAME)
    *diameter = low;
  else if (at_high == 0.0)
    *diameter = high;
  else if ((at_low > 0.0) == (at_high > 0.0) || !find_root (&s, low, high, diameter))
    return dw_fail (err, DW_ERR_NO_CONVERGENCE, "drill.size", -1, "no one size does the same");
  return DW_OK;
}

/* ---- scatter ---- */

/* @return  false when there is no room */
static bool
add_group (dw_piston *piston, dw_holes holes)
{
  if (holes.count == 0)
    return true;
  if (piston->n_holes == DW_MAX_HOLE_GROUPS
      || holes.count > (int)dw_limit_get (DW_LIMIT_HOLE_COUNT)->high)
    return false;
  piston->holes[piston->n_holes++] = holes;
  return true;
}

/* Holes of one kind in a set. */
static int
count_kind (const dw_drill_sets *sets, int set, bool covered)
{
  int n = 0;
  for (int g = 0; g < sets->damper.piston.n_holes; g++)
    n += sets->damper.piston.holes[g].covered == covered ? sets->count[set][g] : 0;
  return n;
}

/* The drilled piston, with what is drilled in groups of its own even where other holes have had
 * that size before. @return  false when there is no room for them */
static bool
tell_apart (const dw_drill_sets *sets, const double size[DW_DRILL_SETS], dw_piston *out,
            unsigned *exact)
{
  const dw_piston *now = &sets->damper.piston;
  const bool is_one_size = fabs (size[0] - size[1]) <= DW_DRILL_SAME;
  bool fits = true;

  *out = *now;
  out->n_holes = 0;
  for (int g = 0; g < now->n_holes; g++)
    {
      dw_holes left = now->holes[g];
      for (int s = 0; s < DW_DRILL_SETS; s++)
        left.count -= size[s] > 0.0 ? sets->count[s][g] : 0;
      fits = fits && add_group (out, left);
    }
  *exact = (1U << out->n_holes) - 1U;
  for (int covered = 0; covered < 2; covered++)
    {
      int n[DW_DRILL_SETS];
      for (int s = 0; s < DW_DRILL_SETS; s++)
        n[s] = size[s] > 0.0 ? count_kind (sets, s, covered != 0) : 0;
      if (is_one_size)
        {
          n[0] += n[1];
          n[1] = 0;
        }
      for (int s = 0; s < DW_DRILL_SETS; s++)
        fits = fits && add_group (out, (dw_holes){ n[s], size[s], covered != 0 });
    }
  return fits;
}

dw_status
dw_drilling_scattering (const dw_drill_sets *sets, const double size[DW_DRILL_SETS],
                        const dw_spread_limits *limits, dw_damper *damper, dw_spread_limits *holes,
                        dw_error *err)
{
  dw_piston apart;
  dw_damper drilled;
  dw_spread_limits only = { .hole_grade = limits->hole_grade, .hole_error = limits->hole_error };

  const dw_status status = dw_drill_sets_apply (sets, size, &drilled, err);
  if (status != DW_OK)
    return status;
  /* else every hole is taken as drilled: rather too much scatter than none */
  if (tell_apart (sets, size, &apart, &only.exact_groups))
    drilled.piston = apart;
  else
    only.exact_groups = 0;
  *damper = drilled;
  *holes = only;
  return DW_OK;
}

dw_status
dw_drilling_spread (const dw_drilling *study, const double size[DW_DRILL_SETS],
                    const dw_spread_limits *limits, dw_spread_point out[DW_N_STROKES][DW_N_SPEEDS],
                    dw_error *err)
{
  dw_spread_limits holes;
  dw_spread_point points[DW_N_STROKES][DW_N_SPEEDS];
  dw_damper drilled;

  dw_status status = dw_drilling_scattering (&study->sets, size, limits, &drilled, &holes, err);
  for (int s = 0; s < DW_N_STROKES && status == DW_OK; s++)
    status = dw_spread_make (&drilled, study->temperature, &holes, (dw_stroke)s, study->speeds,
                             DW_N_SPEEDS, points[s], err);
  if (status != DW_OK)
    return status;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      out[s][v] = points[s][v];
  return DW_OK;
}
