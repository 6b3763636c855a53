/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map.h"

#include <glib.h>

#include "draw/dw-phrase.h"
#include "model/dw-units.h"

dw_drill_map_labels
dw_drill_map_labels_defaults (void)
{
  return (dw_drill_map_labels){
    .axis = { "Set 1", "Set 2" },
    .caption = "{what} in {unit}",
    .measure = {
      [DW_MEASURE_COMPRESSION_LOW] = "compression at low speed, change",
      [DW_MEASURE_COMPRESSION_MIDDLE] = "compression at middle speed, change",
      [DW_MEASURE_COMPRESSION_HIGH] = "compression at high speed, change",
      [DW_MEASURE_REBOUND_LOW] = "rebound at low speed, change",
      [DW_MEASURE_REBOUND_MIDDLE] = "rebound at middle speed, change",
      [DW_MEASURE_REBOUND_HIGH] = "rebound at high speed, change",
      [DW_MEASURE_PACK_COMPRESSION] = "pack in compression",
      [DW_MEASURE_PACK_REBOUND] = "pack in rebound",
      [DW_MEASURE_SHARE_LOW] = "rebound share at low speed",
      [DW_MEASURE_SHARE_MIDDLE] = "rebound share at middle speed",
      [DW_MEASURE_SHARE_HIGH] = "rebound share at high speed",
      [DW_MEASURE_OIL] = "oil that holds low-speed compression",
    },
    .shaded = "Shaded: {what}",
    .contours = "Lines: {what}",
    .now = "now",
    .gone = "already drilled away",
    .no_room = "too little land",
    .equal = "low-speed compression as now",
    .oil = "an oil at hand would hold",
    .dot = "drills at hand",
    .tolerance = "how large it may come out",
    .about = "{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to} {unit} and {y} from "
             "{y_from} to {y_to} {unit}.",
    .about_strip = "{shaded}, from {low} to {high}, over {x} from {x_from} to {x_to} {unit}.",
    .about_dots = "Choices: {n}, of which {faint} are shown faint.",
    .about_now = "Now {size} {unit}.",
    .about_chosen = "Chosen: {size} {unit}, {value}.",
    .about_none = "No choice is marked.",
    .sizes = "{x} and {y}",
  };
}

const char *
dw_drill_measure_unit (dw_drill_measure measure)
{
  if (measure <= DW_MEASURE_REBOUND_HIGH)
    return "%";
  return measure == DW_MEASURE_OIL ? "cSt" : "";
}

double
dw_drill_measure_factor (dw_drill_measure measure)
{
  return measure == DW_MEASURE_OIL ? DW_CST : 1.0;
}

char *
dw_drill_map_measure_caption (const dw_drill_map_labels *labels, dw_drill_measure measure)
{
  const char *unit = dw_drill_measure_unit (measure);
  const dw_word words[]
      = { { "what", labels->measure[measure] }, { "unit", unit }, { NULL, NULL } };
  return *unit != '\0' ? dw_phrase_fill (labels->caption, words)
                       : g_strdup (labels->measure[measure]);
}

dw_drill_map
dw_drill_map_defaults (void)
{
  return (dw_drill_map){
    .shade_measure = DW_MEASURE_COMPRESSION_LOW,
    .contour_measure = DW_MEASURE_PACK_COMPRESSION,
    .chosen = -1,
    .pointed = -1,
    .labels = dw_drill_map_labels_defaults (),
    .numbers = dw_number_format_defaults (),
    .length_factor = DW_MM,
    .length_unit = "mm",
  };
}
