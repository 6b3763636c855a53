/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc compare: what differs between two setups, and what that does. */

#include "study/dw-compare.h"

#include <math.h>
#include <string.h>

#include "calc/dw-calc-command.h"
#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"

static const char *const paragraphs[] = {
  "FILE is a project, the two IDs are those of its setups. For each axle: which parts differ, in "
  "words, and for compression and rebound apart how much softer or firmer the second setup is; "
  "then force, c (force over speed), rebound share (rebound over compression force) and pack (how "
  "much faster than in proportion the force grows from the low to the high speed; 1 for a purely "
  "viscous damper) of both at the project's three speeds, with the change in percent of the first.",
  "\"The same\" is a change of at most 0.5 %. When more than one thing differs, a comparison can "
  "not tell which of them did it: change one thing at a time.",
  "The csv has a row for each figure: axle, stroke (empty for rebound share), speed (empty for "
  "pack), quantity, unit, the value of the first setup (a) and of the second (b), and the change "
  "in percent (empty when there is none, from nothing).",
  NULL,
};

static const char *const examples[] = { "compare club-day.dampwright baseline trial-1", NULL };

static const dw_calc_option options[] = { { NULL, NULL, NULL } };

static const char csv_header[] = "axle,stroke,speed_m_s,quantity,unit,a,b,change_percent";

static const char *const speed_names[DW_N_SPEEDS] = { "low", "middle", "high" };

/* One axle of both setups. */
typedef struct
{
  dw_axle axle;
  const dw_setup *setup[2];
  const dw_damper *a;
  const dw_damper *b;
  double speeds[DW_N_SPEEDS]; /* [m/s] */
  dw_comparison figures;
} pair;

/* ---- figures, row by row ---- */

/* A row of both formats. */
typedef struct
{
  const char *quantity;
  const char *unit;
  const char *stroke; /* "" = both */
  double speed;       /* [m/s] NaN = all */
  double a;           /* [unit] */
  double b;           /* [unit] */
  double change;      /* [%] */
} figure;

enum
{
  MOST_FIGURES = DW_N_STROKES * (2 * DW_N_SPEEDS + 1) + DW_N_SPEEDS
};

static int
list_figures (const pair *p, figure *rows)
{
  const dw_comparison *r = &p->figures;
  int n = 0;
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      rows[n++] = (figure){ "force",
                            "N",
                            dw_stroke_name ((dw_stroke)s),
                            p->speeds[i],
                            r->a.point[s][i].force,
                            r->b.point[s][i].force,
                            r->force[s][i] };
  for (int s = 0; s < DW_N_STROKES; s++)
    for (int i = 0; i < DW_N_SPEEDS; i++)
      rows[n++] = (figure){ "c",          "N s/m",      dw_stroke_name ((dw_stroke)s),
                            p->speeds[i], r->a.c[s][i], r->b.c[s][i],
                            r->c[s][i] };
  for (int i = 0; i < DW_N_SPEEDS; i++)
    rows[n++] = (figure){
      "rebound share",    "1", "", p->speeds[i], r->a.rebound_share[i], r->b.rebound_share[i],
      r->rebound_share[i]
    };
  for (int s = 0; s < DW_N_STROKES; s++)
    rows[n++] = (figure){ "pack",      "1",          dw_stroke_name ((dw_stroke)s),
                          (double)NAN, r->a.pack[s], r->b.pack[s],
                          r->pack[s] };
  return n;
}

static void
print_csv (const pair *p, dw_calc_csv *csv)
{
  figure rows[MOST_FIGURES];
  const int n = list_figures (p, rows);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *quantity = g_strdelimit (g_strdup (rows[i].quantity), " ", '_');
      dw_calc_csv_text (csv, dw_axle_name (p->axle));
      dw_calc_csv_text (csv, rows[i].stroke);
      dw_calc_csv_number (csv, rows[i].speed, 0);
      dw_calc_csv_text (csv, quantity);
      dw_calc_csv_text (csv, rows[i].unit);
      dw_calc_csv_number (csv, rows[i].a, 0);
      dw_calc_csv_number (csv, rows[i].b, 0);
      dw_calc_csv_number (csv, rows[i].change, 0);
      dw_calc_csv_end (csv);
    }
}

static void
print_figures (const pair *p, FILE *file)
{
  const dw_calc_column columns[] = {
    { "figure", "", true }, { "stroke", "", true },   { "speed", "m/s", false }, { "a", "", false },
    { "b", "", false },     { "change", "%", false }, { NULL, NULL, false },
  };
  figure rows[MOST_FIGURES];
  const int n = list_figures (p, rows);
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  for (int i = 0; i < n; i++)
    {
      const bool pure = strcmp (rows[i].unit, "1") == 0;
      g_autofree char *name = pure ? g_strdup (rows[i].quantity)
                                   : g_strdup_printf ("%s [%s]", rows[i].quantity, rows[i].unit);
      g_autofree char *change = dw_calc_change (rows[i].change);
      dw_calc_table_add (table, name);
      dw_calc_table_add (table, rows[i].stroke);
      if (isnan (rows[i].speed))
        dw_calc_table_add (table, "");
      else
        dw_calc_table_add_plain (table, rows[i].speed);
      dw_calc_table_add_figure (table, rows[i].a);
      dw_calc_table_add_figure (table, rows[i].b);
      dw_calc_table_add (table, change);
    }
  dw_calc_table_print (table, file, 2);
  fputc ('\n', file);
}

/* ---- in words ---- */

/* "12 % softer", "the same" */
static char *
judgement (double percent)
{
  const double size = fabs (percent);
  switch (dw_compare_judge (percent))
    {
    case DW_CHANGE_SAME:
      return g_strdup ("the same");
    case DW_CHANGE_LESS:
      return g_strdup_printf (size < 9.95 ? "%.1f %% softer" : "%.0f %% softer", size);
    case DW_CHANGE_MORE:
      return g_strdup_printf (size < 9.95 ? "%.1f %% firmer" : "%.0f %% firmer", size);
    case DW_CHANGE_UNKNOWN:
      return g_strdup ("not to be compared");
    }
  g_return_val_if_reached (NULL);
}

/* "rebound 12 % softer at middle speed, the same at low and high speed" */
static char *
stroke_sentence (const pair *p, dw_stroke stroke)
{
  char *words[DW_N_SPEEDS];
  bool told[DW_N_SPEEDS] = { false };
  g_autoptr (GString) text = g_string_new (dw_stroke_name (stroke));
  for (int i = 0; i < DW_N_SPEEDS; i++)
    words[i] = judgement (p->figures.force[stroke][i]);

  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      g_autoptr (GString) where = g_string_new (NULL);
      int n_alike = 0;
      if (told[i])
        continue;
      for (int j = i; j < DW_N_SPEEDS; j++)
        if (strcmp (words[i], words[j]) == 0)
          {
            told[j] = true;
            g_string_append_printf (where, "%s%s", n_alike > 0 ? " and " : "", speed_names[j]);
            n_alike++;
          }
      g_string_append_printf (text, "%s %s", i > 0 ? "," : "", words[i]);
      if (n_alike < DW_N_SPEEDS)
        g_string_append_printf (text, " at %s speed", where->str);
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    g_free (words[i]);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* What the number of differences means for the comparison. */
static char *
count_sentence (size_t n, size_t n_acting)
{
  if (n == 0)
    return g_strdup ("nothing differs");
  if (n == 1)
    return g_strdup (n_acting == 1 ? "1 thing differs"
                                   : "1 thing differs, and it does not act on the damping force");
  if (n_acting == n)
    return g_strdup_printf ("%zu things differ: this comparison cannot tell which did it", n);
  if (n_acting > 1)
    return g_strdup_printf ("%zu things differ, %zu of them act on the damping force: this "
                            "comparison cannot tell which did it",
                            n, n_acting);
  return g_strdup_printf ("%zu things differ, %s of them acts on the damping force", n,
                          n_acting == 1 ? "only one" : "none");
}

static void
print_differences (const pair *p, FILE *file)
{
  dw_difference found[DW_MAX_DIFFERENCES];
  const size_t n = MIN (dw_difference_find (p->a, p->b, found, DW_MAX_DIFFERENCES),
                        DW_MAX_DIFFERENCES);
  const size_t n_acting = dw_difference_count_acting (found, n);
  g_autofree char *count = count_sentence (n, n_acting);
  dw_calc_wrapf (file, 0, TRUE, "%s: %s.", p->axle == DW_FRONT ? "Front" : "Rear", count);
  for (size_t i = 0; i < n; i++)
    {
      char text[DW_DIFFERENCE_TEXT];
      dw_difference_describe (&found[i], p->a, p->b, text);
      dw_calc_wrapf (file, 2, TRUE, "%s%s", text,
                     !found[i].acts && n > 1 ? " (does not act on the damping force)" : "");
    }
}

static void
print_table (const pair *p, FILE *file)
{
  g_autofree char *compression = stroke_sentence (p, DW_COMPRESSION);
  g_autofree char *rebound = stroke_sentence (p, DW_REBOUND);
  print_differences (p, file);
  dw_calc_wrapf (file, 2, TRUE, "Result: %s; %s.", compression, rebound);
  fputc ('\n', file);
  print_figures (p, file);
}

/* ---- the command ---- */

static gboolean
compute (const dw_project *project, const char *path, pair *p, GError **error)
{
  dw_error finding;
  const double temperature = project->conditions.oil_temperature;
  p->a = &p->setup[0]->damper[p->axle];
  p->b = &p->setup[1]->damper[p->axle];
  p->speeds[DW_LOW] = project->speeds.low;
  p->speeds[DW_MIDDLE] = project->speeds.middle;
  p->speeds[DW_HIGH] = project->speeds.high;
  if (dw_compare_figures (p->a, p->b, temperature, p->speeds, &p->figures, &finding) == DW_OK)
    return TRUE;
  /* which of the two it was: the first is asked alone */
  const bool first = dw_compare_figures (p->a, p->a, temperature, p->speeds, &p->figures, NULL)
                     != DW_OK;
  return dw_calc_input_refuse (path, p->setup[first ? 0 : 1], p->axle, &finding, error);
}

static void
print_title (const dw_project *project, const dw_setup *const setups[2], FILE *file)
{
  dw_calc_title (file, project->title);
  for (int i = 0; i < 2; i++)
    {
      const char *name = setups[i]->name;
      const bool named = *name != '\0';
      dw_calc_wrapf (file, 0, TRUE, "%c: %s%s%s%s", i == 0 ? 'a' : 'b', setups[i]->id,
                     named ? " (" : "", name, named ? ")" : "");
    }
  dw_calc_wrapf (file, 0, TRUE, "Oil at %.6g degC, low speed %.6g m/s, middle %.6g, high %.6g.",
                 project->conditions.oil_temperature, project->speeds.low, project->speeds.middle,
                 project->speeds.high);
  fputc ('\n', file);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  const bool wants_csv = dw_calc_arguments_wants_csv (arguments);
  g_autoptr (dw_project) project = dw_calc_input_load (path, error);
  if (project == NULL)
    return DW_CALC_BAD_INPUT;

  pair pairs[DW_N_AXLES] = { { .axle = DW_FRONT }, { .axle = DW_REAR } };
  const dw_setup *setups[2];
  for (guint i = 0; i < 2; i++)
    {
      setups[i] = dw_calc_input_find (project, path,
                                      dw_calc_arguments_get_operand (arguments, i + 1), error);
      if (setups[i] == NULL)
        return DW_CALC_BAD_INPUT;
    }
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      pairs[axle].setup[0] = setups[0];
      pairs[axle].setup[1] = setups[1];
      if (!compute (project, path, &pairs[axle], error))
        return DW_CALC_BAD_INPUT;
    }

  if (wants_csv)
    {
      dw_calc_csv csv = dw_calc_csv_begin (file, csv_header);
      for (int axle = 0; axle < DW_N_AXLES; axle++)
        print_csv (&pairs[axle], &csv);
      return DW_CALC_GOOD;
    }
  print_title (project, setups, file);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    print_table (&pairs[axle], file);
  return DW_CALC_GOOD;
}

const dw_calc_command dw_calc_compare = {
  .name = "compare",
  .summary = "What differs between two setups, and what does that do",
  .operands = "FILE ID ID",
  .n_operands = 3,
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
