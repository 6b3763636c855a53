/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-drill.h"

#include <assert.h>
#include <math.h>

static const dw_drill_size drills[] = {
#include "model/drills-table.inc"
};

#define N_DRILLS (sizeof drills / sizeof drills[0])

/* Size bands of ISO 286-1, Table 1: above the band before, up to and including this. */
#define BAND_3MM 3e-3 /* [m] */
#define BAND_6MM 6e-3 /* [m] */

#define FIRST_GRADE 6
#define LAST_GRADE  13

/* [m] IT6 .. IT13; ISO 286-1, Table 1, as printed in open texts. NaN: not looked up there. */
static const double tolerances[2][LAST_GRADE - FIRST_GRADE + 1] = {
  { 6e-6, 10e-6, 14e-6, 25e-6, 40e-6, 60e-6, 100e-6, 140e-6 }, /* up to 3 mm */
  { NAN, NAN, 18e-6, NAN, NAN, 75e-6, 120e-6, 180e-6 },        /* above 3 up to 6 mm */
};

const dw_drill_size *
dw_drill_table (size_t *n)
{
  assert (n != NULL);
  *n = N_DRILLS;
  return drills;
}

const char *
dw_drill_series_name (dw_drill_series series)
{
  assert (series == DW_DRILL_METRIC || series == DW_DRILL_NUMBER);
  return series == DW_DRILL_METRIC ? "metric" : "number";
}

const dw_drill_size *
dw_drill_next (double diameter)
{
  assert (isfinite (diameter));

  for (size_t i = 0; i < N_DRILLS; i++)
    if (drills[i].diameter > diameter + DW_DRILL_SAME)
      return &drills[i];
  return NULL;
}

const dw_drill_size *
dw_drill_nearest (double diameter)
{
  assert (isfinite (diameter));

  const dw_drill_size *nearest = &drills[0];
  for (size_t i = 1; i < N_DRILLS; i++)
    {
      const double gain = fabs (nearest->diameter - diameter)
                          - fabs (drills[i].diameter - diameter);
      if (gain > DW_DRILL_SAME)
        nearest = &drills[i];
    }
  return nearest;
}

double
dw_tolerance_it (int grade, double size)
{
  if (grade < FIRST_GRADE || grade > LAST_GRADE || !(size > 0.0 && size <= BAND_6MM))
    return NAN;
  return tolerances[size <= BAND_3MM ? 0 : 1][grade - FIRST_GRADE];
}

/* Drills and tolerances are whole tenths of a micrometre; their sum is to read so, 1.36 mm and not
 * 1.3599999999999999. */
static double
to_nanometre (double size)
{
  return isnan (size) ? size : nearbyint (size * 1e9) / 1e9;
}

double
dw_drill_hole_max (const dw_drill_size *drill, int grade)
{
  assert (drill != NULL);
  return to_nanometre (drill->diameter + dw_tolerance_it (grade, drill->diameter));
}

double
dw_drill_min (const dw_drill_size *drill)
{
  assert (drill != NULL);
  return to_nanometre (drill->diameter - dw_tolerance_it (8, drill->diameter));
}
