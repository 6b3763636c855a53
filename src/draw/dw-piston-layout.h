/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-piston-layout.h
 * The piston's face on a page, to a stated scale, and its painting.
 *
 * Everything but the clearance is to scale: that is drawn wide enough to be seen.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-chart-label.h"
#include "draw/dw-chart.h"
#include "draw/dw-number-format.h"
#include "study/dw-piston-face.h"

/**
 * Words, already translated. Borrowed. NULL = not written, and its lines' room goes to the drawing; an
 * empty one keeps the room.
 */
typedef struct
{
  const char *scale;   /**< "{scale} : 1" */
  const char *open;    /**< "{count} × {diameter} {unit} open" */
  const char *covered; /**< "{count} × {diameter} {unit} covered" */
} dw_piston_labels;

/** English. */
dw_piston_labels dw_piston_labels_defaults (void);

/** A hole on the page; the holes of the face in their order. */
typedef struct
{
  dw_spot centre;
  double radius;  /**< [pt] */
  bool is_warned; /**< stands in a finding about the land */
} dw_piston_spot;

/** Plain numbers but for its texts. Free with dw_piston_layout_free(). */
typedef struct
{
  dw_rect area;
  dw_piston_face face;
  double scale; /**< [1] size on the page over real size; 1 pt is 1/72 inch */
  dw_spot centre;
  double bore_radius;   /**< [pt] */
  double piston_radius; /**< [pt] at least a visible gap smaller */
  double shaft_radius;  /**< [pt] */
  double hub_radius;    /**< [pt] 0 without shim */
  double shim_radius;   /**< [pt] 0 without shim */
  dw_piston_spot spots[DW_MAX_FACE_HOLES];
  dw_chart_label_list texts;
} dw_piston_layout;

/** Lay a face out in an area, as large as a round scale allows, diameters in mm. Caller frees. */
dw_piston_layout *dw_piston_layout_new (const dw_damper *damper, const dw_piston_labels *labels,
                                        const dw_number_format *numbers,
                                        const dw_chart_style *style, const dw_text_metrics *metrics,
                                        const dw_rect *area);

/** The same with diameters in a unit of length. Caller frees. */
dw_piston_layout *dw_piston_layout_new_in (const dw_damper *damper, const dw_piston_labels *labels,
                                           const dw_unit *length, const dw_number_format *numbers,
                                           const dw_chart_style *style,
                                           const dw_text_metrics *metrics, const dw_rect *area);

/** NULL is allowed. */
void dw_piston_layout_free (dw_piston_layout *layout);

/** Index of the hole at a spot, or the nearest within @p radius [pt] of its rim; -1 = none. */
int dw_piston_layout_hit (const dw_piston_layout *layout, double x, double y, double radius);

/** Paint it. @param selected  hole whose group is set off; -1 = none */
void dw_piston_paint (const dw_piston_layout *layout, const dw_chart_style *style, int selected,
                      cairo_t *cr);

/**
 * Write into each hole which set it belongs to, and mark one.
 *
 * @param set_of  per hole of the face: 0 is written "1", 1 "2", -1 nothing
 * @param marked  hole with a ring round it; -1 = none
 */
void dw_piston_paint_sets (const dw_piston_layout *layout, const dw_chart_style *style,
                           const int *set_of, int marked, cairo_t *cr);
