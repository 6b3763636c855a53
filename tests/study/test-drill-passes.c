/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-passes.h"

#include <math.h>

#include "model/dw-drill.h"
#include "test-support.h"

#define MM 1e-3

static const double box[] = { 1.2 * MM, 1.3 * MM,  1.35 * MM, 1.4 * MM, 1.45 * MM,
                              1.5 * MM, 1.55 * MM, 1.6 * MM,  1.7 * MM, 2.0 * MM };

static const struct
{
  const char *why;
  double from;
  double to;
  int n;
  double drill[5];
  bool has_large_pass;
} rows[] = {
  { "nothing to drill", 1.4, 1.4, 0, { 0 }, false },
  { "a smaller size is no drilling", 1.4, 1.3, 0, { 0 }, false },
  { "one small pass", 1.3, 1.4, 1, { 1.4 }, false },
  { "exactly the most", 1.35, 1.5, 1, { 1.5 }, false },
  { "two passes of equal size", 1.3, 1.5, 2, { 1.4, 1.5 }, false },
  { "three passes, as even as the drills are", 1.3, 1.7, 3, { 1.45, 1.55, 1.7 }, false },
  { "a size that is not in the box ends the row", 1.3, 1.42, 1, { 1.42 }, false },
  { "the box has nothing between", 1.7, 2.0, 1, { 2.0 }, true },
};

START_TEST (passes_lead_up_to_the_size)
{
  const dw_drill_passes p = dw_drill_passes_find (rows[_i].from * MM, rows[_i].to * MM, box,
                                                  N_ENTRIES (box));
  ck_assert_msg (p.n == rows[_i].n, "%s: %d passes", rows[_i].why, p.n);
  for (int i = 0; i < p.n; i++)
    assert_close (p.drill[i], rows[_i].drill[i] * MM, 1e-9, 0.0, rows[_i].why);
  ck_assert_msg (p.has_large_pass == rows[_i].has_large_pass, "%s", rows[_i].why);
}
END_TEST

/* Any pair of the drill table up to 3 mm, past which the number drills lie farther apart: rising,
 * ends where it should, no pass above the limit. */
START_TEST (with_all_drills_no_pass_is_large)
{
  size_t n;
  const dw_drill_size *table = dw_drill_table (&n);
  double drills[400];
  ck_assert_uint_le (n, 400);
  while (table[n - 1].diameter > 3.0 * MM)
    n--;
  for (size_t i = 0; i < n; i++)
    drills[i] = table[i].diameter;
  for (size_t i = 0; i < n; i++)
    for (size_t k = i + 1; k < n; k++)
      {
        const dw_drill_passes p = dw_drill_passes_find (drills[i], drills[k], drills, (int)n);
        double at = drills[i];
        ck_assert_int_ge (p.n, 1);
        for (int j = 0; j < p.n; j++)
          {
            ck_assert (p.drill[j] > at);
            ck_assert (p.drill[j] - at <= DW_DRILL_MOST_PER_PASS + 1e-8);
            at = p.drill[j];
          }
        ck_assert (at == drills[k] && !p.has_large_pass);
        /* not many more than the limit asks for */
        ck_assert_int_le (p.n, (int)(1.25 * (drills[k] - drills[i]) / DW_DRILL_MOST_PER_PASS) + 2);
      }
}
END_TEST

START_TEST (no_drills_at_hand_is_one_pass)
{
  const dw_drill_passes p = dw_drill_passes_find (1.0 * MM, 2.0 * MM, NULL, 0);
  ck_assert_int_eq (p.n, 1);
  ck_assert (p.has_large_pass && p.drill[0] == 2.0 * MM);
}
END_TEST

static const struct
{
  const char *why;
  double to;
  int n;
  double drill[5];
} solid_rows[] = {
  { "half of it, and on", 1.6, 4, { 1.2, 1.35, 1.5, 1.6 } },
  { "the thinnest at hand that is stiff enough", 1.3, 2, { 1.2, 1.3 } },
  { "half of a large one is more than the thinnest", 2.6, 5, { 1.3, 1.45, 1.6, 1.7, 2.0 } },
  { "a thin one is drilled at once", 0.8, 1, { 0.8 } },
  { "nothing smaller at hand", 1.2, 1, { 1.2 } },
};

START_TEST (a_hole_begins_with_a_pilot)
{
  const dw_drill_passes p = dw_drill_passes_from_solid (solid_rows[_i].to * MM, box,
                                                        N_ENTRIES (box));
  /* the last row ends with its own size, past the table's room */
  ck_assert_msg (p.n >= solid_rows[_i].n, "%s: %d passes", solid_rows[_i].why, p.n);
  for (int i = 0; i < solid_rows[_i].n; i++)
    assert_close (p.drill[i], solid_rows[_i].drill[i] * MM, 1e-9, 0.0, solid_rows[_i].why);
  ck_assert (p.drill[p.n - 1] == solid_rows[_i].to * MM);
}
END_TEST

START_TEST (a_pilot_is_no_large_pass)
{
  const double drills[] = { 0.5 * MM, 1.0 * MM };
  ck_assert (!dw_drill_passes_from_solid (1.1 * MM, drills, 2).has_large_pass);
  ck_assert (dw_drill_passes_from_solid (1.1 * MM, drills, 2).drill[0] == 1.0 * MM);
  ck_assert (!dw_drill_passes_from_solid (3.0 * MM, drills, 2).has_large_pass);
  ck_assert_int_eq (dw_drill_passes_from_solid (3.0 * MM, drills, 2).n, 1);
  ck_assert (dw_drill_passes_from_solid (1.4 * MM, drills, 2).has_large_pass);
}
END_TEST

static const struct
{
  const char *why;
  double size;
  int grade;
  double check; /* NaN = none */
} check_rows[] = {
  /* H12 up to 3 mm is 0.100 mm wide */
  { "a drill as large as the largest hole does not go in", 1.3, 12, 1.4 },
  { "between two of the box the table has one", 1.75, 12, 1.85 },
  { "a finer one at hand goes before the table's", 1.23, 12, 1.331 },
  { "H11 is narrower", 1.3, 11, 1.397 },
  { "no such grade: any larger one", 1.3, 5, 1.305 },
  { "past the table only what is at hand", 5.0, 12, 7.0 },
  { "and there is no tolerance known past 6 mm", 6.5, 12, 7.0 },
  { "none is so large", 8.0, 12, NAN },
};

START_TEST (the_check_is_the_first_drill_past_the_largest_hole)
{
  const double drills[] = { 7.0 * MM, 1.331 * MM, 1.305 * MM, 1.2 * MM };
  const double check = dw_drill_passes_check (check_rows[_i].size * MM, check_rows[_i].grade,
                                              drills, N_ENTRIES (drills));
  if (isnan (check_rows[_i].check))
    ck_assert_msg (isnan (check), "%s", check_rows[_i].why);
  else
    assert_close (check, check_rows[_i].check * MM, 1e-9, 0.0, check_rows[_i].why);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/drill-passes");
  TCase *tcase = tcase_create ("drill-passes");
  tcase_add_loop_test (tcase, passes_lead_up_to_the_size, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, with_all_drills_no_pass_is_large);
  tcase_add_test (tcase, no_drills_at_hand_is_one_pass);
  tcase_add_loop_test (tcase, a_hole_begins_with_a_pilot, 0, N_ENTRIES (solid_rows));
  tcase_add_test (tcase, a_pilot_is_no_large_pass);
  tcase_add_loop_test (tcase, the_check_is_the_first_drill_past_the_largest_hole, 0,
                       N_ENTRIES (check_rows));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
