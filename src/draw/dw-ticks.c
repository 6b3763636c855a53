/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ticks.h"

#include <glib.h>
#include <math.h>
#include <string.h>

/* Up to this ratio of its ends a logarithmic axis has even steps: 1-2-5 would leave it bare. */
static const double NARROW_RATIO = 5.0;

/* Steps that an axis which shows all has at most. */
static const double MOST_STEPS = 16.0;

/* Ends of ranges are not exact. */
static const double SLACK = 1e-9;

/* Between two labels, in heights of a label. */
static const double GAP_ACROSS = 1.0;
static const double GAP_ABOVE = 0.35;
static const double TIGHT_GAP = 0.05;

/* With fewer labels than this an axis tells no scale. */
#define LEAST_LABELS 2

static bool
add (dw_ticks *ticks, const dw_scale *scale, const dw_ticks_options *options, double shown,
     int decimals)
{
  if (ticks->n == DW_MAX_TICKS)
    return false;
  dw_tick *tick = &ticks->ticks[ticks->n++];
  *tick = (dw_tick){ .value = shown * options->factor };
  tick->place = dw_scale_place (scale, tick->value);
  if (decimals >= 0)
    {
      tick->is_major = true;
      dw_number_fixed (options->numbers, fabs (shown), decimals, tick->label, sizeof tick->label);
      tick->label_width = dw_text_measure (options->metrics, tick->label, DW_TEXT_TICK).width;
    }
  return true;
}

/* Whether the labels, and the ticks under them, keep their distance. */
/* @p is_tight: labels may nearly touch. */
static bool
labels_fit (const dw_ticks *ticks, const dw_ticks_options *options, bool is_tight)
{
  const double height = dw_text_height (options->metrics, DW_TEXT_TICK);
  const dw_tick *before = NULL;
  for (int i = 0; i < ticks->n; i++)
    {
      const dw_tick *tick = &ticks->ticks[i];
      if (!tick->is_major)
        continue;
      if (before != NULL)
        {
          const double size = options->is_vertical
                                  ? height
                                  : 0.5 * (tick->label_width + before->label_width);
          const double gap = height * (options->is_vertical ? GAP_ABOVE : GAP_ACROSS);
          const double apart = fabs (tick->place - before->place);
          if (apart < size + (is_tight ? TIGHT_GAP * height : gap)
              || (!is_tight && apart < options->least_major))
            return false;
        }
      before = tick;
    }
  return true;
}

/* ---- even steps ---- */

typedef struct
{
  double low;  /* [shown] */
  double high; /* [shown] */
} range;

static range
shown_range (const dw_scale *scale, const dw_ticks_options *options)
{
  const double slack = SLACK * (scale->high - scale->low);
  return (range){ (scale->low - slack) / options->factor, (scale->high + slack) / options->factor };
}

/* Minor steps in a major one, finest first. */
static const int PARTS[][3] = { [1] = { 5, 2, 1 }, [2] = { 4, 2, 1 }, [5] = { 5, 1, 1 } };

static void
fill_even (const dw_scale *scale, const dw_ticks_options *options, dw_step step, int parts,
           dw_ticks *ticks)
{
  const range r = shown_range (scale, options);
  const double one = dw_step_times (step, 1.0);
  const double first = ceil (r.low / one * parts);
  ticks->n = 0;
  for (double k = first; dw_step_times (step, k) / parts <= r.high; k += 1.0)
    {
      const bool is_major = fmod (k, parts) == 0.0;
      const double shown = is_major ? dw_step_times (step, k / parts)
                                    : dw_step_times (step, k) / parts;
      if (!add (ticks, scale, options, shown, is_major ? dw_step_decimals (step) : -1))
        return;
    }
}

/* The narrowest distance of two neighbours. */
static double
narrowest (const dw_ticks *ticks)
{
  double least = HUGE_VAL;
  for (int i = 1; i < ticks->n; i++)
    least = fmin (least, fabs (ticks->ticks[i].place - ticks->ticks[i - 1].place));
  return least;
}

/* The smallest step whose labels fit; the ticks are filled with it. */
static dw_step
even_step (const dw_scale *scale, const dw_ticks_options *options, dw_step step, bool is_tight,
           dw_ticks *ticks)
{
  for (;;)
    {
      fill_even (scale, options, step, 1, ticks);
      if (ticks->n < 2 || (ticks->n < DW_MAX_TICKS && labels_fit (ticks, options, is_tight)))
        return step;
      step = dw_step_next (step);
    }
}

static void
make_even (const dw_scale *scale, const dw_ticks_options *options, dw_ticks *ticks)
{
  const range r = shown_range (scale, options);
  const double length = fabs (scale->end - scale->start);
  const dw_step finest = dw_step_at_least ((r.high - r.low)
                                           * fmin (1.0, 0.3 * options->least_major / length));
  dw_step step = even_step (scale, options, finest, false, ticks);
  if (ticks->n < LEAST_LABELS)
    step = even_step (scale, options, finest, true, ticks);
  for (int i = 0; i < 3; i++)
    {
      fill_even (scale, options, step, PARTS[step.mantissa][i], ticks);
      if (ticks->n < DW_MAX_TICKS && narrowest (ticks) >= options->least_minor)
        return;
    }
}

/* ---- decades ---- */

/* Mantissas that have a label: one of these patterns, or decades only. */
static bool
has_label (int pattern, int mantissa)
{
  return mantissa == 1 || (pattern == 0 && (mantissa == 2 || mantissa == 5))
         || (pattern == 1 && mantissa == 3);
}

/* @p pattern 0: 1, 2, 5; 1: 1, 3; 2: decades; 3 and on: every 2nd, 3rd decade. */
static void
fill_decades (const dw_scale *scale, const dw_ticks_options *options, int pattern, bool with_minor,
              dw_ticks *ticks)
{
  const range r = { scale->low * (1.0 - SLACK) / options->factor,
                    scale->high * (1.0 + SLACK) / options->factor };
  const int every = pattern > 2 ? pattern - 1 : 1;
  ticks->n = 0;
  for (int e = (int)floor (log10 (r.low)); pow (10.0, e) <= r.high; e++)
    for (int m = 1; m <= 9; m++)
      {
        const double shown = dw_step_times ((dw_step){ m, e }, 1.0);
        const bool is_major = has_label (pattern, m) && e % every == 0;
        if (shown < r.low || shown > r.high || (!is_major && !with_minor))
          continue;
        if (!add (ticks, scale, options, shown, is_major ? (e < 0 ? -e : 0) : -1))
          return;
      }
}

static void
make_decades (const dw_scale *scale, const dw_ticks_options *options, dw_ticks *ticks)
{
  int pattern = 0;
  for (;;)
    {
      fill_decades (scale, options, pattern, false, ticks);
      if (ticks->n < 2 || labels_fit (ticks, options, false))
        break;
      pattern++;
    }
  fill_decades (scale, options, pattern, true, ticks);
  if (ticks->n == DW_MAX_TICKS || narrowest (ticks) < options->least_minor)
    fill_decades (scale, options, pattern, false, ticks);
}

void
dw_ticks_make (const dw_scale *scale, const dw_ticks_options *options, dw_ticks *ticks)
{
  if (scale->is_log && scale->high > NARROW_RATIO * scale->low)
    make_decades (scale, options, ticks);
  else
    make_even (scale, options, ticks);
}

/* A label of zeros alone gets none. */
void
dw_ticks_add_signs (dw_ticks *ticks, const dw_ticks_options *options)
{
  for (int i = 0; i < ticks->n; i++)
    {
      dw_tick *tick = &ticks->ticks[i];
      if (!tick->is_major || tick->value >= 0.0 || strpbrk (tick->label, "123456789") == NULL)
        continue;
      g_autofree char *label = g_strconcat (options->numbers->minus, tick->label, NULL);
      g_strlcpy (tick->label, label, sizeof tick->label);
      tick->label_width = dw_text_measure (options->metrics, tick->label, DW_TEXT_TICK).width;
    }
}

/* ---- ranges ---- */

/* 1, 2 or 5 times a power of ten, at or below; @p up: at or above. */
static double
round_decade (double shown, bool up)
{
  const dw_step above = dw_step_at_least (shown);
  const double high = dw_step_times (above, 1.0);
  if (up || high <= shown * (1.0 + SLACK))
    return high;
  const dw_step below = above.mantissa == 1   ? (dw_step){ 5, above.exponent - 1 }
                        : above.mantissa == 2 ? (dw_step){ 1, above.exponent }
                                              : (dw_step){ 2, above.exponent };
  return dw_step_times (below, 1.0);
}

void
dw_ticks_round_range (double *low, double *high, double factor, bool is_log)
{
  const double a = *low / factor;
  const double b = *high / factor;
  if (is_log)
    {
      *low = round_decade (a, false) * factor;
      *high = round_decade (b, true) * factor;
      return;
    }
  const dw_step step = dw_step_at_least ((b - a) / MOST_STEPS);
  const double one = dw_step_times (step, 1.0);
  *low = dw_step_times (step, floor (a / one + SLACK)) * factor;
  *high = dw_step_times (step, ceil (b / one - SLACK)) * factor;
}
