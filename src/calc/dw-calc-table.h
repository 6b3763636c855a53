/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-table.h
 * A table for people: columns as wide as what stands in them, numbers under each other by their
 * points, units in the head.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>
#include <stdio.h>

G_BEGIN_DECLS

/** One column. */
typedef struct
{
  const char *head; /**< "force" */
  const char *unit; /**< below it, "N"; "" for none */
  bool is_text;     /**< flush left, as it is */
} dw_calc_column;

/** Opaque; borrows the columns. Free with dw_calc_table_free(). */
typedef struct dw_calc_table dw_calc_table;

/** @param columns  ended by one without a head. Caller frees. */
dw_calc_table *dw_calc_table_new (const dw_calc_column *columns);

/** NULL is allowed. */
void dw_calc_table_free (dw_calc_table *table);

/** Fill the next cell; after the last one of a row comes the first of the next. Copied. */
void dw_calc_table_add (dw_calc_table *table, const char *text);

/** The same with dw_calc_figure() of three digits. @param value  [unit of the column] */
void dw_calc_table_add_figure (dw_calc_table *table, double value);

/** The same with dw_calc_plain(). @param value  [unit of the column] */
void dw_calc_table_add_plain (dw_calc_table *table, double value);

/** Rows that are begun. */
guint dw_calc_table_get_n_rows (const dw_calc_table *table);

/** Print head and rows; no line ends in a blank. */
void dw_calc_table_print (const dw_calc_table *table, FILE *file, int indent);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_calc_table, dw_calc_table_free)

G_END_DECLS
