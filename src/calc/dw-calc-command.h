/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-calc-command.h
 * What a command of `dampcalc` is; the commands themselves are in files of their names.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>
#include <stdio.h>

#include "calc/dw-calc-arguments.h"

G_BEGIN_DECLS

/**
 * Compute and print.
 *
 * @param arguments  sorted, with as many operands as the command takes
 * @param file       where results go
 * @param error      set when there is something to say on standard error
 * @return           exit status when @p error is not set
 */
typedef int dw_calc_run (const dw_calc_arguments *arguments, FILE *file, GError **error);

typedef struct
{
  const char *name;              /**< "force" */
  const char *summary;           /**< one line: the question that it answers */
  const char *operands;          /**< as in the usage line, "FILE ID ID" */
  guint n_operands;              /**< a first one is a project file */
  bool has_format;               /**< knows --format */
  const char *const *paragraphs; /**< what it does, for a racer; ended by NULL */
  const char *const *examples;   /**< words behind "dampcalc"; ended by NULL */
  const dw_calc_option *options; /**< own ones, ended by one without a name */
  dw_calc_run *run;
} dw_calc_command;

extern const dw_calc_command dw_calc_check;
extern const dw_calc_command dw_calc_force;
extern const dw_calc_command dw_calc_compare;
extern const dw_calc_command dw_calc_chart;
extern const dw_calc_command dw_calc_match;
extern const dw_calc_command dw_calc_oil;
extern const dw_calc_command dw_calc_oils;
extern const dw_calc_command dw_calc_drill;
extern const dw_calc_command dw_calc_drills;
extern const dw_calc_command dw_calc_sheet;
extern const dw_calc_command dw_calc_shim;
extern const dw_calc_command dw_calc_stacks;

/** Own options and those that all commands share, ended by one without a name; caller frees. */
dw_calc_option *dw_calc_command_make_options (const dw_calc_command *command);

/** Print what `dampcalc COMMAND --help` shows. */
void dw_calc_command_print_help (const dw_calc_command *command, FILE *file);

/**
 * Understand the words behind a command and do what they say.
 *
 * Results go to standard output or, with -o, to a file that is replaced only on success.
 *
 * @param words  behind the command's name
 * @return       exit status; what there is to say has been printed on standard error
 */
int dw_calc_command_run (const dw_calc_command *command, int n_words, char *const *words);

G_END_DECLS
