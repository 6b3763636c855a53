/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc oils: what warmth does to the dampers of a setup, and which oil makes up for it. */

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
#include "study/dw-warmth.h"
#include "study/dw-work-oil.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. For each damper of a setup: its forces with its "
  "oil now, at the project's oil temperature, and at another one, with the change per 10 degC, "
  "which is the mean over the way; what every bottle of the parts box would do there; the "
  "silicone oil with which low-speed compression is again what it is now, as a bottle or as two "
  "mixed by the log rule, in ml for one damper and for both; and how the forces drift from now "
  "on while the oil warms up.",
  "Changes are in percent of the damper as it is now. >: of all bottles, its low-speed "
  "compression is nearest to now. other kind: together with the oil in the damper it would be a "
  "mix of which nothing is known, as of silicone with a measured oil, or of one that thins with "
  "one that does not: empty and wash the damper first. Only plain silicone bottles are mixed.",
  "csv has one row an oil: row tells which one, now (at the project's temperature), then (the "
  "same oil at T), warm (the same oil after the warm-up), bottle, hold (the exact oil) and mix "
  "(what is filled in for it). man dampcalc names every column.",
  NULL,
};

static const char *const examples[] = {
  "oils club-day.dampwright",
  "oils club-day.dampwright --axle rear --at-c 15 --warm-up 12",
  "oils club-day.dampwright --setup trial-1 --at-c 35 --format csv -o oils.csv",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID", "The setup whose dampers are asked. Default: the fitted one." },
  { "--axle", "front|rear", "Only this axle. Default: both." },
  { "--at-c", "T",
    "The other temperature of the oil in degC, -25 to 150. Default: 10 above the project's." },
  { "--warm-up", "K", "By how much the oil warms while running, 0 to 100 degC. Default: 10." },
  { NULL, NULL, NULL },
};

static const char csv_header[]
    = "setup,axle,row,bottle,kind,nominal_cst,temperature_c,viscosity_cst,viscosity_low_cst,"
      "viscosity_high_cst,density_kg_m3,"
      "compression_low_n,compression_low_change_percent,compression_middle_n,"
      "compression_middle_change_percent,compression_high_n,compression_high_change_percent,"
      "rebound_low_n,rebound_low_change_percent,rebound_middle_n,rebound_middle_change_percent,"
      "rebound_high_n,rebound_high_change_percent,pack_compression,pack_rebound,rebound_share_low,"
      "rebound_share_middle,rebound_share_high,nearest,other_kind,first_cst,first_ml,second_cst,"
      "second_ml";

#define CST_POWER (-6)
#define ML_POWER  (-6)

/* [K] */
static const double USUAL_WARMING = 10.0;
static const double MOST_WARMING = 100.0;

/* Speeds of the drift: the project's three, and two between. */
enum
{
  N_DRIFT = 5
};

/* What the command line asks for. */
typedef struct
{
  dw_calc_axles axles;
  bool has_then;
  double then;    /* [degC] only if has_then */
  double warm_up; /* [K] */
} request;

/* One damper, asked. */
typedef struct
{
  const dw_project *project;
  const dw_setup *setup;
  dw_axle axle;
  const request *asked;
  dw_warmth warmth;
  dw_comparison change;      /* with the oil that is in it */
  dw_comparison warm;        /* the same over the warm-up */
  GArray *oils;              /* of dw_oil; owned */
  dw_warmth_bottle *bottles; /* owned */
  int nearest;
  dw_status hold_status[DW_N_STROKES]; /* not DW_OK: no oil holds that stroke */
  dw_warmth_held held[DW_N_STROKES];
  dw_warmth_blend mix;    /* for compression; only if it is held */
  dw_warmth_bottle mixed; /* the damper with it; only if mix has a bottle */
  dw_warmth_band drift[DW_N_STROKES][N_DRIFT];
} heat;

/* ---- what is asked for ---- */

static gboolean
read_request (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_OIL_TEMPERATURE, 0, "degC");
  const dw_calc_range warming = { 0.0, MOST_WARMING, 0, "degC" };
  const char *then = dw_calc_arguments_get (arguments, "--at-c");
  const char *warm_up = dw_calc_arguments_get (arguments, "--warm-up");
  r->has_then = then != NULL;
  r->warm_up = USUAL_WARMING;
  return dw_calc_input_axles (arguments, &r->axles, error)
         && (then == NULL || dw_calc_number_parse ("--at-c", then, &range, &r->then, error))
         && (warm_up == NULL
             || dw_calc_number_parse ("--warm-up", warm_up, &warming, &r->warm_up, error));
}

/* ---- the answers ---- */

static void
take_oils (heat *h)
{
  const GArray *bottles = dw_project_get_parts (h->project)->oils;
  h->oils = g_array_new (FALSE, FALSE, sizeof (dw_oil));
  for (guint i = 0; i < bottles->len; i++)
    g_array_append_val (h->oils, g_array_index (bottles, dw_bottle, i).oil);
  h->bottles = g_new0 (dw_warmth_bottle, MAX (bottles->len, 1));
}

/* That no oil holds is an answer; anything else is a reason to refuse. */
static dw_status
compute_hold (heat *h, dw_error *finding)
{
  dw_status status = DW_OK;
  for (int s = 0; s < DW_N_STROKES && status == DW_OK; s++)
    {
      h->hold_status[s] = dw_warmth_hold (&h->warmth, (dw_stroke)s, &h->held[s], finding);
      if (h->hold_status[s] != DW_ERR_NO_CONVERGENCE)
        status = h->hold_status[s];
    }
  h->mix.bottle = -1;
  if (status != DW_OK || h->hold_status[DW_COMPRESSION] != DW_OK)
    return status;
  const dw_oil *oils = (const dw_oil *)(gpointer)h->oils->data;
  int nearest;
  status = dw_warmth_mix (&h->warmth, h->held[DW_COMPRESSION].viscosity, oils, (int)h->oils->len,
                          &h->mix, finding);
  if (status == DW_OK && h->mix.bottle >= 0)
    status = dw_warmth_bottles (&h->warmth, &h->mix.oil, 1, &h->mixed, &nearest, finding);
  return status;
}

static dw_status
compute_drift (heat *h, dw_error *finding)
{
  const dw_warmth *w = &h->warmth;
  dw_warmth warm = *w;
  const double speeds[N_DRIFT]
      = { w->speeds[DW_LOW], sqrt (w->speeds[DW_LOW] * w->speeds[DW_MIDDLE]), w->speeds[DW_MIDDLE],
          sqrt (w->speeds[DW_MIDDLE] * w->speeds[DW_HIGH]), w->speeds[DW_HIGH] };
  warm.then = w->now + h->asked->warm_up;
  dw_status status = dw_warmth_compare (&warm, &h->warm, finding);
  for (int s = 0; s < DW_N_STROKES && status == DW_OK; s++)
    status = dw_warmth_drift (w->damper, w->now, h->asked->warm_up, (dw_stroke)s, speeds, N_DRIFT,
                              h->drift[s], finding);
  return status;
}

/* @param h  with project, setup, axle and request */
static gboolean
heat_compute (heat *h, const char *path, GError **error)
{
  const dw_speeds *s = &h->project->speeds;
  const double now = h->project->conditions.oil_temperature;
  dw_error finding;
  h->warmth = (dw_warmth){ .damper = &h->setup->damper[h->axle],
                           .now = now,
                           .then = h->asked->has_then ? h->asked->then : now + USUAL_WARMING,
                           .speeds = { s->low, s->middle, s->high } };
  take_oils (h);
  dw_status status = dw_warmth_compare (&h->warmth, &h->change, &finding);
  if (status == DW_OK)
    status = dw_warmth_bottles (&h->warmth, (const dw_oil *)(gpointer)h->oils->data,
                                (int)h->oils->len, h->bottles, &h->nearest, &finding);
  if (status == DW_OK)
    status = compute_hold (h, &finding);
  if (status == DW_OK)
    status = compute_drift (h, &finding);
  return status == DW_OK || dw_calc_input_refuse (path, h->setup, h->axle, &finding, error);
}

static void
heat_clear (heat *h)
{
  g_clear_pointer (&h->oils, g_array_unref);
  g_clear_pointer (&h->bottles, g_free);
}

/* ---- csv ---- */

/* What a row says of an oil. */
typedef struct
{
  const char *name;
  int bottle; /* from 1 on; 0 = none */
  const dw_oil *oil;
  double temperature;          /* [degC] */
  const dw_figures *figures;   /* NULL = the model refuses it */
  const dw_comparison *change; /* NULL = there is none */
  bool is_nearest;
  bool is_other_kind;
} oil_row;

static const char *
kind_name (const dw_oil *oil)
{
  static const char *const names[]
      = { [DW_OIL_NOMINAL] = "silicone", [DW_OIL_MEASURED] = "measured", [DW_OIL_BLEND] = "blend" };
  return names[oil->kind];
}

static void
print_csv_fluid (const oil_row *row, dw_calc_csv *csv)
{
  dw_fluid f = { 0 };
  const bool has_fluid = dw_oil_fluid (row->oil, row->temperature, &f, NULL) == DW_OK;
  const double values[] = { f.viscosity, f.viscosity_low, f.viscosity_high };
  dw_calc_csv_text (csv, kind_name (row->oil));
  dw_calc_csv_number (csv, row->oil->kind == DW_OIL_NOMINAL ? row->oil->viscosity : (double)NAN,
                      CST_POWER);
  dw_calc_csv_number (csv, row->temperature, 0);
  for (size_t i = 0; i < G_N_ELEMENTS (values); i++)
    dw_calc_csv_number (csv, has_fluid ? values[i] : (double)NAN, CST_POWER);
  dw_calc_csv_number (csv, has_fluid ? f.density : (double)NAN, 0);
}

static void
print_csv_figures (const oil_row *row, dw_calc_csv *csv)
{
  const dw_figures *f = row->figures;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      {
        dw_calc_csv_number (csv, f != NULL ? f->point[s][v].force : (double)NAN, 0);
        dw_calc_csv_number (csv, row->change != NULL ? row->change->force[s][v] : (double)NAN, 0);
      }
  for (int s = 0; s < DW_N_STROKES; s++)
    dw_calc_csv_number (csv, f != NULL ? f->pack[s] : (double)NAN, 0);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    dw_calc_csv_number (csv, f != NULL ? f->rebound_share[v] : (double)NAN, 0);
}

static void
print_csv_row (const heat *h, const oil_row *row, dw_calc_csv *csv)
{
  bool is_measured;
  dw_work_oil parts[DW_MAX_OIL_PARTS];
  const int n = dw_work_oil_parts (row->oil, dw_work_filling (h->warmth.damper, &is_measured),
                                   parts);
  dw_calc_csv_text (csv, h->setup->id);
  dw_calc_csv_text (csv, dw_axle_name (h->axle));
  dw_calc_csv_text (csv, row->name);
  dw_calc_csv_number (csv, row->bottle > 0 ? row->bottle : (double)NAN, 0);
  print_csv_fluid (row, csv);
  print_csv_figures (row, csv);
  dw_calc_csv_number (csv, row->is_nearest, 0);
  dw_calc_csv_number (csv, row->is_other_kind, 0);
  for (int i = 0; i < DW_MAX_OIL_PARTS; i++)
    {
      dw_calc_csv_number (csv, i < n ? parts[i].viscosity : (double)NAN, CST_POWER);
      dw_calc_csv_number (csv, i < n ? parts[i].one : (double)NAN, ML_POWER);
    }
  dw_calc_csv_end (csv);
}

static oil_row
bottle_row (const heat *h, int i)
{
  const dw_warmth_bottle *b = &h->bottles[i];
  const bool good = b->status == DW_OK;
  return (oil_row){ "bottle",
                    i + 1,
                    &g_array_index (h->oils, dw_oil, i),
                    h->warmth.then,
                    good ? &b->change.b : NULL,
                    good ? &b->change : NULL,
                    i == h->nearest,
                    b->is_other_kind };
}

static void
print_csv (const heat *h, dw_calc_csv *csv)
{
  const dw_warmth *w = &h->warmth;
  const dw_oil *oil = &w->damper->oil;
  const oil_row own[] = {
    { "now", 0, oil, w->now, &h->change.a, NULL, false, false },
    { "then", 0, oil, w->then, &h->change.b, &h->change, false, false },
    { "warm", 0, oil, w->now + h->asked->warm_up, &h->warm.b, &h->warm, false, false },
  };
  for (size_t i = 0; i < G_N_ELEMENTS (own); i++)
    print_csv_row (h, &own[i], csv);
  for (guint i = 0; i < h->oils->len && ferror (csv->file) == 0; i++)
    {
      const oil_row row = bottle_row (h, (int)i);
      print_csv_row (h, &row, csv);
    }
  if (h->hold_status[DW_COMPRESSION] != DW_OK)
    return;
  const dw_warmth_held *held = &h->held[DW_COMPRESSION];
  const dw_oil exact = { .kind = DW_OIL_NOMINAL, .viscosity = held->viscosity };
  const oil_row hold
      = { "hold", 0, &exact, w->then, &held->change.b, &held->change, false, held->is_other_kind };
  print_csv_row (h, &hold, csv);
  if (h->mix.bottle < 0 || h->mixed.status != DW_OK)
    return;
  const oil_row mix = { "mix",
                        0,
                        &h->mix.oil,
                        w->then,
                        &h->mixed.change.b,
                        &h->mixed.change,
                        false,
                        h->mixed.is_other_kind };
  print_csv_row (h, &mix, csv);
}

/* ---- the table ---- */

/* "400 cSt", "350 + 60 % 500 cSt", "measured 410/290 cSt"; with "thins" when it does.
 * @param unit  " cSt", or "" where the head of a column has it */
static char *
oil_text (const dw_oil *oil, const char *unit)
{
  const char *thins = oil->has_thinning ? ", thins" : "";
  if (oil->kind == DW_OIL_BLEND)
    return g_strdup_printf ("%.6g + %.0f %% %.6g%s%s", oil->parts[0].viscosity / DW_CST,
                            oil->parts[1].share * 100.0, oil->parts[1].viscosity / DW_CST, unit,
                            thins);
  if (oil->kind == DW_OIL_MEASURED)
    return g_strdup_printf ("measured %.6g/%.6g%s%s", oil->point_viscosity[0] / DW_CST,
                            oil->point_viscosity[1] / DW_CST, unit, thins);
  return g_strdup_printf ("%.6g%s%s", oil->viscosity / DW_CST, unit, thins);
}

static void
add_change (dw_calc_table *table, double percent)
{
  g_autofree char *text = dw_calc_change (percent);
  dw_calc_table_add (table, text);
}

static void
add_figure_row (const heat *h, dw_calc_table *table, const char *name, const char *stroke,
                double speed, double now, double then, double change)
{
  dw_calc_table_add (table, name);
  dw_calc_table_add (table, stroke);
  if (isnan (speed))
    dw_calc_table_add (table, "");
  else
    dw_calc_table_add_plain (table, speed);
  dw_calc_table_add_figure (table, now);
  dw_calc_table_add_figure (table, then);
  add_change (table, change);
  add_change (table, dw_warmth_per_ten (&h->warmth, change));
}

static void
print_figures (const heat *h, FILE *file)
{
  static const dw_calc_column columns[] = {
    { "figure", "", true },      { "stroke", "", true }, { "speed", "m/s", false },
    { "now", "", false },        { "then", "", false },  { "change", "%", false },
    { "per", "10 degC", false }, { NULL, NULL, false },
  };
  const dw_comparison *c = &h->change;
  const double *speeds = h->warmth.speeds;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      add_figure_row (h, table, "force [N]", dw_stroke_name ((dw_stroke)s), speeds[v],
                      c->a.point[s][v].force, c->b.point[s][v].force, c->force[s][v]);
  for (int v = 0; v < DW_N_SPEEDS; v++)
    add_figure_row (h, table, "rebound share", "", speeds[v], c->a.rebound_share[v],
                    c->b.rebound_share[v], c->rebound_share[v]);
  for (int s = 0; s < DW_N_STROKES; s++)
    add_figure_row (h, table, "pack", dw_stroke_name ((dw_stroke)s), (double)NAN, c->a.pack[s],
                    c->b.pack[s], c->pack[s]);
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

static void
add_bottle (const heat *h, int i, dw_calc_table *table)
{
  const dw_warmth_bottle *b = &h->bottles[i];
  const bool good = b->status == DW_OK;
  g_autofree char *oil = oil_text (&g_array_index (h->oils, dw_oil, i), "");
  dw_calc_table_add (table, i == h->nearest ? ">" : "");
  dw_calc_table_add (table, oil);
  dw_calc_table_add_figure (table, good ? b->fluid.viscosity / DW_CST : (double)NAN);
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int v = 0; v < DW_N_SPEEDS; v++)
      add_change (table, good ? b->change.force[s][v] : (double)NAN);
  dw_calc_table_add_figure (table, good ? b->change.b.pack[DW_COMPRESSION] : (double)NAN);
  dw_calc_table_add_figure (table, good ? b->change.b.rebound_share[DW_MIDDLE] : (double)NAN);
  dw_calc_table_add (table, !good ? "not known there" : b->is_other_kind ? "other kind" : "");
}

static void
print_bottles (const heat *h, FILE *file)
{
  static const dw_calc_column columns[] = {
    { " ", "", true },         { "bottle", "cSt", true }, { "then", "cSt", false },
    { "comp.", "low", false }, { "comp.", "mid", false }, { "comp.", "high", false },
    { "reb.", "low", false },  { "reb.", "mid", false },  { "reb.", "high", false },
    { "pack", "", false },     { "share", "", false },    { " ", "", true },
    { NULL, NULL, false },
  };
  if (h->oils->len == 0)
    {
      dw_calc_wrap (file, 2, TRUE, "The parts box has no oil.");
      return;
    }
  dw_calc_wrapf (file, 2, TRUE, "The bottles at %.6g degC, forces in %% of now:", h->warmth.then);
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (guint i = 0; i < h->oils->len; i++)
    add_bottle (h, (int)i, table);
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

/* "4.6 ml of 450 cSt and 1.7 ml of 500 cSt" */
static char *
pour_text (const dw_work_oil *parts, int n, bool both)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (int i = 0; i < n; i++)
    g_string_append_printf (text, "%s%.1f ml of %.6g cSt", i > 0 ? " and " : "",
                            (both ? parts[i].both : parts[i].one) / DW_ML,
                            parts[i].viscosity / DW_CST);
  return g_strdup (text->str);
}

static void
print_mix (const heat *h, FILE *file)
{
  const dw_fluid *f = &h->mix.fluid;
  bool is_measured;
  dw_work_oil parts[DW_MAX_OIL_PARTS];
  const double filling = dw_work_filling (h->warmth.damper, &is_measured);
  const int n = dw_work_oil_parts (&h->mix.oil, filling, parts);
  g_autofree char *oil = oil_text (&h->mix.oil, " cSt");
  g_autofree char *one = pour_text (parts, n, false);
  g_autofree char *both = pour_text (parts, n, true);
  g_autofree char *low = dw_calc_figure (f->viscosity_low / DW_CST, 3);
  g_autofree char *high = dw_calc_figure (f->viscosity_high / DW_CST, 3);
  dw_calc_wrapf (file, 2, TRUE, "Fill in %s: %s for one damper, %s for both (filling %s).", oil,
                 one, both, is_measured ? "as measured" : "estimated from the parts");
  if (h->mix.other >= 0)
    dw_calc_wrapf (file, 2, TRUE,
                   "Published blend rules give %s to %s cSt at %.6g degC, %.1f %% from end to end.",
                   low, high, h->warmth.then, (f->viscosity_high / f->viscosity_low - 1.0) * 100.0);
}

static void
print_hold (const heat *h, FILE *file)
{
  const dw_warmth_held *held = &h->held[DW_COMPRESSION];
  if (h->hold_status[DW_COMPRESSION] != DW_OK)
    {
      dw_calc_wrapf (file, 2, TRUE, "No silicone oil holds low-speed compression at %.6g degC.",
                     h->warmth.then);
      return;
    }
  g_autofree char *viscosity = dw_calc_figure (held->viscosity / DW_CST, 3);
  g_autofree char *high = dw_calc_change (held->change.force[DW_COMPRESSION][DW_HIGH]);
  g_autofree char *low = dw_calc_change (held->change.force[DW_REBOUND][DW_LOW]);
  g_autofree char *fast = dw_calc_change (held->change.force[DW_REBOUND][DW_HIGH]);
  dw_calc_wrapf (file, 2, TRUE,
                 "At %.6g degC silicone of %s cSt holds low-speed compression; with it high-speed "
                 "compression is %s %%, rebound %s %% low and %s %% high.",
                 h->warmth.then, viscosity, high, low, fast);
  if (h->hold_status[DW_REBOUND] == DW_OK)
    {
      g_autofree char *rebound = dw_calc_figure (h->held[DW_REBOUND].viscosity / DW_CST, 3);
      dw_calc_wrapf (file, 2, TRUE, "Low-speed rebound would ask for %s cSt.", rebound);
    }
  if (h->mix.bottle >= 0)
    print_mix (h, file);
  else
    dw_calc_wrap (file, 2, TRUE, "No plain silicone bottles at hand give that.");
  if (held->is_other_kind)
    dw_calc_wrap (file, 2, TRUE,
                  "Warning: the oil in the damper is of another kind. Empty and wash the damper "
                  "before silicone goes in: what a mix of the two does is not known.");
}

static void
print_drift (const heat *h, FILE *file)
{
  static const dw_calc_column columns[] = {
    { "speed", "m/s", false }, { "comp.", "N", false }, { "warm", "N", false },
    { "change", "%", false },  { "reb.", "N", false },  { "warm", "N", false },
    { "change", "%", false },  { NULL, NULL, false },
  };
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int i = 0; i < N_DRIFT; i++)
    {
      dw_calc_table_add_figure (table, h->drift[0][i].speed);
      for (int s = 0; s < DW_N_STROKES; s++)
        {
          dw_calc_table_add_figure (table, h->drift[s][i].before);
          dw_calc_table_add_figure (table, h->drift[s][i].after);
          add_change (table, h->drift[s][i].change);
        }
    }
  fputc ('\n', file);
  dw_calc_wrapf (file, 2, TRUE,
                 "Drift while the oil warms up from %.6g to %.6g degC:", h->warmth.now,
                 h->warmth.now + h->asked->warm_up);
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

static void
print_table (const heat *h, FILE *file)
{
  const bool named = *h->setup->name != '\0';
  g_autofree char *oil = oil_text (&h->warmth.damper->oil, " cSt");
  dw_calc_wrapf (file, 0, TRUE, "%s, %s%s%s%s", h->setup->id, dw_axle_name (h->axle),
                 named ? " (" : "", h->setup->name, named ? ")" : "");
  dw_calc_wrapf (file, 2, TRUE, "Oil in it: %s. Now %.6g degC, then %.6g degC.", oil, h->warmth.now,
                 h->warmth.then);
  print_figures (h, file);
  print_bottles (h, file);
  print_hold (h, file);
  print_drift (h, file);
}

static void
print_notes (FILE *file)
{
  dw_calc_wrap (
      file, 0, TRUE,
      "c changes as its force. pack: of compression. share: rebound over compression at middle "
      "speed. >: of all bottles the nearest to low-speed compression of now. other kind: empty and "
      "wash the damper first, what a mix with the oil in it does is not known. Bottles scatter by "
      "about 5 % round their label: check on the car.");
}

/* ---- the command ---- */

/* Both formats; nothing is printed before all axles are computed. */
static gboolean
print_all (const dw_project *project, const char *path, const dw_setup *setup, const request *r,
           bool wants_csv, FILE *file, GError **error)
{
  heat heats[DW_N_AXLES] = { { .oils = NULL } };
  dw_calc_csv csv = { 0 };
  gboolean good = TRUE;
  for (int axle = r->axles.first; axle <= (int)r->axles.last && good; axle++)
    {
      heats[axle] = (heat){ .project = project, .setup = setup, .axle = (dw_axle)axle, .asked = r };
      good = heat_compute (&heats[axle], path, error);
    }
  if (good && wants_csv)
    csv = dw_calc_csv_begin (file, csv_header);
  else if (good)
    dw_calc_title (file, project->title);
  for (int axle = r->axles.first; axle <= (int)r->axles.last; axle++)
    {
      if (good && wants_csv)
        print_csv (&heats[axle], &csv);
      else if (good)
        print_table (&heats[axle], file);
      heat_clear (&heats[axle]);
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

const dw_calc_command dw_calc_oils = {
  .name = "oils",
  .summary = "What does warmth do to a damper, and which oil makes up for it",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
