/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-series.h"

#include <assert.h>
#include <glib.h>
#include <math.h>
#include <string.h>

/* Speeds to start from, before the bends get more. */
#define BASE_SPEEDS 41

/* Near rest F/v bends most: these parts of the highest speed come on top. [1] */
static const double NEAR_REST[] = { 0.001, 0.002, 0.004, 0.007, 0.011, 0.017 };

#define MOST_SPEEDS 400
#define MOST_ROUNDS 6

/* A straight piece may miss by these parts of the largest force (a fifth of a point in a plot 300
 * high) and of the force itself (c = F/v shows small forces as large). [1] */
static const double MISS_OF_LARGEST = 0.0007;
static const double MISS_OF_SELF = 0.005;

/* The same for F/v of itself, from this part of the highest speed on. [1] */
static const double MISS_OF_C = 0.004;
static const double C_FROM = 0.003;

dw_series *
dw_series_new (const char *name)
{
  dw_series *series = g_new0 (dw_series, 1);
  series->name = g_strdup (name);
  series->slot = -1;
  series->motion_ratio = 1.0;
  series->onset_speed = HUGE_VAL;
  series->onset_force = (double)NAN;
  return series;
}

static void
stroke_clear (dw_series_stroke *stroke)
{
  g_free (stroke->points);
  g_free (stroke->low);
  g_free (stroke->high);
  *stroke = (dw_series_stroke){ 0 };
}

void
dw_series_free (dw_series *series)
{
  if (series == NULL)
    return;
  for (int s = 0; s < DW_N_STROKES; s++)
    stroke_clear (&series->stroke[s]);
  g_free (series->name);
  g_free (series);
}

void
dw_series_set_points (dw_series *series, dw_stroke stroke, const dw_series_point *points, size_t n)
{
  dw_series_point *copy = g_memdup2 (points, n * sizeof *points);
  stroke_clear (&series->stroke[stroke]);
  series->stroke[stroke].points = copy;
  series->stroke[stroke].n = n;
}

void
dw_series_set_band (dw_series *series, dw_stroke stroke, const double *low, const double *high)
{
  dw_series_stroke *s = &series->stroke[stroke];
  g_free (s->low);
  g_free (s->high);
  s->low = low != NULL ? g_memdup2 (low, s->n * sizeof *low) : NULL;
  s->high = high != NULL ? g_memdup2 (high, s->n * sizeof *high) : NULL;
}

/* ---- comparing ---- */

static bool
same_number (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static bool
same_point (const dw_series_point *a, const dw_series_point *b)
{
  return same_number (a->speed, b->speed) && same_number (a->force, b->force)
         && same_number (a->lost_travel, b->lost_travel) && a->is_void == b->is_void
         && same_number (a->shares.open, b->shares.open)
         && same_number (a->shares.covered, b->shares.covered)
         && same_number (a->shares.leak, b->shares.leak);
}

static bool
same_edge (const double *a, const double *b, size_t n)
{
  if (a == NULL || b == NULL)
    return a == b;
  for (size_t i = 0; i < n; i++)
    if (!same_number (a[i], b[i]))
      return false;
  return true;
}

static bool
same_stroke (const dw_series_stroke *a, const dw_series_stroke *b)
{
  if (a->n != b->n)
    return false;
  for (size_t i = 0; i < a->n; i++)
    if (!same_point (&a->points[i], &b->points[i]))
      return false;
  return same_edge (a->low, b->low, a->n) && same_edge (a->high, b->high, a->n);
}

bool
dw_series_same (const dw_series *a, const dw_series *b)
{
  return strcmp (a->name, b->name) == 0 && a->is_fitted == b->is_fitted && a->slot == b->slot
         && same_number (a->motion_ratio, b->motion_ratio)
         && same_number (a->onset_speed, b->onset_speed)
         && same_number (a->onset_force, b->onset_force) && a->is_vented == b->is_vented
         && same_stroke (&a->stroke[DW_COMPRESSION], &b->stroke[DW_COMPRESSION])
         && same_stroke (&a->stroke[DW_REBOUND], &b->stroke[DW_REBOUND]);
}

/* ---- computing ---- */

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *)a;
  const double y = *(const double *)b;
  return (x > y) - (x < y);
}

static void
add_inside (GArray *speeds, const dw_series_range *range, double speed)
{
  if (speed >= range->from && speed <= range->to)
    g_array_append_val (speeds, speed);
}

/* The same speed twice would be a step without width. */
static void
sort_and_unite (GArray *speeds)
{
  double *v = (double *)(gpointer)speeds->data;
  guint n = 0;
  g_array_sort (speeds, compare_doubles);
  for (guint i = 0; i < speeds->len; i++)
    if (n == 0 || v[i] > v[n - 1])
      v[n++] = v[i];
  g_array_set_size (speeds, n);
}

static GArray *
first_speeds (const dw_series_range *range, double onset)
{
  GArray *speeds = g_array_new (FALSE, FALSE, sizeof (double));
  for (int i = 0; i < BASE_SPEEDS; i++)
    {
      const double share = (double)i / (BASE_SPEEDS - 1);
      const double speed = range->is_log ? range->from * pow (range->to / range->from, share)
                                         : range->from + share * (range->to - range->from);
      /* powers do not end where they should to the last digit */
      const double exact = i == 0 ? range->from : i == BASE_SPEEDS - 1 ? range->to : speed;
      g_array_append_val (speeds, exact);
    }
  for (gsize i = 0; !range->is_log && i < G_N_ELEMENTS (NEAR_REST); i++)
    add_inside (speeds, range, NEAR_REST[i] * range->to);
  add_inside (speeds, range, onset);
  sort_and_unite (speeds);
  return speeds;
}

static double
position (const dw_series_range *range, double speed)
{
  return range->is_log ? log (speed) : speed;
}

/* Whether the straight piece past point i is far from it. */
static bool
bends (const dw_series_range *range, const dw_force_point *p, guint i, double largest)
{
  const double a = position (range, p[i - 1].speed);
  const double b = position (range, p[i + 1].speed);
  const double t = (position (range, p[i].speed) - a) / (b - a);
  const double straight = p[i - 1].force + t * (p[i + 1].force - p[i - 1].force);
  const double miss = fabs (straight - p[i].force);
  if (p[i - 1].speed > C_FROM * range->to)
    {
      const double c = p[i].force / p[i].speed;
      const double c_before = p[i - 1].force / p[i - 1].speed;
      const double c_behind = p[i + 1].force / p[i + 1].speed;
      if (fabs (c_before + t * (c_behind - c_before) - c) > 4.0 * MISS_OF_C * fabs (c))
        return true;
    }
  /* the piece that will be drawn is half as long: it misses by a quarter */
  return miss > 4.0 * MISS_OF_LARGEST * largest || miss > 4.0 * MISS_OF_SELF * fabs (p[i].force);
}

/* Speeds in the middle of every piece at a bend; none when the curve is smooth. */
static GArray *
speeds_between (const dw_series_range *range, const dw_force_point *p, guint n)
{
  GArray *more = g_array_new (FALSE, FALSE, sizeof (double));
  double largest = 0.0;
  for (guint i = 0; i < n; i++)
    largest = fmax (largest, fabs (p[i].force));
  for (guint i = 0; i + 1 < n; i++)
    {
      const bool at_start = i > 0 && bends (range, p, i, largest);
      const bool at_end = i + 2 < n && bends (range, p, i + 1, largest);
      const double middle = range->is_log ? sqrt (p[i].speed * p[i + 1].speed)
                                          : 0.5 * (p[i].speed + p[i + 1].speed);
      const double width = position (range, p[i + 1].speed) - position (range, p[i].speed);
      const double whole = position (range, range->to) - position (range, range->from);
      if ((at_start || at_end) && width > 1e-4 * whole && middle > p[i].speed
          && middle < p[i + 1].speed && n + more->len < MOST_SPEEDS)
        g_array_append_val (more, middle);
    }
  return more;
}

/* Points of a stroke, computed as one rising curve; more where it bends. */
static dw_status
compute_stroke (const dw_force_model *model, dw_stroke stroke, const dw_series_range *range,
                GArray *points, dw_error *err)
{
  g_autoptr (GArray) speeds = first_speeds (range, model->onset_speed);
  for (int round = 0; round < MOST_ROUNDS; round++)
    {
      g_array_set_size (points, speeds->len);
      dw_force_point *p = (dw_force_point *)(gpointer)points->data;
      const dw_status status = dw_force_curve (
          model, stroke, (const double *)(gpointer)speeds->data, speeds->len, p, err);
      if (status != DW_OK)
        return status;
      g_autoptr (GArray) more = speeds_between (range, p, points->len);
      if (more->len == 0)
        break;
      if (round + 1 < MOST_ROUNDS)
        {
          g_array_append_vals (speeds, more->data, more->len);
          sort_and_unite (speeds);
        }
    }
  return DW_OK;
}

static void
take_points (dw_series *series, dw_stroke stroke, const GArray *points)
{
  const dw_force_point *p = (const dw_force_point *)(gconstpointer)points->data;
  g_autofree dw_series_point *taken = g_new (dw_series_point, points->len);
  for (guint i = 0; i < points->len; i++)
    taken[i] = (dw_series_point){ p[i].speed, p[i].force, p[i].lost_travel, p[i].is_void,
                                  dw_flow_shares_of (&p[i]) };
  dw_series_set_points (series, stroke, taken, points->len);
}

dw_status
dw_series_fill (dw_series *series, const dw_damper *damper, double temperature,
                const dw_series_range *range, dw_error *err)
{
  dw_force_model model;
  dw_force_point onset = { .force = (double)NAN };
  GArray *points[DW_N_STROKES] = { NULL, NULL };

  assert (range->to > range->from && range->from >= 0.0 && (!range->is_log || range->from > 0.0));

  dw_status status = dw_force_model_make (damper, temperature, &model, err);
  if (status == DW_OK && isfinite (model.onset_speed))
    status = dw_force_at (&model, DW_COMPRESSION, model.onset_speed, &onset, err);
  for (int s = 0; s < DW_N_STROKES && status == DW_OK; s++)
    {
      points[s] = g_array_new (FALSE, TRUE, sizeof (dw_force_point));
      status = compute_stroke (&model, (dw_stroke)s, range, points[s], err);
    }
  if (status == DW_OK)
    {
      series->model = model;
      series->has_model = true;
      series->motion_ratio = damper->motion_ratio;
      series->onset_speed = model.onset_speed;
      series->onset_force = onset.force;
      series->is_vented = damper->gas.kind == DW_GAS_VENTED;
    }
  for (int s = 0; s < DW_N_STROKES; s++)
    if (points[s] != NULL)
      {
        if (status == DW_OK)
          take_points (series, (dw_stroke)s, points[s]);
        g_array_unref (points[s]);
      }
  return status;
}

/* ---- the band ---- */

/* Speeds at which a band is computed; it is smoother than the curve. */
#define BAND_SPEEDS 24

/* Every so many-th point and the last one. @return  how many */
static size_t
choose_points (const dw_series_stroke *stroke, size_t chosen[BAND_SPEEDS])
{
  const size_t last = stroke->n - 1;
  const size_t n = MIN (stroke->n, BAND_SPEEDS);
  for (size_t i = 0; i < n; i++)
    chosen[i] = n > 1 ? (i * last + (n - 1) / 2) / (n - 1) : 0;
  return n;
}

/* A value of a point between two chosen ones. */
static double
between (double from, double to, double a, double b, double x)
{
  return b > a ? from + (to - from) * (x - a) / (b - a) : from;
}

static dw_status
fill_band (dw_series *series, const dw_damper *damper, double temperature,
           const dw_spread_limits *limits, dw_stroke stroke, dw_error *err)
{
  const dw_series_stroke *s = &series->stroke[stroke];
  size_t chosen[BAND_SPEEDS];
  double speeds[BAND_SPEEDS];
  dw_spread_point spread[BAND_SPEEDS];

  if (s->n == 0)
    return DW_OK;
  const size_t n = choose_points (s, chosen);
  for (size_t i = 0; i < n; i++)
    speeds[i] = s->points[chosen[i]].speed;
  const dw_status status = dw_spread_make (damper, temperature, limits, stroke, speeds, n, spread,
                                           err);
  if (status != DW_OK)
    return status;

  g_autofree double *low = g_new (double, s->n);
  g_autofree double *high = g_new (double, s->n);
  size_t at = 0;
  for (size_t i = 0; i < s->n; i++)
    {
      while (at + 2 < n && i > chosen[at + 1])
        at++;
      const size_t next = MIN (at + 1, n - 1);
      const dw_spread_point *a = &spread[at];
      const dw_spread_point *b = &spread[next];
      const double v = s->points[i].speed;
      /* distances from the curve, so that the band follows its bends */
      low[i] = s->points[i].force
               + between (dw_spread_low (a) - a->nominal, dw_spread_low (b) - b->nominal,
                          speeds[at], speeds[next], v);
      high[i] = s->points[i].force
                + between (dw_spread_high (a) - a->nominal, dw_spread_high (b) - b->nominal,
                           speeds[at], speeds[next], v);
    }
  dw_series_set_band (series, stroke, low, high);
  return DW_OK;
}

dw_status
dw_series_fill_band (dw_series *series, const dw_damper *damper, double temperature,
                     const dw_spread_limits *limits, dw_error *err)
{
  dw_status status = DW_OK;
  for (int s = 0; s < DW_N_STROKES && status == DW_OK; s++)
    status = fill_band (series, damper, temperature, limits, (dw_stroke)s, err);
  return status;
}
