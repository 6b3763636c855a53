/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-stack-words.h"

#include <glib.h>

#include "draw/dw-phrase.h"

/* As in other drawings: thousandths of a millimetre. */
#define LENGTH_DIGITS 4
#define SCALE_DIGITS  3

dw_stack_labels
dw_stack_labels_defaults (void)
{
  /* blanks that are no place to break a line */
  return (
      dw_stack_labels){ .scale = "{scale}\u00a0:\u00a01 across, thickness {factor}\u00a0:\u00a01",
                        .scale_alone = "{scale}\u00a0:\u00a01 across",
                        .entry = "{number}: {count} × {thickness} {unit}",
                        .more = "{first}–{last}: {count} leaves",
                        .lift = "lift {lift} {unit}",
                        .lift_cut = "lift {lift} {unit}, cut",
                        .opens = { "opens on compression", "opens on rebound" },
                        .none = "no shim",
                        .length = dw_chart_units_metric ().length };
}

static char *
filled (const char *format, const dw_word *words)
{
  return format != NULL && *format != '\0' ? dw_phrase_fill (format, words) : NULL;
}

char *
dw_stack_words_entry (const dw_stack_labels *labels, const dw_number_format *numbers,
                      const dw_valve *valve, int i)
{
  const dw_shim *shim = &valve->shims[i];
  char number[DW_NUMBER_ROOM];
  char count[DW_NUMBER_ROOM];
  char thickness[DW_NUMBER_ROOM];
  dw_number_fixed (numbers, i + 1, 0, number, sizeof number);
  dw_number_fixed (numbers, shim->count, 0, count, sizeof count);
  dw_number_digits (numbers, shim->thickness / labels->length.factor, LENGTH_DIGITS, thickness,
                    sizeof thickness);
  const dw_word words[] = { { "number", number },
                            { "count", count },
                            { "thickness", thickness },
                            { "unit", labels->length.symbol },
                            { NULL, NULL } };
  return filled (labels->entry, words);
}

char *
dw_stack_words_more (const dw_stack_labels *labels, const dw_number_format *numbers,
                     const dw_valve *valve, int first)
{
  char from[DW_NUMBER_ROOM];
  char to[DW_NUMBER_ROOM];
  char count[DW_NUMBER_ROOM];
  int n = 0;
  for (int i = first; i < valve->n_shims; i++)
    n += valve->shims[i].count;
  dw_number_fixed (numbers, first + 1, 0, from, sizeof from);
  dw_number_fixed (numbers, valve->n_shims, 0, to, sizeof to);
  dw_number_fixed (numbers, n, 0, count, sizeof count);
  const dw_word words[] = { { "first", from }, { "last", to }, { "count", count }, { NULL, NULL } };
  return filled (labels->more, words);
}

char *
dw_stack_words_lift (const dw_stack_labels *labels, const dw_number_format *numbers,
                     const dw_valve *valve, bool is_cut)
{
  char lift[DW_NUMBER_ROOM];
  dw_number_digits (numbers, valve->lift_limit / labels->length.factor, LENGTH_DIGITS, lift,
                    sizeof lift);
  const dw_word words[] = { { "lift", lift }, { "unit", labels->length.symbol }, { NULL, NULL } };
  return filled (is_cut ? labels->lift_cut : labels->lift, words);
}

char *
dw_stack_words_scale (const dw_stack_labels *labels, const dw_number_format *numbers, double scale,
                      double factor)
{
  char across[DW_NUMBER_ROOM];
  char thickness[DW_NUMBER_ROOM];
  dw_number_digits (numbers, scale, SCALE_DIGITS, across, sizeof across);
  dw_number_digits (numbers, factor, SCALE_DIGITS, thickness, sizeof thickness);
  const dw_word words[] = { { "scale", across }, { "factor", thickness }, { NULL, NULL } };
  return filled (factor > 0.0 ? labels->scale : labels->scale_alone, words);
}
