/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-chart-words.h"

#include <glib/gi18n.h>

dw_chart_labels
dw_chart_words (void)
{
  return (dw_chart_labels){
    .stroke = { [DW_COMPRESSION] = _ ("compression"), [DW_REBOUND] = _ ("rebound") },
    .quantity = { [DW_SHOW_FORCE] = { _ ("Force"), _ ("Force at the wheel") },
                  [DW_SHOW_DAMPING] = { _ ("Damping c"), _ ("Damping c at the wheel") } },
    .speed = { _ ("Shaft speed"), _ ("Wheel speed") },
    /* translators: words in braces are filled in and stay as they are */
    .caption = _ ("{what} in {unit}"),
    .onset = _ ("void from {speed} {unit}"),
    .strip = _ ("Where the oil flows: {setup}, {stroke}"),
    .share = { _ ("open holes"), _ ("covered holes"), _ ("leak") },
    .fitted = _ ("{setup} (fitted)"),
    /* translators: head of a narrow column, travel lost to the void */
    .lost = _ ("lost {unit}"),
    .lost_all = _ ("all"),
    .about = _ ("{quantity} against {speed}, {from} to {to} {unit}."),
    .about_one = _ ("{setup}: {compression}; {rebound}."),
    .about_stroke = _ ("{stroke} {values}"),
    .about_value = _ ("{value} {unit} at {speed} {speed_unit}"),
    .about_onset = _ ("A void opens in compression from {speed} {unit}."),
    .about_none = _ ("No setup is drawn."),
  };
}

dw_chart_units
dw_chart_words_units (dw_units units)
{
  const dw_chart_units inch = dw_chart_units_inch ();
  dw_chart_units shown = dw_chart_units_metric ();

  if ((units & DW_UNITS_INCH) != 0)
    {
      shown.speed = inch.speed;
      shown.length = inch.length;
    }
  if ((units & DW_UNITS_LBF) != 0)
    {
      shown.force = inch.force;
      shown.damping = inch.damping;
    }
  return shown;
}

dw_chart_page_labels
dw_chart_page_words (void)
{
  return (dw_chart_page_labels){
    .axle = { _ ("Front"), _ ("Rear") },
    /* translators: words in braces are filled in: "Force in N, Shaft speed in m/s" */
    .axes = _ ("{quantity} in {unit}, {speed} in {speed_unit}"),
    .key = _ ("Ring: a void opens behind the piston. Dotted: the force past it, reached once the "
              "lost travel is over. Thin line: the force until then."),
    /* translators: {temperature} is filled in */
    .foot = _ ("Oil at {temperature} °C. Estimates for scale-model dampers: check on the car, one "
               "change at a time."),
  };
}
