/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program dampcalc: the table of commands, and which of them is meant. */

#include <locale.h>
#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-output.h"
#include "calc/dw-calc-text.h"

static const dw_calc_command *const commands[] = {
  &dw_calc_check, &dw_calc_force, &dw_calc_compare, &dw_calc_chart,
  &dw_calc_sheet, &dw_calc_drill, &dw_calc_stacks,  &dw_calc_match,
  &dw_calc_oils,  &dw_calc_oil,   &dw_calc_drills,  &dw_calc_shim,
};

/* Columns that the commands' names take in the help. */
#define NAME_WIDTH 10

static void
print_help (FILE *file)
{
  fputs ("Usage: dampcalc COMMAND [ARGUMENT]...\n\n", file);
  dw_calc_wrap (file, 0, FALSE,
                "Computes the dampers of off-road model cars: force against shaft speed, what a "
                "change of holes, shims or oil does, what drilling would do, and what drills and "
                "oils there are.");
  fputs ("\nCommands:\n", file);
  for (size_t i = 0; i < G_N_ELEMENTS (commands); i++)
    fprintf (file, "  %-*s%s\n", NAME_WIDTH, commands[i]->name, commands[i]->summary);
  fputs ("\n", file);
  dw_calc_wrap (file, 0, FALSE,
                "dampcalc COMMAND --help tells all about a command, with its options and an "
                "example; man dampcalc tells everything. dampcalc --version shows the version.");
  fputs ("\n", file);
  dw_calc_wrap (file, 0, FALSE,
                "Exit status: 0 good, 1 bad input, 2 a command line that is not understood, 3 "
                "could not read or write.");
  fputs ("\n", file);
  dw_calc_wrap (file, 0, FALSE,
                "All numbers are estimates for scale-model dampers; they are not for vehicles that "
                "carry people or go on roads. Check on the car, one change at a time.");
}

static void
print_version (FILE *file)
{
  fputs ("dampcalc " DW_VERSION "\n", file);
}

static int
complain (const GError *error)
{
  g_autofree char *text = dw_calc_error_to_text (error, NULL);
  fputs (text, stderr);
  return (int)dw_calc_error_get_status (error);
}

/* Standard output may be a full disk here as well. */
static int
print_to_screen (void (*print) (FILE *file))
{
  g_autoptr (GError) error = NULL;
  dw_calc_output *output = dw_calc_output_open (NULL, &error);
  print (dw_calc_output_get_file (output));
  return dw_calc_output_close (output, &error) ? DW_CALC_GOOD : complain (error);
}

int
main (int argc, char **argv)
{
  /* Only for the bytes of file names. Numbers and messages are the same in every locale. */
  setlocale (LC_CTYPE, "");

  const char *word = argc > 1 ? argv[1] : NULL;
  if (g_strcmp0 (word, "--help") == 0)
    return print_to_screen (print_help);
  if (g_strcmp0 (word, "--version") == 0)
    return print_to_screen (print_version);
  for (size_t i = 0; word != NULL && i < G_N_ELEMENTS (commands); i++)
    if (strcmp (commands[i]->name, word) == 0)
      return dw_calc_command_run (commands[i], argc - 2, argv + 2);

  g_autoptr (GError) error = NULL;
  if (word == NULL)
    dw_calc_misused (&error, "no command is given");
  else if (word[0] == '-')
    dw_calc_misused (&error, "unknown option \"%s\"", word);
  else
    dw_calc_misused (&error, "unknown command \"%s\"", word);
  return complain (error);
}
