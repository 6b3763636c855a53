/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-difference.h"

#include <math.h>

#include "study-dampers.h"
#include "test-support.h"

/* NaN stands for "no single number". */
static bool
same_number (double actual, double expected)
{
  return isnan (expected) ? isnan (actual) : actual == expected;
}

START_TEST (one_change_of_the_builder_is_one_difference)
{
  int n_rows = 0;
  const study_change *row = &study_changes (&n_rows)[_i];
  const dw_damper a = study_damper ();
  dw_damper b = a;
  row->change (&b);

  dw_difference found[DW_MAX_DIFFERENCES];
  const size_t n = dw_difference_find (&a, &b, found, DW_MAX_DIFFERENCES);
  ck_assert_msg (n == 1, "%zu differences, the first %s, for: %s", n, n > 0 ? found[0].path : "-",
                 row->text);
  ck_assert_str_eq (found[0].path, row->path);
  ck_assert_int_eq (found[0].kind, row->kind);
  ck_assert_msg (same_number (found[0].before, row->before)
                     && same_number (found[0].after, row->after),
                 "%.17g -> %.17g for: %s", found[0].before, found[0].after, row->text);
  ck_assert_msg (found[0].acts == row->acts, "acts %d for: %s", found[0].acts, row->text);
  ck_assert_uint_eq (dw_difference_count_acting (found, n), row->acts ? 1 : 0);
}
END_TEST

/* Going back is one difference as well, with the two numbers the other way round. */
START_TEST (the_way_back_is_as_long)
{
  int n_rows = 0;
  const study_change *row = &study_changes (&n_rows)[_i];
  const dw_damper a = study_damper ();
  dw_damper b = a;
  row->change (&b);

  dw_difference found[DW_MAX_DIFFERENCES];
  ck_assert_uint_eq (dw_difference_find (&b, &a, found, DW_MAX_DIFFERENCES), 1);
  ck_assert_str_eq (found[0].path, row->path);
  ck_assert_msg (same_number (found[0].after, row->before)
                     && same_number (found[0].before, row->after),
                 "%.17g -> %.17g back from: %s", found[0].before, found[0].after, row->text);
}
END_TEST

START_TEST (equal_dampers_do_not_differ)
{
  const dw_damper a = study_damper ();
  ck_assert_uint_eq (dw_difference_find (&a, &a, NULL, 0), 0);
}
END_TEST

/* Every pair of changes that touch different parts is two differences. */
START_TEST (two_changes_are_two_differences)
{
  int n_rows = 0;
  const study_change *rows = study_changes (&n_rows);
  const dw_damper a = study_damper ();
  dw_damper b = a;
  rows[_i].change (&b);
  const bool oil = b.oil.kind != a.oil.kind || b.oil.viscosity != a.oil.viscosity
                   || b.oil.has_thinning != a.oil.has_thinning;
  if (oil)
    b.seal_friction += 0.25;
  else
    b.oil.viscosity *= 1.5;
  dw_difference found[DW_MAX_DIFFERENCES];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, DW_MAX_DIFFERENCES), 2);
  ck_assert_uint_eq (dw_difference_count_acting (found, 2), rows[_i].acts ? 2 : 1);
}
END_TEST

START_TEST (how_it_is_written_down_does_not_matter)
{
  dw_damper a = study_damper ();
  dw_damper b = a;
  /* 4 x 1.5 as two groups of two, in another order */
  b.piston.n_holes = 4;
  b.piston.holes[0] = a.piston.holes[2];
  b.piston.holes[1] = (dw_holes){ .count = 2, .diameter = 1.5e-3 };
  b.piston.holes[2] = a.piston.holes[1];
  b.piston.holes[3] = b.piston.holes[1];
  /* 2 x 0.1 as two entries */
  b.valve.n_shims = 3;
  b.valve.shims[1].count = 1;
  b.valve.shims[2] = b.valve.shims[1];
  ck_assert (!dw_damper_equal (&a, &b));
  ck_assert_uint_eq (dw_difference_find (&a, &b, NULL, 0), 0);
}
END_TEST

START_TEST (a_set_names_all_groups_of_the_kind)
{
  dw_damper a = study_damper ();
  a.piston.n_holes = 4;
  a.piston.holes[3] = a.piston.holes[0];
  dw_damper b = a;
  b.piston.holes[0].diameter = 1.6e-3;
  b.piston.holes[3].diameter = 1.6e-3;
  dw_difference found[1];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  ck_assert_int_eq (found[0].index, 0);
  ck_assert_uint_eq (found[0].before_set, 1U | 8U);
  ck_assert_uint_eq (found[0].after_set, 1U | 8U);
  ck_assert_int_eq (found[0].n_before, 8);
  ck_assert_int_eq (found[0].n_after, 8);
}
END_TEST

START_TEST (a_shim_without_covered_holes_does_nothing)
{
  dw_damper a = study_damper ();
  a.piston.n_holes = 2;
  dw_damper b = a;
  b.valve.shims[0].thickness *= 2.0;
  b.valve.lift_limit /= 2.0;
  b.valve.opens_on = DW_COMPRESSION;
  dw_difference found[3];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 3), 3);
  ck_assert_uint_eq (dw_difference_count_acting (found, 3), 0);
}
END_TEST

START_TEST (the_order_of_stuck_leaves_acts)
{
  dw_damper a = study_damper ();
  a.valve.leaf_coupling = 0.5;
  dw_damper b = a;
  b.valve.shims[0] = a.valve.shims[1];
  b.valve.shims[1] = a.valve.shims[0];
  dw_difference found[1];
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 1);
  ck_assert_int_eq (found[0].kind, DW_DIFFERENCE_ORDER);
  ck_assert (found[0].acts);
}
END_TEST

START_TEST (what_does_not_fit_is_counted)
{
  const dw_damper a = study_damper ();
  dw_damper b = a;
  b.body.bore *= 1.5;
  b.oil.viscosity *= 1.5;
  b.seal_friction *= 1.5;
  dw_difference found[2] = { { .index = 0 }, { .index = 77 } };
  ck_assert_uint_eq (dw_difference_find (&a, &b, found, 1), 3);
  ck_assert_str_eq (found[0].path, "body.bore");
  ck_assert_int_eq (found[1].index, 77);
}
END_TEST

/* All parts other at once, in as many groups and entries as there may be. */
START_TEST (no_two_dampers_differ_in_more_than_the_most)
{
  dw_damper a = study_damper ();
  dw_damper b = a;
  int n_rows = 0;
  const study_change *rows = study_changes (&n_rows);
  for (int i = 0; i < n_rows; i++)
    rows[i].change (&b);
  a.piston.n_holes = b.piston.n_holes = DW_MAX_HOLE_GROUPS;
  a.valve.n_shims = b.valve.n_shims = DW_MAX_SHIMS;
  for (int i = 0; i < DW_MAX_HOLE_GROUPS; i++)
    {
      a.piston.holes[i] = (dw_holes){ .count = i + 1, .diameter = (1.0 + i) * 1e-3 };
      b.piston.holes[i]
          = (dw_holes){ .count = 20 - i, .diameter = (1.5 + i) * 1e-3, .covered = i % 2 == 0 };
      a.valve.shims[i] = (dw_shim){ (1.0 + i) * 1e-4, i + 1, 4e9, 0.3, 1e8 };
      b.valve.shims[i] = (dw_shim){ (1.5 + i) * 1e-4, 20 - i, 4e9, 0.3, 1e8 };
    }
  const size_t n = dw_difference_find (&a, &b, NULL, 0);
  ck_assert_msg (n > 32 && n <= DW_MAX_DIFFERENCES, "%zu differences", n);
}
END_TEST

int
main (void)
{
  int n = 0;
  study_changes (&n);
  Suite *suite = suite_create ("study/dw-difference");
  TCase *tc = tcase_create ("difference");
  tcase_add_loop_test (tc, one_change_of_the_builder_is_one_difference, 0, n);
  tcase_add_loop_test (tc, the_way_back_is_as_long, 0, n);
  tcase_add_loop_test (tc, two_changes_are_two_differences, 0, n);
  tcase_add_test (tc, equal_dampers_do_not_differ);
  tcase_add_test (tc, how_it_is_written_down_does_not_matter);
  tcase_add_test (tc, a_set_names_all_groups_of_the_kind);
  tcase_add_test (tc, a_shim_without_covered_holes_does_nothing);
  tcase_add_test (tc, the_order_of_stuck_leaves_acts);
  tcase_add_test (tc, what_does_not_fit_is_counted);
  tcase_add_test (tc, no_two_dampers_differ_in_more_than_the_most);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
