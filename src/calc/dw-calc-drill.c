/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc drill: every choice of two drill sizes for a damper, and what each does. */

#include "study/dw-drill-table.h"

#include <math.h>
#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-drill.h"
#include "model/dw-units.h"
#include "project/dw-decimal.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. The holes of a piston are divided into two sets, and "
  "each set may stay as it is or be drilled to one size that is larger than its holes and leaves "
  "enough land. For every choice of two sizes: how much each stroke changes, the oil that would "
  "hold low-speed compression, how sure that is, and how much work.",
  "First stands what is now, then a row for each choice. set 1, set 2: size in mm, - as it is. "
  "comp., reb.: change of the force in % of now at the project's low, middle and high speed. pack: "
  "of compression, how much faster than in proportion the force grows from low to high speed. "
  "share: rebound over compression force at the middle speed. oil: nominal viscosity of the "
  "silicone oil that brings low-speed compression back; then the bottle of the parts box that is "
  "it within 1 %, or two mixed: \"450 + 30 % 600\" is 450 cSt with 30 % by volume of 600. Only "
  "bottles of the box with one viscosity count.",
  "off: how far a force may be off by the drilled holes alone, l-r: how far left and right may "
  "differ; both are two standard deviations in % of the force, the largest over both strokes and "
  "three speeds. holes: drilled in one piston. passes: drills through all of them, at most 0.15 mm "
  "a pass where the drills at hand allow it (common practice, no source).",
  "csv has a row for what is now, with empty sizes, and one for each choice: forces at three "
  "speeds with their change, pack, rebound share, hold_cst with the bottles to mix and what that "
  "oil makes of the rest, single_mm, the one size for all holes of both sets that gives the same "
  "low-speed compression (empty for open and covered holes together), single_drill_mm, the nearest "
  "drill that all of them can have, scatter_percent (off), pair_percent (l-r), one standard "
  "deviation of left minus right in N, holes and passes. man dampcalc names every column.",
  DW_CALC_DRILL_CAUTION,
  NULL,
};

static const char *const examples[] = {
  "drill club-day.dampwright --setup baseline --axle front",
  "drill club-day.dampwright --axle rear --keep-compression 10 --sort oil",
  "drill club-day.dampwright --sets kinds --drills table --format csv -o choices.csv",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "The setup that is to be drilled. Default: the fitted one." },
  { "--axle", "front|rear", "Only this axle. Default: both." },
  { "--sets", "halves|kinds",
    "How the holes are divided. halves (default): every other open hole is in set 2; kinds: open "
    "holes are set 1, covered ones set 2." },
  { "--drills", "box|table|metric",
    "Drills to choose from: those of the parts box (default; all of the table when the box has "
    "none), all of the table, or its metric ones." },
  { "--tolerance", "H11|H12|MM",
    "How true the drilled holes are: a tolerance of ISO 286-1, never too small, or the error of "
    "your own drilling in +- mm, 0 to 0.5. Default: H12." },
  { "--keep-compression", "PERCENT",
    "Only choices that change compression by at most so much, 0 to 100 %, at all three speeds." },
  { "--pack", "FROM:TO", "Only choices with a pack of compression from FROM to TO, 0 to 100." },
  { "--most-holes", "N", "Only choices that drill at most so many holes of a piston, 1 to 512." },
  { "--sort", "size|compression|rebound|pack|oil|scatter|holes|passes",
    "Order of the choices, least first: by the sizes (default), the change of compression or of "
    "rebound at the middle speed, pack of compression, viscosity of the oil that holds, off, "
    "holes or passes. Equal ones are in order of size." },
  { NULL, NULL, NULL },
};

static const char csv_header[]
    = "setup,axle,set1_mm,set2_mm,compression_low_n,compression_low_change_percent,"
      "compression_middle_n,compression_middle_change_percent,compression_high_n,"
      "compression_high_change_percent,rebound_low_n,rebound_low_change_percent,rebound_middle_n,"
      "rebound_middle_change_percent,rebound_high_n,rebound_high_change_percent,pack_compression,"
      "pack_rebound,rebound_share_low,rebound_share_middle,rebound_share_high,hold_cst,"
      "hold_bottle_cst,hold_other_cst,hold_other_share,hold_compression_low_change_percent,"
      "hold_compression_middle_change_percent,hold_compression_high_change_percent,"
      "hold_rebound_low_change_percent,hold_rebound_middle_change_percent,"
      "hold_rebound_high_change_percent,single_mm,single_drill_mm,scatter_percent,pair_percent,"
      "pair_compression_low_n,pair_compression_middle_n,pair_compression_high_n,pair_rebound_low_n,"
      "pair_rebound_middle_n,pair_rebound_high_n,holes,passes";

static const dw_calc_column columns[] = {
  { "set 1", "mm", false },  { "set 2", "mm", false },   { "comp.", "low", false },
  { "comp.", "mid", false }, { "comp.", "high", false }, { "reb.", "low", false },
  { "reb.", "mid", false },  { "reb.", "high", false },  { "pack", "", false },
  { "share", "", false },    { "oil", "cSt", false },    { "bottle or mix", "cSt", true },
  { "off", "+-%", false },   { "l-r", "+-%", false },    { "holes", "", false },
  { "passes", "", false },   { NULL, NULL, false },
};

static const double PERCENT = 100.0;

/* Powers of ten from millimetres and centistokes to SI. */
#define MM_POWER  (-3)
#define CST_POWER (-6)

/* Most that an own drill is believed to err [m], and what packs may be asked for [1]. */
static const double LARGEST_ERROR = 0.5e-3;
static const double LARGEST_PACK = 100.0;

/* Where the drills come from. */
enum
{
  FROM_BOX,
  FROM_TABLE,
  FROM_METRIC
};

/* What the command line asks for. */
typedef struct
{
  dw_calc_axles axles;
  int division;            /* a dw_drill_division */
  int drills;              /* where from */
  dw_spread_limits limits; /* of the drilled holes */
  dw_drill_filter filter;
  int sort; /* a dw_drill_order */
} request;

/* What there is to drill and to fill with; the lists are owned. */
typedef struct
{
  GArray *drills;  /* of double [m] */
  GArray *bottles; /* of double [m2/s] */
  bool has_box;    /* the drills are those of the parts box */
} stock;

/* The choices for one damper. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;
  dw_axle axle;
  const request *asked;
  const stock *at_hand;
  dw_drill_box box;
  dw_drilling study;
  dw_drill_row now;
  GArray *rows; /* of dw_drill_row, owned; those that are asked for */
  guint n_choices;
} choices;

/* ---- what is asked for ---- */

static gboolean
read_tolerance (const dw_calc_arguments *arguments, dw_spread_limits *limits, GError **error)
{
  const char *text = dw_calc_arguments_get (arguments, "--tolerance");
  double own = 0.0;
  *limits = (dw_spread_limits){ .hole_grade = 12 };
  if (text == NULL || strcmp (text, "H12") == 0)
    return TRUE;
  limits->hole_grade = 0;
  if (strcmp (text, "H11") == 0)
    limits->hole_grade = 11;
  else if (dw_decimal_parse (text, MM_POWER, &own) && own >= 0.0 && own <= LARGEST_ERROR)
    limits->hole_error = own;
  else
    return dw_calc_misused (error,
                            "--tolerance needs H11, H12 or a number from 0 to %g mm, not \"%s\"",
                            LARGEST_ERROR / DW_MM, text);
  return TRUE;
}

static gboolean
read_pack (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const dw_calc_range range = { 0.0, LARGEST_PACK, 0, "" };
  const char *text = dw_calc_arguments_get (arguments, "--pack");
  if (text == NULL)
    return TRUE;
  g_auto (GStrv) words = g_strsplit (text, ":", 0);
  if (g_strv_length (words) != 2)
    return dw_calc_misused (error, "--pack needs two numbers, FROM:TO, not \"%s\"", text);
  if (!dw_calc_number_parse ("--pack", words[0], &range, &r->filter.least_pack, error)
      || !dw_calc_number_parse ("--pack", words[1], &range, &r->filter.most_pack, error))
    return FALSE;
  if (r->filter.least_pack > r->filter.most_pack)
    return dw_calc_misused (error, "--pack goes up: %s:%s has to be the other way round", words[0],
                            words[1]);
  return TRUE;
}

static gboolean
read_filters (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const dw_calc_range percent = { 0.0, PERCENT, 0, "%" };
  const char *keep = dw_calc_arguments_get (arguments, "--keep-compression");
  const char *most = dw_calc_arguments_get (arguments, "--most-holes");
  r->filter = dw_drill_filter_defaults ();
  return (keep == NULL
          || dw_calc_number_parse ("--keep-compression", keep, &percent,
                                   &r->filter.keep_compression, error))
         && read_pack (arguments, r, error)
         && (most == NULL
             || dw_calc_count_parse ("--most-holes", most, 1, DW_MAX_FACE_HOLES,
                                     &r->filter.most_holes, error));
}

static gboolean
read_request (const dw_calc_arguments *arguments, request *r, GError **error)
{
  static const char *const divisions[] = { "halves", "kinds", NULL };
  static const char *const sources[] = { "box", "table", "metric", NULL };
  /* in the order of dw_drill_order */
  static const char *const orders[DW_N_DRILL_ORDERS + 1]
      = { "size", "compression", "rebound", "pack", "oil", "scatter", "holes", "passes", NULL };
  r->division = DW_DRILL_HALVES;
  r->drills = FROM_BOX;
  r->sort = DW_DRILL_BY_SIZE;
  return dw_calc_input_axles (arguments, &r->axles, error)
         && dw_calc_arguments_choose (arguments, "--sets", divisions, &r->division, error)
         && dw_calc_arguments_choose (arguments, "--drills", sources, &r->drills, error)
         && dw_calc_arguments_choose (arguments, "--sort", orders, &r->sort, error)
         && read_tolerance (arguments, &r->limits, error) && read_filters (arguments, r, error);
}

/* ---- what is at hand ---- */

static stock
stock_of (const dw_project *project, int source)
{
  const dw_parts *parts = dw_project_get_parts (project);
  stock s = { g_array_new (FALSE, FALSE, sizeof (double)),
              g_array_new (FALSE, FALSE, sizeof (double)),
              source == FROM_BOX && parts->drills->len > 0 };
  for (guint i = 0; s.has_box && i < parts->drills->len; i++)
    g_array_append_val (s.drills, g_array_index (parts->drills, dw_drill, i).diameter);

  size_t n = 0;
  const dw_drill_size *table = dw_drill_table (&n);
  for (size_t i = 0; !s.has_box && i < n; i++)
    if (source != FROM_METRIC || table[i].series == DW_DRILL_METRIC)
      g_array_append_val (s.drills, table[i].diameter);

  for (guint i = 0; i < parts->oils->len; i++)
    {
      const dw_oil *oil = &g_array_index (parts->oils, dw_bottle, i).oil;
      if (oil->kind == DW_OIL_NOMINAL)
        g_array_append_val (s.bottles, oil->viscosity);
    }
  return s;
}

static void
stock_clear (stock *s)
{
  g_clear_pointer (&s->drills, g_array_unref);
  g_clear_pointer (&s->bottles, g_array_unref);
}

/* ---- the choices ---- */

static int
compare_rows (gconstpointer a, gconstpointer b, gpointer data)
{
  return dw_drill_row_compare (a, b, *(const dw_drill_order *)data);
}

/* One choice; kept when it is asked for. */
static dw_status
add_row (choices *c, const double size[DW_DRILL_SETS], dw_error *finding)
{
  dw_drill_row row;
  const dw_status status = dw_drill_row_make (&c->study, &c->box, size, &row, finding);
  c->n_choices++;
  if (status == DW_OK && dw_drill_filter_passes (&c->asked->filter, &row))
    g_array_append_val (c->rows, row);
  return status;
}

/* All pairs of sizes but the one that drills nothing. */
static dw_status
make_rows (choices *c, dw_error *finding)
{
  const dw_drill_sets *sets = &c->study.sets;
  const dw_drill_box *box = &c->box;
  g_autofree double *first = g_new (double, (gsize)box->n_drills + 1);
  g_autofree double *second = g_new (double, (gsize)box->n_drills + 1);
  const int n_first = dw_drill_sizes (sets, 0, box->drills, box->n_drills, first);
  const int n_second = dw_drill_sizes (sets, 1, box->drills, box->n_drills, second);
  dw_status status = DW_OK;
  for (int i = 0; i < n_first; i++)
    for (int k = 0; k < n_second && status == DW_OK; k++)
      {
        const double size[DW_DRILL_SETS] = { first[i], second[k] };
        if (i + k > 0 && dw_drill_is_choice (sets, size))
          status = add_row (c, size, finding);
      }
  return status;
}

static void
choices_clear (choices *c)
{
  g_clear_pointer (&c->rows, g_array_unref);
}

/* @param c  with project, setup, axle, request and stock */
static gboolean
choices_compute (choices *c, const char *path, GError **error)
{
  static const double as_it_is[DW_DRILL_SETS] = { 0.0, 0.0 };
  const dw_speeds *s = &c->project->speeds;
  const double speeds[DW_N_SPEEDS] = { s->low, s->middle, s->high };
  dw_drill_sets sets;
  dw_error finding;
  dw_drill_order order = (dw_drill_order)c->asked->sort;

  c->box = (dw_drill_box){ .drills = (const double *)(gpointer)c->at_hand->drills->data,
                           .n_drills = (int)c->at_hand->drills->len,
                           .bottles = (const double *)(gpointer)c->at_hand->bottles->data,
                           .n_bottles = (int)c->at_hand->bottles->len,
                           .limits = c->asked->limits };
  c->rows = g_array_new (FALSE, FALSE, sizeof (dw_drill_row));
  dw_drill_sets_init (&sets, &c->setup->damper[c->axle], (dw_drill_division)c->asked->division);
  if (dw_drilling_init (&c->study, &sets, c->project->conditions.oil_temperature, speeds, &finding)
          != DW_OK
      || dw_drill_row_make (&c->study, &c->box, as_it_is, &c->now, &finding) != DW_OK
      || make_rows (c, &finding) != DW_OK)
    return dw_calc_input_refuse (path, c->setup, c->axle, &finding, error);
  g_array_sort_with_data (c->rows, compare_rows, &order);
  return TRUE;
}

/* ---- csv ---- */

/* An empty field for what is not there. */
static void
csv_number_if (dw_calc_csv *csv, bool is_there, double value, int power)
{
  dw_calc_csv_number (csv, is_there ? value : (double)NAN, power);
}

static void
print_csv_forces (const dw_drill_result *result, dw_calc_csv *csv)
{
  const dw_figures *figures = &result->figures;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        dw_calc_csv_number (csv, figures->point[s][v].force, 0);
        dw_calc_csv_number (csv, result->change[s][v], 0);
      }
  for (int s = 0; s < DW_N_STROKES; s++)
    dw_calc_csv_number (csv, figures->pack[s], 0);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    dw_calc_csv_number (csv, figures->rebound_share[v], 0);
}

static void
print_csv_hold (const dw_drill_row *row, const dw_drill_box *box, dw_calc_csv *csv)
{
  const dw_drill_mix *mix = &row->mix;
  const bool has_bottle = mix->bottle >= 0;
  const bool is_mixed = mix->other >= 0;
  csv_number_if (csv, row->has_hold, row->hold.viscosity, CST_POWER);
  csv_number_if (csv, has_bottle, has_bottle ? box->bottles[mix->bottle] : 0.0, CST_POWER);
  csv_number_if (csv, is_mixed, is_mixed ? box->bottles[mix->other] : 0.0, CST_POWER);
  csv_number_if (csv, is_mixed, mix->share, 0);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      csv_number_if (csv, row->has_hold, row->hold.change[s][v], 0);
}

static void
print_csv_row (const choices *c, const dw_drill_row *row, dw_calc_csv *csv)
{
  dw_calc_csv_text (csv, c->setup->id);
  dw_calc_csv_text (csv, dw_axle_name (c->axle));
  for (int s = 0; s < DW_DRILL_SETS; s++)
    csv_number_if (csv, row->result.size[s] > 0.0, row->result.size[s], MM_POWER);
  print_csv_forces (&row->result, csv);
  print_csv_hold (row, &c->box, csv);
  csv_number_if (csv, row->has_single, row->single, MM_POWER);
  csv_number_if (csv, row->has_single && row->single_drill > 0.0, row->single_drill, MM_POWER);
  dw_calc_csv_number (csv, dw_drill_row_scatter (row) * PERCENT, 0);
  dw_calc_csv_number (csv, dw_drill_row_pair (row) * PERCENT, 0);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      dw_calc_csv_number (csv, row->spread[s][v].pair_deviation, 0);
  dw_calc_csv_number (csv, row->n_holes, 0);
  dw_calc_csv_number (csv, row->n_passes, 0);
  dw_calc_csv_end (csv);
}

static void
print_csv (const choices *c, dw_calc_csv *csv)
{
  print_csv_row (c, &c->now, csv);
  for (guint i = 0; i < c->rows->len && ferror (csv->file) == 0; i++)
    print_csv_row (c, &g_array_index (c->rows, dw_drill_row, i), csv);
}

/* ---- the table ---- */

/* "6 holes of 1.4 mm, 4 covered holes of 1.1 mm" */
static void
append_holes (GString *text, int count, const dw_holes *holes)
{
  if (count == 0)
    return;
  if (text->len > 0)
    g_string_append (text, ", ");
  g_string_append_printf (text, "%d %shole%s of %.6g mm", count, holes->covered ? "covered " : "",
                          count == 1 ? "" : "s", holes->diameter / DW_MM);
}

static char *
set_text (const dw_drill_sets *sets, int set)
{
  const dw_piston *piston = &sets->damper.piston;
  g_autoptr (GString) text = g_string_new (NULL);
  for (int g = 0; g < piston->n_holes; g++)
    append_holes (text, sets->count[set][g], &piston->holes[g]);
  return g_strdup (text->len > 0 ? text->str : "no holes");
}

static char *
stroke_text (const choices *c, dw_stroke stroke)
{
  const dw_figures *now = &c->now.result.figures;
  g_autofree char *low = dw_calc_figure (now->point[stroke][DW_LOW].force, 3);
  g_autofree char *middle = dw_calc_figure (now->point[stroke][DW_MIDDLE].force, 3);
  g_autofree char *high = dw_calc_figure (now->point[stroke][DW_HIGH].force, 3);
  g_autofree char *pack = dw_calc_figure (now->pack[stroke], 3);
  return g_strdup_printf ("%s %s, %s and %s N, pack %s", dw_stroke_name (stroke), low, middle, high,
                          pack);
}

/* "oil of 400 cSt at 28 degC"; one that is no plain silicone is as the silicone of that viscosity. */
static char *
oil_text (const choices *c)
{
  if (!c->now.has_hold)
    return g_strdup_printf ("oil at %.6g degC", c->study.temperature);
  g_autofree char *viscosity = dw_calc_figure (c->now.hold.viscosity / DW_CST, 3);
  return g_strdup_printf ("oil %s %s cSt at %.6g degC",
                          c->study.sets.damper.oil.kind == DW_OIL_NOMINAL ? "of"
                                                                          : "like silicone of",
                          viscosity, c->study.temperature);
}

static void
print_now (const choices *c, FILE *file)
{
  const dw_piston *piston = &c->study.sets.damper.piston;
  const dw_speeds *speeds = &c->project->speeds;
  g_autoptr (GString) holes = g_string_new (NULL);
  for (int g = 0; g < piston->n_holes; g++)
    append_holes (holes, piston->holes[g].count, &piston->holes[g]);
  g_autofree char *oil = oil_text (c);
  g_autofree char *compression = stroke_text (c, DW_COMPRESSION);
  g_autofree char *rebound = stroke_text (c, DW_REBOUND);
  g_autofree char *share = dw_calc_figure (c->now.result.figures.rebound_share[DW_MIDDLE], 3);
  dw_calc_wrapf (file, 2, TRUE,
                 "Now: %s; %s. At %.6g, %.6g and %.6g m/s: %s; %s; rebound share %s.",
                 holes->len > 0 ? holes->str : "no holes", oil, speeds->low, speeds->middle,
                 speeds->high, compression, rebound, share);
}

static void
print_sets (const choices *c, FILE *file)
{
  g_autofree char *first = set_text (&c->study.sets, 0);
  g_autofree char *second = set_text (&c->study.sets, 1);
  dw_calc_wrapf (file, 2, TRUE, "Set 1: %s. Set 2: %s.%s", first, second,
                 c->study.sets.is_alike ? " They are alike: the smaller size stands in set 1."
                                        : "");
}

static void
print_count (const choices *c, FILE *file)
{
  const char *source = c->at_hand->has_box               ? "the drills of the parts box"
                       : c->asked->drills == FROM_METRIC ? "the metric drills of the table"
                       : c->asked->drills == FROM_TABLE
                           ? "the drills of the table"
                           : "the drills of the table, as the parts box has none";
  if (c->n_choices == 0)
    dw_calc_wrapf (file, 2, TRUE,
                   "No choice with %s: none is larger than the holes and leaves enough land.",
                   source);
  else if (c->rows->len == c->n_choices)
    dw_calc_wrapf (file, 2, TRUE, "%u choice%s with %s.", c->n_choices,
                   c->n_choices == 1 ? "" : "s", source);
  else
    dw_calc_wrapf (file, 2, TRUE, "%u of %u choices with %s are as asked.", c->rows->len,
                   c->n_choices, source);
}

/* "450", "450 + 30 % 600" */
static char *
mix_text (const dw_drill_mix *mix, const dw_drill_box *box)
{
  if (mix->bottle < 0)
    return g_strdup ("-");
  if (mix->other < 0)
    return dw_calc_plain (box->bottles[mix->bottle] / DW_CST);
  return g_strdup_printf ("%.6g + %.0f %% %.6g", box->bottles[mix->bottle] / DW_CST,
                          mix->share * PERCENT, box->bottles[mix->other] / DW_CST);
}

static void
add_percent (dw_calc_table *table, double share)
{
  g_autofree char *text = g_strdup_printf ("%.1f", share * PERCENT);
  dw_calc_table_add (table, text);
}

static void
add_table_row (dw_calc_table *table, const choices *c, const dw_drill_row *row)
{
  const dw_figures *figures = &row->result.figures;
  g_autofree char *mix = mix_text (&row->mix, &c->box);
  for (int s = 0; s < DW_DRILL_SETS; s++)
    if (row->result.size[s] > 0.0)
      dw_calc_table_add_plain (table, row->result.size[s] / DW_MM);
    else
      dw_calc_table_add (table, "-");
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        g_autofree char *change = dw_calc_change (row->result.change[s][v]);
        dw_calc_table_add (table, change);
      }
  dw_calc_table_add_figure (table, figures->pack[DW_COMPRESSION]);
  dw_calc_table_add_figure (table, figures->rebound_share[DW_MIDDLE]);
  dw_calc_table_add_figure (table, row->has_hold ? row->hold.viscosity / DW_CST : (double)NAN);
  dw_calc_table_add (table, mix);
  add_percent (table, dw_drill_row_scatter (row));
  add_percent (table, dw_drill_row_pair (row));
  dw_calc_table_add_plain (table, row->n_holes);
  dw_calc_table_add_plain (table, row->n_passes);
}

static void
print_table (const choices *c, FILE *file)
{
  const bool named = *c->setup->name != '\0';
  dw_calc_wrapf (file, 0, TRUE, "%s, %s%s%s%s", c->setup->id, dw_axle_name (c->axle),
                 named ? " (" : "", c->setup->name, named ? ")" : "");
  print_now (c, file);
  print_sets (c, file);
  print_count (c, file);
  fputc ('\n', file);
  if (c->rows->len == 0)
    return;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (guint i = 0; i < c->rows->len; i++)
    add_table_row (table, c, &g_array_index (c->rows, dw_drill_row, i));
  dw_calc_table_print (table, file, 0);
  fputc ('\n', file);
}

static char *
tolerance_text (const dw_spread_limits *limits)
{
  return limits->hole_grade > 0
             ? g_strdup_printf ("drilled to H%d", limits->hole_grade)
             : g_strdup_printf ("drilled to +-%.6g mm", limits->hole_error / DW_MM);
}

/* What the short heads mean, and what whoever drills has to know. */
static void
print_notes (const request *r, FILE *file)
{
  g_autofree char *tolerance = tolerance_text (&r->limits);
  dw_calc_wrapf (file, 0, TRUE,
                 "comp., reb.: change of the force in %% of now. pack: of compression. share: "
                 "rebound over compression at middle speed. oil: holds low-speed compression. off, "
                 "l-r: how far a force, and left from right, may be off by the holes alone, %s. "
                 "passes: drills through all holes of one piston.",
                 tolerance);
  dw_calc_wrap (file, 0, TRUE, DW_CALC_DRILL_CAUTION);
}

/* ---- the command ---- */

/* Both formats, axle by axle. */
static gboolean
print_all (const dw_project *project, const char *path, const dw_setup *setup, const request *r,
           const stock *at_hand, bool wants_csv, FILE *file, GError **error)
{
  dw_calc_csv csv = { 0 };
  gboolean good = TRUE;
  if (wants_csv)
    csv = dw_calc_csv_begin (file, csv_header);
  else
    dw_calc_title (file, project->title);
  for (int axle = r->axles.first; axle <= (int)r->axles.last && good; axle++)
    {
      choices c = {
        .project = project, .setup = setup, .axle = (dw_axle)axle, .asked = r, .at_hand = at_hand
      };
      good = choices_compute (&c, path, error);
      if (good && wants_csv)
        print_csv (&c, &csv);
      else if (good)
        print_table (&c, file);
      choices_clear (&c);
    }
  if (good && !wants_csv)
    print_notes (r, file);
  return good;
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  const bool wants_csv = dw_calc_arguments_wants_csv (arguments);
  request r;
  if (!read_request (arguments, &r, error))
    return DW_CALC_WRONG_USAGE;

  const dw_setup *setup;
  g_autoptr (dw_project) project = dw_calc_input_open (arguments, &setup, error);
  if (project == NULL)
    return DW_CALC_BAD_INPUT;

  stock at_hand = stock_of (project, r.drills);
  const gboolean good = print_all (project, path, setup, &r, &at_hand, wants_csv, file, error);
  stock_clear (&at_hand);
  return good ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_drill = {
  .name = "drill",
  .summary = "What would each choice of drills do, and which oil would hold",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
