/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-sheet-head.h
 * Head and foot of a sheet's pages: what it is about, the words about the meeting, the caution.
 *
 * In the language of the process.
 */
#pragma once

#include "sheet/dw-sheet-tools.h"

G_BEGIN_DECLS

/** What stands at the top. Borrows everything. */
typedef struct
{
  const char *title; /**< large; "" = a line to write on */
  const char *kind;  /**< at the right: "Setup sheet" */
  const char *note;  /**< under it, "fitted"; NULL = none */
} dw_sheet_title;

/** Title, project and date, of a first page. */
dw_block *dw_sheet_head_make (const dw_sheet_tools *tools, const dw_sheet_title *title);

/**
 * Event, track, surface, driver, car and the conditions; a line to write on where the project says
 * nothing.
 *
 * @param is_blank  all of them lines
 */
dw_block *dw_sheet_head_fields (const dw_sheet_tools *tools, bool is_blank);

/** The title again with "continued", small. */
dw_block *dw_sheet_head_continued (const dw_sheet_tools *tools, const dw_sheet_title *title);

/** [pt] that the foot takes at the bottom of the frame. */
double dw_sheet_foot_height (const dw_sheet_tools *tools);

/**
 * The caution, the program, the file and the number of the page.
 *
 * @param page        finished but for its foot
 * @param number      from 1
 * @param n_pages     of the whole sheet
 * @param goes_on     what stands on it is continued on the next
 */
void dw_sheet_foot_add (const dw_sheet_tools *tools, dw_block *page, int number, int n_pages,
                        bool goes_on);

G_END_DECLS
