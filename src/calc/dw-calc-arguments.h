/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-arguments.h
 * The words behind a command: operands and options, in any order.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

G_BEGIN_DECLS

/** One option. */
typedef struct
{
  const char *name;  /**< "--speeds" */
  const char *value; /**< what stands behind it in the help, "V[,V...]"; NULL = nothing */
  const char *help;  /**< sentences for a racer: what it does, unit, range, default */
} dw_calc_option;

/** Opaque; borrows the words and the options. Free with dw_calc_arguments_free(). */
typedef struct dw_calc_arguments dw_calc_arguments;

/**
 * Sort words into options and operands.
 *
 * "--name VALUE" and "--name=VALUE" are the same; "--" ends the options; an option may stand
 * once. After "--help" nothing more is read.
 *
 * @param options  ended by one without a name
 * @return         caller frees; NULL with DW_CALC_WRONG_USAGE
 */
dw_calc_arguments *dw_calc_arguments_new (const dw_calc_option *options, int n_words,
                                          char *const *words, GError **error);

/** NULL is allowed. */
void dw_calc_arguments_free (dw_calc_arguments *arguments);

/** Borrowed; NULL when the option was not given, "" when it was and takes no value. */
const char *dw_calc_arguments_get (const dw_calc_arguments *arguments, const char *name);

/** As above for an option that must be there. NULL with DW_CALC_WRONG_USAGE. */
const char *dw_calc_arguments_require (const dw_calc_arguments *arguments, const char *name,
                                       GError **error);

bool dw_calc_arguments_has (const dw_calc_arguments *arguments, const char *name);

/**
 * Which of some words an option has.
 *
 * @param words  ended by NULL
 * @param value  set to the word's place; left alone when the option was not given
 * @return       FALSE with DW_CALC_WRONG_USAGE when it is none of them
 */
gboolean dw_calc_arguments_choose (const dw_calc_arguments *arguments, const char *name,
                                   const char *const *words, int *value, GError **error);

/** Whether "--format csv" was given. */
bool dw_calc_arguments_wants_csv (const dw_calc_arguments *arguments);

guint dw_calc_arguments_get_n_operands (const dw_calc_arguments *arguments);

/** Borrowed. @param index  < number of operands */
const char *dw_calc_arguments_get_operand (const dw_calc_arguments *arguments, guint index);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_calc_arguments, dw_calc_arguments_free)

G_END_DECLS
