/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ladder-chart.h
 * What a drawn ladder of stacks shows: the force of each stack at one speed, from the bound of leaves
 * that slide to that of leaves that stick.
 *
 * A chart borrows everything; the caller keeps ladder and texts while it is in use. Pure functions.
 */
#pragma once

#include "draw/dw-chart.h"
#include "study/dw-ladder.h"

/** Words, already translated; names in braces are filled in. Borrowed. */
typedef struct
{
  const char *title;                /**< "Force in {stroke} at {speed} {speed_unit}, {unit}" */
  const char *stroke[DW_N_STROKES]; /**< "compression", "rebound" */
  const char *stack;                /**< over the stacks: "Stack, {unit}" */
  const char *leaves;               /**< several equal ones: "{count} × {thickness}" */
  const char *material;             /**< where materials differ: "{leaves} ({modulus} GPa)" */
  const char *joined;               /**< from the piston outwards: "{inner} + {outer}" */
  const char *fitted;               /**< "{stack} (fitted)" */
  const char *own;                  /**< "{stack} (this setup)" */
  const char *same;                 /**< beside a bracket: "the same" */
  /* the legend */
  const char *bounds; /**< "leaves slide … leaves stick" */
  const char *value;  /**< "by the leaf coupling" */
  const char *habit;  /**< "thicknesses added up" */
  const char *groups; /**< "the same within {percent} % at all speeds" */
  const char *holes;  /**< "holes alone decide" */
  const char *plain;  /**< "as good as a plain piston" */
  /* in words, for those who do not see it; every sentence whole */
  const char *about;        /**< "{n} stacks in order of stiffness, force in {stroke} at {speed}
                               {speed_unit}: from {low} {unit} with {softest} {length} to {high} {unit}
                               with {stiffest} {length}." */
  const char *about_groups; /**< "{groups} of them differ by more than {percent} %." */
  const char *about_holes;  /**< "Up to {stack} {length} the holes alone decide." */
  const char *about_plain;  /**< "From {stack} {length} on the piston is as good as plain." */
  const char *about_fitted; /**< "Fitted: {rung}" */
  const char *about_own;    /**< "This setup: {rung}" */
  const char *about_chosen; /**< "Chosen: {rung}" */
  const char *about_none;   /**< "No stack is chosen." */
  const char *about_empty;  /**< "There is no stack." */
  const char *rung;         /**< "{stack} {length}, {value} {unit}." */
  const char
      *rung_bounds; /**< "{slide} {unit} while leaves slide, {stick} {unit} when they stick." */
  const char *rung_single; /**< "As stiff as one leaf of {slide} to {stick} {length}." */
  const char *rung_habit;  /**< "Adding thicknesses makes it {added} {length}, {habit} {unit}." */
  const char *rung_same;   /**< "One of {n} that do the same." */
  const char *rung_stop;   /**< "At the high speed it opens to its stop." */
} dw_ladder_labels;

/** English. */
dw_ladder_labels dw_ladder_labels_defaults (void);

/** Everything that is shown. Plain value. */
typedef struct
{
  const dw_ladder *ladder; /**< NULL = nothing */
  dw_stroke stroke;        /**< the one that opens the stacks */
  int speed;               /**< DW_LOW, DW_MIDDLE or DW_HIGH */
  double at;               /**< [m/s] that speed */
  bool has_fitted;         /**< something is in the car: the rung that says so is marked */
  bool is_log;             /**< force by its logarithm, when all are above zero */
  int chosen;              /**< rung; -1 = none */
  int pointed;             /**< rung under the pointer; -1 = none */
  dw_ladder_labels labels;
  dw_chart_units units; /**< speed, force, length */
  dw_number_format numbers;
} dw_ladder_chart;

/** Nothing but words, metric, at 1 m/s in rebound, even forces; no rung chosen. */
dw_ladder_chart dw_ladder_chart_defaults (void);

/** How many rungs there are. */
int dw_ladder_chart_count (const dw_ladder_chart *chart);

/** [N] of a rung at the chart's speed, by the valve's leaf coupling. */
double dw_ladder_chart_force (const dw_ladder_chart *chart, int rung);

/** The rung in the car; -1 when none is marked. */
int dw_ladder_chart_fitted (const dw_ladder_chart *chart);

/** Leaves of several moduli are on the ladder: a stack's words tell them. */
bool dw_ladder_chart_has_materials (const dw_ladder_chart *chart);

/**
 * "0.15 + 2 × 0.1"; caller frees with g_free().
 *
 * @param tells_material  see dw_ladder_chart_has_materials(): the same for all rungs
 */
char *dw_ladder_chart_stack (const dw_ladder_chart *chart, int rung, bool tells_material);

/** A force in the unit that is shown, in three digits; caller frees. @param force  [N] */
char *dw_ladder_chart_number (const dw_ladder_chart *chart, double force);

/** A thickness in the unit that is shown; caller frees. @param length  [m] */
char *dw_ladder_chart_length (const dw_ladder_chart *chart, double length);
