/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file sheet-samples.h
 * What the tests of pages share: projects as people have them and as they can become at worst, and
 * sheets of them.
 */
#pragma once

#include "sheet/dw-chart-page.h"
#include "sheet/dw-sheet.h"
#include "test-support.h"

/** The demo of a rough club final; caller frees. */
dw_project *sample_project (void);

/** A project of demo/ by its file's name without ending; caller frees. */
dw_project *sample_demo (const char *name);

/** Options for its setups baseline and trial-1, letters of DejaVu Sans. */
dw_chart_page_options sample_options (const dw_project *project);

/** All that units can be at once: inch, lbf, Fahrenheit, lbf/in. */
#define SAMPLE_INCHES                                                                              \
  ((dw_units)(DW_UNITS_INCH | DW_UNITS_LBF | DW_UNITS_FAHRENHEIT | DW_UNITS_LBF_PER_INCH))

/**
 * Options for a sheet: the second setup against the first, as far as there are any; A4, metric,
 * force, 2026-05-03, letters of DejaVu Sans.
 */
dw_sheet_options sample_sheet_options (const dw_project *project);

/** A sheet that must come out; caller frees. */
dw_sheet *sample_sheet (dw_sheet_kind kind, const dw_sheet_options *options);

/** Tools for the same; caller frees. */
dw_sheet_tools *sample_tools (const dw_sheet_options *options);

/** The words of all pages, a form feed before each page but the first; caller frees. */
char *sample_words (const dw_sheet *sheet);

/** The words of one block; takes the block, caller frees the words. */
char *sample_block_words (dw_block *block);

/** Each piece must stand behind the one before. @param pieces  ends with NULL */
void expect_in_order (const char *words, const char *const *pieces);

/** How often a piece is found. */
int count_pieces (const char *words, const char *piece);

/** A project that strains the sheets. */
typedef struct
{
  const char *why;
  dw_project *(*make) (void); /**< at least two setups, all of them good; caller frees */
} sample_extreme;

/** What there can be at most, and what is written otherwise than English. */
extern const sample_extreme sample_extremes[];
extern const int n_sample_extremes;

/** Any two dampers an axle, as trial against baseline. @param extreme  absurd ones; caller frees */
dw_project *sample_random_project (test_random *random, bool extreme);

/** So many setups that differ a little; caller frees. */
dw_project *sample_many_setups (int n);

/** Notes of numbered words, "a0001 a0002 ", as long as notes may be; caller frees. */
char *sample_long_notes (char letter);

/** The numbered words with a letter must be there, all of them, in order. */
void expect_long_notes (const char *words, char letter);
