/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-describe.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-phrase.h"

#define DIGITS 3

static void
number (const dw_chart *chart, double value, char text[DW_NUMBER_ROOM])
{
  dw_number_digits (&chart->numbers, value, DIGITS, text, DW_NUMBER_ROOM);
}

/* Force at a shaft speed; NaN where the curve has none. */
static double
force_at (const dw_series_stroke *stroke, double speed)
{
  for (size_t i = 0; i + 1 < stroke->n; i++)
    {
      const dw_series_point *a = &stroke->points[i];
      const dw_series_point *b = &stroke->points[i + 1];
      if (a->speed <= speed && speed <= b->speed)
        return a->force + (b->force - a->force) * (speed - a->speed) / (b->speed - a->speed);
    }
  return (double)NAN;
}

static void
add_value (const dw_chart *chart, const dw_series *series, dw_stroke stroke, double speed,
           GString *out)
{
  char value_text[DW_NUMBER_ROOM];
  char speed_text[DW_NUMBER_ROOM];
  const dw_unit *unit = dw_chart_value_unit (chart);
  const double force = series->has_model ? (double)NAN : force_at (&series->stroke[stroke], speed);
  dw_force_point p = { .force = force };
  if (series->has_model && dw_force_at (&series->model, stroke, speed, &p, NULL) != DW_OK)
    return;
  const double value = dw_chart_shown_value (chart, series, speed, p.force);
  if (!isfinite (value))
    return;

  number (chart, value / unit->factor, value_text);
  number (chart, dw_chart_shown_speed (chart, series, speed) / chart->units.speed.factor,
          speed_text);
  const dw_word words[] = { { "value", value_text },
                            { "unit", unit->symbol },
                            { "speed", speed_text },
                            { "speed_unit", chart->units.speed.symbol },
                            { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (chart->labels.about_value, words);
  if (out->len > 0)
    g_string_append (out, ", ");
  g_string_append (out, text);
}

static char *
describe_stroke (const dw_chart *chart, const dw_series *series, dw_stroke stroke,
                 const double *speeds, int n_speeds)
{
  g_autoptr (GString) values = g_string_new (NULL);
  for (int i = 0; i < n_speeds; i++)
    add_value (chart, series, stroke, speeds[i], values);
  const dw_word words[] = { { "stroke", chart->labels.stroke[stroke] },
                            { "values", values->len > 0 ? values->str : "-" },
                            { NULL, NULL } };
  return dw_phrase_fill (chart->labels.about_stroke, words);
}

static void
add_sentence (GString *out, const char *sentence)
{
  if (out->len > 0)
    g_string_append_c (out, ' ');
  g_string_append (out, sentence);
}

static void
add_series (const dw_chart *chart, const dw_series *series, const double *speeds, int n_speeds,
            GString *out)
{
  g_autofree char *compression = describe_stroke (chart, series, DW_COMPRESSION, speeds, n_speeds);
  g_autofree char *rebound = describe_stroke (chart, series, DW_REBOUND, speeds, n_speeds);
  const dw_word fitted[] = { { "setup", series->name }, { NULL, NULL } };
  g_autofree char *name = series->is_fitted ? dw_phrase_fill (chart->labels.fitted, fitted)
                                            : g_strdup (series->name);
  const dw_word words[] = {
    { "setup", name }, { "compression", compression }, { "rebound", rebound }, { NULL, NULL }
  };
  g_autofree char *text = dw_phrase_fill (chart->labels.about_one, words);
  add_sentence (out, text);

  if (!isfinite (series->onset_speed))
    return;
  char onset[DW_NUMBER_ROOM];
  const double shown = dw_chart_shown_speed (chart, series, series->onset_speed);
  number (chart, shown / chart->units.speed.factor, onset);
  const dw_word onset_words[]
      = { { "speed", onset }, { "unit", chart->units.speed.symbol }, { NULL, NULL } };
  g_autofree char *about_onset = dw_phrase_fill (chart->labels.about_onset, onset_words);
  add_sentence (out, about_onset);
}

char *
dw_chart_describe (const dw_chart *chart, const double *speeds, int n_speeds)
{
  char from[DW_NUMBER_ROOM];
  char to[DW_NUMBER_ROOM];
  GString *out = g_string_new (NULL);
  if (chart->labels.title != NULL && *chart->labels.title != '\0')
    {
      g_string_append (out, chart->labels.title);
      g_string_append_c (out, '.');
    }
  if (chart->n_series == 0)
    {
      add_sentence (out, chart->labels.about_none);
      return g_string_free (out, FALSE);
    }

  const dw_view view = dw_chart_current_view (chart);
  number (chart, view.x_low / chart->units.speed.factor, from);
  number (chart, view.x_high / chart->units.speed.factor, to);
  const dw_word words[] = { { "quantity", chart->labels.quantity[chart->quantity][chart->place] },
                            { "speed", chart->labels.speed[chart->place] },
                            { "from", from },
                            { "to", to },
                            { "unit", chart->units.speed.symbol },
                            { NULL, NULL } };
  g_autofree char *about = dw_phrase_fill (chart->labels.about, words);
  add_sentence (out, about);
  for (int i = 0; i < chart->n_series; i++)
    add_series (chart, chart->series[i], speeds, n_speeds, out);
  return g_string_free (out, FALSE);
}
