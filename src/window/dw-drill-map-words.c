/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-words.h"

#include <glib/gi18n.h>

const char *
dw_drill_measure_words (dw_drill_measure measure)
{
  switch (measure)
    {
    case DW_MEASURE_COMPRESSION_LOW:
      return _ ("compression, low speed");
    case DW_MEASURE_COMPRESSION_MIDDLE:
      return _ ("compression, middle speed");
    case DW_MEASURE_COMPRESSION_HIGH:
      return _ ("compression, high speed");
    case DW_MEASURE_REBOUND_LOW:
      return _ ("rebound, low speed");
    case DW_MEASURE_REBOUND_MIDDLE:
      return _ ("rebound, middle speed");
    case DW_MEASURE_REBOUND_HIGH:
      return _ ("rebound, high speed");
    case DW_MEASURE_PACK_COMPRESSION:
      return _ ("pack in compression");
    case DW_MEASURE_PACK_REBOUND:
      return _ ("pack in rebound");
    case DW_MEASURE_SHARE_LOW:
      return _ ("rebound share, low speed");
    case DW_MEASURE_SHARE_MIDDLE:
      return _ ("rebound share, middle speed");
    case DW_MEASURE_SHARE_HIGH:
      return _ ("rebound share, high speed");
    case DW_MEASURE_OIL:
      return _ ("oil to hold");
    case DW_N_MEASURES:
      break;
    }
  g_return_val_if_reached ("");
}

/* "Set 1: 3 open holes"; one buffer a set, for the layout is made before the next call. */
static const char *
axis_words (const dw_drill_sets *sets, int set)
{
  static char text[DW_DRILL_SETS][120];
  int n_covered = 0;
  for (int i = 0; i < sets->face.n_holes; i++)
    n_covered += sets->set_of[i] == set && sets->face.holes[i].covered;
  const int n = sets->n_holes[set];
  const char *form = n_covered == n
                         ? ngettext ("Set %d: %d covered hole", "Set %d: %d covered holes", n)
                     : n_covered == 0
                         ? ngettext ("Set %d: %d open hole", "Set %d: %d open holes", n)
                         : ngettext ("Set %d: %d hole", "Set %d: %d holes", n);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  g_snprintf (text[set], sizeof text[set], form, set + 1, n);
#pragma GCC diagnostic pop
  return text[set];
}

dw_drill_map_labels
dw_drill_map_words (const dw_drill_sets *sets)
{
  dw_drill_map_labels labels = {
    .axis = { axis_words (sets, 0), axis_words (sets, 1) },
    .caption = _ ("{what} in {unit}"),
    .shaded = _ ("Tones: {what}"),
    .contours = _ ("Lines: {what}"),
    /* translators: beside the mark of the present hole sizes */
    .now = _ ("now"),
    .gone = _ ("already drilled away"),
    .no_room = _ ("too little land"),
    .equal = _ ("low-speed compression as now"),
    .oil = _ ("an oil at hand would hold"),
    .dot = _ ("drills at hand"),
    .tolerance = _ ("how large it may come out"),
    .about = _ (
        "{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to} {unit} and {y} from "
        "{y_from} to {y_to} {unit}."),
    .about_strip = _ ("{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to} {unit}."),
    .about_dots = _ ("Choices: {n}, of which {faint} are shown faint."),
    .about_now = _ ("Now {size} {unit}."),
    .about_chosen = _ ("Chosen: {size} {unit}, {value}."),
    .about_none = _ ("No choice is marked."),
    /* translators: sizes of two sets of holes */
    .sizes = _ ("{x} and {y}"),
  };
  for (int m = 0; m < DW_N_MEASURES; m++)
    labels.measure[m] = dw_drill_measure_words ((dw_drill_measure)m);
  return labels;
}
