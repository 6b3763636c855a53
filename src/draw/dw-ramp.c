/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-ramp.h"

#include <math.h>

/* Lightness of the ends on a light and on a dark plot: ink of the other side stays readable on all
 * of it (4.5 : 1 and more, see the test). */
static const double LIGHT_LOW = 98.0;
static const double LIGHT_HIGH = 62.0;
static const double DARK_LOW = 16.0;
static const double DARK_HIGH = 44.0;

/* From a yellowish to a blueish tone: hue and lightness say the same, and blue against yellow is what
 * the most common colour weaknesses tell apart. */
static const double LOW_CHROMA = 12.0;
static const double HIGH_CHROMA = 38.0;
static const double DARK_LOW_CHROMA = 5.0; /* more is not on the screen */
static const double DARK_HIGH_CHROMA = 30.0;
static const double LOW_HUE = 95.0;
static const double HIGH_HUE = 250.0;

static bool
is_grey (const dw_chart_style *style)
{
  for (int i = 0; i < DW_N_SLOTS; i++)
    {
      const dw_color c = style->line[i].color;
      if (fabs (c.red - c.green) > 0.02 || fabs (c.green - c.blue) > 0.02)
        return false;
    }
  return true;
}

dw_ramp
dw_ramp_make (const dw_chart_style *style)
{
  const bool is_dark = dw_color_luminance (style->plot) < dw_color_luminance (style->ink);
  const double colour = is_grey (style) ? 0.0 : 1.0;
  return (dw_ramp){
    .lightness = { is_dark ? DARK_LOW : LIGHT_LOW, is_dark ? DARK_HIGH : LIGHT_HIGH },
    .chroma = { colour * (is_dark ? DARK_LOW_CHROMA : LOW_CHROMA),
                colour * (is_dark ? DARK_HIGH_CHROMA : HIGH_CHROMA) },
    .hue = { LOW_HUE, HIGH_HUE },
  };
}

static double
between (const double ends[2], double share)
{
  return ends[0] + share * (ends[1] - ends[0]);
}

dw_color
dw_ramp_at (const dw_ramp *ramp, double share)
{
  const double s = isnan (share) ? 0.0 : fmin (1.0, fmax (0.0, share));
  return dw_color_from_lch (between (ramp->lightness, s), between (ramp->chroma, s),
                            between (ramp->hue, s));
}
