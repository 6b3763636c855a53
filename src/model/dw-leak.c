/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-leak.h"

static const double PI = 3.14159265358979323846;

double
dw_annulus_flow (double diameter, double clearance, double eccentricity, double length,
                 double dynamic, double pressure)
{
  const double c3 = clearance * clearance * clearance;
  return PI * diameter * c3 * pressure * (1.0 + 1.5 * eccentricity * eccentricity)
         / (12.0 * dynamic * length);
}

dw_leak
dw_leak_make (double bore, double clearance, double eccentricity, double length, double dynamic)
{
  if (clearance <= 0.0)
    return (dw_leak){ 0 };

  const double diameter = bore - clearance;
  return (dw_leak){
    .conductance = dw_annulus_flow (diameter, clearance, eccentricity, length, dynamic, 1.0),
    .dragged = PI * diameter * clearance / 2.0,
    .drag = PI * diameter * length * dynamic / clearance,
    .unloaded = PI * diameter * clearance / 2.0,
  };
}
