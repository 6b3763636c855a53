/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-text.h
 * Texts: how large they are, shortened to fit, painted.
 *
 * The layout asks a dw_text_metrics how large a text is, so that tests can give letters of a
 * known size. dw_text_pango measures with Pango what dw_text_paint() paints: sizes are absolute,
 * outlines are not hinted, so that a screen, a page and an image show the same. For one thread.
 */
#pragma once

#include <cairo.h>
#include <stdbool.h>

#include "draw/dw-chart-style.h"
#include "draw/dw-geometry.h"

/** Size of a text of one line. */
typedef struct
{
  double width;   /**< [pt] */
  double ascent;  /**< [pt] above the baseline */
  double descent; /**< [pt] below it */
} dw_text_extent;

/** Something that knows how large texts are. Plain value; borrows @p data. */
typedef struct
{
  dw_text_extent (*measure) (void *data, const char *text, dw_text_role role);
  void *data;
} dw_text_metrics;

/** Shorthand. */
dw_text_extent dw_text_measure (const dw_text_metrics *metrics, const char *text,
                                dw_text_role role);

/** [pt] ascent and descent of the role's letters. */
double dw_text_height (const dw_text_metrics *metrics, dw_text_role role);

/** Opaque. Free with dw_text_pango_free(). */
typedef struct dw_text_pango dw_text_pango;

/**
 * Keep it as long as the style stays the same: what was measured once is remembered.
 *
 * @param style  borrowed as long as the result lives
 */
dw_text_pango *dw_text_pango_new (const dw_chart_style *style);

/** NULL is allowed. */
void dw_text_pango_free (dw_text_pango *pango);

/** Borrows @p pango. */
dw_text_metrics dw_text_pango_metrics (dw_text_pango *pango);

/**
 * Shorten a text in its middle until it fits: "Rear qui...bound". The start tells what it is, the
 * end which of several.
 *
 * @param width  [pt] that there is; when nothing fits the result is empty
 * @return       caller frees with g_free()
 */
char *dw_text_ellipsize (const dw_text_metrics *metrics, const char *text, dw_text_role role,
                         double width);

/**
 * Break a text at blanks into lines that fit; a word that is longer than a line stays whole.
 *
 * @param width  [pt] that there is
 * @return       ended by NULL; caller frees with g_strfreev()
 */
char **dw_text_wrap (const dw_text_metrics *metrics, const char *text, dw_text_role role,
                     double width);

/**
 * Paint one line with its left end on the baseline at a spot; colour is that of @p cr.
 *
 * @param angle  [rad] clockwise
 */
void dw_text_paint (cairo_t *cr, const dw_chart_style *style, dw_text_role role, const char *text,
                    dw_spot at, double angle);

/** The same with a rim of a colour around the letters, so that they can be read on lines. */
void dw_text_paint_rimmed (cairo_t *cr, const dw_chart_style *style, dw_text_role role,
                           const char *text, dw_spot at, dw_color ink, dw_color rim);
