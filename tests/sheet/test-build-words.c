/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-build-words.h"

#include <string.h>

#include "sheet-samples.h"

static dw_damper
sample_damper (void)
{
  g_autoptr (dw_project) project = sample_project ();
  return dw_project_get_setup (project, 0)->damper[DW_FRONT];
}

static void
no_change (G_GNUC_UNUSED dw_damper *d)
{
}

static void
no_shims (dw_damper *d)
{
  d->valve.n_shims = 0;
}

static void
two_shims (dw_damper *d)
{
  d->valve.n_shims = 2;
  d->valve.shims[1] = d->valve.shims[0];
  d->valve.shims[1].thickness = 0.1e-3;
  d->valve.shims[1].count = 3;
  d->valve.opens_on = DW_COMPRESSION;
}

static void
preloaded (dw_damper *d)
{
  d->valve.preload = 12.5e3;
  d->valve.seat_gap = 0.015e-3;
}

static void
nothing_measured (dw_damper *d)
{
  d->body.has_filling = d->stance.has_ride_height = d->stance.has_droop = false;
  d->body.filling = d->stance.ride_height = d->stance.droop = 0.0;
}

static const struct
{
  dw_build build;
  void (*change) (dw_damper *d);
  const char *words;
} rows[] = {
  { DW_BUILD_BODY, no_change, "bore 16 mm, shaft 3.5 mm, stroke 27 mm" },
  { DW_BUILD_PISTON, no_change, "2.6 mm thick, clearance 0.03 mm" },
  { DW_BUILD_OPEN_HOLES, no_change, "6 × 1.4 mm" },
  { DW_BUILD_COVERED_HOLES, no_change, "4 × 1.1 mm" },
  { DW_BUILD_STACK, no_change, "1 × 0.15 mm, opens on rebound" },
  { DW_BUILD_STACK, two_shims, "from the piston out 1 × 0.15, 3 × 0.1 mm, opens on compression" },
  { DW_BUILD_STACK, no_shims, "" },
  { DW_BUILD_SHIM, no_change, "hub 6, outside 10.6, lift limit 0.6 mm" },
  { DW_BUILD_SHIM, preloaded,
    "hub 6, outside 10.6, lift limit 0.6 mm, opens at 12.5 kPa, seat gap 0.015 mm" },
  { DW_BUILD_SHIM, no_shims, "" },
  { DW_BUILD_OIL, no_change, "400 cSt" },
  { DW_BUILD_FILLING, no_change, "6.3 ml" },
  { DW_BUILD_FILLING, nothing_measured, "" },
  { DW_BUILD_GAS, no_change, "bladder 101.3 kPa, 1.2 ml; seal 0.4 N" },
  { DW_BUILD_SPRING, no_change, "0.72 N/mm, 70 mm long, preload 4 mm" },
  { DW_BUILD_LINKAGE, no_change, "0.62" },
  { DW_BUILD_RIDE_HEIGHT, no_change, "24 mm" },
  { DW_BUILD_RIDE_HEIGHT, nothing_measured, "" },
  { DW_BUILD_DROOP, no_change, "18 mm" },
  { DW_BUILD_DROOP, nothing_measured, "" },
};

START_TEST (each_part_has_its_words)
{
  dw_damper damper = sample_damper ();
  rows[_i].change (&damper);
  g_autofree char *words = dw_build_value (rows[_i].build, &damper, DW_UNITS_METRIC);
  ck_assert_str_eq (words, rows[_i].words);
}
END_TEST

/* No two parts have the same name, and each stands in the table above. */
START_TEST (every_part_has_a_name)
{
  for (int a = 0; a < DW_N_BUILDS; a++)
    {
      int n = 0;
      ck_assert_uint_gt (strlen (dw_build_name ((dw_build)a)), 2);
      for (int b = 0; b < a; b++)
        ck_assert_str_ne (dw_build_name ((dw_build)a), dw_build_name ((dw_build)b));
      for (int i = 0; i < N_ENTRIES (rows); i++)
        n += (int)rows[i].build == a;
      ck_assert_int_gt (n, 0);
    }
}
END_TEST

START_TEST (only_what_is_measured_is_left_to_write_in)
{
  for (int build = 0; build < DW_N_BUILDS; build++)
    ck_assert_msg (dw_build_is_open ((dw_build)build)
                       == (build == DW_BUILD_FILLING || build == DW_BUILD_RIDE_HEIGHT
                           || build == DW_BUILD_DROOP),
                   "%s", dw_build_name ((dw_build)build));
}
END_TEST

START_TEST (units_are_those_asked_for)
{
  const dw_damper damper = sample_damper ();
  g_autofree char *body = dw_build_value (DW_BUILD_BODY, &damper, SAMPLE_INCHES);
  g_autofree char *spring = dw_build_value (DW_BUILD_SPRING, &damper, SAMPLE_INCHES);
  ck_assert_str_eq (body, "bore 0.6299 in, shaft 0.1378 in, stroke 1.063 in");
  ck_assert_str_eq (spring, "4.111 lbf/in, 2.756 in long, preload 0.1575 in");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/build-words");
  TCase *tcase = tcase_create ("build-words");
  tcase_add_loop_test (tcase, each_part_has_its_words, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, every_part_has_a_name);
  tcase_add_test (tcase, only_what_is_measured_is_left_to_write_in);
  tcase_add_test (tcase, units_are_those_asked_for);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
