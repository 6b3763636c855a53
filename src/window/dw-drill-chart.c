/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-chart.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <math.h>

#include "sheet/dw-chart-words.h"

/* Speeds go to somewhat past the high one. */
static const double PAST_HIGH = 1.2;

static dw_series *
series_of (const dw_drilling *study, const dw_damper *damper, const char *name, int slot)
{
  const dw_series_range range = { 0.0, fmin (10.0, study->speeds[DW_HIGH] * PAST_HIGH), false };
  dw_series *series = dw_series_new (name);

  series->slot = slot;
  if (dw_series_fill (series, damper, study->temperature, &range, NULL) != DW_OK)
    g_clear_pointer (&series, dw_series_free);
  return series;
}

void
dw_drill_chart_show (DwChartView *view, const dw_drilling *study, const dw_drill_row *row,
                     const dw_spread_limits *limits, dw_axle axle, dw_units units)
{
  dw_chart chart = dw_chart_defaults ();
  dw_series *series[2];
  dw_spread_limits holes;
  dw_damper drilled;
  int n = 0;

  chart.labels = dw_chart_words ();
  chart.labels.title = axle == DW_FRONT ? _ ("Front") : _ ("Rear");
  chart.units = dw_chart_words_units (units);
  g_strlcpy (chart.numbers.decimal, localeconv ()->decimal_point, sizeof chart.numbers.decimal);
  chart.legend = DW_LEGEND_TABLE;
  series[n] = series_of (study, &study->sets.damper, _ ("now"), DW_SLOT_FITTED);
  n += series[n] != NULL;
  if (n == 1 && row != NULL && row->n_holes > 0
      && dw_drilling_scattering (&study->sets, row->result.size, limits, &drilled, &holes, NULL)
             == DW_OK)
    {
      series[n] = series_of (study, &drilled, _ ("drilled"), DW_SLOT_TRIAL_1);
      if (series[n] != NULL)
        dw_series_fill_band (series[n++], &drilled, study->temperature, &holes, NULL);
    }
  dw_chart_view_take (view, series, n, &chart);
}
