/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-csv.h
 * Rows for programs: commas, a point in every locale, numbers that read back to the same double.
 */
#pragma once

#include <glib.h>
#include <stdio.h>

G_BEGIN_DECLS

/** A row being written. Plain value. */
typedef struct
{
  FILE *file; /**< borrowed */
  gboolean is_started;
} dw_calc_csv;

/** Write the header line. @param header  column names with commas between them */
dw_calc_csv dw_calc_csv_begin (FILE *file, const char *header);

/** A field; quoted when it has to be. */
void dw_calc_csv_text (dw_calc_csv *csv, const char *text);

/**
 * A field, in as few digits as read back to the same double; "inf" and "-inf" stand for
 * themselves, NaN is an empty field.
 *
 * @param value  [SI unit of the field]
 * @param power  of ten from the column's unit to SI
 */
void dw_calc_csv_number (dw_calc_csv *csv, double value, int power);

/** End of the row. */
void dw_calc_csv_end (dw_calc_csv *csv);

G_END_DECLS
