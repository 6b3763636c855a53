/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file sheet-laws.h
 * What must be true of every page, whatever stands on it.
 */
#pragma once

#include "sheet/dw-sheet.h"

/**
 * Hold every page to the laws: everything inside the frame, no text on another, on a drawing or
 * under a line, none smaller than DW_TYPE_LEAST, no drawing outside its box.
 *
 * @param why  what the sheet is of, told when a law is broken
 */
void expect_lawful (const dw_sheet *sheet, const char *why);

/** The same of one block in a frame. */
void expect_lawful_block (const dw_block *block, const dw_rect *frame, const char *why);
