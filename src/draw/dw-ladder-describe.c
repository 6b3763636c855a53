/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-describe.h"

#include <glib.h>

#include "draw/dw-phrase.h"

#define SPEED_DIGITS 3

static void
add_sentence (GString *out, const char *sentence)
{
  if (out->len > 0)
    g_string_append_c (out, ' ');
  g_string_append (out, sentence);
}

static void
add_filled (GString *out, const char *phrase, const dw_word *words)
{
  g_autofree char *text = dw_phrase_fill (phrase, words);
  add_sentence (out, text);
}

static char *
percent_text (const dw_ladder_chart *chart)
{
  char text[DW_NUMBER_ROOM];
  dw_number_digits (&chart->numbers, DW_LADDER_SAME, 2, text, sizeof text);
  return g_strdup (text);
}

static char *
stack_text (const dw_ladder_chart *chart, int rung)
{
  return dw_ladder_chart_stack (chart, rung, dw_ladder_chart_has_materials (chart));
}

/* ---- one stack ---- */

static void
add_force (const dw_ladder_chart *chart, int rung, GString *out)
{
  g_autofree char *stack = stack_text (chart, rung);
  g_autofree char *value = dw_ladder_chart_number (chart, dw_ladder_chart_force (chart, rung));
  const dw_word words[] = { { "stack", stack },
                            { "length", chart->units.length.symbol },
                            { "value", value },
                            { "unit", chart->units.force.symbol },
                            { NULL, NULL } };
  add_filled (out, chart->labels.rung, words);
}

static void
add_bounds (const dw_ladder_chart *chart, const dw_ladder_rung *r, GString *out)
{
  g_autofree char *slide = dw_ladder_chart_number (chart, r->force[DW_LEAVES_SLIDE][chart->speed]);
  g_autofree char *stick = dw_ladder_chart_number (chart, r->force[DW_LEAVES_STICK][chart->speed]);
  g_autofree char *one_slide = dw_ladder_chart_length (chart, r->single[DW_LEAVES_SLIDE]);
  g_autofree char *one_stick = dw_ladder_chart_length (chart, r->single[DW_LEAVES_STICK]);
  g_autofree char *added = dw_ladder_chart_length (chart, r->added);
  g_autofree char *habit = dw_ladder_chart_number (chart, r->habit[chart->speed]);
  const char *unit = chart->units.force.symbol;
  const char *length = chart->units.length.symbol;
  const dw_word bounds[]
      = { { "slide", slide }, { "stick", stick }, { "unit", unit }, { NULL, NULL } };
  const dw_word single[]
      = { { "slide", one_slide }, { "stick", one_stick }, { "length", length }, { NULL, NULL } };
  const dw_word adding[] = {
    { "added", added }, { "length", length }, { "habit", habit }, { "unit", unit }, { NULL, NULL }
  };
  add_filled (out, chart->labels.rung_bounds, bounds);
  add_filled (out, chart->labels.rung_single, single);
  add_filled (out, chart->labels.rung_habit, adding);
}

static int
group_size (const dw_ladder_chart *chart, int group)
{
  int n = 0;
  for (int i = 0; i < dw_ladder_chart_count (chart); i++)
    n += chart->ladder->rungs[i].group == group;
  return n;
}

char *
dw_ladder_describe_rung (const dw_ladder_chart *chart, int rung)
{
  const dw_ladder_rung *r = &chart->ladder->rungs[rung];
  GString *out = g_string_new (NULL);
  const int n = group_size (chart, r->group);
  add_force (chart, rung, out);
  if (r->leaves > 1)
    add_bounds (chart, r, out);
  if (n > 1)
    {
      g_autofree char *number = g_strdup_printf ("%d", n);
      const dw_word words[] = { { "n", number }, { NULL, NULL } };
      add_filled (out, chart->labels.rung_same, words);
    }
  if (r->at_stop)
    add_sentence (out, chart->labels.rung_stop);
  return g_string_free (out, FALSE);
}

/* ---- all of them ---- */

static void
add_about (const dw_ladder_chart *chart, GString *out)
{
  const int n = dw_ladder_chart_count (chart);
  char speed[DW_NUMBER_ROOM];
  dw_number_digits (&chart->numbers, chart->at / chart->units.speed.factor, SPEED_DIGITS, speed,
                    sizeof speed);
  g_autofree char *count = g_strdup_printf ("%d", n);
  g_autofree char *low = dw_ladder_chart_number (chart, dw_ladder_chart_force (chart, 0));
  g_autofree char *high = dw_ladder_chart_number (chart, dw_ladder_chart_force (chart, n - 1));
  g_autofree char *softest = stack_text (chart, 0);
  g_autofree char *stiffest = stack_text (chart, n - 1);
  g_autofree char *groups = g_strdup_printf ("%d", chart->ladder->n_groups);
  g_autofree char *percent = percent_text (chart);
  const dw_word words[] = { { "n", count },
                            { "stroke", chart->labels.stroke[chart->stroke] },
                            { "speed", speed },
                            { "speed_unit", chart->units.speed.symbol },
                            { "low", low },
                            { "high", high },
                            { "unit", chart->units.force.symbol },
                            { "softest", softest },
                            { "stiffest", stiffest },
                            { "length", chart->units.length.symbol },
                            { NULL, NULL } };
  const dw_word of_groups[] = { { "groups", groups }, { "percent", percent }, { NULL, NULL } };
  add_filled (out, chart->labels.about, words);
  add_filled (out, chart->labels.about_groups, of_groups);
}

static void
add_end (const dw_ladder_chart *chart, const char *phrase, int rung, GString *out)
{
  g_autofree char *stack = stack_text (chart, rung);
  const dw_word words[]
      = { { "stack", stack }, { "length", chart->units.length.symbol }, { NULL, NULL } };
  add_filled (out, phrase, words);
}

/* At the speed that is shown. */
static void
add_ends (const dw_ladder_chart *chart, GString *out)
{
  int last_soft = -1;
  int first_plain = -1;
  for (int i = dw_ladder_chart_count (chart) - 1; i >= 0; i--)
    {
      const dw_ladder_verdict verdict = chart->ladder->rungs[i].verdict_at[chart->speed];
      last_soft = verdict == DW_LADDER_HOLES && last_soft < 0 ? i : last_soft;
      first_plain = verdict == DW_LADDER_PLAIN ? i : first_plain;
    }
  if (last_soft >= 0)
    add_end (chart, chart->labels.about_holes, last_soft, out);
  if (first_plain >= 0)
    add_end (chart, chart->labels.about_plain, first_plain, out);
}

static void
add_rung (const dw_ladder_chart *chart, const char *phrase, int rung, GString *out)
{
  g_autofree char *text = dw_ladder_describe_rung (chart, rung);
  const dw_word words[] = { { "rung", text }, { NULL, NULL } };
  add_filled (out, phrase, words);
}

static int
own_rung (const dw_ladder_chart *chart)
{
  for (int i = 0; i < dw_ladder_chart_count (chart); i++)
    if (chart->ladder->rungs[i].is_own)
      return i;
  return -1;
}

char *
dw_ladder_describe (const dw_ladder_chart *chart)
{
  const int fitted = dw_ladder_chart_fitted (chart);
  const int own = own_rung (chart);
  GString *out = g_string_new (NULL);
  if (dw_ladder_chart_count (chart) == 0)
    return g_string_free (g_string_append (out, chart->labels.about_empty), FALSE);
  add_about (chart, out);
  add_ends (chart, out);
  if (fitted >= 0)
    add_rung (chart, chart->labels.about_fitted, fitted, out);
  if (own >= 0 && own != fitted)
    add_rung (chart, chart->labels.about_own, own, out);
  if (chart->chosen >= 0 && chart->chosen < dw_ladder_chart_count (chart))
    add_rung (chart, chart->labels.about_chosen, chart->chosen, out);
  else
    add_sentence (out, chart->labels.about_none);
  return g_string_free (out, FALSE);
}
