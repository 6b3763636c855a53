/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ladder-chart.h"

#include <glib.h>

#include "draw/dw-phrase.h"
#include "model/dw-units.h"

/* Thousandths of a millimetre, as in other drawings. */
#define LENGTH_DIGITS  4
#define FORCE_DIGITS   3
#define MODULUS_DIGITS 3

dw_ladder_labels
dw_ladder_labels_defaults (void)
{
  return (dw_ladder_labels){
    .title = "Force in {stroke} at {speed} {speed_unit}, {unit}",
    .stroke = { "compression", "rebound" },
    .stack = "Stack, {unit}",
    .leaves = "{count} × {thickness}",
    .material = "{leaves} ({modulus} GPa)",
    .joined = "{inner} + {outer}",
    .fitted = "{stack} (fitted)",
    .own = "{stack} (this setup)",
    .same = "the same",
    .bounds = "leaves slide … leaves stick",
    .value = "by the leaf coupling",
    .habit = "thicknesses added up",
    .groups = "the same within {percent} % at all speeds",
    .holes = "holes alone decide",
    .plain = "as good as a plain piston",
    .about = "{n} stacks in order of stiffness, force in {stroke} at {speed} {speed_unit}: from "
             "{low} {unit} with {softest} {length} to {high} {unit} with {stiffest} {length}.",
    .about_groups = "{groups} of them differ by more than {percent} %.",
    .about_holes = "Up to {stack} {length} the holes alone decide.",
    .about_plain = "From {stack} {length} on the piston is as good as plain.",
    .about_fitted = "Fitted: {rung}",
    .about_own = "This setup: {rung}",
    .about_chosen = "Chosen: {rung}",
    .about_none = "No stack is chosen.",
    .about_empty = "There is no stack.",
    .rung = "{stack} {length}, {value} {unit}.",
    .rung_bounds = "{slide} {unit} while leaves slide, {stick} {unit} when they stick.",
    .rung_single = "As stiff as one leaf of {slide} to {stick} {length}.",
    .rung_habit = "Adding thicknesses makes it {added} {length}, {habit} {unit}.",
    .rung_same = "One of {n} that do the same.",
    .rung_stop = "At the high speed it opens to its stop.",
  };
}

dw_ladder_chart
dw_ladder_chart_defaults (void)
{
  return (dw_ladder_chart){
    .stroke = DW_REBOUND,
    .speed = DW_HIGH,
    .at = 1.0,
    .has_fitted = true,
    .chosen = -1,
    .pointed = -1,
    .labels = dw_ladder_labels_defaults (),
    .units = dw_chart_units_metric (),
    .numbers = dw_number_format_defaults (),
  };
}

int
dw_ladder_chart_count (const dw_ladder_chart *chart)
{
  return chart->ladder != NULL ? (int)chart->ladder->n : 0;
}

double
dw_ladder_chart_force (const dw_ladder_chart *chart, int rung)
{
  return chart->ladder->rungs[rung].figures.point[chart->stroke][chart->speed].force;
}

int
dw_ladder_chart_fitted (const dw_ladder_chart *chart)
{
  for (int i = 0; chart->has_fitted && i < dw_ladder_chart_count (chart); i++)
    if (chart->ladder->rungs[i].is_fitted)
      return i;
  return -1;
}

bool
dw_ladder_chart_has_materials (const dw_ladder_chart *chart)
{
  const int n = dw_ladder_chart_count (chart);
  for (int i = 0; i < n; i++)
    for (int k = 0; k < chart->ladder->rungs[i].n_shims; k++)
      if (chart->ladder->rungs[i].shims[k].modulus != chart->ladder->rungs[0].shims[0].modulus)
        return true;
  return false;
}

char *
dw_ladder_chart_number (const dw_ladder_chart *chart, double force)
{
  char text[DW_NUMBER_ROOM];
  dw_number_steady (&chart->numbers, force / chart->units.force.factor, FORCE_DIGITS, text,
                    sizeof text);
  return g_strdup (text);
}

char *
dw_ladder_chart_length (const dw_ladder_chart *chart, double length)
{
  char text[DW_NUMBER_ROOM];
  dw_number_digits (&chart->numbers, length / chart->units.length.factor, LENGTH_DIGITS, text,
                    sizeof text);
  return g_strdup (text);
}

/* One entry: "2 × 0.1". */
static char *
leaves_text (const dw_ladder_chart *chart, const dw_shim *shim, bool tells_material)
{
  char modulus[DW_NUMBER_ROOM];
  g_autofree char *thickness = dw_ladder_chart_length (chart, shim->thickness);
  g_autofree char *count = g_strdup_printf ("%d", shim->count);
  const dw_word words[] = { { "count", count }, { "thickness", thickness }, { NULL, NULL } };
  g_autofree char *leaves = shim->count == 1 ? g_strdup (thickness)
                                             : dw_phrase_fill (chart->labels.leaves, words);
  if (!tells_material)
    return g_steal_pointer (&leaves);
  dw_number_digits (&chart->numbers, shim->modulus / DW_GPA, MODULUS_DIGITS, modulus,
                    sizeof modulus);
  const dw_word with[] = { { "leaves", leaves }, { "modulus", modulus }, { NULL, NULL } };
  return dw_phrase_fill (chart->labels.material, with);
}

char *
dw_ladder_chart_stack (const dw_ladder_chart *chart, int rung, bool tells_material)
{
  const dw_ladder_rung *r = &chart->ladder->rungs[rung];
  char *stack = leaves_text (chart, &r->shims[0], tells_material);
  for (int i = 1; i < r->n_shims; i++)
    {
      g_autofree char *inner = stack;
      g_autofree char *outer = leaves_text (chart, &r->shims[i], tells_material);
      const dw_word words[] = { { "inner", inner }, { "outer", outer }, { NULL, NULL } };
      stack = dw_phrase_fill (chart->labels.joined, words);
    }
  return stack;
}
