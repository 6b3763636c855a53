/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-color.h
 * Colours, chosen by lightness, chroma and hue (CIELAB, ISO/CIE 11664-4, white D65) and shown as
 * sRGB (IEC 61966-2-1). Pure functions.
 */
#pragma once

/** A colour as cairo takes it: sRGB. Plain value. */
typedef struct
{
  double red;   /**< [1] 0..1 */
  double green; /**< [1] 0..1 */
  double blue;  /**< [1] 0..1 */
  double alpha; /**< [1] 0 = not to be seen, 1 = opaque */
} dw_color;

/**
 * An opaque colour; what a screen can not show is cut to what it can.
 *
 * @param lightness  [1] 0 = black, 100 = white
 * @param chroma     [1] 0 = grey
 * @param hue        [deg]
 */
dw_color dw_color_from_lch (double lightness, double chroma, double hue);

/** The same colour with another alpha [1]. */
dw_color dw_color_with_alpha (dw_color color, double alpha);

/** Relative luminance [1], 0..1; alpha is left out. */
double dw_color_luminance (dw_color color);

/** Contrast ratio [1] of WCAG 2.1, (L1 + 0.05)/(L2 + 0.05), 1..21. */
double dw_color_contrast (dw_color a, dw_color b);

/** A part @p share [1] of @p b mixed into @p a, in sRGB; alpha as well. */
dw_color dw_color_mix (dw_color a, dw_color b, double share);
