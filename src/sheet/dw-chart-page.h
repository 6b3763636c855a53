/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-page.h
 * One page of charts: setups of a project drawn over each other, front and rear side by side with
 * the same axes, under one title and one legend.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-chart-layout.h"
#include "project/dw-project.h"

G_BEGIN_DECLS

/** Words, already translated. Borrowed. */
typedef struct
{
  const char *axle[DW_N_AXLES]; /**< "Front", "Rear" */
  const char *axes;             /**< "{quantity} in {unit}, {speed} in {speed_unit}", of a part */
  const char *key;              /**< what ring, dots and thin line mean */
  const char *foot;             /**< "Oil at {temperature} °C. ..." */
} dw_chart_page_labels;

/** English. */
dw_chart_page_labels dw_chart_page_labels_defaults (void);

/** What is wanted. Borrows everything. */
typedef struct
{
  const dw_project *project;
  const char *setups[DW_MAX_SERIES]; /**< ids; the first is the reference */
  int n_setups;
  bool has_axle[DW_N_AXLES]; /**< at least one */
  double to;                 /**< [m/s] fastest speed, at the place that is shown */
  dw_chart look;   /**< quantity, place, logarithm, units, words; its series are not used */
  bool has_strip;  /**< flow shares of setup strip_setup in look.strip_stroke */
  int strip_setup; /**< in @p setups */
  bool has_band;   /**< spread of parts, dw-spread.h, as bands round the curves */
  dw_chart_page_labels labels;
  dw_style_id style;
  const char *font_family; /**< NULL = the style's */
  double width;            /**< [pt] */
  double height;           /**< [pt] */
  bool
      is_part; /**< of a larger page: without title, foot and margins, axes told beside the legend */
} dw_chart_page_options;

/** Of the fitted setup, or the first; both axles, up to the project's high speed; A4 lying. */
dw_chart_page_options dw_chart_page_options_defaults (const dw_project *project);

/** Computed and laid out. Opaque. Free with dw_chart_page_free(). */
typedef struct dw_chart_page dw_chart_page;

/** What could not be computed. */
typedef struct
{
  int setup; /**< in the options' list */
  dw_axle axle;
  dw_error finding;
} dw_chart_page_failure;

/**
 * Compute all curves and lay the page out.
 *
 * @param failure  filled on failure; may be NULL
 * @return         caller frees; NULL when a damper can not be computed
 */
dw_chart_page *dw_chart_page_new (const dw_chart_page_options *options,
                                  dw_chart_page_failure *failure);

/** NULL is allowed. */
void dw_chart_page_free (dw_chart_page *page);

void dw_chart_page_paint (const dw_chart_page *page, cairo_t *cr);

/** The chart of an axle, borrowed; NULL when it is not on the page. */
const dw_chart *dw_chart_page_get_chart (const dw_chart_page *page, dw_axle axle);

/** Its layout, borrowed; NULL when it is not on the page. */
const dw_chart_layout *dw_chart_page_get_layout (const dw_chart_page *page, dw_axle axle);

/** All charts in words; caller frees. @param speeds  [m/s] shaft */
char *dw_chart_page_describe (const dw_chart_page *page, const double *speeds, int n_speeds);

/**
 * The curves as CSV: point decimals, full precision, one header line.
 *
 * Columns as in dw-chart-csv.h. Caller frees.
 */
char *dw_chart_page_to_csv (const dw_chart_page *page);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_chart_page, dw_chart_page_free)

G_END_DECLS
