/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-color.h"

#include <math.h>

/* White D65, CIE 1931 observer, as IEC 61966-2-1 has it. */
static const double WHITE[3] = { 0.95047, 1.0, 1.08883 };

static const double DEGREE = 0.017453292519943295; /* [rad] */

/* ISO/CIE 11664-4, inverse: a straight piece near black, a cube above. */
static double
cube (double f)
{
  const double edge = 6.0 / 29.0;
  return f > edge ? f * f * f : 3.0 * edge * edge * (f - 4.0 / 29.0);
}

static double
to_srgb (double linear)
{
  const double x = fmin (1.0, fmax (0.0, linear));
  return x <= 0.0031308 ? 12.92 * x : 1.055 * pow (x, 1.0 / 2.4) - 0.055;
}

static double
to_linear (double srgb)
{
  return srgb <= 0.04045 ? srgb / 12.92 : pow ((srgb + 0.055) / 1.055, 2.4);
}

dw_color
dw_color_from_lch (double lightness, double chroma, double hue)
{
  const double a = chroma * cos (hue * DEGREE);
  const double b = chroma * sin (hue * DEGREE);
  const double f = (lightness + 16.0) / 116.0;
  const double x = WHITE[0] * cube (f + a / 500.0);
  const double y = WHITE[1] * cube (f);
  const double z = WHITE[2] * cube (f - b / 200.0);
  return (dw_color){ to_srgb (3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
                     to_srgb (-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
                     to_srgb (0.0556434 * x - 0.2040259 * y + 1.0572252 * z), 1.0 };
}

dw_color
dw_color_with_alpha (dw_color color, double alpha)
{
  color.alpha = alpha;
  return color;
}

double
dw_color_luminance (dw_color color)
{
  return 0.2126 * to_linear (color.red) + 0.7152 * to_linear (color.green)
         + 0.0722 * to_linear (color.blue);
}

double
dw_color_contrast (dw_color a, dw_color b)
{
  const double la = dw_color_luminance (a) + 0.05;
  const double lb = dw_color_luminance (b) + 0.05;
  return fmax (la, lb) / fmin (la, lb);
}

dw_color
dw_color_mix (dw_color a, dw_color b, double share)
{
  return (dw_color){ a.red + share * (b.red - a.red), a.green + share * (b.green - a.green),
                     a.blue + share * (b.blue - a.blue), a.alpha + share * (b.alpha - a.alpha) };
}
