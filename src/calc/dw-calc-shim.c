/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc shim: how far a stack bends open under pressure on a ring. */

#include "calc/dw-calc-command.h"

#include <math.h>

#include "calc/dw-calc-csv.h"
#include "calc/dw-calc-error.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-table.h"
#include "calc/dw-calc-text.h"
#include "model/dw-plate.h"
#include "model/dw-stack.h"
#include "model/dw-units.h"

static const char *const paragraphs[] = {
  "A round shim, or a stack of them, clamped inside the hub and pressed evenly on a ring: how far "
  "its edge lifts. All sizes across are diameters in mm, as in the project file: hub < inner < "
  "outer edge of the ring <= shim.",
  "Edge lift is with the stiffening of a large lift, edge lift (linear) without it, as the "
  "damper's force takes it; pitch lift is that at the middle of the ring. Real holes press in a "
  "few places only: the shim rises in lobes and stiffens less than this even ring.",
  "Several thicknesses are a stack. Leaves that slide on each other share the load; leaves that "
  "stick together bend as one thick shim, two equal ones four times as stiff. Oily leaves are near "
  "the first. The table shows both; csv the first, or the second with --stuck. csv has a row for "
  "each pressure.",
  NULL,
};

static const char *const examples[] = {
  "shim --hub 6 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.38 \\\n"
  "      --ring 7.1:9.3 --pressure-kpa 50,100",
  NULL,
};

static const dw_calc_option options[] = {
  { "--hub", "MM",
    "Diameter inside which the shim is clamped, 0.5 to 38 mm; 0.1 to 0.95 of the "
    "shim's. Must be given, as all but --stuck." },
  { "--outer", "MM", "Diameter of the shim, 1 to 40 mm." },
  { "--thickness", "MM[,MM...]", "Thickness of each leaf, 0.01 to 3 mm; at most 16 leaves." },
  { "--modulus-gpa", "E", "Young's modulus, 0.1 to 500 GPa: plastics 2 to 5, spring steel 200." },
  { "--poisson", "N", "Poisson's ratio, 0 to 0.49: plastics about 0.38, steel 0.3." },
  { "--ring", "MM:MM", "Inner and outer diameter of the ring that is pressed, mm." },
  { "--pressure-kpa", "P[,P...]",
    "Pressure on the ring in kPa, 0 to 2000, with commas between them; FROM:TO:STEP for even "
    "steps." },
  { "--stuck", NULL, "csv: leaves stuck together instead of sliding." },
  { NULL, NULL, NULL },
};

static const char csv_header[] = "edge_lift_m,edge_lift_linear_m,pitch_lift_m";

static const double UM = 1e-6; /* [m] */

/* Lift in thicknesses up to which the large deflection was checked against shell solutions. */
static const double CHECKED_LIFT = 10.0;

/* What is asked for. */
typedef struct
{
  dw_valve valve;    /* hub, shim and leaves */
  double ring_inner; /* [m] diameter */
  double ring_outer; /* [m] diameter */
  GArray *pressures; /* of double [Pa], owned */
} question;

/* Leaves that slide, and leaves that stick. */
enum
{
  LOOSE,
  STUCK,
  N_BOUNDS
};

static const double coupling_of[N_BOUNDS] = { 0.0, 1.0 };

/* ---- what is asked for ---- */

static gboolean
read_number (const dw_calc_arguments *arguments, const char *option, dw_limit_id limit, int power,
             const char *unit, double *value, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (limit, power, unit);
  const char *text = dw_calc_arguments_require (arguments, option, error);
  return text != NULL && dw_calc_number_parse (option, text, &range, value, error);
}

static gboolean
read_leaves (const dw_calc_arguments *arguments, dw_valve *valve, GError **error)
{
  const dw_calc_range range = dw_calc_range_of (DW_LIMIT_SHIM_THICKNESS, -3, "mm");
  dw_shim leaf = { .count = 1, .strength = dw_limit_get (DW_LIMIT_STRENGTH)->fallback };
  const char *text = dw_calc_arguments_require (arguments, "--thickness", error);
  g_autoptr (GArray) thicknesses = text == NULL
                                       ? NULL
                                       : dw_calc_numbers_parse ("--thickness", text, &range, error);
  if (thicknesses == NULL
      || !read_number (arguments, "--modulus-gpa", DW_LIMIT_MODULUS, 9, "GPa", &leaf.modulus, error)
      || !read_number (arguments, "--poisson", DW_LIMIT_POISSON, 0, "", &leaf.poisson, error))
    return FALSE;
  if (thicknesses->len > DW_MAX_SHIMS)
    return dw_calc_misused (error, "--thickness has %u leaves, at most %d", thicknesses->len,
                            DW_MAX_SHIMS);
  for (guint i = 0; i < thicknesses->len; i++)
    {
      leaf.thickness = g_array_index (thicknesses, double, i);
      valve->shims[valve->n_shims++] = leaf;
    }
  return TRUE;
}

static gboolean
read_ring (const dw_calc_arguments *arguments, question *q, GError **error)
{
  const dw_limit *outer = dw_limit_get (DW_LIMIT_SHIM_OUTER);
  const dw_calc_range range = { 0.0, outer->high, -3, "mm" };
  const char *text = dw_calc_arguments_require (arguments, "--ring", error);
  if (text == NULL)
    return FALSE;
  g_auto (GStrv) words = g_strsplit (text, ":", 0);
  if (g_strv_length (words) != 2)
    return dw_calc_misused (error, "--ring needs two diameters, MM:MM, not \"%s\"", text);
  return dw_calc_number_parse ("--ring", words[0], &range, &q->ring_inner, error)
         && dw_calc_number_parse ("--ring", words[1], &range, &q->ring_outer, error);
}

/* How the sizes fit; hub and shim as the model judges them in the largest damper. */
static gboolean
check_fit (const question *q, GError **error)
{
  dw_damper damper = dw_damper_defaults ();
  dw_error finding;
  damper.body.bore = dw_limit_get (DW_LIMIT_BORE)->high;
  damper.valve = q->valve;
  damper.valve.hole_circle = (q->ring_inner + q->ring_outer) / 2.0;
  if (q->valve.hub_diameter >= q->ring_inner)
    return dw_calc_misused (error, "--ring has to begin outside the hub");
  if (q->ring_inner >= q->ring_outer)
    return dw_calc_misused (error, "--ring has to end outside of where it begins");
  if (q->ring_outer > q->valve.outer_diameter)
    return dw_calc_misused (error, "--ring has to end inside the shim");
  if (dw_damper_check (&damper, &finding, 1) > 0)
    return dw_calc_misused (error, "%s", finding.text);
  return TRUE;
}

static gboolean
read_question (const dw_calc_arguments *arguments, question *q, GError **error)
{
  /* as much as a damper's gas may have: what oil presses on a shim is of that size */
  const dw_calc_range range = { 0.0, dw_limit_get (DW_LIMIT_GAS_PRESSURE)->high, 3, "kPa" };
  if (!read_number (arguments, "--hub", DW_LIMIT_HUB, -3, "mm", &q->valve.hub_diameter, error)
      || !read_number (arguments, "--outer", DW_LIMIT_SHIM_OUTER, -3, "mm",
                       &q->valve.outer_diameter, error)
      || !read_leaves (arguments, &q->valve, error) || !read_ring (arguments, q, error)
      || !check_fit (q, error))
    return FALSE;
  const char *text = dw_calc_arguments_require (arguments, "--pressure-kpa", error);
  q->pressures = text == NULL ? NULL
                              : dw_calc_numbers_parse ("--pressure-kpa", text, &range, error);
  return q->pressures != NULL;
}

/* ---- answers ---- */

static dw_stack
stack_of (const question *q, int bound)
{
  dw_valve valve = q->valve;
  valve.leaf_coupling = coupling_of[bound];
  return dw_stack_make (&valve);
}

static gboolean
compute (const question *q, int bound, double pressure, dw_shim_lift *lift, GError **error)
{
  const dw_stack stack = stack_of (q, bound);
  const dw_plate plate = { .inner = q->valve.hub_diameter / 2.0,
                           .outer = q->valve.outer_diameter / 2.0,
                           .stiffness = stack.stiffness,
                           .poisson = stack.poisson };
  dw_error finding;
  if (dw_plate_lift (&plate, stack.membrane, q->ring_inner / 2.0, q->ring_outer / 2.0, pressure,
                     lift, &finding)
      == DW_OK)
    return TRUE;
  g_autofree char *shown = dw_calc_plain (pressure / DW_KPA);
  return dw_calc_refused (error, "dampcalc shim: %s kPa: %s", shown, finding.text);
}

static gboolean
print_csv (const question *q, int bound, FILE *file, GError **error)
{
  dw_calc_csv csv = dw_calc_csv_begin (file, csv_header);
  for (guint i = 0; i < q->pressures->len; i++)
    {
      dw_shim_lift lift;
      if (!compute (q, bound, g_array_index (q->pressures, double, i), &lift, error))
        return FALSE;
      dw_calc_csv_number (&csv, lift.rim, 0);
      dw_calc_csv_number (&csv, lift.rim_linear, 0);
      dw_calc_csv_number (&csv, lift.ring, 0);
      dw_calc_csv_end (&csv);
    }
  return TRUE;
}

static void
print_stack (const question *q, int bound, FILE *file)
{
  const dw_stack stack = stack_of (q, bound);
  const dw_shim *leaf = &q->valve.shims[0];
  g_autofree char *thickness = dw_calc_figure (
      dw_stack_equivalent_thickness (stack.stiffness, leaf->modulus, leaf->poisson) / DW_MM, 3);
  if (q->valve.n_shims == 1)
    dw_calc_wrapf (file, 0, TRUE, "One shim of %s mm", thickness);
  else
    dw_calc_wrapf (file, 0, TRUE, "%d leaves that %s: as stiff as one shim of %s mm",
                   q->valve.n_shims, bound == LOOSE ? "slide on each other" : "stick together",
                   thickness);
  fputc ('\n', file);
}

/* A leaf of the loose stack bends alone, the stuck one as a whole. */
static double
bending_thickness (const question *q, int bound)
{
  double thickest = 0.0;
  for (int i = 0; i < q->valve.n_shims; i++)
    thickest = fmax (thickest, q->valve.shims[i].thickness);
  return bound == LOOSE ? thickest : stack_of (q, bound).thickness;
}

static gboolean
print_bound (const question *q, int bound, FILE *file, GError **error)
{
  static const dw_calc_column columns[] = {
    { "pressure", "kPa", false },
    { "edge lift", "um", false },
    { "edge lift (linear)", "um", false },
    { "pitch lift", "um", false },
    { NULL, NULL, false },
  };
  g_autoptr (dw_calc_table) table = dw_calc_table_new (columns);
  double highest = 0.0;
  for (guint i = 0; i < q->pressures->len; i++)
    {
      const double pressure = g_array_index (q->pressures, double, i);
      dw_shim_lift lift;
      if (!compute (q, bound, pressure, &lift, error))
        return FALSE;
      highest = fmax (highest, lift.rim);
      dw_calc_table_add_plain (table, pressure / DW_KPA);
      dw_calc_table_add_figure (table, lift.rim / UM);
      dw_calc_table_add_figure (table, lift.rim_linear / UM);
      dw_calc_table_add_figure (table, lift.ring / UM);
    }
  print_stack (q, bound, file);
  dw_calc_table_print (table, file, 2);
  if (highest > CHECKED_LIFT * bending_thickness (q, bound))
    dw_calc_wrapf (file, 2, TRUE,
                   "Note: a lift of more than %g thicknesses was not checked; take it as a guide.",
                   CHECKED_LIFT);
  return TRUE;
}

static gboolean
print_table (const question *q, FILE *file, GError **error)
{
  if (!print_bound (q, LOOSE, file, error))
    return FALSE;
  if (q->valve.n_shims == 1)
    return TRUE;
  fputc ('\n', file);
  return print_bound (q, STUCK, file, error);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  question q = { .ring_inner = 0.0 };
  gboolean good = read_question (arguments, &q, error);
  if (good && dw_calc_arguments_wants_csv (arguments))
    good = print_csv (&q, dw_calc_arguments_has (arguments, "--stuck") ? STUCK : LOOSE, file,
                      error);
  else if (good)
    good = print_table (&q, file, error);
  g_clear_pointer (&q.pressures, g_array_unref);
  return good ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
}

const dw_calc_command dw_calc_shim = {
  .name = "shim",
  .summary = "How far does a shim or a stack bend open under pressure",
  .operands = "",
  .has_format = true,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
