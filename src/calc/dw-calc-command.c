/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-command.h"

#include <string.h>
#include <sys/stat.h>

#include "calc/dw-calc-error.h"
#include "calc/dw-calc-output.h"
#include "calc/dw-calc-text.h"

static const dw_calc_option format_option
    = { "--format", "table|csv",
        "table for people (default), or csv for programs: one header line, units in the column "
        "names, a decimal point everywhere, numbers in full precision." };

static const dw_calc_option shared_options[] = {
  { "-o", "FILE",
    "Write into a file instead of the screen. An old file is replaced only when everything went "
    "well." },
  { "--help", NULL, "Show this text." },
};

dw_calc_option *
dw_calc_command_make_options (const dw_calc_command *command)
{
  g_autoptr (GArray) options = g_array_new (TRUE, TRUE, sizeof (dw_calc_option));
  for (const dw_calc_option *option = command->options; option->name != NULL; option++)
    g_array_append_val (options, *option);
  if (command->has_format)
    g_array_append_val (options, format_option);
  g_array_append_vals (options, shared_options, G_N_ELEMENTS (shared_options));
  return (dw_calc_option *)(gpointer)g_array_free (g_steal_pointer (&options), FALSE);
}

void
dw_calc_command_print_help (const dw_calc_command *command, FILE *file)
{
  g_autofree dw_calc_option *options = dw_calc_command_make_options (command);
  dw_calc_wrapf (file, 0, TRUE, "Usage: dampcalc %s %s%s[OPTION]...", command->name,
                 command->operands, *command->operands == '\0' ? "" : " ");
  fputc ('\n', file);
  dw_calc_wrapf (file, 0, FALSE, "%s.", command->summary);
  for (const char *const *text = command->paragraphs; *text != NULL; text++)
    {
      fputc ('\n', file);
      dw_calc_wrap (file, 0, FALSE, *text);
    }
  fprintf (file, "\nOptions, before or after the rest:\n");
  for (const dw_calc_option *option = options; option->name != NULL; option++)
    {
      fprintf (file, "  %s%s%s\n", option->name, option->value != NULL ? " " : "",
               option->value != NULL ? option->value : "");
      dw_calc_wrap (file, 6, FALSE, option->help);
    }
  fprintf (file, "\nExample%s:\n", command->examples[1] != NULL ? "s" : "");
  for (const char *const *text = command->examples; *text != NULL; text++)
    fprintf (file, "  dampcalc %s\n", *text);
}

static gboolean
check_arguments (const dw_calc_command *command, const dw_calc_arguments *arguments, GError **error)
{
  const guint n = dw_calc_arguments_get_n_operands (arguments);
  if (n < command->n_operands)
    return dw_calc_misused (error, "needs %s", command->operands);
  if (n > command->n_operands)
    return dw_calc_misused (error, "does not know what to do with \"%s\"",
                            dw_calc_arguments_get_operand (arguments, command->n_operands));

  const char *format = dw_calc_arguments_get (arguments, "--format");
  if (format != NULL && strcmp (format, "table") != 0 && strcmp (format, "csv") != 0)
    return dw_calc_misused (error, "--format needs table or csv, not \"%s\"", format);

  const char *target = dw_calc_arguments_get (arguments, "-o");
  struct stat read;
  struct stat written;
  if (target != NULL && n > 0 && stat (target, &written) == 0
      && stat (dw_calc_arguments_get_operand (arguments, 0), &read) == 0
      && read.st_dev == written.st_dev && read.st_ino == written.st_ino)
    return dw_calc_misused (error, "-o names the project file itself, which would be lost");
  return TRUE;
}

/* Runs with the output open; closes it. */
static int
run_into (const dw_calc_command *command, const dw_calc_arguments *arguments, GError **error)
{
  const bool wants_help = dw_calc_arguments_has (arguments, "--help");
  g_autoptr (dw_calc_output) output = dw_calc_output_open (
      wants_help ? NULL : dw_calc_arguments_get (arguments, "-o"), error);
  if (output == NULL)
    return DW_CALC_IO;

  FILE *file = dw_calc_output_get_file (output);
  GError *failure = NULL;
  int status = DW_CALC_GOOD;
  if (wants_help)
    dw_calc_command_print_help (command, file);
  else
    status = command->run (arguments, file, &failure);
  if (failure != NULL)
    {
      g_propagate_error (error, failure);
      return DW_CALC_BAD_INPUT;
    }
  return dw_calc_output_close (g_steal_pointer (&output), error) ? status : DW_CALC_IO;
}

int
dw_calc_command_run (const dw_calc_command *command, int n_words, char *const *words)
{
  g_autofree dw_calc_option *options = dw_calc_command_make_options (command);
  g_autoptr (GError) error = NULL;
  int status = DW_CALC_WRONG_USAGE;

  g_autoptr (dw_calc_arguments) arguments = dw_calc_arguments_new (options, n_words, words, &error);
  if (arguments != NULL
      && (dw_calc_arguments_has (arguments, "--help")
          || check_arguments (command, arguments, &error)))
    status = run_into (command, arguments, &error);
  if (error == NULL)
    return status;

  g_autofree char *text = dw_calc_error_to_text (error, command->name);
  fputs (text, stderr);
  return (int)dw_calc_error_get_status (error);
}
