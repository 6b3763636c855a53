/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file checks-table.h
 * The handbook values of tests/data/checks.csv: one calculation a row, with its inputs,
 * expected value, tolerance and source.
 */
#pragma once

#include "test-support.h"

typedef struct
{
  const char *id;     /* borrowed from the table */
  const char *source; /* borrowed */
  char calc[64];      /* "dagan_dp" */
  char inputs[256];   /* "mu_Pa_s=0.34;L_m=0.003" */
  double expected;    /* in the row's unit */
  double rel, abs;    /* the row's tolerance */
} check_row;

/** Row @p i of the table. */
check_row check_row_read (const test_table *table, size_t i);

/** An input by its name; one that is not there ends the test. */
double check_input (const check_row *row, const char *name);

/** An input as text, the same; valid until the next call. */
const char *check_input_text (const check_row *row, const char *name);
