/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-tools.h
 * What every part of a sheet is made with: what it tells, letters, the style of drawings, units.
 *
 * Parts are made in the language of the process. Drawings on blocks borrow the tools, so these are
 * freed last. One thread at a time.
 */
#pragma once

#include "draw/dw-number-format.h"
#include "draw/dw-text.h"
#include "project/dw-project.h"
#include "sheet/dw-block.h"
#include "sheet/dw-paper.h"
#include "sheet/dw-quantity.h"
#include "sheet/dw-typeset.h"

G_BEGIN_DECLS

/** What is wanted. Borrows everything. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;   /**< that is told; NULL = a blank sheet */
  const dw_setup *against; /**< that it is compared with; NULL = none */
  dw_paper paper;
  dw_units units;
  bool shows_damping;      /**< c in the chart and the table, else force */
  const char *file_name;   /**< of the project, for the foot; NULL = none */
  const char *date;        /**< "2026-11-25"; NULL = none */
  const char *font_family; /**< NULL = the usual one */
} dw_sheet_options;

/** Free with dw_sheet_tools_free(). */
typedef struct
{
  dw_sheet_options options;
  dw_rect frame; /**< of a page, in the paper */
  dw_typeset *typeset;
  dw_chart_style style;
  dw_text_pango *pango;
  dw_text_metrics metrics; /**< of letters in drawings */
  dw_number_format numbers;
} dw_sheet_tools;

/** @param options  copied; what it borrows must live as long as the tools */
dw_sheet_tools *dw_sheet_tools_new (const dw_sheet_options *options);

/** NULL is allowed. */
void dw_sheet_tools_free (dw_sheet_tools *tools);

/** [pt] Between two columns. */
#define DW_SHEET_GAP 14.0

/** [pt] Strokes: of frames and of lines to write on. */
#define DW_SHEET_RULE 0.6

/** [pt] of the column of one axle; the columns of front and rear stand side by side. */
double dw_sheet_column (const dw_sheet_tools *tools);

/** [pt] from the left of the frame to the column of an axle. */
double dw_sheet_column_at (const dw_sheet_tools *tools, dw_axle axle);

/** "Front", "Rear". */
const char *dw_sheet_axle_word (dw_axle axle);

/** The name of a setup, its id when it has none. Borrowed. */
const char *dw_sheet_name (const dw_setup *setup);

/** A heading with a line under it, over a width [pt]. */
dw_block *dw_sheet_heading (const dw_sheet_tools *tools, const char *text, double width);

/** [pt] that a heading of one line takes. */
double dw_sheet_heading_height (const dw_sheet_tools *tools);

/** Nothing but height [pt]. */
dw_block *dw_sheet_space (double height);

/** Lines of text, a block a line, so that they go on across pages. Added to @p rows. */
void dw_sheet_add_lines (const dw_sheet_tools *tools, GPtrArray *rows, dw_type type,
                         const char *text, double width);

/** A line to write on. @param width  [pt] */
void dw_sheet_add_rule (dw_block *block, double x, double y, double width);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_sheet_tools, dw_sheet_tools_free)

G_END_DECLS
