/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-wanted.h"

#include <string.h>

#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"

static const char *const speed_names[DW_N_SPEEDS] = { "low", "middle", "high" };

/* in the order of dw_lever */
static const char *const lever_names[DW_N_LEVERS] = { "open",  "covered", "stack",      "oil",
                                                      "blend", "piston",  "temperature" };

/* Power of ten from percent to SI. */
#define PERCENT_POWER (-2)

/* [1] What forces may be asked to change by. */
static const double LEAST_CHANGE = -0.9;
static const double MOST_CHANGE = 9.0;

#define MOST_THREADS 64

const char *
dw_calc_speed_name (int speed)
{
  return speed_names[speed];
}

const char *
dw_calc_lever_name (int lever)
{
  return lever_names[lever];
}

static bool
find_word (const char *const *words, int n, const char *word, int *place)
{
  for (int i = 0; i < n; i++)
    if (strcmp (words[i], word) == 0)
      {
        *place = i;
        return true;
      }
  return false;
}

static gboolean
read_use (const char *text, dw_calc_wanted *r, GError **error)
{
  if (text == NULL)
    return TRUE;
  g_auto (GStrv) words = g_strsplit (text, ",", 0);
  r->has_use = true;
  for (char **word = words; *word != NULL || word == words; word++)
    {
      int lever = 0;
      if (*word == NULL || !find_word (lever_names, DW_N_LEVERS, *word, &lever))
        return dw_calc_misused (error,
                                "--use needs open, covered, stack, oil, blend, piston or "
                                "temperature with commas between them, not \"%s\"",
                                *word == NULL ? "" : *word);
      r->use[lever] = true;
    }
  return TRUE;
}

/* "rebound-high:-15": one force, or the three of a stroke. */
static gboolean
read_change (const char *text, dw_calc_wanted *r, GError **error)
{
  static const char *const strokes[DW_N_STROKES] = { "compression", "rebound" };
  const dw_calc_range range = { LEAST_CHANGE, MOST_CHANGE, PERCENT_POWER, "%" };
  g_auto (GStrv) halves = g_strsplit (text, ":", 0);
  double change = 0.0;
  int stroke = 0;
  int first = DW_LOW;
  int last = DW_HIGH;
  g_auto (GStrv) names = g_strsplit (g_strv_length (halves) == 2 ? halves[0] : "", "-", 0);
  const guint n = g_strv_length (names);
  const bool is_good = n >= 1 && n <= 2 && find_word (strokes, DW_N_STROKES, names[0], &stroke)
                       && (n == 1 || find_word (speed_names, DW_N_SPEEDS, names[1], &first));
  if (!is_good)
    return dw_calc_misused (error,
                            "--change needs STROKE:PERCENT or STROKE-SPEED:PERCENT, such as "
                            "rebound-high:-15, not \"%s\"",
                            text);
  if (!dw_calc_number_parse ("--change", halves[1], &range, &change, error))
    return FALSE;
  last = n == 2 ? first : last;
  for (int v = first; v <= last; v++)
    {
      if (r->is_changed[stroke][v])
        return dw_calc_misused (error, "--change names %s at the %s speed twice", strokes[stroke],
                                speed_names[v]);
      r->is_changed[stroke][v] = true;
      r->change[stroke][v] = change;
    }
  return TRUE;
}

static gboolean
read_changes (const char *text, dw_calc_wanted *r, GError **error)
{
  if (text == NULL)
    return TRUE;
  g_auto (GStrv) words = g_strsplit (text, ",", 0);
  if (*words == NULL)
    return read_change ("", r, error);
  for (char **word = words; *word != NULL; word++)
    if (!read_change (*word, r, error))
      return FALSE;
  return TRUE;
}

static gboolean
read_temperatures (const char *text, dw_calc_wanted *r, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_OIL_TEMPERATURE, 0, "degC");
  r->has_temperatures = text != NULL;
  if (r->has_temperatures != r->use[DW_LEVER_TEMPERATURE])
    return dw_calc_misused (error, "--temperatures and --use temperature go together");
  if (text == NULL)
    return TRUE;
  g_auto (GStrv) words = g_strsplit (text, ":", 0);
  if (g_strv_length (words) != 2)
    return dw_calc_misused (error, "--temperatures needs two numbers, FROM:TO, not \"%s\"", text);
  if (!dw_calc_number_parse ("--temperatures", words[0], &range, &r->lowest, error)
      || !dw_calc_number_parse ("--temperatures", words[1], &range, &r->highest, error))
    return FALSE;
  if (r->lowest > r->highest)
    return dw_calc_misused (error, "--temperatures goes up: %s:%s has to be the other way round",
                            words[0], words[1]);
  return TRUE;
}

/* What is wanted. */
static gboolean
read_wish (const dw_calc_arguments *arguments, dw_calc_wanted *r, GError **error)
{
  static const char *const kept[] = { "compression", "rebound", "both", NULL };
  static const char *const excluded[] = { "--keep", "--change", "--like" };
  int keep = 2;
  r->is_fair = dw_calc_arguments_has (arguments, "--fair");
  for (size_t i = 0; r->is_fair && i < G_N_ELEMENTS (excluded); i++)
    if (dw_calc_arguments_has (arguments, excluded[i]))
      return dw_calc_misused (error, "--fair and %s exclude each other", excluded[i]);
  if (!dw_calc_arguments_choose (arguments, "--keep", kept, &keep, error)
      || !read_changes (dw_calc_arguments_get (arguments, "--change"), r, error))
    return FALSE;
  r->is_kept[DW_COMPRESSION] = keep != 1;
  r->is_kept[DW_REBOUND] = keep != 0;
  r->like = dw_calc_arguments_get (arguments, "--like");
  return TRUE;
}

static gboolean
read_count (const dw_calc_arguments *arguments, const char *option, int most, int *value,
            GError **error)
{
  const char *text = dw_calc_arguments_get (arguments, option);
  return text == NULL || dw_calc_count_parse (option, text, 1, most, value, error);
}

gboolean
dw_calc_wanted_read (const dw_calc_arguments *arguments, dw_calc_wanted *out, GError **error)
{
  dw_calc_axles axles;
  if (dw_calc_arguments_require (arguments, "--axle", error) == NULL
      || !dw_calc_input_axles (arguments, &axles, error))
    return FALSE;
  dw_calc_wanted wanted = (dw_calc_wanted){ .axle = axles.first, .most_leaves = 3, .dampers = 2 };
  dw_calc_wanted *r = &wanted;
  if (!(read_wish (arguments, r, error)
        && read_use (dw_calc_arguments_get (arguments, "--use"), r, error)
        && read_temperatures (dw_calc_arguments_get (arguments, "--temperatures"), r, error)
        && read_count (arguments, "--most-leaves", DW_LADDER_MAX_LEAVES, &r->most_leaves, error)
        && read_count (arguments, "--dampers", 2, &r->dampers, error)
        && read_count (arguments, "--threads", MOST_THREADS, &r->threads, error)))
    return FALSE;
  *out = wanted;
  return TRUE;
}
