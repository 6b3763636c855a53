/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc sheet: setup sheet, bench card, blank sheet or all setups, as pages for print. */

#include "calc/dw-calc-command.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-text.h"
#include "sheet/dw-sheet.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. Writes pages that somebody else can build the "
  "dampers from: piston faces to scale, stack, oil, gas and springs of front and rear side by "
  "side, the curves and figures, what differs from another setup, notes, and lines to write on.",
  "The end of the name behind -o decides what is written: .pdf has all pages, .png and .svg one of "
  "them.",
  NULL,
};

static const char *const examples[] = {
  "sheet club-day.dampwright -o fitted.pdf",
  "sheet club-day.dampwright --setup trial-1 --against baseline --kind both -o trial.pdf",
  "sheet club-day.dampwright --kind blank --paper letter -o blank.pdf",
  "sheet club-day.dampwright --kind all --date 2026-05-03 -o archive.pdf",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "Setup to tell. Default: the fitted one." },
  { "--against", "ID", "Setup to compare it with. Default: the fitted one, when it is another." },
  { "--alone", NULL, "Compare it with none." },
  { "--kind", "setup|card|both|blank|all",
    "Which pages: the setup sheet (default); the bench card, the work from the setup it is "
    "compared with; both; a blank sheet to write on; a table of all setups." },
  { "--paper", "a4|letter", "Paper, upright. Default: a4." },
  { "--quantity", "force|c",
    "Force in N (default), or c, force over speed, in N s/m, in charts and tables." },
  { "--date", "YYYY-MM-DD", "Date on the pages. Default: today." },
  { "--page", "N", "Page of a .png or .svg. Default: 1." },
  { "--dpi", "N", "Pixels of a .png per inch, 36 to 600. Default: 150." },
  { NULL, NULL, NULL },
};

#define LEAST_DPI 36
#define MOST_DPI  600

/* More pages than this no project has. */
#define MOST_PAGES 1000

static const char *const kinds[DW_N_SHEETS + 1]
    = { [DW_SHEET_SETUP] = "setup", [DW_SHEET_CARD] = "card",   [DW_SHEET_BOTH] = "both",
        [DW_SHEET_BLANK] = "blank", [DW_SHEET_SUMMARY] = "all", NULL };

/* What the command line asks for. */
typedef struct
{
  dw_export_kind format;
  dw_sheet_kind kind;
  const char *setup;   /* NULL = the fitted one */
  const char *against; /* NULL = the fitted one */
  bool is_alone;
  int page; /* from 1 */
  int dpi;  /* 0 = the usual */
  char *date;
  char *file_name;
  dw_sheet_options sheet;
} request;

static void
request_clear (request *r)
{
  g_free (r->date);
  g_free (r->file_name);
}

/* ---- arguments ---- */

static gboolean
read_format (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *path = dw_calc_arguments_require (arguments, "-o", error);
  if (path == NULL)
    return FALSE;
  return (dw_export_kind_of (path, &r->format) && r->format != DW_EXPORT_CSV)
         || dw_calc_misused (error, "-o needs a name that ends in .pdf, .png or .svg");
}

/* A day that there is, written as ISO 8601 does: digits where it has digits, nothing else between. */
static gboolean
is_day (const char *text)
{
  static const char pattern[] = "0000-00-00";
  if (strlen (text) != strlen (pattern))
    return FALSE;
  for (int i = 0; pattern[i] != '\0'; i++)
    if (pattern[i] == '-' ? text[i] != '-' : !g_ascii_isdigit (text[i]))
      return FALSE;
  const int year = (int)strtol (text, NULL, 10);
  const int month = (int)strtol (text + strlen ("0000-"), NULL, 10);
  const int day = (int)strtol (text + strlen ("0000-00-"), NULL, 10);
  return year > 0 && month > 0 && day > 0
         && g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year);
}

static gboolean
read_date (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *text = dw_calc_arguments_get (arguments, "--date");
  if (text != NULL && !is_day (text))
    return dw_calc_misused (error, "--date needs a day as 2026-05-03");
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  r->date = text != NULL ? g_strdup (text) : g_date_time_format (now, "%Y-%m-%d");
  r->sheet.date = r->date;
  return TRUE;
}

static gboolean
read_picture (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *page = dw_calc_arguments_get (arguments, "--page");
  const char *dpi = dw_calc_arguments_get (arguments, "--dpi");
  if (page != NULL && r->format == DW_EXPORT_PDF)
    return dw_calc_misused (error, "--page goes with a .png or .svg only");
  if (dpi != NULL && r->format != DW_EXPORT_PNG)
    return dw_calc_misused (error, "--dpi goes with a .png only");
  r->page = 1;
  return (page == NULL || dw_calc_count_parse ("--page", page, 1, MOST_PAGES, &r->page, error))
         && (dpi == NULL
             || dw_calc_count_parse ("--dpi", dpi, LEAST_DPI, MOST_DPI, &r->dpi, error));
}

static gboolean
read_choices (const dw_calc_arguments *arguments, request *r, GError **error)
{
  static const char *const quantities[] = { "force", "c", NULL };
  const char *const papers[] = { dw_paper_name (DW_PAPER_A4), dw_paper_name (DW_PAPER_LETTER),
                                 NULL };
  int kind = DW_SHEET_SETUP;
  int paper = DW_PAPER_A4;
  int quantity = 0;
  if (!dw_calc_arguments_choose (arguments, "--kind", kinds, &kind, error)
      || !dw_calc_arguments_choose (arguments, "--paper", papers, &paper, error)
      || !dw_calc_arguments_choose (arguments, "--quantity", quantities, &quantity, error))
    return FALSE;
  r->kind = (dw_sheet_kind)kind;
  r->sheet.paper = (dw_paper)paper;
  r->sheet.shows_damping = quantity == 1;
  return TRUE;
}

static gboolean
read_setups (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const bool is_needed = r->kind != DW_SHEET_BLANK && r->kind != DW_SHEET_SUMMARY;
  r->setup = dw_calc_arguments_get (arguments, "--setup");
  r->against = dw_calc_arguments_get (arguments, "--against");
  r->is_alone = dw_calc_arguments_has (arguments, "--alone");
  if (r->is_alone && r->against != NULL)
    return dw_calc_misused (error, "--alone and --against exclude each other");
  if (!is_needed && (r->setup != NULL || r->against != NULL || r->is_alone))
    return dw_calc_misused (error, "--setup, --against and --alone do not go with --kind %s",
                            kinds[r->kind]);
  return TRUE;
}

static gboolean
read_request (const dw_calc_arguments *arguments, request *r, GError **error)
{
  return read_format (arguments, r, error) && read_choices (arguments, r, error)
         && read_setups (arguments, r, error) && read_date (arguments, r, error)
         && read_picture (arguments, r, error);
}

/* ---- the sheet ---- */

static gboolean
choose_setups (request *r, const dw_project *project, const char *path, GError **error)
{
  const dw_setup *fitted = dw_project_get_fitted (project);
  r->sheet.project = project;
  if (r->kind == DW_SHEET_BLANK || r->kind == DW_SHEET_SUMMARY)
    return TRUE;
  if (r->setup == NULL && fitted == NULL)
    {
      g_autofree char *shown = dw_calc_printable (path);
      return dw_project_get_n_setups (project) == 0
                 ? dw_calc_refused (error, "%s: there is no setup to tell", shown)
                 : dw_calc_refused (error, "%s: no setup is fitted; --setup has to name one",
                                    shown);
    }
  r->sheet.setup = r->setup != NULL ? dw_calc_input_find (project, path, r->setup, error) : fitted;
  if (r->sheet.setup == NULL)
    return FALSE;
  if (!r->is_alone)
    r->sheet.against = r->against != NULL ? dw_calc_input_find (project, path, r->against, error)
                                          : fitted;
  return r->against == NULL || r->sheet.against != NULL;
}

static gboolean
write_sheet (const request *r, dw_sheet *sheet, FILE *file, GError **error)
{
  const int n = dw_sheet_get_n_pages (sheet);
  if (r->page > n)
    return dw_calc_refused (error, "--page %d: the sheet has %d, allowed 1 to %d", r->page, n, n);
  const bool is_pdf = r->format == DW_EXPORT_PDF;
  dw_drawing drawing = dw_sheet_drawing (sheet, r->page - 1, is_pdf ? n : 1);
  if (r->dpi > 0)
    drawing.dpi = r->dpi;
  g_autoptr (GBytes) bytes = dw_export_render (&drawing, r->format, error);
  if (bytes == NULL)
    return FALSE;
  gsize length = 0;
  const void *data = g_bytes_get_data (bytes, &length);
  fwrite (data, 1, length, file);
  return TRUE;
}

static gboolean
draw (request *r, const char *path, FILE *file, GError **error)
{
  g_autoptr (dw_project) project = dw_calc_input_load (path, error);
  if (project == NULL || !choose_setups (r, project, path, error))
    return FALSE;
  g_autofree char *name = g_path_get_basename (path);
  r->file_name = dw_calc_printable (name);
  r->sheet.file_name = r->file_name;

  dw_sheet_failure failure;
  g_autoptr (dw_sheet) sheet = dw_sheet_new (r->kind, &r->sheet, &failure);
  if (sheet == NULL)
    return dw_calc_input_refuse (path, failure.setup, failure.axle, &failure.finding, error);
  return write_sheet (r, sheet, file, error);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  request r = { .page = 1 };
  int status = DW_CALC_WRONG_USAGE;
  if (read_request (arguments, &r, error))
    status = draw (&r, path, file, error) ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
  request_clear (&r);
  return status;
}

const dw_calc_command dw_calc_sheet = {
  .name = "sheet",
  .summary = "Write a setup sheet, a bench card or all setups for print",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = false,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
