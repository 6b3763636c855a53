/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc force: force against shaft speed. */

#include "calc/dw-calc-command.h"

#include <math.h>

#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-figures.h"
#include "model/dw-units.h"
#include "study/dw-caution.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. For each damper: the force that resists the shaft, "
  "in both strokes, and what makes it: which holes carry the oil, how far the shim lifts, from "
  "which speed on a void opens behind the piston, and where the model is not sure.",
  "In the table, c is force over speed [N s/m]; rebound share is rebound over compression force "
  "at the same speed; open, covered and leak say how the oil divides [%]; lift is that of the "
  "shim's rim [um]; lost is travel lost to the void [mm], inf when the gas space is vented.",
  NULL,
};

static const char *const examples[] = {
  "force club-day.dampwright",
  "force club-day.dampwright --setup trial-1 --axle rear --speeds 0.05,0.1,0.2",
  "force club-day.dampwright --to 3 --count 300 --format csv -o forces.csv",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "Only this setup. Default: all of the project." },
  { "--axle", "front|rear", "Only this axle. Default: both." },
  { "--speeds", "V[,V...]",
    "Shaft speeds in m/s, 0 to 10, with commas between them; FROM:TO:STEP for even steps. Default: "
    "the project's low, middle and high speed." },
  { "--to", "V", "Fastest of evenly spaced shaft speeds in m/s, 0.0001 to 10; goes with --count." },
  { "--count", "N", "How many evenly spaced speeds, 1 to 100000, from V/N to V." },
  { NULL, NULL, NULL },
};

static const char csv_header[]
    = "setup,axle,stroke,speed_m_s,force_n,hydraulic_n,pressure_pa,flow_open_m3_s,"
      "flow_covered_m3_s,flow_leak_m3_s,lift_m,reynolds,void,lost_travel_m";

static const dw_calc_column columns[] = {
  { "stroke", "", true },    { "speed", "m/s", false },     { "force", "N", false },
  { "c", "N s/m", false },   { "rebound", "share", false }, { "open", "%", false },
  { "covered", "%", false }, { "leak", "%", false },        { "lift", "um", false },
  { "lost", "mm", false },   { NULL, NULL, false },
};

static const double PERCENT = 100.0;
static const double UM = 1e-6; /* [m] */

/* ---- what is asked for ---- */

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *)a;
  const double y = *(const double *)b;
  return (x > y) - (x < y);
}

static GArray *
evenly_spaced (const dw_calc_arguments *arguments, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_SPEED, 0, "m/s");
  const char *to_text = dw_calc_arguments_get (arguments, "--to");
  const char *count_text = dw_calc_arguments_get (arguments, "--count");
  double to = 0.0;
  int count = 0;
  if (to_text == NULL || count_text == NULL)
    {
      dw_calc_misused (error, "--to and --count go together");
      return NULL;
    }
  if (!dw_calc_number_parse ("--to", to_text, &range, &to, error)
      || !dw_calc_count_parse ("--count", count_text, 1, DW_CALC_MOST_NUMBERS, &count, error))
    return NULL;

  GArray *speeds = g_array_new (FALSE, FALSE, sizeof (double));
  for (int i = 1; i <= count; i++)
    {
      const double speed = to * i / count;
      g_array_append_val (speeds, speed);
    }
  return speeds;
}

/* Rising speeds that the command line names; NULL without an error when it names none. */
static GArray *
read_speeds (const dw_calc_arguments *arguments, GError **error)
{
  const char *list = dw_calc_arguments_get (arguments, "--speeds");
  const bool spaced = dw_calc_arguments_has (arguments, "--to")
                      || dw_calc_arguments_has (arguments, "--count");
  if (list != NULL && spaced)
    {
      dw_calc_misused (error, "--speeds does not go with --to and --count");
      return NULL;
    }
  if (spaced)
    return evenly_spaced (arguments, error);
  if (list == NULL)
    return NULL;

  /* at rest there is a force as well: gas and seal */
  const dw_calc_range range = { 0.0, dw_limit_get (DW_LIMIT_SPEED)->high, 0, "m/s" };
  GArray *speeds = dw_calc_numbers_parse ("--speeds", list, &range, error);
  if (speeds != NULL)
    g_array_sort (speeds, compare_doubles);
  return speeds;
}

/* ---- one damper ---- */

/* A damper of the project and its forces. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;
  dw_axle axle;
  dw_force_model model;
  const double *speeds; /* [m/s] */
  gsize n_speeds;
  dw_force_point *points[DW_N_STROKES]; /* owned */
} series;

static void
series_clear (series *s)
{
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    g_clear_pointer (&s->points[stroke], g_free);
}

static gboolean
series_compute (series *s, const char *path, GError **error)
{
  dw_error finding;
  dw_status status = dw_force_model_make (
      &s->setup->damper[s->axle], s->project->conditions.oil_temperature, &s->model, &finding);
  for (int stroke = 0; stroke < DW_N_STROKES && status == DW_OK; stroke++)
    {
      s->points[stroke] = g_new (dw_force_point, s->n_speeds);
      status = dw_force_curve (&s->model, (dw_stroke)stroke, s->speeds, s->n_speeds,
                               s->points[stroke], &finding);
    }
  return status == DW_OK || dw_calc_input_refuse (path, s->setup, s->axle, &finding, error);
}

static void
print_csv (const series *s, dw_calc_csv *csv)
{
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    for (gsize i = 0; i < s->n_speeds && ferror (csv->file) == 0; i++)
      {
        const dw_force_point *p = &s->points[stroke][i];
        const double numbers[]
            = { p->speed,        p->force,     p->hydraulic, p->pressure, p->flow_open,
                p->flow_covered, p->flow_leak, p->lift,      p->reynolds, p->is_void ? 1.0 : 0.0,
                p->lost_travel };
        dw_calc_csv_text (csv, s->setup->id);
        dw_calc_csv_text (csv, dw_axle_name (s->axle));
        dw_calc_csv_text (csv, dw_stroke_name ((dw_stroke)stroke));
        for (size_t k = 0; k < G_N_ELEMENTS (numbers); k++)
          dw_calc_csv_number (csv, numbers[k], 0);
        dw_calc_csv_end (csv);
      }
}

/* ---- the table ---- */

static void
print_oil (const series *s, FILE *file)
{
  const dw_oil *oil = &s->setup->damper[s->axle].oil;
  dw_fluid fluid;
  if (dw_oil_fluid (oil, s->project->conditions.oil_temperature, &fluid, NULL) != DW_OK)
    return;

  g_autoptr (GString) text = g_string_new ("Oil: ");
  g_autofree char *viscosity = dw_calc_figure (fluid.viscosity / DW_CST, 3);
  g_autofree char *density = dw_calc_figure (fluid.density, 3);
  g_string_append_printf (text, "%s cSt and %s kg/m3 at %.6g degC", viscosity, density,
                          fluid.temperature);
  if (oil->kind == DW_OIL_NOMINAL)
    g_string_append_printf (text, " (%.6g cSt at 25 degC)", oil->viscosity / DW_CST);
  else if (oil->kind == DW_OIL_BLEND)
    g_string_append_printf (text, " (published blend rules: %.3g to %.3g cSt)",
                            fluid.viscosity_low / DW_CST, fluid.viscosity_high / DW_CST);
  dw_calc_wrapf (file, 2, TRUE, "%s.", text->str);
}

static void
print_void (const series *s, FILE *file)
{
  const double onset = s->model.onset_speed;
  g_autofree char *speed = dw_calc_figure (onset, 3);
  if (isinf (onset))
    dw_calc_wrap (file, 2, TRUE, "Void: none in compression up to 10 m/s.");
  else if (s->model.gas.kind == DW_GAS_VENTED)
    dw_calc_wrapf (file, 2, TRUE,
                   "Void: in compression from %s m/s on the oil cannot follow the piston; the gas "
                   "space is vented, so the force grows no further.",
                   speed);
  else
    dw_calc_wrapf (file, 2, TRUE,
                   "Void: in compression from %s m/s on the oil cannot follow the piston; some "
                   "travel is lost (last column) before the force is there.",
                   speed);
}

/* Forces in the stroke that lifts the shim, at the project's speeds, for one leaf coupling. */
static char *
forces_with_coupling (const series *s, double coupling)
{
  const double speeds[DW_N_SPEEDS] = { s->project->speeds.low, s->project->speeds.middle,
                                       s->project->speeds.high };
  dw_damper damper = s->setup->damper[s->axle];
  dw_force_model model;
  dw_force_point points[DW_N_SPEEDS];

  damper.valve.leaf_coupling = coupling;
  if (dw_force_model_make (&damper, s->project->conditions.oil_temperature, &model, NULL) != DW_OK
      || dw_force_curve (&model, damper.valve.opens_on, speeds, DW_N_SPEEDS, points, NULL) != DW_OK)
    return NULL;

  g_autofree char *low = dw_calc_figure (points[DW_LOW].force, 3);
  g_autofree char *middle = dw_calc_figure (points[DW_MIDDLE].force, 3);
  g_autofree char *high = dw_calc_figure (points[DW_HIGH].force, 3);
  return g_strdup_printf ("%s, %s and %s N", low, middle, high);
}

/* What a stack of several leaves does lies between two bounds far apart: both are shown. */
static void
print_stack (const series *s, FILE *file)
{
  const dw_valve *valve = &s->setup->damper[s->axle].valve;
  const int leaves = dw_valve_leaf_count (valve);
  const dw_speeds *speeds = &s->project->speeds;
  if (leaves < 2 || s->model.flow.n_covered == 0)
    return;

  g_autofree char *loose = forces_with_coupling (s, 0.0);
  g_autofree char *stuck = forces_with_coupling (s, 1.0);
  if (loose == NULL || stuck == NULL)
    return;
  dw_calc_wrapf (
      file, 2, TRUE,
      "Stack of %d leaves: %s at %.4g, %.4g and %.4g m/s is %s if the leaves slide freely, "
      "%s if they stick together (coupling %.4g here; oil-wet loose leaves lie near the "
      "first).",
      leaves, dw_stroke_name (valve->opens_on), speeds->low, speeds->middle, speeds->high, loose,
      stuck, valve->leaf_coupling);
}

/* Two digits, without a power of ten: "140000". */
static char *
roughly (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  const double rounded = g_ascii_strtod (g_ascii_formatd (text, sizeof text, "%.1e", value), NULL);
  return g_strdup_printf ("%.0f", rounded);
}

static char *
caution_text (const dw_caution *caution)
{
  g_autofree char *rough = roughly (caution->worst);
  g_autofree char *worst = dw_calc_figure (caution->worst, 3);
  switch (caution->kind)
    {
    case DW_CAUTION_RESOLVED:
      return g_strdup_printf ("the flow in a hole (Reynolds number up to %s) is beyond the %g that "
                              "was checked against resolved flows; take the force as a guide",
                              rough, DW_HOLE_RESOLVED_RE);
    case DW_CAUTION_TURBULENT:
      return g_strdup_printf ("the flow in a hole (Reynolds number up to %s) is not laminar any "
                              "more; take the force as a guide",
                              rough);
    case DW_CAUTION_THINNING:
      return g_strdup_printf ("oil is sheared at up to %s 1/s; silicone thins above about %g 1/s, "
                              "so the real force is lower",
                              rough, DW_CAUTION_SHEAR_RATE);
    case DW_CAUTION_STRESS:
      return g_strdup_printf ("the shim is stressed %s times what its material stands; it may stay "
                              "bent",
                              worst);
    case DW_CAUTION_AT_STOP:
      return g_strdup ("the shim has reached its lift limit and opens no further");
    case DW_N_CAUTIONS:
      break;
    }
  g_return_val_if_reached (NULL);
}

static void
print_caution (const series *s, const dw_caution *caution, const char *where, FILE *file)
{
  g_autofree char *text = caution_text (caution);
  const bool is_last = caution->speed == s->speeds[s->n_speeds - 1];
  dw_calc_wrapf (file, 2, TRUE, "Note: %s %s %.4g m/s%s: %s.", where, is_last ? "at" : "from",
                 caution->speed, is_last ? "" : " on", text);
}

/* One note for both strokes where they begin alike; "not laminar" makes "not resolved" idle. */
static void
print_cautions (const series *s, FILE *file)
{
  dw_caution list[DW_N_STROKES][DW_N_CAUTIONS];
  const dw_caution *of[DW_N_CAUTIONS][DW_N_STROKES] = { { NULL } };
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    {
      const size_t n = dw_caution_find (&s->setup->damper[s->axle], (dw_stroke)stroke,
                                        s->points[stroke], s->n_speeds, list[stroke]);
      for (size_t i = 0; i < n; i++)
        of[list[stroke][i].kind][stroke] = &list[stroke][i];
      if (of[DW_CAUTION_TURBULENT][stroke] != NULL)
        of[DW_CAUTION_RESOLVED][stroke] = NULL;
    }
  for (int kind = 0; kind < DW_N_CAUTIONS; kind++)
    {
      const dw_caution *in = of[kind][DW_COMPRESSION];
      const dw_caution *out = of[kind][DW_REBOUND];
      if (in != NULL && out != NULL && in->speed == out->speed)
        {
          dw_caution both = *in;
          both.worst = MAX (in->worst, out->worst);
          print_caution (s, &both, "both strokes", file);
          continue;
        }
      if (in != NULL)
        print_caution (s, in, dw_stroke_name (DW_COMPRESSION), file);
      if (out != NULL)
        print_caution (s, out, dw_stroke_name (DW_REBOUND), file);
    }
}

static void
add_percent (dw_calc_table *table, double share)
{
  g_autofree char *text = g_strdup_printf ("%.1f", share * PERCENT);
  dw_calc_table_add (table, text);
}

static void
add_row (dw_calc_table *table, const series *s, int stroke, gsize i)
{
  const dw_force_point *p = &s->points[stroke][i];
  const bool moves = p->speed > 0.0;
  const dw_flow_shares shares = dw_flow_shares_of (p);

  dw_calc_table_add (table, i == 0 ? dw_stroke_name ((dw_stroke)stroke) : "");
  dw_calc_table_add_plain (table, p->speed);
  dw_calc_table_add_figure (table, p->force);
  if (moves)
    dw_calc_table_add_figure (table, p->force / p->speed);
  else
    dw_calc_table_add (table, "-");
  if (stroke == DW_REBOUND && moves)
    dw_calc_table_add_figure (table, p->force / s->points[DW_COMPRESSION][i].force);
  else
    dw_calc_table_add (table, stroke == DW_REBOUND ? "-" : "");
  add_percent (table, shares.open);
  add_percent (table, shares.covered);
  add_percent (table, shares.leak);
  dw_calc_table_add_figure (table, p->lift / UM);
  dw_calc_table_add_figure (table, p->lost_travel / DW_MM);
}

static void
print_table (const series *s, FILE *file)
{
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int stroke = 0; stroke < DW_N_STROKES; stroke++)
    for (gsize i = 0; i < s->n_speeds; i++)
      add_row (table, s, stroke, i);

  const bool named = *s->setup->name != '\0';
  dw_calc_wrapf (file, 0, TRUE, "%s, %s%s%s%s", s->setup->id, dw_axle_name (s->axle),
                 named ? " (" : "", s->setup->name, named ? ")" : "");
  print_oil (s, file);
  print_void (s, file);
  print_stack (s, file);
  print_cautions (s, file);
  fputc ('\n', file);
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

/* ---- the command ---- */

/* Prints one damper in either format; the title stands before the first. */
static void
print_series (const series *s, bool is_first, dw_calc_csv *csv, FILE *file)
{
  if (csv != NULL)
    {
      print_csv (s, csv);
      return;
    }
  if (is_first)
    dw_calc_title (file, s->project->title);
  print_table (s, file);
}

/* Both formats, damper by damper; stops when nothing can be written any more. */
static gboolean
print_all (const dw_project *project, const char *path, GPtrArray *setups, dw_calc_axles axles,
           const GArray *speeds, bool wants_csv, FILE *file, GError **error)
{
  dw_calc_csv csv = { 0 };
  if (wants_csv)
    csv = dw_calc_csv_begin (file, csv_header);
  else if (setups->len == 0)
    fputs ("The project has no setups.\n", file);
  for (guint i = 0; i < setups->len; i++)
    for (int axle = axles.first; axle <= (int)axles.last && ferror (file) == 0; axle++)
      {
        series s = { .project = project,
                     .setup = g_ptr_array_index (setups, i),
                     .axle = (dw_axle)axle,
                     .speeds = (const double *)(gpointer)speeds->data,
                     .n_speeds = speeds->len };
        const gboolean good = series_compute (&s, path, error);
        if (good)
          print_series (&s, i == 0 && axle == (int)axles.first, wants_csv ? &csv : NULL, file);
        series_clear (&s);
        if (!good)
          return FALSE;
      }
  return TRUE;
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  GError *failure = NULL;
  dw_calc_axles axles;
  g_autoptr (GArray) speeds = read_speeds (arguments, &failure);
  if (failure != NULL || !dw_calc_input_axles (arguments, &axles, &failure))
    {
      g_propagate_error (error, failure);
      return DW_CALC_WRONG_USAGE;
    }

  g_autoptr (dw_project) project = dw_calc_input_load (path, error);
  if (project == NULL)
    return DW_CALC_BAD_INPUT;
  g_autoptr (GPtrArray) setups = dw_calc_input_setups (project, path, arguments, error);
  if (setups == NULL)
    return DW_CALC_BAD_INPUT;
  if (speeds == NULL)
    {
      speeds = g_array_new (FALSE, FALSE, sizeof (double));
      g_array_append_val (speeds, project->speeds.low);
      g_array_append_val (speeds, project->speeds.middle);
      g_array_append_val (speeds, project->speeds.high);
    }

  const bool wants_csv = dw_calc_arguments_wants_csv (arguments);
  return print_all (project, path, setups, axles, speeds, wants_csv, file, error)
             ? DW_CALC_GOOD
             : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_force = {
  .name = "force",
  .summary = "How hard do the dampers resist at each shaft speed, in both strokes",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
