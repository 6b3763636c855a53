/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "draw/dw-phrase.h"
#include "model/dw-drill.h"

static const char NOTHING[] = "–";

/* ---- pieces ---- */

/* Drills are told to a hundredth of a millimetre, number drills as well. */
static char *
number_of (double size, dw_units units)
{
  return (units & DW_UNITS_INCH) != 0 ? dw_quantity_format_short (DW_QUANTITY_LENGTH, units, size)
                                      : g_strdup_printf ("%.2f", size / 1e-3);
}

static char *
length_of (double size, dw_units units)
{
  g_autofree char *number = number_of (size, units);
  return g_strdup_printf ("%s\u00a0%s", number, dw_quantity_unit (DW_QUANTITY_LENGTH, units));
}

static char *
viscosity_of (double viscosity)
{
  return g_strdup_printf ("%.0f", viscosity / 1e-6);
}

char *
dw_drill_words_sizes (const dw_drill_sets *sets, const double size[DW_DRILL_SETS], dw_units units)
{
  g_autofree char *first = length_of (size[0], units);
  g_autofree char *second = length_of (size[1], units);

  if (size[0] == 0.0 && size[1] == 0.0)
    return g_strdup (_ ("as it is now"));
  if (sets->n_holes[1] == 0)
    return g_steal_pointer (&first);
  if (sets->n_holes[0] == 0)
    return g_steal_pointer (&second);
  if (size[1] == 0.0)
    return g_strdup_printf (_ ("set 1 %s, set 2 as it is"), first);
  if (size[0] == 0.0)
    return g_strdup_printf (_ ("set 1 as it is, set 2 %s"), second);
  return g_strdup_printf (_ ("set 1 %s, set 2 %s"), first, second);
}

char *
dw_drill_words_oil (const dw_drill_row *row, const double *bottles, int n)
{
  const dw_drill_mix *mix = &row->mix;

  if (!row->has_hold)
    return g_strdup (NOTHING);
  g_autofree char *wanted = viscosity_of (row->hold.viscosity);
  if (mix->bottle < 0 || mix->bottle >= n || mix->other >= n)
    return g_strdup_printf ("%s\u00a0cSt", wanted);
  g_autofree char *first = viscosity_of (bottles[mix->bottle]);
  if (mix->other < 0)
    /* translators: an oil, and the bottle that is as good as it */
    return g_strdup_printf (_ ("%s cSt: bottle of %s"), wanted, first);
  g_autofree char *second = viscosity_of (bottles[mix->other]);
  /* translators: an oil, and how it is mixed by volume: "520 cSt: 450 + 37 % of 600" */
  return g_strdup_printf (_ ("%s cSt: %s + %.0f %% of %s"), wanted, first, 100.0 * mix->share,
                          second);
}

/* ---- figures ---- */

static void
add_stroke (GString *text, const char *phrase, const double change[DW_N_SPEEDS])
{
  g_autofree char *low = dw_quantity_format_change (change[DW_LOW]);
  g_autofree char *middle = dw_quantity_format_change (change[DW_MIDDLE]);
  g_autofree char *high = dw_quantity_format_change (change[DW_HIGH]);
  const dw_word words[]
      = { { "low", low }, { "middle", middle }, { "high", high }, { NULL, NULL } };
  g_autofree char *line = dw_phrase_fill (phrase, words);
  g_string_append_printf (text, "%s\n", line);
}

static void
add_pack (GString *text, const dw_drilling *study, const dw_drill_row *row, dw_units units)
{
  const dw_figures *figures = &row->result.figures;
  g_autofree char *before = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units,
                                                       study->now.pack[DW_COMPRESSION], 3);
  g_autofree char *after = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units,
                                                      figures->pack[DW_COMPRESSION], 3);
  g_autofree char *share = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units,
                                                      figures->rebound_share[DW_MIDDLE], 3);
  g_string_append_printf (text, _ ("Pack %s → %s, rebound share %s\n"), before, after, share);
}

static void
add_hold (GString *text, const dw_drill_box *box, const dw_drill_row *row)
{
  g_autofree char *oil = dw_drill_words_oil (row, box->bottles, box->n_bottles);
  g_string_append_printf (text, _ ("Oil that holds low-speed compression: %s\n"), oil);
  if (!row->has_hold)
    return;
  g_autofree char *high = dw_quantity_format_change (row->hold.change[DW_COMPRESSION][DW_HIGH]);
  g_autofree char *rebound = dw_quantity_format_change (row->hold.change[DW_REBOUND][DW_HIGH]);
  g_string_append_printf (text, _ ("  with it at high speed: compression %s, rebound %s\n"), high,
                          rebound);
}

static void
add_single (GString *text, const dw_drill_row *row, dw_units units)
{
  if (!row->has_single || row->result.size[0] == row->result.size[1])
    return;
  g_autofree char *exact = length_of (row->single, units);
  if (row->single_drill == 0.0)
    {
      g_string_append_printf (text, _ ("All holes at %s would do the same at low speed\n"), exact);
      return;
    }
  g_autofree char *drill = length_of (row->single_drill, units);
  g_string_append_printf (
      text, _ ("All holes at %s would do the same at low speed; nearest drill %s\n"), exact, drill);
}

char *
dw_drill_words_figures (const dw_drilling *study, const dw_drill_box *box, const dw_drill_row *row,
                        dw_units units)
{
  GString *text = g_string_new (NULL);

  /* translators: changes at low, middle and high speed */
  add_stroke (text, _ ("Compression {low}, {middle}, {high}"), row->result.change[DW_COMPRESSION]);
  add_stroke (text, _ ("Rebound {low}, {middle}, {high}"), row->result.change[DW_REBOUND]);
  add_pack (text, study, row, units);
  add_hold (text, box, row);
  if (row->n_holes > 0)
    g_string_append_printf (
        text,
        _ ("Holes come out larger: force ±\u202f%.1f\u202f%%, left to right ±\u202f%.1f\u202f%%\n"),
        100.0 * dw_drill_row_scatter (row), 100.0 * dw_drill_row_pair (row));
  add_single (text, row, units);
  g_string_append_printf (text, ngettext ("%d hole to drill", "%d holes to drill", row->n_holes),
                          row->n_holes);
  g_string_append (text, ", ");
  g_string_append_printf (text, ngettext ("%d pass", "%d passes", row->n_passes), row->n_passes);
  return g_string_free (text, FALSE);
}

/* ---- the plan ---- */

/* "1.40, then 1.50 mm" */
static char *
passes_text (const dw_drill_passes *passes, dw_units units)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < passes->n; i++)
    {
      g_autofree char *drill = i + 1 == passes->n ? length_of (passes->drill[i], units)
                                                  : number_of (passes->drill[i], units);
      if (i > 0)
        g_string_append (text, _ (", then "));
      g_string_append (text, drill);
    }
  return g_string_free (text, FALSE);
}

/* [m] Just below the largest hole that counts as well drilled, so that a drill of that size is next. */
static double
largest_hole (const dw_spread_limits *limits, double size)
{
  const double zone = limits->hole_grade > 0 ? dw_tolerance_it (limits->hole_grade, size)
                                             : limits->hole_error;
  return size + fmax (0.0, (isnan (zone) ? 0.0 : zone) - 2.0 * DW_DRILL_SAME);
}

static void
add_set (GString *text, const dw_drill_sets *sets, const dw_drill_box *box, int set, double size,
         dw_units units)
{
  const dw_piston *piston = &sets->damper.piston;

  if (size == 0.0)
    {
      g_string_append_printf (text, _ ("Set %d: leave as it is.\n"), set + 1);
      return;
    }
  for (int g = 0; g < piston->n_holes; g++)
    {
      const int n = sets->count[set][g];
      const dw_drill_passes passes = dw_drill_passes_find (piston->holes[g].diameter, size,
                                                           box->drills, box->n_drills);
      if (n == 0)
        continue;
      g_autofree char *from = length_of (piston->holes[g].diameter, units);
      g_autofree char *drills = passes_text (&passes, units);
      g_string_append_printf (
          text,
          /* translators: set, how many holes, what they are now, drills */
          ngettext ("Set %d: %d hole of %s: drill %s.\n", "Set %d: %d holes of %s: drill %s.\n", n),
          set + 1, n, from, drills);
      if (passes.has_large_pass)
        g_string_append (text, _ ("  The drills at hand leave a large pass: go slowly, or get one "
                                  "between.\n"));
    }
  g_autofree char *goes = length_of (size, units);
  const dw_drill_size *next = dw_drill_next (largest_hole (&box->limits, size));
  if (next == NULL)
    return;
  g_autofree char *stops = length_of (next->diameter, units);
  g_string_append_printf (text, _ ("  Check with the plain shanks: %s goes in, %s does not.\n"),
                          goes, stops);
}

char *
dw_drill_words_plan (const dw_drilling *study, const dw_drill_box *box, const dw_drill_row *row,
                     dw_axle axle, dw_units units)
{
  GString *text = g_string_new (NULL);

  g_string_append (text,
                   axle == DW_FRONT
                       ? _ ("Both front pistons, left and right alike; the numbers stand in the "
                            "drawing.\n\n")
                       : _ ("Both rear pistons, left and right alike; the numbers stand in the "
                            "drawing.\n\n"));
  for (int s = 0; s < DW_DRILL_SETS; s++)
    if (study->sets.n_holes[s] > 0)
      add_set (text, &study->sets, box, s, row->result.size[s], units);
  g_autofree char *figures = dw_drill_words_figures (study, box, row, units);
  g_string_append_printf (text, "\n%s\n\n", figures);
  g_string_append (
      text,
      _ ("Drilling cannot be undone. Wear eye protection. Hold small drills in a pin vice or a "
         "bench "
         "drill, turn slowly, and let the drill follow the hole that is there. Deburr both faces, "
         "wash out the swarf. Drill left and right with the same drill, one pass after the other. "
         "These are estimates: check on the car, one change at a time; local rules and the maker’s "
         "limits come first."));
  return g_string_free (text, FALSE);
}

char *
dw_drill_words_trial (const dw_drill_sets *sets, const double size[DW_DRILL_SETS], dw_axle axle,
                      dw_units units)
{
  g_autofree char *sizes = dw_drill_words_sizes (sets, size, units);
  return g_strdup_printf (axle == DW_FRONT ? _ ("Front drilled: %s") : _ ("Rear drilled: %s"),
                          sizes);
}
