/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc match: which builds from the parts box come nearest to forces that are wanted. */

#include <math.h>
#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "calc/dw-calc-wanted.h"
#include "model/dw-units.h"
#include "project/dw-match-job.h"
#include "study/dw-match-closing.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. Which builds of one damper, from what the parts box "
  "has, come nearest to the forces that are wanted at the project's low, middle and high speed: "
  "holes drilled, another stack, another bottle, and what else --use names. Wanted are the "
  "setup's own forces, or those of another setup; a stroke that is not kept is free, and single "
  "forces can be changed by so many percent.",
  "The builds stand best first: the one that misses least in the force that it misses most. Misses "
  "that differ by less than 0.1 % count as equal; then fewer changes go first, then those that can "
  "be taken back. comp., reb.: how far each wanted force is missed, in % of it. changes: what is "
  "done, a blend counts twice. good: changes that are for good, drilling. Then follows what can be "
  "had with no change, with one and so on, and whether the best holds within 1 %; if not, which "
  "one part that is not in the box would come nearest.",
  "csv has one row a build: place, worst and root mean square miss and the miss of each wanted "
  "force as shares of it (0.01 is 1 %), forces, and what is done: sizes that holes are drilled to, "
  "stack, oil (bottle or blend, with its nominal viscosity, the bottles' numbers in the parts box "
  "and the share of the other one), piston; empty as it is. oil_c, changes, for_good. man dampcalc "
  "names every column.",
  DW_CALC_DRILL_CAUTION,
  NULL,
};

static const char *const examples[] = {
  "match club-day.dampwright --axle front --keep compression --change rebound:-10",
  "match club-day.dampwright --axle rear --like trial-1 --use stack,oil,blend",
  "match club-day.dampwright --axle front --fair --format csv -o fair.csv",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "The setup that is to be rebuilt. Default: the fitted one." },
  { "--axle", "front|rear", "Its damper. Has to be given." },
  { "--keep", "compression|rebound|both",
    "The stroke whose forces are held; the other one is free. Default: both." },
  { "--change", "STROKE[-SPEED]:PERCENT[,...]",
    "Forces that are to change, -90 to 900 %: compression:+10,rebound-high:-15. Without a speed "
    "(low, middle, high), all three. They are wanted even in a stroke that is free." },
  { "--like", "ID", "Wanted are the forces of this setup, on the same axle. Default: its own." },
  { "--use", "WHAT[,...]",
    "What may be done: open, covered (holes are drilled), stack, oil (another bottle), blend (two "
    "bottles), piston (another one of the box), temperature. Default: open,covered,stack,oil." },
  { "--temperatures", "FROM:TO",
    "With temperature: whole degrees C that the oil may have, -25 to 150." },
  { "--most-leaves", "N", "Leaves in one stack, 1 to 8. Default: 3." },
  { "--dampers", "1|2",
    "Dampers that get the same stack from the parts box: 2 (default) are left and right." },
  { "--fair", NULL,
    "A fair comparison: another piston of the box that keeps compression, so that the valve is the "
    "only difference; rebound is free. Not with --keep, --change or --like." },
  { "--threads", "N",
    "Threads that search, 1 to 64. Default: as many as there are processors. The result is the "
    "same." },
  { NULL, NULL, NULL },
};

static const char csv_header[]
    = "setup,axle,place,worst_miss,rms_miss,miss_compression_low,miss_compression_middle,"
      "miss_compression_high,miss_rebound_low,miss_rebound_middle,miss_rebound_high,"
      "force_compression_low_n,force_compression_middle_n,force_compression_high_n,"
      "force_rebound_low_n,force_rebound_middle_n,force_rebound_high_n,open_mm,covered_mm,stack,"
      "oil,oil_viscosity_cst,bottle,other_bottle,share,piston,oil_c,changes,for_good";

static const dw_calc_column wish_columns[] = {
  { " ", "", true },           { "now", "low", false },    { "now", "mid", false },
  { "now", "high", false },    { "wanted", "low", false }, { "wanted", "mid", false },
  { "wanted", "high", false }, { NULL, NULL, false },
};

static const double PERCENT = 100.0;

/* Powers of ten from millimetres and centistokes to SI. */
#define MM_POWER  (-3)
#define CST_POWER (-6)

/* Columns that a table may take, and at least the words in it. */
#define TABLE_WIDTH 98
#define WORDS_LEAST 18

/* One search and what came of it. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;
  const dw_calc_wanted *asked;
  dw_match_wish now; /* the forces that it has, for the table */
  dw_match_job *job; /* owned */
  dw_match_found found;
  bool tells_material; /* stacks of several moduli are among them */
} hunt;

/* ---- the search ---- */

/* Forces of a setup's damper; FALSE where they cannot be computed. */
static gboolean
read_forces (const dw_project *project, const char *path, const dw_setup *setup, dw_axle axle,
             dw_match_wish *wish, GError **error)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  dw_force_model model;
  dw_figures figures;
  dw_error finding;
  if (dw_force_model_make (&setup->damper[axle], project->conditions.oil_temperature, &model,
                           &finding)
          != DW_OK
      || dw_figures_read (&model, speeds, &figures, &finding) != DW_OK)
    return dw_calc_input_refuse (path, setup, axle, &finding, error);
  *wish = dw_match_wish_hold (&figures, speeds);
  return TRUE;
}

/* A force that gas pushes below nothing is no target: holding it is left out, changing it refused. */
static gboolean
set_target (const hunt *h, const char *path, int stroke, int speed, dw_match_target *t,
            GError **error)
{
  const dw_calc_wanted *r = h->asked;
  const bool is_none = t->is_free;
  if (r->is_changed[stroke][speed] && is_none)
    {
      g_autofree char *shown = dw_calc_printable (path);
      return dw_calc_refused (
          error, "%s: %s at the %s speed is %.3g N: --change needs a force above 0", shown,
          dw_stroke_name ((dw_stroke)stroke), dw_calc_speed_name (speed), t->force);
    }
  t->is_free = is_none || (!r->is_kept[stroke] && !r->is_changed[stroke][speed]);
  t->force *= 1.0 + r->change[stroke][speed];
  return TRUE;
}

static gboolean
make_wish (hunt *h, const char *path, dw_match_wish *wish, GError **error)
{
  const dw_calc_wanted *r = h->asked;
  if (r->like != NULL)
    {
      const dw_setup *like = dw_calc_input_find (h->project, path, r->like, error);
      if (like == NULL || !read_forces (h->project, path, like, r->axle, wish, error))
        return FALSE;
    }
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      if (!set_target (h, path, s, v, &wish->target[s][v], error))
        return FALSE;
  return TRUE;
}

static gboolean
make_question (hunt *h, const char *path, dw_match_question *q, GError **error)
{
  const dw_calc_wanted *r = h->asked;
  if (!read_forces (h->project, path, h->setup, r->axle, &h->now, error))
    return FALSE;
  *q = r->is_fair ? dw_match_question_fair (h->project, h->setup, r->axle)
                  : dw_match_question_defaults (h->project, h->setup, r->axle);
  if (!r->is_fair && !make_wish (h, path, &q->wish, error))
    return FALSE;
  for (int i = 0; r->has_use && i < DW_N_LEVERS; i++)
    q->allowed[i] = r->use[i] || q->needed[i];
  if (r->has_temperatures)
    {
      q->lowest_temperature = r->lowest;
      q->highest_temperature = r->highest;
    }
  q->most_leaves = r->most_leaves;
  q->dampers = r->dampers;
  return TRUE;
}

static bool
has_several_moduli (const dw_match_box *box)
{
  for (size_t i = 0; i < box->n_stacks; i++)
    for (int k = 0; k < box->stacks[i].n_shims; k++)
      if (box->stacks[i].shims[k].modulus != box->stacks[0].shims[0].modulus)
        return true;
  return false;
}

/* @param h  with project, setup and request */
static gboolean
hunt_run (hunt *h, const char *path, GError **error)
{
  dw_match_question question;
  dw_error finding;
  if (!make_question (h, path, &question, error))
    return FALSE;
  if (!dw_match_wish_is_any (&question.wish))
    finding = (dw_error){ .field = "match", .text = "no force is above 0 N: nothing to hold" };
  else if ((h->job = dw_match_job_new (dw_project_get_parts (h->project), &question, &finding))
           != NULL)
    {
      h->tells_material = has_several_moduli (dw_match_job_get_box (h->job));
      if (!dw_match_job_run (h->job, h->asked->threads, NULL, &h->found, error))
        return FALSE;
      if (h->found.n > 0)
        return TRUE;
      finding = (dw_error){ .field = "parts",
                            .text = "the parts box has no other piston that can be fitted" };
    }
  return dw_calc_input_refuse (path, h->setup, h->asked->axle, &finding, error);
}

static void
hunt_clear (hunt *h)
{
  g_clear_pointer (&h->job, dw_match_job_free);
}

/* ---- what is done, in words ---- */

static const dw_spare_piston *
spare_of (const hunt *h, int piston)
{
  return &g_array_index (dw_project_get_parts (h->project)->pistons, dw_spare_piston, piston);
}

static void append (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
append (GString *text, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  if (text->len > 0)
    g_string_append (text, ", ");
  g_string_append_vprintf (text, format, arguments);
  va_end (arguments);
}

static void
append_sizes (GString *text, const hunt *h, const dw_match_build *build)
{
  double size[DW_DRILL_SETS];
  dw_match_grids_sizes (dw_match_job_get_grids (h->job), build, size);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    {
      g_autofree char *mm = dw_calc_size (size[s]);
      if (size[s] > 0.0)
        append (text, "%s %s mm", dw_calc_lever_name (s), mm);
    }
}

static char *
stack_text (const hunt *h, const dw_match_build *build, bool is_csv)
{
  const int stack = dw_match_grids_stack (dw_match_job_get_grids (h->job), build);
  if (stack < 0)
    return g_strdup ("");
  const dw_ladder_rung *rung = &dw_match_job_get_box (h->job)->stacks[stack];
  return dw_calc_stack (rung->shims, rung->n_shims, h->tells_material, is_csv);
}

/* A bottle whose oil has no nominal viscosity is told by its place in the box. */
static void
append_oil (GString *text, const hunt *h, const dw_match_build *build)
{
  const dw_match_oil *oil = dw_match_grids_oil (dw_match_job_get_grids (h->job), build);
  const dw_oil *bottles = dw_match_job_get_box (h->job)->bottles;
  if (oil == NULL)
    return;
  if (oil->other >= 0)
    append (text, "oil %.6g + %.0f %% of %.6g cSt", bottles[oil->bottle].viscosity / DW_CST,
            oil->share * PERCENT, bottles[oil->other].viscosity / DW_CST);
  else if (bottles[oil->bottle].kind == DW_OIL_NOMINAL)
    append (text, "oil %.6g cSt", bottles[oil->bottle].viscosity / DW_CST);
  else
    append (text, "oil of bottle %d", oil->bottle + 1);
}

static char *
done_text (const hunt *h, const dw_match_build *build)
{
  const dw_match_grid *grid = dw_match_grids_get (dw_match_job_get_grids (h->job), build->grid);
  g_autofree char *stack = stack_text (h, build, false);
  g_autoptr (GString) text = g_string_new (NULL);
  if (grid->piston >= 0 && *spare_of (h, grid->piston)->name != '\0')
    append (text, "piston \"%s\"", spare_of (h, grid->piston)->name);
  else if (grid->piston >= 0)
    append (text, "piston %d of the box", grid->piston + 1);
  append_sizes (text, h, build);
  if (*stack != '\0')
    append (text, "stack %s", stack);
  append_oil (text, h, build);
  if (grid->temperature >= 0)
    append (text, "oil at %.6g degC",
            dw_match_job_get_box (h->job)->temperatures[grid->temperature]);
  return g_strdup (text->len > 0 ? text->str : "as it is");
}

/* ---- csv ---- */

static void
csv_grid (const double values[DW_N_STROKES][DW_N_SPEEDS], dw_calc_csv *csv)
{
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      dw_calc_csv_number (csv, values[s][v], 0);
}

/* An empty field for what is not there. */
static void
csv_number_if (dw_calc_csv *csv, bool is_there, double value, int power)
{
  dw_calc_csv_number (csv, is_there ? value : (double)NAN, power);
}

static void
print_csv_oil (const hunt *h, const dw_match_oil *oil, dw_calc_csv *csv)
{
  const dw_oil *present = &dw_match_job_get_question (h->job)->damper.oil;
  const bool is_mixed = oil != NULL && oil->other >= 0;
  const double kept = present->kind == DW_OIL_NOMINAL ? present->viscosity : (double)NAN;
  dw_calc_csv_text (csv, oil == NULL ? "" : is_mixed ? "blend" : "bottle");
  dw_calc_csv_number (csv, oil == NULL ? kept : oil->viscosity, CST_POWER);
  csv_number_if (csv, oil != NULL, oil != NULL ? oil->bottle + 1.0 : 0.0, 0);
  csv_number_if (csv, is_mixed, is_mixed ? oil->other + 1.0 : 0.0, 0);
  csv_number_if (csv, is_mixed, is_mixed ? oil->share : 0.0, 0);
}

static void
print_csv_piston (const hunt *h, int piston, dw_calc_csv *csv)
{
  g_autofree char *number = g_strdup_printf ("#%d", piston + 1);
  dw_calc_csv_text (csv, piston < 0                            ? ""
                         : *spare_of (h, piston)->name == '\0' ? number
                                                               : spare_of (h, piston)->name);
}

static void
print_csv_row (const hunt *h, int place, dw_calc_csv *csv)
{
  const dw_match_candidate *c = &h->found.best[place];
  const dw_match_grids *grids = dw_match_job_get_grids (h->job);
  const dw_match_grid *grid = dw_match_grids_get (grids, c->build.grid);
  g_autofree char *stack = stack_text (h, &c->build, true);
  double size[DW_DRILL_SETS];
  dw_match_grids_sizes (grids, &c->build, size);
  dw_calc_csv_text (csv, h->setup->id);
  dw_calc_csv_text (csv, dw_axle_name (h->asked->axle));
  dw_calc_csv_number (csv, place + 1.0, 0);
  dw_calc_csv_number (csv, c->worst, 0);
  dw_calc_csv_number (csv, c->rms, 0);
  csv_grid (c->miss, csv);
  csv_grid (c->force, csv);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    csv_number_if (csv, size[s] > 0.0, size[s], MM_POWER);
  dw_calc_csv_text (csv, stack);
  print_csv_oil (h, dw_match_grids_oil (grids, &c->build), csv);
  print_csv_piston (h, grid->piston, csv);
  dw_calc_csv_number (csv,
                      grid->temperature >= 0
                          ? dw_match_job_get_box (h->job)->temperatures[grid->temperature]
                          : dw_match_job_get_question (h->job)->temperature,
                      0);
  dw_calc_csv_number (csv, c->levers, 0);
  dw_calc_csv_number (csv, c->for_good, 0);
  dw_calc_csv_end (csv);
}

static void
print_csv (const hunt *h, FILE *file)
{
  dw_calc_csv csv = dw_calc_csv_begin (file, csv_header);
  for (int i = 0; i < h->found.n && ferror (file) == 0; i++)
    print_csv_row (h, i, &csv);
}

/* ---- what is wanted, for people ---- */

static void
print_wish (const hunt *h, FILE *file)
{
  const dw_match_question *q = dw_match_job_get_question (h->job);
  const dw_speeds *speeds = &h->project->speeds;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (wish_columns);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      dw_calc_table_add (table, dw_stroke_name ((dw_stroke)s));
      for (int v = 0; v < DW_N_SPEEDS; v++)
        dw_calc_table_add_figure (table, h->now.target[s][v].force);
      for (int v = 0; v < DW_N_SPEEDS; v++)
        if (q->wish.target[s][v].is_free)
          dw_calc_table_add (table, "free");
        else
          dw_calc_table_add_figure (table, q->wish.target[s][v].force);
    }
  dw_calc_wrapf (file, 2, TRUE, "Forces in N at %.6g, %.6g and %.6g m/s; oil now at %.6g degC.",
                 speeds->low, speeds->middle, speeds->high, q->temperature);
  if (h->asked->is_fair)
    dw_calc_wrap (file, 2, TRUE,
                  "A fair comparison: another piston that keeps compression; rebound is free.");
  if (h->asked->like != NULL)
    dw_calc_wrapf (file, 2, TRUE, "Wanted are forces of %s.", h->asked->like);
  fputc ('\n', file);
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

/* ---- builds, for people ---- */

static bool
is_stroke_wanted (const hunt *h, int stroke)
{
  const dw_match_question *q = dw_match_job_get_question (h->job);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    if (!q->wish.target[stroke][v].is_free)
      return true;
  return false;
}

static int
miss_width (const hunt *h)
{
  static const int least = 4; /* "high" */
  int width = least;
  for (int i = 0; i < h->found.n; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      for (int v = 0; v < DW_N_SPEEDS; v++)
        {
          g_autofree char *text = dw_calc_change (h->found.best[i].miss[s][v] * PERCENT);
          width = MAX (width, (int)strlen (text));
        }
  return width;
}

/* End of a line of words: behind a comma if there is one. */
static const char *
words_end (const char *words, int width)
{
  const char *end = dw_calc_line_end (words, width);
  for (const char *p = end; *end != '\0' && p > words; p--)
    if (*p == ' ' && p[-1] == ',')
      return p;
  return end;
}

/* Cells but the last one are filled: the words, with lines of their own where they are too long.
 * @param n_before  columns before the words */
static void
add_words (dw_calc_table *table, const char *words, int n_before, int width)
{
  const char *end = words_end (words, width);
  while (*end != '\0')
    {
      g_autofree char *line = g_strndup (words, (gsize)(end - words));
      dw_calc_table_add (table, line);
      for (int i = 0; i < n_before; i++)
        dw_calc_table_add (table, "");
      words = *end == ' ' ? end + 1 : end;
      end = words_end (words, width);
    }
  dw_calc_table_add (table, words);
}

static void
add_percent (dw_calc_table *table, double share)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  dw_calc_table_add (table, g_ascii_formatd (text, sizeof text, "%.1f", share * PERCENT));
}

static void
add_build (const hunt *h, int place, dw_calc_table *table, int n_before, int width)
{
  const dw_match_candidate *c = &h->found.best[place];
  g_autofree char *words = done_text (h, &c->build);
  dw_calc_table_add_plain (table, place + 1.0);
  add_percent (table, c->worst);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS && is_stroke_wanted (h, s); v++)
      {
        g_autofree char *miss = dw_calc_change (c->miss[s][v] * PERCENT);
        dw_calc_table_add (table, miss);
      }
  dw_calc_table_add_plain (table, c->levers);
  dw_calc_table_add_plain (table, c->for_good);
  add_words (table, words, n_before, width);
}

static void
print_builds (const hunt *h, FILE *file)
{
  static const char *const heads[DW_N_STROKES] = { "comp.", "reb." };
  static const char *const units[DW_N_SPEEDS] = { "low", "mid", "high" };
  dw_calc_column columns[6 + DW_N_STROKES * DW_N_SPEEDS] = { { "place", "", false },
                                                             { "worst", "%", false } };
  int n = 2;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS && is_stroke_wanted (h, s); v++)
      columns[n++] = (dw_calc_column){ heads[s], units[v], false };
  const int n_misses = n - 2;
  columns[n++] = (dw_calc_column){ "chan-", "ges", false };
  columns[n++] = (dw_calc_column){ "for", "good", false };
  columns[n] = (dw_calc_column){ "what is done", "", true };
  /* place, worst, changes, for good, and two blanks before each column but the first */
  const int taken = 5 + 6 + 5 + 4 + 2 * n + n_misses * MAX (5, miss_width (h));
  const int width = MAX (WORDS_LEAST, TABLE_WIDTH - taken);
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int i = 0; i < h->found.n; i++)
    add_build (h, i, table, n, width);
  dw_calc_table_print (table, file, 0);
  fputc ('\n', file);
}

/* What more work buys. */
static void
print_trade (const hunt *h, FILE *file)
{
  static const dw_calc_column columns[] = { { "changes", "", false },
                                            { "worst", "%", false },
                                            { "for good", "", false },
                                            { "least miss", "", true },
                                            { NULL, NULL, false } };
  static const int width = 66;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int i = 0; i <= DW_N_LEVERS; i++)
    if (h->found.has_with[i])
      {
        const dw_match_candidate *c = &h->found.with[i];
        g_autofree char *words = done_text (h, &c->build);
        dw_calc_table_add_plain (table, i);
        add_percent (table, c->worst);
        dw_calc_table_add_plain (table, c->for_good);
        add_words (table, words, 3, width);
      }
  dw_calc_table_print (table, file, 0);
  fputc ('\n', file);
}

/* ---- how near it comes ---- */

/* The part that is not in the box, as it stands in a sentence. */
static char *
part_text (const dw_match_closing *closing)
{
  g_autofree char *size = closing->part == DW_CLOSING_OIL
                              ? dw_calc_figure (closing->size / DW_CST, 3)
                              : dw_calc_size (closing->size);
  switch (closing->part)
    {
    case DW_CLOSING_OIL:
      return g_strdup_printf ("an oil of %s cSt", size);
    case DW_CLOSING_OPEN:
      return g_strdup_printf ("open holes drilled to %s mm", size);
    case DW_CLOSING_COVERED:
      return g_strdup_printf ("covered holes drilled to %s mm", size);
    case DW_CLOSING_SHIM:
      return g_strdup_printf ("one leaf of %s mm instead of the stack", size);
    case DW_CLOSING_NONE:
      break;
    }
  return NULL;
}

static void
print_closing (const hunt *h, FILE *file)
{
  const dw_match_question *q = dw_match_job_get_question (h->job);
  const dw_match_candidate *best = &h->found.best[0];
  dw_damper damper;
  double temperature;
  if (!dw_match_grids_build (dw_match_job_get_grids (h->job), &best->build, &damper, &temperature))
    return;
  const dw_match_closing closing = dw_match_closing_find (&damper, temperature, &q->wish,
                                                          q->allowed);
  g_autofree char *part = part_text (&closing);
  if (part == NULL)
    dw_calc_wrap (file, 0, TRUE, "No single other oil, drill or leaf would bring it nearer.");
  else
    dw_calc_wrapf (file, 0, TRUE,
                   "With one part that is not in the box, %s, it would miss by %.1f %%%s", part,
                   closing.worst * PERCENT, closing.worst <= DW_MATCH_HELD ? "." : " still.");
}

static void
print_verdict (const hunt *h, FILE *file)
{
  const dw_match_candidate *best = &h->found.best[0];
  const char *what = h->asked->is_fair ? "compression" : "what is wanted";
  if (best->worst <= DW_MATCH_HELD)
    dw_calc_wrapf (file, 0, TRUE, "The best holds %s within %.0f %%: it misses by %.2g %% at most.",
                   what, DW_MATCH_HELD * PERCENT, best->worst * PERCENT);
  else if (h->asked->is_fair)
    dw_calc_wrapf (file, 0, TRUE,
                   "No piston of the box can hold compression within %.0f %%: the best misses by "
                   "%.1f %%. No fair comparison.",
                   DW_MATCH_HELD * PERCENT, best->worst * PERCENT);
  else
    dw_calc_wrapf (file, 0, TRUE, "Nothing holds %s within %.0f %%: the best misses by %.1f %%.",
                   what, DW_MATCH_HELD * PERCENT, best->worst * PERCENT);
  if (best->worst > DW_MATCH_HELD)
    print_closing (h, file);
  dw_calc_wrapf (file, 0, TRUE, "%.0f builds were judged; %.0f dampers were computed for it.",
                 h->found.n_judged, h->found.n_computed);
}

static void
print_table (const hunt *h, FILE *file)
{
  const bool named = *h->setup->name != '\0';
  const bool *allowed = dw_match_job_get_question (h->job)->allowed;
  dw_calc_title (file, h->project->title);
  dw_calc_wrapf (file, 0, TRUE, "%s, %s%s%s%s", h->setup->id, dw_axle_name (h->asked->axle),
                 named ? " (" : "", h->setup->name, named ? ")" : "");
  print_wish (h, file);
  print_builds (h, file);
  print_trade (h, file);
  print_verdict (h, file);
  if (allowed[DW_LEVER_OPEN] || allowed[DW_LEVER_COVERED])
    dw_calc_wrap (file, 0, TRUE, DW_CALC_DRILL_CAUTION);
}

/* ---- the command ---- */

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  dw_calc_wanted r;
  if (!dw_calc_wanted_read (arguments, &r, error))
    return DW_CALC_WRONG_USAGE;
  const dw_setup *setup;
  g_autoptr (dw_project) project = dw_calc_input_open (arguments, &setup, error);
  if (project == NULL)
    return DW_CALC_BAD_INPUT;

  hunt h = { .project = project, .setup = setup, .asked = &r };
  const gboolean good = hunt_run (&h, path, error);
  if (good && dw_calc_arguments_wants_csv (arguments))
    print_csv (&h, file);
  else if (good)
    print_table (&h, file);
  hunt_clear (&h);
  return good ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_match = {
  .name = "match",
  .summary = "Which builds from the parts box come nearest to forces that are wanted",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
