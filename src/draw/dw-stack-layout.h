/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-stack-layout.h
 * The shim stack on a page: half a section through the piston's axis, to stated scales.
 *
 * Widths are to one round scale and thicknesses to another, larger one, so that the thinnest leaf can
 * be seen. The piston lies below, cut off; over it the leaves in their order, a washer that clamps them
 * inside the hub diameter, and the stop washer over their rim at the lift limit. Thickness of piston and
 * stop washer and the shaft's end are not known and only sketched.
 */
#pragma once

#include "draw/dw-chart-label.h"
#include "draw/dw-stack-words.h"

/** One entry of the stack. */
typedef struct
{
  dw_rect bar;  /**< all of its leaves, from the shaft to their rim */
  int n_leaves; /**< that there are */
  int n_drawn;  /**< that are told apart; fewer where their lines would run together */
} dw_stack_bar;

/** From a part to its label: along the part, then aslant. */
typedef struct
{
  dw_spot spots[3];
} dw_stack_leader;

/** Plain numbers but for its texts. Free with dw_stack_layout_free(). */
typedef struct
{
  dw_rect area;
  double scale;    /**< [1] size across on the page over real size; 1 pt is 1/72 inch */
  double factor;   /**< [1] the same of thicknesses and lift; 0 without shims */
  double axis;     /**< [pt] x of the axis */
  dw_rect shaft;   /**< half of its end, from the axis on */
  dw_rect piston;  /**< half of it; its lower edge is cut off */
  dw_rect channel; /**< through it under the leaves; without extent when there is no hole */
  int n_bars;      /**< 0 without shims */
  dw_stack_bar bars[DW_MAX_SHIMS]; /**< from the piston outwards */
  dw_rect hub;                     /**< clamping washer, as thick as the lift limit */
  dw_rect stop;                    /**< stop washer */
  bool lift_is_cut; /**< the lift limit is drawn smaller than to scale, for the leaves to be seen */
  int n_leaders;
  dw_stack_leader leaders[DW_MAX_SHIMS + 1];
  dw_chart_label_list texts;
} dw_stack_layout;

/** Lay a damper's stack out in an area, as large as round scales allow. Caller frees. */
dw_stack_layout *dw_stack_layout_new (const dw_damper *damper, const dw_stack_labels *labels,
                                      const dw_number_format *numbers, const dw_chart_style *style,
                                      const dw_text_metrics *metrics, const dw_rect *area);

/** NULL is allowed. */
void dw_stack_layout_free (dw_stack_layout *layout);
