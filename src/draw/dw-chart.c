/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart.h"

#include <math.h>
#include <string.h>

#include "draw/dw-ticks.h"
#include "model/dw-units.h"

/* Part of the speed axis, from rest, that does not decide how high the c axis is: there the seal
 * alone makes F/v as large as one likes. [1] */
static const double NEAR_REST = 0.04;

/* Above the highest curve, so that it does not run along the frame. [1] */
static const double HEADROOM = 1.02;

dw_chart_units
dw_chart_units_metric (void)
{
  return (dw_chart_units){ { "m/s", 1.0 }, { "N", 1.0 }, { "N s/m", 1.0 }, { "mm", DW_MM } };
}

dw_chart_units
dw_chart_units_inch (void)
{
  return (dw_chart_units){
    { "in/s", DW_INCH }, { "lbf", DW_LBF }, { "lbf s/in", DW_LBF / DW_INCH }, { "in", DW_INCH }
  };
}

dw_chart_labels
dw_chart_labels_defaults (void)
{
  return (dw_chart_labels){
    .stroke = { "compression", "rebound" },
    .quantity = { { "Force", "Force at the wheel" }, { "Damping c", "Damping c at the wheel" } },
    .speed = { "Shaft speed", "Wheel speed" },
    .caption = "{what} in {unit}",
    .onset = "void from {speed} {unit}",
    .strip = "Where the oil flows: {setup}, {stroke}",
    .share = { "open holes", "covered holes", "leak" },
    .fitted = "{setup} (fitted)",
    .lost = "lost {unit}",
    .lost_all = "all",
    .about = "{quantity}. {speed} from {from} to {to} {unit}.",
    .about_one = "{setup}: {compression}; {rebound}.",
    .about_stroke = "{stroke} {values}",
    .about_value = "{value} {unit} at {speed} {speed_unit}",
    .about_onset = "A void opens in compression from {speed} {unit}.",
    .about_none = "No setup is drawn.",
  };
}

dw_chart
dw_chart_defaults (void)
{
  return (dw_chart){
    .labels = dw_chart_labels_defaults (),
    .units = dw_chart_units_metric (),
    .numbers = dw_number_format_defaults (),
    .shows_band = true,
    .shows_cap = true,
    .strip_series = -1,
  };
}

bool
dw_chart_same (const dw_chart *a, const dw_chart *b)
{
  dw_chart x = *a;
  dw_chart y = *b;

  if (a->n_series != b->n_series)
    return false;
  for (int i = 0; i < a->n_series; i++)
    if (!dw_series_same (a->series[i], b->series[i]))
      return false;
  memset (x.series, 0, sizeof x.series);
  memset (y.series, 0, sizeof y.series);
  /* by bytes, so that an option that is added later counts without a word here */
  return memcmp (&x, &y, sizeof x) == 0;
}

int
dw_chart_slot (const dw_chart *chart, int series)
{
  bool taken[DW_N_SLOTS] = { false };
  for (int i = 0; i < chart->n_series; i++)
    {
      const dw_series *s = chart->series[i];
      const int own = s->is_fitted ? DW_SLOT_FITTED : s->slot;
      if (own >= 0 && own < DW_N_SLOTS)
        taken[own] = true;
    }
  for (int i = 0;; i++)
    {
      const dw_series *s = chart->series[i];
      int slot = s->is_fitted ? DW_SLOT_FITTED : s->slot;
      if (slot < 0 || slot >= DW_N_SLOTS)
        {
          slot = DW_SLOT_TRIAL_1;
          while (slot + 1 < DW_N_SLOTS && taken[slot])
            slot++;
          taken[slot] = true;
        }
      if (i == series)
        return slot;
    }
}

static double
ratio (const dw_chart *chart, const dw_series *series)
{
  return chart->place == DW_AT_WHEEL ? series->motion_ratio : 1.0;
}

double
dw_chart_shown_speed (const dw_chart *chart, const dw_series *series, double shaft_speed)
{
  return shaft_speed / ratio (chart, series);
}

double
dw_chart_shaft_speed (const dw_chart *chart, const dw_series *series, double shown_speed)
{
  return shown_speed * ratio (chart, series);
}

double
dw_chart_shown_value (const dw_chart *chart, const dw_series *series, double shaft_speed,
                      double force)
{
  const double mr = ratio (chart, series);
  if (chart->quantity == DW_SHOW_FORCE)
    return force * mr;
  return shaft_speed > 0.0 ? dw_wheel_damping (force / shaft_speed, mr) : (double)NAN;
}

const dw_unit *
dw_chart_value_unit (const dw_chart *chart)
{
  return chart->quantity == DW_SHOW_FORCE ? &chart->units.force : &chart->units.damping;
}

/* ---- all of the data ---- */

static dw_view
unite (const dw_view *a, const dw_view *b)
{
  return (dw_view){ fmin (a->x_low, b->x_low), fmax (a->x_high, b->x_high),
                    fmin (a->y_low, b->y_low), fmax (a->y_high, b->y_high) };
}

typedef struct
{
  double slowest;               /* [m/s] as shown, above rest */
  double fastest;               /* [m/s] as shown */
  double highest[DW_N_STROKES]; /* as shown, magnitude */
  double lowest[DW_N_STROKES];  /* as shown; < 0 where gas pushes the shaft out */
} extent;

static void
widen_value (extent *e, int stroke, double value)
{
  if (!isfinite (value))
    return;
  e->highest[stroke] = fmax (e->highest[stroke], value);
  e->lowest[stroke] = fmin (e->lowest[stroke], value);
}

static void
widen_speeds (const dw_chart *chart, const dw_series *series, extent *e)
{
  for (int s = 0; s < DW_N_STROKES; s++)
    for (size_t i = 0; i < series->stroke[s].n; i++)
      {
        const dw_series_point *p = &series->stroke[s].points[i];
        const double speed = dw_chart_shown_speed (chart, series, p->speed);
        if (!isfinite (p->force))
          continue;
        e->fastest = fmax (e->fastest, speed);
        if (speed > 0.0)
          e->slowest = fmin (e->slowest, speed);
      }
}

static void
widen_values (const dw_chart *chart, const dw_series *series, extent *e)
{
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      const dw_series_stroke *stroke = &series->stroke[s];
      for (size_t i = 0; i < stroke->n; i++)
        {
          const dw_series_point *p = &stroke->points[i];
          const double speed = dw_chart_shown_speed (chart, series, p->speed);
          if (chart->quantity == DW_SHOW_DAMPING && !chart->is_log
              && speed < NEAR_REST * e->fastest)
            continue;
          widen_value (e, s, dw_chart_shown_value (chart, series, p->speed, p->force));
          if (chart->shows_band && stroke->high != NULL)
            widen_value (e, s, dw_chart_shown_value (chart, series, p->speed, stroke->high[i]));
        }
    }
}

dw_view
dw_chart_whole_view (const dw_chart *chart)
{
  extent e = { .slowest = HUGE_VAL };
  for (int i = 0; i < chart->n_series; i++)
    widen_speeds (chart, chart->series[i], &e);
  for (int i = 0; i < chart->n_series; i++)
    widen_values (chart, chart->series[i], &e);

  const double unit = dw_chart_value_unit (chart)->factor;
  dw_view v = { 0.0, e.fastest > 0.0 ? e.fastest : chart->units.speed.factor, 0.0, 0.0 };
  if (chart->is_log)
    v.x_low = e.slowest < 0.5 * v.x_high ? e.slowest : 0.01 * v.x_high;
  dw_ticks_round_range (&v.x_low, &v.x_high, chart->units.speed.factor, chart->is_log);

  v.y_high = HEADROOM * fmax (e.highest[DW_COMPRESSION], -e.lowest[DW_REBOUND]);
  v.y_low = -HEADROOM * fmax (e.highest[DW_REBOUND], -e.lowest[DW_COMPRESSION]);
  if (!(v.y_high - v.y_low > 0.0))
    {
      v.y_high = unit;
      v.y_low = -unit;
    }
  dw_ticks_round_range (&v.y_low, &v.y_high, unit, false);
  return chart->has_range ? unite (&v, &chart->range) : v;
}

dw_view
dw_chart_current_view (const dw_chart *chart)
{
  const dw_view whole = dw_chart_whole_view (chart);
  return chart->has_view ? dw_view_clamp (&chart->view, &whole, chart->is_log) : whole;
}
