/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-step.h"

#include <math.h>

#include "model/dw-drill.h"

/* [1] of a step: a number this close to one counts as on it, whatever unit it was typed in. */
static const double ON_STEP = 1e-6;

/* From this viscosity [cSt] on bottles come in these steps [cSt]: what makers offer, roughly. */
static const struct
{
  double from;
  double size;
} grades[] = { { 0.0, 1.0 },      { 10.0, 10.0 },      { 100.0, 50.0 },
               { 1000.0, 500.0 }, { 10000.0, 5000.0 }, { 100000.0, 50000.0 } };

/* The nearest of 1, 2 and 5 times a power of ten: a step of 0.05 mm is one of 0.002 in. */
static double
round_size (double size)
{
  const double power = pow (10.0, floor (log10 (size)));
  const double mantissa = size / power;

  if (mantissa < 1.4)
    return power;
  if (mantissa < 3.2)
    return 2.0 * power;
  if (mantissa < 7.1)
    return 5.0 * power;
  return 10.0 * power;
}

/* The multiple of a size that lies @p n beyond, both in the shown unit. */
static double
next_multiple (double shown, double size, int n)
{
  const double k = shown / size;
  return (n > 0 ? floor (k + ON_STEP) + n : ceil (k - ON_STEP) + n) * size;
}

/* Through text, so that the result is the number that a user would have typed. */
static double
from_shown (dw_quantity quantity, dw_units units, double shown, double fallback)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  double value;

  g_ascii_formatd (text, sizeof text, "%.9g", shown);
  return dw_quantity_parse (quantity, units, text, &value) ? value : fallback;
}

static double
move_even (double size, dw_quantity quantity, dw_units units, double value, int n)
{
  /* a difference: degrees Fahrenheit do not start at 0 degC */
  const double shown_size = dw_quantity_to_shown (quantity, units, size)
                            - dw_quantity_to_shown (quantity, units, 0.0);
  const double shown = dw_quantity_to_shown (quantity, units, value);

  return from_shown (quantity, units, next_multiple (shown, round_size (shown_size), n), value);
}

static double
move_drill (dw_units units, double value, gboolean up)
{
  const dw_drill_series series = (units & DW_UNITS_INCH) != 0 ? DW_DRILL_NUMBER : DW_DRILL_METRIC;
  double best = value;
  size_t n;
  const dw_drill_size *table = dw_drill_table (&n);

  for (size_t i = 0; i < n; i++)
    {
      const double d = table[i].diameter;
      if (table[i].series != series)
        continue;
      if (up && d > value + DW_DRILL_SAME)
        return d;
      if (!up && d < value - DW_DRILL_SAME)
        best = d;
    }
  return best;
}

static double
move_grade (double value, gboolean up)
{
  const double shown = dw_quantity_to_shown (DW_QUANTITY_VISCOSITY, DW_UNITS_METRIC, value);
  double size = grades[0].size;

  for (size_t i = 0; i < G_N_ELEMENTS (grades); i++)
    if (up ? shown >= grades[i].from * (1.0 - ON_STEP) : shown > grades[i].from * (1.0 + ON_STEP))
      size = grades[i].size;
  return from_shown (DW_QUANTITY_VISCOSITY, DW_UNITS_METRIC,
                     next_multiple (shown, size, up ? 1 : -1), value);
}

double
dw_step_move (dw_step step, dw_quantity quantity, dw_units units, dw_limit_id limit, double value,
              int n)
{
  const dw_limit *range = dw_limit_get (limit);
  double x = value;

  if (step.kind == DW_STEP_EVEN)
    x = move_even (step.size, quantity, units, value, n);
  else
    for (int i = 0; i < ABS (n); i++)
      x = step.kind == DW_STEP_DRILL ? move_drill (units, x, n > 0) : move_grade (x, n > 0);
  return CLAMP (x, range->low, range->high);
}
