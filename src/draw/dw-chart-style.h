/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-style.h
 * How drawings look: colours, lines, markers, letters. An argument of layout and painting.
 *
 * The ready-made styles were searched for in CIELAB by computer: the four colours of the trials
 * are those that lie farthest from each other and from the ink, seen with full colour vision and
 * with each of the three missing (Vienot, Brettel and Mollon 1999, from memory), among those with
 * at least this contrast (WCAG 2.1) to the plot:
 *
 *     light 4.5 : 1, dark 4.5 : 1, high contrast 7 : 1, sun 7 : 1, print: black only, 21 : 1
 *
 * A series is never told by colour alone: each slot has its dash and its marker as well. The
 * fitted setup is always solid and the heaviest line.
 */
#pragma once

#include <stdbool.h>

#include "draw/dw-color.h"

#define DW_MAX_SERIES 4 /**< setups drawn over each other */

/** Which line a series has. Slots of one chart differ. */
enum
{
  DW_SLOT_FITTED,  /**< the setup in the car: solid, heaviest */
  DW_SLOT_TRIAL_1, /**< the others */
  DW_SLOT_TRIAL_2,
  DW_SLOT_TRIAL_3,
  DW_SLOT_TRIAL_4,
  DW_N_SLOTS
};

typedef enum
{
  DW_MARKER_CIRCLE,
  DW_MARKER_SQUARE,
  DW_MARKER_TRIANGLE,
  DW_MARKER_DIAMOND,
  DW_MARKER_CROSS
} dw_marker;

/** The line of one slot. */
typedef struct
{
  dw_color color;
  double width;   /**< [pt] */
  double dash[4]; /**< [pt] on, off, on, off */
  int n_dash;     /**< in use; 0 = solid */
  dw_marker marker;
} dw_line_style;

/** What a text is for. */
typedef enum
{
  DW_TEXT_TITLE,
  DW_TEXT_CAPTION, /**< of an axis */
  DW_TEXT_TICK,
  DW_TEXT_LEGEND,
  DW_TEXT_NOTE, /**< beside a mark, in the plot */
  DW_N_TEXTS
} dw_text_role;

/** Letters of one role. */
typedef struct
{
  double size; /**< [pt] of the em */
  bool is_bold;
} dw_font;

/** Parts of the flow, bottom to top of the strip; hole kinds of the piston's face. */
enum
{
  DW_SHARE_OPEN,
  DW_SHARE_COVERED,
  DW_SHARE_LEAK,
  DW_N_SHARES
};

typedef struct
{
  const char *font_family; /**< borrowed; what Pango understands */
  dw_font font[DW_N_TEXTS];

  dw_color background; /**< around the plot */
  dw_color plot;       /**< in the plot, and behind notes */
  dw_color ink;        /**< texts, zero line, frame */
  dw_color muted;      /**< captions; 4.5 : 1 or more */
  dw_color grid;
  dw_color minor_grid;
  dw_color share[DW_N_SHARES]; /**< tones of the strip; each has its pattern as well */
  dw_color metal;              /**< piston's face */
  dw_color shim;               /**< the shim on it, seen through */
  dw_color warning;            /**< land that is too thin */

  double frame_width;      /**< [pt] */
  double zero_width;       /**< [pt] of the line between the strokes */
  double grid_width;       /**< [pt] */
  double minor_grid_width; /**< [pt] */
  double marker_radius;    /**< [pt] */
  double marker_spacing;   /**< [pt] along x */
  double onset_radius;     /**< [pt] of the open mark at the void onset */
  double past_width;       /**< [1] of a line past the onset, part of its width before */
  double cap_width;        /**< [pt] line of the early cap */
  double reading_width;    /**< [pt] reading line */
  double band_alpha;       /**< [1] of the spread band */

  dw_line_style line[DW_N_SLOTS];
} dw_chart_style;

/** Ready-made styles. */
typedef enum
{
  DW_STYLE_LIGHT,
  DW_STYLE_DARK,
  DW_STYLE_CONTRAST,      /**< high contrast, dark on white */
  DW_STYLE_CONTRAST_DARK, /**< high contrast, bright on black */
  DW_STYLE_SUN,           /**< a laptop in bright sun: thick lines, large letters, no greys */
  DW_STYLE_PRINT,         /**< black on white, told apart by dash, marker and width */
  DW_N_STYLES
} dw_style_id;

dw_chart_style dw_chart_style_make (dw_style_id id);

/** "light", "dark", "contrast", "contrast-dark", "sun", "print". */
const char *dw_style_name (dw_style_id id);

/** By its name; false, and nothing set, when there is none. */
bool dw_style_find (const char *name, dw_style_id *id);

/** All lengths times a factor [1], for larger letters or a coarser page. */
void dw_chart_style_scale (dw_chart_style *style, double factor);
