/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-label-column.h"

#include <math.h>

#include "test-support.h"

static const struct
{
  const char *why;
  int n;
  double wanted[5]; /* [pt] */
  double middle[5]; /* [pt] in a column from 0 to 100 of labels 10 high */
} rows[] = {
  { "none", 0, { 0 }, { 0 } },
  { "far apart they stay", 3, { 20, 50, 70 }, { 20, 50, 70 } },
  { "touching ones stay", 2, { 20, 30 }, { 20, 30 } },
  { "two on one spot go both ways", 2, { 50, 50 }, { 45, 55 } },
  { "three", 3, { 50, 50, 50 }, { 40, 50, 60 } },
  { "a third is pushed by two",
    3,
    { 50, 50, 58 },
    { 42.666666666667, 52.666666666667, 62.666666666667 } },
  { "the top holds", 3, { 2, 2, 2 }, { 5, 15, 25 } },
  { "the bottom holds", 3, { 99, 99, 99 }, { 75, 85, 95 } },
};

START_TEST (labels_are_moved_apart)
{
  double middle[5];
  dw_label_column_spread (rows[_i].wanted, rows[_i].n, 10.0, 0.0, 100.0, middle);
  for (int i = 0; i < rows[_i].n; i++)
    assert_close (middle[i], rows[_i].middle[i], 0.0, 1e-9, rows[_i].why);
}
END_TEST

static double
squares (const double *wanted, const double *middle, int n)
{
  double sum = 0.0;
  for (int i = 0; i < n; i++)
    sum += (wanted[i] - middle[i]) * (wanted[i] - middle[i]);
  return sum;
}

/* Any other allowed places are farther: random ones, and small steps from those that were found. */
START_TEST (no_other_places_are_nearer)
{
  test_random r = test_random_new (8101);
  for (int k = 0; k < 3000; k++)
    {
      double wanted[8];
      double middle[8];
      double other[8];
      const int n = test_random_int (&r, 1, 8);
      for (int i = 0; i < n; i++)
        wanted[i] = test_random_uniform (&r, 0.0, 100.0);
      test_sort (wanted, (size_t)n);
      dw_label_column_spread (wanted, n, 10.0, 0.0, 100.0, middle);
      ck_assert (middle[0] >= 5.0 - 1e-9 && middle[n - 1] <= 95.0 + 1e-9);
      for (int i = 1; i < n; i++)
        ck_assert (middle[i] - middle[i - 1] >= 10.0 - 1e-9);

      for (int tries = 0; tries < 20; tries++)
        {
          bool allowed = true;
          for (int i = 0; i < n; i++)
            other[i] = tries % 2 == 0
                           ? middle[i] + test_random_uniform (&r, -1.0, 1.0)
                           : 5.0 + 10.0 * i
                                 + (100.0 - 10.0 * n) * test_random_uniform (&r, 0.0, 1.0);
          for (int i = 0; i < n; i++)
            allowed = allowed && other[i] >= 5.0 && other[i] <= 95.0
                      && (i == 0 || other[i] - other[i - 1] >= 10.0);
          if (allowed)
            ck_assert (squares (wanted, other, n) >= squares (wanted, middle, n) - 1e-9);
        }
    }
}
END_TEST

START_TEST (room_is_counted_in_whole_labels)
{
  ck_assert_int_eq (dw_label_column_room (0.0, 100.0, 10.0), 10);
  ck_assert_int_eq (dw_label_column_room (0.1, 100.0, 10.0), 9);
  ck_assert_int_eq (dw_label_column_room (10.0, 5.0, 10.0), 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/label-column");
  TCase *tcase = tcase_create ("label-column");
  tcase_add_loop_test (tcase, labels_are_moved_apart, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, no_other_places_are_nearer);
  tcase_add_test (tcase, room_is_counted_in_whole_labels);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
