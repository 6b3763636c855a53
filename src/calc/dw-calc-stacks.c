/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc stacks: every stack that the parts box allows for a damper, in order of stiffness. */

#include <math.h>
#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-units.h"
#include "study/dw-ladder.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. Every distinct stack that can be built for a damper "
  "of a setup, from the softest to the stiffest, and what it does in the stroke that lifts it; "
  "the other stroke stays as it is. At hand are the shims of the parts box, shared by the dampers "
  "that are built alike, beside those that the car has in its stack now. Thicker leaves lie "
  "nearer the piston.",
  "How well leaves stick together is not known: all is told for leaves that slide and for leaves "
  "that stick, and between them by the damper's leaf coupling when that is neither 0 nor 1. one: "
  "thickness in mm of one leaf as stiff. Forces in N at the project's low, middle and high speed. "
  "share: rebound over compression force at the middle speed. lift: of the rim at the holes at "
  "the high speed, in mm; noted \"stop\" where it is the lift limit. Stacks with one bracket do "
  "the same: their forces differ from those of the softest among them by at most 2 % at all three "
  "speeds.",
  "Before the softest stack stands what is left without a shim, and with one that has no "
  "stiffness and is open to its stop: the holes alone. After the stiffest one stands a shim that "
  "never lifts: a plain piston. A stack within 2 % of such an end at all three speeds is noted "
  "\"holes\" or \"plain\": there, another shim changes nothing. fitted is the stack in the car, "
  "own that of the setup.",
  "csv has one row a stack: stroke (that lifts it), rung and group from 1 on, verdict (plain, "
  "holes or shim: which decides), fitted and own (1 for the stack in the car, and for that of the "
  "setup), leaves, stack from the piston outwards, stiffness by the leaf coupling, thickness of "
  "one leaf as stiff and all thicknesses added, forces by the leaf coupling, with loose and with "
  "stuck leaves, and where the habit of adding thicknesses expects them, rebound shares, lift, "
  "at_stop, and the forces of the three ends. man dampcalc names every column.",
  NULL,
};

static const char *const examples[] = {
  "stacks club-day.dampwright --axle rear",
  "stacks club-day.dampwright --setup trial-1 --most-leaves 2",
  "stacks club-day.dampwright --dampers 1 --format csv -o stacks.csv",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "The setup whose dampers get the stacks. Default: the fitted one." },
  { "--axle", "front|rear", "Only this axle. Default: both." },
  { "--most-leaves", "N", "Leaves in one stack, 1 to 8. Default: 3." },
  { "--dampers", "1|2",
    "Dampers that get the same stack from the parts box: 2 (default) are left and right." },
  { NULL, NULL, NULL },
};

static const char csv_header[]
    = "setup,axle,stroke,rung,group,verdict,fitted,own,leaves,stack,stiffness_n_m,single_loose_mm,"
      "single_stuck_mm,added_mm,force_low_n,force_middle_n,force_high_n,loose_low_n,loose_middle_n,"
      "loose_high_n,stuck_low_n,stuck_middle_n,stuck_high_n,habit_low_n,habit_middle_n,habit_high_"
      "n,"
      "rebound_share_low,rebound_share_middle,rebound_share_high,lift_high_mm,at_stop,plain_low_n,"
      "plain_middle_n,plain_high_n,soft_low_n,soft_middle_n,soft_high_n,holes_low_n,holes_middle_n,"
      "holes_high_n";

#define FORCES(head)                                                                               \
  { head, "low", false }, { head, "mid", false },                                                  \
  {                                                                                                \
    head, "high", false                                                                            \
  }
#define COLUMNS_BEFORE                                                                             \
  { " ", "", true }, { "stack", "mm", true }, { "one", "slide", false },                           \
  {                                                                                                \
    "one", "stuck", false                                                                          \
  }
#define COLUMNS_AFTER                                                                              \
  { "share", "", false }, { "lift", "mm", false }, { " ", "", true },                              \
  {                                                                                                \
    NULL, NULL, false                                                                              \
  }

static const dw_calc_column columns[] = { COLUMNS_BEFORE, FORCES ("slide"), FORCES ("stuck"),
                                          COLUMNS_AFTER };
static const dw_calc_column columns_between[]
    = { COLUMNS_BEFORE, FORCES ("force"), FORCES ("slide"), FORCES ("stuck"), COLUMNS_AFTER };

#define MM_POWER (-3)

/* What the command line asks for. */
typedef struct
{
  dw_calc_axles axles;
  int most_leaves;
  int dampers;
} request;

/* The ladder of one damper. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;
  dw_axle axle;
  const request *asked;
  const dw_damper *damper;
  bool has_fitted;   /* the project says what is in the car */
  dw_ladder *ladder; /* owned; NULL = there is none, and @p reason says why */
  dw_error reason;
  bool tells_material; /* leaves of several moduli are on it */
} climb;

/* ---- what is asked for ---- */

static gboolean
read_request (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *leaves = dw_calc_arguments_get (arguments, "--most-leaves");
  const char *dampers = dw_calc_arguments_get (arguments, "--dampers");
  r->most_leaves = 3;
  r->dampers = 2;
  return dw_calc_input_axles (arguments, &r->axles, error)
         && (leaves == NULL
             || dw_calc_count_parse ("--most-leaves", leaves, 1, DW_LADDER_MAX_LEAVES,
                                     &r->most_leaves, error))
         && (dampers == NULL
             || dw_calc_count_parse ("--dampers", dampers, 1, 2, &r->dampers, error));
}

/* ---- the ladder ---- */

static bool
has_several_moduli (const dw_ladder *ladder)
{
  for (size_t i = 0; i < ladder->n; i++)
    for (int k = 0; k < ladder->rungs[i].n_shims; k++)
      if (ladder->rungs[i].shims[k].modulus != ladder->rungs[0].shims[0].modulus)
        return true;
  return false;
}

/* A damper without covered holes, or without shims at hand, has no ladder: no reason to refuse the
 * other axle's. */
static bool
is_without_ladder (const dw_error *finding)
{
  return (finding->code == DW_ERR_GEOMETRY && strcmp (finding->field, "piston.holes") == 0)
         || (finding->code == DW_ERR_RANGE && strcmp (finding->field, "valve.shim") == 0);
}

/* @param c  with project, setup, axle and request */
static gboolean
climb_compute (climb *c, const char *path, GError **error)
{
  const dw_speeds *s = &c->project->speeds;
  const double speeds[DW_N_SPEEDS] = { s->low, s->middle, s->high };
  const GArray *shims = dw_project_get_parts (c->project)->shims;
  const dw_setup *fitted = dw_project_get_fitted (c->project);
  c->damper = &c->setup->damper[c->axle];
  c->has_fitted = fitted != NULL;

  dw_ladder_options wanted = dw_ladder_options_defaults (
      (const dw_shim *)(gpointer)shims->data, (int)shims->len,
      c->project->conditions.oil_temperature, speeds);
  wanted.fitted = fitted != NULL ? &fitted->damper[c->axle].valve : NULL;
  wanted.most_leaves = c->asked->most_leaves;
  wanted.dampers = c->asked->dampers;
  if (dw_ladder_make (c->damper, &wanted, NULL, NULL, &c->ladder, &c->reason) == DW_OK)
    {
      c->tells_material = has_several_moduli (c->ladder);
      return TRUE;
    }
  return is_without_ladder (&c->reason)
         || dw_calc_input_refuse (path, c->setup, c->axle, &c->reason, error);
}

static void
climb_clear (climb *c)
{
  g_clear_pointer (&c->ladder, dw_ladder_free);
}

static char *
stack_text (const climb *c, const dw_shim *shims, int n, bool is_csv)
{
  return dw_calc_stack (shims, n, c->tells_material, is_csv);
}

static void
read_force (const climb *c, const dw_ladder_rung *rung, double force[DW_N_SPEEDS])
{
  for (int v = 0; v < DW_N_SPEEDS; v++)
    force[v] = rung->figures.point[c->damper->valve.opens_on][v].force;
}

/* ---- csv ---- */

static void
csv_numbers (dw_calc_csv *csv, const double *values, int n)
{
  for (int i = 0; i < n; i++)
    dw_calc_csv_number (csv, values[i], 0);
}

static void
print_csv_row (const climb *c, size_t i, dw_calc_csv *csv)
{
  static const char *const verdicts[]
      = { [DW_LADDER_SHIM] = "shim", [DW_LADDER_PLAIN] = "plain", [DW_LADDER_HOLES] = "holes" };
  const dw_ladder *ladder = c->ladder;
  const dw_ladder_rung *rung = &ladder->rungs[i];
  const dw_stroke stroke = c->damper->valve.opens_on;
  g_autofree char *stack = stack_text (c, rung->shims, rung->n_shims, true);
  double force[DW_N_SPEEDS];
  read_force (c, rung, force);
  dw_calc_csv_text (csv, c->setup->id);
  dw_calc_csv_text (csv, dw_axle_name (c->axle));
  dw_calc_csv_text (csv, dw_stroke_name (stroke));
  dw_calc_csv_number (csv, (double)i + 1.0, 0);
  dw_calc_csv_number (csv, rung->group + 1, 0);
  dw_calc_csv_text (csv, verdicts[rung->verdict]);
  dw_calc_csv_number (csv, c->has_fitted && rung->is_fitted, 0);
  dw_calc_csv_number (csv, rung->is_own, 0);
  dw_calc_csv_number (csv, rung->leaves, 0);
  dw_calc_csv_text (csv, stack);
  dw_calc_csv_number (csv, rung->stiffness, 0);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS; bound++)
    dw_calc_csv_number (csv, rung->single[bound], MM_POWER);
  dw_calc_csv_number (csv, rung->added, MM_POWER);
  csv_numbers (csv, force, DW_N_SPEEDS);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS; bound++)
    csv_numbers (csv, rung->force[bound], DW_N_SPEEDS);
  csv_numbers (csv, rung->habit, DW_N_SPEEDS);
  csv_numbers (csv, rung->figures.rebound_share, DW_N_SPEEDS);
  dw_calc_csv_number (csv, rung->figures.point[stroke][DW_HIGH].lift_at_holes, MM_POWER);
  dw_calc_csv_number (csv, rung->at_stop, 0);
  csv_numbers (csv, ladder->plain, DW_N_SPEEDS);
  csv_numbers (csv, ladder->soft, DW_N_SPEEDS);
  csv_numbers (csv, ladder->holes, DW_N_SPEEDS);
  dw_calc_csv_end (csv);
}

static void
print_csv (const climb *c, dw_calc_csv *csv)
{
  for (size_t i = 0; c->ladder != NULL && i < c->ladder->n && ferror (csv->file) == 0; i++)
    print_csv_row (c, i, csv);
}

/* ---- the table ---- */

/* Whether what the coupling makes of a stack is neither of its bounds. */
static bool
is_between (const climb *c)
{
  const double coupling = c->damper->valve.leaf_coupling;
  return coupling > 0.0 && coupling < 1.0;
}

static void
add_forces (dw_calc_table *table, const double *force)
{
  for (int v = 0; v < DW_N_SPEEDS; v++)
    if (force != NULL)
      dw_calc_table_add_figure (table, force[v]);
    else
      dw_calc_table_add (table, "");
}

/* An end of the ladder: the same force however leaves stick. */
static void
add_end (const climb *c, dw_calc_table *table, const char *name, const double force[DW_N_SPEEDS])
{
  dw_calc_table_add (table, "");
  dw_calc_table_add (table, name);
  dw_calc_table_add (table, "");
  dw_calc_table_add (table, "");
  add_forces (table, force);
  for (int i = 1; i < (is_between (c) ? 3 : 2); i++)
    add_forces (table, NULL);
  for (int i = 0; i < 3; i++)
    dw_calc_table_add (table, "");
}

/* A bracket round stacks that do the same: from the first to the last of a group. */
static const char *
bracket (const dw_ladder *ladder, size_t i)
{
  const int group = ladder->rungs[i].group;
  const bool goes_up = i > 0 && ladder->rungs[i - 1].group == group;
  const bool goes_down = i + 1 < ladder->n && ladder->rungs[i + 1].group == group;
  return goes_up && goes_down ? "|" : goes_up ? "\\" : goes_down ? "/" : "";
}

static void
add_note (GString *text, bool holds, const char *word)
{
  if (holds)
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", word);
}

static char *
note_text (const climb *c, const dw_ladder_rung *rung)
{
  const bool is_fitted = c->has_fitted && rung->is_fitted;
  g_autoptr (GString) text = g_string_new (NULL);
  add_note (text, is_fitted, "fitted");
  add_note (text, rung->is_own && !is_fitted, "own");
  add_note (text, rung->verdict == DW_LADDER_PLAIN, "plain");
  add_note (text, rung->verdict == DW_LADDER_HOLES, "holes");
  add_note (text, rung->at_stop && rung->verdict != DW_LADDER_HOLES, "stop");
  return g_strdup (text->str);
}

static void
add_rung (const climb *c, size_t i, dw_calc_table *table)
{
  const dw_ladder_rung *rung = &c->ladder->rungs[i];
  const dw_force_point *high = &rung->figures.point[c->damper->valve.opens_on][DW_HIGH];
  g_autofree char *stack = stack_text (c, rung->shims, rung->n_shims, false);
  g_autofree char *lift = dw_calc_figure (high->lift_at_holes / DW_MM, 2);
  g_autofree char *note = note_text (c, rung);
  double force[DW_N_SPEEDS];
  read_force (c, rung, force);
  dw_calc_table_add (table, bracket (c->ladder, i));
  dw_calc_table_add (table, stack);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS; bound++)
    dw_calc_table_add_figure (table, rung->single[bound] / DW_MM);
  if (is_between (c))
    add_forces (table, force);
  for (int bound = 0; bound < DW_N_LEAF_BOUNDS; bound++)
    add_forces (table, rung->force[bound]);
  dw_calc_table_add_figure (table, rung->figures.rebound_share[DW_MIDDLE]);
  dw_calc_table_add (table, lift);
  dw_calc_table_add (table, note);
}

static void
print_rungs (const climb *c, FILE *file)
{
  const dw_ladder *ladder = c->ladder;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (is_between (c) ? columns_between : columns);
  add_end (c, table, "no shim", ladder->holes);
  add_end (c, table, "holes alone", ladder->soft);
  for (size_t i = 0; i < ladder->n; i++)
    add_rung (c, i, table);
  add_end (c, table, "plain piston", ladder->plain);
  dw_calc_table_print (table, file, 0);
  fputc ('\n', file);
}

static const dw_ladder_rung *
own_rung (const climb *c)
{
  for (size_t i = 0; i < c->ladder->n; i++)
    if (c->ladder->rungs[i].is_own)
      return &c->ladder->rungs[i];
  return NULL;
}

/* What there is, and what is not there. */
static void
print_count (const climb *c, FILE *file)
{
  const dw_ladder *ladder = c->ladder;
  const dw_valve *valve = &c->damper->valve;
  dw_calc_wrapf (file, 2, TRUE, "%zu stack%s of up to %d %s for %s, in %d group%s that %s.%s",
                 ladder->n, ladder->n == 1 ? "" : "s", ladder->most_leaves,
                 ladder->most_leaves == 1 ? "leaf" : "leaves",
                 c->asked->dampers == 1 ? "one damper" : "each of two dampers", ladder->n_groups,
                 ladder->n_groups == 1 ? "" : "s",
                 ladder->n_groups == 1 ? "does the same" : "differ by more than 2 %",
                 ladder->is_cut ? " Taller ones are too many and left out." : "");
  if (valve->n_shims == 0 || own_rung (c) != NULL)
    return;
  g_autofree char *stack = stack_text (c, valve->shims, valve->n_shims, false);
  dw_calc_wrapf (file, 2, TRUE,
                 "This setup's own stack, %s mm, cannot be built of what is at hand.", stack);
}

/* The stack that shows best what adding thicknesses makes of it: the setup's own, else any. */
static const dw_ladder_rung *
habit_rung (const climb *c)
{
  const dw_ladder_rung *own = own_rung (c);
  if (own != NULL && own->leaves > 1)
    return own;
  for (size_t i = 0; i < c->ladder->n; i++)
    if (c->ladder->rungs[i].leaves > 1)
      return &c->ladder->rungs[i];
  return NULL;
}

/* The habit beside what the bending says. */
static void
print_habit (const climb *c, FILE *file)
{
  const dw_ladder_rung *rung = habit_rung (c);
  if (rung == NULL)
    return;
  g_autofree char *stack = stack_text (c, rung->shims, rung->n_shims, false);
  g_autofree char *added = dw_calc_size (rung->added);
  g_autofree char *loose = dw_calc_figure (rung->single[DW_LEAVES_SLIDE] / DW_MM, 3);
  g_autofree char *stuck = dw_calc_figure (rung->single[DW_LEAVES_STICK] / DW_MM, 3);
  g_autofree char *force = dw_calc_figure (rung->force[DW_LEAVES_SLIDE][DW_HIGH], 3);
  g_autofree char *habit = dw_calc_figure (rung->habit[DW_HIGH], 3);
  dw_calc_wrapf (
      file, 2, TRUE,
      "Adding thicknesses, %s mm would be %s mm: %s N at the high speed. It bends as %s mm "
      "while leaves slide, %s N, and as %s mm when they stick.",
      stack, added, habit, loose, force, stuck);
  fputc ('\n', file);
}

static void
print_table (const climb *c, FILE *file)
{
  const bool named = *c->setup->name != '\0';
  const dw_speeds *speeds = &c->project->speeds;
  dw_calc_wrapf (file, 0, TRUE, "%s, %s%s%s%s", c->setup->id, dw_axle_name (c->axle),
                 named ? " (" : "", c->setup->name, named ? ")" : "");
  if (c->ladder == NULL)
    {
      dw_calc_wrapf (file, 2, TRUE, "No ladder: %s.", c->reason.text);
      fputc ('\n', file);
      return;
    }
  dw_calc_wrapf (file, 2, TRUE, "Force in %s in N at %.6g, %.6g and %.6g m/s; oil at %.6g degC.",
                 dw_stroke_name (c->damper->valve.opens_on), speeds->low, speeds->middle,
                 speeds->high, c->project->conditions.oil_temperature);
  if (is_between (c))
    dw_calc_wrapf (file, 2, TRUE, "force: by the leaf coupling, %.6g.",
                   c->damper->valve.leaf_coupling);
  print_count (c, file);
  fputc ('\n', file);
  print_rungs (c, file);
  print_habit (c, file);
}

static void
print_notes (FILE *file)
{
  dw_calc_wrap (
      file, 0, TRUE,
      "slide, stuck: how leaves lie on each other. Leaves that slide add their stiffnesses, "
      "leaves that stick bend as one: two equal ones are 2 or 8 times one. Oil-wet loose "
      "leaves lie near the first; the habit of adding thicknesses takes the second. one: "
      "thickness of one leaf as stiff. share: rebound over compression at middle speed. "
      "lift: at high speed; stop: it is at its limit. A bracket joins stacks that do the "
      "same within 2 %. holes, plain: as the holes alone or a plain piston within 2 %, "
      "another shim changes nothing.");
}

/* ---- the command ---- */

/* Both formats, axle by axle. */
static gboolean
print_all (const dw_project *project, const char *path, const dw_setup *setup, const request *r,
           bool wants_csv, FILE *file, GError **error)
{
  climb climbs[DW_N_AXLES] = { { .ladder = NULL } };
  const climb *none = NULL;
  int n_ladders = 0;
  gboolean good = TRUE;
  for (int axle = r->axles.first; axle <= (int)r->axles.last && good; axle++)
    {
      climb *c = &climbs[axle];
      *c = (climb){ .project = project, .setup = setup, .axle = (dw_axle)axle, .asked = r };
      good = climb_compute (c, path, error);
      n_ladders += c->ladder != NULL;
      none = c->ladder == NULL ? c : none;
    }
  if (good && n_ladders == 0)
    good = dw_calc_input_refuse (path, setup, none->axle, &none->reason, error);

  dw_calc_csv csv = { 0 };
  if (good && wants_csv)
    csv = dw_calc_csv_begin (file, csv_header);
  else if (good)
    dw_calc_title (file, project->title);
  for (int axle = r->axles.first; axle <= (int)r->axles.last; axle++)
    {
      if (good && wants_csv)
        print_csv (&climbs[axle], &csv);
      else if (good)
        print_table (&climbs[axle], file);
      climb_clear (&climbs[axle]);
    }
  if (good && !wants_csv)
    print_notes (file);
  return good;
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  request r;
  if (!read_request (arguments, &r, error))
    return DW_CALC_WRONG_USAGE;
  const dw_setup *setup;
  g_autoptr (dw_project) project = dw_calc_input_open (arguments, &setup, error);
  if (project == NULL)
    return DW_CALC_BAD_INPUT;
  return print_all (project, path, setup, &r, dw_calc_arguments_wants_csv (arguments), file, error)
             ? DW_CALC_GOOD
             : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_stacks = {
  .name = "stacks",
  .summary = "What would each stack of the shims at hand do, softest first",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
