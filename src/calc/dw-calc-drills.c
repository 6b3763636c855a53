/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc drills: the drills there are and the holes they leave. */

#include "calc/dw-calc-command.h"

#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-drill.h"
#include "model/dw-units.h"

static const char *const paragraphs[] = {
  "Metric drills from 0.50 to 3.00 mm and number drills #80 to #30, smallest first. A hole is "
  "never smaller than its drill and mostly a little larger: the table shows the largest hole of a "
  "careful hand (tolerance H11 of ISO 286-1) and of a usual one (H12).",
  DW_CALC_DRILL_CAUTION,
  NULL,
};

static const char *const examples[] = { "drills --from 1.2 --to 1.6", NULL };

static const dw_calc_option options[] = {
  { "--from", "MM", "Smallest diameter in mm, 0 to 100. Default: that of the smallest drill." },
  { "--to", "MM", "Largest diameter in mm, 0 to 100. Default: that of the largest drill." },
  { NULL, NULL, NULL },
};

static const char csv_header[] = "diameter_mm,series,name,hole_max_h11_mm,hole_max_h12_mm";

/* Powers of ten from millimetres to metres. */
#define MM_POWER (-3)

/* Grades of the tolerance of a drilled hole, careful and usual. */
#define CAREFUL_GRADE 11
#define USUAL_GRADE   12

/* No drill in the table comes near it; it only keeps out what was mistyped. */
static const double LARGEST_ASKED = 0.1; /* [m] */

static gboolean
read_end (const dw_calc_arguments *arguments, const char *option, double *diameter, GError **error)
{
  const dw_calc_range range = { 0.0, LARGEST_ASKED, MM_POWER, "mm" };
  const char *text = dw_calc_arguments_get (arguments, option);
  return text == NULL || dw_calc_number_parse (option, text, &range, diameter, error);
}

static void
print_csv_row (dw_calc_csv *csv, const dw_drill_size *drill)
{
  dw_calc_csv_number (csv, drill->diameter, MM_POWER);
  dw_calc_csv_text (csv, dw_drill_series_name (drill->series));
  dw_calc_csv_text (csv, drill->name);
  dw_calc_csv_number (csv, dw_drill_hole_max (drill, CAREFUL_GRADE), MM_POWER);
  dw_calc_csv_number (csv, dw_drill_hole_max (drill, USUAL_GRADE), MM_POWER);
  dw_calc_csv_end (csv);
}

static void
add_row (dw_calc_table *table, const dw_drill_size *drill)
{
  dw_calc_table_add_plain (table, drill->diameter / DW_MM);
  dw_calc_table_add (table, dw_drill_series_name (drill->series));
  dw_calc_table_add (table, drill->name);
  dw_calc_table_add_plain (table, dw_drill_hole_max (drill, CAREFUL_GRADE) / DW_MM);
  dw_calc_table_add_plain (table, dw_drill_hole_max (drill, USUAL_GRADE) / DW_MM);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  static const dw_calc_column columns[] = {
    { "diameter", "mm", false },
    { "series", "", true },
    { "name", "", true },
    { "largest hole H11", "mm", false },
    { "largest hole H12", "mm", false },
    { NULL, NULL, false },
  };
  double from = 0.0;
  double to = LARGEST_ASKED;
  if (!read_end (arguments, "--from", &from, error) || !read_end (arguments, "--to", &to, error))
    return DW_CALC_WRONG_USAGE;
  if (from > to)
    {
      dw_calc_misused (error, "--from is larger than --to");
      return DW_CALC_WRONG_USAGE;
    }

  const bool wants_csv = dw_calc_arguments_wants_csv (arguments);
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  dw_calc_csv csv = { 0 };
  if (wants_csv)
    csv = dw_calc_csv_begin (file, csv_header);
  size_t n = 0;
  const dw_drill_size *drills = dw_drill_table (&n);
  for (size_t i = 0; i < n; i++)
    {
      const double diameter = drills[i].diameter;
      if (diameter < from - DW_DRILL_SAME || diameter > to + DW_DRILL_SAME)
        continue;
      if (wants_csv)
        print_csv_row (&csv, &drills[i]);
      else
        add_row (table, &drills[i]);
    }
  if (!wants_csv && dw_calc_table_get_n_rows (table) == 0)
    fputs ("No drill is that size.\n", file);
  else if (!wants_csv)
    dw_calc_table_print (table, file, 0);
  return DW_CALC_GOOD;
}

const dw_calc_command dw_calc_drills = {
  .name = "drills",
  .summary = "Which drills are there, and how large a hole does each leave",
  .operands = "",
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
