/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-page-scale.h"

#include <math.h>
#include <stddef.h>

/* Largest first. */
static const double scales[] = {
  500.0, 400.0, 300.0, 250.0, 200.0, 150.0, 120.0, 100.0, 80.0, 60.0, 50.0, 40.0, 30.0, 25.0, 20.0,
  15.0,  12.0,  10.0,  8.0,   6.0,   5.0,   4.0,   3.0,   2.5,  2.0,  1.5,  1.0,  0.5,  0.2,  0.1
};

double
dw_page_scale_round (double largest, double most)
{
  const double limit = fmin (largest, most);
  for (size_t i = 0; i < sizeof scales / sizeof scales[0]; i++)
    if (scales[i] <= limit)
      return scales[i];
  return limit;
}
