/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ramp.h
 * Tones for values: even steps of lightness (CIELAB), so that equal differences look equal, can be
 * told apart with any colour vision, and stay in order when printed in grey. Pure functions.
 */
#pragma once

#include "draw/dw-chart-style.h"

/** Ends of a ramp and what is between; made by dw_ramp_make(). Plain value. */
typedef struct
{
  double lightness[2]; /**< [1] CIELAB L of the low and of the high end */
  double chroma[2];    /**< [1] */
  double hue[2];       /**< [deg] */
} dw_ramp;

/**
 * The ramp of a style: towards the ink for high values, never as dark (or, on dark, as light) that
 * ink on it could not be read. A style without colours gets greys.
 */
dw_ramp dw_ramp_make (const dw_chart_style *style);

/** Tone of a share. @param share  [1] 0 = low end, 1 = high end; cut to that */
dw_color dw_ramp_at (const dw_ramp *ramp, double share);
