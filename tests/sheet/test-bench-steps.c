/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-bench-steps.h"

#include <string.h>

#include "random-damper.h"
#include "sheet-samples.h"

static void
same (G_GNUC_UNUSED dw_damper *d)
{
}

static void
off_centre (dw_damper *d)
{
  d->piston.eccentricity = 0.25;
}

static void
not_measured (dw_damper *d)
{
  d->body.has_filling = d->stance.has_droop = false;
  d->body.filling = d->stance.droop = 0.0;
}

static void
preload (dw_damper *d)
{
  d->spring.preload = 5e-3;
  d->stance.ride_height = 25e-3;
}

static void
drill (dw_damper *d)
{
  d->piston.holes[0].diameter = 1.6e-3;
}

static void
smaller (dw_damper *d)
{
  d->piston.holes[0].diameter = 1.2e-3;
}

static void
spare (dw_damper *d)
{
  d->piston.n_holes = 1;
  d->piston.holes[0].diameter = 1.3e-3;
}

static void
thicker_piston (dw_damper *d)
{
  d->piston.thickness = 3e-3;
}

static void
solid_piston (dw_damper *d)
{
  d->piston.thickness = 3e-3;
  d->piston.n_holes = 0;
}

static void
shims (dw_damper *d)
{
  d->valve.n_shims = 2;
  d->valve.shims[1] = d->valve.shims[0];
  d->valve.shims[1].thickness = 0.1e-3;
  d->valve.shims[1].count = 2;
  d->valve.opens_on = DW_COMPRESSION;
}

static void
other_circle (dw_damper *d)
{
  d->valve.hole_circle += 0.1e-3;
}

static void
shaft_washer_and_gas (dw_damper *d)
{
  d->body.rod = 3e-3;
  d->valve.lift_limit = 0.5e-3;
  d->gas.volume = 1e-6;
}

static void
numbers_of_no_shim (dw_damper *d)
{
  d->valve.n_shims = 0;
  d->valve.opens_on = DW_COMPRESSION;
  d->valve.lift_limit = 0.5e-3;
}

static void
no_shims (dw_damper *d)
{
  d->valve.n_shims = 0;
}

static void
blend (dw_damper *d)
{
  d->oil = (dw_oil){ .kind = DW_OIL_BLEND,
                     .n_parts = 2,
                     .parts = { { 350e-6, 0.25 }, { 600e-6, 0.75 } } };
  d->body.filling = 8e-6;
}

static void
own_oil (dw_damper *d)
{
  d->oil = (dw_oil){ .kind = DW_OIL_MEASURED,
                     .point_temperature = { 20.0, 40.0 },
                     .point_viscosity = { 500e-6, 350e-6 },
                     .density = 970.0 };
  not_measured (d);
}

#define OPEN "A Release the gas pressure, then open the damper over a tray."
#define STACK                                                                                      \
  "A Stack on the side that opens on rebound, from the piston outwards:", "I 1 × 0.15 mm"
#define OIL                                                                                        \
  "A Fill in the oil:", "I 400 cSt: 6.30 ml a damper, 12.6 ml for left and right",                 \
      "A Move the shaft slowly until no more bubbles rise, then close."
#define DEBURR "A Deburr both sides by hand, wash out the swarf, dry; seat of the shim unhurt?"
#define HOLD   "A Hold left and right against each other: both must move alike."

/* A action, I item, R remark. */
static const struct
{
  const char *why;
  void (*change) (dw_damper *d);
  const char *steps[20];
} rows[] = {
  { "nothing differs", same, { "R Nothing to do: these dampers stay as they are." } },
  { "an assumption", off_centre, { "R Nothing to do: these dampers stay as they are." } },
  { "nobody measured", not_measured, { "R Nothing to do: these dampers stay as they are." } },
  { "outside the damper",
    preload,
    { "A Change spring preload 4 mm → 5 mm.", "A Change ride height 24 mm → 25 mm.", HOLD } },
  { "the piston that is in it",
    drill,
    { OPEN, "A Drill the piston that is in it, in this order:",
      "I 6 open holes of 1.40 mm: 1.50 mm, then 1.60 mm", "R Check: 1.70 mm must not go in.",
      DEBURR, STACK, OIL, HOLD } },
  { "a spare to be drilled",
    smaller,
    { OPEN, "A Take the piston “blank six plus four” from the box and drill it, in this order:",
      "R Covered holes lie on a circle of 8.2 mm.",
      "I 6 open holes of 1.00 mm: 1.10 mm, then 1.20 mm", "R Check: 1.30 mm must not go in.",
      "I 4 covered holes of 1.00 mm: 1.10 mm", "R Check: 1.20 mm must not go in.", DEBURR, STACK,
      OIL, HOLD } },
  { "a spare as it is",
    spare,
    { OPEN, "A Take the piston “plain six” from the box.", STACK, OIL, HOLD } },
  { "no piston at hand",
    thicker_piston,
    { OPEN,
      "A Another piston is needed, 3 mm thick; none at hand can become it. Drill a blank, in this "
      "order:",
      "R Covered holes lie on a circle of 8.2 mm.",
      "I 6 open holes from solid: 1.00 mm, then 1.15 mm, then 1.30 mm, then 1.40 mm",
      "R Check: 1.50 mm must not go in.", "I 4 covered holes from solid: 1.00 mm, then 1.10 mm",
      "R Check: 1.20 mm must not go in.", DEBURR, STACK, OIL, HOLD } },
  { "nothing to drill in it",
    solid_piston,
    { OPEN, "A Another piston is needed, 3 mm thick and without holes; none is at hand.", STACK,
      OIL, HOLD } },
  { "another stack, turned round",
    shims,
    { OPEN, "A Stack on the side that opens on compression, from the piston outwards:",
      "I 1 × 0.15 mm", "I 2 × 0.1 mm", OIL, HOLD } },
  { "holes that have to lie elsewhere",
    other_circle,
    { OPEN, "A Take the piston “plain six” from the box and drill it, in this order:",
      "R Covered holes lie on a circle of 8.3 mm.",
      "I 4 covered holes from solid: 1.00 mm, then 1.10 mm", "R Check: 1.20 mm must not go in.",
      "I 6 open holes of 1.30 mm: 1.40 mm", "R Check: 1.50 mm must not go in.", DEBURR, STACK, OIL,
      HOLD } },
  { "what the stack stands on goes before it",
    shaft_washer_and_gas,
    { OPEN, "A Change shaft 3.5 mm → 3 mm.", "A Change shim lift limit 0.6 mm → 0.5 mm.", STACK,
      "A Change gas volume 1.2 ml → 1 ml.", OIL, HOLD } },
  { "numbers of a shim that is not there",
    numbers_of_no_shim,
    { OPEN, "A Fit the piston without shims.", OIL, HOLD } },
  { "no stack", no_shims, { OPEN, "A Fit the piston without shims.", OIL, HOLD } },
  { "two bottles",
    blend,
    { OPEN, "A Mix the oil by volume, for left and right at once, and fill it in:",
      "I 350 cSt: 2.00 ml a damper, 4.00 ml for left and right",
      "I 600 cSt: 6.00 ml a damper, 12.0 ml for left and right",
      "A Move the shaft slowly until no more bubbles rise, then close.", HOLD } },
  { "an oil without a grade, how much nobody knows",
    own_oil,
    { OPEN, "A Fill in the oil:", "I own oil: 5.34 ml a damper, 10.7 ml for left and right",
      "R Volume estimated from bore and stroke: have a little more at hand.",
      "A Move the shaft slowly until no more bubbles rise, then close.", HOLD } },
};

/* A line a step; caller frees. */
static char *
tell (const dw_damper *a, const dw_damper *b, dw_units units)
{
  static const char letters[]
      = { [DW_STEP_ACTION] = 'A', [DW_STEP_ITEM] = 'I', [DW_STEP_REMARK] = 'R' };
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (GArray) steps = dw_bench_steps_make (a, b, dw_project_get_parts (project), units);
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < steps->len; i++)
    {
      const dw_bench_step *step = &g_array_index (steps, dw_bench_step, i);
      g_string_append_printf (words, "%c %s\n", letters[step->kind], step->text);
    }
  return g_string_free (words, FALSE);
}

static dw_damper
built (void)
{
  g_autoptr (dw_project) project = sample_project ();
  return dw_project_get_setup (project, 0)->damper[DW_FRONT];
}

START_TEST (the_steps_are_in_their_order)
{
  const dw_damper a = built ();
  dw_damper b = a;
  rows[_i].change (&b);
  g_autofree char *words = tell (&a, &b, DW_UNITS_METRIC);
  g_autofree char *lines = g_strjoinv ("\n", (char **)(guintptr)rows[_i].steps);
  g_autofree char *expected = g_strconcat (lines, "\n", NULL);
  ck_assert_msg (strcmp (words, expected) == 0, "%s:\n%s\nwhere this was expected:\n%s",
                 rows[_i].why, words, expected);
}
END_TEST

/* Nothing is opened or changed; every part is told. */
START_TEST (new_parts_are_put_together)
{
  const dw_damper b = built ();
  g_autofree char *words = tell (NULL, &b, DW_UNITS_METRIC);
  ck_assert_ptr_null (strstr (words, "Release"));
  ck_assert_ptr_null (strstr (words, "Change"));
  ck_assert_ptr_null (strstr (words, "that is in it"));
  expect_in_order (words, (const char *[]){
                              "A Take the piston “plain six” from the box and drill it",
                              "I 4 covered holes from solid: 1.00 mm, then 1.10 mm\n",
                              "I 6 open holes of 1.30 mm: 1.40 mm\n", STACK,
                              "A Body: bore 16 mm, shaft 3.5 mm, stroke 27 mm\n",
                              "A Shim: hub 6, outside 10.6, lift limit 0.6 mm\n",
                              "A Gas, seal: bladder 101.3 kPa, 1.2 ml; seal 0.4 N\n",
                              "A Spring: 0.72 N/mm, 70 mm long, preload 4 mm\n", OIL, HOLD, NULL });
}
END_TEST

START_TEST (inches_are_told_in_inches)
{
  const dw_damper a = built ();
  dw_damper b = a;
  drill (&b);
  g_autofree char *words = tell (&a, &b, SAMPLE_INCHES);
  ck_assert_ptr_null (strstr (words, " mm"));
  ck_assert_ptr_nonnull (
      strstr (words, "I 6 open holes of 0.05512 in: 0.05906 in, then 0.06299 in\n"));
}
END_TEST

/* Of any two dampers: there is a last step, items follow an action, and what is the same is no work. */
START_TEST (any_work_is_told)
{
  test_random r = test_random_new (9004);
  for (int k = 0; k < 300; k++)
    {
      const dw_damper a = k % 2 == 0 ? random_damper (&r) : extreme_damper (&r);
      const dw_damper b = k % 3 == 0 ? random_damper (&r) : extreme_damper (&r);
      g_autofree char *words = tell (k % 5 == 0 ? NULL : &a, &b, DW_UNITS_METRIC);
      g_autofree char *none = tell (&b, &b, DW_UNITS_METRIC);
      ck_assert_msg (g_str_has_prefix (words, "A ") && g_str_has_suffix (words, HOLD "\n"), "%s",
                     words);
      ck_assert_ptr_null (strstr (words, "nan"));
      /* what is announced follows */
      ck_assert_ptr_null (strstr (words, "order:\nA"));
      ck_assert_ptr_null (strstr (words, "outwards:\nA"));
      ck_assert_ptr_null (strstr (words, "oil:\nA"));
      ck_assert_str_eq (none, "R Nothing to do: these dampers stay as they are.\n");
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/bench-steps");
  TCase *tcase = tcase_create ("bench-steps");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, the_steps_are_in_their_order, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, new_parts_are_put_together);
  tcase_add_test (tcase, inches_are_told_in_inches);
  tcase_add_test (tcase, any_work_is_told);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
