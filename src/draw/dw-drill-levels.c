/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-levels.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-scale.h"

/* Oils whose ends are nearer than this are told by even steps. [1] */
static const double NARROW_RATIO = 5.0;

/* A level within this part of the range of an end shows nothing. [1] */
static const double SLACK = 1e-6;

/* Changes that are written without decimals. [%] */
static const double LARGE_CHANGE = 9.95;

/* Round numbers of a decade, coarse to fine. */
static const double MANTISSAS[][10] = {
  { 1.0 },
  { 1.0, 3.0 },
  { 1.0, 2.0, 5.0 },
  { 1.0, 1.5, 2.0, 3.0, 5.0, 7.0 },
  { 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0 },
};

/* Finer steps say nothing: changes of half a percent are called the same (study/dw-compare.h), and so
 * are pack, share or oil that differ by as much. */
static const double LEAST_CHANGE = 0.5; /* [%] */
static const double LEAST_PART = 0.005; /* [1] */

/* ---- even steps ---- */

static double
least_step (dw_drill_measure measure, double low)
{
  if (measure <= DW_MEASURE_REBOUND_HIGH)
    return LEAST_CHANGE;
  return measure == DW_MEASURE_OIL ? LEAST_PART * low : LEAST_PART;
}

/* @return  false when there would be more than @p most */
static bool
fill_even (dw_step step, double low, double high, int most, dw_drill_levels *levels)
{
  const double one = dw_step_times (step, 1.0);
  const double slack = SLACK * (high - low);
  levels->n = 0;
  for (double k = ceil ((low + slack) / one); dw_step_times (step, k) < high - slack; k += 1.0)
    {
      if (levels->n == most)
        return false;
      levels->value[levels->n++] = dw_step_times (step, k);
    }
  levels->decimals = dw_step_decimals (step);
  return true;
}

static void
make_even (double low, double high, double least, int most, dw_drill_levels *levels)
{
  dw_step step = dw_step_at_least (fmax (least, (high - low) / (most + 1)));
  while (!fill_even (step, low, high, most, levels))
    step = dw_step_next (step);
}

/* ---- even ratios ---- */

static bool
fill_ratios (const double mantissas[10], double low, double high, int most, dw_drill_levels *levels)
{
  levels->n = 0;
  for (int e = (int)floor (log10 (low)); pow (10.0, e) < high; e++)
    for (int m = 0; m < 10 && mantissas[m] > 0.0; m++)
      {
        const double value = dw_step_times ((dw_step){ 1, e }, mantissas[m]);
        if (value <= low * (1.0 + SLACK) || value >= high * (1.0 - SLACK))
          continue;
        if (levels->n == most)
          return false;
        levels->value[levels->n++] = value;
      }
  return true;
}

static void
make_ratios (double low, double high, int most, dw_drill_levels *levels)
{
  for (int i = (int)G_N_ELEMENTS (MANTISSAS) - 1; i >= 0; i--)
    if (fill_ratios (MANTISSAS[i], low, high, most, levels))
      return;
  levels->n = 0;
}

dw_drill_levels
dw_drill_levels_make (dw_drill_measure measure, double low, double high, int most)
{
  const double factor = dw_drill_measure_factor (measure);
  dw_drill_levels levels = { .n = 0 };
  const double a = low / factor;
  const double b = high / factor;
  if (!isfinite (a) || !isfinite (b) || !(b - a > 1e-9 * fmax (fabs (a), fabs (b))))
    return levels;
  if (measure == DW_MEASURE_OIL && a > 0.0 && b > NARROW_RATIO * a)
    make_ratios (a, b, most, &levels);
  else
    make_even (a, b, least_step (measure, a), most, &levels);
  for (int i = 0; i < levels.n; i++)
    levels.value[i] *= factor;
  return levels;
}

/* ---- text ---- */

void
dw_drill_level_text (dw_drill_measure measure, const dw_number_format *numbers, double value,
                     int decimals, bool has_unit, char *out, size_t room)
{
  char number[DW_NUMBER_ROOM];
  const char *unit = dw_drill_measure_unit (measure);
  const double shown = value / dw_drill_measure_factor (measure);
  const bool is_change = measure <= DW_MEASURE_REBOUND_HIGH;
  if (is_change && decimals < 0)
    decimals = fabs (shown) < LARGE_CHANGE ? 1 : 0;
  if (decimals >= 0)
    dw_number_fixed (numbers, shown, decimals, number, sizeof number);
  else
    dw_number_digits (numbers, shown, 3, number, sizeof number);
  /* what rounds to nothing has no sign */
  const bool is_more = is_change && shown >= 0.5 * pow (10.0, -decimals);
  g_snprintf (out, (gulong)room, "%s%s%s%s", is_more ? "+" : "", number,
              has_unit && *unit != '\0' ? "\u2009" : "", has_unit ? unit : "");
}
