/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-root.h"

#include <float.h>
#include <math.h>
#include <stdbool.h>

double
dw_root_bracketed (dw_root_function f, void *data, double low, double high)
{
  enum
  {
    MOST_STEPS = 300
  };
  /* symbols as in the paper: b is the newest point, a the other side, c the one before */
  double b = low;
  double a = high;
  double fb = f (b, data);
  double fa = f (a, data);
  double c = a;
  double fc = fa;
  double t = 0.5;

  if (fa == 0.0 || fb == 0.0 || (fa > 0.0) == (fb > 0.0))
    return fabs (fa) < fabs (fb) ? a : b;

  for (int i = 0; i < MOST_STEPS; i++)
    {
      const double x = a + t * (b - a);
      const double fx = f (x, data);
      if ((fx > 0.0) == (fa > 0.0))
        {
          c = a;
          fc = fa;
        }
      else
        {
          c = b;
          b = a;
          fc = fb;
          fb = fa;
        }
      a = x;
      fa = fx;

      const double best = fabs (fa) < fabs (fb) ? a : b;
      const double room = 2.0 * DBL_EPSILON * fabs (best) / fabs (b - a);
      if (room > 0.5 || fa == 0.0)
        return fa == 0.0 ? a : best;

      const double xi = (a - b) / (c - b);
      const double phi = (fa - fb) / (fc - fb);
      const bool safe = phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi;
      t = safe ? fa / (fb - fa) * fc / (fb - fc)
                     + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
               : 0.5;
      t = fmin (1.0 - room, fmax (room, t));
    }
  return fabs (fa) < fabs (fb) ? a : b;
}
