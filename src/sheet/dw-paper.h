/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-paper.h
 * Paper that sheets are made for, upright, and its margins.
 *
 * ISO 216 A4 and ANSI/ASME Y14.1 A (Letter). Pure functions.
 */
#pragma once

#include <stdbool.h>

#include "draw/dw-geometry.h"

typedef enum
{
  DW_PAPER_A4,     /**< 210 x 297 mm */
  DW_PAPER_LETTER, /**< 8.5 x 11 in */
  DW_N_PAPERS
} dw_paper;

/** "a4", "letter". */
const char *dw_paper_name (dw_paper paper);

/** By its name; false, and nothing set, when there is none. */
bool dw_paper_find (const char *name, dw_paper *paper);

/** Which of them a page of another size is nearest to in shape. @param width,height  [pt] */
dw_paper dw_paper_nearest (double width, double height);

/** [pt] */
double dw_paper_width (dw_paper paper);

/** [pt] */
double dw_paper_height (dw_paper paper);

/** Where may be printed: within margins that every office printer reaches, and a binder's holes. */
dw_rect dw_paper_frame (dw_paper paper);
