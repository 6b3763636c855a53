/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-label.h
 * Texts with their place in a drawing.
 */
#pragma once

#include "draw/dw-text.h"

/** What a text is in a drawing. */
typedef enum
{
  DW_LABEL_TITLE,
  DW_LABEL_VALUE_CAPTION, /**< of the upright axis */
  DW_LABEL_SPEED_CAPTION,
  DW_LABEL_STROKE, /**< "compression", "rebound", in the plot */
  DW_LABEL_ONSET,  /**< beside a mark, in the plot */
  DW_LABEL_STRIP,  /**< heading of the flow strip */
  DW_LABEL_SHARE,  /**< a part of the flow */
  DW_LABEL_STRIP_TICK,
  DW_LABEL_READING,      /**< a figure of the reading line */
  DW_LABEL_READING_HEAD, /**< over its column */
  DW_LABEL_READING_SPEED,
  DW_LABEL_WARNING, /**< piston's face */
  DW_LABEL_AXIS,    /**< map of sizes: caption of an axis */
  DW_LABEL_LEGEND,  /**< heading of its tones */
  DW_LABEL_TONE,    /**< value beside them */
  DW_LABEL_KEY,     /**< beside a sample */
  DW_LABEL_LEVEL,   /**< value on a line */
  DW_LABEL_OIL,     /**< on the line of an oil at hand */
  DW_LABEL_NOW,     /**< beside the mark of what is now */
  DW_LABEL_LEAVES,  /**< shim stack: an entry, or several in one */
  DW_LABEL_LIFT,    /**< its lift limit */
  DW_LABEL_SCALE    /**< to which scales it is drawn */
} dw_label_kind;

/** One text. */
typedef struct
{
  char *text; /**< owned */
  dw_label_kind kind;
  dw_text_role role;
  int slot;     /**< line whose colour it has; -1 = ink or muted */
  dw_rect box;  /**< what it covers */
  dw_spot at;   /**< left end of the baseline */
  double angle; /**< [rad] clockwise; 0 = upright */
} dw_chart_label;

#define DW_MAX_LABELS 128

/** Texts of one drawing. Start with all zero, end with dw_chart_labels_clear(). */
typedef struct
{
  dw_chart_label labels[DW_MAX_LABELS];
  int n;
} dw_chart_label_list;

/** Free the texts. */
void dw_chart_label_list_clear (dw_chart_label_list *list);

/**
 * Put a text with its upper left corner at a spot; shortened in its middle to a width.
 *
 * @param width  [pt] that there is
 * @return       borrowed; NULL when nothing of it fits or the list is full
 */
dw_chart_label *dw_chart_label_list_add (dw_chart_label_list *list, const dw_text_metrics *metrics,
                                         dw_label_kind kind, dw_text_role role, const char *text,
                                         dw_spot corner, double width);

/** The box of a text whose upper left corner is at a spot. */
dw_rect dw_text_box (const dw_text_metrics *metrics, dw_text_role role, const char *text,
                     dw_spot corner);

/** Whether a box overlaps any text of the list. */
bool dw_chart_label_list_meets (const dw_chart_label_list *list, const dw_rect *box);

/** First text of a kind; NULL when there is none. */
const dw_chart_label *dw_chart_label_list_find (const dw_chart_label_list *list,
                                                dw_label_kind kind);
