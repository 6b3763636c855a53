/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc oil: viscosity and density of an oil or a blend at temperatures. */

#include "calc/dw-calc-command.h"

#include <math.h>

#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-oil.h"
#include "model/dw-units.h"

static const char *const paragraphs[] = {
  "For silicone oils, by the viscosity on the bottle, which holds at 25 degC. The label is a "
  "nominal value: bottles of one grade scatter by about 5 %. Oils below about 100 cSt change less "
  "with temperature than told here.",
  "A blend is computed by the logarithmic rule; other published rules differ a little, and the "
  "table shows from where to where. It also shows by how much the viscosity changes over the next "
  "10 degC, which is what a warming damper loses.",
  NULL,
};

static const char *const examples[] = {
  "oil --viscosity-cst 450 --at-c 10,20,30",
  "oil --blend 350:0.4,500:0.6 --at-c 0:60:5",
  NULL,
};

static const dw_calc_option options[] = {
  { "--viscosity-cst", "N",
    "Viscosity on the bottle in cSt (mm2/s) at 25 degC, 1 to 100000. Either this or --blend." },
  { "--blend", "N:SHARE,N:SHARE",
    "Two oils in cSt and their shares by volume; the shares add to 1: 350:0.4,500:0.6 is 40 % of "
    "350 cSt." },
  { "--at-c", "T[,T...]",
    "Temperatures of the oil in degC, -25 to 150, with commas between them; FROM:TO:STEP for even "
    "steps. Must be given." },
  { NULL, NULL, NULL },
};

static const char csv_header[] = "temperature_c,viscosity_cst,density_kg_m3";

/* Powers of ten from cSt to m2/s. */
#define CST_POWER (-6)

/* [K] Step of the table's last column. */
static const double WARMING = 10.0;

/* The model finds the same fault in a damper's oil: ask it, so that the two cannot differ. */
static gboolean
check_blend (const dw_oil *oil, GError **error)
{
  dw_damper damper = dw_damper_defaults ();
  dw_error finding;
  damper.oil = *oil;
  return dw_damper_check (&damper, &finding, 1) == 0
         || dw_calc_misused (error, "--blend: %s", finding.text);
}

static gboolean
read_blend (const char *text, dw_oil *oil, GError **error)
{
  const dw_calc_range viscosity = dw_calc_range_of (DW_LIMIT_VISCOSITY, CST_POWER, "cSt");
  const dw_calc_range share = dw_calc_range_of (DW_LIMIT_SHARE, 0, "(a share)");
  g_auto (GStrv) parts = g_strsplit (text, ",", 0);
  *oil = (dw_oil){ .kind = DW_OIL_BLEND, .n_parts = DW_MAX_OIL_PARTS };
  if (g_strv_length (parts) != DW_MAX_OIL_PARTS)
    return dw_calc_misused (error, "--blend needs two oils, N:SHARE,N:SHARE, not \"%s\"", text);
  for (int i = 0; i < DW_MAX_OIL_PARTS; i++)
    {
      g_auto (GStrv) words = g_strsplit (parts[i], ":", 0);
      if (g_strv_length (words) != 2)
        return dw_calc_misused (error, "--blend needs N:SHARE, not \"%s\"", parts[i]);
      if (!dw_calc_number_parse ("--blend", words[0], &viscosity, &oil->parts[i].viscosity, error)
          || !dw_calc_number_parse ("--blend", words[1], &share, &oil->parts[i].share, error))
        return FALSE;
    }
  return check_blend (oil, error);
}

static gboolean
read_oil (const dw_calc_arguments *arguments, dw_oil *oil, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_VISCOSITY, CST_POWER, "cSt");
  const char *viscosity = dw_calc_arguments_get (arguments, "--viscosity-cst");
  const char *blend = dw_calc_arguments_get (arguments, "--blend");
  if ((viscosity != NULL) == (blend != NULL))
    return dw_calc_misused (error, "needs either --viscosity-cst or --blend");
  if (blend != NULL)
    return read_blend (blend, oil, error);
  *oil = (dw_oil){ .kind = DW_OIL_NOMINAL };
  return dw_calc_number_parse ("--viscosity-cst", viscosity, &range, &oil->viscosity, error);
}

static void
print_csv (const dw_fluid *fluids, guint n, FILE *file)
{
  dw_calc_csv csv = dw_calc_csv_begin (file, csv_header);
  for (guint i = 0; i < n; i++)
    {
      dw_calc_csv_number (&csv, fluids[i].temperature, 0);
      dw_calc_csv_number (&csv, fluids[i].viscosity, CST_POWER);
      dw_calc_csv_number (&csv, fluids[i].density, 0);
      dw_calc_csv_end (&csv);
    }
}

/* Change [%] of the viscosity over the next 10 degC; NaN where these leave the range. */
static double
change_when_warmer (const dw_oil *oil, const dw_fluid *fluid)
{
  dw_fluid warmer;
  if (dw_oil_fluid (oil, fluid->temperature + WARMING, &warmer, NULL) != DW_OK)
    return (double)NAN;
  return (warmer.viscosity / fluid->viscosity - 1.0) * 100.0;
}

static void
print_title (const dw_oil *oil, FILE *file)
{
  if (oil->kind == DW_OIL_NOMINAL)
    dw_calc_wrapf (file, 0, TRUE, "Silicone oil of %.6g cSt at 25 degC", oil->viscosity / DW_CST);
  else
    dw_calc_wrapf (file, 0, TRUE,
                   "Blend of %.6g %% of %.6g cSt and %.6g %% of %.6g cSt by volume; lowest and "
                   "highest: what the published blend rules give",
                   oil->parts[0].share * 100.0, oil->parts[0].viscosity / DW_CST,
                   oil->parts[1].share * 100.0, oil->parts[1].viscosity / DW_CST);
  fputc ('\n', file);
}

static void
print_table (const dw_oil *oil, const dw_fluid *fluids, guint n, FILE *file)
{
  static const dw_calc_column of_one[] = {
    { "temperature", "degC", false }, { "viscosity", "cSt", false }, { "density", "kg/m3", false },
    { "10 degC more", "%", false },   { NULL, NULL, false },
  };
  static const dw_calc_column of_blend[] = {
    { "temperature", "degC", false },
    { "viscosity", "cSt", false },
    { "lowest", "cSt", false },
    { "highest", "cSt", false },
    { "density", "kg/m3", false },
    { "10 degC more", "%", false },
    { NULL, NULL, false },
  };
  const bool blend = oil->kind == DW_OIL_BLEND;
  g_autoptr (dw_calc_table) table = dw_calc_table_new (blend ? of_blend : of_one);
  for (guint i = 0; i < n; i++)
    {
      dw_calc_table_add_plain (table, fluids[i].temperature);
      dw_calc_table_add_figure (table, fluids[i].viscosity / DW_CST);
      if (blend)
        {
          dw_calc_table_add_figure (table, fluids[i].viscosity_low / DW_CST);
          dw_calc_table_add_figure (table, fluids[i].viscosity_high / DW_CST);
        }
      dw_calc_table_add_figure (table, fluids[i].density);
      dw_calc_table_add_figure (table, change_when_warmer (oil, &fluids[i]));
    }
  print_title (oil, file);
  dw_calc_table_print (table, file, 2);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_OIL_TEMPERATURE, 0, "degC");
  dw_oil oil;
  if (!read_oil (arguments, &oil, error))
    return DW_CALC_WRONG_USAGE;
  const char *text = dw_calc_arguments_require (arguments, "--at-c", error);
  g_autoptr (GArray) temperatures = text == NULL
                                        ? NULL
                                        : dw_calc_numbers_parse ("--at-c", text, &range, error);
  if (temperatures == NULL)
    return DW_CALC_WRONG_USAGE;

  const guint n = temperatures->len;
  g_autofree dw_fluid *fluids = g_new (dw_fluid, n);
  for (guint i = 0; i < n; i++)
    {
      dw_error finding;
      if (dw_oil_fluid (&oil, g_array_index (temperatures, double, i), &fluids[i], &finding)
          != DW_OK)
        {
          dw_calc_refused (error, "dampcalc oil: %s", finding.text);
          return DW_CALC_BAD_INPUT;
        }
    }
  if (dw_calc_arguments_wants_csv (arguments))
    print_csv (fluids, n, file);
  else
    print_table (&oil, fluids, n, file);
  return DW_CALC_GOOD;
}

const dw_calc_command dw_calc_oil = {
  .name = "oil",
  .summary = "How thick is an oil, or a blend of two, at a temperature",
  .operands = "",
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
