/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-number.h"

#include <math.h>

#include "calc/dw-calc-error.h"
#include "project/dw-decimal.h"

/* Part of a step by which the last number may overshoot the end: rounding, not another number. */
static const double STEP_SLACK = 1e-9;

dw_calc_range
dw_calc_range_of (dw_limit_id limit, int power, const char *unit)
{
  const dw_limit *l = dw_limit_get (limit);
  return (dw_calc_range){ l->low, l->high, power, unit };
}

static gboolean
not_in_range (const char *option, const char *text, const dw_calc_range *range, GError **error)
{
  char low[DW_DECIMAL_SIZE];
  char high[DW_DECIMAL_SIZE];
  return dw_calc_misused (error, "%s needs a number from %s to %s%s%s, not \"%s\"", option,
                          dw_decimal_format (range->low, range->power, low),
                          dw_decimal_format (range->high, range->power, high),
                          *range->unit == '\0' ? "" : " ", range->unit, text);
}

gboolean
dw_calc_number_parse (const char *option, const char *text, const dw_calc_range *range,
                      double *value, GError **error)
{
  double number = 0.0;
  if (!dw_decimal_parse (text, range->power, &number)
      || !(number >= range->low && number <= range->high))
    return not_in_range (option, text, range, error);
  *value = number;
  return TRUE;
}

gboolean
dw_calc_count_parse (const char *option, const char *text, int low, int high, int *value,
                     GError **error)
{
  int number = 0;
  if (!dw_decimal_parse_int (text, &number) || number < low || number > high)
    return dw_calc_misused (error, "%s needs a whole number from %d to %d, not \"%s\"", option, low,
                            high, text);
  *value = number;
  return TRUE;
}

static gboolean
append (const char *option, double number, GArray *numbers, GError **error)
{
  if (numbers->len >= DW_CALC_MOST_NUMBERS)
    return dw_calc_misused (error, "%s has more than %d numbers", option, DW_CALC_MOST_NUMBERS);
  g_array_append_val (numbers, number);
  return TRUE;
}

/* What a person would write for a sum of typed numbers: 0.3 for 0.1 + 0.2. */
static double
tidy (double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  return g_ascii_strtod (g_ascii_formatd (text, sizeof text, "%.12g", number), NULL) + 0.0;
}

/* FROM:TO:STEP, split at the colons already. */
static gboolean
append_steps (const char *option, char **words, const dw_calc_range *range, GArray *numbers,
              GError **error)
{
  double from = 0.0;
  double to = 0.0;
  double step = 0.0;
  if (!dw_calc_number_parse (option, words[0], range, &from, error)
      || !dw_calc_number_parse (option, words[1], range, &to, error))
    return FALSE;
  if (!dw_decimal_parse (words[2], range->power, &step) || !(step > 0.0 && isfinite (step)))
    return dw_calc_misused (error, "%s needs a step above 0, not \"%s\"", option, words[2]);
  if (from > to)
    return dw_calc_misused (error, "%s goes up: %s:%s has to be the other way round", option,
                            words[0], words[1]);

  const double n_steps = floor ((to - from) / step + STEP_SLACK);
  if (!(n_steps < DW_CALC_MOST_NUMBERS))
    return dw_calc_misused (error, "%s has more than %d numbers", option, DW_CALC_MOST_NUMBERS);
  for (int i = 0; i <= (int)n_steps; i++)
    {
      const double number = tidy (from + i * step);
      if (!append (option, MIN (number, to), numbers, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
append_word (const char *option, const char *word, const dw_calc_range *range, GArray *numbers,
             GError **error)
{
  g_auto (GStrv) words = g_strsplit (word, ":", 0);
  if (g_strv_length (words) == 3)
    return append_steps (option, words, range, numbers, error);

  double number = 0.0;
  return dw_calc_number_parse (option, word, range, &number, error)
         && append (option, number, numbers, error);
}

GArray *
dw_calc_numbers_parse (const char *option, const char *text, const dw_calc_range *range,
                       GError **error)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (double));
  g_auto (GStrv) words = g_strsplit (text, ",", 0);
  if (words[0] == NULL)
    {
      not_in_range (option, text, range, error);
      return NULL;
    }
  for (char **word = words; *word != NULL; word++)
    if (!append_word (option, *word, range, numbers, error))
      return NULL;
  return g_steal_pointer (&numbers);
}
