/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-drill-passes.h"

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

int
main (void)
{
  Suite *suite = suite_create ("study/drill-passes");
  TCase *tcase = tcase_create ("drill-passes");
  tcase_add_loop_test (tcase, passes_lead_up_to_the_size, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, with_all_drills_no_pass_is_large);
  tcase_add_test (tcase, no_drills_at_hand_is_one_pass);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
