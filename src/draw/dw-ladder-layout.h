/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-ladder-layout.h
 * A ladder of stacks as numbers: where everything is, without painting anything.
 *
 * From top to bottom: title, legend, forces of the axis, then a row of fixed height for each stack,
 * the stiffest on top. A row has, from left to right, a pointer when it is fitted or the setup's own,
 * the stack, its bar on the common axis, its force, the bracket of its group. The layout is as tall as
 * that takes: a window scrolls the rows, and may keep the head above them. Titles, stacks and words of
 * the legend that are too long are shortened in their middle; in a narrow area the forces are left out
 * first, then the words beside brackets.
 *
 * A layout keeps nothing of the chart or the style. For one thread.
 */
#pragma once

#include "draw/dw-chart-label.h"
#include "draw/dw-ladder-chart.h"
#include "draw/dw-ticks.h"

/** What the legend explains. */
typedef enum
{
  DW_LADDER_KEY_BOUNDS, /**< bar */
  DW_LADDER_KEY_VALUE,  /**< mark */
  DW_LADDER_KEY_HABIT,  /**< open mark */
  DW_LADDER_KEY_GROUP,  /**< bracket */
  DW_LADDER_KEY_HOLES,  /**< zone */
  DW_LADDER_KEY_PLAIN,  /**< zone */
  DW_N_LADDER_KEYS
} dw_ladder_key;

/** A sample of the legend; its words are among the texts. */
typedef struct
{
  dw_ladder_key key;
  dw_rect box;
} dw_ladder_sample;

/** A row. */
typedef struct
{
  dw_rect box;        /**< all of it */
  char *stack;        /**< owned, shortened to its column */
  char *value;        /**< owned */
  double stack_width; /**< [pt] */
  double value_width; /**< [pt] */
  dw_spot stack_at;   /**< left end of the baseline */
  dw_spot value_at;   /**< left end of the baseline; flush right with the others */
  dw_rect bar;        /**< from one bound to the other; without width when they are the same */
  dw_spot mark;       /**< by the valve's leaf coupling */
  bool has_habit;
  dw_spot habit; /**< only if has_habit: there is more than one leaf */
  bool is_fitted;
  bool is_own; /**< and not fitted */
} dw_ladder_row;

/** Rows that do the same. */
typedef struct
{
  dw_rect box;     /**< all of them */
  int n;           /**< rows */
  bool is_toned;   /**< every other one */
  char *word;      /**< owned; NULL when not written */
  dw_spot word_at; /**< left end of the baseline */
} dw_ladder_band;

/** All that a ladder's painting needs but the style. Free with dw_ladder_layout_free(). */
typedef struct
{
  dw_rect area; /**< all of it; the height is what it takes */
  dw_rect head; /**< above the rows: title, legend, forces of the axis */
  dw_rect plot; /**< where the bars are, all rows high */
  dw_scale x;   /**< of force [N] */
  dw_ticks ticks;
  double tick_top;    /**< [pt] upper edge of their labels */
  double tick_ascent; /**< [pt] */
  double tick_height; /**< [pt] */
  double row_height;  /**< [pt] */
  bool shows_values;
  double pointer_x;     /**< [pt] middle of the pointers' column */
  double bracket_x;     /**< [pt] upright of the brackets */
  double bracket_width; /**< [pt] of their hooks; 0 when there is none */
  dw_rect holes; /**< zone in which the holes alone decide; without width when there is none */
  dw_rect plain; /**< zone as good as plain */
  int n_rows;
  dw_ladder_row *rows; /**< in the order of rungs: the softest, lowest one first; owned */
  int n_bands;
  dw_ladder_band *bands; /**< in that order too; owned */
  int n_samples;
  dw_ladder_sample samples[DW_N_LADDER_KEYS];
  dw_chart_label_list texts; /**< of the head */
  /* marks, renewed by dw_ladder_layout_mark() */
  int chosen;  /**< row; -1 = none */
  int pointed; /**< row; -1 = none */
} dw_ladder_layout;

/**
 * Lay a ladder out.
 *
 * @param corner  [pt] upper left corner
 * @param width   [pt] that there is; the height follows
 * @return        caller frees
 */
dw_ladder_layout *dw_ladder_layout_new (const dw_ladder_chart *chart, const dw_chart_style *style,
                                        const dw_text_metrics *metrics, dw_spot corner,
                                        double width);

/** NULL is allowed. */
void dw_ladder_layout_free (dw_ladder_layout *layout);

/** Take over which rungs are chosen and pointed at; all else stays as it is. */
void dw_ladder_layout_mark (dw_ladder_layout *layout, const dw_ladder_chart *chart);

/** Row at a place, anywhere from its pointer to its force; -1 when there is none. @param x,y  [pt] */
int dw_ladder_layout_hit (const dw_ladder_layout *layout, double x, double y);

/**
 * The row for the arrow keys.
 *
 * @param row  where to start; -1 = the fitted one, else the softest, whatever @p by
 * @param by   rows upwards, negative downwards; stops at the ends
 * @return     -1 when there are no rows
 */
int dw_ladder_layout_step (const dw_ladder_layout *layout, int row, int by);

/** What the label of a tick covers; without width for a minor tick. */
dw_rect dw_ladder_layout_tick_box (const dw_ladder_layout *layout, int tick);
